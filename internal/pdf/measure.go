package pdf

import (
	"fmt"
	"strings"

	"flitchlay/internal/scene"
)

// measure tells a reader's measuring tool the scale of each view of a page.
//
// Source: ISO 32000-1, 12.9, Tables 260 to 263. The last viewport that holds a point counts, so views stand in the order drawn.
func (w *finisher) measure(page int, p *scene.Page) {
	var ports []string
	p.Walk(func(it scene.Item) {
		if g, ok := it.(*scene.Group); ok && g.View != nil {
			v := g.View
			ports = append(ports, fmt.Sprintf("<</Type /Viewport /BBox %s /Name %s /Measure %s>>", rect(p, v.Box), phrase(v.Name), scale(v)))
		}
	})
	if len(ports) > 0 {
		w.extend(w.pages[page], "\n/VP ["+strings.Join(ports, "\n")+"]")
	}
}

// scale writes the measure of a view. Factors have ten decimals: with four, 20 ft would come out an eighth of an inch wrong.
func scale(v *scene.View) string {
	ratio := v.Ratio
	if ratio == "" {
		ratio = "1:" + number(v.Scale)
	}
	if v.Metric {
		return fmt.Sprintf("<</Type /Measure /Subtype /RL /R %s /X [<</Type /NumberFormat /U (m) /C %s /D 1000>>]"+
			" /D [<</Type /NumberFormat /U (mm) /C 1000 /F /R>>] /A [<</Type /NumberFormat /U (sq m) /C 1 /D 100>>]>>",
			phrase(ratio), number(v.Scale/perMM/1000))
	}
	return fmt.Sprintf("<</Type /Measure /Subtype /RL /R %s /X [<</Type /NumberFormat /U (ft) /C %s>>]"+
		" /D [<</Type /NumberFormat /U (ft) /C 1>> <</Type /NumberFormat /U (in) /C 12 /F /F /D 16>>]"+
		" /A [<</Type /NumberFormat /U (sq ft) /C 1 /D 100>>]>>",
		phrase(ratio), number(v.Scale/(72*12)))
}

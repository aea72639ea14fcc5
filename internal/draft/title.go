package draft

import (
	"math"

	"flitchlay/internal/scene"
)

// Title is the title of a view: the mark over the page, the name on a line, the scale and what else under it.
type Title struct {
	Mark, Page string // in the circle
	Name       string
	Under      []string // lines under the name: scale, architect's mark
	Width      float64  // of the line, at the least
	Most       float64  // of the whole, at the most; a longer name is lettered smaller, then on more lines; 0 for any
}

// Of the lines of a title, in mm on the office page.
const (
	titleFirst = 4.3 // the first line under the name
	titlePitch = 4.2 // from each to the next
	titleOver  = 2.3 // the name over its line
)

// radius is that of the circle, in whose lower half the page's number stands.
func (t Title) radius(k Look) float64 {
	half, low := scene.Width(t.Page, k.Small, false)/2, k.Of(0.42*7)+k.Small/2
	return math.Max(k.Of(7), math.Hypot(half, low)+k.Outline/2+0.5)
}

// names are the lines of the name as they are lettered: one, but for a name that is too long even in small letters.
func (t Title) names(k Look) (lines []string, height float64) {
	if t.Most == 0 {
		return []string{t.Name}, k.Large
	}
	w := t.Most - 2*t.radius(k) - k.Of(7)
	height = FitHeight(t.Name, k.Large, k.Medium, true, w)
	return Folded(t.Name, height, true, w), height
}

// unders are the lines under the name as they are lettered.
func (t Title) unders(k Look) []string {
	if t.Most == 0 {
		return t.Under
	}
	var lines []string
	for _, line := range t.Under {
		lines = append(lines, Folded(line, k.Small, false, t.Most-2*t.radius(k)-k.Of(3))...)
	}
	return lines
}

// Folded is a text on as many lines as it takes in a width; one that fits is left as it is.
func Folded(text string, height float64, bold bool, width float64) []string {
	if scene.Width(text, height, bold) <= width {
		return []string{text}
	}
	return scene.Wrap(text, height, bold, width)
}

// Draw draws the title with the left edge of its circle at a place, the line through its middle.
//
// Shape: the box it takes.
func (t Title) Draw(g *scene.Group, k Look, at scene.Point) scene.Box {
	r := t.radius(k)
	c := at.Add(r, 0)
	g.Circle(c, r, scene.Pen(scene.Marks, k.Outline).Filled(scene.White))
	g.HLine(c.X-r, c.X+r, c.Y, scene.Pen(scene.Marks, k.Outline))
	chord := 2*math.Sqrt(r*r-math.Pow(r*0.5+k.Medium/2, 2)) - k.Outline - 1
	g.Text(words(scene.Marks, c.Add(0, -r*0.5), t.Mark, FitHeight(t.Mark, k.Medium, k.Small, true, chord), true))
	g.Text(words(scene.Marks, c.Add(0, math.Min(r*0.42, k.Of(0.42*7))), t.Page, k.Small, false))
	x := c.X + r + k.Of(3)
	names, height := t.names(k)
	w := 0.0
	for i, name := range names {
		w = math.Max(w, scene.Width(name, height, true))
		up := float64(len(names)-1-i) * namePitch * height
		g.Text(scene.Text{At: scene.Pt(x, c.Y-k.Of(titleOver)-up), String: name, Height: height, Bold: true, Layer: scene.Marks})
	}
	end := math.Max(x+w+k.Of(4), c.X+r+t.Width)
	g.HLine(c.X+r, end, c.Y, scene.Pen(scene.Marks, k.Wide))
	box := scene.Box{X0: at.X, Y0: c.Y - math.Max(r, t.High(k)), X1: end, Y1: c.Y + r}
	for i, line := range t.unders(k) {
		y := c.Y + k.Of(titleFirst) + float64(i)*k.Of(titlePitch)
		g.Text(scene.Text{At: scene.Pt(x, y), String: line, Height: k.Small, Layer: scene.Marks})
		box.Y1 = math.Max(box.Y1, y+k.Of(0.8))
		box.X1 = math.Max(box.X1, x+scene.Width(line, k.Small, false))
	}
	return box
}

// namePitch is how far lines of a name stand apart, in their height.
const namePitch = 1.45

// Wide is how wide the title comes out.
func (t Title) Wide(k Look) float64 {
	names, height := t.names(k)
	r := t.radius(k)
	w := 2*r + t.Width
	for _, name := range names {
		w = math.Max(w, 2*r+k.Of(3)+scene.Width(name, height, true)+k.Of(4))
	}
	for _, line := range t.unders(k) {
		w = math.Max(w, 2*r+k.Of(3)+scene.Width(line, k.Small, false))
	}
	return w
}

// High is how far the title reaches over its line: more where the name has a letter with an accent, or several lines.
func (t Title) High(k Look) float64 {
	names, height := t.names(k)
	text := scene.Text{String: names[0], Height: height, Bold: true}
	return math.Max(k.Of(7), k.Of(titleOver)+float64(len(names)-1)*namePitch*height-text.Bounds().Y0)
}

// Low is how far the lines under the name reach under it.
func (t Title) Low(k Look) float64 {
	return math.Max(0, k.Of(titleFirst+titlePitch*float64(len(t.unders(k))-1)))
}

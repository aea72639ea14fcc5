package draft

import (
	"strconv"
	"strings"

	"flitchlay/internal/length"
	"flitchlay/internal/scene"
)

// Bar is a scale bar.
type Bar struct {
	Scale  int64
	Metric bool
}

// steps of a bar, small to large: length of a step and how many, with what stands at its end.
type barStep struct {
	step  length.Length
	count int
	unit  length.Length
	name  string
}

func (b Bar) steps() []barStep {
	if b.Metric {
		mm, m := length.Millimetre, length.Metre
		return []barStep{{50 * mm, 2, mm, "mm"}, {100 * mm, 3, mm, "mm"}, {200 * mm, 4, m, "m"}, {600 * mm, 4, m, "m"}, {m, 4, m, "m"}, {2 * m, 4, m, "m"}, {5 * m, 4, m, "m"}}
	}
	in, ft := length.Inch, length.Foot
	return []barStep{{in, 4, in, "in"}, {3 * in, 4, in, "in"}, {6 * in, 4, in, "in"}, {ft, 4, ft, "ft"}, {2 * ft, 4, ft, "ft"}, {4 * ft, 4, ft, "ft"}, {8 * ft, 4, ft, "ft"}, {16 * ft, 4, ft, "ft"}}
}

// choose takes the longest bar no longer than most on paper; the shortest where none is.
func (b Bar) choose(most float64) barStep {
	best := b.steps()[0]
	for _, s := range b.steps() {
		if float64(s.count)*s.step.MM()/float64(b.Scale) <= most {
			best = s
		}
	}
	return best
}

// Draw draws the bar with its left end at a place, on that line, no longer than most: fields black and white in turn,
// figures above.
//
// Shape: the box it takes.
func (b Bar) Draw(g *scene.Group, k Look, at scene.Point, most float64) scene.Box {
	s := b.choose(most)
	step := s.step.MM() / float64(b.Scale)
	h := k.Of(1.6)
	g = g.Part(scene.Tag{Class: "scale-bar", Data: []scene.Datum{{Key: "scale", Value: strconv.FormatInt(b.Scale, 10)}}})
	for i := range s.count {
		style := scene.Pen(scene.Marks, k.Dimension).Filled(scene.White)
		if i%2 == 0 {
			style = style.Filled(scene.Black)
		}
		g.Rect(scene.BoxAt(at.X+float64(i)*step, at.Y-h, step, h), style)
	}
	// where the figures would touch, only the first and the last stand
	every := 1
	if widest := scene.Width(s.figure(s.count), k.Small, false); widest+k.Of(1.2) > step {
		every = s.count
	}
	for i := 0; i <= s.count; i += every {
		g.Text(scene.Text{At: scene.Pt(at.X+float64(i)*step, at.Y-h-k.Of(1)), String: s.figure(i), Height: k.Small, Anchor: scene.Middle, Layer: scene.Marks})
	}
	end := at.X + float64(s.count)*step
	unit := scene.Text{At: scene.Pt(end+k.Of(2.5), at.Y), String: s.name, Height: k.Small, Layer: scene.Marks}
	g.Text(unit)
	return scene.Box{X0: at.X - k.Of(2), Y0: at.Y - h - k.Of(1) - k.Small, X1: unit.Bounds().X1, Y1: at.Y + k.Of(0.5)}
}

// Wide is how wide the bar comes out with what stands beside it.
func (b Bar) Wide(k Look, most float64) float64 {
	s := b.choose(most)
	return float64(s.count)*s.step.MM()/float64(b.Scale) + k.Of(2.5) + scene.Width(s.name, k.Small, false)
}

func (s barStep) figure(i int) string {
	n := int64(i) * int64(s.step) * 10 / int64(s.unit)
	text := strconv.FormatInt(n/10, 10)
	if n%10 != 0 {
		text += "," + strconv.FormatInt(n%10, 10)
	}
	return strings.TrimSuffix(text, ",0")
}

package pole

import (
	"fmt"
	"strconv"
	"strings"

	"flitchlay/internal/crew"
	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/length"
	"flitchlay/internal/scene"
)

// Heights on a strip, from its upper edge.
const (
	ScaleLine = 44.0 // where the ticks stand on
	LabelTop  = 1.6
	LabelFoot = 40.0
	CapFoot   = 52.6 // baseline of the words under the ticks
)

// Strip draws one strip of a pole at full size. Place is which of the three on the page it is.
func (b *PoleBoard) Strip(p Pole, index, count, place int) {
	x0, y0 := b.Left, b.Top+StripPitch*float64(place)
	from := p.From + L(index)*StripLong
	to := from + StripLong
	view := scene.View{Box: scene.BoxAt(x0, y0, StripLong.MM(), StripHigh), Scale: 1, Metric: b.Metric(), Name: p.Title, Ratio: "1:1"}
	g := b.Page.Viewed(view, folio.Datum("scale", "1"), folio.Datum("wall", p.Wall), folio.Datum("strip", strconv.Itoa(index+1)), folio.Datum("from", folio.Mm(from)))
	g.Rect(view.Box, scene.Pen(scene.Frame, 0.18).As(scene.Dashed(0.25)))
	v := draft.View{Origin: scene.Pt(x0-from.MM(), 0), Scale: 1}
	space := draft.NewSpace(view.Box.Inset(0.8))
	end := min(to, p.To)
	y := y0 + ScaleLine
	g.HLine(x0, v.X(end), y, scene.Pen(scene.Marks, crew.CrewFine))
	b.Ticks(g, v, from, end, y)
	var shown []PoleMark
	if from <= 0 && to > 0 {
		shown = append(shown, PoleMark{At: 0, Kind: EndMark, Label: p.Zero, Tag: scene.Tag{Class: "datum"}})
	}
	for _, m := range p.Marks {
		if m.At >= from && m.At <= to {
			shown = append(shown, m)
		}
	}
	for _, m := range shown {
		b.Strokes(g, space, v, y0, m)
	}
	for _, k := range []int{index, index + 1} {
		if k > 0 && k < count {
			b.Joint(g, space, v.X(p.From+L(k)*StripLong), y0, k, k > index)
		}
	}
	b.Figures(g, space, v, from, end, y0)
	b.Caption(g, space, fmt.Sprintf("%s: strip %d of %d", p.Wall, index+1, count), view.Box, y0+CapFoot)
	for _, m := range shown {
		b.Mark(g, space, v, y0, m)
	}
}

// Joint draws the cross by which two strips are joined, and says which two.
func (b *PoleBoard) Joint(g *scene.Group, space *draft.Space, x, y0 float64, k int, right bool) {
	pen := scene.Pen(scene.Marks, crew.CrewFine)
	y := y0 + StripHigh/2
	g = g.Part(scene.Tag{Class: "joint", Data: []scene.Datum{folio.Datum("joint", strconv.Itoa(k))}})
	g.HLine(x-4, x+4, y, pen)
	g.VLine(x, y-4, y+4, pen)
	space.Take(scene.Box{X0: x - 4.4, Y0: y - 4.4, X1: x + 4.4, Y1: y + 4.4})
	t := scene.Text{String: fmt.Sprintf("%d | %d", k, k+1), Height: crew.CrewLarge, Bold: true, Seat: scene.Hanging, Layer: scene.Marks}
	for off := 2.0; off < 100; off += 1.5 {
		t.At = scene.Pt(x+off, y0+2.4)
		if right {
			t.At.X, t.Anchor = x-off, scene.End
		}
		if space.Free(t.Bounds(), 1.2) {
			g.Text(t)
			space.Take(t.Bounds())
			return
		}
	}
}

// Ticks draws millimetres under the line and inches over it, to an eighth.
func (b *PoleBoard) Ticks(g *scene.Group, v draft.View, from, to L, y float64) {
	var points []scene.Point
	each := func(step L, sign float64, long func(k int64) float64) {
		k := int64(from / step)
		for ; L(k)*step <= to; k++ {
			if x := L(k) * step; x >= from {
				points = append(points, scene.Pt(v.X(x), y), scene.Pt(v.X(x), y+sign*long(k)))
			}
		}
	}
	each(length.Millimetre, 1, func(k int64) float64 {
		switch {
		case k%10 == 0:
			return 3
		case k%5 == 0:
			return 2.2
		}
		return 1.4
	})
	each(length.Inch/8, -1, func(k int64) float64 {
		switch {
		case k%8 == 0:
			return 3
		case k%4 == 0:
			return 2.2
		case k%2 == 0:
			return 1.6
		}
		return 1
	})
	g.Path(scene.Pen(scene.Grain, 0.13), scene.Strokes(points...)...)
}

// Figures letters every tenth centimetre under the ticks.
func (b *PoleBoard) Figures(g *scene.Group, space *draft.Space, v draft.View, from, to L, y0 float64) {
	step := 100 * length.Millimetre
	for k := int64(from / step); L(k)*step <= to; k++ {
		x := L(k) * step
		t := scene.Text{At: scene.Pt(v.X(x), y0+CapFoot-0.6), String: strconv.FormatInt(100*k, 10), Height: crew.CrewSmall, Anchor: scene.Middle, Layer: scene.Marks}
		if x >= from && space.Free(t.Bounds(), 0.5) {
			g.Text(t)
			space.Take(t.Bounds())
		}
	}
}

// Caption says which strip it is, under the ticks where there is room.
func (b *PoleBoard) Caption(g *scene.Group, space *draft.Space, text string, box scene.Box, y float64) {
	size := crew.CrewText
	text = scene.Shorten(text, size, true, 80)
	w := scene.Width(text, size, true)
	for _, at := range []float64{20, 120, 60, 160, 30, 130, 70, 40, 100, 150} {
		t := scene.Text{At: scene.Pt(box.X0+at, y), String: text, Height: size, Bold: true, Layer: scene.Marks}
		if at+w < box.W()-2 && space.Free(t.Bounds(), 0.5) {
			g.Text(t)
			space.Take(t.Bounds())
			return
		}
	}
}

// Strokes draws the lines of a mark over the whole height down to the ticks.
func (b *PoleBoard) Strokes(g *scene.Group, space *draft.Space, v draft.View, y0 float64, m PoleMark) {
	x, foot := v.X(m.At), y0+ScaleLine+3.4
	m.Tag.Data = append(append([]scene.Datum{}, m.Tag.Data...), folio.Datum("x", folio.Mm(m.At)))
	g = g.Part(m.Tag)
	up := func(x, width float64, layer scene.Layer, dash scene.Dash) {
		g.VLine(x, y0, foot, scene.Pen(layer, width).As(dash))
	}
	wide := 0.35
	switch m.Kind {
	case SeamMark:
		up(x, crew.CrewHeavy, scene.Seams, scene.Dash{})
	case LineMark:
		up(x, crew.CrewHeavy, scene.Plumb, scene.Dashed(crew.CrewHeavy/2))
		g.Polygon(scene.Style{Layer: scene.Plumb, Fill: scene.Solid(scene.Black)}, scene.Pt(x, foot), scene.Pt(x-1.6, foot+3), scene.Pt(x+1.6, foot+3))
	case EdgeMark:
		up(x-0.5, 0.25, scene.Openings, scene.Dash{})
		up(x+0.5, 0.25, scene.Openings, scene.Dash{})
		wide = 0.65
	case BoxMark:
		g.Line(scene.Pt(x-3, foot-7), scene.Pt(x+3, foot-13), scene.Pen(scene.Boxes, crew.CrewFine))
		g.Line(scene.Pt(x-3, foot-13), scene.Pt(x+3, foot-7), scene.Pen(scene.Boxes, crew.CrewFine))
		up(x, 0.25, scene.Boxes, scene.Dashed(0.25))
	case EndMark:
		up(x, 0.5, scene.Walls, scene.Dash{})
	}
	space.Take(scene.Box{X0: x - wide, Y0: y0, X1: x + wide, Y1: foot})
	if m.Kind == LineMark {
		space.Take(scene.Box{X0: x - 1.6, Y0: foot, X1: x + 1.6, Y1: foot + 3})
	}
	if m.Kind == BoxMark {
		space.Take(scene.Box{X0: x - 3.2, Y0: foot - 13.2, X1: x + 3.2, Y1: foot - 6.8})
	}
}

// Mark letters what a mark is and where, upright beside it: to its right, to its left, else further off on a leader.
func (b *PoleBoard) Mark(g *scene.Group, space *draft.Space, v draft.View, y0 float64, m PoleMark) {
	x := v.X(m.At)
	lines := []string{m.Label}
	if scene.Width(m.Label, crew.CrewText, m.Kind == LineMark) > LabelFoot-LabelTop {
		// what it is over where it is: a figure is never broken
		if name, figure, ok := strings.Cut(m.Label, "  "); ok {
			lines = []string{scene.Shorten(name, crew.CrewText, m.Kind == LineMark, LabelFoot-LabelTop), figure}
		} else {
			lines = scene.Wrap(m.Label, crew.CrewText, m.Kind == LineMark, LabelFoot-LabelTop)
		}
	}
	const pitch = 5.2
	wide := pitch*float64(len(lines)-1) + crew.CrewText
	for _, off := range PoleOffsets(wide) {
		var texts []scene.Text
		ok := true
		for i, s := range lines {
			t := scene.Text{At: scene.Pt(x+off+pitch*float64(i)+crew.CrewText/2, y0+LabelFoot), String: s, Height: crew.CrewText, Bold: m.Kind == LineMark, Angle: 90, Seat: scene.Centred, Layer: scene.Notes}
			if !space.Free(t.Bounds(), 1.2) {
				ok = false
				break
			}
			texts = append(texts, t)
		}
		if !ok {
			continue
		}
		in := g.Part(scene.Tag{Class: "dimension", Data: []scene.Datum{folio.Datum("length", folio.Mm(m.At))}})
		for _, t := range texts {
			in.Text(t)
			space.Take(t.Bounds())
		}
		if off > 8 || off+wide < -8 { // so far off that a line has to lead there
			near := x + off - 0.4
			if off < 0 {
				near = x + off + wide + 0.4
			}
			y := y0 + LabelFoot + 0.5
			in.Line(scene.Pt(x, y), scene.Pt(near, y), scene.Pen(scene.Marks, 0.25))
		}
		return
	}
}

// PoleOffsets are the left edges of a label beside its mark, the near ones first.
func PoleOffsets(wide float64) []float64 {
	list := []float64{1.5, -1.5 - wide}
	for d := 3.0; d < 120; d += 1.5 {
		list = append(list, d, -d-wide)
	}
	return list
}

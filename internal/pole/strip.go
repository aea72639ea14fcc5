package pole

import (
	"fmt"
	"strconv"
	"strings"

	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/length"
	"flitchlay/internal/scene"
)

// Heights on a strip, from its upper edge.
const (
	scaleLine = 44.0 // where the ticks stand on
	labelTop  = 1.6
	labelFoot = 40.0
	capFoot   = 52.6 // baseline of the words under the ticks
)

// How far words stand from their place on a pole, in mm.
const (
	jointAside = 2.0 // of a joint: beside the cross
	crossLong  = 4.0 // the arms of that
	jointLast  = 100.0
	markAside  = 1.5 // of a mark: beside its line
	markFar    = 3.0 // where something stands in that place
	markLast   = 120.0
	asideStep  = 1.5
	leaderFrom = 8.0 // so far off a line has to lead to the words
)

// strip draws one strip of a pole at full size.
func (b *poleBoard) strip(p pole, at part) {
	x0, y0 := b.left, b.top+stripPitch*float64(at.row)
	from, to := at.from, at.from+at.long
	view := scene.View{Box: scene.BoxAt(x0, y0, at.long.MM(), stripHigh), Scale: 1, Metric: b.Metric(), Name: p.title, Ratio: "1:1"}
	g := b.page.Viewed(view, folio.Datum("scale", "1"), folio.Datum("wall", p.wall), folio.Datum("strip", strconv.Itoa(at.index+1)), folio.Datum("from", folio.Mm(from)))
	g.Rect(view.Box, scene.Pen(scene.Frame, 0.18).As(scene.Dashed(0.25)))
	v := draft.View{Origin: scene.Pt(x0-from.MM(), 0), Scale: 1}
	space := draft.NewSpace(view.Box.Inset(0.8))
	end := min(to, p.to)
	y := y0 + scaleLine
	g.HLine(x0, v.X(end), y, scene.Pen(scene.Marks, folio.TapedFine))
	b.ticks(g, v, from, end, y)
	var shown []poleMark
	if from <= 0 && to > 0 {
		shown = append(shown, poleMark{at: 0, kind: endMark, label: p.zero, tag: scene.Tag{Class: "datum"}})
	}
	for _, m := range p.marks {
		if m.at >= from && m.at <= to {
			shown = append(shown, m)
		}
	}
	for _, m := range shown {
		b.strokes(g, space, v, y0, m)
	}
	if at.left {
		b.joint(g, space, v.X(from), y0, at.index, false)
	}
	if at.right {
		b.joint(g, space, v.X(to), y0, at.index+1, true)
	}
	if at.set {
		b.setAt(g, space, v.X(from), y0, from)
	}
	b.figures(g, space, v, from, end, y0, true)
	words := p.title
	if at.count > 1 {
		words = b.Words.Say("pole.strip", p.wall, at.index+1, at.count)
	}
	b.caption(g, space, words, view.Box, y0+capFoot)
	b.figures(g, space, v, from, end, y0, false)
	for _, m := range shown {
		b.mark(g, space, v, y0, m)
	}
}

// joint draws the cross by which two strips are joined, and says which two: as near to the cross as is free, on its side of
// the strip.
func (b *poleBoard) joint(g *scene.Group, space *draft.Space, x, y0 float64, k int, right bool) {
	g = g.Part(scene.Tag{Class: "joint", Data: []scene.Datum{folio.Datum("joint", strconv.Itoa(k))}})
	b.cross(g, space, x, y0)
	t := scene.Text{String: fmt.Sprintf("%d | %d", k, k+1), Height: folio.TapedLarge, Bold: true, Seat: scene.Hanging, Layer: scene.Marks}
	for off := jointAside; off < jointLast; off += asideStep {
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

// setAt draws the cross at the left end of a strip that stands alone, and says beside it at which figure from 0 it is set: no mark stands
// so near that it could be taken for its figure.
func (b *poleBoard) setAt(g *scene.Group, space *draft.Space, x, y0 float64, from L) {
	g = g.Part(scene.Tag{Class: "set", Data: []scene.Datum{folio.Datum("at", folio.Mm(from))}})
	b.cross(g, space, x, y0)
	words := b.Words.Say("pole.at", b.Say(from))
	if from < 0 {
		words = b.Words.Say("pole.before", b.Say(-from))
	}
	t := scene.Text{At: scene.Pt(x+crossLong+jointAside, y0+stripHigh/2), String: words, Height: folio.TapedText, Bold: true, Seat: scene.Centred, Layer: scene.Marks}
	g.Text(t)
	space.Take(t.Bounds())
}

// cross draws a cross at an end of a strip.
func (b *poleBoard) cross(g *scene.Group, space *draft.Space, x, y0 float64) {
	pen := scene.Pen(scene.Marks, folio.TapedFine)
	y := y0 + stripHigh/2
	g.HLine(x-crossLong, x+crossLong, y, pen)
	g.VLine(x, y-crossLong, y+crossLong, pen)
	const out = crossLong + 0.4
	space.Take(scene.Box{X0: x - out, Y0: y - out, X1: x + out, Y1: y + out})
}

// ticks draws millimetres and inches, to an eighth: under the line those of the room, which are numbered, over it the others.
func (b *poleBoard) ticks(g *scene.Group, v draft.View, from, to L, y float64) {
	var points []scene.Point
	each := func(step L, sign float64, long func(k int64) float64) {
		k := int64(from / step)
		for ; L(k)*step <= to; k++ {
			if x := L(k) * step; x >= from {
				points = append(points, scene.Pt(v.X(x), y), scene.Pt(v.X(x), y+sign*long(k)))
			}
		}
	}
	sign := 1.0 // down
	if !b.Metric() {
		sign = -1
	}
	each(length.Millimetre, sign, func(k int64) float64 {
		switch {
		case k%10 == 0:
			return 3
		case k%5 == 0:
			return 2.2
		}
		return 1.4
	})
	each(length.Inch/8, -sign, func(k int64) float64 {
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

// figures numbers the ticks under the line: in an inch room the feet first, then, as far as there is room, the inches; else every
// tenth centimetre.
func (b *poleBoard) figures(g *scene.Group, space *draft.Space, v draft.View, from, to L, y0 float64, first bool) {
	step := 100 * length.Millimetre
	if !b.Metric() {
		if step = length.Inch; first {
			step = length.Foot
		}
	}
	for k := int64(from / step); L(k)*step <= to; k++ {
		x := L(k) * step
		if x < from || !first && (b.Metric() || x%length.Foot == 0) {
			continue
		}
		words := b.Say(x)
		if b.Metric() {
			words = strconv.FormatInt(100*k, 10)
		}
		t := scene.Text{At: scene.Pt(v.X(x), y0+capFoot-0.6), String: words, Height: folio.TapedSmall, Bold: first && !b.Metric(), Anchor: scene.Middle, Layer: scene.Marks}
		if space.Free(t.Bounds(), 0.5) {
			g.Text(t)
			space.Take(t.Bounds())
		}
	}
}

// captionPlaces are where a strip's caption may begin, in mm from its left end. The first figures stand every 100 mm, or
// every foot: 1. right of the first and of the second, clear of them; 2. midway to the next; 3. a little further, where a mark
// stands there; 4. wherever is left.
var captionPlaces = []float64{20, 120, 60, 160, 30, 130, 70, 40, 100, 150, 10, 50, 80, 110, 140, 170, 180, 190}

// caption says which strip it is, under the ticks where there is room.
func (b *poleBoard) caption(g *scene.Group, space *draft.Space, text string, box scene.Box, y float64) {
	size := folio.TapedText
	text = scene.Shorten(text, size, true, 110)
	w := scene.Width(text, size, true)
	for _, at := range captionPlaces {
		t := scene.Text{At: scene.Pt(box.X0+at, y), String: text, Height: size, Bold: true, Layer: scene.Marks}
		if at+w < box.W()-2 && space.Free(t.Bounds(), 1.6) {
			g.Text(t)
			space.Take(t.Bounds())
			return
		}
	}
}

// strokes draws the lines of a mark over the whole height down to the ticks.
func (b *poleBoard) strokes(g *scene.Group, space *draft.Space, v draft.View, y0 float64, m poleMark) {
	x, foot := v.X(m.at), y0+scaleLine+3.4
	m.tag.Data = append(append([]scene.Datum{}, m.tag.Data...), folio.Datum("x", folio.Mm(m.at)))
	g = g.Part(m.tag)
	up := func(x, width float64, layer scene.Layer, dash scene.Dash) {
		g.VLine(x, y0, foot, scene.Pen(layer, width).As(dash))
	}
	wide := 0.35
	switch m.kind {
	case seamMark:
		up(x, folio.TapedHeavy, scene.Seams, scene.Dash{})
	case lineMark:
		up(x, folio.TapedHeavy, scene.Plumb, scene.Dashed(folio.TapedHeavy/2))
		g.Polygon(scene.Style{Layer: scene.Plumb, Fill: scene.Solid(scene.Black)}, scene.Pt(x, foot), scene.Pt(x-1.6, foot+3), scene.Pt(x+1.6, foot+3))
	case edgeMark:
		up(x-0.5, 0.25, scene.Openings, scene.Dash{})
		up(x+0.5, 0.25, scene.Openings, scene.Dash{})
		wide = 0.65
	case boxMark:
		g.Line(scene.Pt(x-3, foot-7), scene.Pt(x+3, foot-13), scene.Pen(scene.Boxes, folio.TapedFine))
		g.Line(scene.Pt(x-3, foot-13), scene.Pt(x+3, foot-7), scene.Pen(scene.Boxes, folio.TapedFine))
		up(x, 0.25, scene.Boxes, scene.Dashed(0.25))
	case endMark:
		up(x, 0.5, scene.Walls, scene.Dash{})
	}
	space.Take(scene.Box{X0: x - wide, Y0: y0, X1: x + wide, Y1: foot})
	if m.kind == lineMark {
		space.Take(scene.Box{X0: x - 1.6, Y0: foot, X1: x + 1.6, Y1: foot + 3})
	}
	if m.kind == boxMark {
		space.Take(scene.Box{X0: x - 3.2, Y0: foot - 13.2, X1: x + 3.2, Y1: foot - 6.8})
	}
}

// mark letters what a mark is and where, upright beside it: to its right, to its left, else further off on a leader.
func (b *poleBoard) mark(g *scene.Group, space *draft.Space, v draft.View, y0 float64, m poleMark) {
	x := v.X(m.at)
	lines := []string{m.label}
	if scene.Width(m.label, folio.TapedText, m.kind == lineMark) > labelFoot-labelTop {
		// what it is over where it is: a figure is never broken
		if name, figure, ok := strings.Cut(m.label, "  "); ok {
			lines = []string{scene.Shorten(name, folio.TapedText, m.kind == lineMark, labelFoot-labelTop), figure}
		} else {
			lines = scene.Wrap(m.label, folio.TapedText, m.kind == lineMark, labelFoot-labelTop)
		}
	}
	const pitch = 5.9 // the bar in a seam's name is higher than letters
	wide := pitch*float64(len(lines)-1) + folio.TapedText
	for _, off := range poleOffsets(wide) {
		var texts []scene.Text
		ok := true
		for i, s := range lines {
			t := scene.Text{At: scene.Pt(x+off+pitch*float64(i)+folio.TapedText/2, y0+labelFoot), String: s, Height: folio.TapedText, Bold: m.kind == lineMark, Angle: 90, Seat: scene.Centred, Layer: scene.Notes}
			if !space.Free(t.Bounds(), 1.2) {
				ok = false
				break
			}
			texts = append(texts, t)
		}
		if !ok {
			continue
		}
		in := g.Part(scene.Tag{Class: "dimension", Data: []scene.Datum{folio.Datum("length", folio.Mm(m.at))}})
		for _, t := range texts {
			in.Text(t)
			space.Take(t.Bounds())
		}
		if off > leaderFrom || off+wide < -leaderFrom { // so far off that a line has to lead there
			near := x + off - 0.4
			if off < 0 {
				near = x + off + wide + 0.4
			}
			y := y0 + labelFoot + 0.5
			in.Line(scene.Pt(x, y), scene.Pt(near, y), scene.Pen(scene.Marks, 0.25))
		}
		return
	}
}

// poleOffsets are the left edges of a label beside its mark: 1. right and left of its line; 2. on both sides further and
// further off.
func poleOffsets(wide float64) []float64 {
	list := []float64{markAside, -markAside - wide}
	for d := markFar; d < markLast; d += asideStep {
		list = append(list, d, -d-wide)
	}
	return list
}

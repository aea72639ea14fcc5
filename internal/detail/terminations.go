package detail

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"flitchlay/internal/draft"
	"flitchlay/internal/face"
	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
)

// given is what is known of how large a termination is: the base, the crown, the deepest jamb that is wrapped; 0 where nothing
// is, so that no scale can be stated.
func given(s *folio.Set, t face.Termination) L {
	switch t.Kind {
	case "base":
		return s.Room.Space.Base
	case "head":
		return s.Room.Space.Crown
	case "reveal":
		return slices.Max(depths(s))
	}
	return 0
}

// depths are the depths of all wrapped jambs.
func depths(s *folio.Set) []L {
	list := []L{0}
	for _, f := range s.Faces {
		for i := range f.W.Openings {
			if f.Wraps(i) {
				list = append(list, f.W.Openings[i].Reveal)
			}
		}
	}
	return list
}

// endScale is the largest scale of a detail at which what is given of a termination stands in a height; 0: not to scale.
//
// Source: as detailScales.
func endScale(s *folio.Set, size L, high float64) int64 {
	if size > 0 {
		for _, scale := range append([]int64{2}, detailScales(s)...) {
			if size.MM()/float64(scale) <= high {
				return scale
			}
		}
	}
	return 0
}

// terminationIn draws how the covering ends in one way: at a scale where its size is given, else not to scale.
func terminationIn(b *folio.Board, cell scene.Box, t face.Termination) {
	k := b.Look
	under, foot := endLines(b, cell, t)
	title := draft.Title{Mark: t.Mark, Page: b.Leaf.Number, Name: strings.ToUpper(t.Words), Under: under, Most: cell.W() - k.Of(10)}
	box := scene.Box{X0: cell.X0 + k.Of(4), Y0: cell.Y0 + k.Of(3), X1: cell.X1 - k.Of(4), Y1: cell.Y1 - foot - max(k.Of(7.5), title.High(k)+k.Of(1))}
	size := given(b.Set, t)
	scale := scaleOver(b.Set, cell, foot, t)
	mark := folio.Datum("termination", t.Mark)
	g := (*scene.Group)(nil)
	if scale > 0 {
		text := draft.Ratio(scale, b.Metric())
		g = b.Page.Viewed(scene.View{Box: box, Scale: float64(scale), Metric: b.Metric(), Name: t.Mark, Ratio: text}, folio.Datum("scale", fmt.Sprint(scale)), mark)
	} else {
		g = b.Page.Part(scene.Tag{Class: "sketch", Title: t.Words, Data: []scene.Datum{mark}})
	}
	long := 0.0
	if scale > 0 {
		long = size.MM() / float64(scale)
	}
	c := box.Centre()
	switch t.Kind {
	case "base", "head":
		endSection(b, g, c, box.H()/2-k.Of(1), long, t.Kind)
	case "reveal":
		jambPlan(b, g, c, long)
	case "inside corner": // reaches further down than up
		endPlan(b, g, c.Add(0, -k.Of(4)), t.Kind)
	default:
		c.Y = math.Min(c.Y, box.Y1-k.Of(planUnder))
		endPlan(b, g, c, t.Kind)
	}
	b.Space.Take(title.Draw(&b.Page.Group, k, scene.Pt(cell.X0+k.Of(5), cell.Y1-foot)))
}

// scaleOver is the scale of a termination over the foot of a cell; 0: not to scale.
func scaleOver(s *folio.Set, cell scene.Box, foot float64, t face.Termination) int64 {
	k := s.Look
	return endScale(s, given(s, t), math.Min(cell.H()-foot-k.Of(12.5), k.Of(44))-k.Of(10))
}

// endLines are the lines under the title of a termination, and how far over the foot of its cell that stands: the scale, plain in a
// narrow cell, and the note, there on a line more.
func endLines(b *folio.Board, cell scene.Box, t face.Termination) (under []string, foot float64) {
	k := b.Look
	wide := cell.W() - k.Of(28)
	lines := scene.Wrap(endNote(b, t), k.Small, false, wide)
	foot = k.Of(16.5) + k.Of(4.2)*float64(max(0, len(lines)-2))
	ratio := "NOT TO SCALE"
	if scale := scaleOver(b.Set, cell, foot, t); scale > 0 {
		ratio = "SCALE " + draft.Ratio(scale, b.Metric()) + ", not to thickness"
		if scene.Width(ratio, k.Small, false) > wide {
			ratio = fmt.Sprintf("SCALE 1:%d, not to thickness", scale)
		}
	}
	return append([]string{ratio}, lines...), foot
}

// endNote says in words what a termination is.
func endNote(b *folio.Board, t face.Termination) string {
	r := b.Room.Rules
	f := b.Style.Format
	switch t.Kind {
	case "base":
		if b.Room.Space.Behind.Base {
			return "Runs behind the base; " + f(r.BottomTrim) + " extra, cut in place."
		}
		return "Cut to the top of the base; " + f(r.BottomTrim) + " extra, cut in place."
	case "head":
		if b.Room.Space.Behind.Crown {
			return "Runs behind the crown; " + f(r.TopTrim) + " extra, cut in place."
		}
		if b.Room.Space.Crown == 0 {
			return "Cut to the ceiling; " + f(r.TopTrim) + " extra, cut in place."
		}
		return "Cut to the crown; " + f(r.TopTrim) + " extra, cut in place."
	case "reveal":
		return "Slit level at head and sill, folded round the jamb, cut at its depth."
	case "jamb":
		return "Cut tight to the casing or jamb; scribed, not caulked."
	case "frame":
		return "Cut against the frame, which is not cut over; " + f(r.EdgeTrim.HalfDown()) + " extra, cut in place."
	case "inside corner":
		return "Ends in the inside corner; " + f(r.EdgeTrim) + " extra, cut in place."
	case "outside edge":
		return "Ends at the outside edge, its end in sight; no bead or trim is given."
	case "trim":
		return "Ends under the trim."
	case "bare":
		return "Ends at a strip without covering: straight cut, edge sealed."
	}
	return f(r.EdgeTrim) + " extra at the raw end, straight cut."
}

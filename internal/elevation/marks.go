package elevation

import (
	"fmt"
	"math"
	"slices"

	"flitchlay/internal/draft"
	"flitchlay/internal/face"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/scene"
)

// labels puts what is lettered into the wall: sheet numbers first, then what stands at seams, at openings and boxes, the
// grain arrow last. Each takes the first free of its places.
func (e *View) labels() {
	e.OpeningNames()
	e.floorMarks()
	e.Numbers()
	if !e.F.Run.Up {
		e.SeamMarks()
		e.ties()
		e.lost()
	}
	e.PlateNames()
	e.leans()
	e.pins()
	e.keeps()
	e.hung()
	e.hidden()
	e.deviationMarks()
	e.grainArrow()
	e.trimNames()
	e.revisionMarks()
	e.heightsElsewhere()
	e.levelElsewhere()
	e.pinLines()
	e.levelLine()
}

// cornerMarks letters the corners at the ends under the dimensions, and the terminations at the sides of the wall.
func (e *View) cornerMarks() {
	k := e.Look
	y := e.below.Box(k).Y1 + k.Of(3.9)
	// the corners of a narrow wall: their circles stand apart, on slanted lines
	apart := 0.0
	if d := e.apart(); d > 0 {
		apart = d
		y += k.Of(2)
	}
	for _, end := range []struct {
		h     ghost
		x     L
		aside float64
	}{{e.ghostLeft, e.From, -apart}, {e.ghostRight, e.To, apart}} {
		if !end.h.shown() {
			continue
		}
		in := e.Group.Part(scene.Tag{Class: "corner", Title: "corner " + end.h.corner, Data: []scene.Datum{folio.Datum("name", end.h.corner), folio.Datum("x", folio.Mm(end.x))}})
		c := scene.Pt(e.V.X(end.x)+end.aside, y)
		if apart > 0 {
			in.Line(scene.Pt(e.V.X(end.x), e.below.Box(k).Y1), c, scene.Pen(scene.Marks, k.Extension))
		}
		box := draft.Disc(in, k, scene.Marks, c, CornerDisc(e.Board.Set, end.h.corner), k.Thin, end.h.corner, k.Small, true)
		e.Space.Take(box)
		if page := e.PageOf("corner " + end.h.corner); page != "" {
			e.Page.Link(box, page)
		}
	}
	for i, r := range e.rawEnds() {
		mark, key := e.EndMark(r.Kind), fmt.Sprintf("end %d", i)
		if mark == "" || r.X < e.From || r.X > e.To || e.elsewhere(key) {
			continue
		}
		if !e.termination(r, mark, key) {
			e.dropAt(key, e.midAt(r.X), "%s, %s, at %s", mark, r.Kind, e.Style.Format(r.X))
		}
	}
}

// rawEnds are the raw ends of the covering that are marked: of level grain, which goes round no corner, both sides of the wall.
func (e *View) rawEnds() []face.RawEnd {
	if !e.F.Run.Up {
		return e.F.RawEnds()
	}
	return []face.RawEnd{{X: e.F.Left, Kind: "side", Words: "side of a wall"}, {X: e.F.Right, Right: true, Kind: "side", Words: "side of a wall"}}
}

// CornerDisc is the diameter of the circle with a corner's name: more from C10 on.
func CornerDisc(s *folio.Set, name string) float64 {
	k := s.Look
	return math.Max(k.Of(6.4), draft.DiscAround(name, k.Small, true, k.Thin))
}

// apart is how far the circles of a narrow wall's corners stand aside; 0 where they stand under their corners.
func (e *View) apart() float64 {
	k := e.Look
	w := e.V.X(e.To) - e.V.X(e.From)
	if w < k.Of(7.6) && e.ghostLeft.shown() && e.ghostRight.shown() {
		return (k.Of(7.6) - w) / 2
	}
	return 0
}

// terminationShares are the heights at which a raw end may be marked, as shares of the covering from its foot: half way
// up, where the eye looks for it, then a little higher or lower by turns.
var terminationShares = []float64{0.5, 0.6, 0.4, 0.7, 0.3}

// termination draws the mark of a raw end on a short line, at the first height that is free: beside the covering, else in it.
// The line of a joint between courses would be taken for the short line: the mark stands clear of it.
func (e *View) termination(r face.RawEnd, mark, key string) bool {
	k := e.Look
	bottom, top := e.F.Cover(r.X)
	sign := -1.0
	if r.Right {
		sign = 1
	}
	d := k.Of(6.4)
	joints := e.jointHeights()
	for _, side := range []float64{sign, -sign} {
		for _, share := range terminationShares {
			z := bottom + L(share*float64(top-bottom))
			edge := e.V.Pt(r.X, z)
			c := edge.Add(side*(k.Of(2)+d/2), 0)
			if !e.Space.Free(scene.BoxRound(c, d, d), k.Of(0.6)) || slices.ContainsFunc(joints, func(j L) bool { return math.Abs(e.V.Y(j)-c.Y) < k.Of(3) }) {
				continue
			}
			in := e.Group.Part(scene.Tag{Class: "termination", Title: r.Words, Data: []scene.Datum{folio.Datum("mark", mark), item(key)}})
			in.Line(edge, c.Add(-side*d/2, 0), scene.Pen(scene.Marks, k.Thin))
			e.Space.Take(draft.Disc(in, k, scene.Marks, c, d, k.Thin, mark, k.Small, false))
			return true
		}
	}
	return false
}

// seamShares are the heights of a mark on a seam, as shares of the stretch of it that is seen, from its top: a little over
// the middle, which the numbers of other things like to take, then by turns over and under that. At the last one the mark
// stands in any case.
var seamShares = []float64{0.42, 0.5, 0.58, 0.34, 0.66, 0.26, 0.74, 0.18, 0.82, 0.1}

// SeamMarks marks the closing seam with a diamond and both numbers, a change of flitch with a hexagon, where its longest
// stretch is seen:
//
//  1. at the first height at which the mark meets no words and its numbers are free at its right, else at its left;
//  2. at the first height at which the mark meets no words, with the numbers on a leader.
func (e *View) SeamMarks() {
	for _, s := range e.F.Seams {
		key := seamKey(s)
		if key == "" || s.X < e.From || s.X > e.To || len(e.F.Shown(s.X)) == 0 || e.elsewhere(key) {
			continue
		}
		words := NumberOf(SheetAt(e.Board.Set, s.LeftSheet)) + " | " + NumberOf(SheetAt(e.Board.Set, s.RightSheet))
		shown := e.F.Shown(s.X)
		long := shown[len(shown)-1]
		for _, h := range shown {
			if h[1]-h[0] > long[1]-long[0] {
				long = h
			}
		}
		if e.seamMark(s, words, e.V.Y(long[1]), e.V.Y(long[0]), false) || e.seamMark(s, words, e.V.Y(long[1]), e.V.Y(long[0]), true) {
			continue
		}
		what := "change of flitch"
		if s.Closing {
			what = "closing seam"
		}
		e.dropAt(key, e.midAt(s.X), "%s %s at %s", what, words, e.Style.Format(s.X))
	}
}

// seamKey is what the mark of a seam is known by; "" for a seam that has none.
func seamKey(s *layout.Seam) string {
	switch {
	case s.Closing:
		return fmt.Sprintf("closing %d", s.Number)
	case s.FlitchChange:
		return fmt.Sprintf("flitch %d", s.Number)
	}
	return ""
}

// seamMark draws the mark of a seam with its numbers at the first height that is free between two, away: the numbers stand on
// a leader.
func (e *View) seamMark(s *layout.Seam, words string, y0, y1 float64, away bool) bool {
	k, key := e.Look, seamKey(s)
	r := k.Of(4)
	for _, share := range seamShares {
		c := scene.Pt(e.V.X(s.X), y0+(y1-y0)*share)
		around := scene.BoxRound(c, 2*r, 2*r)
		if !e.clearOfBoxes(around) {
			continue
		}
		t := scene.Text{At: c.Add(r+k.Of(1), 0), String: words, Height: k.Small, Bold: true, Seat: scene.Centred, Layer: scene.Marks, Field: 0.5}
		if !away {
			if !e.Space.Free(t.Bounds(), t.Field+k.Of(0.85)) {
				t.At, t.Anchor = c.Add(-r-k.Of(1), 0), scene.End
			}
			if !e.Space.Free(t.Bounds(), t.Field+k.Of(0.85)) {
				continue
			}
		} else {
			t.Anchor = scene.Middle
			if !e.outside(t, around, key) {
				return false
			}
		}
		class, title := "closing", "closing seam"
		if !s.Closing {
			class, title = "flitch-change", "change of flitch"
		}
		in := e.Group.Part(scene.Tag{Class: class, Title: title})
		if s.Closing {
			e.Space.Take(draft.Diamond(in, k, scene.Marks, c, k.Of(6), k.Seam, scene.White))
		} else {
			e.Space.Take(draft.Hexagon(in, k, scene.Marks, c, k.Of(8), k.Seam))
		}
		if !away {
			in.Data = append(in.Data, item(key))
			in.Text(t)
			e.Space.Take(t.Bounds().Inset(-t.Field))
		}
		return true
	}
	return false
}

// clearOfBoxes reports whether a box meets nothing lettered; lines may run through it.
func (e *View) clearOfBoxes(b scene.Box) bool { return e.Space.FreeOfWords(b, 0.5) }

// seamAt reports whether a seam stands at x.
func (e *View) seamAt(x L) bool {
	return slices.ContainsFunc(e.F.Seams, func(s *layout.Seam) bool { return s.X == x })
}

// insideCover reports whether a place of the page lies on covering, not in an opening.
func (e *View) insideCover(c scene.Point) bool {
	for _, b := range e.bare() {
		if b.X0-1 < c.X && c.X < b.X1+1 && b.Y0-1 < c.Y && c.Y < b.Y1+1 {
			return false
		}
	}
	return true
}

// PieceMark is the mark of a piece of a wall: the mark of the wall and a small letter, for a figure would make it that of a corner.
func PieceMark(mark string, piece int) string {
	letter := ""
	for n := piece + 1; n > 0; n = (n - 1) / 26 {
		letter = string(rune('a'+(n-1)%26)) + letter
	}
	return mark + letter
}

// OpeningKey is what the enlargement of an opening is looked up by.
func OpeningKey(wall, index int) string { return fmt.Sprintf("opening %d %d", wall, index) }

package elevation

import (
	"fmt"
	"math"

	"flitchlay/internal/draft"
	"flitchlay/internal/finding"
	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
)

// deviation is a finding that the reviewer has to know of, with its number on the drawings and in the list of the cover.
type deviation struct {
	Number int
	finding.Finding
}

// Departs reports whether a finding is a deviation: every must and should that is broken, and every jump of the grain that
// a reader of the wall sees.
func Departs(s *folio.Set, f finding.Finding) bool {
	switch f.Code {
	case finding.NarrowSheet, finding.JumpSeen, finding.FlitchBegins:
		return true
	case finding.ClosingSeam:
		return *f.Measured > s.Room.Rules.ShortSeam
	}
	return f.Level < finding.Ask
}

// Deviations are all findings of which the reviewer has to know, numbered.
func Deviations(s *folio.Set) []deviation {
	var list []deviation
	for _, f := range s.Plan.Findings {
		if Departs(s, f) {
			list = append(list, deviation{len(list) + 1, f})
		}
	}
	return list
}

// deviationMarks puts the number of each deviation of the wall into a pentagon at its place, on a leader where that is not
// free.
func (e *View) deviationMarks() {
	k := e.Look
	for _, d := range Deviations(e.Board.Set) {
		if d.Wall != e.F.Wall || d.At < e.From || d.At > e.To {
			continue
		}
		r := k.Of(4.2)
		if d.Number > 99 {
			r = k.Of(5)
		}
		key := fmt.Sprintf("deviation %d", d.Number)
		if !e.elsewhere(key) && !e.flag(d.At, r, func(c scene.Point) { e.deviationAt(d, c, r) }) {
			e.dropAt(key, e.midAt(d.At), "deviation %d at %s", d.Number, e.Style.Format(d.At))
		}
	}
}

// Places for a flag. Shares are of the height of the covering from its foot, distances in mm on the office page.
var (
	flagShares = []float64{0.16, 0.24, 0.32, 0.4, 0.48, 0.56, 0.64, 0.72} // from low up: the numbers of sheets stand high
	flagAsides = []float64{2.6, 6, 10}                                    // from the place to the mark
	flagDots   = []float64{0.2, 0.5, 0.8, 0.1, 0.9}                       // where the leader of one that stands away ends
)

// flag finds a free place for a mark of size r at a place along the wall, and reports whether there is one:
//
//  1. beside the place on the covering, from low up, at each height close before further off, at the right before the left;
//  2. away from it on a leader, the nearest free place of the page.
func (e *View) flag(at L, r float64, draw func(scene.Point)) bool {
	k := e.Look
	bottom, top := e.F.Cover(at)
	x := e.V.X(at)
	y := func(share float64) float64 { return e.V.Y(bottom) + (e.V.Y(top)-e.V.Y(bottom))*share }
	for _, share := range flagShares {
		for _, dx := range flagAsides {
			for _, sign := range []float64{1, -1} {
				c := scene.Pt(x+sign*(r*0.5+k.Of(dx)), y(share))
				if e.insideCover(c) && e.Space.Free(draft.DeltaBox(c, r), k.Of(0.8)) {
					draw(c)
					return true
				}
			}
		}
	}
	for _, share := range flagDots {
		dot := scene.Pt(x, y(share))
		c, ok := e.callOut(dot, 1.8*r, 2*r, r+k.Of(1))
		if !ok {
			continue
		}
		l := math.Hypot(c.X-dot.X, c.Y-dot.Y)
		e.leader(e.Group, dot, c.Add((dot.X-c.X)/l*r*0.5, (dot.Y-c.Y)/l*r*0.5))
		draw(c)
		return true
	}
	return false
}

// deviationAt draws the pentagon of a deviation.
func (e *View) deviationAt(d deviation, c scene.Point, r float64) {
	k := e.Look
	in := e.Group.Part(scene.Tag{Class: "deviation", Title: d.Message, Data: []scene.Datum{folio.Datum("number", fmt.Sprint(d.Number)), folio.Datum("code", string(d.Code)), item(fmt.Sprintf("deviation %d", d.Number))}})
	in.Polygon(scene.Pen(scene.Marks, k.Seam).Filled(scene.White), c.Add(0, -r), c.Add(r*0.85, -r*0.3), c.Add(r*0.85, r*0.6), c.Add(-r*0.85, r*0.6), c.Add(-r*0.85, -r*0.3))
	in.Text(scene.Text{At: c.Add(0, r*0.06), String: fmt.Sprint(d.Number), Height: k.Small, Bold: true, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Marks})
	e.Space.Take(draft.DeltaBox(c, r))
}

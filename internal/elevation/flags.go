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
		if !e.elsewhere(key) && !e.flagOn(d.At, r, func(c scene.Point) { e.deviationAt(d, c, r) }) {
			e.dropAt(key, e.midAt(d.At), "deviation %d at %s", d.Number, e.Style.Format(d.At))
		}
	}
}

// Places for a flag. Shares are of the height of the covering from its foot, distances in mm on the office page.
var (
	flagShares = []float64{0.16, 0.24, 0.32, 0.4, 0.48, 0.56, 0.64, 0.72} // from low up: the numbers of sheets stand high
	flagAsides = []float64{2.6, 6, 10}                                    // from the place to a mark beside it
	flagDots   = []float64{0.2, 0.35, 0.5, 0.65, 0.8, 0.1, 0.9}           // where the leader of one that stands away ends
)

// flag finds a free place for a mark of size r that may stand beside a place along the wall, and reports whether there is one:
//
//  1. beside the place on the covering, from low up, at each height close before further off, at the right before the left;
//  2. away from it on a leader, the nearest free place of the page.
func (e *View) flag(at L, r float64, draw func(scene.Point)) bool {
	k := e.Look
	for _, y := range e.flagHeights(at, flagShares) {
		for _, dx := range flagAsides {
			for _, sign := range []float64{1, -1} {
				c := scene.Pt(e.V.X(at)+sign*(r*0.5+k.Of(dx)), y)
				if e.insideCover(c) && e.Space.Free(draft.DeltaBox(c, r), k.Of(0.8)) {
					draw(c)
					return true
				}
			}
		}
	}
	return e.flagLed(at, r, draw)
}

// flagOn finds a free place for a mark of size r that has to be taken for no other sheet's or seam's, and reports whether there is one:
//
//  1. on the place, from low up: on its seam, or in its sheet if that is as wide;
//  2. away from it on a leader from a dot on it, the nearest free place of the page.
func (e *View) flagOn(at L, r float64, draw func(scene.Point)) bool {
	k := e.Look
	if at = e.flagPlace(at); e.seamAt(at) || e.flagWide(at) > 2*r {
		for _, y := range e.flagHeights(at, flagShares) {
			c := scene.Pt(e.V.X(at), y)
			left, right := draft.DeltaBox(c, r), draft.DeltaBox(c, r)
			left.X1, right.X0 = c.X-k.Of(flagSeam), c.X+k.Of(flagSeam) // a seam may run through it
			if e.insideCover(c) && e.Space.Free(left, k.Of(0.5)) && e.Space.Free(right, k.Of(0.5)) && e.Space.FreeOfWords(draft.DeltaBox(c, r), k.Of(0.8)) {
				draw(c)
				return true
			}
		}
	}
	return e.flagLed(at, r, draw)
}

// flagSeam is how far off its middle a mark on a seam is clear of lines, in mm on the office page.
const flagSeam = 1.2

// flagPlace is where the mark of a finding points to: its place, or where that lies in an opening the middle of what is seen of the sheet.
func (e *View) flagPlace(at L) L {
	for _, p := range e.F.Parts {
		if p.From >= at || at >= p.To || len(e.visibleAt(p, 0, at)) > 0 {
			continue
		}
		if q := e.widest(p, 0); q.From < q.To && len(e.visibleAt(p, 0, (q.From+q.To)/2)) > 0 {
			return (q.From + q.To) / 2
		}
	}
	return at
}

// flagWide is how wide the sheet at a place is on paper; 0 on a seam.
func (e *View) flagWide(at L) float64 {
	for _, p := range e.F.Parts {
		if p.From < at && at < p.To {
			return e.V.MM(min(p.To, e.To) - max(p.From, e.From))
		}
	}
	return 0
}

// flagHeights are heights of the page as shares of the covering at a place.
func (e *View) flagHeights(at L, shares []float64) (list []float64) {
	bottom, top := e.F.Cover(at)
	for _, share := range shares {
		list = append(list, e.V.Y(bottom)+(e.V.Y(top)-e.V.Y(bottom))*share)
	}
	return list
}

// flagLed finds a free place away from a place along the wall on a leader, the nearest of the page: from a dot on the covering, else, where
// there is none at that place, from anywhere.
func (e *View) flagLed(at L, r float64, draw func(scene.Point)) bool {
	k := e.Look
	for _, cover := range []bool{true, false} {
		for _, y := range e.flagHeights(at, flagDots) {
			dot := scene.Pt(e.V.X(at), y)
			if e.insideCover(dot) != cover {
				continue
			}
			c, ok := e.callOut(dot, 1.8*r, 2*r, r+k.Of(1))
			if !ok {
				continue
			}
			l := math.Hypot(c.X-dot.X, c.Y-dot.Y)
			e.leader(e.Group, dot, c.Add((dot.X-c.X)/l*r*0.5, (dot.Y-c.Y)/l*r*0.5))
			draw(c)
			return true
		}
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

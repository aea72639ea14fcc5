package layout

import (
	"slices"

	"flitchlay/internal/room"
)

// turnsOf is how often a closed run has been gone round where s is, counted from its beginning.
func (r *Run) turnsOf(s L) int {
	if r.Closed && s >= r.Length {
		return int(s / r.Length)
	}
	return 0
}

// lines compares what is struck on the walls of a run.
func (a *arrival) lines(i int) {
	r, now, round := &a.plan.Runs[i], &a.now.plan.Runs[i], a.style.Round
	half := a.room.Veneer.Overlap.HalfDown()
	for k := range r.Sheets {
		s := &r.Sheets[k]
		at := r.SeamAfter(s.Place)
		if !s.Lowest || s.Hung || at == nil || at.Closing || r.strikesNothing(s.Place, at, half) {
			continue
		}
		planned := at.X + half - a.room.Datum(at.Wall)
		read := planned
		if !r.Up {
			read += a.rightBy(i, s.Span, at.Wall, r.turnsOf(s.Right)) - (a.now.room.Datum(at.Wall) - a.room.Datum(at.Wall))
		}
		if round(planned) != round(read) {
			one := a.on(at.Wall)
			one.Lines = append(one.Lines, Struck{Sheet: a.plan.PlaceName(r, s.Place), Planned: planned, Now: read})
		}
	}
	for k := range r.Corners {
		c := &r.Corners[k]
		j := slices.IndexFunc(now.Corners, func(x Corner) bool { return x.Name == c.Name })
		if s := r.sheet(c.Sheet); j < 0 || s == nil || s.Hung || round(c.Skew) == round(now.Corners[j].Skew) {
			continue
		}
		one := a.on(c.RightWall)
		one.Lines = append(one.Lines, Struck{Sheet: a.plan.PlaceName(r, c.Sheet), Planned: -c.Skew, Now: -now.Corners[j].Skew, Askew: true})
	}
}

// strikesNothing reports whether there is no line to strike at the right of a place: nothing hangs at it, or the line would stand
// in a gap.
func (r *Run) strikesNothing(place int, at *Seam, half L) bool {
	if r.Hanging(place).InGap {
		return true
	}
	return slices.ContainsFunc(r.Openings, func(o Opening) bool {
		return o.Gap && o.Wall == at.Wall && r.Line.Distance(o.Left, at.At+half) > 0 && r.Line.DistanceTo(at.At+half, o.Left, o.Right) == 0
	})
}

// cuts finds how far off on the sheets of a run lies what is cut and folded for each wall.
func (a *arrival) cuts(i int) {
	r := &a.plan.Runs[i]
	if r.Up {
		return
	}
	for _, st := range r.Walls {
		for k := range r.Sheets {
			s := &r.Sheets[k]
			if s.Hung || s.InGap || !s.Lowest {
				continue
			}
			for turns := 0; turns <= r.turnsOf(s.Right); turns++ {
				left, right := s.Left-L(turns)*r.Length-st.Shift, s.Right-L(turns)*r.Length-st.Shift
				if !a.cutsOn(r, st, left, right) {
					continue
				}
				by := -a.style.Round(a.rightBy(i, s.Span, st.Wall, turns))
				if one := a.on(st.Wall); by.Abs() > one.Cut.Abs() {
					one.Cut = by
				}
			}
		}
	}
}

// cutsOn reports whether something is cut out of a sheet or folded that covers a wall from left to right.
func (a *arrival) cutsOn(r *Run, st Stretch, left, right L) bool {
	w := &a.room.Walls[st.Wall]
	within := func(from, to L) bool { return from < right && to > left }
	begin := st.Left - st.Shift
	fold := slices.ContainsFunc(r.Corners, func(c Corner) bool { return c.RightWall == st.Wall }) && left < begin && begin < right
	return fold || slices.ContainsFunc(w.Openings, func(o room.Opening) bool { return within(o.FromLeft, o.Right()) }) ||
		slices.ContainsFunc(w.Boxes, func(x room.Box) bool {
			from, _, to, _ := x.CutOut()
			return within(from, to)
		})
}

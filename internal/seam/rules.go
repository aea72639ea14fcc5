package seam

// debt is what a seam owes at its place.
type debt struct{ bends, edges, should int64 }

// prefer returns a preference, or nought where it is less than its must.
func prefer(want, must int64) int64 {
	if want < must {
		return 0
	}
	return want
}

// lacks returns what d lacks of need.
func lacks(need, d int64) int64 { return max(0, need-d) }

// round says whether the run closes, so that distances go the shorter way.
func (s *Span) round() bool { return s.Closed || s.RunClosed }

// after returns how far at lies right of from, in a closed run the way round to the right, 0 <= it < Period.
func (s *Span) after(from, at int64) int64 {
	d := at - from
	if s.round() {
		if d %= s.Period; d < 0 {
			d += s.Period
		}
	}
	return d
}

// way returns the distance of two places, in a closed run the shorter way.
func (s *Span) way(a, b int64) int64 {
	d := max(a-b, b-a)
	if s.round() {
		d %= s.Period
		d = min(d, s.Period-d)
	}
	return d
}

// within says whether at lies on a strip, its ends included.
func (s *Span) within(at int64, strip Strip) bool {
	d := s.after(strip.From, at)
	return 0 <= d && d <= strip.To-strip.From
}

// wayTo returns the distance from at to a strip, nought on it.
func (s *Span) wayTo(at int64, strip Strip) int64 {
	if s.within(at, strip) {
		return 0
	}
	return min(s.way(at, strip.From), s.way(at, strip.To))
}

// cornerDue returns what a wrapped corner asks of a seam at a place.
func (s *Span) cornerDue(at int64, corner Strip) Due { return s.returnDue(s.wayTo(at, corner), NoEdge) }

// returnDue is what a bend asks of a seam so far from it.
func (s *Span) returnDue(d int64, jamb Edge) Due {
	return Due{Cause: Return, Edge: jamb, D: d, Must: s.CornerReturn, Prefer: prefer(s.PreferReturn, s.CornerReturn), bend: true}
}

// openingDues appends what an opening asks of a seam at a place: at most two of each jamb.
func (s *Span) openingDues(list []Due, at int64, o *Opening) []Due {
	a, b := s.way(at, o.A), s.way(at, o.B)
	inside, on := s.within(at, Strip{o.A, o.B}), a == 0 || b == 0
	near, nearer := EdgeA, a
	if b < a {
		near, nearer = EdgeB, b
	}
	clear := prefer(s.PreferClear, s.OpeningClear)
	switch {
	case !inside && o.Wrap:
		return append(list, s.returnDue(nearer, near))
	case !inside:
		return append(list, Due{Cause: Leg, Edge: near, D: nearer, Must: s.Leg, Prefer: prefer(s.PreferLeg, s.Leg)})
	case o.Gap && !on:
		return list
	case !o.Wrap:
		return append(list, Due{Cause: Clear, Edge: EdgeA, D: a, Must: s.OpeningClear, Prefer: clear},
			Due{Cause: Clear, Edge: EdgeB, D: b, Must: s.OpeningClear, Prefer: clear})
	}
	deep := prefer(o.Reveal+s.PreferClear, o.Reveal+s.OpeningClear)
	for i, d := range [2]int64{a, b} {
		jamb := EdgeA + Edge(i)
		if d == 0 { // on the jamb: the pier's side and the opening's
			list = append(list, s.returnDue(0, jamb),
				Due{Cause: Clear, Edge: jamb, Must: s.OpeningClear, Prefer: clear, bend: true})
			continue
		}
		list = append(list, Due{Cause: Reveal, Edge: jamb, D: d, Must: o.Reveal + s.OpeningClear, Prefer: deep, bend: true})
	}
	return list
}

// keepDue returns how deep in a keep-clear stretch a place is: what a seam owes there is the way out.
func (s *Span) keepDue(at int64, keep Strip) Due {
	if !s.within(at, keep) {
		return Due{Cause: Kept}
	}
	return Due{Cause: Kept, D: min(s.way(at, keep.From), s.way(at, keep.To))}
}

// boxDue returns what a plate asks of a seam at a place.
func (s *Span) boxDue(at int64, box Strip) Due {
	return Due{Cause: Plate, D: s.wayTo(at, box), Prefer: s.BoxClear}
}

// nearCorner returns what a seam at a place owes a wrapped corner.
func (s *Span) nearCorner(at int64, corner Strip) debt {
	due := s.cornerDue(at, corner)
	return due.debt()
}

// nearOpening returns what a seam at a place owes an opening.
func (s *Span) nearOpening(at int64, o *Opening) debt {
	var list [4]Due
	var sum debt
	dues := s.openingDues(list[:0], at, o)
	for i := range dues {
		sum.add(dues[i].debt())
	}
	return sum
}

// inKeep returns what a seam at a place owes a keep-clear stretch.
func (s *Span) inKeep(at int64, keep Strip) debt {
	due := s.keepDue(at, keep)
	return due.debt()
}

// nearBox returns what a seam at a place owes a plate.
func (s *Span) nearBox(at int64, box Strip) debt {
	due := s.boxDue(at, box)
	return due.debt()
}

func (d *debt) add(more debt) {
	d.bends += more.bends
	d.edges += more.edges
	d.should += more.should
}

// onMain says whether a seam stands on a main wall: its right end is the next wall's.
func (s *Span) onMain(at int64) bool {
	for _, main := range s.Main {
		if d := s.after(main.From, at); 0 <= d && d < main.To-main.From {
			return true
		}
	}
	return false
}

// feet counts a seen height in whole feet, rounded up.
func (s *Span) feet(seen int64) int64 { return (seen + s.Foot - 1) / s.Foot }

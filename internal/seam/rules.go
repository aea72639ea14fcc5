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

// nearCorner returns what a seam at a place owes a wrapped corner.
func (s *Span) nearCorner(at int64, corner Strip) debt {
	d := s.wayTo(at, corner)
	return debt{
		bends:  lacks(s.CornerReturn, d),
		should: lacks(prefer(s.PreferReturn, s.CornerReturn), d),
	}
}

// nearOpening returns what a seam at a place owes an opening.
func (s *Span) nearOpening(at int64, o *Opening) debt {
	a, b := s.way(at, o.A), s.way(at, o.B)
	inside, on := s.within(at, Strip{o.A, o.B}), a == 0 || b == 0
	clear := prefer(s.PreferClear, s.OpeningClear)
	switch {
	case !inside && o.Wrap:
		return debt{
			bends:  lacks(s.CornerReturn, min(a, b)),
			should: lacks(prefer(s.PreferReturn, s.CornerReturn), min(a, b)),
		}
	case !inside:
		return debt{edges: lacks(s.Leg, min(a, b)), should: lacks(prefer(s.PreferLeg, s.Leg), min(a, b))}
	case o.Gap && !on:
		return debt{}
	case !o.Wrap:
		return debt{
			edges:  lacks(s.OpeningClear, a) + lacks(s.OpeningClear, b),
			should: lacks(clear, a) + lacks(clear, b),
		}
	}
	var owed debt
	for _, d := range [2]int64{a, b} {
		if d == 0 { // on the jamb: the pier's side and the opening's
			owed.bends += s.CornerReturn + s.OpeningClear
			owed.should += prefer(s.PreferReturn, s.CornerReturn) + clear
			continue
		}
		owed.bends += lacks(o.Reveal+s.OpeningClear, d)
		owed.should += lacks(o.Reveal+clear, d)
	}
	return owed
}

// inKeep returns what a seam at a place owes a keep-clear stretch: the way out of it.
func (s *Span) inKeep(at int64, keep Strip) debt {
	if !s.within(at, keep) {
		return debt{}
	}
	return debt{edges: min(s.way(at, keep.From), s.way(at, keep.To))}
}

// nearBox returns what a seam at a place owes a plate.
func (s *Span) nearBox(at int64, box Strip) debt {
	return debt{should: lacks(s.BoxClear, s.wayTo(at, box))}
}

func (d *debt) add(more debt) {
	d.bends += more.bends
	d.edges += more.edges
	d.should += more.should
}

// owes returns all that a seam at a place owes.
func (s *Span) owes(at int64) debt {
	var sum debt
	for _, corner := range s.Corners {
		sum.add(s.nearCorner(at, corner))
	}
	for i := range s.Openings {
		sum.add(s.nearOpening(at, &s.Openings[i]))
	}
	for _, keep := range s.Keep {
		sum.add(s.inKeep(at, keep))
	}
	for _, box := range s.Boxes {
		sum.add(s.nearBox(at, box))
	}
	return sum
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

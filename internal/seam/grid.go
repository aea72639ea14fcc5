package seam

// grid holds the lines seams may fall on, and what each of them costs.
//
// In an open span line 0 is L, lines 1 to lines-1 are places of seams and line `lines` is R. In a closed one lines 0 to
// lines-1 go once round and line lines+i is line i met again; the step before a line met again may be shorter.
type grid struct {
	s     *Span
	lines int
	net   int   // W in steps
	short int64 // what the last step of a closed span lacks of a snap
	owed  []debt
	seen  []int64
	feet  []int64 // seen, counted
	main  []bool  // on a main wall
	// looked says that the seen heights of lines that break a must are known too.
	looked bool
	store  *store // that lends the lists, where the grid is for one solving, else nil
}

func newGrid(s *Span) *grid { return newLentGrid(s, nil) }

// newLentGrid is newGrid with lists of a store, to which free gives them back.
func newLentGrid(s *Span, from *store) *grid {
	g := layGrid(s, from)
	g.look(false)
	return g
}

// newBareGrid is newGrid without the seen heights, of which the musts know nothing.
func newBareGrid(s *Span) *grid { return layGrid(s, nil) }

func layGrid(s *Span, from *store) *grid {
	g := &grid{s: s, net: int(s.NetWidth() / s.Snap), store: from}
	whole := s.whole()
	g.lines = int((whole + s.Snap - 1) / s.Snap)
	if s.Closed {
		g.short = int64(g.lines)*s.Snap - whole
	}
	g.lists()
	for _, corner := range s.Corners {
		g.charge(corner, max(s.CornerReturn, s.PreferReturn), func(at int64) debt { return s.nearCorner(at, corner) })
	}
	for i := range s.Openings {
		g.reachOpening(&s.Openings[i], g.charge)
	}
	for _, keep := range s.Keep {
		g.charge(keep, 0, func(at int64) debt { return s.inKeep(at, keep) })
	}
	for _, box := range s.Boxes {
		g.charge(box, s.BoxClear, func(at int64) debt { return s.nearBox(at, box) })
	}
	for _, main := range s.Main {
		g.mark(Strip{main.From, main.To - 1}, 0, func(i int) { g.main[i] = true })
	}
	return g
}

// lists makes room for what is known of each line.
func (g *grid) lists() {
	if g.store == nil {
		g.owed = make([]debt, g.lines)
		g.seen, g.feet = make([]int64, g.lines), make([]int64, g.lines)
		g.main = make([]bool, g.lines)
		return
	}
	g.owed = g.store.debts.cleared(g.lines)
	g.seen, g.feet = g.store.longs.cleared(g.lines), g.store.longs.cleared(g.lines)
	g.main = g.store.flags.cleared(g.lines)
}

// free gives back what the grid was lent.
func (g *grid) free() {
	g.store.debts.give(g.owed)
	g.store.longs.give(g.seen, g.feet)
	g.store.flags.give(g.main)
}

// look asks for the seen heights: those of lines that break a must only when they are wanted.
func (g *grid) look(broken bool) {
	if g.looked && broken {
		return
	}
	g.looked = broken
	last, feet := int64(-1), int64(0)
	for i := g.first(); i < g.lines; i++ {
		if owed := &g.owed[i]; broken == (owed.bends != 0 || owed.edges != 0) {
			seen := g.s.Seen(g.at(i))
			if seen != last {
				last, feet = seen, g.s.feet(seen)
			}
			g.seen[i], g.feet[i] = seen, feet
		}
	}
}

// first is the first line that can hold a seam.
func (g *grid) first() int {
	if g.s.Closed {
		return 0
	}
	return 1
}

// at returns the place of a line.
func (g *grid) at(i int) int64 {
	switch {
	case !g.s.Closed:
		if i == g.lines {
			return g.s.R
		}
		return g.s.L + int64(i)*g.s.Snap
	case i < 0:
		return g.at(i+g.lines) - g.s.Period
	case i >= g.lines:
		return g.at(i-g.lines) + g.s.Period
	}
	return int64(i) * g.s.Snap
}

// reachOpening says of which lines about both edges an opening asks something; what lies deep inside owes nothing.
func (g *grid) reachOpening(o *Opening, charge func(strip Strip, reach int64, owes func(at int64) debt)) {
	s := g.s
	reach := max(s.CornerReturn, s.PreferReturn)
	if !o.Wrap {
		reach = max(s.Leg, s.PreferLeg)
	}
	inner := max(s.OpeningClear, s.PreferClear) + o.Reveal
	owes := func(at int64) debt { return s.nearOpening(at, o) }
	// Across a closed run the shorter way to an edge may lead round the back.
	if o.B-o.A <= 2*inner || s.round() && o.B-o.A+reach+max(reach, inner) >= s.Period {
		charge(Strip{o.A, o.B}, max(reach, inner), owes)
		return
	}
	charge(Strip{o.A - reach, o.A + inner}, 0, owes)
	charge(Strip{o.B - inner, o.B + reach}, 0, owes)
}

// frees lists the lines that break a must of one corner or opening and no other.
func (g *grid) frees(what Cause, index int) []int {
	var out []int
	alone := func(strip Strip, reach int64, owes func(at int64) debt) {
		g.mark(strip, reach, func(i int) {
			owed, of := g.owed[i], owes(g.at(i))
			if (owed.bends != 0 || owed.edges != 0) && owed.bends == of.bends && owed.edges == of.edges {
				out = append(out, i)
			}
		})
	}
	if what == Return {
		corner := g.s.Corners[index]
		alone(corner, g.s.CornerReturn, func(at int64) debt { return g.s.nearCorner(at, corner) })
		return out
	}
	g.reachOpening(&g.s.Openings[index], alone)
	return out
}

// charge adds what owes says to all lines no further than reach from a strip.
func (g *grid) charge(strip Strip, reach int64, owes func(at int64) debt) {
	g.mark(strip, reach, func(i int) { g.owed[i].add(owes(g.at(i))) })
}

// mark does something for all lines no further than reach from a strip, once for each.
func (g *grid) mark(strip Strip, reach int64, do func(i int)) {
	from, to := strip.From-reach, strip.To+reach
	s := g.s
	if !s.round() {
		g.markLines(from, to, do)
		return
	}
	if to-from >= s.Period {
		g.markLines(g.at(g.first()), g.at(g.lines-1), do)
		return
	}
	low, high := g.at(g.first()), g.at(g.lines-1)
	turns := (low - to) / s.Period
	for from, to = from+(turns-1)*s.Period, to+(turns-1)*s.Period; from <= high; from, to = from+s.Period, to+s.Period {
		g.markLines(from, to, do)
	}
}

// markLines does something for the lines from one place to another.
func (g *grid) markLines(from, to int64, do func(i int)) {
	zero := g.at(0)
	i := g.first()
	if from > zero {
		i = max(i, int((from-zero+g.s.Snap-1)/g.s.Snap))
	}
	for ; i < g.lines && g.at(i) <= to; i++ {
		do(i)
	}
}

package layout

import (
	"slices"
	"sort"

	"flitchlay/internal/seam"
)

// stands reports whether a span can be laid out so that some demands are met and nothing else is asked. It says the same
// as seam.Meets of a span with the other demands left out (TestStandsAgreesWithTheSolver), by whole stretches of lines in
// place of single ones: a conflict and its proposals take thousands of such questions.
func (m *scratch) stands(s *seam.Span, asked []demand) bool {
	least := int64(0)
	m.barred = m.barred[:0]
	for _, d := range asked {
		if d.kind == leastDemand {
			least = s.LeastWidth
			continue
		}
		m.barred = barredBy(m.barred, s, d)
	}
	g := lineGrid{s: s, scratch: m, net: int(s.NetWidth() / s.Snap)}
	if whole := g.measure(); whole < least {
		least = 0
	}
	g.least = max(1, int((least+s.Snap-1)/s.Snap))
	g.setFree()
	if s.Closed {
		g.wrapped = max(1, int((least+g.short+s.Snap-1)/s.Snap))
		return g.standsRound()
	}
	return g.standsOpen(least)
}

// scratch is memory that is used again by the next question.
type scratch struct {
	barred           []seam.Strip
	taken, free, got []lineSpan
}

// barredBy adds the closed stretches in which no seam may stand for a demand's sake.
func barredBy(out []seam.Strip, s *seam.Span, d demand) []seam.Strip {
	switch d.kind {
	case cornerDemand:
		if c := s.Corners[d.index]; s.CornerReturn > 0 {
			out = append(out, seam.Strip{From: c.From - s.CornerReturn + 1, To: c.To + s.CornerReturn - 1})
		}
	case keepDemand:
		k := s.Keep[d.index]
		out = append(out, seam.Strip{From: k.From + 1, To: k.To - 1})
	case openingDemand:
		out = barredByOpening(out, s, &s.Openings[d.index])
	}
	return out
}

// barredByOpening is the same of an opening: beside it for its leg or return, in it for what must be clear of its edges.
func barredByOpening(out []seam.Strip, s *seam.Span, o *seam.Opening) []seam.Strip {
	beside, inside, on := s.Leg, s.OpeningClear, s.OpeningClear
	if o.Wrap {
		beside, inside, on = s.CornerReturn, o.Reveal+s.OpeningClear, s.CornerReturn+s.OpeningClear
	}
	left, right, across := o.A-beside+1, o.B+beside-1, o.B-o.A
	if s.Closed || s.RunClosed {
		left, right, across = max(left, o.B-s.Period+1), min(right, o.A+s.Period-1), min(across, s.Period-across)
	}
	if beside > 0 {
		out = append(out, seam.Strip{From: left, To: o.A - 1}, seam.Strip{From: o.B + 1, To: right})
	}
	if on > 0 || across > 0 && across < inside {
		out = append(out, seam.Strip{From: o.A, To: o.A}, seam.Strip{From: o.B, To: o.B})
	}
	if inside > 0 && !o.Gap {
		out = append(out, seam.Strip{From: o.A + 1, To: min(o.A+inside, o.B) - 1}, seam.Strip{From: max(o.B-inside, o.A) + 1, To: o.B - 1})
	}
	return out
}

// lineGrid counts the lines of a span as the solver does: a snap apart from L, or in a closed span from 0, where line
// lines + i is line i met again and the step that comes to it may be shorter.
type lineGrid struct {
	s *seam.Span
	*scratch
	lines   int
	net     int
	short   int64 // what the last step of a closed span lacks of a snap
	least   int   // steps that a sheet takes at least
	wrapped int   // the same of one that goes over line 0
}

// measure counts the lines and returns the length covered.
func (g *lineGrid) measure() int64 {
	whole := g.s.R - g.s.L
	if g.s.Closed {
		whole = g.s.Period
	}
	g.lines = int((whole + g.s.Snap - 1) / g.s.Snap)
	if g.s.Closed {
		g.short = int64(g.lines)*g.s.Snap - whole
	}
	return whole
}

// lineSpan is a row of lines from the first to the last.
type lineSpan struct{ from, to int }

// setFree lists the rows of lines on which a seam may stand.
func (g *lineGrid) setFree() {
	s := g.s
	zero, first, end := s.L, 1, s.R
	if s.Closed {
		zero, first, end = 0, 0, s.Period
	}
	g.taken, g.free = g.taken[:0], g.free[:0]
	add := func(from, to int64) {
		if to < zero || from > end {
			return
		}
		row := lineSpan{first, int((to - zero) / s.Snap)}
		if from > zero {
			row.from = max(first, int((from-zero+s.Snap-1)/s.Snap))
		}
		if row.to = min(row.to, g.lines-1); row.from <= row.to {
			g.taken = append(g.taken, row)
		}
	}
	for _, x := range g.barred {
		switch {
		case x.From > x.To:
		case !s.Closed && !s.RunClosed:
			add(x.From, x.To)
		default:
			for at := ((zero-x.To)/s.Period - 1) * s.Period; x.From+at <= end; at += s.Period {
				add(x.From+at, x.To+at)
			}
		}
	}
	slices.SortFunc(g.taken, func(a, b lineSpan) int { return a.from - b.from })
	for _, x := range g.taken {
		if x.from > first {
			g.free = append(g.free, lineSpan{first, x.from - 1})
		}
		first = max(first, x.to+1)
	}
	if first < g.lines {
		g.free = append(g.free, lineSpan{first, g.lines - 1})
	}
}

// standsOpen goes from the left end to the right one.
func (g *lineGrid) standsOpen(least int64) bool {
	s := g.s
	first, last, only := s.NetWidth(), s.NetWidth(), s.NetWidth()
	switch {
	case s.LeftSeam && s.RightSeam:
	case s.LeftSeam:
		last = s.EndWidth(s.TrimRight)
		only = last
	case s.RightSeam:
		first = s.EndWidth(s.TrimLeft)
		only = first
	default:
		first, last, only = s.EndWidth(s.TrimLeft), s.EndWidth(s.TrimRight), s.Gross-s.TrimLeft-s.TrimRight
	}
	whole := s.R - s.L
	if whole <= only {
		return true
	}
	if whole < least || whole-least < 0 || first <= 0 {
		return false
	}
	from := lineSpan{g.least, int(first / s.Snap)}
	to := lineSpan{max(1, int((whole-last+s.Snap-1)/s.Snap)), int((whole - least) / s.Snap)}
	return g.reaches(from, to)
}

// standsRound goes once round from each line of the net width that has the fewest to go from: a seam stands in every one.
func (g *lineGrid) standsRound() bool {
	if g.s.Period <= g.s.NetWidth() {
		return len(g.free) > 0
	}
	for _, x := range g.free {
		g.free = append(g.free, lineSpan{x.from + g.lines, x.to + g.lines})
	}
	for _, row := range g.fewest() {
		for at := row.from; at <= row.to; at++ {
			if g.reaches(lineSpan{at, at}, lineSpan{at + g.lines, at + g.lines}) {
				return true
			}
		}
	}
	return false
}

// fewest is what is free in that net width, within the first turn and the beginning of the second.
func (g *lineGrid) fewest() []lineSpan {
	twice := g.free
	within := func(from int) (rows []lineSpan, count int) {
		i := sort.Search(len(twice), func(i int) bool { return twice[i].to >= from })
		for ; i < len(twice) && twice[i].from < from+g.net; i++ {
			row := lineSpan{max(twice[i].from, from), min(twice[i].to, from+g.net-1)}
			rows, count = append(rows, row), count+row.to-row.from+1
		}
		return rows, count
	}
	best, least := within(0)
	for _, x := range twice {
		if x.to >= g.lines {
			break
		}
		if rows, count := within(x.to + 1); count < least {
			best, least = rows, count
		}
	}
	for i, row := range best { // of the second turn: the same lines in the first
		if row.from >= g.lines {
			best[i] = lineSpan{row.from - g.lines, row.to - g.lines}
		}
	}
	return best
}

// reaches reports whether a row of sheets leads from one of some lines to one of others.
func (g *lineGrid) reaches(from, to lineSpan) bool {
	free := g.free
	g.got = g.got[:0]
	done := -1 // up to here it is known which lines are reached
	add := func(a, b int) {
		a = max(a, done+1)
		if a > b {
			return
		}
		i := sort.Search(len(free), func(i int) bool { return free[i].to >= a })
		for ; i < len(free) && free[i].from <= b; i++ {
			g.got = append(g.got, lineSpan{max(free[i].from, a), min(free[i].to, b)})
		}
		done = b
	}
	add(from.from, from.to)
	for i := 0; i < len(g.got); i++ {
		x := g.got[i]
		if x.from > to.to {
			return false
		}
		if x.to >= to.from {
			return true
		}
		if !g.s.Closed || x.from >= g.lines {
			add(x.from+g.least, x.to+g.net)
			continue
		}
		add(x.from+g.least, min(x.to+g.net, g.lines-1))
		add(max(x.from+g.wrapped, g.lines), x.to+g.net)
	}
	return false
}

package oracletest

import (
	"math/rand/v2"
	"slices"

	"flitchlay/internal/seam"
)

// standsApart tells whether a layout keeps its closing seam, the end of its first sheet and the beginning of its last one
// out of the strips in which they may not stand.
func standsApart(span seam.Span, seams []int64, closing int) bool {
	sheets := Sheets(span, seams, closing)
	if span.Closed && inStrips(span, seams[closing], span.NotClosing) {
		return false
	}
	return !inStrips(span, sheets[0].Right, span.NotFirst) && !inStrips(span, sheets[len(sheets)-1].Left, span.NotLast)
}

// inStrips tells whether a place is in one of the strips; in a closed span it is one place with every turn.
func inStrips(span seam.Span, at int64, strips []seam.Strip) bool {
	return slices.ContainsFunc(strips, func(x seam.Strip) bool {
		if !span.Closed {
			return x.From <= at && at <= x.To
		}
		for at > x.From {
			at -= span.Period
		}
		for at < x.From {
			at += span.Period
		}
		return at <= x.To
	})
}

// Apart adds strips to a case in which its closing, first and last seam may not stand.
func (c Case) Apart(rng *rand.Rand) Case {
	g := &generator{rng: rng, snap: c.Span.Snap, stride: max(1, NetWidth(&c.Span)/c.Span.Snap/4), span: c.Span}
	strips := func() (list []seam.Strip) {
		for range g.below(3) {
			list = append(list, g.strip(5))
		}
		return list
	}
	// near an end is where first and last seams stand
	beside := func(end int64) (list []seam.Strip) {
		if g.chance(50) {
			from := end + g.between(-4, 4)*g.stride*g.snap
			list = append(list, seam.Strip{From: from, To: from + g.steps(0, 3)})
		}
		return list
	}
	if g.chance(70) {
		c.Span.NotFirst = append(strips(), beside(c.Span.L)...)
	}
	if g.chance(70) {
		c.Span.NotLast = append(strips(), beside(c.Span.R)...)
	}
	if c.Span.Closed && g.chance(60) {
		c.Span.NotClosing = strips()
	}
	return c
}

// Others lists layouts of a span one after another by looking at all of them in their order: the best first, then the best
// that is another than all before it, and so on. One is another where it closes, its first sheet ends or, in an open span, its
// last one begins further than apart from where that of the other does. All keep what pins the best keeps.
func Others(span seam.Span, aim seam.Aim, apart int64) (list []seam.Layout) {
	all, dropped := keeping(span)
	slices.SortFunc(all, func(a, b candidate) int { return compare(span, a, b, aim) })
	far := func(a, b int64) bool {
		if span.Closed {
			return distance(&span, a, b) > apart
		}
		return max(a-b, b-a) > apart
	}
	for _, c := range all {
		like := slices.ContainsFunc(list, func(l seam.Layout) bool {
			mine, others := Sheets(span, c.seams, c.closing), Sheets(span, l.Seams, l.Closing)
			if far(mine[0].Right, others[0].Right) {
				return false
			}
			if span.Closed {
				return !far(c.seams[c.closing], l.Seams[l.Closing])
			}
			return !far(mine[len(mine)-1].Left, others[len(others)-1].Left)
		})
		if !like {
			list = append(list, c.layout(dropped))
		}
	}
	return list
}

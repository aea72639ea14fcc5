package layout

import (
	"cmp"
	"slices"
)

// part is what of a wall one place covers: from x to x, -far or far where it goes on round the corner.
type part struct {
	place    int
	from, to L
}

// parts finds what of a wall each place of the run covers, from left to right.
func (r *Run) parts(st Stretch) []part {
	var out []part
	for i := range r.Sheets {
		s := &r.Sheets[i]
		if i > 0 && r.Sheets[i-1].Place == s.Place {
			continue
		}
		for _, x := range r.Stretches(s, st) {
			out = append(out, part{s.Place, x[0], x[1]})
		}
	}
	slices.SortFunc(out, func(p, q part) int { return cmp.Compare(p.from, q.from) })
	return out
}

// Stretches are what of a wall a sheet covers, from x to x: more than a thousand metres off where it goes on past the
// wall's end. In the strip that a leaning joint sweeps both walls are there, each at its own heights, and a seam in it
// cuts both.
//
//	left | /| right         x of the seam is past the joint at the floor,
//	     |/ |                and before it at the ceiling
//	    /|  |
//	   / |
//	     seam
func (r *Run) Stretches(s *Sheet, st Stretch) [][2]L {
	var out [][2]L
	from, to := r.sweep(st)
	left, right := r.footing(s)
	turns := []L{0}
	if r.Closed {
		turns = []L{-r.Length, 0, r.Length}
	}
	for _, turn := range turns {
		a, b := max(left, from+turn), min(right, to+turn)
		if a >= b {
			continue
		}
		x := [2]L{a - turn - st.Shift, b - turn - st.Shift}
		if a == from+turn {
			x[0] = -far
		}
		if b == to+turn {
			x[1] = far
		}
		out = append(out, x)
	}
	return out
}

// sweep is as far as a wall goes at any height: where the covering goes on past its end, as far out as the end leans.
func (r *Run) sweep(st Stretch) (from, to L) {
	w := &r.Line.Room.Walls[st.Wall]
	from, to = st.Left, st.Right
	if r.goesOn(st.Left) {
		from += min(0, w.LeanLeft)
	}
	if r.goesOn(st.Right) {
		to += max(0, w.LeanRight)
	}
	return from, to
}

// goesOn reports whether the covering goes on past a joint of two walls.
func (r *Run) goesOn(joint L) bool {
	for _, span := range r.Line.Spans {
		left, right := span.L-min(0, span.LeftEnd.Lean), span.R-max(0, span.RightEnd.Lean)
		if span.Closed || left < joint && joint < right || r.Closed && left < joint+r.Length && joint+r.Length < right {
			return true
		}
	}
	return false
}

// footing is where a sheet's edges stand at floor level: at a raw end that leans out of its wall, inside the net width.
func (r *Run) footing(s *Sheet) (left, right L) {
	left, right = s.Left, s.Right
	span, line := &r.Spans[s.Span], &r.Line.Spans[s.Span]
	if line.Closed {
		return left, right
	}
	if s.Place == span.FirstSheet {
		left -= min(0, line.LeftEnd.Lean)
	}
	if s.Place == span.LastSheet {
		right -= max(0, line.RightEnd.Lean)
	}
	return left, right
}

package seam

import (
	"cmp"
	"math/bits"
)

// NetWidth returns W: what an inner sheet covers, on the grid.
func (s Span) NetWidth() int64 { return (s.Gross - s.Overlap) / s.Snap * s.Snap }

// EndWidth returns E: what a sheet with one raw end covers at most, by the trim of that end.
func (s Span) EndWidth(trim int64) int64 { return s.Gross - s.Overlap/2 - trim }

// whole returns the length covered.
func (s *Span) whole() int64 {
	if s.Closed {
		return s.Period
	}
	return s.R - s.L
}

// sliverWidth is the width that an end sheet at a raw end is a sliver under: halfway from LeastWidth to PreferWidth.
func (s *Span) sliverWidth() int64 {
	if s.PreferWidth < s.LeastWidth {
		return 0
	}
	return (s.LeastWidth + s.PreferWidth) / 2
}

// rawEnds says which ends of the span are raw.
func (s *Span) rawEnds() (left, right bool) {
	return !s.Closed && !s.LeftSeam, !s.Closed && !s.RightSeam
}

// raw says whether an end of the span is raw.
func (s *Span) raw() bool {
	left, right := s.rawEnds()
	return left || right
}

// Plus returns the sum of two squares' sums.
func (a Square) Plus(b Square) Square {
	lo, carry := bits.Add64(a.Lo, b.Lo, 0)
	hi, _ := bits.Add64(a.Hi, b.Hi, carry)
	return Square{hi, lo}
}

// Compare returns -1, 0 or +1 as a is less than, equal to or more than b.
func (a Square) Compare(b Square) int {
	switch {
	case a == b:
		return 0
	case a.Hi < b.Hi || a.Hi == b.Hi && a.Lo < b.Lo:
		return -1
	}
	return 1
}

// times returns so many times a, up to 128 bits.
func (a Square) times(n int64) Square {
	hi, lo := bits.Mul64(a.Lo, uint64(n))
	return Square{hi + a.Hi*uint64(n), lo}
}

// squareOf returns the square of a length.
func squareOf(length int64) Square {
	side := uint64(max(length, -length))
	hi, lo := bits.Mul64(side, side)
	return Square{hi, lo}
}

// Score returns the score of a given layout: seams as in a Layout, closing the index of the closing seam or -1. The
// seams need not lie on the grid. It is the sum of what Charges lists.
func (s Span) Score(seams []int64, closing int) Score {
	var sum Score
	s.charges(seams, closing, func(c Charge) { sum.add(&c.Adds) })
	return sum
}

// lay returns the edges of all sheets in hanging order, and the seams that are scored, the closing one first.
func (s *Span) lay(seams []int64, closing int) (edges, scored []int64) {
	if !s.Closed {
		edges = append(append([]int64{s.L}, seams...), s.R)
		return edges, seams
	}
	for i := range seams {
		at := seams[(closing+i)%len(seams)]
		if closing+i >= len(seams) {
			at += s.Period
		}
		edges = append(edges, at)
	}
	return append(edges, edges[0]+s.Period), edges
}

// home brings a place of a closed span back into 0 <= s < Period.
func (s *Span) home(at int64) int64 {
	if s.Closed {
		return s.after(0, at)
	}
	return at
}

// evened says whether the difference of the end sheets counts.
func (s *Span) evened() bool { return s.OneWall && !s.Closed && !s.LeftSeam && !s.RightSeam }

// Compare returns -1, 0 or +1 as a is better than, as good as or worse than b in the order of an aim; far right is not
// looked at.
func (a Score) Compare(b Score, aim Aim) int {
	var pairs [][2]int64
	switch aim {
	case Steady:
		pairs = [][2]int64{{a.NarrowMain, b.NarrowMain}, {a.Narrow, b.Narrow}, {a.Sheets, b.Sheets},
			{a.NarrowJump, b.NarrowJump}, {a.Sliver, b.Sliver}, {a.Jump, b.Jump}, {a.Should, b.Should}, {a.Seen, b.Seen},
			{a.Difference, b.Difference}}
	case Fewest:
		pairs = [][2]int64{{a.Sheets, b.Sheets}, {a.NarrowMain, b.NarrowMain}, {a.Narrow, b.Narrow},
			{a.NarrowJump, b.NarrowJump}, {a.Sliver, b.Sliver}, {a.Jump, b.Jump}, {a.Should, b.Should}, {a.Seen, b.Seen},
			{a.Difference, b.Difference}}
	case Even:
		pairs = [][2]int64{{a.Sheets, b.Sheets}, {a.Should, b.Should},
			{0, int64(b.Unevenness.Compare(a.Unevenness))}, {a.Seen, b.Seen}}
	}
	pairs = append([][2]int64{{a.Bends, b.Bends}, {a.Edges, b.Edges}, {a.Closing, b.Closing}}, pairs...)
	for _, pair := range pairs {
		if c := cmp.Compare(pair[0], pair[1]); c != 0 {
			return c
		}
	}
	return 0
}

package seam

import (
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
)

// FuzzSolve makes small spans and checks what must hold of any answer: no panic, nothing that no layout breaks is
// broken, and scoring the seams again gives the score.
func FuzzSolve(f *testing.F) {
	for seed := range uint64(40) {
		f.Add(seed, seed*3, uint8(seed), uint8(seed%7))
	}
	f.Fuzz(func(t *testing.T, a, b uint64, lines, crowd uint8) {
		span, _ := anySpan(rand.New(rand.NewPCG(a, b)), 2+int(lines)%60, int(crowd)%8)
		for aim := Steady; aim <= Even; aim++ {
			got, err := Solve(span, aim)
			if err != nil {
				continue
			}
			require.Equal(t, got.Score, span.Score(got.Seams, got.Closing), "scored again")
			checkHard(t, span, got)
		}
	})
}

// checkHard holds a layout against what no layout breaks.
func checkHard(t *testing.T, s Span, got Layout) {
	require.True(t, slices.IsSorted(got.Seams))
	edges := append([]int64{s.L}, append(slices.Clone(got.Seams), s.R)...)
	zero := s.L
	if s.Closed {
		require.NotEmpty(t, got.Seams)
		require.GreaterOrEqual(t, got.Closing, 0)
		require.Less(t, got.Closing, len(got.Seams))
		edges, zero = append(slices.Clone(got.Seams), got.Seams[0]+s.Period), 0
		require.GreaterOrEqual(t, got.Seams[0], int64(0))
		require.Less(t, got.Seams[len(got.Seams)-1], s.Period)
	} else {
		require.Equal(t, -1, got.Closing)
	}
	for _, at := range got.Seams {
		require.Zero(t, (at-zero)%s.Snap, "off the grid")
	}
	last := len(edges) - 2
	for i := range edges[1:] {
		width := edges[i+1] - edges[i]
		leftRaw := i == 0 && !s.Closed && !s.LeftSeam
		rightRaw := i == last && !s.Closed && !s.RightSeam
		most := s.NetWidth()
		switch {
		case leftRaw && rightRaw:
			most = s.Gross - s.TrimLeft - s.TrimRight
		case leftRaw:
			most = s.EndWidth(s.TrimLeft)
		case rightRaw:
			most = s.EndWidth(s.TrimRight)
		}
		require.Positive(t, width)
		require.LessOrEqual(t, width, most)
	}
	for i, pin := range s.Pins {
		if !slices.Contains(got.Dropped, i) {
			require.True(t, kept(s, pin, got, edges), "pin %d is not kept", i)
		}
	}
}

// kept says whether a layout keeps a pin.
func kept(s Span, pin Pin, got Layout, edges []int64) bool {
	near := func(at int64) bool { return 2*s.plainWay(at, pin.At) <= s.Snap }
	if pin.Put == PutClose {
		return got.Closing >= 0 && near(got.Seams[got.Closing]) || s.RightSeam && near(s.R)
	}
	if pin.Put != PutMiddle {
		if slices.ContainsFunc(got.Seams, near) || !s.Closed && (s.LeftSeam && near(s.L) || s.RightSeam && near(s.R)) {
			return true
		}
	}
	for i := range edges[1:] {
		sum := edges[i] + edges[i+1]
		middle := (sum - ((sum%2)+2)%2) / 2
		if pin.Put != PutSeam && s.NetWidth()-(edges[i+1]-edges[i]) < s.Snap && near(middle) {
			return true
		}
	}
	return false
}

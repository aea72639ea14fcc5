package seam_test

import (
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
	"flitchlay/internal/seam"
	"flitchlay/internal/seam/oracletest"
)

// Where a room is too long for any oracle to try every closing seam, Solve's own closing seam (in an open span its
// first seam) and some others are tried: from its own the plain sweep comes to the same layout, from no other to a
// better one, nor to one as good and farther right.
func TestSolveLongRooms(t *testing.T) {
	t.Parallel() // one room after the other
	first, count := seeds(t, 1)
	longest := int64(36)
	if count > 200 {
		count /= effort.Waited(1200, 100)
		longest = 120
	}
	for seed := first; seed < first+uint64(count); seed++ {
		const inch = 203_200
		rng := rand.New(rand.NewPCG(seed, 8))
		closed := rng.Int64N(3) > 0
		c := room(rng, inch, (30+rng.Int64N(longest-29))*12*inch+rng.Int64N(inch), inch/16, closed, seam.Aim(rng.Int64N(3)))
		if rng.Int64N(4) == 0 {
			tighten(&c.Span, inch)
		}
		if rng.Int64N(2) == 0 {
			c.Span.Pins = nil
		}
		got, err := seam.Solve(c.Span, c.Aim)
		require.NoError(t, err)
		score, ok := oracletest.Score(c.Span, got.Seams, got.Closing)
		require.True(t, ok)
		require.Equal(t, score, got.Score)

		kept := c.Span
		kept.Pins = nil
		for i, pin := range c.Span.Pins {
			if slices.Contains(got.Dropped, i) {
				require.False(t, oracletest.Keeps(c.Span, got.Seams, got.Closing, pin), "seed %d: %s", seed, c)
				continue
			}
			kept.Pins = append(kept.Pins, pin)
		}
		got.Dropped = nil
		own := got.Seams[max(0, got.Closing)]
		same, ok := oracletest.SweepFrom(kept, c.Aim, own)
		require.True(t, ok)
		require.Equal(t, got, same, "seed %d: from its own seam %d: %s", seed, own, c)

		for _, other := range others(rng, kept, own) {
			layout, ok := oracletest.SweepFrom(kept, c.Aim, other)
			if !ok {
				continue
			}
			order := oracletest.CompareScores(got.Score, layout.Score, c.Aim)
			require.True(t, order < 0 || order == 0 && other < own, "seed %d: from %d %+v, but got %+v: %s", seed, other, layout, got, c)
		}
	}
}

// others picks some lines to try beside a layout's own: its neighbours, and of the rest those that owe and show least.
func others(rng *rand.Rand, span seam.Span, own int64) []int64 {
	grid := oracletest.Grid(span)
	i := slices.Index(grid, own)
	picked := []int64{grid[max(i-1, 0)], grid[min(i+1, len(grid)-1)]}
	if span.Closed {
		slices.SortStableFunc(grid, func(a, b int64) int {
			x, y := oracletest.PlaceAt(span, a), oracletest.PlaceAt(span, b)
			return oracletest.CompareScores(seam.Score{Bends: x.Bends, Edges: x.Edges, Closing: x.Feet}, seam.Score{Bends: y.Bends, Edges: y.Edges, Closing: y.Feet}, seam.Steady)
		})
		grid = grid[:len(grid)/8]
	} else {
		grid = grid[:min(len(grid), int(span.Gross/span.Snap))]
	}
	for range 2 {
		picked = append(picked, grid[rng.IntN(len(grid))])
	}
	return slices.DeleteFunc(picked, func(s int64) bool { return s == own })
}

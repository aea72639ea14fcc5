package seam_test

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
	"flitchlay/internal/seam"
	"flitchlay/internal/seam/oracletest"
)

// Where the closing, the first and the last seam may not stand everywhere, Solve still finds what trying every set of grid
// lines finds.
func TestApartAgainstBruteForce(t *testing.T) {
	first, count := seeds(t, 250)
	if count > 250 {
		count /= effort.Waited(2, 1)
	}
	apart := func(opts oracletest.Options) func(seed uint64) oracletest.Case {
		return func(seed uint64) oracletest.Case {
			rng := rand.New(rand.NewPCG(seed, 23))
			return oracletest.Random(rng, opts).Apart(rng)
		}
	}
	compareCases(t, first, count, oracletest.Best, apart(oracletest.Small))
	compareCases(t, first, count/20, oracletest.Best, apart(oracletest.Largest))
	compareCases(t, first, count/20, oracletest.Sweep, apart(oracletest.Middling))
}

// The seams that Apart speaks of, of one layout each: with seams, with one, with none, closed.
func TestFirstAndLast(t *testing.T) {
	for why, c := range map[string]struct {
		span        seam.Span
		layout      seam.Layout
		first, last int64
	}{
		"three seams":                      {seam.Span{L: 5, R: 90}, seam.Layout{Seams: []int64{20, 40, 60}, Closing: -1}, 20, 60},
		"one seam":                         {seam.Span{L: 5, R: 90}, seam.Layout{Seams: []int64{40}, Closing: -1}, 40, 40},
		"a sheet alone":                    {seam.Span{L: 5, R: 90}, seam.Layout{Closing: -1}, 90, 5},
		"closed":                           {seam.Span{Closed: true, RunClosed: true, Period: 100}, seam.Layout{Seams: []int64{10, 50, 80}, Closing: 1}, 80, 10},
		"closed, past the first":           {seam.Span{Closed: true, RunClosed: true, Period: 100}, seam.Layout{Seams: []int64{10, 50, 80}, Closing: 2}, 10, 50},
		"a sheet alone, all the way round": {seam.Span{Closed: true, RunClosed: true, Period: 100}, seam.Layout{Seams: []int64{30}}, 30, 30},
	} {
		if first, last := c.span.First(c.layout), c.span.Last(c.layout); first != c.first || last != c.last {
			t.Errorf("%s: got %d and %d, want %d and %d", why, first, last, c.first, c.last)
		}
	}
}

// Others gives what going over all layouts in their order gives: every one that is another than all before it, to the last.
func TestOthersAgainstBruteForce(t *testing.T) {
	t.Parallel() // one span after the other
	first, count := seeds(t, 150)
	several := 0
	for i := range count {
		seed := first + uint64(i)
		rng := rand.New(rand.NewPCG(seed, 24))
		c := oracletest.Random(rng, oracletest.Small)
		apart := rng.Int64N(3 * c.Span.Snap)
		want := oracletest.Others(c.Span, c.Aim, apart)
		if len(want) == 0 {
			continue
		}
		best, err := seam.Solve(c.Span, c.Aim)
		require.NoError(t, err)
		got := []seam.Layout{best}
		for o := seam.NewOthers(c.Span, c.Aim, best, apart); ; {
			next, ok := o.Next()
			if !ok {
				break
			}
			got = append(got, next)
		}
		require.Len(t, got, len(want), "seed %d, %d apart: %s", seed, apart, c)
		for k := range want {
			require.Equal(t, want[k].Score, got[k].Score, "seed %d, %d apart, layout %d: %s", seed, apart, k, c)
			require.ElementsMatch(t, want[k].Seams, got[k].Seams, "seed %d, %d apart, layout %d: %s", seed, apart, k, c)
			require.Equal(t, want[k].Closing, got[k].Closing, "seed %d, %d apart, layout %d: %s", seed, apart, k, c)
			require.Equal(t, want[k].Dropped, got[k].Dropped, "seed %d", seed)
		}
		if len(want) > 2 {
			several++
		}
	}
	require.Greater(t, several, count/4)
}

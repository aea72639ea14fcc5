package seam

import (
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
)

// The sweep over every line finds what the one over the lanes alone finds, forth and back, with last sheets of any cost.
func TestDenseSweepAgainstPlain(t *testing.T) {
	t.Parallel()
	jumps, slims, caps, ways, tried := 0, 0, 0, 0, 0
	for seed := range uint64(effort.Of(12, 200)) {
		r := rand.New(rand.NewPCG(seed, 7))
		span := room(seed, 0, true)
		span.Snap = inch / 16
		span.LeastWidth = int64(r.IntN(12)) * inch / 2
		span.PreferWidth = span.LeastWidth + int64(r.IntN(16))*inch/2
		table, err := newTable(newGrid(&span), Aim(r.IntN(2)), true, least{})
		require.NoError(t, err)
		s := &store{}
		all := table.lanes(s, false)
		for _, lanes := range []*lanes{all, table.reverse(all, s)} {
			b := bounds{}
			if seed%3 > 0 {
				b = pinned(r, table.g, int(seed%3))
				caps++
			}
			w := newScout(table, b, s)
			w.load(*lanes)
			tried++
			require.True(t, w.plain() && w.dense(), "seed %d", seed)
			w.endsFrom = len(w.lines) - 1 - r.IntN(table.g.net)
			for i := range w.ends {
				w.ends[i] = gist(r.IntN(100)) * table.gists.more
				if r.IntN(5) == 0 {
					w.ends[i] = gistNever
				}
			}
			w.runPlain()
			want := slices.Clone(w.on)
			clear(w.on)
			w.runDense()
			require.Equal(t, want, w.on, "seed %d", seed)
			if want[0] < gistNever {
				ways++
			}
			if w.jump != nil || w.here != nil {
				jumps++
			}
			if span.PreferWidth > span.LeastWidth {
				slims++
			}
		}
	}
	require.Greater(t, jumps, 3)
	require.Greater(t, slims, 3)
	require.Greater(t, caps, 3)
	require.Greater(t, 2*ways, tried)
}

// pinned returns bounds of so many places that a seam has to lie near; a whole sheet may pass some of them.
func pinned(r *rand.Rand, g *grid, pins int) bounds {
	var wishes []wish
	for range pins {
		low := r.IntN(g.lines)
		v := wish{low: low, high: low + r.IntN(8)}
		if a := low - r.IntN(g.net/2); a > 0 && r.IntN(2) == 0 {
			v.but = append(v.but, [2]int{a, a + g.net})
		}
		wishes = append(wishes, v)
	}
	return newBounds(g, wishes)
}

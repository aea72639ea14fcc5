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
	jumps, slims := 0, 0
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
			w := newScout(table, bounds{}, s)
			w.load(*lanes)
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
			require.NotEqual(t, gistNever, want[0], "seed %d", seed)
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
}

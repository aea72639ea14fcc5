package seam

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
)

// A Keeper says of pins, taken out of the span's one after the other, what Solve does with them.
func TestKeeperAgreesWithSolve(t *testing.T) {
	asked, fell, broken := 0, 0, 0
	for seed := range uint64(1500) {
		r := rand.New(rand.NewPCG(seed, 18))
		span, _ := anySpan(r, 40, int(seed%2)*5)
		v, err := NewKeeper(span)
		require.NoError(t, err)
		for range 4 {
			var pins []Pin
			for range r.IntN(4) {
				pins = append(pins, Pin{At: r.Int64N(span.Period + 1), Put: Put(r.IntN(4))})
			}
			other := span
			other.Pins = pins
			want, err := Solve(other, Aim(r.IntN(3)))
			got, again := v.Keeps(pins...)
			require.Equal(t, err, again)
			if err == nil {
				require.Equal(t, len(want.Dropped) == 0, got, "%+v", other)
				asked++
				fell += min(1, len(want.Dropped))
				broken += int(min(1, want.Score.Bends+want.Score.Edges))
			}
		}
	}
	require.Greater(t, asked, 4000)
	require.Greater(t, fell, 1000)
	require.Greater(t, broken, 500)
}

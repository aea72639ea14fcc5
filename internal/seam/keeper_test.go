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

// What a question takes of an allowance depends on the question alone, not on what a Keeper knows already, and once nothing is left
// no more is asked with which pin another collides.
func TestAllowanceIsTheSameForAKeeperThatKnows(t *testing.T) {
	took, ended := 0, 0
	for seed := range uint64(300) {
		r := rand.New(rand.NewPCG(seed, 23))
		span, _ := anySpan(r, 60, int(seed%2)*4)
		v, err := NewKeeper(span)
		require.NoError(t, err)
		pin := Pin{At: r.Int64N(span.Period + 1), Put: Put(r.IntN(3))}
		var others []Pin
		for range 6 {
			others = append(others, Pin{At: r.Int64N(span.Period + 1), Put: Put(r.IntN(3))})
		}
		ask := func() Allowance {
			left := Allowance(1 << 40)
			v.From(&left)
			_, _ = v.Keeps(pin)
			_, _ = v.Against(pin, others)
			for i := range span.Openings {
				_, _ = v.Without(pin, Leg, i)
			}
			return 1<<40 - left
		}
		first := ask()
		require.Equal(t, first, ask(), "seed %d", seed)
		took += int(first)
		none := Allowance(0)
		v.From(&none)
		at, err := v.Against(pin, others)
		require.NoError(t, err)
		require.Equal(t, -1, at)
		v.From(nil)
		if at, err = v.Against(pin, others); err == nil && at >= 0 {
			ended++
		}
	}
	require.Positive(t, took)
	require.Greater(t, ended, 50)
}

package draft_test

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"

	"flitchlay/internal/draft"
)

// No other row that keeps order and distances is nearer to the places asked for: against small moves of every thing and of
// every run of neighbours.
func TestSpreadMovesAsLittleAsCanBe(t *testing.T) {
	rnd := rand.New(rand.NewPCG(7, 7))
	off := func(at, out []float64) (sum float64) {
		for i := range at {
			sum += (at[i] - out[i]) * (at[i] - out[i])
		}
		return sum
	}
	keeps := func(out, gaps []float64) bool {
		for i := 1; i < len(out); i++ {
			if out[i]-out[i-1] < gaps[i]-1e-9 {
				return false
			}
		}
		return true
	}
	for range 200 {
		n := 1 + rnd.IntN(9)
		at, gaps := make([]float64, n), make([]float64, n)
		for i := range at {
			at[i], gaps[i] = 30*rnd.Float64(), 1+5*rnd.Float64()
			if i > 0 {
				at[i] = at[i-1] + 6*rnd.Float64()
			}
		}
		out := draft.Spread(at, gaps)
		assert.True(t, keeps(out, gaps), "%v %v", at, out)
		for i := range out {
			for j := i; j < n; j++ {
				for _, d := range []float64{-0.05, 0.05} {
					moved := append([]float64(nil), out...)
					for m := i; m <= j; m++ {
						moved[m] += d
					}
					if keeps(moved, gaps) {
						assert.GreaterOrEqual(t, off(at, moved), off(at, out)-1e-9)
					}
				}
			}
		}
	}
}

package seam

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
)

// A Counter counts the sheets of what Solve finds, at one width after the other: narrower ones step by step, then any.
func TestCounterAgreesWithSolve(t *testing.T) {
	asked, broken := 0, 0
	follow := func(r *rand.Rand, span Span, aim Aim, steps int) {
		v, err := NewCounter(span, aim)
		require.NoError(t, err)
		for k := range steps {
			gross := span.Gross - span.Snap*int64(k)
			if k > steps/2 {
				gross = span.Gross - r.Int64N(max(1, span.NetWidth()*2/3))
			}
			other := span
			other.Gross = gross
			want, err := Solve(other, aim)
			got, again := v.Sheets(gross)
			require.Equal(t, err, again)
			if want.Score.Bends+want.Score.Edges > 0 {
				want.Score.Sheets = 0
				broken++
			}
			require.Equal(t, want.Score.Sheets, got, "%+v", other)
			asked++
		}
	}
	for seed := range uint64(600) {
		r := rand.New(rand.NewPCG(seed, 16))
		span, _ := anySpan(r, 40, int(seed%2)*5)
		follow(r, span, Aim(seed%3), 8)
	}
	for seed := range uint64(6) {
		span := room(seed, 60*12*inch, seed%3 > 0)
		span.Snap = inch / 4
		follow(rand.New(rand.NewPCG(seed, 17)), span, Aim(seed%3), 6)
	}
	require.Greater(t, asked, 4000)
	require.Greater(t, broken, 400)
}

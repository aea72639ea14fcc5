package seam

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
)

// A Solver finds what Solve finds, however often pins are moved, taken out and put back and the aim is changed: thousands
// of changes on small spans, some in whole rooms.
func TestSolverAgreesWithSolve(t *testing.T) {
	changes := 0
	follow := func(r *rand.Rand, span Span, steps int) {
		v, err := NewSolver(span)
		require.NoError(t, err)
		for range steps {
			aim := Aim(r.IntN(3))
			switch pins := span.Pins; {
			case len(pins) > 0 && r.IntN(4) == 0:
				span.Pins = pins[1:]
			case len(pins) > 0 && r.IntN(4) > 0:
				span.Pins = append([]Pin{}, pins...)
				span.Pins[r.IntN(len(pins))].At += span.Snap * int64(r.IntN(5)-2)
			case len(pins) < 4 && r.IntN(2) == 0:
				span.Pins = append([]Pin{{At: r.Int64N(span.Period + 1), Put: Put(r.IntN(4))}}, pins...)
			}
			want, err := Solve(span, aim)
			got, again := v.Solve(span.Pins, aim)
			require.Equal(t, err, again)
			require.Equal(t, want, got, "%+v", span)
			changes++
		}
	}
	for seed := range uint64(300) {
		r := rand.New(rand.NewPCG(seed, 14))
		span, _ := anySpan(r, 40, int(seed%2)*5)
		follow(r, span, 10)
	}
	for seed := range uint64(6) {
		span := room(seed, 60*12*inch, seed%3 > 0)
		span.Snap = inch / 4
		follow(rand.New(rand.NewPCG(seed, 15)), span, 5)
	}
	require.Greater(t, changes, 3000)
}

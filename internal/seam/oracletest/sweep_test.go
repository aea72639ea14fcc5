package oracletest_test

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
	"flitchlay/internal/seam/oracletest"
)

// The sweep finds what trying every set finds.
func TestSweepAgainstBest(t *testing.T) {
	t.Parallel()
	for seed := range uint64(effort.Of(200, 1000)) {
		c := oracletest.Random(rand.New(rand.NewPCG(seed, 7)), oracletest.Options{OpenLines: 12, ClosedLines: 10})
		best, ok := oracletest.Best(c.Span, c.Aim)
		swept, found := oracletest.Sweep(c.Span, c.Aim)
		require.Equal(t, ok, found, "seed %d: %s", seed, c)
		require.Equal(t, best, swept, "seed %d: %s", seed, c)
	}
}

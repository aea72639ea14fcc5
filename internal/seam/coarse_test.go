package seam_test

import (
	"math/rand/v2"
	"testing"

	"flitchlay/internal/seam"
	"flitchlay/internal/seam/oracletest"
)

// coarse is a small span whose sheets are one step wide or two, with pins on its lines, between them and beside them.
func coarse(rng *rand.Rand) oracletest.Case {
	c := oracletest.Random(rng, oracletest.Small)
	s := &c.Span
	s.Gross = s.Overlap + (1+rng.Int64N(2))*s.Snap + rng.Int64N(s.Snap)
	s.LeastWidth = min(s.LeastWidth, s.Snap)
	s.TrimLeft, s.TrimRight = rng.Int64N(s.Snap), rng.Int64N(s.Snap)
	if s.Gross-s.Overlap/2-max(s.TrimLeft, s.TrimRight) <= 0 {
		s.TrimLeft, s.TrimRight = 0, 0
	}
	s.Pins = nil
	whole := s.R - s.L
	if s.Closed {
		whole = s.Period
	}
	for range 1 + rng.IntN(5) {
		at := rng.Int64N(whole + 1)
		if rng.IntN(2) == 0 {
			at = at / s.Snap * s.Snap
		}
		s.Pins = append(s.Pins, seam.Pin{At: s.L + at, Put: seam.Put(rng.IntN(4))})
	}
	return c
}

// Pins are kept as trying every set of lines says also where a sheet is one step wide or two.
func TestPinsOnCoarseGrids(t *testing.T) {
	first, count := seeds(t, 700)
	compareCases(t, first, count, oracletest.Best, func(seed uint64) oracletest.Case {
		return coarse(rand.New(rand.NewPCG(seed, 25)))
	})
}

package seam_test

import (
	"math/rand/v2"
	"testing"

	"flitchlay/internal/effort"
	"flitchlay/internal/seam"
	"flitchlay/internal/seam/oracletest"
)

// room is an invented room: walls of 9 to 16 ft, windows, doors, plates, a bracket to keep clear, the rules of an inch
// room. inch says the unit. A closed room has a pin that asks it to close 8 in left of its first corner.
func room(rng *rand.Rand, inch, length, snap int64, closed bool, aim seam.Aim) oracletest.Case {
	foot := 12 * inch
	between := func(lo, hi int64) int64 { return lo + rng.Int64N(hi-lo+1) }
	s := seam.Span{
		Closed: closed, RunClosed: closed, R: length, Period: length,
		Snap: snap, Gross: 24*inch + inch/2, Overlap: inch, TrimLeft: inch, TrimRight: inch / 2,
		Rules: seam.Rules{
			LeastWidth: 6 * inch, PreferWidth: 12 * inch, CornerReturn: 4 * inch, PreferReturn: 6 * inch,
			Leg: 3 * inch, PreferLeg: 6 * inch, OpeningClear: 2 * inch, PreferClear: 4 * inch, BoxClear: inch, ShortSeam: 30 * inch,
		},
		Foot: foot, OneWall: !closed && rng.Int64N(2) == 0,
	}
	profile := oracletest.Profile{Steps: []oracletest.Step{{Height: 96 * inch}}}
	if closed {
		profile.Period = s.Period
	}
	for wall := int64(0); wall < s.R; {
		end := wall + between(9*foot, 16*foot)
		if end > s.R-6*foot {
			end = s.R
		}
		if closed || end < s.R {
			lean := between(-inch/4, inch/4)
			s.Corners = append(s.Corners, seam.Strip{From: end + min(0, lean), To: end + max(0, lean)})
		}
		for x := wall + between(6*inch, 50*inch); ; {
			width := between(20*inch, 60*inch)
			if x+width > end-5*inch {
				break
			}
			opening := seam.Opening{A: x, B: x + width, Wrap: rng.Int64N(4) == 0, Reveal: between(3*inch, 6*inch)}
			height := between(14, 60) * inch // seen over and under it
			if rng.Int64N(6) == 0 {
				opening.Gap, opening.Wrap, height = true, false, 0
			}
			s.Openings = append(s.Openings, opening)
			profile.Steps = append(profile.Steps, oracletest.Step{From: opening.A, Height: height}, oracletest.Step{From: opening.B + 1, Height: 96 * inch})
			x += width + between(4*inch, 70*inch)
		}
		for range 2 {
			at := between(wall, end)
			s.Boxes = append(s.Boxes, seam.Strip{From: at - 11*inch/8, To: at + 11*inch/8}) // plates of 2 3/4 in
		}
		if rng.Int64N(2) == 0 {
			s.Main = append(s.Main, seam.Strip{From: wall, To: end})
		}
		wall = end
	}
	keep := between(0, max(0, s.R-3*foot))
	s.Keep = []seam.Strip{{From: keep, To: keep + between(inch, 30*inch)}}
	if closed {
		s.Pins = []seam.Pin{{At: s.Corners[0].From - 8*inch, Put: seam.PutClose}}
	}
	return oracletest.Case{Span: s, Profile: profile.Ascending(), Aim: aim}.Ready()
}

// tighten makes the rules so long that they collide.
func tighten(s *seam.Span, inch int64) {
	s.LeastWidth, s.CornerReturn, s.Leg, s.OpeningClear = 18*inch, 12*inch, 11*inch, 8*inch
	s.PreferWidth, s.PreferReturn, s.PreferLeg, s.PreferClear = 20*inch, 13*inch, 12*inch, 9*inch
}

// hang leaves the rest of a room of which 40 in hang; in a closed room they began 20 in left of its start.
func hang(s *seam.Span, inch int64) {
	s.L, s.LeftSeam, s.Pins = 40*inch, true, nil
	if s.Closed {
		s.Closed, s.RightSeam = false, true
		s.L, s.R = 20*inch, s.Period-20*inch
	}
}

// Solve finds what the plain sweep finds in rooms, in the program's own unit and on grids from 1/16 in.
func TestSolveRoomsAgainstSweep(t *testing.T) {
	first, count := seeds(t, 2)
	finest := int64(2)
	if count > 400 {
		count /= effort.Waited(600, 40)
		finest = 3
	}
	compareCases(t, first, count, oracletest.Sweep, func(seed uint64) oracletest.Case {
		const inch = 203_200
		rng := rand.New(rand.NewPCG(seed, 6))
		closed := rng.Int64N(3) == 0
		snap, feet := inch/[]int64{1, 2, 4, 16}[rng.Int64N(4)], 7+rng.Int64N(40)
		if closed { // the sweep goes round once for every line
			snap, feet = inch>>rng.Int64N(finest), 12+rng.Int64N(20)
		}
		c := room(rng, inch, feet*12*inch+rng.Int64N(inch), snap, closed, seam.Aim(rng.Int64N(3)))
		s := &c.Span
		if s.OneWall && snap < inch/2 { // and here once for every first seam
			s.R = min(s.R, 12*12*inch)
			s.Period = s.R
			s.OneWall = snap > inch/16
		}
		if rng.Int64N(4) == 0 {
			tighten(s, inch)
		}
		if rng.Int64N(4) == 0 {
			hang(s, inch)
		}
		for range rng.Int64N(4) {
			s.Pins = append(s.Pins, seam.Pin{At: s.L + rng.Int64N(s.R-s.L), Put: seam.Put(rng.Int64N(3))})
		}
		return c
	})
}

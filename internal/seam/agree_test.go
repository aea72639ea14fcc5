package seam

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
)

// heightsOf is a seen height in steps, taken round in a closed run.
type heightsOf [][2]int64

// anySpan makes a span with everything in it; crowd is how many more corners, openings and keep-clears it has, so that
// musts collide. Its lengths are small whole numbers and its grid a few hundred lines at most.
func anySpan(r *rand.Rand, lines, crowd int) (Span, heightsOf) {
	between := func(low, high int64) int64 { return low + r.Int64N(high-low+1) }
	often := func(n int) bool { return r.IntN(n) == 0 }
	snap := between(1, 6)
	steps := between(3, 24)
	if often(12) {
		steps = between(1, 2)
	}
	over := between(0, 6)
	s := Span{
		Snap: snap, Gross: snap*steps + over + between(0, snap-1), Overlap: over,
		TrimLeft: between(0, 3), TrimRight: between(0, 3),
		Rules: Rules{
			LeastWidth: between(1, max(1, snap*steps/2)), PreferWidth: between(0, snap*steps),
			CornerReturn: between(0, 2*snap+3), PreferReturn: between(0, 3*snap+5),
			Leg: between(0, 2*snap+2), PreferLeg: between(0, 3*snap+5),
			OpeningClear: between(0, snap+2), PreferClear: between(0, 2*snap+3),
			BoxClear: between(0, snap+2), ShortSeam: between(10, 60),
		},
		Foot: between(4, 20),
	}
	length := snap*between(2, int64(lines)) + between(0, snap-1)
	s.Period, s.R = length, length
	switch r.IntN(6) {
	case 0, 1:
		s.Closed, s.RunClosed = true, true
	case 2: // a closed run cut once or hung in part
		s.RunClosed = true
		s.L = between(0, length-1)
		s.R = s.L + between(1, length)
	case 3: // leaning raw ends
		s.L, s.R = -between(0, 4), length+between(0, 4)
	}
	if !s.Closed {
		s.LeftSeam = often(4)
		s.RightSeam = s.LeftSeam && s.RunClosed && often(2)
		s.OneWall = often(2)
	}
	place := func() int64 { return between(0, length) }
	for range r.IntN(4) + crowd {
		at := place()
		s.Corners = append(s.Corners, Strip{at, at + between(0, 3)*int64(r.IntN(2))})
	}
	for range r.IntN(3) + crowd/2 {
		a := place()
		o := Opening{A: a, B: min(a+between(1, max(1, length/4)), length), Gap: often(5), Wrap: often(4)}
		if o.Wrap {
			o.Reveal = between(0, 6)
		}
		if o.A < o.B {
			s.Openings = append(s.Openings, o)
		}
	}
	for range r.IntN(4) {
		at := place()
		s.Boxes = append(s.Boxes, Strip{at, at + between(0, 8)})
	}
	for range r.IntN(2) + crowd/2 {
		at := place()
		s.Keep = append(s.Keep, Strip{at, at + between(1, 3*snap)})
	}
	for range r.IntN(4) {
		put := Put(r.IntN(3))
		if s.RunClosed && often(3) {
			put = PutClose
		}
		s.Pins = append(s.Pins, Pin{At: place(), Put: put})
	}
	if often(2) {
		at := place()
		s.Main = append(s.Main, Strip{at, between(at, length)})
	}
	heights := heightsOf{{-1 << 40, between(0, 120)}}
	for range r.IntN(5) {
		heights = append(heights, [2]int64{place(), between(0, 120)})
	}
	if often(3) { // a slope
		for at := length / 3; at < length/2; at++ {
			heights = append(heights, [2]int64{at, 40 + at%50})
		}
	}
	s.Seen = stepsAnyOrder(heights, s.Period, s.RunClosed)
	return s, heights
}

// stepsAnyOrder is steps for heights in any order: the nearest step left of a place counts.
func stepsAnyOrder(heights heightsOf, period int64, round bool) func(int64) int64 {
	return func(s int64) int64 {
		if round {
			s = ((s % period) + period) % period
		}
		at, h := heights[0][0], heights[0][1]
		for _, step := range heights {
			if step[0] <= s && step[0] >= at {
				at, h = step[0], step[1]
			}
		}
		return h
	}
}

// Solve agrees with the plain programme on seeded random spans, in score, seams, closing seam and dropped pins; a good
// third of them crowd corners and openings so that musts collide.
func TestSolveAgreesWithPlain(t *testing.T) {
	t.Parallel()
	broken := 0
	for seed := range uint64(effort.Of(30, 450)) {
		r := rand.New(rand.NewPCG(seed, 7))
		lines, crowd := 30+int(seed%4)*20, 0
		if seed%3 != 0 {
			crowd = 9
		}
		span, heights := anySpan(r, lines, crowd)
		for name, aim := range aims {
			told := fmt.Sprintf("seed %d, %s: %+v heights %v", seed, name, span, heights)
			want, ok := plainSolve(span, aim)
			got, err := Solve(span, aim)
			if !ok {
				require.Error(t, err, told)
				continue
			}
			require.NoError(t, err, told)
			require.Equal(t, items(want.Score), items(got.Score), told)
			require.Equal(t, append([]int64{}, want.Seams...), append([]int64{}, got.Seams...), told)
			require.Equal(t, want.Closing, got.Closing, told)
			require.Equal(t, append([]int{}, want.Dropped...), append([]int{}, got.Dropped...), told)
			if want.Score.Bends+want.Score.Edges > 0 {
				broken++
			}
		}
	}
	require.Greater(t, broken, effort.Of(30, 450), "too few spans whose musts collide")
}

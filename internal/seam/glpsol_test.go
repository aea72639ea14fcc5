//go:build glpsol

package seam_test

import (
	"fmt"
	"math/rand/v2"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/seam"
	"flitchlay/internal/seam/oracletest"
)

// These tests hold the solver against GLPK's glpsol (GNU Linear Programming Kit, a general solver of integer programs),
// which knows nothing of sheets: model_test.go says each span to it as rows and columns. Without glpsol they fail.
//
// Compared, item by item in the aim's order: everything that the rows can say, which is all of steady and fewest (bends,
// edges, closing, narrow on main, narrow, sheets, jump, should, seen, difference) and all of even on a coarse grid
// (bends, edges, closing, sheets, should, unevenness, seen). The far right is not: several layouts may share a score.

// The rows say what the rules say: on small spans glpsol finds the same scores as the brute force.
func TestGlpsolModelAgainstBruteForce(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 4))
	compared := 0
	for compared < 40 {
		c := oracletest.Random(rng, oracletest.Options{OpenLines: 13, ClosedLines: 9})
		c.Span.Pins = nil
		best, ok := oracletest.Best(c.Span, c.Aim)
		if !ok || len(best.Seams) < 2 || !canModel(c.Span, c.Aim) {
			continue
		}
		if c.Span.Closed {
			c.Span.Pins = []seam.Pin{{At: best.Seams[best.Closing], Put: seam.PutClose}}
		}
		least := glpsolLeast(t, c, time.Minute)
		require.Equal(t, inOrder(best.Score, c), least, "%s", c)
		compared++
	}
}

// On spans of real size Solve's score is the least that glpsol finds, and its layout has that score.
func TestSolveAgainstGlpsol(t *testing.T) {
	for _, size := range []struct {
		feet   int64
		closed bool
		aim    seam.Aim
		seed   uint64
	}{
		{20, false, seam.Steady, 1}, {20, false, seam.Steady, 2}, {20, false, seam.Fewest, 3},
		{20, true, seam.Steady, 4}, {30, false, seam.Steady, 5}, {30, true, seam.Fewest, 6},
		{40, false, seam.Fewest, 7}, {40, true, seam.Steady, 8}, {60, false, seam.Steady, 9}, {60, true, seam.Steady, 10},
		{20, false, seam.Even, 11}, {20, true, seam.Even, 12}, {30, false, seam.Even, 13},
	} {
		name := fmt.Sprintf("%d ft closed %t aim %d seed %d", size.feet, size.closed, size.aim, size.seed)
		t.Run(name, func(t *testing.T) {
			c := room(size.seed, size.feet, size.closed, size.aim)
			got, err := seam.Solve(c.Span, c.Aim)
			require.NoError(t, err)
			score, ok := oracletest.Score(c.Span, got.Seams, got.Closing)
			require.True(t, ok)
			require.Equal(t, score, got.Score)
			for i, pin := range c.Span.Pins {
				require.Equal(t, oracletest.Keeps(c.Span, got.Seams, got.Closing, pin), !assert.ObjectsAreEqual(got.Dropped, []int{i}))
			}

			start := time.Now()
			least := glpsolLeast(t, c, 10*time.Minute)
			t.Logf("%v: %v", time.Since(start), least)
			if len(got.Dropped) == 0 {
				assert.Equal(t, inOrder(got.Score, c), least)
				return
			}
			// the closing place was dropped: with it the musts must be worse
			assert.Negative(t, compareLists(inOrder(got.Score, c)[:2], least[:2]))
		})
	}
}

func compareLists(a, b []int64) int {
	for i := range a {
		if a[i] != b[i] {
			return int(max(-1, min(1, a[i]-b[i])))
		}
	}
	return 0
}

// room is an invented room of real size in 1/16 in: walls of 9 to 16 ft, windows, doors, plates, a bracket to keep
// clear. A grid of 1/4 in, for the even aim of 1 in. A closed room closes at a corner's left side, given by a pin.
func room(seed uint64, feet int64, closed bool, aim seam.Aim) oracletest.Case {
	rng := rand.New(rand.NewPCG(seed, 5))
	const inch, foot = 16, 192
	between := func(lo, hi int64) int64 { return lo + rng.Int64N(hi-lo+1) }
	s := seam.Span{
		Closed: closed, RunClosed: closed, R: feet * foot, Period: feet * foot,
		Snap: inch / 4, Gross: 24*inch + inch/2, Overlap: inch, TrimLeft: inch, TrimRight: inch / 2,
		Rules: seam.Rules{
			LeastWidth: 6 * inch, PreferWidth: 12 * inch, CornerReturn: 4 * inch, PreferReturn: 6 * inch,
			Leg: 3 * inch, PreferLeg: 6 * inch, OpeningClear: 2 * inch, PreferClear: 4 * inch, BoxClear: inch, ShortSeam: 30 * inch,
		},
		Foot: foot, OneWall: !closed && seed%2 == 1,
	}
	if aim == seam.Even {
		s.Snap = inch // whole steps to the end, as the rows for squares need them
	} else {
		s.R += between(0, 3) // a short last step
		s.Period = s.R
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
			lean := between(-3, 3)
			s.Corners = append(s.Corners, seam.Strip{From: end + min(0, lean), To: end + max(0, lean)})
		}
		for x := wall + between(6, 50)*inch; ; {
			width := between(20, 60) * inch
			if x+width > end-5*inch {
				break
			}
			opening := seam.Opening{A: x, B: x + width, Wrap: rng.Int64N(4) == 0, Reveal: between(3, 6) * inch}
			height := between(14, 60) * inch // seen over and under it
			if rng.Int64N(6) == 0 {
				opening.Gap, opening.Wrap, height = true, false, 0
			}
			s.Openings = append(s.Openings, opening)
			profile.Steps = append(profile.Steps, oracletest.Step{From: opening.A, Height: height}, oracletest.Step{From: opening.B + 1, Height: 96 * inch})
			x += width + between(4, 70)*inch
		}
		for range 2 {
			at := between(wall, end)
			s.Boxes = append(s.Boxes, seam.Strip{From: at - 22, To: at + 22}) // plates of 2 3/4 in
		}
		if rng.Int64N(2) == 0 {
			s.Main = append(s.Main, seam.Strip{From: wall, To: end})
		}
		wall = end
	}
	keep := between(0, s.R-3*foot)
	s.Keep = []seam.Strip{{From: keep, To: keep + between(1, 30)*inch}}
	if closed {
		s.Pins = []seam.Pin{{At: s.Corners[0].From - 8*inch, Put: seam.PutClose}}
	}
	return oracletest.Case{Span: s, Profile: profile.Ascending(), Aim: aim}.Ready()
}

// BenchmarkAgainstGlpsol solves one and the same open span of 20 ft with Solve and with glpsol, down to the same score,
// and reports how many times as fast Solve is.
func BenchmarkAgainstGlpsol(b *testing.B) {
	c := room(1, 20, false, seam.Steady)
	start := time.Now()
	least := glpsolLeast(b, c, 10*time.Minute)
	slow := time.Since(start)
	var layout seam.Layout
	var err error
	for b.Loop() {
		layout, err = seam.Solve(c.Span, c.Aim)
	}
	require.NoError(b, err)
	require.Equal(b, inOrder(layout.Score, c), least)
	fast := b.Elapsed() / time.Duration(b.N)
	b.ReportMetric(float64(slow.Nanoseconds()), "glpsol-ns")
	b.ReportMetric(float64(slow)/float64(fast), "times-as-fast")
}

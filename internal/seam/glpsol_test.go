//go:build glpsol

package seam_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
	"flitchlay/internal/seam"
	"flitchlay/internal/seam/oracletest"
)

// These tests hold the solver against GLPK's glpsol (GNU Linear Programming Kit, a general solver of integer programs),
// which knows nothing of sheets: model_test.go says each span to it as rows and columns. Without glpsol they fail.
//
// Compared, item by item in the aim's order: everything that the rows can say, which is all of steady and fewest (bends,
// edges, closing, narrow on main, narrow, sheets, jump, should, seen, difference) and all of even on a coarse grid
// (bends, edges, closing, sheets, should, unevenness, seen); a closed span has its closing seam given by a pin, and where
// Solve drops that pin the musts alone are compared. The far right is not: several layouts may share a score. Run it with
// go test -tags glpsol -timeout 60m: the whole takes some minutes.

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
		least, _ := glpsolLeast(t, c, time.Minute)
		require.Equal(t, inOrder(best.Score, c), least, "%s", c)
		compared++
	}
}

// On spans of real size the rows take Solve's layout, the scorer gives it Solve's score, and glpsol proves item by item that no
// layout has less. Of the largest rooms it does so with FLITCHLAY_CHECK=long.
func TestSolveAgainstGlpsol(t *testing.T) {
	for _, size := range []struct {
		feet   int64
		closed bool
		tight  bool // musts that collide
		hung   bool // the rest beside a hung seam
		aim    seam.Aim
		seed   uint64
		long   bool // half a minute and more
	}{
		{feet: 20, aim: seam.Steady, seed: 1},
		{feet: 20, aim: seam.Steady, seed: 2},
		{feet: 20, aim: seam.Fewest, seed: 3},
		{feet: 20, aim: seam.Steady, seed: 4, closed: true},
		{feet: 20, aim: seam.Steady, seed: 5, tight: true},
		{feet: 20, aim: seam.Fewest, seed: 6, tight: true, closed: true},
		{feet: 24, aim: seam.Fewest, seed: 7, hung: true},
		{feet: 24, aim: seam.Steady, seed: 8, hung: true, closed: true},
		{feet: 30, aim: seam.Fewest, seed: 9},
		{feet: 30, aim: seam.Fewest, seed: 10, closed: true},
		{feet: 40, aim: seam.Fewest, seed: 15, closed: true},
		{feet: 40, aim: seam.Steady, seed: 11},
		{feet: 40, aim: seam.Steady, seed: 12, closed: true},
		{feet: 30, aim: seam.Steady, seed: 13, tight: true, long: true},
		{feet: 60, aim: seam.Steady, seed: 14, long: true},
		{feet: 60, aim: seam.Fewest, seed: 15, closed: true, long: true},
		{feet: 20, aim: seam.Even, seed: 16},
		{feet: 20, aim: seam.Even, seed: 17, closed: true},
		{feet: 30, aim: seam.Even, seed: 18, tight: true, long: true},
	} {
		if size.long && !effort.Long() {
			continue
		}
		name := fmt.Sprintf("%d ft aim %d closed %t tight %t hung %t seed %d", size.feet, size.aim, size.closed, size.tight, size.hung, size.seed)
		t.Run(name, func(t *testing.T) {
			t.Parallel() // glpsol takes one core
			c := glpsolRoom(size.seed, size.feet, size.closed, size.aim)
			if size.tight {
				tighten(&c.Span, inch)
			}
			if size.hung {
				hang(&c.Span, inch)
			}
			got, err := seam.Solve(c.Span, c.Aim)
			require.NoError(t, err)
			score, ok := oracletest.Score(c.Span, got.Seams, got.Closing)
			require.True(t, ok)
			require.Equal(t, score, got.Score)
			if len(got.Dropped) == 0 {
				glpsolHolds(t, c, got, 10*time.Minute)
				return
			}
			// the closing place was dropped: the musts with it, which glpsol found, have to be greater
			least, _ := glpsolLeast(t, c, 10*time.Minute)
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

const inch = 16 // the sums of a model stay small in 1/16 in

// glpsolRoom is a room on a grid of 1/4 in with a short last step; for the even aim on one of 1 in with whole steps to
// the end, as the rows for squares need them.
func glpsolRoom(seed uint64, feet int64, closed bool, aim seam.Aim) oracletest.Case {
	rng := rand.New(rand.NewPCG(seed, 5))
	if aim == seam.Even {
		return room(rng, inch, feet*12*inch, inch, closed, aim)
	}
	c := room(rng, inch, feet*12*inch+int64(seed%4), inch/4, closed, aim)
	for i := range c.Span.Pins { // on a line, so that no other is as near
		c.Span.Pins[i].At -= c.Span.Pins[i].At % c.Span.Snap
	}
	return c
}

// BenchmarkAgainstGlpsol solves one and the same open span of 20 ft with Solve and with glpsol, down to the same score,
// and reports how many times as fast Solve is. glpsol's time is that of its own runs, one for every item of the score:
// in a single weighted sum the items would need more digits than it has. In the same run closed rooms of 120 ft on a grid of
// 1/16 in are solved in each aim, by Solve alone: what the median and the slowest of them take.
func BenchmarkAgainstGlpsol(b *testing.B) {
	c := glpsolRoom(1, 20, false, seam.Steady)
	least, slow := glpsolLeast(b, c, 10*time.Minute)
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
	for aim, name := range []string{"steady", "fewest", "even"} {
		var times []time.Duration
		for seed := range uint64(50) {
			c := room(rand.New(rand.NewPCG(seed, 5)), 16, 120*12*16+int64(seed), 1, true, seam.Aim(aim))
			c.Span.Pins = nil
			start := time.Now()
			_, err := seam.Solve(c.Span, c.Aim)
			times = append(times, time.Since(start))
			require.NoError(b, err)
		}
		slices.Sort(times)
		b.ReportMetric(float64(times[len(times)/2].Microseconds())/1000, "closed-120ft-"+name+"-median-ms")
		b.ReportMetric(float64(times[len(times)-1].Microseconds())/1000, "closed-120ft-"+name+"-max-ms")
		b.ReportMetric(float64(slow)/float64(times[len(times)/2]), "closed-120ft-"+name+"-times-as-fast-as-20ft")
	}
}

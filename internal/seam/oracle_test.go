package seam_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
	"flitchlay/internal/seam"
	"flitchlay/internal/seam/oracletest"
)

// seeds gives the first seed and how many spans to compare: few by default, 12,000 with FLITCHLAY_CHECK=1, and what
// FLITCHLAY_SEED and FLITCHLAY_SPANS say where they are set.
func seeds(t *testing.T, few int) (first uint64, count int) {
	seed, count := effort.Seeds(t, "FLITCHLAY_SPANS", few, 12_000)
	return uint64(seed), count
}

// Solve finds what trying every set of grid lines finds: score, seams, closing seam and dropped pins, all of them.
func TestSolveAgainstBruteForce(t *testing.T) {
	first, count := seeds(t, 300)
	compare(t, first, count, oracletest.Small, oracletest.Best)
	compare(t, first, count/20, oracletest.Largest, oracletest.Best)
}

// oracle is one of the ways to find the best layout that are not the solver's.
type oracle func(seam.Span, seam.Aim) (seam.Layout, bool)

// compare holds Solve against an oracle on count random spans.
func compare(t *testing.T, first uint64, count int, opts oracletest.Options, best oracle) {
	compareCases(t, first, count, best, func(seed uint64) oracletest.Case {
		return oracletest.Random(rand.New(rand.NewPCG(seed, 20)), opts)
	})
}

// compareCases holds Solve against an oracle on the cases of count seeds; of the first that differs it prints the least
// that still does.
func compareCases(t *testing.T, first uint64, count int, best oracle, of func(seed uint64) oracletest.Case) {
	var (
		wait sync.WaitGroup
		once sync.Once
		next = make(chan uint64)
	)
	for range 4 {
		wait.Go(func() {
			for seed := range next {
				c := of(seed)
				if differs(c, best) == "" {
					continue
				}
				once.Do(func() {
					least := shrink(c, func(c oracletest.Case) bool { return differs(c, best) != "" })
					t.Errorf("seed %d: %s\nthe smallest that still differs: %s\n%s\n\nthe whole: %s", seed, differs(c, best), differs(least, best), least, c)
				})
			}
		})
	}
	for i := 0; i < count && !t.Failed(); i++ {
		next <- first + uint64(i)
	}
	close(next)
	wait.Wait()
}

// differs says how Solve and an oracle differ on a case, or nothing.
func differs(c oracletest.Case, best oracle) (text string) {
	defer func() {
		if fault := recover(); fault != nil {
			text = fmt.Sprintf("panic: %v", fault)
		}
	}()
	want, ok := best(c.Span, c.Aim)
	got, err := seam.Solve(c.Span, c.Aim)
	switch {
	case !ok && err == nil:
		return fmt.Sprintf("no layout keeps the hard limits, but got %+v", got)
	case !ok:
		return ""
	case err != nil:
		return fmt.Sprintf("want %+v, got error %v", want, err)
	}
	if slices.Equal(got.Seams, want.Seams) && got.Closing == want.Closing && slices.Equal(got.Dropped, want.Dropped) && got.Score == want.Score {
		return ""
	}
	return fmt.Sprintf("\nwant %+v\n got %+v", want, got)
}

// A span whose only sheets would be too wide for any layout is an error, not a layout.
func TestSolveWithoutAnyLayout(t *testing.T) {
	c := oracletest.Case{
		Span:    seam.Span{R: 30, Period: 30, Snap: 10, Gross: 22, Overlap: 2, TrimLeft: 15, TrimRight: 1, Foot: 12},
		Profile: oracletest.Profile{Steps: []oracletest.Step{{Height: 96}}},
	}.Ready()
	if _, ok := oracletest.Best(c.Span, c.Aim); ok {
		t.Fatal("the case is no case: there is a layout")
	}
	if layout, err := seam.Solve(c.Span, c.Aim); err == nil {
		t.Fatalf("want an error, got %+v", layout)
	}
}

// Solve finds what the plain sweep finds on spans of some hundreds of grid lines, with W of many steps.
func TestSolveAgainstSweep(t *testing.T) {
	first, count := seeds(t, 20)
	if count > 400 {
		count /= effort.Waited(6, 1)
	}
	compare(t, first, count, oracletest.Middling, oracletest.Sweep)
}

// Solve asks for seen heights on the span alone, leaves what it was given as it was, and answers the same twice.
func TestSolveKeepsToItsSpan(t *testing.T) {
	for seed := range uint64(effort.Of(50, 400)) {
		c := oracletest.Random(rand.New(rand.NewPCG(seed, 21)), oracletest.Middling)
		before := c.String()
		from, to := c.Span.L, c.Span.R
		if c.Span.Closed {
			from, to = 0, c.Span.Period-1
		}
		c.Span.Seen = func(s int64) int64 {
			if s < from || s > to {
				t.Errorf("seed %d: asked at %d, outside %d to %d", seed, s, from, to)
			}
			return c.Profile.Seen(s)
		}
		first, err := seam.Solve(c.Span, c.Aim)
		require.NoError(t, err, "seed %d: %s", seed, c)
		second, err := seam.Solve(c.Span, c.Aim)
		require.NoError(t, err)
		require.Equal(t, first, second, "seed %d: %s", seed, c)
		require.Equal(t, before, c.String(), "seed %d", seed)
	}
}

// The mean width that the squares of even are taken from may lie between half snaps: where one sheet overtakes another is
// still found to the line.
func TestEvenMeanBetweenHalfSnaps(t *testing.T) {
	c := oracletest.Case{
		Aim: seam.Even,
		Span: seam.Span{Closed: true, R: 30, Period: 30, RunClosed: true, Snap: 3, Gross: 19, Overlap: 6, Foot: 2,
			Rules: seam.Rules{LeastWidth: 5, ShortSeam: 98}},
		Profile: oracletest.Profile{Period: 30, Steps: []oracletest.Step{{From: 3, Height: 2}, {From: 14, Height: 80}, {From: 20}}},
	}.Ready()
	if text := differs(c, oracletest.Best); text != "" {
		t.Error(text)
	}
}

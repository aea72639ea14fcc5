package seam_test

import (
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/seam"
	"flitchlay/internal/seam/oracletest"
)

// The charges of a layout are its score to the last unit, item by item, by a scorer that shares no code with them: of the
// layout that Solve finds, and of seams thrown on the span by chance.
func TestChargesAddUpToTheScore(t *testing.T) {
	first, count := seeds(t, 1500)
	for seed := first; seed < first+uint64(count); seed++ {
		rng := rand.New(rand.NewPCG(seed, 22))
		c := oracletest.Random(rng, oracletest.Small)
		if found, err := seam.Solve(c.Span, c.Aim); err == nil {
			require.Equal(t, found.Score, totalOf(c.Span.Charges(found.Seams, found.Closing)), "seed %d: %s", seed, c)
			addsUp(t, c.Span, found.Seams, found.Closing)
		}
		for range 4 {
			seams := thrown(rng, c.Span)
			closing := -1
			if c.Span.Closed {
				closing = rng.IntN(len(seams))
			}
			require.Equal(t, c.Span.Score(seams, closing), totalOf(c.Span.Charges(seams, closing)), "seed %d: %s", seed, c)
			addsUp(t, c.Span, seams, closing)
		}
		if t.Failed() {
			t.Fatalf("seed %d: %s", seed, c)
		}
	}
}

// thrown is a row of grid lines by chance, not too far apart for the sheets between them more often than not.
func thrown(rng *rand.Rand, span seam.Span) []int64 {
	grid := oracletest.Grid(span)
	net := int(oracletest.NetWidth(&span) / span.Snap)
	var seams []int64
	for i := rng.IntN(net); i < len(grid); i += 1 + rng.IntN(net) {
		seams = append(seams, grid[i])
	}
	if len(seams) == 0 && span.Closed {
		return grid[:1]
	}
	return seams
}

// addsUp holds the charges of a layout against the other scorer, where the layout may be at all.
func addsUp(t *testing.T, span seam.Span, seams []int64, closing int) {
	t.Helper()
	if want, ok := oracletest.Score(span, seams, closing); ok {
		assert.Equal(t, want, totalOf(span.Charges(seams, closing)), "seams %v closing %d", seams, closing)
	}
}

// totalOf adds up charges.
func totalOf(list []seam.Charge) (sum seam.Score) {
	for _, c := range list {
		a := c.Adds
		sum = seam.Score{Bends: sum.Bends + a.Bends, Edges: sum.Edges + a.Edges, Closing: sum.Closing + a.Closing,
			NarrowMain: sum.NarrowMain + a.NarrowMain, Narrow: sum.Narrow + a.Narrow, Sheets: sum.Sheets + a.Sheets,
			NarrowJump: sum.NarrowJump + a.NarrowJump, Sliver: sum.Sliver + a.Sliver,
			Jump: sum.Jump + a.Jump, Should: sum.Should + a.Should, Seen: sum.Seen + a.Seen,
			Difference: sum.Difference + a.Difference, Unevenness: sum.Unevenness.Plus(a.Unevenness)}
	}
	return sum
}

// What a seam owes is owed to some object that the span has, lacks what is charged, and is as much as the plain rules say,
// on the grid and beside it.
func TestOwedNamesWhatIsLacking(t *testing.T) {
	first, count := seeds(t, 1500)
	causes := map[seam.Cause]int{}
	for seed := first; seed < first+uint64(count); seed++ {
		rng := rand.New(rand.NewPCG(seed, 23))
		c := oracletest.Random(rng, oracletest.Small)
		from, to := c.Span.L, c.Span.R
		if c.Span.Closed {
			from, to = 0, c.Span.Period
		}
		for range 6 {
			at := from + rng.Int64N(to-from)
			owed := c.Span.Owed(at)
			place, sum := oracletest.PlaceAt(c.Span, at), totalOf(owed)
			require.Equal(t, [3]int64{place.Bends, place.Edges, place.Should}, [3]int64{sum.Bends, sum.Edges, sum.Should}, "seed %d at %d: %s", seed, at, c)
			for _, charge := range owed {
				causes[charge.Cause]++
				named(t, c.Span, charge)
			}
		}
		if t.Failed() {
			t.Fatalf("seed %d: %s", seed, c)
		}
	}
	for cause := seam.Return; cause <= seam.Plate; cause++ {
		assert.Greater(t, causes[cause], 50, "cause %d is charged", cause)
	}
}

// named holds one charge against the object that it names.
func named(t *testing.T, span seam.Span, c seam.Charge) {
	t.Helper()
	must, should := c.Adds.Bends+c.Adds.Edges, c.Adds.Should
	if c.Edge != seam.NoEdge {
		o := span.Openings[c.Object]
		edge := o.A
		if c.Edge == seam.EdgeB {
			edge = o.B
		}
		assert.Equal(t, way(span, c.At, edge), c.D, "%+v", c)
		if must > 0 {
			assert.Equal(t, o.Wrap, c.Adds.Bends > 0, "a wrapped jamb is a bend: %+v", c)
		}
	} else {
		list := map[seam.Cause][]seam.Strip{seam.Return: span.Corners, seam.Kept: span.Keep, seam.Plate: span.Boxes}[c.Cause]
		strip := list[c.Object]
		to := min(way(span, c.At, strip.From), way(span, c.At, strip.To))
		assert.Contains(t, []int64{0, to}, c.D, "%+v", c)
	}
	if c.Cause == seam.Kept {
		assert.Equal(t, c.D, must)
		return
	}
	assert.Equal(t, max(0, c.Must-c.D), must, "%+v", c)
	assert.Equal(t, max(0, c.Prefer-c.D), should, "%+v", c)
}

// way is how far two places are apart, in a closed run by the shorter way.
func way(span seam.Span, a, b int64) int64 {
	if !span.Closed && !span.RunClosed {
		return max(a-b, b-a)
	}
	d := ((a-b)%span.Period + span.Period) % span.Period
	return min(d, span.Period-d)
}

// Of one span with one of each object the charges are written down by hand.
func TestChargesOfOneSpan(t *testing.T) {
	span := seam.Span{R: 100, Period: 100, Snap: 1, Gross: 32, Overlap: 2, TrimLeft: 1, TrimRight: 1, Foot: 12, OneWall: true,
		Rules: seam.Rules{LeastWidth: 6, PreferWidth: 12, CornerReturn: 4, PreferReturn: 6, Leg: 3, PreferLeg: 6, OpeningClear: 2,
			PreferClear: 4, BoxClear: 5, ShortSeam: 24},
		Corners: []seam.Strip{{From: 20, To: 22}}, Openings: []seam.Opening{{A: 50, B: 60}}, Keep: []seam.Strip{{From: 70, To: 80}},
		Boxes: []seam.Strip{{From: 90, To: 93}}, Main: []seam.Strip{{From: 40, To: 100}},
		Seen: func(int64) int64 { return 90 }}
	type line struct {
		cause     seam.Cause
		edge      seam.Edge
		at, d     int64
		must, put int64 // what it adds to bends and edges, and to should
	}
	var got []line
	for _, c := range span.Charges([]int64{25, 47, 58, 72, 96}, -1) {
		if c.Cause <= seam.Width {
			got = append(got, line{c.Cause, c.Edge, c.At, c.D, c.Adds.Bends + c.Adds.Edges, c.Adds.Should})
		}
	}
	assert.Equal(t, []line{
		{seam.Return, seam.NoEdge, 25, 3, 1, 3},
		{seam.Leg, seam.EdgeA, 47, 3, 0, 3},
		{seam.Clear, seam.EdgeB, 58, 2, 0, 2},
		{seam.Kept, seam.NoEdge, 72, 2, 2, 0},
		{seam.Plate, seam.NoEdge, 96, 3, 0, 2},
		{seam.Width, seam.NoEdge, 58, 11, 0, 1},
		{seam.Width, seam.NoEdge, 100, 4, 2, 8},
	}, got)
	score := span.Score([]int64{25, 47, 58, 72, 96}, -1)
	assert.True(t, slices.Equal([]int64{score.Narrow, score.NarrowMain, score.NarrowJump, score.Sliver, score.Jump, score.Sheets, score.Seen, score.Difference},
		[]int64{4, 4, 32, 5, 32, 6, 40, 21}), "%+v", score)
}

// Inside a wrapped jamb a preference under its must asks nothing either, not even the jamb; one that is no less asks all of it.
func TestPreferClearUnderItsMust(t *testing.T) {
	for _, c := range []struct{ must, prefer, at, bends, should int64 }{
		{must: 2, prefer: 1, at: 23, bends: 5},
		{must: 2, prefer: 1, at: 27, bends: 1},
		{must: 2, prefer: 2, at: 23, bends: 5, should: 5},
		{must: 2, prefer: 4, at: 27, bends: 1, should: 3},
		{must: 0, prefer: 0, at: 23, bends: 3, should: 3},
		{must: 2, prefer: 1, at: 20, bends: 4 + 2, should: 6}, // on the jamb: the return and the clear
	} {
		span := seam.Span{R: 100, Period: 100, Snap: 1, Gross: 60, Foot: 12, Seen: func(int64) int64 { return 90 },
			Rules:    seam.Rules{CornerReturn: 4, PreferReturn: 6, OpeningClear: c.must, PreferClear: c.prefer},
			Openings: []seam.Opening{{A: 20, B: 80, Wrap: true, Reveal: 6}}}
		sum, place := totalOf(span.Owed(c.at)), oracletest.PlaceAt(span, c.at)
		assert.Equal(t, [2]int64{c.bends, c.should}, [2]int64{sum.Bends, sum.Should}, "%+v", c)
		assert.Equal(t, [2]int64{c.bends, c.should}, [2]int64{place.Bends, place.Should}, "%+v", c)
		score := span.Score([]int64{c.at, 50}, -1)
		assert.Equal(t, [2]int64{c.bends, c.should}, [2]int64{score.Bends, score.Should}, "%+v", c)
	}
}

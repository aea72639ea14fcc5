package seam

import (
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
)

// Rows find the pins that can be kept as the sweeps find them, one after the other, and are as they were once a trial is undone.
func TestRowsAgreeWithSweeps(t *testing.T) {
	served, kept, fell, closed, broken := 0, 0, 0, 0, 0
	for seed := range uint64(6000) {
		r := rand.New(rand.NewPCG(seed, 21))
		span, _ := anySpan(r, 60, int(seed%2)*3)
		span.Pins = nil
		for range 1 + r.IntN(9) {
			span.Pins = append(span.Pins, Pin{At: r.Int64N(span.Period + 1), Put: Put(r.IntN(4))})
		}
		if span.check(Steady) != nil {
			continue
		}
		p := &problem{s: &span, g: newGrid(&span), aim: Steady, store: new(store), tables: map[tableKey]*table{}, fell: true}
		p.findWays()
		got, unbroken, known := p.keepByRows()
		if !known {
			continue
		}
		want, low, err := p.keep(false)
		if err != nil {
			require.False(t, unbroken)
			continue
		}
		require.Equal(t, low == least{}, unbroken, "seed %d %+v", seed, span)
		if !unbroken {
			broken++
			continue
		}
		require.Equal(t, want, got, "seed %d %+v", seed, span)
		fresh := newRows(p.g, false)
		require.Equal(t, fresh.forth, p.rows.forth)
		require.Equal(t, fresh.back, p.rows.back)
		require.Equal(t, fresh.limit, p.rows.limit)
		require.Equal(t, fresh.from, p.rows.from)
		require.Equal(t, fresh.free, p.rows.free)
		require.Equal(t, fresh.passes, p.rows.passes)
		served++
		kept, fell = kept+len(got), fell+len(p.can)-len(got)
		if span.Closed {
			closed++
		}
	}
	t.Log(served, kept, fell, closed, broken)
	require.Greater(t, served, 1000)
	require.Greater(t, closed, 300)
	require.Greater(t, kept, 1500)
	require.Greater(t, fell, 1000)
	require.Greater(t, broken, 300)
}

// Rows that lead where each layout breaks a must find the pins that can be kept as the sweeps find them, and are as they were once
// a trial is undone.
func TestDueRowsAgreeWithSweeps(t *testing.T) {
	served, kept, fell, closed, thin := 0, 0, 0, 0, 0
	for seed := range uint64(effort.Of(12_000, 60_000)) {
		r := rand.New(rand.NewPCG(seed, 25))
		span, _ := anySpan(r, 60, int(seed%3)*3)
		span.Pins = nil
		for range 3 + r.IntN(9) {
			span.Pins = append(span.Pins, Pin{At: r.Int64N(span.Period + 1), Put: Put(r.IntN(4))})
		}
		if span.check(Steady) != nil {
			continue
		}
		p := &problem{s: &span, g: newGrid(&span), aim: Steady, store: new(store), tables: map[tableKey]*table{}, fell: true}
		p.findWays()
		low, ok, err := p.mustsBare(false)
		if err != nil || !ok || (low == least{}) {
			continue
		}
		rows := p.dueRows(low)
		if rows == nil {
			continue
		}
		forth, back := slices.Clone(rows.forth), slices.Clone(rows.back)
		got := p.keepBy(rows)
		want, err := p.keepInOrder(low)
		require.NoError(t, err)
		require.Equal(t, want, got, "seed %d %+v", seed, span)
		require.Equal(t, forth, rows.forth)
		require.Equal(t, back, rows.back)
		served++
		kept, fell = kept+len(got), fell+len(p.can)-len(got)
		if span.Closed {
			closed++
		}
		if rows.dues.t.least > span.Snap {
			thin++
		}
	}
	t.Log(served, kept, fell, closed, thin)
	require.Greater(t, served, 800)
	require.Greater(t, closed, 200)
	require.Greater(t, thin, 500)
	require.Greater(t, kept, 1000)
	require.Greater(t, fell, 1000)
}

// A Keeper says with which pin another collides, and without which corner or opening it could be kept, as Solve does of
// spans that are told so.
func TestKeeperFindsWhatCollides(t *testing.T) {
	against, without, broken := 0, 0, 0
	for seed := range uint64(1500) {
		r := rand.New(rand.NewPCG(seed, 22))
		span, _ := anySpan(r, 60, int(seed%2)*3)
		v, err := NewKeeper(span)
		require.NoError(t, err)
		keeps := func(s Span, pins ...Pin) bool {
			s.Pins = pins
			found, err := Solve(s, Steady)
			return err == nil && len(found.Dropped) == 0
		}
		best, err := Solve(span, Steady)
		if err != nil {
			continue
		}
		breaks := int(min(1, best.Score.Bends+best.Score.Edges))
		some := func() Pin { return Pin{At: r.Int64N(span.Period + 1), Put: Put(r.IntN(3))} }
		pin, others := some(), []Pin{}
		for range 4 {
			if other := some(); keeps(span, other) {
				others = append(others, other)
			}
		}
		if keeps(span, pin) {
			want := slices.IndexFunc(others, func(other Pin) bool { return !keeps(span, other, pin) })
			got, err := v.Against(pin, others)
			require.NoError(t, err)
			require.Equal(t, want, got, "%+v", span)
			against += min(1, want+1)
			continue
		}
		for i := range span.Corners {
			less := span
			less.Corners = slices.Delete(slices.Clone(span.Corners), i, i+1)
			got, err := v.Without(pin, Return, i)
			require.NoError(t, err)
			require.Equal(t, keeps(less, pin), got, "%+v", span)
			without += 1 - breaks
			broken += breaks
		}
		for i := range span.Openings {
			less := span
			less.Openings = slices.Delete(slices.Clone(span.Openings), i, i+1)
			got, err := v.Without(pin, Leg, i)
			require.NoError(t, err)
			require.Equal(t, keeps(less, pin), got, "%+v", span)
			without += 1 - breaks
			broken += breaks
		}
	}
	t.Log(against, without, broken)
	require.Greater(t, broken, 200)
	require.Greater(t, against, 50)
	require.Greater(t, without, 200)
}

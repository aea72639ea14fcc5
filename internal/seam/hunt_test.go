package seam

import (
	"testing"

	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
)

// eachPlace tries each closing place by itself.
func eachPlace(t *table, s *store) *hunt {
	h := &hunt{t: t, under: never, place: t.g.lines}
	forth := newSweeper(t, bounds{}, s)
	all := t.lanes(s, true)
	for _, class := range t.classes(nil) {
		for _, c := range class {
			if x := h.bound(forth, &group{places: []int{c}, pull: []cost{{}}, v: all})[0]; !h.beaten(c, x) {
				h.under, h.place = x, c
			}
		}
		if h.place < t.g.lines {
			break
		}
	}
	return h
}

// holdsEachPlace holds the hunt for a closed span's best closing place to trying each by itself; it is false where no place has a layout.
func holdsEachPlace(t *testing.T, span *Span, aim Aim, seed uint64) (*grid, bool) {
	t.Helper()
	g := newGrid(span)
	table, err := newTable(g, aim, true, least{})
	require.NoError(t, err)
	s := &store{}
	found, ok := table.closed(bounds{}, nil, never, s)
	h := eachPlace(table, s)
	require.Equal(t, h.place < g.lines, ok, "seed %d, aim %d", seed, aim)
	if ok {
		require.Equal(t, h.place, found.lines[0], "seed %d, aim %d", seed, aim)
		require.Equal(t, h.under, found.total, "seed %d, aim %d", seed, aim)
	}
	return g, ok
}

// The same round bare runs that whole sheets miss by the least step: there sheets are counted and places pulled evenly.
func TestHuntOnBareRuns(t *testing.T) {
	t.Parallel()
	counted := 0
	for seed := range uint64(effort.Of(4, 40)) {
		span := bareRun(seed, 4+int64(seed%4), seed%5 == 4)
		span.Snap = inch / 4
		for aim := Steady; aim <= Even; aim++ {
			if g, ok := holdsEachPlace(t, &span, aim, seed); ok && g.shorter() > 0 {
				counted++
			}
		}
	}
	require.Greater(t, counted, 8)
}

// What bounds rule out is never the best: on whole rooms the hunt finds what trying each closing place by itself finds.
func TestHuntAgainstEachPlace(t *testing.T) {
	t.Parallel()
	tried := 0
	for seed := range uint64(effort.Of(3, 12)) {
		span := room(seed, 0, true)
		span.Snap = inch / 2
		if seed%3 == 0 { // a girth that whole sheets miss by the least
			span.Period = span.Period / span.NetWidth() * span.NetWidth()
			span.Period += inch / 16
			span.R = span.Period
		}
		if seed%4 == 3 { // without openings all places show as much
			span.Openings, span.Boxes = nil, nil
			span.Seen = func(int64) int64 { return 100 * inch }
		}
		for aim := Steady; aim <= Even; aim++ {
			if _, ok := holdsEachPlace(t, &span, aim, seed); ok {
				tried++
			}
		}
	}
	require.Greater(t, tried, effort.Of(3, 12), "too few rooms with a layout")
}

package layout

import (
	"slices"

	"flitchlay/internal/room"
)

// change finds the column at which the next flitch begins, after at and at the latest at end: a span's first sheet; a
// seam inside an opening's width; the seam nearest an inside corner; and only then any seam. What comes after it must
// be enough for the rest, where it can be.
func (b *builder) change(columns []column, at, end int, rest []supply) (begin int, inField bool) {
	have := 0
	for _, s := range rest {
		have += len(s.free)
	}
	need := 0
	for _, c := range columns[end:] {
		need += len(c.sheets)
	}
	earliest := end
	for k := end - 1; k > at && need+len(columns[k].sheets) <= have; k-- {
		need += len(columns[k].sheets)
		earliest = k
	}
	// Two flitches never match, so the change goes where the least of it shows:
	for _, fits := range b.changes(columns) {
		// Of places that fit the last is taken, which leaves the fewest sheets of this flitch unused.
		for k := end; k >= earliest && k > at; k-- {
			if fits(k) {
				return k, false
			}
		}
	}
	// 4. any seam; the last uses this flitch up.
	return end, true
}

// changes are the places for a change of the flitch, the best kind first.
func (b *builder) changes(columns []column) []func(int) bool {
	return []func(int) bool{
		// 1. a span's first sheet: the grain begins anew there anyhow;
		func(k int) bool { return columns[k].first },
		// 2. over or under an opening, where the seam is short;
		func(k int) bool { return b.overOpening(columns[k]) },
		// 3. the seam nearest an inside corner: the two sides are seldom seen in one light.
		func(k int) bool { return b.besideCorner(columns, k) },
	}
}

// inField reports whether a change of the flitch at a column stands at none of these places.
func (b *builder) inField(columns []column, k int) bool {
	return !slices.ContainsFunc(b.changes(columns), func(fits func(int) bool) bool { return fits(k) })
}

// overOpening reports whether the seam left of a column stands inside an opening's width.
func (b *builder) overOpening(c column) bool {
	if c.left == nil {
		return false
	}
	return slices.ContainsFunc(c.run.Openings, func(o Opening) bool {
		return c.run.Line.DistanceTo(c.left.At, o.Left, o.Right) == 0
	})
}

// besideCorner reports whether the seam left of column k is the nearest one to some inside corner.
func (b *builder) besideCorner(columns []column, k int) bool {
	c := columns[k]
	if c.left == nil {
		return false
	}
	line := c.run.Line
	for _, corner := range line.Corners {
		if corner.Kind != room.Inside {
			continue
		}
		mine := line.DistanceTo(c.left.At, corner.From, corner.To)
		nearer := func(s Seam) bool { return line.DistanceTo(s.At, corner.From, corner.To) < mine }
		if !slices.ContainsFunc(c.run.Seams, nearer) {
			return true
		}
	}
	return false
}

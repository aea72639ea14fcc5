package layout

import (
	"cmp"
	"slices"
	"strconv"

	"flitchlay/internal/room"
)

// demand is one thing the room asks of a span, which can be left out to see whether the rest can be met.
type demand struct {
	demandKey
	index    int // in the corners, openings or kept stretches of the span
	from, to L   // where it stands
}

// demandKey is the same for the same thing in a room that is changed.
type demandKey struct {
	kind demandKind
	wall int // in Room.Walls; the one at the left of a corner, the first of the run for the least width
	item int // in the wall's openings or kept stretches
}

type demandKind int

const (
	leastDemand demandKind = iota
	cornerDemand
	openingDemand
	keepDemand
)

// demands lists what the room asks of a span: the least width, then the rest in order of s.
func (b *builder) demands(q *question) []demand {
	var out []demand
	for _, c := range q.line.Corners {
		if c.Bends() {
			out = append(out, demand{demandKey{cornerDemand, c.LeftWall, 0}, len(out), c.At, c.At})
		}
	}
	openings, kept := 0, 0
	for _, st := range q.line.Walls {
		w := &b.room.Walls[st.Wall]
		for i := range w.Openings {
			o := q.Openings[openings]
			out = append(out, demand{demandKey{openingDemand, st.Wall, i}, openings, L(o.A), L(o.B)})
			openings++
		}
		for i, keep := range w.KeepClear {
			if q.line.Up {
				break
			}
			out = append(out, demand{demandKey{keepDemand, st.Wall, i}, kept, st.Shift + keep.From, st.Shift + keep.To})
			kept++
		}
	}
	slices.SortStableFunc(out, func(x, y demand) int { return cmp.Compare(x.from, y.from) })
	return append([]demand{{demandKey: demandKey{leastDemand, q.line.Walls[0].Wall, 0}}}, out...)
}

// demandWords names a demand in a message.
func (b *builder) demandWords(d demand) string {
	rules := b.room.Rules
	switch d.kind {
	case leastDemand:
		return "no sheet under " + b.style.Words(rules.LeastWidth) + " (least_width)"
	case cornerDemand:
		return "returns of " + b.style.Words(rules.CornerReturn) + " at corner C" + strconv.Itoa(d.wall+1)
	case keepDemand:
		keep := b.room.Walls[d.wall].KeepClear[d.item]
		return "no seam from " + b.style.Words(keep.From) + " to " + b.style.Words(keep.To) + " on wall " + b.room.Walls[d.wall].Name
	}
	o := &b.room.Walls[d.wall].Openings[d.item]
	if !b.wraps(o) {
		return "legs of " + b.style.Words(rules.Leg) + " and seams " + b.style.Words(rules.OpeningClear) + " inside at " + b.openingWords(d.wall, d.item)
	}
	return "returns of " + b.style.Words(rules.CornerReturn) + " and jambs of " + b.style.Words(o.Reveal) + " at " + b.openingWords(d.wall, d.item)
}

// wraps reports whether the jambs of an opening are bends: never where the grain is horizontal.
func (b *builder) wraps(o *room.Opening) bool { return o.WrapReveal && !b.room.Veneer.Horizontal }

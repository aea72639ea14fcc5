package layout

import (
	"slices"

	"flitchlay/internal/length"
	"flitchlay/internal/room"
	"flitchlay/internal/seam"
)

// farthestMove is how far an opening is moved in trying: farther off it is another design.
const farthestMove = 12 * length.Inch

// mostMisses is how many places are tried at which the opening does, but not in the room as a whole.
const mostMisses = 8

// move tries an opening further and further to both sides, as far as the wall and what is on it leave room. Farther is not
// always better, so every place on the grid is tried.
func (m *mender) move(d demand) {
	w := &m.room.Walls[d.wall]
	snap := m.room.Rules.Snap
	up := m.c.spot.q.line.Up
	if m.c.spot.q.Openings[d.index].Gap || !up && !steadyOn(w, &w.Openings[d.item]) || up && !w.Openings[d.item].SillGiven {
		return // its edges are raw ends, or moved it becomes another one, or it stands on the floor
	}
	low, high := along(w, d.item)
	if up {
		low, high = upward(w, d.item)
	}
	misses := 0
	openings := slices.Clone(m.c.spot.q.Openings)
	moved, at := &openings[d.index], m.c.spot.q.Openings[d.index]
	for n := L(1); n*snap <= farthestMove; n++ {
		for _, by := range [2]L{-n * snap, n * snap} {
			if by < low || by > high {
				continue
			}
			c := change{kind: openingMoved, amount: by.Abs(), on: &d.demandKey, span: func(s *seam.Span) {
				s.Openings = openings
				moved.A, moved.B = at.A+int64(by), at.B+int64(by)
			}, room: func(r *room.Room) { shift(&r.Walls[d.wall].Openings[d.item], by, up) }}
			if !m.does(c.span, m.others) || !m.does(c.span, m.still(c.span, m.others)) {
				continue
			}
			if m.propose(c) {
				return
			}
			if misses++; misses == mostMisses {
				return
			}
		}
	}
}

// shift moves an opening along its wall or up it.
func shift(o *room.Opening, by L, up bool) {
	if up {
		o.Sill, o.Head = o.Sill+by, o.Head+by
		return
	}
	o.FromLeft += by
}

// steadyOn reports whether an opening keeps its sill and its head wherever it is moved: it has a sill, or its floor is level
// and its head under the ceiling.
func steadyOn(w *room.Wall, o *room.Opening) bool {
	level := func(profile []room.Point) bool {
		return !slices.ContainsFunc(profile, func(p room.Point) bool { return p.Z != profile[0].Z })
	}
	return o.SillGiven || level(w.Floor) && o.Head == w.Floor[0].Z+o.Height
}

// along is how far an opening can be moved to the left, as a negative length, and to the right, until it meets a neighbour, a
// bare strip, the wall's end, or a floor or a ceiling that is no more where it was.
func along(w *room.Wall, i int) (low, high L) {
	o := &w.Openings[i]
	low, high = -o.FromLeft, w.Length-o.Right()
	block := func(from, to L) {
		if to <= o.FromLeft {
			low = max(low, to-o.FromLeft)
		}
		if from >= o.Right() {
			high = min(high, from-o.Right())
		}
	}
	for j := range w.Openings {
		if j != i {
			block(w.Openings[j].FromLeft, w.Openings[j].Right())
		}
	}
	for _, bare := range w.Bare {
		block(bare.From, bare.To)
	}
	// between two points a profile is straight: what cuts into the opening's height there blocks it
	for k := 1; k < len(w.Ceiling); k++ {
		if a, b := w.Ceiling[k-1], w.Ceiling[k]; min(a.Z, b.Z) < o.Head {
			block(a.X, b.X)
		}
	}
	for k := 1; k < len(w.Floor) && o.SillGiven; k++ {
		if a, b := w.Floor[k-1], w.Floor[k]; max(a.Z, b.Z) > o.Sill {
			block(a.X, b.X)
		}
	}
	return low, high
}

// upward is the same down and up, where s goes up the wall.
func upward(w *room.Wall, i int) (low, high L) {
	o := &w.Openings[i]
	low, high = -far, far
	stops := []L{o.FromLeft, o.Right()}
	for _, p := range slices.Concat(w.Floor, w.Ceiling) {
		if p.X > o.FromLeft && p.X < o.Right() {
			stops = append(stops, p.X)
		}
	}
	for _, x := range stops {
		low = max(low, max(room.At(w.Floor, x), room.AtRight(w.Floor, x))-o.Sill)
		high = min(high, min(room.At(w.Ceiling, x), room.AtRight(w.Ceiling, x))-o.Head)
	}
	for j := range w.Openings {
		other := &w.Openings[j]
		if j == i || other.Right() <= o.FromLeft || other.FromLeft >= o.Right() {
			continue
		}
		if other.Head <= o.Sill {
			low = max(low, other.Head-o.Sill)
		} else {
			high = min(high, other.Sill-o.Head)
		}
	}
	return low, high
}

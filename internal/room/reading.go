package room

import (
	"slices"

	"flitchlay/internal/length"
)

// Reading is what was measured of a wall when the crew came to it, after the room was laid out. What was not measured is nil.
type Reading struct {
	Wall                int // index
	Length              *L
	LeanLeft, LeanRight *L
	Floor, Ceiling      []Point // heights above the room's level where they were read, from left to right
	Where               Place
}

// AsRead is the room with its walls as they were measured on arrival. What reads as the drawings print it is as planned, to the
// last unit: a figure that was read off a page and found true changes nothing. A wall of another length is longer or shorter at its
// right end, and what stands on it stays where it was from its left end. Floor and ceiling are off by what they were read to be off:
// between two places read this goes over evenly, past the outermost it stays. What hangs was measured from the corner as it stands,
// and moves with it.
func (r *Room) AsRead() *Room {
	now := *r
	now.Walls = slices.Clone(r.Walls)
	round := length.StyleOf(r.Project.Units).Round
	take := func(to *L, read *L) {
		if read != nil && round(*read) != round(*to) {
			*to = *read
		}
	}
	for i := range r.Readings {
		x := &r.Readings[i]
		w := &now.Walls[x.Wall]
		take(&w.Length, x.Length)
		take(&w.LeanLeft, x.LeanLeft)
		take(&w.LeanRight, x.LeanRight)
		w.Floor = readProfile(w.Floor, w.Length, x.Floor, r.Space.LevelLine, round)
		w.Ceiling = readProfile(w.Ceiling, w.Length, x.Ceiling, r.Space.LevelLine, round)
	}
	for i := range now.Walls {
		w, before := &now.Walls[i], r.before(i)
		if !w.LeanLeftGiven && before >= 0 && !r.readLeft(i) {
			w.LeanLeft = now.Walls[before].LeanRight
		}
	}
	now.Hung = slices.Clone(r.Hung)
	for i := range now.Hung {
		h := &now.Hung[i]
		by := now.Datum(h.Wall) - r.Datum(h.Wall)
		h.Seam, h.Top = h.Seam+by, h.Top+by
		if h.Left != nil {
			left := *h.Left + by
			h.Left = &left
		}
	}
	return &now
}

// before is the wall across the corner at a wall's left end, -1 where there is none.
func (r *Room) before(i int) int {
	n := len(r.Walls)
	if i == 0 && !r.Space.Closed {
		return -1
	}
	if k := (i + n - 1) % n; r.Walls[k].Corner != None && k != i {
		return k
	}
	return -1
}

// readLeft reports whether the lean of a wall's left end was read.
func (r *Room) readLeft(wall int) bool {
	return slices.ContainsFunc(r.Readings, func(x Reading) bool { return x.Wall == wall && x.LeanLeft != nil })
}

// readProfile is a floor or a ceiling of a wall that is so long, with the heights that were read of it. They are compared as they
// are printed, from the level line.
func readProfile(plan []Point, long L, read []Point, level L, round func(L) L) []Point {
	if plan[len(plan)-1].X != long {
		plan = fitted(plan, long)
	}
	off, some := make([]Point, len(read)), false
	for i, p := range read {
		off[i].X = p.X
		if z := At(plan, p.X); round(p.Z-level) != round(z-level) {
			off[i].Z, some = p.Z-z, true
		}
	}
	if !some {
		return plan
	}
	out := slices.Clone(plan)
	for _, p := range read {
		if !slices.ContainsFunc(plan, func(q Point) bool { return q.X == p.X }) && p.X > 0 && p.X < long {
			i, _ := slices.BinarySearchFunc(out, p, func(q, p Point) int { return int(max(-1, min(1, q.X-p.X))) })
			out = slices.Insert(out, i, Point{p.X, At(plan, p.X)})
		}
	}
	for i := range out {
		out[i].Z += At(off, out[i].X)
	}
	return out
}

// fitted is a profile of a wall that turned out so long: cut off there, or carried on level from its last point.
func fitted(plan []Point, long L) []Point {
	var out []Point
	for _, p := range plan {
		if p.X < long {
			out = append(out, p)
		}
	}
	return append(out, Point{long, At(plan, long)})
}

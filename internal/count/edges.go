package count

import (
	"slices"

	"flitchlay/internal/layout"
	"flitchlay/internal/room"
	"flitchlay/internal/shape"
)

// edges is how many edges of an opening are cut along: its two sides, its head where covering is over it, its sill
// where covering is under it.
func edges(r *room.Room, o *layout.Opening) int {
	w := &r.Walls[o.Wall]
	n := 2
	if o.Gap {
		return n
	}
	low, high := w.CoverFloor(), w.CoverCeiling()
	from := w.Openings[o.Index].FromLeft
	to := w.Openings[o.Index].Right()
	places := []L{from, to}
	for _, p := range slices.Concat(low, high) {
		if from < p.X && p.X < to {
			places = append(places, p.X)
		}
	}
	over := slices.ContainsFunc(places, func(x L) bool { return max(room.At(high, x), room.AtRight(high, x)) > o.Head })
	under := slices.ContainsFunc(places, func(x L) bool { return min(room.At(low, x), room.AtRight(low, x)) < o.Sill })
	if over {
		n++
	}
	if under && w.Openings[o.Index].SillGiven {
		n++
	}
	return n
}

// cutEdges is how many edges of an opening are behind the crew: only sheets that hang reach them.
func cutEdges(run *layout.Run, o *layout.Opening, in *room.Opening) (n int) {
	from, to := in.FromLeft, in.Right()
	type edge struct{ a, b room.Point }
	for _, e := range []edge{
		{room.Point{X: from, Z: o.Sill}, room.Point{X: from, Z: o.Head}}, {room.Point{X: to, Z: o.Sill}, room.Point{X: to, Z: o.Head}},
		{room.Point{X: from, Z: o.Head}, room.Point{X: to, Z: o.Head}}, {room.Point{X: from, Z: o.Sill}, room.Point{X: to, Z: o.Sill}},
	} {
		hung, rest := false, false
		for k := range run.Sheets {
			s := &run.Sheets[k]
			for i := range s.Pieces {
				if p := &s.Pieces[i]; p.Wall == o.Wall && along(p, e.a, e.b) {
					hung, rest = hung || s.Hung, rest || !s.Hung
				}
			}
		}
		if hung && !rest {
			n++
		}
	}
	return n
}

// along reports whether a piece has a side on a line that is upright or level.
func along(p *layout.Piece, a, b room.Point) bool {
	for _, o := range slices.Concat([]shape.Outline{p.Outline}, p.Holes) {
		for i, c := range o {
			d := o[(i+1)%len(o)]
			upright := a.X == b.X && c.X == a.X && d.X == a.X && max(min(c.Z, d.Z), a.Z) < min(max(c.Z, d.Z), b.Z)
			level := a.Z == b.Z && c.Z == a.Z && d.Z == a.Z && max(min(c.X, d.X), a.X) < min(max(c.X, d.X), b.X)
			if upright || level {
				return true
			}
		}
	}
	return false
}

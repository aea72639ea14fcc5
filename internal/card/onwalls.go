package card

import (
	"flitchlay/internal/face"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/room"
	"flitchlay/internal/shape"
)

// What of a sheet lies on which wall is read off the wall's face: each of its hangs says where the sheet's edge is there.

// Rake is a head or a foot that the wall does not cut square, over the whole width of the sheet on one wall.
type Rake struct {
	Head   bool
	Wall   int
	Points []shape.Point // from left to right
}

// Bevel is a straight part of a rake: how much it rises over how much of the sheet, going right.
type Bevel struct{ Rise, Over L }

// Bevels are the straight parts of a rake that are not level, from left to right.
func (r *Rake) Bevels() []Bevel {
	var list []Bevel
	for i := 1; i < len(r.Points); i++ {
		a, b := r.Points[i-1], r.Points[i]
		if b.X > a.X && a.Z != b.Z {
			list = append(list, Bevel{b.Z - a.Z, b.X - a.X})
		}
	}
	return list
}

// leastRake is what a ceiling or a floor falls over a sheet before it is worth a figure: less is taken up by the trim.
const leastRake = length.Inch / 4

// hangsOf visits where a sheet hangs on each wall.
func (m *maker) hangsOf(s *layout.Sheet, visit func(*face.Face, *face.Hang)) {
	for _, f := range m.faces {
		for _, h := range f.Hangs {
			if h.Holds(s) {
				visit(f, h)
			}
		}
	}
}

// onSheet is where a point of a wall lies on the sheet, whose edge stands at start there.
func (m *maker) onSheet(c *Card, start L, p shape.Point) shape.Point {
	if c.Level {
		return shape.Point{X: p.X, Z: p.Z - start}
	}
	return shape.Point{X: p.X - start, Z: p.Z - m.plan.Room.Space.LevelLine}
}

// onWalls lays out the pieces, and finds the rakes.
func (m *maker) onWalls(c *Card) {
	for _, p := range c.Sheet.Pieces {
		start := m.startOf(c, p)
		q := layout.Piece{Wall: p.Wall, Area: p.Area}
		q.Outline = m.laid(c, start, p.Outline)
		for _, o := range p.Holes {
			q.Holes = append(q.Holes, m.laid(c, start, o))
		}
		c.Pieces = append(c.Pieces, q)
	}
	m.hangsOf(c.Sheet, func(f *face.Face, h *face.Hang) {
		if c.Level {
			m.slopes(c, f, h)
			return
		}
		from, to := max(h.Start, f.Left), min(h.Start+c.Cut.Width, f.Right)
		if from >= to {
			return
		}
		rake := func(head bool, profile []room.Point) {
			r := Rake{Head: head, Wall: f.Wall}
			for _, p := range face.Profile(profile, from, to) {
				r.Points = append(r.Points, m.onSheet(c, h.Start, shape.Point(p)))
			}
			if low, high := r.heights(); high-low > leastRake {
				c.Rakes = append(c.Rakes, r)
			}
		}
		if h.Sheets[len(h.Sheets)-1] == c.Sheet {
			rake(true, f.W.CoverCeiling())
		}
		if c.Sheet.Lowest {
			rake(false, f.W.CoverFloor())
		}
	})
}

// startOf is where on the wall of a piece the edge of its sheet hangs. In the strip that a leaning joint sweeps a sheet can
// have a piece of a wall on which it does not hang; it lies then where the run goes on.
func (m *maker) startOf(c *Card, p layout.Piece) L {
	for _, f := range m.faces {
		if f.Wall != p.Wall {
			continue
		}
		if h := nearest(f, c.Sheet, p); h != nil {
			return h.Start
		}
		start, x := c.Sheet.StartLine-f.St.Shift, p.Outline[0].X
		for round := c.Run.Length; c.Run.Closed && x-start >= round; start += round {
		}
		for round := c.Run.Length; c.Run.Closed && start-x >= round-c.Cut.Width; start -= round {
		}
		return start
	}
	return 0
}

// nearest is the hang of a sheet whose part of the wall a piece lies in, nil where it has none: a sheet that goes all round a
// room comes to one wall twice.
func nearest(f *face.Face, s *layout.Sheet, p layout.Piece) *face.Hang {
	low, high := p.Outline[0].X, p.Outline[0].X
	for _, q := range p.Outline {
		low, high = min(low, q.X), max(high, q.X)
	}
	var best *face.Hang
	most := L(-1)
	for _, h := range f.Hangs {
		if !h.Holds(s) {
			continue
		}
		if over := max(0, min(high, h.To)-max(low, h.From)); over > most {
			best, most = h, over
		}
	}
	return best
}

func (m *maker) laid(c *Card, start L, o shape.Outline) shape.Outline {
	out := make(shape.Outline, len(o))
	for i, p := range o {
		out[i] = m.onSheet(c, start, p)
	}
	return out
}

// slopes are the sloping edges of a sheet that lies level: those of its pieces that run along floor or ceiling.
func (m *maker) slopes(c *Card, f *face.Face, h *face.Hang) {
	for _, p := range c.Sheet.Pieces {
		if p.Wall != f.Wall {
			continue
		}
		for i, a := range p.Outline {
			b := p.Outline[(i+1)%len(p.Outline)]
			if a.X > b.X {
				a, b = b, a
			}
			if a.X == b.X || (a.Z-b.Z).Abs() <= leastRake {
				continue
			}
			for _, head := range []bool{true, false} {
				profile := f.W.CoverFloor()
				if head {
					profile = f.W.CoverCeiling()
				}
				if (room.AtRight(profile, a.X)-a.Z).Abs() <= 1 && (room.At(profile, b.X)-b.Z).Abs() <= 1 {
					c.Rakes = append(c.Rakes, Rake{Head: head, Wall: f.Wall, Points: []shape.Point{m.onSheet(c, h.Start, a), m.onSheet(c, h.Start, b)}})
				}
			}
		}
	}
}

// heights are the lowest and the highest point of a rake.
func (r *Rake) heights() (low, high L) {
	low, high = r.Points[0].Z, r.Points[0].Z
	for _, p := range r.Points {
		low, high = min(low, p.Z), max(high, p.Z)
	}
	return low, high
}

// folds are the bends of the cut list with both their ends.
func (m *maker) folds(c *Card) {
	for i := range c.Cut.Bends {
		b := &c.Cut.Bends[i]
		fold := Fold{Bend: b, Foot: shape.Point{X: b.At, Z: c.Kept.Bottom}, Head: shape.Point{X: b.At, Z: c.Kept.Top}}
		if b.Of != nil {
			level := m.plan.Room.Space.LevelLine
			if b.Of.SillGiven {
				fold.Foot.Z = max(fold.Foot.Z, b.Of.Sill-level)
			}
			fold.Head.Z = min(fold.Head.Z, b.Of.Head-level)
			if fold.Foot.Z < fold.Head.Z { // else the jamb is another course's
				c.Folds = append(c.Folds, fold)
			}
			continue
		}
		for k := range c.Run.Corners {
			if o := &c.Run.Corners[k]; o.Name == b.Name {
				fold.Corner = o
			}
		}
		fold.Foot.X, fold.Head.X = b.AtHeight(fold.Foot.Z), b.AtHeight(fold.Head.Z)
		c.Folds = append(c.Folds, fold)
	}
}

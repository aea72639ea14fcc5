package crew

import (
	"flitchlay/internal/layout"
	"flitchlay/internal/scene"
	"flitchlay/internal/shape"
)

// cover is a piece of a sheet as it stands on the page: its outline, the box round it, and its holes.
type cover struct {
	box     scene.Box
	outline []scene.Point
	holes   [][]scene.Point
}

// covers are the pieces of a sheet on this wall. They are asked for very often, and the same for as long as the drawing has its
// scale and its place.
func (d *wallBoard) covers(s *layout.Sheet) []cover {
	if list, known := d.pieces[s]; known {
		return list
	}
	list := []cover{}
	for i := range s.Pieces {
		q := &s.Pieces[i]
		if q.Wall != d.w.Wall {
			continue
		}
		c := cover{outline: d.onPage(q.Outline)}
		for k, p := range c.outline {
			b := scene.Box{X0: p.X, Y0: p.Y, X1: p.X, Y1: p.Y}
			if k > 0 {
				b = c.box.Union(b)
			}
			c.box = b
		}
		for _, o := range q.Holes {
			c.holes = append(c.holes, d.onPage(o))
		}
		list = append(list, c)
	}
	if d.pieces == nil {
		d.pieces = map[*layout.Sheet][]cover{}
	}
	d.pieces[s] = list
	return list
}

func (d *wallBoard) onPage(o shape.Outline) []scene.Point {
	list := make([]scene.Point, len(o))
	for i, p := range o {
		list[i] = d.v.Pt(p.X, p.Z)
	}
	return list
}

// within reports whether a point of the page lies in a sheet's pieces on this wall.
func (d *wallBoard) within(s *layout.Sheet, p scene.Point) bool {
	for _, c := range d.covers(s) {
		if p.Y < c.box.Y0 || p.Y > c.box.Y1 || p.X < c.box.X0 || p.X > c.box.X1 || !inside(c.outline, p) {
			continue
		}
		hole := false
		for _, o := range c.holes {
			hole = hole || inside(o, p)
		}
		if !hole {
			return true
		}
	}
	return false
}

// inside reports whether a point lies in an outline, by counting the sides to its right.
func inside(o []scene.Point, p scene.Point) bool {
	in := false
	for i, a := range o {
		b := o[(i+1)%len(o)]
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(p.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
			in = !in
		}
	}
	return in
}

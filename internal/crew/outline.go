package crew

import (
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
	"flitchlay/internal/shape"
)

// Polygons cuts a shape of the wall to the piece.
func (d *WallBoard) Polygons(s shape.Wall) []shape.Polygon {
	var cuts []L
	column := 0
	if d.P.LeftCut() {
		cuts, column = append(cuts, d.P.From), 1
	}
	if d.P.RightCut() {
		cuts = append(cuts, d.P.To)
	}
	return shape.Grid(s, cuts, nil)[column][0]
}

func (d *WallBoard) points(o shape.Outline) []scene.Point {
	out := make([]scene.Point, len(o))
	for i, p := range o {
		out[i] = d.V.Pt(p.X, p.Z)
	}
	return out
}

// Outlines draws the wall from floor to ceiling, and the floor.
func (d *WallBoard) Outlines() {
	w := d.W.W
	wall := d.W.Cover
	wall.Holes = nil
	wall.Floor, wall.Ceiling = WallProfile(w.Floor), WallProfile(w.Ceiling)
	pen := scene.Pen(scene.Walls, CrewFine)
	for _, polygon := range d.Polygons(wall) {
		d.Edges(polygon.Outline, pen, true)
	}
}

func WallProfile(points []room.Point) []shape.Point {
	out := make([]shape.Point, len(points))
	for i, p := range points {
		out[i] = shape.Point{X: p.X, Z: p.Z}
	}
	return out
}

// Edges draws the sides of an outline one by one: at a match line none, where the covering goes on round a bend, dashed.
func (d *WallBoard) Edges(o shape.Outline, pen scene.Style, plain bool) {
	pen.Cap = scene.Square
	for i, p := range o {
		q := o[(i+1)%len(o)]
		a, b := d.V.Pt(p.X, p.Z), d.V.Pt(q.X, q.Z)
		style := pen
		switch {
		case d.P.LeftCut() && p.X == d.P.From && q.X == p.X, d.P.RightCut() && p.X == d.P.To && q.X == p.X:
			continue
		case !plain && p.Z != q.Z && d.Bent(p.X) && d.Bent(q.X):
			style.Cap = scene.Butt
			style = style.As(scene.Dashed(pen.Width))
		}
		d.G.Line(a, b, style)
		d.Space.Stroke(a, b)
	}
}

// Bent reports whether the covering goes on round a bend at x.
func (d *WallBoard) Bent(x L) bool {
	w := d.W
	near := func(end, lean L) bool { return min(end, end+lean) <= x && x <= max(end, end+lean) }
	for _, h := range d.P.Hangs {
		if h.Before && near(w.Left, w.W.LeanLeft) || h.After && near(w.Right, w.W.LeanRight) {
			return true
		}
	}
	for i := range w.W.Openings {
		if o := &w.W.Openings[i]; o.WrapReveal && (x == o.FromLeft || x == o.Right()) {
			return true
		}
	}
	return false
}

// Covering draws the outline of what is covered.
func (d *WallBoard) Covering() {
	g := d.G
	d.G = g.Part(scene.Tag{Class: "covering"})
	pen := scene.Pen(scene.Covering, CrewHeavy)
	for _, polygon := range d.Polygons(d.W.Cover) {
		d.Edges(polygon.Outline, pen, false)
		for _, hole := range polygon.Holes {
			d.Edges(hole, pen, false)
		}
	}
	d.G = g
	for _, x := range d.MatchLines() {
		low, high := d.Extremes()
		a, b := d.V.Pt(x, high).Add(0, -6*d.U), d.V.Pt(x, low).Add(0, 1.5*d.U)
		d.G.Line(a, b, scene.Pen(scene.Walls, CrewHeavy).As(scene.Phantom(CrewFine)))
		d.Space.Stroke(a, b)
	}
}

// MatchLines are the places at which the wall goes on on another page.
func (d *WallBoard) MatchLines() []L {
	var list []L
	if d.P.LeftCut() {
		list = append(list, d.P.From)
	}
	if d.P.RightCut() {
		list = append(list, d.P.To)
	}
	return list
}

package crew

import (
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/scene"
	"flitchlay/internal/shape"
)

// polygons cuts a shape of the wall to the piece.
func (d *wallBoard) polygons(s shape.Wall) []shape.Polygon {
	var cuts []L
	column := 0
	if d.p.leftCut() {
		cuts, column = append(cuts, d.p.from), 1
	}
	if d.p.rightCut() {
		cuts = append(cuts, d.p.to)
	}
	return shape.Grid(s, cuts, nil)[column][0]
}

// outlines draws the wall from floor to ceiling, and the floor.
func (d *wallBoard) outlines() {
	w := d.w.W
	wall := d.w.cover
	wall.Holes = nil
	wall.Floor, wall.Ceiling = layout.Profile(w.Floor), layout.Profile(w.Ceiling)
	pen := scene.Pen(scene.Walls, folio.TapedFine)
	for _, polygon := range d.polygons(wall) {
		d.edges(polygon.Outline, pen, true)
	}
}

// edges draws the sides of an outline one by one: at a match line none, where the covering goes on round a bend, dashed.
func (d *wallBoard) edges(o shape.Outline, pen scene.Style, plain bool) {
	pen.Cap = scene.Square
	for i, p := range o {
		q := o[(i+1)%len(o)]
		a, b := d.v.Pt(p.X, p.Z), d.v.Pt(q.X, q.Z)
		style := pen
		switch {
		case d.p.leftCut() && p.X == d.p.from && q.X == p.X, d.p.rightCut() && p.X == d.p.to && q.X == p.X:
			continue
		case !plain && p.Z != q.Z && d.bent(p.X) && d.bent(q.X):
			style.Cap = scene.Butt
			style = style.As(scene.Dashed(pen.Width))
		}
		d.g.Line(a, b, style)
		d.space.Stroke(a, b)
	}
}

// bent reports whether the covering goes on round a bend at x.
func (d *wallBoard) bent(x L) bool {
	w := d.w
	near := func(end, lean L) bool { return min(end, end+lean) <= x && x <= max(end, end+lean) }
	for _, h := range d.p.hangs {
		if h.before && near(w.left, w.W.LeanLeft) || h.after && near(w.right, w.W.LeanRight) {
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

// covering draws the outline of what is covered.
func (d *wallBoard) covering() {
	g := d.g
	d.g = g.Part(scene.Tag{Class: "covering"})
	pen := scene.Pen(scene.Covering, CrewHeavy)
	for _, polygon := range d.polygons(d.w.cover) {
		d.edges(polygon.Outline, pen, false)
		for _, hole := range polygon.Holes {
			d.edges(hole, pen, false)
		}
	}
	d.g = g
	for _, x := range d.matchLines() {
		low, high := d.extremes()
		a, b := d.v.Pt(x, high).Add(0, -6*d.u), d.v.Pt(x, low).Add(0, 1.5*d.u)
		d.g.Line(a, b, scene.Pen(scene.Walls, CrewHeavy).As(scene.Phantom(folio.TapedFine)))
		d.space.Stroke(a, b)
	}
}

// matchLines are the places at which the wall goes on on another page.
func (d *wallBoard) matchLines() []L {
	var list []L
	if d.p.leftCut() {
		list = append(list, d.p.from)
	}
	if d.p.rightCut() {
		list = append(list, d.p.to)
	}
	return list
}

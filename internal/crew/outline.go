package crew

import (
	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
	"flitchlay/internal/shape"
)

// outlines draws the wall from floor to ceiling, and the floor.
func (d *wallBoard) outlines() {
	pen := scene.Pen(scene.Walls, folio.TapedFine)
	for _, polygon := range d.p.Part(d.w.Whole()) {
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
		case d.p.LeftCut() && p.X == d.p.From && q.X == p.X, d.p.RightCut() && p.X == d.p.To && q.X == p.X:
			continue
		case p.Z != q.Z && d.joined() && d.atLeft(p.X) && d.atLeft(q.X): // the wall before has drawn it
			continue
		case !plain && p.Z != q.Z && d.sameEnd(p.X, q.X) && d.w.Bent(d.p.Hangs, p.X) && d.w.Bent(d.p.Hangs, q.X):
			style.Cap = scene.Butt
			style = style.As(scene.Dashed(pen.Width))
		}
		d.line(d.g, a, b, style)
	}
}

// atLeft reports whether a place is at the wall's left end, wherever it leans to.
func (d *wallBoard) atLeft(x L) bool {
	return min(d.w.Left, d.w.Left+d.w.W.LeanLeft) <= x && x <= max(d.w.Left, d.w.Left+d.w.W.LeanLeft)
}

// sameEnd reports whether two places are at one edge of the wall or of an opening, which may lean: a head or foot that slopes from
// one corner to the other goes round neither.
func (d *wallBoard) sameEnd(a, b L) bool {
	lean := max(d.w.W.LeanLeft.Abs(), d.w.W.LeanRight.Abs())
	return (a - b).Abs() <= lean
}

// covering draws the outline of what is covered.
func (d *wallBoard) covering() {
	g := d.g
	d.g = g.Part(scene.Tag{Class: "covering"})
	pen := scene.Pen(scene.Covering, folio.TapedHeavy)
	for _, polygon := range d.p.Part(d.w.Covering()) {
		d.edges(polygon.Outline, pen, false)
		for _, hole := range polygon.Holes {
			d.edges(hole, pen, false)
		}
	}
	d.g = g
	for _, x := range d.p.MatchLines() {
		low, high := d.p.Extremes()
		a, b := d.v.Pt(x, high).Add(0, -6*d.Unit), d.v.Pt(x, low).Add(0, 1.5*d.Unit)
		d.line(d.g, a, b, scene.Pen(scene.Walls, folio.TapedHeavy).As(scene.Phantom(folio.TapedFine)))
	}
}

package elevation

import (
	"math"

	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// openBoxes are the openings on the page.
func (e *View) openBoxes() []scene.Box {
	var list []scene.Box
	for i := range e.F.W.Openings {
		b := e.V.Box(e.F.Hole(&e.F.W.Openings[i]))
		b.Y1 += 0.01
		list = append(list, b)
	}
	return list
}

// bare are the places on the page where no covering is.
func (e *View) bare() []scene.Box {
	var list []scene.Box
	for _, r := range e.F.Bare() {
		list = append(list, e.V.Box(r.Left, r.Bottom, r.Right, r.Top))
	}
	return list
}

// Hatches marks what is not covered: bare strips, and what a desk or bench hides.
func (e *View) Hatches(g *scene.Group) {
	k := e.Look
	pen := scene.Pen(scene.Hatch, k.Dimension)
	for _, b := range e.F.W.Bare {
		from, to := max(b.From, e.From), min(b.To, e.To)
		if from >= to {
			continue
		}
		box := e.V.Box(from, room.At(e.F.W.Floor, from), to, min(room.At(e.F.W.Ceiling, from), room.At(e.F.W.Ceiling, to)))
		draft.Hatch(g, pen, box, k.Of(3), true)
		e.Space.Take(box)
	}
	if e.F.W.HiddenBelow > 0 {
		y := e.V.Y(e.F.W.HiddenBelow)
		row := draft.Outside(scene.Pt(e.V.X(e.From), y), scene.Pt(e.V.X(e.To), y), e.openBoxes()...)
		for j := 0; j+1 < len(row); j += 2 {
			g.Line(row[j], row[j+1], scene.Pen(scene.Walls, k.Thin).As(scene.Dashed(k.Thin)))
			e.Space.Stroke(row[j], row[j+1])
		}
	}
}

// Opening draws an opening: white, its outline, and a second line for the casing of windows and doors.
func (e *View) Opening(g *scene.Group, o *room.Opening) {
	if o.Right() <= e.From || o.FromLeft >= e.To {
		return
	}
	k := e.Look
	x0, z0, x1, z1 := e.F.Hole(o)
	box := e.V.Box(max(x0, e.From), z0, min(x1, e.To), z1)
	in := g.Part(scene.Tag{Class: "opening", Title: o.Kind.Named(o.Name),
		Data: []scene.Datum{folio.Datum("name", o.Name), folio.Datum("left", folio.Mm(x0)), folio.Datum("right", folio.Mm(x1)), folio.Datum("sill", folio.Mm(z0)), folio.Datum("head", folio.Mm(z1))}})
	if e.holes == nil {
		e.holes = map[*room.Opening]*scene.Group{}
	}
	e.holes[o] = in
	in.Rect(box, scene.Pen(scene.Openings, k.Outline).Filled(scene.White))
	e.Space.Outline(box)
	if d := e.casing(o, box); d > 0 {
		inner := box.Inset(d)
		if !o.SillGiven {
			inner.Y1 = box.Y1
		}
		thin := scene.Pen(scene.Openings, k.Dimension)
		in.Polyline(thin, scene.Pt(inner.X0, inner.Y1), scene.Pt(inner.X0, inner.Y0), scene.Pt(inner.X1, inner.Y0), scene.Pt(inner.X1, inner.Y1))
		e.Space.Stroke(scene.Pt(inner.X0, inner.Y1), scene.Pt(inner.X0, inner.Y0))
		e.Space.Stroke(scene.Pt(inner.X0, inner.Y0), scene.Pt(inner.X1, inner.Y0))
		e.Space.Stroke(scene.Pt(inner.X1, inner.Y1), scene.Pt(inner.X1, inner.Y0))
		if o.SillGiven {
			in.HLine(inner.X0, inner.X1, inner.Y1, thin)
			e.Space.Stroke(scene.Pt(inner.X0, inner.Y1), scene.Pt(inner.X1, inner.Y1))
		}
	}
}

// casing is how far inside the edge of an opening a second line says that the edge is a casing's, which is not to scale where its
// width is not said; 0: there is none.
func (e *View) casing(o *room.Opening, box scene.Box) float64 {
	if e.Small {
		return 0
	}
	d, least := e.Look.Of(1.6), 5.0
	if o.Casing != nil {
		d, least = e.V.MM(*o.Casing), 3
	}
	if o.Kind.Traits().Cased && !o.WrapReveal && d > e.Look.Outline && box.W() > least*d && box.H() > least*d {
		return d
	}
	return 0
}

// Plate draws a box by its plate, with a sign of its kind where there is room.
func (e *View) Plate(g *scene.Group, b *room.Box) {
	if b.X < e.From || b.X > e.To {
		return
	}
	k := e.Look
	box := e.V.Box(b.X-b.PlateWidth/2, b.Z-b.PlateHigh/2, b.X+b.PlateWidth/2, b.Z+b.PlateHigh/2)
	in := g.Part(scene.Tag{Class: "box", Title: b.Kind.Named(b.Name),
		Data: []scene.Datum{folio.Datum("name", b.Name), folio.Datum("kind", string(b.Kind)), folio.Datum("x", folio.Mm(b.X)), folio.Datum("z", folio.Mm(b.Z))}})
	in.Rect(box, scene.Pen(scene.Boxes, k.Thin).Filled(scene.White))
	e.Space.Take(box)
	c, thin := box.Centre(), scene.Pen(scene.Boxes, k.Dimension)
	switch sign := b.Kind.Traits().Sign; {
	case sign == room.Sockets && box.H() > 3:
		in.Circle(c.Add(0, -box.H()/5), box.H()/9, thin)
		in.Circle(c.Add(0, box.H()/5), box.H()/9, thin)
	case sign == room.Rockers && box.W() > 2:
		n := max(b.Gang, 1)
		for i := range n {
			x := box.X0 + box.W()*(float64(i)+0.5)/float64(n)
			in.Rect(scene.Box{X0: x - 0.35, Y0: c.Y - box.H()/6, X1: x + 0.35, Y1: c.Y + box.H()/6}, thin)
		}
	case sign == room.Dial:
		in.Circle(c, math.Min(box.W(), box.H())/3.2, thin)
	}
}

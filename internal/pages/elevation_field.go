package pages

import (
	"fmt"
	"math"

	"flitchlay/internal/draft"
	"flitchlay/internal/layout"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// body draws the wall itself, from the faintest to the strongest: grain, hatch, trim, seams, openings, outline, floor.
func (e *elevation) body() {
	k, g, f := e.look, e.group, e.f
	cover := e.points(f.outline(f.w.CoverFloor(), f.w.CoverCeiling(), e.from, e.to))
	clear := f.bare(e.v.Box)
	e.grain(g.Clipped(cover...), clear)
	e.hatches(g)
	e.trim(g)
	e.sheets(g)
	e.seams(g)
	e.joints(g)
	e.rawEnds(g)
	for i := range f.w.Openings {
		e.opening(g, &f.w.Openings[i])
	}
	wall := e.points(f.outline(f.w.Floor, f.w.Ceiling, e.from, e.to))
	e.outline(g, wall)
	// the floor, past both ends
	floor := scene.Pen(scene.Walls, k.Wide)
	past := func(h ghost) float64 {
		if e.detail {
			return k.Of(2)
		}
		return math.Max(k.Of(8), e.wide(h)+k.Of(3))
	}
	points := []scene.Point{e.v.Pt(e.from, room.AtRight(f.w.Floor, e.from)).Add(-past(e.ghostLeft), 0)}
	points = append(points, e.points(profile(f.w.Floor, e.from, e.to))...)
	points = append(points, e.v.Pt(e.to, room.At(f.w.Floor, e.to)).Add(past(e.ghostRight), 0))
	g.Polyline(floor, points...)
	for i := 0; i+1 < len(points); i++ {
		e.space.Stroke(points[i], points[i+1])
	}
	e.ghostOf(g, e.ghostLeft, false)
	e.ghostOf(g, e.ghostRight, true)
	for i := range f.w.Boxes {
		e.plate(g, &f.w.Boxes[i])
	}
	e.matchLines(g)
}

// profile is a floor or ceiling between two places.
func profile(list []room.Point, from, to L) []room.Point {
	out := []room.Point{{X: from, Z: room.AtRight(list, from)}}
	for _, p := range list {
		if p.X > from && p.X < to {
			out = append(out, p)
		}
	}
	return append(out, room.Point{X: to, Z: room.At(list, to)})
}

func (e *elevation) points(list []room.Point) []scene.Point {
	out := make([]scene.Point, len(list))
	for i, p := range list {
		out[i] = e.v.Pt(p.X, p.Z)
	}
	return out
}

// outline draws the wall's outline but for its foot, which is the floor line. An end that a match line stands for is
// left out.
func (e *elevation) outline(g *scene.Group, wall []scene.Point) {
	pen := scene.Pen(scene.Walls, e.look.Outline)
	n := len(profile(e.f.w.Floor, e.from, e.to))
	rest := append(append([]scene.Point{}, wall[n-1:]...), wall[0])
	if !e.last() {
		rest = rest[1:]
	}
	if !e.first() {
		rest = rest[:len(rest)-1]
	}
	g.Polyline(pen, rest...)
	for i := 0; i+1 < len(rest); i++ {
		e.space.Stroke(rest[i], rest[i+1])
	}
}

// trim draws the upper edge of the base and the lower edge of the crown, broken at openings.
func (e *elevation) trim(g *scene.Group) {
	w := e.f.w
	pen := scene.Pen(scene.Walls, e.look.Thin)
	draw := func(list []room.Point, by L) {
		points := e.points(profile(list, e.from, e.to))
		for i := 0; i+1 < len(points); i++ {
			d := e.v.MM(by)
			row := draft.Outside(points[i].Add(0, -d), points[i+1].Add(0, -d), e.openBoxes()...)
			for j := 0; j+1 < len(row); j += 2 {
				g.Line(row[j], row[j+1], pen)
				e.space.Stroke(row[j], row[j+1])
			}
		}
	}
	if w.Base > 0 {
		draw(w.Floor, w.Base)
	}
	if w.Crown > 0 {
		draw(w.Ceiling, -w.Crown)
	}
}

// openBoxes are the openings on the page.
func (e *elevation) openBoxes() []scene.Box {
	var list []scene.Box
	for i := range e.f.w.Openings {
		b := e.v.Box(e.f.hole(&e.f.w.Openings[i]))
		b.Y1 += 0.01
		list = append(list, b)
	}
	return list
}

// sheets notes each sheet as an item that a reader can ask: its outline without a line.
func (e *elevation) sheets(g *scene.Group) {
	from, to := e.from, e.to // cut at match lines only: a leaning end of the wall goes past its foot
	if from <= e.f.left {
		from = math.MinInt64
	}
	if to >= e.f.right {
		to = math.MaxInt64
	}
	for _, p := range e.f.parts {
		for _, s := range p.sheets {
			for _, q := range s.Pieces {
				if q.Wall != e.f.wall || p.to <= e.from || p.from >= e.to {
					continue
				}
				tag := scene.Tag{Class: "sheet", Title: e.sheetWords(s), Data: []scene.Datum{datum("place", fmt.Sprint(s.Place)), datum("course", fmt.Sprint(s.Course))}}
				if s.Number > 0 {
					tag.Data = append(tag.Data, datum("flitch", s.Flitch), datum("number", fmt.Sprint(s.Number)))
				}
				in := g.Part(tag)
				var points []scene.Point
				for _, pt := range q.Outline {
					points = append(points, e.v.Pt(min(max(pt.X, from), to), pt.Z))
				}
				in.Polygon(scene.Style{Layer: scene.Covering}, points...)
			}
		}
	}
}

// sheetWords says which sheet it is.
func (s *set) sheetWords(sh *layout.Sheet) string {
	if sh.Number == 0 {
		return fmt.Sprintf("sheet at place %d", sh.Place)
	}
	if len(s.room.Flitches) == 0 {
		return fmt.Sprintf("sheet %d", sh.Number)
	}
	return fmt.Sprintf("sheet %d of flitch %s", sh.Number, sh.Flitch)
}

// sheetAt is the sheet of the lowest course at a place.
func (s *set) sheetAt(place int) *layout.Sheet {
	for i := range s.plan.Runs {
		for j := range s.plan.Runs[i].Sheets {
			if sh := &s.plan.Runs[i].Sheets[j]; sh.Place == place {
				return sh
			}
		}
	}
	return nil
}

// numberOf is what a sheet is called on a drawing: its number in the flitch, or a dash where no sheet is left.
func numberOf(sh *layout.Sheet) string {
	if sh == nil || sh.Number == 0 {
		return "-"
	}
	return fmt.Sprint(sh.Number)
}

// seams draws every seam where it shows: the closing seam heavy, the others in their width.
func (e *elevation) seams(g *scene.Group) {
	for _, s := range e.f.seams {
		if s.X < e.from || s.X > e.to || e.f.run.Up {
			continue
		}
		width := e.look.Seam
		title := fmt.Sprintf("seam %d, %s from the left end of the wall", s.Number, e.style.Format(s.X))
		if s.Closing {
			width = e.look.Wide
			title = "closing " + title
		}
		in := g.Part(scene.Tag{Class: "seam", Title: title, Data: []scene.Datum{datum("at", mm(s.At)), datum("x", mm(s.X)), datum("number", fmt.Sprint(s.Number))}})
		for _, h := range e.f.shown(s.X) {
			a, b := e.v.Pt(s.X, h[1]), e.v.Pt(s.X, h[0])
			in.Line(a, b, scene.Pen(scene.Seams, width))
			e.space.Stroke(a, b)
		}
	}
}

// joints draws where courses meet, and the seams of horizontal grain.
func (e *elevation) joints(g *scene.Group) {
	pen := scene.Pen(scene.Seams, e.look.Seam)
	type edge struct{ a, b scene.Point }
	seen := map[edge]bool{}
	for _, p := range e.f.parts {
		if len(p.sheets) < 2 && !e.f.run.Up {
			continue
		}
		for _, s := range p.sheets {
			for _, q := range s.Pieces {
				if q.Wall != e.f.wall {
					continue
				}
				for i, a := range q.Outline {
					b := q.Outline[(i+1)%len(q.Outline)]
					inner := a.Z == b.Z && e.inside(min(a.X, b.X), max(a.X, b.X), a.Z)
					if e.f.run.Up && a.X == b.X {
						inner = a.X > e.f.left && a.X < e.f.right && !e.edge(a.X)
					}
					if !inner {
						continue
					}
					pa, pb := e.v.Pt(min(max(a.X, e.from), e.to), a.Z), e.v.Pt(min(max(b.X, e.from), e.to), b.Z)
					if seen[edge{pa, pb}] || seen[edge{pb, pa}] || pa == pb {
						continue
					}
					seen[edge{pa, pb}] = true
					g.Part(scene.Tag{Class: "seam", Title: "joint"}).Line(pa, pb, pen)
					e.space.Stroke(pa, pb)
				}
			}
		}
	}
}

// edge reports whether an opening or a bare strip has its edge at x.
func (e *elevation) edge(x L) bool {
	for i := range e.f.w.Openings {
		if o := &e.f.w.Openings[i]; x == o.FromLeft || x == o.Right() {
			return true
		}
	}
	for _, b := range e.f.w.Bare {
		if x == b.From || x == b.To {
			return true
		}
	}
	return false
}

// inside reports whether a level edge lies inside the covering: neither its upper or lower edge nor that of an opening.
func (e *elevation) inside(x0, x1, z L) bool {
	m := (x0 + x1) / 2
	bottom, top := e.f.cover(m)
	if z <= bottom || z >= top {
		return false
	}
	for i := range e.f.w.Openings {
		a, z0, b, z1 := e.f.hole(&e.f.w.Openings[i])
		if a < m && m < b && (z == z0 || z == z1) {
			return false
		}
	}
	return true
}

// rawEnds draws the raw ends of the covering that stand in the field of the wall, and the mark of their detail.
func (e *elevation) rawEnds(g *scene.Group) {
	for _, r := range e.f.rawEnds() {
		if r.x <= e.from || r.x >= e.to {
			continue
		}
		for _, h := range e.f.shown(r.x) {
			a, b := e.v.Pt(r.x, h[1]), e.v.Pt(r.x, h[0])
			g.Line(a, b, scene.Pen(scene.Covering, e.look.Outline))
			e.space.Stroke(a, b)
		}
	}
}

// hatches marks what is not covered: bare strips, and what a desk or bench hides.
func (e *elevation) hatches(g *scene.Group) {
	k := e.look
	pen := scene.Pen(scene.Hatch, k.Dimension)
	for _, b := range e.f.w.Bare {
		from, to := max(b.From, e.from), min(b.To, e.to)
		if from >= to {
			continue
		}
		box := e.v.Box(from, room.At(e.f.w.Floor, from), to, min(room.At(e.f.w.Ceiling, from), room.At(e.f.w.Ceiling, to)))
		draft.Hatch(g, pen, box, k.Of(3), true)
		e.space.Take(box)
	}
	if e.f.w.HiddenBelow > 0 {
		y := e.v.Y(e.f.w.HiddenBelow)
		row := draft.Outside(scene.Pt(e.v.X(e.from), y), scene.Pt(e.v.X(e.to), y), e.openBoxes()...)
		for j := 0; j+1 < len(row); j += 2 {
			g.Line(row[j], row[j+1], scene.Pen(scene.Walls, k.Thin).As(scene.Dashed(k.Thin)))
			e.space.Stroke(row[j], row[j+1])
		}
	}
}

// opening draws an opening: white, its outline, and a second line for the casing of windows and doors.
func (e *elevation) opening(g *scene.Group, o *room.Opening) {
	if o.Right() <= e.from || o.FromLeft >= e.to {
		return
	}
	k := e.look
	x0, z0, x1, z1 := e.f.hole(o)
	box := e.v.Box(max(x0, e.from), z0, min(x1, e.to), z1)
	in := g.Part(scene.Tag{Class: "opening", Title: o.Kind + " " + o.Name,
		Data: []scene.Datum{datum("name", o.Name), datum("left", mm(x0)), datum("right", mm(x1)), datum("sill", mm(z0)), datum("head", mm(z1))}})
	if e.holes == nil {
		e.holes = map[*room.Opening]*scene.Group{}
	}
	e.holes[o] = in
	in.Rect(box, scene.Pen(scene.Openings, k.Outline).Filled(scene.White))
	e.space.Outline(box)
	if d := k.Of(1.6); (o.Kind == "window" || o.Kind == "door") && box.W() > 5*d && box.H() > 5*d {
		// a second line inside says that the edge is a casing's; its width is not drawn to scale
		inner := box.Inset(d)
		if !o.SillGiven {
			inner.Y1 = box.Y1
		}
		thin := scene.Pen(scene.Openings, k.Dimension)
		in.Polyline(thin, scene.Pt(inner.X0, inner.Y1), scene.Pt(inner.X0, inner.Y0), scene.Pt(inner.X1, inner.Y0), scene.Pt(inner.X1, inner.Y1))
		e.space.Stroke(scene.Pt(inner.X0, inner.Y1), scene.Pt(inner.X0, inner.Y0))
		e.space.Stroke(scene.Pt(inner.X0, inner.Y0), scene.Pt(inner.X1, inner.Y0))
		e.space.Stroke(scene.Pt(inner.X1, inner.Y1), scene.Pt(inner.X1, inner.Y0))
		if o.SillGiven {
			in.HLine(inner.X0, inner.X1, inner.Y1, thin)
			e.space.Stroke(scene.Pt(inner.X0, inner.Y1), scene.Pt(inner.X1, inner.Y1))
		}
	}
}

// plate draws a box by its plate, with a sign of its kind where there is room.
func (e *elevation) plate(g *scene.Group, b *room.Box) {
	if b.X < e.from || b.X > e.to {
		return
	}
	k := e.look
	box := e.v.Box(b.X-b.PlateWidth/2, b.Z-b.PlateHigh/2, b.X+b.PlateWidth/2, b.Z+b.PlateHigh/2)
	in := g.Part(scene.Tag{Class: "box", Title: b.Kind + " " + b.Name,
		Data: []scene.Datum{datum("name", b.Name), datum("kind", b.Kind), datum("x", mm(b.X)), datum("z", mm(b.Z))}})
	in.Rect(box, scene.Pen(scene.Boxes, k.Thin).Filled(scene.White))
	e.space.Take(box)
	c, thin := box.Centre(), scene.Pen(scene.Boxes, k.Dimension)
	switch {
	case b.Kind == "outlet" && box.H() > 3:
		in.Circle(c.Add(0, -box.H()/5), box.H()/9, thin)
		in.Circle(c.Add(0, box.H()/5), box.H()/9, thin)
	case b.Kind == "switch" && box.W() > 2:
		n := max(b.Gang, 1)
		for i := range n {
			x := box.X0 + box.W()*(float64(i)+0.5)/float64(n)
			in.Rect(scene.Box{X0: x - 0.35, Y0: c.Y - box.H()/6, X1: x + 0.35, Y1: c.Y + box.H()/6}, thin)
		}
	case b.Kind == "thermostat" || b.Kind == "light" || b.Kind == "alarm":
		in.Circle(c, math.Min(box.W(), box.H())/3.2, thin)
	}
}

// sequence is the count of this page among those of its kind.
func (b *board) sequence() int {
	n := 0
	for _, l := range b.list {
		if l.kind == b.leaf.kind {
			n++
		}
		if l == b.leaf {
			break
		}
	}
	return n
}

package elevation

import (
	"fmt"
	"math"

	"flitchlay/internal/draft"
	"flitchlay/internal/face"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// covering draws what is within the wall's outline, from the faintest to the strongest.
func (e *View) covering(g *scene.Group) {
	f := e.F
	cover := e.Points(f.Outline(f.W.CoverFloor(), f.W.CoverCeiling(), e.From, e.To))
	e.grain(g.Clipped(cover...), e.bare())
	e.Hatches(g)
	e.Trim(g)
	e.sheets(g)
	e.Seams(g)
	e.Slivers(g)
	e.Joints(g)
	e.RawEnds(g)
	for i := range f.W.Openings {
		e.Opening(g, &f.W.Openings[i])
	}
}

// Body draws the wall itself, from the faintest to the strongest: grain, hatch, trim, seams, openings, outline, floor.
func (e *View) Body() {
	k, g, f := e.Look, e.Group, e.F
	e.covering(g)
	wall := e.Points(f.Outline(f.W.Floor, f.W.Ceiling, e.From, e.To))
	e.Outline(g, wall)
	// the floor, past both ends
	floor := scene.Pen(scene.Walls, k.Wide)
	past := func(h ghost) float64 {
		if e.Detail {
			return k.Of(2)
		}
		return math.Max(k.Of(8), e.wide(h)+k.Of(3))
	}
	points := []scene.Point{e.V.Pt(e.From, room.AtRight(f.W.Floor, e.From)).Add(-past(e.ghostLeft), 0)}
	points = append(points, e.Points(face.Profile(f.W.Floor, e.From, e.To))...)
	points = append(points, e.V.Pt(e.To, room.At(f.W.Floor, e.To)).Add(past(e.ghostRight), 0))
	g.Polyline(floor, points...)
	for i := 0; i+1 < len(points); i++ {
		e.Space.Stroke(points[i], points[i+1])
	}
	e.ghostOf(g, e.ghostLeft, false)
	e.ghostOf(g, e.ghostRight, true)
	for i := range f.W.Boxes {
		e.Plate(g, &f.W.Boxes[i])
	}
	e.MatchLines(g)
}

// Points brings a line of the wall onto the page.
func (e *View) Points(list []room.Point) []scene.Point {
	out := make([]scene.Point, len(list))
	for i, p := range list {
		out[i] = e.V.Pt(p.X, p.Z)
	}
	return out
}

// Outline draws the wall's outline but for its foot, which is the floor line. An end that a match line stands for is
// left out.
func (e *View) Outline(g *scene.Group, wall []scene.Point) {
	pen := scene.Pen(scene.Walls, e.Look.Outline)
	n := len(face.Profile(e.F.W.Floor, e.From, e.To))
	rest := append(append([]scene.Point{}, wall[n-1:]...), wall[0])
	if !e.Last() {
		rest = rest[1:]
	}
	if !e.First() {
		rest = rest[:len(rest)-1]
	}
	g.Polyline(pen, rest...)
	for i := 0; i+1 < len(rest); i++ {
		e.Space.Stroke(rest[i], rest[i+1])
	}
}

// Trim draws the upper edge of the base and the lower edge of the crown, broken at openings.
func (e *View) Trim(g *scene.Group) {
	w := e.F.W
	pen := scene.Pen(scene.Walls, e.Look.Thin)
	draw := func(list []room.Point, by L) {
		points := e.Points(face.Profile(list, e.From, e.To))
		for i := 0; i+1 < len(points); i++ {
			d := e.V.MM(by)
			row := draft.Outside(points[i].Add(0, -d), points[i+1].Add(0, -d), e.openBoxes()...)
			for j := 0; j+1 < len(row); j += 2 {
				g.Line(row[j], row[j+1], pen)
				e.Space.Stroke(row[j], row[j+1])
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

// sheets notes each sheet as an item that a reader can ask: its outline without a line.
func (e *View) sheets(g *scene.Group) {
	from, to := e.From, e.To // cut at match lines only: a leaning end of the wall goes past its foot
	if from <= e.F.Left {
		from = math.MinInt64
	}
	if to >= e.F.Right {
		to = math.MaxInt64
	}
	for _, p := range e.F.Parts {
		for _, s := range p.Sheets {
			for _, q := range s.Pieces {
				if q.Wall != e.F.Wall || p.To <= e.From || p.From >= e.To {
					continue
				}
				tag := scene.Tag{Class: "sheet", Title: SheetWords(e.Board.Set, s), Data: []scene.Datum{folio.Datum("place", fmt.Sprint(s.Place)), folio.Datum("course", fmt.Sprint(s.Course))}}
				if s.Number > 0 {
					tag.Data = append(tag.Data, folio.Datum("flitch", s.Flitch), folio.Datum("number", fmt.Sprint(s.Number)))
				}
				in := g.Part(tag)
				var points []scene.Point
				for _, pt := range q.Outline {
					points = append(points, e.V.Pt(min(max(pt.X, from), to), pt.Z))
				}
				in.Polygon(scene.Style{Layer: scene.Covering}, points...)
			}
		}
	}
}

// SheetWords says which sheet it is.
func SheetWords(s *folio.Set, sh *layout.Sheet) string {
	if sh.Number == 0 {
		return fmt.Sprintf("sheet at place %d", sh.Place)
	}
	if len(s.Room.Flitches) == 0 {
		return fmt.Sprintf("sheet %d", sh.Number)
	}
	return fmt.Sprintf("sheet %d of flitch %s", sh.Number, sh.Flitch)
}

// SheetAt is the sheet of the lowest course at a place.
func SheetAt(s *folio.Set, place int) *layout.Sheet {
	for i := range s.Plan.Runs {
		for j := range s.Plan.Runs[i].Sheets {
			if sh := &s.Plan.Runs[i].Sheets[j]; sh.Place == place {
				return sh
			}
		}
	}
	return nil
}

// NumberOf is what a sheet is called on a drawing: its number in the flitch, or a dash where no sheet is left.
func NumberOf(sh *layout.Sheet) string {
	if sh == nil || sh.Number == 0 {
		return "-"
	}
	return fmt.Sprint(sh.Number)
}

// Seams draws every seam where it shows: the closing seam heavy, the others in their width.
func (e *View) Seams(g *scene.Group) {
	for _, s := range e.F.Seams {
		if s.X < e.From || s.X > e.To || e.F.Run.Up {
			continue
		}
		width := e.Look.Seam
		title := fmt.Sprintf("seam %s, %s from its left end", e.Plan.SeamName(e.F.Run, s), e.Style.Format(s.X))
		if s.Closing {
			width = e.Look.Wide
			title = "closing " + title
		}
		in := g.Part(scene.Tag{Class: "seam", Title: title, Data: []scene.Datum{folio.Datum("at", folio.Mm(s.At)), folio.Datum("x", folio.Mm(s.X)), folio.Datum("number", fmt.Sprint(s.Number))}})
		for _, h := range e.F.Shown(s.X) {
			a, b := e.V.Pt(s.X, h[1]), e.V.Pt(s.X, h[0])
			in.Line(a, b, scene.Pen(scene.Seams, width))
			e.Space.Stroke(a, b)
		}
	}
}

// Slivers draws the seams that cross a leaning joint onto the wall.
func (e *View) Slivers(g *scene.Group) {
	for i := range e.F.Slivers {
		s := &e.F.Slivers[i]
		if !e.sliverHere(s) || s.Seam == nil {
			continue
		}
		in := g.Part(scene.Tag{Class: "seam", Title: fmt.Sprintf("seam %s past the joint, %s from the left end of this wall", e.Plan.SeamName(e.F.Run, s.Seam), e.Style.Format(s.X)),
			Data: []scene.Datum{folio.Datum("at", folio.Mm(s.Seam.At)), folio.Datum("x", folio.Mm(s.X)), folio.Datum("number", fmt.Sprint(s.Seam.Number))}})
		for _, h := range e.F.Heights(s) {
			a, b := e.V.Pt(s.X, h[1]), e.V.Pt(s.X, h[0])
			in.Line(a, b, scene.Pen(scene.Seams, e.Look.Seam))
			e.Space.Stroke(a, b)
		}
	}
}

// sliverHere reports whether a sliver is on this view: past the end of the wall that it shows.
func (e *View) sliverHere(s *face.Sliver) bool {
	if s.Right {
		return e.To == e.F.Right
	}
	return e.From == e.F.Left
}

// sliverNotes say which sheets come onto the wall only past a joint that leans.
func (e *View) sliverNotes() []string {
	var list []string
	for i := range e.F.Slivers {
		if s := &e.F.Slivers[i]; e.sliverHere(s) {
			list = append(list, fmt.Sprintf("Sheet %s comes onto %s past its leaning joint, up to %s wide; its seam stands at %s.", NumberOf(s.Sheets[0]), e.F.W.Name,
				e.Style.Words((s.Far-s.X).Abs()), e.Style.Format(s.X)))
		}
	}
	return list
}

// Joints draws where courses meet, and the seams of horizontal grain.
func (e *View) Joints(g *scene.Group) {
	pen := scene.Pen(scene.Seams, e.Look.Seam)
	type edge struct{ a, b scene.Point }
	seen := map[edge]bool{}
	for _, p := range e.F.Parts {
		if len(p.Sheets) < 2 && !e.F.Run.Up {
			continue
		}
		for _, s := range p.Sheets {
			for _, q := range s.Pieces {
				if q.Wall != e.F.Wall {
					continue
				}
				for i, a := range q.Outline {
					b := q.Outline[(i+1)%len(q.Outline)]
					inner := a.Z == b.Z && e.inside(min(a.X, b.X), max(a.X, b.X), a.Z)
					if e.F.Run.Up && a.X == b.X {
						inner = a.X > e.F.Left && a.X < e.F.Right && !e.edge(a.X)
					}
					if !inner {
						continue
					}
					pa, pb := e.V.Pt(min(max(a.X, e.From), e.To), a.Z), e.V.Pt(min(max(b.X, e.From), e.To), b.Z)
					if seen[edge{pa, pb}] || seen[edge{pb, pa}] || pa == pb {
						continue
					}
					seen[edge{pa, pb}] = true
					g.Part(scene.Tag{Class: "seam", Title: "joint"}).Line(pa, pb, pen)
					e.Space.Stroke(pa, pb)
				}
			}
		}
	}
}

// edge reports whether an opening or a bare strip has its edge at x.
func (e *View) edge(x L) bool {
	for i := range e.F.W.Openings {
		if o := &e.F.W.Openings[i]; x == o.FromLeft || x == o.Right() {
			return true
		}
	}
	for _, b := range e.F.W.Bare {
		if x == b.From || x == b.To {
			return true
		}
	}
	return false
}

// inside reports whether a level edge lies inside the covering: neither its upper or lower edge nor that of an opening.
func (e *View) inside(x0, x1, z L) bool {
	m := (x0 + x1) / 2
	bottom, top := e.F.Cover(m)
	if z <= bottom || z >= top {
		return false
	}
	for i := range e.F.W.Openings {
		a, z0, b, z1 := e.F.Hole(&e.F.W.Openings[i])
		if a < m && m < b && (z == z0 || z == z1) {
			return false
		}
	}
	return true
}

// RawEnds draws the raw ends of the covering that stand in the field of the wall, and the mark of their detail.
func (e *View) RawEnds(g *scene.Group) {
	for _, r := range e.F.RawEnds() {
		if r.X <= e.From || r.X >= e.To {
			continue
		}
		for _, h := range e.F.Shown(r.X) {
			a, b := e.V.Pt(r.X, h[1]), e.V.Pt(r.X, h[0])
			g.Line(a, b, scene.Pen(scene.Covering, e.Look.Outline))
			e.Space.Stroke(a, b)
		}
	}
}

// sequence is the count of this page among those of its kind.
func sequence(b *folio.Board) int {
	n := 0
	for _, l := range b.List {
		if l.Kind == b.Leaf.Kind {
			n++
		}
		if l == b.Leaf {
			break
		}
	}
	return n
}

package aims

import (
	"fmt"
	"math"

	"flitchlay/internal/draft"
	"flitchlay/internal/elevation"
	"flitchlay/internal/face"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/scene"
	"flitchlay/internal/shape"
)

// aimElevation is a wall, or a piece of it, as one aim lays it out: outline, openings, sheets with their numbers, and a
// mark at each seam where the grain breaks.
type aimElevation struct {
	*folio.Board
	set *folio.Set // of the aim's plan
	f   *face.Face
	aimView
	aim   string
	v     draft.View
	group *scene.Group
}

// shaded is the ground of a narrow sheet: light enough to letter on, dark enough for a poor printer.
var shaded = scene.Grey(0.84)

func (e *aimElevation) draw() {
	k, f := e.Look, e.f
	box := e.v.Box(e.From, f.Low, e.To, f.High)
	name := e.Room.Walls[e.wall].Name
	mark := e.Marks[e.wall]
	text := mark + "  " + name
	if !e.whole {
		mark += fmt.Sprint(e.piece)
		text = mark + "  " + name
	}
	if scene.Width(text, k.Small, false) > box.W()+k.Of(wallGap-2) {
		text = mark // the key shows which wall that is
	}
	e.Page.Text(scene.Text{At: scene.Pt(box.X0, box.Y0-k.Of(1.8)), String: text, Height: k.Small, Layer: scene.Notes})
	e.group = e.Page.Viewed(scene.View{Box: box.Inset(-k.Of(0.5)), Scale: float64(e.Scale), Metric: e.Metric(), Name: e.aim + ": " + name, Ratio: draft.Ratio(e.Scale, e.Metric())},
		folio.Datum("scale", fmt.Sprint(e.Scale)), folio.Datum("wall", name), folio.Datum("aim", e.aim))
	e.sheets()
	e.openings()
	e.outline()
	e.breaks()
	e.numbers()
}

// sheets draws every piece of every sheet with its edges, narrow ones shaded, those that only come past a leaning joint among them.
func (e *aimElevation) sheets() {
	for _, p := range e.f.Parts {
		for _, s := range p.Sheets {
			e.sheet(s)
		}
	}
	for i := range e.f.Slivers {
		for _, s := range e.f.Slivers[i].Sheets {
			e.sheet(s)
		}
	}
}

func (e *aimElevation) sheet(s *layout.Sheet) {
	for _, q := range s.Pieces {
		if q.Wall != e.wall {
			continue
		}
		points, ok := e.points(q.Outline)
		if !ok {
			continue
		}
		tag := scene.Tag{Class: "sheet", Title: elevation.SheetWords(e.set, s), Data: []scene.Datum{folio.Datum("place", fmt.Sprint(s.Place)), folio.Datum("number", elevation.NumberOf(s))}}
		style := scene.Pen(scene.Seams, e.Look.Thin)
		if s.Narrow {
			style = style.Filled(shaded)
		}
		e.group.Part(tag).Polygon(style, points...)
		for i := range points {
			e.line(points[i], points[(i+1)%len(points)], e.Look.Thin)
		}
	}
}

// points are an outline on the page, cut to the piece of the wall where the wall goes on; false where nothing of it is on the piece.
func (e *aimElevation) points(o shape.Outline) ([]scene.Point, bool) {
	from, to := e.From, e.To
	if e.piece == 1 {
		from = math.MinInt64 // a leaning end stands past the foot of the wall
	}
	if e.last {
		to = math.MaxInt64
	}
	a, b := o[0].X, o[0].X
	var points []scene.Point
	for _, p := range o {
		a, b = min(a, p.X), max(b, p.X)
		points = append(points, e.v.Pt(min(max(p.X, from), to), p.Z))
	}
	return points, b > from && a < to
}

func (e *aimElevation) openings() {
	w := &e.Room.Walls[e.wall]
	for i := range w.Openings {
		o := &w.Openings[i]
		x0, z0, x1, z1 := e.f.Hole(o)
		if x1 <= e.From || x0 >= e.To {
			continue
		}
		box := e.v.Box(max(x0, e.From), z0, min(x1, e.To), z1)
		e.group.Part(scene.Tag{Class: "opening", Title: o.Kind.Named(o.Name), Data: []scene.Datum{folio.Datum("name", o.Name)}}).
			Rect(box, scene.Pen(scene.Openings, e.Look.Seam).Filled(scene.White))
		e.Space.Take(box.Inset(-e.Look.Seam))
	}
	for _, b := range w.Bare {
		if b.To <= e.From || b.From >= e.To {
			continue
		}
		box := e.v.Box(max(b.From, e.From), e.f.Low, min(b.To, e.To), e.f.High)
		draft.Hatch(e.group, scene.Pen(scene.Hatch, e.Look.Dimension), box, e.Look.Of(2), true)
		e.Space.Take(box)
	}
}

// outline draws the wall; where a long one goes on, its end stays open.
func (e *aimElevation) outline() {
	k := e.Look
	var points []scene.Point
	for _, p := range e.f.Outline(e.f.W.Floor, e.f.W.Ceiling, e.From, e.To) {
		points = append(points, e.v.Pt(p.X, p.Z))
	}
	pen := scene.Pen(scene.Walls, k.Outline)
	for i := range points {
		a, b := points[i], points[(i+1)%len(points)]
		left, right := e.v.X(e.From), e.v.X(e.To)
		open := a.X == b.X && (a.X == left && e.piece > 1 || a.X == right && !e.last)
		if open {
			up, down := a, b
			if up.Y > down.Y {
				up, down = down, up
			}
			draft.Break(e.group, k, scene.Walls, up, down)
			e.Space.Take(scene.Box{X0: up.X - k.Of(2.2), Y0: up.Y, X1: up.X + k.Of(2.2), Y1: down.Y})
		} else {
			e.group.Line(a, b, pen)
		}
		e.line(a, b, k.Outline)
	}
}

// line notes a line that no number may touch, by its edges.
func (e *aimElevation) line(a, b scene.Point, width float64) {
	l := math.Hypot(b.X-a.X, b.Y-a.Y)
	if l == 0 {
		return
	}
	dx, dy := (b.Y-a.Y)/l*width/2, (a.X-b.X)/l*width/2
	e.Space.Stroke(a.Add(dx, dy), b.Add(dx, dy))
	e.Space.Stroke(a.Add(-dx, -dy), b.Add(-dx, -dy))
}

// breaks marks the seams at which the grain breaks, under the floor; with level grain at the left of the wall.
func (e *aimElevation) breaks() {
	k := e.Look
	if e.f.Run.Up {
		for _, p := range e.f.Parts {
			if s := p.Sheet(); s.Narrow && e.piece == 1 {
				at := scene.Pt(e.v.X(e.From)-k.Of(2.4), e.v.Y(s.Right))
				jumpMark(e.seam(s.Right, "jump"), k, at)
			}
		}
		return
	}
	floor := e.v.Y(e.f.Low)
	for _, s := range e.f.Seams {
		if s.X < e.From || s.X > e.To || s.X == e.To && !e.last {
			continue
		}
		left := e.sheetOf(s.LeftSheet)
		jump := left != nil && left.Narrow && !s.Closing
		if !jump && !s.Closing && !s.FlitchChange {
			continue
		}
		kind := "flitch-change"
		switch {
		case s.Closing:
			kind = "closing"
		case jump:
			kind = "jump"
		}
		in := e.seam(s.At, kind)
		for _, h := range e.f.Shown(s.X) {
			a, b := e.v.Pt(s.X, h[1]), e.v.Pt(s.X, h[0])
			in.Line(a, b, scene.Pen(scene.Seams, k.Wide))
			e.line(a, b, k.Wide)
		}
		y := floor + k.Of(2.6)
		put := func(mark func(*scene.Group, draft.Look, scene.Point)) {
			at := scene.Pt(e.v.X(s.X), y)
			mark(in, k, at)
			r := k.Of(1.8)
			e.Space.Take(scene.BoxRound(at, 2*r, 2*r))
			y += k.Of(3.9)
		}
		if jump {
			put(jumpMark)
		}
		if s.Closing {
			put(closingMark)
		}
		if s.FlitchChange {
			put(changeMark)
		}
	}
}

func (e *aimElevation) seam(at L, kind string) *scene.Group {
	return e.group.Part(scene.Tag{Class: "seam", Data: []scene.Datum{folio.Datum("at", folio.Mm(at)), folio.Datum("kind", kind)}})
}

// sheetOf is the sheet of a place in the aim's own plan.
func (e *aimElevation) sheetOf(place int) *layout.Sheet { return elevation.SheetAt(e.set, place) }

// numbers letters each sheet's number into it, as near to one height as what is open allows; upright where the sheet is
// too slim, under the floor where that is not enough either.
func (e *aimElevation) numbers() {
	k := e.Look
	for _, p := range e.f.Parts {
		from, to := max(p.From, e.From), min(p.To, e.To)
		if from >= to {
			continue
		}
		for _, s := range p.Sheets {
			_, low, _, high, ok := e.f.Extent(s)
			if !ok {
				continue
			}
			if e.f.Run.Up {
				low, high = s.Left, s.Right
			}
			e.number(elevation.NumberOf(s), (e.v.X(from)+e.v.X(to))/2, e.v.Y(high), e.v.Y(low), k)
		}
	}
}

// Places for the number of a sheet, as shares of what is seen of the sheet from its top.
const (
	numberTries = 12
	numberStep  = 0.04 // from the middle by turns up and down
)

// numberDowns are the rows under the wall, in mm on the office page from its foot.
var numberDowns = []float64{2.6, 6.3}

// number letters the number of a sheet in the first place that is free:
//
//  1. level in the sheet, near its middle or at an even step from its top, by turns;
//  2. upright at the same places, for a slim sheet;
//  3. under the wall, in the second row where sheets are slim: but for bands, which do not stand on the floor.
func (e *aimElevation) number(text string, x, top, foot float64, k draft.Look) {
	t := scene.Text{String: text, Height: k.Small, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Numbers}
	for _, angle := range []float64{0, 90} {
		t.Angle = angle
		for i := range numberTries {
			share := 0.5 + numberStep*float64((i+1)/2)*float64(1-2*(i%2))
			for _, y := range []float64{top + (foot-top)*share, top + (foot-top)*float64(i+1)/(numberTries+1)} {
				t.At = scene.Pt(x, y)
				if e.letter(t) {
					return
				}
			}
		}
	}
	if t.Angle = 0; e.f.Run.Up {
		return
	}
	for _, down := range numberDowns {
		t.At = scene.Pt(x, e.v.Y(e.f.Low)+k.Of(down))
		if e.letter(t) {
			return
		}
	}
}

// letter puts a number where it is free.
func (e *aimElevation) letter(t scene.Text) bool {
	if !e.Space.Free(t.Bounds(), 0.55) {
		return false
	}
	e.group.Part(scene.Tag{Class: "sheet-number"}).Text(t)
	e.Space.Take(t.Bounds())
	return true
}

// jumpMark is where the grain jumps: a solid triangle that points up.
func jumpMark(g *scene.Group, k draft.Look, at scene.Point) {
	draft.Triangle(g, scene.Marks, at.Add(0, -k.Of(1.4)), 90, k.Of(2.8), k.Of(2.8), 0, false)
}

// closingMark is where the last sheet meets the first.
func closingMark(g *scene.Group, k draft.Look, at scene.Point) {
	draft.Diamond(g, k, scene.Marks, at, k.Of(3.2), k.Thin, scene.White)
}

// changeMark is where the flitch changes.
func changeMark(g *scene.Group, k draft.Look, at scene.Point) {
	draft.Hexagon(g, k, scene.Marks, at, k.Of(3.2), k.Thin)
}

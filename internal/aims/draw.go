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

// AimElevation is a wall, or a piece of it, as one aim lays it out: outline, openings, sheets with their numbers, and a
// mark at each seam where the grain breaks.
type AimElevation struct {
	*folio.Board
	Set *folio.Set // of the aim's plan
	F   *face.Face
	AimView
	Aim   string
	V     draft.View
	Group *scene.Group
}

// Shaded is the ground of a narrow sheet: light enough to letter on, dark enough for a poor printer.
var Shaded = scene.Grey(0.84)

func (e *AimElevation) Draw() {
	k, f := e.Look, e.F
	box := e.V.Box(e.From, f.Low, e.To, f.High)
	name := e.Room.Walls[e.Wall].Name
	mark := e.Marks[e.Wall]
	text := mark + "  " + name
	if !e.Whole {
		mark += fmt.Sprint(e.Piece)
		text = mark + "  " + name
	}
	if scene.Width(text, k.Small, false) > box.W()+k.Of(WallGap-2) {
		text = mark // the key shows which wall that is
	}
	e.Page.Text(scene.Text{At: scene.Pt(box.X0, box.Y0-k.Of(1.8)), String: text, Height: k.Small, Layer: scene.Notes})
	e.Group = e.Page.Viewed(scene.View{Box: box.Inset(-k.Of(0.5)), Scale: float64(e.Scale), Metric: e.Metric(), Name: e.Aim + ": " + name, Ratio: draft.Ratio(e.Scale, e.Metric())},
		folio.Datum("scale", fmt.Sprint(e.Scale)), folio.Datum("wall", name), folio.Datum("aim", e.Aim))
	e.Sheets()
	e.Openings()
	e.Outline()
	e.Breaks()
	e.Numbers()
}

// Sheets draws every piece of every sheet with its edges, narrow ones shaded.
func (e *AimElevation) Sheets() {
	for _, p := range e.F.Parts {
		for _, s := range p.Sheets {
			for _, q := range s.Pieces {
				if q.Wall != e.Wall {
					continue
				}
				points, ok := e.Points(q.Outline)
				if !ok {
					continue
				}
				tag := scene.Tag{Class: "sheet", Title: elevation.SheetWords(e.Set, s), Data: []scene.Datum{folio.Datum("place", fmt.Sprint(s.Place)), folio.Datum("number", elevation.NumberOf(s))}}
				style := scene.Pen(scene.Seams, e.Look.Thin)
				if s.Narrow {
					style = style.Filled(Shaded)
				}
				e.Group.Part(tag).Polygon(style, points...)
				for i := range points {
					e.Line(points[i], points[(i+1)%len(points)], e.Look.Thin)
				}
			}
		}
	}
}

// Points are an outline on the page, cut to the piece of the wall; false where nothing of it is on the piece.
func (e *AimElevation) Points(o shape.Outline) ([]scene.Point, bool) {
	a, b := o[0].X, o[0].X
	var points []scene.Point
	for _, p := range o {
		a, b = min(a, p.X), max(b, p.X)
		x := p.X
		if !e.Whole { // a leaning end may stand past the wall
			x = min(max(x, e.From), e.To)
		}
		points = append(points, e.V.Pt(x, p.Z))
	}
	return points, b > e.From && a < e.To
}

func (e *AimElevation) Openings() {
	w := &e.Room.Walls[e.Wall]
	for i := range w.Openings {
		o := &w.Openings[i]
		x0, z0, x1, z1 := e.F.Hole(o)
		if x1 <= e.From || x0 >= e.To {
			continue
		}
		box := e.V.Box(max(x0, e.From), z0, min(x1, e.To), z1)
		e.Group.Part(scene.Tag{Class: "opening", Title: o.Kind + " " + o.Name, Data: []scene.Datum{folio.Datum("name", o.Name)}}).
			Rect(box, scene.Pen(scene.Openings, e.Look.Seam).Filled(scene.White))
		e.Space.Take(box.Inset(-e.Look.Seam))
	}
	for _, b := range w.Bare {
		if b.To <= e.From || b.From >= e.To {
			continue
		}
		box := e.V.Box(max(b.From, e.From), e.F.Low, min(b.To, e.To), e.F.High)
		draft.Hatch(e.Group, scene.Pen(scene.Hatch, e.Look.Dimension), box, e.Look.Of(2), true)
		e.Space.Take(box)
	}
}

// Outline draws the wall; where a long one goes on, its end stays open.
func (e *AimElevation) Outline() {
	k := e.Look
	var points []scene.Point
	for _, p := range e.F.Outline(e.F.W.Floor, e.F.W.Ceiling, e.From, e.To) {
		points = append(points, e.V.Pt(p.X, p.Z))
	}
	pen := scene.Pen(scene.Walls, k.Outline)
	for i := range points {
		a, b := points[i], points[(i+1)%len(points)]
		left, right := e.V.X(e.From), e.V.X(e.To)
		open := a.X == b.X && (a.X == left && e.Piece > 1 || a.X == right && !e.Last)
		if open {
			up, down := a, b
			if up.Y > down.Y {
				up, down = down, up
			}
			draft.Break(e.Group, k, scene.Walls, up, down)
			e.Space.Take(scene.Box{X0: up.X - k.Of(2.2), Y0: up.Y, X1: up.X + k.Of(2.2), Y1: down.Y})
		} else {
			e.Group.Line(a, b, pen)
		}
		e.Line(a, b, k.Outline)
	}
}

// Line notes a line that no number may touch, by its edges.
func (e *AimElevation) Line(a, b scene.Point, width float64) {
	l := math.Hypot(b.X-a.X, b.Y-a.Y)
	if l == 0 {
		return
	}
	dx, dy := (b.Y-a.Y)/l*width/2, (a.X-b.X)/l*width/2
	e.Space.Stroke(a.Add(dx, dy), b.Add(dx, dy))
	e.Space.Stroke(a.Add(-dx, -dy), b.Add(-dx, -dy))
}

// Breaks marks the seams at which the grain breaks, under the floor; with level grain at the left of the wall.
func (e *AimElevation) Breaks() {
	k := e.Look
	if e.F.Run.Up {
		for _, p := range e.F.Parts {
			if s := p.Sheet(); s.Narrow && e.Piece == 1 {
				at := scene.Pt(e.V.X(e.From)-k.Of(2.4), e.V.Y(s.Right))
				JumpMark(e.Seam(s.Right, "jump"), k, at)
			}
		}
		return
	}
	floor := e.V.Y(e.F.Low)
	for _, s := range e.F.Seams {
		if s.X < e.From || s.X > e.To || s.X == e.To && !e.Last {
			continue
		}
		left := e.SheetOf(s.LeftSheet)
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
		in := e.Seam(s.At, kind)
		for _, h := range e.F.Shown(s.X) {
			a, b := e.V.Pt(s.X, h[1]), e.V.Pt(s.X, h[0])
			in.Line(a, b, scene.Pen(scene.Seams, k.Wide))
			e.Line(a, b, k.Wide)
		}
		y := floor + k.Of(2.6)
		put := func(mark func(*scene.Group, draft.Look, scene.Point)) {
			at := scene.Pt(e.V.X(s.X), y)
			mark(in, k, at)
			r := k.Of(1.8)
			e.Space.Take(scene.Box{X0: at.X - r, Y0: at.Y - r, X1: at.X + r, Y1: at.Y + r})
			y += k.Of(3.9)
		}
		if jump {
			put(JumpMark)
		}
		if s.Closing {
			put(ClosingMark)
		}
		if s.FlitchChange {
			put(ChangeMark)
		}
	}
}

func (e *AimElevation) Seam(at L, kind string) *scene.Group {
	return e.Group.Part(scene.Tag{Class: "seam", Data: []scene.Datum{folio.Datum("at", folio.Mm(at)), folio.Datum("kind", kind)}})
}

// SheetOf is the sheet of a place in the aim's own plan.
func (e *AimElevation) SheetOf(place int) *layout.Sheet { return elevation.SheetAt(e.Set, place) }

// Numbers letters each sheet's number into it, as near to one height as what is open allows; upright where the sheet is
// too slim, under the floor where that is not enough either.
func (e *AimElevation) Numbers() {
	k := e.Look
	for _, p := range e.F.Parts {
		from, to := max(p.From, e.From), min(p.To, e.To)
		if from >= to {
			continue
		}
		for _, s := range p.Sheets {
			low, high, ok := e.Reach(s)
			if !ok {
				continue
			}
			if e.F.Run.Up {
				low, high = s.Left, s.Right
			}
			e.Number(elevation.NumberOf(s), (e.V.X(from)+e.V.X(to))/2, e.V.Y(high), e.V.Y(low), k)
		}
	}
}

// Reach are the lowest and highest of a sheet on the wall.
func (e *AimElevation) Reach(s *layout.Sheet) (low, high L, ok bool) {
	for _, q := range s.Pieces {
		if q.Wall != e.Wall {
			continue
		}
		for _, p := range q.Outline {
			if !ok {
				low, high, ok = p.Z, p.Z, true
			}
			low, high = min(low, p.Z), max(high, p.Z)
		}
	}
	return low, high, ok
}

func (e *AimElevation) Number(text string, x, top, foot float64, k draft.Look) {
	t := scene.Text{String: text, Height: k.Small, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Numbers}
	const tries = 12
	for _, angle := range []float64{0, 90} {
		t.Angle = angle
		for i := range tries {
			share := 0.5 + 0.04*float64((i+1)/2)*float64(1-2*(i%2))
			for _, y := range []float64{top + (foot-top)*share, top + (foot-top)*float64(i+1)/(tries+1)} {
				t.At = scene.Pt(x, y)
				if e.Letter(t) {
					return
				}
			}
		}
	}
	if t.Angle = 0; e.F.Run.Up {
		return
	}
	for _, down := range []float64{2.6, 6.3} {
		t.At = scene.Pt(x, e.V.Y(e.F.Low)+k.Of(down))
		if e.Letter(t) {
			return
		}
	}
}

// Letter puts a number where it is free.
func (e *AimElevation) Letter(t scene.Text) bool {
	if !e.Space.Free(t.Bounds(), 0.55) {
		return false
	}
	e.Group.Part(scene.Tag{Class: "sheet-number"}).Text(t)
	e.Space.Take(t.Bounds())
	return true
}

// JumpMark is where the grain jumps: a solid triangle that points up.
func JumpMark(g *scene.Group, k draft.Look, at scene.Point) {
	draft.Triangle(g, scene.Marks, at.Add(0, -k.Of(1.4)), 90, k.Of(2.8), k.Of(2.8), 0, false)
}

// ClosingMark is where the last sheet meets the first.
func ClosingMark(g *scene.Group, k draft.Look, at scene.Point) {
	draft.Diamond(g, k, scene.Marks, at, k.Of(3.2), k.Thin, scene.White)
}

// ChangeMark is where the flitch changes.
func ChangeMark(g *scene.Group, k draft.Look, at scene.Point) {
	draft.Hexagon(g, k, scene.Marks, at, k.Of(3.2), k.Thin)
}

package detail

import (
	"math"
	"slices"

	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
)

// planUnder is how far a plan of an end reaches under the face of its wall: the wall of a corner, with the break at its end.
const planUnder = 17.5

// beyond says what is past an end at which nothing stands, for its drawing is the same whatever that is.
var beyond = map[string]string{"bare": "bare strip", "free": "bare wall", "side": "side of the wall"}

// endPlan draws a termination seen from above: board and veneer from the left, what it meets at the right.
func endPlan(b *folio.Board, g *scene.Group, c scene.Point, kind string) {
	k := b.Look
	reach, bt := k.Of(30), k.Of(7)
	end := c.X + k.Of(4)
	y := c.Y
	right := c.X + reach
	hatch := scene.Pen(scene.Hatch, k.Dimension)
	outline := scene.Pen(scene.Walls, k.Outline)
	thin := scene.Pen(scene.Walls, k.Thin)
	veneer := scene.Pen(scene.Covering, k.Of(1))
	off := k.Of(1.4)
	wood := func(box scene.Box) {
		g.Rect(box, outline.Filled(scene.White))
		draft.Hatch(g, scene.Pen(scene.Hatch, k.Extension), box, k.Of(2.4), false)
	}
	boardTo := right
	switch kind {
	case "inside corner":
		boardTo = end + bt
	case "outside edge":
		boardTo = end
	}
	body := scene.Box{X0: c.X - reach, Y0: y - bt, X1: boardTo, Y1: y}
	draft.Hatch(g, hatch, body, k.Of(1.8), true)
	g.HLine(body.X0, end, y, outline)
	g.HLine(body.X0, boardTo, y-bt, thin)
	switch kind {
	case "inside corner":
		wall := scene.Box{X0: end, Y0: y, X1: end + bt, Y1: y + k.Of(16)}
		draft.Hatch(g, hatch, wall, k.Of(1.8), true)
		g.VLine(end, y, wall.Y1, outline)
		g.VLine(end+bt, y-bt, wall.Y1, thin)
		draft.Break(g, k, scene.Walls, scene.Pt(end-k.Of(1), wall.Y1), scene.Pt(end+bt+k.Of(1), wall.Y1))
		end -= k.Of(0.4)
	case "outside edge":
		g.VLine(end, y-bt, y, outline)
	case "jamb":
		wood(scene.Box{X0: end, Y0: y, X1: end + k.Of(11), Y1: y + k.Of(5)})
		g.HLine(end, boardTo, y, outline)
	case "frame":
		wood(scene.Box{X0: end, Y0: y - bt, X1: end + k.Of(9), Y1: y + k.Of(3)})
		g.HLine(end+k.Of(9), boardTo, y, outline)
	case "trim":
		g.HLine(end, boardTo, y, outline)
		wood(scene.Box{X0: end - k.Of(4), Y0: y + k.Of(2.2), X1: end + k.Of(7), Y1: y + k.Of(5)})
	default:
		g.HLine(end, boardTo, y, outline)
		t := scene.Text{At: scene.Pt((end+boardTo)/2, y+k.Of(5.2)), String: beyond[kind], Height: k.Small, Anchor: scene.Middle, Layer: scene.Notes}
		g.Text(t)
		b.Space.Take(t.Bounds())
	}
	g.HLine(body.X0, end-k.Of(0.3), y+off, veneer)
	draft.Break(g, k, scene.Walls, scene.Pt(body.X0, y+k.Of(3.4)), scene.Pt(body.X0, y-bt-k.Of(1.6)))
	if boardTo == right {
		draft.Break(g, k, scene.Walls, scene.Pt(right, y+k.Of(3.4)), scene.Pt(right, y-bt-k.Of(1.6)))
	}
	b.Space.Take(scene.Box{X0: body.X0, Y0: y - bt - k.Of(2), X1: right, Y1: y + k.Of(6)})
}

// jambPlan draws a wrapped jamb seen from above: the covering goes round the edge of the board into the reveal, as deep as it is
// at the scale, and ends at the frame.
func jambPlan(b *folio.Board, g *scene.Group, c scene.Point, deep float64) {
	k := b.Look
	bt, off := k.Of(3.6), k.Of(1.4)
	x, y := c.X+k.Of(4), c.Y+deep/2 // the edge round which it goes
	left := c.X - k.Of(30)
	hatch, outline, thin := scene.Pen(scene.Hatch, k.Dimension), scene.Pen(scene.Walls, k.Outline), scene.Pen(scene.Walls, k.Thin)
	draft.Hatch(g, hatch, scene.Box{X0: left, Y0: y - bt, X1: x, Y1: y}, k.Of(1.8), true)
	if deep > bt {
		draft.Hatch(g, hatch, scene.Box{X0: x - bt, Y0: y - deep, X1: x, Y1: y - bt}, k.Of(1.8), true)
		g.Polyline(thin, scene.Pt(left, y-bt), scene.Pt(x-bt, y-bt), scene.Pt(x-bt, y-deep))
	}
	g.HLine(left, x, y, outline)
	g.Part(scene.Tag{Class: "given", Title: b.Style.Format(slices.Max(depths(b.Set)))}).VLine(x, y-deep, y, outline)
	frame := scene.Box{X0: x - bt, Y0: y - deep - k.Of(5), X1: x + k.Of(7), Y1: y - deep}
	g.Rect(frame, outline.Filled(scene.White))
	draft.Hatch(g, scene.Pen(scene.Hatch, k.Extension), frame, k.Of(2.4), false)
	g.Polyline(scene.Pen(scene.Covering, k.Of(1)), scene.Pt(left, y+off), scene.Pt(x+off, y+off), scene.Pt(x+off, y-deep+k.Of(0.7)))
	draft.Break(g, k, scene.Walls, scene.Pt(left, y+k.Of(3.4)), scene.Pt(left, y-bt-k.Of(1.6)))
	b.Space.Take(scene.Box{X0: left, Y0: frame.Y0, X1: frame.X1, Y1: y + k.Of(3.4)})
	list := depths(b.Set)[1:]
	figure := b.Style.Format(slices.Max(list))
	if least := slices.Min(list); least < slices.Max(list) {
		figure = b.Style.Format(least) + " to " + figure
	}
	st := draft.Stack{Upright: true, Edge: x + k.Of(7), Out: 1, First: k.Of(6), Tiers: []draft.Tier{{Marks: []float64{y - deep, y}, Figures: []string{figure}}}}
	st.Draw(g, k, b.Space)
}

// endSection draws base or head in section: the wall upright, the trim before it as long as it is at the scale.
func endSection(b *folio.Board, g *scene.Group, c scene.Point, reach, long float64, kind string) {
	k := b.Look
	bt := k.Of(7)
	reach = math.Min(reach, k.Of(22))
	hatch, outline, thin := scene.Pen(scene.Hatch, k.Dimension), scene.Pen(scene.Walls, k.Outline), scene.Pen(scene.Walls, k.Thin)
	x := c.X
	body := scene.Box{X0: x - bt, Y0: c.Y - reach, X1: x, Y1: c.Y + reach}
	draft.Hatch(g, hatch, body, k.Of(1.8), true)
	g.VLine(x, body.Y0, body.Y1, outline)
	g.VLine(x-bt, body.Y0, body.Y1, thin)
	sign, open := 1.0, body.Y0 // the trim stands at the foot
	if kind == "head" {
		sign, open = -1, body.Y1
	}
	edge := c.Y + sign*reach // floor or ceiling
	g.HLine(x-bt-k.Of(4), x+k.Of(22), edge, scene.Pen(scene.Walls, k.Wide))
	size := b.Room.Space.Base
	behind := b.Room.Space.Behind.Base
	if kind == "head" {
		size, behind = b.Room.Space.Crown, b.Room.Space.Behind.Crown
	}
	end := edge
	if size > 0 {
		h := long
		trim := scene.Box{X0: x, Y0: math.Min(edge, edge-sign*h), X1: x + k.Of(4.4), Y1: math.Max(edge, edge-sign*h)}
		if behind {
			trim.X0, trim.X1 = trim.X0+k.Of(2.2), trim.X1+k.Of(2.2)
			end = edge - sign*k.Of(1)
		} else {
			end = edge - sign*h
		}
		g.Part(scene.Tag{Class: "given", Title: b.Style.Format(size)}).Rect(trim, outline.Filled(scene.White))
		draft.Hatch(g, scene.Pen(scene.Hatch, k.Extension), trim, k.Of(2.4), false)
		t := scene.Text{At: scene.Pt(trim.X1+k.Of(3), trim.Centre().Y), String: b.Style.Format(size), Height: k.Small, Seat: scene.Centred, Layer: scene.Notes}
		g.Text(t)
		b.Space.Take(t.Bounds())
	}
	g.VLine(x+k.Of(1.4), open, end-sign*k.Of(0.4), scene.Pen(scene.Covering, k.Of(1)))
	draft.Break(g, k, scene.Walls, scene.Pt(x-bt-k.Of(1.6), open), scene.Pt(x+k.Of(4), open))
}

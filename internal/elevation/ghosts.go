package elevation

import (
	"fmt"
	"math"

	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/length"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// ghostOf draws the wall next door as far as the sheet that comes round the corner covers it: dashed, up to its seam;
// broken where there is no room for all of it.
func (e *View) ghostOf(g *scene.Group, h ghost, right bool) {
	if !h.shown() {
		return
	}
	k := e.Look
	pen := scene.Pen(scene.Walls, k.Thin).As(scene.Dashed(k.Thin))
	n := &e.Room.Walls[h.wall]
	// heights of the wall next door at the corner and at the seam
	at := func(share float64) (floor, top float64) {
		x := L(0)
		if right {
			x = L(share * float64(h.width))
		} else {
			x = n.Length - L(share*float64(h.width))
		}
		return e.V.Y(room.At(n.Floor, x)), e.V.Y(room.At(n.Ceiling, x))
	}
	sign, edge := -1.0, e.V.X(e.From)
	if right {
		sign, edge = 1, e.V.X(e.To)
	}
	w := e.wide(h)
	far := edge + sign*w
	_, top0 := at(0)
	floor1, top1 := at(1)
	if h.stub {
		floor1, top1 = e.V.Y(room.At(n.Floor, L(0))), top0
		if !right {
			floor1 = e.V.Y(room.At(n.Floor, n.Length))
		}
	}
	in := g.Part(scene.Tag{Class: "ghost", Title: fmt.Sprintf("goes on %s round %s", e.Style.Format(h.width), h.corner), Data: []scene.Datum{folio.Datum("corner", h.corner), folio.Datum("wall", n.Name)}})
	in.Line(scene.Pt(edge, top0), scene.Pt(far, top1), pen)
	e.Space.Stroke(scene.Pt(edge, top0), scene.Pt(far, top1))
	if h.stub {
		e.breakLine(in, scene.Pt(far, top1-k.Of(2)), scene.Pt(far, floor1+k.Of(2)))
	} else {
		in.Line(scene.Pt(far, top1), scene.Pt(far, floor1), pen)
		e.Space.Stroke(scene.Pt(far, top1), scene.Pt(far, floor1))
	}
	if w < k.Small+k.Of(2.9) {
		return // the chain gives the figure
	}
	short := "wraps " + e.Style.Format(h.width)
	list := []string{"wraps " + e.Style.Words(h.width), short}
	if sh := SheetAt(e.Board.Set, h.place); sh != nil && e.Style.Unit != length.Millimetres {
		list = []string{"sheet " + NumberOf(sh) + " " + list[0] + " onto " + n.Name, short}
	}
	height := floor1 - math.Max(top0, top1)
	for _, words := range list {
		if scene.Width(words, k.Small, false) > height-k.Of(8) && words != short {
			continue
		}
		for _, aside := range []float64{0, 0.5, 1, 1.5, -0.5} { // clear of a wall that leans, and of the zigzag
			for _, up := range []float64{0, -6, 6, -12, 12} {
				t := scene.Text{At: scene.Pt(edge+sign*(w/2+k.Of(aside)), floor1-height/2+k.Of(up)), String: words, Height: k.Small, Anchor: scene.Middle, Seat: scene.Centred, Angle: 90, Layer: scene.Notes}
				if h.stub {
					t.At.X -= sign * k.Of(1)
				}
				if e.Space.Free(t.Bounds(), k.Of(0.85)) {
					in.Text(t)
					e.Space.Take(t.Bounds())
					return
				}
			}
		}
	}
}

// breakLine draws an upright line that says something goes on, and keeps words off its zigzags.
func (e *View) breakLine(g *scene.Group, a, b scene.Point) {
	k := e.Look
	draft.Break(g, k, scene.Walls, a, b)
	out := k.Of(1.3) * 1.4
	for _, dx := range []float64{-out, 0, out} {
		e.Space.Stroke(a.Add(dx, 0), b.Add(dx, 0))
	}
}

// MatchLines draws the lines at which pieces of a long wall meet.
func (e *View) MatchLines(g *scene.Group) {
	k := e.Look
	if e.Detail {
		for _, end := range []struct {
			x    L
			open bool
		}{{e.From, !e.First()}, {e.To, !e.Last()}} {
			if end.open {
				a, b := e.V.Pt(end.x, room.At(e.F.W.Ceiling, end.x)).Add(0, -k.Of(2)), e.V.Pt(end.x, room.At(e.F.W.Floor, end.x)).Add(0, k.Of(2))
				e.breakLine(g, a, b)
			}
		}
		return
	}
	pen := scene.Pen(scene.Seams, k.Wide).As(scene.Phantom(k.Wide))
	draw := func(x L, other int, right bool) {
		top, bottom := e.V.Pt(x, room.At(e.F.W.Ceiling, x)), e.V.Pt(x, room.At(e.F.W.Floor, x))
		a, b := top.Add(0, -k.Of(3)), bottom.Add(0, k.Of(3))
		g.Part(scene.Tag{Class: "match-line"}).Line(a, b, pen)
		e.Space.Stroke(a, b)
		page := e.Paper.PageNumber(int(folio.Elevations), max(sequence(e.Board)+other-e.Piece, 0))
		words := "MATCH LINE, " + page
		for _, shorter := range []string{"MATCH " + page, page} {
			if scene.Width(words, k.Small, false) > b.Y-a.Y-k.Of(10) {
				words = shorter
			}
		}
		t := scene.Text{String: words, Height: k.Small, Anchor: scene.Middle, Angle: 90, Layer: scene.Notes}
		at := func(share, out float64) scene.Point {
			if right {
				return scene.Pt(a.X+k.Of(2+out)+k.Small, a.Y+(b.Y-a.Y)*share)
			}
			return scene.Pt(a.X-k.Of(2+out), a.Y+(b.Y-a.Y)*share)
		}
		t.At = at(0.5, 0)
	places:
		for _, out := range []float64{0, 1.5, 3, 4.5} {
			for _, share := range []float64{0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8} {
				o := t
				if o.At = at(share, out); e.Space.Free(o.Bounds(), k.Of(0.9)) {
					t = o
					break places
				}
			}
		}
		g.Text(t)
		e.Space.Take(t.Bounds())
	}
	if !e.First() {
		draw(e.From, e.Piece-1, false)
	}
	if !e.Last() {
		draw(e.To, e.Piece+1, true)
	}
}

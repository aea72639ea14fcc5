package elevation

import (
	"fmt"
	"math"
	"strings"

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
	from, to := e.ends()
	sign, edge := -1.0, e.V.X(from)
	corner, seam := n.Length, n.Length-h.width // on the wall next door
	if right {
		sign, edge = 1, e.V.X(to)
		corner, seam = 0, h.width
	}
	if h.stub { // as high as at the corner
		seam = corner
	}
	w := e.wide(h)
	far := edge + sign*w
	top0 := e.V.Y(room.At(n.Ceiling, corner))
	floor1, top1 := e.V.Y(room.At(n.Floor, seam)), e.V.Y(room.At(n.Ceiling, seam))
	in := g.Part(scene.Tag{Class: "ghost", Title: fmt.Sprintf("goes on %s round %s", e.Style.Format(h.width), h.corner), Data: []scene.Datum{folio.Datum("corner", h.corner), folio.Datum("wall", n.Name)}})
	in.Line(scene.Pt(edge, top0), scene.Pt(far, top1), pen)
	e.Space.Stroke(scene.Pt(edge, top0), scene.Pt(far, top1))
	if h.stub {
		e.breakLine(in, scene.Pt(far, top1-k.Of(2)), scene.Pt(far, floor1+k.Of(2)))
	} else {
		in.Line(scene.Pt(far, top1), scene.Pt(far, floor1), pen)
		e.Space.Stroke(scene.Pt(far, top1), scene.Pt(far, floor1))
	}
	if w >= k.Small+k.Of(2.9) { // else the chain gives the figure
		e.ghostWords(in, h, edge, sign, floor1, floor1-math.Max(top0, top1))
	}
}

// Places for the words in a ghost, in mm on the office page from its middle.
var (
	ghostAsides = []float64{0, 0.5, 1, 1.5, -0.5} // away from the corner: clear of a wall that leans, and of the zigzag
	ghostUps    = []float64{0, -6, 6, -12, 12}
)

// ghostWords letters upright in a ghost how far the sheet goes round the corner, in the first place that is free:
//
//  1. the long words, which name sheet and wall, if the ghost is high enough for them, else the short ones;
//  2. in the middle of the width before a little aside: so they are equally far from both its lines;
//  3. in the middle of the height before further up or down.
func (e *View) ghostWords(in *scene.Group, h ghost, edge, sign, floor, height float64) {
	k, w := e.Look, e.wide(h)
	short := "wraps " + e.Style.Format(h.width)
	list := []string{"wraps " + e.Style.Words(h.width), short}
	if sh := SheetAt(e.Board.Set, h.place); sh != nil && e.Style.Unit != length.Millimetres {
		list = []string{"sheet " + NumberOf(sh) + " wraps " + e.onto(h), short}
	}
	for _, words := range list {
		if scene.Width(words, k.Small, false) > height-k.Of(8) && words != short {
			continue
		}
		for _, aside := range ghostAsides {
			for _, up := range ghostUps {
				t := scene.Text{At: scene.Pt(edge+sign*(w/2+k.Of(aside)), floor-height/2+k.Of(up)), String: words, Height: k.Small, Anchor: scene.Middle, Seat: scene.Centred, Angle: 90, Layer: scene.Notes}
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

// onto says how far a sheet goes on round a corner and onto which wall; where that is narrower than it goes, over which and onto which
// next, as round a pilaster.
func (e *View) onto(h ghost) string {
	width, wall := h.width, h.wall
	step := 1
	if h.wall < e.F.Wall && !(h.wall == 0 && e.F.Wall == len(e.Room.Walls)-1) || h.wall == len(e.Room.Walls)-1 && e.F.Wall == 0 {
		step = -1
	}
	var list []string
	for n := len(e.Room.Walls); width > e.Room.Walls[wall].Length && len(list) < n-1 && e.Room.Walls[(wall+step+n)%n].Cover; wall = (wall + step + n) % n {
		w := &e.Room.Walls[wall]
		list = append(list, e.Style.Words(w.Length)+" over "+w.Name)
		width -= w.Length
	}
	return strings.Join(append(list, e.Style.Words(width)+" onto "+e.Room.Walls[wall].Name), ", ")
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

// Places for the words at a match line.
var (
	matchOuts   = []float64{0, 1.5, 3, 4.5}                    // off the line, mm on the office page
	matchShares = []float64{0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8} // of its length
)

// matchPlace finds the place of the words at a match line: the first that is free close to the line, from the middle to
// both ends by turns, then a little further off; where none is, the middle all the same, for without its page a match
// line says nothing.
func (e *View) matchPlace(t scene.Text, at func(share, out float64) scene.Point) scene.Point {
	for _, out := range matchOuts {
		for _, share := range matchShares {
			if t.At = at(share, out); e.Space.Free(t.Bounds(), e.Look.Of(0.9)) {
				return t.At
			}
		}
	}
	return at(0.5, 0)
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
		t.At = e.matchPlace(t, at)
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

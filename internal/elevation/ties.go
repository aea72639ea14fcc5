package elevation

import (
	"math"

	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// ties dimensions, in the white of each opening, how its edges lie to the seams: over it the seams inside its width, and
// on each side the leg to the nearest seam beside it.
func (e *View) ties() {
	for i := range e.F.W.Openings {
		o := &e.F.W.Openings[i]
		if o.FromLeft >= e.From && o.Right() <= e.To {
			e.tie(o)
		}
	}
}

func (e *View) tie(o *room.Opening) {
	k := e.Look
	x0, z0, x1, z1 := e.F.Hole(o)
	box := e.V.Box(x0, z0, x1, z1)
	inside := []L{x0}
	var left, right *L
	for i := range e.F.Seams {
		x := &e.F.Seams[i].X
		switch {
		case *x < e.From || *x > e.To: // past a match line
		case *x > x0 && *x < x1 && len(e.F.Shown(*x)) > 0:
			inside = append(inside, *x)
		case *x <= x0:
			left = x
		case *x >= x1 && right == nil:
			right = x
		}
	}
	row := box.Y0 + k.Of(8)
	if len(inside) > 1 {
		if foot, ok := e.tieInside(o, box, append(inside, x1)); ok {
			row = foot + k.Of(5)
		}
	}
	if left != nil {
		e.tieBeside(o, box, row, *left, x0, 1)
	}
	if right != nil {
		e.tieBeside(o, box, row, *right, x1, -1)
	}
}

// tieInside draws the chain from edge to edge over the seams in the width of an opening, if it stands there with all its
// figures, and gives where it ends below.
func (e *View) tieInside(o *room.Opening, box scene.Box, list []L) (foot float64, ok bool) {
	k := e.Look
	t := e.Tier("ties", list, e.V.X)
	t.Name = ""
	for range list {
		t.Starts = append(t.Starts, box.Y0+k.Of(1))
	}
	t.Least, t.Most = box.X0+k.Of(2.4), box.X1-k.Of(2.4)
	st := draft.Stack{Edge: box.Y0, Out: 1, First: k.Of(8), Tiers: []draft.Tier{t}}
	taken := st.Box(k)
	if taken.Y1 >= box.Y1-k.Of(4) || taken.X0 <= box.X0-k.Of(1.4) || taken.X1 >= box.X1+k.Of(1.4) {
		return 0, false
	}
	inner := taken
	inner.X0, inner.X1 = math.Max(inner.X0, box.X0+k.Of(2.2)), math.Min(inner.X1, box.X1-k.Of(2.2))
	draw := func(g *scene.Group, space *draft.Space) { st.Draw(g, k, space) }
	if !e.clearOfBoxes(inner) || !e.Space.FreeOfWords(inner, k.Of(0.6)) || !e.clean(o, draw) {
		return 0, false
	}
	draw(e.Group, e.Space)
	e.holes[o].Items = append(e.holes[o].Items, e.Group.Items[len(e.Group.Items)-1])
	e.Group.Items = e.Group.Items[:len(e.Group.Items)-1]
	return taken.Y1, true
}

// tieStep is how far it is from one row to the next in which a leg is tried, on the office page.
const tieStep = 3

// tieBeside draws the leg from a seam beside an opening to its edge: in the first row from the top down in which the
// figure stands free in the white, the seam is seen, and the line between them meets no words. sign: 1 into the opening
// from its left edge, -1 from its right.
func (e *View) tieBeside(o *room.Opening, box scene.Box, row float64, at, edge L, sign float64) {
	k := e.Look
	d := (edge - at).Abs()
	if d == 0 || d > e.Room.NetWidth() {
		return
	}
	// the figure stands in the white, over the line drawn on past the edge
	text := e.Style.Format(d)
	w := scene.Width(text, k.Small, false)
	if w+k.Of(5.6) > box.W() {
		return
	}
	if 2*(w+k.Of(5)) > box.W() && sign < 0 { // the two legs do not stand side by side
		row += k.Of(6)
	}
	seam, jamb := e.V.X(at), e.V.X(edge)
	for ; row < box.Y1-k.Of(3); row += k.Of(tieStep) {
		a := scene.Pt(jamb+sign*k.Of(2.6), row-k.Of(1)-k.Small)
		strip := scene.Box{X0: math.Min(a.X, a.X+sign*w), Y0: a.Y, X1: math.Max(a.X, a.X+sign*w), Y1: row + k.Of(1)}
		if !e.Space.Free(strip, k.Of(0.9)) || !e.clearOfBoxes(scene.Box{X0: math.Min(seam, jamb) - 1, Y0: row - 1, X1: math.Max(seam, jamb) + 1, Y1: row + 1}) {
			continue
		}
		tick := scene.BoxAt(seam, row, 0, 0).Inset(-k.Of(0.9))
		if !e.seenAt(at, row) || !e.Space.FreeOfWords(tick, k.Of(0.6)) {
			continue // where the seam is not seen, there is nothing to measure to
		}
		if !e.Space.FreeLine(scene.Pt(seam, row), scene.Pt(a.X+sign*(w+k.Of(0.6)), row), k.Of(0.9)) {
			continue
		}
		draw := func(g *scene.Group, space *draft.Space) { e.leg(g, space, text, at, edge, row, sign, w) }
		if !e.clean(o, draw) {
			continue
		}
		draw(e.holes[o], e.Space)
		return
	}
}

// seenAt reports whether a seam is seen at a height of the page.
func (e *View) seenAt(x L, y float64) bool {
	for _, h := range e.F.Shown(x) {
		if e.V.Y(h[1]) <= y && y <= e.V.Y(h[0]) {
			return true
		}
	}
	return false
}

// clean reports whether something drawn over an opening leaves every word in it clear, and stands clear of leaders.
func (e *View) clean(o *room.Opening, draw func(*scene.Group, *draft.Space)) bool {
	p := scene.NewPage("", "", e.Page.Width, e.Page.Height)
	p.Add(e.holes[o])
	var over scene.Group
	draw(&over, draft.NewSpace(scene.Box{}))
	clear := true
	over.Texts(func(t *scene.Text) { clear = clear && e.Space.Free(t.Bounds(), 0.6) })
	p.Add(&over)
	return clear && len(scene.Overlaps(p, 0.5)) == 0
}

// leg draws the distance from a seam to the edge of an opening beside it.
func (e *View) leg(in *scene.Group, space *draft.Space, text string, at, edge L, y, sign, w float64) {
	k := e.Look
	g := in.Part(scene.Tag{Class: "dimension", Title: "leg", Data: []scene.Datum{folio.Datum("tier", "leg"), folio.Datum("from", folio.Mm(min(at, edge))), folio.Datum("to", folio.Mm(max(at, edge)))}})
	a, b := e.V.X(at), e.V.X(edge)
	end := b + sign*(k.Of(3)+w)
	g.HLine(a, end, y, scene.Pen(scene.Dimensions, k.Dimension))
	space.Stroke(scene.Pt(a, y), scene.Pt(end, y))
	for _, x := range []float64{a, b} {
		draft.Tick(g, k, scene.Pt(x, y))
		d := k.Of(0.85)
		space.Stroke(scene.Pt(x-d, y+d), scene.Pt(x+d, y-d))
	}
	x := scene.Text{At: scene.Pt(b+sign*k.Of(2.6), y-k.Of(1)), String: text, Height: k.Small, Layer: scene.Dimensions}
	if sign < 0 {
		x.Anchor = scene.End
	}
	g.Text(x)
	space.Take(x.Bounds())
}

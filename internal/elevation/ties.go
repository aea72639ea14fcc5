package elevation

import (
	"fmt"
	"math"
	"strings"

	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// ties dimensions, in the white of each opening, how its edges lie to the seams: over it the seams inside its width, and
// on each side the leg to the nearest seam beside it. Seams for whose figures the white has no room are figured in the list of the page;
// not those of an opening that is drawn large, for they are figured there, and not where the list would push the drawing down: the
// chains under and over the wall have them too.
func (e *View) ties() {
	for i := range e.F.W.Openings {
		o := &e.F.W.Openings[i]
		if o.FromLeft >= e.To || o.Right() <= e.From {
			continue
		}
		key, seams := "ties "+o.Name, e.F.SeamsIn(o, e.From, e.To)
		large := len(e.List) == 0 || e.PageOf(OpeningKey(e.F.Wall, i)) != "" // while pages are planned nobody knows
		if e.tie(o) || len(seams) == 0 || large || e.crowded || e.elsewhere(key) {
			continue
		}
		var list []string
		for _, m := range seams {
			list = append(list, fmt.Sprintf("%s at %s", e.SeamWords(m), e.Style.Format(m.X-o.FromLeft)))
		}
		e.dropAt(key, e.inHole(o), "%s, seams from its left edge: %s", o.Kind.Named(o.Name), strings.Join(list, ", "))
	}
}

// SeamWords names a seam by its sheets: 12 | 13.
func (e *View) SeamWords(m *layout.Seam) string {
	return NumberOf(SheetAt(e.Board.Set, m.LeftSheet)) + " | " + NumberOf(SheetAt(e.Board.Set, m.RightSheet))
}

// tie figures the seams at an opening as far as its white has room, and reports whether those in its width are.
func (e *View) tie(o *room.Opening) (figured bool) {
	k := e.Look
	x0, z0, x1, z1 := e.F.Hole(o)
	box := e.V.Box(max(x0, e.From), z0, min(x1, e.To), z1)
	inside, left, right := []L(nil), (*L)(nil), (*L)(nil)
	for _, m := range e.F.SeamsIn(o, e.From, e.To) {
		inside = append(inside, m.X)
	}
	for i := range e.F.Seams {
		x := &e.F.Seams[i].X
		switch {
		case *x < e.From || *x > e.To: // past a match line
		case *x <= x0:
			left = x
		case *x >= x1 && right == nil:
			right = x
		}
	}
	row := box.Y0 + k.Of(8)
	if len(inside) > 0 {
		for _, edge := range []L{x0, x1} { // an edge past a match line is not seen
			if edge >= e.From && edge <= e.To {
				inside = append(inside, edge)
			}
		}
		foot := 0.0
		if foot, figured = e.tieInside(o, box, inside); figured {
			row = foot + k.Of(5)
		}
	}
	if left != nil && x0 >= e.From {
		e.tieBeside(o, box, row, *left, x0, 1)
	}
	if right != nil && x1 <= e.To {
		e.tieBeside(o, box, row, *right, x1, -1)
	}
	return figured
}

// tieInside draws the chain from edge to edge over the seams in the width of an opening, in the first row from the top down in which it
// stands with all its figures, and gives where it ends below.
func (e *View) tieInside(o *room.Opening, box scene.Box, list []L) (foot float64, ok bool) {
	k := e.Look
	t := e.Tier("ties", list, e.V.X)
	t.Name = ""
	t.Least, t.Most = box.X0+k.Of(2.4), box.X1-k.Of(2.4)
	if d := e.casing(o, box); d > 0 {
		t.Bars = []float64{box.X0 + d, box.X1 - d}
	}
	for first := k.Of(8); box.Y0+first < box.Y1-k.Of(4); first += k.Of(tieStep) {
		t.Starts = nil
		for range t.Marks {
			t.Starts = append(t.Starts, box.Y0+k.Of(1))
		}
		st := draft.Stack{Edge: box.Y0, Out: 1, First: first, Tiers: []draft.Tier{t}}
		taken := st.Box(k)
		if taken.Y1 >= box.Y1-k.Of(4) || taken.X0 <= box.X0-k.Of(1.4) || taken.X1 >= box.X1+k.Of(1.4) {
			return 0, false
		}
		inner := taken
		inner.X0, inner.X1 = math.Max(inner.X0, box.X0+k.Of(2.2)), math.Min(inner.X1, box.X1-k.Of(2.2))
		draw := func(g *scene.Group, space *draft.Space) { st.Draw(g, k, space) }
		if !e.clearOfBoxes(inner) || !e.Space.FreeOfWords(inner, k.Of(0.6)) || !e.clean(o, draw) {
			continue
		}
		draw(e.Group, e.Space)
		in := e.Group.Items[len(e.Group.Items)-1]
		if g, ok := in.(*scene.Group); ok {
			g.Data = append(g.Data, item("ties "+o.Name))
		}
		e.holes[o].Items = append(e.holes[o].Items, in)
		e.Group.Items = e.Group.Items[:len(e.Group.Items)-1]
		return taken.Y1, true
	}
	return 0, false
}

// Of what is figured in the white of an opening, in mm on the office page.
const (
	tieStep = 3   // from one row that is tried to the next
	legLead = 2.6 // from the edge of the opening to the figure of a leg
	legAir  = 1.2 // from the line of its casing to that
)

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
	w, lead := scene.Width(text, k.Small, false), k.Of(legLead)
	if c := e.casing(o, box); c > 0 && c+k.Of(legAir) > lead { // not across the line of the casing
		lead = c + k.Of(legAir)
	}
	if w+lead+k.Of(3) > box.W() {
		return
	}
	if 2*(w+lead+k.Of(2.4)) > box.W() && sign < 0 { // the two legs do not stand side by side
		row += k.Of(6)
	}
	seam, jamb := e.V.X(at), e.V.X(edge)
	for ; row < box.Y1-k.Of(3); row += k.Of(tieStep) {
		a := scene.Pt(jamb+sign*lead, row-k.Of(1)-k.Small)
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
		draw := func(g *scene.Group, space *draft.Space) { e.leg(g, space, text, at, edge, row, sign, lead, w) }
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
func (e *View) leg(in *scene.Group, space *draft.Space, text string, at, edge L, y, sign, lead, w float64) {
	k := e.Look
	g := in.Part(scene.Tag{Class: "dimension", Title: "leg", Data: []scene.Datum{folio.Datum("tier", "leg"), folio.Datum("from", folio.Mm(min(at, edge))), folio.Datum("to", folio.Mm(max(at, edge)))}})
	a, b := e.V.X(at), e.V.X(edge)
	end := b + sign*(lead+k.Of(0.4)+w)
	g.HLine(a, end, y, scene.Pen(scene.Dimensions, k.Dimension))
	space.Stroke(scene.Pt(a, y), scene.Pt(end, y))
	for _, x := range []float64{a, b} {
		draft.Tick(g, k, scene.Pt(x, y))
		d := k.Of(0.85)
		space.Stroke(scene.Pt(x-d, y+d), scene.Pt(x+d, y-d))
	}
	x := scene.Text{At: scene.Pt(b+sign*lead, y-k.Of(1)), String: text, Height: k.Small, Layer: scene.Dimensions}
	if sign < 0 {
		x.Anchor = scene.End
	}
	g.Text(x)
	space.Take(x.Bounds())
}

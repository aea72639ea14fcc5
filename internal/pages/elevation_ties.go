package pages

import (
	"math"

	"flitchlay/internal/draft"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// ties dimensions, in the white of each opening, how its edges lie to the seams: over it the seams inside its width, and
// on each side the leg to the nearest seam beside it.
func (e *elevation) ties() {
	for i := range e.f.w.Openings {
		o := &e.f.w.Openings[i]
		if o.FromLeft >= e.from && o.Right() <= e.to {
			e.tie(o)
		}
	}
}

func (e *elevation) tie(o *room.Opening) {
	k := e.look
	x0, z0, x1, z1 := e.f.hole(o)
	box := e.v.Box(x0, z0, x1, z1)
	list := []L{x0}
	var left, right *L
	for _, s := range e.f.seams {
		x := s.X
		switch {
		case x > x0 && x < x1 && len(e.f.shown(x)) > 0:
			list = append(list, x)
		case x <= x0:
			left = &s.X
		case x >= x1 && right == nil:
			right = &s.X
		}
	}
	list = append(list, x1)
	y := box.Y0 + k.Of(8)
	if len(list) > 2 {
		t := e.tier("ties", list, e.v.X)
		t.Name = ""
		for range list {
			t.Starts = append(t.Starts, box.Y0+k.Of(1))
		}
		t.Least, t.Most = box.X0+k.Of(2.4), box.X1-k.Of(2.4)
		st := draft.Stack{Edge: box.Y0, Out: 1, First: k.Of(8), Tiers: []draft.Tier{t}}
		taken := st.Box(k)
		inner := taken
		inner.X0, inner.X1 = math.Max(inner.X0, box.X0+k.Of(2.2)), math.Min(inner.X1, box.X1-k.Of(2.2))
		draw := func(g *scene.Group, space *draft.Space) { st.Draw(g, k, space) }
		if taken.Y1 < box.Y1-k.Of(4) && taken.X0 > box.X0-k.Of(1.4) && taken.X1 < box.X1+k.Of(1.4) && e.clearOfBoxes(inner) && e.space.FreeOfWords(inner, k.Of(0.6)) && e.clean(o, draw) {
			draw(e.group, e.space)
			e.holes[o].Items = append(e.holes[o].Items, e.group.Items[len(e.group.Items)-1])
			e.group.Items = e.group.Items[:len(e.group.Items)-1]
			y = taken.Y1 + k.Of(5)
		}
	}
	for side, at := range []*L{left, right} {
		if at == nil {
			continue
		}
		edge, sign := x0, 1.0
		if side == 1 {
			edge, sign = x1, -1
		}
		d := (edge - *at).Abs()
		if d == 0 || d > e.net() {
			continue
		}
		// the figure stands in the white, over the line drawn on past the edge
		text := e.style.Format(d)
		w := scene.Width(text, k.Small, false)
		if w+k.Of(5.6) > box.W() {
			continue
		}
		row := y
		if 2*(w+k.Of(5)) > box.W() && side == 1 {
			row += k.Of(6)
		}
		for ; row < box.Y1-k.Of(3); row += k.Of(3) {
			a := scene.Pt(e.v.X(edge)+sign*k.Of(2.6), row-k.Of(1)-k.Small)
			strip := scene.Box{X0: math.Min(a.X, a.X+sign*w), Y0: a.Y, X1: math.Max(a.X, a.X+sign*w), Y1: row + k.Of(1)}
			if !e.space.Free(strip, k.Of(0.9)) || !e.clearOfBoxes(scene.Box{X0: math.Min(e.v.X(*at), e.v.X(edge)) - 1, Y0: row - 1, X1: math.Max(e.v.X(*at), e.v.X(edge)) + 1, Y1: row + 1}) {
				continue
			}
			tick := scene.BoxAt(e.v.X(*at), row, 0, 0).Inset(-k.Of(0.9))
			if !e.seenAt(*at, row) || !e.space.FreeOfWords(tick, k.Of(0.6)) {
				continue // where the seam is not seen, there is nothing to measure to
			}
			if y := row; !e.space.FreeLine(scene.Pt(e.v.X(*at), y), scene.Pt(a.X+sign*(w+k.Of(0.6)), y), k.Of(0.9)) {
				continue
			}
			draw := func(g *scene.Group, space *draft.Space) { e.leg(g, space, text, *at, edge, row, sign, w) }
			if !e.clean(o, draw) {
				continue
			}
			draw(e.holes[o], e.space)
			break
		}
	}
}

// seenAt reports whether a seam is seen at a height of the page.
func (e *elevation) seenAt(x L, y float64) bool {
	for _, h := range e.f.shown(x) {
		if e.v.Y(h[1]) <= y && y <= e.v.Y(h[0]) {
			return true
		}
	}
	return false
}

// clean reports whether something drawn over an opening leaves every word in it clear, and stands clear of leaders.
func (e *elevation) clean(o *room.Opening, draw func(*scene.Group, *draft.Space)) bool {
	p := scene.NewPage("", "", e.page.Width, e.page.Height)
	p.Add(e.holes[o])
	var over scene.Group
	draw(&over, draft.NewSpace(scene.Box{}))
	clear := true
	over.Texts(func(t *scene.Text) { clear = clear && e.space.Free(t.Bounds(), 0.6) })
	p.Add(&over)
	return clear && len(scene.Overlaps(p, 0.5)) == 0
}

// leg draws the distance from a seam to the edge of an opening beside it.
func (e *elevation) leg(in *scene.Group, space *draft.Space, text string, at, edge L, y, sign, w float64) {
	k := e.look
	g := in.Part(scene.Tag{Class: "dimension", Title: "leg", Data: []scene.Datum{datum("tier", "leg"), datum("from", mm(min(at, edge))), datum("to", mm(max(at, edge)))}})
	a, b := e.v.X(at), e.v.X(edge)
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

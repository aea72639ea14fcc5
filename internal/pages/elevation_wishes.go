package pages

import (
	"math"

	"flitchlay/internal/draft"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// pins draws the ends of the centre line of each pin, past the outline of the wall, and names it.
func (e *elevation) pins() {
	k := e.look
	for i := range e.f.w.Pins {
		p := &e.f.w.Pins[i]
		if p.X < e.from || p.X > e.to {
			continue
		}
		in := e.group.Part(scene.Tag{Class: "pin", Title: "centre line for " + wished[p.Put], Data: []scene.Datum{datum("x", mm(p.X)), datum("put", p.Put)}})
		top, foot := e.pinEnds(p)
		high, low := top.Add(0, -k.Of(5)), foot.Add(0, k.Of(4))
		e.centreName(in, high, low)
		for _, l := range [][2]scene.Point{{high, top}, {foot, low}} {
			e.centreLine(in, l[0], l[1], 0)
			e.space.Stroke(l[0], l[1])
		}
	}
}

// pinLines draws the centre lines on through the wall, broken where words stand. Where a seam stands at the pin, the seam
// is the line.
func (e *elevation) pinLines() {
	for i := range e.f.w.Pins {
		if p := &e.f.w.Pins[i]; p.X >= e.from && p.X <= e.to && !e.seamNear(p.X) {
			top, foot := e.pinEnds(p)
			e.centreLine(e.group.Part(scene.Tag{Class: "pin-line", Data: []scene.Datum{datum("x", mm(p.X))}}), top, foot, e.look.Of(1.5))
		}
	}
}

// pinEnds are the points of the ceiling and of the floor at a pin.
func (e *elevation) pinEnds(p *room.Pin) (top, foot scene.Point) {
	return e.v.Pt(p.X, room.At(e.f.w.Ceiling, p.X)), e.v.Pt(p.X, room.At(e.f.w.Floor, p.X))
}

// centreLine draws the parts of a centre line that run clear of words and are longer than least.
func (e *elevation) centreLine(in *scene.Group, a, b scene.Point, least float64) {
	k := e.look
	parts := e.space.Gaps(a, b, k.Of(0.7))
	for j := 0; j+1 < len(parts); j += 2 {
		if parts[j+1].Y-parts[j].Y > least {
			in.Line(parts[j], parts[j+1], scene.Pen(scene.Marks, k.Dimension).As(scene.Chain(k.Dimension)))
		}
	}
}

// wished says what a pin asks for.
var wished = map[string]string{"seam": "a seam", "middle": "the middle of a sheet", "either": "a seam or the middle of a sheet"}

// seamNear reports whether a seam stands at a pin, to half a step of the grid.
func (e *elevation) seamNear(x L) bool {
	for _, s := range e.f.seams {
		if 2*(s.X-x).Abs() <= e.room.Rules.Snap {
			return true
		}
	}
	return false
}

// centreName letters CL at an end of a centre line.
func (e *elevation) centreName(in *scene.Group, high, low scene.Point) {
	k := e.look
	t := scene.Text{String: "CL", Height: k.Small, Bold: true, Anchor: scene.Middle, Layer: scene.Marks}
	half := t.Width() / 2
	var places []scene.Point
	for _, side := range []float64{1, -1} { // beside the end, then further out
		places = append(places, high.Add(side*(half+k.Of(1)), k.Small), low.Add(side*(half+k.Of(1)), 0))
	}
	for out := 0.0; out < 12; out++ {
		places = append(places, high.Add(0, -k.Of(0.9+out)), low.Add(0, k.Small+k.Of(0.9+out)))
	}
	for _, at := range places {
		t.At = at
		if e.space.Free(t.Bounds(), k.Of(0.9)) {
			in.Text(t)
			e.space.Take(t.Bounds())
			return
		}
	}
}

// keeps marks the stretches that are kept free of seams: a line between two bars, with what it is for.
func (e *elevation) keeps() {
	for i := range e.f.w.KeepClear {
		c := &e.f.w.KeepClear[i]
		from, to := max(c.From, e.from), min(c.To, e.to)
		if from >= to {
			continue
		}
		words := "no seam"
		if c.Why != "" {
			words += ": " + c.Why
		}
		in := e.group.Part(scene.Tag{Class: "keep-clear", Title: words, Data: []scene.Datum{datum("from", mm(c.From)), datum("to", mm(c.To))}})
		bottom, top := e.f.cover((from + to) / 2)
		x0, x1 := e.v.X(from), e.v.X(to)
		at := func(share float64) float64 { return e.v.Y(bottom) + (e.v.Y(top)-e.v.Y(bottom))*share }
		if !e.keepAlong(in, words, x0, x1, at) {
			e.keepAside(in, words, x0, x1, at)
		}
	}
}

// keepShares are the heights, as shares of the covering, at which a stretch may be marked.
var keepShares = []float64{0.76, 0.7, 0.64, 0.82, 0.58, 0.52, 0.46, 0.4, 0.34, 0.28, 0.22, 0.16, 0.1, 0.06}

// keepAlong letters the words over the line, where they are no longer than it is.
func (e *elevation) keepAlong(in *scene.Group, words string, x0, x1 float64, at func(float64) float64) bool {
	k := e.look
	t := scene.Text{String: words, Height: k.Small, Anchor: scene.Middle, Layer: scene.Notes, Field: 0.4}
	spare := x1 - x0 - t.Width() - 2*t.Field - k.Of(2.2)
	if spare < 0 {
		return false
	}
	for _, share := range keepShares {
		for _, shift := range []float64{0, -0.5, 0.5, -1, 1} {
			y := at(share)
			t.At = scene.Pt((x0+x1)/2+shift*spare/2, y-0.33*k.Small-t.Field-k.Of(0.7))
			if e.space.Free(t.Bounds(), t.Field+k.Of(0.8)) && e.keepLine(in, x0, x1, y) {
				in.Text(t)
				e.space.Take(t.Bounds().Inset(-t.Field))
				return true
			}
		}
	}
	return false
}

// keepAside letters the words outside, on a leader.
func (e *elevation) keepAside(in *scene.Group, words string, x0, x1 float64, at func(float64) float64) {
	k := e.look
	t := scene.Text{String: words, Height: k.Small, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Notes, Field: 0.4}
	w, h := t.Width()+2*t.Field+k.Of(0.4), 1.66*k.Small+2*t.Field
	for _, share := range keepShares {
		y := at(share)
		dot := scene.Pt((x0+x1)/2, y)
		if !e.keepLine(in, x0, x1, y) {
			continue
		}
		c, ok := e.callOut(dot, w, h, k.Of(4))
		if !ok {
			return // the line stands without words
		}
		enter, _, _ := draft.Clip(dot, c, scene.Box{X0: c.X - w/2, Y0: c.Y - h/2, X1: c.X + w/2, Y1: c.Y + h/2}.Inset(-k.Of(0.5)))
		draft.Leader(in, k, e.space, dot, dot.Add((c.X-dot.X)*enter, (c.Y-dot.Y)*enter))
		t.At = c
		in.Text(t)
		e.space.Take(t.Bounds().Inset(-t.Field))
		return
	}
}

// keepLine draws the line of a stretch between its two bars, if no words are in its way.
func (e *elevation) keepLine(in *scene.Group, x0, x1, y float64) bool {
	k := e.look
	bar := k.Of(1.2)
	for i := range e.f.w.Openings {
		a, z0, b, z1 := e.f.hole(&e.f.w.Openings[i])
		if e.v.X(a) < x1 && e.v.X(b) > x0 && math.Min(math.Abs(e.v.Y(z0)-y), math.Abs(e.v.Y(z1)-y)) < k.Of(2) {
			return false // along an edge it would be lost
		}
	}
	for _, l := range [][2]scene.Point{{scene.Pt(x0, y), scene.Pt(x1, y)}, {scene.Pt(x0, y-bar), scene.Pt(x0, y+bar)}, {scene.Pt(x1, y-bar), scene.Pt(x1, y+bar)}} {
		if !e.space.FreeLine(l[0], l[1], k.Of(0.6)) {
			return false
		}
	}
	pen := scene.Pen(scene.Marks, k.Thin)
	in.HLine(x0, x1, y, pen)
	in.VLine(x0, y-bar, y+bar, pen)
	in.VLine(x1, y-bar, y+bar, pen)
	e.space.Stroke(scene.Pt(x0, y), scene.Pt(x1, y))
	for _, x := range []float64{x0, x1} {
		e.space.Stroke(scene.Pt(x, y-bar), scene.Pt(x, y+bar))
	}
	return true
}

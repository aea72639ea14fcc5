package pages

import (
	"fmt"
	"math"

	"flitchlay/internal/draft"
	"flitchlay/internal/scene"
)

// labels puts what is lettered into the wall: sheet numbers first, then what stands at seams, at openings and boxes, the
// grain arrow last. Each takes the first free of its places.
func (e *elevation) labels() {
	e.openingNames()
	e.numbers()
	if !e.f.run.Up {
		e.seamMarks()
		e.ties()
		e.lost()
	}
	e.plateNames()
	e.pins()
	e.keeps()
	e.revisionMarks()
	e.deviationMarks()
	e.grainArrow()
	e.pinLines()
}

// cornerMarks letters the corners at the ends under the dimensions, and the terminations at the sides of the wall.
func (e *elevation) cornerMarks() {
	k := e.look
	y := e.below.Box(k).Y1 + k.Of(3.9)
	// the corners of a narrow wall: their circles stand apart, on slanted lines
	apart := 0.0
	if d := e.apart(); d > 0 {
		apart = d
		y += k.Of(2)
	}
	for _, end := range []struct {
		h     ghost
		x     L
		aside float64
	}{{e.ghostLeft, e.from, -apart}, {e.ghostRight, e.to, apart}} {
		if !end.h.shown() {
			continue
		}
		in := e.group.Part(scene.Tag{Class: "corner", Title: "corner " + end.h.corner, Data: []scene.Datum{datum("name", end.h.corner), datum("x", mm(end.x))}})
		c := scene.Pt(e.v.X(end.x)+end.aside, y)
		if apart > 0 {
			in.Line(scene.Pt(e.v.X(end.x), e.below.Box(k).Y1), c, scene.Pen(scene.Marks, k.Extension))
		}
		box := draft.Disc(in, k, scene.Marks, c, e.cornerDisc(end.h.corner), k.Thin, end.h.corner, k.Small, true)
		e.space.Take(box)
		if page := e.pageOf("corner " + end.h.corner); page != "" {
			e.page.Link(box, page)
		}
	}
	for _, r := range e.f.rawEnds() {
		mark := e.endMark(r.kind)
		if mark == "" || r.x < e.from || r.x > e.to || r.kind == "jamb" || r.kind == "bare" {
			continue
		}
		atEnd := r.x-e.f.left < (e.f.right-e.f.left)/50 && !r.right || e.f.right-r.x < (e.f.right-e.f.left)/50 && r.right
		if !atEnd {
			continue
		}
		e.termination(r, mark)
	}
}

// cornerDisc is the diameter of the circle with a corner's name: more from C10 on.
func (s *set) cornerDisc(name string) float64 {
	k := s.look
	return math.Max(k.Of(6.4), draft.DiscAround(name, k.Small, true, k.Thin))
}

// apart is how far the circles of a narrow wall's corners stand aside; 0 where they stand under their corners.
func (e *elevation) apart() float64 {
	k := e.look
	w := e.v.X(e.to) - e.v.X(e.from)
	if w < k.Of(7.6) && e.ghostLeft.shown() && e.ghostRight.shown() {
		return (k.Of(7.6) - w) / 2
	}
	return 0
}

// termination draws the mark of a raw end beside the wall, on a short line.
func (e *elevation) termination(r rawEnd, mark string) {
	k := e.look
	bottom, top := e.f.cover(r.x)
	sign := -1.0
	if r.right {
		sign = 1
	}
	d := k.Of(6.4)
	for _, share := range []float64{0.5, 0.6, 0.4, 0.7, 0.3} {
		z := bottom + L(share*float64(top-bottom))
		edge := e.v.Pt(r.x, z)
		c := edge.Add(sign*(k.Of(2)+d/2), 0)
		box := scene.Box{X0: c.X - d/2, Y0: c.Y - d/2, X1: c.X + d/2, Y1: c.Y + d/2}
		if !e.space.Free(box, k.Of(0.6)) {
			continue
		}
		in := e.group.Part(scene.Tag{Class: "termination", Title: r.words, Data: []scene.Datum{datum("mark", mark)}})
		in.Line(edge, c.Add(-sign*d/2, 0), scene.Pen(scene.Marks, k.Thin))
		e.space.Take(draft.Disc(in, k, scene.Marks, c, d, k.Thin, mark, k.Small, false))
		return
	}
}

// seamMarks marks the closing seam with a diamond and both numbers, a change of flitch with a hexagon.
func (e *elevation) seamMarks() {
	k := e.look
	for _, s := range e.f.seams {
		if !s.Closing && !s.FlitchChange || s.X < e.from || s.X > e.to {
			continue
		}
		shown := e.f.shown(s.X)
		if len(shown) == 0 {
			continue
		}
		x := e.v.X(s.X)
		words := numberOf(e.sheetAt(s.LeftSheet)) + " | " + numberOf(e.sheetAt(s.RightSheet))
		long := shown[len(shown)-1]
		for _, h := range shown {
			if h[1]-h[0] > long[1]-long[0] {
				long = h
			}
		}
		y0, y1 := e.v.Y(long[1]), e.v.Y(long[0])
		for _, share := range []float64{0.42, 0.5, 0.58, 0.34, 0.66, 0.26, 0.74, 0.18, 0.82, 0.1} {
			c := scene.Pt(x, y0+(y1-y0)*share)
			r := k.Of(4)
			around := scene.Box{X0: c.X - r, Y0: c.Y - r, X1: c.X + r, Y1: c.Y + r}
			if !e.clearOfBoxes(around) {
				continue
			}
			t := scene.Text{At: c.Add(r+k.Of(1), 0), String: words, Height: k.Small, Bold: true, Seat: scene.Centred, Layer: scene.Marks, Field: 0.5}
			beside := e.space.Free(t.Bounds(), t.Field+k.Of(0.85))
			if !beside {
				t.At, t.Anchor = c.Add(-r-k.Of(1), 0), scene.End
				beside = e.space.Free(t.Bounds(), t.Field+k.Of(0.85))
			}
			if !beside && share != 0.1 {
				continue
			}
			if s.Closing {
				in := e.group.Part(scene.Tag{Class: "closing", Title: "closing seam"})
				e.space.Take(draft.Diamond(in, k, scene.Marks, c, k.Of(6), k.Seam, scene.White))
			} else {
				in := e.group.Part(scene.Tag{Class: "flitch-change", Title: "change of flitch"})
				e.space.Take(draft.Hexagon(in, k, scene.Marks, c, k.Of(8), k.Seam))
			}
			if !beside {
				t.Anchor = scene.Middle
				e.outside(t, around)
				break
			}
			e.group.Text(t)
			e.space.Take(t.Bounds().Inset(-t.Field))
			break
		}
	}
}

// clearOfBoxes reports whether a box meets nothing lettered; lines may run through it.
func (e *elevation) clearOfBoxes(b scene.Box) bool { return e.space.FreeOfWords(b, 0.5) }

// openingNames letters the name of each opening in its white.
func (e *elevation) openingNames() {
	k := e.look
	for i := range e.f.w.Openings {
		o := &e.f.w.Openings[i]
		if o.Right() <= e.from || o.FromLeft >= e.to {
			continue
		}
		x0, z0, x1, z1 := e.f.hole(o)
		box := e.v.Box(max(x0, e.from), z0, min(x1, e.to), z1)
		if e.detail && box.W() < k.Of(8) {
			continue // a neighbour broken off: its own enlargement names it
		}
		c := box.Centre()
		t := scene.Text{At: c, String: o.Name, Height: k.Medium, Bold: true, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Openings}
		if !e.space.Free(t.Bounds(), k.Of(0.9)) {
			t.Height = k.Small
		}
		if !e.space.Free(t.Bounds(), k.Of(0.9)) {
			e.outside(t, box)
			continue
		}
		e.group.Text(t)
		e.space.Take(t.Bounds().Inset(-k.Of(0.5)))
		if o.Kind != "window" && o.Kind != "door" {
			kind := scene.Text{At: c.Add(0, -k.Medium/2-k.Of(2.2)), String: o.Kind, Height: k.Small, Anchor: scene.Middle, Layer: scene.Openings}
			if box.Inset(k.Of(2.2)).Contains(kind.Bounds()) && e.space.Free(kind.Bounds(), k.Of(0.5)) {
				e.group.Text(kind)
				e.space.Take(kind.Bounds())
			}
		}
		if page := e.pageOf(openingKey(e.f.wall, i)); page != "" {
			ref := scene.Text{At: c.Add(0, k.Medium/2+k.Of(2)), String: page, Height: k.Small, Anchor: scene.Middle, Seat: scene.Hanging, Layer: scene.Openings, Field: 0.5}
			if box.Inset(k.Of(2.2)).Contains(ref.Bounds()) && e.space.Free(ref.Bounds(), ref.Field+k.Of(0.6)) {
				e.group.Text(ref)
				e.space.Take(ref.Bounds().Inset(-ref.Field))
				e.page.Link(ref.Bounds(), page)
			}
		}
	}
}

// outside letters a name beside the box it belongs to, on a leader.
func (e *elevation) outside(t scene.Text, box scene.Box) {
	k := e.look
	c := box.Centre()
	t.Height, t.Bold, t.Field = k.Small, true, 0.4
	w := t.Width() / 2
	for ring := 1; ring < 30; ring++ {
		d := k.Of(3) * float64(ring)
		for _, at := range []scene.Point{scene.Pt(c.X, box.Y0-d), scene.Pt(box.X1+d+w, c.Y), scene.Pt(box.X0-d-w, c.Y), scene.Pt(c.X, box.Y1+d),
			scene.Pt(box.X1+d+w, box.Y0-d), scene.Pt(box.X0-d-w, box.Y0-d), scene.Pt(box.X1+d+w, box.Y1+d), scene.Pt(box.X0-d-w, box.Y1+d)} {
			t.At = at
			if !e.space.Free(t.Bounds(), t.Field+k.Of(0.9)) {
				continue
			}
			b := t.Bounds()
			end := scene.Pt(math.Min(math.Max(c.X, b.X0), b.X1), b.Y1+k.Of(0.6))
			if at.Y > box.Y1 {
				end.Y = b.Y0 - k.Of(0.6)
			}
			if at.Y == c.Y {
				end = scene.Pt(b.X0-k.Of(0.6), c.Y)
				if at.X < box.X0 {
					end.X = b.X1 + k.Of(0.6)
				}
			}
			if !e.space.FreeLine(c, end, k.Of(0.65)) {
				continue
			}
			draft.Leader(e.group, k, e.space, c, end)
			e.group.Text(t)
			e.space.Take(t.Bounds().Inset(-t.Field))
			return
		}
	}
}

// plateNames letters the name of each box beside its plate.
func (e *elevation) plateNames() {
	k := e.look
	for i := range e.f.w.Boxes {
		b := &e.f.w.Boxes[i]
		if b.X < e.from || b.X > e.to {
			continue
		}
		box := e.v.Box(b.X-b.PlateWidth/2, b.Z-b.PlateHigh/2, b.X+b.PlateWidth/2, b.Z+b.PlateHigh/2)
		c := box.Centre()
		t := scene.Text{String: b.Name, Height: k.Small, Seat: scene.Centred, Layer: scene.Boxes, Field: 0.5}
		done := false
		for _, p := range []struct {
			at     scene.Point
			anchor scene.Anchor
		}{{scene.Pt(box.X1+k.Of(1.2), c.Y), scene.Start}, {scene.Pt(box.X0-k.Of(1.2), c.Y), scene.End},
			{scene.Pt(c.X, box.Y0-k.Of(2.6)), scene.Middle}, {scene.Pt(c.X, box.Y1+k.Of(2.6)), scene.Middle}} {
			t.At, t.Anchor = p.at, p.anchor
			if e.space.Free(t.Bounds(), t.Field+k.Of(0.9)) {
				done = true
				break
			}
		}
		if !done {
			t.Anchor = scene.Middle
			e.outside(t, box)
			continue
		}
		e.group.Text(t)
		e.space.Take(t.Bounds().Inset(-t.Field))
	}
}

// lost letters beside the right seam of a sheet how much grain is lost there.
func (e *elevation) lost() {
	k := e.look
	for _, p := range e.f.parts {
		s := p.sheet()
		if s.Lost == 0 || p.to > e.to || p.to <= e.from || !e.seamAt(p.to) {
			continue
		}
		t := scene.Text{String: "lost " + e.style.Format(s.Lost), Height: k.Small, Angle: 90, Anchor: scene.Middle, Layer: scene.Seams, Field: 0.4}
		for _, h := range e.f.shown(p.to) {
			y0, y1 := e.v.Y(h[1]), e.v.Y(h[0])
			if y1-y0 < t.Width()+k.Of(2) {
				continue
			}
			if e.tryAlong(&t, e.v.X(p.to), y0, y1) {
				break
			}
		}
	}
}

// tryAlong puts an upright text at the left of a line, or at its right, where it is free.
func (e *elevation) tryAlong(t *scene.Text, x, y0, y1 float64) bool {
	k := e.look
	for _, share := range []float64{0.5, 0.62, 0.38, 0.74, 0.26, 0.86, 0.14} {
		for _, dx := range []float64{-k.Of(1.4), k.Of(1.4) + t.Height} {
			t.At = scene.Pt(x+dx, y0+(y1-y0)*share)
			b := t.Bounds()
			if b.Y0 > y0+k.Of(0.5) && b.Y1 < y1-k.Of(0.5) && e.space.Free(b, t.Field+k.Of(0.9)) {
				e.group.Text(*t)
				e.space.Take(b.Inset(-t.Field))
				return true
			}
		}
	}
	return false
}

// seamAt reports whether a seam stands at x.
func (e *elevation) seamAt(x L) bool {
	for _, s := range e.f.seams {
		if s.X == x {
			return true
		}
	}
	return false
}

// grainArrow draws one two-headed arrow along the grain, with its word beside it.
func (e *elevation) grainArrow() {
	k := e.look
	angle := 90.0
	l := k.Of(18)
	t := scene.Text{String: "GRAIN", Height: k.Small, Anchor: scene.Middle, Layer: scene.Notes, Field: 0.6}
	if e.f.run.Up {
		angle = 0
	}
	t.Angle = angle
	try := func(c scene.Point) bool {
		a, b := c.Add(0, l/2), c.Add(0, -l/2)
		t.At = c.Add(-k.Of(1.4), 0)
		box := scene.Box{X0: c.X - k.Of(5), Y0: c.Y - l/2, X1: c.X + k.Of(1.4), Y1: c.Y + l/2}
		if angle == 0 {
			a, b = c.Add(-l/2, 0), c.Add(l/2, 0)
			t.At = c.Add(0, -k.Of(1.4))
			box = scene.Box{X0: c.X - l/2, Y0: c.Y - k.Of(5), X1: c.X + l/2, Y1: c.Y + k.Of(1.4)}
		}
		if !e.space.Free(box, k.Of(1)) || !e.space.Free(t.Bounds(), t.Field+k.Of(0.75)) {
			return false
		}
		in := e.group.Part(scene.Tag{Class: "grain", Title: "direction of the grain"})
		in.Rect(scene.Box{X0: math.Min(a.X, b.X) - k.Of(0.9), Y0: math.Min(a.Y, b.Y) - k.Of(0.5), X1: math.Max(a.X, b.X) + k.Of(0.9), Y1: math.Max(a.Y, b.Y) + k.Of(0.5)},
			scene.Style{Layer: scene.Grain, Fill: scene.Solid(scene.White)})
		draft.Arrow(in, k, scene.Marks, a, b, k.Thin, true)
		in.Text(t)
		e.space.Take(box)
		return true
	}
	for _, least := range []float64{k.Of(14), 0} {
		if e.tryArrow(try, least) {
			return
		}
	}
}

// tryArrow tries the sheets that are at least so wide on paper.
func (e *elevation) tryArrow(try func(scene.Point) bool, least float64) bool {
	k := e.look
	for _, share := range []float64{0.62, 0.7, 0.54, 0.46, 0.78, 0.38, 0.3} {
		for _, p := range e.f.parts {
			x0, x1, shown := e.onPage(p)
			if !shown || x1-x0 < least {
				continue
			}
			bottom, top := e.f.cover(min(max((p.from+p.to)/2, e.from), e.to))
			for _, off := range []float64{0.5, 0.3, 0.7} {
				c := scene.Pt(x0+(x1-x0)*off+k.Of(1.5), e.v.Y(bottom)+(e.v.Y(top)-e.v.Y(bottom))*(1-share))
				if e.insideCover(c) && try(c) {
					return true
				}
			}
		}
	}
	return false
}

// insideCover reports whether a place of the page lies on covering, not in an opening.
func (e *elevation) insideCover(c scene.Point) bool {
	for _, b := range e.f.bare(e.v.Box) {
		if b.X0-1 < c.X && c.X < b.X1+1 && b.Y0-1 < c.Y && c.Y < b.Y1+1 {
			return false
		}
	}
	return true
}

// openingKey is what the enlargement of an opening is looked up by.
func openingKey(wall, index int) string { return fmt.Sprintf("opening %d %d", wall, index) }

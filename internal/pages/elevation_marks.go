package pages

import (
	"fmt"
	"math"

	"flitchlay/internal/draft"
	"flitchlay/internal/layout"
	"flitchlay/internal/room"
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
	e.deviationMarks()
	e.grainArrow()
}

// cornerMarks letters the corners at the ends under the dimensions, and the terminations at the sides of the wall.
func (e *elevation) cornerMarks() {
	k := e.look
	y := e.below.Box(k).Y1 + k.Of(3.2)
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
		e.space.Take(draft.Disc(in, k, scene.Marks, c, k.Of(6.4), k.Thin, end.h.corner, k.Small, true))
		if page := e.pageOf("corner " + end.h.corner); page != "" {
			e.page.Link(scene.BoxAt(c.X-k.Of(3.2), c.Y-k.Of(3.2), k.Of(6.4), k.Of(6.4)), page)
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

// onPage is what of a part is shown, on paper.
func (e *elevation) onPage(p part) (x0, x1 float64, ok bool) {
	a, b := max(p.from, e.from), min(p.to, e.to)
	return e.v.X(a), e.v.X(b), a < b
}

// numbers letters every sheet's number in a circle, all at one height where that is free; a narrow strip has its circle
// beside it, on a leader.
func (e *elevation) numbers() {
	courses := 0
	for _, p := range e.f.parts {
		courses = max(courses, len(p.sheets))
	}
	for course := range courses {
		row, ok := 0.0, false
		if !e.f.run.Up {
			row, ok = e.numberRow(course)
		}
		for _, p := range e.f.parts {
			if course < len(p.sheets) {
				p = e.seen(p, course)
			}
			if x0, x1, shown := e.onPage(p); shown && course < len(p.sheets) {
				e.number(p, course, x0, x1, row, ok)
			}
		}
	}
}

// seen narrows a part to what its pieces cover: the rest of the sheet may lie in a gap.
func (e *elevation) seen(p part, course int) part {
	a, b := p.to, p.from
	for _, q := range p.sheets[course].Pieces {
		for _, pt := range q.Outline {
			if q.Wall == e.f.wall && pt.X >= p.from && pt.X <= p.to {
				a, b = min(a, pt.X), max(b, pt.X)
			}
		}
	}
	if a < b {
		p.from, p.to = a, b
	}
	return p
}

// disc is the diameter of a circle with a number.
func (e *elevation) disc() float64 { return e.look.Of(9) }

// visible are the stretches of a sheet's column, on paper from the top down, in which a circle can stand.
func (e *elevation) visible(p part, course int) [][2]float64 {
	return e.visibleAt(p, course, (max(p.from, e.from)+min(p.to, e.to))/2)
}

func (e *elevation) visibleAt(p part, course int, x L) [][2]float64 {
	var list [][2]float64
	for _, q := range p.sheets[course].Pieces {
		if q.Wall != e.f.wall {
			continue
		}
		for _, h := range heightsAt(q.Outline, x) {
			list = append(list, [2]float64{e.v.Y(h[1]), e.v.Y(h[0])})
		}
	}
	for i := 1; i < len(list); i++ {
		for j := i; j > 0 && list[j][0] < list[j-1][0]; j-- {
			list[j], list[j-1] = list[j-1], list[j]
		}
	}
	return list
}

// numberRow finds the height at which most circles are free, as near to the top as can be.
func (e *elevation) numberRow(course int) (y float64, ok bool) {
	top, bottom := 0.0, 0.0
	for _, p := range e.f.parts {
		if course >= len(p.sheets) {
			continue
		}
		for _, v := range e.visible(p, course) {
			top, bottom = math.Max(top, v[0]), math.Max(bottom, v[1])
			break
		}
	}
	d := e.disc()
	best, most := 0.0, -1
	for y := top + e.look.Of(4.5) + d/2; y < bottom; y += e.look.Of(1.5) {
		n := 0
		for _, p := range e.f.parts {
			if course < len(p.sheets) {
				p = e.seen(p, course)
			}
			x0, x1, shown := e.onPage(p)
			if course < len(p.sheets) && shown && e.inside_(p, course, y, d) && e.freeDisc((x0+x1)/2, y, math.Min(d, x1-x0-e.look.Of(0.8))) {
				n++
			}
		}
		if n > most {
			best, most = y, n
		}
	}
	return best, most > 0
}

// inside_ reports whether a circle at a height lies in what is seen of the sheet.
func (e *elevation) inside_(p part, course int, y, d float64) bool {
	for _, v := range e.visible(p, course) {
		if v[0]+d/2+e.look.Of(1) <= y && y <= v[1]-d/2-e.look.Of(1) {
			return true
		}
	}
	return false
}

// numberAlong finds a free place for a number along a band.
func (e *elevation) numberAlong(p part, course int, d float64) bool {
	k := e.look
	from, to := max(p.from, e.from), min(p.to, e.to)
	for _, share := range []float64{0.5, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9, 0.05, 0.95} {
		x := from + L(share*float64(to-from))
		for _, v := range e.visibleAt(p, course, x) {
			y := (v[0] + v[1]) / 2
			if v[1]-v[0] > d+k.Of(1) && e.freeDisc(e.v.X(x), y, d) {
				e.numberAt(p, course, scene.Pt(e.v.X(x), y), d)
				return true
			}
		}
	}
	return false
}

// leastDisc is the smallest circle that a sheet's number stands in.
func (e *elevation) leastDisc(s *layout.Sheet) float64 {
	k := e.look
	d := math.Hypot(scene.Width(numberOf(s), k.Small, true), k.Small) + 1.4 + k.Seam
	if s.Narrow {
		d += k.Of(1.5)
	}
	return math.Max(d, k.Of(6.2))
}

func (e *elevation) freeDisc(x, y, d float64) bool {
	return e.space.Free(scene.Box{X0: x - d/2, Y0: y - d/2, X1: x + d/2, Y1: y + d/2}, e.look.Of(0.35))
}

// number draws one sheet's circle.
func (e *elevation) number(p part, course int, x0, x1, row float64, rowFree bool) {
	k := e.look
	d := e.disc()
	x := (x0 + x1) / 2
	small := math.Min(d, x1-x0-k.Of(1))
	if e.f.run.Up && e.numberAlong(p, course, d) {
		return
	}
	if small >= e.leastDisc(p.sheets[course]) {
		if rowFree && e.inside_(p, course, row, small) && e.freeDisc(x, row, small) {
			e.numberAt(p, course, scene.Pt(x, row), small)
			return
		}
		for _, v := range e.visible(p, course) { // from the top down, where it is free
			for y := v[0] + k.Of(2) + small/2; y <= v[1]-k.Of(1)-small/2; y += k.Of(1) {
				if e.freeDisc(x, y, small) {
					e.numberAt(p, course, scene.Pt(x, y), small)
					return
				}
			}
		}
	}
	// too narrow: the circle stands beside the strip, and a leader leads to a dot in it
	views := e.visible(p, course)
	if len(views) == 0 {
		return
	}
	d = math.Max(k.Of(7.5), e.leastDisc(p.sheets[course]))
	for _, v := range views {
		for step := 0.0; step < v[1]-v[0]-k.Of(8); step += k.Of(3) {
			dot := scene.Pt(x, v[0]+k.Of(6)+step)
			for _, off := range [][2]float64{{-1, 0}, {1, 0}, {-1, 0.6}, {1, 0.6}, {-1, -0.6}, {1, -0.6}, {-1.6, 0}, {1.6, 0}, {-2.4, 0}, {2.4, 0}} {
				c := scene.Pt(x+off[0]*((x1-x0)/2+d/2+k.Of(2.2)), dot.Y+off[1]*d)
				if e.circleWithLeader(p, course, c, d, dot) {
					return
				}
			}
		}
	}
	// at last anywhere on the page
	for _, share := range []float64{0.5, 0.3, 0.7, 0.15, 0.85, 0.05, 0.95} {
		for _, v := range views {
			dot := scene.Pt(x, v[0]+(v[1]-v[0])*share)
			if c, ok := e.callOut(dot, d, d, d/2+k.Of(1)); ok && e.circleWithLeader(p, course, c, d, dot) {
				return
			}
		}
	}
}

// callOut finds the nearest free place round a dot for something of a width and height, to which a leader runs clear.
func (e *elevation) callOut(dot scene.Point, w, h, least float64) (scene.Point, bool) {
	k := e.look
	for r := least; r < k.Of(260); r += k.Of(1.5) {
		for step := range 24 {
			// up and down first, then by turns to both sides
			turn := float64((step+1)/2) * 15
			if step%2 == 1 {
				turn = -turn
			}
			sin, cos := scene.SinCos(90 + turn)
			c := dot.Add(r*cos, -r*sin)
			box := scene.Box{X0: c.X - w/2, Y0: c.Y - h/2, X1: c.X + w/2, Y1: c.Y + h/2}
			if e.space.Free(box, k.Of(0.85)) && e.space.FreeLine(dot, c, k.Of(0.55)) {
				return c, true
			}
		}
	}
	return scene.Point{}, false
}

// circleWithLeader draws a number beside its strip, if circle and leader are free.
func (e *elevation) circleWithLeader(p part, course int, c scene.Point, d float64, dot scene.Point) bool {
	k := e.look
	if !e.space.Free(scene.Box{X0: c.X - d/2, Y0: c.Y - d/2, X1: c.X + d/2, Y1: c.Y + d/2}, k.Of(0.8)) {
		return false
	}
	l := math.Hypot(c.X-dot.X, c.Y-dot.Y)
	if l <= d/2 {
		return false
	}
	end := scene.Pt(c.X+(dot.X-c.X)*d/2/l, c.Y+(dot.Y-c.Y)*d/2/l)
	if !e.space.FreeLine(dot, end, k.Of(0.5)) || !e.space.FreeOfWords(scene.Box{X0: dot.X - 0.5, Y0: dot.Y - 0.5, X1: dot.X + 0.5, Y1: dot.Y + 0.5}, 0) {
		return false
	}
	draft.Leader(e.group, k, e.space, dot, end)
	e.numberAt(p, course, c, d)
	return true
}

// numberAt draws the circle: double where the sheet is narrow, with the flitch under it where the flitch begins, an
// arrow where the sheet hangs turned.
func (e *elevation) numberAt(p part, course int, c scene.Point, d float64) {
	k := e.look
	s := p.sheets[course]
	in := e.group.Part(scene.Tag{Class: "sheet-number", Title: e.sheetWords(s), Data: []scene.Datum{datum("place", fmt.Sprint(s.Place))}})
	if s.Narrow {
		draft.Disc(in, k, scene.Numbers, c, d, k.Dimension, "", 0, false)
		d -= k.Of(1.5)
	}
	box := draft.Disc(in, k, scene.Numbers, c, d, k.Seam, numberOf(s), k.Medium, true)
	e.space.Take(box.Inset(-k.Of(0.4)))
	if s.Turned {
		at := c.Add(0, d/2+k.Of(1.5))
		if b := (scene.Box{X0: at.X - k.Of(1.5), Y0: at.Y, X1: at.X + k.Of(1.5), Y1: at.Y + k.Of(8)}); e.space.Free(b, 0) {
			in.Rect(b, scene.Style{Layer: scene.Numbers, Fill: scene.Solid(scene.White)})
			draft.Arrow(in, k, scene.Numbers, at, at.Add(0, k.Of(8)), k.Thin, false)
			e.space.Take(b)
		}
	}
	if e.changes(s.Place) && s.Flitch != "" {
		t := scene.Text{At: c.Add(0, d/2+k.Of(1.6)), String: s.Flitch, Height: k.Small, Anchor: scene.Middle, Seat: scene.Hanging, Layer: scene.Numbers, Field: 0.6}
		if e.space.Free(t.Bounds(), k.Of(1.35)) {
			in.Text(t)
			e.space.Take(t.Bounds())
		}
	}
}

// changes reports whether a flitch begins with the sheet at a place.
func (e *elevation) changes(place int) bool {
	s := e.sheetAt(place)
	before := e.sheetAt(place - 1)
	return s != nil && (before == nil || before.Flitch != s.Flitch)
}

// heightsAt are the heights between which an outline is crossed at x: in pairs from the lowest.
func heightsAt(outline []shapePoint, x L) [][2]L {
	var cuts []L
	for i, a := range outline {
		b := outline[(i+1)%len(outline)]
		if a.X > b.X {
			a, b = b, a
		}
		if a.X <= x && x < b.X {
			cuts = append(cuts, a.Z+L(float64(b.Z-a.Z)*float64(x-a.X)/float64(b.X-a.X)))
		}
	}
	for i := 1; i < len(cuts); i++ {
		for j := i; j > 0 && cuts[j] < cuts[j-1]; j-- {
			cuts[j], cuts[j-1] = cuts[j-1], cuts[j]
		}
	}
	var out [][2]L
	for i := 0; i+1 < len(cuts); i += 2 {
		out = append(out, [2]L{cuts[i], cuts[i+1]})
	}
	return out
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
			beside := e.space.Free(t.Bounds(), k.Of(1.1))
			if !beside {
				t.At, t.Anchor = c.Add(-r-k.Of(1), 0), scene.End
				beside = e.space.Free(t.Bounds(), k.Of(1.1))
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
			e.space.Take(t.Bounds())
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
			if box.Inset(k.Of(2.2)).Contains(ref.Bounds()) && e.space.Free(ref.Bounds(), k.Of(0.5)) {
				e.group.Text(ref)
				e.space.Take(ref.Bounds())
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
			if !e.space.Free(t.Bounds(), k.Of(1.25)) {
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
			if !e.space.FreeLine(c, end, k.Of(0.3)) {
				continue
			}
			draft.Leader(e.group, k, e.space, c, end)
			e.group.Text(t)
			e.space.Take(t.Bounds())
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
			if e.space.Free(t.Bounds(), k.Of(1.3)) {
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
		e.space.Take(t.Bounds())
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
			if b.Y0 > y0+k.Of(0.5) && b.Y1 < y1-k.Of(0.5) && e.space.Free(b, k.Of(0.95)) {
				e.group.Text(*t)
				e.space.Take(b)
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
		if !e.space.Free(box, k.Of(1)) || !e.space.Free(t.Bounds(), k.Of(1)) {
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
		if taken.Y1 < box.Y1-k.Of(4) && taken.X0 > box.X0-k.Of(1.4) && taken.X1 < box.X1+k.Of(1.4) && e.clearOfBoxes(inner) && e.clean(o, draw) {
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
			draw := func(g *scene.Group, space *draft.Space) { e.leg(g, space, text, *at, edge, row, sign, w) }
			if !e.clean(o, draw) {
				continue
			}
			draw(e.holes[o], e.space)
			break
		}
	}
}

// clean reports whether something drawn over an opening leaves every word in it clear.
func (e *elevation) clean(o *room.Opening, draw func(*scene.Group, *draft.Space)) bool {
	p := scene.NewPage("", "", e.page.Width, e.page.Height)
	p.Add(e.holes[o])
	draw(&p.Group, draft.NewSpace(scene.Box{}))
	return len(scene.Overlaps(p, 0.5)) == 0
}

// leg draws the distance from a seam to the edge of an opening beside it.
func (e *elevation) leg(in *scene.Group, space *draft.Space, text string, at, edge L, y, sign, w float64) {
	k := e.look
	g := in.Part(scene.Tag{Class: "dimension", Title: "leg", Data: []scene.Datum{datum("tier", "leg"), datum("from", mm(min(at, edge))), datum("to", mm(max(at, edge)))}})
	a, b := e.v.X(at), e.v.X(edge)
	end := b + sign*(k.Of(3)+w)
	g.HLine(a, end, y, scene.Pen(scene.Dimensions, k.Dimension))
	space.Stroke(scene.Pt(a, y), scene.Pt(end, y))
	draft.Tick(g, k, scene.Pt(a, y))
	draft.Tick(g, k, scene.Pt(b, y))
	x := scene.Text{At: scene.Pt(b+sign*k.Of(2.6), y-k.Of(1)), String: text, Height: k.Small, Layer: scene.Dimensions}
	if sign < 0 {
		x.Anchor = scene.End
	}
	g.Text(x)
	space.Take(x.Bounds())
}

// openingKey is what the enlargement of an opening is looked up by.
func openingKey(wall, index int) string { return fmt.Sprintf("opening %d %d", wall, index) }

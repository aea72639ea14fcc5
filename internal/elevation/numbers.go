package elevation

import (
	"fmt"
	"math"

	"flitchlay/internal/draft"
	"flitchlay/internal/face"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/scene"
)

// onPage is what of a part is shown, on paper.
func (e *View) onPage(p face.Part) (x0, x1 float64, ok bool) {
	a, b := max(p.From, e.From), min(p.To, e.To)
	return e.V.X(a), e.V.X(b), a < b
}

// Numbers letters every sheet's number in a circle, all at one height where that is free; a narrow strip has its circle
// beside it, on a leader.
func (e *View) Numbers() {
	courses := 0
	for _, p := range e.F.Parts {
		courses = max(courses, len(p.Sheets))
	}
	for course := range courses {
		row, ok := 0.0, false
		if !e.F.Run.Up {
			row, ok = e.numberRow(course)
		}
		for _, p := range e.F.Parts {
			if course < len(p.Sheets) {
				p = e.seen(p, course)
			}
			if x0, x1, shown := e.onPage(p); shown && course < len(p.Sheets) {
				e.number(p, course, x0, x1, row, ok)
			}
		}
	}
}

// seen narrows a part to what its pieces cover: the rest of the sheet may lie in a gap.
func (e *View) seen(p face.Part, course int) face.Part {
	a, b := p.To, p.From
	for _, q := range p.Sheets[course].Pieces {
		for _, pt := range q.Outline {
			if q.Wall == e.F.Wall && pt.X >= p.From && pt.X <= p.To {
				a, b = min(a, pt.X), max(b, pt.X)
			}
		}
	}
	if a < b {
		p.From, p.To = a, b
	}
	return p
}

// disc is the diameter of the circles with numbers, one for the whole wall: a little more where there are three figures. A
// number of more figures is lettered smaller.
func (e *View) disc() float64 {
	k := e.Look
	d := k.Of(9)
	for _, p := range e.F.Parts {
		for _, s := range p.Sheets {
			need := draft.DiscAround(NumberOf(s), k.Medium, true, k.Seam)
			if need > k.Of(11.5) {
				need = draft.DiscAround(NumberOf(s), k.Small, true, k.Seam)
			}
			d = math.Max(d, need)
		}
	}
	return d
}

// visible are the stretches of a sheet's column, on paper from the top down, in which a circle can stand.
func (e *View) visible(p face.Part, course int) [][2]float64 {
	return e.visibleAt(p, course, (max(p.From, e.From)+min(p.To, e.To))/2)
}

func (e *View) visibleAt(p face.Part, course int, x L) [][2]float64 {
	var list [][2]float64
	for _, h := range e.F.CoveredBy(p.Sheets[course], x) {
		list = append(list, [2]float64{e.V.Y(h[1]), e.V.Y(h[0])})
	}
	for i := 1; i < len(list); i++ {
		for j := i; j > 0 && list[j][0] < list[j-1][0]; j-- {
			list[j], list[j-1] = list[j-1], list[j]
		}
	}
	return list
}

// numberRow finds the height at which most circles are free, as near to the top as can be.
func (e *View) numberRow(course int) (y float64, ok bool) {
	top, bottom := 0.0, 0.0
	for _, p := range e.F.Parts {
		if course >= len(p.Sheets) {
			continue
		}
		for _, v := range e.visible(p, course) {
			top, bottom = math.Max(top, v[0]), math.Max(bottom, v[1])
			break
		}
	}
	d := e.disc()
	best, most := 0.0, -1
	for y := top + e.Look.Of(4.5) + d/2; y < bottom; y += e.Look.Of(1.5) {
		n := 0
		for _, p := range e.F.Parts {
			if course < len(p.Sheets) {
				p = e.seen(p, course)
			}
			x0, x1, shown := e.onPage(p)
			if course < len(p.Sheets) && shown && e.holds(p, course, y, d) && e.freeDisc((x0+x1)/2, y, math.Min(d, x1-x0-e.Look.Of(0.8))) {
				n++
			}
		}
		if n > most {
			best, most = y, n
		}
	}
	return best, most > 0
}

// holds reports whether a circle at a height lies in what is seen of the sheet.
func (e *View) holds(p face.Part, course int, y, d float64) bool {
	for _, v := range e.visible(p, course) {
		if v[0]+d/2+e.Look.Of(1) <= y && y <= v[1]-d/2-e.Look.Of(1) {
			return true
		}
	}
	return false
}

// numberAlong finds a free place for a number along a band.
func (e *View) numberAlong(p face.Part, course int, d float64) bool {
	k := e.Look
	from, to := max(p.From, e.From), min(p.To, e.To)
	for _, share := range []float64{0.5, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9, 0.05, 0.95} {
		x := from + L(share*float64(to-from))
		for _, v := range e.visibleAt(p, course, x) {
			y := (v[0] + v[1]) / 2
			if v[1]-v[0] > d+k.Of(1) && e.freeDisc(e.V.X(x), y, d) {
				e.numberAt(p, course, scene.Pt(e.V.X(x), y), d)
				return true
			}
		}
	}
	return false
}

// leastDisc is the smallest circle that a sheet's number stands in.
func (e *View) leastDisc(s *layout.Sheet) float64 {
	k := e.Look
	d := draft.DiscAround(NumberOf(s), k.Small, true, k.Seam)
	if s.Narrow {
		d += k.Of(1.5)
	}
	return math.Max(d, k.Of(6.2))
}

func (e *View) freeDisc(x, y, d float64) bool {
	return e.Space.Free(scene.Box{X0: x - d/2, Y0: y - d/2, X1: x + d/2, Y1: y + d/2}, e.Look.Of(0.35))
}

// number draws one sheet's circle.
func (e *View) number(p face.Part, course int, x0, x1, row float64, rowFree bool) {
	k := e.Look
	d := e.disc()
	x := (x0 + x1) / 2
	small := math.Min(d, x1-x0-k.Of(1))
	if e.F.Run.Up && e.numberAlong(p, course, d) {
		return
	}
	if small >= e.leastDisc(p.Sheets[course]) {
		if rowFree && e.holds(p, course, row, small) && e.freeDisc(x, row, small) {
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
	d = math.Max(k.Of(7.5), e.leastDisc(p.Sheets[course]))
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
func (e *View) callOut(dot scene.Point, w, h, least float64) (scene.Point, bool) {
	k := e.Look
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
			if e.Space.Free(box, k.Of(0.85)) && e.Space.FreeLine(dot, c, k.Of(0.7)) {
				return c, true
			}
		}
	}
	return scene.Point{}, false
}

// circleWithLeader draws a number beside its strip, if circle and leader are free.
func (e *View) circleWithLeader(p face.Part, course int, c scene.Point, d float64, dot scene.Point) bool {
	k := e.Look
	if !e.Space.Free(scene.Box{X0: c.X - d/2, Y0: c.Y - d/2, X1: c.X + d/2, Y1: c.Y + d/2}, k.Of(0.8)) {
		return false
	}
	l := math.Hypot(c.X-dot.X, c.Y-dot.Y)
	if l <= d/2 {
		return false
	}
	end := scene.Pt(c.X+(dot.X-c.X)*d/2/l, c.Y+(dot.Y-c.Y)*d/2/l)
	if !e.Space.FreeLine(dot, end, k.Of(0.7)) || !e.Space.FreeOfWords(scene.Box{X0: dot.X - 0.5, Y0: dot.Y - 0.5, X1: dot.X + 0.5, Y1: dot.Y + 0.5}, 0) {
		return false
	}
	draft.Leader(e.Group, k, e.Space, dot, end)
	e.numberAt(p, course, c, d)
	return true
}

// numberAt draws the circle: double where the sheet is narrow, with the flitch under it where the flitch begins, an
// arrow where the sheet hangs turned.
func (e *View) numberAt(p face.Part, course int, c scene.Point, d float64) {
	k := e.Look
	s := p.Sheets[course]
	in := e.Group.Part(scene.Tag{Class: "sheet-number", Title: SheetWords(e.Board.Set, s), Data: []scene.Datum{folio.Datum("place", fmt.Sprint(s.Place))}})
	if s.Narrow {
		draft.Disc(in, k, scene.Numbers, c, d, k.Dimension, "", 0, false)
		d -= k.Of(1.5)
	}
	box := draft.Disc(in, k, scene.Numbers, c, d, k.Seam, NumberOf(s), k.Medium, true)
	e.Space.Take(box.Inset(-k.Of(0.4)))
	if s.Turned {
		at := c.Add(0, d/2+k.Of(1.5))
		if b := (scene.Box{X0: at.X - k.Of(1.5), Y0: at.Y, X1: at.X + k.Of(1.5), Y1: at.Y + k.Of(8)}); e.Space.Free(b, 0) {
			in.Rect(b, scene.Style{Layer: scene.Numbers, Fill: scene.Solid(scene.White)})
			draft.Arrow(in, k, scene.Numbers, at, at.Add(0, k.Of(8)), k.Thin, false)
			e.Space.Take(b)
		}
	}
	if e.changes(s.Place) && s.Flitch != "" {
		t := scene.Text{At: c.Add(0, d/2+k.Of(1.6)), String: s.Flitch, Height: k.Small, Anchor: scene.Middle, Seat: scene.Hanging, Layer: scene.Numbers, Field: 0.6}
		if e.Space.Free(t.Bounds(), k.Of(1.35)) {
			in.Text(t)
			e.Space.Take(t.Bounds().Inset(-t.Field))
		}
	}
}

// changes reports whether a flitch begins with the sheet at a place.
func (e *View) changes(place int) bool {
	s := SheetAt(e.Board.Set, place)
	before := SheetAt(e.Board.Set, place-1)
	return s != nil && (before == nil || before.Flitch != s.Flitch)
}

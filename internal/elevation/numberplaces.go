package elevation

import (
	"math"
	"slices"

	"flitchlay/internal/face"
	"flitchlay/internal/scene"
)

// Places for a number that does not stand in the row.
const (
	columnStep = 1   // from one height in the sheet to the next, mm on the office page
	stripStep  = 3   // from one dot in a narrow strip to the next
	ringStep   = 1.5 // from one ring round a dot to the next
	ringMost   = 260 // the widest ring: more than half of the largest sheet of paper
	ringTurns  = 24  // places on a ring
)

// besideStrip are the places of a circle at a narrow strip: to its side, in widths of half the strip with circle and gap,
// and down, in diameters. Level with its dot at the left or right, then a little up or down, then level further off.
var besideStrip = [][2]float64{{-1, 0}, {1, 0}, {-1, 0.6}, {1, 0.6}, {-1, -0.6}, {1, -0.6}, {-1.6, 0}, {1.6, 0}, {-2.4, 0}, {2.4, 0}}

// dotShares are the places of a dot in a strip whose circle stands anywhere, as shares of what is seen of it, from the
// top: in the middle, then by turns up and down.
var dotShares = []float64{0.5, 0.3, 0.7, 0.15, 0.85, 0.05, 0.95}

// number draws one sheet's circle in the first place that is free, and reports whether there is one:
//
//  1. in a band anywhere along it;
//  2. in the sheet at the height of the row, for a row of numbers is read at a glance;
//  3. in the sheet from the top down;
//  4. beside the sheet on a leader, from the top down: where it is too narrow for its number;
//  5. anywhere on the page on a leader, the nearest first. No leader crosses another.
func (e *View) number(p face.Part, course int, x0, x1, row float64, rowFree bool) bool {
	if e.numberIn(p, course, x0, x1, row, rowFree) {
		return true
	}
	k, x := e.Look, (x0+x1)/2
	d := math.Max(k.Of(7.5), e.leastDisc(p.Sheets[course]))
	views := e.visible(p, course)
	for _, v := range views {
		for step := 0.0; step < v[1]-v[0]-k.Of(8); step += k.Of(stripStep) {
			dot := scene.Pt(x, v[0]+k.Of(6)+step)
			for _, off := range besideStrip {
				c := scene.Pt(x+off[0]*((x1-x0)/2+d/2+k.Of(2.2)), dot.Y+off[1]*d)
				if e.circleWithLeader(p, course, c, d, dot) {
					return true
				}
			}
		}
	}
	for _, share := range dotShares {
		for _, v := range views {
			dot := scene.Pt(x, v[0]+(v[1]-v[0])*share)
			if c, ok := e.callOut(dot, d, d, d/2+k.Of(1)); ok && e.circleWithLeader(p, course, c, d, dot) {
				return true
			}
		}
	}
	return false
}

// numberIn draws it in the sheet, if there is a free place.
func (e *View) numberIn(p face.Part, course int, x0, x1, row float64, rowFree bool) bool {
	d := e.disc()
	if e.F.Run.Up && e.numberAlong(p, course, d) {
		return true
	}
	x, small := (x0+x1)/2, math.Min(d, x1-x0-e.Look.Of(1))
	if small >= e.leastDisc(p.Sheets[course]) {
		if rowFree && e.holds(p, course, row, small) && e.freeDisc(x, row, small) {
			e.numberAt(p, course, scene.Pt(x, row), small)
			return true
		}
		if e.numberDown(p, course, x, small) {
			return true
		}
	}
	return false
}

// numberDown draws the circle in the sheet at the first free height from the top down.
func (e *View) numberDown(p face.Part, course int, x, d float64) bool {
	k := e.Look
	for _, v := range e.visible(p, course) {
		for y := v[0] + k.Of(2) + d/2; y <= v[1]-k.Of(1)-d/2; y += k.Of(columnStep) {
			if e.freeDisc(x, y, d) {
				e.numberAt(p, course, scene.Pt(x, y), d)
				return true
			}
		}
	}
	return false
}

// callOut finds the nearest free place round a dot for something of a width and height, to which a leader runs clear:
// ring by ring, on each from straight up by turns to both sides.
func (e *View) callOut(dot scene.Point, w, h, least float64) (scene.Point, bool) {
	return e.callOutOff(dot, w, h, least, scene.Box{})
}

// callOutOff finds the same off a box, of what the dot stands on and what is drawn only when a place is found.
func (e *View) callOutOff(dot scene.Point, w, h, least float64, own scene.Box) (scene.Point, bool) {
	k := e.Look
	for r := least; r < k.Of(ringMost); r += k.Of(ringStep) {
		for step := range ringTurns {
			turn := float64((step+1)/2) * 360 / ringTurns
			if step%2 == 1 {
				turn = -turn
			}
			sin, cos := scene.SinCos(90 + turn)
			c := dot.Add(r*cos, -r*sin)
			box := scene.BoxRound(c, w, h)
			if !own.Meets(box) && e.Space.Free(box, k.Of(0.85)) && e.Space.FreeLine(dot, c, k.Of(0.7)) && !e.crossesLeader(dot, c) {
				return c, true
			}
		}
	}
	return scene.Point{}, false
}

// onNeighbour reports whether a circle lies on the covering at the side of a sheet.
func (e *View) onNeighbour(p face.Part, c scene.Point, d float64) bool {
	box := scene.BoxRound(c, d, d)
	if x0, x1, _ := e.onPage(p); !e.Box().Meets(box) || x0 <= box.X0 && box.X1 <= x1 {
		return false
	}
	return !slices.ContainsFunc(e.bare(), func(b scene.Box) bool { return b.Contains(box) })
}

// circleWithLeader draws a number beside its strip, if circle and leader are free.
func (e *View) circleWithLeader(p face.Part, course int, c scene.Point, d float64, dot scene.Point) bool {
	k := e.Look
	if !e.Space.Free(scene.BoxRound(c, d, d), k.Of(0.8)) || e.strict && e.onNeighbour(p, c, d) {
		return false
	}
	l := math.Hypot(c.X-dot.X, c.Y-dot.Y)
	if l <= d/2 {
		return false
	}
	end := scene.Pt(c.X+(dot.X-c.X)*d/2/l, c.Y+(dot.Y-c.Y)*d/2/l)
	if !e.Space.FreeLine(dot, end, k.Of(0.7)) || e.crossesLeader(dot, end) || !e.Space.FreeOfWords(scene.BoxRound(dot, 1, 1), 0) {
		return false
	}
	e.leader(e.Group, dot, end)
	e.numberAt(p, course, c, d)
	return true
}

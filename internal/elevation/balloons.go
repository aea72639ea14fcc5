package elevation

import (
	"math"
	"slices"

	"flitchlay/internal/draft"
	"flitchlay/internal/face"
	"flitchlay/internal/scene"
)

// Balloons are the numbers of sheets in a row outside the wall, so that the field has grain and holes only: over the wall
// those of the uppermost course, under it those of the lowest of several. Leaders keep the order of the sheets, so that
// none crosses another.
//
//	 (7)  (8)  (9)      circles, in two rows by turns where one has no room
//	  |    |    \       straight, or bent in the zone next to the wall
//	----------------    the wall's edge
//	  .    .     .      a dot in the sheet
type balloon struct {
	part   face.Part
	course int
	tip, c scene.Point
	far    bool
}

// balloonRow is the balloons on one side of a wall.
type balloonRow struct {
	up   bool
	edge float64 // of the wall, across the row
	disc float64
	zone float64 // height of the bends
	list []balloon
	last float64 // y of the far side
}

// Of balloons, in mm on the office page.
const (
	balloonAir  = 1.3 // between two circles, and a circle and what is past it
	balloonPass = 1.0 // between a circle and the leader that passes it
	balloonZone = 2.2 // height of the zone next to the wall in which leaders are straight
	balloonDot  = 1.5 // how far into its sheet a leader goes
	turnedSign  = 2.4 // height of the triangle under the number of a sheet that hangs turned
	balloonOut  = 8   // how far past an end of the wall a row may go before it is set in two
)

// balloonShares are the places across a sheet at which its leader may end: in the middle, then by turns aside.
var balloonShares = []float64{0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9}

// balloons lays both rows for the view as it stands.
func (e *View) balloons() {
	e.over, e.under = balloonRow{up: true}, balloonRow{}
	if e.F.Run.Up || e.Inside {
		return
	}
	box := e.Box()
	e.over.edge, e.under.edge = box.Y0, box.Y1
	for _, p := range e.F.Parts {
		for course := range p.Sheets {
			q := e.seen(p, course)
			if _, _, shown := e.onPage(q); !shown {
				continue
			}
			sides := []*balloonRow{&e.over, &e.under}
			if course == 0 && len(p.Sheets) > 1 {
				sides = []*balloonRow{&e.under}
			}
			if e.low || e.Detail {
				sides = slices.DeleteFunc(sides, func(r *balloonRow) bool { return !r.up })
			}
			for _, r := range sides {
				if tip, ok := e.tip(q, course, r.up); ok {
					r.list = append(r.list, balloon{part: q, course: course, tip: tip})
					break
				}
			}
		}
	}
	for _, r := range []*balloonRow{&e.over, &e.under} {
		slices.SortStableFunc(r.list, func(a, b balloon) int { return int(math.Copysign(1, a.tip.X-b.tip.X)) })
		e.spread(r)
	}
}

// NumbersOver lays the numbers of an enlargement over it, as an elevation has them over its wall, and gives how far its dimensions begin
// over it then, 0 as where there are none, and the box that they take.
func (e *View) NumbersOver() (first float64, box scene.Box) {
	e.balloons()
	if first = e.over.high(e.Look); first > 0 {
		first += e.Look.Of(overFirst)
	}
	return first, e.over.box()
}

// tip is where the leader of a sheet ends: just inside the sheet, where it comes to the wall's edge without crossing an
// opening, as near to its middle as can be.
func (e *View) tip(p face.Part, course int, up bool) (scene.Point, bool) {
	from, to := max(p.From, e.From), min(p.To, e.To)
	for _, share := range balloonShares {
		x := from + L(share*float64(to-from))
		list := e.visibleAt(p, course, x)
		if len(list) == 0 {
			continue
		}
		in := math.Min(e.Look.Of(balloonDot), (list[0][1]-list[0][0])/2)
		at, edge := scene.Pt(e.V.X(x), list[0][0]+in), e.Box().Y0
		if !up {
			last := list[len(list)-1]
			at, edge = scene.Pt(e.V.X(x), last[1]-math.Min(e.Look.Of(balloonDot), (last[1]-last[0])/2)), e.Box().Y1
		}
		free := !slices.ContainsFunc(e.bare(), func(b scene.Box) bool {
			return draft.Crosses(at, scene.Pt(at.X, edge), b) && b.H() > 0.02
		})
		if free && !e.otherCourse(p, course, x, up) {
			return at, true
		}
	}
	return scene.Point{}, false
}

// otherCourse reports whether a leader from outside would run through another sheet of the column.
func (e *View) otherCourse(p face.Part, course int, x L, up bool) bool {
	for other := range p.Sheets {
		if (up && other > course || !up && other < course) && len(e.visibleAt(p, other, x)) > 0 {
			return true
		}
	}
	return false
}

// spread gives the balloons of a row their places: in one row at full size, then in the smallest circles that hold the numbers,
// then the same in two rows by turns; the first in which no leader goes further aside than a circle is wide, else the one in which
// they go least.
func (e *View) spread(r *balloonRow) {
	if len(r.list) == 0 {
		r.last = r.edge
		return
	}
	k := e.Look
	least := k.Of(6.2)
	for _, b := range r.list {
		least = math.Max(least, e.leastDisc(b.part.Sheets[b.course]))
	}
	best, moved, two := []float64(nil), math.Inf(1), false
	for _, rows := range []int{1, 2} {
		for _, d := range []float64{e.disc(), least} {
			at, way := r.places(d, k, rows)
			if way < moved-1e-9 {
				best, moved, two, r.disc = at, way, rows == 2, d
			}
			if moved <= r.disc {
				break
			}
		}
		if moved <= r.disc {
			break
		}
	}
	out := 1.0
	if r.up {
		out = -1
	}
	r.zone = k.Of(balloonZone)
	if moved > 0.05 {
		r.zone += math.Min(moved*0.6, k.Of(9))
	}
	turned := 0.0
	for _, b := range r.list {
		if b.part.Sheets[b.course].Turned {
			turned = k.Of(turnedSign)
		}
	}
	first := r.disc/2 + r.zone
	if r.up {
		first += turned
	}
	for i := range r.list {
		b := &r.list[i]
		b.far = two && i%2 == 1
		y := first
		if b.far {
			y += r.disc + turned + k.Of(balloonAir)/2
		}
		b.c = scene.Pt(best[i], r.edge+out*y)
		end := b.c.Y + out*r.disc/2
		if !r.up {
			end += turned
		}
		if i == 0 || (end-r.last)*out > 0 {
			r.last = end
		}
	}
}

// places are where circles of a size stand along a row or two, and the longest way that one of them is moved.
func (r *balloonRow) places(d float64, k draft.Look, rows int) (at []float64, way float64) {
	step := d + k.Of(balloonAir)
	if rows == 2 {
		step = d/2 + k.Of(balloonPass)
	}
	gaps := make([]float64, len(r.list))
	want := make([]float64, len(r.list))
	for i, b := range r.list {
		want[i], gaps[i] = b.tip.X, step
	}
	at = draft.Spread(want, gaps)
	for i := range at {
		way = math.Max(way, math.Abs(at[i]-want[i]))
	}
	return at, way
}

// box is what a row takes; the zero box where it is empty.
func (r *balloonRow) box() scene.Box {
	if len(r.list) == 0 {
		return scene.Box{}
	}
	return scene.Box{X0: r.list[0].c.X - r.disc/2, Y0: math.Min(r.edge, r.last), X1: r.list[len(r.list)-1].c.X + r.disc/2, Y1: math.Max(r.edge, r.last)}
}

// high is how much the dimensions outside a row move out for it.
func (r *balloonRow) high(k draft.Look) float64 {
	if len(r.list) == 0 {
		return 0
	}
	return math.Abs(r.last-r.edge) + k.Of(balloonAir)
}

// DrawBalloons draws both rows.
func (e *View) DrawBalloons() {
	for _, r := range []*balloonRow{&e.over, &e.under} {
		for i := range r.list {
			e.drawBalloon(r, &r.list[i])
		}
	}
}

// drawBalloon draws a number outside the wall with its leader.
func (e *View) drawBalloon(r *balloonRow, b *balloon) {
	k, s := e.Look, b.part.Sheets[b.course]
	out := 1.0
	if r.up {
		out = -1
	}
	start := b.c.Add(0, -out*r.disc/2)
	if r.up && s.Turned {
		start.Y += k.Of(turnedSign)
	}
	bend := scene.Pt(b.c.X, r.edge+out*r.zone)
	foot := scene.Pt(b.tip.X, r.edge+out*math.Min(k.Of(balloonZone)/2, r.zone/2))
	if math.Abs(b.c.X-b.tip.X) < 0.05 {
		bend, foot = start, start
	}
	points := []scene.Point{start, bend, foot, b.tip}
	in := e.Group.Part(scene.Tag{Class: "balloon"})
	in.Polyline(scene.Pen(scene.Marks, k.Dimension), points...)
	in.Circle(b.tip, k.Of(0.45), scene.Style{Layer: scene.Marks, Fill: scene.Solid(scene.Black)})
	for i := 0; i+1 < len(points); i++ {
		if points[i] != points[i+1] {
			e.Space.Stroke(points[i], points[i+1])
			e.leaders = append(e.leaders, [2]scene.Point{points[i], points[i+1]})
		}
	}
	e.numberAt(b.part, b.course, b.c, r.disc)
	if s.Turned {
		top := b.c.Y + r.disc/2
		draft.Triangle(in, scene.Marks, scene.Pt(b.c.X, top+k.Of(turnedSign)), 270, k.Of(turnedSign-0.2), k.Of(2.6), 0, false)
		e.Space.Take(scene.Box{X0: b.c.X - k.Of(1.3), Y0: top, X1: b.c.X + k.Of(1.3), Y1: top + k.Of(turnedSign)})
	}
}

// ballooned reports whether a sheet's number stands in a row outside the wall.
func (e *View) ballooned(place, course int) bool {
	for _, r := range []*balloonRow{&e.over, &e.under} {
		if slices.ContainsFunc(r.list, func(b balloon) bool { return b.part.Place == place && b.course == course }) {
			return true
		}
	}
	return false
}

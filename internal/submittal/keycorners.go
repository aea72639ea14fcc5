package submittal

import (
	"math"

	"flitchlay/internal/draft"
	"flitchlay/internal/elevation"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// Places for the circle of a corner.
var (
	cornerOuts  = []float64{-6.3, 6.3, -9, 9, -13, 13, -18, 18, -24, 24, 30, -30, 38, -38, 46, 54} // out of the room, mm on the office page
	cornerOuter = []float64{6.3, 9, 13, 18, -6.3, 24, -9, 30, -13, 38, -18, 46, -24, 54, -30}
	cornerTurns = []float64{0, 18, -18, 35, -35, 52, -52, 70, -70, 95, -95, 125, -125} // from the middle of the angle, degrees
)

// corner marks a wrapped corner: its name in a circle, in the first place that is free:
//
//  1. close to the corner inside the room, where the covering is, then as close outside;
//  2. at each distance in the middle of the angle, then turned to both sides;
//  3. further off by turns, from far off on outside first, for the middle of the room is full of marks.
func (r *roomKey) corner(i int, short bool) {
	k := r.Look
	c := r.cornerAfter(i)
	if c == nil || r.circled[i] {
		return
	}
	r.circled[i] = true
	outs := cornerOuts
	if short && c.Kind == room.Inside { // the room before a short wall is for its mark
		outs = cornerOuter
	}
	_, at := r.outline.Ends(i)
	nx, ny := r.outline.Outward(i)
	mx, my := r.outline.Outward(c.RightWall)
	dx, dy := nx+mx, ny+my
	l := math.Hypot(dx, dy)
	if l < 1e-6 {
		dx, dy, l = nx, ny, 1
	}
	dx, dy = dx/l, dy/l
	d := elevation.CornerDisc(r.Board.Set, c.Name)
	for _, out := range outs {
		for _, turn := range cornerTurns {
			sin, cos := scene.SinCos(turn)
			ux, uy := dx*cos-dy*sin, dx*sin+dy*cos
			m := at.Add(ux*k.Of(out), uy*k.Of(out))
			box := scene.BoxRound(m, d, d)
			if !r.Space.Free(box, k.Of(0.9)) || !r.Space.FreeLine(at, m, k.Of(0.65)) || !r.outline.Sees(at.Add(ux*math.Copysign(0.1, out), uy*math.Copysign(0.1, out)), m) || r.crossesLines([2]scene.Point{at, m}) {
				continue
			}
			in := r.g.Part(scene.Tag{Class: "corner", Title: "corner " + c.Name, Data: []scene.Datum{folio.Datum("name", c.Name)}})
			edge := m.Add(-ux*math.Copysign(d/2, out), -uy*math.Copysign(d/2, out))
			from := at
			if out > 0 {
				from = r.backs[i][1]
			}
			in.Line(from, edge, scene.Pen(scene.Marks, k.Dimension))
			r.lines = append(r.lines, [2]scene.Point{from, edge})
			r.Space.Stroke(at.Add(ux*k.Of(math.Copysign(1, out)), uy*k.Of(math.Copysign(1, out))), edge)
			r.Space.Take(draft.Disc(in, k, scene.Marks, m, d, k.Thin, c.Name, k.Small, true))
			if page := r.PageOf("corner " + c.Name); page != "" {
				r.Page.Link(box, page)
			}
			return
		}
	}
	r.missed.corners = append(r.missed.corners, c.Name)
}

// cornerAfter is the corner at the right of a wall that the covering goes round, nil where there is none.
func (r *roomKey) cornerAfter(wall int) *layout.Corner {
	for j := range r.Plan.Runs {
		for n := range r.Plan.Runs[j].Corners {
			if c := &r.Plan.Runs[j].Corners[n]; c.LeftWall == wall {
				return c
			}
		}
	}
	return nil
}

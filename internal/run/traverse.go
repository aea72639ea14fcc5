package run

import (
	"math"

	"flitchlay/internal/length"
	"flitchlay/internal/room"
)

// Traverse walks a closed room's walls: on along each, then a turn to the right by the angle at an inside corner, to
// the left at an outside one. What is left between the end and the start is the closing error.
//
// Units: the direction is that from the start to the end, in degrees to the right of the first wall, 0 <= d < 360.
//
// Source: the latitudes and departures of a closed traverse, as in any text on plane surveying.
func Traverse(r *room.Room) Misclosure {
	m := Misclosure{}
	for i := range r.Walls {
		m.Girth += r.Walls[i].Length
		m.AngleSum += turn(r, i)
	}
	if m.AngleSum < 0 {
		m.AngleSum += 360 // a column is gone round the other way
	} else {
		m.AngleSum -= 360
	}
	sides := Sides(r)
	x, y := sides[len(sides)-1].X1, sides[len(sides)-1].Y1
	m.Gap = length.Length(math.Round(math.Hypot(x, y)))
	if m.Gap != 0 {
		m.Direction = math.Mod(math.Atan2(y, x)*180/math.Pi+360, 360)
	}
	return m
}

// turn is by how much the way turns to the right at the end of a wall, in degrees. Where the covering ends at a corner
// "none", only a closed room says how its walls go on; in an open one they are drawn straight on, or back on the other side of an
// open end, see Sides.
func turn(r *room.Room, wall int) float64 {
	w := &r.Walls[wall]
	switch {
	case w.Corner == room.Outside:
		return -w.Angle
	case w.Corner == room.Inside, w.Corner == room.None && r.Space.Closed:
		return w.Angle
	}
	return 0
}

// Side is where a wall stands on the plan of a room, from its left end to its right one.
type Side struct{ X0, Y0, X1, Y1 float64 }

// Sides gives the plan of a room for a key: where each wall stands. Each begins where the one before ends, but after an open end
// that the way goes straight across, turning to the right before it and behind it.
//
// Units: float64 in 1/8 micrometre, x to the right along the first wall, y down the page (to the right of it).
func Sides(r *room.Room) []Side {
	heading, x, y := 0.0, 0.0, 0.0
	var list []Side
	for i := range r.Walls {
		w := &r.Walls[i]
		side := Side{X0: x, Y0: y}
		x, y = onward(x, y, heading, w.Length)
		side.X1, side.Y1 = x, y
		list = append(list, side)
		if w.Across > 0 {
			x, y = onward(x, y, heading+90, w.Across)
			heading += 180
		}
		heading += turn(r, i)
	}
	return list
}

// onward is where the way comes to that goes on from a place by a length.
func onward(x, y, heading float64, by length.Length) (float64, float64) {
	sin, cos := math.Sincos(heading * math.Pi / 180)
	return x + float64(by)*cos, y + float64(by)*sin
}

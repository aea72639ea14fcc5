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
	corners := Corners(r)
	x, y := corners[len(corners)-1][0], corners[len(corners)-1][1]
	m.Gap = length.Length(math.Round(math.Hypot(x, y)))
	if m.Gap != 0 {
		m.Direction = math.Mod(math.Atan2(y, x)*180/math.Pi+360, 360)
	}
	return m
}

// turn is by how much the way turns to the right at the end of a wall, in degrees. Where the covering ends at a corner
// "none", only a closed room says how its walls go on; in an open one they are drawn straight on.
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

// Corners gives the plan of a room for a key: the left end of each wall and, last, the end of the last one.
//
// Units: float64 in 1/8 micrometre, x to the right along the first wall, y down the page (to the right of it).
func Corners(r *room.Room) [][2]float64 {
	heading, x, y := 0.0, 0.0, 0.0
	points := [][2]float64{{0, 0}}
	for i := range r.Walls {
		w := &r.Walls[i]
		sin, cos := math.Sincos(heading * math.Pi / 180)
		x += float64(w.Length) * cos
		y += float64(w.Length) * sin
		points = append(points, [2]float64{x, y})
		heading += turn(r, i)
	}
	return points
}

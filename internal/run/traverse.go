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
	heading, x, y := 0.0, 0.0, 0.0
	m := Misclosure{}
	for i := range r.Walls {
		w := &r.Walls[i]
		m.Girth += w.Length
		sin, cos := math.Sincos(heading * math.Pi / 180)
		x += float64(w.Length) * cos
		y += float64(w.Length) * sin
		switch w.Corner {
		case room.Inside, room.None:
			heading += w.Angle
			m.AngleSum += w.Angle
		case room.Outside:
			heading -= w.Angle
			m.AngleSum -= w.Angle
		}
	}
	if m.AngleSum < 0 {
		m.AngleSum += 360 // a column is gone round the other way
	} else {
		m.AngleSum -= 360
	}
	m.Gap = length.Length(math.Round(math.Hypot(x, y)))
	if m.Gap != 0 {
		m.Direction = math.Mod(math.Atan2(y, x)*180/math.Pi+360, 360)
	}
	return m
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
		switch w.Corner {
		case room.Inside:
			heading += w.Angle
		case room.Outside:
			heading -= w.Angle
		case room.None:
			if r.Space.Closed {
				heading += w.Angle
			}
		}
	}
	return points
}

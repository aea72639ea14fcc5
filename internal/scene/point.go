package scene

import "math"

// Point is a place on a page.
//
// Units: paper millimetres from the upper left corner, x right, y down.
type Point struct{ X, Y float64 }

// Pt makes a point.
func Pt(x, y float64) Point { return Point{x, y} }

// Add returns the point moved by dx, dy.
func (p Point) Add(dx, dy float64) Point { return Point{p.X + dx, p.Y + dy} }

// Box is an upright rectangle with X0 <= X1 and Y0 <= Y1. The zero Box stands for none.
type Box struct{ X0, Y0, X1, Y1 float64 }

// BoxAt makes the box of a width and a height with its upper left corner at x, y.
func BoxAt(x, y, width, height float64) Box { return Box{x, y, x + width, y + height} }

// BoxRound is a box of a width and a height round its middle.
func BoxRound(m Point, width, height float64) Box {
	return Box{m.X - width/2, m.Y - height/2, m.X + width/2, m.Y + height/2}
}

// W is the width of the box.
func (b Box) W() float64 { return b.X1 - b.X0 }

// H is the height of the box.
func (b Box) H() float64 { return b.Y1 - b.Y0 }

// Centre is the middle of the box.
func (b Box) Centre() Point { return Point{(b.X0 + b.X1) / 2, (b.Y0 + b.Y1) / 2} }

// IsZero says whether the box stands for none.
func (b Box) IsZero() bool { return b == Box{} }

// Inset returns the box made smaller by d on every side, larger where d is negative.
func (b Box) Inset(d float64) Box { return Box{b.X0 + d, b.Y0 + d, b.X1 - d, b.Y1 - d} }

// Union returns the least box around both; the zero Box adds nothing.
func (b Box) Union(o Box) Box {
	switch {
	case b.IsZero():
		return o
	case o.IsZero():
		return b
	}
	return Box{min(b.X0, o.X0), min(b.Y0, o.Y0), max(b.X1, o.X1), max(b.Y1, o.Y1)}
}

// Contains says whether o lies in b, edges included.
func (b Box) Contains(o Box) bool {
	return b.X0 <= o.X0 && b.Y0 <= o.Y0 && o.X1 <= b.X1 && o.Y1 <= b.Y1
}

// Meets says whether the two boxes share more than an edge.
func (b Box) Meets(o Box) bool {
	return b.X0 < o.X1 && o.X0 < b.X1 && b.Y0 < o.Y1 && o.Y0 < b.Y1
}

// Corners returns the corners, clockwise from the upper left.
func (b Box) Corners() []Point {
	return []Point{{b.X0, b.Y0}, {b.X1, b.Y0}, {b.X1, b.Y1}, {b.X0, b.Y1}}
}

// Around returns the box of some points, the zero Box of none.
func Around(points ...Point) Box {
	if len(points) == 0 {
		return Box{}
	}
	b := Box{points[0].X, points[0].Y, points[0].X, points[0].Y}
	for _, p := range points[1:] {
		b = Box{min(b.X0, p.X), min(b.Y0, p.Y), max(b.X1, p.X), max(b.Y1, p.Y)}
	}
	return b
}

// turn returns p turned about o by an angle in degrees, anticlockwise as a reader sees it. Quarter turns are exact.
func turn(p, o Point, degrees float64) Point {
	sin, cos := SinCos(degrees)
	dx, dy := p.X-o.X, p.Y-o.Y
	return Point{o.X + dx*cos + dy*sin, o.Y - dx*sin + dy*cos}
}

// SinCos returns sine and cosine of an angle in degrees, exact at quarter turns.
func SinCos(degrees float64) (sin, cos float64) {
	switch math.Mod(math.Mod(degrees, 360)+360, 360) {
	case 0:
		return 0, 1
	case 90:
		return 1, 0
	case 180:
		return 0, -1
	case 270:
		return -1, 0
	}
	return math.Sincos(degrees * math.Pi / 180)
}

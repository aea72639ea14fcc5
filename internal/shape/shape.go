// Package shape holds exact polygons: outlines, holes, areas, and the covering of a wall cut into the pieces of its
// sheets.
//
// Coordinates and units: wall space, x right and z up, exact lengths. Every point of every outline is a whole number of
// 1/8 micrometre, and neighbours share theirs: pieces add up to the covering to the last unit.
//
// Order: an outline runs anticlockwise from its lowest, then leftmost point, the first point not repeated; holes run
// clockwise from theirs. Polygons and holes are sorted by their first points, lowest, then leftmost first.
//
// Not here: what the polygons stand for.
package shape

import (
	"cmp"
	"slices"

	"flitchlay/internal/length"
)

// L is short for the exact length that every field here uses.
type L = length.Length

// Point is a point of wall space.
type Point struct{ X, Z length.Length }

// Outline is a simple closed polygon.
type Outline []Point

// Polygon is an outline with its holes.
type Polygon struct {
	Outline Outline
	Holes   []Outline
}

// Twice is twice the signed area of the outline, exact: an area that is no whole number of units is half of one.
//
// Shape: positive where the outline runs anticlockwise.
//
// Errors: right as long as the area is under 370 m by 190 m, however long the outline.
func (o Outline) Twice() length.Area {
	if len(o) == 0 {
		return 0
	}
	// Parts may wrap round 64 bits; the sum is right all the same where the true sum fits.
	var sum length.Area
	first := o[0]
	for i, p := range o {
		q := o[(i+1)%len(o)]
		sum += length.Cross(p.X-first.X, p.Z-first.Z, q.X-first.X, q.Z-first.Z)
	}
	return sum
}

// Area is the signed area of the outline, half a unit rounded away from zero.
func (o Outline) Area() length.Area { return half(o.Twice()) }

// Twice is twice the area of the polygon less its holes, exact.
func (p Polygon) Twice() length.Area {
	sum := p.Outline.Twice()
	for _, hole := range p.Holes {
		sum += hole.Twice() // clockwise: negative
	}
	return sum
}

// Area is the area of the polygon less its holes, half a unit rounded away from zero.
func (p Polygon) Area() length.Area { return half(p.Twice()) }

// Twice is twice the area of all the polygons, exact.
func Twice(polygons []Polygon) length.Area {
	var sum length.Area
	for _, p := range polygons {
		sum += p.Twice()
	}
	return sum
}

func half(twice length.Area) length.Area {
	if twice < 0 {
		return -half(-twice)
	}
	return twice/2 + twice%2
}

// Bounds is the box that the polygons stand in.
//
// Errors: false where there is no polygon.
func Bounds(polygons []Polygon) (low, high Point, ok bool) {
	for _, p := range polygons {
		for _, q := range p.Outline {
			if !ok {
				low, high, ok = q, q, true
			}
			low = Point{min(low.X, q.X), min(low.Z, q.Z)}
			high = Point{max(high.X, q.X), max(high.Z, q.Z)}
		}
	}
	return low, high, ok
}

// compare orders points from the lowest, then leftmost.
func compare(p, q Point) int {
	return cmp.Or(cmp.Compare(p.Z, q.Z), cmp.Compare(p.X, q.X))
}

// fromLowest turns the outline so that it starts at its lowest, then leftmost point.
func (o Outline) fromLowest() Outline {
	start := 0
	for i := range o {
		if compare(o[i], o[start]) < 0 {
			start = i
		}
	}
	return slices.Concat(o[start:], o[:start])
}

// plain leaves out points that lie exactly on the straight way between their neighbours.
func (o Outline) plain() Outline {
	kept := make(Outline, 0, len(o))
	for i, p := range o {
		before := o[(i+len(o)-1)%len(o)]
		if len(kept) > 0 {
			before = kept[len(kept)-1]
		}
		if turn(before, p, o[(i+1)%len(o)]) != 0 {
			kept = append(kept, p)
		}
	}
	return kept
}

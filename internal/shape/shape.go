// Package shape holds exact polygons: outlines, holes, areas.
//
// Coordinates and units: x right and z up, exact lengths.
//
// Order: an outline runs anticlockwise from its lowest, then leftmost point, the first point not repeated; holes run
// clockwise.
//
// Not here: what the polygons stand for.
package shape

import "flitchlay/internal/length"

// Point is a point of wall space.
type Point struct{ X, Z length.Length }

// Outline is a simple closed polygon.
type Outline []Point

// Polygon is an outline with its holes.
type Polygon struct {
	Outline Outline
	Holes   []Outline
}

// Package detail draws bends of the covering in plan, close bends together in one, the terminations at raw ends, and the
// double cut.
//
// Coordinates and units: faces of walls in exact lengths along the run; paper in millimetres, y down.
//
// Order: bends in the order of the run; in a cell first the faces, then their figures, then words.
//
// Not here: the elevations that point to a detail (package elevation).
package detail

import "flitchlay/internal/length"

// L is short for the exact length that the wall's side of every page uses.
type L = length.Length

// Package elevation draws covered walls as the architect reads them: grain, sheets, seams, openings and boxes, dimensions
// round them, marks and numbers.
//
// Coordinates and units: walls in exact lengths, x right and z up; paper in millimetres, y down. draft.View turns one into
// the other, and nothing else does.
//
// Order: a view settles its scale, then its dimensions, then what is lettered inside it, the most needed words first.
//
// Not here: where views stand in the set and what else is on their pages (package submittal).
package elevation

import "flitchlay/internal/length"

// L is short for the exact length that the wall's side of every page uses.
type L = length.Length

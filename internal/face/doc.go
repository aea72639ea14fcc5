// Package face is one covered wall as every page reads it: the sheets on it, its seams, openings and raw ends, and at which
// heights a line shows in the covering.
//
// Coordinates and units: exact lengths of the wall, x to the right from its left end, z up from the room's level.
//
// Order: walls in the order of the room; parts and seams of a wall from left to right, courses from the lowest up.
//
// Not here: paper. How a wall is drawn stands in elevation, crew and aims.
package face

import "flitchlay/internal/length"

// L is short for the exact length that the wall's side of every page uses.
type L = length.Length

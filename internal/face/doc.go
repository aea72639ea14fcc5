// Package face is one covered wall as every page reads it: what hangs on it in hanging order and what of that is drawn, its
// seams, openings, boxes and raw ends, where it is bent and where it can be parted, at which heights it is covered, and from which
// level line its sheets are figured.
//
// Coordinates and units: exact lengths of the wall, x to the right from its left end, z up from the room's level.
//
// Order: walls in the order of the room; hangs in the order of hanging; parts, seams, pieces and boxes of a wall from left to
// right, courses from the lowest up.
//
// Not here: paper. How a wall is drawn stands in elevation, crew, pole and aims.
package face

import "flitchlay/internal/length"

// L is short for the exact length that the wall's side of every page uses.
type L = length.Length

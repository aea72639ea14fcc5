// Package page is a room as a browser shows it: the room unrolled and each wall drawn from the same scene as the printed pages, what
// there is to say of every seam, sheet and finding on pointing at it, and a single HTML file that carries all of it.
//
// Coordinates and units: a drawing is in millimetres of its own paper, as those of the printed sets; what is told beside it is in
// millimetres of the wall, x from its left end and z up.
//
// Order: walls in the order of the room; seams, sheets and findings in the order of the plan.
//
// Not here: a server, files, and what is tried (package view).
package page

import "flitchlay/internal/length"

// L is short for the exact length that the room's side of a drawing uses.
type L = length.Length

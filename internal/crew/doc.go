// Package crew makes the set that is taped to the wall and says what is on its pages of the walls, one wall or piece of one to a
// page, and in its cut list. Black and white, to be read at arm's length.
//
// Coordinates and units: walls in exact lengths, x right and z up; paper in millimetres, y down. Sizes of letters and gaps
// are for letter paper and grow with an office's text.
//
// Order: walls, and the pieces of long ones, as their first sheets are hung; sheets in the order of hanging.
//
// Not here: the pages before the walls (package crewday); what hangs on a wall and where (package face); the story pole
// (package pole); what hangs when (package days).
package crew

import "flitchlay/internal/length"

// L is short for the exact length that the wall's side of every page uses.
type L = length.Length

// Package crewday says what stands in the set that is taped to the wall before its walls: room start, heights to read, hanging
// days. It keeps what every page of that set needs to know.
//
// Coordinates and units: walls in exact lengths, x right and z up; paper in millimetres, y down. Sizes of letters and gaps
// are for letter paper and grow with an office's text.
//
// Order: walls in the order of the room, days as they come.
//
// Not here: the pages of the walls and the cut list (package crew); what hangs when (package days).
package crewday

import "flitchlay/internal/length"

// L is short for the exact length that the wall's side of every page uses.
type L = length.Length

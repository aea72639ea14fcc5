// Package crew makes the set that is taped to the wall and says what is on its pages of the walls, one wall or piece of one to a
// page, and in its cut list. Black and white, to be read at arm's length.
//
// Coordinates and units: walls in exact lengths, x right and z up; paper in millimetres, y down. Sizes of letters and gaps
// are for letter paper and grow with an office's text.
//
// Walls unrolled: walls that follow one another round a pilaster, a recess or a column stand side by side on one page, with one list
// for all, each figured from its own left corner. They are walls whose sheets run up, each narrower than two sheets, to whose
// right a sheet goes on round the corner, with an outside corner between two of them or at both ends; all together no wider than
// six sheets, with no more sheets and rows than any page has. More of them are parted at inside corners. What closes on itself
// begins where its first sheet does. All other walls keep pages of their own.
//
// Order: walls, and the pieces of long ones, as their first sheets are hung; sheets in the order of hanging.
//
// Not here: the pages before the walls (package crewday); what hangs on a wall and where (package face); the story pole
// (package pole); what hangs when (package days).
package crew

import "flitchlay/internal/length"

// L is short for the exact length that the wall's side of every page uses.
type L = length.Length

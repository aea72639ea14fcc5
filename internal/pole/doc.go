// Package pole draws story poles: seams, plumb lines and opening edges at full size on strips to cut out and set
// on a batten.
//
// Coordinates and units: full size, so a millimetre of wall is a millimetre of paper, y down.
//
// Order: poles along the walls in the order of the room, then poles up them; strips from left to right or from the floor up.
//
// Not here: bars that check the print are drawn by draft.
package pole

import "flitchlay/internal/length"

// L is short for the exact length that the wall's side of every page uses.
type L = length.Length

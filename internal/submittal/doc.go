// Package submittal says what is on each page of the set for the architect: cover, site, key of the room, elevations,
// openings, details, schedules, photographs of the sheets.
//
// Coordinates and units: walls in exact lengths, paper in millimetres from the upper left corner, y down.
//
// Order: the kinds of pages by their numbers; inside a kind, walls and openings in the order of the room.
//
// Not here: frame, title block and numbers (package folio), how a wall is drawn (package elevation).
package submittal

import "flitchlay/internal/length"

// L is short for the exact length that the wall's side of every page uses.
type L = length.Length

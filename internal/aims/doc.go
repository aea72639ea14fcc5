// Package aims draws the layouts of a room's three aims one over the other, and tells in a table what each costs.
//
// Coordinates and units: walls in exact lengths, x right and z up; paper in millimetres, y down.
//
// Order: the aims in the order that layout compares them; pieces of walls in the order of the room.
//
// Not here: which aim is the better one. That is for people to say.
package aims

import "flitchlay/internal/length"

// L is short for the exact length that the wall's side of every page uses.
type L = length.Length

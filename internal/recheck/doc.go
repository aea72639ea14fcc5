// Package recheck computes the numbers of a layout a second time, from the room and the places of its seams alone, and
// holds the printed layout to them. It has tests only.
//
// Coordinates and units: s along a run, x and z on a wall, in whole 1/8 micrometres; polygons in millimetres as float64.
//
// Order: as in the printed layout.
//
// Not here: anything of the packages that computed the layout first. It takes from the others the reading of a room and
// the command that prints; the cards of the sheets, which no command prints, it asks for and cuts out.
package recheck

// Package roomtest is for tests only: the samples, rooms that try what a page can bear, rooms made at random, all of them as
// laid out, and words and facts read off a page.
//
// Coordinates and units: those of the packages it reads from.
//
// Order: rooms are found by name, those made at random come by their seed.
//
// Not here: anything that the program needs.
package roomtest

// Package roomtest is for tests only: rooms that try what a page can bear, the samples, and words and facts read off a page.
//
// Coordinates and units: those of the packages it reads from.
//
// Order: none; rooms are found by name.
//
// Not here: anything that the program needs.
package roomtest

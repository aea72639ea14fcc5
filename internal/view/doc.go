// Package view shows a room in a browser on the same machine while its file is typed, and lets its layout be tried by hand.
//
// What it does: it serves a page on the loopback address under a secret, follows the files that a room is read from, lays out what is
// tried without writing it, and writes what is kept by the smallest edit, if the file is still the one that it was tried on.
//
// Coordinates and units: what comes from the browser is in millimetres of the wall.
//
// Order: what is read later stands in place of what was read before; of the steps of a drag only the last counts.
//
// Not here: how rooms are read and drawn (packages cli and page) and what an edit looks like (package edit).
package view

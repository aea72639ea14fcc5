// Package edit changes a room file by as little as a change takes: a value in its place, a line more, a table more or less. Comments,
// order, blanks and ends of lines stay as they are.
//
// What it does: a text and changes in, a text out. What it gives can be read again, and says what was asked.
//
// Coordinates and units: none; lengths come as they are to be written.
//
// Order: changes one after the other, each in the text that the one before it left.
//
// Not here: what may be written (package room), and files.
package edit

// Package folio is a set of pages while it is made: the list of its pages and their numbers, the frame, title block and marks
// that stand on every page, columns and lists that flow from page to page, the key plan, the outline.
//
// Coordinates and units: paper, in millimetres from the upper left corner, y down.
//
// Order: pages in the order of their list, each made once the numbers of all are known.
//
// Not here: what a page shows (packages submittal, crew, pole, aims); how parts are drafted (draft).
package folio

import "flitchlay/internal/length"

// L is short for the exact length that the wall's side of every page uses.
type L = length.Length

// Package card makes a card for every sheet that is still to hang, to be laid on the sheet while it is cut: what of the raw
// sheet is cut off, ripped, folded and cut out, all of it measured from one corner. A Card is the numbers, with nothing
// drawn; Pages draws them, two or four to a page.
//
// Coordinates and units: exact lengths of the sheet as it hangs, seen from its face, X to the right and Z up. Of an upright
// sheet X begins at its left edge, raw or ripped, and Z at the level line; of one whose grain is level X begins at the wall's
// left end, and Z at its lower edge. Paper in millimetres, y down.
//
// Order: sheets in the order of hanging; folds and cut-outs as the cut list has them.
//
// Not here: where sheets hang and what they are cut to (package layout), the words of a cut (package count), what of a wall a
// sheet covers (package face).
package card

import "flitchlay/internal/length"

// L is short for the exact length that every field here uses.
type L = length.Length

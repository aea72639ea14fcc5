// Package run unrolls walls into runs and cuts runs into spans.
//
// Coordinates and units: s along the run from its left end at floor level (up the wall where grain is horizontal),
// exact lengths.
//
// Order: the run that holds the first wall comes first; objects along s.
//
// Not here: rules, scores, seams (package layout and seam).
package run

import (
	"flitchlay/internal/length"
	"flitchlay/internal/room"
)

// L is short for the exact length that every field here uses.
type L = length.Length

// Run is a row of walls unrolled flat, or one wall with s going up.
type Run struct {
	Name    string // 1, 2, ...
	Up      bool
	Closed  bool
	Length  L
	Walls   []Stretch
	Corners []Corner
	Spans   []Span
	Room    *room.Room
}

// Stretch is a wall's place in its run.
type Stretch struct {
	Wall        int // index in Room.Walls
	Left, Right L   // s of its ends
	Shift       L   // s of x = 0; x = s - Shift
}

// Corner is a bend between two walls of the run.
type Corner struct {
	Name                string
	Kind                room.Bend
	Angle               float64
	Radius              L
	At                  L // s, in the middle of an eased corner; in a closed run 0 <= At < Length
	From, To            L // the strip it sweeps
	Lean                L // right lean of the wall at its left
	Skew                L
	LeftWall, RightWall int
	Wrapped             bool // false: cut, or at a raw end, or at a gap's edge
	Curve               bool // so round that seams may stand on it
}

// Half is half the arc of an eased corner, nought for a sharp one.
func (c *Corner) Half() L { return c.To - c.At - max(0, c.Lean) }

// Bends reports whether veneer has to go on past the corner: it is wrapped, and no curve.
func (c *Corner) Bends() bool { return c.Wrapped && !c.Curve }

// Span is a stretch in which the grain goes on.
type Span struct {
	L, R              L // raw ends; R may be past Length in a closed run
	Closed            bool
	LeftEnd, RightEnd End
}

// End is what a raw end meets.
type End struct {
	Kind  string // inside corner, outside edge, casing, frame, trim, free, opening, bare
	Name  string // of the corner, the opening or the reason
	Wall  int
	Trim  L // edge trim by its own kind: half, rounded down, against a frame
	Frame bool
	Lean  L // how the raw edge leans, 0 at a gap
}

// Misclosure is how far the walls of a closed room miss closing.
type Misclosure struct {
	Girth     L
	Gap       L       // length of the closing error
	Direction float64 // degrees from the first wall, anticlockwise positive
	AngleSum  float64 // of the turns, less 360
}

package layout

import (
	"flitchlay/internal/finding"
	"flitchlay/internal/length"
	"flitchlay/internal/room"
	"flitchlay/internal/run"
	"flitchlay/internal/seam"
	"flitchlay/internal/shape"
)

// L is short for the exact length that every field here uses.
type L = length.Length

// Plan is the finished layout of a room.
type Plan struct {
	Room     *room.Room
	Aim      seam.Aim
	Style    length.Style
	Runs     []Run
	Findings []finding.Finding
	Totals   Totals
	Closing  *run.Misclosure // of a closed room: how far the measured walls miss closing; else nil
	Left     []Stock         // by flitch: what was not laid
	Moves    []Move          // while sheets hang: what stands elsewhere because of them
	Nearly   []Saving        // small changes of the room that would save something; LayAim leaves them out
	Arrivals []Arrival       // of the walls that were read on arrival, and of those that follow from them; LayAim leaves them out
	Chosen   int             // which of the room's layouts this is, from 2; nought: the best
}

// Run is one run, laid out.
type Run struct {
	Name     string
	Up       bool // s goes up the wall: horizontal grain
	Length   L
	Closed   bool
	Walls    []Stretch
	Corners  []Corner  // wrapped corners
	Openings []Opening // all openings, in order of s
	Spans    []Span
	Seams    []Seam
	Sheets   []Sheet
	Joints   []L      // heights of the end matches, where walls take courses; x of the joints in all bands where Up
	Line     *run.Run // what it was made from
	courses  courses
}

// Stretch is a wall's place in a run, as package run gives it.
type Stretch = run.Stretch

// Corner is a wrapped corner.
type Corner struct {
	Name                                string // C1, C2, ... after the wall at its left
	Kind                                room.Bend
	Angle                               float64
	Radius                              L
	At                                  L // s at floor level, middle of an eased corner
	From, To                            L // the strip it sweeps
	Lean                                L
	LeftWall, RightWall                 int // indices in Room.Walls
	LeftReturn, RightReturn             L   // least over the height
	LeftReturnTop, RightReturnTop       L   // at the ceiling
	LeftReturnBottom, RightReturnBottom L   // at the floor
	Skew                                L   // right lean of the left wall less left lean of the right wall
	Sheet                               int // place of the sheet that wraps it
}

// Opening is an opening in a run.
type Opening struct {
	Name        string
	Kind        room.Kind
	Wall, Index int // in Room.Walls, and in its Openings
	Left, Right L   // s
	Sill, Head  L   // heights
	Gap         bool
	Through     bool
	Wrap        bool // wrapped jambs
}

// Span is one span with its score.
type Span struct {
	Left, Right L // raw ends, or bounding seams
	Closed      bool
	Score       seam.Score
	FirstSheet  int  // place
	LastSheet   int  // place
	LeftSeam    bool // bounded by a hung seam
	RightSeam   bool
	LeftTrim    L // by its own kind of end; 0 at a seam
	RightTrim   L
	LeftEnd     string // what the raw end meets: inside corner, outside edge, casing, frame, trim, free, opening W1, bare strip, ...
	RightEnd    string
	Ends        [2]*run.End // the same, as the run has them; nil where the span has none
}

// Seam is one finished joint.
type Seam struct {
	Number                int // of the left sheet's place; a person is told its name, see SeamName
	At                    L
	PlumbLine             L // s + half an overlap; less half of what the sheet at its left is short
	Wall                  int
	X                     L   // from the wall's left end
	LeftSheet, RightSheet int // places
	Closing, Hung         bool
	Seen                  L // exact height that shows
	Span                  int
	NearestOpening        *Near // nil where the run has none
	NearestCorner         *Near
	FlitchChange          bool
}

// Side names an edge of a sheet of the run: where the grain runs level the left one lies at the foot.
func (r *Run) Side(side string) string {
	if !r.Up {
		return side
	}
	return map[string]string{"left": "lower", "right": "upper"}[side]
}

// Near is an object and its distance.
type Near struct {
	Name     string
	Distance L
}

// Sheet is one sheet as laid (one for each course of a column).
type Sheet struct {
	Place       int
	Flitch      string // "" and Number 0: no sheet left, or no flitch given
	Number      int
	Course      int  // 1 at the bottom
	Lowest      bool // of the sheets of its place: over a landing that is above the joint one of an upper course
	Turned      bool
	Left, Right L // s
	Width       L // net
	Span        int
	End         bool   // an end sheet of its span
	Narrow      bool   // as the score counts it
	Lost        L      // grain lost at its right seam, where inner and under W
	Ripped      string // "", "left", "right"; where the grain runs level the lower edge and the upper, which Run.Side says
	RipTo       L      // width it is ripped to, before hanging; 0 where it is not
	Gross       L      // as delivered: measured, or the gross width of all
	Short       L      // what the narrowest sheet of its place lacks of what it is to cover with its overlaps and trims
	StartLine   L      // left edge as hung
	RightLine   L      // right edge as hung: the plumb line of its right seam, or the raw edge with trim
	CutLength   L
	Above       L // above the level line, trim included
	Below       L
	Bends       []L         // s of the bends it wraps: corners and wrapped jambs
	Corners     []string    // names of the corners it wraps
	Area        length.Area // net: pieces less holes
	Pieces      []Piece
	InGap       bool // wholly in a through gap: no pieces, goes back to stock
	Hung        bool
}

// Piece is the part of a sheet on one wall.
type Piece struct {
	Wall int
	shape.Polygon
	Area length.Area
}

// Stock is what is left of a flitch.
type Stock struct {
	Flitch                                string
	Delivered, Damaged, Spare, Laid, Left []int
}

// Totals are the counts of the whole room.
type Totals struct {
	Sheets    int
	Spares    int
	Short     int // sheets that no flitch gives
	NetArea   length.Area
	GrossArea length.Area
	Paste     *Amount // nil where the label's coverage is not given
	Primer    *Amount
}

// Amount is a volume of paste or primer.
type Amount struct {
	Amount float64
	Unit   string
}

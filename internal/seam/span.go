package seam

// Put is what a pin asks for at its place.
type Put int

// The wishes a pin can hold.
const (
	PutSeam   Put = iota // a seam within half a snap
	PutMiddle            // the middle of a sheet less than one snap under the net width
	PutEither            // one of the two
	PutClose             // the closing seam, of a closed span only
)

// Aim is the order in which score items count.
type Aim int

// The three aims.
const (
	Steady Aim = iota
	Fewest
	Even
)

// Strip is a closed stretch From <= s <= To of the run.
type Strip struct{ From, To int64 }

// Opening is a hole in the covering, as the seams see it: its two edges.
type Opening struct {
	A, B   int64 // left and right edge
	Gap    bool  // leaves no covering over or under it: a seam strictly inside owes its edges nothing
	Wrap   bool  // its jambs are bends
	Reveal int64 // depth of the jamb, with Wrap
}

// Pin is a wish, in file order.
type Pin struct {
	At  int64
	Put Put
}

// Rules are the distances and widths of the room file.
type Rules struct {
	LeastWidth, PreferWidth    int64
	CornerReturn, PreferReturn int64
	Leg, PreferLeg             int64
	OpeningClear, PreferClear  int64
	BoxClear                   int64
	ShortSeam                  int64 // a jump seen no longer than this makes no narrow sheet
}

// Span is all that the solver is told.
//
// L and R are the raw ends of an open span, or a hung seam where LeftSeam says so and the closing seam beside the
// first hung sheet where RightSeam says so. In a closed span L = 0 and R = Period and both are without meaning.
// Objects (corners, openings, plates, keep-clears) are those of the whole run, also outside the span.
type Span struct {
	Closed              bool
	L, R                int64
	LeftSeam, RightSeam bool
	Period              int64 // length of the run
	RunClosed           bool  // distances go the shorter way round Period; R may be past it
	Snap                int64
	Gross, Overlap      int64
	TrimLeft, TrimRight int64 // already halved against a frame
	Rules
	Foot     int64 // seen heights are scored in these, rounded up
	OneWall  bool  // both raw ends on one wall: the difference of the end widths counts
	Corners  []Strip
	Openings []Opening
	Boxes    []Strip
	Keep     []Strip
	Pins     []Pin
	// Seen gives the seen height of a seam at s, 0 where it is wholly hidden. s lies on the run as the span lays it:
	// between L and R in an open span, 0 <= s < Period in a closed one. It must be a pure function.
	Seen func(s int64) int64
	// Main stretches From <= s < To are those of main walls; taken round in a closed run.
	Main []Strip
	Apart
}

// Score is what a layout is judged by, all thirteen items, whatever the aim.
//
// Units: Bends, Edges, Sliver, Should, Difference are lengths; Closing, NarrowJump, Jump, Seen counts of Foot; Unevenness
// lengths squared.
type Score struct {
	Bends, Edges                   int64
	Closing                        int64
	NarrowMain, Narrow, Sheets     int64
	NarrowJump, Sliver             int64
	Jump, Should, Seen, Difference int64
	Unevenness                     Square
}

// Square is an exact sum of squared lengths, 128 bits: Hi * 2^64 + Lo.
type Square struct{ Hi, Lo uint64 }

// Layout is the answer.
type Layout struct {
	Seams   []int64 // ascending; hung and closing seams that bound the span are not among them
	Closing int     // index of the closing seam in Seams, -1 where there is none
	Dropped []int   // indices of pins that could not be kept, ascending
	Score   Score
}

package room

import "flitchlay/internal/length"

// Kind is what stands in a wall in place of covering: the kind of an opening, or of a box that is set in the wall. It is
// the room file's word. Whatever else the program asks of a kind stands in its row of kinds; nothing knows one by its word.
type Kind string

// Traits is all that the program asks of a kind.
type Traits struct {
	Word   Kind
	Letter string // begins the names of those without a name of their own: W1, W2, ...
	// Abbreviated: the cover explains its letter; where it does not, an elevation writes the word of an opening out.
	Abbreviated bool
	Box         bool // set in the wall behind a plate; else an opening

	// of openings
	Cased   bool // an elevation draws a second line, for the casing
	Glazed  bool // the plan of the room draws two lines across
	Doorway bool // two courses may meet at its head
	Burns   bool // it asks for a clearance to what burns, by the local code or the appliance's listing

	// of boxes
	Called       string                         // in mistakes, where the word alone says too little
	Plate        func(gang int) (width, high L) // nil: no usual size
	Electrical   bool                           // comes out flush with the covering, on an extender
	NeverCovered bool                           // an alarm device: nobody covers it or takes it off
	Sign         Sign
}

// Sign is what an elevation draws in a plate.
type Sign int

// The signs.
const (
	NoSign  Sign = iota
	Sockets      // two circles, one over the other
	Rockers      // an upright for each gang
	Dial         // a circle
)

// kinds has the one row of each kind: openings, then boxes, in the order in which messages and the cover name them.
var kinds = []Traits{
	{Word: "window", Letter: "W", Abbreviated: true, Cased: true, Glazed: true},
	{Word: "door", Letter: "D", Abbreviated: true, Cased: true, Doorway: true},
	{Word: "cased opening", Letter: "O"},
	{Word: "fireplace", Letter: "F", Burns: true},
	{Word: "built-in", Letter: "B"},
	{Word: "outlet", Letter: "E", Abbreviated: true, Box: true, Plate: ganged, Electrical: true, Sign: Sockets},
	{Word: "switch", Letter: "S", Abbreviated: true, Box: true, Plate: ganged, Electrical: true, Sign: Rockers},
	{Word: "thermostat", Letter: "TH", Abbreviated: true, Box: true, Plate: square(5 * length.Inch), Electrical: true, Sign: Dial},
	{Word: "light", Letter: "L", Abbreviated: true, Box: true, Plate: square(5 * length.Inch), Electrical: true, Sign: Dial},
	{Word: "alarm", Letter: "AL", Abbreviated: true, Box: true, Plate: square(6 * length.Inch), NeverCovered: true, Sign: Dial},
	{Word: "bracket", Letter: "BR", Box: true},
	{Word: "panel", Letter: "P", Box: true},
	{Word: "other", Letter: "X", Box: true, Called: "box", Plate: ganged},
}

// Kinds of what has none in the file.
const (
	withSill    Kind = "window"
	withoutSill Kind = "door"
	anyBox      Kind = "other"
)

// Kinds are all kinds of opening and of box, with what is asked of each.
func Kinds() []Traits { return kinds }

// Traits is the row of a kind. One that no row is for has no traits: it reads as an opening of which nothing is known.
func (k Kind) Traits() Traits {
	for _, t := range kinds {
		if t.Word == k {
			return t
		}
	}
	return Traits{Word: k}
}

// Named is the kind and a name, as sentences have them: window W1.
func (k Kind) Named(name string) string { return string(k) + " " + name }

// kindWords are the words of all boxes, or of all openings.
func kindWords(box bool) []string {
	var words []string
	for _, t := range kinds {
		if t.Box == box {
			words = append(words, string(t.Word))
		}
	}
	return words
}

// firstNames are the first names by kind of all openings, for the documentation of keys.
func firstNames() string {
	text := ""
	for _, t := range kinds {
		if !t.Box {
			text += t.Letter + "1, "
		}
	}
	return text + "... by kind"
}

// plateWidths are those by gang, in 1/16 in: 2 3/4, 4 1/2, 6 3/8, 8 3/16 wide, 4 1/2 high.
//
// Source: common practice; ANSI/NEMA WD 6 gives 2.75 in and 4.490 in high for one gang and steps of 1 13/16 in.
var plateWidths = []int64{44, 72, 102, 131}

const plateHeight = 72

const sixteenth = length.Inch / 16

// ganged is the plate of devices that stand side by side.
func ganged(gang int) (width, high L) {
	return L(plateWidths[min(gang, len(plateWidths))-1]) * sixteenth, plateHeight * sixteenth
}

// square is one size of plate whatever stands behind it.
func square(side L) func(int) (width, high L) {
	return func(int) (width, high L) { return side, side }
}

package room

import (
	"cmp"

	"flitchlay/internal/finding"
	"flitchlay/internal/length"
	"flitchlay/internal/source"
)

// L is short for the exact length that every field here uses.
type L = length.Length

// Room is a whole room file with every default filled in.
type Room struct {
	Project  Project
	Veneer   Veneer
	Flitches []Flitch // empty: sheets are numbered from 1
	Rules    Rules
	Space    Space
	Walls    []Wall
	Hung     []Hung
	Readings []Reading // of walls on arrival, in file order
	Site     Site
	Day      Day
	Paste    Coverage
	Primer   Coverage

	PasteName, PrimerName string // as stated, or empty
	Page                  Page
	Asks                  []finding.Finding // what the file leaves open and has not answered, in its order

	src source.Value // the file, for mistakes that later stages find
}

// Place is a position in the room file, for messages and for the order of pins; the zero Place is nowhere.
type Place struct{ Line, Column int }

// Compare returns -1, 0 or +1 as p stands before q in the file, at it or after it.
func (p Place) Compare(q Place) int {
	return cmp.Or(cmp.Compare(p.Line, q.Line), cmp.Compare(p.Column, q.Column))
}

// Project is who, what and when.
type Project struct {
	Title, Number, Room, Place, For, By, Section, Tag string
	Drawn, Measured                                   string // YYYY-MM-DD or empty
	Issued                                            string // the day of the first issue, where the file says it
	Submittal, Resubmittal, Document, Contractor      string
	ContractDrawings, Sample                          string
	DrawnBy, CheckedBy, ApprovedBy                    string
	Units                                             length.Unit
	Revisions                                         []Revision
}

// Revision is one row of the revision block, and the place on a wall where the change is, if it has one.
type Revision struct {
	Mark, Date, Note string
	Wall             int // index; -1: the change has no place
	At               L   // from the wall's left end
}

// Veneer is the material.
type Veneer struct {
	Species, Cut, Match string // Cut: plain, quarter, rift or empty; Match: slip, book, random or empty
	LeafWidth           L      // 0: not drawn
	Horizontal          bool   // grain = "horizontal"
	GrossWidth, Overlap L
	Length, Thickness   L      // Thickness 0: not given
	Face                string // pattern of photograph file names, or empty
	FaceGrade, Backing  string
	Finish, Sheen       string
	FireReport          string
}

// Flitch is a set of numbered sheets.
type Flitch struct {
	Number  string
	Sheets  []int        // delivered, ascending
	From    string       // "first", or "last": the end from which its sheets are laid
	Damaged []int        // ascending
	Spare   []int        // kept back, ascending
	Widths  []SheetWidth // measured when they came, ascending by number
	Refused []int        // too narrow to hang by Widths, ascending; they are among Damaged
	UseUp   bool         // the next flitch begins only where this one is used up
	At      Place
}

// SheetWidth is how wide a sheet came.
type SheetWidth struct {
	Number int
	Width  L
}

// GrossOf is how wide a sheet is before it is cut: as measured, else the gross width of all.
func (r *Room) GrossOf(flitch string, number int) L {
	for i := range r.Flitches {
		if f := &r.Flitches[i]; f.Number == flitch {
			for _, w := range f.Widths {
				if w.Number == number {
					return min(w.Width, r.Veneer.GrossWidth)
				}
			}
		}
	}
	return r.Veneer.GrossWidth
}

// HungGross is how wide a sheet came that hangs.
func (r *Room) HungGross(h *Hung) L {
	if h.Flitch < 0 {
		return r.Veneer.GrossWidth
	}
	return r.GrossOf(r.Flitches[h.Flitch].Number, h.Sheet)
}

// LeastGross is the width under which a sheet is refused: it covers what all others do, and of the overlaps at its two sides is
// left what LeastOverlap asks of one.
func (r *Room) LeastGross() L { return r.NetWidth() + r.Rules.LeastOverlap }

// Behind is what the covering runs behind.
type Behind struct{ Base, Crown bool }

// Space is the [room] table.
type Space struct {
	Name      string   // on the plan, or empty
	North     *float64 // degrees to the right of facing the first wall, 0 <= d < 360; nil: not given
	Closed    bool
	CloseAt   *CloseAt // nil: auto
	LevelLine L
	Base      L
	Crown     L
	Behind    Behind
	Casing    *L  // of windows and doors that say nothing else; nil: not said
	Choose    int // which of the room's layouts is laid out, from 1
	ChooseAt  Place
}

// CloseAt is a wished closing place.
type CloseAt struct {
	Wall   int // index, or -1
	At     L
	Corner int // index of the wall whose right corner is cut, or -1
	Where  Place
}

// Bend is the kind of a corner at a wall's right end.
type Bend int

// Kinds of corner.
const (
	Inside Bend = iota
	Outside
	Straight // no bend, no rule
	None     // the run stops here
)

// String gives the key word of the room file.
func (b Bend) String() string { return [...]string{"inside", "outside", "straight", "none"}[b] }

// Point is a point of a wall's profile.
type Point struct{ X, Z L }

// Wall is one wall as seen from inside the room.
type Wall struct {
	Name, Ref           string
	Length              L
	Ceiling             []Point // x not decreasing from 0 to Length; two points at one x are a step
	Floor               []Point
	Corner              Bend
	Angle               float64 // degrees of turn, 0 < Angle < 180; 0 where the corner is no bend
	Radius              L
	Across              L      // at a corner None, to the next wall, which faces this one; 0: it goes straight on
	Wrap                bool   // false: the corner at the right end is cut
	LeanLeft, LeanRight L      // of its upright ends, as seen on this wall, to the right is positive
	LeanLeftGiven       bool   // else LeanLeft is the right lean of the wall before it across a corner
	LeftEnd, RightEnd   string // inside corner, outside edge, casing, frame, trim, free or empty
	Main                bool
	HiddenBelow         L // 0: nothing is hidden
	Cover               bool
	Base, Crown         L
	Behind              Behind
	Openings            []Opening
	Boxes               []Box
	Pins                []Pin
	KeepClear           []KeepClear
	Bare                []Bare
	At                  Place
}

// Opening is a hole in the covering.
type Opening struct {
	Name       string
	Kind       Kind
	FromLeft   L
	Width      L
	Sill       L    // not given: the lowest floor in its width
	SillGiven  bool // false: the opening reaches down to the floor
	Height     L    // from Sill, or from the floor at its left edge, to Head
	Head       L    // height of its head above the room's level
	Casing     *L   // width of the casing, inside its edges; nil: not said
	Reveal     L
	WrapReveal bool
	Clearance  L      // to what burns, as who decides states it
	Cleared    bool   // it is stated
	Grain      string // "", "skip", "through": as given
	At         Place
}

// Right is the x of the opening's right edge.
func (o Opening) Right() L { return o.FromLeft + o.Width }

// Box is something set in the wall.
type Box struct {
	Name                  string // E1, S1, ... by kind
	Kind                  Kind
	X, Z                  L // centre
	Gang                  int
	PlateWidth, PlateHigh L
	HoleWidth, HoleHigh   L
	At                    Place
}

// CutOut is the rectangle that is cut out of the covering for the box, in the wall: its hole, or all of its plate where
// the plate is never taken off.
func (b *Box) CutOut() (x0, z0, x1, z1 L) {
	wide, high := b.HoleWidth, b.HoleHigh
	if b.Kind.Traits().NeverCovered {
		wide, high = b.PlateWidth, b.PlateHigh
	}
	x0, z0 = b.X-wide.HalfDown(), b.Z-high.HalfDown()
	return x0, z0, x0 + wide, z0 + high
}

// Pin is the designer's wish.
type Pin struct {
	X     L
	Put   string // seam, middle, either
	Where Place
}

// KeepClear is a stretch without seams.
type KeepClear struct {
	From, To L
	Why      string
	Where    Place
}

// Bare is a strip without covering from floor to ceiling.
type Bare struct {
	From, To L
	Why      string
	Where    Place
}

// Hung is one sheet already on the wall.
type Hung struct {
	Wall   int  // index
	Flitch int  // index, -1 where the room names none
	Sheet  int  // number in the flitch
	Left   *L   // finished seam at the left of the first hung sheet, where it was read or follows from its edge
	Raw    bool // it was the raw left edge that was read
	Seam   L    // finished, at the bottom
	Top    L    // the same at the top; equal to Seam where one reading was given
	Edge   bool // it was the raw right edge that was read
	Where  Place
}

// Site is the climate of the site and of the shop.
type Site struct {
	Given, ShopGiven bool
	Temperature      float64 // degrees F
	Humidity         float64 // % RH
	Shop             Climate
	Wall             *float64 // degrees F, of the wall itself; nil: not given
	Year             *Band    // nil: not given
	Board            *Board   // nil: not given
}

// Band is a range of relative humidity in per cent.
type Band struct{ Low, High float64 }

// Board is what a moisture meter says of the wall.
type Board struct {
	Meter          string   // its scale
	Reading, Limit *float64 // nil: not given
}

// Climate is a temperature in degrees F and a relative humidity in per cent.
type Climate struct{ Temperature, Humidity float64 }

// Coverage is what a pail's label says.
type Coverage struct {
	Given  bool
	Amount float64 // area a unit of volume covers, in the units below
	Area   string  // "sq ft" or "m2"
	Volume string  // "gal" or "L"
}

// Page is the choice of page templates, and of the language of the crew's pages: "" for English.
type Page struct{ Submittal, Install, Logo, Language string }

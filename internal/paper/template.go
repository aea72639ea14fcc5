// Package paper holds page templates: the paper, its frame, the strip with the title block, widths of lines and heights
// of text. An office copies a template of ours and changes what it does otherwise.
//
// Coordinates and units: page space, millimetres from the upper left corner, x right, y down.
//
// Order: blocks and rows stay in file order.
//
// Not here: drawing (packages draft and folio), what stands in the fields of a title block (package folio).
package paper

import "flitchlay/internal/words"

// Box is an upright rectangle.
type Box struct{ X, Y, W, H float64 }

// Right is the x of the right edge.
func (b Box) Right() float64 { return b.X + b.W }

// Foot is the y of the lower edge.
func (b Box) Foot() float64 { return b.Y + b.H }

// holds reports whether o lies inside b, with a hair's play for figures written to a tenth.
func (b Box) holds(o Box) bool {
	const play = 0.051
	return o.X >= b.X-play && o.Y >= b.Y-play && o.Right() <= b.Right()+play && o.Foot() <= b.Foot()+play
}

// meets reports whether the two share more than a hair.
func (b Box) meets(o Box) bool {
	const play = 0.051
	return b.X < o.Right()-play && o.X < b.Right()-play && b.Y < o.Foot()-play && o.Y < b.Foot()-play
}

// Template is a page template.
type Template struct {
	Name          string
	Width, Height float64
	Frame         Box
	FrameLine     float64
	Centring      bool // marks at the middles of the paper's edges
	Strip         Box
	StripLine     float64
	Divider       float64 // between blocks
	Blocks        []Block
	Field         Box // what the strip leaves of the frame
	Text          Text
	Lines         Lines
	Wood          Wood
	Pole          Pole
	Discipline    string // letter of page numbers
	NumberStyle   string // form of page numbers; "": that of the standard
	Room          string // that stands in page numbers; "": the set is of one room
	Elevation     Elevation
	Standing      []string     // notes of every page with seams
	Cards         Cards        // of the crew's set
	Words         *words.Table // of the crew's pages; nil: English
}

// Text is the heights of capitals.
type Text struct{ Small, Medium, Large, Huge float64 }

// Lines is the widths of lines.
type Lines struct{ Wide, Outline, Seam, Thin, Dimension, Extension, Grain float64 }

// Wood is how the wood is shown on elevations.
type Wood struct {
	Grain  bool // its lines are drawn
	Colour bool // in the colour of wood; else in grey
}

// Pole is how story poles are drawn.
type Pole struct {
	Roll     float64 // width of the roll; 0: strips on the page's paper
	Longest  float64 // piece of a roll
	Other    bool    // also the poles without lines
	Openings bool    // also edges of openings, and what is set in the walls
}

// Elevation is how large a view of a wall may be.
type Elevation struct {
	Width, Height float64 // of the wall, at the most
	Middle, Top   float64 // x of its middle; its top stands no higher than this y
	Inch, Metric  []int64 // scales, the largest drawing first
}

// Cards is which cards of the sheets stand at the end of the crew's set: seen from the face, or mirrored for whoever cuts from
// the back.
type Cards string

// The choices of cards.
const (
	CardsFace Cards = "face"
	CardsBack Cards = "back"
	CardsBoth Cards = "both"
	CardsNone Cards = "none"
)

// Kind is what a block of the strip is for.
type Kind string

// The kinds of block.
const (
	Key       Kind = "key"       // plan of the room
	Stamp     Kind = "stamp"     // stays empty
	Revisions Kind = "revisions" // table of revisions
	Title     Kind = "title"     // title block
	Words     Kind = "words"     // rows of text of the office's own
)

// Block is one field of the strip.
type Block struct {
	Kind    Kind
	Box     Box
	Heading string
	Row     float64   // of revisions: height of a row
	Columns []float64 // of revisions: widths of mark, what, date
	Rows    []Row     // of title and words
}

// Row is one row of a title block.
type Row struct {
	Height float64
	Logo   float64 // width kept for a logo at the right, 0 for none
	Number float64 // width of the box with the page number at the right, 0 for none
	Lines  []Line
}

// Line is one line of text with {fields}.
type Line struct {
	Text   string
	Height float64
	Bold   bool
}

// Unit is how much larger everything on this paper is than on the page of ansi-b: 1 where small text is 2.5 high.
func (t *Template) Unit() float64 { return t.Text.Small / Least }

// Least is the smallest height of text on a drawing.
//
// Source: least nominal height 2.5 mm of EN ISO lettering practice, ISO 3098.
const Least = 2.5

// Landscape is the size of the paper laid on its long side.
func (t *Template) Landscape() (width, height float64) {
	return max(t.Width, t.Height), min(t.Width, t.Height)
}

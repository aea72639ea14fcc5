package scene

// Colour is an RGB colour; the zero value is black.
type Colour struct{ R, G, B uint8 }

// Black and White are the two colours of a drawing.
var (
	Black = Colour{}
	White = Colour{255, 255, 255}
)

// Grey returns a grey: 0 is black, 1 white.
func Grey(share float64) Colour {
	v := uint8(min(max(share, 0), 1)*255 + 0.5)
	return Colour{v, v, v}
}

// Light is how bright the colour looks, 0 black to 1 white.
func (c Colour) Light() float64 {
	// Weights of ITU-R BT.601 luma.
	return (0.299*float64(c.R) + 0.587*float64(c.G) + 0.114*float64(c.B)) / 255
}

// Paint is what fills a shape; the zero value fills nothing.
type Paint struct {
	Colour
	On bool
}

// Solid returns a paint of one colour.
func Solid(c Colour) Paint { return Paint{c, true} }

// Layer is the name of a layer that a reader of the file can switch off. Lines keep their meaning by their layer too: see Overlaps.
type Layer string

// The layers of the drawings, in the order in which files list them. A backend lists any others behind these, by name.
const (
	Frame      Layer = "frame"      // frame, title block, table rules
	Margin     Layer = "margin"     // what may stand outside the frame
	Walls      Layer = "walls"      // outlines, floor, trims, ghosts of walls next door
	Covering   Layer = "covering"   // outline of what is covered
	Grain      Layer = "grain"      // grain and leaf joints
	Hatch      Layer = "hatch"      // material patterns
	Openings   Layer = "openings"   // windows, doors and what else is open
	Boxes      Layer = "boxes"      // what is set in the wall
	Seams      Layer = "seams"      // seams and match lines
	Plumb      Layer = "plumb"      // plumb lines, level line, datum
	Dimensions Layer = "dimensions" // dimension lines, their ends and figures
	Numbers    Layer = "numbers"    // sheet numbers
	Marks      Layer = "marks"      // corner, elevation, detail and termination marks, view titles
	Notes      Layer = "notes"      // words
)

// Layers lists the named layers in their order.
var Layers = []Layer{Frame, Margin, Walls, Covering, Grain, Hatch, Openings, Boxes, Seams, Plumb, Dimensions, Numbers, Marks, Notes}

// Dash is a pattern of strokes and gaps in millimetres, ended by the first 0; the zero value is a full line. An odd count repeats.
type Dash [6]float64

// Lengths returns the strokes and gaps.
func (d Dash) Lengths() []float64 {
	for i, v := range d {
		if v == 0 {
			return d[:i]
		}
	}
	return d[:]
}

// Dashed, Chain, Phantom and Dotted are the line types for a line of a width.
//
// Source: multiples of the line width after ISO 128-2: dash 12 and gap 3; long dash 24, gap 3, dot 0.5, gap 3. Phantom and the spacing
// of Dotted from memory.
func Dashed(width float64) Dash { return Dash{12 * width, 3 * width} }

// Chain is a centre line: long dash, dot.
func Chain(width float64) Dash { return Dash{24 * width, 3 * width, width / 2, 3 * width} }

// Phantom is a long dash and two dots.
func Phantom(width float64) Dash {
	return Dash{24 * width, 3 * width, width / 2, 3 * width, width / 2, 3 * width}
}

// Dotted is dots.
func Dotted(width float64) Dash { return Dash{width / 2, 3 * width} }

// Cap is how a line ends.
type Cap uint8

// The line ends.
const (
	Butt Cap = iota
	Round
	Square
)

// Join is how a line turns.
type Join uint8

// The line joins.
const (
	Miter Join = iota
	RoundJoin
	Bevel
)

// Style is how lines and shapes are drawn. Every item carries a whole one: there is no current style.
type Style struct {
	Layer  Layer
	Width  float64 // of the line in mm; 0 draws no line
	Colour Colour  // of the line
	Dash   Dash
	Cap    Cap
	Join   Join
	Fill   Paint // of a closed shape
}

// Pen returns the style of a full line.
func Pen(layer Layer, width float64) Style { return Style{Layer: layer, Width: width} }

// In returns the style in another colour.
func (s Style) In(c Colour) Style { s.Colour = c; return s }

// As returns the style with a dash pattern.
func (s Style) As(d Dash) Style { s.Dash = d; return s }

// Filled returns the style with a fill.
func (s Style) Filled(c Colour) Style { s.Fill = Solid(c); return s }

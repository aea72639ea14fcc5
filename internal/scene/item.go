package scene

// Item is one thing drawn on a page. The set is closed: *Group, *Line, *Poly, *Rect, *Circle, *Path, *Text, *Image, *Link.
type Item interface {
	// Bounds returns the box around the ink.
	Bounds() Box
	item()
}

// Tag says what an item stands for. Files that can hold it show it.
type Tag struct {
	Class string // one of our words: "view", "seam", "plumb-line", "sheet", "opening", "box", "corner", "dimension"
	ID    string // unique on the page, or empty
	Title string // what a reader is told on pointing at it
	Desc  string
	Data  []Datum // in the order written
}

// Datum is one fact about an item: key "at" is written as data-at in SVG. Keys are lower case letters, digits and hyphens.
type Datum struct{ Key, Value string }

// View says that a group is drawn to a scale, so that a reader can measure in it.
type View struct {
	Box    Box
	Scale  float64 // 48 for 1:48
	Metric bool    // measured in metres, else in feet and inches
	Name   string
	Ratio  string // as written under the view, such as 1/4" = 1'-0"
}

// Group holds items drawn one after another.
type Group struct {
	Tag
	View  *View
	Clip  []Point // when set, nothing shows outside this polygon
	Items []Item
}

// Line is a straight line.
type Line struct {
	A, B Point
	Style
}

// Poly is a row of straight lines, closed to a polygon or not.
type Poly struct {
	Points []Point
	Closed bool
	Style
}

// Rect is an upright rectangle.
type Rect struct {
	Box
	Style
}

// Circle is a full circle.
type Circle struct {
	Centre Point
	Radius float64
	Style
}

// Step is one piece of a path.
type Step struct {
	Kind   StepKind
	P      Point // where it ends
	C1, C2 Point // control points of a curve
}

// StepKind is what a step does.
type StepKind uint8

// The steps.
const (
	MoveTo StepKind = iota
	LineTo
	CurveTo // cubic
	Close
)

// Path is any outline. Many separate strokes of one style, such as grain, are best one path.
type Path struct {
	Steps []Step
	Style
}

// Image is a picture.
type Image struct {
	Box   Box
	Kind  string // "png" or "jpeg"
	Data  []byte
	Alt   string // says what it shows
	Layer Layer
}

// Link makes part of the page lead to another page, or to a URI.
type Link struct {
	Box  Box
	Page string // name of a page
	URI  string // used where Page is empty
}

func (*Group) item()  {}
func (*Line) item()   {}
func (*Poly) item()   {}
func (*Rect) item()   {}
func (*Circle) item() {}
func (*Path) item()   {}
func (*Text) item()   {}
func (*Image) item()  {}
func (*Link) item()   {}

// LayerOf returns the layer of an item; groups and links have none.
func LayerOf(it Item) Layer {
	switch it := it.(type) {
	case *Line:
		return it.Layer
	case *Poly:
		return it.Layer
	case *Rect:
		return it.Layer
	case *Circle:
		return it.Layer
	case *Path:
		return it.Layer
	case *Text:
		return it.Layer
	case *Image:
		return it.Layer
	}
	return ""
}

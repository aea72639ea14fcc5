package pole

import (
	"sort"

	"flitchlay/internal/crew"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/paper"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// Draw draws the story poles: strips at full size to cut out and join, one pole along every wall and one up it.
//
// Errors: a page that no backend could draw, which is a fault of the program.
func Draw(p *layout.Plan, t *paper.Template) (*scene.Document, error) {
	c := crew.NewSet(p, t, "Story pole")
	var list []crew.Page
	for _, w := range c.Walls {
		for _, pole := range []Pole{PoleAlong(c, w), PoleUp(c, w)} {
			list = append(list, crew.Page{Key: pole.Title, Draw: func(n int) []*scene.Page { return PolePages(c, pole, n) }})
		}
	}
	return c.Document(list)
}

// Pole is what is marked along one wall, or up it.
type Pole struct {
	Wall     string
	Title    string
	From, To L
	Zero     string // what stands at 0
	Marks    []PoleMark
}

// PoleMark is one place on a pole.
type PoleMark struct {
	At    L
	Kind  PoleKind
	Label string
	Tag   scene.Tag
}

// PoleKind is how a place is drawn.
type PoleKind int

const (
	SeamMark PoleKind = iota
	LineMark
	EdgeMark // of an opening: a double line
	BoxMark  // a cross
	EndMark  // of the wall, the covering, the level line
)

// PoleAlong is the pole along a wall, from its left end.
func PoleAlong(c *crew.Set, w *crew.Wall) Pole {
	p := Pole{Wall: w.W.Name, Title: w.W.Name + ", along the wall", To: w.W.Length, Zero: "0 DATUM, left end"}
	add := func(at L, kind PoleKind, label string, tag scene.Tag) {
		p.Marks = append(p.Marks, PoleMark{at, kind, label + "  " + c.Say(at), tag})
	}
	add(w.W.Length, EndMark, "end", scene.Tag{Class: "corner"})
	for _, h := range w.Hangs {
		if w.Run.Up {
			break
		}
		n := c.Numbers(h)
		if h.Opens && !h.Sheet().Hung {
			add(h.Start, LineMark, "start "+n, scene.Tag{Class: "plumb-line", Data: []scene.Datum{folio.Datum("at", folio.Mm(w.Run.Line.Round(h.Start-h.Turn)))}})
		}
		if h.Seam == nil {
			continue
		}
		add(h.X, SeamMark, "seam "+n, scene.Tag{Class: "seam", Data: []scene.Datum{folio.Datum("at", folio.Mm(h.Seam.At))}})
		if h.Lined && !h.Sheet().Hung {
			word := "line "
			if h.Check() {
				word = "check "
			}
			add(h.Line, LineMark, word+n, scene.Tag{Class: "plumb-line", Data: []scene.Datum{folio.Datum("at", folio.Mm(h.Seam.PlumbLine))}})
		}
	}
	for i := range w.W.Openings {
		o := &w.W.Openings[i]
		tag := scene.Tag{Class: "opening", Data: []scene.Datum{folio.Datum("name", o.Name)}}
		add(o.FromLeft, EdgeMark, o.Name+" left", tag)
		add(o.Right(), EdgeMark, o.Name+" right", tag)
	}
	for _, b := range w.BoxesOf() {
		add(b.X, BoxMark, "box "+b.Letter, scene.Tag{Class: "box", Data: []scene.Datum{folio.Datum("name", b.Name), folio.Datum("kind", b.Kind)}})
	}
	for _, x := range w.Joints() {
		add(x, SeamMark, "joint", scene.Tag{Class: "seam"})
	}
	return p.Sorted()
}

// PoleUp is the pole up a wall: everything that has a height, from the level of the room's floor, each figure from the
// level line.
func PoleUp(c *crew.Set, w *crew.Wall) Pole {
	p := Pole{Wall: w.W.Name, Title: w.W.Name + ", up the wall", Zero: "0 room's floor level"}
	low, high := w.W.Floor[0].Z, w.W.Ceiling[0].Z
	for _, q := range w.W.Floor {
		low = min(low, q.Z)
	}
	for _, q := range w.W.Ceiling {
		high = max(high, q.Z)
	}
	p.From, p.To = min(low, 0), high
	add := func(at L, kind PoleKind, label string, tag scene.Tag) {
		text := label + "  " + c.Updown(at)
		if at == c.Level {
			text = label
		}
		p.Marks = append(p.Marks, PoleMark{at, kind, text, tag})
	}
	add(c.Level, EndMark, "LEVEL LINE "+c.Say(c.Level), scene.Tag{Class: "level"})
	ends := func(left, right string, profile []room.Point) {
		a, b := profile[0].Z, profile[len(profile)-1].Z
		if a == b {
			add(a, EndMark, left, scene.Tag{Class: "covering"})
			return
		}
		add(a, EndMark, left+" left", scene.Tag{Class: "covering"})
		add(b, EndMark, left+" right", scene.Tag{Class: "covering"})
	}
	ends("covering foot", "", w.W.CoverFloor())
	ends("covering top", "", w.W.CoverCeiling())
	for i := range w.W.Openings {
		o := &w.W.Openings[i]
		tag := scene.Tag{Class: "opening", Data: []scene.Datum{folio.Datum("name", o.Name)}}
		if o.SillGiven {
			add(o.Sill, EdgeMark, o.Name+" sill", tag)
		}
		add(o.Head, EdgeMark, o.Name+" head", tag)
	}
	for _, b := range w.BoxesOf() {
		add(b.Z, BoxMark, "box "+b.Letter, scene.Tag{Class: "box", Data: []scene.Datum{folio.Datum("name", b.Name), folio.Datum("kind", b.Kind)}})
	}
	if w.Run.Up {
		for _, h := range w.Hangs {
			if h.Seam != nil {
				add(h.X, SeamMark, "seam "+c.Numbers(h), scene.Tag{Class: "seam", Data: []scene.Datum{folio.Datum("at", folio.Mm(h.Seam.At))}})
				add(h.Line, LineMark, "line "+c.Numbers(h), scene.Tag{Class: "plumb-line", Data: []scene.Datum{folio.Datum("at", folio.Mm(h.Seam.PlumbLine))}})
			}
		}
	}
	for _, z := range w.Joints() {
		add(z, SeamMark, "joint", scene.Tag{Class: "seam"})
	}
	return p.Sorted()
}

// Sorted orders the marks, and lets the pole reach as far as they do. Marks at one place are labelled together.
func (p Pole) Sorted() Pole {
	sort.SliceStable(p.Marks, func(i, j int) bool { return p.Marks[i].At < p.Marks[j].At })
	for _, m := range p.Marks {
		p.From, p.To = min(p.From, m.At), max(p.To, m.At)
	}
	return p
}

// strip is 250 mm of a pole; three stand on a page.
const (
	StripLong  = 250 * length.Millimetre
	StripHigh  = 55
	StripPitch = 57
	StripCount = 3
)

// PolePages draws the strips of one pole.
func PolePages(c *crew.Set, p Pole, n int) []*scene.Page {
	count := int(length.CeilDiv(max(p.To-p.From, 1), StripLong))
	var out []*scene.Page
	var b *PoleBoard
	for i := range count {
		if i%StripCount == 0 {
			b = OpenPole(c, p, n+len(out))
			out = append(out, b.Page)
		}
		b.Strip(p, i, count, i%StripCount)
	}
	return out
}

// PoleBoard is a page of strips being drawn.
type PoleBoard struct {
	*crew.Set
	Page *scene.Page
	Top  float64
	Left float64
}

// OpenPole makes a page of strips ready: what it is, page and issue, and the two bars to check the printer by.
func OpenPole(c *crew.Set, p Pole, n int) *PoleBoard {
	left := func(width float64) float64 { return (width - StripLong.MM()) / 2 }
	page, g := c.Strip(n, c.Total, left, "pole-"+crew.Pad(n), "Story pole: "+p.Title, "STORY POLE: "+p.Title)
	b := &PoleBoard{Set: c, Page: page, Left: left(page.Width), Top: page.Frame.Y0 + 11}
	b.Bars(g)
	return b
}

func (b *PoleBoard) Text(g *scene.Group, at scene.Point, s string, size float64, bold bool, anchor scene.Anchor) {
	g.Text(scene.Text{At: at, String: s, Height: size, Bold: bold, Anchor: anchor, Layer: scene.Notes})
}

// Bars draws 100 mm and 4 in, which have to measure that on the print.
func (b *PoleBoard) Bars(g *scene.Group) {
	y := b.Top + StripCount*StripPitch + 3.4
	bar := func(x, long float64, word string) float64 {
		in := g.Part(scene.Tag{Class: "check-bar", Data: []scene.Datum{folio.Datum("length", scene.Num(long))}})
		pen := scene.Pen(scene.Marks, crew.CrewFine)
		in.HLine(x, x+long, y, pen)
		in.VLine(x, y-1.8, y+1.8, pen)
		in.VLine(x+long, y-1.8, y+1.8, pen)
		in.Text(scene.Text{At: scene.Pt(x+long/2, y+1), String: word, Height: crew.CrewSmall, Anchor: scene.Middle, Seat: scene.Hanging, Layer: scene.Marks})
		return x + long
	}
	x := bar(b.Left, 100, "100 mm")
	x = bar(x+6, (4 * length.Inch).MM(), "4 in")
	b.Text(g, scene.Pt(x+4, y+1), "print at 100 %", crew.CrewSmall, true, scene.Start)
	b.Text(g, scene.Pt(x+4, y+5), "check both bars", crew.CrewSmall, true, scene.Start)
}

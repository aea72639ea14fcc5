package pages

import (
	"fmt"
	"sort"
	"strconv"
	"strings"

	"flitchlay/internal/draft"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/paper"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// Pole draws the story poles: strips at full size to cut out and join, one pole along every wall and one up it.
//
// Errors: a page that no backend could draw, which is a fault of the program.
func Pole(p *layout.Plan, t *paper.Template) (*scene.Document, error) {
	c := newCrew(p, t, "Story pole")
	var list []crewPage
	for _, w := range c.walls {
		for _, pole := range []pole{c.poleAlong(w), c.poleUp(w)} {
			list = append(list, crewPage{pole.title, func(n int) []*scene.Page { return c.polePages(pole, n) }})
		}
	}
	return c.document(list)
}

// pole is what is marked along one wall, or up it.
type pole struct {
	wall     string
	title    string
	from, to L
	zero     string // what stands at 0
	marks    []poleMark
}

// poleMark is one place on a pole.
type poleMark struct {
	at    L
	kind  poleKind
	label string
	tag   scene.Tag
}

// poleKind is how a place is drawn.
type poleKind int

const (
	seamMark poleKind = iota
	lineMark
	edgeMark // of an opening: a double line
	boxMark  // a cross
	endMark  // of the wall, the covering, the level line
)

// poleAlong is the pole along a wall, from its left end.
func (c *crewSet) poleAlong(w *crewWall) pole {
	p := pole{wall: w.w.Name, title: w.w.Name + ", along the wall", to: w.w.Length, zero: "0 DATUM, left end"}
	add := func(at L, kind poleKind, label string, tag scene.Tag) {
		p.marks = append(p.marks, poleMark{at, kind, label + "  " + c.say(at), tag})
	}
	add(w.w.Length, endMark, "end", scene.Tag{Class: "corner"})
	for _, h := range w.hangs {
		if w.run.Up {
			break
		}
		n := c.numbers(h)
		if h.opens && !h.sheet().Hung {
			add(h.start, lineMark, "start "+n, scene.Tag{Class: "plumb-line", Data: []scene.Datum{datum("at", mm(w.run.Line.Round(h.start-h.turn)))}})
		}
		if h.seam == nil {
			continue
		}
		add(h.x, seamMark, "seam "+n, scene.Tag{Class: "seam", Data: []scene.Datum{datum("at", mm(h.seam.At))}})
		if h.lined && !h.sheet().Hung {
			word := "line "
			if h.check() {
				word = "check "
			}
			add(h.line, lineMark, word+n, scene.Tag{Class: "plumb-line", Data: []scene.Datum{datum("at", mm(h.seam.PlumbLine))}})
		}
	}
	for i := range w.w.Openings {
		o := &w.w.Openings[i]
		tag := scene.Tag{Class: "opening", Data: []scene.Datum{datum("name", o.Name)}}
		add(o.FromLeft, edgeMark, o.Name+" left", tag)
		add(o.Right(), edgeMark, o.Name+" right", tag)
	}
	for _, b := range w.boxesOf() {
		add(b.X, boxMark, "box "+b.letter, scene.Tag{Class: "box", Data: []scene.Datum{datum("name", b.Name), datum("kind", b.Kind)}})
	}
	for _, x := range w.joints() {
		add(x, seamMark, "joint", scene.Tag{Class: "seam"})
	}
	return p.sorted()
}

// poleUp is the pole up a wall: everything that has a height, from the level of the room's floor, each figure from the
// level line.
func (c *crewSet) poleUp(w *crewWall) pole {
	p := pole{wall: w.w.Name, title: w.w.Name + ", up the wall", zero: "0 room's floor level"}
	low, high := w.w.Floor[0].Z, w.w.Ceiling[0].Z
	for _, q := range w.w.Floor {
		low = min(low, q.Z)
	}
	for _, q := range w.w.Ceiling {
		high = max(high, q.Z)
	}
	p.from, p.to = min(low, 0), high
	add := func(at L, kind poleKind, label string, tag scene.Tag) {
		text := label + "  " + c.updown(at)
		if at == c.level {
			text = label
		}
		p.marks = append(p.marks, poleMark{at, kind, text, tag})
	}
	add(c.level, endMark, "LEVEL LINE "+c.say(c.level), scene.Tag{Class: "level"})
	ends := func(left, right string, profile []room.Point) {
		a, b := profile[0].Z, profile[len(profile)-1].Z
		if a == b {
			add(a, endMark, left, scene.Tag{Class: "covering"})
			return
		}
		add(a, endMark, left+" left", scene.Tag{Class: "covering"})
		add(b, endMark, left+" right", scene.Tag{Class: "covering"})
	}
	ends("covering foot", "", w.w.CoverFloor())
	ends("covering top", "", w.w.CoverCeiling())
	for i := range w.w.Openings {
		o := &w.w.Openings[i]
		tag := scene.Tag{Class: "opening", Data: []scene.Datum{datum("name", o.Name)}}
		if o.SillGiven {
			add(o.Sill, edgeMark, o.Name+" sill", tag)
		}
		add(o.Head, edgeMark, o.Name+" head", tag)
	}
	for _, b := range w.boxesOf() {
		add(b.Z, boxMark, "box "+b.letter, scene.Tag{Class: "box", Data: []scene.Datum{datum("name", b.Name), datum("kind", b.Kind)}})
	}
	if w.run.Up {
		for _, h := range w.hangs {
			if h.seam != nil {
				add(h.x, seamMark, "seam "+c.numbers(h), scene.Tag{Class: "seam", Data: []scene.Datum{datum("at", mm(h.seam.At))}})
				add(h.line, lineMark, "line "+c.numbers(h), scene.Tag{Class: "plumb-line", Data: []scene.Datum{datum("at", mm(h.seam.PlumbLine))}})
			}
		}
	}
	for _, z := range w.joints() {
		add(z, seamMark, "joint", scene.Tag{Class: "seam"})
	}
	return p.sorted()
}

// sorted orders the marks, and lets the pole reach as far as they do. Marks at one place are labelled together.
func (p pole) sorted() pole {
	sort.SliceStable(p.marks, func(i, j int) bool { return p.marks[i].at < p.marks[j].at })
	for _, m := range p.marks {
		p.from, p.to = min(p.from, m.at), max(p.to, m.at)
	}
	return p
}

// strip is 250 mm of a pole; three stand on a page.
const (
	stripLong  = 250 * length.Millimetre
	stripHigh  = 55
	stripPitch = 57
	stripCount = 3
)

// polePages draws the strips of one pole.
func (c *crewSet) polePages(p pole, n int) []*scene.Page {
	count := int(length.CeilDiv(max(p.to-p.from, 1), stripLong))
	var out []*scene.Page
	var b *poleBoard
	for i := range count {
		if i%stripCount == 0 {
			b = c.openPole(p, n+len(out))
			out = append(out, b.page)
		}
		b.strip(p, i, count, i%stripCount)
	}
	return out
}

// poleBoard is a page of strips being drawn.
type poleBoard struct {
	*crewSet
	page *scene.Page
	top  float64
	left float64
}

// openPole makes a page of strips ready: what it is, page and issue, and the two bars to check the printer by.
func (c *crewSet) openPole(p pole, n int) *poleBoard {
	w, h := c.paper.Landscape()
	page := scene.NewPage("pole-"+pad(n), "Story pole: "+p.title, w, h)
	page.Frame = scene.Box{X0: crewBorder, Y0: crewBorder, X1: w - crewBorder, Y1: h - crewBorder}
	b := &poleBoard{crewSet: c, page: page, left: (w - stripLong.MM()) / 2, top: page.Frame.Y0 + 11}
	g := page.Part(scene.Tag{Class: "frame"})
	of := "page " + strconv.Itoa(n)
	if c.total > 0 {
		of = fmt.Sprintf("page %d of %d", n, c.total)
	}
	words := []string{of}
	if d := c.issued(); d != "" {
		words = append(words, d)
	}
	text := strings.Join(append(words, "issue "+c.issue()), "   ")
	right := page.Frame.X1
	b.text(g, scene.Pt(right, page.Frame.Y0+6.4), text, crewText, false, scene.End)
	right -= scene.Width(text, crewText, false) + 5
	if c.unfit() {
		const not = "NOT FOR HANGING"
		w := scene.Width(not, crewText, true) + 8
		box := scene.BoxAt(right-w, page.Frame.Y0+1, w, 8.4)
		g.Rect(box, scene.Pen(scene.Frame, 2).Filled(scene.White))
		g.Text(scene.Text{At: box.Centre(), String: not, Height: crewText, Bold: true, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Notes})
		right = box.X0 - 5
	}
	title := scene.Shorten("STORY POLE: "+p.title, crewText*1.2, true, right-b.left)
	b.text(g, scene.Pt(b.left, page.Frame.Y0+6.6), title, draft.Squeeze(title, crewText*1.2, crewText, true, right-b.left), true, scene.Start)
	b.bars(g)
	return b
}

func (b *poleBoard) text(g *scene.Group, at scene.Point, s string, size float64, bold bool, anchor scene.Anchor) {
	g.Text(scene.Text{At: at, String: s, Height: size, Bold: bold, Anchor: anchor, Layer: scene.Notes})
}

// bars draws 100 mm and 4 in, which have to measure that on the print.
func (b *poleBoard) bars(g *scene.Group) {
	y := b.top + stripCount*stripPitch + 3.4
	bar := func(x, long float64, word string) float64 {
		in := g.Part(scene.Tag{Class: "check-bar", Data: []scene.Datum{datum("length", scene.Num(long))}})
		pen := scene.Pen(scene.Marks, crewFine)
		in.HLine(x, x+long, y, pen)
		in.VLine(x, y-1.8, y+1.8, pen)
		in.VLine(x+long, y-1.8, y+1.8, pen)
		in.Text(scene.Text{At: scene.Pt(x+long/2, y+1), String: word, Height: crewSmall, Anchor: scene.Middle, Seat: scene.Hanging, Layer: scene.Marks})
		return x + long
	}
	x := bar(b.left, 100, "100 mm")
	x = bar(x+6, (4 * length.Inch).MM(), "4 in")
	b.text(g, scene.Pt(x+4, y+1), "print at 100 %", crewSmall, true, scene.Start)
	b.text(g, scene.Pt(x+4, y+5), "check both bars", crewSmall, true, scene.Start)
}

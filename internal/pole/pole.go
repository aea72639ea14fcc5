package pole

import (
	"sort"

	"flitchlay/internal/face"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/paper"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// Draw draws the story poles at full size: of every wall the one that carries its lines, along it, or up it where the grain is
// level; others where the template asks for them. They stand on strips to cut out and join, or on a roll in one piece.
//
// Errors: a page that no backend could draw, which is a fault of the program.
func Draw(p *layout.Plan, t *paper.Template) (*scene.Document, error) {
	c := folio.NewTapedSet(p, t, "Story pole")
	var poles []pole
	for _, w := range face.All(p) {
		along, up := poleAlong(c, w), poleUp(c, w)
		switch {
		case t.Pole.Other:
			poles = append(poles, along, up)
		case w.Run.Up:
			poles = append(poles, up)
		default:
			poles = append(poles, along)
		}
	}
	var list []folio.TapedPage
	if t.Pole.Roll > 0 {
		list = append(list, folio.TapedPage{Key: "roll", Draw: func(n int) []*scene.Page { return rollPages(c, poles, n) }})
	} else {
		for _, pole := range poles {
			list = append(list, folio.TapedPage{Key: pole.title, Draw: func(n int) []*scene.Page { return stripPages(c, pole, n) }})
		}
	}
	return c.Document(list)
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

// poleAlong is the pole along the level line of a wall, from where its left corner crosses it.
func poleAlong(c *folio.TapedSet, w *face.Face) pole {
	p := pole{wall: w.W.Name, title: c.Words.Say("pole.along", w.W.Name), to: w.At(w.End()), zero: c.Words.Say("pole.datum")}
	add := func(at L, kind poleKind, label string, tag scene.Tag) {
		p.marks = append(p.marks, poleMark{w.At(at), kind, label + "  " + c.Along(w, at), tag})
	}
	add(w.End(), endMark, c.Words.Say("pole.end"), scene.Tag{Class: "corner"})
	for _, h := range w.Hangs {
		if w.Run.Up {
			break
		}
		n := c.SheetNumbers(h)
		if h.Opens && !h.Hung() {
			add(h.Start, lineMark, c.Words.Say("pole.start", n), scene.Tag{Class: "plumb-line", Data: []scene.Datum{folio.Datum("at", folio.Mm(w.Began(h)))}})
		}
		if h.Seam == nil {
			continue
		}
		add(h.X, seamMark, c.Words.Say("pole.seam", c.Seam(w.Run, h.Seam)), scene.Tag{Class: "seam", Data: []scene.Datum{folio.Datum("at", folio.Mm(h.Seam.At))}})
		if h.Lined && !h.Hung() {
			word := c.Words.Say("pole.line", n)
			if h.Check() {
				word = c.Words.Say("pole.check", n)
			}
			add(h.Line, lineMark, word, scene.Tag{Class: "plumb-line", Data: []scene.Datum{folio.Datum("at", folio.Mm(h.Seam.PlumbLine))}})
		}
	}
	for i := range w.W.Openings {
		if !c.Paper.Pole.Openings {
			break
		}
		o := &w.W.Openings[i]
		tag := scene.Tag{Class: "opening", Data: []scene.Datum{folio.Datum("name", o.Name)}}
		add(o.FromLeft, edgeMark, c.Words.Say("pole.left", o.Name), tag)
		add(o.Right(), edgeMark, c.Words.Say("pole.right", o.Name), tag)
	}
	for _, b := range boxes(c, w) {
		add(b.X, boxMark, c.Words.Say("pole.box", b.Letter), scene.Tag{Class: "box", Data: []scene.Datum{folio.Datum("name", b.Name), folio.Datum("kind", string(b.Kind))}})
	}
	for _, x := range w.Joints() {
		add(x, seamMark, c.Words.Say("pole.joint"), scene.Tag{Class: "seam"})
	}
	return p.sorted()
}

// poleUp is the pole up a wall: everything that has a height, from the level of the room's floor, each figure from the
// level line.
func poleUp(c *folio.TapedSet, w *face.Face) pole {
	p := pole{wall: w.W.Name, title: c.Words.Say("pole.up", w.W.Name), zero: c.Words.Say("pole.floor")}
	low, high := w.W.Floor[0].Z, w.W.Ceiling[0].Z
	for _, q := range w.W.Floor {
		low = min(low, q.Z)
	}
	for _, q := range w.W.Ceiling {
		high = max(high, q.Z)
	}
	p.from, p.to = min(low, 0), high
	add := func(at L, kind poleKind, label string, tag scene.Tag) {
		text := label + "  " + c.Updown(at)
		if at == c.Level {
			text = label
		}
		p.marks = append(p.marks, poleMark{at, kind, text, tag})
	}
	add(c.Level, endMark, c.Words.Say("pole.level", c.Say(c.Level)), scene.Tag{Class: "level"})
	ends := func(what string, profile []room.Point) {
		a, b := profile[0].Z, profile[len(profile)-1].Z
		if a == b {
			add(a, endMark, what, scene.Tag{Class: "covering"})
			return
		}
		add(a, endMark, c.Words.Say("pole.left", what), scene.Tag{Class: "covering"})
		add(b, endMark, c.Words.Say("pole.right", what), scene.Tag{Class: "covering"})
	}
	ends(c.Words.Say("pole.covering_foot"), w.W.CoverFloor())
	ends(c.Words.Say("pole.covering_top"), w.W.CoverCeiling())
	for i := range w.W.Openings {
		if !c.Paper.Pole.Openings {
			break
		}
		o := &w.W.Openings[i]
		tag := scene.Tag{Class: "opening", Data: []scene.Datum{folio.Datum("name", o.Name)}}
		if o.SillGiven {
			add(o.Sill, edgeMark, c.Words.Say("pole.sill", o.Name), tag)
		}
		add(o.Head, edgeMark, c.Words.Say("pole.head", o.Name), tag)
	}
	for _, b := range boxes(c, w) {
		add(b.Z, boxMark, c.Words.Say("pole.box", b.Letter), scene.Tag{Class: "box", Data: []scene.Datum{folio.Datum("name", b.Name), folio.Datum("kind", string(b.Kind))}})
	}
	if w.Run.Up {
		for _, h := range w.Hangs {
			if h.Seam != nil {
				add(h.X, seamMark, c.Words.Say("pole.seam", c.Seam(w.Run, h.Seam)), scene.Tag{Class: "seam", Data: []scene.Datum{folio.Datum("at", folio.Mm(h.Seam.At))}})
				add(h.Line, lineMark, c.Words.Say("pole.line", c.SheetNumbers(h)), scene.Tag{Class: "plumb-line", Data: []scene.Datum{folio.Datum("at", folio.Mm(h.Seam.PlumbLine))}})
			}
		}
	}
	for _, z := range w.Joints() {
		add(z, seamMark, c.Words.Say("pole.joint"), scene.Tag{Class: "seam"})
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

// boxes are what is set in a wall, where it is asked for.
func boxes(c *folio.TapedSet, w *face.Face) []face.Box {
	if !c.Paper.Pole.Openings {
		return nil
	}
	return w.Boxes()
}

// poleBoard is a page of strips being drawn.
type poleBoard struct {
	*folio.TapedSet
	page *scene.Page
	top  float64
	left float64
}

func (b *poleBoard) text(g *scene.Group, at scene.Point, s string, size float64, bold bool, anchor scene.Anchor) {
	g.Text(scene.Text{At: at, String: s, Height: size, Bold: bold, Anchor: anchor, Layer: scene.Notes})
}

// barsAt is the y of the bars under so many strips.
func (b *poleBoard) barsAt(strips int) float64 { return b.top + float64(strips)*stripPitch + 3.4 }

// bars draws 100 mm and 4 in, which have to measure that on the print, under so many strips.
func (b *poleBoard) bars(g *scene.Group, strips int) {
	y := b.barsAt(strips)
	bar := func(x, long float64, word string) float64 {
		in := g.Part(scene.Tag{Class: "check-bar", Data: []scene.Datum{folio.Datum("length", scene.Num(long))}})
		pen := scene.Pen(scene.Marks, folio.TapedFine)
		in.HLine(x, x+long, y, pen)
		in.VLine(x, y-1.8, y+1.8, pen)
		in.VLine(x+long, y-1.8, y+1.8, pen)
		in.Text(scene.Text{At: scene.Pt(x+long/2, y+1), String: word, Height: folio.TapedSmall, Anchor: scene.Middle, Seat: scene.Hanging, Layer: scene.Marks})
		return x + long
	}
	x := bar(b.left, 100, b.Words.Say("pole.bar_metric"))
	x = bar(x+6, (4 * length.Inch).MM(), b.Words.Say("pole.bar_inch"))
	b.text(g, scene.Pt(x+4, y+1), b.Words.Say("pole.print"), folio.TapedSmall, true, scene.Start)
	b.text(g, scene.Pt(x+4, y+5), b.Words.Say("pole.bars"), folio.TapedSmall, true, scene.Start)
}

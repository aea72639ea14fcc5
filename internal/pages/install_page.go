package pages

import (
	"fmt"
	"strconv"

	"flitchlay/internal/draft"
	"flitchlay/internal/scene"
)

// crewBoard is a page of the crew's being drawn.
type crewBoard struct {
	*crewSet
	page  *scene.Page
	space *draft.Space
	head  scene.Box // the name of the wall, what for, page and issue
	field scene.Box // the drawing
	list  scene.Box // the tape list
	foot  scene.Box // boxes, rips, hold
	more  int       // lines by which boxes and rips are higher than the foot
}

// Heights of text and widths of lines of a page that is read from a ladder.
const (
	crewSmall  = 2.5 // captions alone
	crewText   = 3.5
	crewLarge  = 5
	crewName   = 7
	crewNumber = 10
	crewHeavy  = 0.7
	crewFine   = 0.35
	crewBorder = 8 // what cheap printers do not reach
)

// open makes a page ready: border, head, name, whom it is for, number, date and issue.
func (c *crewSet) open(n int, name, title string, portrait bool, lines [2]string) *crewBoard {
	w, h := c.paper.Landscape()
	if portrait {
		w, h = h, w
	}
	u := c.u
	p := scene.NewPage(name, title, w, h)
	p.Frame = scene.Box{X0: crewBorder, Y0: crewBorder, X1: w - crewBorder, Y1: h - crewBorder}
	f := p.Frame
	b := &crewBoard{crewSet: c, page: p, space: draft.NewSpace(scene.Box{})}
	b.head = scene.Box{X0: f.X0, Y0: f.Y0, X1: f.X1, Y1: f.Y0 + 18*u}
	b.foot = scene.Box{X0: f.X0, Y0: f.Y1 - 35.9*u, X1: f.X1, Y1: f.Y1}
	b.list = scene.Box{X0: f.X1 - 88*u, Y0: b.head.Y1, X1: f.X1, Y1: b.foot.Y0}
	b.field = scene.Box{X0: f.X0, Y0: b.head.Y1, X1: b.list.X0 - 2.4*u, Y1: b.foot.Y0}
	g := p.Part(scene.Tag{Class: "frame"})
	g.Rect(f, scene.Pen(scene.Frame, 0.5))
	g.HLine(f.X0, f.X1, b.head.Y1, scene.Pen(scene.Frame, crewFine))
	b.heading(g, n, title, lines)
	return b
}

// heading letters the head: the wall in large letters, two lines of what for, the page, the date and the issue.
func (b *crewBoard) heading(g *scene.Group, n int, title string, lines [2]string) {
	u, h := b.u, b.head
	box := scene.Box{X0: h.X1 - 24*u, Y0: h.Y0, X1: h.X1, Y1: h.Y1}
	g.Rect(box, scene.Pen(scene.Frame, 0.5))
	issue := b.issue()
	size := draft.Squeeze(issue, crewNumber*u, crewText*u, true, box.W()-3*u)
	g.Text(scene.Text{At: box.Centre(), String: scene.Shorten(issue, size, true, box.W()-2*u), Height: size, Bold: true, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Frame})
	of := "page " + strconv.Itoa(n)
	if b.total > 0 {
		of = fmt.Sprintf("page %d of %d", n, b.total)
	}
	date := b.issued()
	if date == "" {
		date = "no date"
	}
	x := box.X0 - 2*u
	w := max(scene.Width(of, crewText*u, false), scene.Width(date, crewText*u, false)+3*u+scene.Width("issue", crewText*u, false), 34*u)
	x -= w
	b.word(g, scene.Pt(x, h.Y0+6.6*u), of, crewText*u, false, scene.Start)
	b.word(g, scene.Pt(x, h.Y0+13.6*u), date, crewText*u, false, scene.Start)
	b.word(g, scene.Pt(box.X0-2*u, h.Y0+13.6*u), "issue", crewText*u, false, scene.End)
	left, right := h.X0+3*u, x-4*u
	share := left + (right-left)*0.43
	need := max(scene.Width(lines[0], crewText*u, false), scene.Width(lines[1], crewText*u, false))
	if name := scene.Width(title, crewName*u, true); share+need > right {
		share = max(min(share, left+name+6*u), right-need)
	}
	b.bigName(g, scene.Box{X0: left, Y0: h.Y0, X1: share - 3*u, Y1: h.Y1}, title)
	for i, line := range lines {
		b.word(g, scene.Pt(share, h.Y0+(6.6+7*float64(i))*u), scene.Shorten(line, crewText*u, false, right-share), crewText*u, false, scene.Start)
	}
}

// bigName letters a name as large as it goes, on two lines where it is long.
func (b *crewBoard) bigName(g *scene.Group, box scene.Box, name string) {
	u, w := b.u, box.W()
	if scene.Width(name, crewLarge*u, true) <= w {
		size := draft.Squeeze(name, crewName*u, crewLarge*u, true, w)
		g.Text(scene.Text{At: scene.Pt(box.X0, box.Centre().Y), String: name, Height: size, Bold: true, Seat: scene.Centred, Layer: scene.Frame})
		return
	}
	size := crewLarge * u
	lines := scene.Wrap(name, size, true, w)
	if len(lines) > 2 {
		size = crewText * u
		lines = scene.Wrap(name, size, true, w)
	}
	if len(lines) > 2 {
		rest := name[len(lines[0]):]
		lines = []string{lines[0], scene.Shorten(rest, size, true, w)}
	}
	for i, line := range lines {
		g.Text(scene.Text{At: scene.Pt(box.X0, box.Y0+(7+8*float64(i))*u), String: line, Height: size, Bold: true, Layer: scene.Frame})
	}
}

// word letters one line of notes.
func (b *crewBoard) word(g *scene.Group, at scene.Point, s string, height float64, bold bool, anchor scene.Anchor) {
	g.Text(scene.Text{At: at, String: s, Height: height, Bold: bold, Anchor: anchor, Layer: scene.Notes})
}

// bar says NOT FOR HANGING across the head of a box, and gives what is left under it. Where the plan may be hung from it
// gives the box back.
func (b *crewBoard) bar(box scene.Box) scene.Box {
	if !b.unfit() {
		return box
	}
	u := b.u
	bar := scene.Box{X0: box.X0 + 3*u, Y0: box.Y0 + 3*u, X1: box.X1 - 3*u, Y1: box.Y0 + 19*u}
	g := b.page.Part(scene.Tag{Class: "not-for-hanging"})
	g.Rect(bar, scene.Pen(scene.Frame, 2).Filled(scene.White))
	const words = "NOT FOR HANGING"
	size := draft.Squeeze(words, crewNumber*u, crewLarge*u, true, bar.W()-8*u)
	g.Text(scene.Text{At: bar.Centre(), String: words, Height: size, Bold: true, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Notes})
	box.Y0 = bar.Y1 + 1*u
	return box
}

package crew

import (
	"fmt"
	"strconv"

	"flitchlay/internal/draft"
	"flitchlay/internal/scene"
)

// crewBoard is a page of the crew's being drawn.
type Board struct {
	*Set
	Page  *scene.Page
	Space *draft.Space
	Head  scene.Box // the name of the wall, what for, page and issue
	Field scene.Box // the drawing
	List  scene.Box // the tape list
	Foot  scene.Box // boxes, rips, hold
	More  int       // lines by which boxes and rips are higher than the foot
}

// Heights of text and widths of lines of a page that is read from a ladder.
const (
	CrewSmall  = 2.5 // captions alone
	CrewText   = 3.5
	CrewLarge  = 5
	CrewName   = 7
	CrewNumber = 10
	CrewHeavy  = 0.7
	CrewFine   = 0.35
	CrewBorder = 8 // what cheap printers do not reach
)

// open makes a page ready: border, head, name, whom it is for, number, date and issue.
func (c *Set) Open(n int, name, title string, portrait bool, lines [2]string) *Board {
	w, h := c.Paper.Landscape()
	if portrait {
		w, h = h, w
	}
	u := c.U
	p := scene.NewPage(name, title, w, h)
	p.Frame = scene.Box{X0: CrewBorder, Y0: CrewBorder, X1: w - CrewBorder, Y1: h - CrewBorder}
	f := p.Frame
	b := &Board{Set: c, Page: p, Space: draft.NewSpace(scene.Box{})}
	b.Head = scene.Box{X0: f.X0, Y0: f.Y0, X1: f.X1, Y1: f.Y0 + 18*u}
	b.Foot = scene.Box{X0: f.X0, Y0: f.Y1 - 35.9*u, X1: f.X1, Y1: f.Y1}
	b.List = scene.Box{X0: f.X1 - 88*u, Y0: b.Head.Y1, X1: f.X1, Y1: b.Foot.Y0}
	b.Field = scene.Box{X0: f.X0, Y0: b.Head.Y1, X1: b.List.X0 - 2.4*u, Y1: b.Foot.Y0}
	g := p.Part(scene.Tag{Class: "frame"})
	g.Rect(f, scene.Pen(scene.Frame, 0.5))
	g.HLine(f.X0, f.X1, b.Head.Y1, scene.Pen(scene.Frame, CrewFine))
	b.Heading(g, n, title, lines)
	return b
}

// heading letters the head: the wall in large letters, two lines of what for, the page, the date and the issue.
func (b *Board) Heading(g *scene.Group, n int, title string, lines [2]string) {
	u, h := b.U, b.Head
	box := scene.Box{X0: h.X1 - 24*u, Y0: h.Y0, X1: h.X1, Y1: h.Y1}
	g.Rect(box, scene.Pen(scene.Frame, 0.5))
	issue := b.Issue()
	size := draft.Squeeze(issue, CrewNumber*u, CrewText*u, true, box.W()-3*u)
	g.Text(scene.Text{At: box.Centre(), String: scene.Shorten(issue, size, true, box.W()-2*u), Height: size, Bold: true, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Frame})
	of := "page " + strconv.Itoa(n)
	if b.Total > 0 {
		of = fmt.Sprintf("page %d of %d", n, b.Total)
	}
	date := b.Issued()
	if date == "" {
		date = "no date"
	}
	x := box.X0 - 2*u
	w := max(scene.Width(of, CrewText*u, false), scene.Width(date, CrewText*u, false)+3*u+scene.Width("issue", CrewText*u, false), 34*u)
	x -= w
	b.Word(g, scene.Pt(x, h.Y0+6.6*u), of, CrewText*u, false, scene.Start)
	b.Word(g, scene.Pt(x, h.Y0+13.6*u), date, CrewText*u, false, scene.Start)
	b.Word(g, scene.Pt(box.X0-2*u, h.Y0+13.6*u), "issue", CrewText*u, false, scene.End)
	left, right := h.X0+3*u, x-4*u
	share := left + (right-left)*0.43
	need := max(scene.Width(lines[0], CrewText*u, false), scene.Width(lines[1], CrewText*u, false))
	if name := scene.Width(title, CrewName*u, true); share+need > right {
		share = max(min(share, left+name+6*u), right-need)
	}
	b.BigName(g, scene.Box{X0: left, Y0: h.Y0, X1: share - 3*u, Y1: h.Y1}, title)
	for i, line := range lines {
		b.Word(g, scene.Pt(share, h.Y0+(6.6+7*float64(i))*u), scene.Shorten(line, CrewText*u, false, right-share), CrewText*u, false, scene.Start)
	}
}

// bigName letters a name as large as it goes, on two lines where it is long.
func (b *Board) BigName(g *scene.Group, box scene.Box, name string) {
	u, w := b.U, box.W()
	if scene.Width(name, CrewLarge*u, true) <= w {
		size := draft.Squeeze(name, CrewName*u, CrewLarge*u, true, w)
		g.Text(scene.Text{At: scene.Pt(box.X0, box.Centre().Y), String: name, Height: size, Bold: true, Seat: scene.Centred, Layer: scene.Frame})
		return
	}
	size := CrewLarge * u
	lines := scene.Wrap(name, size, true, w)
	if len(lines) > 2 {
		size = CrewText * u
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
func (b *Board) Word(g *scene.Group, at scene.Point, s string, height float64, bold bool, anchor scene.Anchor) {
	g.Text(scene.Text{At: at, String: s, Height: height, Bold: bold, Anchor: anchor, Layer: scene.Notes})
}

// bar says NOT FOR HANGING across the head of a box, and gives what is left under it. Where the plan may be hung from it
// gives the box back.
func (b *Board) Bar(box scene.Box) scene.Box {
	if !b.Unfit() {
		return box
	}
	u := b.U
	bar := scene.Box{X0: box.X0 + 3*u, Y0: box.Y0 + 3*u, X1: box.X1 - 3*u, Y1: box.Y0 + 19*u}
	g := b.Page.Part(scene.Tag{Class: "not-for-hanging"})
	g.Rect(bar, scene.Pen(scene.Frame, 2).Filled(scene.White))
	const words = "NOT FOR HANGING"
	size := draft.Squeeze(words, CrewNumber*u, CrewLarge*u, true, bar.W()-8*u)
	g.Text(scene.Text{At: bar.Centre(), String: words, Height: size, Bold: true, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Notes})
	box.Y0 = bar.Y1 + 1*u
	return box
}

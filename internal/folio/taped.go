package folio

import (
	"strings"

	"flitchlay/internal/draft"
	"flitchlay/internal/scene"
)

// Heights of text and widths of lines of a page that is read from a ladder, in mm on letter paper.
const (
	TapedSmall  = 2.5 // captions alone
	TapedText   = 3.5
	TapedLarge  = 5
	TapedName   = 7
	TapedNumber = 10
	TapedFine   = 0.35
	TapedHeavy  = 0.7
	TapedBorder = 8 // what cheap printers do not reach
)

// notHanging is what stands on every page of a plan that breaks a rule which must be met.
func (s *Set) notHanging() string { return s.Words.Say("page.not_for_hanging") }

// Form says what stands beside the drawing of a taped page.
type Form int

const (
	Whole    Form = iota // nothing: the page is the author's down to its border
	OverFoot             // a strip at the foot
	Beside               // a strip at the foot, and a list at the right
)

// Sheet is what a taped page says of itself in its head.
type Sheet struct {
	Name     string // of the page's file, its number follows: install
	Title    string // in large letters
	Lines    [2]string
	Portrait bool
	Form     Form
	Unissued bool // a blank form: it has neither date nor issue
}

// Taped is a page that is taped to the wall, ready to be drawn on: border, head, page number, date and issue stand on it,
// and NOT FOR HANGING where the plan may not be hung from.
type Taped struct {
	Page  *scene.Page
	Space *draft.Space
	head  scene.Box // the name of the wall, what for, page and issue
	Field scene.Box // beside the list, over the foot
	List  scene.Box // the list at the right
	Foot  scene.Box // the strip at the foot
	Area  scene.Box // what its form and NOT FOR HANGING leave to its author
}

// taping is a taped page while its border and head are drawn.
type taping struct {
	*Taped
	set *TapedSet
	u   float64
}

// Tape makes the n-th page ready. It is the one way to a page of the crew's sets, so that no page can be without its
// number, issue and warning.
func (s *TapedSet) Tape(n int, sheet Sheet) *Taped {
	u := s.Unit
	w, h := s.Paper.Landscape()
	if sheet.Portrait {
		w, h = h, w
	}
	p := s.blank(sheet.Name, n, sheet.Title, w, h)
	f := p.Frame
	b := &taping{Taped: &Taped{Page: p, Space: draft.NewSpace(scene.Box{})}, set: s, u: u}
	b.head = scene.Box{X0: f.X0, Y0: f.Y0, X1: f.X1, Y1: f.Y0 + 18*u}
	b.Foot = scene.Box{X0: f.X0, Y0: f.Y1 - 35.9*u, X1: f.X1, Y1: f.Y1}
	b.List = scene.Box{X0: f.X1 - 88*u, Y0: b.head.Y1, X1: f.X1, Y1: b.Foot.Y0}
	b.Field = scene.Box{X0: f.X0, Y0: b.head.Y1, X1: b.List.X0 - 2.4*u, Y1: b.Foot.Y0}
	g := p.Part(scene.Tag{Class: "frame"})
	g.Rect(f, scene.Pen(scene.Frame, 0.5))
	g.HLine(f.X0, f.X1, b.head.Y1, scene.Pen(scene.Frame, TapedFine))
	b.heading(g, s.pageOf(n, s.total), sheet)
	switch sheet.Form {
	case Whole:
		b.Area = scene.Box{X0: f.X0, Y0: b.head.Y1, X1: f.X1, Y1: f.Y1}
	case OverFoot:
		b.Area = scene.Box{X0: f.X0, Y0: b.head.Y1, X1: f.X1, Y1: b.Foot.Y0}
	case Beside:
		b.Area = b.Field
	}
	b.Area = b.bar(b.Area)
	return b.Taped
}

// blank is an empty page within the border.
func (s *TapedSet) blank(name string, n int, title string, w, h float64) *scene.Page {
	p := scene.NewPage(name+"-"+fileNumber(n), title, w, h)
	p.Frame = scene.Box{X0: TapedBorder, Y0: TapedBorder, X1: w - TapedBorder, Y1: h - TapedBorder}
	return p
}

// pageOf says which page of how many.
func (s *TapedSet) pageOf(n, of int) string {
	if of > 0 {
		return s.Words.Say("page.number_of", n, of)
	}
	return s.Words.Say("page.number", n)
}

// heading letters the head: the wall in large letters, two lines of what for, the page, the date and the issue.
func (b *taping) heading(g *scene.Group, of string, sheet Sheet) {
	u, h := b.u, b.head
	box := scene.Box{X0: h.X1 - 24*u, Y0: h.Y0, X1: h.X1, Y1: h.Y1}
	if sheet.Unissued {
		b.word(g, scene.Pt(h.X1-3*u, h.Y0+6.6*u), of, TapedText*u, scene.End)
		b.named(g, sheet, h.X1-3*u-scene.Width(of, TapedText*u, false)-6*u)
		return
	}
	g.Rect(box, scene.Pen(scene.Frame, 0.5))
	issue := b.set.Issue()
	size := draft.Squeeze(issue, TapedNumber*u, TapedText*u, true, box.W()-3*u)
	g.Text(scene.Text{At: box.Centre(), String: scene.Shorten(issue, size, true, box.W()-2*u), Height: size, Bold: true, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Frame})
	date, issueWord := b.set.Issued(), b.set.Words.Say("page.issue")
	if date == "" {
		date = b.set.Words.Say("page.no_date")
	}
	x := box.X0 - 2*u
	w := max(scene.Width(of, TapedText*u, false), scene.Width(date, TapedText*u, false)+3*u+scene.Width(issueWord, TapedText*u, false), 34*u)
	x -= w
	b.word(g, scene.Pt(x, h.Y0+6.6*u), of, TapedText*u, scene.Start)
	b.word(g, scene.Pt(x, h.Y0+13.6*u), date, TapedText*u, scene.Start)
	b.word(g, scene.Pt(box.X0-2*u, h.Y0+13.6*u), issueWord, TapedText*u, scene.End)
	b.named(g, sheet, x-4*u)
}

// named letters the wall and what for as far as x.
func (b *taping) named(g *scene.Group, sheet Sheet, right float64) {
	title, lines, u, h := sheet.Title, sheet.Lines, b.u, b.head
	left := h.X0 + 3*u
	share := left + (right-left)*0.43
	need := max(scene.Width(lines[0], TapedText*u, false), scene.Width(lines[1], TapedText*u, false))
	if name := scene.Width(title, TapedName*u, true); share+need > right {
		share = max(min(share, left+name+6*u), right-need)
	}
	b.bigName(g, scene.Box{X0: left, Y0: h.Y0, X1: share - 3*u, Y1: h.Y1}, title)
	b.about(g, scene.Box{X0: share, Y0: h.Y0, X1: right, Y1: h.Y1}, lines)
}

const (
	leading  = 1.5  // the least from line to line, in the height of the letters
	headEdge = 0.68 // from the head's edge to the middle of the nearest line, in what lines stand apart by
)

// headPitch is what lines that fill a head stand apart by.
func headPitch(box scene.Box, lines int) float64 {
	return box.H() / (float64(lines-1) + 2*headEdge)
}

// mostAbout is how many small lines have room in a head.
const mostAbout = 4

// about letters two lines of what for into a box: as text, on more lines where they are too long, and smaller where those have no room.
func (b *taping) about(g *scene.Group, box scene.Box, lines [2]string) {
	u, w := b.u, box.W()
	size := TapedText * u
	var list []string
	for ; ; size = max(size-0.25*u, TapedSmall*u) {
		list = nil
		for _, line := range lines {
			list = append(list, scene.Wrap(line, size, false, w)...)
		}
		if size <= TapedSmall*u || len(list) <= len(lines) || leading*size <= headPitch(box, len(list)) {
			break
		}
	}
	if len(list) <= len(lines) {
		for i, line := range list {
			b.word(g, scene.Pt(box.X0, box.Y0+(6.6+7*float64(i))*u), line, size, scene.Start)
		}
		return
	}
	if len(list) > mostAbout {
		list[mostAbout-1] = scene.Shorten(strings.Join(list[mostAbout-1:], " "), size, false, w)
		list = list[:mostAbout]
	}
	pitch := headPitch(box, len(list))
	for i, line := range list {
		b.word(g, scene.Pt(box.X0, box.Y0+pitch*(float64(i)+headEdge)+size/2), line, size, scene.Start)
	}
}

// bigName letters a name as large as it goes, on two lines where it is long.
func (b *taping) bigName(g *scene.Group, box scene.Box, name string) {
	u, w := b.u, box.W()
	if scene.Width(name, TapedLarge*u, true) <= w {
		size := draft.Squeeze(name, TapedName*u, TapedLarge*u, true, w)
		g.Text(scene.Text{At: scene.Pt(box.X0, box.Centre().Y), String: name, Height: size, Bold: true, Seat: scene.Centred, Layer: scene.Frame})
		return
	}
	size := TapedLarge * u
	lines := scene.Wrap(name, size, true, w)
	if len(lines) > 2 {
		size = TapedText * u
		lines = scene.Wrap(name, size, true, w)
	}
	first, pitch := 7*u, 8*u
	if len(lines) > 2 {
		for pitch = headPitch(box, len(lines)); size > TapedSmall*u && leading*size > pitch; pitch = headPitch(box, len(lines)) {
			size = max(size-0.25*u, TapedSmall*u)
			lines = scene.Wrap(name, size, true, w)
		}
		first = headEdge*pitch + size/2
	}
	for i, line := range lines {
		g.Text(scene.Text{At: scene.Pt(box.X0, box.Y0+first+pitch*float64(i)), String: line, Height: size, Bold: true, Layer: scene.Frame})
	}
}

// word letters one line of the head.
func (b *taping) word(g *scene.Group, at scene.Point, s string, height float64, anchor scene.Anchor) {
	g.Text(scene.Text{At: at, String: s, Height: height, Anchor: anchor, Layer: scene.Notes})
}

// bar says NOT FOR HANGING across the head of a box, and gives what is left under it. Where the plan may be hung from it
// gives the box back.
func (b *taping) bar(box scene.Box) scene.Box {
	if !b.set.Unfit() {
		return box
	}
	u := b.u
	bar := scene.Box{X0: box.X0 + 3*u, Y0: box.Y0 + 3*u, X1: box.X1 - 3*u, Y1: box.Y0 + 19*u}
	g := b.Page.Part(scene.Tag{Class: "not-for-hanging"})
	g.Rect(bar, scene.Pen(scene.Frame, 2).Filled(scene.White))
	notHanging := b.set.notHanging()
	size := draft.Squeeze(notHanging, TapedNumber*u, TapedLarge*u, true, bar.W()-8*u)
	g.Text(scene.Text{At: bar.Centre(), String: notHanging, Height: size, Bold: true, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Notes})
	box.Y0 = bar.Y1 + 1*u
	return box
}

// Strip makes the n-th page of strips at full size ready, on a paper of a width and a height: what is on it, page, date and
// issue in one line at its head, and NOT FOR HANGING before them where the plan may not be hung from. The title starts at x.
func (s *TapedSet) Strip(n int, w, h, x float64, name, title, words string) (p *scene.Page, head *scene.Group) {
	p = s.blank(name, n, title, w, h)
	g := p.Part(scene.Tag{Class: "frame"})
	line := func(at scene.Point, text string, size float64, bold bool, anchor scene.Anchor) {
		g.Text(scene.Text{At: at, String: text, Height: size, Bold: bold, Anchor: anchor, Layer: scene.Notes})
	}
	about := []string{s.pageOf(n, s.total)}
	if d := s.Issued(); d != "" {
		about = append(about, d)
	}
	text := strings.Join(append(about, s.Words.Say("page.issue_of", s.Issue())), "   ")
	right := p.Frame.X1
	line(scene.Pt(right, p.Frame.Y0+6.4), text, TapedText, false, scene.End)
	right -= scene.Width(text, TapedText, false) + 5
	if s.Unfit() {
		notHanging := s.notHanging()
		w := scene.Width(notHanging, TapedText, true) + 8
		box := scene.BoxAt(right-w, p.Frame.Y0+1, w, 8.4)
		g.Rect(box, scene.Pen(scene.Frame, 2).Filled(scene.White))
		g.Text(scene.Text{At: box.Centre(), String: notHanging, Height: TapedText, Bold: true, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Notes})
		right = box.X0 - 5
	}
	const size = TapedText * 1.2
	words = scene.Shorten(words, size, true, right-x)
	line(scene.Pt(x, p.Frame.Y0+6.6), words, draft.Squeeze(words, size, TapedText, true, right-x), true, scene.Start)
	return p, g
}

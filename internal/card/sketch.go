package card

import (
	"math"
	"slices"
	"strings"

	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
)

// sketch is one card while it is laid out and drawn: a head, the sheet to scale with figures in the gutters beside it, and
// the list of what is done to it, beside or under the drawing.
//
//	+------------------------------+
//	| 12  F-311                [ ] |
//	| West        left 11 right 13 |
//	|------------------------------|
//	|  UP      C1                  |
//	|        +----+    MARK ...    |
//	| 4'-8 --|----|                |
//	| MARK --|.[].|- a  RIP ...    |
//	|        |    |    fold ...    |
//	+------------------------------+
type sketch struct {
	*book
	c       *Card
	u, text float64
	box     scene.Box
	view    draft.View
	under   bool // the list stands under the drawing, not beside it

	sheet   scene.Box // the sheet to scale
	right   float64   // how far what stands round it may reach
	list    scene.Box
	over    []string // the lines of the head
	strong  int      // how many of them are about the sheet itself; what it meets comes after
	heights []label  // at the side where figures begin
	lines   []line   // of the list as wrapped
	left    bool     // words of the list had no room
}

// label is what stands in a gutter, at a height of the sheet or, over and under it, at a place across.
type label struct {
	at     float64 // on paper
	lines  []string
	strong bool
}

// Sizes of a card, in mm on letter paper.
const (
	numberHigh  = 14.0
	headWide    = 120.0 // from this width on a card has room for its wall beside its number
	headShare   = 0.5   // of such a card's width, for the wall
	boxSize     = 7.0
	leaderLong  = 4.6
	upHigh      = 11.0
	overHigh    = 5.6 // of the names of cut-outs over a sheet that lies
	listIndent  = 2.0
	besideLeast = 34.0 // the least width of a list beside the drawing
)

// pitch is from line to line of what is read.
func (s *sketch) pitch() float64 { return s.text * 1.6 }

// headHigh is how high the head of the card is.
func (s *sketch) headHigh() float64 {
	high, more := (numberHigh+2.4)*s.u, float64(len(s.over))*s.pitch()
	if s.headBeside() {
		return math.Max(high, more+1.4*s.u)
	}
	return high + more + 1.8*s.u
}

// numberSize is the height of the number: what is looked for first.
func (s *sketch) numberSize() float64 {
	return draft.Squeeze(s.SheetNumber(s.c.Sheet), numberHigh*s.u, folio.TapedName*s.u, true, s.box.W()*0.5)
}

// afterNumber is where the flitch begins.
func (s *sketch) afterNumber() float64 {
	return s.box.X0 + scene.Width(s.SheetNumber(s.c.Sheet), s.numberSize(), true) + 3.2*s.u
}

// headBeside reports whether the lines of the head have room beside number and flitch.
func (s *sketch) headBeside() bool {
	return s.box.W() > headWide*s.u && float64(len(s.over))*s.pitch() <= (numberHigh+4)*s.u
}

// headRoom is how wide the lines of the head may be: all of the card, or the half beside number and flitch, up to the box to tick.
func (s *sketch) headRoom() float64 {
	if s.box.W() > headWide*s.u {
		return s.box.W()*headShare - (boxSize+2)*s.u
	}
	return s.box.W()
}

// flitchRoom is how wide the name of the flitch may be beside the number.
func (s *sketch) flitchRoom() float64 {
	if s.box.W() > headWide*s.u {
		return s.box.X1 - s.box.W()*headShare - 2*s.u - s.afterNumber()
	}
	return s.box.X1 - s.afterNumber()
}

// flitchBeside reports whether the name of the flitch has room beside the number.
func (s *sketch) flitchBeside() bool {
	return scene.Width(s.c.Sheet.Flitch, folio.TapedSmall*s.u, true) <= s.flitchRoom()
}

// jobBeside reports whether job and issue have room over the flitch, up to the box to tick.
func (s *sketch) jobBeside() bool {
	room := s.flitchRoom()
	if s.box.W() <= headWide*s.u {
		room -= (boxSize + 2) * s.u
	}
	return !s.left && scene.Width(s.caption(s.c)+", "+s.job(), folio.TapedSmall*s.u, s.c.Back) <= room
}

// headLines stand with the number: job and issue and the flitch, where they are too long for their place, where the sheet hangs, its course, and what
// it meets, what is left and right of it in one line where that has room.
func (s *sketch) headLines() []string {
	wide, x := s.headRoom(), s.said[s.c]
	var list []string
	if !s.flitchBeside() {
		list = scene.Wrap(s.c.Sheet.Flitch, s.text, true, wide)
	}
	list = append(list, scene.Wrap(x.where, s.text, true, wide)...)
	s.strong = len(list)
	if !s.jobBeside() {
		list = append(list, scene.Wrap(s.job(), s.text, false, wide)...)
	}
	for _, pair := range x.neighbours {
		text := strings.Trim(pair[0]+"   "+pair[1], " ")
		switch {
		case text == "":
		case scene.Width(text, folio.TapedSmall*s.u, false) <= wide:
			list = append(list, text)
		default:
			list = append(append(list, scene.Wrap(pair[0], s.text, false, wide)...), scene.Wrap(pair[1], s.text, false, wide)...)
		}
	}
	return list
}

// lay finds the place of everything, and whether all of it has one.
func (s *sketch) lay(force bool) bool {
	s.over = s.headLines()
	if s.c.Level {
		return s.layLevel(force)
	}
	return s.layUpright(force)
}

// fill wraps the list into its box, and says whether it holds all of it. By force it holds as much as it can.
func (s *sketch) fill(force bool) bool {
	if s.list.W() < besideLeast*s.u && !force {
		return false
	}
	s.lines, s.left = nil, false
	if s.list.W() < besideLeast*s.u/2 {
		s.left = true
		return true
	}
	most := int(math.Floor(s.list.H()/s.pitch() + 1e-9))
	for _, l := range s.said[s.c].work {
		parts := scene.Wrap(l.text, s.text, l.bold, s.list.W()-listIndent*s.u)
		if len(s.lines)+len(parts) > most {
			if !force {
				return false
			}
			s.left = true
			break
		}
		for i, p := range parts {
			if i > 0 {
				p = " " + p // stands in
			}
			s.lines = append(s.lines, line{p, l.bold})
		}
	}
	if s.left && len(s.lines) > 0 {
		s.lines = s.lines[:max(0, most-1)]
	}
	return true
}

// wide is how wide the widest of some labels is.
func (s *sketch) wide(list []label) float64 {
	w := 0.0
	for _, l := range list {
		for i, t := range l.lines {
			w = math.Max(w, scene.Width(t, s.text, i == 0))
		}
	}
	return w
}

// tag names the card for whoever reads the file.
func (s *sketch) tag() scene.Tag {
	c, side := s.c, faceSeen
	if c.Back {
		side = backSeen
	}
	return scene.Tag{Class: "card", Title: s.Words.Say("card.tip", s.SheetNumber(c.Sheet)), Data: []scene.Datum{
		folio.Datum("place", itoa(c.Sheet.Place)), folio.Datum("course", itoa(c.Sheet.Course)), folio.Datum("number", s.SheetNumber(c.Sheet)),
		folio.Datum("run", c.Run.Name), folio.Datum("seen", side), folio.Datum("scale", itoa(int(s.view.Scale)))}}
}

// draw draws the card.
func (s *sketch) draw(g *scene.Group) {
	s.head(g)
	s.drawSheet(g)
	if s.c.Level {
		s.labelLevel(g)
	} else {
		s.labelUpright(g)
	}
	y, lines := s.list.Y0, s.lines
	if s.left {
		lines = append(slices.Clone(lines), line{s.others(s.c), false})
	}
	part := g.Part(scene.Tag{Class: "work"})
	for _, l := range lines {
		x, text := s.list.X0, l.text
		if text[0] == ' ' {
			x, text = x+listIndent*s.u, text[1:]
		}
		part.Text(scene.Text{At: scene.Pt(x, y), String: text, Height: s.text, Bold: l.bold, Seat: scene.Hanging, Layer: scene.Notes})
		y += s.pitch()
	}
}

// head letters number, flitch and box to tick, and with them where the sheet hangs.
func (s *sketch) head(g *scene.Group) {
	u, b := s.u, s.box
	g = g.Part(scene.Tag{Class: "card-head"})
	small, left := folio.TapedSmall*u, s.afterNumber()
	tick := scene.BoxAt(b.X1-boxSize*u, b.Y0+1*u, boxSize*u, boxSize*u)
	base := b.Y0 + (1+numberHigh)*u
	g.Text(scene.Text{At: scene.Pt(b.X0, base), String: s.SheetNumber(s.c.Sheet), Height: s.numberSize(), Bold: true, Layer: scene.Numbers})
	lines, beside := s.over, s.headBeside()
	x, y, room, flitch := b.X0, base+1*u, b.W(), b.X1-left
	if beside {
		x = b.X1 - b.W()*headShare
		room, flitch, y = tick.X0-2*u-x, x-2*u-left, b.Y0-0.4*u
	}
	caption := s.caption(s.c)
	if s.jobBeside() {
		caption += ", " + s.job()
	}
	g.Text(scene.Text{At: scene.Pt(left, b.Y0+1*u), String: caption, Height: small, Bold: s.c.Back, Seat: scene.Hanging, Layer: scene.Notes})
	if name := s.c.Sheet.Flitch; name != "" && s.flitchBeside() {
		high := draft.Squeeze(name, folio.TapedLarge*u, small, true, flitch)
		g.Text(scene.Text{At: scene.Pt(left, base), String: name, Height: high, Bold: true, Layer: scene.Notes})
	}
	g.Rect(tick, scene.Pen(scene.Frame, folio.TapedFine))
	for i, text := range lines {
		y += s.pitch()
		bold := i < s.strong
		high := draft.Squeeze(text, s.text, small, bold, room)
		g.Text(scene.Text{At: scene.Pt(x, y), String: text, Height: high, Bold: bold, Layer: scene.Notes})
	}
	g.HLine(b.X0, b.X1, b.Y0+s.headHigh(), scene.Pen(scene.Frame, folio.TapedFine))
}

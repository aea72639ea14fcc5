package crew

import (
	"math"
	"slices"

	"flitchlay/internal/crewday"
	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/paper"
	"flitchlay/internal/scene"
)

// mark is one mark of the pages that follow, and how the key draws it round a place; its name is the key of its words.
type mark struct {
	name string
	draw func(k *keyPage, g *scene.Group, at scene.Point)
}

// wallMarks, levelMarks where the grain runs level, and cardMarks are what is explained once for all pages, in the order in which a
// sheet meets them.
//
// Source: common practice, no source.
var (
	wallMarks = []mark{{"key.line", (*keyPage).line}, {"key.check", (*keyPage).check}, {"key.level", (*keyPage).level}, {"key.hold", (*keyPage).hold}, {"key.ripped", (*keyPage).ripped},
		{"key.turned", (*keyPage).turned}, {"key.raw_end", (*keyPage).rawEnd}, {"key.round", (*keyPage).round}, {"key.box", (*keyPage).inWall}, {"key.device", (*keyPage).neverOnWall}, {"key.match", (*keyPage).match}}
	levelMarks = []mark{{"key.line_level", (*keyPage).line}, {"key.check_level", (*keyPage).check}, {"key.level_level", (*keyPage).level}, {"key.hold", (*keyPage).hold}, {"key.ripped", (*keyPage).ripped},
		{"key.turned", (*keyPage).turned}, {"key.raw_end", (*keyPage).rawEnd}, {"key.round", (*keyPage).round}, {"key.box", (*keyPage).inWall}, {"key.device", (*keyPage).neverOnWall}, {"key.match", (*keyPage).match}}
	cardMarks = []mark{{"key.raw", (*keyPage).raw}, {"key.cut", (*keyPage).cut}, {"key.trim", (*keyPage).trim}, {"key.shows", (*keyPage).shows}, {"key.fold", (*keyPage).fold},
		{"key.cut_out", (*keyPage).cutOut}, {"key.never", (*keyPage).never}, {"key.zero", (*keyPage).zero}, {"key.tick", (*keyPage).tick}, {"key.apart", (*keyPage).apart}}
)

// Sizes of the key, in mm on letter paper.
const (
	keyColumn = 17.0 // of the drawn marks
	keyLine   = 5.4  // from one line of words to the next
	keyGap    = 2.2  // between two marks
	keyTall   = 8.8  // the least height of a row: a mark and its air
	keyThin   = 0.25
	keyPart   = 60.0 // what is left of a column in which another part begins
	keyDash   = 0.22 // the width by whose line dashes are parted: short enough that a mark shows some
)

// keyPage is a page that says what the marks of the others mean, while it is drawn; box is the column.
type keyPage struct {
	*board
	g   *scene.Group
	box scene.Box
	y   float64
}

// keyPages draws the key to the marks, in two columns: those of the walls' pages and the lists, then those of the cards.
func (c *Set) keyPages(n int) []*scene.Page {
	var out []*scene.Page
	var k *keyPage
	column := 1
	next := func() {
		if column++; k == nil || column > 1 {
			column = 0
			k = &keyPage{board: c.open(n+len(out), folio.Sheet{Title: c.Words.Both("key.title"), Lines: [2]string{c.Place(), c.Words.Say("key.for")}})}
			k.Page.Title = c.Words.Say("key.title")
			k.g = k.Page.Part(scene.Tag{Class: "legend"})
			out = append(out, k.Page)
		}
		k.box = scene.Box{X0: k.Page.Frame.X0 + 3*c.Unit, Y0: k.Area.Y0, X1: k.Page.Frame.X1 - 3*c.Unit, Y1: k.Area.Y1 - 2*c.Unit}
		middle := (k.box.X0 + k.box.X1) / 2
		if column == 0 {
			k.box.X1 = middle - 3*c.Unit
		} else {
			k.box.X0 = middle + 3*c.Unit
		}
		k.y = k.box.Y0
	}
	part := func(head string, marks []mark) {
		if k == nil || column == 0 || k.y == k.box.Y0 || k.y+keyPart*c.Unit > k.box.Y1 {
			next()
		} else {
			k.y += keyGap * c.Unit
		}
		k.Word(k.g, scene.Pt(k.box.X0, k.y+6*c.Unit), c.Words.Say(head), folio.TapedText*c.Unit, true, scene.Start)
		k.y += 8.5 * c.Unit
		for _, m := range marks {
			lines := scene.Wrap(c.Words.Both(m.name), folio.TapedText*c.Unit, false, k.box.W()-keyColumn*c.Unit)
			high := math.Max(keyTall, keyLine*float64(len(lines))+keyGap) * c.Unit
			if k.y+high > k.box.Y1 {
				next()
			}
			k.row(m, lines, high)
		}
	}
	marks := wallMarks
	if c.Room.Veneer.Horizontal {
		marks = levelMarks
	}
	if c.stairs() {
		at := slices.IndexFunc(marks, func(m mark) bool { return m.name == "key.level" }) + 1
		marks = slices.Insert(slices.Clone(marks), at, mark{"key.second", (*keyPage).second})
	}
	if c.raked() {
		marks = append(slices.Clone(marks), mark{"key.bevel", (*keyPage).bevel})
	}
	part("key.walls", marks)
	if c.Paper.Cards != paper.CardsNone {
		part("key.cards", cardMarks)
	}
	said := func(head string, tag scene.Tag, texts ...string) {
		var lines []string
		for _, text := range texts {
			lines = append(lines, scene.Wrap(text, folio.TapedText*c.Unit, false, k.box.W())...)
		}
		if high := keyGap + 6.5 + keyLine*float64(len(lines)); k.y+high*c.Unit > k.box.Y1 {
			next()
		}
		k.said(head, tag, lines)
	}
	if len(c.Days.Tasks) > 0 {
		written := c.Words.Both("key.write")
		if c.Room.Veneer.Horizontal {
			written = c.Words.Both("key.write_level")
		}
		said(c.Words.Say("key.days"), scene.Tag{Class: "explained"}, c.Words.Both("key.uncut"), c.Words.Both("key.cut_time"), written)
	}
	said(c.Words.Say("key.rounding"), scene.Tag{Class: "rounding"}, c.Words.Both("key.figures", c.Inches(c.Style.Least())))
	c.First(crewday.RoundingKey, n+len(out)-1)
	return out
}

// said letters what is explained once for all pages without a mark: the heads of the days' columns, and how figures are rounded, and
// that none is got by adding up others.
func (k *keyPage) said(head string, tag scene.Tag, lines []string) {
	u, size := k.Unit, folio.TapedText*k.Unit
	g := k.Page.Part(tag)
	k.y += (keyGap + 5) * u
	k.Word(g, scene.Pt(k.box.X0, k.y), head, size, true, scene.Start)
	k.y += 0.5 * u
	for _, line := range lines {
		k.y += keyLine * u
		k.Word(g, scene.Pt(k.box.X0, k.y), line, size, false, scene.Start)
	}
}

// row draws a mark with its words beside it.
func (k *keyPage) row(m mark, lines []string, high float64) {
	u := k.Unit
	in := k.g.Part(scene.Tag{Class: "legend-mark", Data: []scene.Datum{folio.Datum("mark", m.name)}})
	at := scene.Pt(k.box.X0+(keyColumn/2-1.5)*u, k.y+high/2)
	m.draw(k, in, at)
	y := at.Y - keyLine*u*float64(len(lines)-1)/2 + folio.TapedText*u/2
	for i, line := range lines {
		k.Word(in, scene.Pt(k.box.X0+keyColumn*u, y+float64(i)*keyLine*u), line, folio.TapedText*u, false, scene.Start)
	}
	k.y += high
}

// arrowheads draws the ends of a line at ceiling and floor.
func (k *keyPage) arrowheads(g *scene.Group, at scene.Point, open bool) {
	u, pen := k.Unit, 0.0
	if open {
		pen = folio.TapedFine
	}
	draft.Triangle(g, scene.Plumb, at.Add(-2.5*u, -flagLong/2*u), 90, flagLong*u, flagWide*u, pen, open)
	draft.Triangle(g, scene.Plumb, at.Add(2.5*u, flagLong/2*u), 270, flagLong*u, flagWide*u, pen, open)
}

func (k *keyPage) line(g *scene.Group, at scene.Point)  { k.arrowheads(g, at, false) }
func (k *keyPage) check(g *scene.Group, at scene.Point) { k.arrowheads(g, at, true) }

func (k *keyPage) level(g *scene.Group, at scene.Point) {
	u := k.Unit
	g.HLine(at.X-4.5*u, at.X+6*u, at.Y, scene.Pen(scene.Plumb, folio.TapedFine).As(scene.Chain(keyDash)))
	g.Circle(at.Add(-4.5*u, 0), 1.5*u, scene.Pen(scene.Plumb, 0.5).Filled(scene.White))
}

func (k *keyPage) second(g *scene.Group, at scene.Point) {
	g.HLine(at.X-6*k.Unit, at.X+6*k.Unit, at.Y, scene.Pen(scene.Plumb, secondPen).As(scene.Chain(keyDash)))
}

func (k *keyPage) bevel(g *scene.Group, at scene.Point) {
	u := k.Unit
	g.Line(at.Add(-5*u, 2*u), at.Add(5*u, -2*u), scene.Pen(scene.Covering, folio.TapedHeavy))
	g.VLine(at.X-3*u, at.Y+1.2*u, at.Y+4*u, scene.Pen(scene.Seams, folio.TapedFine))
	g.VLine(at.X+3*u, at.Y-1.2*u, at.Y+4*u, scene.Pen(scene.Seams, folio.TapedFine))
}

func (k *keyPage) hold(g *scene.Group, at scene.Point) {
	draft.Triangle(g, scene.Marks, at.Add(0, 2.2*k.Unit), 270, 4.4*k.Unit, 5.2*k.Unit, folio.TapedHeavy, true)
}

func (k *keyPage) ripped(g *scene.Group, at scene.Point) {
	t := scene.Text{At: at, String: "8", Height: folio.TapedLarge * k.Unit, Bold: true, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Numbers}
	g.Text(t)
	g.Rect(t.Bounds().Inset(-numberRing*k.Unit), scene.Pen(scene.Numbers, folio.TapedFine))
}

func (k *keyPage) turned(g *scene.Group, at scene.Point) {
	long := arrows[0]
	u := k.Unit
	g.VLine(at.X, at.Y-long.long/2*u, at.Y+(long.long/2-long.head)*u, scene.Pen(scene.Numbers, 0.5))
	draft.Triangle(g, scene.Numbers, at.Add(0, long.long/2*u), 270, long.head*u, long.wide*u, 0, false)
}

func (k *keyPage) rawEnd(g *scene.Group, at scene.Point) {
	draft.Triangle(g, scene.Numbers, at.Add(0, -endMarks[0].size/2*k.Unit), 90, endMarks[0].size*k.Unit, endMarks[0].size*k.Unit, 0, false)
}

// upright draws a short upright line.
func (k *keyPage) upright(g *scene.Group, at scene.Point, pen scene.Style) {
	g.VLine(at.X, at.Y-3.4*k.Unit, at.Y+3.4*k.Unit, pen)
}

func (k *keyPage) round(g *scene.Group, at scene.Point) {
	k.upright(g, at, scene.Pen(scene.Covering, folio.TapedHeavy).As(scene.Dashed(keyDash)))
}

func (k *keyPage) match(g *scene.Group, at scene.Point) {
	g.VLine(at.X, at.Y-4.4*k.Unit, at.Y+4.4*k.Unit, scene.Pen(scene.Walls, folio.TapedHeavy).As(scene.Phantom(0.6*keyDash)))
}

// plate is a small box round a place.
func (k *keyPage) plate(at scene.Point, wide, high float64) scene.Box {
	return scene.BoxRound(at, wide*k.Unit, high*k.Unit)
}

func (k *keyPage) inWall(g *scene.Group, at scene.Point) {
	b := k.plate(at, 4, 5)
	g.Rect(b, scene.Pen(scene.Boxes, folio.TapedFine))
	g.Line(scene.Pt(b.X0, b.Y1), scene.Pt(b.X1, b.Y0), scene.Pen(scene.Boxes, keyThin))
}

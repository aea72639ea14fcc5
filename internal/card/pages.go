package card

import (
	"slices"
	"strconv"

	"flitchlay/internal/count"
	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/paper"
	"flitchlay/internal/scene"
)

// itoa is strconv.Itoa.
func itoa(n int) string { return strconv.Itoa(n) }

// grid is how a page is parted into cards of equal size: side by side for sheets that stand, one over the other for sheets
// that lie, as both are long and narrow.
type grid struct {
	cards int
	text  float64 // height of what is read, in mm on letter paper
	least int64   // the smallest drawing: 32 for 1:32; 0 for any
}

// grids are the ways to part a page, those that take the fewest pages first. A sheet that is drawn smaller than 1:32, so that a
// hole for a box is under 2 mm high, is no more to be recognized; it gets a larger card.
var grids = []grid{
	{4, folio.TapedText, 32},
	{4, folio.TapedSmall, 32},
	{2, folio.TapedText, 48},
	{2, folio.TapedSmall, 48},
	{1, folio.TapedText, 0},
	{1, folio.TapedSmall, 0},
}

// scales are tried from the largest drawing on.
//
// Source: architect's and metric scale rules; 1:25 is on every metric one.
func (b *book) scales() []int64 {
	if b.Metric() {
		return []int64{5, 10, 20, 25, 50, 100, 200}
	}
	return []int64{8, 12, 16, 24, 32, 48, 64, 96, 128, 192}
}

// smallest is the scale of the smallest drawing.
func (b *book) smallest() int64 { return slices.Max(b.scales()) }

// book is the cards of a set while they are drawn.
type book struct {
	speech
	cards []*Card
	said  map[*Card]said
	laid  []leaf // the pages, once they are laid out: nothing of them depends on their numbers
}

// leaf is one page of cards, laid out.
type leaf struct {
	boxes    []scene.Box
	sketches []*sketch
}

// said is what stands on a card, whatever its size.
type said struct {
	work       []line
	where      string
	neighbours [][2]string
}

// Pages are the pages of the cards, at the end of the install set; none where the page template wants none, or nothing is
// left to hang.
func Pages(set *folio.TapedSet, c *count.Count) []folio.TapedPage {
	b := &book{speech: speech{set, c}, said: map[*Card]said{}}
	if set.Paper.Cards == paper.CardsNone {
		return nil
	}
	for _, x := range Of(c) {
		if set.Paper.Cards != paper.CardsBack {
			b.add(x)
		}
		if set.Paper.Cards != paper.CardsFace {
			b.add(x.Mirrored())
		}
	}
	if len(b.cards) == 0 {
		return nil
	}
	return []folio.TapedPage{{Key: "cards", Draw: b.pages}}
}

func (b *book) add(c *Card) {
	b.cards = append(b.cards, c)
	b.said[c] = said{b.work(c), b.where(c), b.neighbours(c)}
}

// pages draws all cards: on each page as many as fit at a scale that can be read.
func (b *book) pages(n int) []*scene.Page {
	var out []*scene.Page
	for rest := b.cards; len(rest) > 0; {
		t := b.Tape(n+len(out), folio.Sheet{Name: "install", Title: b.Words.Both("card.title"), Lines: [2]string{b.Words.Say("card.first"), b.Words.Say("card.safe")}})
		if len(b.laid) == len(out) {
			b.laid = append(b.laid, b.leaf(t.Area, rest))
		}
		l := b.laid[len(out)]
		here := rest[:len(l.sketches)]
		t.Page.Title = b.titleOf(here)
		b.cutMarks(t, l.boxes[:min(len(here)+1, len(l.boxes))], here[0].Level)
		for _, s := range l.sketches {
			s.draw(t.Page.Part(s.tag()))
		}
		out = append(out, t.Page)
		rest = rest[len(here):]
	}
	return out
}

// leaf lays out a page of the first of some cards.
func (b *book) leaf(area scene.Box, cards []*Card) leaf {
	for i, g := range grids {
		if g.cards > 2 && len(cards) <= 2 {
			continue // larger ones have room
		}
		here := cards[:min(g.cards, len(cards))]
		boxes := g.boxes(area, here[0].Level)
		if list := b.sketches(here, boxes, g, i == len(grids)-1); list != nil {
			return leaf{boxes, list}
		}
	}
	panic("card: the last grid takes any card")
}

// titleOf names a page by the sheets whose cards are on it.
func (b *book) titleOf(cards []*Card) string {
	var names []string
	for _, c := range cards {
		names = append(names, b.SheetNumber(c.Sheet))
	}
	if last := names[len(names)-1]; len(slices.Compact(slices.Clone(names))) > 1 {
		return b.Words.Say("card.of_sheets", names[0], last)
	}
	return b.Words.Say("card.of_sheet", names[0])
}

// Sizes of a page of cards, in mm on letter paper.
const (
	cardInset = 2.4 // from a cut mark to what stands on a card
	markDash  = 0.35
)

// boxes are the cards of a page.
func (g grid) boxes(area scene.Box, level bool) []scene.Box {
	var list []scene.Box
	for i := range g.cards {
		x := area
		if level {
			x.Y0 = area.Y0 + area.H()*float64(i)/float64(g.cards)
			x.Y1 = area.Y0 + area.H()*float64(i+1)/float64(g.cards)
		} else {
			x.X0 = area.X0 + area.W()*float64(i)/float64(g.cards)
			x.X1 = area.X0 + area.W()*float64(i+1)/float64(g.cards)
		}
		list = append(list, x)
	}
	return list
}

// cutMarks draws the dashed lines along which the cards are cut apart.
func (b *book) cutMarks(t *folio.Taped, boxes []scene.Box, level bool) {
	part := t.Page.Part(scene.Tag{Class: "cut-marks"})
	pen := scene.Pen(scene.Frame, markDash).As(scene.Dashed(markDash))
	for _, x := range boxes[1:] {
		if level {
			part.HLine(t.Area.X0, t.Area.X1, x.Y0, pen)
		} else {
			part.VLine(x.X0, t.Area.Y0, t.Area.Y1, pen)
		}
	}
}

// sketches prepare the cards of a page: at the largest scale at which all of each has its place, nil where none is. The last
// grid takes what there is, and says where the rest stands.
func (b *book) sketches(cards []*Card, boxes []scene.Box, g grid, last bool) []*sketch {
	for _, force := range []bool{false, true} {
		for _, scale := range b.scales() {
			if g.least > 0 && scale > g.least || force && !last {
				break
			}
			var list []*sketch
			for i, c := range cards {
				if s := b.sketch(c, boxes[i], g, scale, force); s != nil {
					list = append(list, s)
				}
			}
			if len(list) == len(cards) {
				return list
			}
		}
	}
	return nil
}

// sketch prepares a card in a box at a scale, with its list beside the drawing or under it, nil where not all of it has a
// place.
func (b *book) sketch(c *Card, box scene.Box, g grid, scale int64, force bool) *sketch {
	for _, under := range []bool{false, true} {
		s := &sketch{book: b, c: c, u: b.Unit, text: g.text * b.Unit, box: box.Inset(cardInset * b.Unit), view: draft.View{Scale: scale}, under: under}
		if s.lay(force) || force && scale == b.smallest() {
			return s
		}
	}
	return nil
}

package pages

import (
	"math"

	"flitchlay/internal/draft"
	"flitchlay/internal/scene"
)

// block is a table or a list with a title, as it flows into the columns of a page.
type block struct {
	table *draft.Table
	title string       // of a list
	items []draft.Item // of a list
	whole bool         // a form or a chart: never parted where a column holds it
}

// placed is a part of a block where it came to stand.
type placed struct {
	block  int
	first  int // row or item
	x, y   float64
	height float64
}

// columns are the columns that a flow fills, page by page.
type columns struct {
	box   scene.Box
	count int
	gap   float64
}

func (c columns) width() float64 {
	return (c.box.W() - c.gap*float64(c.count-1)) / float64(c.count)
}

func (b *block) rows() int {
	if b.table != nil {
		return len(b.table.Rows)
	}
	return len(b.items)
}

// indent is how far the text of a list stands in from its marks.
func (b *block) indent(k draft.Look) float64 {
	w := 0.0
	for _, it := range b.items {
		if it.Mark != "" {
			w = math.Max(w, scene.Width(it.Mark, k.Small, it.Bold)+k.Of(2.5))
		}
	}
	return w
}

// titleHigh is the height of a list's title.
func (b *block) titleHigh(k draft.Look) float64 {
	if b.title == "" {
		return 0
	}
	return k.Medium + k.Of(3)
}

// heights are how high the head of a block comes out, and each of its rows or items. A table takes the width first.
func (b *block) heights(k draft.Look, width float64) (above float64, rows []float64) {
	if b.table != nil {
		b.table.Fit(k, width)
		return b.table.Heights(k)
	}
	for _, it := range b.items {
		rows = append(rows, draft.ParagraphHigh(it.Text, k.Small, it.Bold, width-b.indent(k))+k.Small*0.5)
	}
	return b.titleHigh(k), rows
}

// put draws the parts of a page.
func (b *board) put(blocks []block, parts []placed, c columns) {
	k := b.look
	for _, p := range parts {
		bl := &blocks[p.block]
		at := scene.Pt(p.x, p.y)
		if bl.table != nil {
			bl.table.Draw(&b.page.Group, k, at, p.first, p.height+1e-6)
			continue
		}
		if bl.title != "" {
			title := bl.title
			if p.first > 0 {
				title = draft.Continued(title, k.Medium, c.width())
			}
			b.page.Text(scene.Text{At: at, String: scene.Shorten(title, k.Medium, true, c.width()), Height: k.Medium, Bold: true, Seat: scene.Hanging, Layer: scene.Notes})
			at.Y += bl.titleHigh(k)
		}
		draft.List(&b.page.Group, scene.Notes, at, bl.items[p.first:], k.Small, bl.indent(k), c.width(), p.y+p.height-at.Y+1e-6)
	}
}

// flowPages makes the pages that some blocks take in so many columns.
func (s *set) flowPages(title, about string, count int, make func() []block) []*leaf {
	return s.flowed(title, about, s.columns(count), make, nil)
}

// flowed makes the pages that some blocks take. The blocks are made anew when the pages are drawn, since only then
// all page numbers are known; they take the same place then. More draws what else stands on a page, over its parts; it
// may be nil.
func (s *set) flowed(title, about string, c columns, make func() []block, more func(*board, []block, []placed, columns)) []*leaf {
	var list []*leaf
	var blocks []block // as they are drawn, on all pages
	var parts [][]placed
	for i := range flow(s.look, make(), c) {
		l := &leaf{title: title, wall: -1, scale: "none"}
		if i == 0 {
			l.about = about
		}
		l.draw = func(b *board) {
			if parts == nil {
				blocks = make()
				parts = flow(b.look, blocks, c)
			}
			if i >= len(parts) {
				return
			}
			b.put(blocks, parts[i], c)
			if more != nil {
				more(b, blocks, parts[i], c)
			}
		}
		list = append(list, l)
	}
	return list
}

// columns are so many columns of the field, or as many as are 85 wide at least.
func (s *set) columns(count int) columns {
	k := s.look
	box := boxOf(s.paper.Field)
	box = scene.Box{X0: box.X0 + k.Of(8), Y0: box.Y0 + k.Of(8), X1: box.X1 - k.Of(8), Y1: box.Y1 - k.Of(6)}
	if s.unfit() {
		box.Y0 += k.Of(11)
	}
	for count > 1 && box.W()/float64(count) < k.Of(85) {
		count--
	}
	return columns{box: box, count: count, gap: k.Of(12)}
}

// noteColumns are three columns of notes and small tables: fewer where a title would be cut off, more where a line would
// be too long to be read well.
func (s *set) noteColumns() columns {
	const titleWide, lineWide = 78, 150 // on the office page: the longest title, and some 90 letters
	c := s.columns(3)
	for c.count > 1 && c.width() < s.look.Of(titleWide) {
		c.count--
	}
	for c.count > 1 && c.box.W()/float64(c.count) > s.look.Of(lineWide) {
		c.count++
	}
	return c
}

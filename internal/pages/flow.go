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
	bold  bool         // the title is a page's main one
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

// fits is how many rows from first on stand in a height, and how high they come out.
func (b *block) fits(k draft.Look, width, height float64, first int) (count int, high float64) {
	if b.table != nil {
		return b.table.Fits(k, first, height)
	}
	high = b.titleHigh(k)
	for _, it := range b.items[min(first, len(b.items)):] {
		h := draft.ParagraphHigh(it.Text, k.Small, it.Bold, width-b.indent(k)) + k.Small*0.5
		if high+h > height {
			return count, high
		}
		high += h
		count++
	}
	return count, high
}

// flow finds where blocks stand: down a column, then into the next, then onto the next page. A table or list that does
// not fit is parted, its title repeated.
//
// Shape: the parts on each page.
func flow(k draft.Look, blocks []block, c columns) [][]placed {
	pages := [][]placed{nil}
	col, y := 0, c.box.Y0
	next := func() {
		col++
		y = c.box.Y0
		if col == c.count {
			col = 0
			pages = append(pages, nil)
		}
	}
	for i := range blocks {
		b := &blocks[i]
		if b.table != nil {
			b.table.Fit(k, c.width())
		}
		for first := 0; first < b.rows() || b.rows() == 0 && first == 0; {
			count, high := b.fits(k, c.width(), c.box.Y1-y, first)
			rest := b.rows() - first
			if count < min(rest, 2) && y > c.box.Y0 || count == 0 && rest > 0 {
				if y == c.box.Y0 { // a single row higher than the page: it stands alone
					count, high = 1, c.box.H()
				} else {
					next()
					continue
				}
			}
			last := len(pages) - 1
			pages[last] = append(pages[last], placed{i, first, c.box.X0 + float64(col)*(c.width()+c.gap), y, high})
			y += high + k.Of(7)
			first += max(count, 1)
			if first < b.rows() {
				next()
			}
		}
		if y > c.box.Y1-k.Of(12) {
			next()
		}
	}
	if n := len(pages); n > 1 && len(pages[n-1]) == 0 {
		pages = pages[:n-1]
	}
	return pages
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
				title += " (continued)"
			}
			b.page.Text(scene.Text{At: at, String: scene.Shorten(title, k.Medium, true, c.width()), Height: k.Medium, Bold: true, Seat: scene.Hanging, Layer: scene.Notes})
			at.Y += bl.titleHigh(k)
		}
		draft.List(&b.page.Group, scene.Notes, at, bl.items[p.first:], k.Small, bl.indent(k), c.width(), p.y+p.height-at.Y+1e-6)
	}
}

// flowPages makes the pages that some blocks take. The blocks are made anew when the pages are drawn, since only then
// all page numbers are known; they take the same place then.
func (s *set) flowPages(title, about string, count int, make func() []block) []*leaf {
	c := s.columns(count)
	pages := flow(s.look, make(), c)
	var list []*leaf
	for i := range pages {
		i := i
		l := &leaf{title: title, wall: -1, scale: "none"}
		if i == 0 {
			l.about = about
		}
		l.draw = func(b *board) {
			blocks := make()
			parts := flow(b.look, blocks, c)
			if i < len(parts) {
				b.put(blocks, parts[i], c)
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
	return columns{box, count, k.Of(12)}
}

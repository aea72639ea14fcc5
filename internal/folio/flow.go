package folio

import (
	"math"

	"flitchlay/internal/draft"
	"flitchlay/internal/scene"
)

// Block is a table, a list with a title, or room for a drawing, as it flows into the columns of a page.
type Block struct {
	Table *draft.Table
	Title string       // of a list
	Items []draft.Item // of a list
	Space float64      // height that is kept free for a drawing, which who asks for it puts there
	Whole bool         // a form or a chart: never parted where a column holds it
}

// Placed is a part of a block where it came to stand.
type Placed struct {
	Block  int
	First  int // row or item
	X, Y   float64
	Height float64
}

// Columns are the columns that a flow fills, page by page.
type Columns struct {
	Box   scene.Box
	Count int
	Gap   float64
	Head  float64 // kept free over the columns of the first page
	Foot  float64 // kept free under them
}

// Width is that of one column.
func (c Columns) Width() float64 {
	return (c.Box.W() - c.Gap*float64(c.Count-1)) / float64(c.Count)
}

// indent is how far the text of a list stands in from its marks.
func (b *Block) indent(k draft.Look) float64 {
	w := 0.0
	for _, it := range b.Items {
		if it.Mark != "" {
			w = math.Max(w, scene.Width(it.Mark, k.Small, it.Bold)+k.Of(2.5))
		}
	}
	return w
}

// titleHigh is the height of a list's title.
func (b *Block) titleHigh(k draft.Look, width float64) float64 {
	if b.Title == "" {
		return 0
	}
	return k.Medium + draft.Pitch(k.Medium)*float64(len(draft.Folded(b.Title, k.Medium, true, width))-1) + k.Of(3)
}

// heights are how high the head of a block comes out, and each of its rows or items. A table takes the width first.
func (b *Block) heights(k draft.Look, width float64) (above float64, rows []float64) {
	if b.Space > 0 {
		return 0, []float64{b.Space}
	}
	if b.Table != nil {
		b.Table.Fit(k, width)
		return b.Table.Heights(k)
	}
	for _, it := range b.Items {
		rows = append(rows, draft.ParagraphHigh(it.Text, k.Small, it.Bold, width-b.indent(k))+k.Small*0.5)
	}
	return b.titleHigh(k, width), rows
}

// Put draws the parts of a page.
func (b *Board) Put(blocks []Block, parts []Placed, c Columns) {
	k := b.Look
	for _, p := range parts {
		bl := &blocks[p.Block]
		at := scene.Pt(p.X, p.Y)
		if bl.Space > 0 {
			continue
		}
		if bl.Table != nil {
			bl.Table.Draw(&b.Page.Group, k, at, p.First, p.Height+1e-6)
			continue
		}
		if bl.Title != "" {
			lines := draft.Folded(bl.Title, k.Medium, true, c.Width())
			if on := draft.Folded(k.Continued(bl.Title, k.Medium, c.Width()), k.Medium, true, c.Width()); p.First > 0 && len(on) <= len(lines) {
				lines = on
			}
			for i, line := range lines {
				b.Page.Text(scene.Text{At: at.Add(0, draft.Pitch(k.Medium)*float64(i)), String: line, Height: k.Medium, Bold: true, Seat: scene.Hanging, Layer: scene.Notes})
			}
			at.Y += bl.titleHigh(k, c.Width())
		}
		draft.List(&b.Page.Group, scene.Notes, at, bl.Items[p.First:], k.Small, bl.indent(k), c.Width(), p.Y+p.Height-at.Y+1e-6)
	}
}

// FlowPages makes the pages that some blocks take in so many columns.
func (s *Set) FlowPages(title, about string, count int, make func() []Block) []*Leaf {
	return s.Flowed(title, about, s.Columns(count), make, nil)
}

// Flowed makes the pages that some blocks take. The blocks are made anew when the pages are drawn, since only then
// all page numbers are known; they take the same place then. More draws what else stands on a page, over its parts; it
// may be nil.
func (s *Set) Flowed(title, about string, c Columns, make func() []Block, more func(*Board, []Block, []Placed, Columns)) []*Leaf {
	var list []*Leaf
	var blocks []Block // as they are drawn, on all pages
	var parts [][]Placed
	for i := range Flow(s.Look, make(), c) {
		l := &Leaf{Title: title, Wall: -1, Scale: "none"}
		if i == 0 {
			l.About = about
		}
		l.Draw = func(b *Board) {
			if parts == nil {
				blocks = make()
				parts = Flow(b.Look, blocks, c)
			}
			if i >= len(parts) {
				return
			}
			b.Put(blocks, parts[i], c)
			if more != nil {
				more(b, blocks, parts[i], c)
			}
		}
		list = append(list, l)
	}
	return list
}

// Columns are so many columns of the field, or as many as are 85 wide at least.
func (s *Set) Columns(count int) Columns {
	k := s.Look
	box := BoxOf(s.Paper.Field)
	box = scene.Box{X0: box.X0 + k.Of(8), Y0: box.Y0 + k.Of(8), X1: box.X1 - k.Of(8), Y1: box.Y1 - k.Of(6)}
	if s.Unfit() {
		box.Y0 += k.Of(11)
	}
	for count > 1 && box.W()/float64(count) < k.Of(85) {
		count--
	}
	return Columns{Box: box, Count: count, Gap: k.Of(12)}
}

// NoteColumns are three columns of notes and small tables: fewer where a title would be cut off, more where a line would
// be too long to be read well. Where that makes room for one more they stand closer.
func (s *Set) NoteColumns() Columns {
	const titleWide, lineWide, close = 78, 150, 8 // on the office page: the longest title, and some 90 letters
	c := s.Columns(1)
	c.Count = 3
	for c.Count > 1 && c.Width() < s.Look.Of(titleWide) {
		c.Count--
	}
	if c.Count == 1 {
		if two := (Columns{Box: c.Box, Count: 2, Gap: s.Look.Of(close)}); two.Width() >= s.Look.Of(titleWide) {
			return two
		}
	}
	for c.Count > 1 && c.Box.W()/float64(c.Count) > s.Look.Of(lineWide) {
		c.Count++
	}
	return c
}

// Cells divides the field into cells of about a size, at least one.
func (s *Set) Cells(wide, high float64) []scene.Box {
	k, f := s.Look, BoxOf(s.Paper.Field)
	top := f.Y0
	if s.Unfit() {
		top += k.Of(15)
	}
	cols := max(1, int(f.W()/k.Of(wide)+0.06))
	rows := max(1, int((f.Y1-top)/k.Of(high)+0.06))
	var list []scene.Box
	for r := range rows {
		for c := range cols {
			list = append(list, scene.BoxAt(f.X0+f.W()*float64(c)/float64(cols), top+(f.Y1-top)*float64(r)/float64(rows), f.W()/float64(cols), (f.Y1-top)/float64(rows)))
		}
	}
	return list
}

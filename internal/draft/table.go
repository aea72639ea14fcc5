package draft

import (
	"math"
	"slices"
	"strings"

	"flitchlay/internal/scene"
)

// Column is one column of a table.
type Column struct {
	Head  string
	Width float64
	Align scene.Anchor // Start, Middle or End
	Bold  bool
	Size  float64 // height of its text; 0: the table's
	Wrap  bool    // long text takes more lines also where another column could do with less; else only where the table is too wide for it
	Spare int     // 0: never left out; 1: where a table is too wide; 2 and more: before text is wrapped; the highest goes first
}

// Row is one row of a table.
type Row struct {
	Cells  []string
	Strong bool // all cells bold
	Rule   bool // a heavy rule under it
	Struck bool // struck out
	On     bool // goes on from the row above: they are not parted
	Tag    scene.Tag
	Link   string // page that the row leads to
}

// Table is rows under a head. It breaks over pages: Draw says how many rows it took.
type Table struct {
	Title   string // over the head; "" for none
	Columns []Column
	Rows    []Row
	Height  float64 // of text; 0: small
	Row     float64 // least height of a row; 0: 5.6 on the office page
	Lines   bool    // upright lines between the columns and an outline
	Light   bool    // no rules between rows
}

// Width is the width of all columns.
func (t *Table) Width() float64 {
	w := 0.0
	for _, c := range t.Columns {
		w += c.Width
	}
	return w
}

// cellPad is kept free at both sides of a cell, on the office page.
const cellPad = 1.6

func (t *Table) size(k Look, c Column) float64 {
	switch {
	case c.Size > 0:
		return c.Size
	case t.Height > 0:
		return t.Height
	}
	return k.Small
}

func (t *Table) head(k Look) float64 { return k.Small }

func (t *Table) least(k Look) float64 {
	if t.Row > 0 {
		return t.Row
	}
	return k.Of(5.6)
}

// lines are what a cell is lettered as.
func (t *Table) lines(k Look, c Column, text string, strong bool) []string {
	size, bold, w := t.size(k, c), c.Bold || strong, c.Width-2*k.Of(cellPad)
	if text == "" {
		return nil
	}
	if c.Wrap {
		return scene.Wrap(text, size, bold, w)
	}
	return Folded(text, size, bold, w)
}

// rowHeight is how high a row comes out.
func (t *Table) rowHeight(k Look, r Row) float64 {
	h := t.least(k)
	for i, c := range t.Columns {
		if i >= len(r.Cells) {
			break
		}
		size := t.size(k, c)
		n := len(t.lines(k, c, r.Cells[i], r.Strong))
		h = math.Max(h, float64(n)*size+float64(max(n-1, 0))*size*0.6+2*k.Of(1.5))
	}
	return h
}

// above is the height of title and head.
func (t *Table) above(k Look) float64 {
	h := 0.0
	if t.Title != "" {
		h += t.titleHigh(k, t.Title)
	}
	if t.headed() {
		h += t.headRow(k)
	}
	return h
}

// headPitch is how far lines of a title over a list stand apart, in their height.
const headPitch = 1.5

// titleHigh is how high a title over the table comes out with what parts it from the head.
func (t *Table) titleHigh(k Look, title string) float64 {
	lines := len(Folded(title, k.Medium, true, t.Width()))
	return k.Medium*(1+headPitch*float64(lines-1)) + k.Of(2.2)
}

// headed reports whether a column has a head.
func (t *Table) headed() bool {
	return slices.ContainsFunc(t.Columns, func(c Column) bool { return c.Head != "" })
}

func (t *Table) headRow(k Look) float64 {
	lines := 1
	for _, c := range t.Columns {
		lines = max(lines, len(t.headLines(k, c)))
	}
	size := t.head(k)
	return math.Max(t.least(k), float64(lines)*size+float64(lines-1)*size*0.6+k.Of(3))
}

// headLines are the lines of a column's head.
func (t *Table) headLines(k Look, c Column) []string {
	return scene.Wrap(c.Head, t.head(k), true, c.Width-2*k.Of(cellPad))
}

// Fits is how many of the rows from first on stand in a height together with title and head, and how high that comes out.
func (t *Table) Fits(k Look, first int, height float64) (count int, high float64) {
	high = t.above(k)
	for _, r := range t.Rows[min(first, len(t.Rows)):] {
		h := t.rowHeight(k, r)
		if high+h > height+1e-6 {
			return count, high
		}
		high += h
		count++
	}
	return count, high
}

// Heights are how high title and head come out together, and each row.
func (t *Table) Heights(k Look) (above float64, rows []float64) {
	rows = make([]float64, len(t.Rows))
	for i, r := range t.Rows {
		rows[i] = t.rowHeight(k, r)
	}
	return t.above(k), rows
}

// High is how high all rows come out with title and head.
func (t *Table) High(k Look) float64 {
	_, h := t.Fits(k, 0, math.Inf(1))
	return h
}

// Draw draws as many rows from first on as stand in a height, under title and head.
//
// Shape: how many it drew, and the box it takes.
func (t *Table) Draw(g *scene.Group, k Look, at scene.Point, first int, height float64) (count int, box scene.Box) {
	count, high := t.Fits(k, first, height)
	y, w := at.Y, t.Width()
	if t.Title != "" {
		title := t.Title
		if first > 0 {
			if on := k.Continued(title, k.Medium, w); len(Folded(on, k.Medium, true, w)) <= len(Folded(title, k.Medium, true, w)) {
				title = on
			}
		}
		for i, line := range Folded(title, k.Medium, true, w) {
			g.Text(scene.Text{At: scene.Pt(at.X, y+float64(i)*headPitch*k.Medium), String: line, Height: k.Medium, Bold: true, Seat: scene.Hanging, Layer: scene.Notes})
		}
		y += t.titleHigh(k, title)
	}
	top := y
	if t.headed() {
		g.HLine(at.X, at.X+w, y, scene.Pen(scene.Frame, k.Seam))
		x, h := at.X, t.headRow(k)
		for _, c := range t.Columns {
			t.cell(g, k, c, t.headLines(k, c), scene.BoxAt(x, y, c.Width, h), t.head(k), true)
			x += c.Width
		}
		y += h
	}
	g.HLine(at.X, at.X+w, y, scene.Pen(scene.Frame, k.Seam))
	for i := first; i < first+count; i++ {
		y = t.row(g, k, t.Rows[i], at.X, y, w, i == first+count-1)
	}
	if t.Lines {
		g.Rect(scene.Box{X0: at.X, Y0: top, X1: at.X + w, Y1: y}, scene.Pen(scene.Frame, k.Seam))
		x := at.X
		for _, c := range t.Columns[:len(t.Columns)-1] {
			x += c.Width
			g.VLine(x, top, y, scene.Pen(scene.Frame, k.Dimension))
		}
	}
	return count, scene.Box{X0: at.X, Y0: at.Y, X1: at.X + w, Y1: at.Y + high}
}

func (t *Table) row(g *scene.Group, k Look, r Row, x0, y, w float64, last bool) float64 {
	h := t.rowHeight(k, r)
	in := g
	if r.Tag.Class != "" {
		in = g.Part(r.Tag)
	}
	x := x0
	for i, c := range t.Columns {
		if i < len(r.Cells) {
			t.cell(in, k, c, t.lines(k, c, r.Cells[i], r.Strong), scene.BoxAt(x, y, c.Width, h), t.size(k, c), c.Bold || r.Strong)
		}
		x += c.Width
	}
	if r.Struck {
		in.HLine(x0+k.Of(1), x0+w-k.Of(1), y+h/2, scene.Pen(scene.Frame, k.Dimension))
	}
	if r.Link != "" {
		g.Link(scene.BoxAt(x0, y, w, h), r.Link)
	}
	y += h
	switch {
	case r.Rule:
		g.HLine(x0, x0+w, y, scene.Pen(scene.Frame, 2*k.Outline))
	case last:
		g.HLine(x0, x0+w, y, scene.Pen(scene.Frame, k.Seam))
	case !t.Light:
		g.HLine(x0, x0+w, y, scene.Pen(scene.Frame, k.Extension))
	}
	return y
}

// Continued is a bold title as it is repeated over what goes on: in full, or shorter where a width does not take it.
func (k Look) Continued(title string, height, width float64) string {
	on, middle, short := " (continued)", " (cont.)", ", on"
	if k.On[0] != "" {
		on, middle, short = k.On[0], k.On[1], k.On[1]
	}
	main, _, _ := strings.Cut(title, ",")
	for _, text := range []string{title + on, main + on, title + middle, main + middle} {
		if scene.Width(text, height, true) <= width {
			return text
		}
	}
	return main + short
}

// cell letters the lines of a cell in its middle height.
func (t *Table) cell(g *scene.Group, k Look, c Column, lines []string, b scene.Box, size float64, bold bool) {
	x := b.X0 + k.Of(cellPad)
	switch c.Align {
	case scene.Middle:
		x = (b.X0 + b.X1) / 2
	case scene.End:
		x = b.X1 - k.Of(cellPad)
	}
	pitch := size * 1.6
	y := (b.Y0+b.Y1)/2 - pitch*float64(len(lines)-1)/2
	for _, line := range lines {
		g.Text(scene.Text{At: scene.Pt(x, y), String: line, Height: size, Bold: bold, Anchor: c.Align, Seat: scene.Centred, Layer: scene.Notes})
		y += pitch
	}
}

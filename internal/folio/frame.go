package folio

import (
	"math"
	"slices"
	"strings"

	"flitchlay/internal/draft"
	"flitchlay/internal/paper"
	"flitchlay/internal/scene"
)

// BoxOf turns a box of a template into one of the scene.
func BoxOf(b paper.Box) scene.Box { return scene.BoxAt(b.X, b.Y, b.W, b.H) }

// Open makes the paper of a page ready: frame, strip and title block.
func (s *Set) Open(l *Leaf) *Board {
	t := s.Paper
	p := scene.NewPage(l.Number, l.Title, t.Width, t.Height)
	p.Frame = BoxOf(t.Frame)
	field, strip := BoxOf(t.Field), BoxOf(t.Strip)
	var band float64
	if l.Listed {
		band = s.ListBand()
	}
	field.Y1, strip.Y0 = field.Y1+band, strip.Y0+band
	b := &Board{Set: s, Leaf: l, Page: p, Space: draft.NewSpace(field.Inset(s.Look.Of(2))), Field: field}
	g := p.Part(scene.Tag{Class: "frame"})
	g.Rect(p.Frame, scene.Pen(scene.Frame, t.FrameLine))
	var blocks []paper.Block
	for _, block := range t.Blocks {
		if block.Box.Y >= strip.Y0-1e-6 {
			blocks = append(blocks, block)
			g.Rect(BoxOf(block.Box), scene.Pen(scene.Frame, t.Divider))
		}
	}
	g.Rect(strip, scene.Pen(scene.Frame, t.StripLine))
	for _, block := range blocks {
		b.block(g, block)
	}
	b.centring(g)
	if s.Unfit() {
		b.notForHanging(g)
	}
	return b
}

// ListBand is how much lower the field of a page of lists reaches than that of others: so high is the band of the strip that has key and
// reviews alone; 0 where they stand beside the title.
func (s *Set) ListBand() float64 {
	strip := s.Paper.Strip
	low := strip.Y + strip.H
	for _, b := range s.Paper.Blocks {
		if b.Kind != paper.Key && b.Kind != paper.Stamp {
			low = math.Min(low, b.Box.Y)
		}
	}
	for _, b := range s.Paper.Blocks {
		if b.Box.Y < low && b.Box.Y+b.Box.H > low+1e-6 {
			return 0
		}
	}
	return low - strip.Y
}

// heading letters what a block of the strip is for, and gives what is left under it.
func (b *Board) heading(g *scene.Group, block paper.Block) scene.Box {
	k := b.Look
	box := BoxOf(block.Box)
	if block.Heading == "" {
		return box
	}
	y := draft.Paragraph(g, scene.Frame, scene.Pt(box.X0+k.Of(2.2), box.Y0+k.Of(2)), block.Heading, k.Small, false, block.Box.W-2*k.Of(2.2))
	box.Y0 = y - 0.2*k.Small
	return box
}

func (b *Board) block(g *scene.Group, block paper.Block) {
	switch block.Kind {
	case paper.Stamp:
		b.heading(g, block)
		b.Page.Reserve(strings.ToLower(block.Heading), BoxOf(block.Clear(b.Paper.Text.Small)))
	case paper.Key:
		b.keyPlan(g, b.heading(g, block).Inset(b.Look.Of(2)))
	case paper.Revisions:
		b.revisions(g, block)
	case paper.Title, paper.Words:
		b.titleBlock(g, block)
	}
}

// revisions draws the table of revisions, the last ones where there are more than rows.
func (b *Board) revisions(g *scene.Group, block paper.Block) {
	k, box := b.Look, BoxOf(block.Box)
	b.heading(g, block)
	pen := scene.Pen(scene.Frame, k.Thin)
	rows := int((block.Box.H - k.Of(6)) / block.Row)
	top := box.Y1 - float64(rows)*block.Row
	p := b.Room.Project
	list := [][3]string{{"-", "First issue", p.FirstIssue()}}
	for _, r := range p.Revisions {
		list = append(list, [3]string{r.Mark, r.Note, r.Date})
	}
	if len(list) > rows {
		list = list[len(list)-rows:]
	}
	x := box.X0
	for _, c := range block.Columns[:2] {
		x += c
		g.VLine(x, top, box.Y1, pen)
	}
	y := top
	for i, high := range b.revisionRows(block, list, rows) {
		g.HLine(box.X0, box.X1, y, pen)
		h := float64(high) * block.Row
		if i < len(list) {
			b.revision(g, block, list[i], scene.BoxAt(box.X0, y, box.W(), h))
		}
		y += h
	}
}

// revisionRows are how many rows each line of the table takes: a note that one has no room for takes what others leave, the last
// revisions first.
func (b *Board) revisionRows(block paper.Block, list [][3]string, rows int) []int {
	out := make([]int, max(rows, len(list)))
	for i := range out {
		out[i] = 1
	}
	left := rows - len(list)
	for i := len(list) - 1; i >= 0; i-- {
		for n := 1; n <= 1+left; n++ {
			if cellLines(b.Look, list[i][1], block.Columns[1]-2*b.Look.Of(1), float64(n)*block.Row) != nil {
				out[i], left = n, left-n+1
				break
			}
		}
	}
	return out[:len(list)+left]
}

// revision letters a line of the table, its mark in the shape that it has on the drawings.
func (b *Board) revision(g *scene.Group, block paper.Block, cells [3]string, box scene.Box) {
	k, x, y := b.Look, box.X0, box.Centre().Y
	for j, text := range cells {
		w := block.Columns[j]
		if r := draft.DeltaSize(k, text, k.Thin); j == 0 && text != "-" && 1.6*r <= block.Row-k.Of(0.5) && 1.8*r <= w-k.Of(0.8) {
			draft.Delta(g, k, scene.Frame, scene.Pt(x+w/2, y+0.2*r), text, k.Thin)
			x += w
			continue
		}
		b.cell(g, scene.BoxAt(x, box.Y0, w, box.H()), text, j == 0)
		x += w
	}
}

// cell letters a text in a cell of the strip: on more lines where it needs them. What has no room even so is told to stand in
// full on the page that lists all revisions, where the set has one.
func (b *Board) cell(g *scene.Group, box scene.Box, text string, middle bool) {
	k := b.Look
	w := box.W() - 2*k.Of(1)
	if text == "" {
		return
	}
	lines := cellLines(k, text, w, box.H())
	if page := b.PageOf(RevisionsKey); lines == nil && page != "" {
		lines = cellLines(k, "see "+page, w, box.H())
	}
	if lines == nil { // a mark that no cell takes, or a set without a cover
		return
	}
	c := box.Centre()
	pitch := cellPitch * k.Small
	y := c.Y - pitch*float64(len(lines)-1)/2
	for _, line := range lines {
		t := scene.Text{At: scene.Pt(box.X0+k.Of(1), y), String: line, Height: k.Small, Seat: scene.Centred, Layer: scene.Frame}
		if middle {
			t.At.X, t.Anchor = c.X, scene.Middle
		}
		g.Text(t)
		y += pitch
	}
}

// Cover is the title of the first page of a set that says what it is about, RevisionsKey what the page with all revisions is looked up by.
const (
	Cover        = "COVER"
	RevisionsKey = "revisions"
)

const cellPitch = 1.5 // of the lines of a cell, in their height

// cellLines are the lines of a text in a cell, nil where there is no room for them.
func cellLines(k draft.Look, text string, w, h float64) []string {
	lines := scene.Wrap(text, k.Small, false, w)
	if cellPitch*k.Small*float64(len(lines)-1)+1.6*k.Small > h || slices.ContainsFunc(strings.Fields(text), func(word string) bool { return scene.Width(word, k.Small, false) > w }) {
		return nil
	}
	return lines
}

// centring draws the marks at the middles of the paper's edges, where the frame leaves room for them.
//
// Source: centring marks 0.7 wide, from the edge of the drawing space on, on the axes of the trimmed sheet: ISO 5457
// (that they exist and how wide they are from a page that restates it, the axes from memory).
func (b *Board) centring(g *scene.Group) {
	f, w, h := b.Page.Frame, b.Page.Width, b.Page.Height
	pen := scene.Pen(scene.Margin, 0.7)
	const edge = 4 // what printers do not reach
	if !b.Paper.Centring {
		return
	}
	if f.X0 < edge+3 || f.Y0 < edge+3 || w-f.X1 < edge+3 || h-f.Y1 < edge+3 {
		return
	}
	g.HLine(edge, f.X0, h/2, pen)
	g.HLine(f.X1, w-edge, h/2, pen)
	g.VLine(w/2, edge, f.Y0, pen)
	g.VLine(w/2, f.Y1, h-edge, pen)
}

// notForHanging says so in the upper right corner of the field, in a heavy frame.
func (b *Board) notForHanging(g *scene.Group) {
	k, notHanging := b.Look, b.notHanging()
	w := scene.Width(notHanging, k.Large, true) + k.Of(8)
	box := scene.BoxAt(b.Field.X1-w-k.Of(6), b.Field.Y0+k.Of(5), w, k.Of(10))
	g.Rect(box, scene.Pen(scene.Frame, 2*k.Outline).Filled(scene.White))
	g.Text(scene.Text{At: box.Centre(), String: notHanging, Height: k.Large, Bold: true, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Notes})
	b.Space.Take(box.Inset(-k.Of(2)))
}

// NoteWidth is what NOT FOR HANGING leaves of the field's width for notes at its head.
func (b *Board) NoteWidth() float64 {
	k := b.Look
	w := b.Field.W() - k.Of(12)
	if b.Unfit() {
		w -= scene.Width(b.notHanging(), k.Large, true) + k.Of(18)
	}
	return w
}

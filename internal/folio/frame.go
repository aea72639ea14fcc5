package folio

import (
	"math"
	"slices"
	"strconv"
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
	field := BoxOf(t.Field)
	b := &Board{Set: s, Leaf: l, Page: p, Space: draft.NewSpace(field.Inset(s.Look.Of(2))), Field: field}
	g := p.Part(scene.Tag{Class: "frame"})
	g.Rect(p.Frame, scene.Pen(scene.Frame, t.FrameLine))
	for _, block := range t.Blocks {
		g.Rect(BoxOf(block.Box), scene.Pen(scene.Frame, t.Divider))
	}
	g.Rect(BoxOf(t.Strip), scene.Pen(scene.Frame, t.StripLine))
	for _, block := range t.Blocks {
		b.block(g, block)
	}
	b.centring(g)
	if s.Unfit() {
		b.notForHanging(g)
	}
	return b
}

// heading letters what a block of the strip is for, and gives what is left under it.
func (b *Board) heading(g *scene.Group, block paper.Block) scene.Box {
	k := b.Look
	box := BoxOf(block.Box)
	if block.Heading == "" {
		return box
	}
	text := scene.Shorten(block.Heading, k.Small, false, block.Box.W-2*k.Of(2.2))
	g.Text(scene.Text{At: scene.Pt(box.X0+k.Of(2.2), box.Y0+k.Of(2)), String: text, Height: k.Small, Seat: scene.Hanging, Layer: scene.Frame})
	box.Y0 += k.Of(2) + 1.6*k.Small
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
	for i := range rows {
		g.HLine(box.X0, box.X1, top+float64(i)*block.Row, pen)
	}
	x := box.X0
	for _, c := range block.Columns[:2] {
		x += c
		g.VLine(x, top, box.Y1, pen)
	}
	p := b.Room.Project
	list := [][3]string{{"-", "First issue", p.Drawn}}
	for _, r := range p.Revisions {
		list = append(list, [3]string{r.Mark, r.Note, r.Date})
	}
	if len(list) > rows {
		list = list[len(list)-rows:]
	}
	for i, cells := range list {
		x, y := box.X0, top+(float64(i)+0.5)*block.Row
		for j, text := range cells {
			w := block.Columns[j]
			if r := draft.DeltaSize(k, text, k.Thin); j == 0 && text != "-" && 1.6*r <= block.Row-k.Of(0.5) && 1.8*r <= w-k.Of(0.8) {
				draft.Delta(g, k, scene.Frame, scene.Pt(x+w/2, y+0.2*r), text, k.Thin)
				x += w
				continue
			}
			b.cell(g, scene.BoxAt(x, y-block.Row/2, w, block.Row), text, j == 0)
			x += w
		}
	}
}

// cell letters a text in a cell of the strip: on more lines, and smaller, where it needs that. What has no room even so is told
// to stand in full on the first page.
func (b *Board) cell(g *scene.Group, box scene.Box, text string, middle bool) {
	k := b.Look
	w := box.W() - 2*k.Of(1)
	size, lines := cellLines(k, text, w, box.H())
	if lines == nil && len(b.List) > 0 {
		size, lines = cellLines(k, "in full on "+b.List[0].Number, w, box.H())
	}
	if lines == nil {
		size, lines = k.Small, []string{scene.Shorten(text, k.Small, false, w)}
	}
	c := box.Centre()
	pitch := cellPitch * size
	y := c.Y - pitch*float64(len(lines)-1)/2
	for _, line := range lines {
		t := scene.Text{At: scene.Pt(box.X0+k.Of(1), y), String: line, Height: size, Seat: scene.Centred, Layer: scene.Frame}
		if middle {
			t.At.X, t.Anchor = c.X, scene.Middle
		}
		g.Text(t)
		y += pitch
	}
}

const (
	cellPitch    = 1.5 // of the lines of a cell, in their height
	leastLetters = 0.7 // of the small letters: what has no room otherwise may be so small
)

// cellLines are the lines of a text in a cell and how high their letters are, nil where there is no room for them.
func cellLines(k draft.Look, text string, w, h float64) (size float64, lines []string) {
	for _, share := range []float64{1, 0.9, 0.8, leastLetters} {
		size = share * k.Small
		lines = scene.Wrap(text, size, false, w)
		if cellPitch*size*float64(len(lines)-1)+1.6*size > h {
			continue
		}
		if !slices.ContainsFunc(lines, func(l string) bool { return scene.Width(l, size, false) > w }) {
			return size, lines
		}
	}
	return 0, nil
}

// values fill the fields of the title block.
func (b *Board) values() map[string]string {
	p, v := b.Room.Project, b.Room.Veneer
	scale := b.Leaf.Scale
	switch scale {
	case "none":
		scale = ""
	case "":
		scale = "scale as noted"
	default:
		scale, _, _ = strings.Cut(scale, " (") // the plain ratio stands under the view
		scale = "scale " + scale
	}
	return map[string]string{
		"title": p.Title, "number": p.Number, "room": p.Room, "place": p.Place, "for": p.For, "by": p.By, "section": p.Section,
		"submittal": p.SubmittalNumber(), "document": p.Document, "contractor": p.Contractor,
		"drawn by": p.DrawnBy, "checked by": p.CheckedBy, "approved by": p.ApprovedBy,
		"tag": p.Tag, "drawn": p.Drawn, "measured": p.Measured, "issue": b.Issue(), "issued": b.Issued(), "scale": scale,
		"page": strconv.Itoa(b.Leaf.count), "pages": strconv.Itoa(len(b.List)), "page title": b.Leaf.Title,
		"page number": b.Leaf.Number, "paper": b.Paper.Name,
		"species": strings.TrimSpace(v.Species + " " + v.Cut),
	}
}

// titleBlock draws rows of text, with the logo and the page number where the template wants them.
func (b *Board) titleBlock(g *scene.Group, block paper.Block) {
	k, box := b.Look, BoxOf(block.Box)
	values := b.values()
	y := box.Y0
	for i, row := range block.Rows {
		h := row.Height
		if i == len(block.Rows)-1 {
			h = math.Max(h, box.Y1-y) // the last takes what is left
		}
		if i > 0 {
			g.HLine(box.X0, box.X1, y, scene.Pen(scene.Frame, k.Thin))
		}
		right := box.X1
		if row.Number > 0 {
			right -= row.Number
			g.VLine(right, y, y+h, scene.Pen(scene.Frame, k.Thin))
			c := scene.Pt(right+row.Number/2, y+h/2)
			height := draft.FitHeight(b.Leaf.Number, k.Huge, k.Small, true, row.Number-k.Of(3))
			g.Text(scene.Text{At: c, String: b.Leaf.Number, Height: height, Bold: true, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Frame})
		}
		if row.Logo > 0 && b.logo != nil {
			at := b.logo.Fit(scene.BoxAt(right-row.Logo-k.Of(1), y+k.Of(1), row.Logo, h-k.Of(2)))
			g.Image(b.logo.Image(at, "mark of "+b.Room.Project.By, scene.Frame))
			right -= row.Logo + k.Of(1)
		}
		b.rowLines(g, row, scene.Box{X0: box.X0, Y0: y, X1: right, Y1: y + h}, values)
		y += h
	}
}

// titleLine is a line of a row of the title block as it is lettered.
type titleLine struct {
	text   string
	height float64
	bold   bool
}

// rowLines letters the lines of a row, evenly spread: on more lines where they are too long and there is room, else smaller.
func (b *Board) rowLines(g *scene.Group, row paper.Row, box scene.Box, values map[string]string) {
	k := b.Look
	lines, sum := b.titleLines(row, box, values)
	under := 0.0 // what letters of the last line hang down
	if n := len(lines) - 1; n >= 1 {
		under = 0.24 * lines[n].height
	}
	gap := (box.H() - sum - under) / float64(len(lines)+1)
	y := box.Y0
	for _, l := range lines {
		y += gap + l.height
		g.Text(scene.Text{At: scene.Pt(box.X0+k.Of(2.6), y), String: l.text, Height: l.height, Bold: l.bold, Layer: scene.Frame})
	}
}

// titleLines are the lines of a row with the largest letters that they have room with, and the sum of their heights.
func (b *Board) titleLines(row paper.Row, box scene.Box, values map[string]string) (lines []titleLine, sum float64) {
	k := b.Look
	w := box.W() - 2*k.Of(2.6)
	for _, share := range []float64{1, 0.9, 0.8, leastLetters} {
		lines, sum = nil, 0
		for _, l := range row.Lines {
			text := paper.Fill(l.Text, values)
			if text == "" {
				continue
			}
			h := share * draft.FitHeight(text, l.Height, k.Small, l.Bold, w)
			for _, part := range folded(text, h, l.Bold, w) {
				pieces := []string{part}
				if scene.Width(part, h, l.Bold) > w {
					pieces = scene.Wrap(part, h, l.Bold, w)
				}
				for _, piece := range pieces {
					lines = append(lines, titleLine{piece, h, l.Bold})
					sum += h
				}
			}
		}
		if (box.H()-sum)/float64(len(lines)+1) >= k.Of(0.75)*share {
			return lines, sum
		}
	}
	lines, sum = nil, 0
	for _, l := range row.Lines { // no room for more lines, however small: they are shortened
		if text := paper.Fill(l.Text, values); text != "" {
			h := leastLetters * k.Small
			lines = append(lines, titleLine{scene.Shorten(closer(text, h, l.Bold, w), h, l.Bold, w), h, l.Bold})
			sum += h
		}
	}
	return lines, sum
}

// closer sets the parts of a line that is too long closer together: they stand apart by three spaces, then by two.
func closer(text string, height float64, bold bool, width float64) string {
	if scene.Width(text, height, bold) <= width {
		return text
	}
	return strings.ReplaceAll(text, apartBy, "  ")
}

// apartBy is what the parts of a line of a title block stand apart by.
const apartBy = "   "

// folded parts a line that is too long where its parts stand apart.
func folded(text string, height float64, bold bool, width float64) []string {
	if close := closer(text, height, bold, width); scene.Width(close, height, bold) <= width {
		return []string{close}
	}
	var lines []string
	for _, part := range strings.Split(text, apartBy) {
		part = strings.TrimSpace(part)
		if n := len(lines) - 1; n >= 0 && scene.Width(lines[n]+apartBy+part, height, bold) <= width {
			lines[n] += apartBy + part
		} else if part != "" {
			lines = append(lines, part)
		}
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

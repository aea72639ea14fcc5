package crewday

import (
	"math"

	"flitchlay/internal/finding"
	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
)

// leanRow is one wall of the table of leans: its name, its length, which differs at the level line where its ends lean, and how
// its ends lean.
type leanRow struct {
	name        string
	length      []string
	left, right string
}

// leanRows lists all covered walls with what the room file says of them.
func (c *Set) leanRows() []leanRow {
	var list []leanRow
	marks, much := folio.WallMarks(c.Plan), c.leansMuch()
	for _, w := range c.Faces {
		floor, end, level := w.Lengths()
		long := []string{c.Say(floor)}
		switch {
		case level && end != floor:
			long = []string{c.Words.Say("start.floor_length", c.Say(floor)), c.Words.Say("start.level_length", c.Say(end))}
		case end != floor:
			long = []string{c.Words.Say("start.floor_length", c.Say(floor)), c.Words.Say("start.zero_length", c.Say(end))}
		case w.W.LeanLeft != 0 || w.W.LeanRight != 0:
			long = []string{c.Words.Say("start.floor_length", c.Say(floor))}
		}
		row := leanRow{marks[w.Wall] + "  " + w.W.Name, long, c.leanWords(w.W.LeanLeft), c.leanWords(w.W.LeanRight)}
		if much[wallEnd{w.Wall, false}] {
			row.left = c.Words.Say("start.too_much", row.left)
		}
		if much[wallEnd{w.Wall, true}] {
			row.right = c.Words.Say("start.too_much", row.right)
		}
		list = append(list, row)
	}
	return list
}

// wallEnd is an end of a wall.
type wallEnd struct {
	wall  int
	right bool
}

// leansMuch are the ends of walls that lean by so much that they are put right before sheets hang there.
func (c *Set) leansMuch() map[wallEnd]bool {
	ends := map[wallEnd]bool{}
	for _, f := range c.Plan.Findings {
		if f.Code == finding.LeansMuch {
			ends[wallEnd{f.Wall, f.At > 0}] = true
		}
	}
	return ends
}

// leanWords say how an upright edge leans from floor to ceiling.
func (c *Set) leanWords(l L) string {
	switch {
	case l > 0:
		return c.Words.Say("start.lean_right", c.Inches(l))
	case l < 0:
		return c.Words.Say("start.lean_left", c.Inches(-l))
	}
	return c.Words.Say("start.plumb")
}

// leanColumns are the widths of the columns of the table, in mm: names have what the others leave.
func (b *Board) leanColumns(rows []leanRow, wide float64) [7]float64 {
	u, size := b.Unit, folio.TapedText*b.Unit
	widths := [7]float64{0, 22, 17, 14, 14, 14, 14}
	for _, r := range rows {
		for k, list := range [][]string{r.length, {r.left}, {r.right}} {
			for _, s := range list {
				widths[1+2*k] = math.Max(widths[1+2*k], scene.Width(s, size, false)/u+2.6)
			}
		}
	}
	widths[0] = wide
	for i := 1; i < len(widths); i++ {
		widths[i] *= u
		widths[0] -= widths[i]
	}
	return widths
}

// Heights in the table of leans, in mm on letter paper.
const (
	leanRowHigh = 7.4 // of a row of one line
	leanRowLow  = 7.0 // of one where the table would go on on another page for a row or two
	leanPitch   = 5.3 // from one line of a row to the next
)

// nameLines are the lines of a wall's name.
func (b *Board) nameLines(r leanRow, wide float64) []string {
	return scene.Wrap(r.name, folio.TapedText*b.Unit, false, wide-2*b.Unit)
}

// leanHigh is how high the table comes out with rows so high.
func (b *Board) leanHigh(wide, row float64, rows []leanRow) float64 {
	lines := float64(len(scene.Wrap(b.Words.Say("start.read"), folio.TapedText*b.Unit, true, wide)) - 1)
	columns := b.leanColumns(rows, wide)
	for _, r := range rows {
		lines += float64(max(len(b.nameLines(r, columns[0])), len(r.length)) - 1)
	}
	return (7.4 + row*float64(len(rows)+1) + leanPitch*lines + 1.6) * b.Unit
}

// leanTable draws as many rows as have room, and gives back the others. Rows are lower where that brings all of them in.
func (b *Board) leanTable(box scene.Box, rows []leanRow) []leanRow {
	row := leanRowHigh
	if b.leanHigh(box.W(), leanRowHigh, rows) > box.H() && b.leanHigh(box.W(), leanRowLow, rows) <= box.H() {
		row = leanRowLow
	}
	u, size := b.Unit, folio.TapedText*b.Unit
	g := b.Page.Part(scene.Tag{Class: "leans"})
	for i, line := range scene.Wrap(b.Words.Say("start.read"), size, true, box.W()) {
		if i > 0 {
			box.Y0 += leanPitch * u
		}
		b.Word(g, scene.Pt(box.X0, box.Y0+5*u), line, size, true, scene.Start)
	}
	read := b.Words.Say("start.as_read")
	widths := b.leanColumns(rows, box.W())
	pen := scene.Pen(scene.Frame, folio.TapedFine)
	top := box.Y0 + 7.4*u
	y, shown := top, -1
	for r := -1; r < len(rows); r++ {
		cells := [7][]string{{b.Words.Say("start.wall")}, {b.Words.Say("start.length")}, {read}, {b.Words.Say("start.left")}, {read}, {b.Words.Say("start.right")}, {read}}
		if r >= 0 {
			cells = [7][]string{b.nameLines(rows[r], widths[0]), rows[r].length, nil, {rows[r].left}, nil, {rows[r].right}, nil}
		}
		high := (row + leanPitch*float64(max(len(cells[0]), len(cells[1]))-1)) * u
		if y+high > box.Y1-1.5*u {
			break
		}
		x := box.X0
		for i, lines := range cells {
			for k, s := range lines {
				at := y + high/2 + (float64(k)-float64(len(lines)-1)/2)*leanPitch*u
				g.Text(scene.Text{At: scene.Pt(x+1.2*u, at), String: s, Height: size, Seat: scene.Centred, Layer: scene.Notes})
			}
			x += widths[i]
		}
		y += high
		g.HLine(box.X0, box.X1, y, pen)
		shown = r
	}
	g.Rect(scene.Box{X0: box.X0, Y0: top, X1: box.X1, Y1: y}, scene.Pen(scene.Frame, 0.5))
	x := box.X0
	for _, w := range widths[:len(widths)-1] {
		x += w
		g.VLine(x, top, y, pen)
	}
	return rows[max(shown+1, 0):]
}

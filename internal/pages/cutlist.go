package pages

import (
	"fmt"
	"math"
	"sort"
	"strconv"
	"strings"

	"flitchlay/internal/draft"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/scene"
)

// cutRow is one sheet of the cut list.
type cutRow struct {
	order        int
	number       string
	flitch       string
	cut          string
	above, below string
	rip, side    string
	bends, holes []string
	wall         string
	struck       string // why it is not cut
	sheet        *layout.Sheet
}

// rowsOnPage is how many sheets stand on one page of the cut list.
const rowsOnPage = 18

// firstCut is how many are cut and hung before all others.
const firstCut = 3

// cutRows lists all sheets in hanging order.
func (c *crewSet) cutRows() []cutRow {
	var list []cutRow
	for i := range c.plan.Runs {
		r := &c.plan.Runs[i]
		for k := range r.Sheets {
			s := &r.Sheets[k]
			if s.Hung || len(s.Pieces) == 0 {
				continue
			}
			row := cutRow{order: len(list) + 1, number: c.number(s), flitch: s.Flitch, cut: c.say(s.CutLength), above: c.say(s.Above), below: c.say(s.Below), sheet: s}
			if s.Ripped != "" {
				row.rip, row.side = c.inches(s.RipTo), strings.ToUpper(s.Ripped)
				if r.Up {
					row.side = map[string]string{"left": "LOWER", "right": "UPPER"}[s.Ripped]
				}
			}
			if r.Up { // its ends, right of the wall's left end
				row.above, row.below = "to "+c.say(s.Above), "from "+c.say(-s.Below)
			}
			c.bendsAndHoles(s, &row)
			list = append(list, row)
		}
	}
	return list
}

// bendsAndHoles fills in where a sheet is bent, from its raw left edge, and what is cut out of it.
func (c *crewSet) bendsAndHoles(s *layout.Sheet, row *cutRow) {
	for _, w := range c.walls {
		for _, h := range w.hangs {
			if h.holds(s) && (row.wall == "" || !h.before) {
				row.wall = w.w.Name
			}
		}
	}
	for _, w := range c.walls {
		for _, h := range w.hangs {
			if !h.holds(s) {
				continue
			}
			on := ""
			if w.w.Name != row.wall {
				on = " on " + w.w.Name
			}
			if w.run.Up {
				w.holesUp(s, row)
				continue
			}
			for i := range w.w.Openings {
				o := &w.w.Openings[i]
				if o.FromLeft >= h.to || o.Right() <= h.from {
					continue
				}
				row.holes = append(row.holes, o.Name+on)
				for _, x := range []L{o.FromLeft, o.Right()} {
					if o.WrapReveal && x > h.from && x < h.to {
						row.bends = append(row.bends, c.bare(x-h.start)+" "+o.Name)
					}
				}
			}
			for _, b := range w.boxesOf() {
				if b.X-b.HoleWidth/2 < h.to && b.X+b.HoleWidth/2 > h.from && w.covers(h, b.X, b.Z) {
					row.holes = append(row.holes, b.letter+on)
				}
			}
			if h.after {
				row.bends = append(row.bends, c.bare(w.right-h.start)+" "+w.cornerAtRight())
			}
		}
	}
}

// holesUp lists what is cut out of a piece of a band.
func (w *crewWall) holesUp(s *layout.Sheet, row *cutRow) {
	x0, z0, x1, z1, ok := stretch(s, w.wall)
	if !ok {
		return
	}
	for i := range w.w.Openings {
		if o := &w.w.Openings[i]; o.FromLeft < x1 && o.Right() > x0 && o.Head > z0 && !(o.SillGiven && o.Sill >= z1) {
			row.holes = append(row.holes, o.Name)
		}
	}
	for _, b := range w.boxesOf() {
		if b.X-b.HoleWidth/2 < x1 && b.X+b.HoleWidth/2 > x0 && b.Z-b.HoleHigh/2 < z1 && b.Z+b.HoleHigh/2 > z0 {
			row.holes = append(row.holes, b.letter)
		}
	}
}

// holds reports whether a sheet is one of a place.
func (h *hang) holds(s *layout.Sheet) bool {
	for _, t := range h.sheets {
		if t == s {
			return true
		}
	}
	return false
}

// covers reports whether a place covers a height beside x.
func (w *crewWall) covers(h *hang, x, z L) bool {
	d := wallBoard{w: w}
	return d.covered(x, z, h)
}

// cornerAtRight is the name of the corner at the wall's right end.
func (w *crewWall) cornerAtRight() string {
	for i := range w.run.Corners {
		if c := &w.run.Corners[i]; c.LeftWall == w.wall {
			return c.Name
		}
	}
	return ""
}

// cutPages draws the cut list: the first three on top, then all others, then what is not cut, then how many of which
// stock length.
func (c *crewSet) cutPages(n int) []*scene.Page {
	rows := c.cutRows()
	struck := c.struckRows()
	var out []*scene.Page
	var b *crewBoard
	var g *scene.Group
	y, bottom, count := 0.0, 0.0, 0
	u := c.u
	fresh := func() {
		b = c.open(n+len(out), "install-"+pad(n+len(out)), "Cut list", true, [2]string{c.place(), c.cutWords()})
		b.page.Title = "Cut list"
		area := b.bar(scene.Box{X0: b.page.Frame.X0, Y0: b.head.Y1, X1: b.page.Frame.X1, Y1: b.page.Frame.Y1})
		g = b.page.Part(scene.Tag{Class: "cut-list"})
		y, bottom, count = area.Y0, area.Y1, 0
		out = append(out, b.page)
	}
	high := 11 * u
	for i, r := range rows {
		if b == nil || count == rowsOnPage || y+high > bottom {
			fresh()
			if i > 0 {
				y = b.cutHead(g, y)
			}
		}
		switch i {
		case 0:
			b.word(g, scene.Pt(b.page.Frame.X0+3*u, y+6*u), "FIRST: cut these, hang, hold", crewText*u, true, scene.Start)
			y = b.cutHead(g, y+8*u)
		case firstCut:
			if count > 0 {
				b.word(g, scene.Pt(b.page.Frame.X0+3*u, y+7*u), "THEN, when the hold is signed", crewText*u, true, scene.Start)
				y += 9.4 * u
				g.HLine(b.page.Frame.X0, b.page.Frame.X1, y, scene.Pen(scene.Frame, crewFine))
			}
		}
		b.cutRow(g, r, y, high)
		y += high
		count++
		width := crewFine
		if (i+1)%firstCut == 0 || i == len(rows)-1 {
			width = 1
		}
		if y < b.page.Frame.Y1-0.5*u {
			g.HLine(b.page.Frame.X0, b.page.Frame.X1, y, scene.Pen(scene.Frame, width))
		}
	}
	if b == nil {
		fresh()
	}
	for i, r := range struck {
		if y+(8.4+8)*u > bottom {
			fresh()
			y += 2 * u
		}
		if i == 0 {
			b.word(g, scene.Pt(b.page.Frame.X0+3*u, y+6.4*u), "NOT CUT", crewText*u, true, scene.Start)
			y += 8 * u
		}
		b.struckRow(g, r, y, 8.4*u)
		y += 8.4 * u
	}
	lines := c.stockLengths(rows)
	y += 1 * u
	for i, line := range lines {
		if y+8*u > bottom {
			fresh()
			y += 2 * u
		}
		y += 6 * u
		b.word(g, scene.Pt(b.page.Frame.X0+3*u, y), line, crewText*u, i == 0, scene.Start)
	}
	return out
}

// cutWords says what the figures of the list hold.
func (c *crewSet) cutWords() string {
	if c.room.Veneer.Horizontal {
		return "trims in; ends: right of the wall's left end"
	}
	return "trims in; up, down: of the level mark"
}

// cutWidths are the widths of the columns, from the page's frame on; wall takes the rest.
//
// Shape: tick, order, number, flitch, cut, above and below, rip, bends, holes.
func (b *crewBoard) cutWidths() []float64 {
	list := []float64{9, 8, 23, 13.6, 34.4, 27, 19, 27, 18}
	for i := range list {
		list[i] *= b.u
	}
	return list
}

// cutHead draws the head of the columns and gives the y under it.
func (b *crewBoard) cutHead(g *scene.Group, y float64) float64 {
	u, f := b.u, b.page.Frame
	heads := []string{"", "", "NUMBER", "flitch", "CUT", "up, down", "rip, to", "bends", "holes", "wall"}
	if b.room.Veneer.Horizontal {
		heads[5] = "ends"
	}
	high := 6.4 * u
	g.HLine(f.X0, f.X1, y, scene.Pen(scene.Frame, crewFine))
	x := f.X0
	for i, s := range heads {
		if s != "" {
			at, anchor := x+1.2*u, scene.Start
			if i == 4 || i == 5 {
				at, anchor = x+b.cutWidths()[i]-1.6*u, scene.End
			}
			b.word(g, scene.Pt(at, y+4.6*u), s, crewText*u, i == 2 || i == 4, anchor)
		}
		if i < len(b.cutWidths()) {
			x += b.cutWidths()[i]
		}
	}
	g.HLine(f.X0, f.X1, y+high, scene.Pen(scene.Frame, crewFine))
	return y + high
}

// cutRow draws one sheet of the list.
func (b *crewBoard) cutRow(g *scene.Group, r cutRow, y, high float64) {
	u, f, w := b.u, b.page.Frame, b.cutWidths()
	g = g.Part(scene.Tag{Class: "sheet", Data: []scene.Datum{datum("place", strconv.Itoa(r.sheet.Place)), datum("cut", mm(r.sheet.CutLength))}})
	mid := y + high/2
	x := f.X0
	put := func(s string, size, least float64, bold bool, wide float64, anchor scene.Anchor) {
		if s == "" {
			return
		}
		at := x + 1.2*u
		switch anchor {
		case scene.Middle:
			at = x + wide/2
		case scene.End:
			at = x + wide - 1.6*u
		}
		size = draft.Squeeze(s, size*u, least*u, bold, wide-2.2*u)
		g.Text(scene.Text{At: scene.Pt(at, mid), String: scene.Shorten(s, size, bold, wide-1.6*u), Height: size, Bold: bold, Anchor: anchor, Seat: scene.Centred, Layer: scene.Notes})
	}
	g.Rect(scene.BoxAt(x+1.8*u, mid-3*u, 6*u, 6*u), scene.Pen(scene.Frame, crewFine))
	x += w[0]
	put(strconv.Itoa(r.order), crewText, crewSmall, false, w[1], scene.Middle)
	x += w[1]
	put(r.number, crewName, crewText, true, w[2], scene.Middle)
	x += w[2]
	put(r.flitch, crewSmall, crewSmall, false, w[3], scene.Start)
	x += w[3]
	put(r.cut, crewLarge, crewText, true, w[4], scene.End)
	x += w[4]
	b.pair(g, scene.BoxAt(x, y, w[5], high), []string{r.above, r.below}, false, scene.End)
	x += w[5]
	if r.rip != "" {
		b.pair(g, scene.BoxAt(x, y, w[6], high), []string{r.side, r.rip}, true, scene.Start)
	}
	x += w[6]
	b.pair(g, scene.BoxAt(x, y, w[7], high), r.bends, false, scene.Start)
	x += w[7]
	b.packed(g, scene.BoxAt(x, y, w[8], high), strings.Join(r.holes, ", "))
	x += w[8]
	b.packed(g, scene.BoxAt(x, y, f.X1-x, high), r.wall)
}

// pair letters one or two lines in a cell; more are run together.
func (b *crewBoard) pair(g *scene.Group, box scene.Box, lines []string, bold bool, anchor scene.Anchor) {
	u, size := b.u, crewText*b.u
	if len(lines) > 2 {
		b.packed(g, box, strings.Join(lines, ", "))
		return
	}
	for i, s := range lines {
		y := box.Centre().Y + (float64(i)-float64(len(lines)-1)/2)*4.7*u - 0.33*u*float64(len(lines)-1)
		at := box.X0 + 1.2*u
		if anchor == scene.End {
			at = box.X1 - 1.6*u
		}
		fit := draft.Squeeze(s, size, crewSmall*u, bold, box.W()-2.2*u)
		g.Text(scene.Text{At: scene.Pt(at, y), String: scene.Shorten(s, fit, bold, box.W()-1.6*u), Height: fit, Bold: bold, Anchor: anchor, Seat: scene.Centred, Layer: scene.Notes})
	}
}

// packed letters words in a cell, smaller and on more lines where they are many.
func (b *crewBoard) packed(g *scene.Group, box scene.Box, text string) {
	if text == "" {
		return
	}
	u := b.u
	const most = 2
	size, pitch := crewText*u, 4.1*u
	lines := scene.Wrap(text, size, false, box.W()-2.2*u)
	if len(lines) > 1 {
		size = crewSmall * u
		lines = scene.Wrap(text, size, false, box.W()-2.2*u)
	}
	if len(lines) > most {
		rest := strings.Join(lines[most-1:], " ")
		lines = append(lines[:most-1], scene.Shorten(rest, size, false, box.W()-2.2*u))
	}
	for i, s := range lines {
		y := box.Centre().Y + (float64(i)-float64(len(lines)-1)/2)*pitch
		g.Text(scene.Text{At: scene.Pt(box.X0+1.2*u, y), String: s, Height: size, Seat: scene.Centred, Layer: scene.Notes})
	}
}

// struckRows lists what is not cut: spares, damaged sheets, sheets that hang, sheets that fall into a gap.
func (c *crewSet) struckRows() []cutRow {
	var list []cutRow
	add := func(flitch, why string, numbers []int) {
		for len(numbers) > 0 {
			k := min(len(numbers), 24)
			list = append(list, cutRow{flitch: flitch, number: layout.Numbers(numbers[:k]), struck: why})
			numbers = numbers[k:]
		}
	}
	for _, s := range c.plan.Left {
		var hung, gap []int
		for i := range c.plan.Runs {
			for k := range c.plan.Runs[i].Sheets {
				switch sh := &c.plan.Runs[i].Sheets[k]; {
				case sh.Flitch != s.Flitch:
				case sh.Hung:
					hung = append(hung, sh.Number)
				case len(sh.Pieces) == 0:
					gap = append(gap, sh.Number)
				}
			}
		}
		add(s.Flitch, "hangs", hung)
		add(s.Flitch, "in a gap, to stock", gap)
		add(s.Flitch, "spare", s.Spare)
		add(s.Flitch, "damaged", s.Damaged)
	}
	return list
}

// struckRow draws what is not cut, struck out on both sides of its words.
func (b *crewBoard) struckRow(g *scene.Group, r cutRow, y, high float64) {
	u, f, w := b.u, b.page.Frame, b.cutWidths()
	mid := y + high/2
	x := f.X0 + w[0] + w[1] + 1.2*u
	words := r.struck
	if r.flitch != "" {
		words = r.flitch + ", " + words
	}
	size := crewLarge * u
	room := f.X1 - x - scene.Width(words, crewText*u, false) - 24*u
	number := scene.Shorten(r.number, size, true, room)
	g.Text(scene.Text{At: scene.Pt(x, mid), String: number, Height: size, Bold: true, Seat: scene.Centred, Layer: scene.Notes})
	at := x + scene.Width(number, size, true) + 3*u
	g.Text(scene.Text{At: scene.Pt(at, mid), String: words, Height: crewText * u, Seat: scene.Centred, Layer: scene.Notes})
	pen := scene.Pen(scene.Frame, 0.5)
	g.HLine(f.X0+2*u, x-1.4*u, mid, pen)
	g.HLine(at+scene.Width(words, crewText*u, false)+1.6*u, f.X1-3*u, mid, pen)
}

// stockLengths count the sheets by the stock length they are ordered in: whole feet, or half metres.
func (c *crewSet) stockLengths(rows []cutRow) []string {
	step, word := length.Foot, "ft"
	if c.metric() {
		step, word = length.Metre/2, "m"
	}
	counts := map[int64]int{}
	longest := L(0)
	for _, r := range rows {
		counts[length.CeilDiv(r.sheet.CutLength, step)]++
		longest = max(longest, r.sheet.CutLength)
	}
	var steps []int64
	for k := range counts {
		steps = append(steps, k)
	}
	sort.Slice(steps, func(i, j int) bool { return steps[i] < steps[j] })
	lines := []string{fmt.Sprintf("TOTAL %d sheets to cut, longest %s", len(rows), c.say(longest))}
	for _, k := range steps {
		size := strconv.FormatInt(k, 10)
		if c.metric() {
			size = strings.Replace(strconv.FormatFloat(math.Round(float64(k)*5)/10, 'f', -1, 64), ".", ",", 1)
		}
		lines = append(lines, fmt.Sprintf("%d out of %s %s", counts[k], size, word))
	}
	return lines
}

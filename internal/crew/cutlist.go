package crew

import (
	"fmt"
	"math"
	"sort"
	"strconv"
	"strings"

	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/scene"
)

// CutRow is one sheet of the cut list.
type CutRow struct {
	Order        int
	Number       string
	Flitch       string
	Cut          string
	Above, Below string
	Rip, Side    string
	Bends, Holes []string
	Wall         string
	Struck       string // why it is not cut
	Sheet        *layout.Sheet
}

// RowsOnPage is how many sheets stand on one page of the cut list.
const RowsOnPage = 18

// FirstCut is how many are cut and hung before all others.
const FirstCut = 3

// CutRows lists all sheets in hanging order.
func (c *Set) CutRows() []CutRow {
	var list []CutRow
	for i := range c.Plan.Runs {
		r := &c.Plan.Runs[i]
		for k := range r.Sheets {
			s := &r.Sheets[k]
			if s.Hung || len(s.Pieces) == 0 {
				continue
			}
			row := CutRow{Order: len(list) + 1, Number: c.Number(s), Flitch: s.Flitch, Cut: c.Say(s.CutLength), Above: c.Say(s.Above), Below: c.Say(s.Below), Sheet: s}
			if s.Ripped != "" {
				row.Rip, row.Side = c.Inches(s.RipTo), strings.ToUpper(s.Ripped)
				if r.Up {
					row.Side = map[string]string{"left": "LOWER", "right": "UPPER"}[s.Ripped]
				}
			}
			if r.Up { // its ends, right of the wall's left end
				row.Above, row.Below = "to "+c.Say(s.Above), "from "+c.Say(-s.Below)
			}
			c.BendsAndHoles(s, &row)
			list = append(list, row)
		}
	}
	return list
}

// BendsAndHoles fills in where a sheet is bent, from its raw left edge, and what is cut out of it.
func (c *Set) BendsAndHoles(s *layout.Sheet, row *CutRow) {
	for _, w := range c.Walls {
		for _, h := range w.Hangs {
			if h.Holds(s) && (row.Wall == "" || !h.Before) {
				row.Wall = w.W.Name
			}
		}
	}
	for _, w := range c.Walls {
		for _, h := range w.Hangs {
			if !h.Holds(s) {
				continue
			}
			on := ""
			if w.W.Name != row.Wall {
				on = " on " + w.W.Name
			}
			if w.Run.Up {
				w.HolesUp(s, row)
				continue
			}
			for i := range w.W.Openings {
				o := &w.W.Openings[i]
				if o.FromLeft >= h.To || o.Right() <= h.From {
					continue
				}
				row.Holes = append(row.Holes, o.Name+on)
				for _, x := range []L{o.FromLeft, o.Right()} {
					if o.WrapReveal && x > h.From && x < h.To {
						row.Bends = append(row.Bends, c.Bare(x-h.Start)+" "+o.Name)
					}
				}
			}
			for _, b := range w.BoxesOf() {
				if b.X-b.HoleWidth/2 < h.To && b.X+b.HoleWidth/2 > h.From && w.Covers(h, b.X, b.Z) {
					row.Holes = append(row.Holes, b.Letter+on)
				}
			}
			if h.After {
				row.Bends = append(row.Bends, c.Bare(w.Right-h.Start)+" "+w.CornerAtRight())
			}
		}
	}
}

// HolesUp lists what is cut out of a piece of a band.
func (w *Wall) HolesUp(s *layout.Sheet, row *CutRow) {
	x0, z0, x1, z1, ok := Stretch(s, w.Wall)
	if !ok {
		return
	}
	for i := range w.W.Openings {
		if o := &w.W.Openings[i]; o.FromLeft < x1 && o.Right() > x0 && o.Head > z0 && !(o.SillGiven && o.Sill >= z1) {
			row.Holes = append(row.Holes, o.Name)
		}
	}
	for _, b := range w.BoxesOf() {
		if b.X-b.HoleWidth/2 < x1 && b.X+b.HoleWidth/2 > x0 && b.Z-b.HoleHigh/2 < z1 && b.Z+b.HoleHigh/2 > z0 {
			row.Holes = append(row.Holes, b.Letter)
		}
	}
}

// Holds reports whether a sheet is one of a place.
func (h *Hang) Holds(s *layout.Sheet) bool {
	for _, t := range h.Sheets {
		if t == s {
			return true
		}
	}
	return false
}

// Covers reports whether a place covers a height beside x.
func (w *Wall) Covers(h *Hang, x, z L) bool {
	d := WallBoard{W: w}
	return d.Covered(x, z, h)
}

// CornerAtRight is the name of the corner at the wall's right end.
func (w *Wall) CornerAtRight() string {
	for i := range w.Run.Corners {
		if c := &w.Run.Corners[i]; c.LeftWall == w.Wall {
			return c.Name
		}
	}
	return ""
}

// CutPages draws the cut list: the first three on top, then all others, then what is not cut, then how many of which
// stock length.
func (c *Set) CutPages(n int) []*scene.Page {
	rows := c.CutRows()
	struck := c.StruckRows()
	var out []*scene.Page
	var b *Board
	var g *scene.Group
	y, bottom, count := 0.0, 0.0, 0
	u := c.U
	fresh := func() {
		b = c.Open(n+len(out), folio.Sheet{Title: "Cut list", Lines: [2]string{c.Place(), c.CutWords()}, Portrait: true})
		b.Page.Title = "Cut list"
		area := b.Area
		g = b.Page.Part(scene.Tag{Class: "cut-list"})
		y, bottom, count = area.Y0, area.Y1, 0
		out = append(out, b.Page)
	}
	high := 11 * u
	for i, r := range rows {
		if b == nil || count == RowsOnPage || y+high > bottom {
			fresh()
			if i > 0 {
				y = b.CutHead(g, y)
			}
		}
		switch i {
		case 0:
			b.Word(g, scene.Pt(b.Page.Frame.X0+3*u, y+6*u), "FIRST: cut these, hang, hold", CrewText*u, true, scene.Start)
			y = b.CutHead(g, y+8*u)
		case FirstCut:
			if count > 0 {
				b.Word(g, scene.Pt(b.Page.Frame.X0+3*u, y+7*u), "THEN, when the hold is signed", CrewText*u, true, scene.Start)
				y += 9.4 * u
				g.HLine(b.Page.Frame.X0, b.Page.Frame.X1, y, scene.Pen(scene.Frame, CrewFine))
			}
		}
		b.CutRow(g, r, y, high)
		y += high
		count++
		width := CrewFine
		if (i+1)%FirstCut == 0 || i == len(rows)-1 {
			width = 1
		}
		if y < b.Page.Frame.Y1-0.5*u {
			g.HLine(b.Page.Frame.X0, b.Page.Frame.X1, y, scene.Pen(scene.Frame, width))
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
			b.Word(g, scene.Pt(b.Page.Frame.X0+3*u, y+6.4*u), "NOT CUT", CrewText*u, true, scene.Start)
			y += 8 * u
		}
		b.StruckRow(g, r, y, 8.4*u)
		y += 8.4 * u
	}
	lines := c.StockLengths(rows)
	y += 1 * u
	for i, line := range lines {
		if y+8*u > bottom {
			fresh()
			y += 2 * u
		}
		y += 6 * u
		b.Word(g, scene.Pt(b.Page.Frame.X0+3*u, y), line, CrewText*u, i == 0, scene.Start)
	}
	return out
}

// CutWords says what the figures of the list hold.
func (c *Set) CutWords() string {
	if c.Room.Veneer.Horizontal {
		return "trims in; ends: right of the wall's left end"
	}
	return "trims in; up, down: of the level mark"
}

// StruckRows lists what is not cut: spares, damaged sheets, sheets that hang, sheets that fall into a gap.
func (c *Set) StruckRows() []CutRow {
	var list []CutRow
	add := func(flitch, why string, numbers []int) {
		for len(numbers) > 0 {
			k := min(len(numbers), 24)
			list = append(list, CutRow{Flitch: flitch, Number: layout.Numbers(numbers[:k]), Struck: why})
			numbers = numbers[k:]
		}
	}
	for _, s := range c.Plan.Left {
		var hung, gap []int
		for i := range c.Plan.Runs {
			for k := range c.Plan.Runs[i].Sheets {
				switch sh := &c.Plan.Runs[i].Sheets[k]; {
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

// StockLengths count the sheets by the stock length they are ordered in: whole feet, or half metres.
func (c *Set) StockLengths(rows []CutRow) []string {
	step, word := length.Foot, "ft"
	if c.Metric() {
		step, word = length.Metre/2, "m"
	}
	counts := map[int64]int{}
	longest := L(0)
	for _, r := range rows {
		counts[length.CeilDiv(r.Sheet.CutLength, step)]++
		longest = max(longest, r.Sheet.CutLength)
	}
	var steps []int64
	for k := range counts {
		steps = append(steps, k)
	}
	sort.Slice(steps, func(i, j int) bool { return steps[i] < steps[j] })
	lines := []string{fmt.Sprintf("TOTAL %d sheets to cut, longest %s", len(rows), c.Say(longest))}
	for _, k := range steps {
		size := strconv.FormatInt(k, 10)
		if c.Metric() {
			size = strings.Replace(strconv.FormatFloat(math.Round(float64(k)*5)/10, 'f', -1, 64), ".", ",", 1)
		}
		lines = append(lines, fmt.Sprintf("%d out of %s %s", counts[k], size, word))
	}
	return lines
}

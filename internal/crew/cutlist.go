package crew

import (
	"fmt"
	"math"
	"sort"
	"strconv"
	"strings"

	"flitchlay/internal/face"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/room"
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

// cutRows lists all sheets in hanging order.
func (c *Set) cutRows() []cutRow {
	var list []cutRow
	for i := range c.Plan.Runs {
		r := &c.Plan.Runs[i]
		for k := range r.Sheets {
			s := &r.Sheets[k]
			if s.Hung || len(s.Pieces) == 0 {
				continue
			}
			row := cutRow{order: len(list) + 1, number: c.SheetNumber(s), flitch: s.Flitch, cut: c.Say(s.CutLength), above: c.Say(s.Above), below: c.Say(s.Below), sheet: s}
			if s.Ripped != "" {
				row.rip, row.side = c.Inches(s.RipTo), strings.ToUpper(s.Ripped)
				if r.Up {
					row.side = map[string]string{"left": "LOWER", "right": "UPPER"}[s.Ripped]
				}
			}
			if r.Up { // its ends, right of the wall's left end
				row.above, row.below = "to "+c.Say(s.Above), "from "+c.Say(-s.Below)
			}
			c.bendsAndHoles(s, &row)
			list = append(list, row)
		}
	}
	return list
}

// bendsAndHoles fills in where a sheet is bent, from its raw left edge, and what is cut out of it.
func (c *Set) bendsAndHoles(s *layout.Sheet, row *cutRow) {
	for _, w := range c.Walls {
		for _, h := range w.Hangs {
			if h.Holds(s) && (row.wall == "" || !h.Before) {
				row.wall = w.W.Name
			}
		}
	}
	for _, w := range c.Walls {
		on := ""
		if w.W.Name != row.wall {
			on = " on " + w.W.Name
		}
		for _, h := range w.Hangs {
			switch {
			case !h.Holds(s):
			case w.Run.Up:
				w.holes(row, "", w.OpeningsOf(s), func(b face.Box) bool { return w.BoxOf(s, b) })
			default:
				w.holes(row, on, w.OpeningsIn(h), func(b face.Box) bool { return w.BoxIn(h, b) })
				for _, b := range w.Bends(h) {
					row.bends = append(row.bends, c.bare(b.X-h.Start)+" "+b.Name)
				}
			}
		}
	}
}

// holes lists what is cut out of a sheet: openings by their names, boxes by their letters.
func (w *Wall) holes(row *cutRow, on string, openings []*room.Opening, in func(face.Box) bool) {
	for _, o := range openings {
		row.holes = append(row.holes, o.Name+on)
	}
	for _, b := range w.Boxes() {
		if in(b) {
			row.holes = append(row.holes, b.Letter+on)
		}
	}
}

// cutWords says what the figures of the list hold.
func (c *Set) cutWords() string {
	if c.Room.Veneer.Horizontal {
		return "trims in; ends: right of the wall's left end"
	}
	return "trims in; up, down: of the level mark"
}

// struckRows lists what is not cut: spares, damaged sheets, sheets that hang, sheets that fall into a gap.
func (c *Set) struckRows() []cutRow {
	var list []cutRow
	add := func(flitch, why string, numbers []int) {
		for len(numbers) > 0 {
			k := min(len(numbers), 24)
			list = append(list, cutRow{flitch: flitch, number: layout.Numbers(numbers[:k]), struck: why})
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

// stockLengths count the sheets by the stock length they are ordered in: whole feet, or half metres.
func (c *Set) stockLengths(rows []cutRow) []string {
	step, word := length.Foot, "ft"
	if c.Metric() {
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

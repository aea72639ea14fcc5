package crew

import (
	"fmt"
	"math"
	"slices"
	"sort"
	"strconv"
	"strings"

	"flitchlay/internal/card"
	"flitchlay/internal/count"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
)

// cutRow is one sheet of the cut list.
type cutRow struct {
	order     int
	number    string
	flitch    string
	cut       string
	ends      []string // where its head and its foot are
	rip, side string
	wall      string
	more      []string // what else is done to it: turned, bent, cut out
	run       string
	struck    string // why it is not cut
	sheet     *layout.Sheet
}

// cutRows lists all sheets in hanging order.
func (c *Set) cutRows() []cutRow {
	var list []cutRow
	cards := map[*layout.Sheet]*card.Card{}
	for _, x := range card.Of(c.Count) {
		cards[x.Sheet] = x
	}
	for i := range c.Plan.Runs {
		r := &c.Plan.Runs[i]
		for k := range r.Sheets {
			s := &r.Sheets[k]
			if s.Hung || len(s.Pieces) == 0 {
				continue
			}
			x := c.Count.CutOf(s)
			row := cutRow{order: len(list) + 1, number: c.SheetNumber(s), flitch: s.Flitch, cut: c.Say(s.CutLength), run: r.Name, sheet: s}
			row.ends = []string{x.EndWords(c.Say, s.Above), x.EndWords(c.Say, -s.Below)}
			if r.Up {
				slices.Reverse(row.ends) // from left to right
			}
			if s.Ripped != "" {
				row.rip, row.side = c.Inches(s.RipTo), strings.ToUpper(x.Side(s.Ripped))
				if x.Closes {
					row.rip = "to gap"
				}
			}
			c.whatElse(x, &row)
			row.more = append(row.more, card.RakeWords(c.TapedSet, cards[s])...)
			list = append(list, row)
		}
	}
	return list
}

// whatElse fills in on which wall a sheet begins, how it is turned, where it is bent, and the edges of all that is cut out
// of it.
func (c *Set) whatElse(x *count.Cut, row *cutRow) {
	row.wall = x.Walls[0]
	if x.Turned {
		row.more = append(row.more, turnedWords)
	}
	if x.Closes {
		row.more = append(row.more, x.ClosingWords(c.Style, c.Room.Veneer.Overlap, x.Side(x.Rip)))
	}
	if len(x.Bends) > 0 {
		var list []string
		for _, b := range x.Bends {
			list = append(list, x.BendWords(c.Style, b))
		}
		row.more = append(row.more, "bend "+x.FromEdge()+": "+strings.Join(list, ", "))
	}
	for _, slit := range x.Slits(c.Plan) {
		row.more = append(row.more, x.SlitWords(c.Style, slit))
	}
	for i := range x.Holes {
		h := &x.Holes[i]
		name := c.nameOf(h)
		if wall := c.Room.Walls[h.Wall].Name; wall != row.wall {
			name += " on " + wall
		}
		row.more = append(row.more, name+": "+x.HoleWords(c.Style, *h))
	}
	if x.Askew != 0 && len(x.Holes) > 0 {
		row.more = append(row.more, "past the bend "+c.Inches(x.Askew.Abs())+" askew: mark what is cut out there on the wall")
	}
}

// turnedWords are said of a sheet that hangs with its raw head down.
const turnedWords = "TURNED end for end: its raw head hangs down"

// nameOf is what something cut out is called on the pages: a box by its letter, an opening by its name.
func (c *Set) nameOf(h *count.Hole) string {
	if !h.Kind.Traits().Box {
		return h.Name
	}
	for _, w := range c.Walls {
		if w.Wall != h.Wall {
			continue
		}
		for _, b := range w.Boxes() {
			if b.Box == &w.W.Boxes[h.Index] {
				return b.Letter
			}
		}
	}
	return h.Name
}

// cutWords says what the figures of the list hold.
func (c *Set) cutWords() string {
	if c.Room.Veneer.Horizontal {
		return "ends: right of 0 at the level line"
	}
	return "up, down: of the level mark"
}

// trimmed says what the cut lengths have for trimming at both ends, with its figures where all sheets have the same.
func (c *Set) trimmed() string {
	var list [][2]L
	for i := range c.Count.Cuts {
		if x := &c.Count.Cuts[i]; !x.Hung && !x.Level {
			list = append(list, [2]L{x.TopTrim, x.BottomTrim})
		}
	}
	if list = slices.Compact(list); len(list) != 1 {
		return "the cut lengths hold what is trimmed off at both ends when the sheet hangs"
	}
	head, foot := c.Inches(list[0][0]), "foot"
	if list[0][1] != list[0][0] {
		foot = c.Inches(list[0][1]) + " at foot"
	}
	return head + " at head and " + foot + " for trimming are in the cut lengths"
}

// struckRows lists what is not cut: spares, damaged sheets, sheets that hang, sheets that fall into a gap, sheets that
// no place needs.
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
		add(s.Flitch, "not used", s.Left)
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

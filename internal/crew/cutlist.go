package crew

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"flitchlay/internal/card"
	"flitchlay/internal/count"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/words"
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
	for i := range c.Plan.Runs {
		r := &c.Plan.Runs[i]
		for k := range r.Sheets {
			s := &r.Sheets[k]
			if s.Hung || len(s.Pieces) == 0 {
				continue
			}
			x := c.Count.CutOf(s)
			row := cutRow{order: len(list) + 1, number: c.SheetNumber(s), flitch: s.Flitch, cut: c.Say(x.Long(s, c.Style)), run: r.Name, sheet: s}
			row.ends = []string{x.EndWords(c.Words, c.Say, s.Above), x.EndWords(c.Words, c.Say, -s.Below)}
			if r.Up {
				slices.Reverse(row.ends) // from left to right
			}
			if s.Ripped != "" {
				row.rip, row.side = c.Inches(s.RipTo), strings.ToUpper(c.Words.Of("side", x.Side(s.Ripped)))
				if x.Closes {
					row.rip = c.Words.Say("list.to_gap")
				}
			}
			row.wall = x.Walls[0]
			for _, t := range c.Words.Each() {
				c.whatElse(t, x, &row)
				row.more = append(row.more, card.RakeWords(c.TapedSet, t, c.cards[s])...)
			}
			list = append(list, row)
		}
	}
	return list
}

// whatElse says of a sheet how it is turned, where it is bent, and the edges of all that is cut out of it.
func (c *Set) whatElse(t *words.Table, x *count.Cut, row *cutRow) {
	say := count.Speech{Words: t, Style: c.Style}
	if x.Turned {
		row.more = append(row.more, t.Say("list.turned"))
	}
	if line := card.LineWords(c.TapedSet, t, c.cards[row.sheet]); line != "" {
		row.more = append(row.more, line)
	}
	if x.Closes {
		row.more = append(row.more, x.ClosingWords(say, c.Room.Veneer.Overlap, x.Side(x.Rip)))
	}
	if len(x.Bends) > 0 {
		var list []string
		for _, b := range x.Bends {
			list = append(list, x.BendWords(say, b))
		}
		row.more = append(row.more, t.Say("list.bend", x.FromEdge(say), strings.Join(list, ", ")))
	}
	for _, slit := range x.Slits(c.Plan) {
		row.more = append(row.more, x.SlitWords(say, slit))
	}
	for i := range x.Holes {
		h := &x.Holes[i]
		name := c.nameOf(h)
		if wall := c.Room.Walls[h.Wall].Name; wall != row.wall {
			name = t.Say("cut.on_wall", name, wall)
		}
		row.more = append(row.more, name+": "+card.HoleWords(c.TapedSet, t, c.cards[row.sheet], h, say))
	}
	row.more = append(row.more, card.PartWords(c.TapedSet, t, c.cards[row.sheet])...)
	if x.Askew != 0 && len(x.Holes) > 0 {
		row.more = append(row.more, t.Say("list.askew", c.Inches(x.Askew.Abs())))
	}
}

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
		return c.Words.Say("list.ends")
	}
	return c.Words.Say("list.up_down")
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
		return c.Words.Say("list.trims")
	}
	if list[0][1] != list[0][0] {
		return c.Words.Say("list.trimmed_both", c.Inches(list[0][0]), c.Inches(list[0][1]))
	}
	return c.Words.Say("list.trimmed", c.Inches(list[0][0]))
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
		add(s.Flitch, c.Words.Say("stock.hangs"), hung)
		add(s.Flitch, c.Words.Say("stock.in_a_gap"), gap)
		add(s.Flitch, c.Words.Say("stock.spare"), s.Spare)
		damaged := s.Damaged
		for _, w := range c.Refused(s.Flitch) {
			damaged = slices.DeleteFunc(slices.Clone(damaged), func(n int) bool { return n == w.Number })
			add(s.Flitch, c.Words.Say("receive.refused", c.Inches(w.Width), c.LeastGross()), []int{w.Number})
		}
		add(s.Flitch, c.Words.Say("stock.damaged"), damaged)
		add(s.Flitch, c.Words.Say("stock.not_used"), s.Left)
	}
	return list
}

// stockLengths say how long the sheets have to be: whole feet, or half metres. Those of a flitch are as long as each other, and none is
// cut out of what another leaves. One mark for all asks some to be longer than they are cut.
func (c *Set) stockLengths(rows []cutRow) []string {
	step, word := length.Foot, c.Words.Say("unit.feet")
	if c.Metric() {
		step, word = length.Metre/2, c.Words.Say("unit.metres")
	}
	longest, most, more := L(0), L(0), L(0)
	for _, r := range rows {
		long := c.Plan.LeastLong(r.sheet)
		longest, most, more = max(longest, c.Count.CutOf(r.sheet).Long(r.sheet, c.Style)), max(most, long), max(more, long-r.sheet.CutLength)
	}
	lines := []string{c.Words.Say("list.total", len(rows), c.Say(longest))}
	if most > longest { // else every length has room for the mark
		lines = append(lines, c.Words.Say("list.longer", c.Say(most), c.Say(more)))
	}
	k := length.CeilDiv(most, step)
	size := strconv.FormatInt(k, 10)
	if c.Metric() {
		size = strings.Replace(strconv.FormatFloat(math.Round(float64(k)*5)/10, 'f', -1, 64), ".", ",", 1)
	}
	return append(lines, c.Words.Say("list.out_of", size+" "+word))
}

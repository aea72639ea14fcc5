package layout

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"flitchlay/internal/finding"
	"flitchlay/internal/room"
	"flitchlay/internal/seam"
)

// column is the sheets of one place.
type column struct {
	run    *Run
	sheets []int // indices in run.Sheets, bottom course first
	left   *Seam // the seam at its left, nil at a raw end
	first  bool  // the first of its span
}

// columns lists all places in order.
func (b *builder) columns() []column {
	var out []column
	for i := range b.plan.Runs {
		run := &b.plan.Runs[i]
		for k := range run.Sheets {
			s := &run.Sheets[k]
			if n := len(out); k > 0 && run.Sheets[k-1].Place == s.Place {
				out[n-1].sheets = append(out[n-1].sheets, k)
				continue
			}
			c := column{run: run, sheets: []int{k}, first: k == 0 || run.Sheets[k-1].Span != s.Span}
			for j := range run.Seams {
				if run.Seams[j].RightSheet == s.Place && !run.Seams[j].Closing {
					c.left = &run.Seams[j]
				}
			}
			out = append(out, c)
		}
	}
	return out
}

// supply is what a flitch has for laying out.
type supply struct {
	flitch *room.Flitch
	free   []int
}

func (b *builder) supplies() []supply {
	var out []supply
	for i := range b.room.Flitches {
		f := &b.room.Flitches[i]
		s := supply{flitch: f}
		for _, n := range f.Sheets {
			if !slices.Contains(f.Damaged, n) && !slices.Contains(f.Spare, n) {
				s.free = append(s.free, n)
			}
		}
		out = append(out, s)
	}
	return out
}

// number gives every sheet its number: up with the place, flitch after flitch.
//
// Errors: a mistake where sheets that hang leave too few numbers for those before them.
func (b *builder) number() error {
	columns := b.columns()
	if len(b.room.Flitches) == 0 {
		n := 0
		for _, c := range columns {
			for _, k := range c.sheets {
				n++
				c.run.Sheets[k].Number = n
			}
		}
		if err := b.numberHung(columns); err != nil {
			return err
		}
		b.say(finding.NoFlitch, finding.Finding{Place: "room", Wall: -1}, finding.Slots{"count": strconv.Itoa(n)})
		return nil
	}
	all := b.supplies()
	at, err := b.hangNumbers(columns, all)
	if err != nil {
		return err
	}
	for i := range all {
		if at == len(columns) {
			break
		}
		at = b.lay(columns, at, all, i)
	}
	if at < len(columns) {
		b.lastNumbers(columns[at:], all[len(all)-1])
		b.short(columns, all)
	}
	for i := range all {
		b.stock(columns, all[i])
		b.leftOut(all[i].flitch, &b.plan.Left[len(b.plan.Left)-1])
	}
	return nil
}

// numberHung overrides the numbers of sheets that hang, where no flitch is given.
//
// Errors: as number.
func (b *builder) numberHung(columns []column) error {
	last := 0
	hung := b.hungNumbers()
	for i, c := range columns {
		for _, k := range c.sheets {
			s := &c.run.Sheets[k]
			if h, ok := hung[i+1]; ok && s.Lowest {
				if h.number <= last {
					return b.outOfOrder(h, i, h.number-1)
				}
				s.Number = h.number
			} else if s.Number <= last {
				s.Number = last + 1
			}
			last = s.Number
		}
	}
	return nil
}

// outOfOrder is the mistake of a hung sheet at column k before which only so many sheets can stand by its number.
func (b *builder) outOfOrder(h hungSheet, k, can int) error {
	return b.room.Mistake(h.where, fmt.Sprintf("sheet %d hangs at place %d, but only %d sheets with lower numbers can stand before it",
		h.number, k+1, can), "say which sheets hang before it, or look at the numbers on their backs")
}

// hungNumbers are the sheets on the wall, by place.
func (b *builder) hungNumbers() map[int]hungSheet {
	out := map[int]hungSheet{}
	for i, asked := range b.asked {
		run := &b.plan.Runs[i]
		for j, q := range asked {
			for k, h := range q.hung {
				out[run.Spans[j].FirstSheet+k] = h
			}
		}
	}
	return out
}

// hangNumbers numbers the sheets that hang and those before them, stretch by stretch, takes what is used and what is
// behind out of the supply, and gives the first column after them.
func (b *builder) hangNumbers(columns []column, all []supply) (int, error) {
	hung := b.hungNumbers()
	flitch, at := 0, 0
	for k := range columns {
		h, ok := hung[k+1]
		if !ok {
			continue
		}
		n, to := h.number, max(flitch, h.flitch)
		// what stands before it takes the numbers below it
		before := slices.Clone(all[flitch : to+1])
		last := &before[len(before)-1]
		last.free = slices.DeleteFunc(slices.Clone(last.free), func(m int) bool { return m >= n })
		for i := range before {
			if at < k {
				at = b.lay(columns[:k], at, before, i)
			}
		}
		if at < k {
			return 0, b.outOfOrder(h, k, at)
		}
		for i := flitch; i < to; i++ {
			all[i].free = nil
		}
		flitch, at = to, k+1
		left := slices.DeleteFunc(slices.Clone(all[flitch].free), func(m int) bool { return m <= n })
		for up, j := range columns[k].sheets {
			s := &columns[k].run.Sheets[j]
			s.Flitch, s.Number = all[flitch].flitch.Number, n
			if up > 0 && len(left) > 0 { // over it hangs the next one that is not damaged or kept back
				s.Number, left = left[0], left[1:]
			}
		}
		all[flitch].free = left
	}
	return at, nil
}

// lay gives columns from at on the numbers of flitch i, as far as it goes or as far as the next one had better begin.
func (b *builder) lay(columns []column, at int, all []supply, i int) int {
	end, free := at, len(all[i].free)
	for end < len(columns) && free >= len(columns[end].sheets) {
		free -= len(columns[end].sheets)
		end++
	}
	if end == at {
		return at
	}
	inField := false
	if end < len(columns) && i+1 < len(all) {
		end, inField = b.change(columns, at, end, all[i+1:])
	}
	used := 0
	for _, c := range columns[at:end] {
		for _, k := range c.sheets {
			s := &c.run.Sheets[k]
			s.Flitch, s.Number = all[i].flitch.Number, all[i].free[used]
			used++
		}
	}
	if end < len(columns) && i+1 < len(all) {
		if s := columns[end].left; s != nil {
			s.FlitchChange = true
			if inField {
				b.say(finding.FlitchChangeInField, finding.Finding{Place: seamPlace(s), Wall: s.Wall, At: s.X}, finding.Slots{
					"flitch": all[i].flitch.Number, "seam": strconv.Itoa(s.Number), "wall": b.room.Walls[s.Wall].Name})
			}
		}
	}
	return end
}

// lastNumbers gives the sheets of the first columns that are short what numbers are still left of the last flitch, less
// than a whole column of courses.
func (b *builder) lastNumbers(columns []column, last supply) {
	used := map[int]bool{}
	for _, c := range b.columns() {
		for _, k := range c.sheets {
			if s := &c.run.Sheets[k]; s.Flitch == last.flitch.Number {
				used[s.Number] = true
			}
		}
	}
	free := slices.DeleteFunc(slices.Clone(last.free), func(n int) bool { return used[n] })
	for _, c := range columns {
		for _, k := range c.sheets {
			if len(free) == 0 {
				return
			}
			s := &c.run.Sheets[k]
			s.Flitch, s.Number, free = last.flitch.Number, free[0], free[1:]
		}
	}
}

// change finds the column at which the next flitch begins, after at and at the latest at end: a span's first sheet; a
// seam inside an opening's width; the seam nearest an inside corner; and only then any seam. What comes after it must
// be enough for the rest, where it can be.
func (b *builder) change(columns []column, at, end int, rest []supply) (begin int, inField bool) {
	have := 0
	for _, s := range rest {
		have += len(s.free)
	}
	need := 0
	for _, c := range columns[end:] {
		need += len(c.sheets)
	}
	earliest := end
	for k := end - 1; k > at && need+len(columns[k].sheets) <= have; k-- {
		need += len(columns[k].sheets)
		earliest = k
	}
	for _, fits := range []func(int) bool{
		func(k int) bool { return columns[k].first },
		func(k int) bool { return b.overOpening(columns[k]) },
		func(k int) bool { return b.besideCorner(columns, k) },
	} {
		for k := end; k >= earliest && k > at; k-- {
			if fits(k) {
				return k, false
			}
		}
	}
	return end, true
}

// overOpening reports whether the seam left of a column stands inside an opening's width.
func (b *builder) overOpening(c column) bool {
	if c.left == nil {
		return false
	}
	for _, o := range c.run.Openings {
		if c.run.Line.DistanceTo(c.left.At, o.Left, o.Right) == 0 {
			return true
		}
	}
	return false
}

// besideCorner reports whether the seam left of column k is the nearest one to some inside corner.
func (b *builder) besideCorner(columns []column, k int) bool {
	c := columns[k]
	if c.left == nil {
		return false
	}
	line := c.run.Line
	for _, corner := range line.Corners {
		if corner.Kind != room.Inside {
			continue
		}
		mine := line.DistanceTo(c.left.At, corner.From, corner.To)
		nearest := true
		for _, s := range c.run.Seams {
			if line.DistanceTo(s.At, corner.From, corner.To) < mine {
				nearest = false
			}
		}
		if nearest {
			return true
		}
	}
	return false
}

// short says how many sheets lack, and what the layout with the fewest would need.
func (b *builder) short(columns []column, all []supply) {
	needed, have := 0, 0
	for _, c := range columns {
		needed += len(c.sheets)
		for _, k := range c.sheets {
			if c.run.Sheets[k].Number > 0 {
				have++
			}
		}
	}
	fewest := ""
	if b.aim != seam.Fewest && !b.trial {
		if other, err := solve(b.room, seam.Fewest, nil); err == nil {
			n := 0
			for i := range other.plan.Runs {
				n += len(other.plan.Runs[i].Sheets)
			}
			if n < needed {
				fewest = fmt.Sprintf("; the layout with the fewest takes %d", n)
			} else {
				fewest = "; no layout takes fewer"
			}
		}
	}
	b.plan.Totals.Short = needed - have
	b.say(finding.FlitchShort, finding.Finding{Place: "flitch " + all[len(all)-1].flitch.Number, Wall: -1}, finding.Slots{
		"needed": strconv.Itoa(needed), "have": strconv.Itoa(have), "short": strconv.Itoa(needed - have), "fewest": fewest})
}

// leftOut names the numbers that are never laid, and those damaged that hang all the same.
func (b *builder) leftOut(f *room.Flitch, s *Stock) {
	place := finding.Finding{Place: "flitch " + s.Flitch, Wall: -1}
	for _, kind := range []struct {
		why     string
		numbers []int
	}{{"damaged", s.Damaged}, {"spare", s.Spare}} {
		if len(kind.numbers) > 0 {
			b.say(finding.NumbersLeftOut, place, finding.Slots{"flitch": s.Flitch, "numbers": sheetsAre(kind.numbers), "why": kind.why,
				"all": Numbers(s.Delivered)})
		}
	}
	if up := slices.DeleteFunc(slices.Clone(f.Damaged), func(n int) bool { return !slices.Contains(s.Laid, n) }); len(up) > 0 {
		b.say(finding.HungDamaged, place, finding.Slots{"flitch": s.Flitch, "numbers": sheets(up), "hang": oneOrMore(up, "hangs", "hang"),
			"count": oneOrMore(up, "counts", "count")})
	}
}

// sheetsAre begins a sentence about sheets.
func sheetsAre(numbers []int) string { return sheets(numbers) + oneOrMore(numbers, " is", " are") }

// sheets names sheets in a sentence.
func sheets(numbers []int) string { return oneOrMore(numbers, "sheet ", "sheets ") + Numbers(numbers) }

// oneOrMore is the one word for a single sheet, the other for more.
func oneOrMore(numbers []int, one, more string) string {
	if len(numbers) == 1 {
		return one
	}
	return more
}

// stock lists what becomes of a flitch's numbers.
func (b *builder) stock(columns []column, s supply) {
	out := Stock{Flitch: s.flitch.Number, Delivered: s.flitch.Sheets}
	for _, c := range columns {
		for _, k := range c.sheets {
			if sheet := c.run.Sheets[k]; sheet.Flitch == s.flitch.Number && sheet.Number > 0 {
				out.Laid = append(out.Laid, sheet.Number)
			}
		}
	}
	for _, n := range s.flitch.Sheets {
		switch {
		case slices.Contains(out.Laid, n): // even if it is damaged, or was to be kept back: it hangs
		case slices.Contains(s.flitch.Damaged, n):
			out.Damaged = append(out.Damaged, n)
		case slices.Contains(s.flitch.Spare, n):
			out.Spare = append(out.Spare, n)
		default:
			out.Left = append(out.Left, n)
		}
	}
	b.plan.Left = append(b.plan.Left, out)
}

// Numbers prints sheet numbers as people write them: 1-6, 8, 10-24.
func Numbers(list []int) string {
	var parts []string
	for i := 0; i < len(list); {
		j := i
		for j+1 < len(list) && list[j+1] == list[j]+1 {
			j++
		}
		switch {
		case j == i:
			parts = append(parts, strconv.Itoa(list[i]))
		case j == i+1:
			parts = append(parts, strconv.Itoa(list[i]), strconv.Itoa(list[j]))
		default:
			parts = append(parts, strconv.Itoa(list[i])+"-"+strconv.Itoa(list[j]))
		}
		i = j + 1
	}
	return strings.Join(parts, ", ")
}

func seamPlace(s *Seam) string { return "seam " + strconv.Itoa(s.Number) }

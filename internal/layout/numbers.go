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

// number gives every sheet its number: up with the place, flitch after flitch, round the numbers that hang already.
//
// Errors: a hung number that leaves too few for the sheets at its left.
func (b *builder) number() error {
	columns := b.columns()
	hung := b.hungColumns()
	if len(b.room.Flitches) == 0 {
		return b.numberFreely(columns, hung)
	}
	all := b.supplies()
	for at := 0; at < len(columns); {
		if h, ok := hung[at]; ok {
			b.hangNumbers(columns[at], h, all)
			at++
			continue
		}
		end := at
		for end < len(columns) && hung[end].number == 0 {
			end++
		}
		supply := all
		if end < len(columns) {
			supply = before(all, hung[end])
		}
		next := at
		for i := 0; i < len(supply) && next < end; i++ {
			next = b.lay(columns[:end], next, supply, i)
		}
		if next < end && end < len(columns) {
			return b.tooFew(hung[end], end-next)
		}
		if next < end {
			b.lastNumbers(columns[next:], all[len(all)-1])
			b.short(columns, all)
		}
		at = end
	}
	b.leftOut(all)
	for i := range all {
		b.stock(columns, all[i])
	}
	return nil
}

// tooFew is the mistake of a hung sheet whose number is too low for its place.
func (b *builder) tooFew(h hungSheet, lack int) error {
	return b.room.Mistake(h.where, fmt.Sprintf("hung sheet %d leaves no number for %d of the sheets at its left: numbers go up from left to right", h.number, lack),
		"give each run a flitch of its own, or put the walls into the order in which they are hung")
}

// numberFreely numbers from 1, round the numbers that hang, where no flitch is given.
func (b *builder) numberFreely(columns []column, hung map[int]hungSheet) error {
	last, count := 0, 0
	for i, c := range columns {
		if h, ok := hung[i]; ok {
			if h.number <= last {
				return b.tooFew(h, last-h.number+1)
			}
			last = h.number - 1
		}
		for _, k := range c.sheets {
			last++
			count++
			c.run.Sheets[k].Number = last
		}
	}
	b.say(finding.NoFlitch, finding.Finding{Place: "room", Wall: -1}, finding.Slots{"count": strconv.Itoa(count)})
	return nil
}

// hungColumns are the sheets on the wall, by the index of their column.
func (b *builder) hungColumns() map[int]hungSheet {
	out := map[int]hungSheet{}
	for i, asked := range b.asked {
		run := &b.plan.Runs[i]
		for j, q := range asked {
			for k, h := range q.hung {
				out[run.Spans[j].FirstSheet+k-1] = h
			}
		}
	}
	return out
}

// hangNumbers numbers a column that hangs, and takes what is behind it out of the supply. The upper sheets of the column have
// the numbers that can be hung next.
func (b *builder) hangNumbers(c column, h hungSheet, all []supply) {
	for i := range all[:h.flitch] {
		all[i].free = nil
	}
	s := &all[h.flitch]
	left := slices.DeleteFunc(slices.Clone(s.free), func(n int) bool { return n <= h.number })
	for up, k := range c.sheets {
		sheet := &c.run.Sheets[k]
		sheet.Flitch, sheet.Number = s.flitch.Number, h.number
		if up > 0 && len(left) > 0 {
			sheet.Number, left = left[0], left[1:]
		}
	}
	s.free = left
}

// before is what of a supply may stand left of a hung sheet.
func before(all []supply, h hungSheet) []supply {
	out := slices.Clone(all[:h.flitch+1])
	last := &out[h.flitch]
	last.free = slices.DeleteFunc(slices.Clone(last.free), func(n int) bool { return n >= h.number })
	return out
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
	if b.aim != seam.Fewest {
		if other, err := solve(b.room, seam.Fewest); err == nil {
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

// leftOut names the numbers that are never laid.
func (b *builder) leftOut(all []supply) {
	for _, s := range all {
		for _, kind := range []struct {
			why     string
			numbers []int
		}{{"damaged", s.flitch.Damaged}, {"spare", s.flitch.Spare}} {
			if len(kind.numbers) == 0 {
				continue
			}
			b.say(finding.NumbersLeftOut, finding.Finding{Place: "flitch " + s.flitch.Number, Wall: -1}, finding.Slots{
				"flitch": s.flitch.Number, "numbers": Numbers(kind.numbers), "why": kind.why,
				"all": Numbers(s.flitch.Sheets)})
		}
	}
}

// stock lists what becomes of a flitch's numbers.
func (b *builder) stock(columns []column, s supply) {
	out := Stock{Flitch: s.flitch.Number, Delivered: s.flitch.Sheets, Damaged: s.flitch.Damaged, Spare: s.flitch.Spare}
	for _, c := range columns {
		for _, k := range c.sheets {
			if sheet := c.run.Sheets[k]; sheet.Flitch == s.flitch.Number && sheet.Number > 0 {
				out.Laid = append(out.Laid, sheet.Number)
			}
		}
	}
	for _, n := range s.flitch.Sheets {
		if !slices.Contains(out.Laid, n) && !slices.Contains(out.Damaged, n) && !slices.Contains(out.Spare, n) {
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

package layout

import (
	"fmt"
	"slices"
	"strconv"

	"flitchlay/internal/finding"
)

// number gives every sheet its number: up with the place, flitch after flitch, and down in a flitch that is laid from its high end.
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
	for _, e := range b.begins {
		if e.seam.Seen > b.room.Rules.ShortSeam || b.whole(e.run, e.seam) {
			b.say(finding.FlitchBegins, finding.Finding{Place: b.seamPlace(e.run, e.seam), Wall: e.seam.Wall, At: e.seam.X, Measured: ptr(e.seam.Seen)},
				finding.Slots{"flitch": e.flitch, "seam": b.plan.SeamNumbers(e.run, e.seam), "where": b.summed(e.run, e.seam)})
		}
	}
	for _, e := range b.ends {
		b.say(finding.FlitchChangeInField, finding.Finding{Place: b.seamPlace(e.run, e.seam), Wall: e.seam.Wall, At: e.seam.X}, finding.Slots{
			"flitch": e.flitch, "seam": b.plan.SeamNumbers(e.run, e.seam), "wall": b.room.Walls[e.seam.Wall].Name})
	}
	for i := range all {
		b.stock(columns, all[i])
		b.leftOut(all[i].flitch, &b.plan.Left[len(b.plan.Left)-1])
	}
	return nil
}

// flitchEnd is a seam at which a flitch runs out, in the open field of a wall, or the next one begins; the sheets at it have
// their numbers when it is said.
type flitchEnd struct {
	run    *Run
	seam   *Seam
	flitch string
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
		// what stands before it takes the numbers that are laid before it
		before := slices.Clone(all[flitch : to+1])
		last := &before[len(before)-1]
		last.free = slices.DeleteFunc(slices.Clone(last.free), func(m int) bool { return !last.flitch.Before(m, n) })
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
		left := slices.DeleteFunc(slices.Clone(all[flitch].free), func(m int) bool { return !all[flitch].flitch.Before(n, m) })
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
		if all[i].flitch.UseUp {
			inField = b.inField(columns, end)
		} else {
			end, inField = b.change(columns, at, end, all[i+1:])
		}
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
				b.ends = append(b.ends, flitchEnd{columns[end].run, s, all[i].flitch.Number})
			} else {
				b.begins = append(b.begins, flitchEnd{columns[end].run, s, all[i+1].flitch.Number})
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

package layout

import (
	"fmt"
	"slices"
	"strconv"

	"flitchlay/internal/finding"
	"flitchlay/internal/room"
	"flitchlay/internal/seam"
)

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
		if other, err := solve(b.room, seam.Fewest, nil, b.layer, b.shapes); err == nil {
			other.tile() // a course that covers nothing takes no sheet
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
		"needed": strconv.Itoa(needed), "have": strconv.Itoa(have), "short": strconv.Itoa(needed - have), "fewest": fewest, "why": b.higher()})
}

// higher says of the first wall with more than one course that it has: the cause of so many sheets stands with its effect.
func (b *builder) higher() string {
	for i := range b.plan.Runs {
		r := &b.plan.Runs[i]
		for k := range r.Sheets {
			if r.Sheets[k].Course > 1 && len(r.Walls) > 0 {
				name, take := "wall "+b.room.Walls[r.Walls[0].Wall].Name+" takes", " more than one course, for a sheet is only "
				if n := len(r.Walls); n > 1 {
					name = "of the walls from " + b.room.Walls[r.Walls[0].Wall].Name + " to " + b.room.Walls[r.Walls[n-1].Wall].Name + " some take"
				}
				return "; " + name + take + b.style.Words(b.room.Veneer.Length) + " long"
			}
		}
	}
	return ""
}

// leftOut names the numbers of a flitch that are never laid, and those damaged that hang all the same.
func (b *builder) leftOut(f *room.Flitch, s *Stock) {
	place := finding.Finding{Place: "flitch " + s.Flitch, Wall: -1}
	for _, kind := range []struct {
		why     string
		numbers []int
	}{{"damaged", less(s.Damaged, f.Refused)}, {"measured under " + b.style.Words(b.room.LeastGross()), less(f.Refused, s.Laid)}, {"spare", s.Spare}} {
		if len(kind.numbers) > 0 {
			b.say(finding.NumbersLeftOut, place, finding.Slots{"flitch": s.Flitch, "numbers": sheetsAre(kind.numbers), "why": kind.why,
				"all": Numbers(s.Delivered)})
		}
	}
	if up := slices.DeleteFunc(slices.Clone(f.Damaged), func(n int) bool { return !slices.Contains(s.Laid, n) }); len(up) > 0 {
		b.say(finding.HungDamaged, place, finding.Slots{"flitch": s.Flitch, "numbers": sheets(up), "hang": eachOf(len(up), "hangs", "hang"),
			"count": eachOf(len(up), "counts", "count")})
	}
}

// less are numbers that are not among others.
func less(numbers, others []int) []int {
	return slices.DeleteFunc(slices.Clone(numbers), func(n int) bool { return slices.Contains(others, n) })
}

// sheetsAre begins a sentence about sheets.
func sheetsAre(numbers []int) string { return sheets(numbers) + eachOf(len(numbers), " is", " are") }

// sheets names sheets in a sentence.
func sheets(numbers []int) string {
	return eachOf(len(numbers), "sheet ", "sheets ") + Numbers(numbers)
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

package layout

import (
	"fmt"
	"slices"
	"strconv"

	"flitchlay/internal/finding"
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
				"flitch": s.flitch.Number, "numbers": sheetsAre(kind.numbers), "why": kind.why,
				"all": Numbers(s.flitch.Sheets)})
		}
	}
}

// sheetsAre begins a sentence about sheets.
func sheetsAre(numbers []int) string {
	if len(numbers) == 1 {
		return "sheet " + strconv.Itoa(numbers[0]) + " is"
	}
	return "sheets " + Numbers(numbers) + " are"
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

package count

import (
	"slices"

	"flitchlay/internal/layout"
)

// Flitch is what becomes of the sheets of one flitch. Every number delivered is in one of the lists.
type Flitch struct {
	Number    string
	Delivered []int
	Damaged   []int
	Spare     []int
	Laid      []int // on the wall
	Gaps      []int // laid out, but wholly in a gap or an opening: they hang nowhere and go back to stock
	Left      []int
	Short     int // sheets for which no number is left; told of the last flitch
	Headers   int // of those laid: only over an opening that reaches the floor
	Want      int // spares to have for those laid
}

// Over is how many are left over: kept back, never laid, or back from gaps.
func (f *Flitch) Over() int { return len(f.Spare) + len(f.Left) + len(f.Gaps) }

// flitches sorts every delivered number into one list.
func (c *Count) flitches() {
	where := map[string]map[int]int{}
	headers := map[string]int{}
	const onWall, nowhere = 1, 2
	c.each(func(_ *layout.Run, s *layout.Sheet) {
		if where[s.Flitch] == nil {
			where[s.Flitch] = map[int]int{}
		}
		where[s.Flitch][s.Number] = onWall
		if len(s.Pieces) == 0 {
			where[s.Flitch][s.Number] = nowhere
		}
	})
	for _, cut := range c.Cuts {
		if cut.HeaderOnly {
			headers[cut.Flitch]++
			c.All.Headers++
		}
	}
	for i := range c.Plan.Left {
		stock := &c.Plan.Left[i]
		f := Flitch{Number: stock.Flitch, Delivered: stock.Delivered, Headers: headers[stock.Flitch]}
		for _, n := range stock.Delivered {
			switch {
			case where[f.Number][n] == onWall:
				f.Laid = append(f.Laid, n)
			case where[f.Number][n] == nowhere:
				f.Gaps = append(f.Gaps, n)
			case slices.Contains(stock.Damaged, n):
				f.Damaged = append(f.Damaged, n)
			case slices.Contains(stock.Spare, n):
				f.Spare = append(f.Spare, n)
			default:
				f.Left = append(f.Left, n)
			}
		}
		if len(stock.Laid) > 0 {
			f.Want = layout.Spares(c.room(), len(stock.Laid))
		}
		if i == len(c.Plan.Left)-1 {
			f.Short = c.Plan.Totals.Short
		}
		c.Flitches = append(c.Flitches, f)
	}
	for _, f := range c.Flitches {
		c.All.Delivered = append(c.All.Delivered, f.Delivered...)
		c.All.Damaged = append(c.All.Damaged, f.Damaged...)
		c.All.Spare = append(c.All.Spare, f.Spare...)
		c.All.Laid = append(c.All.Laid, f.Laid...)
		c.All.Gaps = append(c.All.Gaps, f.Gaps...)
		c.All.Left = append(c.All.Left, f.Left...)
		c.All.Short += f.Short
		c.All.Want += f.Want
	}
	if len(c.Flitches) == 0 {
		c.All.Want = c.Spares
		c.each(func(_ *layout.Run, s *layout.Sheet) {
			if len(s.Pieces) == 0 {
				c.All.Gaps = append(c.All.Gaps, s.Number)
			} else {
				c.All.Laid = append(c.All.Laid, s.Number)
			}
		})
	}
}

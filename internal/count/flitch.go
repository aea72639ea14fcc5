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

// What has become of a sheet that was laid out.
const onWall, nowhere = 1, 2

// flitches sorts every delivered number into one list.
func (c *Count) flitches() {
	where := map[string]map[int]int{}
	headers := map[string]int{}
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
		f.sort(stock, where[f.Number])
		if len(stock.Laid) > 0 {
			f.Want = layout.Spares(c.room(), len(stock.Laid))
		}
		if i == len(c.Plan.Left)-1 {
			f.Short = c.Plan.Totals.Short
		}
		c.Flitches = append(c.Flitches, f)
		c.All.add(&f)
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

// sort puts each number that was delivered into its list.
func (f *Flitch) sort(stock *layout.Stock, where map[int]int) {
	for _, n := range stock.Delivered {
		switch {
		case where[n] == onWall:
			f.Laid = append(f.Laid, n)
		case where[n] == nowhere:
			f.Gaps = append(f.Gaps, n)
		case slices.Contains(stock.Damaged, n):
			f.Damaged = append(f.Damaged, n)
		case slices.Contains(stock.Spare, n):
			f.Spare = append(f.Spare, n)
		default:
			f.Left = append(f.Left, n)
		}
	}
}

// add adds a flitch to what is told of all; its headers are counted already.
func (f *Flitch) add(one *Flitch) {
	f.Delivered = append(f.Delivered, one.Delivered...)
	f.Damaged = append(f.Damaged, one.Damaged...)
	f.Spare = append(f.Spare, one.Spare...)
	f.Laid = append(f.Laid, one.Laid...)
	f.Gaps = append(f.Gaps, one.Gaps...)
	f.Left = append(f.Left, one.Left...)
	f.Short += one.Short
	f.Want += one.Want
}

package layout

import (
	"slices"

	"flitchlay/internal/room"
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
	free   []int // in the order in which they are laid
}

func (b *builder) supplies() []supply {
	var out []supply
	for i := range b.room.Flitches {
		f := &b.room.Flitches[i]
		s := supply{flitch: f}
		for _, n := range f.Laid(f.Sheets) {
			if !slices.Contains(f.Damaged, n) && !slices.Contains(f.Spare, n) {
				s.free = append(s.free, n)
			}
		}
		out = append(out, s)
	}
	return out
}

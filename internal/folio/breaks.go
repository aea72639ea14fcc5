package folio

import (
	"math"

	"flitchlay/internal/draft"
)

// What a break costs, where the height of a full column is 1 and every column costs the square of its own: so columns
// and pages come out even, and a break is worth its while only where it evens them out.
const (
	Forbidden = 1e4  // breaks what a reader needs together; one page more is taken to avoid it
	GoesOn    = 0.15 // any table or list that goes on in the next column
	Parting   = 0.60 // besides, the lower it is: one as high as the column is parted freely
	Turning   = 0.25 // besides, where the page is turned
)

const (
	LeastRows  = 4 // rows that a part of a table holds, its head apart; what has less than twice as many is whole
	LeastItems = 2 // paragraphs that a part of a list holds
)

// Flowing is blocks with their heights, while it is sought where they break.
//
//	place   0 1 2 3   4 5 6   7 8 9 10   11
//	block   0 0 0 0   1 1 1   2 2 2 2    end
type Flowing struct {
	Blocks []Block
	High   float64 // of a column
	Gap    float64 // between blocks; less of it where that saves a page
	Count  int     // columns to a page
	Above  []float64
	Rows   [][]float64
	Total  []float64 // height of a block that is not parted
	Place  []Row     // all rows in order
}

// Row is a row or item of a block.
type Row struct{ Block, Row int }

func NewFlowing(k draft.Look, blocks []Block, c Columns) *Flowing {
	f := &Flowing{Blocks: blocks, High: c.Box.H(), Count: c.Count}
	for i := range blocks {
		above, rows := blocks[i].Heights(k, c.Width())
		if len(rows) == 0 {
			rows = []float64{0} // a head alone
		}
		total := above
		for r, h := range rows {
			total += h
			f.Place = append(f.Place, Row{i, r})
		}
		f.Above, f.Rows, f.Total = append(f.Above, above), append(f.Rows, rows), append(f.Total, total)
	}
	return f
}

// What stands between two blocks, on the office page.
const WideGap, CloseGap = 7, 5

// Spaced is the same with a gap.
func (f *Flowing) Spaced(gap float64) *Flowing {
	g := *f
	g.Gap = gap
	return &g
}

// Cost is what it costs to break before a place, with the first row of the same block in the column so far.
func (f *Flowing) Cost(at Row, first int, turns bool) float64 {
	n := len(f.Rows[at.Block])
	if at.Row == 0 {
		return 0
	}
	b := &f.Blocks[at.Block]
	cost := GoesOn + Parting*math.Max(0, 1-f.Total[at.Block]/f.High)
	least := LeastItems
	if b.Table != nil {
		least = LeastRows
		if b.Table.Rows[at.Row-1].Rule {
			cost /= 2 // there the rows part of themselves
		}
		if b.Table.Rows[at.Row].On {
			cost += Forbidden
		}
	}
	whole := n < 2*least
	least = min(least, n/2) // of what is short and yet higher than a column
	if lacks := 2*least - min(least, at.Row-first) - min(least, n-at.Row); lacks > 0 {
		cost += Forbidden * float64(lacks)
	}
	if (b.Whole || whole) && f.Total[at.Block] <= f.High {
		cost += Forbidden
	}
	if turns {
		cost += Turning
	}
	return cost
}

// Column goes through the places at which a column that begins at from may end, and how high it is then.
func (f *Flowing) Column(from int, visit func(to int, high float64)) {
	y := 0.0
	for to := from; to < len(f.Place); to++ {
		at := f.Place[to]
		if to == from || at.Row == 0 {
			if to > from {
				y += f.Gap
			}
			y += f.Above[at.Block]
		}
		y += f.Rows[at.Block][at.Row]
		if y > f.High+1e-6 && to > from { // a row higher than the column stands alone
			return
		}
		visit(to+1, y)
	}
}

// Breaks finds the places at which so many columns begin, at the least cost. It is infinite where they do not hold all.
func (f *Flowing) Breaks(columns int) (starts []int, cost float64) {
	end := len(f.Place)
	best := make([]float64, end+1) // from a place on, in the columns from the present one on
	next := make([][]int, columns)
	for p := range end {
		best[p] = math.Inf(1)
	}
	for c := columns - 1; c >= 0; c-- {
		now, to := make([]float64, end+1), make([]int, end+1)
		to[end] = end
		turns := (c+1)%f.Count == 0
		late := 1 + float64(c)/float64(100*columns) // of two alike, the fuller column stands first
		for p := range end {
			now[p] = math.Inf(1)
			f.Column(p, func(q int, high float64) {
				cost := best[q] + late*(high/f.High)*(high/f.High)
				if q < end && !math.IsInf(cost, 1) {
					first := 0
					if f.Place[q].Block == f.Place[p].Block {
						first = f.Place[p].Row
					}
					cost += f.Cost(f.Place[q], first, turns)
				}
				if cost < now[p] {
					now[p], to[p] = cost, q
				}
			})
		}
		best, next[c] = now, to
	}
	for c, p := 0, 0; c < columns && p < end; c++ {
		starts = append(starts, p)
		p = next[c][p]
	}
	return starts, best[0]
}

// Flow finds where blocks stand: down a column, then into the next, then onto the next page. It takes the fewest pages
// that hold all without breaking what belongs together; over these, rows and columns come out as even as they can. A
// table or list that is parted has its title and head repeated.
//
// Shape: the parts on each page.
func Flow(k draft.Look, blocks []Block, c Columns) [][]Placed {
	f := NewFlowing(k, blocks, c)
	full := 0.0
	for _, h := range f.Total {
		full += h
	}
	var starts []int
	cost := math.Inf(1)
	for pages := max(1, int(full/(f.High*float64(c.Count)))); cost >= Forbidden; pages++ {
		before := cost
		for _, gap := range []float64{WideGap, CloseGap} {
			at, less := f.Spaced(k.Of(gap)).Breaks(pages * c.Count)
			if less < cost-Forbidden/2 {
				starts, cost, f.Gap = at, less, k.Of(gap)
			}
		}
		if !math.IsInf(before, 1) {
			break // one page more has helped, or nothing does
		}
	}
	list := make([][]Placed, max(1, (len(starts)+c.Count-1)/c.Count))
	for col, p := range starts {
		end := len(f.Place)
		if col+1 < len(starts) {
			end = starts[col+1]
		}
		page := &list[col/c.Count]
		x, y := c.Box.X0+float64(col%c.Count)*(c.Width()+c.Gap), c.Box.Y0
		for p < end {
			at := f.Place[p]
			high := f.Above[at.Block]
			for ; p < end && f.Place[p].Block == at.Block; p++ {
				high += f.Rows[at.Block][f.Place[p].Row]
			}
			*page = append(*page, Placed{at.Block, at.Row, x, y, high})
			y += high + f.Gap
		}
	}
	return list
}

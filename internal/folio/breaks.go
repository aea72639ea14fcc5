package folio

import (
	"math"

	"flitchlay/internal/draft"
)

// What a break costs, where the height of a full column is 1 and every column costs the square of its own: so columns
// and pages come out even, and a break is worth its while only where it evens them out.
const (
	forbidden = 1e4  // breaks what a reader needs together; one page more is taken to avoid it
	goesOn    = 0.15 // any table or list that goes on in the next column
	parting   = 0.60 // besides, the lower it is: one as high as the column is parted freely
	turning   = 0.25 // besides, where the page is turned
)

const (
	LeastRows  = 4 // rows that a part of a table holds, its head apart; what has less than twice as many is whole
	LeastItems = 2 // paragraphs that a part of a list holds
)

// flowing is blocks with their heights, while it is sought where they break.
//
//	place   0 1 2 3   4 5 6   7 8 9 10   11
//	block   0 0 0 0   1 1 1   2 2 2 2    end
type flowing struct {
	blocks []Block
	high   float64 // of a column
	head   float64 // what is kept free over the columns of the first page
	foot   float64 // what is kept free under them
	gap    float64 // between blocks; less of it where that saves a page
	count  int     // columns to a page
	above  []float64
	rows   [][]float64
	total  []float64 // height of a block that is not parted
	place  []row     // all rows in order
}

// row is a row or item of a block.
type row struct{ block, row int }

func newFlowing(k draft.Look, blocks []Block, c Columns) *flowing {
	f := &flowing{blocks: blocks, high: c.Box.H(), head: c.Head, foot: c.Foot, count: c.Count}
	for i := range blocks {
		above, rows := blocks[i].heights(k, c.Width())
		if len(rows) == 0 {
			rows = []float64{0} // a head alone
		}
		total := above
		for r, h := range rows {
			total += h
			f.place = append(f.place, row{i, r})
		}
		f.above, f.rows, f.total = append(f.above, above), append(f.rows, rows), append(f.total, total)
	}
	return f
}

// What stands between two blocks, in mm on the office page: as a rule, and where that saves a page.
const wideGap, closeGap = 7, 5

// spaced is the same with a gap.
func (f *flowing) spaced(gap float64) *flowing {
	g := *f
	g.gap = gap
	return &g
}

// cost is what it costs to break before a place, with the first row of the same block in the column so far.
func (f *flowing) cost(at row, first int, turns bool) float64 {
	n := len(f.rows[at.block])
	if at.row == 0 {
		return 0
	}
	b := &f.blocks[at.block]
	cost := goesOn + parting*math.Max(0, 1-f.total[at.block]/f.high)
	least := LeastItems
	if b.Table != nil {
		least = LeastRows
		if b.Table.Rows[at.row-1].Rule {
			cost /= 2 // there the rows part of themselves
		}
		if b.Table.Rows[at.row].On {
			cost += forbidden
		}
	}
	whole := n < 2*least
	least = min(least, n/2) // of what is short and yet higher than a column
	if lacks := 2*least - min(least, at.row-first) - min(least, n-at.row); lacks > 0 {
		cost += forbidden * float64(lacks)
	}
	if (b.Whole || whole) && f.total[at.block] <= f.high {
		cost += forbidden
	}
	if turns {
		cost += turning
	}
	return cost
}

// over is what is kept free over a column.
func (f *flowing) over(column int) float64 {
	if column < f.count {
		return f.head
	}
	return 0
}

// under is what is kept free under it.
func (f *flowing) under(column int) float64 {
	if column < f.count {
		return f.foot
	}
	return 0
}

// column goes through the places at which a column that begins at from may end, and how far down it reaches then, so much being kept
// free over it and under it.
func (f *flowing) column(from int, over, under float64, visit func(to int, down float64)) {
	y := over
	if over > 0 {
		visit(from, y) // over a low column the lists may wait for the next
	}
	for to := from; to < len(f.place); to++ {
		at := f.place[to]
		if to == from || at.row == 0 {
			if to > from {
				y += f.gap
			}
			y += f.above[at.block]
		}
		y += f.rows[at.block][at.row]
		if y > f.high-under+1e-6 && to > from { // a row higher than the column stands alone
			return
		}
		visit(to+1, y)
	}
}

// breaks finds the places at which so many columns begin, at the least cost. It is infinite where they do not hold all.
func (f *flowing) breaks(columns int) (starts []int, cost float64) {
	end := len(f.place)
	best := make([]float64, end+1) // from a place on, in the columns from the present one on
	next := make([][]int, columns)
	for p := range end {
		best[p] = math.Inf(1)
	}
	for c := columns - 1; c >= 0; c-- {
		now, to := make([]float64, end+1), make([]int, end+1)
		to[end] = end
		turns := (c+1)%f.count == 0
		late := 1 + float64(c)/float64(100*columns) // of two alike, the fuller column stands first
		for p := range end {
			now[p] = math.Inf(1)
			f.column(p, f.over(c), f.under(c), func(q int, down float64) {
				cost := best[q] + late*(down/f.high)*(down/f.high)
				if q > p && q < end && !math.IsInf(cost, 1) {
					first := 0
					if f.place[q].block == f.place[p].block {
						first = f.place[p].row
					}
					cost += f.cost(f.place[q], first, turns)
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
// table or list that is parted has its title and head repeated. It tries
//
//  1. from the fewest pages that could hold all one page more at a time, until nothing is broken that belongs together, or
//     one page more has been tried than the first number that holds all: still more would not help;
//  2. for each number of pages the wide gaps, then the close ones, which have to save a break to be taken.
//
// Shape: the parts on each page.
func Flow(k draft.Look, blocks []Block, c Columns) [][]Placed {
	f := newFlowing(k, blocks, c)
	full := (c.Head + c.Foot) * float64(c.Count)
	for _, h := range f.total {
		full += h
	}
	var starts []int
	cost := math.Inf(1)
	for pages := max(1, int(full/(f.high*float64(c.Count)))); cost >= forbidden; pages++ {
		before := cost
		for _, gap := range []float64{wideGap, closeGap} {
			at, less := f.spaced(k.Of(gap)).breaks(pages * c.Count)
			if less < cost-forbidden/2 {
				starts, cost, f.gap = at, less, k.Of(gap)
			}
		}
		if !math.IsInf(before, 1) {
			break // one page more has helped, or nothing does
		}
	}
	list := make([][]Placed, max(1, (len(starts)+c.Count-1)/c.Count))
	for col, p := range starts {
		end := len(f.place)
		if col+1 < len(starts) {
			end = starts[col+1]
		}
		page := &list[col/c.Count]
		x, y := c.Box.X0+float64(col%c.Count)*(c.Width()+c.Gap), c.Box.Y0+f.over(col)
		for p < end {
			at := f.place[p]
			high := f.above[at.block]
			for ; p < end && f.place[p].block == at.block; p++ {
				high += f.rows[at.block][f.place[p].row]
			}
			*page = append(*page, Placed{at.block, at.row, x, y, high})
			y += high + f.gap
		}
	}
	return list
}

package draft

import (
	"math"
	"slices"
)

// Flag is a place whose figure stands under it, level, in one of some rows. A stem leads down to it.
type Flag struct {
	At    float64 // of the flag, along
	Width float64 // of its figure
	Row   int     // 1, 2, ...: the row it has to stand in; 0 for any
	Aside int     // -1: the figure ends at the flag, +1: it begins there; 0 for any
}

// Perch is where the figure of a flag stands.
type Perch struct {
	Row      int     // 1 is the nearest to the wall
	From, To float64 // of the figure, along
}

// nib is how far a figure that stands to one side of its stem reaches past it.
const nib = 0.9

// What a figure costs besides its row, each of which costs 1.
const (
	asideCost  = 1.2 // at one side of its flag: a figure under its flag one row further out is better, two rows is not
	pushedCost = 0.8 // pushed along by an end of the page: better than one row further out
)

// patience is how many places are tried before the best answer so far stands: a crowded wall would take for ever.
const patience = 60_000

// Rows finds a row and a place for the figure of every flag so that no figure touches another one nor a stem that goes
// on to a deeper row: figures in the middle under their flags where they can be, in as few rows as can be.
//
// Shape: one perch for each flag; flags ascend.
//
// Errors: false where the rows do not suffice.
func Rows(flags []Flag, rows int, air, lo, hi float64) ([]Perch, bool) {
	s := rowSearch{flags: flags, rows: rows, air: air, lo: lo, hi: hi, best: math.Inf(1), left: patience, now: make([]Perch, len(flags)), side: make([]int, len(flags))}
	for _, f := range flags {
		s.widest = math.Max(s.widest, f.Width)
	}
	s.look()
	s.place(0, 0)
	return s.found, s.found != nil
}

// rowSearch goes through the answers and keeps the cheapest whole one. For each flag in its order it tries
//
//  1. the rows from the wall out: the nearest costs least, so good answers come early and cut the others off;
//  2. in each row the figure under its flag, then ending there, then beginning there: under it nothing is to be explained.
//
// What is still to be placed sees only the figures that reach far enough: where these stand as they stood before, at no less cost,
// nothing better can come.
type rowSearch struct {
	flags       []Flag
	rows        int
	air, lo, hi float64
	widest      float64 // of the figures
	now, found  []Perch
	side        []int // of now, counted in the order tried
	best        float64
	left        int               // steps before it is content with what it has
	first       []float64         // of each flag: where its figure and those after it begin at the earliest
	seen        map[sight]float64 // the least cost so far
}

// sight is what the flags from one on see of those before: of every row the last figure, if it reaches them. Figures of a row follow one
// another as their flags do, and so do stems, so that whoever is clear of the last is clear of all.
type sight struct {
	from int
	last uint64 // seven bits for each row: how far back its flag is, and the side
}

// look finds where the figures of each flag and those after it begin at the earliest.
func (s *rowSearch) look() {
	s.seen = map[sight]float64{}
	s.first = make([]float64, len(s.flags))
	first := math.Inf(1)
	for i, f := range slices.Backward(s.flags) {
		first = min(first, f.At+nib-f.Width, f.At-f.Width/2, s.hi-f.Width)
		s.first[i] = first
	}
}

// known reports whether the flags from i on saw the same before at no more cost. What has no room in a sight is not known.
func (s *rowSearch) known(i int, cost float64) bool {
	at, met := sight{from: i}, uint64(0)
	for j := i - 1; j >= 0 && s.flags[j].At+s.widest+s.air > s.first[i]; j-- {
		p := s.now[j]
		if row := uint64(1) << p.Row; met&row == 0 {
			met |= row
			if p.To+s.air > s.first[i] {
				back := uint64(3*(i-j-1) + s.side[j] + 1)
				if back > 127 || p.Row > 9 {
					return false
				}
				at.last |= back << (7 * (p.Row - 1))
			}
		}
	}
	if was, ok := s.seen[at]; ok && was <= cost {
		return true
	}
	s.seen[at] = cost
	return false
}

func (s *rowSearch) place(i int, cost float64) {
	if cost+float64(len(s.flags)-i) >= s.best || s.left <= 0 {
		return
	}
	if i == len(s.flags) {
		s.best, s.found = cost, append([]Perch(nil), s.now...)
		return
	}
	if s.known(i, cost) {
		return
	}
	f := s.flags[i]
	for row := 1; row <= s.rows; row++ {
		if f.Row != 0 && f.Row != row {
			continue
		}
		for k, side := range []int{0, -1, 1} {
			if f.Aside != 0 && side != f.Aside {
				continue
			}
			s.left--
			p, extra, ok := s.perch(f, row, side)
			if !ok || !s.clear(i, p) {
				continue
			}
			s.now[i], s.side[i] = p, k
			s.place(i+1, cost+float64(row)+extra)
		}
	}
}

// perch returns where the figure of a flag stands in a row and at a side of it, and what that costs besides the row.
//
// Errors: false where no room is left for it between the ends.
func (s *rowSearch) perch(f Flag, row, side int) (p Perch, extra float64, ok bool) {
	p = Perch{Row: row, From: f.At - f.Width/2, To: f.At + f.Width/2}
	switch side {
	case -1:
		p.From, p.To, extra = f.At+nib-f.Width, f.At+nib, asideCost
	case 1:
		p.From, p.To, extra = f.At-nib, f.At-nib+f.Width, asideCost
	}
	// at the ends of the page a figure gives way as far as it still touches its stem
	if d := s.lo - p.From; d > 0 {
		p.From, p.To, extra = p.From+d, p.To+d, math.Max(extra, pushedCost)
	}
	if d := p.To - s.hi; d > 0 {
		p.From, p.To, extra = p.From-d, p.To-d, math.Max(extra, pushedCost)
	}
	return p, extra, p.From >= s.lo-1e-9 && f.At >= p.From-1e-9 && f.At <= p.To+1e-9
}

// clear reports whether a figure is in the way of none before it. Flags ascend and a figure touches its stem, so that from the
// first flag on that is further off than a figure is wide nothing reaches it.
func (s *rowSearch) clear(i int, p Perch) bool {
	at := s.flags[i].At
	for j := i - 1; j >= 0; j-- {
		q, other := s.now[j], s.flags[j].At
		if other+s.widest+s.air < p.From {
			return true
		}
		switch {
		case q.Row == p.Row && p.From-s.air < q.To && q.From-s.air < p.To:
			return false
		case q.Row < p.Row && at > q.From-s.air && at < q.To+s.air:
			return false
		case q.Row > p.Row && other > p.From-s.air && other < p.To+s.air:
			return false
		}
	}
	return true
}

// Shelf spreads figures that stand upright side by side, in the order of their flags, each as near to its flag as its
// neighbours let it.
//
// Shape: the middle of each.
func Shelf(at []float64, width, lo, hi float64) []float64 {
	// Blocks of neighbours that touch move together to the mean of what they want, the manner of isotonic regression.
	type block struct {
		sum float64
		n   int
	}
	var blocks []block
	for i, x := range at {
		blocks = append(blocks, block{x - float64(i)*width, 1})
		for n := len(blocks); n > 1 && blocks[n-2].sum/float64(blocks[n-2].n) > blocks[n-1].sum/float64(blocks[n-1].n); n = len(blocks) {
			blocks[n-2].sum += blocks[n-1].sum
			blocks[n-2].n += blocks[n-1].n
			blocks = blocks[:n-1]
		}
	}
	out := make([]float64, 0, len(at))
	for _, b := range blocks {
		for range b.n {
			out = append(out, b.sum/float64(b.n)+float64(len(out))*width)
		}
	}
	if n := len(out); n > 0 {
		for i := range out {
			out[i] = math.Max(out[i], lo+width*(float64(i)+0.5))
		}
		for i := range out {
			out[i] = math.Min(out[i], hi-width*(float64(n-i)-0.5))
		}
	}
	return out
}

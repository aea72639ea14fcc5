package seam

// rows says over which lines rows of sheets lead that break no must, or with dues no more than need be, from both sides, so that
// whether one wish more can be had with those taken before takes one look at its place. A wish taken changes what leads where only
// about its place: a few sheets further on mostly every line is reached as before, and there it ends.
//
// In a closed span a row leads from a line to the same line met again. It begins in a stretch as long as the net width, in
// which each layout has a seam; bits say from which of its lines a row begins.
type rows struct {
	g       *grid
	dues    *dues // what rows may break; nil where they break nothing
	base    int   // the line that the arrays begin with
	words   int   // of bits
	starts  []int
	width   int64 // that a sheet must have
	least   int   // steps that an inner sheet takes at least
	wrapped int   // the same of one that goes over the short step of a closed span
	reach   int   // the furthest line that the first sheet of an open span can end on
	free    []bool
	limit   []int32 // how far right a sheet from a line may reach
	from    []int32 // how far left a sheet to a line may begin
	passes  []bool  // a sheet of net steps may pass the limit
	forth   []uint64
	back    []uint64
	part    []uint64 // scratch: what leads to the lines from each to a turning place
	wishes  []wish
	alone   bool // one sheet may cover all
	taken   []undo
	logs    int // trials that may be undone
	gone    int // words gone over
}

// undo is what a word of rows was before.
type undo struct {
	old  uint64
	at   int32
	back bool // of the two lists
}

// mostWords bounds the memory of rows.
const mostWords = 1 << 22

// leastNet is the net width, in steps, under which rows do not serve.
const leastNet = 3

// newRows finds the rows of a span with no wish taken; nil where rows do not serve, and for a long closed span on a grid so fine that
// it would take too much.
// With freed it will be asked what lines lead where that now break a must.
func newRows(g *grid, freed bool) *rows {
	s := g.s
	if !rowsServe(g) {
		return nil
	}
	r := &rows{g: g, words: 1}
	if g.s.whole() >= s.LeastWidth {
		r.width = s.LeastWidth
	}
	if s.Closed {
		r.begin(freed)
		r.words = max(1, (len(r.starts)+63)/64)
	}
	if !r.lay(r.mayHold) {
		return nil
	}
	r.goForth(0, len(r.free))
	r.goBack(len(r.free)-1, -1)
	return r
}

// rowsServe reports whether rows serve a span: not one as short as a few sheets, nor sheets of a few steps, nor seams that may not
// stand everywhere.
func rowsServe(g *grid) bool {
	s := g.s
	return g.net >= leastNet && (!s.Closed || g.lines > 2*g.net) && len(s.NotClosing)+len(s.NotFirst)+len(s.NotLast) == 0
}

// lay makes the lists of rows whose lines and words are known; false where they would take too much.
func (r *rows) lay(mayHold func(line int) bool) bool {
	g, s := r.g, r.g.s
	r.reach = g.firstReach()
	r.least = max(1, int((r.width+s.Snap-1)/s.Snap))
	r.wrapped = max(1, int((r.width+g.short+s.Snap-1)/s.Snap))
	size := g.lines + 1
	if s.Closed {
		size = g.lines + g.net
	}
	if size*r.words > mostWords {
		return false
	}
	r.free, r.passes = make([]bool, size), make([]bool, size)
	r.limit, r.from = make([]int32, size), make([]int32, size)
	for i := range r.free {
		r.limit[i], r.from[i] = int32(i+g.net), int32(i-g.net)
		r.free[i] = (s.Closed || i > 0 && i < g.lines) && mayHold((r.base+i)%g.lines)
	}
	r.forth, r.back, r.part = make([]uint64, size*r.words), make([]uint64, size*r.words), make([]uint64, size*r.words)
	r.alone = !s.Closed && s.R-s.L <= s.onlyReach() && s.R-s.L >= r.width
	return true
}

// mayHold says whether a seam on a line breaks no must.
func (r *rows) mayHold(line int) bool {
	owed := &r.g.owed[line]
	return owed.bends == 0 && owed.edges == 0
}

// begin chooses the stretch in which rows of a closed span begin: the one with the fewest lines that may hold a seam.
func (r *rows) begin(freed bool) {
	g, count := r.g, 0
	fewest := nowhere
	for i := range g.lines {
		if r.mayHold(i) {
			count++
		}
		if i >= g.net && r.mayHold(i-g.net) {
			count--
		}
		if i >= g.net-1 && count < fewest {
			fewest, r.base = count, i-g.net+1
		}
	}
	for i := r.base; i < r.base+g.net; i++ {
		if freed || r.mayHold(i) {
			r.starts = append(r.starts, i)
		}
	}
}

// any reports whether any row leads from one end to the other.
func (r *rows) any() bool {
	if r.alone {
		return true
	}
	for i := range r.free {
		if r.through(i, i) {
			return true
		}
	}
	return false
}

// through reports whether a row leads to one index and on from another.
func (r *rows) through(a, b int) bool {
	for k := range r.words {
		if r.forth[a*r.words+k]&r.back[b*r.words+k] != 0 {
			return true
		}
	}
	return false
}

// first reports whether an open span's first sheet may end on a line, and last whether its last one may begin there.
func (r *rows) first(i int) bool {
	s := r.g.s
	return i <= r.reach && i > 0 && !s.Closed && !s.LeftSeam && r.g.at(i)-s.L >= r.width && r.allows(0, i)
}

func (r *rows) last(i int) bool {
	s := r.g.s
	if s.Closed || i >= r.g.lines {
		return false
	}
	width := s.R - r.g.at(i)
	return width <= s.lastReach() && width >= r.width && r.allows(i, r.g.lines)
}

// allows reports whether the wishes taken allow a sheet; only what they say of end sheets and whole ones is asked here.
func (r *rows) allows(a, b int) bool {
	for i := range r.wishes {
		if !r.wishes[i].allows(a, b) {
			return false
		}
	}
	return true
}

// whole reports whether the wishes taken allow the sheet of net steps from an index.
func (r *rows) whole(a int) bool {
	b := a + r.g.net
	return (int32(b) <= r.limit[a] || r.passes[a]) && (r.g.net >= r.wrapped || !r.crosses(a, b)) && r.least <= r.g.net
}

// crosses reports whether the sheet from one index to another holds the short step.
func (r *rows) crosses(a, b int) bool {
	turn := r.g.lines - r.base
	return r.g.s.Closed && a < turn && turn <= b
}

// meets reports whether one of the ways to keep a pin can be had with all wishes taken.
func (r *rows) meets(w way) bool {
	if r.alone && !r.g.s.Closed {
		over := bounds{wishes: w.wishes}
		if over.allows(0, r.g.lines) {
			return true
		}
	}
	if w.wishes == nil {
		return r.any()
	}
	for i := range w.wishes {
		if r.meetsWish(&w.wishes[i]) {
			return true
		}
	}
	return false
}

// meetsWish reports whether a seam stands in the window of a wish, or a sheet that it names.
func (r *rows) meetsWish(v *wish) bool {
	for line := v.low; line <= v.high; line++ {
		if i := line - r.base; i >= 0 && i < len(r.free) && r.free[i] && !v.bars(line) && r.through(i, i) {
			return true
		}
	}
	for _, pair := range v.but {
		if pair[0] < v.low && pair[1] > v.high && r.pair(pair[0]-r.base, pair[1]-r.base) {
			return true
		}
	}
	return false
}

// pair reports whether a row has a sheet.
func (r *rows) pair(a, b int) bool {
	s, end := r.g.s, r.g.lines
	switch {
	case a < 0 || b >= len(r.free):
		return false
	case r.dues != nil && !r.dues.tight(r, a, b):
		return false
	case s.Closed:
	case a == 0 && b == end:
		return r.alone
	case a == 0 && !s.LeftSeam:
		return r.first(b) && r.back[b] != 0
	case b == end:
		return r.forth[a] != 0 && r.last(a)
	}
	return b-a == r.g.net && r.whole(a) && r.through(a, b)
}

func (v *wish) bars(line int) bool {
	for _, i := range v.bar {
		if i == line {
			return true
		}
	}
	return false
}

package seam

// sweeper finds, from right to left, what the best way on from each line costs.
//
// on[a] is the cost of the seam on line a and of all that lies right of it; narrow[a] the same with what a narrow
// sheet that ends there costs more. A sheet's cost depends on its width only through a few stretches of widths, so
// the best right seam is the least of a few windows over the lines ahead, each kept by a slide.
type sweeper struct {
	*table
	b                 bounds
	on, narrow        []cost
	ends              []cost // what the last sheet costs from a line
	endsFrom          int    // first line from which a last sheet may start
	wide, slim, short slide
	queue             []runner // of the aim even
}

// slide holds the least of a window of keys both of whose ends go left: the part from `from` on as the least of each
// beginning of it, the part before as one number.
type slide struct {
	key, pre []cost
	from     int
	back     cost
}

const nowhere = int(^uint(0) >> 1)

func (s *slide) reset() { s.from = nowhere }

// least returns the least key of lines low to high. low is one less than at the call before, high no more.
func (s *slide) least(low, high int) cost {
	if high < s.from {
		if high < low {
			s.from = nowhere
			return never
		}
		least := s.key[low]
		s.pre[low] = least
		for i := low + 1; i <= high; i++ {
			if s.key[i].less(least) {
				least = s.key[i]
			}
			s.pre[i] = least
		}
		s.from, s.back = low, never
		return least
	}
	if s.key[low].less(s.back) {
		s.back = s.key[low]
	}
	if s.pre[high].less(s.back) {
		return s.pre[high]
	}
	return s.back
}

func newSweeper(t *table, b bounds) *sweeper {
	size := t.g.size() + t.g.net + 1
	w := &sweeper{table: t, b: b, on: make([]cost, size), ends: make([]cost, size)}
	if t.aim == Even {
		w.narrow = w.on
		return w
	}
	w.narrow = make([]cost, size)
	w.wide = slide{key: w.narrow, pre: make([]cost, size)}
	if t.prefer > 0 {
		w.slim = slide{key: make([]cost, size), pre: make([]cost, size)}
	}
	if !t.strict {
		w.short = slide{key: make([]cost, size), pre: make([]cost, size)}
	}
	return w
}

// run fills on and narrow from line top down to line bottom; ends must be set.
func (w *sweeper) run(bottom, top int) {
	if w.aim == Even {
		w.runEven(bottom, top)
		return
	}
	net := w.g.net
	for i := top + 1; i <= top+net && i < len(w.on); i++ {
		w.on[i], w.narrow[i] = never, never
		if w.slim.key != nil {
			w.slim.key[i] = never
		}
		if w.short.key != nil {
			w.short.key[i] = never
		}
	}
	// Widths of up to `least` steps may lack of least_width, of up to `prefer` steps of prefer_width. On these two the
	// short step decides.
	least := min(w.steps(w.least), net)
	prefer := min(max(w.steps(w.prefer), least), net)
	w.wide.reset()
	w.slim.reset()
	w.short.reset()
	for a := top; a >= bottom; a-- {
		limit := w.b.limit(a)
		best := w.end(a)
		if b := a + net; b <= top && w.b.whole(a, b) {
			best = lesser(best, w.sheets[w.g.crosses(a, b)][net].plus(w.on[b]))
		}
		best = lesser(best, w.one.plus(w.wide.least(a+prefer+1, min(a+net-1, limit))))
		if w.slim.key != nil {
			if x := w.slim.least(a+least+1, min(a+prefer-1, limit)); !x.isNever() {
				best = lesser(best, w.one.plus(x).plus(w.fall).minus(w.ramps[a]))
			}
		}
		if w.short.key != nil {
			if x := w.short.least(a+1, min(a+least-1, limit)); !x.isNever() {
				best = lesser(best, w.one.plus(x).plus(w.drop).minus(w.steep[a]))
			}
		}
		if b := a + least; 0 < least && least < net && b <= limit {
			best = lesser(best, w.sheets[w.g.crosses(a, b)][least].plus(w.narrow[b]))
		}
		if b := a + prefer; least < prefer && prefer < net && b <= limit {
			best = lesser(best, w.sheets[w.g.crosses(a, b)][prefer].plus(w.narrow[b]))
		}
		w.put(a, best)
	}
}

// put sets what goes on from line a at a cost.
func (w *sweeper) put(a int, best cost) {
	x := best.plus(w.node[a])
	if x.isNever() {
		x = never
	}
	w.on[a] = x
	w.narrow[a] = never
	if w.slim.key != nil {
		w.slim.key[a] = never
	}
	if w.short.key != nil {
		w.short.key[a] = never
	}
	if x.a == never.a {
		return
	}
	n := x.plus(w.jump[a])
	w.narrow[a] = n
	if w.slim.key != nil {
		w.slim.key[a] = n.plus(w.ramps[a])
	}
	if w.short.key != nil {
		w.short.key[a] = n.plus(w.steep[a])
	}
}

// end returns what the last sheet costs from line a.
func (w *sweeper) end(a int) cost {
	if a < w.endsFrom {
		return never
	}
	return w.ends[a]
}

// inner returns what goes on from line a by an inner sheet to line b, the seam on a left out.
func (w *sweeper) inner(a, b int) cost {
	k := b - a
	if k == w.g.net {
		if !w.b.whole(a, b) {
			return never
		}
		return w.sheets[w.g.crosses(a, b)][k].plus(w.on[b])
	}
	if b > w.b.limit(a) {
		return never
	}
	return w.sheets[w.g.crosses(a, b)][k].plus(w.narrow[b])
}

func lesser(x, y cost) cost {
	if y.less(x) {
		return y
	}
	return x
}

// walk follows the far-right way on from line a, where on[a] is finite, and appends its seams, a's not among them.
func (w *sweeper) walk(a, top int, lines []int) []int {
	for {
		need := w.on[a].minus(w.node[a])
		next := 0
		for b := min(a+w.g.net, top); b > a; b-- {
			if w.inner(a, b) == need {
				next = b
				break
			}
		}
		if next == 0 {
			return lines
		}
		lines = append(lines, next)
		a = next
	}
}

package seam

// answer is a layout in lines of a grid, from left to right; in a closed span the closing line first, then round.
type answer struct {
	lines []int
	total cost
	musts least // for the aim musts
}

// lastReach is how far from R the last sheet of an open span can start.
func (s *Span) lastReach() int64 {
	if s.RightSeam {
		return s.NetWidth()
	}
	return s.EndWidth(s.TrimRight)
}

// lastSheets sets what the last sheet costs from each lane of an open span that it can start from.
func (w *sweeper) lastSheets() {
	g, s := w.g, w.s
	w.endsFrom = len(w.lines)
	for j := len(w.lines) - 1; j >= 0 && s.R-g.at(w.lines[j]) <= s.lastReach(); j-- {
		w.endsFrom = j
		w.ends[j] = never
		if w.b.allows(w.lines[j], g.lines) && !g.barsLast(w.lines[j]) {
			width := s.R - g.at(w.lines[j])
			if w.ends[j] = w.sheet(width); !s.RightSeam {
				w.ends[j] = w.ends[j].plus(w.sliver(width, w.lines[j]))
			}
		}
	}
}

// onlyReach is how wide a single sheet over the whole of an open span can be.
func (s *Span) onlyReach() int64 {
	switch {
	case s.LeftSeam && s.RightSeam:
		return s.NetWidth()
	case s.LeftSeam:
		return s.EndWidth(s.TrimRight)
	case s.RightSeam:
		return s.EndWidth(s.TrimLeft)
	}
	return s.Gross - s.TrimLeft - s.TrimRight
}

// only returns what a single sheet over the whole of an open span costs.
func (w *sweeper) only() cost {
	if w.s.R-w.s.L > w.s.onlyReach() || !w.b.allows(0, w.g.lines) || w.g.barsFirst(w.g.lines) || w.g.barsLast(0) {
		return never
	}
	return w.sheet(w.s.R - w.s.L)
}

// firstReach is the furthest line the first sheet of an open span can end on.
func (g *grid) firstReach() int {
	reach := g.s.NetWidth()
	if !g.s.LeftSeam {
		reach = g.s.EndWidth(g.s.TrimLeft)
	}
	return int(min(max(reach, 0)/g.s.Snap, int64(g.lines-1)))
}

// start returns what an open span costs whose first seam is on lane j.
func (w *sweeper) start(j int) cost {
	if w.g.barsFirst(w.lines[j]) {
		return never
	}
	if w.s.LeftSeam {
		return w.inner(0, j)
	}
	if !w.b.allows(0, w.lines[j]) {
		return never
	}
	width := w.g.at(w.lines[j]) - w.g.at(0)
	return w.sheet(width).plus(w.sliver(width, w.lines[j])).plus(w.on[j])
}

// open finds the best layout of an open span.
func (t *table) open(b bounds, s *store) (answer, bool) {
	w := newSweeper(t, b, s)
	defer w.free()
	all, done := t.openLanes(s)
	defer done()
	w.load(*all)
	w.lastSheets()
	w.run()
	best, first := w.only(), -1
	for j := w.find(t.g.firstReach()+1) - 1; j >= 0; j-- {
		if x := w.start(j); x.less(best) {
			best, first = x, j
		}
	}
	if best.isNever() {
		return answer{}, false
	}
	if first < 0 {
		return answer{total: best}, true
	}
	if t.s.evened() && t.jumps() && !t.counting {
		first = w.leastDifference(best)
	}
	return answer{lines: w.walk(first, []int{w.lines[first]}), total: best}, true
}

// leastDifference picks, among the layouts that cost best, those with the least difference of the end widths, and of
// these the first seam furthest right. It leaves the sweeper so that a walk from that seam keeps the difference.
func (w *sweeper) leastDifference(best cost) int {
	firsts, reached := w.tight(best)
	first, least := -1, int64(-1)
	difference := func(first, last int) int64 {
		d := w.g.at(w.lines[first]) - w.s.L - (w.s.R - w.g.at(w.lines[last]))
		return max(d, -d)
	}
	for j := w.endsFrom; j < len(w.lines); j++ {
		if reached[j] == nil || w.ends[j] != w.on[j].minus(w.node[j]) {
			continue
		}
		for i, start := range firsts {
			if reached[j][i/64]&(1<<(i%64)) == 0 {
				continue
			}
			if d := difference(start, j); least < 0 || d < least || d == least && start > first {
				first, least = start, d
			}
		}
	}
	for j := w.endsFrom; j < len(w.lines); j++ {
		if difference(first, j) != least {
			w.ends[j] = never
		}
	}
	w.run()
	return first
}

// might says whether the lowest word of what inner returns is low: it mostly is not, and is found sooner.
func (w *sweeper) might(a, j int, low uint64) bool {
	b := w.lines[j]
	x := w.sheets[w.crosses(a, b)][b-a].c + w.on[j].c
	if w.jump != nil && b-a != w.g.net {
		x += w.kinds[w.jump[j]].c
	}
	return x == low
}

// tight returns the first lanes of all layouts that cost best, and for each lane which of them lead to it.
func (w *sweeper) tight(best cost) (firsts []int, reached [][]uint64) {
	for j := w.find(w.g.firstReach()+1) - 1; j >= 0; j-- {
		if w.start(j) == best {
			firsts = append(firsts, j)
		}
	}
	words := (len(firsts) + 63) / 64
	reached = make([][]uint64, len(w.lines))
	for i, j := range firsts {
		reached[j] = make([]uint64, words)
		reached[j][i/64] |= 1 << (i % 64)
	}
	for i := firsts[len(firsts)-1]; i < len(w.lines); i++ {
		from := reached[i]
		if from == nil {
			continue
		}
		a, need := w.lines[i], w.on[i].minus(w.node[i])
		for j := i + 1; j < len(w.lines) && w.lines[j] <= a+w.g.net; j++ {
			if !w.might(a, j, need.c) || w.inner(a, j) != need {
				continue
			}
			if reached[j] == nil {
				reached[j] = make([]uint64, words)
			}
			for k, bits := range from {
				reached[j][k] |= bits
			}
		}
	}
	return firsts, reached
}

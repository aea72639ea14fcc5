package seam

// answer is a layout in lines of a grid, from left to right; in a closed span the closing line first, then round.
type answer struct {
	lines []int
	total cost
}

// lastSheets sets what the last sheet costs from each line of an open span that it can start from.
func (w *sweeper) lastSheets() {
	g, s := w.g, w.s
	most := s.NetWidth()
	if !s.RightSeam {
		most = s.EndWidth(s.TrimRight)
	}
	w.endsFrom = g.lines
	for a := g.lines - 1; a > 0 && s.R-g.at(a) <= most; a-- {
		w.endsFrom = a
		w.ends[a] = never
		if w.b.allows(a, g.lines) {
			w.ends[a] = w.sheet(s.R - g.at(a))
		}
	}
}

// only returns what a single sheet over the whole open span costs.
func (w *sweeper) only() cost {
	s := w.s
	most := s.Gross - s.TrimLeft - s.TrimRight
	switch {
	case s.LeftSeam && s.RightSeam:
		most = s.NetWidth()
	case s.LeftSeam:
		most = s.EndWidth(s.TrimRight)
	case s.RightSeam:
		most = s.EndWidth(s.TrimLeft)
	}
	if s.R-s.L > most || !w.b.allows(0, w.g.lines) {
		return never
	}
	return w.sheet(s.R - s.L)
}

// firstReach is the furthest line the first sheet of an open span can end on.
func (w *sweeper) firstReach() int {
	s, g := w.s, w.g
	reach := s.NetWidth()
	if !s.LeftSeam {
		reach = s.EndWidth(s.TrimLeft)
	}
	if reach < 0 {
		return 0
	}
	return int(min(reach/s.Snap, int64(g.lines-1)))
}

// start returns what an open span costs whose first seam is on line b.
func (w *sweeper) start(b int) cost {
	if w.s.LeftSeam {
		return w.inner(0, b)
	}
	if !w.b.allows(0, b) {
		return never
	}
	return w.sheet(w.g.at(b) - w.g.at(0)).plus(w.on[b])
}

// open finds the best layout of an open span.
func (t *table) open(b bounds) (answer, bool) {
	w := newSweeper(t, b)
	w.lastSheets()
	top := t.g.lines - 1
	w.run(1, top)
	best, first := w.only(), 0
	for b := w.firstReach(); b > 0; b-- {
		if x := w.start(b); x.less(best) {
			best, first = x, b
		}
	}
	if best.isNever() {
		return answer{}, false
	}
	if first == 0 {
		return answer{total: best}, true
	}
	if t.s.evened() && t.aim != Even && t.aim != musts {
		first = w.leastDifference(best)
	}
	return answer{lines: w.walk(first, top, []int{first}), total: best}, true
}

// leastDifference picks, among the layouts that cost best, those with the least difference of the end widths, and of
// these the first seam furthest right. It leaves the sweeper so that a walk from that seam keeps the difference.
func (w *sweeper) leastDifference(best cost) int {
	firsts, reached := w.tight(best)
	first, least := 0, int64(-1)
	g := w.g
	for a := w.endsFrom; a < g.lines; a++ {
		if reached[a] == nil || w.end(a) != w.on[a].minus(w.node[a]) {
			continue
		}
		last := g.at(g.lines) - g.at(a)
		for i, b := range firsts {
			if reached[a][i/64]&(1<<(i%64)) == 0 {
				continue
			}
			d := g.at(b) - g.at(0) - last
			d = max(d, -d)
			if least < 0 || d < least || d == least && b > first {
				first, least = b, d
			}
		}
	}
	for a := w.endsFrom; a < g.lines; a++ {
		d := g.at(first) - g.at(0) - (g.at(g.lines) - g.at(a))
		if max(d, -d) != least {
			w.ends[a] = never
		}
	}
	w.run(1, g.lines-1)
	return first
}

// tight returns the first lines of all layouts that cost best, and for each line which of them lead to it.
func (w *sweeper) tight(best cost) (firsts []int, reached [][]uint64) {
	for b := w.firstReach(); b > 0; b-- {
		if w.start(b) == best {
			firsts = append(firsts, b)
		}
	}
	words := (len(firsts) + 63) / 64
	reached = make([][]uint64, w.g.lines)
	for i, b := range firsts {
		reached[b] = make([]uint64, words)
		reached[b][i/64] |= 1 << (i % 64)
	}
	top := w.g.lines - 1
	for a := firsts[len(firsts)-1]; a <= top; a++ {
		from := reached[a]
		if from == nil {
			continue
		}
		need := w.on[a].minus(w.node[a])
		for b := min(a+w.g.net, top); b > a; b-- {
			if w.inner(a, b) != need {
				continue
			}
			if reached[b] == nil {
				reached[b] = make([]uint64, words)
			}
			for i, bits := range from {
				reached[b][i] |= bits
			}
		}
	}
	return firsts, reached
}

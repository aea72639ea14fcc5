package seam

// Apart says where single seams of a layout may not stand, so that the best layout is found that is another than those
// already known.
//
// The first sheet's right edge and the last one's left edge are what First and Last speak of. That is a seam wherever there
// are two sheets; a sheet alone has both its edges the other way about: R and L, or in a closed span the closing seam twice.
// Places are as the span is laid, in a closed span taken round.
type Apart struct {
	NotClosing []Strip // of the closing seam, of a closed span only
	NotFirst   []Strip
	NotLast    []Strip
}

// First returns where the first sheet of a layout ends, and Last where the last one begins.
func (s Span) First(l Layout) int64 { return s.home(s.ends(l)[1]) }

// Last returns where the last sheet of a layout begins.
func (s Span) Last(l Layout) int64 {
	edges := s.ends(l)
	return s.home(edges[len(edges)-2])
}

// ends returns the edges of all sheets of a layout in hanging order.
func (s *Span) ends(l Layout) []int64 {
	edges, _ := s.lay(l.Seams, l.Closing)
	return edges
}

// among says whether a place lies in one of some strips.
func (s *Span) among(at int64, strips []Strip) bool {
	for _, strip := range strips {
		if s.Closed && s.after(strip.From, at) <= strip.To-strip.From || !s.Closed && strip.From <= at && at <= strip.To {
			return true
		}
	}
	return false
}

// closings lists the lines that the closing seam may fall on, nil for all.
func (g *grid) closings() []int {
	if !g.s.Closed || len(g.s.NotClosing) == 0 {
		return nil
	}
	lines := []int{}
	for i := range g.lines {
		if !g.s.among(g.at(i), g.s.NotClosing) {
			lines = append(lines, i)
		}
	}
	return lines
}

// barsFirst says whether the first sheet may not end on a line, and barsLast whether the last one may not begin there.
func (g *grid) barsFirst(line int) bool {
	return len(g.s.NotFirst) > 0 && g.s.among(g.at(line), g.s.NotFirst)
}

func (g *grid) barsLast(line int) bool {
	return len(g.s.NotLast) > 0 && g.s.among(g.at(line), g.s.NotLast)
}

// endsApart finds the best layout of a closed span whose first and last seam may not stand everywhere, class by class as
// closed does, but each closing place by itself: the bounds that closed goes by know nothing of single seams.
func (t *table) endsApart(b bounds, closings []int, under cost, s *store) (answer, bool) {
	w := newSweeper(t, b, s)
	defer w.free()
	all := t.lanes(s, true)
	defer all.free(s)
	best := answer{total: under}
	for _, class := range t.classes(closings) {
		for i := len(class) - 1; i >= 0; i-- { // of equal ones the furthest right is found first
			c := class[i]
			w.load(all.part(all.find(c+1), all.find(c+t.g.lines)))
			first, x := w.roundFrom(c)
			if !x.less(best.total) {
				continue
			}
			best = answer{lines: []int{c}, total: x}
			if first >= 0 {
				best.lines = w.walk(first, []int{c, w.lines[first]})
			}
		}
		if best.lines != nil {
			return best, true
		}
	}
	return answer{}, false
}

// roundFrom sweeps for one closing line over the lanes between it and itself. It returns the lane of the first seam of the
// best way round, furthest right, -1 where one sheet goes all the way, and what the way costs.
func (w *sweeper) roundFrom(c int) (first int, best cost) {
	first, best = -1, never
	if !w.g.barsFirst(c) && !w.g.barsLast(c) {
		best = w.table.only(&w.b, c)
	}
	if len(w.lines) > 0 {
		w.closeOn([]int{c}, []cost{{}}, cost{})
		for j := w.endsFrom; j < len(w.lines); j++ {
			if w.g.barsLast(w.lines[j]) {
				w.ends[j] = never
			}
		}
		w.run()
		for j := w.find(c+w.g.net+1) - 1; j >= 0; j-- {
			if x := w.begin(c, j); !w.g.barsFirst(w.lines[j]) && x.less(best) {
				first, best = j, x
			}
		}
	}
	if best.isNever() {
		return -1, never
	}
	return first, best.plus(w.seams[c])
}

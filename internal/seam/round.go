package seam

// closeOn sets what the last sheet costs from each lane that it can start from to the best of the closing places.
func (w *sweeper) closeOn(places []int, pull []cost, top cost) {
	again, on := make([]int, len(places)), make([]cost, len(places))
	for i, c := range places {
		again[i], on[i] = c+w.g.lines, top.minus(pull[i])
	}
	w.endsFrom = w.find(again[0] - w.g.net)
	w.reach(w.lines[w.endsFrom:], targets{again, on}, w.ends[w.endsFrom:])
}

// openOn sets, on the way back, what the first sheet costs that ends on a lane, its closing seam included.
func (w *sweeper) openOn(g *group) {
	var to targets
	for i := len(g.places) - 1; i >= 0; i-- {
		c := g.places[i]
		to.lines = append(to.lines, 2*w.g.lines-c)
		to.on = append(to.on, w.seams[c].plus(g.pull[i]))
	}
	w.endsFrom = w.find(to.lines[0] - w.g.net)
	w.reach(w.lines[w.endsFrom:], to, w.ends[w.endsFrom:])
}

// ahead returns what the best end sheet costs from each of some lines to the lanes as far as line to.
func (w *sweeper) ahead(from []int, to int) []cost {
	n := w.find(to + 1)
	out := make([]cost, len(from))
	w.reach(from, targets{w.lines[:n], w.on[:n]}, out)
	return out
}

// between returns the lanes of a sweep forth and one back, the first of them on a line or right of it, that can be part
// of a layout that costs no more than under.
func (w *sweeper) between(back sweep, line int, top, under cost) *lanes {
	round := back.(*sweeper)
	first, last := w.find(line), len(round.lines)-1
	v := w.like(len(round.lines) / 4)
	for j := 0; j <= last; j++ {
		x := w.on[first+j].plus(round.on[last-j]).minus(w.node[first+j]).over(top)
		if !x.isNever() && !under.less(x) {
			v.take(&w.lanes, first+j)
		}
	}
	return v
}

// walkFrom takes the far-right way round from line c, for which a sweep was just run; need is what it costs without the
// closing seam.
func (w *sweeper) walkFrom(c int, need cost) []int {
	for j := w.find(c+w.g.net+1) - 1; j >= 0; j-- {
		if w.begin(c, j) == need {
			return w.walk(j, []int{c, w.lines[j]})
		}
	}
	return []int{c}
}

// begin returns what goes on from a closing seam on line c by a first sheet to lane j.
func (w *sweeper) begin(c, j int) cost {
	b := w.lines[j]
	if b > w.b.limit(c) && !(b == c+w.g.net && w.b.whole(c, b)) {
		return never
	}
	return w.sheets[w.crosses(c, b)][b-c].plus(w.on[j])
}

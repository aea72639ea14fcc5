package seam

// closeOn sets what the last sheet costs from each lane that it can start from to the best of the closing places.
func (w *scout) closeOn(places []int, pull []cost, top cost) {
	again, on := make([]int, len(places)), make([]gist, len(places))
	for i, c := range places {
		again[i], on[i] = c+w.g.lines, w.gists.of(top.minus(pull[i]))
	}
	w.endsFrom = w.find(again[0] - w.g.net)
	w.reach(w.lines[w.endsFrom:], goals{again, on}, w.ends[w.endsFrom:])
}

// openOn sets, on the way back, what the first sheet costs that ends on a lane, its closing seam included.
func (w *scout) openOn(g *group) {
	n := len(g.places)
	to := goals{make([]int, n), make([]gist, n)}
	for i, c := range g.places {
		k := n - 1 - i
		to.lines[k] = 2*w.g.lines - c
		to.on[k] = w.gists.of(w.seams[c]) + w.gists.of(g.pull[i])
	}
	w.endsFrom = w.find(to.lines[0] - w.g.net)
	w.reach(w.lines[w.endsFrom:], to, w.ends[w.endsFrom:])
}

// ahead returns what the best end sheet costs at least from each of some lines to the lanes as far as line to.
func (w *scout) ahead(from []int, to int) []cost {
	n := w.find(to + 1)
	least := make([]gist, len(from))
	w.reach(from, goals{w.lines[:n], w.on[:n]}, least)
	out := make([]cost, len(from))
	for i, x := range least {
		out[i] = w.gists.least(x)
	}
	return out
}

// between returns the lanes of a sweep forth and one back, the first of them on a line or right of it, that can be part
// of a layout that costs no more than under.
func (w *scout) between(back sweep, line int, top, under cost) *lanes {
	round := back.(*scout)
	first, last := w.find(line), len(round.lines)-1
	most := min(w.gists.of(under), gistNever-1)
	over := w.gists.of(top)
	fits := func(j int) bool {
		x := w.on[first+j] + round.on[last-j]
		return x < gistNever && x <= most+over+w.gist[first+j]
	}
	n := 0
	for j := range last + 1 {
		if fits(j) {
			n++
		}
	}
	v := w.like(n)
	for j := range last + 1 {
		if fits(j) {
			v.take(&w.lanes, first+j)
		}
	}
	return v
}

// walkFrom takes the far-right way round from line c, for which a sweep was just run and gists are exact; need is what
// it costs without the closing seam.
func (w *scout) walkFrom(c int, need cost) []int {
	want := w.gists.of(need)
	for j := w.find(c+w.g.net+1) - 1; j >= 0; j-- {
		if w.begin(c, j) == want {
			return w.walk(j, []int{c, w.lines[j]})
		}
	}
	return []int{c}
}

// begin returns what goes on from a closing seam on line c by a first sheet to lane j.
func (w *scout) begin(c, j int) gist {
	b := w.lines[j]
	if b > w.b.limit(c) && !(b == c+w.g.net && w.b.whole(c, b)) {
		return gistNever
	}
	return w.gists.sheets[w.crosses(c, b)][b-c] + w.on[j]
}

// walk follows the far-right way on from lane j, where on[j] is finite, and appends its lines, that of j not among
// them.
func (w *scout) walk(j int, lines []int) []int {
	for {
		a, need := w.lines[j], w.on[j]-w.gist[j]
		next := w.find(a+w.g.net+1) - 1
		for next > j && w.inner(a, next) != need {
			next--
		}
		if next == j {
			return lines
		}
		lines = append(lines, w.lines[next])
		j = next
	}
}

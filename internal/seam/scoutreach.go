package seam

// goals are targets in gists.
type goals struct {
	lines []int
	on    []gist
}

// reach finds what the best end sheet costs from each of some lines, ascending, to the goals on their right.
func (w *scout) reach(from []int, to goals, out []gist) {
	switch {
	case len(to.lines) == 0:
		for i := range out {
			out[i] = gistNever
		}
	case w.aim == Even:
		w.reachEven(from, to, out)
	default:
		w.reachFlat(from, to, out)
	}
	if w.b.limits == nil {
		return
	}
	for i, a := range from {
		if b := a + w.g.net; b > w.b.limit(a) && w.b.whole(a, b) {
			if j := search(to.lines, b); j < len(to.lines) && to.lines[j] == b {
				out[i] = min(out[i], w.across(a, b)+to.on[j])
			}
		}
	}
}

// reachFlat is reach by windows.
func (w *scout) reachFlat(from []int, to goals, out []gist) {
	net, least, prefer := w.g.net, w.leastSteps, w.preferSteps
	last := len(to.lines) - 1
	wide, slim, small := &w.goals[0], &w.goals[1], &w.goals[2]
	wide.widen(w.store, last+1)
	wide.reset(last)
	copy(wide.key, to.on)
	if w.prefer > 0 {
		slim.widen(w.store, last+1)
		slim.reset(last)
		for j, on := range to.on {
			slim.set(j, steeper(on, w.rampBy, w.left(to.lines[j])))
		}
	}
	if !w.strict {
		small.widen(w.store, last+1)
		small.reset(last)
		for j, on := range to.on {
			small.set(j, steeper(on, w.steepBy, w.left(to.lines[j])))
		}
	}
	widths := [2]int{least, prefer}
	at := [2]int{last, last} // the last goal no wider off
	for i := len(from) - 1; i >= 0; i-- {
		a := from[i]
		limit := min(a+net, w.b.limit(a))
		// The widest sheets lack of prefer_width only where it is over the net width.
		best := w.more + wide.least(to.lines, a+prefer+1, limit)
		if w.prefer > 0 {
			if x := slim.least(to.lines, a+least+1, min(a+prefer-1, limit)); x < gistNever {
				best = min(best, w.more+x+w.gists.fall-w.rampBy*gist(w.left(a)))
			}
		}
		if !w.strict {
			if x := small.least(to.lines, a+1, min(a+least-1, limit)); x < gistNever {
				best = min(best, w.more+x+w.gists.drop-w.steepBy*gist(w.left(a)))
			}
		}
		for k, width := range widths {
			b := a + width
			if width == 0 || b > limit {
				continue
			}
			for at[k] >= 0 && to.lines[at[k]] > b {
				at[k]--
			}
			if j := at[k]; j >= 0 && to.lines[j] == b {
				best = min(best, w.across(a, b)+to.on[j])
			}
		}
		out[i] = min(best, gistNever)
	}
}

// reachEven is reach where the cost of a width is convex, as a sweeper does it.
func (w *scout) reachEven(from []int, to goals, out []gist) {
	if len(from) == 0 {
		return
	}
	mid := len(from) / 2
	a := from[mid]
	limit := min(a+w.g.net, w.b.limit(a))
	best, at := gistNever, -1
	begin := search(to.lines, a+1)
	on := to.on[begin:]
	for j, b := range to.lines[begin:] {
		if b > limit {
			break
		}
		if x := w.across(a, b) + on[j]; x < best {
			best, at = x, begin+j
		}
	}
	out[mid] = best
	low, high := to, to
	if at >= 0 {
		low = goals{to.lines[:at+1], to.on[:at+1]}
		high = goals{to.lines[at:], to.on[at:]}
	}
	w.reachEven(from[:mid], low, out[:mid])
	w.reachEven(from[mid+1:], high, out[mid+1:])
}

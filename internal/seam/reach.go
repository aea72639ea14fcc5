package seam

// targets are places an end sheet can reach, ascending, each with what goes on from it.
type targets struct {
	lines []int
	on    []cost
}

// reach finds what the best end sheet costs from each of some lines, ascending, to the targets on their right. An end
// sheet is no wider than an inner one and never jumps.
func (w *sweeper) reach(from []int, to targets, out []cost) {
	switch {
	case len(to.lines) == 0:
		for i := range out {
			out[i] = never
		}
	case w.aim == Even:
		w.reachEven(from, to, out)
	default:
		w.reachFlat(from, to, out)
	}
	for i, a := range from {
		if b := a + w.g.net; b > w.b.limit(a) && w.b.whole(a, b) {
			if j := search(to.lines, b); j < len(to.lines) && to.lines[j] == b {
				out[i] = lesser(out[i], w.sheets[w.crosses(a, b)][w.g.net].plus(to.on[j]))
			}
		}
	}
}

// reachFlat is reach by windows.
func (w *sweeper) reachFlat(from []int, to targets, out []cost) {
	net, least, prefer := w.g.net, w.leastSteps, w.preferSteps
	wide, slim, short := newSlide(w.store, len(to.lines)), slide{}, slide{}
	wide.reset(len(to.lines) - 1)
	if w.prefer > 0 {
		slim = newSlide(w.store, len(to.lines))
		slim.reset(len(to.lines) - 1)
	}
	if !w.strict {
		short = newSlide(w.store, len(to.lines))
		short.reset(len(to.lines) - 1)
	}
	for j, on := range to.on {
		wide.set(j, on)
		if w.prefer > 0 {
			slim.set(j, on.plus(w.ramp(w.leftOf(to.lines[j]))))
		}
		if !w.strict {
			short.set(j, on.plus(w.steep(w.leftOf(to.lines[j]))))
		}
	}
	widths := [2]int{least, prefer}
	at := [2]int{len(to.lines) - 1, len(to.lines) - 1} // the last target no wider off
	for i := len(from) - 1; i >= 0; i-- {
		a := from[i]
		limit := min(a+net, w.b.limit(a))
		// The widest sheets lack of prefer_width only where it is over the net width.
		best := w.one.plus(wide.least(to.lines, a+prefer+1, limit))
		if w.prefer > 0 {
			if x := slim.least(to.lines, a+least+1, min(a+prefer-1, limit)); !x.isNever() {
				best = lesser(best, w.one.plus(x).plus(w.fall).minus(w.ramp(w.leftOf(a))))
			}
		}
		if !w.strict {
			if x := short.least(to.lines, a+1, min(a+least-1, limit)); !x.isNever() {
				best = lesser(best, w.one.plus(x).plus(w.drop).minus(w.steep(w.leftOf(a))))
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
				best = lesser(best, w.sheets[w.crosses(a, b)][width].plus(to.on[j]))
			}
		}
		out[i] = best
	}
	w.store.costs.give(wide.key, wide.pre, slim.key, slim.pre, short.key, short.pre)
}

// reachEven is reach where the cost of a width is convex: the best target goes right as the line does, so that the
// best of a line in the middle parts what the lines on both sides have to look at.
func (w *sweeper) reachEven(from []int, to targets, out []cost) {
	if len(from) == 0 {
		return
	}
	mid := len(from) / 2
	a := from[mid]
	limit := min(a+w.g.net, w.b.limit(a))
	best, at := never, -1
	for j := search(to.lines, a+1); j < len(to.lines) && to.lines[j] <= limit; j++ {
		b := to.lines[j]
		if x := w.sheets[w.crosses(a, b)][b-a].plus(to.on[j]); x.less(best) {
			best, at = x, j
		}
	}
	out[mid] = best
	low, high := to, to
	if at >= 0 {
		low = targets{to.lines[:at+1], to.on[:at+1]}
		high = targets{to.lines[at:], to.on[at:]}
	}
	w.reachEven(from[:mid], low, out[:mid])
	w.reachEven(from[mid+1:], high, out[mid+1:])
}

// search returns the first of ascending lines that is at least a line.
func search(lines []int, line int) int {
	low, high := 0, len(lines)
	for low < high {
		mid := int(uint(low+high) >> 1)
		if lines[mid] < line {
			low = mid + 1
		} else {
			high = mid
		}
	}
	return low
}

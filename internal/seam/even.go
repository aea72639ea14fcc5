package seam

// runEven is run for the aim whose sheets cost by the square of their width. The cost of a width is convex, so the
// best right seam goes left as the line does, and once a nearer line has overtaken a further one it stays ahead: a
// queue holds the lines that will be best at some time, each with the line at which it overtakes the one before.
func (w *sweeper) runEven(bottom, top int) {
	net := w.g.net
	for i := top + 1; i <= top+net && i < len(w.on); i++ {
		w.on[i] = never
	}
	queue := w.queue[:0]
	head := 0
	for a := top; a >= bottom; a-- {
		for head+1 < len(queue) && queue[head+1].since >= a {
			head++
		}
		best := w.end(a)
		if b := a + net; b <= top && w.b.whole(a, b) {
			best = lesser(best, w.sheets[w.g.crosses(a, b)][net].plus(w.on[b]))
		}
		if head < len(queue) {
			best = lesser(best, w.stretch(a, queue[head].line))
		}
		x := best.plus(w.node[a])
		if x.isNever() {
			w.on[a] = never
			continue
		}
		w.on[a] = x
		queue = w.join(queue, head, a, bottom)
	}
	w.queue = queue
}

// runner is a line in the queue, best from line `since` leftwards.
type runner struct{ line, since int }

// stretch returns what goes on from line a by an inner sheet to line b.
func (w *sweeper) stretch(a, b int) cost {
	if b-a > w.g.net || b > w.b.limit(a) {
		return never
	}
	return w.sheets[w.g.crosses(a, b)][b-a].plus(w.on[b])
}

// join puts line b at the tail of the queue and takes out those that are now never best.
func (w *sweeper) join(queue []runner, head, b, bottom int) []runner {
	for {
		since := b - 1
		if len(queue) > head {
			tail := queue[len(queue)-1]
			since = w.overtakes(tail.line, b, min(tail.since, b-1), bottom)
			if since >= tail.since && len(queue) > head+1 || since == b-1 {
				queue = queue[:len(queue)-1]
				continue
			}
		}
		if since < bottom {
			return queue
		}
		return append(queue, runner{b, since})
	}
}

// overtakes returns the rightmost line, high or left of it, from which line b does no worse than the further line c.
func (w *sweeper) overtakes(c, b, high, bottom int) int {
	// The further line drops out of reach at the latest.
	low := max(c-w.g.net-1, bottom-1)
	if low >= high {
		return high
	}
	for low < high {
		mid := (low + high + 1) >> 1
		if w.behind(mid, c, b) {
			low = mid
		} else {
			high = mid - 1
		}
	}
	return low
}

// behind says whether from line a the further line c is out of reach or no better than line b.
func (w *sweeper) behind(a, c, b int) bool {
	if c-a > w.g.net || c > w.b.limit(a) {
		return true
	}
	x := w.sheets[w.g.crosses(a, b)][b-a]
	if x.isNever() {
		return false // b is still too near
	}
	return !w.sheets[w.g.crosses(a, c)][c-a].plus(w.on[c]).less(x.plus(w.on[b]))
}

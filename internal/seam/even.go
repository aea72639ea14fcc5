package seam

// runEven is run for the aim whose sheets cost by the square of their width. The cost of a width is convex, so the
// best right seam goes left as the line does, and once a nearer line has overtaken a further one it stays ahead: a
// queue holds the lanes that will be best at some time, each with the lane at which it overtakes the one before.
func (w *sweeper) runEven() {
	net := w.g.net
	queue := w.queue[:0]
	head := 0
	top := len(w.lines) - 1
	whole := top
	for j := top; j >= 0; j-- {
		a := w.lines[j]
		for head+1 < len(queue) && queue[head+1].since >= j {
			head++
		}
		best := never
		if j >= w.endsFrom {
			best = w.ends[j]
		}
		for w.lines[whole] > a+net {
			whole--
		}
		if b := a + net; w.lines[whole] == b && w.b.whole(a, b) {
			best = lesser(best, w.sheets[w.crosses(a, b)][net].plus(w.on[whole]))
		}
		if head < len(queue) {
			if b := w.lines[queue[head].lane]; b-a <= net && b <= w.b.limit(a) {
				best = lesser(best, w.sheets[w.crosses(a, b)][b-a].plus(w.on[queue[head].lane]))
			}
		}
		if best.isNever() {
			w.on[j] = never
			continue
		}
		w.on[j] = best.plus(w.node[j])
		queue = w.join(queue, head, j)
	}
	w.queue = queue
}

// runner is a lane in the queue, best from lane `since` leftwards.
type runner struct{ lane, since int }

// join puts lane j at the tail of the queue and takes out those that are now never best.
func (w *sweeper) join(queue []runner, head, j int) []runner {
	for {
		since := j - 1
		if len(queue) > head {
			tail := queue[len(queue)-1]
			since = w.overtakes(tail.lane, j, min(tail.since, j-1))
			if since >= tail.since && len(queue) > head+1 || since == j-1 {
				queue = queue[:len(queue)-1]
				continue
			}
		}
		if since < 0 {
			return queue
		}
		return append(queue, runner{j, since})
	}
}

// overtakes returns the rightmost lane, high or left of it, from which lane j does no worse than the further lane i;
// -1 where there is none.
func (w *sweeper) overtakes(i, j, high int) int {
	// Lanes lie at least a line apart: this far left the further lane is out of reach.
	low := max(j-1-(w.g.net-(w.lines[i]-w.lines[j])), -1)
	for low < high {
		mid := (low + high + 1) >> 1
		if w.behind(mid, i, j) {
			low = mid
		} else {
			high = mid - 1
		}
	}
	return min(low, high)
}

// behind says whether from lane m the further lane i is out of reach or no better than lane j.
func (w *sweeper) behind(m, i, j int) bool {
	a, c, b := w.lines[m], w.lines[i], w.lines[j]
	if c-a > w.g.net || c > w.b.limit(a) {
		return true
	}
	x := w.sheets[w.crosses(a, b)][b-a]
	if x.isNever() {
		return false // still too near
	}
	return !w.sheets[w.crosses(a, c)][c-a].plus(w.on[i]).less(x.plus(w.on[j]))
}

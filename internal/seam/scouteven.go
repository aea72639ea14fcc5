package seam

// runEven is run for the aim whose sheets cost by the square of their width, as a sweeper does it.
func (w *scout) runEven() {
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
		best := gistNever
		if j >= w.endsFrom {
			best = w.ends[j]
		}
		for w.lines[whole] > a+net {
			whole--
		}
		if b := a + net; w.lines[whole] == b && w.b.whole(a, b) {
			best = min(best, w.gists.sheets[w.crosses(a, b)][net]+w.on[whole])
		}
		if head < len(queue) {
			if b := w.lines[queue[head].lane]; b-a <= net && b <= w.b.limit(a) {
				best = min(best, w.gists.sheets[w.crosses(a, b)][b-a]+w.on[queue[head].lane])
			}
		}
		if w.on[j] = w.sum(best, w.gist[j]); best >= gistMost {
			continue
		}
		queue = w.join(queue, head, j)
	}
	w.queue = queue
}

// join puts lane j at the tail of the queue and takes out those that are now never best.
func (w *scout) join(queue []runner, head, j int) []runner {
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
func (w *scout) overtakes(i, j, high int) int {
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
func (w *scout) behind(m, i, j int) bool {
	a, c, b := w.lines[m], w.lines[i], w.lines[j]
	if c-a > w.g.net || c > w.b.limit(a) {
		return true
	}
	x := w.gists.sheets[w.crosses(a, b)][b-a]
	if x >= gistNever {
		return false // still too near
	}
	return w.gists.sheets[w.crosses(a, c)][c-a]+w.on[i] >= x+w.on[j]
}

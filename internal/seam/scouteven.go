package seam

// runEven is run for the aim whose sheets cost by the square of their width, as a sweeper does it; here the queue says to
// the line how far left a lane is best.
func (w *scout) runEven() {
	net := w.g.net
	queue := w.queue[:0]
	head := 0
	top := len(w.lines) - 1
	whole := top
	for j := top; j >= 0; j-- {
		a := w.lines[j]
		for head+1 < len(queue) && queue[head+1].since >= a {
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
			best = min(best, w.across(a, b)+w.on[whole])
		}
		if head < len(queue) {
			if b := w.lines[queue[head].lane]; b-a <= net && b <= w.b.limit(a) {
				best = min(best, w.across(a, b)+w.on[queue[head].lane])
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
	near := w.lines[j] - 1
	for {
		since := near
		if len(queue) > head {
			tail := queue[len(queue)-1]
			since = w.overtakes(tail.lane, j, min(tail.since, near))
			if since >= tail.since && len(queue) > head+1 || since == near {
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

// overtakes returns the rightmost line, high or left of it, from which lane j does no worse than the further lane i;
// -1 where there is none.
func (w *scout) overtakes(i, j, high int) int {
	low := max(w.lines[i]-w.g.net-1, -1) // there the further lane is out of reach
	if high <= low {
		return high
	}
	// What a sheet lacks of prefer_width holds the nearer lane back, so that where it lacks nothing the squares decide.
	if w.squareBy > 0 && w.b.limits == nil && w.short == 0 {
		line, most := w.even(i, j), w.lines[j]-w.preferSteps
		if w.twice*w.s.Snap != 2*w.mean && line < most && w.behind(line+1, i, j) {
			line++ // two fractions that are each rounded down can be a whole line together
		}
		if line < most || line == most && w.twice*w.s.Snap == 2*w.mean {
			return min(max(line, low), high)
		}
	}
	for low < high {
		mid := (low + high + 1) >> 1
		if w.behind(mid, i, j) {
			low = mid
		} else {
			high = mid - 1
		}
	}
	return low
}

// even returns what overtakes would if nothing but squares counted.
//
//	(far-line-mean)^2 - (near-line-mean)^2 = (far-near) * (far+near-2*line-2*mean), in snaps
func (w *scout) even(i, j int) int {
	far, near := w.lines[i], w.lines[j]
	gain := int64(w.on[j]) - int64(w.on[i])
	square := int64(w.squareBy) * w.step * w.step * int64(far-near)
	return int((int64(far+near) - w.twice + floorDiv(-gain, square)) >> 1)
}

// behind says whether from line a the further lane i is out of reach or no better than lane j.
func (w *scout) behind(a, i, j int) bool {
	c, b := w.lines[i], w.lines[j]
	if c-a > w.g.net || a < 0 || c > w.b.limit(a) {
		return true
	}
	x := w.across(a, b)
	if x >= gistNever {
		return false // still too near
	}
	return w.across(a, c)+w.on[i] >= x+w.on[j]
}

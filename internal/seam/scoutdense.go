package seam

// dense says that runDense may stand for runPlain: nothing is pinned, and few of the lines a sweep goes over are barred.
func (w *scout) dense() bool {
	n := len(w.lines)
	return w.b.limits == nil && n >= 2*w.g.net && 2*(w.lines[n-1]-w.lines[0]) < 3*n
}

// band keeps the least of all windows of one width, over numbers that come from right to left. They are parted into blocks as wide
// as the window, so that each window is the end of one block and the beginning of the next.
type band struct {
	wide  int
	begin []gist // the least from where its block begins; the number itself while its block is not complete
	end   []gist // the least as far as its block ends
	least gist
	left  int // numbers that the block at hand still lacks
}

// newBand takes room for windows that end at most so far past the last of size numbers; what is past it is never.
func newBand(s *store, wide, size, past int) band {
	v := band{wide: wide, least: gistNever, left: wide}
	if wide == 0 {
		return v
	}
	v.begin, v.end = s.gists.take(size+past), s.gists.take(size+past)
	for i := size; i < size+past; i++ {
		v.begin[i], v.end[i] = gistNever, gistNever
	}
	return v
}

// put sets number i, the left neighbour of the one put before.
func (v *band) put(i int, x gist) {
	v.least = min(v.least, x)
	v.begin[i], v.end[i] = x, v.least
	if v.left--; v.left == 0 {
		v.turn(i)
	}
}

// turn completes the block that begins at i.
func (v *band) turn(i int) {
	least := gistNever
	for k, x := range v.begin[i : i+v.wide] {
		least = min(least, x)
		v.begin[i+k] = least
	}
	v.least, v.left = gistNever, v.wide
}

// runDense is runPlain over every line from the first lane to the last, those that hold no seam as well: then no window has to look
// for where it begins and ends.
func (w *scout) runDense() {
	top := len(w.lines) - 1
	lines, on, node, first := w.lines, w.on, w.gist[:len(w.lines)], w.lines[0]
	net, least, prefer := w.g.net, max(w.leastSteps, 1), max(w.preferSteps, 1)
	kinds, more, full := w.gists.kinds, w.more, w.gists.sheets[0][net]
	size := lines[top] - first + 1
	wide, slim := newBand(w.store, net-prefer, size, net), newBand(w.store, 0, 0, 0)
	if w.prefer > 0 {
		slim = newBand(w.store, prefer-least, size, net)
	}
	slope := w.rampBy * gist(w.step) // of a line, for there is no short step
	ramp := slope * gist(w.size-lines[top])
	whole, j := top, top
	for i := size - 1; i >= 0; i-- {
		key, steep := gistNever, gistNever
		if lines[j] == i+first {
			best, x := gistNever, gistNever
			if j >= w.endsFrom {
				best = w.ends[j]
			}
			for lines[whole] > i+first+net {
				whole--
			}
			if lines[whole] == i+first+net {
				best = min(best, full+on[whole])
			}
			if wide.wide > 0 {
				x = min(wide.end[i+prefer], wide.begin[i+net-1])
			}
			if slim.wide > 0 {
				if y := min(slim.end[i+least], slim.begin[i+prefer-1]); y < gistNever {
					x = min(x, y+w.gists.fall-ramp)
				}
			}
			x += more
			if w.here != nil {
				x += kinds[w.here[j]]
			}
			best = w.sum(min(best, x), node[j])
			on[j] = best
			if w.jump != nil {
				best += kinds[w.jump[j]]
			}
			if key = best; best < gistNever {
				steep = best + ramp
			}
			j--
		}
		if wide.wide > 0 {
			wide.put(i, key)
		}
		if slim.wide > 0 {
			slim.put(i, steep)
		}
		ramp += slope
	}
	w.store.gists.give(wide.begin, wide.end, slim.begin, slim.end)
}

package seam

// dense says that runDense may stand for runPlain: few of the lines a sweep goes over are barred.
func (w *scout) dense() bool {
	n := len(w.lines)
	return n >= 2*w.g.net && 2*(w.lines[n-1]-w.lines[0]) < 3*n
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

// shortened is what goes on from each line, for windows that a pin cuts short: as long as it is the same pin, each is the one before
// and a little more.
type shortened struct {
	on          []gist
	from, limit int
	least       gist
}

// newShortened takes room for what newBand does.
func newShortened(s *store, size, past int) shortened {
	v := shortened{on: s.gists.take(size + past), limit: -1}
	for i := size; i < size+past; i++ {
		v.on[i] = gistNever
	}
	return v
}

// until returns the least from one line to the last that a sheet may end on. It is asked from right to left.
func (v *shortened) until(from, limit int) gist {
	if limit != v.limit {
		v.from, v.limit, v.least = limit+1, limit, gistNever
	}
	for v.from > from {
		v.from--
		v.least = min(v.least, v.on[v.from])
	}
	return v.least
}

// windows is what goes on from each line of a sweep over all lines by a sheet that has prefer_width, and by one that lacks of it.
type windows struct {
	wide, slim         band
	wideTo, slimTo     shortened // where pins are
	least, prefer, net int
}

func (w *scout) newWindows(size int) *windows {
	v := &windows{least: max(w.leastSteps, 1), prefer: max(w.preferSteps, 1), net: w.g.net}
	v.wide = newBand(w.store, v.net-v.prefer, size, v.net)
	if w.prefer > 0 {
		v.slim = newBand(w.store, v.prefer-v.least, size, v.net)
	}
	if w.b.limits != nil {
		v.wideTo, v.slimTo = newShortened(w.store, size, v.net), newShortened(w.store, size, v.net)
	}
	return v
}

func (v *windows) free(s *store) {
	s.gists.give(v.wide.begin, v.wide.end, v.slim.begin, v.slim.end, v.wideTo.on, v.slimTo.on)
}

// put sets what goes on from line i by a wide sheet and by a slim one.
func (v *windows) put(i int, wide, slim gist) {
	if v.wide.wide > 0 {
		v.wide.put(i, wide)
	}
	if v.slim.wide > 0 {
		v.slim.put(i, slim)
	}
	if v.wideTo.on != nil {
		v.wideTo.on[i], v.slimTo.on[i] = wide, slim
	}
}

// until returns what goes on from line i by sheets that end no further right than a limit, which whole sheets would pass.
func (v *windows) until(i, limit int) (wide, slim gist) {
	wide = v.wideTo.until(i+v.prefer, limit)
	if slim = gistNever; v.slim.wide == 0 {
		return wide, slim
	}
	if to := i + v.prefer - 1; to > limit {
		return wide, v.slimTo.until(i+v.least, limit)
	}
	return wide, min(v.slim.end[i+v.least], v.slim.begin[i+v.prefer-1])
}

// runDense is runPlain over every line from the first lane to the last, those that hold no seam as well: then no window has to look
// for where it begins and ends.
func (w *scout) runDense() {
	top := len(w.lines) - 1
	lines, on, node, first := w.lines, w.on, w.gist[:len(w.lines)], w.lines[0]
	kinds, full, limits := w.gists.kinds, w.gists.sheets[0][w.g.net], w.b.limits
	size := lines[top] - first + 1
	ways := w.newWindows(size)
	defer ways.free(w.store)
	net, least, prefer := ways.net, ways.least, ways.prefer
	slope := w.rampBy * gist(w.step) // of a line, for there is no short step
	ramp := slope * gist(w.size-lines[top])
	whole, j := top, top
	for i := size - 1; i >= 0; i-- {
		key, steep := gistNever, gistNever
		if a := i + first; lines[j] == a {
			best, x, y := gistNever, gistNever, gistNever
			if j >= w.endsFrom {
				best = w.ends[j]
			}
			for lines[whole] > a+net {
				whole--
			}
			if lines[whole] == a+net && w.b.whole(a, a+net) {
				best = min(best, full+on[whole])
			}
			if limits != nil && int(limits[a]) < a+net {
				x, y = ways.until(i, int(limits[a])-first)
			} else {
				if ways.wide.wide > 0 {
					x = min(ways.wide.end[i+prefer], ways.wide.begin[i+net-1])
				}
				if ways.slim.wide > 0 {
					y = min(ways.slim.end[i+least], ways.slim.begin[i+prefer-1])
				}
			}
			if y < gistNever {
				x = min(x, y+w.gists.fall-ramp)
			}
			x += w.more
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
		ways.put(i, key, steep)
		ramp += slope
	}
}

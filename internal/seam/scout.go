package seam

// scout is a sweeper that counts in gists. It goes over all lanes of a span, so that what counts in full has few left.
type scout struct {
	*table
	lanes
	*gists
	store                   *store
	b                       bounds
	on                      []gist
	ends                    []gist
	endsFrom                int
	wide, slim, small       glide
	goals                   [3]glide // the same for reach
	queue                   []runner
	leastSteps, preferSteps int
	twice                   int64  // the mean, in half snaps, rounded up
	flat                    []gist // what sheets cost that do not go over the short step
	size                    int
}

func newScout(t *table, b bounds, s *store) *scout {
	w := &scout{table: t, gists: t.gists, b: b, store: s, flat: t.gists.sheets[0], size: t.g.size()}
	w.leastSteps = min(w.steps(t.least), t.g.net)
	w.preferSteps = min(max(w.steps(t.prefer), w.leastSteps), t.g.net)
	if t.aim == Even {
		w.twice = -floorDiv(-2*t.mean, t.s.Snap)
		return w
	}
	w.wide.widen(s, t.g.net+1)
	if t.prefer > 0 {
		w.slim.widen(s, t.g.net+1)
	}
	if !t.strict {
		w.small.widen(s, t.g.net+1)
	}
	return w
}

// free gives back what the scout holds.
func (w *scout) free() {
	w.store.gists.give(w.on, w.ends)
	for _, s := range []*glide{&w.wide, &w.slim, &w.small, &w.goals[0], &w.goals[1], &w.goals[2]} {
		s.free(w.store)
	}
}

// load readies the scout for lanes.
func (w *scout) load(v lanes) {
	w.lanes = v
	if n := len(v.lines); n > cap(w.on) {
		w.store.gists.give(w.on, w.ends)
		w.on, w.ends = w.store.gists.take(n), w.store.gists.take(n)
	} else {
		w.on, w.ends = w.on[:n], w.ends[:n]
	}
	w.endsFrom = len(v.lines)
}

// reset empties the windows for a sweep from the last line.
func (w *scout) reset(top int) {
	w.wide.reset(top)
	w.slim.reset(top)
	w.small.reset(top)
}

// run fills on; ends must be set.
func (w *scout) run() {
	if w.aim == Even {
		w.runEven()
		return
	}
	if w.plain() {
		if w.dense() {
			w.runDense()
		} else {
			w.runPlain()
		}
		return
	}
	top := len(w.lines) - 1
	lines, on := w.lines, w.on
	net, least, prefer := w.g.net, w.leastSteps, w.preferSteps
	w.reset(top)
	whole, atLeast, atPrefer := top, top, top
	for j := top; j >= 0; j-- {
		a := lines[j]
		limit := w.b.limit(a)
		best := gistNever
		if j >= w.endsFrom {
			best = w.ends[j]
		}
		for lines[whole] > a+net {
			whole--
		}
		if b := a + net; lines[whole] == b && on[whole] < gistNever && w.b.whole(a, b) {
			best = min(best, w.across(a, b)+on[whole])
		}
		slim := w.more + w.wide.least(lines, a+prefer+1, min(a+net-1, limit))
		if w.prefer > 0 {
			if x := w.slim.least(lines, a+least+1, min(a+prefer-1, limit)); x < gistNever {
				slim = min(slim, w.more+x+w.gists.fall-w.rampBy*gist(w.left(w.lines[j])))
			}
		}
		if !w.strict {
			if x := w.small.least(lines, a+1, min(a+least-1, limit)); x < gistNever {
				slim = min(slim, w.more+x+w.gists.drop-w.steepBy*gist(w.left(w.lines[j])))
			}
		}
		if b := a + least; 0 < least && least < net && b <= limit {
			for lines[atLeast] > b {
				atLeast--
			}
			if lines[atLeast] == b {
				slim = min(slim, w.across(a, b)+w.narrow(atLeast))
			}
		}
		if b := a + prefer; least < prefer && prefer < net && b <= limit {
			for lines[atPrefer] > b {
				atPrefer--
			}
			if lines[atPrefer] == b {
				slim = min(slim, w.across(a, b)+w.narrow(atPrefer))
			}
		}
		if w.here != nil {
			slim += w.gists.kinds[w.here[j]]
		}
		w.put(j, min(best, slim))
	}
}

// put sets what goes on from lane j at a gist.
func (w *scout) put(j int, best gist) {
	on, n := gistNever, gistNever
	if best = w.sum(best, w.gist[j]); best < gistNever {
		on = best
		if n = on; w.jump != nil {
			n += w.gists.kinds[w.jump[j]]
		}
	}
	w.on[j] = on
	w.wide.set(j, n)
	if w.prefer > 0 {
		w.slim.set(j, steeper(n, w.rampBy, w.left(w.lines[j])))
	}
	if !w.strict {
		w.small.set(j, steeper(n, w.steepBy, w.left(w.lines[j])))
	}
}

// sum adds what a seam costs to what goes on from it.
func (w *scout) sum(best, node gist) gist {
	if best >= gistMost {
		w.gists.over = w.gists.over || best < gistNever
		return gistNever
	}
	return best + node
}

// steeper adds what a lane's way to the right of all is worth.
func steeper(x, by gist, left int64) gist {
	if x >= gistNever {
		return gistNever
	}
	return x + by*gist(left)
}

// left is leftOf, mostly without a short step.
func (w *scout) left(line int) int64 {
	if w.short == 0 {
		return int64(w.size-line) * w.step
	}
	return w.leftOf(line)
}

// across returns what the sheet from one line to another costs.
func (w *scout) across(a, b int) gist {
	if w.short == 0 {
		return w.flat[b-a]
	}
	return w.gists.sheets[w.crosses(a, b)][b-a]
}

// narrow returns what goes on from a narrow sheet that ends on lane j.
func (w *scout) narrow(j int) gist {
	if w.jump == nil {
		return w.on[j]
	}
	return w.on[j] + w.gists.kinds[w.jump[j]]
}

// inner returns what goes on from line a by an inner sheet to lane j, the seam on a left out.
func (w *scout) inner(a, j int) gist {
	b := w.lines[j]
	k := b - a
	if k == w.g.net {
		if !w.b.whole(a, b) {
			return gistNever
		}
		return w.across(a, b) + w.on[j]
	}
	if b > w.b.limit(a) {
		return gistNever
	}
	return w.across(a, b) + w.narrow(j)
}

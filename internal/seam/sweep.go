package seam

// sweeper finds, from right to left, what the best way on from each lane costs.
//
// on[j] is the cost of the seam on lane j and of all that lies right of it. A sheet's cost depends on its width only
// through a few stretches of widths, so the best right seam is the least of a few windows over the lanes ahead, each
// kept by a slide.
type sweeper struct {
	*table
	lanes
	store             *store
	b                 bounds
	on                []cost
	ends              []cost // what the last sheet costs from a lane
	endsFrom          int    // first lane from which a last sheet may start
	wide, slim, short slide
	queue             []runner // of the aim even
	// leastSteps and preferSteps are the steps below which all widths lack of least_width and prefer_width and above
	// which none do; at them the short step decides.
	leastSteps, preferSteps int
}

func newSweeper(t *table, b bounds, s *store) *sweeper {
	w := &sweeper{table: t, b: b, store: s}
	w.leastSteps = min(w.steps(t.least), t.g.net)
	w.preferSteps = min(max(w.steps(t.prefer), w.leastSteps), t.g.net)
	if t.aim == Even {
		return w
	}
	w.wide = newSlide(s, t.g.net+1)
	if t.prefer > 0 {
		w.slim = newSlide(s, t.g.net+1)
	}
	if !t.strict {
		w.short = newSlide(s, t.g.net+1)
	}
	return w
}

// free gives back what the sweeper holds.
func (w *sweeper) free() {
	w.store.costs.give(w.on, w.ends, w.wide.key, w.wide.pre, w.slim.key, w.slim.pre, w.short.key, w.short.pre)
}

// load readies the sweeper for lanes.
func (w *sweeper) load(v lanes) {
	w.lanes = v
	if n := len(v.lines); n > cap(w.on) {
		w.store.costs.give(w.on, w.ends)
		w.on, w.ends = w.store.costs.take(n), w.store.costs.take(n)
	} else {
		w.on, w.ends = w.on[:n], w.ends[:n]
	}
	w.endsFrom = len(v.lines)
}

// run fills on; ends must be set.
func (w *sweeper) run() {
	if w.aim == Even {
		w.runEven()
		return
	}
	top := len(w.lines) - 1
	net, least, prefer := w.g.net, w.leastSteps, w.preferSteps
	w.wide.reset(top)
	w.slim.reset(top)
	w.short.reset(top)
	whole, atLeast, atPrefer := top, top, top
	for j := top; j >= 0; j-- {
		a := w.lines[j]
		limit := w.b.limit(a)
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
		slim := w.one.plus(w.wide.least(w.lines, a+prefer+1, min(a+net-1, limit)))
		if w.prefer > 0 {
			if x := w.slim.least(w.lines, a+least+1, min(a+prefer-1, limit)); !x.isNever() {
				slim = lesser(slim, w.one.plus(x).plus(w.fall).minus(w.ramp(w.leftOf(w.lines[j]))))
			}
		}
		if !w.strict {
			if x := w.short.least(w.lines, a+1, min(a+least-1, limit)); !x.isNever() {
				slim = lesser(slim, w.one.plus(x).plus(w.drop).minus(w.steep(w.leftOf(w.lines[j]))))
			}
		}
		if b := a + least; 0 < least && least < net && b <= limit {
			for w.lines[atLeast] > b {
				atLeast--
			}
			if w.lines[atLeast] == b {
				slim = lesser(slim, w.sheets[w.crosses(a, b)][least].plus(w.narrow(atLeast)))
			}
		}
		if b := a + prefer; least < prefer && prefer < net && b <= limit {
			for w.lines[atPrefer] > b {
				atPrefer--
			}
			if w.lines[atPrefer] == b {
				slim = lesser(slim, w.sheets[w.crosses(a, b)][prefer].plus(w.narrow(atPrefer)))
			}
		}
		if w.here != nil {
			slim = slim.plus(w.kinds[w.here[j]])
		}
		w.put(j, lesser(best, slim))
	}
}

// put sets what goes on from lane j at a cost.
func (w *sweeper) put(j int, best cost) {
	if best.isNever() {
		w.on[j] = never
		w.wide.set(j, never)
		if w.prefer > 0 {
			w.slim.set(j, never)
		}
		if !w.strict {
			w.short.set(j, never)
		}
		return
	}
	w.on[j] = best.plus(w.node[j])
	n := w.narrow(j)
	w.wide.set(j, n)
	if w.prefer > 0 {
		w.slim.set(j, n.plus(w.ramp(w.leftOf(w.lines[j]))))
	}
	if !w.strict {
		w.short.set(j, n.plus(w.steep(w.leftOf(w.lines[j]))))
	}
}

// narrow returns what goes on from a narrow sheet that ends on lane j.
func (w *sweeper) narrow(j int) cost {
	if w.jump == nil {
		return w.on[j]
	}
	return w.on[j].plus(w.kinds[w.jump[j]])
}

// inner returns what goes on from line a by an inner sheet to lane j, the seam on a left out.
func (w *sweeper) inner(a, j int) cost {
	b := w.lines[j]
	k := b - a
	if k == w.g.net {
		if !w.b.whole(a, b) {
			return never
		}
		return w.sheets[w.crosses(a, b)][k].plus(w.on[j])
	}
	if b > w.b.limit(a) {
		return never
	}
	return w.sheets[w.crosses(a, b)][k].plus(w.narrow(j))
}

func lesser(x, y cost) cost {
	if y.less(x) {
		return y
	}
	return x
}

// walk follows the far-right way on from lane j, where on[j] is finite, and appends its lines, that of j not among
// them.
func (w *sweeper) walk(j int, lines []int) []int {
	for {
		a, need := w.lines[j], w.on[j].minus(w.node[j])
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

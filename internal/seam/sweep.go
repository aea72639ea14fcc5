package seam

import "slices"

// lanes lists the lines a sweep goes over, ascending, with what a seam there costs. They are all lines of a span that
// may hold a seam, or those of a stretch that can still be part of a better layout than the best known.
type lanes struct {
	lines []int
	node  []cost
	jump  []cost // more for a narrow sheet that ends here, on the way from right to left; may be nil
	here  []cost // the same for a narrow sheet that begins here, on the way back; may be nil
}

// lanes returns the lanes of all lines that may hold a seam.
func (t *table) lanes() *lanes {
	size := t.g.size()
	v := &lanes{lines: make([]int, 0, size), node: make([]cost, 0, size)}
	if t.jumps() {
		v.jump = make([]cost, 0, size)
	}
	for i, x := range t.seams[:size] {
		if !x.isNever() {
			v.lines = append(v.lines, i)
			v.node = append(v.node, x)
			if v.jump != nil {
				v.jump = append(v.jump, t.narrows[i])
			}
		}
	}
	return v
}

// find returns the first lane whose line is at least i.
func (v *lanes) find(i int) int {
	lane, _ := slices.BinarySearch(v.lines, i)
	return lane
}

// sweeper finds, from right to left, what the best way on from each lane costs.
//
// on[j] is the cost of the seam on lane j and of all that lies right of it; narrow[j] the same with what a narrow
// sheet that ends there costs more. A sheet's cost depends on its width only through a few stretches of widths, so
// the best right seam is the least of a few windows over the lanes ahead, each kept by a slide.
type sweeper struct {
	*table
	*lanes
	b                 bounds
	on, narrow        []cost
	slimKey, shortKey []cost
	ends              []cost // what the last sheet costs from a lane
	endsFrom          int    // first lane from which a last sheet may start
	wide, slim, short slide
	queue             []runner // of the aim even
	// least and prefer are the steps below which all widths lack of least_width and prefer_width and above which none
	// do; at them the short step decides.
	leastSteps, preferSteps int
}

// newSweeper readies a sweeper for lanes of any number up to that of v.
func newSweeper(t *table, v *lanes, b bounds) *sweeper {
	w := &sweeper{table: t, lanes: v, b: b}
	size := len(v.lines)
	w.on, w.ends = make([]cost, size), make([]cost, size)
	w.leastSteps = min(w.steps(t.least), t.g.net)
	w.preferSteps = min(max(w.steps(t.prefer), w.leastSteps), t.g.net)
	if t.aim == Even {
		w.narrow = w.on
		return w
	}
	w.narrow = make([]cost, size)
	w.wide = slide{key: w.narrow, pre: make([]cost, size)}
	if t.prefer > 0 {
		w.slimKey = make([]cost, size)
		w.slim = slide{key: w.slimKey, pre: make([]cost, size)}
	}
	if !t.strict {
		w.shortKey = make([]cost, size)
		w.short = slide{key: w.shortKey, pre: make([]cost, size)}
	}
	return w
}

// run fills on and narrow from lane top down to lane bottom; ends must be set.
func (w *sweeper) run(bottom, top int) {
	if w.aim == Even {
		w.runEven(bottom, top)
		return
	}
	net, least, prefer := w.g.net, w.leastSteps, w.preferSteps
	w.wide.reset(top)
	w.slim.reset(top)
	w.short.reset(top)
	whole, atLeast, atPrefer := top, top, top
	for j := top; j >= bottom; j-- {
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
		if w.slimKey != nil {
			if x := w.slim.least(w.lines, a+least+1, min(a+prefer-1, limit)); !x.isNever() {
				slim = lesser(slim, w.one.plus(x).plus(w.fall).minus(w.ramp(a)))
			}
		}
		if w.shortKey != nil {
			if x := w.short.least(w.lines, a+1, min(a+least-1, limit)); !x.isNever() {
				slim = lesser(slim, w.one.plus(x).plus(w.drop).minus(w.steep(a)))
			}
		}
		if b := a + least; 0 < least && least < net && b <= limit {
			for w.lines[atLeast] > b {
				atLeast--
			}
			if w.lines[atLeast] == b {
				slim = lesser(slim, w.sheets[w.crosses(a, b)][least].plus(w.narrow[atLeast]))
			}
		}
		if b := a + prefer; least < prefer && prefer < net && b <= limit {
			for w.lines[atPrefer] > b {
				atPrefer--
			}
			if w.lines[atPrefer] == b {
				slim = lesser(slim, w.sheets[w.crosses(a, b)][prefer].plus(w.narrow[atPrefer]))
			}
		}
		if w.here != nil {
			slim = slim.plus(w.here[j])
		}
		w.put(j, lesser(best, slim))
	}
}

// put sets what goes on from lane j at a cost.
func (w *sweeper) put(j int, best cost) {
	if best.isNever() {
		w.on[j], w.narrow[j] = never, never
		if w.slimKey != nil {
			w.slimKey[j] = never
		}
		if w.shortKey != nil {
			w.shortKey[j] = never
		}
		return
	}
	w.on[j] = best.plus(w.node[j])
	n := w.on[j]
	if w.jump != nil {
		n = n.plus(w.jump[j])
	}
	w.narrow[j] = n
	if w.slimKey != nil {
		w.slimKey[j] = n.plus(w.ramp(w.lines[j]))
	}
	if w.shortKey != nil {
		w.shortKey[j] = n.plus(w.steep(w.lines[j]))
	}
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
	return w.sheets[w.crosses(a, b)][k].plus(w.narrow[j])
}

func lesser(x, y cost) cost {
	if y.less(x) {
		return y
	}
	return x
}

// walk follows the far-right way on from lane j, where on[j] is finite, and appends its lines, that of j not among
// them.
func (w *sweeper) walk(j, top int, lines []int) []int {
	for {
		a, need := w.lines[j], w.on[j].minus(w.node[j])
		next := min(w.find(a+w.g.net+1)-1, top)
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

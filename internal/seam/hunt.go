package seam

import "slices"

// hunt looks for the best closing place.
//
// A sweep over all lanes gives a lower bound for each place of a whole cluster: what the way round costs that begins
// there and ends at any place of the cluster, or that ends there and begins at any. The first sweep, back, is there to
// set what pulls the ends of the way together; with it the bounds of the second, forth, are next to exact and the place
// of the least is tried. Sweeps both ways then leave only the lanes that can be part of a layout as good as the best
// known. On these few what is left of the places is tried, halved and swept again.
type hunt struct {
	t, back     *table // back goes the other way round
	all, mirror *lanes
	// forth holds the last sweep for a group, again that for a single place, round the last sweep back.
	forth, again, round *sweeper
	under               cost  // the best total so far
	place               int   // its closing line, past the last while there is none
	lines               []int // its lines, closing line first
	feasible            func() bool
	asked, none         bool // whether feasible was asked, and what it denied
}

// group is a stretch of closing places with a lower bound for each, and the lanes that matter.
//
// A bound is loose by what the way round gains where it ends at another place than it began at. pull is taken off what
// the way costs that ends at a place and put on what begins there: it changes nothing for a way that closes, and set to
// what ending there costs more than ending at the best place, it leaves next to nothing to gain.
type group struct {
	places []int
	least  []cost
	pull   []cost
	top    cost // the greatest pull of the sweep that gave the bounds
	v      *lanes
}

// beaten says whether a closing line whose total is at least x cannot be the answer.
func (h *hunt) beaten(c int, x cost) bool {
	return x.isNever() || !x.less(h.under) && (x != h.under || c <= h.place)
}

// search tries the closing places of one class.
func (h *hunt) search(class []int) {
	clusters := h.clusters(class)
	for _, places := range slices.Backward(clusters) {
		g := &group{places: places, least: make([]cost, len(places)), pull: make([]cost, len(places)), v: h.all}
		if g.wide() > h.t.g.net/2 { // the ends of a way cannot lie far apart where the places do not
			h.sweepBack(g, h.mirror)
			h.pull(g)
		}
		if len(g.places) == 0 {
			continue
		}
		if h.sweepForth(g); len(g.places) == 0 {
			continue
		}
		_, at := h.next([]*group{g})
		if h.try(g, at); h.place == h.t.g.lines && h.hopeless() {
			return
		}
		if len(g.places) > 0 {
			h.narrow(g, h.mirror)
			h.part([]*group{g})
		}
	}
}

// searchThrough tries the closing places of one class that holds all lines of a stretch as long as the net width. Each
// layout has a seam in the stretch, so the best that closes there is the best there is: where nothing jumps, it makes no
// difference which of its seams closes it. Only places right of its last one can be better, by being further right.
func (h *hunt) searchThrough(stretch, class []int) {
	if h.search(stretch); h.place == h.t.g.lines {
		return
	}
	last := h.place
	for _, line := range h.lines {
		line %= h.t.g.lines
		if i := search(class, line); i < len(class) && class[i] == line {
			last = max(last, line)
		}
	}
	if last > h.place {
		h.bound(h.again, &group{places: []int{last}, pull: []cost{{}}, v: h.all})
		h.place = last
		h.lines = h.walk(h.again)
	}
	if tail := class[search(class, last+1):]; len(tail) > 0 {
		h.search(tail)
	}
}

// wide returns how far the places of a group lie apart.
func (g *group) wide() int { return g.places[len(g.places)-1] - g.places[0] }

// part tries places of groups and parts the groups until no place is left.
func (h *hunt) part(open []*group) {
	for {
		g, at := h.next(open)
		if g == nil {
			return
		}
		open = slices.DeleteFunc(open, func(other *group) bool { return other == g })
		if h.try(g, at); len(g.places) == 0 {
			continue
		}
		mirror := h.t.reverse(g.v)
		for _, half := range g.halve() {
			half.v = g.v
			if h.sweepForth(half); len(half.places) == 0 {
				continue
			}
			h.narrow(half, mirror)
			open = append(open, half)
		}
	}
}

// hopeless says that there is no layout at all. It is asked for after a first place has failed, for to find that out
// place by place takes long.
func (h *hunt) hopeless() bool {
	if !h.asked {
		h.asked, h.none = true, !h.feasible()
	}
	return h.none
}

// try finds what a place of a group costs exactly, and takes it out of the group with all that it beats.
func (h *hunt) try(g *group, at int) {
	c := g.places[at]
	if exact := h.bound(h.again, &group{places: []int{c}, pull: []cost{{}}, v: g.v})[0]; !h.beaten(c, exact) {
		h.under, h.place = exact, c
		h.lines = h.walk(h.again)
	}
	g.places = slices.Delete(g.places, at, at+1)
	g.least = slices.Delete(g.least, at, at+1)
	g.pull = slices.Delete(g.pull, at, at+1)
	h.prune(g)
}

// next returns the group and the index in it of the place of the least bound that is not beaten.
func (h *hunt) next(open []*group) (best *group, at int) {
	for _, g := range open {
		for i, c := range g.places {
			if h.beaten(c, g.least[i]) {
				continue
			}
			if best == nil || g.least[i].less(best.least[at]) || g.least[i] == best.least[at] && c > best.places[at] {
				best, at = g, i
			}
		}
	}
	return best, at
}

// prune takes out the places of a group that cannot be the answer.
func (h *hunt) prune(g *group) {
	n := 0
	for i, c := range g.places {
		if !h.beaten(c, g.least[i]) {
			g.places[n], g.least[n], g.pull[n] = c, g.least[i], g.pull[i]
			n++
		}
	}
	g.places, g.least, g.pull = g.places[:n], g.least[:n], g.pull[:n]
}

// halve parts a group in the middle of its stretch.
func (g *group) halve() []*group {
	switch len(g.places) {
	case 0:
		return nil
	case 1:
		return []*group{g}
	}
	n := search(g.places, (g.places[0]+g.places[len(g.places)-1]+1)/2)
	return []*group{
		{places: slices.Clone(g.places[:n]), least: slices.Clone(g.least[:n]), pull: slices.Clone(g.pull[:n])},
		{places: slices.Clone(g.places[n:]), least: slices.Clone(g.least[n:]), pull: slices.Clone(g.pull[n:])},
	}
}

// clusters parts a class into pieces: the longer they are the fewer sweeps there are and the looser the bounds. Few
// places stand over doors; a class all round is better cut shorter. Both lengths are what took the fewest sweeps on the
// rooms of the benchmarks.
func (h *hunt) clusters(class []int) [][]int {
	long := 48 * h.t.g.net
	if len(class) > h.t.g.lines/4 {
		long = 16 * h.t.g.net
	}
	var all [][]int
	begin := 0
	for i := range class {
		if i == len(class)-1 || class[i+1]-class[begin] > long {
			all = append(all, slices.Clone(class[begin:i+1]))
			begin = i + 1
		}
	}
	return all
}

// sweepForth bounds the places of a group by where the way round begins.
func (h *hunt) sweepForth(g *group) {
	for i, x := range h.bound(h.forth, g) {
		if g.least[i].less(x) {
			g.least[i] = x
		}
	}
	h.prune(g)
}

// bound sweeps for a group of closing places: exact for one, a lower bound for each of several.
func (h *hunt) bound(w *sweeper, g *group) []cost {
	turn := h.t.g.lines
	low, high := g.places[0], g.places[len(g.places)-1]
	w.load(g.v.part(g.v.find(low+1), g.v.find(high+turn)))
	g.top = slices.MaxFunc(g.pull, cost.compare)
	w.closeOn(g.places, g.pull, g.top)
	w.run()
	n := w.find(high + h.t.g.net + 1)
	least := make([]cost, len(g.places))
	w.reach(g.places, h.t.leftsOf(g.places), targets{w.lines[:n], w.left[:n], w.on[:n]}, least)
	for i, c := range g.places {
		least[i] = lesser(least[i].plus(g.pull[i]).over(g.top), w.alone(c)).plus(h.t.seams[c])
	}
	return least
}

func (t *table) leftsOf(lines []int) []int64 {
	left := make([]int64, len(lines))
	for i, line := range lines {
		left[i] = t.leftOf(line)
	}
	return left
}

// closeOn sets what the last sheet costs from each lane that it can start from to the best of the closing places.
func (w *sweeper) closeOn(places []int, pull []cost, top cost) {
	again, on := make([]int, len(places)), make([]cost, len(places))
	for i, c := range places {
		again[i], on[i] = c+w.g.lines, top.minus(pull[i])
	}
	w.endsFrom = w.find(again[0] - w.g.net)
	w.reach(w.lines[w.endsFrom:], w.left[w.endsFrom:], targets{again, w.leftsOf(again), on}, w.ends[w.endsFrom:])
}

// openOn sets, on the way back, what the first sheet costs that ends on a lane, its closing seam included.
func (w *sweeper) openOn(g *group) {
	var to targets
	for i := len(g.places) - 1; i >= 0; i-- {
		c := g.places[i]
		to.lines = append(to.lines, 2*w.g.lines-c)
		to.left = append(to.left, w.rightOf(c))
		to.on = append(to.on, w.seams[c].plus(g.pull[i]))
	}
	w.endsFrom = w.find(to.lines[0] - w.g.net)
	w.reach(w.lines[w.endsFrom:], w.left[w.endsFrom:], to, w.ends[w.endsFrom:])
}

// sweepBack sweeps back over a group. mirror holds its lanes counted from right to left.
func (h *hunt) sweepBack(g *group, mirror *lanes) {
	turn := h.t.g.lines
	low, high := g.places[0], g.places[len(g.places)-1]
	back := h.round
	back.load(mirror.part(mirror.find(turn-high+1), mirror.find(2*turn-low)))
	back.openOn(g)
	back.run()
}

// narrow sweeps back over a group that was just swept forth, and leaves of its lanes those that can be part of a layout
// as good as the best known, and of its places those that can close one.
func (h *hunt) narrow(g *group, mirror *lanes) {
	h.sweepBack(g, mirror)
	forth, back := h.forth, h.round
	last := len(back.lines) - 1
	first := forth.find(g.places[0] + 1)
	v := newLanes(len(back.lines)/4, forth.jump != nil)
	for j := 0; j <= last; j++ {
		x := forth.on[first+j].plus(back.on[last-j]).minus(forth.node[first+j]).over(g.top)
		if !x.isNever() && !h.under.less(x) {
			v.take(&forth.lanes, first+j)
		}
	}
	g.v = v
	h.pull(g)
}

// pull bounds a group by the sweep back just run: exact is where the way round ends, not where it begins.
func (h *hunt) pull(g *group) {
	turn := h.t.g.lines
	w := h.round
	n := len(g.places)
	ends, left := make([]int, n), make([]int64, n)
	for i, c := range g.places {
		ends[n-1-i], left[n-1-i] = turn-c, h.t.rightOf(turn+c)
	}
	most := make([]cost, n)
	m := w.find(ends[n-1] + h.t.g.net + 1)
	w.reach(ends, left, targets{w.lines[:m], w.left[:m], w.on[:m]}, most)
	slices.Reverse(most)
	best := slices.MinFunc(most, cost.compare)
	for i, c := range g.places {
		least := lesser(most[i].over(g.pull[i]), w.alone(turn-c).plus(h.t.seams[c]))
		if g.least[i].less(least) {
			g.least[i] = least
		}
		g.pull[i] = most[i].over(best)
		if g.pull[i].isNever() {
			g.pull[i] = cost{}
		}
	}
	h.prune(g)
}

// alone returns what a single sheet once round costs.
func (w *sweeper) alone(c int) cost {
	lines := w.g.lines
	if lines > w.g.net || !w.b.allows(c, c+lines) {
		return never
	}
	return w.sheets[w.crosses(c, c+lines)][lines]
}

// walk takes the far-right way round from the best place, for which a sweeper was just run.
func (h *hunt) walk(w *sweeper) []int {
	c, net := h.place, h.t.g.net
	need := h.under.minus(h.t.seams[c])
	for j := w.find(c+net+1) - 1; j >= 0; j-- {
		if w.begin(c, j) == need {
			return w.walk(j, []int{c, w.lines[j]})
		}
	}
	return []int{c}
}

// begin returns what goes on from a closing seam on line c by a first sheet to lane j.
func (w *sweeper) begin(c, j int) cost {
	b := w.lines[j]
	if b > w.b.limit(c) && !(b == c+w.g.net && w.b.whole(c, b)) {
		return never
	}
	return w.sheets[w.crosses(c, b)][b-c].plus(w.on[j])
}

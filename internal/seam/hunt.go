package seam

import (
	"slices"
)

// hunt looks for the best closing place.
//
// One sweep over all lanes gives a lower bound for each place of a whole cluster: what the way round costs that starts
// there and ends at any place of the cluster. A sweep the other way then leaves only the lanes that can be part of a
// layout as good as the best known. On these few the place of the least bound is tried, and what the trial does not rule
// out is halved and swept again.
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
	for i := len(clusters) - 1; i >= 0; i-- {
		g := h.bound(h.forth, h.all, clusters[i], make([]cost, len(clusters[i])))
		h.prune(g)
		if h.place == h.t.g.lines && len(g.places) > 0 {
			_, at := h.next([]*group{g})
			if h.try(g, at); h.place == h.t.g.lines && h.hopeless() {
				return
			}
		}
		if len(g.places) > 0 {
			h.narrow(g, h.mirror)
			h.part([]*group{g})
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

// part tries places of groups and parts the groups until no place is left.
func (h *hunt) part(open []*group) {
	for {
		g, at := h.next(open)
		if g == nil {
			return
		}
		h.try(g, at)
		open = slices.DeleteFunc(open, func(other *group) bool { return other == g })
		if len(g.places) == 0 {
			continue
		}
		g = h.bound(h.forth, g.v, g.places, g.pull)
		if h.prune(g); len(g.places) == 0 {
			continue
		}
		h.narrow(g, h.t.reverse(g.v))
		for _, half := range g.halve() {
			half = h.bound(h.forth, g.v, half.places, half.pull)
			open = append(open, half)
		}
	}
}

// try finds what a place of a group costs exactly, and takes it out of the group with all that it beats.
func (h *hunt) try(g *group, at int) {
	c := g.places[at]
	if exact := h.bound(h.again, g.v, []int{c}, []cost{{}}).least[0]; !h.beaten(c, exact) {
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
		{places: slices.Clone(g.places[:n]), pull: slices.Clone(g.pull[:n])},
		{places: slices.Clone(g.places[n:]), pull: slices.Clone(g.pull[n:])},
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

// bound sweeps for a group of closing places: exact for one, a lower bound for each of several.
func (h *hunt) bound(w *sweeper, v *lanes, places []int, pull []cost) *group {
	g := h.t.g
	low, high := places[0], places[len(places)-1]
	w.load(v.part(v.find(low+1), v.find(high+g.lines)))
	top := slices.MaxFunc(pull, cost.compare)
	w.closeOn(places, pull, top)
	w.run()
	out := &group{places: places, least: make([]cost, len(places)), pull: pull, top: top, v: v}
	n := w.find(high + g.net + 1)
	w.reach(places, h.t.leftsOf(places), targets{w.lines[:n], w.left[:n], w.on[:n]}, out.least)
	for i, c := range places {
		out.least[i] = lesser(out.least[i].plus(pull[i]).over(top), w.alone(c)).plus(h.t.seams[c])
	}
	return out
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
		to.left = append(to.left, w.g.at(c))
		to.on = append(to.on, w.seams[c].plus(g.pull[i]))
	}
	w.endsFrom = w.find(to.lines[0] - w.g.net)
	w.reach(w.lines[w.endsFrom:], w.left[w.endsFrom:], to, w.ends[w.endsFrom:])
}

// narrow sweeps back over a group that was just bounded, and leaves of its lanes those that can be part of a layout as
// good as the best known, and of its places those that can close one. mirror holds the group's lanes counted from right
// to left.
func (h *hunt) narrow(g *group, mirror *lanes) {
	turn := h.t.g.lines
	low, high := g.places[0], g.places[len(g.places)-1]
	forth, back := h.forth, h.round
	back.load(mirror.part(mirror.find(turn-high+1), mirror.find(2*turn-low)))
	back.openOn(g)
	back.run()
	last := len(back.lines) - 1
	first := forth.find(low + 1)
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
		ends[n-1-i], left[n-1-i] = turn-c, h.t.g.at(turn+c)
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

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
	t           *table
	all, mirror *lanes
	far, near   sweeps // over all lanes, and over the few that are left
	under       cost   // the best total so far
	place       int    // its closing line, past the last while there is none
	lines       []int  // its lines, closing line first
	store       *store
	b           bounds
	feasible    func() bool
	counting    bool // that sheets are counted, as bounds turned out to be loose
	waits       int  // stretches that are not counted after one in which counting was of no use
	waiting     int  // those still to be left
	asked, none bool // whether feasible was asked, and what it denied
}

// sweeps holds the last sweep for a group, that for a single place, and the last sweep back, which goes the other way
// round.
type sweeps struct{ forth, again, round sweep }

// sweep is a sweeper, or a scout where bounds will do.
type sweep interface {
	load(v lanes)
	closeOn(places []int, pull []cost, top cost)
	openOn(g *group)
	run()
	ahead(from []int, to int) []cost
	between(back sweep, line int, top, under cost) *lanes
	walkFrom(c int, need cost) []int
	free()
}

func (v sweeps) free() {
	v.forth.free()
	v.again.free()
	v.round.free()
}

// beaten says whether a closing line whose total is at least x cannot be the answer.
func (h *hunt) beaten(c int, x cost) bool {
	return x.isNever() || !x.less(h.under) && (x != h.under || c <= h.place || h.t.anyOf())
}

// search tries the closing places of one class.
func (h *hunt) search(class []int) {
	clusters := h.clusters(class)
	for _, places := range slices.Backward(clusters) {
		g := &group{places: places, least: make([]cost, len(places)), pull: make([]cost, len(places)), v: h.all}
		if g.wide() > h.t.g.net/2 { // the ends of a way cannot lie far apart where the places do not
			h.sweepBack(h.far, g, h.mirror)
			h.pull(h.far, g)
		}
		if len(g.places) == 0 {
			continue
		}
		if h.sweepForth(h.far, g); len(g.places) == 0 {
			continue
		}
		if h.counting {
			if h.count(g); len(g.places) == 0 {
				continue
			}
		}
		if h.tryFirst(g); h.place == h.t.g.lines && h.hopeless() {
			return
		}
		h.part([]*group{g})
	}
}

// tryFirst tries the place of the least bound, at first on those lanes alone that can be part of a layout no worse than the bound.
// It leaves the group the lanes that can be part of one no worse than the best known.
func (h *hunt) tryFirst(g *group) {
	_, at := h.next([]*group{g})
	c, bound := g.places[at], g.least[at]
	known := !h.under.isNever()
	if known { // lanes of no layout as good as the best known are of no use at all
		bound = h.under
	}
	h.sweepBack(h.far, g, h.mirror)
	few := h.far.forth.between(h.far.round, g.places[0]+1, g.top, bound)
	exact := h.alone(c, few)
	all := !known && (exact.isNever() || h.worse(exact, bound))
	if all {
		exact = h.alone(c, g.v)
		h.counting = h.counting || h.t.g.shorter() > 0
	}
	if !h.beaten(c, exact) {
		h.under, h.place = exact, c
		h.lines = h.near.again.walkFrom(c, exact.minus(h.t.seams[c]))
	}
	if all {
		few = h.far.forth.between(h.far.round, g.places[0]+1, g.top, h.under)
	}
	h.pull(h.far, g)
	g.v = few
	if i := search(g.places, c); i < len(g.places) && g.places[i] == c {
		g.drop(i)
	}
	if h.prune(g); h.counting {
		h.count(g)
	}
}

// worse says whether x costs more than y, as far as the sweeps over all lanes can tell.
func (h *hunt) worse(x, y cost) bool {
	if _, ok := h.far.forth.(*scout); ok {
		return h.t.gists.of(x) > h.t.gists.of(y)
	}
	return y.less(x)
}

// alone returns what the best way round some lanes costs that closes on line c.
func (h *hunt) alone(c int, v *lanes) cost {
	return h.bound(h.near.again, &group{places: []int{c}, pull: []cost{{}}, v: v})[0]
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
		h.alone(last, h.all)
		h.place = last
		h.lines = h.near.again.walkFrom(last, h.under.minus(h.t.seams[last]))
	}
	if tail := class[search(class, last+1):]; len(tail) > 0 {
		h.search(tail)
	}
}

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
		mirror := h.t.reverse(g.v, h.store)
		for _, half := range g.halve() {
			half.v = g.v
			if h.sweepForth(h.near, half); len(half.places) == 0 {
				continue
			}
			h.narrow(half, mirror)
			open = append(open, half)
		}
		mirror.free(h.store)
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
	if exact := h.alone(c, g.v); !h.beaten(c, exact) {
		h.under, h.place = exact, c
		h.lines = h.near.again.walkFrom(c, exact.minus(h.t.seams[c]))
	}
	g.drop(at)
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
func (h *hunt) sweepForth(by sweeps, g *group) {
	for i, x := range h.bound(by.forth, g) {
		if g.least[i].less(x) {
			g.least[i] = x
		}
	}
	h.prune(g)
}

// bound sweeps for a group of closing places: exact for one, a lower bound for each of several.
func (h *hunt) bound(w sweep, g *group) []cost {
	turn := h.t.g.lines
	low, high := g.places[0], g.places[len(g.places)-1]
	w.load(g.v.part(g.v.find(low+1), g.v.find(high+turn)))
	g.top = slices.MaxFunc(g.pull, cost.compare)
	w.closeOn(g.places, g.pull, g.top)
	w.run()
	least := w.ahead(g.places, high+h.t.g.net)
	for i, c := range g.places {
		least[i] = lesser(least[i].plus(g.pull[i]).over(g.top), h.t.only(&h.b, c)).plus(h.t.seams[c])
	}
	return least
}

// sweepBack sweeps back over a group. mirror holds its lanes counted from right to left.
func (h *hunt) sweepBack(by sweeps, g *group, mirror *lanes) {
	turn := h.t.g.lines
	low, high := g.places[0], g.places[len(g.places)-1]
	by.round.load(mirror.part(mirror.find(turn-high+1), mirror.find(2*turn-low)))
	by.round.openOn(g)
	by.round.run()
}

// narrow sweeps back over a group that was just swept forth, and leaves of its lanes those that can be part of a layout
// as good as the best known, and of its places those that can close one.
func (h *hunt) narrow(g *group, mirror *lanes) {
	h.sweepBack(h.near, g, mirror)
	g.v = h.near.forth.between(h.near.round, g.places[0]+1, g.top, h.under)
	h.pull(h.near, g)
}

// pull bounds a group by the sweep back just run: exact is where the way round ends, not where it begins.
func (h *hunt) pull(by sweeps, g *group) {
	turn := h.t.g.lines
	n := len(g.places)
	ends := make([]int, n)
	for i, c := range g.places {
		ends[n-1-i] = turn - c
	}
	most := by.round.ahead(ends, ends[n-1]+h.t.g.net)
	slices.Reverse(most)
	best := slices.MinFunc(most, cost.compare)
	for i, c := range g.places {
		least := lesser(most[i].over(g.pull[i]), h.t.only(&h.b, c).plus(h.t.seams[c]))
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

// only returns what a single sheet once round costs that closes on line c.
func (t *table) only(b *bounds, c int) cost {
	lines := t.g.lines
	if lines > t.g.net || !b.allows(c, c+lines) {
		return never
	}
	return t.sheets[1][lines]
}

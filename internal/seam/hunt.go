package seam

import (
	"slices"
	"sort"
)

// hunt looks for the best closing place.
//
// One sweep gives a lower bound for each place of a whole group: what the way round costs that starts there and ends at
// any place of the group. The group is then tried at the place of the least bound. A sweep the other way leaves only
// the lanes that can be part of a better layout; on these what the trial does not rule out is halved and swept again.
type hunt struct {
	t, back *table // back goes the other way round
	b, bb   bounds
	all     *lanes
	under   cost // the best total so far
	place   int  // its closing line, past the last while there is none
}

// group is a stretch of closing places with a lower bound for each, and the lanes that matter.
type group struct {
	places []int
	least  []cost
	w      *sweeper
}

// beaten says whether a closing line whose total is at least x cannot be the answer.
func (h *hunt) beaten(c int, x cost) bool {
	return x.isNever() || !x.less(h.under) && (x != h.under || c <= h.place)
}

// search tries the closing places of one class.
func (h *hunt) search(class []int) {
	dense := newSweeper(h.t, h.all, h.b)
	var open []*group
	for _, places := range h.clusters(class) {
		open = append(open, h.bound(dense, places))
	}
	for {
		best, at := h.next(open)
		if best == nil {
			return
		}
		c := best.places[at]
		if exact := h.bound(best.w, []int{c}).least[0]; !h.beaten(c, exact) {
			h.under, h.place = exact, c
		}
		best.places = slices.Delete(best.places, at, at+1)
		best.least = slices.Delete(best.least, at, at+1)
		h.prune(best)
		open = slices.DeleteFunc(open, func(g *group) bool { return g == best })
		if len(best.places) == 0 {
			continue
		}
		w := h.narrow(best)
		if len(best.places) == 0 {
			continue
		}
		for _, half := range halve(best.places) {
			open = append(open, h.bound(w, half))
		}
	}
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
			g.places[n], g.least[n] = c, g.least[i]
			n++
		}
	}
	g.places, g.least = g.places[:n], g.least[:n]
}

// halve parts places in the middle of their stretch.
func halve(places []int) [][]int {
	if len(places) == 1 {
		return [][]int{places}
	}
	n := sort.SearchInts(places, (places[0]+places[len(places)-1]+1)/2)
	return [][]int{slices.Clone(places[:n]), slices.Clone(places[n:])}
}

// clusters parts a class where its places lie apart, and into pieces no longer than a sheet is wide.
func (h *hunt) clusters(class []int) [][]int {
	var all [][]int
	begin := 0
	for i := range class {
		if i == len(class)-1 || class[i+1]-class[begin] > h.t.g.net {
			all = append(all, slices.Clone(class[begin:i+1]))
			begin = i + 1
		}
	}
	return all
}

// bound sweeps for a group of closing places: exact for one, a lower bound for each of several.
func (h *hunt) bound(w *sweeper, places []int) *group {
	g := h.t.g
	low, high := places[0], places[len(places)-1]
	bottom, top := w.find(low+1), w.find(high+g.lines)-1
	w.closeOn(places, bottom, top)
	w.run(bottom, top)
	out := &group{places: places, least: make([]cost, len(places)), w: w}
	for i, c := range places {
		best := w.round(c)
		for j := w.find(c + 1); j <= top && w.lines[j] <= c+g.net; j++ {
			best = lesser(best, w.begin(c, j))
		}
		out.least[i] = best.plus(h.t.seams[c])
	}
	return out
}

// narrow sweeps for what is left of a group from both sides, and leaves of its lanes those that can be part of a layout
// as good as the best known.
func (h *hunt) narrow(g *group) *sweeper {
	turn := h.t.g.lines
	*g = *h.bound(g.w, g.places)
	h.prune(g)
	if len(g.places) == 0 {
		return g.w
	}
	low, high := g.places[0], g.places[len(g.places)-1]
	back := newSweeper(h.back, g.w.lanes.reverse(2*turn), h.bb)
	bottom, top := back.find(turn-high+1), back.find(2*turn-low)-1
	back.openOn(g.places, h.t.seams, bottom, top)
	back.run(bottom, top)
	v := &lanes{}
	last := len(g.w.lines) - 1
	for j := last - top; j <= last-bottom; j++ {
		x := g.w.on[j].plus(back.on[last-j]).minus(g.w.node[j])
		if x.isNever() || h.under.less(x) {
			continue
		}
		v.lines = append(v.lines, g.w.lines[j])
		v.node = append(v.node, g.w.node[j])
		if g.w.jump != nil {
			v.jump = append(v.jump, g.w.jump[j])
		}
	}
	return newSweeper(h.t, v, h.b)
}

// openOn sets, on the way back, what the first sheet costs that ends on a lane, its closing seam included.
func (w *sweeper) openOn(places []int, seams []cost, bottom, top int) {
	turn := 2 * w.g.lines
	w.endsFrom = max(w.find(turn-places[len(places)-1]-w.g.net), bottom)
	for j := w.endsFrom; j <= top; j++ {
		a := w.lines[j]
		limit := w.b.limit(a)
		least := never
		for i := sort.SearchInts(places, turn-a-w.g.net); i < len(places); i++ {
			b := turn - places[i]
			if b <= a {
				break
			}
			if b <= limit || b == a+w.g.net && w.b.whole(a, b) {
				least = lesser(least, w.sheets[w.crosses(a, b)][b-a].plus(seams[places[i]]))
			}
		}
		w.ends[j] = least
	}
}

// reverse returns lanes that count from right to left: line i becomes line turn-i.
func (v *lanes) reverse(turn int) *lanes {
	back := &lanes{lines: slices.Clone(v.lines), node: slices.Clone(v.node), here: slices.Clone(v.jump)}
	slices.Reverse(back.lines)
	slices.Reverse(back.node)
	slices.Reverse(back.here)
	for i := range back.lines {
		back.lines[i] = turn - back.lines[i]
	}
	return back
}

// round returns what a single sheet once round costs.
func (w *sweeper) round(c int) cost {
	lines := w.g.lines
	if lines > w.g.net || !w.b.allows(c, c+lines) {
		return never
	}
	return w.sheets[w.crosses(c, c+lines)][lines]
}

// begin returns what goes on from a closing seam on line c by a first sheet to lane j.
func (w *sweeper) begin(c, j int) cost {
	b := w.lines[j]
	if b > w.b.limit(c) && !(b == c+w.g.net && w.b.whole(c, b)) {
		return never
	}
	return w.sheets[w.crosses(c, b)][b-c].plus(w.on[j])
}

// closeOn sets what the last sheet costs from each lane that it can start from to the best of the closing places.
func (w *sweeper) closeOn(places []int, bottom, top int) {
	g := w.g
	w.endsFrom = max(w.find(places[0]+g.lines-g.net), bottom)
	for j := w.endsFrom; j <= top; j++ {
		a := w.lines[j]
		w.ends[j] = w.closeFrom(a, min(a+g.net, w.b.limit(a)), places)
		if b := a + g.net; b > w.b.limit(a) && w.b.whole(a, b) {
			if _, found := slices.BinarySearch(places, b-g.lines); found {
				w.ends[j] = lesser(w.ends[j], w.sheets[w.crosses(a, b)][g.net])
			}
		}
	}
}

// closeFrom lets the last sheet from line a end on the place of the least cost, up to a limit. The cost of a width is
// convex: the places on both sides of its lowest point will do.
func (w *sweeper) closeFrom(a, limit int, places []int) cost {
	lines := w.g.lines
	least := never
	try := func(i int) {
		if i < 0 || i >= len(places) {
			return
		}
		if b := places[i] + lines; b > a && b <= limit {
			least = lesser(least, w.sheets[w.crosses(a, b)][b-a])
		}
	}
	try(sort.SearchInts(places, limit-lines+1) - 1)
	if w.aim == Even {
		best := sort.SearchInts(places, a+max(w.steps(max(w.least, w.prefer)), 1)-lines)
		for i := best - 1; i <= best+1; i++ {
			try(i)
		}
	}
	return least
}

// answer walks the best layout found.
func (h *hunt) answer() answer {
	c := h.place
	w := newSweeper(h.t, h.all, h.b)
	h.bound(w, []int{c})
	top := w.find(c+h.t.g.lines) - 1
	need := h.under.minus(h.t.seams[c])
	for j := min(w.find(c+h.t.g.net+1)-1, top); j >= 0 && w.lines[j] > c; j-- {
		if w.begin(c, j) == need {
			return answer{lines: w.walk(j, top, []int{c, w.lines[j]}), total: h.under}
		}
	}
	return answer{lines: []int{c}, total: h.under}
}

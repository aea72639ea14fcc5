package seam

import (
	"slices"
	"sort"
)

// closed finds the best layout of a closed span among those that cost less than under; closings lists the lines the
// closing seam may fall on, nil for all.
//
// Closing places are tried class by class, the least seen first. Within a class one sweep gives a lower bound for
// each place of a whole group: what the way round costs that starts there and ends at any place of the group. The
// group is then tried at the place of the least bound, what the trial does not rule out is halved and swept again.
func (t *table) closed(b bounds, closings []int, under cost) (answer, bool) {
	h := &hunt{w: newSweeper(t, b), under: under, place: t.g.lines}
	for _, class := range t.classes(closings) {
		if h.search(class); h.place < t.g.lines {
			return h.answer(), true
		}
	}
	return answer{}, false
}

// classes groups the lines that can hold the closing seam by what shows of it, the least first.
func (t *table) classes(closings []int) [][]int {
	if closings == nil {
		closings = make([]int, t.g.lines)
		for i := range closings {
			closings[i] = i
		}
	}
	by := map[int64][]int{}
	var heights []int64
	for _, c := range closings {
		if t.node[c].isNever() {
			continue
		}
		feet := int64(0)
		if t.aim != musts {
			feet = t.s.feet(t.g.seen[c])
		}
		if by[feet] == nil {
			heights = append(heights, feet)
		}
		by[feet] = append(by[feet], c)
	}
	slices.Sort(heights)
	var classes [][]int
	for _, feet := range heights {
		classes = append(classes, by[feet])
	}
	return classes
}

// hunt looks for the best closing place.
type hunt struct {
	w     *sweeper
	under cost // the best total so far
	place int  // its closing line, past the last while there is none
	swept int  // closing line whose own sweep the sweeper holds, -1 for none
	runs  int
}

// group is a stretch of closing places with a lower bound for each.
type group struct {
	places []int
	least  []cost
}

// beaten says whether a closing line whose total is at least x cannot be the answer.
func (h *hunt) beaten(c int, x cost) bool {
	return x.isNever() || !x.less(h.under) && (x != h.under || c <= h.place)
}

// search tries the closing places of one class.
func (h *hunt) search(class []int) {
	var open []*group
	for _, places := range h.clusters(class) {
		open = append(open, h.bound(places))
	}
	for {
		var best *group
		at := 0
		for _, g := range open {
			for i, c := range g.places {
				if best == nil || g.least[i].less(best.least[at]) || g.least[i] == best.least[at] && c > best.places[at] {
					best, at = g, i
				}
			}
		}
		if best == nil || h.beaten(best.places[at], best.least[at]) {
			return
		}
		c := best.places[at]
		exact := h.bound([]int{c}).least[0]
		if !h.beaten(c, exact) {
			h.under, h.place = exact, c
		}
		best.places = slices.Delete(best.places, at, at+1)
		best.least = slices.Delete(best.least, at, at+1)
		var next []*group
		for _, g := range open {
			h.prune(g)
			if len(g.places) > 0 && g != best {
				next = append(next, g)
			}
		}
		if len(best.places) > 0 {
			low, high := h.halve(best)
			next = append(next, h.again(low), h.again(high))
		}
		open = next
	}
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

// halve parts a group in the middle of its stretch.
func (h *hunt) halve(g *group) (low, high *group) {
	n := sort.SearchInts(g.places, (g.places[0]+g.places[len(g.places)-1]+1)/2)
	if n == 0 {
		n = 1
	}
	return &group{g.places[:n:n], g.least[:n:n]}, &group{g.places[n:], g.least[n:]}
}

// again bounds what is left of a group anew.
func (h *hunt) again(g *group) *group {
	if len(g.places) == 0 {
		return g
	}
	now := h.bound(g.places)
	for i := range now.least {
		now.least[i] = greater(now.least[i], g.least[i])
	}
	return now
}

func greater(x, y cost) cost {
	if x.less(y) {
		return y
	}
	return x
}

// clusters parts a class where its places lie apart, and into pieces no longer than a sheet is wide.
func (h *hunt) clusters(class []int) [][]int {
	var all [][]int
	begin := 0
	for i := range class {
		if i == len(class)-1 || class[i+1]-class[begin] > h.w.g.net/2 {
			all = append(all, slices.Clone(class[begin:i+1]))
			begin = i + 1
		}
	}
	return all
}

// bound sweeps for a group of closing places: exact for one, a lower bound for each of several.
func (h *hunt) bound(places []int) *group {
	w, g := h.w, h.w.g
	low, high := places[0], places[len(places)-1]
	h.runs++
	h.swept = -1
	if low == high {
		h.swept = low
	}
	w.closeOn(places)
	w.run(low+1, high+g.lines-1)
	out := &group{places: places, least: make([]cost, len(places))}
	for i, c := range places {
		best := w.round(c)
		for b := c + 1; b <= min(c+g.net, high+g.lines-1); b++ {
			best = lesser(best, w.begin(c, b))
		}
		out.least[i] = best.plus(w.node[c])
	}
	return out
}

// round returns what a single sheet once round costs.
func (w *sweeper) round(c int) cost {
	lines := w.g.lines
	if lines > w.g.net || !w.b.allows(c, c+lines) {
		return never
	}
	return w.sheets[w.g.crosses(c, c+lines)][lines]
}

// begin returns what goes on from a closing seam on line c by a first sheet to line b.
func (w *sweeper) begin(c, b int) cost {
	if b > w.b.limit(c) && !(b == c+w.g.net && w.b.whole(c, b)) {
		return never
	}
	return w.sheets[w.g.crosses(c, b)][b-c].plus(w.on[b])
}

// closeOn sets what the last sheet costs from each line that it can start from to the best of the closing places.
func (w *sweeper) closeOn(places []int) {
	g := w.g
	low, high := places[0]+g.lines, places[len(places)-1]+g.lines
	w.endsFrom = max(low-g.net, places[0]+1)
	for a := w.endsFrom; a < high; a++ {
		w.ends[a] = never
		limit := min(a+g.net, w.b.limit(a))
		w.closeFrom(a, limit, places)
		if b := a + g.net; b > limit && w.b.whole(a, b) {
			if _, found := slices.BinarySearch(places, b-g.lines); found {
				w.ends[a] = lesser(w.ends[a], w.sheets[g.crosses(a, b)][g.net])
			}
		}
	}
}

// closeFrom lets the last sheet from line a end on the place of the least cost, up to a limit. The cost of a width is
// convex: the places on both sides of its lowest point will do.
func (w *sweeper) closeFrom(a, limit int, places []int) {
	lines := w.g.lines
	try := func(i int) {
		if i < 0 || i >= len(places) {
			return
		}
		if b := places[i] + lines; b > a && b <= limit {
			w.ends[a] = lesser(w.ends[a], w.sheets[w.g.crosses(a, b)][b-a])
		}
	}
	last := sort.SearchInts(places, limit-lines+1) - 1
	try(last)
	if w.aim == Even {
		best := sort.SearchInts(places, a+max(w.steps(max(w.least, w.prefer)), 1)-lines)
		for i := best - 1; i <= best+1; i++ {
			try(i)
		}
	}
}

// answer walks the best layout found.
func (h *hunt) answer() answer {
	w, c := h.w, h.place
	if h.swept != c {
		h.bound([]int{c})
	}
	top := c + w.g.lines - 1
	need := h.under.minus(w.node[c])
	for b := min(c+w.g.net, top); b > c; b-- {
		if w.begin(c, b) == need {
			return answer{lines: w.walk(b, top, []int{c, b}), total: h.under}
		}
	}
	return answer{lines: []int{c}, total: h.under}
}

package seam

import "slices"

// mostWaits is how many stretches at most are left as they are after those in which counting has beaten no place.
const mostWaits = 31

// count bounds the places of a group, stretch by stretch, by ways that have as many sheets as a layout must. What pulls
// their ends together is not what it is for all ways: it is taken from a first such bound.
func (h *hunt) count(g *group) {
	w, ok := h.far.again.(*scout)
	long := h.t.g.shorter()
	if !ok || long == 0 {
		return
	}
	// Where it is of no use in one stretch it seldom is in the next ones: then fewer and fewer of them are counted.
	for begin := 0; begin < len(g.places); {
		end := search(g.places, g.places[begin]+long)
		if end-begin <= h.t.g.net/8 { // so few are sooner tried
			begin = end
			continue
		}
		if h.waiting > 0 {
			h.waiting--
			begin = end
			continue
		}
		part := &group{places: slices.Clone(g.places[begin:end]), least: slices.Clone(g.least[begin:end]), v: g.v}
		part.pull = make([]cost, len(part.places))
		for range 2 {
			if h.countOnce(w, part); len(part.places) == 0 {
				break
			}
		}
		h.countTilted(w, part)
		if h.waits = min(2*h.waits+1, mostWaits); len(part.places) < end-begin {
			h.waits = 0
		}
		h.waiting = h.waits
		kept := 0
		for k := begin; k < end; k++ {
			if kept < len(part.places) && part.places[kept] == g.places[k] {
				g.least[k] = part.least[kept]
				kept++
			} else {
				g.least[k] = never
			}
		}
		begin = end
	}
	h.prune(g)
}

// countTilted is countOnce by tilts, where what they add is enough to beat a place.
func (h *hunt) countTilted(w *scout, g *group) {
	for _, left := range [2]bool{true, false} {
		pull := h.t.tilt(g.places, len(h.lines), left)
		if pull == nil || len(g.places) <= h.t.g.net/8 || g.lowest().plus(slices.MaxFunc(pull, cost.compare)).less(h.under) {
			return
		}
		g.pull = pull
		h.countOnce(w, g)
	}
}

// countOnce bounds a stretch of places by ways that are counted, and sets the pull by what begins at each of them.
func (h *hunt) countOnce(w *scout, g *group) {
	g.top = slices.MaxFunc(g.pull, cost.compare)
	most := cost{}
	for i, x := range w.counted(g) {
		least := h.t.gists.least(x).plus(g.pull[i]).over(g.top)
		if g.pull[i] = least; !least.isNever() && most.less(least) {
			most = least
		}
		if least = lesser(least, h.t.only(&h.b, g.places[i])).plus(h.t.seams[g.places[i]]); g.least[i].less(least) {
			g.least[i] = least
		}
	}
	for i, x := range g.pull {
		if g.pull[i] = (cost{}); !x.isNever() {
			g.pull[i] = most.minus(x)
		}
	}
	h.prune(g)
}

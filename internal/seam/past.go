package seam

import "slices"

// past is what a solving leaves for the next one of the same span with other pins. Neither can make an answer another: a
// pull changes how loose bounds are, and a place that is tried again is one of those that were to be tried.
type past struct {
	pulls map[int]group // places and pull of the clusters, by their first place
	place int           // where the last answer closed, -1 without one
}

// pullAsBefore sets the pull of a cluster to that of the solving before, where there is one.
func (h *hunt) pullAsBefore(g *group) bool {
	if h.t.past == nil {
		return false
	}
	known, ok := h.t.past.pulls[g.places[0]]
	if !ok || !slices.Equal(known.places, g.places) {
		return false
	}
	copy(g.pull, known.pull)
	return true
}

// tryPast tries the place where the last answer closed: mostly it is that of the next one too.
func (h *hunt) tryPast(class []int) {
	if h.t.past == nil || h.t.past.place < 0 {
		return
	}
	c := h.t.past.place
	if _, ok := slices.BinarySearch(class, c); !ok {
		return
	}
	if exact := h.alone(c, h.all); !h.beaten(c, exact) {
		h.under, h.place = exact, c
		h.lines = h.near.again.walkFrom(c, exact.minus(h.t.seams[c]))
	}
}

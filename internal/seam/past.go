package seam

import "slices"

// past is what a solving leaves for the next one of the same span with other pins: the place where its answer closed, -1 without
// one. It cannot make an answer another, for it is one of the places that are to be tried.
type past struct{ place int }

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

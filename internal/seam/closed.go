package seam

import "slices"

// closed finds the best layout of a closed span among those that cost less than under; closings lists the lines the
// closing seam may fall on, nil for all. Closing places are tried class by class, the least seen first.
func (t *table) closed(b bounds, closings []int, under cost, s *store) (answer, bool) {
	back := *t
	back.reversed = true
	all := t.lanes()
	h := &hunt{
		t: t, back: &back, all: all, mirror: t.reverse(all), under: under, place: t.g.lines,
		forth: newSweeper(t, b, s), again: newSweeper(t, b, s), round: newSweeper(&back, b.reverse(t.g), s),
	}
	defer h.forth.free()
	defer h.again.free()
	defer h.round.free()
	for _, class := range t.classes(closings) {
		if h.search(class); h.place < t.g.lines {
			return answer{lines: h.lines, total: h.under}, true
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
		if t.seams[c].isNever() {
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

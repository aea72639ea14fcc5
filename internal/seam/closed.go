package seam

import (
	"iter"
	"slices"
)

// closed finds the best layout of a closed span among those that cost less than under; closings lists the lines the
// closing seam may fall on, nil for all.
func (t *table) closed(b bounds, closings []int, under cost, s *store) (answer, bool) {
	found, ok := t.closedBy(true, b, closings, under, s)
	if t.gists.over && t.counted < t.used {
		// Some sum was too great for a gist, for more sheets are narrow than mostly, and what was found may not be the best: a gist
		// that counts all of them says less of what comes last.
		t.counted = t.used
		if t.gists = t.newGists(); t.kept != nil {
			t.kept = &keptLanes{}
		}
		found, ok = t.closedBy(true, b, closings, under, s)
	}
	if t.gists.over {
		return t.closedBy(false, b, closings, under, s)
	}
	return found, ok
}

// closedBy is closed, by gists where they will do. Closing places are tried class by class, the least seen first.
func (t *table) closedBy(scouting bool, b bounds, closings []int, under cost, s *store) (answer, bool) {
	back := *t
	back.reversed = true
	full := !scouting || !t.gists.exact()
	all, mirror, done := t.bothLanes(s, full)
	defer done()
	h := &hunt{t: t, all: all, mirror: mirror, b: b, under: under, place: t.g.lines, store: s}
	h.feasible = func() bool { return t.aim == musts || t.feasible(b, s) }
	away := b.reverse(t.g)
	if scouting {
		h.far = sweeps{newScout(t, b, s), newScout(t, b, s), newScout(&back, away, s)}
		defer h.far.free()
		h.near = h.far
	}
	if full {
		h.near = sweeps{newSweeper(t, b, s), newSweeper(t, b, s), newSweeper(&back, away, s)}
		defer h.near.free()
	}
	if !scouting {
		h.far = h.near
	}
	if t.aim == musts && closings == nil {
		// Which seam closes makes no difference to the musts, and each layout has one in any window of net lines.
		h.search(t.window())
		return answer{lines: h.lines, total: h.under}, h.place < t.g.lines
	}
	// What shows of the closing seam counts next after the musts, so a class that has a layout ends the search:
	// 1. where any seam of a layout may as well close it, the lines of one net width stand for the class; 2. else all of it.
	// 3. After a class without any layout it is asked once whether there is one at all.
	for _, class := range t.classes(closings) {
		if len(b.wishes) == 0 && t.alike() {
			class = class[len(class)-1:]
		}
		h.tryPast(class)
		if w := t.covered(class); w != nil {
			h.searchThrough(w, class)
		} else {
			h.search(class)
		}
		if h.place < t.g.lines {
			if t.past != nil {
				t.past.place = h.place
			}
			return answer{lines: h.lines, total: h.under}, true
		}
		if h.hopeless() {
			break
		}
	}
	return answer{}, false
}

// alike says that all lines are alike: then each layout can be turned to close on any of them, the last one too.
func (t *table) alike() bool {
	if t.g.short > 0 {
		return false
	}
	for i, x := range t.seams[:t.g.lines] {
		if x.isNever() || x != t.seams[0] || t.kind != nil && t.kind[i] != t.kind[0] {
			return false
		}
	}
	return true
}

// feasible says whether there is any layout, whichever seam closes it.
func (t *table) feasible(b bounds, s *store) bool {
	if !t.strict {
		return true // as a sum of musts that is known to be met
	}
	bare, err := newTable(t.g, musts, true, least{})
	if err != nil {
		return true
	}
	copy(bare.seams, t.seams) // with the lines that pins bar
	for i, x := range bare.seams {
		if !x.isNever() {
			bare.seams[i] = cost{}
		}
	}
	_, found := bare.closed(b, nil, never, s)
	return found
}

// window returns the lines of a stretch as long as the net width, the one with the most places that break no must. A
// layout has a seam in each such stretch.
func (t *table) window() []int {
	g := t.g
	long := min(g.net, g.lines)
	free := func(i int) int {
		if owed := g.owed[i%g.lines]; owed.bends != 0 || owed.edges != 0 {
			return 0
		}
		return 1
	}
	count := 0
	for i := range long {
		count += free(i)
	}
	best, at := count, 0
	for i := long; i < g.lines; i++ {
		if count += free(i) - free(i-long); count > best {
			best, at = count, i-long+1
		}
	}
	var lines []int
	for i := at; i < at+long; i++ {
		if !t.seams[i].isNever() {
			lines = append(lines, i)
		}
	}
	return lines
}

// covered returns the lines of a stretch as long as the net width all of whose lines that may hold a seam are of a class,
// of such stretches one with the fewest; nil where there is none, or little to gain, or where it matters which seam closes: a
// narrow sheet that ends there does not jump.
func (t *table) covered(class []int) []int {
	g := t.g
	long := min(g.net, g.lines)
	if t.jumps() || len(class) < 2*long {
		return nil
	}
	of := make([]bool, g.lines)
	for _, c := range class {
		of[c] = true
	}
	count, strange := 0, 0
	step := func(i, by int) {
		switch {
		case of[i]:
			count += by
		case !t.seams[i].isNever():
			strange += by
		}
	}
	least, at := nowhere, -1
	for i := range g.lines {
		step(i, 1)
		if i >= long {
			step(i-long, -1)
		}
		if i >= long-1 && strange == 0 && count < least {
			least, at = count, i-long+1
		}
	}
	if at < 0 {
		return nil
	}
	low := search(class, at)
	return class[low:search(class, at+long)]
}

// classes groups the lines that can hold the closing seam by what shows of it, the least first. Mostly the first has a layout,
// so that the others are not made.
func (t *table) classes(closings []int) iter.Seq2[int, []int] {
	if closings == nil {
		closings = make([]int, t.g.lines)
		for i := range closings {
			closings[i] = i
		}
	}
	var heights []int64
	var sizes []int
	last := -1
	for _, c := range closings {
		if t.seams[c].isNever() {
			continue
		}
		if feet := t.shown(c); last < 0 || heights[last] != feet {
			var found bool
			if last, found = slices.BinarySearch(heights, feet); !found {
				heights = slices.Insert(heights, last, feet)
				sizes = slices.Insert(sizes, last, 0)
			}
		}
		sizes[last]++
	}
	return func(yield func(int, []int) bool) {
		for i, feet := range heights {
			class := make([]int, 0, sizes[i])
			for _, c := range closings {
				if !t.seams[c].isNever() && t.shown(c) == feet {
					class = append(class, c)
				}
			}
			if !yield(i, class) {
				return
			}
		}
	}
}

// shown is what shows of a closing seam, as far as it counts.
func (t *table) shown(line int) int64 {
	if t.aim == musts {
		return 0
	}
	return t.g.feet[line]
}

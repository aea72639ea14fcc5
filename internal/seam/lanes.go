package seam

// lanes lists the lines a sweep goes over, ascending, with what a seam there costs. They are all lines of a span that
// may hold a seam, or those of a stretch that can still be part of a better layout than the best known.
type lanes struct {
	lines []int
	node  []cost   // what the seam costs
	gist  []gist   // and in gists
	jump  []uint16 // kind of jump of a narrow sheet that ends here, on the way from right to left; may be nil
	here  []uint16 // the same of a narrow sheet that begins here, on the way back; may be nil
}

// lanes returns the lanes of all lines that may hold a seam; with full their costs are more than gists.
func (t *table) lanes(s *store, full bool) *lanes {
	n := 0
	for i := range t.g.size() {
		if !t.seams[i].isNever() {
			n++
		}
	}
	v := &lanes{lines: s.lines.take(n), gist: s.gists.take(n)}
	if full {
		v.node = s.costs.take(n)
	}
	if t.jumps() {
		v.jump = s.kinds.take(n)
	}
	n = 0
	for i := range t.g.size() {
		if x := &t.seams[i]; !x.isNever() {
			v.lines[n], v.gist[n] = i, t.gists.of(*x)
			if v.node != nil {
				v.node[n] = *x
			}
			if v.jump != nil {
				v.jump[n] = t.kind[i]
			}
			n++
		}
	}
	return v
}

// like makes room for as many lanes like others.
func (v *lanes) like(n int) *lanes {
	out := &lanes{lines: make([]int, 0, n), gist: make([]gist, 0, n)}
	if v.node != nil {
		out.node = make([]cost, 0, n)
	}
	if v.jump != nil {
		out.jump = make([]uint16, 0, n)
	}
	return out
}

// free gives lanes back.
func (v *lanes) free(s *store) {
	s.lines.give(v.lines)
	s.gists.give(v.gist)
	s.costs.give(v.node)
	s.kinds.give(v.jump, v.here)
}

// find returns the first lane whose line is at least i.
func (v *lanes) find(i int) int { return search(v.lines, i) }

// part returns the lanes from one to before another.
func (v *lanes) part(low, high int) lanes {
	p := lanes{lines: v.lines[low:high], gist: v.gist[low:high]}
	if v.node != nil {
		p.node = v.node[low:high]
	}
	if v.jump != nil {
		p.jump = v.jump[low:high]
	}
	if v.here != nil {
		p.here = v.here[low:high]
	}
	return p
}

// take appends a lane of others.
func (v *lanes) take(from *lanes, lane int) {
	v.lines = append(v.lines, from.lines[lane])
	if from.node != nil {
		v.node = append(v.node, from.node[lane])
	}
	v.gist = append(v.gist, from.gist[lane])
	if from.jump != nil {
		v.jump = append(v.jump, from.jump[lane])
	}
}

// reverse returns the lanes as they count from right to left: line i becomes line 2*lines-i.
func (t *table) reverse(v *lanes, s *store) *lanes {
	n := len(v.lines)
	back := &lanes{lines: s.lines.take(n), gist: turned(&s.gists, v.gist), node: turned(&s.costs, v.node), here: turned(&s.kinds, v.jump)}
	for i, line := range v.lines {
		back.lines[n-1-i] = 2*t.g.lines - line
	}
	return back
}

// turned returns a list the other way round.
func turned[T any](s *shelf[T], list []T) []T {
	if list == nil {
		return nil
	}
	n := len(list)
	out := s.take(n)
	for i, x := range list {
		out[n-1-i] = x
	}
	return out
}

// keptLanes are the lanes of a table that is used again, and the same from right to left.
type keptLanes struct{ all, mirror *lanes }

// openLanes returns the lanes of an open span; done gives back what is not kept.
func (t *table) openLanes(s *store) (all *lanes, done func()) {
	if t.kept == nil {
		all = t.lanes(s, true)
		return all, func() { all.free(s) }
	}
	if t.kept.all == nil {
		t.kept.all = t.lanes(s, true)
	}
	return t.kept.all, func() {}
}

// bothLanes returns the lanes of a closed span, both ways; done gives back what is not kept.
func (t *table) bothLanes(s *store, full bool) (all, mirror *lanes, done func()) {
	if t.kept != nil && t.kept.all != nil && (t.kept.all.node != nil || !full) {
		return t.kept.all, t.kept.mirror, func() {}
	}
	all = t.lanes(s, full)
	mirror = t.reverse(all, s)
	if t.kept != nil {
		*t.kept = keptLanes{all, mirror}
		return all, mirror, func() {}
	}
	return all, mirror, func() {
		all.free(s)
		mirror.free(s)
	}
}

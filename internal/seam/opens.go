package seam

// opens reports whether an open span has a layout that breaks no must: whether lanes lead from one end to the other, with no
// regard to what they cost.
func (t *table) opens(b bounds, st *store) bool {
	g, s := t.g, t.s
	stands := func(width int64) bool { return !t.sheet(width).isNever() }
	if whole := s.R - s.L; whole <= s.onlyReach() && b.allows(0, g.lines) && stands(whole) {
		return true
	}
	v := &ways{table: t, b: b, least: 1}
	for v.least <= g.net && t.sheets[0][v.least].isNever() {
		v.least++
	}
	v.lines, v.next = st.lines.take(g.lines), st.lines.take(g.lines+1)
	defer st.lines.give(v.lines, v.next)
	n := 0
	for i := g.first(); i < g.lines; i++ {
		if !t.seams[i].isNever() {
			v.lines[n] = i
			n++
		}
	}
	v.lines = v.lines[:n]
	v.next[n], v.from, v.whole = n, n, n-1
	for j := n - 1; j >= 0; j-- {
		a := v.lines[j]
		v.next[j] = v.next[j+1]
		last := s.R - g.at(a)
		if last <= s.lastReach() && stands(last) && b.allows(a, g.lines) || v.goesOn(a) {
			v.next[j] = j
		}
	}
	if s.LeftSeam {
		return v.goesOn(0)
	}
	for j := v.next[0]; j < n && v.lines[j] <= g.firstReach(); j = v.next[j+1] {
		if i := v.lines[j]; b.allows(0, i) && stands(g.at(i)-g.at(0)) {
			return true
		}
	}
	return false
}

// ways are the lanes of an open span from which a row of sheets leads to its right end, found from right to left.
type ways struct {
	*table
	b     bounds
	lines []int
	next  []int // the first lane at or right of each from which a way leads on
	least int   // steps that an inner sheet takes at least
	from  int   // the first lane that is so far from the line at hand
	whole int   // the last lane that a whole sheet reaches
}

// goesOn reports whether an inner sheet leads from a line to a lane from which a way leads on.
func (v *ways) goesOn(a int) bool {
	n, net := len(v.lines), v.g.net
	if v.least > net {
		return false
	}
	for v.from > 0 && v.lines[v.from-1] >= a+v.least {
		v.from--
	}
	for v.whole >= 0 && v.lines[v.whole] > a+net {
		v.whole--
	}
	if j := v.next[v.from]; j < n && v.lines[j] <= min(a+net, v.b.limit(a)) {
		return true
	}
	j := v.whole
	return j >= 0 && v.lines[j] == a+net && v.next[j] == j && v.b.whole(a, a+net)
}

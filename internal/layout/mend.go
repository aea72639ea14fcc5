package layout

import (
	"cmp"
	"slices"
	"strings"

	"flitchlay/internal/seam"
)

// proposal is a change that frees a conflict: with it made in the room all else that is asked can be met there, which is
// found by putting the questions of the changed room.
type proposal struct {
	change
	words string
	left  int // other conflicts that remain
}

// most of a kind that is proposed of one conflict.
var mostOfKind = map[changeKind]int{keepShorter: 2, openingMoved: 2, ruleLess: 4, bendLeft: 2, sheetWider: 1}

// proposals lists what would free a conflict, what asks least of others first.
func (k *clash) proposals(c *conflict) []proposal {
	if k.tries.left <= 0 {
		return nil
	}
	m := &mender{clash: k, c: c, near: map[demandKey]bool{}}
	for _, d := range c.spot.all {
		if m.isNear(d) {
			m.asked = append(m.asked, d)
			m.near[d.demandKey] = true
		}
	}
	for i := range k.list {
		if x := &k.list[i]; x != c && x.spot == c.spot && !slices.ContainsFunc(x.demands, func(d demand) bool { return !m.near[d.demandKey] }) {
			m.others = append(m.others, *x)
		}
	}
	for _, d := range c.demands {
		switch d.kind {
		case keepDemand:
			m.shorten(d)
		case openingDemand:
			m.move(d)
			m.unwrap(d)
		case cornerDemand:
			m.cut(d)
		}
	}
	m.lower()
	m.widen()
	slices.SortStableFunc(m.found, func(a, b proposal) int {
		return cmp.Or(cmp.Compare(a.kind, b.kind), cmp.Compare(a.amount, b.amount))
	})
	count := map[changeKind]int{}
	return slices.DeleteFunc(m.found, func(p proposal) bool {
		count[p.kind]++
		return count[p.kind] > mostOfKind[p.kind]
	})
}

// mender looks for what frees one conflict.
type mender struct {
	*clash
	c      *conflict
	asked  []demand // all that is asked about the place
	near   map[demandKey]bool
	others []conflict // about the place
	found  []proposal
}

// isNear reports whether a demand stands so near to the conflict that a change of this could press on it.
func (m *mender) isNear(d demand) bool {
	line := m.c.spot.q.line
	from, to := m.c.stretch()
	reach := 4 * m.room.Veneer.GrossWidth
	from, to = from-reach, to+reach
	return d.kind == leastDemand || line.Closed && to-from >= line.Length || line.DistanceTo(d.from, from, to) == 0 ||
		line.DistanceTo(d.to, from, to) == 0 || d.from < from && d.to > to
}

// mostSets is how many ways of leaving something of the other conflicts about the place are tried of one change, before what
// passes is looked at for all conflicts that it leaves.
const mostSets = 16

// does reports whether the span would do with a change, but for some other conflicts: whatever is left out of these, the rest
// about the place is met.
func (m *mender) does(do func(*seam.Span), but []conflict) bool {
	s := m.c.spot.q.Span
	do(&s)
	if !m.ask(&s, m.c.demands) {
		return false
	}
	h, ok, count := hitting{vary: but}, true, 0
	h.each(func(left map[demandKey]bool) bool {
		count++
		m.tries.rest = without(m.tries.rest, m.asked, left)
		ok = m.ask(&s, m.tries.rest)
		return ok && count < mostSets
	})
	return ok
}

// ask puts one question of a changed span.
func (m *mender) ask(s *seam.Span, asked []demand) bool {
	m.tries.left -= 8 + len(asked)
	return m.tries.left > 0 && m.tries.scratch.stands(s, asked)
}

// still lists which of some conflicts remain in the span with a change.
func (m *mender) still(do func(*seam.Span), list []conflict) []conflict {
	s := m.c.spot.q.Span
	do(&s)
	var out []conflict
	for _, x := range list {
		if !m.ask(&s, x.demands) {
			out = append(out, x)
		}
	}
	return out
}

// propose keeps a change that frees the conflict in the room as a whole and makes no other.
func (m *mender) propose(c change) bool {
	b, ok := m.altered(c)
	if !ok {
		return false
	}
	spots := b.spots()
	p := proposal{change: c, words: strings.Join(m.differences(b.room), "; ")}
	if m.tries.remains(m.c, spots) {
		return false
	}
	left := m.leaves(p, spots)
	if p.left = len(left); m.makesNew(left) || !m.tries.meets(spots, hits(left)) {
		return false
	}
	m.found = append(m.found, p)
	return true
}

// leaves lists the conflicts of the changed room: of all its spans where a rule is changed, else those about the place and the
// others as they were.
func (m *mender) leaves(p proposal, spots []spot) []conflict {
	if p.on == nil {
		if known, ok := m.byRule[p.words]; ok {
			return known
		}
	}
	var left []conflict
	for i := range spots {
		sp := &spots[i]
		if p.on != nil {
			sp = &spot{q: sp.q}
			for _, d := range spots[i].all {
				if m.near[d.demandKey] {
					sp.all = append(sp.all, d)
				}
			}
		}
		found, _ := m.tries.conflicts(sp)
		left = append(left, found...)
	}
	if p.on == nil {
		m.byRule[p.words] = left
		return left
	}
	for i := range m.list {
		if x := &m.list[i]; x != m.c && !m.isAbout(x) {
			left = append(left, *x)
		}
	}
	return left
}

// isAbout reports whether all of a conflict stands about the place.
func (m *mender) isAbout(x *conflict) bool {
	return x.spot == m.c.spot && !slices.ContainsFunc(x.demands, func(d demand) bool { return !m.near[d.demandKey] })
}

// makesNew reports whether a conflict is among some that was not there before: every other one remains as it was or with
// more in it, and in none is all of the one that is to be freed.
func (m *mender) makesNew(left []conflict) bool {
	return slices.ContainsFunc(left, func(x conflict) bool {
		known := slices.ContainsFunc(m.list, func(old conflict) bool { return !old.same(m.c) && x.covers(&old) })
		return !known || x.covers(m.c)
	})
}

// covers reports whether all demands of another conflict are in this one.
func (c *conflict) covers(x *conflict) bool {
	return !slices.ContainsFunc(x.demands, func(d demand) bool { return !c.holds(d.demandKey) })
}

// hits is one demand of each of some conflicts.
func hits(list []conflict) map[demandKey]bool {
	out := map[demandKey]bool{}
	for _, x := range list {
		if !slices.ContainsFunc(x.demands, func(d demand) bool { return out[d.demandKey] }) {
			out[x.demands[0].demandKey] = true
		}
	}
	return out
}

// least proposes the least of a change that is the better the more of it is made, up to most steps. What frees the conflict
// can free others with it, and then all that is asked by them has to be met together: so it is looked for again without them.
func (m *mender) least(most int64, with func(n int64) change) bool {
	but := m.others
	for {
		n := first(most, func(n int64) bool { return m.does(with(n).span, but) })
		if n == 0 {
			return false
		}
		if m.propose(with(n)) {
			return true
		}
		still := m.still(with(n).span, but)
		if len(still) == len(but) {
			return false
		}
		but = still
	}
}

// first finds the least n from 1 to most that does, where all greater ones do too; 0 where none does.
func first(most int64, does func(n int64) bool) int64 {
	if most < 1 || !does(most) {
		return 0
	}
	low, high := int64(0), most
	for high-low > 1 {
		if mid := (low + high) / 2; does(mid) {
			high = mid
		} else {
			low = mid
		}
	}
	return high
}

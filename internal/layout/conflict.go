package layout

import (
	"cmp"
	"slices"
)

// conflict is a set of demands of one span that cannot all be met, and from which none can be left out.
type conflict struct {
	spot    *spot
	demands []demand // in the order in which they stand
}

// spot is a span that is still to be laid out, with all that is asked of it.
type spot struct {
	q     *question
	all   []demand
	named map[demandKey]int
}

// of finds a demand by its key.
func (s *spot) of(key demandKey) (demand, bool) {
	if s.named == nil {
		s.named = map[demandKey]int{}
		for i, d := range s.all {
			s.named[d.demandKey] = i
		}
	}
	i, ok := s.named[key]
	if !ok {
		return demand{}, false
	}
	return s.all[i], true
}

// spots lists the spans still to be laid out.
func (b *builder) spots() []spot {
	var out []spot
	for _, asked := range b.asked {
		for _, q := range asked {
			if !q.done {
				out = append(out, spot{q: q, all: b.demands(q)})
			}
		}
	}
	return out
}

// trials bounds a search: what it takes is counted, never timed, so that the same room gets the same answer.
type trials struct {
	left int
	rest []demand // used again by each question
	scratch
}

// stands asks one question, and says that all is well when there are no more to ask.
func (t *trials) stands(sp *spot, asked []demand) bool {
	if t.left <= 0 {
		return true
	}
	t.left -= 8 + len(asked)
	return t.scratch.stands(&sp.q.Span, asked)
}

// without copies the demands that are not left out over what a slice held.
func without(to, all []demand, left map[demandKey]bool) []demand {
	to = to[:0]
	for _, d := range all {
		if !left[d.demandKey] {
			to = append(to, d)
		}
	}
	return to
}

// holds reports whether a conflict has a demand.
func (c *conflict) holds(key demandKey) bool {
	return slices.ContainsFunc(c.demands, func(d demand) bool { return d.demandKey == key })
}

// same reports whether two conflicts have the same demands.
func (c *conflict) same(x *conflict) bool {
	return len(c.demands) == len(x.demands) && !slices.ContainsFunc(x.demands, func(d demand) bool { return !c.holds(d.demandKey) })
}

// mostHittings is how many ways of leaving something of every known conflict are tried to see whether others stand behind them.
const mostHittings = 200

// conflicts lists the conflicts of a span in order of s. Behind those that are found others can be hidden: so what hits all
// of them is left out, in one way after the other, and what then still collides holds another. It says false where
// there were more ways than it tries.
func (t *trials) conflicts(sp *spot) ([]conflict, bool) {
	if t.stands(sp, sp.all) {
		return nil, t.left > 0
	}
	var out []conflict
	add := func(found []conflict) (more bool) {
		for _, c := range found {
			if !slices.ContainsFunc(out, func(x conflict) bool { return x.same(&c) }) {
				out, more = append(out, c), true
			}
		}
		return more
	}
	add(t.minimal(sp, sp.all))
	whole := false
	var rest []demand
	for more := true; more && t.left > 0; {
		more, whole = false, true
		for _, h := range hittings(out) {
			tried := 0
			h.each(func(left map[demandKey]bool) bool {
				tried++
				rest = without(rest, sp.all, left)
				if t.left > 0 && !t.stands(sp, rest) {
					more = add(t.minimal(sp, rest))
				}
				return !more && tried < mostHittings
			})
			if whole = whole && h.all && tried < mostHittings; more || t.left <= 0 {
				break
			}
		}
	}
	slices.SortStableFunc(out, func(a, b conflict) int {
		x, _ := a.stretch()
		y, _ := b.stretch()
		return cmp.Compare(x, y)
	})
	return out, whole
}

// minimal finds conflicts among demands in order of s: one in every row of neighbours that collide, where fewer of them do
// not. With the least width asked and without it, for the two make different conflicts.
func (t *trials) minimal(sp *spot, asked []demand) []conflict {
	var base []demand
	list := asked
	if len(asked) > 0 && asked[0].kind == leastDemand {
		base, list = asked[:1], asked[1:]
	}
	var out []conflict
	if len(base) > 0 {
		if !t.stands(sp, base) {
			out = append(out, conflict{sp, base})
		} else {
			out = t.rows(sp, list, base)
		}
	}
	return append(out, t.rows(sp, list, nil)...)
}

// rows goes along the demands with both ends of a row, each of which only ever moves on; in a closed run over its beginning.
func (t *trials) rows(sp *spot, list, base []demand) []conflict {
	var out []conflict
	n := len(list)
	var part []demand
	row := func(i, j int) []demand {
		part = append(part[:0], base...)
		for k := i; k < j; k++ {
			part = append(part, list[k%n])
		}
		return part
	}
	for i, j := 0, 0; i < n; i++ {
		end := n
		if sp.q.line.Closed {
			end = i + n
		}
		for j = max(j, i); j < end && t.stands(sp, row(i, j)); j++ {
		}
		if t.stands(sp, row(i, j)) {
			break
		}
		if !t.stands(sp, row(i+1, j)) {
			continue
		}
		if c := (conflict{sp, t.shrink(sp, slices.Clone(row(i, j)))}); t.left > 0 {
			out = append(out, c)
		}
	}
	return out
}

// shrink leaves out what can be left out, by ever smaller parts, while the rest still collides.
func (t *trials) shrink(sp *spot, kept []demand) []demand {
	for size := (len(kept) + 1) / 2; size >= 1; size /= 2 {
		for at := 0; at < len(kept); {
			less := slices.Delete(slices.Clone(kept), at, min(at+size, len(kept)))
			if t.stands(sp, less) {
				at += size
				continue
			}
			kept = less
		}
	}
	return inOrder(sp.q.line, kept)
}

package layout

import "slices"

// joint finds one set of changes that frees all conflicts, from which none can be left out, and words it. Solved again with
// all of them made, the room breaks no must.
func (k *clash) joint(all [][]proposal) []string {
	list, ok := k.together(all)
	if !ok {
		list, ok = k.oneByOne()
	}
	if !ok {
		return nil
	}
	for i := 0; i < len(list) && len(list) > 1; {
		less := slices.Delete(slices.Clone(list), i, i+1)
		if k.free(less) {
			list = less
			continue
		}
		i++
	}
	b, ok := k.altered(list...)
	if !ok {
		return nil
	}
	return k.differences(b.room)
}

// free reports whether with some changes made all that is asked of the room can be met.
func (k *clash) free(list []change) bool {
	b, ok := k.altered(list...)
	return ok && k.tries.meets(b.spots(), nil)
}

// best is the proposal that leaves the fewest conflicts, of those that leave as many the first.
func best(list []proposal) (change, bool) {
	if len(list) == 0 {
		return change{}, false
	}
	at := 0
	for i, p := range list {
		if p.left < list[at].left {
			at = i
		}
	}
	return list[at].change, true
}

// together takes of each conflict that is not free yet the best that is proposed of it.
func (k *clash) together(all [][]proposal) ([]change, bool) {
	for _, proposed := range all {
		for _, p := range proposed {
			if p.left == 0 && k.free([]change{p.change}) {
				return []change{p.change}, true
			}
		}
	}
	var list []change
	spots := k.spots
	for i := range k.list {
		if !k.tries.remains(&k.list[i], spots) {
			continue
		}
		c, ok := best(all[i])
		if !ok {
			return nil, false
		}
		list = append(list, c)
		b, ok := k.altered(list...)
		if !ok {
			return nil, false
		}
		spots = b.spots()
	}
	return list, k.free(list)
}

// oneByOne frees one conflict after the other, each in the room as the changes before have made it.
func (k *clash) oneByOne() ([]change, bool) {
	var list []change
	now := k
	for range 2*len(k.list) + 4 {
		if len(now.list) == 0 {
			return list, now.whole && k.free(list)
		}
		c, ok := best(now.proposals(&now.list[0]))
		if !ok {
			return nil, false
		}
		list = append(list, c)
		b, ok := k.altered(list...)
		if !ok {
			return nil, false
		}
		now = newClash(b, k.tries)
	}
	return nil, false
}

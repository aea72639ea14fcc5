package layout

import "slices"

// hitting is a group of conflicts of which one demand each is left out in every way, while of all others one is in one way.
type hitting struct {
	vary []conflict
	left []demandKey // of the others
	all  bool        // there are no others
}

// hittings groups conflicts: all of them where they are few, else those that share demands.
func hittings(list []conflict) []hitting {
	ways := 1
	for _, c := range list {
		ways = min(ways*len(c.demands), mostHittings)
	}
	if ways < mostHittings {
		return []hitting{{vary: list, all: true}}
	}
	group := make([]int, len(list))
	holder := map[demandKey]int{}
	for i, c := range list {
		group[i] = i
		for _, d := range c.demands {
			if j, ok := holder[d.demandKey]; ok && d.kind != leastDemand {
				was := group[i]
				for k := range group[:i+1] {
					if group[k] == was {
						group[k] = group[j]
					}
				}
			}
			holder[d.demandKey] = i
		}
	}
	var out []hitting
	for g := range list {
		var h hitting
		for i, c := range list {
			if group[i] == g {
				h.vary = append(h.vary, c)
			} else {
				h.left = append(h.left, c.demands[0].demandKey)
			}
		}
		if len(h.vary) > 0 {
			out = append(out, h)
		}
	}
	return out
}

// each calls do with every set of keys that hits all, until it says false.
func (h *hitting) each(do func(map[demandKey]bool) bool) {
	have := map[demandKey]bool{}
	for _, key := range h.left {
		have[key] = true
	}
	var pick func(k int) bool
	pick = func(k int) bool {
		for k < len(h.vary) && slices.ContainsFunc(h.vary[k].demands, func(d demand) bool { return have[d.demandKey] }) {
			k++
		}
		if k == len(h.vary) {
			return do(have)
		}
		for _, d := range h.vary[k].demands {
			have[d.demandKey] = true
			goOn := pick(k + 1)
			delete(have, d.demandKey)
			if !goOn {
				return false
			}
		}
		return true
	}
	pick(0)
}

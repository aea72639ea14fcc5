package seam

import "slices"

// group is a stretch of closing places with a lower bound for each, and the lanes that matter.
//
// A bound is loose by what the way round gains where it ends at another place than it began at. pull is taken off what
// the way costs that ends at a place and put on what begins there: it changes nothing for a way that closes, and set to
// what ending there costs more than ending at the best place, it leaves next to nothing to gain.
type group struct {
	places []int
	least  []cost
	pull   []cost
	top    cost // the greatest pull of the sweep that gave the bounds
	v      *lanes
}

// halve parts a group in the middle of its stretch.
func (g *group) halve() []*group {
	switch len(g.places) {
	case 0:
		return nil
	case 1:
		return []*group{g}
	}
	n := search(g.places, (g.places[0]+g.places[len(g.places)-1]+1)/2)
	return []*group{
		{places: slices.Clone(g.places[:n]), least: slices.Clone(g.least[:n]), pull: slices.Clone(g.pull[:n])},
		{places: slices.Clone(g.places[n:]), least: slices.Clone(g.least[n:]), pull: slices.Clone(g.pull[n:])},
	}
}

// drop takes a place out of a group.
func (g *group) drop(at int) {
	g.places = slices.Delete(g.places, at, at+1)
	g.least = slices.Delete(g.least, at, at+1)
	g.pull = slices.Delete(g.pull, at, at+1)
}

// wide returns how far the places of a group lie apart.
func (g *group) wide() int { return g.places[len(g.places)-1] - g.places[0] }

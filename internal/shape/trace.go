package shape

import (
	"cmp"
	"slices"
)

// edge is a directed edge of a piece, the piece on its left.
type edge struct{ from, to Point }

// piece gathers the edges of one piece.
type piece struct {
	edges []edge
	open  []begun
}

// begun is a bottom or a top whose right end is still to come.
type begun struct {
	on   line
	top  bool
	from Point
}

// start begins a bottom or a top at a slab's left side, where the line has a whole point there.
func (p *piece) start(x L, on line, top bool) {
	if m := on.markAt(x); !m.between {
		p.open = append(p.open, begun{on, top, Point{x, m.z}})
	}
}

// end ends a bottom or a top at a slab's right side, where the line has a whole point there.
func (p *piece) end(x L, on line, top bool) {
	m := on.markAt(x)
	if m.between {
		return
	}
	i := slices.IndexFunc(p.open, func(b begun) bool { return b.on == on && b.top == top })
	if i < 0 {
		panic("shape: an edge starts inside a slope")
	}
	from, to := p.open[i].from, Point{x, m.z}
	p.open = slices.Delete(p.open, i, i+1)
	if top {
		from, to = to, from
	}
	p.edges = append(p.edges, edge{from, to})
}

// trace joins edges to outlines and holes.
func trace(edges []edge) []Polygon {
	leaving := map[Point][]int{}
	for i, e := range edges {
		leaving[e.from] = append(leaving[e.from], i)
	}
	used := make([]bool, len(edges))
	var polygons []Polygon
	var loose []Outline // holes that touch no outline
	for i := range edges {
		if used[i] {
			continue
		}
		var outlines, holes []Outline
		for _, loop := range simple(walkRound(edges, leaving, used, i)) {
			switch loop = loop.plain(); {
			case loop.Twice() > 0:
				outlines = append(outlines, loop.fromLowest())
			case loop.Twice() < 0:
				holes = append(holes, loop.fromLowest())
			}
		}
		switch len(outlines) {
		case 0:
			loose = append(loose, holes...)
		case 1:
			polygons = append(polygons, Polygon{outlines[0], holes})
		default:
			panic("shape: a walk round a piece makes two outlines")
		}
	}
	for _, hole := range loose {
		i := home(polygons, hole)
		polygons[i].Holes = append(polygons[i].Holes, hole)
	}
	for _, p := range polygons {
		slices.SortFunc(p.Holes, func(g, h Outline) int { return slices.CompareFunc(g, h, compare) })
	}
	slices.SortFunc(polygons, func(p, q Polygon) int { return slices.CompareFunc(p.Outline, q.Outline, compare) })
	return polygons
}

// walkRound follows the edges round a piece from the first one; where several leave a point it takes the sharpest
// left, and so stays round the same part of the piece.
func walkRound(edges []edge, leaving map[Point][]int, used []bool, first int) []Point {
	var points []Point
	for at := first; !used[at]; {
		used[at] = true
		e := edges[at]
		points = append(points, e.from)
		next := -1
		for _, i := range leaving[e.to] {
			if used[i] && i != first {
				continue
			}
			if next < 0 || sharper(e, edges[i], edges[next]) {
				next = i
			}
		}
		if next < 0 {
			panic("shape: the edges of a piece do not close")
		}
		at = next
	}
	return points
}

// sharper tells whether from the end of e the way f is a sharper left than g.
func sharper(e, f, g edge) bool {
	// The first met when turning clockwise from the way back.
	half := func(f edge) int {
		back := Point{e.to.X - e.from.X + e.to.X, e.to.Z - e.from.Z + e.to.Z} // straight on, the same line
		switch side := turn(e.to, back, f.to); {
		case side > 0:
			return 0
		case side < 0:
			return 2
		}
		return 1
	}
	if h, k := half(f), half(g); h != k {
		return h < k
	}
	return compareProducts(f.to.X-f.from.X, g.to.Z-g.from.Z, f.to.Z-f.from.Z, g.to.X-g.from.X) < 0
}

// simple splits a closed walk where it comes through a point twice.
func simple(points []Point) []Outline {
	var loops []Outline
	var way Outline
	at := map[Point]int{}
	for _, p := range points {
		if i, ok := at[p]; ok {
			loops = append(loops, slices.Clone(way[i:]))
			for _, q := range way[i:] {
				delete(at, q)
			}
			way = way[:i]
		}
		at[p] = len(way)
		way = append(way, p)
	}
	return append(loops, way)
}

// home is the polygon that a hole lies in: the smallest whose outline goes round it.
func home(polygons []Polygon, hole Outline) int {
	best := -1
	for i, p := range polygons {
		if !p.Outline.surrounds(hole[0]) {
			continue
		}
		if best < 0 || cmp.Less(p.Outline.Twice(), polygons[best].Outline.Twice()) {
			best = i
		}
	}
	if best < 0 {
		panic("shape: a hole lies in no piece")
	}
	return best
}

// surrounds tells whether p lies inside the outline; it never lies on it.
func (o Outline) surrounds(p Point) bool {
	inside := false
	for i, a := range o {
		b := o[(i+1)%len(o)]
		if (a.Z > p.Z) == (b.Z > p.Z) {
			continue
		}
		if a.Z > b.Z {
			a, b = b, a
		}
		if turn(a, b, p) > 0 {
			inside = !inside
		}
	}
	return inside
}

// Covers reports whether a point that lies on no edge is in the polygon and in none of its holes.
func (p Polygon) Covers(at Point) bool {
	if !p.Outline.surrounds(at) {
		return false
	}
	for _, hole := range p.Holes {
		if hole.surrounds(at) {
			return false
		}
	}
	return true
}

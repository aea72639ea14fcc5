package shape

import (
	"cmp"
	"slices"
)

// bent is a wall whose slopes go through every point where something meets them: from here on all is in whole units.
type bent struct {
	lower, upper []chain // the covering lies over all of lower and under all of upper
	left, right  L       // and between these
	holes        []Rect
}

// chain is a way from left to right, without its upright parts.
type chain []line

// slope is a straight line that is neither level nor upright.
type slope struct {
	line
	points []Point // that it is bent through: its ends first, then others as found
}

// bend rounds every point where slopes meet each other and where cuts, sides of holes and steps meet slopes, and bends
// the slopes through these points. Level and upright lines stay.
//
// This is snap rounding: a slope is bent also through every corner and every rounded point whose unit square it goes
// through, so that by rounding no line comes to lie on the other side of a point, and lines that did not cross do not
// cross now.
//
// Source: the manner of J. D. Hobby, Practical segment intersection with finite precision output, Computational
// Geometry 13 (1999) 199-214; from memory.
func bend(wall Wall, uprights, levels []L) bent {
	if len(wall.Floor) == 0 || len(wall.Ceiling) == 0 {
		return bent{}
	}
	if !slices.IsSorted(uprights) || !slices.IsSorted(levels) {
		panic("shape: cuts do not ascend")
	}
	low, high := slices.MinFunc(wall.Floor, byHeight).Z, slices.MaxFunc(wall.Ceiling, byHeight).Z
	if low >= high {
		return bent{}
	}

	var b bender
	left, right := b.edge(wall.Left, low, high), b.edge(wall.Right, low, high)
	from := min(wall.Floor[0].X, wall.Ceiling[0].X, left.from()) - 1
	to := max(last(wall.Floor).X, last(wall.Ceiling).X, right.to()) + 1
	floor, ceiling := b.profile(wall.Floor, from, to), b.profile(wall.Ceiling, from, to)
	result := bent{left: left.from(), right: right.to(), holes: b.rects(wall.Holes)}
	b.meetSlopes()
	b.meetHoles(result.holes)
	b.meetCuts(uprights, levels)
	for _, e := range []path{left, right} {
		if !e.leans() {
			b.meetCuts([]L{e.from()}, nil)
		}
	}
	b.snap()

	result.lower, result.upper = []chain{b.chain(floor)}, []chain{b.chain(ceiling)}
	result.bound(&b, left, wall.Left.Head.X > wall.Left.Foot.X)
	result.bound(&b, right, wall.Right.Head.X < wall.Right.Foot.X)
	return result
}

// bound adds an edge that leans to what bounds the covering: one that leans inward lies over it, one that leans outward
// under it.
func (w *bent) bound(b *bender, edge path, inward bool) {
	switch {
	case !edge.leans():
	case inward:
		w.upper = append(w.upper, b.chain(edge))
	default:
		w.lower = append(w.lower, b.chain(edge))
	}
}

func byHeight(p, q Point) int { return cmp.Compare(p.Z, q.Z) }

func last(points []Point) Point { return points[len(points)-1] }

// bender gathers what lies in the way of what.
type bender struct {
	slopes  []slope
	steps   []line  // upright parts of profiles
	flats   []line  // level parts of profiles
	corners []Point // of holes, profiles and edges
}

// path is a way from left to right before bending: points, and between two of them a slope or a straight part.
type path struct {
	points []Point
	slopes []int // after each point but the last: index of a slope, or -1
}

func (p path) from() L     { return p.points[0].X }
func (p path) to() L       { return last(p.points).X }
func (p path) leans() bool { return p.from() < p.to() }

// edge is the way along an upright edge from one height to another.
func (b *bender) edge(e Edge, low, high L) path {
	if e.upright() {
		return path{points: []Point{{e.Foot.X, low}, {e.Foot.X, high}}, slopes: []int{-1}}
	}
	s := line{e.Foot, e.Head}
	if s.a.X > s.b.X {
		s.a, s.b = s.b, s.a
	}
	ends := []Point{s.atZ(low), s.atZ(high)}
	slices.SortFunc(ends, func(p, q Point) int { return cmp.Compare(p.X, q.X) })
	b.corners = append(b.corners, ends...)
	b.slopes = append(b.slopes, slope{line: s, points: slices.Clone(ends)})
	return path{points: ends, slopes: []int{len(b.slopes) - 1}}
}

// rects are the holes that hold anything; their corners are in the way.
func (b *bender) rects(holes []Rect) []Rect {
	var out []Rect
	for _, h := range holes {
		if h.Left < h.Right && h.Bottom < h.Top {
			out = append(out, h)
			b.corners = append(b.corners, Point{h.Left, h.Bottom}, Point{h.Right, h.Bottom}, Point{h.Right, h.Top},
				Point{h.Left, h.Top})
		}
	}
	return out
}

// profile is the way along a floor or a ceiling, carried on level from one x to another.
func (b *bender) profile(points []Point, from, to L) path {
	ends := append([]Point{{from, points[0].Z}}, points...)
	ends = append(ends, Point{to, last(points).Z})
	way := path{points: ends}
	b.corners = append(b.corners, ends...)
	for i, p := range ends[1:] {
		s := line{ends[i], p}
		index := -1
		switch {
		case s.a.X > s.b.X:
			panic("shape: a profile runs back")
		case s.a.X == s.b.X:
			b.steps = append(b.steps, s)
		case s.a.Z == s.b.Z:
			b.flats = append(b.flats, s)
		default:
			index = len(b.slopes)
			b.slopes = append(b.slopes, slope{line: s, points: []Point{s.a, s.b}})
		}
		way.slopes = append(way.slopes, index)
	}
	return way
}

// between tells whether p lies in the box of the slope's ends.
func (s *slope) between(p Point) bool {
	a, b := s.points[0], s.points[1]
	return a.X <= p.X && p.X <= b.X && min(a.Z, b.Z) <= p.Z && p.Z <= max(a.Z, b.Z)
}

// near tells whether the boxes of two slopes touch.
func (s *slope) near(t *slope) bool {
	a, b, c, d := s.points[0], s.points[1], t.points[0], t.points[1]
	return a.X <= d.X && c.X <= b.X &&
		min(a.Z, b.Z) <= max(c.Z, d.Z) && min(c.Z, d.Z) <= max(a.Z, b.Z)
}

// upright bends the slope through where it meets an upright line at x from low to high.
func (s *slope) upright(x, low, high L) {
	if x < s.points[0].X || x > s.points[1].X {
		return
	}
	if p := s.atX(x); low <= p.Z && p.Z <= high && s.between(p) {
		s.points = append(s.points, p)
	}
}

// level bends the slope through where it meets a level line at z from left to right.
func (s *slope) level(z, left, right L) {
	a, b := s.points[0], s.points[1]
	if z < min(a.Z, b.Z) || z > max(a.Z, b.Z) {
		return
	}
	if p := s.atZ(z); left <= p.X && p.X <= right && s.between(p) {
		s.points = append(s.points, p)
	}
}

// meetSlopes finds where slopes cross each other and where steps and flats meet them.
func (b *bender) meetSlopes() {
	for i := range b.slopes {
		s := &b.slopes[i]
		for j := range i {
			t := &b.slopes[j]
			if !s.near(t) {
				continue
			}
			if p, ok := s.meet(t.line); ok && s.between(p) && t.between(p) {
				s.points = append(s.points, p)
				t.points = append(t.points, p)
			}
		}
		for _, step := range b.steps {
			s.upright(step.a.X, min(step.a.Z, step.b.Z), max(step.a.Z, step.b.Z))
		}
		for _, flat := range b.flats {
			s.level(flat.a.Z, flat.a.X, flat.b.X)
		}
	}
}

// meetHoles finds where the sides of holes meet slopes.
func (b *bender) meetHoles(holes []Rect) {
	for i := range b.slopes {
		s := &b.slopes[i]
		for _, h := range holes {
			s.upright(h.Left, h.Bottom, h.Top)
			s.upright(h.Right, h.Bottom, h.Top)
			s.level(h.Bottom, h.Left, h.Right)
			s.level(h.Top, h.Left, h.Right)
		}
	}
}

// meetCuts finds where cuts meet slopes; cuts go on for ever.
func (b *bender) meetCuts(uprights, levels []L) {
	for i := range b.slopes {
		s := &b.slopes[i]
		low, high := s.points[0], s.points[1]
		for _, x := range uprights {
			s.upright(x, min(low.Z, high.Z), max(low.Z, high.Z))
		}
		for _, z := range levels {
			s.level(z, low.X, high.X)
		}
	}
}

// snap bends every slope through every point whose square it goes through.
func (b *bender) snap() {
	hot := slices.Clone(b.corners)
	for _, s := range b.slopes {
		hot = append(hot, s.points...)
	}
	slices.SortFunc(hot, compare)
	hot = slices.Compact(hot)
	for i := range b.slopes {
		s := &b.slopes[i]
		for _, p := range hot {
			if s.between(p) && s.passes(p) {
				s.points = append(s.points, p)
			}
		}
		falling := s.b.Z < s.a.Z
		slices.SortFunc(s.points, func(p, q Point) int {
			if falling {
				return cmp.Or(cmp.Compare(p.X, q.X), cmp.Compare(q.Z, p.Z))
			}
			return cmp.Or(cmp.Compare(p.X, q.X), cmp.Compare(p.Z, q.Z))
		})
		s.points = slices.Compact(s.points)
	}
}

// chain is the way after bending.
func (b *bender) chain(way path) chain {
	points := []Point{way.points[0]}
	for i, index := range way.slopes {
		if index >= 0 {
			points = append(points, b.slopes[index].points...)
		}
		points = append(points, way.points[i+1])
	}
	var lines chain
	for i, p := range points[1:] {
		if points[i].X < p.X {
			lines = append(lines, line{points[i], p})
		}
	}
	return lines
}

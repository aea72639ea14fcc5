package shape

import (
	"fmt"
	"math/rand/v2"
)

// randomSketch is a degenerate wall: on a grid so coarse that edges touch, overlap and cross in all ways, each grid
// step being scale units long.
func randomSketch(seed uint64, scale L) sketch {
	random := rand.New(rand.NewPCG(seed, 14))
	n := func(k int) L { return scale * L(random.IntN(k)) }
	const width, high = 12, 10
	profile := func(base L) []Point {
		points := []Point{{0, base + n(5)}}
		for x := L(0); x < width*scale; {
			x = min(width*scale, x+n(9))
			points = append(points, Point{x, base + n(5)})
		}
		if random.IntN(3) == 0 { // level
			for i := range points {
				points[i].Z = points[0].Z
			}
		}
		return points
	}
	var s sketch
	s.wall.Floor, s.wall.Ceiling = profile(0), profile(5*scale)
	if random.IntN(4) == 0 { // they may cross
		s.wall.Ceiling = profile(2 * scale)
	}
	lean := func() L { // mostly none
		if random.IntN(2) == 0 {
			return 0
		}
		return n(7) - 3*scale
	}
	s.wall.Left = Leaning(n(4)-scale, lean(), n(3), 6*scale+n(4))
	s.wall.Right = Leaning(width*scale+n(4)-2*scale, lean(), n(3), 6*scale+n(4))
	for range random.IntN(5) {
		x, z := n(width+2)-scale, n(high+2)-scale
		s.wall.Holes = append(s.wall.Holes, Rect{x, z, x + n(6), z + n(6)})
	}
	for x := n(8) - 2*scale; x < (width+2)*scale && random.IntN(8) > 0; x += n(6) {
		s.uprights = append(s.uprights, x)
	}
	if random.IntN(3) == 0 {
		for z := n(high); z < high*scale; z += scale + n(6) {
			s.levels = append(s.levels, z)
		}
	}
	return s
}

// shallowSketch is a wall of nearly parallel lines: long, low, and often with edges that lean more than they rise. Here
// rounding moves lines by more than they are apart.
func shallowSketch(seed uint64) sketch {
	random := rand.New(rand.NewPCG(seed, 15))
	width, high := []int{20, 60, 300, 5000}[random.IntN(4)], []int{2, 4, 20, 5000}[random.IntN(4)]
	x := func() L { return L(random.IntN(width)) }
	z := func() L { return L(random.IntN(high)) }
	profile := func(base L) []Point {
		points := []Point{{0, base + z()}}
		for at := L(0); at < L(width); {
			at = min(L(width), at+x()/2+L(random.IntN(2)))
			points = append(points, Point{at, base + z()})
		}
		return points
	}
	lean := func() L { return L(random.IntN(9) - 4) }
	if random.IntN(3) == 0 {
		lean = func() L { return x() - L(width/2) }
	}
	var s sketch
	s.wall = Wall{Floor: profile(0), Ceiling: profile(z())}
	s.wall.Left = Leaning(x()/4, lean(), z()/2, L(high)/2+1+z())
	s.wall.Right = Leaning(L(width)-x()/4, lean(), z()/2, L(high)/2+1+z())
	for range random.IntN(6) {
		left, bottom := x(), z()
		s.wall.Holes = append(s.wall.Holes, Rect{left, bottom, left + x()/2, bottom + z()/2 + 1})
	}
	for at := x()/2 - 5; at < L(width); at += x()/2 + 1 {
		s.uprights = append(s.uprights, at)
	}
	for at := z(); at < L(2*high) && random.IntN(2) == 0; at += z() + 1 {
		s.levels = append(s.levels, at)
	}
	return s
}

func (s sketch) String() string {
	w := s.wall
	return fmt.Sprintf("floor %v ceiling %v left %v right %v holes %v uprights %v levels %v", w.Floor, w.Ceiling, w.Left,
		w.Right, w.Holes, s.uprights, s.levels)
}

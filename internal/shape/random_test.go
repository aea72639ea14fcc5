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
	s.wall.Left = Leaning(0, n(7)-3*scale, n(3), 6*scale+n(4))
	s.wall.Right = Leaning(width*scale, n(7)-3*scale, n(3), 6*scale+n(4))
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

func (s sketch) String() string {
	w := s.wall
	return fmt.Sprintf("floor %v ceiling %v left %v right %v holes %v uprights %v levels %v", w.Floor, w.Ceiling, w.Left,
		w.Right, w.Holes, s.uprights, s.levels)
}

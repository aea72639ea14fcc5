package scene

import (
	"math"
	"slices"
)

// apart returns how far a convex shape is from a polygon; negative where they overlap, by no more than they do.
func apart(convex, polygon []Point) float64 {
	if sunk := depth(convex, polygon); sunk > 0 {
		return -sunk
	}
	d := math.Inf(1)
	for i, a := range convex {
		b := convex[(i+1)%len(convex)]
		for j, c := range polygon {
			d = min(d, between(a, b, c, polygon[(j+1)%len(polygon)]))
		}
	}
	return d
}

// depth returns how deep a convex shape and a polygon overlap, 0 where they do not: the least move along a side's normal that would part them. For a
// polygon with inward corners it is how far the nearest of its edges reaches in, or the whole shape's size where it lies inside.
func depth(convex, polygon []Point) float64 {
	if bulging(polygon) {
		return min(sunk(convex, polygon), sunk(polygon, convex))
	}
	worst := 0.0
	for j, c := range polygon {
		d := polygon[(j+1)%len(polygon)]
		if r := reach(convex, c, d); r < 0 {
			worst = max(worst, -r)
		}
	}
	if worst == 0 && within(convex[0], polygon) {
		b := Around(convex...)
		return min(b.W(), b.H())
	}
	return worst
}

// sunk returns the least overlap of two convex shapes along the normals of the first one's sides.
func sunk(a, b []Point) float64 {
	least := math.Inf(1)
	for i, p := range a {
		q := a[(i+1)%len(a)]
		nx, ny := q.Y-p.Y, p.X-q.X
		l := math.Hypot(nx, ny)
		if l == 0 {
			continue
		}
		amin, amax := span(a, nx/l, ny/l)
		bmin, bmax := span(b, nx/l, ny/l)
		least = min(least, min(amax, bmax)-max(amin, bmin))
	}
	return max(least, 0)
}

func span(points []Point, nx, ny float64) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, p := range points {
		v := p.X*nx + p.Y*ny
		lo, hi = min(lo, v), max(hi, v)
	}
	return lo, hi
}

// bulging says whether a polygon has no inward corner.
func bulging(p []Point) bool {
	sign := 0.0
	for i := range p {
		a, b, c := p[i], p[(i+1)%len(p)], p[(i+2)%len(p)]
		cross := (b.X-a.X)*(c.Y-b.Y) - (b.Y-a.Y)*(c.X-b.X)
		if math.Abs(cross) < 1e-12 {
			continue
		}
		if sign != 0 && sign*cross < 0 {
			return false
		}
		sign = cross
	}
	return true
}

// reach returns how far a line is from a convex shape; negative where it runs through, by how deep it gets inside.
func reach(convex []Point, a, b Point) float64 {
	if in := inside(a, b, convex); len(in) > 0 {
		// Depth is greatest at an end or in the middle of the piece inside, near enough.
		deep := 0.0
		for _, piece := range in {
			for _, t := range []float64{0, 0.25, 0.5, 0.75, 1} {
				p := Point{piece[0].X + t*(piece[1].X-piece[0].X), piece[0].Y + t*(piece[1].Y-piece[0].Y)}
				d := math.Inf(1)
				for i, c := range convex {
					d = min(d, toLine(p, c, convex[(i+1)%len(convex)]))
				}
				deep = max(deep, d)
			}
		}
		return -deep
	}
	d := math.Inf(1)
	for i, c := range convex {
		d = min(d, between(a, b, c, convex[(i+1)%len(convex)]))
	}
	return d
}

// between returns the distance of two line segments.
func between(a, b, c, d Point) float64 {
	if crosses(a, b, c, d) {
		return 0
	}
	return min(toLine(a, c, d), toLine(b, c, d), toLine(c, a, b), toLine(d, a, b))
}

// toLine returns the distance of a point to a line segment.
func toLine(p, a, b Point) float64 {
	dx, dy := b.X-a.X, b.Y-a.Y
	t := 0.0
	if l := dx*dx + dy*dy; l > 0 {
		t = min(max(((p.X-a.X)*dx+(p.Y-a.Y)*dy)/l, 0), 1)
	}
	return math.Hypot(p.X-a.X-t*dx, p.Y-a.Y-t*dy)
}

func crosses(a, b, c, d Point) bool {
	side := func(p, q, r Point) float64 { return (q.X-p.X)*(r.Y-p.Y) - (q.Y-p.Y)*(r.X-p.X) }
	return side(a, b, c)*side(a, b, d) < 0 && side(c, d, a)*side(c, d, b) < 0
}

// inside returns the pieces of a line within any polygon, its edge not counted.
func inside(a, b Point, polygon []Point) [][2]Point {
	at := []float64{0, 1}
	for i, c := range polygon {
		d := polygon[(i+1)%len(polygon)]
		ex, ey, fx, fy := b.X-a.X, b.Y-a.Y, d.X-c.X, d.Y-c.Y
		if n := ex*fy - ey*fx; n != 0 {
			t := ((c.X-a.X)*fy - (c.Y-a.Y)*fx) / n
			if t > 0 && t < 1 {
				at = append(at, t)
			}
		}
	}
	slices.Sort(at)
	var out [][2]Point
	for i := 1; i < len(at); i++ {
		m := (at[i-1] + at[i]) / 2
		along := func(t float64) Point { return Point{a.X + t*(b.X-a.X), a.Y + t*(b.Y-a.Y)} }
		if !within(along(m), polygon) {
			continue
		}
		p, q := along(at[i-1]), along(at[i])
		if n := len(out); n > 0 && out[n-1][1] == p {
			out[n-1][1] = q
		} else {
			out = append(out, [2]Point{p, q})
		}
	}
	return out
}

// within says whether a point is inside a polygon, by counting the sides to its right.
func within(p Point, polygon []Point) bool {
	in := false
	for i, a := range polygon {
		b := polygon[(i+1)%len(polygon)]
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(p.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
			in = !in
		}
	}
	return in
}

// holds says whether a polygon holds all of a convex shape, a hair's breadth aside.
func holds(polygon, convex []Point) bool {
	for _, p := range convex {
		if !within(p, polygon) && edge(p, polygon) > slack {
			return false
		}
	}
	for i, a := range polygon {
		if reach(convex, a, polygon[(i+1)%len(polygon)]) < -slack {
			return false
		}
	}
	return true
}

// held says whether every clip holds the shape.
func held(clips [][]Point, convex []Point) bool {
	return !slices.ContainsFunc(clips, func(c []Point) bool { return !holds(c, convex) })
}

// edge returns the distance of a point to the outline of a polygon.
func edge(p Point, polygon []Point) float64 {
	d := math.Inf(1)
	for i, a := range polygon {
		d = min(d, toLine(p, a, polygon[(i+1)%len(polygon)]))
	}
	return d
}

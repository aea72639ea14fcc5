package recheck

import (
	"math"

	"flitchlay/internal/room"
)

// point is a point of a wall in millimetres.
type point struct{ x, z float64 }

func mm(n int64) float64 { return float64(n) / 8000 }

// outline is the outline of a wall's covering, openings not taken out: its lower edge from left to right, its upper edge
// back. An upright edge leans from the floor to the ceiling.
func outline(w *room.Wall, st stretch) []point {
	low, high := lifted(w.Floor, w.Base, !w.Behind.Base), lifted(w.Ceiling, -w.Crown, !w.Behind.Crown)
	left, right := st.left-st.shift, st.right-st.shift
	l0, l1 := edge(w, left, int64(w.LeanLeft), 1)
	r0, r1 := edge(w, right, int64(w.LeanRight), -1)
	bottom, top := along(low, l0, l1, r0, r1), along(high, l0, l1, r0, r1)
	for i := len(top) - 1; i >= 0; i-- {
		bottom = append(bottom, top[i])
	}
	return bottom
}

func lifted(profile []room.Point, by room.L, yes bool) []point {
	if !yes {
		by = 0
	}
	out := make([]point, len(profile))
	for i, p := range profile {
		out[i] = point{mm(int64(p.X)), mm(int64(p.Z + by))}
	}
	return out
}

// edge is an upright edge: from the floor at x to the ceiling, lean further right.
func edge(w *room.Wall, x, lean int64, side int) (foot, head point) {
	z0, _ := height(w.Floor, x, side).Float64()
	z1, _ := height(w.Ceiling, x, side).Float64()
	return point{mm(x), z0 / 8000}, point{mm(x + lean), z1 / 8000}
}

// along is the part of a profile between two edges, carried on level to them.
func along(profile []point, l0, l1, r0, r1 point) []point {
	far := 1e6
	n := len(profile)
	long := append([]point{{-far, profile[0].z}}, profile...)
	long = append(long, point{far, profile[n-1].z})
	out := clip(long, false, func(p point) float64 { return off(l0, l1, p) })
	return clip(out, false, func(p point) float64 { return -off(r0, r1, p) })
}

// off is how far right of the line from foot to head a point lies.
func off(foot, head, p point) float64 {
	return p.x - (foot.x + (head.x-foot.x)*(p.z-foot.z)/(head.z-foot.z))
}

// clip keeps what of a polyline or polygon lies where side is not negative.
//
// Source: I. E. Sutherland and G. W. Hodgman, "Reentrant polygon clipping", Communications of the ACM 17 (1974).
func clip(in []point, ring bool, side func(point) float64) []point {
	var out []point
	for i, p := range in {
		b := side(p)
		if i > 0 || ring {
			q := in[(i+len(in)-1)%len(in)]
			if a := side(q); a < 0 && b > 0 || a > 0 && b < 0 {
				t := a / (a - b)
				out = append(out, point{q.x + t*(p.x-q.x), q.z + t*(p.z-q.z)})
			}
		}
		if b >= 0 {
			out = append(out, p)
		}
	}
	return out
}

// strip is the part of a ring from x to x; the ends are hairs apart from the seams where hair is not 0, so that a step of
// the ceiling on a seam counts on its own side only.
func strip(ring []point, from, to, hair float64) []point {
	out := clip(ring, true, func(p point) float64 { return p.x - from - hair })
	return clip(out, true, func(p point) float64 { return to - hair - p.x })
}

// area is the area of a ring in square millimetres, positive anticlockwise.
func area(ring []point) float64 {
	sum := 0.0
	for i, p := range ring {
		q := ring[(i+1)%len(ring)]
		sum += p.x*q.z - q.x*p.z
	}
	return sum / 2
}

// between is the part of a ring from x to x and from foot to head.
func between(ring []point, x [2]float64, foot, head float64) []point {
	out := strip(ring, x[0], x[1], 0)
	out = clip(out, true, func(p point) float64 { return p.z - foot })
	return clip(out, true, func(p point) float64 { return head - p.z })
}

// holes is the area that the openings and bare strips of a wall take out of a ring.
func holes(w *room.Wall, ring []point) float64 {
	sum := 0.0
	for i := range w.Openings {
		o := &w.Openings[i]
		foot := -1e5
		if o.SillGiven {
			foot = mm(int64(o.Sill))
		}
		sum += area(between(ring, [2]float64{mm(int64(o.FromLeft)), mm(int64(o.Right()))}, foot, mm(int64(o.Head))))
	}
	for _, b := range w.Bare {
		sum += area(strip(ring, mm(int64(b.From)), mm(int64(b.To)), 0))
	}
	return sum
}

// extent is the lowest and the highest point of a ring; low is over high where it is empty.
func extent(ring []point) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, p := range ring {
		low, high = min(low, p.z), max(high, p.z)
	}
	return low, high
}

package folio

import (
	"math"

	"flitchlay/internal/scene"
)

// Backs are the backs of the walls, so far behind their faces: mitred where two walls meet, cut square at open ends.
func (p OutlinePlan) Backs(thick float64) [][2]scene.Point {
	n := len(p.sides)
	list := make([][2]scene.Point, n)
	for i := range p.sides {
		list[i] = [2]scene.Point{p.Along(i, 0, thick), p.Along(i, 1, thick)}
	}
	for i := range p.sides {
		j := (i + 1) % n
		if j == i || far(p.sides[i][1], p.sides[j][0]) > thick {
			continue
		}
		if m, ok := meet(list[i], list[j]); ok && far(m, p.sides[i][1]) <= 3*thick {
			list[i][1], list[j][0] = m, m
		}
	}
	return list
}

// Thick is the first of some thicknesses at which no wall stands in another, 0 where there is none.
func (p OutlinePlan) Thick(wishes ...float64) float64 {
	for _, t := range wishes {
		if p.thickEnough(t) {
			return t
		}
	}
	return 0
}

// thickEnough reports whether all walls have room for a thickness: their backs run as their faces do and cross no other wall.
func (p OutlinePlan) thickEnough(t float64) bool {
	backs := p.Backs(t)
	for i, back := range backs {
		a, b := p.Ends(i)
		if (b.X-a.X)*(back[1].X-back[0].X)+(b.Y-a.Y)*(back[1].Y-back[0].Y) <= 0 {
			return false
		}
		for j := range p.sides {
			if j != i && (Parted(back, p.sides[j]) || Parted(back, backs[j])) {
				return false
			}
		}
	}
	return true
}

// Sees reports whether no wall stands between two places of the plan.
func (p OutlinePlan) Sees(a, b scene.Point) bool {
	for _, s := range p.sides {
		if Parted([2]scene.Point{a, b}, s) {
			return false
		}
	}
	return true
}

func far(a, b scene.Point) float64 { return math.Hypot(b.X-a.X, b.Y-a.Y) }

// side is over 0 where a place is at the right of the way along a line, as it is seen on the page.
func side(l [2]scene.Point, p scene.Point) float64 {
	return (l[1].X-l[0].X)*(p.Y-l[0].Y) - (l[1].Y-l[0].Y)*(p.X-l[0].X)
}

// Parted reports whether two lines cross, each with an end at either side of the other.
func Parted(a, b [2]scene.Point) bool {
	const touch = 1e-6
	x, y := side(a, b[0]), side(a, b[1])
	v, w := side(b, a[0]), side(b, a[1])
	return min(x, y) < -touch && max(x, y) > touch && min(v, w) < -touch && max(v, w) > touch
}

// meet is where two lines meet that go on both ways; none where they run alike.
func meet(a, b [2]scene.Point) (scene.Point, bool) {
	ux, uy := a[1].X-a[0].X, a[1].Y-a[0].Y
	vx, vy := b[1].X-b[0].X, b[1].Y-b[0].Y
	d := ux*vy - uy*vx
	if math.Abs(d) < 1e-6*math.Hypot(ux, uy)*math.Hypot(vx, vy) {
		return scene.Point{}, false
	}
	t := ((b[0].X-a[0].X)*vy - (b[0].Y-a[0].Y)*vx) / d
	return a[0].Add(ux*t, uy*t), true
}

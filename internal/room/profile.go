package room

import (
	"slices"
	"sort"

	"flitchlay/internal/length"
)

// At is the height of a profile at x, its ends carried on level past them; at a step the left side counts.
func At(profile []Point, x L) L {
	return at(profile, x, false)
}

// AtRight is the height of a profile at x; at a step the right side counts.
func AtRight(profile []Point, x L) L {
	return at(profile, x, true)
}

func at(profile []Point, x L, right bool) L {
	n := len(profile)
	i := sort.Search(n, func(i int) bool {
		if right {
			return profile[i].X > x
		}
		return profile[i].X >= x
	})
	// profile[i] is the first point at or past x (past x where the right side counts)
	switch {
	case i == n:
		return profile[n-1].Z
	case i == 0:
		return profile[0].Z
	case !right && profile[i].X == x:
		return profile[i].Z
	}
	a, b := profile[i-1], profile[i]
	if a.X == b.X {
		return b.Z
	}
	return length.Lerp(x, a.X, a.Z, b.X, b.Z)
}

// CoverFloor is the lower edge of the covering as a profile: floor + base, or the floor where it runs behind the base.
func (w *Wall) CoverFloor() []Point {
	if w.Behind.Base {
		return w.Floor
	}
	return lifted(w.Floor, w.Base)
}

// CoverCeiling is the upper edge of the covering as a profile: ceiling - crown, or the ceiling where it runs behind.
func (w *Wall) CoverCeiling() []Point {
	if w.Behind.Crown {
		return w.Ceiling
	}
	return lifted(w.Ceiling, -w.Crown)
}

func lifted(profile []Point, by L) []Point {
	out := make([]Point, len(profile))
	for i, p := range profile {
		out[i] = Point{p.X, p.Z + by}
	}
	return out
}

// FullHeight reports whether an opening is a full-height gap: it leaves no covering over or under it anywhere in its
// width.
func (w *Wall) FullHeight(o *Opening) bool {
	under, over := w.Leaves(o, o.FromLeft, o.Right())
	return !under && !over
}

// Leaves reports whether an opening leaves covering under it, and over it, anywhere from one place of its width to another.
func (w *Wall) Leaves(o *Opening, from, to L) (under, over bool) {
	low, high := w.CoverFloor(), w.CoverCeiling()
	take := func(bottom, top L) {
		under = under || o.SillGiven && o.Sill > bottom
		over = over || o.Head < top
	}
	for _, x := range stops(from, to, low, high) {
		if x < to {
			take(AtRight(low, x), AtRight(high, x))
		}
		if x > from {
			take(At(low, x), At(high, x))
		}
	}
	return under, over
}

// stops are the places from a to b at which one of the profiles can turn, a and b among them.
func stops(a, b L, profiles ...[]Point) []L {
	out := []L{a, b}
	for _, profile := range profiles {
		for _, p := range profile {
			if p.X > a && p.X < b {
				out = append(out, p.X)
			}
		}
	}
	slices.Sort(out)
	return out
}

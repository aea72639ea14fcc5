package room

import (
	"flitchlay/internal/length"
	"flitchlay/internal/source"
)

// profile reads a height: one figure, [left, right], or [[x, z], ...]. Without one it is 0 all along, which only a
// floor may be.
func (d *decoder) profile(v source.Value, long L, sound bool, of string) ([]Point, bool) {
	level := []Point{{0, 0}, {long, 0}}
	if !v.Given() {
		if v.Name() == "height" {
			missing(v, of)
			return level, false
		}
		return level, true
	}
	if v.Kind() != source.Array {
		z, ok := d.height(v)
		return []Point{{0, z}, {long, z}}, ok
	}
	items := v.Items()
	if len(items) > 0 && items[0].Kind() == source.Array {
		return d.points(v, items, long, sound)
	}
	if len(items) == 1 {
		v.Mistake("write "+v.Name()+" = "+items[0].Raw()+", without brackets, or [left, right]", "%s has one figure in its list", v.Name())
		return level, false
	}
	if len(items) != 2 {
		v.Mistake("write one figure, [left, right], or [[x, z], ...] from left to right", "%s has %d figures", v.Name(), len(items))
		return level, false
	}
	left, okLeft := d.height(items[0])
	right, okRight := d.height(items[1])
	return []Point{{0, left}, {long, right}}, okLeft && okRight
}

// height reads a height above the room's level.
func (d *decoder) height(v source.Value) (L, bool) {
	z, ok := d.length(v, 0)
	if ok && (z > tallest || z < -tallest) {
		v.Mistake("heights are above the floor at the first wall's left end", "%s of %s is more than 30 m away from the room's level", label(v), d.words(z))
		return z, false
	}
	return z, ok
}

// points reads [[x, z], ...].
func (d *decoder) points(v source.Value, items []source.Value, long L, sound bool) ([]Point, bool) {
	var out []Point
	ok := true
	for _, item := range items {
		pair := item.Items()
		if len(pair) != 2 {
			item.Mistake("write each point as [x, z], from left to right", "a point of %s has not two figures", v.Name())
			ok = false
			continue
		}
		x, okX := d.length(pair[0], 0)
		z, okZ := d.height(pair[1])
		if !okX || !okZ {
			ok = false
			continue
		}
		n := len(out)
		switch {
		case n == 0 && x != 0 && ok:
			pair[0].Mistake("begin with [0, z]", "the profile of %s begins at %s, not at the wall's left end", v.Name(), d.words(x))
			ok = false
		case n > 0 && x < out[n-1].X:
			pair[0].Mistake("give the points from left to right", "the profile of %s goes back from %s to %s", v.Name(), d.words(out[n-1].X), d.words(x))
			ok = false
		case n > 1 && x == out[n-1].X && x == out[n-2].X:
			pair[0].Mistake("two points at one x make a step", "the profile of %s has three points at one x", v.Name())
			ok = false
		}
		out = append(out, Point{x, z})
	}
	n := len(out)
	if !ok || !sound {
		return out, false
	}
	last := items[len(items)-1].Items()[0]
	switch {
	case n < 2:
		v.Mistake("give a point for each end of the wall", "the profile of %s has one point", v.Name())
		return out, false
	case out[n-1].X != long:
		at, whole := d.both(out[n-1].X, long)
		last.Mistake("end with the wall's length", "the profile of %s ends at %s, not at the wall's right end (%s)", v.Name(), at, whole)
		return out, false
	case out[1].X == 0 || out[n-2].X == long:
		v.Mistake("leave out the point at the end that is not on the wall", "the profile of %s has a step at the wall's end", v.Name())
		return out, false
	}
	return out, true
}

// upright checks that the floor lies under the ceiling everywhere, and that trims leave something between them.
func (d *decoder) upright(v source.Value, w *Wall) bool {
	least, at := length.Limit, L(0)
	for _, x := range stops(0, w.Length, w.Ceiling, w.Floor) {
		for _, h := range []L{At(w.Ceiling, x) - At(w.Floor, x), AtRight(w.Ceiling, x) - AtRight(w.Floor, x)} {
			if h < least {
				least, at = h, x
			}
		}
	}
	where := "at its left end"
	if at > 0 {
		where = d.words(at) + " from its left end"
	}
	if least <= 0 {
		v.Get("height").Mistake("height and floor are both above the room's level; the ceiling is the higher one",
			"the ceiling of wall %q is not above its floor %s", w.Name, where)
		return false
	}
	if least <= w.Base+w.Crown {
		v.Get("height").Mistake("give smaller trims, or a bare wall with cover = false",
			"base and crown leave nothing of wall %q %s, where it is %s high", w.Name, where, d.words(least))
		return false
	}
	return true
}

// levelLine checks that the level line crosses every covered wall.
func (d *decoder) levelLine() {
	s := &d.room.Space
	v := d.root.Get("room").Get("level_line")
	for i := range d.room.Walls {
		w := &d.room.Walls[i]
		if !w.Cover || !d.sound[i] {
			continue
		}
		low, _ := extent(w.Floor)
		_, high := extent(w.Ceiling)
		if s.LevelLine <= low || s.LevelLine >= high {
			v.Mistake("give a height at which the line can be struck on every covered wall",
				"a level line at %s does not cross wall %q, which reaches from %s to %s",
				d.words(s.LevelLine), w.Name, d.words(low), d.words(high))
			return
		}
	}
}

// ownLevelLine takes the middle of what the covered walls have in common where the usual height does not cross all.
func (d *decoder) ownLevelLine() {
	low, high := -tallest, tallest
	for i := range d.room.Walls {
		if w := &d.room.Walls[i]; w.Cover && d.sound[i] {
			l, _ := extent(w.Floor)
			_, h := extent(w.Ceiling)
			low, high = max(low, l), min(high, h)
		}
	}
	if s := &d.room.Space; s.LevelLine <= low || s.LevelLine >= high {
		s.LevelLine = low + (high - low).HalfDown()
	}
}

// extent is the lowest and the highest point of a profile.
func extent(profile []Point) (low, high L) {
	low, high = profile[0].Z, profile[0].Z
	for _, p := range profile {
		low, high = min(low, p.Z), max(high, p.Z)
	}
	return low, high
}

package room

import (
	"flitchlay/internal/length"
	"flitchlay/internal/source"
)

// readArrivals reads what was measured of walls when the crew came to them.
func (d *decoder) readArrivals(tables []source.Value) {
	seen := map[int]bool{}
	for _, v := range tables {
		x := Reading{Where: d.place(v)}
		x.Wall = d.wallNamed(v.Get("wall"), "a reading")
		if x.Wall < 0 {
			continue
		}
		w := &d.room.Walls[x.Wall]
		switch {
		case seen[x.Wall]:
			v.Get("wall").Mistake("write all that was measured of a wall into one [[reading]]", "wall %q is read twice", w.Name)
			continue
		case !w.Cover:
			v.Get("wall").Mistake("read the walls that are covered", "wall %q is bare: nothing is hung on it", w.Name)
			continue
		}
		seen[x.Wall] = true
		long := w.Length
		if l, ok := d.positive(v.Get("length"), 0, false); ok {
			x.Length, long = &l, l
		}
		d.arrivalLeans(v.Get("lean"), &x)
		x.Floor = d.fromLevel(v.Get("floor_down"), max(long, w.Length), long, -1)
		x.Ceiling = d.fromLevel(v.Get("ceiling_up"), max(long, w.Length), long, 1)
		if x.Length == nil && x.LeanLeft == nil && x.LeanRight == nil && len(x.Floor) == 0 && len(x.Ceiling) == 0 {
			d.nothingRead(v, w)
			continue
		}
		d.room.Readings = append(d.room.Readings, x)
		d.arrivals = append(d.arrivals, v)
	}
}

// nothingRead notes a reading that says nothing, where no figure of it is a mistake already.
func (d *decoder) nothingRead(v source.Value, w *Wall) {
	for _, key := range []string{"length", "lean", "floor_down", "ceiling_up"} {
		if v.Get(key).Given() {
			return
		}
	}
	v.Mistake("add length, lean, floor_down or ceiling_up, as measured", "the reading of wall %q says nothing", w.Name)
}

// arrivalLeans reads one figure (the right end) or [left, right], as a wall's own.
func (d *decoder) arrivalLeans(v source.Value, x *Reading) {
	take := func(v source.Value, to **L) {
		if l, ok := d.length(v, 0); ok {
			*to = &l
		}
	}
	two := v.Items()
	switch {
	case v.Kind() != source.Array:
		take(v, &x.LeanRight)
	case len(two) != 2:
		v.Mistake("write [left, right], or one figure for the right end", "lean has %d figures", len(two))
	default:
		take(two[0], &x.LeanLeft)
		take(two[1], &x.LeanRight)
	}
}

// fromLevel reads heights as they are measured, from the level line: one figure for the whole wall, [left, right], or
// [[x, figure], ...]. The answer is above the room's level.
func (d *decoder) fromLevel(v source.Value, most, right L, sign L) []Point {
	if !v.Given() {
		return nil
	}
	at := func(x L, v source.Value) (Point, bool) {
		z, ok := d.height(v)
		return Point{x, d.room.Space.LevelLine + sign*z}, ok
	}
	if v.Kind() != source.Array {
		p, ok := at(0, v)
		if !ok {
			return nil
		}
		return []Point{p}
	}
	items := v.Items()
	if len(items) == 2 && items[0].Kind() != source.Array {
		left, okLeft := at(0, items[0])
		end, okRight := at(right, items[1])
		if !okLeft || !okRight {
			return nil
		}
		return []Point{left, end}
	}
	var out []Point
	for _, item := range items {
		pair := item.Items()
		if len(pair) != 2 {
			item.Mistake("write one figure, [left, right], or [[x, figure], ...] from left to right", "a height of %s has not two figures", v.Name())
			return nil
		}
		x, okX := d.length(pair[0], 0)
		p, okZ := at(x, pair[1])
		switch {
		case !okX || !okZ:
			return nil
		case x < 0 || x > most:
			pair[0].Mistake("give a distance from the wall's left end", "%s is read at %s, outside the wall (%s)", v.Name(), d.words(x), d.words(most))
			return nil
		case len(out) > 0 && x <= out[len(out)-1].X:
			pair[0].Mistake("give the places from left to right, each once", "%s is read at %s after %s", v.Name(), d.words(x), d.words(out[len(out)-1].X))
			return nil
		}
		out = append(out, p)
	}
	if len(out) == 0 {
		v.Mistake("write one figure, [left, right], or [[x, figure], ...] from left to right", "%s holds no figure", v.Name())
	}
	return out
}

// arrived holds the walls as read against what can be: what stands on them, trims, the level line.
func (d *decoder) arrived() {
	now := d.room.AsRead()
	girth := L(0)
	for i := range now.Walls {
		girth += now.Walls[i].Length
	}
	for i := range d.room.Readings {
		wall := d.room.Readings[i].Wall
		v, w := d.arrivals[i], &now.Walls[wall]
		key := func(name string) source.Value {
			if at := v.Get(name); at.Given() {
				return at
			}
			return v
		}
		if girth > length.Limit {
			key("length").Mistake("measure again", "as read the walls are over 370 m long")
			return
		}
		d.arrivedOn(key("length"), now, wall)
		low, _ := extent(w.Floor)
		_, top := extent(w.Ceiling)
		high, level := lowest(w), d.room.Space.LevelLine
		switch {
		case high <= w.Base+w.Crown:
			key("ceiling_up").Mistake("floor_down and ceiling_up are both measured from the level line; a floor over it takes a minus",
				"as read base and crown leave nothing of wall %q, where it is %s high", w.Name, d.words(high))
		case w.Length+w.LeanRight-w.LeanLeft <= 0 || max(w.LeanLeft.Abs(), w.LeanRight.Abs()) > top-low:
			key("lean").Mistake("a lean is how far the upright end moves to the right from floor to ceiling", "as read the ends of wall %q lean by more than can be", w.Name)
		case level <= low || level >= top:
			key("floor_down").Mistake("read the heights from the level line of the drawings, at "+d.words(level), "as read the level line does not cross wall %q", w.Name)
		}
	}
}

// lowest is the least height of a wall between floor and ceiling.
func lowest(w *Wall) L {
	high := length.Limit
	for _, x := range stops(0, w.Length, w.Ceiling, w.Floor) {
		high = min(high, At(w.Ceiling, x)-At(w.Floor, x), AtRight(w.Ceiling, x)-AtRight(w.Floor, x))
	}
	return high
}

// arrivedOn checks that what stands on a wall still stands on it as read.
func (d *decoder) arrivedOn(v source.Value, now *Room, wall int) {
	w, end, what := &now.Walls[wall], L(0), ""
	reach := func(to L, words string) {
		if to > end {
			end, what = to, words
		}
	}
	taken := tangent(w)
	if k := now.before(wall); k >= 0 {
		taken += tangent(&now.Walls[k])
	}
	reach(taken, "its eased corners take")
	for i := range w.Openings {
		reach(w.Openings[i].Right(), w.Openings[i].Kind.Named(w.Openings[i].Name)+" reaches to")
	}
	for i := range w.Boxes {
		reach(w.Boxes[i].X, w.Boxes[i].Kind.Named(w.Boxes[i].Name)+" stands at")
	}
	for _, b := range w.Bare {
		reach(b.To, "a bare strip reaches to")
	}
	for _, k := range w.KeepClear {
		reach(k.To, "a stretch kept clear reaches to")
	}
	for _, p := range w.Pins {
		reach(p.X, "a pin stands at")
	}
	if end > w.Length {
		v.Mistake("measure again; where it stands elsewhere too, mend [[wall]] and lay out again", "as read wall %q is %s long, and %s %s",
			w.Name, d.words(w.Length), what, d.words(end))
	}
}

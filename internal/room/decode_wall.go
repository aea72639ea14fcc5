package room

import (
	"math"

	"flitchlay/internal/length"
	"flitchlay/internal/source"
)

// tallest is the greatest height above or below the room's level that is read.
const tallest = 30 * length.Metre

// walls reads all walls, then what needs more than one of them.
func (d *decoder) walls(list source.Value) {
	tables := list.Tables()
	if !list.Given() || list.Kind() == source.Array && len(list.Items()) == 0 {
		d.root.Get("wall").Mistake("add [[wall]] with its length and height", "the room has no wall")
	}
	names := map[string]bool{}
	for _, v := range tables {
		if name := v.Get("name"); name.Given() {
			if text := name.Text(""); names[text] && text != "" {
				name.Mistake("give every wall a name of its own", "a second wall is named %q", text)
			} else {
				names[text] = true
			}
		}
	}
	names[""] = true // an empty name is a mistake of its own
	number := 0
	for i, v := range tables {
		w := Wall{At: d.place(v)}
		w.Name = v.Get("name").Text("")
		if w.Name == "" {
			if v.Get("name").Kind() == source.String {
				v.Get("name").Mistake("name the wall, or leave the key out", "the wall's name is empty")
			}
			number = i + 1
			for w.Name == "" || names[w.Name] {
				w.Name = "Wall " + itoa(int64(number))
				number++
			}
			names[w.Name] = true
		}
		d.room.Walls = append(d.room.Walls, w)
	}
	d.nameAll(tables)
	d.sound = make([]bool, len(tables))
	for i, v := range tables {
		d.sound[i] = d.wall(v, i, i == len(tables)-1)
	}
	d.leans(tables)
	d.easings(tables)
	d.girth(tables)
	d.covered(tables)
	if d.root.Get("room").Get("level_line").Given() {
		d.levelLine()
	} else {
		d.ownLevelLine()
	}
}

// wall reads one wall and what stands on it. It reports whether the wall's outline is sound.
func (d *decoder) wall(v source.Value, i int, last bool) bool {
	w := &d.room.Walls[i]
	of := "wall " + quote(w.Name)
	w.Ref = v.Get("ref").Text("")
	var ok bool
	if w.Length, ok = d.required(v.Get("length"), of); ok && w.Length <= 0 {
		v.Get("length").Mistake("give a length over 0", "%s has a length of %s", of, d.words(w.Length))
		ok = false
	}
	long := ok
	var tall, low bool
	w.Ceiling, tall = d.profile(v.Get("height"), w.Length, long, of)
	w.Floor, low = d.profile(v.Get("floor"), w.Length, long, of)
	w.Base, _ = d.positive(v.Get("base"), d.room.Space.Base, true)
	w.Crown, _ = d.positive(v.Get("crown"), d.room.Space.Crown, true)
	w.Behind = d.room.Space.Behind
	if b := v.Get("behind"); b.Given() {
		w.Behind = behind(b.Word("none", behindWords...))
	}
	w.Main = v.Get("main").Bool(false)
	w.Cover = v.Get("cover").Bool(true)
	w.HiddenBelow, _ = d.positive(v.Get("hidden_below"), 0, true)
	w.LeftEnd = v.Get("left_end").Word("", endWords...)
	w.RightEnd = v.Get("right_end").Word("", endWords...)
	d.corner(v, w, last)
	d.lean(v.Get("lean"), w)
	sound := long && tall && low && d.upright(v, w)
	d.openings(v.Get("opening").Tables(), w, long, sound)
	d.boxes(v.Get("box").Tables(), w, long, sound)
	d.marks(v, w, long)
	return sound
}

func quote(s string) string { return `"` + s + `"` }

// corner reads the corner at the wall's right end.
func (d *decoder) corner(v source.Value, w *Wall, last bool) {
	end := last && !d.room.Space.Closed
	word := "inside"
	if end {
		word = "none"
	}
	word = v.Get("corner").Word(word, cornerWords...)
	for k, known := range cornerWords {
		if word == known {
			w.Corner = Bend(k)
		}
	}
	if end && w.Corner != None {
		v.Get("corner").Mistake(`leave corner out; right_end = "`+map[bool]string{true: "outside edge", false: "inside corner"}[w.Corner == Outside]+
			`" says what the covering ends against`, "no wall follows wall %q, the last of an open room", w.Name)
		defer func() { w.Corner, w.Angle, w.Radius = None, 0, 0 }()
	}
	w.Wrap = v.Get("wrap").Bool(true)
	if w.Corner == Straight && !w.Wrap {
		v.Get("wrap").Mistake(`write corner = "none" where the covering ends`, "a straight corner of wall %q has no bend to cut", w.Name)
	}
	bend := w.Corner == Inside || w.Corner == Outside
	if bend {
		w.Angle = 90
	}
	if a := v.Get("angle"); a.Given() {
		angle := a.Number(math.NaN())
		switch {
		case math.IsNaN(angle): // noted by Number
		case !bend:
			a.Mistake(`leave angle out, or write corner = "inside" or "outside"`, "corner %q of wall %q has no angle", w.Corner, w.Name)
		case angle <= 0 || angle >= 180:
			a.Mistake("a square corner turns by 90, a corner with less of a turn by less", "an angle of %s is not between 0 and 180 degrees", a.Raw())
		default:
			w.Angle = angle
		}
	}
	if r := v.Get("radius"); r.Given() {
		w.Radius, _ = d.positive(r, 0, true)
		if w.Radius > 0 && !bend {
			r.Mistake(`leave radius out, or write corner = "inside" or "outside"`, "corner %q of wall %q has no radius", w.Corner, w.Name)
			w.Radius = 0
		}
	}
}

// lean reads one figure (the right end) or [left, right].
func (d *decoder) lean(v source.Value, w *Wall) {
	if v.Kind() != source.Array {
		w.LeanRight, _ = d.length(v, 0)
		return
	}
	two := v.Items()
	if len(two) != 2 {
		v.Mistake("write [left, right], or one figure for the right end", "lean has %d figures", len(two))
		return
	}
	w.LeanLeft, w.LeanLeftGiven = d.length(two[0], 0)
	w.LeanRight, _ = d.length(two[1], 0)
}

// leans gives a left end that is not given the right lean of the wall before it, then checks that no wall leans shut.
func (d *decoder) leans(tables []source.Value) {
	walls := d.room.Walls
	for i := range walls {
		if before := d.room.before(i); !walls[i].LeanLeftGiven && before >= 0 {
			walls[i].LeanLeft = walls[before].LeanRight
		}
		w := &walls[i]
		v := tables[i].Get("lean")
		if !v.Given() {
			v = tables[i].Get("length")
		}
		if d.sound[i] && v.Name() == "lean" {
			low, _ := extent(w.Floor)
			_, high := extent(w.Ceiling)
			if steep := max(w.LeanLeft.Abs(), w.LeanRight.Abs()); steep > high-low {
				v.Mistake("a lean is how far the upright end moves to the right from floor to ceiling",
					"a lean of %s is more than wall %q is high", d.words(steep), w.Name)
				continue
			}
		}
		if w.Length > 0 && w.Length+w.LeanRight-w.LeanLeft <= 0 {
			v.Mistake("a lean is how far the upright end moves to the right from floor to ceiling",
				"the ends of wall %q lean so far that nothing is left of it at the ceiling", w.Name)
		}
	}
}

// easings checks that the tangents of eased corners fit on their walls.
func (d *decoder) easings(tables []source.Value) {
	for i := range d.room.Walls {
		w := &d.room.Walls[i]
		right, left := tangent(w), L(0)
		at := tables[i].Get("radius")
		if k := d.room.before(i); k >= 0 {
			left = tangent(&d.room.Walls[k])
			if right == 0 {
				at = tables[k].Get("radius")
			}
		}
		if w.Length > 0 && left+right > w.Length {
			taken, whole := d.both(left+right, w.Length)
			at.Mistake("an eased corner takes radius x tan(angle / 2) of the wall on each side",
				"eased corners take %s of wall %q, which is %s long", taken, w.Name, whole)
		}
	}
}

// tangent is how much of a wall its eased corner takes.
func tangent(w *Wall) L {
	if w.Radius == 0 {
		return 0
	}
	t := float64(w.Radius) * math.Tan(w.Angle*math.Pi/360)
	return L(math.Round(math.Min(t, float64(length.Limit))))
}

// girth checks that the whole room can be computed with.
func (d *decoder) girth(tables []source.Value) {
	total := L(0)
	for i := range d.room.Walls {
		before := total
		total += d.room.Walls[i].Length
		if total > length.Limit && before <= length.Limit {
			tables[i].Get("length").Mistake("draw it as several rooms", "with wall %q the walls are over 370 m long", d.room.Walls[i].Name)
		}
	}
}

// covered checks that something is covered at all.
func (d *decoder) covered(tables []source.Value) {
	for i := range d.room.Walls {
		if d.room.Walls[i].Cover {
			return
		}
	}
	if len(tables) > 0 {
		tables[0].Get("cover").Mistake("take cover = false from the walls that are covered", "all walls are bare")
	}
}

// marks reads pins, keep-clear stretches and bare strips.
func (d *decoder) marks(v source.Value, w *Wall, long bool) {
	for _, p := range v.Get("pin").Tables() {
		at := p.Get("at")
		x, ok := d.required(at, "a pin")
		if ok && long && (x < 0 || x > w.Length) {
			at.Mistake(d.stand(w), "the pin stands outside wall %q (%s)", w.Name, d.words(w.Length))
		}
		w.Pins = append(w.Pins, Pin{X: x, Put: p.Get("put").Word("seam", putWords...), Where: d.place(at)})
	}
	for _, s := range v.Get("keep_clear").Tables() {
		from, to := d.strip(s, w, long, "keep-clear stretch")
		w.KeepClear = append(w.KeepClear, KeepClear{From: from, To: to, Why: s.Get("why").Text(""), Where: d.place(s)})
	}
	for _, s := range v.Get("bare").Tables() {
		from, to := d.strip(s, w, long, "bare strip")
		w.Bare = append(w.Bare, Bare{From: from, To: to, Why: s.Get("why").Text(""), Where: d.place(s)})
	}
}

// stand says where things on a wall can stand.
func (d *decoder) stand(w *Wall) string {
	return "give a distance from the wall's left end, from 0 to " + d.words(w.Length)
}

// strip reads from and to.
func (d *decoder) strip(v source.Value, w *Wall, long bool, what string) (from, to L) {
	from, okFrom := d.required(v.Get("from"), "the "+what)
	to, okTo := d.required(v.Get("to"), "the "+what)
	if okFrom && okTo && from >= to {
		v.Get("to").Mistake("give the left end as from, the right end as to", "the %s ends at %s, not right of %s where it begins", what, d.words(to), d.words(from))
		return from, to
	}
	if okFrom && long && (from < 0 || from > w.Length) {
		v.Get("from").Mistake(d.stand(w), "the %s begins outside wall %q (%s)", what, w.Name, d.words(w.Length))
	}
	if okTo && long && (to < 0 || to > w.Length) {
		long, whole := d.both(to, w.Length)
		v.Get("to").Mistake(d.stand(w), "the %s ends at %s, outside wall %q (%s)", what, long, w.Name, whole)
	}
	return from, to
}

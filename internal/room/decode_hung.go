package room

import (
	"flitchlay/internal/source"
)

// wallNamed finds a wall by its name, -1 with a mistake where there is none.
func (d *decoder) wallNamed(v source.Value, of string) int {
	if !v.Given() {
		missing(v, of)
		return -1
	}
	name := v.Text("")
	if v.Kind() != source.String {
		return -1
	}
	var names []string
	for i := range d.room.Walls {
		if d.room.Walls[i].Name == name {
			return i
		}
		names = append(names, d.room.Walls[i].Name)
	}
	mend := "write the wall's name as it stands in its [[wall]]"
	if near := source.Nearest(name, names); near != "" {
		mend = "the nearest name is " + quote(near)
	}
	v.Mistake(mend, "no wall is named %q", name)
	return -1
}

// closeAt reads the wished closing place.
func (d *decoder) closeAt(v source.Value) {
	switch v.Kind() {
	case source.Absent:
		return
	case source.String:
		v.Word("auto", "auto")
		return
	case source.Table:
	default:
		v.Mistake(`write "auto", { wall = "South", at = "3' 2" } or { corner = "East" }`, "close_at takes a table, not %s", v.Kind())
		return
	}
	if !d.room.Space.Closed {
		v.Mistake("leave close_at out, or write closed = true", "close_at names a place in an open room, which does not close")
		return
	}
	c := &CloseAt{Wall: -1, Corner: -1, Where: d.place(v)}
	if corner := v.Get("corner"); corner.Given() {
		if v.Get("wall").Given() || v.Get("at").Given() {
			corner.Mistake("keep either corner, or wall and at", "close_at names a corner and a place")
			return
		}
		if c.Corner = d.wallNamed(corner, "close_at"); c.Corner < 0 {
			return
		}
		w := &d.room.Walls[c.Corner]
		next := &d.room.Walls[(c.Corner+1)%len(d.room.Walls)]
		switch {
		case w.Corner != Inside && w.Corner != Outside:
			corner.Mistake("name a wall with an inside or outside corner at its right end", "the corner of wall %q is %q: it cannot be cut", w.Name, w.Corner)
			return
		case !w.Cover || !next.Cover:
			corner.Mistake("name a corner between two covered walls", "the covering does not reach round the corner of wall %q", w.Name)
			return
		}
		w.Wrap = false
		d.room.Space.CloseAt = c
		return
	}
	c.Wall = d.wallNamed(v.Get("wall"), "close_at")
	at, ok := d.required(v.Get("at"), "close_at")
	if c.Wall < 0 || !ok {
		return
	}
	w := &d.room.Walls[c.Wall]
	switch {
	case !w.Cover:
		v.Get("wall").Mistake("name a covered wall", "wall %q is bare: nothing closes on it", w.Name)
	case w.Length > 0 && (at < 0 || at > w.Length):
		v.Get("at").Mistake(d.stand(w), "the closing place stands outside wall %q (%s)", w.Name, d.words(w.Length))
	}
	c.At = at
	d.room.Space.CloseAt = c
}

// hung reads the sheets that are on the wall already.
func (d *decoder) hung(tables []source.Value) {
	flitch, last := 0, 0
	for i, v := range tables {
		h := Hung{Flitch: -1, Where: d.place(v)}
		h.Wall = d.wallNamed(v.Get("wall"), "a hung sheet")
		var okSeam bool
		h.Seam, h.Top, okSeam = d.readings(v.Get("seam"))
		if from := v.Get("from"); from.Given() {
			if l, ok := d.length(from, 0); ok {
				h.From = &l
			}
		}
		if h.Wall >= 0 && okSeam {
			d.hungPlace(v, h)
		}
		if i > 0 {
			d.hungOrder(v, d.room.Hung[i-1], h, okSeam)
		} else {
			d.hungFirst(v, h, okSeam)
		}
		if sheet := v.Get("sheet"); !sheet.Given() {
			missing(sheet, "a hung sheet")
		} else if h.Sheet = int(max(-1, min(sheet.Whole(0), highestSheet+1))); sheet.Kind() == source.Integer {
			flitch, last = d.hungNumber(sheet, &h, i, flitch, last)
		}
		d.room.Hung = append(d.room.Hung, h)
	}
}

// readings reads one figure, or [bottom, top].
func (d *decoder) readings(v source.Value) (bottom, top L, ok bool) {
	if v.Kind() != source.Array {
		bottom, ok = d.required(v, "a hung sheet")
		return bottom, bottom, ok
	}
	two := v.Items()
	if len(two) != 2 {
		v.Mistake("write one figure, or [bottom, top]", "seam has %d figures", len(two))
		return 0, 0, false
	}
	bottom, okBottom := d.length(two[0], 0)
	top, okTop := d.length(two[1], 0)
	return bottom, top, okBottom && okTop
}

// hungPlace checks that a hung seam stands on its wall.
func (d *decoder) hungPlace(v source.Value, h Hung) {
	w := &d.room.Walls[h.Wall]
	seam := v.Get("seam")
	switch {
	case !w.Cover:
		v.Get("wall").Mistake("name the wall on which the sheet hangs", "wall %q is bare: no sheet hangs on it", w.Name)
	case w.Length > 0 && (h.Seam < 0 || h.Seam > w.Length):
		seam.Mistake(d.stand(w), "the hung seam stands outside wall %q (%s)", w.Name, d.words(w.Length))
	case h.From != nil && *h.From >= h.Seam:
		v.Get("from").Mistake("from is the sheet's left edge, seam its right", "the hung sheet begins at %s, not left of its seam at %s",
			d.words(*h.From), d.words(h.Seam))
	case h.From != nil && d.room.Veneer.GrossWidth > 0 && h.Seam-*h.From > d.room.Veneer.GrossWidth:
		v.Get("seam").Mistake("a seam stands for one sheet: name every hung sheet from the run's first", "from %s to %s is wider than a sheet (%s)",
			d.words(*h.From), d.words(h.Seam), d.words(d.room.Veneer.GrossWidth))
	}
}

// hungFirst checks the first hung sheet: it needs its left edge where the covering goes round, else it begins at the
// left end of its run.
func (d *decoder) hungFirst(v source.Value, h Hung, okSeam bool) {
	if d.closedSpan() {
		if !v.Get("from").Given() {
			v.Get("from").Mistake("add from: the left edge of the first hung sheet, from the wall's left end",
				"in a closed run the first hung sheet needs its left edge")
		}
		return
	}
	if !okSeam || h.Wall < 0 || h.From != nil || d.room.Veneer.GrossWidth <= 0 {
		return
	}
	start := h.Wall
	for range d.room.Walls {
		k := d.before(start)
		if k < 0 || !d.room.Walls[k].Cover || !d.room.Walls[k].Wrap {
			break
		}
		start = k
	}
	if way, cut := d.way(start, 0, h.Wall, h.Seam); !cut && way > d.room.Veneer.GrossWidth {
		v.Get("seam").Mistake("name every hung sheet from the run's first", "the first hung seam is %s from the left end of its run, and a sheet is %s wide",
			d.words(way), d.words(d.room.Veneer.GrossWidth))
	}
}

// closedSpan reports whether the covering goes round the room without an end.
func (d *decoder) closedSpan() bool {
	for i := range d.room.Walls {
		w := &d.room.Walls[i]
		if !w.Cover || w.Corner == None || !w.Wrap || len(w.Bare) > 0 || !d.sound[i] {
			return false
		}
		for k := range w.Openings {
			if o := &w.Openings[k]; o.Grain != "through" && w.FullHeight(o) {
				return false
			}
		}
	}
	return d.room.Space.Closed && !d.room.Veneer.Horizontal
}

// hungOrder checks a hung sheet against the one before it: it stands right of it, and no further than a sheet reaches.
func (d *decoder) hungOrder(v source.Value, before, h Hung, okSeam bool) {
	if !okSeam || h.Wall < 0 || before.Wall < 0 {
		return
	}
	seam := v.Get("seam")
	behind := h.Wall < before.Wall || h.Wall == before.Wall && h.Seam <= before.Seam
	if behind && !d.closedSpan() && (h.Wall == before.Wall || !d.room.Space.Closed) {
		seam.Mistake("name the hung sheets from left to right", "the seam at %s is not right of the one before it at %s",
			d.words(h.Seam), d.words(before.Seam))
		return
	}
	if way, cut := d.way(before.Wall, before.Seam, h.Wall, h.Seam); !cut && d.room.Veneer.GrossWidth > 0 && way > d.room.Veneer.GrossWidth {
		seam.Mistake("name every hung sheet from the run's first", "the seam is %s from the one before it, and a sheet is %s wide",
			d.words(way), d.words(d.room.Veneer.GrossWidth))
	}
}

// way is how far it is from one place to another, going right, and whether the covering is cut between them: at a bare
// strip, a gap that skips, a corner that is cut or none. Eased corners are taken at their shortest.
func (d *decoder) way(wall int, x L, toWall int, toX L) (L, bool) {
	way := L(0)
	for turns := 0; turns <= len(d.room.Walls); turns++ {
		w := &d.room.Walls[wall]
		last := wall == toWall && (toX >= x || turns > 0)
		end := w.Length
		if last {
			end = toX
		}
		if !d.sound[wall] || !w.Cover || d.cutBetween(w, x, end) {
			return 0, true
		}
		way += end - x
		if last {
			return way, false
		}
		next := (wall + 1) % len(d.room.Walls)
		if next == 0 && !d.room.Space.Closed || w.Corner == None || !w.Wrap {
			return 0, true
		}
		way -= 2 * tangent(w)
		wall, x = next, 0
	}
	return 0, true
}

// cutBetween reports whether a bare strip or a gap that skips reaches between two places of a wall.
func (d *decoder) cutBetween(w *Wall, from, to L) bool {
	for _, b := range w.Bare {
		if b.From < to && b.To > from {
			return true
		}
	}
	for i := range w.Openings {
		if o := &w.Openings[i]; o.FromLeft < to && o.Right() > from && o.Grain != "through" && w.FullHeight(o) {
			return true
		}
	}
	return false
}

// hungNumber checks that a hung sheet was delivered, and that numbers increase: inside a flitch, then in the next.
func (d *decoder) hungNumber(v source.Value, h *Hung, i, flitch, last int) (int, int) {
	n := h.Sheet
	list := d.room.Flitches
	if n < 1 || n > highestSheet {
		v.Mistake("sheets are numbered from 1", "%s is no sheet number", v.Raw())
		return flitch, last
	}
	if len(list) == 0 {
		if i == 0 && n != 1 && d.oneRun() {
			v.Mistake("without a flitch sheets are numbered from 1; name every hung sheet from the run's first", "the first hung sheet is %d, not 1", n)
		} else if n <= last {
			v.Mistake("name the hung sheets in the order of their numbers", "hung sheet %d follows sheet %d", n, last)
		}
		return flitch, n
	}
	for k := flitch; k < len(list); k++ {
		if holds(list[k].Sheets, n) && (k > flitch || n > last) {
			h.Flitch = k
			if first := usable(list[k]); i == 0 && d.oneRun() && (k > 0 || len(first) > 0 && first[0] < n) {
				v.Mistake("name every hung sheet from the run's first; a sheet that was not hung is damaged or spare",
					"the first hung sheet is %d, not the first of flitch %q", n, list[0].Number)
			}
			return k, n
		}
	}
	for k := range list {
		if len(list[k].Sheets) == 0 {
			return flitch, last // its mistake is noted
		}
		if holds(list[k].Sheets, n) {
			v.Mistake("name the hung sheets in the order of their numbers", "hung sheet %d follows sheet %d", n, last)
			return flitch, last
		}
	}
	v.Mistake("sheets holds the numbers delivered", "hung sheet %d is in no flitch", n)
	return flitch, last
}

// oneRun reports whether the covered walls make a single run, so that the first hung sheet is the room's first.
func (d *decoder) oneRun() bool {
	walls := d.room.Walls
	runs := 0
	for i := range walls {
		k := d.before(i)
		if walls[i].Cover && (k < 0 || !walls[k].Cover) {
			runs++
		}
	}
	return runs <= 1 && !d.room.Veneer.Horizontal
}

package room

import "flitchlay/internal/source"

// hung reads the sheets that are on the wall already: one a table, or the list of a wall.
func (d *decoder) hung(tables []source.Value) {
	flitch, last := 0, 0
	for _, v := range tables {
		wall := d.wallNamed(v.Get("wall"), "a hung sheet")
		numbers, sheet := d.hungNumbers(v)
		for i, read := range d.readings(v, len(numbers)) {
			h := Hung{Wall: wall, Flitch: -1, Seam: read.bottom, Top: read.top, Edge: read.edge, Where: d.place(v)}
			count := len(d.room.Hung)
			if count == 0 {
				h.Left = d.leftSeam(v, read)
				h.Raw = d.closedSpan() && v.Get("left_edge").Given() && !v.Get("left_seam").Given()
			} else if i == 0 {
				onlyFirst(v)
			}
			if wall >= 0 && read.ok {
				d.hungPlace(v, read, h)
			}
			if count > 0 {
				d.hungOrder(read, d.room.Hung[count-1], h)
			} else {
				d.hungFirst(v, read, h)
			}
			if i < len(numbers) {
				h.Sheet = numbers[i]
				flitch, last = d.hungNumber(sheet, &h, count, flitch, last)
			}
			d.room.Hung = append(d.room.Hung, h)
		}
	}
}

// hungNumbers are the numbers of the sheets of one table, and where they stand.
func (d *decoder) hungNumbers(v source.Value) ([]int, source.Value) {
	sheet, sheets := v.Get("sheet"), v.Get("sheets")
	switch {
	case sheets.Given() && sheet.Given():
		sheet.Mistake("keep sheets with a list of readings, sheet with a single one", "sheet and sheets name the same sheets twice")
		return nil, sheets
	case sheets.Given():
		if !d.room.Rising() {
			return d.inOrder(sheets, true), sheets
		}
		return d.numbers(sheets), sheets
	case !sheet.Given():
		missing(sheet, "a hung sheet")
		return nil, sheet
	}
	n := int(max(-1, min(sheet.Whole(0), highestSheet+1)))
	if sheet.Kind() != source.Integer {
		return nil, sheet
	}
	return []int{n}, sheet
}

// onlyFirst notes a left side of another than the first hung sheet: there the one before it tells it.
func onlyFirst(v source.Value) {
	for _, name := range []string{"left_edge", "left_seam"} {
		if at := v.Get(name); at.Given() {
			at.Mistake("leave "+name+" out: the sheet begins at the seam of the one before it", "only the first hung sheet has %s", name)
		}
	}
}

// hungPlace checks that what was read of a hung sheet stands on its wall.
func (d *decoder) hungPlace(v source.Value, r reading, h Hung) {
	w := &d.room.Walls[h.Wall]
	if !w.Cover {
		v.Get("wall").Mistake("name the wall on which the sheet hangs", "wall %q is bare: no sheet hangs on it", w.Name)
		return
	}
	most := w.Length
	if r.edge {
		most += d.room.Rules.EdgeTrim // as it hangs at the end of a run, before it is trimmed
	}
	if at := d.asRead(h.Seam, r); w.Length > 0 && (at < 0 || at > most) {
		r.at.Mistake(d.stand(w), "the hung %s stands outside wall %q (%s)", r.word(), w.Name, d.words(w.Length))
	}
}

// hungFirst checks the first hung sheet: it needs its left side where the covering goes round, else it begins at the
// left end of its run.
func (d *decoder) hungFirst(v source.Value, r reading, h Hung) {
	if d.closedSpan() {
		if h.Left == nil && !v.Get("left_edge").Given() && !v.Get("left_seam").Given() {
			v.Get("left_edge").Mistake("add left_edge: its raw left edge as it hangs, from where the wall's left corner crosses the level line; or left_seam: the finished seam there",
				"in a closed run the first hung sheet needs its left edge")
		}
		return
	}
	if !r.ok || h.Wall < 0 || h.Left != nil || d.room.Veneer.GrossWidth <= 0 {
		return
	}
	start := h.Wall
	for range d.room.Walls {
		k := d.room.before(start)
		if k < 0 || !d.room.Walls[k].Cover || !d.room.Walls[k].Wrap {
			break
		}
		start = k
	}
	if way, cut := d.way(start, 0, h.Wall, h.Seam); !cut && way > d.room.Veneer.GrossWidth {
		r.at.Mistake("name every hung sheet from the run's first", "the first hung %s is %s from the left end of its run, and a sheet is %s wide",
			r.word(), d.words(d.asRead(way, r)), d.words(d.room.Veneer.GrossWidth))
	}
}

// hungOrder checks a hung sheet against the one before it: it stands right of it, and no further than a sheet reaches.
func (d *decoder) hungOrder(r reading, before, h Hung) {
	if !r.ok || h.Wall < 0 || before.Wall < 0 {
		return
	}
	behind := h.Wall < before.Wall || h.Wall == before.Wall && h.Seam <= before.Seam
	if behind && !d.closedSpan() && (h.Wall == before.Wall || !d.room.Space.Closed) {
		r.at.Mistake("name the hung sheets from left to right", "the %s at %s is not right of the one before it at %s",
			r.word(), d.words(d.asRead(h.Seam, r)), d.words(d.asRead(before.Seam, r)))
		return
	}
	gross := d.room.Veneer.GrossWidth
	way, cut := d.way(before.Wall, before.Seam, h.Wall, h.Seam)
	if cut || gross <= 0 || way <= gross {
		return
	}
	expected := ""
	if at := d.asRead(h.Seam-way+gross-d.room.Veneer.Overlap, r); at >= 0 {
		expected = ": it is expected at " + d.words(at)
	}
	r.at.Mistake("name every hung sheet from the run's first", "the %s is %s from the one before it, and a sheet is %s wide%s",
		r.word(), d.words(way), d.words(gross), expected)
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

// hungNumber checks that a hung sheet was delivered, and that numbers go on as they are laid: inside a flitch, then in the next.
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
		if holds(list[k].Sheets, n) && (k > flitch || last == 0 || list[k].Before(last, n)) {
			h.Flitch = k
			if first := list[k].Laid(usable(list[k])); i == 0 && d.oneRun() && (k > 0 || len(first) > 0 && list[k].Before(first[0], n)) {
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
			mend := "name the hung sheets in the order of their numbers"
			if list[k].From == FromLast {
				mend += ", from the highest down as the flitch is laid"
			}
			v.Mistake(mend, "hung sheet %d follows sheet %d", n, last)
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
		k := d.room.before(i)
		if walls[i].Cover && (k < 0 || !walls[k].Cover) {
			runs++
		}
	}
	return runs <= 1 && !d.room.Veneer.Horizontal
}

package crew

import (
	"math"
	"strconv"
	"strings"
	"unicode"

	"flitchlay/internal/folio"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

func itoa(n int) string { return strconv.Itoa(n) }

// heads letters what stands over the ceiling: the names of the ends, HOLD, START inside a wall, what is only to check.
func (d *wallBoard) heads() {
	d.foldNames()
	d.each((*wallBoard).hold)
	if d.unrolled() { // its ends have the longest names, and the most places
		d.each((*wallBoard).starts)
		d.endNames()
	} else {
		d.endNames()
		d.starts()
	}
	d.each((*wallBoard).checks)
	d.each((*wallBoard).changes)
}

// roof is the highest place of the ceilings over a stretch of the page.
func (d *drawing) roof(x0, x1 float64) float64 {
	y := math.Inf(1)
	for _, f := range d.faces {
		y = min(y, f.ceiling(x0, x1))
	}
	return y
}

// ceiling is the highest place of the wall's own ceiling there.
func (d *wallBoard) ceiling(x0, x1 float64) float64 {
	w := d.w.W
	y := math.Inf(1)
	take := func(x L) {
		x = min(max(x, d.p.From), d.p.To)
		y = min(y, d.v.Y(room.At(w.Ceiling, x)), d.v.Y(room.AtRight(w.Ceiling, x)))
	}
	at := func(px float64) L { return d.p.From + d.v.Length(px-d.v.X(d.p.From)) }
	a, b := at(x0), at(x1)
	take(a)
	take(b)
	for _, p := range w.Ceiling {
		if p.X >= a && p.X <= b {
			take(p.X)
		}
	}
	return y
}

// Rows of labels over the ceiling, in mm on letter paper.
const (
	rowHigh    = 2.9 // from one row to the next
	firstOver  = 2.6 // the baseline of the lowest over the flags
	overReach  = 2.0 // the ceiling counts so far left and right of a label
	overRows   = 16  // rows of labels that are tried
	lowRows    = 5   // rows under the ceiling's, beside the wall
	calledRows = 12  // rows of what is called out: they keep under the labels of the ends
)

// What a place over the ceiling costs, in mm on letter paper that it stands lower for it.
const (
	wantedCost = 1.5  // each left edge that was wanted less
	besideCost = 30.0 // beside the wall: a last resort
)

// row is the baseline of a row of labels over the ceiling from x0 to x1.
func (d *wallBoard) row(x0, x1 float64, row int) float64 {
	return d.roof(x0-overReach*d.Unit, x1+overReach*d.Unit) - (flagStem+firstOver+rowHigh*float64(row))*d.Unit
}

// overhead finds a place over the ceiling for a label. A label is looked for where it points, so it stands as low as it
// goes; all places are tried, and the one that costs the least is taken:
//
//  1. each of the left edges wanted, the first first, moved into the page where it would leave it;
//  2. at each the lowest row over the ceiling that is free; a row higher costs its height, a left edge wanted less half a
//     row;
//  3. past the ends of the wall the rows beside it too, which cost so much that only labels without another place come
//     there.
//
// Shape: the box of the label, taken, and which of the left edges it got. A label that finds no place is noted: its words
// stand beside the drawing where no larger drawing could be had.
func (d *wallBoard) overhead(words string, wide, high float64, wanted ...float64) (scene.Box, int, bool) {
	u := d.Unit
	lo, hi := d.space.Bounds.X0+0.5*u, d.space.Bounds.X1-0.5*u
	best, which, least := scene.Box{}, -1, math.Inf(1)
	for i, x := range wanted {
		x = math.Max(math.Min(x, hi-wide), lo)
		first := 0
		if left, right := d.faces[0], d.last(); x+wide < left.v.X(left.p.From)-2*u || x > right.v.X(right.p.To)+2*u {
			first = -lowRows
		}
		if strings.ContainsFunc(words, func(r rune) bool { return unicode.IsUpper(r) && r > unicode.MaxASCII }) {
			high = max(high, accented*folio.TapedText*u)
		}
		for row := first; row < overRows; row++ {
			y := d.row(x, x+wide, row)
			box := scene.Box{X0: x, Y0: y - high, X1: x + wide, Y1: y + 0.9*u}
			if !d.space.Free(box, crewAir*u) {
				continue
			}
			cost := -y + wantedCost*float64(i)*u
			if row < 0 {
				cost += besideCost * u
			}
			if cost < least {
				best, which, least = box, i, cost
			}
			if row >= 0 {
				break
			}
		}
	}
	if which < 0 {
		d.aside(words)
		return best, 0, false
	}
	d.space.Take(best)
	return best, which, true
}

// accented is how high a capital with an accent is, in heights of a capital, with some air.
const accented = 1.4

// Where else a label may stand than at its x, in mm on letter paper.
const (
	labelInset = 8.0 // so much of it still stands over x
	labelPast  = 3.0 // clear of x, to its side
)

// label letters a label over the ceiling, with its left edge, its middle or its right edge at x, or near it. Wanted are,
// in turn: where it belongs; moved along by as little as brings it clear, while it still stands over x; wholly to the side
// of x, first the side on which the wall is not.
func (d *wallBoard) label(x float64, text string, bold bool, anchor scene.Anchor) {
	d.labelOr(x, text, text, bold, anchor)
}

// labelMost is how wide a label may be.
func (d *wallBoard) labelMost() float64 { return d.area.W() - 8*d.Unit }

// labelOr letters a label, or leaves words beside the drawing where it has no place, nothing where there are none.
func (d *wallBoard) labelOr(x float64, text, words string, bold bool, anchor scene.Anchor) {
	size := folio.TapedText * d.Unit
	text = scene.Shorten(text, size, bold, d.labelMost())
	w := scene.Width(text, size, bold)
	inset, past := math.Min(w/2, labelInset*d.Unit), labelPast*d.Unit
	var wanted []float64
	switch anchor {
	case scene.Start: // from the left end to the right; else out to the left
		wanted = []float64{x, x - inset, x - w/2, x - w + inset, x - w - past}
	case scene.Middle:
		wanted = []float64{x - w/2, x - w/3, x - w*2/3, x - w + inset/2, x - inset/2, x - w - past, x + past}
	case scene.End:
		wanted = []float64{x - w, x - w + inset, x - w/2, x - inset, x + past}
	}
	if box, _, ok := d.overhead(words, w, size*1.1, wanted...); ok {
		d.Word(d.g, scene.Pt(box.X0, box.Y1-0.9*d.Unit), text, size, bold, scene.Start)
	}
}

// endNames says over both ends of what stands on the page what the covering does there.
func (d *wallBoard) endNames() {
	for _, right := range []bool{false, true} {
		f := d
		if right {
			f = d.last()
		}
		name := f.endName(right)
		if name == "" {
			continue
		}
		outer := f.g
		f.g = outer.Part(scene.Tag{Class: "corner", Data: []scene.Datum{folio.Datum("name", name)}})
		if right {
			f.label(f.v.X(f.p.To), name, false, scene.End)
		} else {
			f.label(f.v.X(f.p.From), name, false, scene.Start)
		}
		f.g = outer
	}
}

// endName is the name of an end of the piece.
func (d *wallBoard) endName(right bool) string {
	w, p := d.w, d.p
	if right && p.RightCut() {
		return d.Words.Say("wall.match_line", d.PageWord(w.pieces[p.Index+1].key()))
	}
	if !right && p.LeftCut() {
		return d.Words.Say("wall.match_line", d.PageWord(w.pieces[p.Index-1].key()))
	}
	if c, _, _ := w.Neighbour(right); c != nil {
		name := d.CornerWord(c.Kind, c.Name)
		if first, last := d.faces[0], d.last(); d.unrolled() && d.corner(last.w).RightWall == first.w.Wall { // it closes on itself
			if right {
				return d.Words.Say("wall.on_to", name, first.letter())
			}
			return d.Words.Say("wall.on_from", name, last.letter())
		}
		for _, h := range p.Hangs {
			if right && h.After && h.Place == c.Sheet {
				return d.Words.Say("wall.goes_on", name, d.SheetNumbers(h), d.goesOn(h, c))
			}
			if !right && h.Before && h.Place == c.Sheet {
				words := d.Words.Say("wall.comes_from", name, d.SheetNumbers(h), d.Room.Walls[c.LeftWall].Name)
				if scene.Width(words, folio.TapedText*d.Unit, false) > d.labelMost() { // as the plan of the room calls it
					words = d.Words.Say("wall.comes_from", name, d.SheetNumbers(h), folio.WallMarks(d.Plan)[c.LeftWall])
				}
				return words
			}
		}
		return name
	}
	if e := w.EndAt(right); e != nil {
		return d.EndLabel(*e)
	}
	return ""
}

// block draws a block arrow to the right from its left end.
func (d *wallBoard) block(g *scene.Group, at scene.Point, long, high float64) {
	neck, shaft := long*0.5, high*0.2
	g.Polygon(scene.Style{Layer: scene.Marks, Fill: scene.Solid(scene.Black)},
		at.Add(0, -shaft), at.Add(neck, -shaft), at.Add(neck, -high/2), at.Add(long, 0), at.Add(neck, high/2), at.Add(neck, shaft), at.Add(0, shaft))
}

// checks says which lines are only to check by. Beside walls unrolled their list says it too: no drawing becomes smaller for it.
func (d *wallBoard) checks() {
	if lacks := d.above; d.unrolled() {
		defer func() { d.above = lacks }()
	}
	for _, h := range d.p.Hangs {
		if h.Check() && d.p.Here(h) && !h.Hung() {
			d.labelAlone(d.v.X(h.Line), d.Words.Say("wall.check_only"))
		}
		if w := d.witness(h); w != nil {
			d.labelAlone(d.v.X(w.X), d.Words.Say("wall.witness"))
		}
	}
}

// aloneAir is kept free at both sides of a label that stands alone, in mm on letter paper: nobody reads on from it into another.
const aloneAir = 3.0

// labelAlone letters a short label over a line; the tape list says the same, so that it may find no place.
func (d *wallBoard) labelAlone(x float64, text string) {
	size, air := folio.TapedText*d.Unit, aloneAir*d.Unit
	w := scene.Width(text, size, false) + 2*air
	if box, _, ok := d.overhead("", w, size*1.1, x-w/2, x-w/3, x-w*2/3, x-air, x-w+air); ok {
		d.Word(d.g, scene.Pt(box.X0+air, box.Y1-0.9*d.Unit), text, size, false, scene.Start)
	}
}

// changes names the flitch where it changes inside the piece.
func (d *wallBoard) changes() {
	for i, h := range d.p.Hangs {
		if i == 0 {
			continue
		}
		if a, b := d.p.Hangs[i-1].Sheet().Flitch, h.Sheet().Flitch; a != b && b != "" {
			d.label(d.v.X(h.From), d.Words.Say("wall.flitch_from", b), true, scene.Start)
		}
	}
}

// leans are how far a called out text stands beside its target, in its own widths: straight over it, then further and
// further left and right, as long as the line down to it is not taken for one of a neighbour.
var leans = []float64{0, -0.3, 0.3, -0.6, 0.6, -0.9, 0.9, -1.3, 1.3}

// callout letters over the ceiling what has no room where it belongs, with a line down to it. The first place is taken
// that is free and whose line crosses nothing: the lowest rows first, since a short line is read best, in each row the
// place nearest to the target first.
func (d *wallBoard) callout(g *scene.Group, target scene.Point, text, words string, boxed bool) {
	if !d.calledOut(g, target, text, boxed) {
		d.aside(words)
	}
}

// calledOut is callout, and reports whether there is a place.
func (d *wallBoard) calledOut(g *scene.Group, target scene.Point, text string, boxed bool) bool {
	u, size := d.Unit, folio.TapedLarge*d.Unit
	w, ring := scene.Width(text, size, true), 0.0
	if boxed {
		ring = 1.2 * u
	}
	lo, hi := d.space.Bounds.X0+0.5*u+ring, d.space.Bounds.X1-0.5*u-ring
	for row := range calledRows {
		for _, lean := range leans {
			x0 := math.Max(math.Min(target.X-w/2+lean*w, hi-w), lo)
			y := d.row(math.Min(x0, target.X), math.Max(x0+w, target.X), row)
			box := scene.Box{X0: x0 - ring, Y0: y - size - ring, X1: x0 + w + ring, Y1: y + ring}
			from := scene.Pt(math.Max(math.Min(target.X, box.X1-0.5*u), box.X0+0.5*u), box.Y1+0.6*u)
			if d.space.Free(box, crewAir*u) && d.space.FreeLine(from, target, 0.3*u) && d.space.FreeOfWords(d.dotted(target), dotAir*u) {
				d.Word(g, scene.Pt(x0, y), text, size, true, scene.Start)
				if boxed {
					g.Rect(box, scene.Pen(scene.Numbers, folio.TapedFine))
				}
				d.line(g, from, target, scene.Pen(scene.Marks, 0.25))
				d.dot(g, target)
				d.space.Take(box)
				return true
			}
		}
	}
	return false
}

// aside notes words that find no place in the drawing: at first it is drawn smaller, in the end they stand beside it.
func (d *wallBoard) aside(words string) {
	switch {
	case !d.settled:
		d.lack(&d.above)
	case words != "":
		d.beside = append(d.beside, words)
	}
}

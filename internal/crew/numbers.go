package crew

import (
	"math"
	"slices"

	"flitchlay/internal/face"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/scene"
)

// Sizes of what stands in a sheet, in mm on letter paper.
const (
	numberStep  = 1.0 // by which all numbers are tried smaller
	singleStep  = 0.5 // by which one of them is
	numberFair  = 6.0 // the least height that numbers of whole sheets take from the first
	numberRing  = 1.2 // from a number to the frame of a sheet that is ripped
	tightRing   = 0.8
	tightAir    = 0.92 // clear of the sheet's edges, where crewAir has no room
	framesAside = 2.6  // what both sides of a frame take
)

// How much it weighs that something finds no place in its sheet: a number is called out over the ceiling, a cut length
// only listed beside the drawing.
const (
	numberOut = 100
	cutOut    = 1
)

// sheetNumbers letters the numbers of the sheets and their cut lengths, each inside its own sheet and clear of everything.
// All are placed anew with numbers of less and less height, until everything has a place; else with that height at which
// the least was left out, the largest of several.
func (d *wallBoard) sheetNumbers() {
	start := *d.space
	solid := start // what is open is no part of a sheet
	for _, f := range d.faces {
		for i := range f.w.W.Openings {
			if box, ok := f.hole(&f.w.W.Openings[i]); ok {
				solid.Take(box)
			}
		}
	}
	var best []numbered
	fewest := math.MaxInt
	for size := d.numberSize(); size >= folio.TapedLarge*d.Unit-1e-9; size -= numberStep * d.Unit {
		*d.space = solid
		list, out := d.place(size)
		if out < fewest {
			best, fewest = list, out
		}
		if out == 0 {
			break
		}
	}
	*d.space = start
	for i := range best {
		d.take(&best[i])
	}
	for i := range best {
		best[i].on.ends(&best[i]) // before leaders take what room there is
	}
	for i := range best {
		best[i].on.number(&best[i])
	}
}

// numbered is where the number and the cut length of one sheet stand; what has no place inside is called out.
type numbered struct {
	on       *wallBoard
	sheet    *layout.Sheet
	from, to L
	box      scene.Box
	number   scene.Text
	cut      *scene.Text // nil where it has no room in the sheet
	words    string      // the cut length
	in       bool
	ring     float64 // from the number to the frame of a sheet that is ripped
	frame    scene.Box
}

// place finds a place for everything with numbers of a height at the most, and counts what finds none.
func (d *wallBoard) place(size float64) (list []numbered, out int) {
	for _, f := range d.faces {
		for _, h := range f.p.Hangs {
			for _, s := range h.Sheets {
				if len(s.Pieces) > 0 && f.numbers(h, s) {
					n, less := f.placeOne(h, s, size)
					list, out = append(list, n), out+less
				}
			}
		}
	}
	return list, out
}

// placeOne finds a place for what stands in one sheet.
func (d *wallBoard) placeOne(h *face.Hang, s *layout.Sheet, size float64) (n numbered, out int) {
	n = numbered{on: d, sheet: s, from: h.From, to: h.To, box: d.sheetBox(h, s), words: d.cutWords(h, s)}
	n.number, n.in = d.findNumber(&n, d.SheetNumber(s), size, s.Ripped != "")
	if !n.in {
		return n, numberOut
	}
	n.frame = n.number.Bounds().Inset(-max(n.ring, tightRing*d.Unit))
	d.space.Take(n.frame)
	if n.words == "" {
		return n, 0
	}
	var ok bool
	if n.cut, ok = d.findCut(&n, n.number.Bounds(), n.words); !ok {
		return n, cutOut
	}
	d.space.Take(n.cut.Bounds())
	return n, 0
}

// numbers reports whether the number of a sheet stands on this wall: of walls unrolled only on that of which it covers most.
func (d *wallBoard) numbers(h *face.Hang, s *layout.Sheet) bool {
	if !d.unrolled() {
		return true
	}
	var best *face.Hang
	for _, f := range d.faces {
		for _, x := range f.p.Hangs {
			here := slices.ContainsFunc(s.Pieces, func(q layout.Piece) bool { return q.Wall == f.w.Wall })
			if here && x.Holds(s) && (best == nil || x.To-x.From > best.To-best.From) {
				best = x
			}
		}
	}
	return best == h
}

func (d *wallBoard) take(n *numbered) {
	if n.in {
		d.space.Take(n.frame)
	}
	if n.cut != nil {
		d.space.Take(n.cut.Bounds())
	}
}

// numberSize is the height at which the numbers of most sheets fit between their seams.
func (d *wallBoard) numberSize() float64 {
	u, size := d.Unit, folio.TapedNumber*d.Unit
	whole := d.Room.Veneer.GrossWidth - d.Room.Veneer.Overlap
	for _, f := range d.faces {
		for _, h := range f.p.Hangs {
			a, b := f.p.Span(h)
			if b-a < whole*6/10 {
				continue
			}
			for _, s := range h.Sheets {
				w := scene.Width(d.SheetNumber(s), folio.TapedNumber*u, true)
				have := d.v.MM(b-a) - 2*crewAir*u
				if s.Ripped != "" {
					have -= framesAside * u
				}
				size = math.Min(size, math.Max(numberFair*u, folio.TapedNumber*u*have/w))
			}
		}
	}
	return size
}

// sheetBox is the box of the page in which the words of a sheet may stand.
func (d *wallBoard) sheetBox(h *face.Hang, s *layout.Sheet) scene.Box {
	if x0, z0, x1, z1, ok := d.w.Extent(s); ok && d.w.Run.Up {
		return d.v.Box(x0, z0, x1, z1)
	}
	a, b := d.p.Span(h)
	low, high := d.w.Between(s, a, b)
	return d.v.Box(a, low, b, high)
}

// number letters one sheet's number and cut length; what finds no place inside goes over the ceiling on a leader.
func (d *wallBoard) number(n *numbered) {
	s, text := n.sheet, d.SheetNumber(n.sheet)
	g := d.g.Part(scene.Tag{Class: "sheet", Title: d.Words.Say("tip.sheet", text), Data: d.sheetData(s)})
	if n.in {
		g.Text(n.number)
		if s.Ripped != "" {
			g.Rect(n.frame, scene.Pen(scene.Numbers, folio.TapedFine))
		}
	}
	switch {
	case n.cut != nil:
		g.Add(n.cut)
	case n.words != "":
		d.cuts = append(d.cuts, s)
	}
	if !n.in {
		d.elsewhere(g, n, text)
	}
}

// underEdge is how far under the upper edge of a sheet a leader ends, in mm on letter paper.
const underEdge = 1.6

// target is where a leader meets a sheet, a little under its upper edge: as high as it goes, since the leader comes from
// over the ceiling, at the first of these places that lies in the sheet and not in an opening:
//
//  1. midway between the flags of its two lines, which stand half an overlap right of its seams;
//  2. in its middle;
//  3. a quarter of its width from the left, from the right.
func (d *wallBoard) target(n *numbered) scene.Point {
	u := d.Unit
	x := math.Min((n.box.X0+n.box.X1)/2+d.v.MM(d.half), n.box.X1-0.6*u)
	for _, at := range []float64{x, (n.box.X0 + n.box.X1) / 2, n.box.X0 + n.box.W()/4, n.box.X1 - n.box.W()/4} {
		for y := n.box.Y0 + underEdge*u; y < n.box.Y1; y += 0.5 * u {
			if d.within(n.sheet, scene.Pt(at, y-1*u)) && d.within(n.sheet, scene.Pt(at, y)) {
				return scene.Pt(at, y)
			}
		}
	}
	return scene.Pt(x, n.box.Y0+underEdge*u)
}

func (d *wallBoard) sheetData(s *layout.Sheet) []scene.Datum {
	return []scene.Datum{folio.Datum("place", itoa(s.Place)), folio.Datum("flitch", s.Flitch), folio.Datum("number", itoa(s.Number)), folio.Datum("cut", folio.Mm(s.CutLength))}
}

// begins reports whether the left edge of a place is on the page.
func (d *drawing) begins(h *face.Hang) bool {
	for _, f := range d.faces {
		for _, x := range f.p.Hangs {
			if x.Place == h.Place && !x.Before && f.p.StartsHere(x) {
				return true
			}
		}
	}
	return false
}

// cutWords is the cut length of a sheet, on the page where it is hung first; where it hangs, that it does.
func (d *wallBoard) cutWords(h *face.Hang, s *layout.Sheet) string {
	switch {
	case s.Hung:
		return d.Words.Say("tape.hung")
	case !d.begins(h):
		return ""
	}
	return d.Say(d.CutLong(s))
}

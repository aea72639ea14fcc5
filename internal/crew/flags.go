package crew

import (
	"math"
	"sort"
	"strconv"

	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// Rows of figures under the floor, and the arrowheads of flags.
const (
	firstRow     = 9.9 // baseline of the first row under the floor, in mm on letter paper as all here
	rowPitch     = 6.0
	flagRows     = 3
	mostFlagRows = 4
	flagLong     = 2.4
	flagWide     = 2.2
	flagStem     = 4.8 // whole height of a flag over the ceiling
)

// lineFlag is one plumb line: an arrowhead at the floor, one at the ceiling, and its running figure.
type lineFlag struct {
	x       L
	at      float64 // on the page
	text    string
	open    bool // only to check by
	start   bool // left edge of a first sheet
	end     bool // end of the wall, no line
	witness bool // stands in for a start line
	zero    bool // where the figures of an unrolled wall begin
	on      *wallBoard
	number  string
	seamTag []scene.Datum
}

// flagList lists the lines of the page from left to right, and the end of its wall; of walls unrolled where the figures of each
// but the first begin: where they end stands in the list.
func (d *wallBoard) flagList() []lineFlag {
	var list []lineFlag
	for _, f := range d.faces {
		if !f.first() {
			x := f.w.Left + f.w.Datum
			list = append(list, lineFlag{x: x, at: f.v.X(x), text: f.letter() + " 0", zero: true, on: f})
		}
		list = append(list, f.lineList()...)
	}
	if !d.p.RightCut() && !d.unrolled() {
		list = append(list, lineFlag{x: d.w.End(), at: d.v.X(d.w.End()), text: d.at(d.w.End()), end: true, on: d})
	}
	sort.SliceStable(list, func(i, j int) bool { return list[i].at < list[j].at && !list[j].end })
	return list
}

// lineList lists the lines of one wall from left to right.
func (d *wallBoard) lineList() []lineFlag {
	var list []lineFlag
	add := func(x L, open bool, number string, tag ...scene.Datum) {
		list = append(list, lineFlag{x: x, at: d.v.X(x), text: d.at(x), open: open, number: number, seamTag: tag, on: d})
	}
	for _, h := range d.p.Hangs {
		if h.Opens && d.p.StartsHere(h) && !h.Hung() {
			add(h.Start, false, d.SheetNumbers(h), folio.Datum("at", folio.Mm(d.w.Began(h))))
			list[len(list)-1].start = true
			if w := d.witness(h); w != nil {
				add(w.X, true, d.SheetNumbers(h))
				list[len(list)-1].witness = true
			}
		}
		if h.Lined && d.p.Here(h) && !h.Hung() {
			add(h.Line, h.Check(), d.SheetNumbers(h), folio.Datum("at", folio.Mm(h.Seam.PlumbLine)), folio.Datum("sheet", strconv.Itoa(h.Place)))
			if h.Check() {
				list[len(list)-1].text = d.checked(h)
			}
		}
	}
	sort.SliceStable(list, func(i, j int) bool { return list[i].x < list[j].x })
	return list
}

// flags draws the plumb lines as flags outside the wall, with their figures from the one datum. A figure is read level
// wherever it can be:
//
//  1. level in flagRows rows, each under its line, the wall's end in the lowest;
//  2. level in one row more, which takes height from the wall;
//  3. upright side by side, on stems that bend to them: they stand closer than any row lets them.
func (d *wallBoard) flags() {
	u, size := d.Unit, folio.TapedText*d.Unit
	list := d.flagList()
	low, _ := d.extremes()
	floor := d.v.Y(low)
	lo, hi := d.area.X0+1.5*u, d.area.X1-1.5*u
	if !d.p.LeftCut() {
		lo = d.v.X(d.w.Left+max(0, d.w.Datum)) + 1.2*u
	}
	flags := make([]draft.Flag, len(list))
	rows := flagRows
	var perches []draft.Perch
	for ok := false; !ok && rows <= mostFlagRows; {
		for i, f := range list {
			flags[i] = draft.Flag{At: f.at, Width: scene.Width(f.text, size, !f.end)}
			if f.end {
				flags[i].Row = rows
			}
		}
		perches, ok = draft.Rows(flags, rows, crewAir*u, lo, hi)
		if !ok {
			rows++
		}
	}
	baseline := func(row int) float64 { return floor + (firstRow+rowPitch*float64(row-1))*u }
	if perches == nil {
		d.shelf(list, floor, lo, hi)
		d.datum(floor, flagRows)
		return
	}
	for i, f := range list {
		p := perches[i]
		g := f.on.flag(f, baseline(p.Row)-size-0.7*u)
		t := scene.Text{At: scene.Pt(p.From, baseline(p.Row)), String: f.text, Height: size, Bold: !f.end, Layer: scene.Plumb}
		f.on.figure(g, f, t)
	}
	d.datum(floor, rows)
	if floor+(firstRow+rowPitch*float64(rows-1))*u > d.area.Y1-1.8*u {
		d.lack(&d.below)
	}
}

// figure letters a running figure.
func (d *wallBoard) figure(g *scene.Group, f lineFlag, t scene.Text) {
	if f.zero {
		g.Text(t)
		d.space.Take(t.Bounds())
		return
	}
	long := d.w.At(f.x)
	if d.w.Run.Up {
		long = f.x - d.Level
	}
	in := g.Part(scene.Tag{Class: "dimension", Data: []scene.Datum{folio.Datum("from", "datum"), folio.Datum("length", folio.Mm(long))}})
	in.Text(t)
	d.space.Take(t.Bounds())
}

// flag draws the arrowheads of one line and its stem down to where its figure begins.
func (d *wallBoard) flag(f lineFlag, foot float64) *scene.Group {
	u := d.Unit
	w := d.w.W
	floor := d.v.Y(room.At(w.Floor, f.x))
	pen := scene.Pen(scene.Plumb, folio.TapedFine)
	if f.zero {
		g := d.g.Part(scene.Tag{Class: "datum", Data: []scene.Datum{folio.Datum("wall", w.Name)}})
		d.zero(g, d.zeroAt())
		d.line(g, scene.Pt(f.at, floor+1*u), scene.Pt(f.at, foot), scene.Pen(scene.Dimensions, 0.25))
		return g
	}
	if f.end {
		g := d.g.Part(scene.Tag{Class: "wall-end"})
		d.line(g, scene.Pt(f.at, floor+1*u), scene.Pt(f.at, foot), scene.Pen(scene.Dimensions, 0.25))
		return g
	}
	tag := scene.Tag{Class: "plumb-line", Title: d.Words.Say("tip.line", f.number), Data: f.seamTag}
	if f.witness {
		tag = scene.Tag{Class: "witness-line", Title: d.Words.Say("tip.witness", f.number)}
	}
	g := d.g.Part(tag)
	atFloor, atCeiling := d.struckTo(f.x)
	if tip := floor + 0.6*u; atFloor {
		d.head(g, scene.Pt(f.at, tip), 90, f.open)
		g.VLine(f.at, tip+flagLong*u, foot, pen)
		d.space.Take(scene.Box{X0: f.at - flagWide/2*u, Y0: tip, X1: f.at + flagWide/2*u, Y1: foot})
	} else { // its figure stands under it all the same
		d.line(g, scene.Pt(f.at, floor+1*u), scene.Pt(f.at, foot), scene.Pen(scene.Dimensions, 0.25))
	}
	if !atCeiling {
		return g
	}
	top := d.v.Y(room.At(w.Ceiling, f.x)) - 0.6*u
	d.head(g, scene.Pt(f.at, top), 270, f.open)
	g.VLine(f.at, top-flagStem*u, top-flagLong*u, pen)
	d.space.Take(scene.Box{X0: f.at - flagWide/2*u, Y0: top - flagStem*u, X1: f.at + flagWide/2*u, Y1: top})
	return g
}

// struckTo reports whether a line is struck on covering down to where that begins over the floor, and up to where it ends under the
// ceiling: over an opening it stops there.
func (d *wallBoard) struckTo(x L) (floor, ceiling bool) {
	list := d.w.Covered(x)
	bottom, top := d.w.Cover(x)
	return len(list) == 0 || list[0][0] <= bottom, len(list) == 0 || list[len(list)-1][1] >= top
}

// head draws an arrowhead, solid or open.
func (d *wallBoard) head(g *scene.Group, tip scene.Point, direction float64, open bool) {
	if open {
		draft.Triangle(g, scene.Plumb, tip, direction, flagLong*d.Unit, flagWide*d.Unit, folio.TapedFine, true)
		return
	}
	draft.Triangle(g, scene.Plumb, tip, direction, flagLong*d.Unit, flagWide*d.Unit, 0, false)
}

// shelf stands the figures upright side by side where they have no room to lie, each on a stem that bends to it.
func (d *wallBoard) shelf(list []lineFlag, floor, lo, hi float64) {
	u, size := d.Unit, folio.TapedText*d.Unit
	var at []float64
	for _, f := range list {
		at = append(at, f.at)
	}
	slots := draft.Shelf(at, size*1.35+crewAir*u, lo, hi)
	bend := 0.0
	for i := range slots {
		bend = math.Max(bend, math.Abs(slots[i]-at[i]))
	}
	neck := floor + 5*u
	top := neck + math.Min(math.Max(bend/2, 1.5*u), 8*u)
	for i, f := range list {
		g := f.on.flag(f, neck)
		d.line(g, scene.Pt(f.at, neck), scene.Pt(slots[i], top), scene.Pen(scene.Plumb, folio.TapedFine))
		t := scene.Text{At: scene.Pt(slots[i], top+0.8*u), String: f.text, Height: size, Bold: !f.end, Anchor: scene.End, Seat: scene.Centred, Angle: 90, Layer: scene.Plumb}
		f.on.figure(g, f, t)
		if t.Bounds().Y1 > d.area.Y1-1*u {
			d.lack(&d.below)
		}
	}
}

// datum marks the point that all figures count from, where the left corner crosses the level line; on a further piece of a
// wall it says where that point is.
func (d *wallBoard) datum(floor float64, rows int) {
	u := d.Unit
	if d.p.LeftCut() {
		words := d.Words.Say("wall.datum_on", d.PageWord(d.w.pieces[0].key()))
		size := folio.TapedText * u
		if box, ok := d.under(scene.Width(words, size, true), size*1.3); ok {
			d.g.Text(scene.Text{At: scene.Pt(box.X0, box.Y1-size*0.3), String: words, Height: size, Bold: true, Layer: scene.Plumb})
		}
		return
	}
	ground := room.AtRight(d.w.W.Floor, d.w.Left)
	g := d.g.Part(scene.Tag{Class: "datum"})
	at := d.zero(g, d.zeroAt())
	zero := "0"
	if d.unrolled() {
		zero = d.letter() + " 0"
	}
	foot := floor + (firstRow+rowPitch*float64(rows-1))*u
	g.VLine(at.X, d.v.Y(ground)+1.5*u, foot, scene.Pen(scene.Dimensions, 0.25))
	d.space.Stroke(scene.Pt(at.X, d.v.Y(ground)), scene.Pt(at.X, foot))
	for i, s := range []struct {
		text string
		high float64
	}{{zero, folio.TapedText}, {d.Words.Say("wall.datum"), folio.TapedSmall}} {
		t := scene.Text{At: scene.Pt(at.X-1.6*u, floor+(firstRow+rowPitch*float64(i))*u), String: s.text, Height: s.high * u, Bold: true, Anchor: scene.End, Layer: scene.Plumb}
		g.Text(t)
		d.space.Take(t.Bounds())
	}
}

// zeroAt is how high the circle of the datum stands.
func (d *wallBoard) zeroAt() L {
	if d.w.AtLevel() {
		return d.Level
	}
	return room.AtRight(d.w.W.Floor, d.w.Left)
}

// zero draws the circle of the datum at a height of the left corner, and gives its middle.
func (d *wallBoard) zero(g *scene.Group, z L) scene.Point {
	u, at := d.Unit, d.v.Pt(d.w.Left+d.w.Datum, z)
	g.Circle(at, 1.5*u, scene.Pen(scene.Plumb, 0.5).Filled(scene.White))
	d.space.Take(scene.Box{X0: at.X - 2*u, Y0: at.Y - 2*u, X1: at.X + 2*u, Y1: at.Y + 2*u})
	return at
}

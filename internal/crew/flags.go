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
	FirstRow = 9.9 // baseline of the first row under the floor
	RowPitch = 6.0
	FlagLong = 2.4
	FlagWide = 2.2
	FlagStem = 4.8 // whole height of a flag over the ceiling
)

// LineFlag is one plumb line: an arrowhead at the floor, one at the ceiling, and its running figure.
type LineFlag struct {
	X       L
	At      float64 // on the page
	Text    string
	Open    bool // only to check by
	Start   bool // left edge of a first sheet
	End     bool // end of the wall, no line
	Number  string
	SeamTag []scene.Datum
}

// FlagList lists the lines of the piece from left to right, and the end of the wall.
func (d *WallBoard) FlagList() []LineFlag {
	var list []LineFlag
	add := func(x L, open bool, number string, tag ...scene.Datum) {
		list = append(list, LineFlag{X: x, At: d.V.X(x), Text: d.Say(x), Open: open, Number: number, SeamTag: tag})
	}
	for _, h := range d.P.Hangs {
		if h.Opens && d.P.StartsHere(h) && !h.Sheet().Hung {
			add(h.Start, false, d.Numbers(h), folio.Datum("at", folio.Mm(d.W.Run.Line.Round(h.Start-h.Turn))))
			list[len(list)-1].Start = true
		}
		if h.Lined && d.P.Here(h) && !h.Sheet().Hung {
			add(h.Line, h.Check(), d.Numbers(h), folio.Datum("at", folio.Mm(h.Seam.PlumbLine)), folio.Datum("sheet", strconv.Itoa(h.Place)))
		}
	}
	sort.SliceStable(list, func(i, j int) bool { return list[i].X < list[j].X })
	if !d.P.RightCut() {
		list = append(list, LineFlag{X: d.W.Right, At: d.V.X(d.W.Right), Text: d.Say(d.W.Right), End: true})
	}
	return list
}

// Flags draws the plumb lines as flags outside the wall, with their figures from the one datum.
func (d *WallBoard) Flags() {
	u, size := d.U, CrewText*d.U
	list := d.FlagList()
	low, _ := d.Extremes()
	floor := d.V.Y(low)
	lo, hi := d.Area.X0+1.5*u, d.Area.X1-1.5*u
	if !d.P.LeftCut() {
		lo = d.V.X(d.W.Left) + 1.2*u
	}
	flags := make([]draft.Flag, len(list))
	rows := 3
	var perches []draft.Perch
	for ok := false; !ok && rows <= 4; {
		for i, f := range list {
			flags[i] = draft.Flag{At: f.At, Width: scene.Width(f.Text, size, !f.End)}
			if f.End {
				flags[i].Row = rows
			}
		}
		perches, ok = draft.Rows(flags, rows, CrewAir*u, lo, hi)
		if !ok {
			rows++
		}
	}
	baseline := func(row int) float64 { return floor + (FirstRow+RowPitch*float64(row-1))*u }
	if perches == nil {
		d.Shelf(list, floor, lo, hi)
		d.Datum(floor, 3)
		return
	}
	for i, f := range list {
		p := perches[i]
		g := d.Flag(f, baseline(p.Row)-size-0.7*u)
		t := scene.Text{At: scene.Pt(p.From, baseline(p.Row)), String: f.Text, Height: size, Bold: !f.End, Layer: scene.Plumb}
		d.Figure(g, f, t)
	}
	d.Datum(floor, rows)
	if floor+(FirstRow+RowPitch*float64(rows-1))*u > d.Area.Y1-1.8*u {
		d.Lack(&d.Below)
	}
}

// Figure letters a running figure.
func (d *WallBoard) Figure(g *scene.Group, f LineFlag, t scene.Text) {
	in := g.Part(scene.Tag{Class: "dimension", Data: []scene.Datum{folio.Datum("from", "datum"), folio.Datum("length", folio.Mm(f.X))}})
	in.Text(t)
	d.Space.Take(t.Bounds())
}

// Flag draws the arrowheads of one line and its stem down to where its figure begins.
func (d *WallBoard) Flag(f LineFlag, foot float64) *scene.Group {
	u := d.U
	w := d.W.W
	floor := d.V.Y(room.At(w.Floor, f.X))
	pen := scene.Pen(scene.Plumb, CrewFine)
	if f.End {
		d.G.VLine(f.At, floor+1*u, foot, scene.Pen(scene.Dimensions, 0.25))
		d.Space.Stroke(scene.Pt(f.At, floor+1*u), scene.Pt(f.At, foot))
		return d.G
	}
	g := d.G.Part(scene.Tag{Class: "plumb-line", Title: "line of sheet " + f.Number, Data: f.SeamTag})
	tip := floor + 0.6*u
	d.Head(g, scene.Pt(f.At, tip), 90, f.Open)
	g.VLine(f.At, tip+FlagLong*u, foot, pen)
	d.Space.Take(scene.Box{X0: f.At - FlagWide/2*u, Y0: tip, X1: f.At + FlagWide/2*u, Y1: foot})
	top := d.V.Y(room.At(w.Ceiling, f.X)) - 0.6*u
	d.Head(g, scene.Pt(f.At, top), 270, f.Open)
	g.VLine(f.At, top-FlagStem*u, top-FlagLong*u, pen)
	d.Space.Take(scene.Box{X0: f.At - FlagWide/2*u, Y0: top - FlagStem*u, X1: f.At + FlagWide/2*u, Y1: top})
	return g
}

// Head draws an arrowhead, solid or open.
func (d *WallBoard) Head(g *scene.Group, tip scene.Point, direction float64, open bool) {
	if open {
		draft.Triangle(g, scene.Plumb, tip, direction, FlagLong*d.U, FlagWide*d.U, CrewFine, true)
		return
	}
	draft.Triangle(g, scene.Plumb, tip, direction, FlagLong*d.U, FlagWide*d.U, 0, false)
}

// Shelf stands the figures upright side by side where they have no room to lie, each on a stem that bends to it.
func (d *WallBoard) Shelf(list []LineFlag, floor, lo, hi float64) {
	u, size := d.U, CrewText*d.U
	var at []float64
	for _, f := range list {
		at = append(at, f.At)
	}
	slots := draft.Shelf(at, size*1.35+CrewAir*u, lo, hi)
	bend := 0.0
	for i := range slots {
		bend = math.Max(bend, math.Abs(slots[i]-at[i]))
	}
	neck := floor + 5*u
	top := neck + math.Min(math.Max(bend/2, 1.5*u), 8*u)
	for i, f := range list {
		g := d.Flag(f, neck)
		g.Line(scene.Pt(f.At, neck), scene.Pt(slots[i], top), scene.Pen(scene.Plumb, CrewFine))
		d.Space.Stroke(scene.Pt(f.At, neck), scene.Pt(slots[i], top))
		t := scene.Text{At: scene.Pt(slots[i], top+0.8*u), String: f.Text, Height: size, Bold: !f.End, Anchor: scene.End, Seat: scene.Centred, Angle: 90, Layer: scene.Plumb}
		d.Figure(g, f, t)
		if t.Bounds().Y1 > d.Area.Y1-1*u {
			d.Lack(&d.Below)
		}
	}
}

// Datum marks the point that all figures count from; on a further piece of a wall it says where that point is.
func (d *WallBoard) Datum(floor float64, rows int) {
	u := d.U
	if d.P.LeftCut() {
		words := "0 DATUM: the wall's left end, " + d.PageWord(d.W.Pieces[0].Key())
		size := CrewText * u
		if box, ok := d.Under(scene.Width(words, size, true), size*1.3); ok {
			d.G.Text(scene.Text{At: scene.Pt(box.X0, box.Y1-size*0.3), String: words, Height: size, Bold: true, Layer: scene.Plumb})
		}
		return
	}
	x := d.V.X(d.W.Left)
	at := scene.Pt(x, d.V.Y(room.AtRight(d.W.W.Floor, d.W.Left)))
	g := d.G.Part(scene.Tag{Class: "datum"})
	foot := floor + (FirstRow+RowPitch*float64(rows-1))*u
	g.VLine(x, at.Y+1.5*u, foot, scene.Pen(scene.Dimensions, 0.25))
	d.Space.Stroke(scene.Pt(x, at.Y), scene.Pt(x, foot))
	g.Circle(at, 1.5*u, scene.Pen(scene.Plumb, 0.5).Filled(scene.White))
	d.Space.Take(scene.Box{X0: at.X - 2*u, Y0: at.Y - 2*u, X1: at.X + 2*u, Y1: at.Y + 2*u})
	for i, s := range []struct {
		text string
		high float64
	}{{"0", CrewText}, {"DATUM", CrewSmall}} {
		t := scene.Text{At: scene.Pt(x-1.6*u, floor+(FirstRow+RowPitch*float64(i))*u), String: s.text, Height: s.high * u, Bold: true, Anchor: scene.End, Layer: scene.Plumb}
		g.Text(t)
		d.Space.Take(t.Bounds())
	}
}

package crew

import (
	"slices"

	"flitchlay/internal/count"
	"flitchlay/internal/draft"
	"flitchlay/internal/face"
	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
)

// drawnBox is a box whose plate is drawn.
type drawnBox struct {
	face.Box
	on    *wallBoard
	plate scene.Box
	g     *scene.Group
}

// boxes draws what is set in the walls: the plates of all, then the letter of each beside it, with what it is where nobody covers it, if
// that has room.
func (d *wallBoard) boxes() {
	u := d.Unit
	var list []drawnBox
	d.each(func(f *wallBoard) { list = append(list, f.plates()...) })
	for _, b := range list {
		letter := func(label string, airs ...float64) bool {
			at := letterPlaces(b.plate, scene.Width(label, folio.TapedText*u, true), u)
			return slices.ContainsFunc(airs, func(air float64) bool { return d.boxLetter(b.g, b.plate, label, at, air*u) })
		}
		if b.Kind.Traits().NeverCovered && letter(b.Letter+" "+d.KindWord(b.Kind), letterAir) {
			continue
		}
		if !letter(b.Letter, letterAir, letterLessAir) {
			d.callout(b.g, b.plate.Centre(), b.Letter, d.Words.Say("wall.box_at", b.Letter, b.on.where(b.X)), false)
		}
	}
}

// plates draws the plates of what is set in one wall.
func (d *wallBoard) plates() (list []drawnBox) {
	u := d.Unit
	for _, b := range d.p.Boxes() {
		plate := d.v.Box(b.X-b.PlateWidth/2, b.Z-b.PlateHigh/2, b.X+b.PlateWidth/2, b.Z+b.PlateHigh/2)
		g := d.g.Part(scene.Tag{Class: "box", Title: b.Name, Data: []scene.Datum{folio.Datum("kind", string(b.Kind)), folio.Datum("x", folio.Mm(b.X)), folio.Datum("z", folio.Mm(b.Z))}})
		g.Rect(plate, scene.Pen(scene.Boxes, folio.TapedFine).Filled(scene.White))
		g.Line(scene.Pt(plate.X0, plate.Y1), scene.Pt(plate.X1, plate.Y0), scene.Pen(scene.Boxes, 0.25))
		if b.Kind.Traits().NeverCovered { // it is cut round, as the cards have it
			plate = plate.Inset(-neverGap * u)
			g.Rect(plate, scene.Pen(scene.Boxes, 0.25))
		}
		d.space.Take(plate.Inset(-0.2 * u))
		list = append(list, drawnBox{b, d, plate, g})
	}
	return list
}

// A box's letter, in mm on letter paper: what it keeps clear of all else, and what it comes down to where that finds no
// place, but from the middle of a line, which may be a heavy one, no less than it says; how far it stands from the plate, and how
// near where that has no room.
const (
	letterAir     = 1
	letterLessAir = 0.6
	letterLineAir = 0.9
	letterGap     = 1.6
	letterLessGap = 0.9
)

// neverGap is how far round a plate that is never taken off its second line runs.
const neverGap = 0.9

// Rings of places round a plate that take a leader: how far out the nearest is, how much further each is than the one
// before, in mm on letter paper, and how many there are.
const (
	firstRing = 7.0
	ringPitch = 3.0
	ringCount = 7
)

// letterPlaces are the middles of the places for a box's letter that is so wide, those from which it is read most surely
// first:
//
//  1. beside the plate, level with it, with its upper half, with its lower half, left before right: nothing else is near;
//  2. over and under it, where a neighbour or a seam stands at its side;
//  3. off its four corners, where it is one of a row and of a column;
//  4. the same places closer to it;
//  5. in rings further and further out, from the upper left to the lower right of each, on a leader.
//
// Shape: besideBox places without a leader, then those with one.
func letterPlaces(plate scene.Box, wide, u float64) []scene.Point {
	c, size := plate.Centre(), folio.TapedText*u
	var at []scene.Point
	for _, gap := range []float64{letterGap * u, letterLessGap * u} {
		side, rise := gap+wide/2, gap+size/2
		for _, y := range []float64{c.Y, c.Y - plate.H()/4, c.Y + plate.H()/4} {
			at = append(at, scene.Pt(plate.X0-side, y), scene.Pt(plate.X1+side, y))
		}
		at = append(at, scene.Pt(c.X, plate.Y0-rise), scene.Pt(c.X, plate.Y1+rise))
		for _, x := range []float64{plate.X0 - side, plate.X1 + side} {
			at = append(at, scene.Pt(x, plate.Y0-rise), scene.Pt(x, plate.Y1+rise))
		}
	}
	for ring := range ringCount {
		o := plate.Inset(-(firstRing + ringPitch*float64(ring)) * u)
		for _, dx := range []float64{-1, -0.5, 0, 0.5, 1} {
			for _, dy := range []float64{-1, -0.5, 0, 0.5, 1} {
				if dx*dx == 1 || dy*dy == 1 {
					at = append(at, scene.Pt(c.X+dx*o.W()/2, c.Y+dy*o.H()/2))
				}
			}
		}
	}
	return at
}

// besideBox is how many of the places for a box's letter are right beside it; further ones take a leader.
const besideBox = 24

// boxLetter letters a box's letter at the first place that is free.
func (d *wallBoard) boxLetter(g *scene.Group, plate scene.Box, letter string, at []scene.Point, air float64) bool {
	for i, p := range at {
		t := scene.Text{At: p, String: letter, Height: folio.TapedText * d.Unit, Bold: true, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Boxes}
		// as high as letters can be, so that c and a in a row do not stand closer than b and d
		whole := t.Bounds().Union(scene.Box{X0: p.X, Y0: p.Y - t.Height/2, X1: p.X, Y1: p.Y + t.Height*0.8})
		if !d.space.Free(whole, air) || !d.space.FreeOfLines(whole, letterLineAir*d.Unit) {
			continue
		}
		if i >= besideBox {
			from, to := leaderEnds(plate, t.Bounds().Inset(-0.6*d.Unit))
			if !d.space.FreeLine(from, to, 0.3*d.Unit) {
				continue
			}
			d.line(g, from, to, scene.Pen(scene.Boxes, 0.25))
		}
		g.Text(t)
		d.space.Take(whole)
		return true
	}
	return false
}

// leaderEnds are the ends of the straight way from one box to another, middle to middle, cut at their edges.
func leaderEnds(a, b scene.Box) (from, to scene.Point) {
	p, q := a.Centre(), b.Centre()
	at := func(t float64) scene.Point { return scene.Pt(p.X+(q.X-p.X)*t, p.Y+(q.Y-p.Y)*t) }
	_, leave, _ := draft.Clip(p, q, a.Inset(-0.7))
	enter, _, _ := draft.Clip(p, q, b)
	return at(leave), at(enter)
}

// boxLines say where each box is to be cut, in every sheet that its hole comes into.
func (d *wallBoard) boxLines() []string {
	var lines []string
	for _, b := range d.p.Boxes() {
		found, letter := false, b.Letter
		if d.unrolled() { // the letters of every wall begin anew
			letter = d.Words.Say("cut.on_wall", b.Letter, d.w.W.Name)
		}
		for _, x := range d.cutsHere() {
			for _, h := range x.Holes {
				if !h.Kind.Traits().Box || h.Wall != d.w.Wall || &d.w.W.Boxes[h.Index] != b.Box {
					continue
				}
				if found = true; !x.Hung {
					lines = append(lines, d.of(d.Words.Say("wall.box_in", letter, d.numberOf(x), x.HoleWords(d.cutSpeech(), h)), x.Sheet()))
				}
			}
		}
		if !found {
			lines = append(lines, d.Words.Say("wall.box_bare", letter))
		}
	}
	return lines
}

// cutsHere are the rows of the cut list of the sheets of this page, in the order of hanging.
func (d *wallBoard) cutsHere() []*count.Cut {
	var list []*count.Cut
	for _, h := range d.p.Hangs {
		for _, s := range h.Sheets {
			if x := d.Count.CutOf(s); x != nil {
				list = append(list, x)
			}
		}
	}
	return list
}

// numberOf is the number of a sheet of the cut list.
func (c *Set) numberOf(x *count.Cut) string {
	if x.Number == 0 {
		return "?"
	}
	return itoa(x.Number)
}

// cutSpeech says how sheets are cut.
func (c *Set) cutSpeech() count.Speech { return count.Speech{Words: c.Words, Style: c.Style} }

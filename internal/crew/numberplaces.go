package crew

import (
	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
)

// numberTry is one way to letter a number in its sheet, in mm on letter paper.
type numberTry struct{ angle, most, air, ring float64 }

// findNumber finds the largest number that stands inside a sheet, as high up as it goes, in the first of four ways in
// which there is a place for it at any size:
//
//  1. level, as it is read from a ladder;
//  2. upright, in a narrow strip;
//  3. level, no larger than numberFair, closer to the sheet's edges;
//  4. upright like that.
//
// One that leaves no place for the arrow and the mark of its sheet is taken only where none does.
func (d *wallBoard) findNumber(n *numbered, text string, most float64, framed bool) (scene.Text, bool) {
	for _, strict := range []bool{true, false} {
		if t, ok := d.largest(n, text, most, framed, strict); ok {
			return t, true
		}
	}
	return scene.Text{}, false
}

// largest is the largest number that has a place, and where strict leaves one for the ends of its sheet.
func (d *wallBoard) largest(n *numbered, text string, most float64, framed, strict bool) (scene.Text, bool) {
	u := d.Unit
	for _, try := range []numberTry{{0, most, crewAir, numberRing}, {90, most, crewAir, numberRing}, {0, numberFair * u, tightAir, tightRing}, {90, numberFair * u, tightAir, tightRing}} {
		n.ring = 0
		if framed {
			n.ring = try.ring * u
		}
		for size := try.most; size >= folio.TapedLarge*u-1e-9; size -= singleStep * u {
			wide, high := scene.Width(text, size, true), size
			if try.angle == 90 {
				wide, high = high, wide
			}
			if wide+2*(try.air*u+n.ring) > n.box.W()+1e-9 {
				continue
			}
			t := scene.Text{String: text, Height: size, Bold: true, Anchor: scene.Middle, Seat: scene.Centred, Angle: try.angle, Layer: scene.Numbers}
			if t, ok := d.fits(n, t, try, strict); ok {
				return t, true
			}
		}
	}
	return scene.Text{}, false
}

// fits finds a place for a number in its sheet, as high up as it goes.
func (d *wallBoard) fits(n *numbered, t scene.Text, try numberTry, strict bool) (scene.Text, bool) {
	ink := t.Bounds()
	across := d.columns(n.box, ink.W(), n.ring)
	for _, y := range rows(n.box.Y0, n.box.Y1-ink.H(), d.Unit) {
		for _, x := range across {
			t.At = scene.Pt(x, y+ink.H()/2)
			if at := moved(ink, t.At); d.within(n.sheet, at.Centre()) && d.space.Free(at.Inset(-n.ring), try.air*d.Unit) && (!strict || d.leavesEnds(n, t)) {
				return t, true
			}
		}
	}
	return scene.Text{}, false
}

// moved is a box taken along by as much as its point of reference.
func moved(b scene.Box, by scene.Point) scene.Box {
	return scene.Box{X0: b.X0 + by.X, Y0: b.Y0 + by.Y, X1: b.X1 + by.X, Y1: b.Y1 + by.Y}
}

// How far under the top of a sheet words begin, in mm on letter paper.
const (
	wordsUnder = 3.0 // clear of the ceiling's line and of flags
	rowStep    = 1.0
	closeUnder = 2.2
	leastUnder = 1.6
)

// rows are the heights at which words may begin, from the top of a sheet to the last at which they end in it: 1. wordsUnder
// the top, and from there down; 2. closer to the top, where a low sheet leaves no other place.
func rows(top, end, u float64) []float64 {
	list := make([]float64, 0, 2+max(0, int((end-top)/(rowStep*u))))
	for y := top + wordsUnder*u; y < end; y += rowStep * u {
		list = append(list, y)
	}
	return append(list, top+closeUnder*u, top+leastUnder*u)
}

// asides is at how many places right and left of the middle of a sheet words are tried.
const asides = 3

// columns are the places across a sheet at which words of a width may stand: 1. the middle; 2. in equal steps right and
// left of it, to where they stand clear of the edge.
func (d *wallBoard) columns(box scene.Box, wide, ring float64) []float64 {
	mid := (box.X0 + box.X1) / 2
	list := []float64{mid}
	side := wide/2 + crewAir*d.Unit + ring
	for k := 1; k <= asides; k++ {
		off := (box.W()/2 - side) * float64(k) / asides
		if off > 0.5*d.Unit {
			list = append(list, mid+off, mid-off)
		}
	}
	return list
}

// Places for a cut length, in mm on letter paper.
const (
	cutUnder    = 2.6  // under the number
	cutTop      = 2.0  // under the top of the sheet
	uprightWide = 1.25 // what upright letters take across, in their heights
	levelHigh   = 1.2  // what level ones take in height, in their heights
)

// findCut finds a place for the cut length, first where it is read together with the number:
//
//  1. level under the number;
//  2. upright under the number, where it is wider than the sheet;
//  3. level anywhere in the sheet;
//  4. upright anywhere in it.
func (d *wallBoard) findCut(n *numbered, number scene.Box, text string) (*scene.Text, bool) {
	u, size, box := d.Unit, folio.TapedText*d.Unit, n.box
	wide := scene.Width(text, size, false)
	at := func(x, y, angle float64) *scene.Text {
		return &scene.Text{At: scene.Pt(x, y), String: text, Height: size, Anchor: scene.Middle, Seat: scene.Centred, Angle: angle, Layer: scene.Numbers}
	}
	try := func(angle, w, h, y0, y1 float64) (*scene.Text, bool) {
		if w+2*crewAir*u > box.W() {
			return nil, false
		}
		ink, across := at(0, 0, angle).Bounds(), d.columns(box, w, 0)
		for y := y0; y+h < y1; y += rowStep * u {
			for _, x := range across {
				if b := moved(ink, scene.Pt(x, y+h/2)); d.within(n.sheet, b.Centre()) && d.space.Free(b, crewAir*u) {
					return at(x, y+h/2, angle), true
				}
			}
		}
		return nil, false
	}
	y := number.Y1 + cutUnder*u
	if t := at(number.Centre().X, y+size/2, 0); wide+2*crewAir*u <= box.W() && d.within(n.sheet, t.Bounds().Centre()) && d.space.Free(t.Bounds(), crewAir*u) {
		return t, true
	}
	if t, ok := try(90, size*uprightWide, wide, y, box.Y1); ok {
		return t, true
	}
	if t, ok := try(0, wide, size*levelHigh, box.Y0+cutTop*u, box.Y1); ok {
		return t, true
	}
	return try(90, size*uprightWide, wide, box.Y0+cutTop*u, box.Y1)
}

package crew

import (
	"math"

	"flitchlay/internal/draft"
	"flitchlay/internal/face"
	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
)

// marginWide is what the words left of the wall take: the level line's height, START, UP, DATUM.
func (d *wallBoard) marginWide() float64 {
	u := d.Unit
	w := math.Max(scene.Width(d.Say(d.levelHere()), folio.TapedText*u, true)+4*u, scene.Width(d.Words.Say("wall.datum"), folio.TapedSmall*u, true)+3*u)
	if h := d.startHang(); h != nil {
		w = math.Max(w, scene.Width(d.Words.Say("wall.start"), folio.TapedSmall*u, true)+3*u)
	}
	w = math.Max(w, d.secondsWide(d.faces[0], false))
	return math.Max(w+1.6*u, 13*u)
}

// leftEdge is where the wall, with what is set in it, begins on the page.
func (d *wallBoard) leftEdge() float64 {
	x := d.p.From
	for _, b := range d.w.Boxes() {
		if b.X >= d.p.From {
			x = min(x, b.X-b.PlateWidth/2)
		}
	}
	return d.v.X(x)
}

// rightWide is what is kept free right of the wall.
func (d *wallBoard) rightWide() float64 {
	return math.Max(6*d.Unit, d.secondsWide(d.last(), true))
}

// startHang is the first sheet that begins at the left end of the piece, nil where none does.
func (d *wallBoard) startHang() *face.Hang {
	for _, h := range d.p.Hangs {
		if h.Begins && d.p.StartsHere(h) && d.startsAtEnd(h) && !h.Hung() {
			return h
		}
	}
	return nil
}

// Sizes in the margins of a wall, in mm on letter paper.
const (
	upWide    = 7.6 // the arrow UP with its word
	upHigh    = 14.0
	startHigh = 14.0 // under the ceiling, what START takes over the arrow UP
	sideStep  = 1.0  // from one place that is tried to the next
	underSide = 6.0  // the lowest place ends so far under the floor
)

// margins letters what stands left of the wall: how high the level line is over the floor there, START, UP.
func (d *wallBoard) margins() {
	u := d.Unit
	right := d.leftEdge() - 2.6*u
	low, high := d.extremes()
	roof, floor := d.roof(d.v.X(d.p.From)-1, d.v.X(d.p.From)), d.v.Y(low)
	if d.Level > low && d.Level < high {
		y := d.v.Y(d.Level)
		t := scene.Text{At: scene.Pt(right, y), String: d.Say(d.levelHere()), Height: folio.TapedText * u, Bold: true, Anchor: scene.End, Seat: scene.Centred, Layer: scene.Plumb}
		d.g.Text(t)
		cap := scene.Text{At: scene.Pt(right, y-3.6*u), String: d.Words.Say("wall.level"), Height: folio.TapedSmall * u, Bold: true, Anchor: scene.End, Layer: scene.Plumb}
		d.g.Text(cap)
		d.space.Take(t.Bounds(), cap.Bounds())
	}
	d.secondEnds()
	if d.startHang() != nil {
		w := math.Max(scene.Width(d.Words.Say("wall.start"), folio.TapedSmall*u, true), 9*u)
		if box, ok := d.down(right, w, 9.6*u, roof+1*u, floor); ok {
			d.Word(d.g, scene.Pt(box.X1, box.Y0+folio.TapedSmall*u), d.Words.Say("wall.start"), folio.TapedSmall*u, true, scene.End)
			d.block(d.g, scene.Pt(box.X1-9*u, box.Y0+6.6*u), 9*u, 6*u)
		}
	}
	if box, ok := d.down(right, upWide*u, d.upHigh(), roof+startHigh*u, floor); ok {
		d.arrowUp(box.X1-1.4*u, box)
	}
}

// upHigh is how high the arrow UP is: its word stands upright beside it.
func (d *wallBoard) upHigh() float64 {
	return math.Max(upHigh*d.Unit, scene.Width(d.Words.Say("wall.up"), folio.TapedText*d.Unit, true)+1*d.Unit)
}

// arrowUp draws an arrow up a box with its word left of it.
func (d *wallBoard) arrowUp(x float64, box scene.Box) {
	u := d.Unit
	d.g.VLine(x, box.Y0+flagLong*u, box.Y1, scene.Pen(scene.Marks, 0.5))
	draft.Triangle(d.g, scene.Marks, scene.Pt(x, box.Y0), 90, 3*u, 2.8*u, 0, false)
	d.g.Text(scene.Text{At: scene.Pt(x-2.2*u, (box.Y0+box.Y1)/2+1*u), String: d.Words.Say("wall.up"), Height: folio.TapedText * u, Bold: true, Anchor: scene.Middle, Angle: 90, Layer: scene.Marks})
}

// down finds a free place in the left margin: 1. from y on downward, to just under the floor; 2. from y on upward, beside
// the ceiling and over it, where nothing hangs.
func (d *wallBoard) down(right, wide, high, y, floor float64) (scene.Box, bool) {
	u := d.Unit
	try := func(y float64) (scene.Box, bool) {
		b := scene.Box{X0: right - wide, Y0: y, X1: right, Y1: y + high}
		if d.space.Free(b, crewAir*u) {
			d.space.Take(b)
			return b, true
		}
		return b, false
	}
	for at := y; at+high < floor+underSide*u; at += sideStep * u {
		if b, ok := try(at); ok {
			return b, true
		}
	}
	for at := y; at > d.space.Bounds.Y0; at -= sideStep * u {
		if b, ok := try(at); ok {
			return b, true
		}
	}
	return scene.Box{}, false
}

package crew

import (
	"math"

	"flitchlay/internal/draft"
	"flitchlay/internal/scene"
)

// MarginWide is what the words left of the wall take: the level line's height, START, UP, DATUM.
func (d *WallBoard) MarginWide() float64 {
	u := d.U
	w := math.Max(scene.Width(d.Say(d.Level), CrewText*u, true)+4*u, scene.Width("DATUM", CrewSmall*u, true)+3*u)
	if h := d.StartHang(); h != nil {
		w = math.Max(w, scene.Width("START", CrewSmall*u, true)+3*u)
	}
	return math.Max(w+1.6*u, 13*u)
}

// LeftEdge is where the wall, with what is set in it, begins on the page.
func (d *WallBoard) LeftEdge() float64 {
	x := d.P.From
	for _, b := range d.W.BoxesOf() {
		if b.X >= d.P.From {
			x = min(x, b.X-b.PlateWidth/2)
		}
	}
	return d.V.X(x)
}

// RightWide is what is kept free right of the wall.
func (d *WallBoard) RightWide() float64 { return 6 * d.U }

// StartHang is the first sheet that begins at the left end of the piece, nil where none does.
func (d *WallBoard) StartHang() *Hang {
	for _, h := range d.P.Hangs {
		if h.Begins && d.P.StartsHere(h) && d.StartsAtEnd(h) && !h.Sheet().Hung {
			return h
		}
	}
	return nil
}

// Margins letters what stands left of the wall: the level line's height, START, UP.
func (d *WallBoard) Margins() {
	u := d.U
	right := d.LeftEdge() - 2.6*u
	low, high := d.Extremes()
	roof, floor := d.Roof(d.V.X(d.P.From)-1, d.V.X(d.P.From)), d.V.Y(low)
	if d.Level > low && d.Level < high {
		y := d.V.Y(d.Level)
		t := scene.Text{At: scene.Pt(right, y), String: d.Say(d.Level), Height: CrewText * u, Bold: true, Anchor: scene.End, Seat: scene.Centred, Layer: scene.Plumb}
		d.G.Text(t)
		cap := scene.Text{At: scene.Pt(right, y-3.6*u), String: "LEVEL", Height: CrewSmall * u, Bold: true, Anchor: scene.End, Layer: scene.Plumb}
		d.G.Text(cap)
		d.Space.Take(t.Bounds(), cap.Bounds())
	}
	if d.StartHang() != nil {
		w := math.Max(scene.Width("START", CrewSmall*u, true), 9*u)
		if box, ok := d.Down(right, w, 9.6*u, roof+1*u, floor); ok {
			d.Word(d.G, scene.Pt(box.X1, box.Y0+CrewSmall*u), "START", CrewSmall*u, true, scene.End)
			d.Block(d.G, scene.Pt(box.X1-9*u, box.Y0+6.6*u), 9*u, 6*u)
		}
	}
	const up = 14
	if box, ok := d.Down(right, 7.6*u, up*u, roof+14*u, floor); ok {
		x := box.X1 - 1.4*u
		d.G.VLine(x, box.Y0+FlagLong*u, box.Y1, scene.Pen(scene.Marks, 0.5))
		draft.Triangle(d.G, scene.Marks, scene.Pt(x, box.Y0), 90, 3*u, 2.8*u, 0, false)
		t := scene.Text{At: scene.Pt(x-2.2*u, (box.Y0+box.Y1)/2+1*u), String: "UP", Height: CrewText * u, Bold: true, Anchor: scene.Middle, Angle: 90, Layer: scene.Marks}
		d.G.Text(t)
	}
}

// Down finds a free place in the left margin, from y on downward, from there upward where none is free.
func (d *WallBoard) Down(right, wide, high, y, floor float64) (scene.Box, bool) {
	u := d.U
	try := func(y float64) (scene.Box, bool) {
		b := scene.Box{X0: right - wide, Y0: y, X1: right, Y1: y + high}
		if d.Space.Free(b, CrewAir*u) {
			d.Space.Take(b)
			return b, true
		}
		return b, false
	}
	for at := y; at+high < floor+6*u; at += 1 * u {
		if b, ok := try(at); ok {
			return b, true
		}
	}
	for at := y; at > d.Space.Bounds.Y0; at -= 1 * u {
		if b, ok := try(at); ok {
			return b, true
		}
	}
	return scene.Box{}, false
}

package crew

import (
	"sort"

	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// letterOf is the letter of the i-th box: a to z, then aa, ab, ...
func letterOf(i int) string {
	if i < 26 {
		return string(rune('a' + i))
	}
	return letterOf(i/26-1) + letterOf(i%26)
}

// boxOn is a box of the wall with its letter.
type boxOn struct {
	*room.Box
	Letter string
}

// BoxesOf lists the boxes of a wall from left to right; the letters run through the whole wall.
func (w *Wall) BoxesOf() []boxOn {
	var list []boxOn
	for i := range w.W.Boxes {
		list = append(list, boxOn{Box: &w.W.Boxes[i]})
	}
	sort.SliceStable(list, func(i, j int) bool {
		a, b := list[i], list[j]
		if a.X != b.X {
			return a.X < b.X
		}
		return a.Z < b.Z
	})
	for i := range list {
		list[i].Letter = letterOf(i)
	}
	return list
}

// boxes draws what is set in the wall: the plate, and its letter beside it.
func (d *wallBoard) boxes() {
	u, size := d.u, folio.TapedText*d.u
	type drawn struct {
		boxOn
		plate scene.Box
		g     *scene.Group
	}
	var list []drawn
	for _, b := range d.w.BoxesOf() {
		if b.X < d.p.from || b.X >= d.p.to && d.p.rightCut() {
			continue
		}
		plate := d.v.Box(b.X-b.PlateWidth/2, b.Z-b.PlateHigh/2, b.X+b.PlateWidth/2, b.Z+b.PlateHigh/2)
		g := d.g.Part(scene.Tag{Class: "box", Title: b.Name, Data: []scene.Datum{folio.Datum("kind", string(b.Kind)), folio.Datum("x", folio.Mm(b.X)), folio.Datum("z", folio.Mm(b.Z))}})
		g.Rect(plate, scene.Pen(scene.Boxes, folio.TapedFine).Filled(scene.White))
		g.Line(scene.Pt(plate.X0, plate.Y1), scene.Pt(plate.X1, plate.Y0), scene.Pen(scene.Boxes, 0.25))
		d.space.Take(plate.Inset(-0.2 * u))
		list = append(list, drawn{b, plate, g})
	}
	for _, b := range list {
		w := scene.Width(b.Letter, size, true)
		c := b.plate.Centre()
		var at []scene.Point
		for _, gap := range []float64{1.6 * u, 0.9 * u} {
			side, rise := gap+w/2, gap+size/2
			for _, y := range []float64{c.Y, c.Y - b.plate.H()/4, c.Y + b.plate.H()/4} {
				at = append(at, scene.Pt(b.plate.X0-side, y), scene.Pt(b.plate.X1+side, y))
			}
			at = append(at, scene.Pt(c.X, b.plate.Y0-rise), scene.Pt(c.X, b.plate.Y1+rise))
			for _, x := range []float64{b.plate.X0 - side, b.plate.X1 + side} {
				at = append(at, scene.Pt(x, b.plate.Y0-rise), scene.Pt(x, b.plate.Y1+rise))
			}
		}
		for ring := 1.0; ring < 8; ring++ { // further out on a leader
			o := b.plate.Inset(-(4 + 3*ring) * u)
			for _, dx := range []float64{-1, -0.5, 0, 0.5, 1} {
				for _, dy := range []float64{-1, -0.5, 0, 0.5, 1} {
					if dx*dx == 1 || dy*dy == 1 {
						at = append(at, scene.Pt(c.X+dx*o.W()/2, c.Y+dy*o.H()/2))
					}
				}
			}
		}
		if !d.boxLetter(b.g, b.plate, b.Letter, at, 1*u) && !d.boxLetter(b.g, b.plate, b.Letter, at, 0.6*u) {
			d.callout(b.g, c, b.Letter, "box "+b.Letter+" at "+d.Say(b.X), false)
		}
	}
}

// besideBox is how many of the places for a box's letter are right beside it; further ones take a leader.
const besideBox = 24

// boxLetter letters a box's letter at the first place that is free.
func (d *wallBoard) boxLetter(g *scene.Group, plate scene.Box, letter string, at []scene.Point, air float64) bool {
	for i, p := range at {
		t := scene.Text{At: p, String: letter, Height: folio.TapedText * d.u, Bold: true, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Boxes}
		// as high as letters can be, so that c and a in a row do not stand closer than b and d
		whole := t.Bounds().Union(scene.Box{X0: p.X, Y0: p.Y - t.Height/2, X1: p.X, Y1: p.Y + t.Height*0.8})
		if !d.space.Free(whole, air) {
			continue
		}
		if i >= besideBox {
			from, to := leaderEnds(plate, t.Bounds().Inset(-0.6*d.u))
			if !d.space.FreeLine(from, to, 0.3*d.u) {
				continue
			}
			g.Line(from, to, scene.Pen(scene.Boxes, 0.25))
			d.space.Stroke(from, to)
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
	if d.w.Run.Up {
		return d.boxLinesUp()
	}
	var lines []string
	for _, b := range d.w.BoxesOf() {
		if b.X < d.p.from || b.X >= d.p.to && d.p.rightCut() {
			continue
		}
		hole := d.bare(b.HoleWidth) + " x " + d.bare(b.HoleHigh)
		if b.Kind.Traits().NeverCovered {
			hole += ", never cover"
		}
		found := false
		for _, h := range d.p.hangs {
			if b.X+b.HoleWidth/2 <= h.from || b.X-b.HoleWidth/2 >= h.to || !d.covered(b.X, b.Z, h) {
				continue
			}
			found = true
			at := d.bare(b.X-h.Start) + " +, "
			if b.X-b.HoleWidth/2 < h.Start { // the hole begins in the sheet before
				at = "hole ends at " + d.bare(b.X+b.HoleWidth/2-h.Start) + " +, "
			}
			lines = append(lines, b.Letter+" in "+d.numberAt(h, b.Z)+": "+at+d.Updown(b.Z)+", "+hole)
		}
		if !found {
			lines = append(lines, b.Letter+": stands where no covering is")
		}
	}
	return lines
}

// covered reports whether a sheet of a place covers the height beside x.
func (d *wallBoard) covered(x, z L, h *hang) bool {
	x = min(max(x, h.from+1), h.to-1)
	for _, s := range d.shows(x) {
		if s[0] <= z && z <= s[1] {
			return true
		}
	}
	return false
}

// numberAt is the number of the sheet of a column that covers a height.
func (d *wallBoard) numberAt(h *hang, z L) string {
	for _, s := range h.sheets {
		for _, p := range s.Pieces {
			low, high := p.Outline[0].Z, p.Outline[0].Z
			for _, q := range p.Outline {
				high = max(high, q.Z)
			}
			if p.Wall == d.w.wall && low <= z && z <= high {
				return d.Set.number(s)
			}
		}
	}
	return d.Numbers(h)
}

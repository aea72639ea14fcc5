package crew

import (
	"math"

	"flitchlay/internal/draft"
	"flitchlay/internal/face"
	"flitchlay/internal/folio"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// secondPen is how wide a second level line is: heavier than the first, so that neither is taken for the other.
const secondPen = 0.7

// stairs reports whether any wall has a second level line.
func (c *Set) stairs() bool {
	for _, w := range c.Walls {
		if !w.Run.Up && len(w.Seconds()) > 0 {
			return true
		}
	}
	return false
}

// seconds are the second level lines on this page of a wall, with the ends of each there.
func (d *wallBoard) seconds() []face.Second {
	var list []face.Second
	for _, s := range d.w.Seconds() {
		if s.From, s.To = max(s.From, d.p.From), min(s.To, d.p.To); s.From < s.To {
			list = append(list, s)
		}
	}
	return list
}

// secondLines draws the second level lines where the first is out of reach, but not over the white of openings.
func (d *wallBoard) secondLines() {
	var clear []scene.Box
	for i := range d.w.W.Openings {
		if box, ok := d.hole(&d.w.W.Openings[i]); ok {
			clear = append(clear, box)
		}
	}
	for _, s := range d.seconds() {
		z := d.Level + s.By
		g := d.g.Part(scene.Tag{Class: "second-line", Data: []scene.Datum{folio.Datum("from", folio.Mm(s.From)), folio.Datum("to", folio.Mm(s.To)), folio.Datum("over", folio.Mm(s.By))}})
		a, b := d.v.Pt(s.From, z), d.v.Pt(s.To, z)
		if s.From == d.p.From {
			a = a.Add(-2*d.Unit, 0)
		}
		if s.To == d.p.To {
			b = b.Add(2*d.Unit, 0)
		}
		points := draft.Outside(a, b, clear...)
		for i := 0; i+1 < len(points); i += 2 {
			d.line(g, points[i], points[i+1], scene.Pen(scene.Plumb, secondPen).As(scene.Chain(folio.TapedFine)))
		}
	}
}

// atEnd reports whether a second line is named in the margin at an end of the page: it comes to the right end, else to the left.
func (d *wallBoard) atEnd(s face.Second, right bool) bool {
	if z := d.Level + s.By; z <= room.At(d.w.W.Floor, s.To) || z >= room.At(d.w.W.Ceiling, s.To) {
		return false
	}
	toRight := s.To == d.p.To && d == d.last()
	if right {
		return toRight
	}
	return !toRight && s.From == d.p.From && d.first()
}

// secondLabel are the two lines that name a second line in a margin: which it is, and how far it is from the first.
func (d *wallBoard) secondLabel(s face.Second) (name, by string) {
	arrow := " ↑"
	if s.By < 0 {
		arrow = " ↓"
	}
	return d.Words.Say("wall.second", s.No), d.Say(s.By.Abs()) + arrow
}

// secondsWide is what the names of second lines take in a margin.
func (d *wallBoard) secondsWide(f *wallBoard, right bool) float64 {
	w := 0.0
	for _, s := range f.seconds() {
		if f.atEnd(s, right) {
			name, by := d.secondLabel(s)
			w = math.Max(w, math.Max(scene.Width(name, folio.TapedSmall*d.Unit, true), scene.Width(by, folio.TapedText*d.Unit, true))+5*d.Unit)
		}
	}
	return w
}

// secondEnds letters the names of second lines in the margins.
func (d *wallBoard) secondEnds() {
	u := d.Unit
	for _, right := range []bool{false, true} {
		f, x, anchor := d, d.leftEdge()-2.6*u, scene.End
		if right {
			f, anchor = d.last(), scene.Start
			x = f.v.X(f.p.To) + 2.6*u
		}
		for _, s := range f.seconds() {
			if !f.atEnd(s, right) {
				continue
			}
			name, by := d.secondLabel(s)
			y := f.v.Y(d.Level + s.By)
			for _, t := range []scene.Text{
				{At: scene.Pt(x, y-3.6*u), String: name, Height: folio.TapedSmall * u, Bold: true, Anchor: anchor, Layer: scene.Plumb},
				{At: scene.Pt(x, y), String: by, Height: folio.TapedText * u, Bold: true, Anchor: anchor, Seat: scene.Centred, Layer: scene.Plumb},
			} {
				f.g.Text(t)
				d.space.Take(t.Bounds())
			}
		}
	}
}

// secondNames names over the ceiling the second lines that come to no end of the page.
func (d *wallBoard) secondNames() {
	for _, s := range d.seconds() {
		if d.atEnd(s, false) || d.atEnd(s, true) {
			continue
		}
		key := "wall.second_at"
		if s.By < 0 {
			key = "wall.second_below"
		}
		text := d.Words.Say(key, s.No, d.Say(s.By.Abs()))
		d.callout(d.g, d.v.Pt((s.From+s.To)/2, d.Level+s.By), text, text, false)
	}
}

package crew

import (
	"flitchlay/internal/days"
	"flitchlay/internal/draft"
	"flitchlay/internal/face"
	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
)

// hold marks the seams after which the work stops for a look and goes on. That at the end, when all hangs, is signed under
// the drawing and needs no mark in it.
func (d *wallBoard) hold() {
	for _, h := range d.p.holds() {
		if d.p.held(h).Hold != days.Finished {
			d.holdAt(h)
		}
	}
}

func (d *wallBoard) holdAt(h *face.Hang) {
	u, size := d.Unit, folio.TapedText*d.Unit
	at := d.v.X(min(h.To, d.p.To))
	text := d.HoldWords(d.p.held(h))
	w := scene.Width(text, size, true)
	const sign = 5.2
	// 1. the triangle over the seam, the words to its right, where the work goes on; 2. the words to its left
	wide := sign*u + 1.6*u + w
	box, which, ok := d.overhead("", wide, size*1.15, at-sign/2*u, at+sign/2*u-wide)
	if !ok {
		return
	}
	left := which == 1
	tip := box.X0 + sign/2*u
	if left {
		tip = box.X1 - sign/2*u
	}
	g := d.g.Part(scene.Tag{Class: "hold"})
	draft.Triangle(g, scene.Marks, scene.Pt(tip, box.Y1), 270, 4.4*u, sign*u, 0.7, true)
	if left {
		d.Word(g, scene.Pt(box.X0, box.Y1-0.9*u), text, size, true, scene.Start)
		return
	}
	d.Word(g, scene.Pt(box.X1, box.Y1-0.9*u), text, size, true, scene.End)
}

// starts marks where a first sheet begins inside a wall, where the work goes on after what hangs, and where the room closes.
func (d *wallBoard) starts() {
	for _, h := range d.p.Hangs {
		goesOn := !h.Begins && d.SomeHang() && d.StartsWith(d.w.Face, h)
		if (h.Begins && !d.startsAtEnd(h) || goesOn) && d.p.StartsHere(h) && !h.Hung() {
			d.startLabel(h)
		}
		if h.Closes && d.p.Here(h) && h.Seam != nil {
			first := d.firstOf(h)
			d.label(d.v.X(h.X), d.Words.Say("wall.closing", d.SheetNumbers(h)+" | "+first), true, scene.End)
		}
	}
}

// firstOf is the number of the sheet that the last one closes on.
func (d *wallBoard) firstOf(h *face.Hang) string {
	place := d.w.Run.Spans[h.Sheet().Span].FirstSheet
	for i := range d.w.Run.Sheets {
		if s := &d.w.Run.Sheets[i]; s.Place == place {
			return d.SheetNumber(s)
		}
	}
	return ""
}

// startsAtEnd reports whether a first sheet begins at the wall's left end, where START stands in the margin.
func (d *wallBoard) startsAtEnd(h *face.Hang) bool {
	return !h.Opens && h.From <= d.w.Left+max(0, d.w.W.LeanLeft)
}

func (d *wallBoard) startLabel(h *face.Hang) {
	u, size := d.Unit, folio.TapedText*d.Unit
	const arrow = 6
	text := d.Words.Say("wall.start_of", d.SheetNumbers(h))
	w := scene.Width(text, size, true) + (arrow+1.6)*u
	at := h.From
	if h.Opens { // the line that is struck for its raw edge, as in the tape list
		at = h.Start
	}
	x := d.v.X(at)
	box, _, ok := d.overhead(d.Words.Say("wall.start_at", d.SheetNumbers(h), d.at(at)), w, size*1.1, x, x-w/3, x-w/2)
	if ok {
		d.block(d.g, scene.Pt(box.X0, box.Y1-0.9*u-size/2), arrow*u, 4.4*u)
		d.Word(d.g, scene.Pt(box.X1, box.Y1-0.9*u), text, size, true, scene.End)
	}
}

package crew

import (
	"slices"
	"strings"

	"flitchlay/internal/draft"
	"flitchlay/internal/face"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/scene"
)

// mostMore is by how many lines boxes and rips may reach up into the drawing.
const mostMore = 4

// footPitch is from one line of the foot to the next.
const footPitch = 5.6

// grow makes boxes and rips higher by some lines, at the cost of the drawing.
func (b *board) grow(lines int) {
	b.more = lines
	b.Field.Y1 -= float64(lines) * footPitch * b.Unit
}

// footStrip draws the three fields under the drawing: boxes, rips, hold. It gives back what they have no room for; beside are the
// heads of the fields of which something of that stands beside the drawing.
func (b *board) footStrip(g *scene.Group, d *wallBoard, beside map[string]bool) []note {
	f := b.Foot
	one, two := f.X0+f.W()*0.342, f.X0+f.W()*0.638
	pen := scene.Pen(scene.Frame, folio.TapedFine)
	top := b.Field.Y1
	g.HLine(f.X0, two, top, pen)
	g.HLine(two, f.X1, f.Y0, pen)
	g.VLine(one, top, f.Y1, pen)
	g.VLine(two, top, f.Y1, pen)
	var rest []note
	var boxes []string
	d.each(func(f *wallBoard) { boxes = append(boxes, f.boxLines()...) })
	rips := d.ripLines()
	head := b.Words.Both("foot.boxes")
	switch openings := len(d.outside)+len(d.kept) > 0; {
	case len(boxes) > 0 && openings:
		head = b.Words.Say("foot.both")
	case openings:
		head = b.Words.Both("foot.openings")
	}
	boxes = slices.Concat(d.kept, boxes, d.outside)
	caution := b.Words.Say("foot.edges")
	if d.w.Run.Up {
		caution = b.Words.Say("foot.edges_up")
	}
	rest = append(rest, d.footList(g, beside, scene.Box{X0: f.X0, Y0: top, X1: one, Y1: f.Y1}, head, boxes, 4+b.more, caution)...)
	rest = append(rest, d.footList(g, beside, scene.Box{X0: one, Y0: top, X1: two, Y1: f.Y1}, b.Words.Say("foot.rip"), rips, 3+b.more,
		b.Words.Say("foot.pencil"), b.Words.Say("foot.blade"))...)
	b.holdField(g, scene.Box{X0: two, Y0: f.Y0, X1: f.X1, Y1: f.Y1}, d)
	return rest
}

// footList letters a heading, as many lines as stand under it, and cautions; the lines that have no room come back.
func (b *wallBoard) footList(g *scene.Group, beside map[string]bool, box scene.Box, head string, lines []string, most int, caution ...string) []note {
	u := b.Unit
	x, w := box.X0+3*u, box.W()-5*u
	b.Word(g, scene.Pt(x, box.Y0+6*u), head, folio.TapedText*u, true, scene.Start)
	if len(lines) == 0 {
		lines = []string{b.Words.Both("foot.none")}
	}
	var shown []string
	var rest []note
	for i, line := range lines {
		parts := scene.Wrap(line, folio.TapedText*u, false, w)
		room := most - len(shown)
		if i < len(lines)-1 {
			room-- // a line must stay to say that there are more
		}
		if len(parts) > room && !(i == len(lines)-1 && len(parts) <= most-len(shown)) {
			rows := b.rowsOf(lines[i:])
			line := b.Words.Say("foot.others", rows)
			if !beside[head] {
				line = b.Words.Say("tape.others", rows)
			}
			if beside[head] && scene.Width(line, folio.TapedText*u, false) > w {
				line = b.Words.Say("foot.others_short", rows)
			}
			shown = append(shown, line)
			rest = []note{{head, lines[i:], true}}
			break
		}
		shown = append(shown, parts...)
	}
	for i, line := range shown {
		size := draft.Squeeze(line, folio.TapedText*u, folio.TapedSmall*u, false, w)
		b.Word(g, scene.Pt(x, box.Y0+(12.2+footPitch*float64(i))*u), line, size, false, scene.Start)
	}
	for i, line := range caution {
		y := box.Y1 - (2+4.2*float64(len(caution)-1-i))*u
		b.Word(g, scene.Pt(x, y), scene.Shorten(line, folio.TapedSmall*u, false, w), folio.TapedSmall*u, false, scene.Start)
	}
	return rest
}

// of notes of which sheets a line under the drawing is, whose rows in the cut list say the same.
func (d *drawing) of(line string, sheets ...*layout.Sheet) string {
	if d.about == nil {
		d.about = map[string][]*layout.Sheet{}
	}
	d.about[line] = append(d.about[line], sheets...)
	return line
}

// rowsOf names the pages of the cut list that have what some lines say.
func (d *wallBoard) rowsOf(lines []string) string {
	var sheets []*layout.Sheet
	for _, line := range lines {
		sheets = append(sheets, d.about[line]...)
	}
	return d.rowsWord(sheets)
}

// ripLines say which sheets are ripped, at which edge, and what stays; those alike in one line.
func (d *wallBoard) ripLines() []string {
	type rip struct {
		side  string
		stays L
	}
	var order []rip
	numbers, sheets := map[rip][]string{}, map[rip][]*layout.Sheet{}
	var lines, last []string
	for _, f := range d.faces {
		for _, h := range f.p.rows {
			for _, s := range h.Sheets {
				if x := d.Count.CutOf(s); x != nil && x.Closes && !x.Hung {
					if f.p.Here(h) && !h.After {
						last = append(last, d.of(d.SheetNumber(s)+" "+x.ClosingShort(d.cutSpeech(), d.Room.Veneer.Overlap), s))
					} else if !h.Before && f.p.StartsHere(h) && !d.endsOnPage(h) {
						last = append(last, d.of(d.Words.Say("foot.closes", d.SheetNumber(s), d.rowsWord([]*layout.Sheet{s})), s))
					}
					continue
				}
				if s.Ripped == "" || s.Hung || len(s.Pieces) == 0 || h.Before || !f.p.StartsHere(h) {
					continue
				}
				k := rip{s.Ripped, s.RipTo}
				if numbers[k] == nil {
					order = append(order, k)
				}
				numbers[k], sheets[k] = append(numbers[k], d.SheetNumber(s)), append(sheets[k], s)
			}
		}
	}
	for _, k := range order {
		side := k.side
		if d.w.Run.Up {
			side = map[string]string{"left": "lower", "right": "upper"}[side]
		}
		lines = append(lines, d.of(d.Words.Say("foot.edge_off", strings.Join(numbers[k], ", "), d.Words.Of("side", side), d.Inches(k.stays)), sheets[k]...))
	}
	return append(last, lines...) // what is measured on the wall first: other pages point to it
}

// endsOnPage reports whether the right edge of a place is on another wall of the page.
func (d *drawing) endsOnPage(h *face.Hang) bool {
	return d.unrolled() && slices.ContainsFunc(d.faces, func(f *wallBoard) bool {
		return slices.ContainsFunc(f.p.Hangs, func(x *face.Hang) bool { return x.Place == h.Place && f.p.Here(x) && !x.After })
	})
}

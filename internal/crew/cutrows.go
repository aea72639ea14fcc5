package crew

import (
	"strconv"
	"strings"

	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
)

// cutWidths are the widths of the columns, from the page's frame on; wall takes the rest.
//
// Shape: tick, order, number, flitch, cut, ends, rip.
func (b *board) cutWidths() []float64 {
	list := []float64{9, 8, 23, 16, 36, 40, 21}
	for i := range list {
		list[i] *= b.Unit
	}
	return list
}

// cutHead draws the head of the columns and gives the y under it.
func (b *board) cutHead(g *scene.Group, y float64) float64 {
	u, f := b.Unit, b.Page.Frame
	say := b.Words.Say
	heads := []string{"", say("list.order"), say("list.number"), say("list.flitch"), say("list.cut"), say("list.head_foot"), say("list.rip"), say("list.wall")}
	if b.Room.Veneer.Horizontal {
		heads[5] = say("list.from_to")
	}
	high := 6.4 * u
	g.HLine(f.X0, f.X1, y, scene.Pen(scene.Frame, folio.TapedFine))
	x := f.X0
	for i, s := range heads {
		if s != "" {
			at, anchor := x+1.2*u, scene.Start
			if i == 4 || i == 5 {
				at, anchor = x+b.cutWidths()[i]-1.6*u, scene.End
			}
			size := folio.TapedText * u
			if i == 1 { // as narrow as what stands under it
				size = folio.TapedSmall * u
				at, anchor = x+b.cutWidths()[i]/2, scene.Middle
			}
			b.Word(g, scene.Pt(at, y+4.6*u), s, size, i == 2 || i == 4, anchor)
		}
		if i < len(b.cutWidths()) {
			x += b.cutWidths()[i]
		}
	}
	g.HLine(f.X0, f.X1, y+high, scene.Pen(scene.Frame, folio.TapedFine))
	return y + high
}

// cutRow draws one sheet of the list.
func (b *board) cutRow(g *scene.Group, r cutRow, y, high float64) {
	u, f, w := b.Unit, b.Page.Frame, b.cutWidths()
	g = g.Part(scene.Tag{Class: "sheet", Data: []scene.Datum{folio.Datum("place", strconv.Itoa(r.sheet.Place)), folio.Datum("flitch", r.sheet.Flitch), folio.Datum("number", strconv.Itoa(r.sheet.Number)), folio.Datum("cut", folio.Mm(r.sheet.CutLength))}})
	mid := y + high/2
	x := f.X0
	put := func(s string, size, least float64, bold bool, wide float64, anchor scene.Anchor) {
		if s == "" {
			return
		}
		at := x + 1.2*u
		switch anchor {
		case scene.Middle:
			at = x + wide/2
		case scene.End:
			at = x + wide - 1.6*u
		}
		size = draft.Squeeze(s, size*u, least*u, bold, wide-2.2*u)
		g.Text(scene.Text{At: scene.Pt(at, mid), String: scene.Shorten(s, size, bold, wide-1.6*u), Height: size, Bold: bold, Anchor: anchor, Seat: scene.Centred, Layer: scene.Notes})
	}
	g.Rect(scene.BoxAt(x+1.8*u, mid-3*u, 6*u, 6*u), scene.Pen(scene.Frame, folio.TapedFine))
	x += w[0]
	put(strconv.Itoa(r.order), folio.TapedText, folio.TapedSmall, false, w[1], scene.Middle)
	x += w[1]
	put(r.number, folio.TapedName, folio.TapedText, true, w[2], scene.Middle)
	x += w[2]
	if b.flitchFits(r) {
		put(r.flitch, folio.TapedSmall, folio.TapedSmall, false, w[3], scene.Start)
	}
	x += w[3]
	put(r.cut, folio.TapedLarge, folio.TapedText, true, w[4], scene.End)
	x += w[4]
	b.pair(g, scene.BoxAt(x, y, w[5], high), r.ends, false, scene.End)
	x += w[5]
	if r.rip != "" {
		b.pair(g, scene.BoxAt(x, y, w[6], high), []string{r.side, r.rip}, true, scene.Start)
	}
	x += w[6]
	if b.wallFits(r) {
		b.packed(g, scene.BoxAt(x, y, f.X1-x, high), r.wall)
	}
	for i, line := range b.moreLines(r) {
		b.Word(g, scene.Pt(b.moreLeft(), y+high+(float64(i)+0.7)*morePitch*u), line, folio.TapedText*u, false, scene.Start)
	}
}

// morePitch is from line to line of what else is done to a sheet, in mm on letter paper; moreUnder is under the last.
const (
	morePitch = 5.4
	moreUnder = 1.4
)

// moreLeft is where the lines of what else is done to a sheet begin: right of its order.
func (b *board) moreLeft() float64 {
	w := b.cutWidths()
	return b.Page.Frame.X0 + w[0] + w[1] + 1.2*b.Unit
}

// moreLines are what else is done to a sheet, on as many lines as it takes.
func (b *board) moreLines(r cutRow) []string {
	var lines, more []string
	if !b.flitchFits(r) {
		more = append(more, b.Words.Say("tape.flitch", r.flitch))
	}
	if !b.wallFits(r) {
		more = append(more, r.wall)
	}
	for _, s := range append(more, r.more...) {
		lines = append(lines, scene.Wrap(s, folio.TapedText*b.Unit, false, b.Page.Frame.X1-2*b.Unit-b.moreLeft())...)
	}
	return lines
}

// flitchFits and wallFits report whether a name has room in its column; else it stands with what else is said of the sheet.
func (b *board) flitchFits(r cutRow) bool {
	return scene.Width(r.flitch, folio.TapedSmall*b.Unit, false) <= b.cutWidths()[3]-1.6*b.Unit
}

func (b *board) wallFits(r cutRow) bool {
	w := b.Page.Frame.W() - 2.2*b.Unit
	for _, column := range b.cutWidths()[:7] {
		w -= column
	}
	return len(scene.Wrap(r.wall, folio.TapedSmall*b.Unit, false, w)) <= mostPacked
}

// mostPacked is how many small lines a cell takes.
const mostPacked = 2

// rowHigh is how high a row of the cut list is.
func (b *board) rowHigh(r cutRow) float64 {
	high := cutHigh * b.Unit
	if n := len(b.moreLines(r)); n > 0 {
		high += (morePitch*float64(n) + moreUnder) * b.Unit
	}
	return high
}

// pair letters one or two lines in a cell; more are run together.
func (b *board) pair(g *scene.Group, box scene.Box, lines []string, bold bool, anchor scene.Anchor) {
	u, size := b.Unit, folio.TapedText*b.Unit
	if len(lines) > 2 {
		b.packed(g, box, strings.Join(lines, ", "))
		return
	}
	for i, s := range lines {
		y := box.Centre().Y + (float64(i)-float64(len(lines)-1)/2)*5.2*u - 0.33*u*float64(len(lines)-1)
		at := box.X0 + 1.2*u
		if anchor == scene.End {
			at = box.X1 - 1.6*u
		}
		fit := draft.Squeeze(s, size, folio.TapedSmall*u, bold, box.W()-2.2*u)
		g.Text(scene.Text{At: scene.Pt(at, y), String: scene.Shorten(s, fit, bold, box.W()-1.6*u), Height: fit, Bold: bold, Anchor: anchor, Seat: scene.Centred, Layer: scene.Notes})
	}
}

// packed letters words in a cell: 1. as text on one line; 2. small on two; 3. small, the second line shortened.
func (b *board) packed(g *scene.Group, box scene.Box, text string) {
	if text == "" {
		return
	}
	u := b.Unit
	const most, pitch = mostPacked, 4.1
	size := folio.TapedText * u
	lines := scene.Wrap(text, size, false, box.W()-2.2*u)
	if len(lines) > 1 {
		size = folio.TapedSmall * u
		lines = scene.Wrap(text, size, false, box.W()-2.2*u)
	}
	if len(lines) > most {
		rest := strings.Join(lines[most-1:], " ")
		lines = append(lines[:most-1], scene.Shorten(rest, size, false, box.W()-2.2*u))
	}
	for i, s := range lines {
		y := box.Centre().Y + (float64(i)-float64(len(lines)-1)/2)*(pitch*u)
		g.Text(scene.Text{At: scene.Pt(box.X0+1.2*u, y), String: s, Height: size, Seat: scene.Centred, Layer: scene.Notes})
	}
}

// struckRow draws what is not cut, struck out on both sides of its words.
func (b *board) struckRow(g *scene.Group, r cutRow, y, high float64) {
	u, f, w := b.Unit, b.Page.Frame, b.cutWidths()
	mid := y + high/2
	x := f.X0 + w[0] + w[1] + 1.2*u
	words := r.struck
	if r.flitch != "" {
		words = r.flitch + ", " + words
	}
	size := folio.TapedLarge * u
	room := f.X1 - x - scene.Width(words, folio.TapedText*u, false) - 24*u
	number := scene.Shorten(r.number, size, true, room)
	g.Text(scene.Text{At: scene.Pt(x, mid), String: number, Height: size, Bold: true, Seat: scene.Centred, Layer: scene.Notes})
	at := x + scene.Width(number, size, true) + 3*u
	g.Text(scene.Text{At: scene.Pt(at, mid), String: words, Height: folio.TapedText * u, Seat: scene.Centred, Layer: scene.Notes})
	pen := scene.Pen(scene.Frame, 0.5)
	g.HLine(f.X0+2*u, x-1.4*u, mid, pen)
	g.HLine(at+scene.Width(words, folio.TapedText*u, false)+1.6*u, f.X1-3*u, mid, pen)
}

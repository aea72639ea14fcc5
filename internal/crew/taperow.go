package crew

import (
	"math"

	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
)

// hungHeads head what is written as hung, where the widest have room: the raw edge, which can be measured the same evening, at
// its two ends.
func (b *board) hungHeads(up bool) [][2]string {
	say := b.Words.Say
	first, last := say("hung.head"), say("hung.foot")
	if up {
		first, last = say("hung.left"), say("hung.right")
	}
	ends := first + "/" + last
	return [][2]string{{say("hung.as_hung", first), say("hung.as_hung", last)}, {say("hung.raw_edge_at", first), say("hung.raw_edge_at", last)},
		{say("hung.raw_edge"), ends}, {say("hung.edge"), ends}, {first, last}}
}

// tapeHeads letters the heads of the columns: edge and seam as the keys of [[hung]] call them. In the last, what is hung is
// written: its edge, at the head over at the foot.
// Under the head of the seams stands how far the lines may be off, where the rows say it.
func (b *board) tapeHeads(g *scene.Group, columns [4]float64, top float64, up bool, off []string) {
	u := b.Unit
	x := b.List.X0
	for i, word := range []string{b.Words.Say("tape.number"), b.Words.Say("tape.raw_edge"), b.Words.Say("tape.seam")} {
		base := top + tapeHead*u - 3.1*u
		if i == 2 && off != nil {
			base = top + 4.5*u
		}
		b.Word(g, scene.Pt(x+columns[i]/2, base), word, folio.TapedText*u, false, scene.Middle)
		for _, words := range off {
			if i == 2 && scene.Width(words, folio.TapedSmall*u, false)+1.2*u <= columns[2] {
				b.Word(g, scene.Pt(x+columns[2]/2, top+9.1*u), words, folio.TapedSmall*u, false, scene.Middle)
				break
			}
		}
		x += columns[i]
	}
	for _, words := range b.hungHeads(up) {
		if math.Max(scene.Width(words[0], folio.TapedSmall*u, false), scene.Width(words[1], folio.TapedSmall*u, false))+1.8*u > columns[3] {
			continue
		}
		for k, word := range words {
			b.Word(g, scene.Pt(x+columns[3]/2, top+(3.6+4.1*float64(k))*u), word, folio.TapedSmall*u, false, scene.Middle)
		}
		return
	}
}

// tapeLines draws the upright lines between the columns, but not through rows that run across.
func (b *board) tapeLines(g *scene.Group, rows []tapeRow, columns [4]float64, top, high float64) {
	x := b.List.X0
	for i := range 3 {
		x += columns[i]
		from := top - tapeHead*b.Unit
		y := top
		stop := func(at float64) {
			if from < at {
				g.VLine(x, from, at, scene.Pen(scene.Frame, folio.TapedFine))
			}
		}
		for _, r := range rows {
			next := y + b.rowOf(r, high)
			if r.rule {
				next += ruleMore * b.Unit
			}
			if r.head != "" || r.face != "" || i == 1 && r.across() {
				stop(y)
				from = next
			}
			y = next
		}
		stop(y)
	}
}

// Widths of the columns of the tape list, in mm on letter paper: what each has at least and at most.
const (
	numberLeast = 10.0
	numberMost  = 12.6 // more figures are lettered smaller
	numberTight = 10.6 // what it keeps where it gives way
	lineLeast   = 20.0
	lineFair    = 35.0 // that figures are lettered large in, where the others leave it
	lineMost    = 38.0 // for the figure of a line
	wordsMost   = 44.0 // for words beside it, or in its place
	seamLeast   = 14.0
	writeFair   = 20.0 // to write in what was hung
	writeGood   = 18.0 // before figures of lines are lettered large: a head and a foot with sixteenths
	writeLeast  = 11.0 // no hand writes a figure in less
)

// tapeColumns are the widths of the four columns: numbers, lines, seams, room to write in. What is read from a ladder comes
// before what is written:
//
//  1. numbers, lines and seams as their words need, the figures of lines lettered large;
//  2. lines up to lineFair, as long as writeFair stays to write in;
//  3. all else to write in, writeGood as long as lines have room in letters of text, writeLeast if they have not;
//  4. where a line's figure (sixteenths in a large room) then has no room in letters of text, the numbers give way.
func (b *board) tapeColumns(rows []tapeRow) [4]float64 {
	u := b.Unit
	number, line, seam := numberLeast*u, lineLeast*u, seamLeast*u
	for _, r := range rows {
		for _, s := range r.number {
			number = math.Max(number, math.Min(scene.Width(s, folio.TapedLarge*u, true)+2*u, numberMost*u))
		}
		seam = math.Max(seam, math.Max(scene.Width(r.seam, folio.TapedText*u, false), scene.Width(r.off, folio.TapedSmall*u, false))+2.6*u)
		line = math.Max(line, math.Min(scene.Width(r.line, folio.TapedLarge*u, true)+2.4*u, lineMost*u))
		words := scene.Width(r.words, folio.TapedText*u, false)
		switch {
		case r.line != "": // over its figure, where there is no room beside it
			words = math.Max(math.Max(math.Max(scene.Width(r.words, folio.TapedSmall*u, false), scene.Width(r.edge, folio.TapedSmall*u, false)), scene.Width(r.none, folio.TapedSmall*u, false)), scene.Width(r.line, folio.TapedText*u, true))
		case r.across():
			words = 0
		}
		line = math.Max(line, math.Min(words+2.4*u, wordsMost*u))
	}
	whole := b.List.W()
	line = math.Max(line, math.Min(lineFair*u, whole-number-seam-writeFair*u))
	least := lineLeast * u
	for _, r := range rows {
		least = math.Max(least, scene.Width(r.line, folio.TapedText*u, true)+2.4*u)
		if words := r.words + r.none; words != "" && !r.across() {
			least = math.Max(least, scene.Width(words, folio.TapedSmall*u, false)+2.4*u)
		}
		if r.edge != "" {
			least = math.Max(least, scene.Width(r.edge, folio.TapedSmall*u, false)+2.4*u)
		}
	}
	write := math.Max(whole-number-line-seam, math.Max(writeLeast*u, math.Min(writeGood*u, whole-number-seam-least)))
	for _, r := range rows {
		need := scene.Width(r.line, folio.TapedText*u, true) + 2.4*u
		if short := need - (whole - number - seam - write); short > 0 {
			number = math.Max(number-short, numberTight*u)
		}
	}
	line = whole - number - seam - write
	return [4]float64{number, line, seam, write}
}

// lowUp is how far over the middle of a low row its words stand, in mm on letter paper: what hangs under a line of them has room.
const lowUp = 0.35

// tapeRow letters one row.
func (b *board) tapeRow(g *scene.Group, r tapeRow, columns [4]float64, y, high float64) {
	u, x := b.Unit, b.List.X0
	high = b.rowOf(r, high)
	mid := y + high/2
	if r.lower() {
		mid -= lowUp * u
	}
	put := func(at float64, s string, size float64, bold bool, anchor scene.Anchor, most float64) {
		if s == "" {
			return
		}
		least := folio.TapedText * u
		if s == r.words || s == r.face {
			least = folio.TapedSmall * u
		}
		size = draft.Squeeze(s, size, least, bold, most)
		g.Text(scene.Text{At: scene.Pt(at, mid), String: s, Height: size, Bold: bold, Anchor: anchor, Seat: scene.Centred, Layer: scene.Notes})
	}
	if r.face != "" {
		put(x+1.6*u, r.face, folio.TapedText*u, true, scene.Start, b.List.W()-3*u)
		return
	}
	if r.head != "" {
		put(x+1.6*u, r.head, folio.TapedText*u, true, scene.Start, b.List.W()-3*u)
		return
	}
	b.tapeNumbers(g, r, x+columns[0]/2, mid, columns[0]-1.6*u)
	x += columns[0]
	large := math.Min(folio.TapedLarge*u, high*0.6)
	switch {
	case r.line != "" && r.words != "":
		at := mid
		w := columns[1] - scene.Width(r.words, folio.TapedSmall*u, false) - 4*u
		if scene.Width(r.line, folio.TapedText*u, true) > w { // one over the other
			at, mid, w, large = y+2*u, y+math.Min(6.45*u, high-3.15*u), columns[1]-2.4*u, folio.TapedText*u
		}
		put(x+columns[1]-1.2*u, r.line, large, true, scene.End, w)
		g.Text(scene.Text{At: scene.Pt(x+1.2*u, at), String: r.words, Height: folio.TapedSmall * u, Seat: scene.Centred, Layer: scene.Notes})
		mid = y + high/2
	case r.line != "":
		put(x+columns[1]-1.2*u, r.line, large, true, scene.End, columns[1]-2.4*u)
	case r.across():
		put(x+columns[1]+columns[2]-1.2*u, r.words, folio.TapedText*u, false, scene.End, columns[1]+columns[2]-2.4*u)
	default:
		put(x+columns[1]-1.2*u, r.words, folio.TapedText*u, false, scene.End, columns[1]-2.4*u)
	}
	x += columns[1]
	if r.off != "" {
		mid -= 2.1 * u
	}
	put(x+columns[2]-1.2*u, r.seam, folio.TapedText*u, false, scene.End, columns[2]-2.4*u)
	mid = y + high/2
	if r.off != "" {
		b.offWords(g, r.off, scene.Pt(x+columns[2]-1.2*u, mid+2.2*u))
	}
	b.tapeHung(g, r, columns, x+columns[2], mid)
}

// tapeNumbers letters the number of a row in its column, two of them one over the other.
func (b *board) tapeNumbers(g *scene.Group, r tapeRow, x, mid, most float64) {
	u := b.Unit
	put := func(s string, y, size float64) {
		size = draft.Squeeze(s, size, folio.TapedText*u, true, most)
		g.Text(scene.Text{At: scene.Pt(x, y), String: s, Height: size, Bold: true, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Notes})
	}
	switch len(r.number) {
	case 1:
		size := folio.TapedLarge * u
		if r.low {
			size = folio.TapedText * u
		}
		put(r.number[0], mid, size)
	case 2:
		for i, s := range r.number {
			put(s, mid+(float64(i)*2-1)*2.05*u, folio.TapedText*u)
		}
	}
}

// tapeHung letters in the last column that a sheet hangs, or parts it for the readings at head and foot.
func (b *board) tapeHung(g *scene.Group, r tapeRow, columns [4]float64, x, mid float64) {
	u, hung := b.Unit, b.Words.Say("tape.hung")
	if r.hung && scene.Width(hung, folio.TapedSmall*u, false)+2*u <= columns[3] { // the row says so itself
		size := draft.Squeeze(hung, folio.TapedText*u, folio.TapedSmall*u, false, columns[3]-2*u)
		g.Text(scene.Text{At: scene.Pt(x+columns[3]/2, mid), String: hung, Height: size, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Notes})
	} else if !r.hung && r.line != "" && r.seam != "" && columns[3] >= writeLeast*u { // one reading over the other
		g.HLine(x, b.List.X1, mid, scene.Pen(scene.Dimensions, 0.25).As(scene.Dashed(0.25)))
	}
}

package crew

import (
	"math"

	"flitchlay/internal/draft"
	"flitchlay/internal/scene"
)

// TapeRow is one line that is called out.
type TapeRow struct {
	Number []string // from the upper course down
	Line   string   // the figure to strike
	Words  string   // or what there is instead of a line
	Seam   string
	Hung   bool
	Rule   bool
	Head   string // names a flitch, in place of all else
}

// Across reports whether the words of a row run on over the column of seams.
func (r TapeRow) Across() bool { return r.Words != "" && r.Seam == "" }

// TapeRows lists the lines of a piece in hanging order.
func (d *WallBoard) TapeRows() []TapeRow {
	var list []TapeRow
	flitch := ""
	for i, h := range d.P.Rows {
		if f := h.Sheet().Flitch; i > 0 && f != flitch && f != "" {
			list = append(list, TapeRow{Head: "flitch " + f})
		}
		flitch = h.Sheet().Flitch
		if h.Opens && d.P.StartsHere(h) && !h.Sheet().Hung {
			list = append(list, TapeRow{Number: d.Stacked(h), Line: d.Say(h.Start), Words: "start", Seam: d.Say(h.From)})
		}
		r := TapeRow{Number: d.Stacked(h), Rule: i == d.P.ThirdRow(), Hung: h.Sheet().Hung}
		switch {
		case h.Sheet().InGap:
			r.Words = "in the gap: to stock"
		case !d.P.Here(h):
			r.Words = "on " + d.PageWord(d.W.Pieces[d.P.Index+1].Key())
		case h.Hung():
			r.Words, r.Seam = "hangs", d.Say(h.X)
		case h.After && h.Before:
			r.Words = "goes past"
		case h.After:
			r.Words = "left edge " + d.Say(h.Start)
		case h.Closes:
			r.Words, r.Seam = "over "+d.FirstOf(h), d.Say(h.X)
		case h.Ends:
			r.Words, r.Seam = d.EndWords(), d.Say(h.X)
		case !h.Lined:
			r.Words, r.Seam = "no line, gap", d.Say(h.X)
		case h.Check():
			r.Line, r.Words, r.Seam = d.Say(h.Line), "check", d.Say(h.X)
		default:
			r.Line, r.Seam = d.Say(h.Line), d.Say(h.X)
		}
		list = append(list, r)
	}
	return list
}

// EndWords stand in the list in place of a line at the end of the covering.
func (d *WallBoard) EndWords() string {
	if d.W.Run.Up {
		return "no line, top"
	}
	return "no line, end"
}

func (h *Hang) Hung() bool { return h.Sheet().Hung }

// Stacked are the numbers of a place as they stand on the wall: the upper course over the lower one; more than two courses
// as from and to.
func (c *Set) Stacked(h *Hang) []string {
	sheets := h.Hanging()
	n := len(sheets)
	first, last := c.Number(sheets[0]), c.Number(sheets[n-1])
	if n == 1 {
		return []string{first}
	}
	if c.Room.Veneer.Horizontal {
		return []string{first, last} // side by side in a band
	}
	return []string{last, first}
}

// TapeList draws the list that is called out at the tape, then what has to be said about it, then the notes that found
// no other place. It gives back what has no room.
func (b *Board) TapeList(d *WallBoard, notes []Note) []Note {
	u, box := b.U, b.List
	x0, x1 := box.X0, box.X1
	g := b.Page.Part(scene.Tag{Class: "tape-list"})
	b.Word(g, scene.Pt(x0, box.Y0+6*u), "TAPE LIST, from the one datum", CrewText*u, true, scene.Start)
	rows := d.TapeRows()
	columns := b.TapeColumns(rows)
	top := box.Y0 + 8.6*u
	head := 6.2 * u
	low := 15 * u // for two lines under the list
	high := math.Max(9.3*u, math.Min(9.6*u, (box.Y1-top-head-low)/math.Max(float64(len(rows)), 1)))
	pen := scene.Pen(scene.Frame, CrewFine)
	y := top
	x := x0
	last := "as hung"
	if scene.Width(last, CrewText*u, false)+1.2*u > columns[3] {
		last = "hung"
	}
	if scene.Width(last, CrewText*u, false)+1.4*u > columns[3] {
		last = ""
	}
	for i, word := range []string{"no.", "line", "seam", last} {
		w := columns[i]
		if word != "" {
			b.Word(g, scene.Pt(x+w/2, y+head-1.7*u), word, CrewText*u, false, scene.Middle)
		}
		x += w
	}
	y += head
	g.HLine(x0, x1, y, pen)
	for i, r := range rows {
		b.TapeRow(g, r, columns, y, high)
		y += high
		at, width := y, CrewFine
		if r.Rule {
			y += RuleMore * u
			at, width = y-0.35*u, 1
		}
		if i == len(rows)-1 && !r.Rule {
			continue
		}
		g.HLine(x0, x1, at, scene.Pen(scene.Frame, width))
	}
	g.Rect(scene.Box{X0: x0, Y0: top, X1: x1, Y1: y}, scene.Pen(scene.Frame, 0.5))
	b.TapeLines(g, rows, columns, top+head, high)
	y += 1.2 * u
	words := d.TapeWords()
	for i, line := range words {
		parts := scene.Wrap(line, CrewText*u, false, x1-x0-0.6*u)
		if y+5.6*u*float64(len(parts)) > box.Y1-1.9*u {
			notes = append([]Note{{"TAPE LIST", words[i:]}}, notes...)
			break
		}
		for _, part := range parts {
			y += 5.6 * u
			b.Word(g, scene.Pt(x0, y), part, CrewText*u, false, scene.Start)
		}
	}
	return b.Besides(g, notes, y)
}

// RuleMore is how much higher the row over the heavy rule is.
const RuleMore = 0.9

// TapeLines draws the upright lines between the columns, but not through rows that run across.
func (b *Board) TapeLines(g *scene.Group, rows []TapeRow, columns [4]float64, top, high float64) {
	x := b.List.X0
	for i := range 3 {
		x += columns[i]
		from := top - 6.2*b.U
		y := top
		stop := func(at float64) {
			if from < at {
				g.VLine(x, from, at, scene.Pen(scene.Frame, CrewFine))
			}
		}
		for _, r := range rows {
			next := y + high
			if r.Rule {
				next += RuleMore * b.U
			}
			if r.Head != "" || i == 1 && r.Across() {
				stop(y)
				from = next
			}
			y = next
		}
		stop(y)
	}
}

// TapeColumns are the widths of the four columns: numbers and seams as they need, lines large, the rest to write in.
func (b *Board) TapeColumns(rows []TapeRow) [4]float64 {
	u := b.U
	number, line, seam := 10*u, 20*u, 14*u
	for _, r := range rows {
		for _, s := range r.Number {
			number = math.Max(number, math.Min(scene.Width(s, CrewLarge*u, true)+2*u, 12.6*u))
		}
		seam = math.Max(seam, scene.Width(r.Seam, CrewText*u, false)+2.6*u)
		line = math.Max(line, math.Min(scene.Width(r.Line, CrewLarge*u, true)+2.4*u, 38*u))
		words := scene.Width(r.Words, CrewText*u, false)
		switch {
		case r.Line != "":
			words = scene.Width(r.Words, CrewSmall*u, false) + scene.Width(r.Line, CrewText*u, true) + 3*u
		case r.Across():
			words = 0
		}
		line = math.Max(line, math.Min(words+2.4*u, 44*u))
	}
	whole := b.List.W()
	line = math.Max(line, math.Min(35*u, whole-number-seam-20*u))
	write := math.Max(whole-number-line-seam, 11*u)
	for _, r := range rows { // figures with sixteenths in a large room: the numbers give way
		need := scene.Width(r.Line, CrewText*u, true) + 2.4*u
		if short := need - (whole - number - seam - write); short > 0 {
			number = math.Max(number-short, 10.6*u)
		}
	}
	line = whole - number - seam - write
	return [4]float64{number, line, seam, write}
}

// TapeRow letters one row.
func (b *Board) TapeRow(g *scene.Group, r TapeRow, columns [4]float64, y, high float64) {
	u, x := b.U, b.List.X0
	mid := y + high/2
	put := func(at float64, s string, size float64, bold bool, anchor scene.Anchor, most float64) {
		if s == "" {
			return
		}
		size = draft.Squeeze(s, size, CrewText*u, bold, most)
		g.Text(scene.Text{At: scene.Pt(at, mid), String: s, Height: size, Bold: bold, Anchor: anchor, Seat: scene.Centred, Layer: scene.Notes})
	}
	if r.Head != "" {
		put(x+1.6*u, r.Head, CrewText*u, true, scene.Start, b.List.W()-3*u)
		return
	}
	switch center := mid; len(r.Number) {
	case 1:
		put(x+columns[0]/2, r.Number[0], CrewLarge*u, true, scene.Middle, columns[0]-1.6*u)
	case 2:
		for i, s := range r.Number {
			mid = center + (float64(i)*2-1)*2.05*u
			put(x+columns[0]/2, s, CrewText*u, true, scene.Middle, columns[0]-1.6*u)
		}
		mid = center
	}
	x += columns[0]
	large := math.Min(CrewLarge*u, high*0.6)
	switch {
	case r.Line != "" && r.Words != "":
		at := mid
		w := columns[1] - scene.Width(r.Words, CrewSmall*u, false) - 4*u
		if scene.Width(r.Line, CrewText*u, true) > w { // one over the other
			at, mid, w, large = y+2.1*u, y+high-3*u, columns[1]-2.4*u, CrewText*u
		}
		put(x+columns[1]-1.2*u, r.Line, large, true, scene.End, w)
		g.Text(scene.Text{At: scene.Pt(x+1.2*u, at), String: r.Words, Height: CrewSmall * u, Seat: scene.Centred, Layer: scene.Notes})
		mid = y + high/2
	case r.Line != "":
		put(x+columns[1]-1.2*u, r.Line, large, true, scene.End, columns[1]-2.4*u)
	case r.Across():
		put(x+columns[1]+columns[2]-1.2*u, r.Words, CrewText*u, false, scene.End, columns[1]+columns[2]-2.4*u)
	default:
		put(x+columns[1]-1.2*u, r.Words, CrewText*u, false, scene.End, columns[1]-2.4*u)
	}
	x += columns[1]
	put(x+columns[2]-1.2*u, r.Seam, CrewText*u, false, scene.End, columns[2]-2.4*u)
	if r.Hung {
		put(x+columns[2]+columns[3]/2, "hung", CrewText*u, false, scene.Middle, columns[3]-2*u)
	}
}

package pages

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"flitchlay/internal/draft"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// tapeRow is one line that is called out.
type tapeRow struct {
	number []string // from the upper course down
	line   string   // the figure to strike
	words  string   // or what there is instead of a line
	seam   string
	hung   bool
	rule   bool
	head   string // names a flitch, in place of all else
}

// across reports whether the words of a row run on over the column of seams.
func (r tapeRow) across() bool { return r.words != "" && r.seam == "" }

// tapeRows lists the lines of a piece in hanging order.
func (d *wallBoard) tapeRows() []tapeRow {
	var list []tapeRow
	flitch := ""
	for i, h := range d.p.rows {
		if f := h.sheet().Flitch; i > 0 && f != flitch && f != "" {
			list = append(list, tapeRow{head: "flitch " + f})
		}
		flitch = h.sheet().Flitch
		if h.opens && d.p.startsHere(h) && !h.sheet().Hung {
			list = append(list, tapeRow{number: d.stacked(h), line: d.say(h.start), words: "start", seam: d.say(h.from)})
		}
		r := tapeRow{number: d.stacked(h), rule: i == d.p.thirdRow(), hung: h.sheet().Hung}
		switch {
		case h.sheet().InGap:
			r.words = "in the gap: to stock"
		case !d.p.here(h):
			r.words = "on " + d.crewSet.page(d.w.pieces[d.p.index+1].key())
		case h.hung():
			r.words, r.seam = "hangs", d.say(h.x)
		case h.after && h.before:
			r.words = "goes past"
		case h.after:
			r.words = "left edge " + d.say(h.start)
		case h.closes:
			r.words, r.seam = "over "+d.firstOf(h), d.say(h.x)
		case h.ends:
			r.words, r.seam = d.endWords(), d.say(h.x)
		case !h.lined:
			r.words, r.seam = "no line, gap", d.say(h.x)
		case h.check():
			r.line, r.words, r.seam = d.say(h.line), "check", d.say(h.x)
		default:
			r.line, r.seam = d.say(h.line), d.say(h.x)
		}
		list = append(list, r)
	}
	return list
}

// endWords stand in the list in place of a line at the end of the covering.
func (d *wallBoard) endWords() string {
	if d.w.run.Up {
		return "no line, top"
	}
	return "no line, end"
}

func (h *hang) hung() bool { return h.sheet().Hung }

// stacked are the numbers of a place as they stand on the wall: the upper course over the lower one; more than two courses
// as from and to.
func (c *crewSet) stacked(h *hang) []string {
	sheets := h.hanging()
	n := len(sheets)
	first, last := c.number(sheets[0]), c.number(sheets[n-1])
	if n == 1 {
		return []string{first}
	}
	if c.room.Veneer.Horizontal {
		return []string{first, last} // side by side in a band
	}
	return []string{last, first}
}

// tapeList draws the list that is called out at the tape, then what has to be said about it, then the notes that found
// no other place. It gives back what has no room.
func (b *crewBoard) tapeList(d *wallBoard, notes []note) []note {
	u, box := b.u, b.list
	x0, x1 := box.X0, box.X1
	g := b.page.Part(scene.Tag{Class: "tape-list"})
	b.word(g, scene.Pt(x0, box.Y0+6*u), "TAPE LIST, from the one datum", crewText*u, true, scene.Start)
	rows := d.tapeRows()
	columns := b.tapeColumns(rows)
	top := box.Y0 + 8.6*u
	head := 6.2 * u
	low := 15 * u // for two lines under the list
	high := math.Max(9.3*u, math.Min(9.6*u, (box.Y1-top-head-low)/math.Max(float64(len(rows)), 1)))
	pen := scene.Pen(scene.Frame, crewFine)
	y := top
	x := x0
	last := "as hung"
	if scene.Width(last, crewText*u, false)+1.2*u > columns[3] {
		last = "hung"
	}
	if scene.Width(last, crewText*u, false)+1.4*u > columns[3] {
		last = ""
	}
	for i, word := range []string{"no.", "line", "seam", last} {
		w := columns[i]
		if word != "" {
			b.word(g, scene.Pt(x+w/2, y+head-1.7*u), word, crewText*u, false, scene.Middle)
		}
		x += w
	}
	y += head
	g.HLine(x0, x1, y, pen)
	for i, r := range rows {
		b.tapeRow(g, r, columns, y, high)
		y += high
		at, width := y, crewFine
		if r.rule {
			y += ruleMore * u
			at, width = y-0.35*u, 1
		}
		if i == len(rows)-1 && !r.rule {
			continue
		}
		g.HLine(x0, x1, at, scene.Pen(scene.Frame, width))
	}
	g.Rect(scene.Box{X0: x0, Y0: top, X1: x1, Y1: y}, scene.Pen(scene.Frame, 0.5))
	b.tapeLines(g, rows, columns, top+head, high)
	y += 1.2 * u
	words := d.tapeWords()
	for i, line := range words {
		parts := scene.Wrap(line, crewText*u, false, x1-x0-0.6*u)
		if y+5.6*u*float64(len(parts)) > box.Y1-1.9*u {
			notes = append([]note{{"TAPE LIST", words[i:]}}, notes...)
			break
		}
		for _, part := range parts {
			y += 5.6 * u
			b.word(g, scene.Pt(x0, y), part, crewText*u, false, scene.Start)
		}
	}
	return b.besides(g, notes, y)
}

// ruleMore is how much higher the row over the heavy rule is.
const ruleMore = 0.9

// tapeLines draws the upright lines between the columns, but not through rows that run across.
func (b *crewBoard) tapeLines(g *scene.Group, rows []tapeRow, columns [4]float64, top, high float64) {
	x := b.list.X0
	for i := range 3 {
		x += columns[i]
		from := top - 6.2*b.u
		y := top
		stop := func(at float64) {
			if from < at {
				g.VLine(x, from, at, scene.Pen(scene.Frame, crewFine))
			}
		}
		for _, r := range rows {
			next := y + high
			if r.rule {
				next += ruleMore * b.u
			}
			if r.head != "" || i == 1 && r.across() {
				stop(y)
				from = next
			}
			y = next
		}
		stop(y)
	}
}

// tapeColumns are the widths of the four columns: numbers and seams as they need, lines large, the rest to write in.
func (b *crewBoard) tapeColumns(rows []tapeRow) [4]float64 {
	u := b.u
	number, line, seam := 10*u, 20*u, 14*u
	for _, r := range rows {
		for _, s := range r.number {
			number = math.Max(number, math.Min(scene.Width(s, crewLarge*u, true)+2*u, 12.6*u))
		}
		seam = math.Max(seam, scene.Width(r.seam, crewText*u, false)+2.6*u)
		line = math.Max(line, math.Min(scene.Width(r.line, crewLarge*u, true)+2.4*u, 38*u))
		words := scene.Width(r.words, crewText*u, false)
		switch {
		case r.line != "":
			words = scene.Width(r.words, crewSmall*u, false) + scene.Width(r.line, crewText*u, true) + 3*u
		case r.across():
			words = 0
		}
		line = math.Max(line, math.Min(words+2.4*u, 44*u))
	}
	whole := b.list.W()
	line = math.Max(line, math.Min(35*u, whole-number-seam-20*u))
	write := math.Max(whole-number-line-seam, 11*u)
	for _, r := range rows { // figures with sixteenths in a large room: the numbers give way
		need := scene.Width(r.line, crewText*u, true) + 2.4*u
		if short := need - (whole - number - seam - write); short > 0 {
			number = math.Max(number-short, 10.6*u)
		}
	}
	line = whole - number - seam - write
	return [4]float64{number, line, seam, write}
}

// tapeRow letters one row.
func (b *crewBoard) tapeRow(g *scene.Group, r tapeRow, columns [4]float64, y, high float64) {
	u, x := b.u, b.list.X0
	mid := y + high/2
	put := func(at float64, s string, size float64, bold bool, anchor scene.Anchor, most float64) {
		if s == "" {
			return
		}
		size = draft.Squeeze(s, size, crewText*u, bold, most)
		g.Text(scene.Text{At: scene.Pt(at, mid), String: s, Height: size, Bold: bold, Anchor: anchor, Seat: scene.Centred, Layer: scene.Notes})
	}
	if r.head != "" {
		put(x+1.6*u, r.head, crewText*u, true, scene.Start, b.list.W()-3*u)
		return
	}
	switch center := mid; len(r.number) {
	case 1:
		put(x+columns[0]/2, r.number[0], crewLarge*u, true, scene.Middle, columns[0]-1.6*u)
	case 2:
		for i, s := range r.number {
			mid = center + (float64(i)*2-1)*2.05*u
			put(x+columns[0]/2, s, crewText*u, true, scene.Middle, columns[0]-1.6*u)
		}
		mid = center
	}
	x += columns[0]
	large := math.Min(crewLarge*u, high*0.6)
	switch {
	case r.line != "" && r.words != "":
		at := mid
		w := columns[1] - scene.Width(r.words, crewSmall*u, false) - 4*u
		if scene.Width(r.line, crewText*u, true) > w { // one over the other
			at, mid, w, large = y+2.1*u, y+high-3*u, columns[1]-2.4*u, crewText*u
		}
		put(x+columns[1]-1.2*u, r.line, large, true, scene.End, w)
		g.Text(scene.Text{At: scene.Pt(x+1.2*u, at), String: r.words, Height: crewSmall * u, Seat: scene.Centred, Layer: scene.Notes})
		mid = y + high/2
	case r.line != "":
		put(x+columns[1]-1.2*u, r.line, large, true, scene.End, columns[1]-2.4*u)
	case r.across():
		put(x+columns[1]+columns[2]-1.2*u, r.words, crewText*u, false, scene.End, columns[1]+columns[2]-2.4*u)
	default:
		put(x+columns[1]-1.2*u, r.words, crewText*u, false, scene.End, columns[1]-2.4*u)
	}
	x += columns[1]
	put(x+columns[2]-1.2*u, r.seam, crewText*u, false, scene.End, columns[2]-2.4*u)
	if r.hung {
		put(x+columns[2]+columns[3]/2, "hung", crewText*u, false, scene.Middle, columns[3]-2*u)
	}
}

// tapeWords say how the sheets are cut and what the list measures.
func (d *wallBoard) tapeWords() []string {
	if d.w.run.Up {
		return append(d.markWordsUp(), d.beside...)
	}
	lines := d.markWords()
	lines = append(lines, "trims in; line: right edge; seam "+d.inches(d.half)+" left")
	if lean := d.datumLean(); lean != 0 {
		side := "right"
		if lean < 0 {
			side = "left"
		}
		lines = append(lines, fmt.Sprintf("0 is at the floor: at the level line the corner stands %s %s of it", d.inches(lean.Abs()), side))
	}
	return append(lines, d.beside...)
}

// cutsBeside give the cut lengths that have no room in their sheets, those alike together.
func (d *wallBoard) cutsBeside() []string {
	var order []string
	numbers := map[string][]int{}
	for _, s := range d.cuts {
		cut := d.say(s.CutLength)
		if s.Hung {
			cut = "hung"
		}
		if numbers[cut] == nil {
			order = append(order, cut)
		}
		numbers[cut] = append(numbers[cut], s.Number)
	}
	var parts []string
	for _, cut := range order {
		who := "?"
		if list := known(numbers[cut]); len(list) > 0 {
			who = layout.Numbers(list)
		}
		parts = append(parts, who+": "+cut)
	}
	if parts == nil {
		return nil
	}
	return []string{"cut " + strings.Join(parts, "; ")}
}

// known leaves out the zeros that stand for sheets without a number.
func known(numbers []int) []int {
	return slices.DeleteFunc(slices.Clone(numbers), func(n int) bool { return n == 0 })
}

// datumLean is how far the left end of the wall has moved to the right where the level line meets it.
func (d *wallBoard) datumLean() L {
	w := d.w.w
	floor, ceiling := room.AtRight(w.Floor, d.w.left), room.AtRight(w.Ceiling, d.w.left)
	if w.LeanLeft == 0 || d.p.leftCut() || ceiling <= floor {
		return 0
	}
	return d.style.Round(length.MulDiv(w.LeanLeft, d.level-floor, ceiling-floor))
}

// markWords say how long the sheets are cut, and how much of that is above and below the level mark, those alike together.
func (d *wallBoard) markWords() []string {
	type mark struct{ cut, above, below L }
	var order []mark
	numbers := map[mark][]int{}
	for _, h := range d.p.rows {
		for _, s := range h.sheets {
			if s.Hung || s.InGap || h.before || !d.p.startsHere(h) || s.CutLength == 0 {
				continue
			}
			m := mark{s.CutLength, s.Above, s.Below}
			if numbers[m] == nil {
				order = append(order, m)
			}
			numbers[m] = append(numbers[m], s.Number)
		}
	}
	switch {
	case len(order) == 0:
		return nil
	case len(order) > 3:
		return append(d.cutsBeside(), "up, down of the level mark: cut list, "+d.crewSet.page("cuts"))
	}
	var lines []string
	for _, m := range order {
		who := ""
		if list := known(numbers[m]); len(order) > 1 && len(list) > 0 {
			who = layout.Numbers(list) + ": "
		}
		where := "up " + d.say(m.above) + " + down " + d.say(m.below)
		if m.below < 0 { // an upper course
			where = "from " + d.say(-m.below) + " up to " + d.say(m.above)
		}
		lines = append(lines, who+d.say(m.cut)+" = "+where)
	}
	return lines
}

// besides letters notes under the tape list as far as there is room, and gives back the others.
func (b *crewBoard) besides(g *scene.Group, notes []note, y float64) []note {
	u := b.u
	var rest []note
	for _, n := range notes {
		var lines []string
		for _, line := range n.lines {
			lines = append(lines, scene.Wrap(line, crewText*u, false, b.list.W()-1*u)...)
		}
		if y+(7.4+5.6*float64(len(lines)))*u > b.list.Y1-2.4*u {
			rest = append(rest, n)
			continue
		}
		y += 7.4 * u
		b.word(g, scene.Pt(b.list.X0, y), n.head, crewText*u, true, scene.Start)
		for _, line := range lines {
			y += 5.6 * u
			b.word(g, scene.Pt(b.list.X0, y), line, crewText*u, false, scene.Start)
		}
	}
	return rest
}

// notesPages letter the notes that no page of a wall has room for.
func (c *crewSet) notesPages(title string, n int, notes []note) []*scene.Page {
	var out []*scene.Page
	for len(notes) > 0 {
		b := c.open(n+len(out), "install-"+pad(n+len(out)), title, false, [2]string{c.place(), "notes to the page before"})
		b.page.Title = title + ", notes"
		area := b.bar(scene.Box{X0: b.page.Frame.X0, Y0: b.head.Y1, X1: b.page.Frame.X1, Y1: b.page.Frame.Y1}).Inset(3 * c.u)
		notes = b.columns(area, notes)
		out = append(out, b.page)
	}
	return out
}

// columns letters notes in two columns, and gives back what has no room.
func (b *crewBoard) columns(area scene.Box, notes []note) []note {
	u := b.u
	g := b.page.Part(scene.Tag{Class: "notes"})
	w := (area.W() - 6*u) / 2
	col, y := 0, area.Y0
	for len(notes) > 0 {
		n := notes[0]
		x := area.X0 + float64(col)*(w+6*u)
		var lines []string
		for _, line := range n.lines {
			lines = append(lines, scene.Wrap(line, crewText*u, false, w)...)
		}
		room := int((area.Y1 - y - 9*u) / (5.8 * u))
		if room < 1 || room < len(lines) && room < 4 {
			if col++; col == 2 {
				return notes
			}
			y = area.Y0
			continue
		}
		y += 7 * u
		b.word(g, scene.Pt(x, y), scene.Shorten(n.head, crewText*u, true, w), crewText*u, true, scene.Start)
		shown := min(room, len(lines))
		for _, line := range lines[:shown] {
			y += 5.8 * u
			b.word(g, scene.Pt(x, y), line, crewText*u, false, scene.Start)
		}
		y += 3 * u
		if shown < len(lines) {
			notes = append([]note{{strings.TrimSuffix(n.head, " (on)") + " (on)", lines[shown:]}}, notes[1:]...)
			continue
		}
		notes = notes[1:]
	}
	return nil
}

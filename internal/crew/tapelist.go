package crew

import (
	"math"
	"slices"

	"flitchlay/internal/days"
	"flitchlay/internal/face"
	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
)

// tapeRow is one line that is called out.
type tapeRow struct {
	number []string // from the upper course down
	line   string   // the figure to strike
	words  string   // or what there is instead of a line, or over it
	edge   string   // where the left edge goes of a sheet that has no raw right edge for the line: in place of words, where there is room
	none   string   // that it may not be off at all, to one side or to both: comes after words, where there is room
	seam   string
	off    string // how far the line may be off
	hung   bool
	place  int
	hold   *days.Task // that comes when its sheets hang
	rule   bool       // under it, where a hold falls due
	head   string     // names a flitch, in place of all else
	face   string     // names an unrolled wall, in place of all else
	low    bool       // of an unrolled wall, with nothing to strike: a low row
}

// across reports whether the words of a row run on over the column of seams.
func (r tapeRow) across() bool { return r.words != "" && r.seam == "" }

// tapeRows lists the lines of the page: of a piece of a wall in hanging order, of walls unrolled one wall after the other.
func (d *wallBoard) tapeRows() []tapeRow {
	if !d.unrolled() {
		return ruled(d.wallRows())
	}
	var list []tapeRow
	for _, f := range d.faces {
		list = append(append(list, tapeRow{face: f.faceWords()}), f.wallRows()...)
	}
	return ruled(list)
}

// wallRows lists the lines of a piece in hanging order.
func (d *wallBoard) wallRows() []tapeRow {
	var list []tapeRow
	flitch := ""
	for i, h := range d.p.rows {
		if f := h.Sheet().Flitch; i > 0 && f != flitch && f != "" {
			list = append(list, tapeRow{head: d.Words.Say("tape.flitch", f)})
		}
		flitch = h.Sheet().Flitch
		if h.Opens && d.p.StartsHere(h) && !h.Hung() {
			if w := d.witness(h); w != nil {
				list = append(list, tapeRow{number: d.stacked(h), line: d.at(w.X), words: d.Words.Say("wall.witness")})
			}
			list = append(list, tapeRow{number: d.stacked(h), line: d.at(h.Start), words: d.Words.Say("tape.left_edge_seam"), none: d.noRoom(h, true), seam: d.at(h.From), off: d.off(h, true)})
		}
		if o := d.startsIn(h); o != nil && !h.Hung() {
			list = append(list, tapeRow{number: d.stacked(h), words: d.Words.Say("tape.from", o.Name), seam: d.at(o.Right())})
		}
		r := tapeRow{number: d.stacked(h), place: h.Place, hold: d.p.held(h), hung: h.Hung()}
		switch {
		case h.Gone():
			r.words = d.Words.Say("tape.in_gap")
		case !d.p.Here(h):
			r.words = d.Words.Say("tape.on_page", d.PageWord(d.w.pieces[d.p.Index+1].key()))
		case h.Hung() && h.After:
			r.words = d.Words.Say("tape.hangs_on")
		case h.Hung():
			r.words, r.seam = d.Words.Say("tape.hangs"), d.at(h.X)
		case h.After && h.Before:
			r.words, r.low = d.Words.Say("tape.goes_past"), d.unrolled()
		case h.After:
			r.words, r.low = d.Words.Say("tape.left_edge", d.at(h.Start)), d.unrolled() && len(h.Called()) == 1
		case h.Closes:
			r.line, r.words, r.seam = d.at(h.X+d.half), d.Words.Say("tape.over", d.firstOf(h)), d.at(h.X)
		case h.Ends:
			r.words, r.seam = d.endWords(), d.at(rightEdge(d.w.Face, h))
			if d.w.Run.Up {
				r.seam = d.at(d.topAt(true))
				if left := d.topAt(false); (left - d.topAt(true)).Abs() >= d.Style.Least() {
					r.off = d.Words.Say("tape.top_left", d.at(left))
				}
			}
		case !h.Lined:
			r.words, r.seam = d.gapWords(h)
		case h.Check():
			r.line, r.words, r.none, r.seam, r.off = d.checked(h), d.Words.Say("tape.check"), d.noRoom(h, false), d.at(h.X), d.off(h, false)
		default:
			r.line, r.edge, r.none, r.seam, r.off = d.at(h.Line), d.byLeft(h), d.noRoom(h, false), d.at(h.X), d.off(h, false)
		}
		list = append(list, r)
	}
	return list
}

// endWords stand in the list in place of a line at the end of the covering.
func (d *wallBoard) endWords() string {
	if d.w.Run.Up {
		return d.Words.Say("tape.no_line_top")
	}
	return d.Words.Say("tape.no_line_end")
}

// stacked are the numbers of a place as they stand on the wall: the upper course over the lower one; more than two courses
// as from and to.
func (c *Set) stacked(h *face.Hang) []string {
	sheets := h.Called()
	n := len(sheets)
	first, last := c.SheetNumber(sheets[0]), c.SheetNumber(sheets[n-1])
	if n == 1 {
		return []string{first}
	}
	if c.Room.Veneer.Horizontal {
		return []string{first, last} // side by side in a band
	}
	return []string{last, first}
}

// tapeList draws the list that is called out at the tape, then what has to be said about it, then the notes that found
// no other place. It gives back what has no room.
func (b *board) tapeList(g *scene.Group, d *wallBoard, notes []note) []note {
	u, box := b.Unit, b.List
	x0, x1 := box.X0, box.X1
	b.Word(g, scene.Pt(x0, box.Y0+6*u), d.tapeTitle(), folio.TapedText*u, true, scene.Start)
	rows := d.tapeRows()
	rows = b.offsFit(rows)
	if b.List.Y0+(8.6+tapeHead+rowsHigh(rows, leastRow(rows))+underLeast)*u > b.List.Y1 {
		rows = plainRows(rows)
	}
	if b.List.Y0+(8.6+tapeHead+rowsHigh(rows, leastRow(rows))+underLeast)*u > b.List.Y1 {
		rows = bareRows(rows)
	}
	columns := b.tapeColumns(rows)
	rows = b.saidOver(rows, columns[1])
	top, head := box.Y0+8.6*u, tapeHead*u
	high := u * math.Max(leastRow(rows), math.Min(tapeMost, shareOf(rows, (box.Y1-top-head)/u-underTape)))
	b.tapeHeads(g, columns, top, d.w.Run.Up, b.offHead(rows, d.offPages()))
	y := top + head
	g.HLine(x0, x1, y, scene.Pen(scene.Frame, folio.TapedFine))
	for i, r := range rows {
		b.tapeRow(g, r, columns, y, high)
		y += b.rowOf(r, high)
		at, width := y, folio.TapedFine
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
	words, more := d.tapeWords(), b.Words.Say("tape.more", d.PageWord(d.notes))
	y, pointed := b.offRule(g, d, hasOff(rows), y+1.2*u, words, more)
	if pointed {
		more = ""
	}
	y, over := b.remarks(g, words, y, more)
	if over != nil {
		notes = append([]note{{d.Words.Say("tape.title"), over, false}}, notes...)
	}
	if parted := d.partedWords(); parted != nil { // as far as there is room: the cut list and the cards have it
		y = b.saidIf(g, parted, y)
	}
	if d.w.Run.Up { // not carried over to the cut list, which has them
		y = b.saidIf(g, d.cutWordsUp(), y)
	} else {
		y = b.cutting(g, d.markWords(), y, len(d.bevelled) > 0, d.rowsWord(d.begun()))
	}
	notes, y = b.besides(g, d, notes, y)
	b.slopes(g, append(d.bevelWords(), d.slopeWords()...), y, d.rowsWord(d.sloping(d.begun())))
	return notes
}

// remarks letters what has to be said about the list, as far as there is room. What has none stands at the end of the cut list,
// to which the last line points; it comes back.
func (b *board) remarks(g *scene.Group, words []string, y float64, more string) (float64, []string) {
	u, high := b.Unit, 5.6*b.Unit
	room := int((b.List.Y1 - 1.9*u - y) / high)
	wrap := func(line string) []string { return scene.Wrap(line, folio.TapedText*u, false, b.List.W()-0.6*u) }
	all := 0
	for _, line := range words {
		all += len(wrap(line))
	}
	shown, rest := words, []string(nil)
	if all > room {
		room-- // for the line that points on
		n := 0
		for used := 0; n < len(words) && used+len(wrap(words[n])) <= room; n++ {
			used += len(wrap(words[n]))
		}
		shown, rest = words[:n], words[n:]
		if more == "" { // it is said already
			return y, words
		}
		shown = append(slices.Clone(shown), more)
	}
	for _, line := range shown {
		for _, part := range wrap(line) {
			y += high
			b.Word(g, scene.Pt(b.List.X0, y), part, folio.TapedText*u, false, scene.Start)
		}
	}
	return y, rest
}

// saidIf letters words under the list if there is room for all of them.
func (b *board) saidIf(g *scene.Group, words []string, y float64) float64 {
	var lines []string
	for _, line := range words {
		lines = append(lines, scene.Wrap(line, folio.TapedText*b.Unit, false, b.List.W()-0.6*b.Unit)...)
	}
	if y+footPitch*b.Unit*float64(len(lines)) > b.List.Y1-1.9*b.Unit {
		return y
	}
	for _, line := range lines {
		y += footPitch * b.Unit
		b.Word(g, scene.Pt(b.List.X0, y), line, folio.TapedText*b.Unit, false, scene.Start)
	}
	return y
}

// cutting letters how the sheets are cut, as far as there is room: the cut list has it for each, and their bevels.
func (b *board) cutting(g *scene.Group, words []string, y float64, bevels bool, rows string) float64 {
	u := b.Unit
	wrap := func(list []string) (lines []string) {
		for _, line := range list {
			lines = append(lines, scene.Wrap(line, folio.TapedText*u, false, b.List.W()-0.6*u)...)
		}
		return lines
	}
	fits := func(list []string) bool { return y+5.6*u*float64(len(wrap(list))) <= b.List.Y1-1.9*u }
	if !fits(words) {
		words = []string{b.Words.Say("tape.cuts_on", rows)}
		if bevels {
			words = []string{b.Words.Say("tape.cuts_bevels_on", rows)}
		}
	}
	if fits(words) {
		for _, line := range wrap(words) {
			y += 5.6 * u
			b.Word(g, scene.Pt(b.List.X0, y), line, folio.TapedText*u, false, scene.Start)
		}
	}
	return y
}

// lowRow is how high the name of an unrolled wall is, and a row with nothing to strike, in mm on letter paper.
const lowRow = 6.6

// lower reports whether a row is lower than those that have a line.
func (r tapeRow) lower() bool { return r.face != "" || r.low }

// rowOf is how high a row is in a list whose other rows are so high.
func (b *board) rowOf(r tapeRow, high float64) float64 {
	return b.Unit * r.high(high/b.Unit)
}

// high is how high a row is where the others are so high, in mm on letter paper.
func (r tapeRow) high(others float64) float64 {
	switch {
	case r.lower():
		return lowRow
	case r.line != "" && r.words+r.edge+r.none != "":
		return math.Max(others, tapeWords)
	}
	return others
}

// rowsHigh is how high rows are together where most are so high, in mm on letter paper.
func rowsHigh(rows []tapeRow, most float64) (sum float64) {
	for _, r := range rows {
		sum += r.high(most)
	}
	return sum
}

// inList reports whether one list takes rows.
func inList(rows []tapeRow) bool {
	return rowsHigh(rows, tapeMost) <= mostRows*tapeMost
}

// shareOf is how high each row is that is neither low nor has words over its figure, where all are together so high.
func shareOf(rows []tapeRow, all float64) float64 {
	n := 0
	for _, r := range rows {
		if r.high(0) == 0 {
			n++
		}
	}
	return (all - rowsHigh(rows, 0)) / math.Max(float64(n), 1)
}

// Heights in the tape list, in mm on letter paper.
const (
	tapeHead   = 10.6 // of the heads: two small lines
	tapeLeast  = 9.2  // of a row: two numbers one over the other
	tapeWords  = 9.6  // words over a figure
	tapeOff    = 9.2  // a seam over how far it may be off
	tapeTight  = 8.0  // of a row in a list without such: two hands one over the other
	tapeMost   = 9.6  // of a row, where there are few
	underTape  = 26.0 // kept for four lines of words under the list
	underLeast = 8.9  // kept in any case, to say what is done when a line is off by more, and where all else is said
	ruleMore   = 0.9  // by which the row over the heavy rule is higher
)

// leastRow is the least height of the rows of a list, in mm on letter paper.
func leastRow(rows []tapeRow) float64 {
	least := tapeTight
	for _, r := range rows {
		if len(r.number) > 1 {
			least = math.Max(least, tapeLeast)
		}
		if r.off != "" {
			least = math.Max(least, tapeOff)
		}
	}
	return least
}

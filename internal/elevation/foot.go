package elevation

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/scene"
	"flitchlay/internal/shape"
)

// ShapePoint is a point of the wall, as outlines of pieces have them.
type ShapePoint = shape.Point

// Notes letters lines at the head of the field and gives the y under them.
func Notes(b *folio.Board, lines []string) float64 {
	k := b.Look
	y := b.Field.Y0 + k.Of(8)
	x := b.Field.X0 + k.Of(6)
	for _, text := range lines {
		for _, line := range scene.Wrap(text, k.Small, false, b.NoteWidth()) {
			t := scene.Text{At: scene.Pt(x, y), String: line, Height: k.Small, Layer: scene.Notes}
			b.Page.Text(t)
			b.Space.Take(t.Bounds())
			y += k.Of(5)
		}
	}
	return y - k.Of(5) + k.Of(1)
}

// headNotes letters the notes of some views over them, where they do not stand on a page of their own, and gives the y under them.
func headNotes(b *folio.Board, list []*View) float64 {
	if !list[0].unnoted {
		return Notes(b, pageNotes(list))
	}
	if b.Unfit() {
		return b.Field.Y0 + b.Look.Of(17)
	}
	return b.Field.Y0 + b.Look.Of(3)
}

// pageNotes are what is said over the views of a page: the sheets, how they hang, the widths, the terminations, what is
// standing.
func pageNotes(list []*View) []string {
	e := list[0]
	v := e.Room.Veneer
	var sheets, widths, ends, cutEnds []string
	for _, o := range list {
		if n := o.numbersOn(); n != "" {
			if len(list) > 1 {
				n = o.Marks[o.F.Wall] + ": " + n
			}
			sheets = append(sheets, n)
		}
		for _, words := range o.cutSheets() {
			if !slices.Contains(widths, words) { // a sheet that goes round a corner is on two of the views
				widths = append(widths, words)
			}
		}
		widths = append(widths, o.sliverNotes()...)
		for _, number := range o.cutEnds() {
			if !slices.Contains(cutEnds, number) {
				cutEnds = append(cutEnds, number)
			}
		}
	}
	how := "hung in " + e.Room.Order() + " left to right"
	if e.F.Run.Up {
		how = "grain level, hung in " + e.Room.Order() + " from the foot up"
	}
	if v.Match != "" {
		how = v.Match + " match between leaves, " + how
	}
	measured := ""
	if m := e.Room.Project.Measured; m != "" {
		measured = " Field measured " + m + "."
	}
	lines := []string{Capital(strings.Join(sheets, "; ")+", "+how) + "." + measured}
	line := "Full sheets cover " + e.Style.MeasuredWords(e.Room.NetWidth()) + "."
	if len(widths) == 0 {
		line += " No sheet between two seams is ripped narrower here" + endsCut(cutEnds, "; at an end", "is", "are") + "."
	}
	if len(widths) > mostWidths {
		widths = []string{fmt.Sprintf("%d sheets are ripped narrower or come past a leaning joint: the list of the page and the schedule of sheets say what each covers.", len(widths))}
	}
	line += " " + strings.Join(widths, " ")
	if len(widths) > 0 && len(cutEnds) > 0 {
		line += endsCut(cutEnds, " At an end", "is", "are") + " ripped."
	}
	for _, o := range list {
		if note := o.skipNote(); note != "" {
			line = strings.TrimSpace(line) + " " + note
		}
	}
	ends = append(ends, "base "+e.EndMark("base"), "head "+e.EndMark("head"))
	if side := e.EndMark("side"); e.F.Run.Up && side != "" {
		ends = append(ends, "sides "+side)
	}
	ends = append(append(ends, jambMarks(list)...), endMarks(list, ends)...)
	page := e.PageOf("terminations")
	if len(e.List) == 0 { // while pages are still planned
		page = e.Paper.PageNumber(int(folio.Details), 1)
	}
	if page != "" {
		line = strings.TrimSpace(line) + " Terminations " + page + ": " + strings.Join(ends, ", ") + "."
	}
	lines = append(lines, line)
	if e.F.Run.Up {
		lines = append(lines, "Bands are struck from the level line, "+e.Style.Format(e.Room.Space.LevelLine)+" over the level of the room: up from it, and down.")
	}
	for _, o := range list {
		for _, note := range []string{o.floorNote(), o.hungNote()} {
			if note != "" {
				lines = append(lines, note)
			}
		}
	}
	for _, o := range list {
		if o.lean && o.enlargements() != "" {
			lines = append(lines, strings.TrimSpace("Heights of openings: on their enlargements "+o.enlargements())+".")
			break
		}
	}
	return append(lines, e.Paper.Standing...)
}

// mostWidths is how many sheets that are not as wide as others the notes of a page speak of one by one: more would push the drawing
// off a small page, and nobody would read them.
const mostWidths = 6

// enlargements names the pages of the enlargements of what a view shows.
func (e *View) enlargements() string {
	var names []string
	for i := range e.F.W.Openings {
		o := &e.F.W.Openings[i]
		if page := e.PageOf(OpeningKey(e.F.Wall, i)); page != "" && o.Right() > e.From && o.FromLeft < e.To && !slices.Contains(names, page) {
			names = append(names, page)
		}
	}
	return strings.Join(names, ", ")
}

// Capital begins a sentence with a capital letter.
func Capital(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

// numbersOn says which sheets of which flitches hang on the wall.
func (e *View) numbersOn() string {
	var sheets []*layout.Sheet
	for _, p := range e.F.Parts {
		if p.To > e.From && p.From < e.To {
			sheets = append(sheets, p.Sheets...)
		}
	}
	for i := range e.F.Slivers {
		if s := &e.F.Slivers[i]; e.sliverHere(s) && s.Right {
			sheets = append(sheets, s.Sheets...)
		} else if e.sliverHere(s) {
			sheets = append(slices.Clone(s.Sheets), sheets...)
		}
	}
	return Ranges(e.Board.Set, sheets)
}

// Ranges names sheets by flitch: "flitch F-311, sheets 32 to 41 and 1 to 3".
func Ranges(s *folio.Set, sheets []*layout.Sheet) string {
	var parts []string
	for i := 0; i < len(sheets); {
		j := i + 1
		for j < len(sheets) && sheets[j].Flitch == sheets[i].Flitch && (sheets[j].Number == 0) == (sheets[i].Number == 0) {
			j++
		}
		runs := Runs(s, sheets[i:j])
		text := "sheets " + strings.Join(runs, " and ")
		if len(runs) > 2 {
			text = "sheets " + strings.Join(runs[:len(runs)-1], ", ") + " and " + runs[len(runs)-1]
		}
		if len(runs) == 1 && !strings.Contains(runs[0], " ") {
			text = "sheet " + runs[0]
		}
		if sheets[i].Number == 0 {
			text = "sheets that no flitch gives"
		} else if f := sheets[i].Flitch; f != "" {
			text = "flitch " + f + ", " + text
		}
		parts = append(parts, text)
		i = j
	}
	return strings.Join(parts, "; ")
}

// Runs are the numbers of sheets of one flitch, in their order, from one to the other: "32 to 41", "1 to 3". A number between two that
// hangs elsewhere, as of another course, does not part them; one that hangs nowhere does.
func Runs(s *folio.Set, sheets []*layout.Sheet) []string {
	var list []string
	for i := 0; i < len(sheets); {
		j := i + 1
		for j < len(sheets) && GoOn(sheets[i], sheets[j-1], sheets[j]) && hangBetween(s, sheets[j-1], sheets[j]) {
			j++
		}
		list = append(list, Span(sheets[i].Number, sheets[j-1].Number))
		i = j
	}
	return list
}

// GoOn reports whether the numbers of a row go on, up or down, from one sheet to the next as they did from its first.
func GoOn(first, last, next *layout.Sheet) bool {
	way := cmp.Compare(next.Number, last.Number)
	return way == 0 || first.Number == last.Number || way == cmp.Compare(last.Number, first.Number)
}

// hangBetween reports whether all numbers between those of two sheets of one flitch hang.
func hangBetween(s *folio.Set, a, b *layout.Sheet) bool {
	for n := min(a.Number, b.Number) + 1; n < max(a.Number, b.Number); n++ {
		if !s.Plan.Hangs(a.Flitch, n) {
			return false
		}
	}
	return true
}

// Span is "4 to 13", or "4" alone.
func Span(a, b int) string {
	if a == b {
		return fmt.Sprint(a)
	}
	return fmt.Sprintf("%d to %d", a, b)
}

// titleHigh is how high title and bar come out with what parts them from the dimensions.
func (e *View) titleHigh() float64 { return e.Look.Of(7.7) + e.title().High(e.Look) }

// title is the title of the view.
func (e *View) title() draft.Title {
	k := e.Look
	name, mark := strings.ToUpper(e.F.W.Name), e.Marks[e.F.Wall]
	if e.Of > 1 {
		mark = PieceMark(mark, e.Piece)
		name += fmt.Sprintf(", %d OF %d", e.Piece+1, e.Of)
	}
	second := "SCALE " + draft.Ratio(e.V.Scale, e.Metric())
	under := []string{second}
	if e.F.W.Ref != "" {
		if e.shared {
			under = append(under, "architect's mark "+e.F.W.Ref)
		} else {
			under[0] += "   architect's mark " + e.F.W.Ref
		}
	}
	if e.more != "" {
		under[0] += "   also here: " + e.PageOf(e.more)
	}
	t := draft.Title{Mark: mark, Page: e.Leaf.Number, Name: name, Under: under, Width: k.Of(60), Most: e.Field.W() - k.Of(12)}
	if e.shared {
		t.Width = 0
		return t
	}
	// a long name takes more lines before the bar has no room beside it
	bar := draft.Bar{Scale: e.V.Scale, Metric: e.Metric()}
	if beside := t.Most - k.Of(barGap) - bar.Wide(k, k.Of(barShortest)); t.Wide(k) > beside && beside > k.Of(60) {
		t.Width, t.Most = 0, beside
	}
	return t
}

// titleY is the height of the line of the title.
func (e *View) titleY() float64 {
	k := e.Look
	if e.line > 0 {
		return e.line
	}
	under := e.below.Box(k).Y1 + k.Of(7.7)
	if e.apart() > 0 {
		under += k.Of(2)
	}
	over := math.Max(k.Of(8), e.title().High(k)+k.Of(0.9))
	return math.Min(under+over, e.Field.Y1-k.Of(8)-e.titleLow())
}

// titleLow is what the lines under the name of the view take more than its circle reaches down. While pages are planned, the reference
// to a page of the list may still come to them.
func (e *View) titleLow() float64 {
	t := e.title()
	low := t.Low(e.Look)
	if len(e.List) == 0 && e.more == "" {
		t.Under[0] += "   also here: " + e.Leaf.Number
		low = math.Max(low, t.Low(e.Look))
	}
	return math.Max(0, low+e.Look.Of(2.6)-e.Look.Of(7.5))
}

// Lengths of the scale bar beside the title, in mm on the office page.
const (
	barLongest  = 122
	barShortest = 30
	barStep     = 4  // less from one length tried to the next
	barGap      = 16 // between title and bar
)

// foot draws title, scale bar and, where the page has room, the table of the wall's sheets. For the bar it tries
//
//  1. the longest that stands beside the title;
//  2. the shortest beside it, both moved to the left as far as it takes;
//  3. the shortest under it.
func (e *View) foot() {
	k := e.Look
	box, y, t := e.Box(), e.titleY(), e.title()
	left, right := e.Field.X0+k.Of(6), e.Field.X1-k.Of(6)
	bar := draft.Bar{Scale: e.V.Scale, Metric: e.Metric()}
	most := k.Of(barLongest)
	wide := t.Wide(k)
	x := math.Min(math.Max(box.X0, left), math.Max(left, right-wide))
	if e.shared {
		tb := t.Draw(&e.Page.Group, k, scene.Pt(x, y))
		e.Space.Take(tb)
		e.table(tb.Y1 + k.Of(5))
		return
	}
	gap := k.Of(barGap)
	for most > k.Of(barShortest) && x+wide+gap+bar.Wide(k, most) > right {
		most -= k.Of(barStep)
	}
	barAt := scene.Pt(math.Max(x+wide+gap, math.Min(box.X1, right)-bar.Wide(k, most)), y+k.Of(1.5))
	if over := barAt.X + bar.Wide(k, most) - right; over > 0 && x-over >= left {
		x -= over
		barAt.X -= over
	}
	under := barAt.X+bar.Wide(k, most) > right // no room beside the title
	tb := t.Draw(&e.Page.Group, k, scene.Pt(x, y))
	if under {
		barAt = scene.Pt(x+k.Of(17), tb.Y1+k.Of(8))
	}
	e.Space.Take(tb)
	bb := bar.Draw(&e.Page.Group, k, barAt, most)
	e.Space.Take(bb)
	e.table(math.Max(tb.Y1, bb.Y1) + k.Of(5))
}

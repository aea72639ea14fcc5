package pages

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"flitchlay/internal/draft"
	"flitchlay/internal/layout"
	"flitchlay/internal/scene"
	"flitchlay/internal/shape"
)

type shapePoint = shape.Point

// notes letters lines at the head of the field and gives the y under them.
func (b *board) notes(lines []string) float64 {
	k := b.look
	y := b.field.Y0 + k.Of(8)
	x := b.field.X0 + k.Of(6)
	for _, text := range lines {
		for _, line := range scene.Wrap(text, k.Small, false, b.noteWidth()) {
			t := scene.Text{At: scene.Pt(x, y), String: line, Height: k.Small, Layer: scene.Notes}
			b.page.Text(t)
			b.space.Take(t.Bounds())
			y += k.Of(5)
		}
	}
	return y - k.Of(5) + k.Of(1)
}

// pageNotes are what is said over the views of a page: the sheets, how they hang, the widths, the terminations, what is
// standing.
func pageNotes(list []*elevation) []string {
	e := list[0]
	v := e.room.Veneer
	var sheets, widths, ends []string
	for _, o := range list {
		if n := o.numbersOn(); n != "" {
			if len(list) > 1 {
				n = o.marks[o.f.wall] + ": " + n
			}
			sheets = append(sheets, n)
		}
		widths = append(widths, o.cutSheets()...)
	}
	how := "hung in number order left to right"
	if e.f.run.Up {
		how = "grain level, hung in number order from the foot up"
	}
	if v.Match != "" {
		how = v.Match + " match between leaves, " + how
	}
	measured := ""
	if m := e.room.Project.Measured; m != "" {
		measured = " Field measured " + m + "."
	}
	lines := []string{capital(strings.Join(sheets, "; ")+", "+how) + "." + measured}
	line := "Full sheets cover " + e.style.Words(e.net()) + "."
	if len(widths) == 0 {
		line += " No narrow sheet here."
	}
	line += " " + strings.Join(widths, " ")
	ends = append(ends, "base "+e.endMark("base"), "head "+e.endMark("head"))
	for _, o := range list {
		if len(o.f.w.Openings) > 0 && e.endMark("jamb") != "" {
			ends = append(ends, "openings "+e.endMark("jamb"))
			break
		}
	}
	page := e.pageOf("terminations")
	if len(e.list) == 0 { // while pages are still planned
		page = e.paper.PageNumber(int(details), 1)
	}
	if page != "" {
		line = strings.TrimSpace(line) + " Terminations " + page + ": " + strings.Join(ends, ", ") + "."
	}
	lines = append(lines, line)
	for _, o := range list {
		if o.lean {
			lines = append(lines, strings.TrimSpace("Heights of openings: on their enlargements "+o.enlargements())+".")
			break
		}
	}
	return append(lines, e.paper.Standing...)
}

// enlargements names the pages of the enlargements of what a view shows.
func (e *elevation) enlargements() string {
	var names []string
	for i := range e.f.w.Openings {
		o := &e.f.w.Openings[i]
		if page := e.pageOf(openingKey(e.f.wall, i)); page != "" && o.Right() > e.from && o.FromLeft < e.to && !slices.Contains(names, page) {
			names = append(names, page)
		}
	}
	return strings.Join(names, ", ")
}

func capital(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

// numbersOn says which sheets of which flitches hang on the wall.
func (e *elevation) numbersOn() string {
	var sheets []*layout.Sheet
	for _, p := range e.f.parts {
		if p.to > e.from && p.from < e.to {
			sheets = append(sheets, p.sheets...)
		}
	}
	return e.ranges(sheets)
}

// ranges names sheets by flitch: "flitch F-311, sheets 32 to 41 and 1 to 3". Numbers left out between two do not part
// them.
func (s *set) ranges(sheets []*layout.Sheet) string {
	var parts []string
	for i := 0; i < len(sheets); {
		var runs []string
		j := i
		for j < len(sheets) && sheets[j].Flitch == sheets[i].Flitch && (sheets[j].Number == 0) == (sheets[i].Number == 0) {
			k := j + 1
			for k < len(sheets) && sheets[k].Flitch == sheets[i].Flitch && sheets[k].Number >= sheets[k-1].Number {
				k++
			}
			runs = append(runs, span(sheets[j].Number, sheets[k-1].Number))
			j = k
		}
		text := "sheets " + strings.Join(runs, " and ")
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

// span is "4 to 13", or "4" alone.
func span(a, b int) string {
	if a == b {
		return fmt.Sprint(a)
	}
	return fmt.Sprintf("%d to %d", a, b)
}

// cutSheets says which sheets are cut so narrow that the grain jumps.
func (e *elevation) cutSheets() []string {
	var cut []string
	for _, p := range e.f.parts {
		s := p.sheet()
		if s.Narrow && p.to > e.from && p.from < e.to && e.seamAt(p.to) {
			cut = append(cut, fmt.Sprintf("Sheet %s is cut to %s: the grain jumps %s at its right seam.", numberOf(s), e.style.Words(s.Width), e.style.Words(s.Lost)))
		}
	}
	return cut
}

// titleHigh is how high title and bar come out with what parts them from the dimensions.
func (e *elevation) titleHigh() float64 { return e.look.Of(7.7) + e.title().High(e.look) }

// title is the title of the view.
func (e *elevation) title() draft.Title {
	k := e.look
	name, mark := strings.ToUpper(e.f.w.Name), e.marks[e.f.wall]
	if e.of > 1 {
		mark += fmt.Sprint(e.piece + 1)
		name += fmt.Sprintf(", %d OF %d", e.piece+1, e.of)
	}
	second := "SCALE " + draft.Ratio(e.v.Scale, e.metric())
	under := []string{second}
	if e.f.w.Ref != "" {
		if e.shared {
			under = append(under, "architect's mark "+e.f.w.Ref)
		} else {
			under[0] += "   architect's mark " + e.f.w.Ref
		}
	}
	t := draft.Title{Mark: mark, Page: e.leaf.number, Name: name, Under: under, Width: k.Of(60), Most: e.field.W() - k.Of(12)}
	if e.shared {
		t.Width = 0
	}
	return t
}

// titleY is the height of the line of the title.
func (e *elevation) titleY() float64 {
	k := e.look
	if e.line > 0 {
		return e.line
	}
	under := e.below.Box(k).Y1 + k.Of(7.7)
	if e.apart() > 0 {
		under += k.Of(2)
	}
	over := math.Max(k.Of(8), e.title().High(k)+k.Of(0.9))
	return math.Min(math.Max(e.box().Y1+k.Of(34), under+over), e.field.Y1-k.Of(8))
}

// foot draws title, scale bar and, where the page has room, the table of the wall's sheets.
func (e *elevation) foot() {
	k := e.look
	box, y, t := e.box(), e.titleY(), e.title()
	left, right := e.field.X0+k.Of(6), e.field.X1-k.Of(6)
	bar := draft.Bar{Scale: e.v.Scale, Metric: e.metric()}
	most := k.Of(122)
	wide := t.Wide(k)
	x := math.Min(math.Max(box.X0, left), math.Max(left, right-wide))
	if e.shared {
		tb := t.Draw(&e.page.Group, k, scene.Pt(x, y))
		e.space.Take(tb)
		e.table(tb.Y1 + k.Of(5))
		return
	}
	gap := k.Of(16)
	for most > k.Of(30) && x+wide+gap+bar.Wide(k, most) > right {
		most -= k.Of(4)
	}
	barAt := scene.Pt(math.Max(x+wide+gap, math.Min(box.X1, right)-bar.Wide(k, most)), y+k.Of(1.5))
	if over := barAt.X + bar.Wide(k, most) - right; over > 0 && x-over >= left {
		x -= over
		barAt.X -= over
	}
	under := barAt.X+bar.Wide(k, most) > right // no room beside the title
	if under && y+k.Of(22) > e.field.Y1 {      // nor under it: the name is shortened
		x, t.Width = left, 0
		t.Most = right - left - gap - bar.Wide(k, most)
		barAt = scene.Pt(right-bar.Wide(k, most), y+k.Of(1.5))
		under = false
	}
	tb := t.Draw(&e.page.Group, k, scene.Pt(x, y))
	if under {
		barAt = scene.Pt(x+k.Of(17), tb.Y1+k.Of(8))
	}
	e.space.Take(tb)
	bb := bar.Draw(&e.page.Group, k, barAt, most)
	e.space.Take(bb)
	e.table(math.Max(tb.Y1, bb.Y1) + k.Of(5))
}

// sheetTable lists the sheets of the wall.
func (e *elevation) sheetTable() *draft.Table {
	t := &draft.Table{Columns: []draft.Column{
		{Head: "SHEET", Align: scene.Start, Bold: true}, {Head: "FLITCH"}, {Head: "COVERS", Align: scene.End}, {Head: "RIGHT SEAM AT", Align: scene.End},
		{Head: "LINE AT", Align: scene.End}, {Head: "CUT LENGTH", Align: scene.End}, {Head: "NOTE"}}}
	for _, p := range e.f.parts {
		if p.to <= e.from || p.from >= e.to {
			continue
		}
		for _, s := range p.sheets {
			seam, line := "", ""
			if e.seamAt(p.to) && s.Course == 1 {
				seam = e.style.Format(p.to)
				line = e.style.Format(p.to + e.room.Veneer.Overlap.HalfDown())
			}
			t.Rows = append(t.Rows, draft.Row{Cells: []string{numberOf(s), s.Flitch, e.style.Format(s.Width), seam, line, e.style.Format(s.CutLength), e.sheetNote(p, s)}})
		}
	}
	return t
}

// sheetNote says what is special about a sheet.
func (e *elevation) sheetNote(p part, s *layout.Sheet) string {
	var list []string
	if s.Ripped != "" {
		list = append(list, fmt.Sprintf("ripped to %s at its %s edge", e.style.Words(s.RipTo), s.Ripped))
	}
	for _, c := range s.Corners {
		list = append(list, "wraps "+c)
	}
	if s.Turned {
		list = append(list, "hangs turned")
	}
	if s.Narrow {
		list = append(list, "the grain jumps "+e.style.Words(s.Lost))
	}
	if s.Hung {
		list = append(list, "hung")
	}
	return strings.Join(list, ", ")
}

// tableHigh is how high the table under the view comes out.
func (e *elevation) tableHigh() float64 {
	t := e.sheetTable()
	if n := len(t.Rows); n > 10 {
		t.Rows = t.Rows[:(n+1)/2]
	}
	t.Fit(e.look, 0)
	return t.High(e.look)
}

// table draws the sheets of the wall under the view, in two columns where there are many, if all of them find room.
func (e *elevation) table(y float64) {
	k := e.look
	t := e.sheetTable()
	wide := e.field.W() - k.Of(12)
	room := e.field.Y1 - k.Of(4) - y
	t.Fit(k, 0)
	half := (len(t.Rows) + 1) / 2
	natural := t.Width()
	switch {
	case t.High(k) <= room && natural <= wide:
		t.Fit(k, math.Min(wide, math.Max(natural, e.box().W())))
		x := math.Min(math.Max(e.box().X0, e.field.X0+k.Of(6)), e.field.X1-k.Of(6)-t.Width())
		_, taken := t.Draw(&e.page.Group, k, scene.Pt(x, y), 0, room)
		e.space.Take(taken)
	case 2*natural+k.Of(8) <= wide && len(t.Rows) > 1:
		top := *t
		top.Rows = t.Rows[:half]
		if top.High(k) > room {
			return
		}
		x := e.field.X0 + (e.field.W()-2*natural-k.Of(8))/2
		_, left := top.Draw(&e.page.Group, k, scene.Pt(x, y), 0, room)
		top.Rows = t.Rows[half:]
		_, right := top.Draw(&e.page.Group, k, scene.Pt(x+natural+k.Of(8), y), 0, room)
		e.space.Take(left, right)
	}
}

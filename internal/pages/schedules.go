package pages

import (
	"fmt"
	"strings"

	"flitchlay/internal/climate"
	"flitchlay/internal/draft"
	"flitchlay/internal/layout"
	"flitchlay/internal/scene"
)

// schedulePages are the tables of all sheets, seams, openings and boxes, and the quantities. They share pages where the
// table of sheets, the widest, stands well in a column; on small papers every column is as wide as the page.
func schedulePages(s *set) []*leaf {
	all := func() []block { return s.scheduleBlocks() }
	rest := func() []block { return all()[1:] }
	c, two := s.scheduleColumns(all), s.scheduleColumns(rest)
	if c.count == 1 && two.count > 1 {
		return append(s.schedules(0, c, func() []block { return all()[:1] }), s.schedules(1, two, rest)...)
	}
	return s.schedules(0, c, all)
}

// schedules are the pages of some tables, with the place of the first in scheduleNames.
func (s *set) schedules(from int, c columns, make func() []block) []*leaf {
	list := s.flowed("", "", c, make, nil)
	for i, parts := range flow(s.look, make(), c) {
		first, last := from+parts[0].block, from+parts[len(parts)-1].block
		list[i].title = scheduleTitle(first, last)
		for _, p := range parts {
			if p.first == 0 {
				list[i].abouts = append(list[i].abouts, scheduleNames[from+p.block].about)
			}
		}
	}
	return list
}

// scheduleNames are what the tables are called in the titles of pages, and what their first pages are looked up by.
var scheduleNames = []struct{ title, about string }{
	{"SHEETS", "sheets"}, {"SEAMS", "seams"}, {"OPENINGS", "openings"}, {"BOXES", "boxes"}, {"QUANTITIES", "quantities"}, {"QUANTITIES", "flitches"},
}

func (s *set) scheduleBlocks() []block {
	return []block{{table: s.sheetSchedule()}, {table: s.seamSchedule()}, {table: s.openingSchedule()}, {table: s.boxSchedule()}, {table: s.quantities(), whole: true}, {table: s.stock()}}
}

// scheduleTitle says which tables stand on a page, as short as a title block needs it.
func scheduleTitle(first, last int) string {
	a, b := scheduleNames[first].title, scheduleNames[last].title
	switch {
	case a == b:
		return "SCHEDULE OF " + a
	case last == first+1:
		return a + ", " + b
	}
	return a + " TO " + b
}

// scheduleColumns are as many columns as tables stand in with nothing cut off and little text wrapped.
func (s *set) scheduleColumns(make func() []block) columns {
	const most, higher = 4, 1.25 // the first table, the longest, than in one column as wide as the page
	high := func(c columns) float64 {
		t := make()[0].table
		t.Fit(s.look, c.width())
		return t.High(s.look)
	}
	least := 0.0
	for _, b := range make() {
		least = max(least, b.table.Least(s.look))
	}
	c := s.columns(1)
	for n, one := most, high(c); n > 1; n-- {
		if more := (columns{box: c.box, count: n, gap: c.gap}); least <= more.width() && high(more) <= higher*one {
			return more
		}
	}
	return c
}

// spareEmpty lets the columns go in which no row says anything.
func spareEmpty(t *draft.Table) *draft.Table {
	for i := range t.Columns {
		empty := len(t.Rows) > 0
		for _, r := range t.Rows {
			empty = empty && (i >= len(r.Cells) || r.Cells[i] == "")
		}
		if empty {
			t.Columns[i].Spare = 3
		}
	}
	return t
}

func (s *set) sheetSchedule() *draft.Table {
	t := &draft.Table{Title: "SCHEDULE OF SHEETS, in the order of hanging", Columns: []draft.Column{
		{Head: "SHEET", Bold: true, Align: scene.End}, {Head: "FLITCH", Spare: s.spareFlitch()}, {Head: "WALLS", Wrap: true}, {Head: "COVERS", Align: scene.End},
		{Head: "CUT TO", Align: scene.End}, {Head: "AT ITS", Align: scene.Start}, {Head: "CUT LENGTH", Align: scene.End}, {Head: "ABOVE LEVEL", Align: scene.End},
		{Head: "BELOW", Align: scene.End, Spare: 1}, {Head: "WRAPS", Wrap: true}, {Head: "NOTE", Wrap: true}}}
	for i := range s.plan.Runs {
		r := &s.plan.Runs[i]
		for j := range r.Sheets {
			t.Rows = append(t.Rows, s.sheetRow(r, &r.Sheets[j]))
		}
	}
	return spareEmpty(t)
}

// spareFlitch says how well the column of flitches can be spared: where there is one, it says nothing.
func (s *set) spareFlitch() int {
	if len(s.room.Flitches) > 1 {
		return 0
	}
	return 2
}

func (s *set) sheetRow(r *layout.Run, sh *layout.Sheet) draft.Row {
	f := s.style.Format
	cells := []string{numberOf(sh), sh.Flitch, s.wallsOf(sh), f(sh.Width), "", "", f(sh.CutLength), f(sh.Above), f(sh.Below), strings.Join(sh.Corners, ", ")}
	if sh.Ripped != "" {
		cells[4], cells[5] = f(sh.RipTo), sh.Ripped
	}
	if sh.InGap {
		cells[6], cells[7], cells[8] = "", "", ""
	}
	var notes []string
	if sh.Narrow {
		notes = append(notes, "narrow: grain jumps "+s.style.Words(sh.Lost))
	} else if sh.Lost > 0 {
		notes = append(notes, "grain jumps "+s.style.Words(sh.Lost)+", little seen")
	}
	if sh.Course > 1 || s.courses(r, sh.Place) > 1 {
		notes = append(notes, fmt.Sprintf("course %d", sh.Course))
	}
	if sh.Turned {
		notes = append(notes, "hangs turned")
	}
	if sh.InGap {
		notes = append(notes, "in a gap: to stock")
	}
	if sh.Hung {
		notes = append(notes, "hung")
	}
	cells = append(cells, strings.Join(notes, ", "))
	return draft.Row{Cells: cells, Tag: scene.Tag{Class: "row", Data: []scene.Datum{datum("place", fmt.Sprint(sh.Place)), datum("course", fmt.Sprint(sh.Course))}}}
}

// courses counts the sheets of a column.
func (s *set) courses(r *layout.Run, place int) int {
	n := 0
	for i := range r.Sheets {
		if r.Sheets[i].Place == place {
			n++
		}
	}
	return n
}

// wallsOf names the walls that a sheet covers part of.
func (s *set) wallsOf(sh *layout.Sheet) string {
	var list []string
	for _, p := range sh.Pieces {
		name := s.room.Walls[p.Wall].Name
		if len(list) == 0 || list[len(list)-1] != name {
			list = append(list, name)
		}
	}
	return strings.Join(list, ", ")
}

func (s *set) seamSchedule() *draft.Table {
	t := &draft.Table{Title: "SEAMS, from the left end of their wall", Columns: []draft.Column{
		{Head: "SEAM", Bold: true}, {Head: "WALL", Wrap: true}, {Head: "AT", Align: scene.End}, {Head: "LINE", Align: scene.End},
		{Head: "NEAREST OPENING", Align: scene.End}, {Head: "NEAREST BEND", Align: scene.End}, {Head: "NOTE"}}}
	for i := range s.plan.Runs {
		r := &s.plan.Runs[i]
		for _, m := range r.Seams {
			note := ""
			switch {
			case m.Closing:
				note = "closing"
			case m.FlitchChange:
				note = "flitch change"
			case m.Hung:
				note = "hung"
			}
			t.Rows = append(t.Rows, draft.Row{Cells: []string{numberOf(s.sheetAt(m.LeftSheet)) + " | " + numberOf(s.sheetAt(m.RightSheet)), s.room.Walls[m.Wall].Name,
				s.style.Format(m.X), s.style.Format(m.X + s.room.Veneer.Overlap.HalfDown()), s.near(m.NearestOpening), s.near(m.NearestCorner), note},
				Tag: scene.Tag{Class: "row", Data: []scene.Datum{datum("at", mm(m.At))}}})
		}
	}
	return spareEmpty(t)
}

func (s *set) near(n *layout.Near) string {
	if n == nil {
		return ""
	}
	return s.style.Format(n.Distance) + " " + n.Name
}

func (s *set) openingSchedule() *draft.Table {
	t := &draft.Table{Title: "OPENINGS", Columns: []draft.Column{{Head: "NAME", Bold: true}, {Head: "KIND"}, {Head: "WALL", Wrap: true}, {Head: "FROM LEFT", Align: scene.End},
		{Head: "WIDTH", Align: scene.End}, {Head: "SILL", Align: scene.End}, {Head: "HEAD", Align: scene.End}}}
	for i := range s.room.Walls {
		w := &s.room.Walls[i]
		for j := range w.Openings {
			o := &w.Openings[j]
			sill := "floor"
			if o.SillGiven {
				sill = s.style.Format(o.Sill)
			}
			t.Rows = append(t.Rows, draft.Row{Cells: []string{o.Name, o.Kind, w.Name, s.style.Format(o.FromLeft), s.style.Format(o.Width), sill, s.style.Format(o.Head)}})
		}
	}
	if len(t.Rows) == 0 {
		t.Rows = []draft.Row{{Cells: []string{"none"}}}
	}
	return t
}

func (s *set) boxSchedule() *draft.Table {
	t := &draft.Table{Title: "BOXES, by their middles", Columns: []draft.Column{{Head: "NAME", Bold: true}, {Head: "KIND"}, {Head: "WALL", Wrap: true}, {Head: "FROM LEFT", Align: scene.End},
		{Head: "UP", Align: scene.End}, {Head: "PLATE", Align: scene.End}}}
	for i := range s.room.Walls {
		w := &s.room.Walls[i]
		for j := range w.Boxes {
			b := &w.Boxes[j]
			t.Rows = append(t.Rows, draft.Row{Cells: []string{b.Name, b.Kind, w.Name, s.style.Format(b.X), s.style.Format(b.Z), s.style.Inches(b.PlateWidth) + " x " + s.style.Inches(b.PlateHigh)}})
		}
	}
	if len(t.Rows) == 0 {
		t.Rows = []draft.Row{{Cells: []string{"none"}}}
	}
	return t
}

func (s *set) quantities() *draft.Table {
	p := s.plan.Totals
	rows := [][2]string{
		{"Sheets laid", fmt.Sprint(p.Sheets)},
		{"Spare sheets to order", fmt.Sprint(p.Spares)},
	}
	if p.Short > 0 {
		rows = append(rows, [2]string{"Sheets short", fmt.Sprint(p.Short)})
	}
	rows = append(rows, [2]string{"Covered, openings out", s.style.FormatArea(p.NetArea)}, [2]string{"Cut from sheets, gross", s.style.FormatArea(p.GrossArea)})
	amount := func(name string, a *layout.Amount) {
		if a != nil {
			rows = append(rows, [2]string{name, climate.WordsOf(s.style).Decimal(a.Amount, 1) + " " + a.Unit})
		}
	}
	amount("Paste", p.Paste)
	amount("Primer", p.Primer)
	return pairs("QUANTITIES", rows...)
}

// stock is what of each flitch is laid, kept back, damaged and left.
func (s *set) stock() *draft.Table {
	t := &draft.Table{Title: "FLITCHES", Columns: []draft.Column{{Head: "FLITCH", Bold: true}, {Head: "DELIVERED", Align: scene.End}, {Head: "LAID", Wrap: true}, {Head: "LEFT", Wrap: true},
		{Head: "KEPT BACK"}, {Head: "DAMAGED"}}}
	for _, f := range s.plan.Left {
		t.Rows = append(t.Rows, draft.Row{Cells: []string{f.Flitch, fmt.Sprint(len(f.Delivered)), numbers(f.Laid), numbers(f.Left), numbers(f.Spare), numbers(f.Damaged)}})
	}
	if len(t.Rows) == 0 {
		t.Rows = []draft.Row{{Cells: []string{"none is given: sheets are numbered from 1"}}}
	}
	return t
}

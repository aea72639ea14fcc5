package submittal

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"flitchlay/internal/climate"
	"flitchlay/internal/draft"
	"flitchlay/internal/elevation"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/scene"
)

// schedulePages are the tables of all sheets, seams, openings and boxes, and the quantities. They share pages where the
// table of sheets, the widest, stands well in a column; on small papers every column is as wide as the page.
func schedulePages(s *folio.Set) []*folio.Leaf {
	all := func() []folio.Block { return scheduleBlocks(s) }
	rest := func() []folio.Block { return all()[1:] }
	c, two := scheduleColumns(s, all), scheduleColumns(s, rest)
	if c.Count == 1 && two.Count > 1 {
		return append(schedules(s, 0, c, func() []folio.Block { return all()[:1] }), schedules(s, 1, two, rest)...)
	}
	return schedules(s, 0, c, all)
}

// schedules are the pages of some tables, with the place of the first in scheduleNames.
func schedules(s *folio.Set, from int, c folio.Columns, make func() []folio.Block) []*folio.Leaf {
	list := s.Flowed("", "", c, make, nil)
	for i, parts := range folio.Flow(s.Look, make(), c) {
		first, last := from+parts[0].Block, from+parts[len(parts)-1].Block
		list[i].Title = scheduleTitle(first, last)
		for _, p := range parts {
			if p.First == 0 {
				list[i].Abouts = append(list[i].Abouts, scheduleNames[from+p.Block].about)
			}
		}
	}
	return list
}

// scheduleNames are what the tables are called in the titles of pages, and what their first pages are looked up by.
var scheduleNames = []struct{ title, about string }{
	{"SHEETS", "sheets"}, {"SEAMS", "seams"}, {"OPENINGS", "openings"}, {"BOXES", "boxes"}, {"QUANTITIES", "quantities"}, {"QUANTITIES", "flitches"},
}

func scheduleBlocks(s *folio.Set) []folio.Block {
	return []folio.Block{{Table: sheetSchedule(s)}, {Table: seamSchedule(s)}, {Table: openingSchedule(s)}, {Table: boxSchedule(s)}, {Table: quantities(s), Whole: true}, {Table: stock(s)}}
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
func scheduleColumns(s *folio.Set, make func() []folio.Block) folio.Columns {
	const most, higher = 4, 1.25 // the first table, the longest, than in one column as wide as the page
	high := func(c folio.Columns) float64 {
		t := make()[0].Table
		t.Fit(s.Look, c.Width())
		return t.High(s.Look)
	}
	least := 0.0
	for _, b := range make() {
		least = max(least, b.Table.Least(s.Look))
	}
	c := s.Columns(1)
	for n, one := most, high(c); n > 1; n-- {
		if more := (folio.Columns{Box: c.Box, Count: n, Gap: c.Gap}); least <= more.Width() && high(more) <= higher*one {
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

func sheetSchedule(s *folio.Set) *draft.Table {
	t := &draft.Table{Title: "SCHEDULE OF SHEETS, in the order of hanging", Columns: []draft.Column{
		{Head: "SHEET", Bold: true, Align: scene.End}, {Head: "FLITCH", Spare: spareFlitch(s)}, {Head: "WALLS", Wrap: true}, {Head: "COVERS", Align: scene.End},
		{Head: "RIPPED TO", Align: scene.End}, {Head: "AT ITS", Align: scene.Start}, {Head: "CUT LENGTH", Align: scene.End}, {Head: "ABOVE LEVEL", Align: scene.End},
		{Head: "BELOW", Align: scene.End, Spare: 1}, {Head: "WRAPS", Wrap: true}, {Head: "NOTE", Wrap: true}}}
	for i := range s.Plan.Runs {
		r := &s.Plan.Runs[i]
		for j := range r.Sheets {
			t.Rows = append(t.Rows, sheetRow(s, r, &r.Sheets[j]))
		}
	}
	t.Rows = grouped(t.Rows)
	return spareEmpty(t)
}

// grouped makes one row of those that follow each other with numbers that do, where nothing else in them differs: 13 to 23. It keeps
// the places of all.
func grouped(rows []draft.Row) []draft.Row {
	var out []draft.Row
	first, last := 0, 0 // numbers of the row that is added to, 0 where it has none
	for _, r := range rows {
		n, err := strconv.Atoi(r.Cells[0])
		if err != nil {
			n = 0
		}
		if k := len(out) - 1; k >= 0 && n > 0 && n == last+1 && slices.Equal(out[k].Cells[1:], r.Cells[1:]) {
			last = n
			out[k].Cells[0] = fmt.Sprintf("%d to %d", first, last)
			for i := range out[k].Tag.Data { // all of them in one: "3 4 5"
				out[k].Tag.Data[i].Value += " " + r.Tag.Data[i].Value
			}
			continue
		}
		first, last = n, n
		out = append(out, r)
	}
	return out
}

// spareFlitch says how well the column of flitches can be spared: where there is one, it says nothing.
func spareFlitch(s *folio.Set) int {
	if len(s.Room.Flitches) > 1 {
		return 0
	}
	return 2
}

func sheetRow(s *folio.Set, r *layout.Run, sh *layout.Sheet) draft.Row {
	f := s.Style.Format
	cells := []string{elevation.NumberOf(sh), sh.Flitch, wallsOf(s, sh), f(sh.Width), "", "", f(sh.CutLength), f(sh.Above), f(sh.Below), strings.Join(sh.Corners, ", ")}
	if sh.Ripped != "" {
		cells[4], cells[5] = f(sh.RipTo), r.Side(sh.Ripped)
	}
	if sh.InGap {
		cells[6], cells[7], cells[8] = "", "", ""
	}
	var notes []string
	if sh.Narrow {
		notes = append(notes, "narrow: grain jumps "+s.Style.Words(sh.Lost))
	} else if sh.Lost > 0 {
		notes = append(notes, "grain jumps "+s.Style.Words(sh.Lost)+", little seen")
	}
	if sh.Course > 1 || courses(s, r, sh.Place) > 1 {
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
	return draft.Row{Cells: cells, Tag: scene.Tag{Class: "row", Data: []scene.Datum{folio.Datum("place", fmt.Sprint(sh.Place)), folio.Datum("course", fmt.Sprint(sh.Course))}}}
}

// courses counts the sheets of a column.
func courses(s *folio.Set, r *layout.Run, place int) int {
	n := 0
	for i := range r.Sheets {
		if r.Sheets[i].Place == place {
			n++
		}
	}
	return n
}

// wallsOf names the walls that a sheet covers part of.
func wallsOf(s *folio.Set, sh *layout.Sheet) string {
	var list []string
	for _, p := range sh.Pieces {
		name := s.Room.Walls[p.Wall].Name
		if len(list) == 0 || list[len(list)-1] != name {
			list = append(list, name)
		}
	}
	return strings.Join(list, ", ")
}

func seamSchedule(s *folio.Set) *draft.Table {
	t := &draft.Table{Title: "SEAMS, from the left end of their wall", Columns: []draft.Column{
		{Head: "SEAM", Bold: true}, {Head: "WALL", Wrap: true}, {Head: "PAGE", Spare: 1}, {Head: "AT", Align: scene.End}, {Head: "LINE", Align: scene.End},
		{Head: "NEAREST OPENING", Align: scene.End}, {Head: "NEAREST BEND", Align: scene.End}, {Head: "NOTE"}}}
	for i := range s.Plan.Runs {
		r := &s.Plan.Runs[i]
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
			t.Rows = append(t.Rows, draft.Row{Cells: []string{elevation.NumberOf(elevation.SheetAt(s, m.LeftSheet)) + " | " + elevation.NumberOf(elevation.SheetAt(s, m.RightSheet)), s.Room.Walls[m.Wall].Name, elevation.PageAt(s, m.Wall, m.X),
				s.Style.Format(m.X), s.Style.Format(m.X + s.Room.Veneer.Overlap.HalfDown()), nearWords(s, m.NearestOpening), nearWords(s, m.NearestCorner), note},
				Link: elevation.PageAt(s, m.Wall, m.X), Tag: scene.Tag{Class: "row", Data: []scene.Datum{folio.Datum("at", folio.Mm(m.At))}}})
		}
	}
	return spareEmpty(t)
}

func nearWords(s *folio.Set, n *layout.Near) string {
	if n == nil {
		return ""
	}
	return s.Style.Format(n.Distance) + " " + n.Name
}

func openingSchedule(s *folio.Set) *draft.Table {
	t := &draft.Table{Title: "OPENINGS, heights over the level of the room", Columns: []draft.Column{{Head: "NAME", Bold: true}, {Head: "KIND"}, {Head: "WALL", Wrap: true}, {Head: "FROM LEFT", Align: scene.End},
		{Head: "WIDTH", Align: scene.End}, {Head: "SILL", Align: scene.End}, {Head: "HEAD", Align: scene.End}}}
	for i := range s.Room.Walls {
		w := &s.Room.Walls[i]
		for j := range w.Openings {
			o := &w.Openings[j]
			sill := "floor"
			if o.SillGiven {
				sill = s.Style.Format(o.Sill)
			}
			t.Rows = append(t.Rows, draft.Row{Cells: []string{o.Name, string(o.Kind), w.Name, s.Style.Format(o.FromLeft), s.Style.Format(o.Width), sill, s.Style.Format(o.Head)}})
		}
	}
	if len(t.Rows) == 0 {
		t.Rows = []draft.Row{{Cells: []string{"none"}}}
	}
	return t
}

func boxSchedule(s *folio.Set) *draft.Table {
	t := &draft.Table{Title: "BOXES, by their middles, heights over the level of the room", Columns: []draft.Column{{Head: "NAME", Bold: true}, {Head: "KIND"}, {Head: "WALL", Wrap: true}, {Head: "FROM LEFT", Align: scene.End},
		{Head: "UP", Align: scene.End}, {Head: "PLATE", Align: scene.End}}}
	for i := range s.Room.Walls {
		w := &s.Room.Walls[i]
		for j := range w.Boxes {
			b := &w.Boxes[j]
			t.Rows = append(t.Rows, draft.Row{Cells: []string{b.Name, string(b.Kind), w.Name, s.Style.Format(b.X), s.Style.Format(b.Z), s.Style.Measured(b.PlateWidth) + " x " + s.Style.Measured(b.PlateHigh)}})
		}
	}
	if len(t.Rows) == 0 {
		t.Rows = []draft.Row{{Cells: []string{"none"}}}
	}
	return t
}

func quantities(s *folio.Set) *draft.Table {
	p := s.Plan.Totals
	hang, gaps := hanging(s.Plan)
	rows := [][2]string{{"Sheets laid", fmt.Sprint(hang)}}
	if gaps > 0 {
		rows = append(rows, [2]string{"Sheets in openings, to stock", fmt.Sprint(gaps)})
	}
	rows = append(rows, [2]string{"Spare sheets wanted", fmt.Sprint(p.Spares)})
	if p.Short > 0 {
		rows = append(rows, [2]string{"Sheets short", fmt.Sprint(p.Short)})
	}
	rows = append(rows, [2]string{"Covered, openings out", s.Style.FormatArea(p.NetArea)}, [2]string{"Cut from sheets, gross", s.Style.FormatArea(p.GrossArea)})
	amount := func(name string, a *layout.Amount) {
		if a != nil {
			rows = append(rows, [2]string{name, climate.WordsOf(s.Style).Decimal(a.Amount, 1) + " " + a.Unit})
		}
	}
	amount("Paste", p.Paste)
	amount("Primer", p.Primer)
	return Pairs("QUANTITIES", rows...)
}

// hanging counts the sheets that hang and those that fall wholly into openings and go back to stock.
func hanging(p *layout.Plan) (hang, gaps int) {
	for i := range p.Runs {
		for k := range p.Runs[i].Sheets {
			if len(p.Runs[i].Sheets[k].Pieces) > 0 {
				hang++
			} else {
				gaps++
			}
		}
	}
	return hang, gaps
}

// sheetCount is a number of sheets in words: "40 sheets".
func sheetCount(n int) string {
	if n == 1 {
		return "1 sheet"
	}
	return fmt.Sprintf("%d sheets", n)
}

// hangs are the numbers among some that hang, others those that fall into openings.
func hangs(p *layout.Plan, flitch string, numbers []int) (those, others []int) {
	for _, n := range numbers {
		if p.Hangs(flitch, n) {
			those = append(those, n)
		} else {
			others = append(others, n)
		}
	}
	return those, others
}

// stock is what of each flitch is laid, kept back, damaged and left.
func stock(s *folio.Set) *draft.Table {
	t := &draft.Table{Title: "FLITCHES", Columns: []draft.Column{{Head: "FLITCH", Bold: true}, {Head: "DELIVERED", Align: scene.End}, {Head: "LAID", Wrap: true}, {Head: "LEFT", Wrap: true},
		{Head: "KEPT BACK"}, {Head: "DAMAGED"}}}
	for _, f := range s.Plan.Left {
		laid, gaps := hangs(s.Plan, f.Flitch, f.Laid)
		left := slices.Concat(f.Left, gaps)
		slices.Sort(left)
		t.Rows = append(t.Rows, draft.Row{Cells: []string{f.Flitch, fmt.Sprint(len(f.Delivered)), layout.Ranges(laid, " to "), layout.Ranges(left, " to "), layout.Ranges(f.Spare, " to "), layout.Ranges(f.Damaged, " to ")}})
	}
	if len(t.Rows) == 0 {
		t.Rows = []draft.Row{{Cells: []string{"none is given: sheets are numbered from 1"}}}
	}
	return t
}

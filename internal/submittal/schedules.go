package submittal

import (
	"fmt"
	"slices"

	"flitchlay/internal/climate"
	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/room"
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
	names := scheduleNames(s)[from:]
	for i, parts := range folio.Flow(s.Look, make(), c) {
		list[i].Listed = true
		list[i].Title = scheduleTitle(names, parts[0].Block, parts[len(parts)-1].Block)
		for _, p := range parts {
			if p.First == 0 {
				list[i].Abouts = append(list[i].Abouts, names[p.Block].about)
			}
		}
	}
	return list
}

// scheduleName is what a table is called in the titles of pages, and what its first page is looked up by.
type scheduleName struct{ title, about string }

// scheduleNames are those of the tables of a set, in their order.
func scheduleNames(s *folio.Set) []scheduleName {
	list := []scheduleName{{"SHEETS", "sheets"}, {"SEAMS", "seams"}, {"JOINTS", "joints"}, {"OPENINGS", "openings"}, {"BOXES", "boxes"}, {"QUANTITIES", "quantities"}, {"QUANTITIES", "flitches"}}
	if !jointed(s) {
		list = slices.Delete(list, 2, 3)
	}
	return list
}

func scheduleBlocks(s *folio.Set) []folio.Block {
	list := []folio.Block{{Table: sheetSchedule(s)}, {Table: seamSchedule(s)}, {Table: jointSchedule(s)}, {Table: openingSchedule(s)}, {Table: boxSchedule(s)}, {Table: quantities(s), Whole: true}, {Table: stock(s)}}
	if !jointed(s) {
		list = slices.Delete(list, 2, 3)
	}
	return list
}

// scheduleTitle says which tables stand on a page, as short as a title block needs it.
func scheduleTitle(names []scheduleName, first, last int) string {
	a, b := names[first].title, names[last].title
	switch {
	case a == b:
		return "SCHEDULE OF " + a
	case last == first+1:
		return a + ", " + b
	}
	return a + " TO " + b
}

// scheduleColumns are as many columns as tables stand in with nothing cut off and little text wrapped; with more of it wrapped where
// all tables stand on one page, for they fill its width then.
func scheduleColumns(s *folio.Set, make func() []folio.Block) folio.Columns {
	const most, higher, filled = 4, 1.25, 1.6 // the first table, the longest, than in one column as wide as the page
	high := func(c folio.Columns) float64 {
		t := make()[0].Table
		t.Fit(s.Look, c.Width())
		return t.High(s.Look)
	}
	least := 0.0
	for _, b := range make() {
		least = max(least, b.Table.Least(s.Look), scene.Width(b.Table.Title, s.Look.Medium, true)) // titles on one line
	}
	c := s.Columns(1)
	c.Box.Y1 += s.ListBand()
	for n, one := most, high(c); n > 1; n-- {
		more := folio.Columns{Box: c.Box, Count: n, Gap: c.Gap}
		if h := high(more); least <= more.Width() && (h <= higher*one || h <= filled*one && len(folio.Flow(s.Look, make(), more)) == 1) {
			return more
		}
	}
	return c
}

// withoutEmpty leaves out the columns in which no row says anything.
func withoutEmpty(t *draft.Table) *draft.Table {
	for i := len(t.Columns) - 1; i >= 0 && len(t.Rows) > 0; i-- {
		if slices.ContainsFunc(t.Rows, func(r draft.Row) bool { return r.Cells[i] != "" }) {
			continue
		}
		t.Columns = slices.Delete(t.Columns, i, i+1)
		for j := range t.Rows {
			t.Rows[j].Cells = slices.Delete(t.Rows[j].Cells, i, i+1)
		}
	}
	return t
}

func openingSchedule(s *folio.Set) *draft.Table {
	t := &draft.Table{Title: "OPENINGS, heights over the level of the room", Columns: []draft.Column{{Head: "NAME", Bold: true}, {Head: "KIND"}, {Head: "WALL", Wrap: true}, {Head: "FROM LEFT", Align: scene.End},
		{Head: "WIDTH", Align: scene.End}, {Head: "SILL", Align: scene.End}, {Head: "HEAD", Align: scene.End}, {Head: "HEIGHT", Align: scene.End}}}
	for i := range s.Room.Walls {
		w := &s.Room.Walls[i]
		for j := range w.Openings {
			o := &w.Openings[j]
			foot := room.At(w.Floor, (o.FromLeft+o.Right())/2)
			sill := "floor"
			if foot != 0 {
				sill += ", " + s.Style.Format(foot)
			}
			if o.SillGiven {
				foot, sill = o.Sill, s.Style.Format(o.Sill)
			}
			t.Rows = append(t.Rows, draft.Row{Cells: []string{o.Name, string(o.Kind), w.Name, s.Style.Format(o.FromLeft), s.Style.Format(o.Width), sill, s.Style.Format(o.Head), s.Style.Format(o.Head - foot)}})
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
	if len(s.Room.Flitches) == 0 { // else the table of the flitches says which are kept back
		rows = append(rows, [2]string{"Spare sheets, to keep back", fmt.Sprint(p.Spares)})
	}
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

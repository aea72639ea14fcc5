package count

import "flitchlay/internal/report"

// registerTable is where the level line is marked on all sheets of a course of a flitch before they are cut.
func (c *Count) registerTable() *report.Table {
	t := &report.Table{Title: "Registers: one mark for all, then cut over and under it", Columns: []report.Column{{Head: "flitch"}, {Head: "course", Right: true},
		{Head: "mark", Right: true}, {Head: "measured", Long: true}, {Head: "needs", Right: true}, {Head: "highest", Right: true}, {Head: "lowest", Right: true}}}
	for _, r := range c.Plan.Registers() {
		where := "below the raw head, which hangs up"
		switch {
		case r.Foot:
			where = "from the level line up to the raw " + r.End() + ", which hangs down"
		case r.Turned:
			where = "from the raw foot, which hangs up"
		}
		t.Rows = append(t.Rows, []report.Cell{report.Text(r.Flitch), report.Whole(r.Course), c.long(r.At), report.Text(where), c.long(r.Need),
			sheetCell(r.Most[0].Number), sheetCell(r.Most[1].Number)})
	}
	return t
}

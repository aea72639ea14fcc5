package count

import (
	"fmt"
	"strings"

	"flitchlay/internal/layout"
	"flitchlay/internal/report"
)

// registerTable is where the level line is marked on all sheets of a course of a flitch before they are cut.
func (c *Count) registerTable() *report.Table {
	t := &report.Table{Title: "Registers: one mark for all, then cut over and under it", Columns: []report.Column{{Head: "flitch"}, {Head: "course", Right: true},
		{Head: "mark", Right: true}, {Head: "measured", Long: true}, {Head: "needs", Right: true}, {Head: "highest", Right: true}, {Head: "lowest", Right: true}, {Head: "not of", Long: true}}}
	for _, r := range c.Plan.Registers() {
		where := "below the raw head, which hangs up"
		switch {
		case r.Foot:
			where = "from the level line up to the raw " + r.End() + ", which hangs down"
		case r.Turned:
			where = "from the raw foot, which hangs up"
		}
		t.Rows = append(t.Rows, []report.Cell{report.Text(r.Flitch), report.Whole(r.Course), c.long(r.At), report.Text(where), c.long(r.Need),
			sheetCell(r.Most[0].Number), sheetCell(r.Most[1].Number), report.Text(c.ownWords(&r))})
	}
	return t
}

// ownWords name the sheets that do not go by a register: by which line they are marked, or that they carry no mark.
func (c *Count) ownWords(r *layout.Register) string {
	var parts []string
	list, _ := c.Owns(r)
	for _, o := range list {
		var names []string
		for _, s := range o.Sheets {
			names = append(names, sheetName(s.Number, s.Place))
		}
		words := "no mark"
		if o.Line > 0 {
			words = fmt.Sprintf("line %d at %s", o.Line, c.Style.Format(o.At))
		}
		parts = append(parts, strings.Join(names, ", ")+" ("+words+")")
	}
	return strings.Join(parts, "; ")
}

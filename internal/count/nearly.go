package count

import "flitchlay/internal/report"

// nearlyTable is what small changes of the room would save, as the layout has found them.
func (c *Count) nearlyTable() *report.Table {
	t := &report.Table{Title: "What a small change would save", Columns: []report.Column{{Head: "by", Right: true}, {Head: "change", Long: true},
		{Head: "sheets", Right: true}, {Head: "courses", Right: true}, {Head: "narrow", Right: true},
		{Head: "musts", Right: true}, {Head: "it would", Long: true}}}
	for _, s := range c.Plan.Nearly {
		t.Rows = append(t.Rows, []report.Cell{c.long(s.By), report.Text(s.Change), report.Whole(s.Sheets), report.Whole(s.Courses),
			report.Whole(s.Narrow), report.Whole(s.Musts), report.Text(s.Saves)})
	}
	return t
}

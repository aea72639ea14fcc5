package count

import (
	"io"

	"flitchlay/internal/report"
)

// XLSX writes a workbook: one worksheet for each table, with the room and its unit in front, and one for the job.
//
// Order: rows are put on disk as they come, so that memory does not grow with them; the file is written by Job.
type XLSX struct{ book *report.Book }

// NewXLSX starts a workbook, with further worksheets before those of the count.
func NewXLSX(w io.Writer, before ...string) (*XLSX, error) {
	book, err := report.NewBook(w, append(before, append(TableNames(), JobTable)...), leads...)
	return &XLSX{book}, err
}

// Room adds a room's rows to every worksheet.
func (x *XLSX) Room(c *Count) error {
	for _, name := range TableNames() {
		if err := x.book.Add(c.Table(name), c.Room, c.Style.Unit.String()); err != nil {
			return err
		}
	}
	return nil
}

// Table adds a table of the job to its worksheet.
func (x *XLSX) Table(t *report.Table, unit string) error { return x.book.Add(t, wholeJob, unit) }

// Job adds the totals and writes the file.
func (x *XLSX) Job(j *Job) error {
	if err := x.book.Add(j.Table(), wholeJob, j.Style.Unit.String()); err != nil {
		return err
	}
	return x.book.Close()
}

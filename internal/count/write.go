package count

import (
	"fmt"
	"io"
	"strings"

	"flitchlay/internal/report"
)

// Writer writes rooms one by one as they come, then the totals of the job.
type Writer interface {
	Room(*Count) error
	Job(*Job) error
}

// leads are the heads of what stands in front of every row for machines.
var leads = []string{"room", "unit"}

// wholeJob stands for the room in the totals.
const wholeJob = "the whole job"

// JobTable is the name of the table of totals.
const JobTable = "job"

// Text writes tables for people.
func Text(w io.Writer) Writer { return &textWriter{w: w} }

type textWriter struct {
	w     io.Writer
	rooms int
}

func (t *textWriter) Room(c *Count) error {
	if t.rooms++; t.rooms > 1 {
		fmt.Fprintf(t.w, "\n%s\n\n", strings.Repeat("=", report.PageWidth(t.w)))
	}
	for _, line := range report.Wrap(c.Room, report.PageWidth(t.w)) {
		fmt.Fprintln(t.w, line)
	}
	if c.Broken {
		fmt.Fprintln(t.w, "NOT FOR ORDERING: a rule that must be met is broken; see flitchlay check")
	}
	for _, name := range TableNames() {
		table := c.Table(name)
		if len(table.Rows) == 0 {
			continue
		}
		fmt.Fprintln(t.w)
		if err := table.Write(t.w); err != nil {
			return err
		}
	}
	return nil
}

func (t *textWriter) Job(j *Job) error {
	if j.Rooms < 2 {
		return nil
	}
	if _, err := fmt.Fprintf(t.w, "\n%s\n\n", strings.Repeat("=", report.PageWidth(t.w))); err != nil {
		return err
	}
	return j.Table().Write(t.w)
}

// CSV writes one table of all rooms, a row for each entry, with the room and its unit in front. The table "job" is the
// totals.
func CSV(w io.Writer, table string) Writer { return &csvWriter{report.NewCSV(w, leads...), table} }

type csvWriter struct {
	w     *report.CSV
	table string
}

func (w *csvWriter) Room(c *Count) error {
	if w.table == JobTable {
		return nil
	}
	return w.w.Add(c.Table(w.table), c.Room, c.Style.Unit.String())
}

func (w *csvWriter) Job(j *Job) error {
	if w.table != JobTable {
		return nil
	}
	return w.w.Add(j.Table(), wholeJob, j.Style.Unit.String())
}

// One writes one table for people, of each room. The table "job" is the totals.
func One(w io.Writer, table string) Writer { return &oneWriter{w, table, false} }

type oneWriter struct {
	w     io.Writer
	table string
	more  bool
}

func (o *oneWriter) Room(c *Count) error {
	if o.table == JobTable {
		return nil
	}
	t := c.Table(o.table)
	t.Title = c.Room + ": " + strings.ToLower(t.Title[:1]) + t.Title[1:]
	if o.more {
		fmt.Fprintln(o.w)
	}
	o.more = true
	if len(t.Rows) == 0 {
		_, err := fmt.Fprintf(o.w, "%s: none\n", t.Title)
		return err
	}
	return t.Write(o.w)
}

func (o *oneWriter) Job(j *Job) error {
	if o.table != JobTable {
		return nil
	}
	return j.Table().Write(o.w)
}

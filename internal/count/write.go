package count

import (
	"encoding/csv"
	"fmt"
	"io"
	"strings"
)

// Writer writes rooms one by one as they come, then the totals of the job.
type Writer interface {
	Room(*Count) error
	Job(*Job) error
}

// Text writes tables for people.
func Text(w io.Writer) Writer { return &textWriter{w: w} }

type textWriter struct {
	w     io.Writer
	rooms int
}

func (t *textWriter) Room(c *Count) error {
	if t.rooms++; t.rooms > 1 {
		fmt.Fprintf(t.w, "\n%s\n\n", strings.Repeat("=", pageWidth))
	}
	for _, line := range wrap(c.Room, pageWidth) {
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
	if _, err := fmt.Fprintf(t.w, "\n%s\n\n", strings.Repeat("=", pageWidth)); err != nil {
		return err
	}
	return j.Table().Write(t.w)
}

// CSV writes one table of all rooms, a row for each entry, with the room and its unit in front. The table "job" is the
// totals.
func CSV(w io.Writer, table string) Writer { return &csvWriter{w: csv.NewWriter(w), table: table} }

type csvWriter struct {
	w     *csv.Writer
	table string
	head  bool
}

func (w *csvWriter) Room(c *Count) error {
	if w.table == "job" {
		return nil
	}
	return w.rows(c.Room, c.Style.Unit.String(), c.Table(w.table))
}

func (w *csvWriter) Job(j *Job) error {
	if w.table != "job" {
		return nil
	}
	return w.rows("the whole job", j.Style.Unit.String(), j.Table())
}

func (w *csvWriter) rows(room, unit string, t *Table) error {
	if !w.head {
		w.head = true
		w.w.Write(header(t))
	}
	for _, row := range t.Rows {
		record := []string{Guard(room), unit}
		for _, c := range row {
			if c.Number {
				record = append(record, c.Plain())
			} else {
				record = append(record, Guard(c.Text))
			}
		}
		w.w.Write(record)
	}
	w.w.Flush()
	return w.w.Error()
}

// header is the first row of a table for machines: the unit of areas goes by the room.
func header(t *Table) []string {
	out := []string{"room", "unit"}
	for _, c := range t.Columns {
		head := c.Head
		if head == "sq ft" || head == "m²" {
			head = "area"
		}
		out = append(out, head)
	}
	return out
}

// Guard keeps a spreadsheet from taking a text for a formula: one that begins like a formula gets an apostrophe before
// it.
func Guard(s string) string {
	if s != "" && strings.ContainsRune("=+-@\t\r", rune(s[0])) {
		return "'" + s
	}
	return s
}

// One writes one table for people, of each room. The table "job" is the totals.
func One(w io.Writer, table string) Writer { return &oneWriter{w, table, false} }

type oneWriter struct {
	w     io.Writer
	table string
	more  bool
}

func (o *oneWriter) Room(c *Count) error {
	if o.table == "job" {
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
	if o.table != "job" {
		return nil
	}
	return j.Table().Write(o.w)
}

package cli

import (
	"bufio"
	"bytes"
	"cmp"
	"fmt"
	"io"
	"path/filepath"
	"slices"

	"flitchlay/internal/count"
	"flitchlay/internal/days"
	"flitchlay/internal/job"
	"flitchlay/internal/report"
	"flitchlay/internal/tally"
)

// countedRoom is what is made of a room beside the others.
type countedRoom struct {
	count *count.Count
	days  *days.Schedule
}

// countJob counts a job into what the options ask for.
func (c *call) countJob(f *countFlags, j *job.Job) error {
	ours := slices.Contains(tally.Names(), f.table)
	// what rooms print for themselves needs their margins; totals do not
	quick := f.quick || !f.asJSON && f.book == "" && f.table != "margins" && f.table != "order"
	if f.book != "" {
		return c.countJobInto(f.book, j, quick)
	}
	return c.spool(func(w io.Writer) error {
		var rooms count.Writer
		switch {
		case f.asJSON:
			rooms = count.JSON(w)
		case f.asCSV && !ours:
			rooms = count.CSV(w, cmp.Or(f.table, "cuts"))
		case f.table != "" && !ours:
			rooms = count.One(w, f.table)
		}
		if f.table == count.JobTable {
			rooms = nil
		}
		all, err := c.tallied(j, quick, rooms)
		switch {
		case err != nil:
			return err
		case rooms != nil:
			return rooms.Job(all.Sums())
		}
		tables := append(all.Tables(), all.Sums().Table())
		if ours || f.table == count.JobTable {
			tables = slices.DeleteFunc(tables, func(t *report.Table) bool { return t.Name != f.table })
			if len(tables) == 0 {
				return fmt.Errorf("the job has no [price]: nothing is priced")
			}
		}
		if f.asCSV {
			return report.NewCSV(w, "unit").Add(tables[0], all.Unit())
		}
		for i, t := range tables {
			if i > 0 {
				fmt.Fprintln(w)
			}
			if err := t.Write(w); err != nil {
				return err
			}
		}
		return nil
	})
}

// tallied goes through the rooms of a job and adds them up; each is written as it comes, where they are written.
func (c *call) tallied(j *job.Job, quick bool, rooms count.Writer) (*tally.Job, error) {
	all, book := tally.New(j), job.NewBook(j)
	err := c.through(j, func(l *job.Laid) {
		n := count.Of(l.Plan)
		if !quick {
			n.Solve()
		}
		l.Made = countedRoom{n, days.Of(l.Plan)}
	}, func(l *job.Laid) error {
		made := l.Made.(countedRoom)
		c.must = c.must || made.count.Broken
		book.Add(l)
		all.Add(l.Room, made.count, made.days)
		if rooms == nil {
			return nil
		}
		if err := rooms.Room(made.count); err != nil {
			return &lostError{"the count", err}
		}
		return nil
	})
	c.jobMust(book)
	return all, err
}

// countJobInto writes the workbook of a job, whole or not at all.
func (c *call) countJobInto(path string, j *job.Job, quick bool) error {
	var data bytes.Buffer
	w := bufio.NewWriter(&data)
	x, err := count.NewXLSX(w, tally.Names()...)
	if err != nil {
		return err
	}
	all, err := c.tallied(j, quick, x)
	if err != nil {
		return err
	}
	for _, t := range all.Tables() {
		if err := x.Table(t, all.Unit()); err != nil {
			return &lostError{path, err}
		}
	}
	if err := x.Job(all.Sums()); err != nil {
		return &lostError{path, err}
	}
	w.Flush()
	if err := c.put(filepath.Dir(path), "count", []file{{name: filepath.Base(path), data: data.Bytes()}}); err != nil {
		return err
	}
	c.say("wrote %s", path)
	return nil
}

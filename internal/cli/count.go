package cli

import (
	"bufio"
	"cmp"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"flitchlay/internal/count"
	"flitchlay/internal/days"
	"flitchlay/internal/layout"
	"flitchlay/internal/source"
	"flitchlay/internal/tally"
)

// countFlags is what the command line says about a count.
type countFlags struct {
	asCSV, asJSON, quick bool
	intoBook             bool // also with no name
	book, table          string
}

// count counts rooms.
func (c *call) count() *cobra.Command {
	var f countFlags
	cmd := &cobra.Command{
		Use:                   "count ROOM... [--csv | --json | --xlsx FILE] [--table TABLE]",
		DisableFlagsInUseLine: true,
		Short:                 "Count sheets, spares, cuts, paste and small material, and say what to order",
		Long: `count says what a room takes: what to order and why, sheets by flitch, wall and length, the cut list,
where the veneer goes, paste and primer, small material, parts worth keeping, how much may go wrong (how
much narrower or shorter the sheets may come and how many may be lost), and what a small change of a trim,
of a rule, of the sheets' length or of a measure would save. Of several rooms it adds the totals of the job.

Of a job file it prints its own tables: stock, what becomes of each flitch, laid, which room lays what of it, rooms,
with the hours of the crew, job, the totals, and price, where the job has [price]. Each sheet is told once.

Tables: ` + strings.Join(count.TableNames(), ", ") + `, job;
of a job file also ` + strings.Join(tally.Names(), ", ") + `.
--csv prints one of them, the cut list if none is named; without --csv, --table prints that one alone.
In CSV and in workbooks lengths are plain inches or millimetres, areas square feet or square metres, by
the unit of the room, which stands in each row. JSON is in millimetres and square metres, and exact, while
tables, CSV and workbooks have cut lengths as the pages do: the sum of two rounded ends.

` + roomIs,
		Example: `  flitchlay count dining.toml
  flitchlay count --csv --table cuts dining.toml hall.toml > cuts.csv`,
		Args: cobra.MinimumNArgs(1),
		ValidArgsFunction: func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
			return []string{"toml"}, cobra.ShellCompDirectiveFilterFileExt
		},
		RunE: func(cmd *cobra.Command, args []string) error {
			f.intoBook = cmd.Flags().Changed("xlsx")
			return c.countAs(&f, args)
		},
	}
	cmd.Flags().BoolVar(&f.asCSV, "csv", false, "print one table as CSV")
	cmd.Flags().BoolVar(&f.asJSON, "json", false, "print everything as JSON")
	cmd.Flags().StringVar(&f.book, "xlsx", "", "write all tables into a workbook")
	cmd.Flags().StringVar(&f.table, "table", "", "the table to print")
	cmd.Flags().BoolVar(&f.quick, "quick", false, "leave out the margins that need laying out again")
	c.forcing(cmd)
	cmd.MarkFlagsMutuallyExclusive("csv", "json", "xlsx")
	cmd.RegisterFlagCompletionFunc("table", func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
		return tableWords(), cobra.ShellCompDirectiveNoFileComp
	})
	return cmd
}

// countAs counts rooms into what the options ask for.
func (c *call) countAs(f *countFlags, rooms []string) error {
	if err := knownTable(f.table); err != nil {
		return err
	}
	if f.table != "" && (f.asJSON || f.book != "") {
		return fmt.Errorf("--table goes with --csv or with plain tables")
	}
	if f.intoBook {
		if err := ending("--xlsx", f.book, ".xlsx"); err != nil {
			return err
		}
	}
	if i := slices.Index(rooms, stdin); i >= 0 && slices.Contains(rooms[i+1:], stdin) {
		return fmt.Errorf("- can be read only once")
	}
	if len(rooms) == 1 {
		if j, err := c.jobOf(rooms[0]); j != nil || err != nil {
			if err != nil {
				return err
			}
			return c.countJob(f, j)
		}
	}
	rooms, err := c.roomsIn(rooms)
	if err != nil {
		return err
	}
	if slices.Contains(tally.Names(), f.table) {
		return fmt.Errorf("the table %s is one of a job: name a job file", f.table)
	}
	if f.book != "" {
		return c.countInto(f.book, rooms, f.quick)
	}
	return c.spool(func(to io.Writer) error {
		w := c.screen().onto(to)
		switch {
		case f.asJSON:
			return c.counts(rooms, f.quick, count.JSON(w))
		case f.asCSV:
			return c.counts(rooms, f.quick, count.CSV(w, cmp.Or(f.table, "cuts")))
		case f.table != "":
			return c.counts(rooms, f.quick, count.One(w, f.table))
		}
		return c.counts(rooms, f.quick, count.Text(w))
	})
}

// tableWords are the names of all tables.
func tableWords() []string {
	return append(append(count.TableNames(), count.JobTable), tally.Names()...)
}

// knownTable refuses a table that there is not, naming the nearest.
func knownTable(name string) error {
	words := tableWords()
	if name == "" || slices.Contains(words, name) {
		return nil
	}
	if near := source.Nearest(name, words); near != "" {
		return fmt.Errorf("there is no table %q; the nearest is %s", name, near)
	}
	return fmt.Errorf("there is no table %q; there are %s", name, strings.Join(words, ", "))
}

// spool lets results be written to a file of the moment and prints them only when all went well: of a job of many rooms
// either everything is printed or nothing.
func (c *call) spool(write func(io.Writer) error) error {
	f, err := os.CreateTemp("", "flitchlay-")
	if err != nil {
		return &lostError{"a temporary file", err}
	}
	defer func() {
		f.Close()
		os.Remove(f.Name())
	}()
	b := bufio.NewWriter(f)
	if err := write(b); err != nil {
		return err
	}
	if err := b.Flush(); err != nil {
		return &lostError{f.Name(), err}
	}
	if _, err := f.Seek(0, io.SeekStart); err != nil {
		return &lostError{f.Name(), err}
	}
	_, err = io.Copy(c.out, f)
	if c.out.failed != nil {
		return nil // told when the command ends
	}
	return err
}

// countInto writes a workbook, whole or not at all.
func (c *call) countInto(path string, rooms []string, quick bool) (err error) {
	f, err := os.CreateTemp("", "flitchlay-")
	if err != nil {
		return &lostError{path, err}
	}
	defer func() {
		f.Close()
		if err != nil {
			os.Remove(f.Name())
		}
	}()
	w, err := count.NewXLSX(f)
	if err != nil {
		return err
	}
	if err := c.counts(rooms, quick, w); err != nil {
		return err
	}
	if err := f.Close(); err != nil {
		return &lostError{path, err}
	}
	data, err := os.ReadFile(f.Name())
	if err != nil {
		return &lostError{path, err}
	}
	if err := c.put(filepath.Dir(path), "count", []file{{name: filepath.Base(path), data: data}}); err != nil {
		return err
	}
	os.Remove(f.Name())
	c.say("wrote %s", path)
	return nil
}

// counted is a room that was counted, or what is wrong with it.
type counted struct {
	count   *count.Count
	minutes int // of the crew
	err     error
}

// counts counts rooms, several at a time, and writes them in the order they are named.
//
// Errors: of all rooms that cannot be used, each is told; the last is returned.
func (c *call) counts(rooms []string, quick bool, w count.Writer) error {
	workers := runtime.GOMAXPROCS(0)
	waiting := make(chan chan counted, workers)
	stop := make(chan struct{})
	defer close(stop)
	go func() {
		defer close(waiting)
		for _, path := range rooms {
			done := make(chan counted, 1)
			select {
			case waiting <- done: // as many are under way as wait here
			case <-stop:
				return
			}
			go func() {
				done <- c.countRoom(path, quick)
			}()
		}
	}()
	var job count.Job
	var last error
	for done := range waiting {
		n := <-done
		switch {
		case n.err != nil:
			if last != nil {
				c.status(last)
			}
			last = n.err
			continue
		case last != nil:
			continue
		}
		c.must = c.must || n.count.Broken
		job.Add(n.count)
		job.Minutes += n.minutes
		if err := w.Room(n.count); err != nil {
			return &lostError{"the count", err}
		}
	}
	if last != nil {
		return last
	}
	for _, clash := range job.Twice {
		c.say("%s", clash)
		c.must = true // a sheet hangs once
	}
	if err := w.Job(&job); err != nil {
		return &lostError{"the count", err}
	}
	return nil
}

// countRoom counts one room.
func (c *call) countRoom(path string, quick bool) counted {
	r, _, err := c.load(path)
	if err != nil {
		return counted{err: err}
	}
	p, err := layout.Lay(r)
	if err != nil {
		return counted{err: &roomError{err}}
	}
	n := count.Of(p)
	if !quick {
		n.Solve()
	}
	return counted{count: n, minutes: days.Of(p).Minutes()}
}

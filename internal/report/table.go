// Package report sets tables: as text in columns for people, as CSV and as workbooks for machines. It has the cells that
// tables are made of, sums of areas whose printed parts add up, and what JSON takes.
//
// Units: exact lengths; areas are kept as twice the area. A machine reads plain inches and square feet, or plain
// millimetres and square metres; JSON is always in millimetres and square metres.
//
// Order: columns and rows as they are given.
//
// Not here: what is in a table (packages count, climate, diff). Nothing here knows a room.
package report

import (
	"io"
	"strings"
	"unicode/utf8"
)

// Table is one table, for people and for machines.
type Table struct {
	Name    string // the word for it: order, flitches, ...
	Title   string
	Columns []Column
	Rows    [][]Cell
	Total   bool // the last row is a sum
	Sum     bool // it stands in a workbook too, under the lines and out of the filter
	close   bool // with one blank between columns, as a narrow page needs
}

// Column is the head of a column.
type Column struct {
	Head  string
	Right bool // figures stand at the right
	Long  bool // text that may take several lines
	// Machine columns are for machines only: people read the same in another column.
	Machine bool
}

// Lines are the rows without the sum: machines add up for themselves, and a sum among lines would be counted twice.
func (t *Table) Lines() [][]Cell {
	if t.Total && len(t.Rows) > 0 {
		return t.Rows[:len(t.Rows)-1]
	}
	return t.Rows
}

// Cell is one entry: as people read it, and as a machine does where that differs.
type Cell struct {
	Text   string
	Value  string // a plain decimal in inches or millimetres, square feet or square metres; empty: as Text
	Number bool   // Value is a number
	// Formula is what a workbook works the number out by; {row} is the row that it stands in, {above} the one over it.
	Formula string
}

// Text is a cell of words.
func Text(s string) Cell { return Cell{Text: s} }

// Plain is the entry as a machine reads it.
func (c Cell) Plain() string {
	if c.Number {
		return c.Value
	}
	return c.Text
}

// Write sets the table in columns, as wide as the writer takes them: long texts are broken into lines.
func (t *Table) Write(w io.Writer) error {
	if len(t.Rows) == 0 {
		return nil
	}
	page := PageWidth(w)
	t = t.forPeople()
	wide := make([]int, len(t.Columns))
	for i, c := range t.Columns {
		wide[i] = utf8.RuneCountInString(c.Head)
		for _, row := range t.Rows {
			wide[i] = max(wide[i], utf8.RuneCountInString(row[i].Text))
		}
	}
	t.narrow(wide, page)
	var b strings.Builder
	b.WriteString(strings.Join(Wrap(t.Title, page), "\n") + "\n")
	heads := make([]Cell, len(t.Columns))
	for i, c := range t.Columns {
		heads[i] = Text(strings.ToUpper(c.Head))
	}
	t.line(&b, wide, heads)
	for i, row := range t.Rows {
		if t.Total && i == len(t.Rows)-1 {
			rule := make([]Cell, len(row))
			for k := range rule {
				rule[k] = Text(strings.Repeat("-", wide[k]))
			}
			t.line(&b, wide, rule)
		}
		t.line(&b, wide, row)
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// forPeople leaves out the columns for machines.
func (t *Table) forPeople() *Table {
	out := &Table{Name: t.Name, Title: t.Title, Total: t.Total, Rows: make([][]Cell, len(t.Rows))}
	for i, c := range t.Columns {
		if c.Machine {
			continue
		}
		out.Columns = append(out.Columns, c)
		for k, row := range t.Rows {
			out.Rows[k] = append(out.Rows[k], row[i])
		}
	}
	return out
}

// line sets one row, on as many lines as its longest entry takes.
func (t *Table) line(b *strings.Builder, wide []int, row []Cell) {
	broken := make([][]string, len(row))
	lines := 1
	for i, c := range row {
		broken[i] = Wrap(c.Text, wide[i])
		lines = max(lines, len(broken[i]))
	}
	for k := range lines {
		var parts []string
		for i := range row {
			entry := ""
			if k < len(broken[i]) {
				entry = broken[i][k]
			}
			pad := strings.Repeat(" ", max(0, wide[i]-utf8.RuneCountInString(entry)))
			if t.Columns[i].Right {
				entry = pad + entry
			} else {
				entry += pad
			}
			parts = append(parts, entry)
		}
		b.WriteString(strings.TrimRight(strings.Join(parts, t.gap()), " ") + "\n")
	}
}

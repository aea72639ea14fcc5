package report

import (
	"encoding/csv"
	"io"
	"slices"
	"strings"

	"flitchlay/internal/length"
)

// CSV writes the rows of like tables one under the other, each with the same lead in front: what the table is of.
type CSV struct {
	w    *csv.Writer
	lead []string // heads of the lead
	head bool     // it is written
}

// NewCSV starts a file whose lead has these heads.
func NewCSV(w io.Writer, lead ...string) *CSV { return &CSV{w: csv.NewWriter(w), lead: lead} }

// Add writes a table's rows, under a head where it is the first; a sum of them is left out.
func (w *CSV) Add(t *Table, lead ...string) error {
	if !w.head {
		w.head = true
		w.w.Write(header(t, w.lead))
	}
	for _, row := range t.Lines() {
		var record []string
		for _, s := range lead {
			record = append(record, Guard(s))
		}
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

// header is the first row of a table for machines: the unit of areas goes by the row.
func header(t *Table, lead []string) []string {
	out := slices.Clone(lead)
	for i, c := range t.Columns {
		head := c.Head
		if slices.Contains(out, head) && i > 0 { // two columns of one name cannot be told apart: the unit of the quantity
			head = t.Columns[i-1].Head + " " + head
		}
		if head == AreaHead(length.Inches) || head == AreaHead(length.Millimetres) {
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

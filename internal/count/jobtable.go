package count

import (
	"fmt"
	"strconv"

	"flitchlay/internal/layout"
	"flitchlay/internal/report"
)

// Table is the totals of the job.
func (j *Job) Table() *report.Table {
	t := jobTable{Job: j, out: &report.Table{Name: "job", Title: "The whole job",
		Columns: []report.Column{{Head: "what"}, {Head: "quantity", Right: true}, {Head: "unit"}, {Head: "note", Long: true}}}}
	t.sheets()
	t.areas()
	t.wet("paste", j.Paste, &j.PasteOn, j.NoPaste)
	t.wet("primer", j.Primer, &j.PrimerOn, j.NoPrimer)
	t.small()
	for _, clash := range j.Twice {
		t.row("sheets laid twice", report.Text(""), "", clash)
	}
	return t.out
}

// jobTable is the table while it is written.
type jobTable struct {
	*Job
	out *report.Table
}

func (t jobTable) row(what string, quantity report.Cell, unit, note string) {
	t.out.Rows = append(t.out.Rows, []report.Cell{report.Text(what), quantity, report.Text(unit), report.Text(note)})
}

// long is a length in the unit of the job.
func (t jobTable) long(l L) report.Cell {
	return report.Cell{Text: t.Style.Format(l), Value: report.Plain(l, t.Style.Unit), Number: true}
}

// sheets writes how many rooms and sheets there are.
func (t jobTable) sheets() {
	j := t.Job
	t.row("rooms", report.Whole(j.Rooms), "", fmt.Sprintf("%d with a rule broken that must be met", j.Broken))
	if j.Minutes > 0 {
		hours := strconv.FormatFloat(float64(j.Minutes)/60, 'f', 2, 64)
		t.row("hours of the crew", report.Cell{Text: hours, Value: hours, Number: true}, "h", "by [day] of each room, breaks and evenings left out")
	}
	for _, x := range []struct {
		what string
		n    int
	}{{"sheets delivered", j.Delivered}, {"damaged", j.Damaged}, {"kept back as spares", j.Spare}, {"laid", j.Laid}, {"of these only headers", j.Headers},
		{"hang nowhere", j.Gaps}, {"left", j.Left}, {"short", j.Short}, {"spares wanted", j.Want}, {"sheets to order", j.Order}} {
		t.row(x.what, report.Whole(x.n), "", "")
	}
	for _, s := range j.shared {
		if s.rooms > 1 {
			t.row("of flitch "+s.number+" delivered", report.Whole(s.count), "", fmt.Sprintf("%s, which %d rooms share and lay %d of", s.numbers(), s.rooms, s.laid))
		}
	}
	for _, l := range j.Lengths {
		t.row("sheets needed "+j.Style.Format(l.Length)+" long", report.Whole(l.Sheets), "", "")
	}
}

// areas writes where the veneer goes.
func (t jobTable) areas() {
	unit := t.Style.Unit
	for i := range t.Of {
		if t.Of[i].Sign() != 0 {
			t.row(Part(i).String(), t.Of[i].Cell(unit), report.AreaHead(unit), "")
		}
	}
	t.row("gross, as cut to length", t.Gross.Cell(unit), report.AreaHead(unit), "the sum of the parts above")
}

// wet writes what comes out of pails, by its unit.
func (t jobTable) wet(what string, list []layout.Amount, on *report.Sum, unknown int) {
	note := "on " + on.Words(t.Style.Unit)
	if unknown > 0 {
		note += "; " + report.Plural(unknown, "room") + " without the label's coverage"
	}
	if len(list) == 0 {
		t.row(what, report.Text(""), "", note)
	}
	for _, a := range list {
		n := report.Number(a.Amount)
		t.row(what, report.Cell{Text: n, Value: n, Number: true}, a.Unit, note+": "+PailWords(a))
	}
}

// small writes the small material.
func (t jobTable) small() {
	j, unit := t.Job, t.Style.Unit.String()
	for _, e := range j.Ends {
		what := e.Takes
		if what == "" {
			what = "cut against"
		}
		t.row(what+", "+e.Kind, t.long(e.Length), unit, fmt.Sprintf("%s, the longest %s", report.Plural(e.Count, "end"), j.Style.Format(e.Longest)))
	}
	for _, e := range j.Extenders {
		t.row(fmt.Sprintf("box extenders, %d gang", e.Gang), report.Whole(e.Count), "", "")
	}
	t.row("cutting strip", t.long(j.Strip.Length), unit, report.Plural(j.Strip.Count, "cut"))
	t.row("blades", report.Whole(j.Blades.Total()), "", "")
	if j.Alarms > 0 {
		t.row("alarm devices", report.Whole(j.Alarms), "", "never covered, never taken off")
	}
}

package diff

import (
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/report"
)

// Write tells what changed, for people.
func (d *Changes) Write(w io.Writer) error {
	if d.Same() {
		_, err := fmt.Fprintln(w, "nothing changed")
		return err
	}
	if len(d.Room) > 0 {
		fmt.Fprintln(w, "The room")
		for _, s := range d.Room {
			for i, line := range report.Wrap(s, report.PageWidth(w)-2) {
				fmt.Fprintln(w, [2]string{"- ", "  "}[min(i, 1)]+line)
			}
		}
		fmt.Fprintln(w)
	}
	for _, t := range []*report.Table{d.totals(), d.seamTable(), d.sheetTable(), d.renumbered()} {
		if len(t.Rows) == 0 {
			continue
		}
		if err := t.Write(w); err != nil {
			return err
		}
		fmt.Fprintln(w)
	}
	fmt.Fprintln(w, "Revision note, for the room file")
	_, err := fmt.Fprintf(w, "[[project.revision]]\nmark = %s\nnote = %s\n", strconv.Quote(d.Mark()), strconv.Quote(d.Note()))
	return err
}

// totals compares what costs money; what is the same is left out, but for the sheets.
func (d *Changes) totals() *report.Table {
	t := &report.Table{Title: "Totals", Columns: []report.Column{{Head: "what"}, {Head: "was", Right: true}, {Head: "is", Right: true}, {Head: "change", Right: true}}}
	row := func(what, was, is, change string) {
		t.Rows = append(t.Rows, []report.Cell{report.Text(what), report.Text(was), report.Text(is), report.Text(change)})
	}
	count := func(what string, was, is int, always bool) {
		if always || was != is {
			row(what, strconv.Itoa(was), strconv.Itoa(is), fmt.Sprintf("%+d", is-was))
		}
	}
	a, b := &d.Old.Total, &d.New.Total
	count("sheets laid", a.Sheets, b.Sheets, true)
	count("spares wanted", a.Spares, b.Spares, false)
	count("sheets short", a.Short, b.Short, false)
	count("must findings", d.Old.Musts, d.New.Musts, false)
	count("seams", len(d.Old.Seams), len(d.New.Seams), false)
	squares := func(what string, was, is length.Area) {
		if was == is {
			return
		}
		change := d.Style.FormatArea(is - was)
		if is > was {
			change = "+" + change
		}
		row(what, d.Style.FormatArea(was), d.Style.FormatArea(is), change)
	}
	squares("covering", a.NetArea, b.NetArea)
	squares("veneer as cut", a.GrossArea, b.GrossArea)
	wet := func(what string, was, is *layout.Amount) {
		words := func(a *layout.Amount) string {
			if a == nil {
				return "not known"
			}
			return report.Number(a.Amount) + " " + a.Unit
		}
		if x, y := words(was), words(is); x != y {
			change := ""
			if was != nil && is != nil && was.Unit == is.Unit {
				change = report.Number(is.Amount - was.Amount)
				if is.Amount > was.Amount {
					change = "+" + change
				}
			}
			row(what, x, y, change)
		}
	}
	wet("paste", a.Paste, b.Paste)
	wet("primer", a.Primer, b.Primer)
	return t
}

func (d *Changes) seamTable() *report.Table {
	t := &report.Table{Title: "Seams, from the left end of their wall", Columns: []report.Column{{Head: "wall", Long: true}, {Head: "seam", Right: true}, {Head: "was", Right: true},
		{Head: "is", Right: true}, {Head: "change"}}}
	for _, s := range d.Seams {
		switch {
		case s.Old == nil:
			t.Rows = append(t.Rows, []report.Cell{report.Text(s.New.Wall), report.Whole(s.New.Number), report.Text(""), report.Text(d.Style.Format(s.New.X)), report.Text("new")})
		case s.New == nil:
			t.Rows = append(t.Rows, []report.Cell{report.Text(s.Old.Wall), report.Whole(s.Old.Number), report.Text(d.Style.Format(s.Old.X)), report.Text(""), report.Text("gone")})
		default:
			by := s.Moved()
			change := small(d.Style, by) + " " + side(by)
			if by == 0 {
				change = "stays"
			}
			if s.Old.Closing != s.New.Closing {
				change += map[bool]string{true: ", now the closing seam", false: ", no longer the closing seam"}[s.New.Closing]
			}
			t.Rows = append(t.Rows, []report.Cell{report.Text(s.New.Wall), report.Whole(s.New.Number), report.Text(d.Style.Format(s.Old.X)), report.Text(d.Style.Format(s.New.X)), report.Text(change)})
		}
	}
	return t
}

func (d *Changes) sheetTable() *report.Table {
	t := &report.Table{Title: "Sheets by the number on their backs", Columns: []report.Column{{Head: "sheet", Right: true}, {Head: "flitch"}, {Head: "was on", Long: true},
		{Head: "is on", Long: true}, {Head: "change", Long: true}}}
	s := d.Style
	spots := func(v *Sheet) string {
		if v == nil {
			return "not laid"
		}
		var list []string
		for _, x := range v.Spots {
			list = append(list, x.Wall+" "+s.Format(x.From))
		}
		if len(list) == 0 {
			return "nowhere"
		}
		return strings.Join(list, ", ")
	}
	for _, c := range d.Sheets {
		one := c.New
		if one == nil {
			one = c.Old
		}
		was, is := spots(c.Old), spots(c.New)
		if was == is {
			was = "the same"
		}
		t.Rows = append(t.Rows, []report.Cell{report.Whole(one.Number), report.Text(one.Flitch), report.Text(was), report.Text(is), report.Text(strings.Join(c.words(s), "; "))})
	}
	return t
}

// words says what is different about a sheet.
func (c SheetChange) words(s length.Style) []string {
	switch {
	case c.Old == nil:
		return []string{"laid now, cut to " + s.Format(c.New.Cut)}
	case c.New == nil:
		return []string{"back to stock"}
	}
	var out []string
	apart := func(what string, was, is L, lost string) {
		if was == is {
			return
		}
		a, b := s.Apart(was, is)
		text := what + " " + b + ", was " + a
		if is > was && lost != "" {
			text += " (" + lost + ")"
		}
		out = append(out, text)
	}
	apart("cut", c.Old.Cut, c.New.Cut, "too short if cut")
	narrow := ""
	if c.Old.Ripped != "" {
		narrow = "too narrow if ripped"
	}
	apart("net", c.Old.Width, c.New.Width, narrow)
	if c.Old.Ripped != c.New.Ripped {
		out = append(out, "ripped "+orNone(c.New.Ripped)+", was "+orNone(c.Old.Ripped))
	}
	same := slices.Equal(c.Old.Spots, c.New.Spots)
	if len(out) == 0 && same && c.Old.Shape != c.New.Shape {
		return []string{"cut out otherwise"}
	}
	if len(out) == 0 {
		out = append(out, "hangs elsewhere")
	}
	return out
}

func (d *Changes) renumbered() *report.Table {
	t := &report.Table{Title: "Where another number hangs than before", Columns: []report.Column{{Head: "wall", Long: true}, {Head: "from", Right: true}, {Head: "to", Right: true},
		{Head: "was", Right: true}, {Head: "is", Right: true}}}
	for _, p := range d.Renumbered() {
		x := p[1].Spots[0]
		t.Rows = append(t.Rows, []report.Cell{report.Text(x.Wall), report.Text(d.Style.Format(x.From)), report.Text(d.Style.Format(x.To)), report.Text(named(p[0])), report.Text(named(p[1]))})
	}
	return t
}

// named is a sheet's number with its flitch.
func named(s *Sheet) string {
	if s.Number == 0 {
		return "none left"
	}
	if s.Flitch == "" {
		return strconv.Itoa(s.Number)
	}
	return s.Flitch + " " + strconv.Itoa(s.Number)
}

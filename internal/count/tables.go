package count

import (
	"fmt"
	"math/big"
	"slices"
	"strconv"
	"strings"

	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/report"
)

// tableOf is a table's name and how it is made. A new table is one function and one line in tables.
type tableOf struct {
	name string
	make func(*Count) *report.Table
}

var tables = []tableOf{
	{"order", (*Count).orderTable},
	{"flitches", (*Count).flitchTable},
	{"margins", (*Count).marginTable},
	{"nearly", (*Count).nearlyTable},
	{"walls", (*Count).wallTable},
	{"lengths", (*Count).lengthTable},
	{"areas", (*Count).areaTable},
	{"material", (*Count).materialTable},
	{"kept", (*Count).keptTable},
	{"registers", (*Count).registerTable},
	{"cuts", (*Count).cutTable},
}

// TableNames are the names of all tables, in their order.
func TableNames() []string {
	var names []string
	for _, t := range tables {
		names = append(names, t.name)
	}
	return names
}

// Table makes one table of a count.
//
// Errors: it panics where there is no such table.
func (c *Count) Table(name string) *report.Table {
	i := slices.IndexFunc(tables, func(t tableOf) bool { return t.name == name })
	if i < 0 {
		panic(fmt.Sprintf("count: no table %q", name))
	}
	t := tables[i].make(c)
	t.Name = name
	return t
}

func (c *Count) long(l L) report.Cell { return report.Length(l, c.Style) }

func (c *Count) wide(l L) report.Cell { return report.Width(l, c.Style) }

func (c *Count) orderTable() *report.Table {
	t := &report.Table{Title: "What to order", Columns: []report.Column{{Head: "item", Long: true}, {Head: "order", Long: true}, {Head: "from"},
		{Head: "why", Long: true}}}
	for _, l := range c.Order {
		what := l.Quantity
		if what == "" {
			what = "nothing"
			if l.Item == "paste" || l.Item == "primer" {
				what = "not known"
			}
		}
		t.Rows = append(t.Rows, []report.Cell{report.Text(l.Item), report.Text(what), report.Text(l.From), report.Text(l.Why)})
	}
	return t
}

func (c *Count) flitchTable() *report.Table {
	t := &report.Table{Title: "Sheets by flitch", Total: true, Columns: []report.Column{{Head: "flitch"}, {Head: "delivered", Right: true},
		{Head: "damaged", Right: true}, {Head: "spare", Right: true}, {Head: "laid", Right: true}, {Head: "headers", Right: true},
		{Head: "in gaps", Right: true}, {Head: "left", Right: true}, {Head: "short", Right: true}, {Head: "spares wanted", Right: true},
		{Head: "left, by number", Long: true}}}
	row := func(f *Flitch, left string) {
		t.Rows = append(t.Rows, []report.Cell{report.Text(f.Number), report.Whole(len(f.Delivered)), report.Whole(len(f.Damaged)), report.Whole(len(f.Spare)),
			report.Whole(len(f.Laid)), report.Whole(f.Headers), report.Whole(len(f.Gaps)), report.Whole(len(f.Left)), report.Whole(f.Short), report.Whole(f.Want), report.Text(left)})
	}
	for i := range c.Flitches {
		f := &c.Flitches[i]
		var left []string
		for _, kind := range []struct {
			numbers []int
			what    string
		}{{f.Left, ""}, {f.Gaps, " from gaps"}, {f.Spare, " spare"}, {f.Damaged, " damaged"}} {
			if len(kind.numbers) > 0 {
				left = append(left, layout.Numbers(kind.numbers)+kind.what)
			}
		}
		row(f, strings.Join(left, "; "))
	}
	all := c.All
	all.Number = "all"
	row(&all, "")
	return t
}

func (c *Count) marginTable() *report.Table {
	t := &report.Table{Title: "What may go wrong", Columns: []report.Column{{Head: "what"}, {Head: "margin", Right: true}, {Head: "meaning", Long: true}}}
	row := func(what string, margin report.Cell, meaning string) {
		t.Rows = append(t.Rows, []report.Cell{report.Text(what), margin, report.Text(meaning)})
	}
	s := c.Style
	if m := c.Margins; m != nil {
		if n := m.Narrower; n != nil {
			fine := length.Style{Unit: s.Unit, Denominator: s.Denominator}
			meaning := fmt.Sprintf("the count holds down to %s gross", fine.Words(n.Holds))
			if n.Next == "not tried" {
				meaning += "; narrower was not tried"
			} else {
				meaning += fmt.Sprintf("; at %s: %s", fine.Words(n.Holds-n.Step), n.Next)
			}
			row("sheets come narrower", c.long(n.Margin), meaning)
		} else {
			row("sheets come narrower", report.Text("none"), "a rule that must be met is broken already")
		}
	}
	l := &c.Longest
	if l.Cut > 0 {
		meaning := fmt.Sprintf("the longest cut is %s, sheet %s", s.Format(l.Printed), sheetName(l.Number, l.Place))
		if l.Figure != l.Left {
			meaning += fmt.Sprintf("; for the figure to run on %s above and %s below the level line, which leaves %s", s.Words(l.Above),
				s.Words(l.Below), s.Words(l.Figure))
		}
		row("sheets come shorter", c.long(l.Left+l.Cut-l.Printed), meaning)
	}
	if m := c.Margins; m != nil {
		if m.Lost == nil {
			why := "no flitch is named"
			if c.All.Short > 0 {
				why = report.Plural(c.All.Short, "sheet") + " short already"
			}
			row("sheets are lost", report.Text("none"), why)
		} else {
			meaning := "the flitch still is enough with the spares kept back"
			if m.Lost.Spares > m.Lost.Left {
				meaning += fmt.Sprintf("; with these laid too %d may be lost", m.Lost.Spares)
			}
			row("sheets are lost", report.Whole(m.Lost.Left), meaning)
		}
	}
	return t
}

// sheetName names a sheet by its number, or by its place where it has none.
func sheetName(number, place int) string {
	if number > 0 {
		return strconv.Itoa(number)
	}
	return "at place " + strconv.Itoa(place)
}

func (c *Count) wallTable() *report.Table {
	t := &report.Table{Title: "Sheets by wall", Total: true, Columns: []report.Column{{Head: "wall"}, {Head: "begin", Right: true}, {Head: "show", Right: true},
		{Head: "seams", Right: true}, {Head: report.AreaHead(c.Style.Unit), Right: true}, {Head: "numbers", Long: true}}}
	var twice []length.Area
	begin, seams := 0, 0
	for _, w := range c.Walls {
		twice = append(twice, w.Twice)
		begin, seams = begin+w.Begin, seams+w.Seams
	}
	parts := report.Shares(twice, report.Decimals(c.Style.Unit, report.AreaDecimals(c.Style.Unit)))
	sum := new(big.Rat)
	for i, w := range c.Walls {
		sum.Add(sum, parts[i])
		t.Rows = append(t.Rows, []report.Cell{report.Text(w.Name), report.Whole(w.Begin), report.Whole(w.Show), report.Whole(w.Seams), report.Squares(parts[i], c.Style.Unit),
			report.Text(layout.Numbers(w.Numbers))})
	}
	t.Rows = append(t.Rows, []report.Cell{report.Text("all"), report.Whole(begin), report.Text(""), report.Whole(seams), report.Squares(sum, c.Style.Unit), report.Text("")})
	return t
}

func (c *Count) lengthTable() *report.Table {
	t := &report.Table{Title: "Sheets by the length they need", Columns: []report.Column{{Head: "length", Right: true}, {Head: "sheets", Right: true},
		{Head: "numbers", Long: true}}}
	for _, s := range c.Lengths {
		t.Rows = append(t.Rows, []report.Cell{c.long(s.Length), report.Whole(s.Sheets), report.Text(layout.Numbers(s.Numbers))})
	}
	return t
}

func (c *Count) areaTable() *report.Table {
	t := &report.Table{Title: "Where the veneer goes", Total: true, Columns: []report.Column{{Head: "part"}, {Head: report.AreaHead(c.Style.Unit), Right: true},
		{Head: "share", Right: true}}}
	whole := float64(c.Areas.Gross)
	list := append([]length.Area{}, c.Areas.Of[:]...)
	sum := new(big.Rat)
	for i, part := range report.Shares(list, report.Decimals(c.Style.Unit, report.AreaDecimals(c.Style.Unit))) {
		sum.Add(sum, part)
		if list[i] == 0 {
			continue
		}
		share := strconv.FormatFloat(100*float64(list[i])/whole, 'f', 1, 64)
		t.Rows = append(t.Rows, []report.Cell{report.Text(Part(i).String()), report.Squares(part, c.Style.Unit), {Text: share + " %", Value: share, Number: true}})
	}
	t.Rows = append(t.Rows, []report.Cell{report.Text("gross, as cut to length"), report.Squares(sum, c.Style.Unit), {Text: "100.0 %", Value: "100.0", Number: true}})
	return t
}

func (c *Count) materialTable() *report.Table {
	t := &report.Table{Title: "Small material", Columns: []report.Column{{Head: "item", Long: true}, {Head: "quantity", Right: true}, {Head: "unit"}, {Head: "note", Long: true}}}
	row := func(item string, quantity report.Cell, unit, note string) {
		t.Rows = append(t.Rows, []report.Cell{report.Text(item), quantity, report.Text(unit), report.Text(note)})
	}
	m, s := &c.Material, c.Style
	amount := func(item string, a *layout.Amount, twice length.Area) {
		var sum report.Sum
		sum.Plus(twice)
		if a == nil {
			row(item, report.Text(""), "", "on "+sum.Words(s.Unit)+"; the label's coverage is not given")
			return
		}
		n := report.Number(a.Amount)
		row(item, report.Cell{Text: n, Value: n, Number: true}, a.Unit, "on "+sum.Words(s.Unit)+": "+PailWords(*a))
	}
	amount("paste", m.Paste, m.PasteOn)
	amount("primer", m.Primer, m.PrimerOn)
	for _, e := range m.Ends {
		what := e.Takes
		if what == "" {
			what = "cut against"
		}
		row(what+", "+e.Kind, c.long(e.Length), s.Unit.String(), fmt.Sprintf("%s, the longest %s", report.Plural(e.Count, "end"), s.Format(e.Longest)))
	}
	for _, e := range m.Extenders {
		row(fmt.Sprintf("box extenders, %d gang", e.Gang), report.Whole(e.Count), "", "")
	}
	if m.Strip.Count > 0 {
		row("cutting strip", c.long(m.Strip.Length), s.Unit.String(), report.Plural(m.Strip.Count, "cut"))
	}
	b := m.Blades
	row("blades", report.Whole(b.Total()), "", fmt.Sprintf("%s, %s, %s of openings", report.Plural(b.Seams, "seam"), report.Plural(b.Matches, "end match"), report.Plural(b.Edges, "edge")))
	if m.Alarms > 0 {
		row("alarm devices", report.Whole(m.Alarms), "", "cut round them; never cover them, never take them off")
	}
	return t
}

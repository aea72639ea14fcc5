package count

import (
	"fmt"
	"math/big"
	"strconv"
	"strings"

	"flitchlay/internal/layout"
	"flitchlay/internal/length"
)

// tableOf is a table's name and how it is made. A new table is one function and one line in tables.
type tableOf struct {
	name string
	make func(*Count) *Table
}

var tables = []tableOf{
	{"order", (*Count).orderTable},
	{"flitches", (*Count).flitchTable},
	{"margins", (*Count).marginTable},
	{"walls", (*Count).wallTable},
	{"lengths", (*Count).lengthTable},
	{"areas", (*Count).areaTable},
	{"material", (*Count).materialTable},
	{"kept", (*Count).keptTable},
	{"cuts", (*Count).cutTable},
}

// whole, long and squares make cells of numbers.
func whole(n int) Cell {
	return Cell{Text: strconv.Itoa(n), Value: strconv.Itoa(n), Number: true}
}

func (c *Count) long(l L) Cell {
	return Cell{Text: c.Style.Format(l), Value: Plain(l, c.Style.Unit), Number: true}
}

// wide is the cell of a width, in inches alone.
func (c *Count) wide(l L) Cell {
	return Cell{Text: widthWords(c.Style, l), Value: Plain(l, c.Style.Unit), Number: true}
}

// widthWords is a width as the trade says it: 24 1/2", not 2'-0 1/2".
func widthWords(s length.Style, l L) string {
	if s.Unit == length.Millimetres {
		return s.Inches(l)
	}
	return s.Inches(l) + `"`
}

// Plain is a length as a plain decimal number of inches or millimetres, to six decimals.
func Plain(l L, unit length.Unit) string {
	return strings.TrimSuffix(strings.TrimRight(new(big.Rat).SetFrac64(int64(l), int64(unit.Of())).FloatString(6), "0"), ".")
}

func squares(r *big.Rat, unit length.Unit) Cell {
	value := r.FloatString(2)
	shown := r.FloatString(1)
	if unit == length.Millimetres {
		shown = strings.Replace(value, ".", ",", 1)
	}
	return Cell{Text: shown, Value: value, Number: true}
}

func areaHead(unit length.Unit) string {
	if unit == length.Millimetres {
		return "m²"
	}
	return "sq ft"
}

func (c *Count) orderTable() *Table {
	t := &Table{Title: "What to order", Columns: []Column{{Head: "item", Long: true}, {Head: "order", Long: true}, {Head: "from"},
		{Head: "why", Long: true}}}
	for _, l := range c.Order {
		what := l.Quantity
		if what == "" {
			what = "nothing"
			if l.Item == "paste" || l.Item == "primer" {
				what = "not known"
			}
		}
		t.Rows = append(t.Rows, []Cell{text(l.Item), text(what), text(l.From), text(l.Why)})
	}
	return t
}

func (c *Count) flitchTable() *Table {
	t := &Table{Title: "Sheets by flitch", Total: true, Columns: []Column{{Head: "flitch"}, {Head: "delivered", Right: true},
		{Head: "damaged", Right: true}, {Head: "spare", Right: true}, {Head: "laid", Right: true}, {Head: "headers", Right: true},
		{Head: "in gaps", Right: true}, {Head: "left", Right: true}, {Head: "short", Right: true}, {Head: "spares wanted", Right: true},
		{Head: "left, by number", Long: true}}}
	row := func(f *Flitch, left string) {
		t.Rows = append(t.Rows, []Cell{text(f.Number), whole(len(f.Delivered)), whole(len(f.Damaged)), whole(len(f.Spare)),
			whole(len(f.Laid)), whole(f.Headers), whole(len(f.Gaps)), whole(len(f.Left)), whole(f.Short), whole(f.Want), text(left)})
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

func (c *Count) marginTable() *Table {
	t := &Table{Title: "What may go wrong", Columns: []Column{{Head: "what"}, {Head: "margin", Right: true}, {Head: "meaning", Long: true}}}
	row := func(what string, margin Cell, meaning string) {
		t.Rows = append(t.Rows, []Cell{text(what), margin, text(meaning)})
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
			row("sheets come narrower", text("none"), "a rule that must be met is broken already")
		}
	}
	l := &c.Longest
	if l.Cut > 0 {
		meaning := fmt.Sprintf("the longest cut is %s, sheet %s", s.Format(l.Cut), sheetName(l.Number, l.Place))
		if l.Figure != l.Left {
			meaning += fmt.Sprintf("; for the figure to run on %s above and %s below the level line, which leaves %s", s.Words(l.Above),
				s.Words(l.Below), s.Words(l.Figure))
		}
		row("sheets come shorter", c.long(l.Left), meaning)
	}
	if m := c.Margins; m != nil {
		if m.Lost == nil {
			why := "no flitch is named"
			if c.All.Short > 0 {
				why = plural(c.All.Short, "sheet") + " short already"
			}
			row("sheets are lost", text("none"), why)
		} else {
			meaning := "the flitch still is enough with the spares kept back"
			if m.Lost.Spares > m.Lost.Left {
				meaning += fmt.Sprintf("; with these laid too %d may be lost", m.Lost.Spares)
			}
			row("sheets are lost", whole(m.Lost.Left), meaning)
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

func (c *Count) wallTable() *Table {
	t := &Table{Title: "Sheets by wall", Total: true, Columns: []Column{{Head: "wall"}, {Head: "begin", Right: true}, {Head: "show", Right: true},
		{Head: "seams", Right: true}, {Head: areaHead(c.Style.Unit), Right: true}, {Head: "numbers", Long: true}}}
	var twice []length.Area
	begin, seams := 0, 0
	for _, w := range c.Walls {
		twice = append(twice, w.Twice)
		begin, seams = begin+w.Begin, seams+w.Seams
	}
	parts := shares(twice, decimals(c.Style.Unit, c.areaDecimals()))
	sum := new(big.Rat)
	for i, w := range c.Walls {
		sum.Add(sum, parts[i])
		t.Rows = append(t.Rows, []Cell{text(w.Name), whole(w.Begin), whole(w.Show), whole(w.Seams), squares(parts[i], c.Style.Unit),
			text(layout.Numbers(w.Numbers))})
	}
	t.Rows = append(t.Rows, []Cell{text("all"), whole(begin), text(""), whole(seams), squares(sum, c.Style.Unit), text("")})
	return t
}

// areaDecimals is how many decimals of an area people read.
func (c *Count) areaDecimals() int {
	if c.Style.Unit == length.Millimetres {
		return 2
	}
	return 1
}

func (c *Count) lengthTable() *Table {
	t := &Table{Title: "Sheets by the length they need", Columns: []Column{{Head: "length", Right: true}, {Head: "sheets", Right: true},
		{Head: "numbers", Long: true}}}
	for _, s := range c.Lengths {
		t.Rows = append(t.Rows, []Cell{c.long(s.Length), whole(s.Sheets), text(layout.Numbers(s.Numbers))})
	}
	return t
}

func (c *Count) areaTable() *Table {
	t := &Table{Title: "Where the veneer goes", Total: true, Columns: []Column{{Head: "part"}, {Head: areaHead(c.Style.Unit), Right: true},
		{Head: "share", Right: true}}}
	whole := float64(c.Areas.Gross)
	list := append([]length.Area{}, c.Areas.Of[:]...)
	sum := new(big.Rat)
	for i, part := range shares(list, decimals(c.Style.Unit, c.areaDecimals())) {
		sum.Add(sum, part)
		if list[i] == 0 {
			continue
		}
		share := strconv.FormatFloat(100*float64(list[i])/whole, 'f', 1, 64)
		t.Rows = append(t.Rows, []Cell{text(Part(i).String()), squares(part, c.Style.Unit), {Text: share + " %", Value: share, Number: true}})
	}
	t.Rows = append(t.Rows, []Cell{text("gross, as cut to length"), squares(sum, c.Style.Unit), {Text: "100.0 %", Value: "100.0", Number: true}})
	return t
}

func (c *Count) materialTable() *Table {
	t := &Table{Title: "Small material", Columns: []Column{{Head: "item", Long: true}, {Head: "quantity", Right: true}, {Head: "unit"}, {Head: "note", Long: true}}}
	row := func(item string, quantity Cell, unit, note string) {
		t.Rows = append(t.Rows, []Cell{text(item), quantity, text(unit), text(note)})
	}
	m, s := &c.Material, c.Style
	amount := func(item string, a *layout.Amount, twice length.Area) {
		var sum Sum
		sum.Plus(twice)
		if a == nil {
			row(item, text(""), "", "on "+area(&sum, s.Unit)+"; the label's coverage is not given")
			return
		}
		n := number(a.Amount)
		row(item, Cell{Text: n, Value: n, Number: true}, a.Unit, "on "+area(&sum, s.Unit)+": "+PailWords(*a))
	}
	amount("paste", m.Paste, m.PasteOn)
	amount("primer", m.Primer, m.PrimerOn)
	for _, e := range m.Ends {
		what := e.Takes
		if what == "" {
			what = "cut against"
		}
		row(what+", "+e.Kind, c.long(e.Length), s.Unit.String(), fmt.Sprintf("%s, the longest %s", plural(e.Count, "end"), s.Format(e.Longest)))
	}
	for _, e := range m.Extenders {
		row(fmt.Sprintf("box extenders, %d gang", e.Gang), whole(e.Count), "", "")
	}
	if m.Strip.Count > 0 {
		row("cutting strip", c.long(m.Strip.Length), s.Unit.String(), plural(m.Strip.Count, "cut"))
	}
	b := m.Blades
	row("blades", whole(b.Total()), "", fmt.Sprintf("%s, %s, %s of openings", plural(b.Seams, "seam"), plural(b.Matches, "end match"), plural(b.Edges, "edge")))
	if m.Alarms > 0 {
		row("alarm devices", whole(m.Alarms), "", "cut round them; never cover them, never take them off")
	}
	return t
}

func (c *Count) keptTable() *Table {
	t := &Table{Title: "Parts worth keeping: mark each with its number", Columns: []Column{{Head: "sheet", Right: true}, {Head: "flitch"}, {Head: "part"},
		{Head: "width", Right: true}, {Head: "length", Right: true}}}
	for _, k := range c.Kept {
		t.Rows = append(t.Rows, []Cell{sheetCell(k.Number), text(k.Flitch), text(k.What), c.wide(k.Width), c.long(k.Length)})
	}
	return t
}

func sheetCell(n int) Cell {
	if n == 0 {
		return text("-")
	}
	return whole(n)
}

func (c *Count) cutTable() *Table {
	rules := c.room().Rules
	one := len(c.Flitches) < 2
	title := "Cut list"
	if one && len(c.Flitches) == 1 {
		title += " of flitch " + c.Flitches[0].Number
	}
	t := &Table{Title: fmt.Sprintf("%s: across from the raw left edge, up and down from the level line, in %s; trims %s top, %s bottom",
		title, map[length.Unit]string{length.Inches: "inches", length.Millimetres: "mm"}[c.Style.Unit], c.Style.Inches(rules.TopTrim), c.Style.Inches(rules.BottomTrim)),
		Columns: []Column{{Head: "sheet", Right: true}, {Head: "flitch", Machine: one}, {Head: "cut to", Right: true}, {Head: "above", Right: true},
			{Head: "below", Right: true}, {Head: "net", Right: true}, {Head: "rip to", Right: true}, {Head: "where, bends, cut-outs", Long: true},
			{Head: "place", Machine: true}, {Head: "course", Machine: true}, {Head: "walls", Machine: true, Long: true},
			{Head: "width as hung", Machine: true}, {Head: "top trim", Machine: true}, {Head: "bottom trim", Machine: true},
			{Head: "left trim", Machine: true}, {Head: "right trim", Machine: true}}}
	for i := range c.Cuts {
		x := &c.Cuts[i]
		rip := text("")
		if x.Rip != "" {
			rip = c.wide(x.Width)
			rip.Text += " " + x.Rip
		}
		t.Rows = append(t.Rows, []Cell{sheetCell(x.Number), text(x.Flitch), c.long(x.Length), c.long(x.Above), c.long(x.Below), c.wide(x.Net), rip,
			text(c.cutWords(x)), whole(x.Place), whole(x.Course), text(strings.Join(x.Walls, ", ")), c.long(x.Width), c.long(x.TopTrim),
			c.long(x.BottomTrim), c.long(x.LeftTrim), c.long(x.RightTrim)})
	}
	return t
}

// cutWords says everything about a sheet that is no column of its own.
func (c *Count) cutWords(x *Cut) string {
	s := c.Style
	var parts []string
	say := func(format string, args ...any) { parts = append(parts, fmt.Sprintf(format, args...)) }
	say("%s", strings.Join(x.Walls, ", "))
	if x.Hung {
		say("hangs")
	}
	if x.Course > 1 {
		say("course %d", x.Course)
	}
	if x.Turned {
		say("turned end for end")
	}
	if x.Over != "" {
		say("%s", x.Over)
	}
	if x.Narrow {
		say("narrow")
	}
	ends, sides := [2]string{"top", "bottom"}, [2]string{"left", "right"}
	if x.Level {
		ends, sides = [2]string{"right", "left"}, [2]string{"foot", "head"}
	}
	usual := [2]L{c.room().Rules.TopTrim, c.room().Rules.BottomTrim}
	for i, trim := range [2]L{x.TopTrim, x.BottomTrim} {
		if trim != usual[i] || x.Level {
			say("trim %s %s", s.Inches(trim), ends[i])
		}
	}
	for i, trim := range [2]L{x.LeftTrim, x.RightTrim} {
		if trim > 0 {
			say("trim %s %s edge", s.Inches(trim), sides[i])
		}
	}
	for _, b := range x.Bends {
		say("bend %s at %s", b.Name, s.Inches(b.At))
	}
	for _, h := range x.Holes {
		say("%s %s %s to %s across, %s to %s up", h.Kind, h.Name, s.Inches(h.From), s.Inches(h.To), signed(s, h.Low), signed(s, h.High))
	}
	if x.Askew != 0 && len(x.Holes) > 0 {
		say("past the bend %s askew over the height: mark what is cut out there on the wall", s.Inches(x.Askew.Abs()))
	}
	return strings.Join(parts, "; ")
}

// signed prints a height from the level line with its sign.
func signed(s length.Style, l L) string {
	if l > 0 {
		return "+" + s.Inches(l)
	}
	return s.Inches(l)
}

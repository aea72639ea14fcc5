package count

import (
	"fmt"
	"strings"

	"flitchlay/internal/length"
	"flitchlay/internal/report"
	"flitchlay/internal/words"
)

func (c *Count) keptTable() *report.Table {
	t := &report.Table{Title: "Parts worth keeping: mark each with its number", Columns: []report.Column{{Head: "sheet", Right: true}, {Head: "flitch"}, {Head: "part"},
		{Head: "width", Right: true}, {Head: "length", Right: true}}}
	for _, k := range c.Kept {
		t.Rows = append(t.Rows, []report.Cell{sheetCell(k.Number), report.Text(k.Flitch), report.Text(k.What), c.wide(k.Width), c.long(k.Length)})
	}
	return t
}

func sheetCell(n int) report.Cell {
	if n == 0 {
		return report.Text("-")
	}
	return report.Whole(n)
}

func (c *Count) cutTable() *report.Table {
	rules := c.room().Rules
	one := len(c.Flitches) < 2
	title := "Cut list"
	if one && len(c.Flitches) == 1 {
		title += " of flitch " + c.Flitches[0].Number
	}
	from := "above and below, up and down: of the level line; all figures are edges"
	if c.room().Veneer.Horizontal {
		from = "above and below: its ends, right of where the level line meets the wall's left corner; all figures are edges"
	}
	t := &report.Table{Title: fmt.Sprintf("%s: %s, in %s; trims %s top, %s bottom", title, from,
		map[length.Unit]string{length.Inches: "inches", length.Millimetres: "mm"}[c.Style.Unit], c.Style.Inches(rules.TopTrim), c.Style.Inches(rules.BottomTrim)),
		Columns: []report.Column{{Head: "sheet", Right: true}, {Head: "flitch", Machine: one}, {Head: "cut to", Right: true}, {Head: "above", Right: true},
			{Head: "below", Right: true}, {Head: "net", Right: true}, {Head: "rip to", Right: true}, {Head: "where, bends, cut-outs", Long: true},
			{Head: "place", Machine: true}, {Head: "course", Machine: true}, {Head: "walls", Machine: true, Long: true},
			{Head: "width as hung", Machine: true}, {Head: "top trim", Machine: true}, {Head: "bottom trim", Machine: true},
			{Head: "left trim", Machine: true}, {Head: "right trim", Machine: true}, {Head: "line over level", Machine: true}}}
	for i := range c.Cuts {
		x := &c.Cuts[i]
		rip := report.Text("")
		if x.Rip != "" {
			rip = c.wide(x.Width)
			rip.Text += " " + x.Side(x.Rip)
		}
		t.Rows = append(t.Rows, []report.Cell{sheetCell(x.Number), report.Text(x.Flitch), c.long(c.printed(x)), c.height(x, x.Above, 1), c.height(x, x.Below, -1), c.wide(x.Net), rip,
			report.Text(c.cutWords(x)), report.Whole(x.Place), report.Whole(x.Course), report.Text(strings.Join(x.Walls, ", ")), c.long(x.Width), c.long(x.TopTrim),
			c.long(x.BottomTrim), c.long(x.LeftTrim), c.long(x.RightTrim), c.long(x.Line.By)})
	}
	return t
}

// cutWords says everything about a sheet that is no column of its own.
func (c *Count) cutWords(x *Cut) string {
	s, w := c.Style, Speech{Style: c.Style}
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
	if x.Closes && !x.Hung {
		say("%s", x.ClosingWords(w, c.room().Veneer.Overlap, x.Side(x.Rip)))
	}
	if x.Over != "" {
		say("%s", x.Over)
	}
	if x.Narrow {
		say("narrow")
	}
	ends := [2]string{"top", "bottom"}
	if x.Level {
		ends = [2]string{"right", "left"}
	}
	usual := [2]L{c.room().Rules.TopTrim, c.room().Rules.BottomTrim}
	for i, trim := range [2]L{x.TopTrim, x.BottomTrim} {
		if trim != usual[i] || x.Level {
			say("trim %s %s", s.Inches(trim), ends[i])
		}
	}
	for i, trim := range [2]L{x.LeftTrim, x.RightTrim} {
		if trim > 0 {
			say("trim %s %s edge", s.Inches(trim), x.Side([2]string{"left", "right"}[i]))
		}
	}
	if line := x.LineWords(w); line != "" {
		say("%s", line)
	}
	for _, b := range x.Bends {
		say("fold %s %s", x.BendWords(w, b), x.FromEdge(w))
	}
	for _, slit := range x.Slits(c.Plan) {
		say("%s", x.SlitWords(w, slit))
	}
	for _, h := range x.Holes {
		say("%s %s: %s", h.Kind, h.Name, x.HoleWords(w, h))
	}
	if x.Askew != 0 && len(x.Holes) > 0 {
		say("past the fold %s askew over the height: mark what is cut out there on the wall", s.Inches(x.Askew.Abs()))
	}
	return strings.Join(parts, "; ")
}

// printed is how long a sheet is cut, as its pages have it: tables for people and machines alike say no other length than the crew reads.
func (c *Count) printed(x *Cut) L { return x.Long(x.sheet, c.Style) }

// height is how far an end of a sheet is over (sign 1) or under (-1) the level line, right or left of the wall's datum
// where the grain is level: people read a word for it, machines a sign. It is rounded from where its page has it run from, so that
// both ends add up to the length.
func (c *Count) height(x *Cut, l L, sign int64) report.Cell {
	end := L(sign) * l
	zero := end - x.end(end)
	cell := c.long(L(sign) * (zero + c.Style.Round(x.end(end))))
	cell.Text = x.EndWords(words.English(), c.Style.Format, end)
	return cell
}

package count

import (
	"fmt"
	"strings"

	"flitchlay/internal/length"
	"flitchlay/internal/report"
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
	t := &report.Table{Title: fmt.Sprintf("%s: across from the raw left edge, up and down from the level line, in %s; trims %s top, %s bottom",
		title, map[length.Unit]string{length.Inches: "inches", length.Millimetres: "mm"}[c.Style.Unit], c.Style.Inches(rules.TopTrim), c.Style.Inches(rules.BottomTrim)),
		Columns: []report.Column{{Head: "sheet", Right: true}, {Head: "flitch", Machine: one}, {Head: "cut to", Right: true}, {Head: "above", Right: true},
			{Head: "below", Right: true}, {Head: "net", Right: true}, {Head: "rip to", Right: true}, {Head: "where, bends, cut-outs", Long: true},
			{Head: "place", Machine: true}, {Head: "course", Machine: true}, {Head: "walls", Machine: true, Long: true},
			{Head: "width as hung", Machine: true}, {Head: "top trim", Machine: true}, {Head: "bottom trim", Machine: true},
			{Head: "left trim", Machine: true}, {Head: "right trim", Machine: true}}}
	for i := range c.Cuts {
		x := &c.Cuts[i]
		rip := report.Text("")
		if x.Rip != "" {
			rip = c.wide(x.Width)
			rip.Text += " " + x.Rip
		}
		t.Rows = append(t.Rows, []report.Cell{sheetCell(x.Number), report.Text(x.Flitch), c.long(x.Length), c.long(x.Above), c.long(x.Below), c.wide(x.Net), rip,
			report.Text(c.cutWords(x)), report.Whole(x.Place), report.Whole(x.Course), report.Text(strings.Join(x.Walls, ", ")), c.long(x.Width), c.long(x.TopTrim),
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

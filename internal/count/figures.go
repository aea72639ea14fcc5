package count

import (
	"flitchlay/internal/layout"
	"flitchlay/internal/words"
)

// How cuts are said, on pages and in tables alike: each figure is an edge, and says from which edge of the sheet it is
// measured.

// CutOf is the row of a sheet, nil where it is not cut.
func (c *Count) CutOf(s *layout.Sheet) *Cut {
	for i := range c.Cuts {
		if c.Cuts[i].sheet == s {
			return &c.Cuts[i]
		}
	}
	return nil
}

// What is the word for what is cut out: an opening, the hole for a box, or the plate that is never taken off.
func (h *Hole) What() string {
	switch t := h.Kind.Traits(); {
	case t.NeverCovered:
		return "plate"
	case t.Box:
		return "hole"
	}
	return "opening"
}

// Side names an edge of the sheet: where the grain is level the left one lies at the foot.
func (c *Cut) Side(side string) string {
	if !c.Level {
		return side
	}
	return map[string]string{"left": "lower", "right": "upper"}[side]
}

// Edge is the edge of FromEdge in full, as the JSON names it.
func (c *Cut) Edge() string {
	if c.Rip == "left" {
		return "ripped " + c.Side("left")
	}
	return "raw " + c.Side("left")
}

// Marked reports whether a level line crosses the sheet as it is cut, so that its mark stands on it.
func (c *Cut) Marked() bool {
	return !c.Level && !c.Line.Off && (c.Line.Second() || c.Above >= 0 && c.Below >= 0)
}

// FromFoot and FromHead report whether heights are from an end of the sheet, since no mark stands on it: from its raw end, where only
// one of them is left raw; else from the end that is nearer to the level line.
func (c *Cut) FromFoot() bool { return !c.Level && !c.Marked() && !c.FromHead() }
func (c *Cut) FromHead() bool {
	if c.Level || c.Marked() {
		return false
	}
	if c.RawHead != c.RawFoot {
		return c.RawHead
	}
	return c.Below >= 0
}

// FromRaw reports whether the end that heights are from is left raw.
func (c *Cut) FromRaw() bool { return c.FromHead() && c.RawHead || c.FromFoot() && c.RawFoot }

// Set is how high over its level line the end hangs that heights are from.
func (c *Cut) Set() L {
	if c.FromHead() {
		return c.Above - c.Line.By
	}
	return -c.Below - c.Line.By
}

// OfLine says that heights are from a second level line, where they are.
func (c *Cut) OfLine(w Speech, words string) string {
	if !c.Line.Second() || c.Line.Off {
		return words
	}
	return w.Words.Say("cut.of_line", words, c.Line.No)
}

// LineWords say from which line the heights of a sheet are, where its wall has more than one.
func (c *Cut) LineWords(w Speech) string {
	switch {
	case c.Line.Second() && c.Line.By < 0:
		return w.Words.Say("cut.line_under", c.Line.No, w.Style.Format(-c.Line.By))
	case c.Line.Second():
		return w.Words.Say("cut.line_over", c.Line.No, w.Style.Format(c.Line.By))
	case c.Line.No == 1:
		return w.Words.Say("cut.line_first")
	}
	return ""
}

// Across is where a hole lies across the sheet, without the edge from which it is measured: "20 3/4 to 22 3/4".
func (h *Hole) Across(w Speech) string {
	return w.Words.Say("cut.span", w.Inches(h.From), w.Inches(h.To))
}

// HoleWords say where the four edges of a hole lie on the sheet: "hole 20 3/4 to 22 3/4 from left edge, 20 1/2 to 23 1/2
// up". Heights are from the level mark; from an end of the sheet where the mark is not on it.
func (c *Cut) HoleWords(w Speech, h Hole) string {
	key := "cut.hole"
	if h.Kind.Traits().NeverCovered {
		key = "cut.never_covered"
	}
	return w.Words.Say(key, w.Words.Of("cut_out", h.What()), h.Across(w)+" "+c.FromEdge(w), c.along(w, h))
}

// along says where a hole lies along the sheet.
func (c *Cut) along(w Speech, h Hole) string {
	span := func(key string, a, b L) string { return w.Words.Say(key, w.Inches(a), w.Inches(b)) }
	switch {
	case c.Level:
		return span("cut.span", h.Low+c.Below, h.High+c.Below) + " " + FromEnd(w)
	case c.FromFoot():
		return span("cut.over_foot", h.Low+c.Below, h.High+c.Below)
	case c.FromHead():
		return span("cut.under_head", c.Above-h.High, c.Above-h.Low)
	}
	low, high := h.Low-c.Line.By, h.High-c.Line.By
	switch {
	case low >= 0:
		return c.OfLine(w, span("cut.both_up", low, high))
	case high <= 0:
		return c.OfLine(w, span("cut.both_down", -high, -low))
	}
	return c.OfLine(w, span("cut.down_to_up", -low, high))
}

// Called is what a bend is called: by its corner, a jamb by its opening and its side.
func (b *Bend) Called(w Speech) string {
	switch {
	case b.Of == nil:
		return b.Name
	case b.rightJamb:
		return w.Words.Say("cut.right_jamb", b.Of.Name)
	}
	return w.Words.Say("cut.left_jamb", b.Of.Name)
}

// BendWords say where a bend line lies on the sheet: one figure; where the corner leans that at the level line, and those at
// the ends as they are cut. A sheet that does not come to the level line has the two alone.
func (c *Cut) BendWords(w Speech, b Bend) string {
	at, foot, head := w.Inches(b.At), w.Inches(b.Foot), w.Inches(b.Head)
	switch {
	case foot == head:
		return w.Words.Say("cut.bend", b.Called(w), foot)
	case !c.Marked():
		return w.Words.Say("cut.bend_ends", b.Called(w), foot, head)
	}
	return w.Words.Say("cut.bend_leans", b.Called(w), at, foot, head)
}

// EndWords say where an end of the sheet is: over or under its level line; where the grain is level right or left of the
// wall's datum.
func (c *Cut) EndWords(t *words.Table, say func(L) string, at L) string {
	if c.Level {
		at -= c.datum
	}
	switch {
	case !c.Level:
		return UpDown(t, say, at-c.Line.By)
	case at < 0:
		return t.Say("place.left_of_0", say(-at))
	}
	return say(at)
}

package count

import (
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
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

// FromEdge says from which edge of the sheet distances across it run: the left one, which is the factory's or, where it
// is ripped, the new one.
func (c *Cut) FromEdge() string {
	switch {
	case c.Rip == "left":
		return "from ripped edge"
	case c.Level:
		return "from lower edge"
	}
	return "from left edge"
}

// Edge is the edge of FromEdge in full, as the JSON names it.
func (c *Cut) Edge() string {
	if c.Rip == "left" {
		return "ripped " + c.Side("left")
	}
	return "raw " + c.Side("left")
}

// Marked reports whether the level line crosses the sheet as it is cut, so that its mark stands on it.
func (c *Cut) Marked() bool { return !c.Level && c.Above >= 0 && c.Below >= 0 }

// Across is where a hole lies across the sheet, without the edge from which it is measured: "20 3/4 to 22 3/4".
func (h *Hole) Across(s length.Style) string { return s.Inches(h.From) + " to " + s.Inches(h.To) }

// HoleWords say where the four edges of a hole lie on the sheet: "hole 20 3/4 to 22 3/4 from left edge, 20 1/2 to 23 1/2
// up". Heights are from the level mark; from an end of the sheet where the mark is not on it.
func (c *Cut) HoleWords(s length.Style, h Hole) string {
	across := h.What() + " " + h.Across(s) + " " + c.FromEdge() + ", "
	if c.Level {
		across += s.Inches(h.Low+c.Below) + " to " + s.Inches(h.High+c.Below) + " from left end"
	} else {
		across += c.heights(s, h)
	}
	if h.What() == "plate" {
		across += ", never cover"
	}
	return across
}

// heights say where a hole lies along an upright sheet.
func (c *Cut) heights(s length.Style, h Hole) string {
	span := func(a, b L, word string) string { return s.Inches(a) + " to " + s.Inches(b) + " " + word }
	switch {
	case c.Below < 0:
		return span(h.Low+c.Below, h.High+c.Below, "over its foot")
	case c.Above < 0:
		return span(c.Above-h.High, c.Above-h.Low, "under its head")
	case h.Low >= 0:
		return span(h.Low, h.High, "up")
	case h.High <= 0:
		return span(-h.High, -h.Low, "down")
	}
	return s.Inches(-h.Low) + " down to " + s.Inches(h.High) + " up"
}

// BendWords say where a bend line lies on the sheet: one figure; where the corner leans that at the level line, and those at
// the ends as they are cut. A sheet that does not come to the level line has the two alone.
func (c *Cut) BendWords(s length.Style, b Bend) string {
	at, foot, head := s.Inches(b.At), s.Inches(b.Foot), s.Inches(b.Head)
	switch {
	case foot == head:
		return b.Name + " at " + foot
	case !c.Marked():
		return b.Name + " at " + foot + " at its foot, " + head + " at its head"
	}
	return b.Name + " at " + at + " (foot " + foot + ", head " + head + ")"
}

// EndWords say where an end of the sheet is: over or under the level line; where the grain is level right or left of the
// wall's datum.
func (c *Cut) EndWords(say func(L) string, at L) string {
	if c.Level {
		at -= c.datum
	}
	switch {
	case !c.Level:
		return UpDown(say, at)
	case at < 0:
		return say(-at) + " left of 0"
	}
	return say(at)
}

// UpDown says on which side of the level line a height is; no figure of it has a sign.
func UpDown(say func(L) string, z L) string {
	if z < 0 {
		return say(-z) + " down"
	}
	return say(z) + " up"
}

package count

import (
	"flitchlay/internal/length"
	"flitchlay/internal/words"
)

// Speech is how cuts are said: in whose words, with figures of which style, of a sheet that is seen from its face or from its
// back. Without words they are said in English, as tables and JSON have them.
type Speech struct {
	Words *words.Table
	Style length.Style
	Back  bool
}

// Side is the word for an edge of an upright sheet or of one that lies: left, right, lower, upper.
func (w Speech) Side(side string) string { return w.Words.Of("side", side) }

// Inches prints a length across a sheet.
func (w Speech) Inches(l L) string { return w.Style.Inches(l) }

// UpDown says on which side of the level line a height is; no figure of it has a sign.
func UpDown(t *words.Table, say func(L) string, z L) string {
	if z < 0 {
		return t.Say("height.down", say(-z))
	}
	return t.Say("height.up", say(z))
}

// edge says which edge figures run from: what name is under, in a section that has one for every edge.
func (c *Cut) edge(w Speech, section string) string {
	switch {
	case c.Rip == "left":
		return w.Words.Of(section, "ripped")
	case c.Level:
		return w.Words.Of(section, "lower")
	case w.Back:
		return w.Words.Of(section, "right")
	}
	return w.Words.Of(section, "left")
}

// FromEdge says from which edge of the sheet distances across it run: the left one, which is the factory's or, where it
// is ripped, the new one.
func (c *Cut) FromEdge(w Speech) string { return c.edge(w, "from_edge") }

// EdgeName is the edge of FromEdge.
func (c *Cut) EdgeName(w Speech) string { return c.edge(w, "edge") }

// FromEnd says from which end of a sheet that lies distances along it run.
func FromEnd(w Speech) string {
	if w.Back {
		return w.Words.Say("from_end.right")
	}
	return w.Words.Say("from_end.left")
}

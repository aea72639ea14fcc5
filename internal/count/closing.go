package count

import (
	"cmp"
	"slices"
	"strings"

	"flitchlay/internal/layout"
)

// The sheet that closes a room is ripped to a gap: what the walls and all sheets before have come to, between the raw edges at both
// sides, over each of which the sheet laps.

// GapPlace is a place at which the gap can be measured: head, level, middle and foot of the sheet; where an opening is in the way
// the ceiling, just over it, just under it, and the foot of the wall.
type GapPlace struct {
	At string
	Of string // the opening's name
}

// measured finds out at which heights both raw edges of the gap are on the wall. An opening that either stands in has none; what
// remains is measured at its ends, the whole height at three places.
func (c *Cut) measured(p *layout.Plan, r *layout.Run, s *layout.Sheet) {
	before, first := s.StartLine+p.Room.Veneer.Overlap, s.StartLine+c.Width-p.Room.Veneer.Overlap
	var in []*layout.Opening
	for i := range r.Openings {
		o, meets := &r.Openings[i], false
		Turns(r, func(turn L) {
			for _, x := range []L{before, first} {
				meets = meets || o.Left+turn < x && x < o.Right+turn
			}
		})
		if meets {
			in = append(in, o)
		}
	}
	switch {
	case in == nil && c.Marked():
		c.Measured = []GapPlace{{At: "head"}, {At: "level"}, {At: "foot"}}
		return
	case in == nil:
		c.Measured = []GapPlace{{At: "head"}, {At: "middle"}, {At: "foot"}}
		return
	}
	slices.SortFunc(in, func(a, b *layout.Opening) int { return cmp.Compare(b.Head, a.Head) })
	level := p.Room.Space.LevelLine
	top, from := level+c.Above-c.TopTrim, GapPlace{At: "ceiling"}
	for _, o := range in {
		if o.Head < top {
			c.Measured = append(c.Measured, from, GapPlace{"over", o.Name})
		}
		if o.Sill < top {
			top, from = o.Sill, GapPlace{"under", o.Name}
		}
	}
	if foot := level - c.Below + c.BottomTrim; foot < top {
		c.Measured = append(c.Measured, from, GapPlace{At: "wall foot"})
	}
}

// gapWords say where the gap is measured, in the words of a section that has one for every place.
func (c *Cut) gapWords(w Speech, section string) []string {
	var list []string
	for _, p := range c.Measured {
		list = append(list, w.Words.Of(section, p.At, p.Of))
	}
	return list
}

// off names the edge that comes off the closing sheet, as it is seen; the right one, where the layout leaves none to rip.
func (c *Cut) off(seen string) string {
	if seen == "" {
		return c.Side("right")
	}
	return seen
}

// ClosingWords say how the sheet that closes a room is ripped. Seen is the edge that comes off, on the side of the sheet that
// is looked at.
func (c *Cut) ClosingWords(w Speech, overlap L, seen string) string {
	list := c.gapWords(w, "gap")
	places := strings.Join(list, ", ")
	if n := len(list); n > 1 && c.Measured[0].At != "head" {
		places = w.Words.Say("cut.and", strings.Join(list[:n-1], ", "), list[n-1])
	}
	if c.sheet.Short > 0 {
		return w.Words.Say("cut.closes_narrow", w.Inches(c.Width), places, w.Inches(c.gap(overlap)))
	}
	return w.Words.Say("cut.closes", places, w.Side(c.off(seen)), w.Inches(2*overlap), w.Inches(c.Width))
}

// gap is how far apart the raw edges at both sides of a sheet are that closes a room and came too narrow to lap over both in full.
func (c *Cut) gap(overlap L) L { return c.Width + c.sheet.Short - 2*overlap }

// ClosingShort is ClosingWords for a page on which there is little room.
func (c *Cut) ClosingShort(w Speech, overlap L) string {
	if c.sheet.Short > 0 {
		return w.Words.Say("cut.closes_narrow_short", w.Inches(c.Width))
	}
	return w.Words.Say("cut.closes_short", strings.Join(c.gapWords(w, "gap_short"), ", "), w.Inches(2*overlap), w.Inches(c.Width))
}

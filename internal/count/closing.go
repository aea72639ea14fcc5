package count

import (
	"cmp"
	"slices"
	"strings"

	"flitchlay/internal/layout"
	"flitchlay/internal/length"
)

// The sheet that closes a room is ripped to a gap: what the walls and all sheets before have come to, between the raw edges at both
// sides, over each of which the sheet laps.

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
		c.Measured = []string{"head", "level", "foot"}
		return
	case in == nil:
		c.Measured = []string{"head", "middle", "foot"}
		return
	}
	slices.SortFunc(in, func(a, b *layout.Opening) int { return cmp.Compare(b.Head, a.Head) })
	level := p.Room.Space.LevelLine
	top, name := level+c.Above-c.TopTrim, "the ceiling"
	for _, o := range in {
		if o.Head < top {
			c.Measured = append(c.Measured, name, "just over "+o.Name)
		}
		if o.Sill < top {
			top, name = o.Sill, "just under "+o.Name
		}
	}
	if foot := level - c.Below + c.BottomTrim; foot < top {
		c.Measured = append(c.Measured, name, "the foot")
	}
}

// gapWords say where the gap is measured.
func (c *Cut) gapWords() string {
	list := c.Measured
	if n := len(list); n > 1 && list[0] != "head" {
		return strings.Join(list[:n-1], ", ") + " and " + list[n-1]
	}
	return strings.Join(list, ", ")
}

// off names the edge that comes off the closing sheet, as it is seen; the right one, where the layout leaves none to rip.
func (c *Cut) off(seen string) string {
	if seen == "" {
		return c.Side("right")
	}
	return seen
}

// ClosingWords say how the sheet that closes a room is ripped. Seen is the name of the edge that comes off, on the side of the
// sheet that is looked at.
func (c *Cut) ClosingWords(s length.Style, overlap L, seen string) string {
	return "closes: measure the gap of raw edges at " + c.gapWords() + "; rip " + c.off(seen) + " edge off to gap + " + s.Inches(2*overlap) + "; to check: " + s.Inches(c.Width)
}

// ClosingShort is ClosingWords for a page on which there is little room.
func (c *Cut) ClosingShort(s length.Style, overlap L) string {
	places := strings.NewReplacer("the ", "", "just ", "").Replace(strings.Join(c.Measured, ", "))
	return "closes: rip to raw gap (" + places + ") + " + s.Inches(2*overlap) + "; check " + s.Inches(c.Width)
}

package crew

import (
	"flitchlay/internal/layout"
	"flitchlay/internal/room"
	"slices"
)

// levelHere is how high the level line is over the floor at the left of a piece; 0 where the floor is not under it.
func (d *wallBoard) levelHere() L {
	return max(d.Level-room.AtRight(d.w.W.Floor, d.p.From), 0)
}

// registerLines say where all sheets of a flitch, or of one course of it, are marked before they are cut.
func (c *Set) registerLines() []string {
	var lines []string
	list := c.Plan.Registers()
	courses := slices.ContainsFunc(list, func(r layout.Register) bool { return r.Course > 1 })
	for _, r := range list {
		who := ""
		if r.Flitch != "" {
			who = r.Flitch + ", "
		}
		if courses && r.Course > 0 {
			who += c.Words.Say("list.course", r.Course) + ", "
		}
		switch {
		case r.Foot:
			lines = append(lines, who+c.Words.Of("register", r.End(), c.Say(r.At)))
		case r.Turned:
			lines = append(lines, who+c.Words.Say("register.turned", c.Say(r.At)))
		default:
			lines = append(lines, who+c.Words.Say("register.mark", c.Say(r.At)))
		}
	}
	for _, x := range c.cards {
		if !x.Level && (!x.Cut.Marked() && !x.Register.Foot || x.Cut.Line.Second()) {
			return append(lines, c.Words.Say("register.but"))
		}
	}
	return lines
}

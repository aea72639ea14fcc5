package crew

import (
	"slices"
	"strings"

	"flitchlay/internal/layout"
	"flitchlay/internal/room"
)

// levelHere is how high the level line is over the floor at the left of a piece; 0 where the floor is not under it.
func (d *wallBoard) levelHere() L {
	return max(d.Level-room.AtRight(d.w.W.Floor, d.p.From), 0)
}

// registerLines say where all sheets of a flitch, or of one course of it, are marked before they are cut, and which of them are
// measured otherwise.
func (c *Set) registerLines() []string {
	var lines []string
	list := c.Plan.Registers()
	courses := slices.ContainsFunc(list, func(r layout.Register) bool { return r.Course > 1 })
	for i := range list {
		r := &list[i]
		var parts []string
		if r.Flitch != "" {
			parts = append(parts, r.Flitch)
		}
		if courses && r.Course > 0 {
			parts = append(parts, c.Words.Say("list.course", r.Course))
		}
		who := strings.Join(append(parts, ""), ", ")
		owns, usual := c.ownMarks(r)
		if usual || len(owns) == 0 {
			owns = append([]string{c.registerWords(r)}, owns...)
		}
		lines = append(lines, who+strings.Join(owns, "; "))
	}
	return lines
}

// registerWords say where the sheets of a register are marked.
func (c *Set) registerWords(r *layout.Register) string {
	switch {
	case r.Foot:
		return c.Words.Of("register", r.End(), c.Say(r.At))
	case r.Turned:
		return c.Words.Say("register.turned", c.Say(r.At))
	}
	return c.Words.Say("register.mark", c.Say(r.At))
}

// ownMarks say of the sheets of a register that do not go by it where they are marked, or measured; usual reports whether others go by it.
func (c *Set) ownMarks(r *layout.Register) (words []string, usual bool) {
	owns, usual := c.Count.Owns(r)
	for _, o := range owns {
		var names []string
		for _, s := range o.Sheets {
			names = append(names, c.SheetNumber(s))
		}
		who := strings.Join(names, ", ")
		switch {
		case o.Line > 0 && r.Foot:
			words = append(words, c.Words.Say("register.own_down", who, o.Line, c.Say(o.At)))
		case o.Line > 0:
			words = append(words, c.Words.Say("register.own_up", who, o.Line, c.Say(o.At)))
		case o.At == 0:
			words = append(words, c.Words.Of("register", "own "+r.End()+" stays", who))
		default:
			words = append(words, c.Words.Of("register", "own "+r.End()+" cut", who, c.Inches(o.At)))
		}
	}
	return words, usual
}

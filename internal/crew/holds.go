package crew

import (
	"cmp"
	"slices"

	"flitchlay/internal/card"
	"flitchlay/internal/days"
	"flitchlay/internal/face"
)

// Where the work stops for a look is worked out once, with the hanging days; timetable, walls and cut list all take it from
// there.

// held is what is looked at when a place of the wall hangs, on the wall where its right edge is.
func (p *piece) held(h *face.Hang) days.Hold {
	if h.After || !p.Here(h) {
		return days.NoHold
	}
	for i := range p.wall.Days.Tasks {
		if t := &p.wall.Days.Tasks[i]; t.Run == p.wall.Run.Name && t.Place == h.Place && t.Hold != days.NoHold {
			return t.Hold
		}
	}
	return days.NoHold
}

// holds are the places of a page after which the work stops.
func (p *piece) holds() []*face.Hang {
	var list []*face.Hang
	for _, h := range p.rows {
		if p.held(h) != days.NoHold {
			list = append(list, h)
		}
	}
	return list
}

// held reports whether the work stops anywhere on the page.
func (d *drawing) held() bool {
	return slices.ContainsFunc(d.faces, func(f *wallBoard) bool { return len(f.p.holds()) > 0 })
}

// holdWords head the field where a look is signed: after which sheets of the page.
func (d *wallBoard) holdWords() string {
	var holds []*face.Hang
	for _, f := range d.faces {
		holds = append(holds, f.p.holds()...)
	}
	slices.SortStableFunc(holds, func(a, b *face.Hang) int { return cmp.Compare(a.Place, b.Place) })
	var list []string
	for _, h := range holds {
		list = append(list, d.SheetNumbers(h))
	}
	if list == nil {
		return d.Words.Say("foot.no_hold")
	}
	words := list[0]
	for _, more := range list[1:] {
		words = d.Words.Say("cut.and", words, more)
	}
	return d.Words.Say("wall.hold_after", words)
}

// closesGroup are the rows of the cut list, by their keys, after which a group of the timetable is whole: what is cut and damped
// together is ruled off together.
func (c *Set) closesGroup(rows []cutRow) map[string]bool {
	group := map[string]int{}
	for i, step := range c.Days.Steps {
		for _, k := range step.Tasks {
			t := &c.Days.Tasks[k]
			group[card.RowKey(t.Run, t.Place, t.Course)] = i
		}
	}
	closes := map[string]bool{}
	for i, r := range rows {
		if i+1 == len(rows) || group[cutKey(r.sheet, r.run)] != group[cutKey(rows[i+1].sheet, rows[i+1].run)] {
			closes[cutKey(r.sheet, r.run)] = true
		}
	}
	return closes
}

// firstCut is how many sheets of the cut list are cut and hung before all others: up to the first look.
func (c *Set) firstCut(rows []cutRow) int {
	for i := range c.Days.Tasks {
		t := &c.Days.Tasks[i]
		if t.Hold == days.NoHold {
			continue
		}
		for k, r := range rows {
			if r.run == t.Run && r.sheet.Place == t.Place && r.sheet.Course == t.Course {
				return k + 1
			}
		}
	}
	return len(rows)
}

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

// held is the hold point that comes when a place of the wall hangs, on the wall where its right edge is; nil where the work goes on.
func (p *piece) held(h *face.Hang) *days.Task {
	if h.After || !p.Here(h) {
		return nil
	}
	return p.wall.HoldAt(p.wall.Run.Name, h.Place)
}

// holds are the places of a page after which the work stops.
func (p *piece) holds() []*face.Hang {
	var list []*face.Hang
	for _, h := range p.rows {
		if p.held(h) != nil {
			list = append(list, h)
		}
	}
	return list
}

// tasks are the hold points of the page, in the order in which they come.
func (d *wallBoard) tasks() []*days.Task {
	var list []*days.Task
	for _, f := range d.faces {
		for _, h := range f.p.holds() {
			list = append(list, f.p.held(h))
		}
	}
	slices.SortFunc(list, func(a, b *days.Task) int { return cmp.Compare(a.HoldNo, b.HoldNo) })
	return list
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

// holdRows are the hold points by the keys of the rows of the cut list after which they come.
func (c *Set) holdRows() map[string]*days.Task {
	holds := map[string]*days.Task{}
	for i := range c.Days.Tasks {
		if t := &c.Days.Tasks[i]; t.Hold != days.NoHold {
			holds[card.RowKey(t.Run, t.Place, t.Course)] = t
		}
	}
	return holds
}

// ruled sets the heavy rules of a list where its holds fall due: under the last row of what hangs by then. Of walls unrolled that is
// not always the row of the hold's own sheet: one that closes the room has its line on the wall that is listed first.
func ruled(rows []tapeRow) []tapeRow {
	for _, r := range rows {
		if r.hold == nil {
			continue
		}
		last := 0
		for i, x := range rows {
			if x.place > 0 && x.place <= r.place {
				last = i
			}
		}
		rows[last].rule = true
	}
	return rows
}

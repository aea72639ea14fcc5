package submittal

import (
	"slices"
	"strings"

	"flitchlay/internal/draft"
	"flitchlay/internal/elevation"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// seamSchedule lists all seams: of sheets that stand along their wall, of those that lie up it. The line is where the edge of the sheet
// that hangs first comes to.
func seamSchedule(s *folio.Set) *draft.Table {
	t := &draft.Table{Title: "SEAMS, from the left end of their wall", Columns: []draft.Column{
		{Head: "SEAM", Bold: true}, {Head: "FLITCH", Wrap: true}, {Head: "WALL", Wrap: true}, {Head: "PAGE", Spare: 1}, {Head: "AT", Align: scene.End}, {Head: "PLUMB LINE", Align: scene.End},
		{Head: "NEAREST OPENING", Align: scene.End}, {Head: "NEAREST BEND", Align: scene.End}, {Head: "NOTE"}}}
	if s.Room.Veneer.Horizontal {
		t.Title, t.Columns[5].Head = "SEAMS, heights over the level of the room", "EDGE LINE"
	}
	for i := range s.Plan.Runs {
		r := &s.Plan.Runs[i]
		for j := range r.Seams {
			t.Rows = append(t.Rows, seamRow(s, r, &r.Seams[j]))
		}
	}
	return withoutEmpty(t)
}

func seamRow(s *folio.Set, r *layout.Run, m *layout.Seam) draft.Row {
	note := ""
	if k, ok := elevation.SkipAt(s, r, m); ok {
		note = k.LeftOut()
	}
	switch {
	case m.Closing:
		note = "closing"
	case m.FlitchChange:
		note = "flitch change"
	case m.Seen == 0 && (inGap(r, m) || inOpening(s, m)):
		note = "in an opening: not cut"
	case m.Hung && note == "":
		note = "hung"
	}
	at, page := m.X, elevation.PageAt(s, m.Wall, m.X)
	if r.Up { // it runs along the whole wall, on all of its pages
		at, page = m.At, pagesOf(s, m.Wall)
	}
	first, _, _ := strings.Cut(page, ", ")
	return draft.Row{Cells: []string{s.Plan.SeamNumbers(r, m), flitchesAt(s, m), s.Room.Walls[m.Wall].Name, page, s.Style.Format(at), s.Style.Format(at + s.Room.Veneer.Overlap.HalfDown()),
		nearestOpening(s, m), nearestBend(s, r, m), note}, Link: first, Tag: scene.Tag{Class: "row", Data: []scene.Datum{folio.Datum("at", folio.Mm(m.At))}}}
}

// inOpening reports whether a seam lies in an opening that leaves no covering over or under it.
func inOpening(s *folio.Set, m *layout.Seam) bool {
	f := s.Face(m.Wall)
	return f != nil && slices.ContainsFunc(f.W.Openings, func(o room.Opening) bool { return o.FromLeft < m.X && m.X < o.Right() && f.W.FullHeight(&o) })
}

// flitchesAt are the flitches of the sheets at a seam, "" in a room in which a number says which sheet is meant.
func flitchesAt(s *folio.Set, m *layout.Seam) string {
	left, right := elevation.SheetAt(s, m.LeftSheet), elevation.SheetAt(s, m.RightSheet)
	switch {
	case left == nil || right == nil || !numberedTwice(s.Plan):
		return ""
	case left.Flitch == right.Flitch:
		return left.Flitch
	}
	return left.Flitch + " | " + right.Flitch
}

// numberedTwice reports whether two flitches hang a sheet of the same number.
func numberedTwice(p *layout.Plan) bool {
	flitch := map[int]string{}
	for i := range p.Runs {
		for j := range p.Runs[i].Sheets {
			sh := &p.Runs[i].Sheets[j]
			if of, ok := flitch[sh.Number]; ok && of != sh.Flitch && sh.Number > 0 {
				return true
			}
			flitch[sh.Number] = sh.Flitch
		}
	}
	return false
}

// inGap reports whether a sheet at a seam falls wholly into an opening, so that it goes back to stock.
func inGap(r *layout.Run, m *layout.Seam) bool {
	return slices.ContainsFunc(r.Sheets, func(sh layout.Sheet) bool {
		return sh.InGap && (sh.Place == m.LeftSheet || sh.Place == m.RightSheet)
	})
}

// pagesOf are the pages that show a wall, from its left end on.
func pagesOf(s *folio.Set, wall int) string {
	var list []string
	for _, l := range s.List {
		for _, p := range l.Shown {
			if p.Wall == wall && !slices.Contains(list, l.Number) {
				list = append(list, l.Number)
			}
		}
	}
	if len(list) == 0 { // while pages are planned
		return elevation.PageAt(s, wall, 0)
	}
	return strings.Join(list, ", ")
}

// nearestOpening says how far a seam is from the nearest opening of its wall: one round a corner is nothing to it.
func nearestOpening(s *folio.Set, m *layout.Seam) string {
	if n := m.NearestOpening; n != nil && slices.ContainsFunc(s.Room.Walls[m.Wall].Openings, func(o room.Opening) bool { return o.Name == n.Name }) {
		return nearWords(s, n)
	}
	return ""
}

// nearestBend says how far a seam is from the nearest bend: at the floor, as on elevations and details.
func nearestBend(s *folio.Set, r *layout.Run, m *layout.Seam) string {
	n := m.NearestCorner
	if n == nil {
		return ""
	}
	for i := range r.Corners {
		c := &r.Corners[i]
		d := (m.At - c.At).Abs()
		if r.Closed {
			d = min(d, r.Length-d)
		}
		if c.Name == n.Name {
			return s.Style.Format(d-(c.To-c.At-max(0, c.Lean))) + " " + c.Name
		}
	}
	return nearWords(s, n)
}

func nearWords(s *folio.Set, n *layout.Near) string { return s.Style.Format(n.Distance) + " " + n.Name }

// jointed reports whether sheets meet end to end somewhere.
func jointed(s *folio.Set) bool {
	return slices.ContainsFunc(s.Plan.Runs, func(r layout.Run) bool { return len(r.Joints) > 0 })
}

// jointSchedule lists where sheets meet end to end, wall by wall: of those that stand how high, of those that lie how far from the left
// end, and which meet there.
func jointSchedule(s *folio.Set) *draft.Table {
	t := &draft.Table{Title: "JOINTS, heights over the level of the room", Columns: []draft.Column{{Head: "WALL", Bold: true, Wrap: true}, {Head: "PAGE", Spare: 1}, {Head: "AT", Align: scene.End},
		{Head: "UNDER IT", Wrap: true}, {Head: "OVER IT", Wrap: true}}}
	if s.Room.Veneer.Horizontal {
		t.Title, t.Columns[3].Head, t.Columns[4].Head = "JOINTS, from the left end of their wall", "LEFT OF IT", "RIGHT OF IT"
	}
	for i := range s.Plan.Runs {
		r := &s.Plan.Runs[i]
		for k, at := range r.Joints {
			for _, w := range r.Walls {
				first, second := meeting(r, k+1, w.Wall)
				if len(first) == 0 {
					continue
				}
				page := pagesOf(s, w.Wall)
				if r.Up {
					page = elevation.PageAt(s, w.Wall, at)
				}
				link, _, _ := strings.Cut(page, ", ")
				t.Rows = append(t.Rows, draft.Row{Cells: []string{s.Room.Walls[w.Wall].Name, page, s.Style.Format(at), numbersOf(s, first), numbersOf(s, second)}, Link: link,
					Tag: scene.Tag{Class: "row", Data: []scene.Datum{folio.Datum("joint", folio.Mm(at))}}})
			}
		}
	}
	return t
}

// meeting are the sheets of a course and of the next one that meet on a wall.
func meeting(r *layout.Run, course, wall int) (first, second []*layout.Sheet) {
	on := func(sh *layout.Sheet) bool {
		return slices.ContainsFunc(sh.Pieces, func(p layout.Piece) bool { return p.Wall == wall })
	}
	for i := range r.Sheets {
		a := &r.Sheets[i]
		if a.Course != course || !on(a) {
			continue
		}
		for j := range r.Sheets {
			if b := &r.Sheets[j]; b.Place == a.Place && b.Course == course+1 && on(b) {
				first, second = append(first, a), append(second, b)
			}
		}
	}
	return first, second
}

// numbersOf are the numbers of some sheets, of several flitches each after its flitch.
func numbersOf(s *folio.Set, list []*layout.Sheet) string {
	var parts []string
	for i := 0; i < len(list); {
		flitch := list[i].Flitch
		var numbers []int
		for ; i < len(list) && list[i].Flitch == flitch; i++ {
			numbers = append(numbers, list[i].Number)
		}
		words := layout.Ranges(numbers, " to ")
		if len(s.Room.Flitches) > 1 {
			words = flitch + ": " + words
		}
		parts = append(parts, words)
	}
	return strings.Join(parts, "; ")
}

package submittal

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"flitchlay/internal/draft"
	"flitchlay/internal/elevation"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/scene"
)

// sheetSchedule lists all sheets: of those that stand how far they reach over and under the level line, of those that lie from where to
// where on their wall.
func sheetSchedule(s *folio.Set) *draft.Table {
	t := &draft.Table{Title: "SCHEDULE OF SHEETS, in the order of hanging; level line " + s.Style.Format(s.Room.Space.LevelLine) + " up", Columns: []draft.Column{
		{Head: "SHEET", Bold: true, Align: scene.End}, {Head: "FLITCH", Spare: spareFlitch(s)}, {Head: "WALLS", Wrap: true}, {Head: "COVERS", Align: scene.End},
		{Head: "RIPPED TO", Align: scene.End}, {Head: "CUT LENGTH", Align: scene.End}, {Head: "ABOVE LINE", Align: scene.End},
		{Head: "BELOW LINE", Align: scene.End, Spare: 1}, {Head: "NOTE", Wrap: true}}}
	if s.Room.Veneer.Horizontal {
		t.Title = "SCHEDULE OF SHEETS, in the order of hanging, from the left end"
		t.Columns[6].Head, t.Columns[7].Head, t.Columns[7].Spare = "FROM", "TO", 0
	}
	for i := range s.Plan.Runs {
		r := &s.Plan.Runs[i]
		for j := range r.Sheets {
			t.Rows = append(t.Rows, sheetRow(s, r, &r.Sheets[j]))
		}
	}
	t.Rows = grouped(t.Rows)
	return withoutEmpty(t)
}

// grouped makes one row of those that follow each other with numbers that do, where nothing else in them differs: 13 to 23. It keeps
// the places of all.
func grouped(rows []draft.Row) []draft.Row {
	var out []draft.Row
	first, last := 0, 0 // numbers of the row that is added to, 0 where it has none
	for _, r := range rows {
		n, err := strconv.Atoi(r.Cells[0])
		if err != nil {
			n = 0
		}
		if k := len(out) - 1; k >= 0 && n > 0 && n == last+1 && slices.Equal(out[k].Cells[1:], r.Cells[1:]) {
			last = n
			out[k].Cells[0] = fmt.Sprintf("%d to %d", first, last)
			for i := range out[k].Tag.Data { // all of them in one: "3 4 5"
				out[k].Tag.Data[i].Value += " " + r.Tag.Data[i].Value
			}
			continue
		}
		first, last = n, n
		out = append(out, r)
	}
	return out
}

// spareFlitch says how well the column of flitches can be spared: where there is one, it says nothing.
func spareFlitch(s *folio.Set) int {
	if len(s.Room.Flitches) > 1 {
		return 0
	}
	return 2
}

func sheetRow(s *folio.Set, r *layout.Run, sh *layout.Sheet) draft.Row {
	f := s.Style.Format
	cells := []string{elevation.NumberOf(sh), sh.Flitch, wallsOf(s, sh), f(sh.Width), "", f(sh.CutLength), past(s, sh.Above, "down"), past(s, sh.Below, "up")}
	if sh.Ripped != "" {
		cells[4] = f(sh.RipTo) + " " + r.Side(sh.Ripped)
	}
	if from, to, ok := lies(sh); r.Up && ok {
		cells[6], cells[7] = f(from), f(to)
	}
	if sh.InGap {
		cells[5], cells[6], cells[7] = "", "", ""
	}
	cells = append(cells, strings.Join(sheetNotes(s, r, sh), ", "))
	return draft.Row{Cells: cells, Tag: scene.Tag{Class: "row", Data: []scene.Datum{folio.Datum("place", fmt.Sprint(sh.Place)), folio.Datum("course", fmt.Sprint(sh.Course))}}}
}

// past is how far an end of a sheet is past the level line on its own side; on the other the way is said.
func past(s *folio.Set, d L, other string) string {
	if d < 0 {
		return s.Style.Format(-d) + " " + other
	}
	return s.Style.Format(d)
}

// lies is from where to where along its wall a sheet covers something, false where it covers nothing.
func lies(sh *layout.Sheet) (from, to L, ok bool) {
	for _, p := range sh.Pieces {
		for _, q := range p.Outline {
			if !ok {
				from, to, ok = q.X, q.X, true
			}
			from, to = min(from, q.X), max(to, q.X)
		}
	}
	return from, to, ok
}

// sheetNotes say what is special about a sheet.
func sheetNotes(s *folio.Set, r *layout.Run, sh *layout.Sheet) []string {
	var notes []string
	if len(sh.Corners) > 0 {
		notes = append(notes, "wraps "+strings.Join(sh.Corners, ", "))
	}
	if sh.Narrow {
		notes = append(notes, "narrow: grain jumps "+s.Style.Words(sh.Lost))
	} else if sh.Lost > 0 {
		seen := ", not seen"
		if m := r.SeamAfter(sh.Place); m != nil && m.Seen > 0 {
			seen = ", seen for " + s.Style.Words(m.Seen)
		}
		notes = append(notes, "grain jumps "+s.Style.Words(sh.Lost)+seen)
	}
	if n := courses(r, sh.Place); n > 1 && r.Up {
		notes = append(notes, fmt.Sprintf("piece %d of %d", sh.Course, n))
	} else if sh.Course > 1 || n > 1 {
		notes = append(notes, fmt.Sprintf("course %d", sh.Course))
	}
	if sh.Turned {
		notes = append(notes, "hangs turned")
	}
	if sh.InGap {
		notes = append(notes, "in a gap: to stock")
	}
	if sh.Hung {
		notes = append(notes, "hung")
	}
	return notes
}

// courses counts the sheets of a column.
func courses(r *layout.Run, place int) int {
	n := 0
	for i := range r.Sheets {
		if r.Sheets[i].Place == place {
			n++
		}
	}
	return n
}

// wallsOf names the walls that a sheet covers part of.
func wallsOf(s *folio.Set, sh *layout.Sheet) string {
	var list []string
	for _, p := range sh.Pieces {
		name := s.Room.Walls[p.Wall].Name
		if len(list) == 0 || list[len(list)-1] != name {
			list = append(list, name)
		}
	}
	return strings.Join(list, ", ")
}

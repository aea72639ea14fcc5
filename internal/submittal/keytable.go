package submittal

import (
	"cmp"
	"fmt"
	"math"
	"strings"

	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/length"
	"flitchlay/internal/scene"
)

// table lists the walls beside the plan or under it, and with them how the room closes and how the sheets suffice, and gives how far
// down that reaches.
func (r *roomKey) table() (low float64) {
	k, g := r.Look, &r.Page.Group
	t, notes := r.wallTable(), r.closing(&r.missed)
	high, at, wide := r.side.H()-k.Of(30), scene.Pt(r.side.X0, r.side.Y0), r.side.W()
	beside := false
	if r.under {
		high = r.side.H()
		if beside = r.fitUnder(t, wide); !beside {
			high -= k.Of(5) + notesHigh(k, notes, wide)
		}
	} else {
		t.Fit(k, wide)
	}
	count, box := t.Draw(g, k, at, 0, high)
	if beside {
		at.X, wide = box.X1+k.Of(keyApart), r.side.X1-box.X1-k.Of(keyApart)
	} else {
		at.Y = box.Y1 + k.Of(5)
	}
	if count < len(t.Rows) {
		notes = append([]string{fmt.Sprintf("... and %d walls more, listed in the schedules.", len(t.Rows)-count)}, notes...)
	}
	for _, text := range notes {
		low = draft.Paragraph(g, scene.Notes, at, text, k.Small, false, wide)
		at.Y = low + k.Of(1.5)
	}
	return low
}

// keyApart is what stands between the table under the plan and the notes beside it, keyNotes how wide these are at the least, in mm on
// the office page.
const (
	keyApart = 10
	keyNotes = 48
)

// fitUnder makes the table under the plan as wide as it needs and reports whether the notes have room beside it.
func (r *roomKey) fitUnder(t *draft.Table, all float64) (beside bool) {
	t.Fit(r.Look, 0)
	if t.Width() <= all-r.Look.Of(keyApart+keyNotes) {
		return true
	}
	if t.Width() > all {
		t.Fit(r.Look, all)
	}
	return false
}

// notesHigh is how high notes come out.
func notesHigh(k draft.Look, notes []string, wide float64) (high float64) {
	for _, text := range notes {
		high += draft.ParagraphHigh(text, k.Small, false, wide) + k.Of(1.5)
	}
	return high
}

// tableHigh is how high the table comes out under the plan, with the notes beside it or under it.
func (r *roomKey) tableHigh(all float64) float64 {
	k := r.Look
	t := r.wallTable()
	beside := r.fitUnder(t, all)
	wide := all
	if beside {
		wide -= t.Width() + k.Of(keyApart)
	}
	notes := notesHigh(k, r.closing(r.lost), wide)
	if beside {
		return math.Max(t.High(k), notes) + k.Of(1)
	}
	return t.High(k) + k.Of(5) + notes + k.Of(1)
}

// wallTable is the table of the walls. Walls in a row that are alike in all but their number share a line.
func (r *roomKey) wallTable() *draft.Table {
	t := &draft.Table{Row: r.Look.Of(6), Columns: []draft.Column{{Head: "", Bold: true}, {Head: "WALL", Wrap: true}, {Head: "LENGTH", Align: scene.End}, {Head: "COVERS", Align: scene.End, Spare: 1}, {Head: "SHEETS", Wrap: true}, {Head: "PAGE", Wrap: true}}}
	refs := false
	for i := range r.Room.Walls {
		refs = refs || r.Room.Walls[i].Ref != ""
	}
	if refs {
		t.Columns = append(t.Columns[:2:2], append([]draft.Column{{Head: "MARK"}}, t.Columns[2:]...)...)
	}
	lines := r.wallLines()
	areas := make([]length.Area, len(lines))
	for i, line := range lines {
		areas[i] = line.area(r)
	}
	covered := r.Style.FormatAreas(areas)
	for i, line := range lines {
		cells := line.cells(r, covered[i])
		if refs {
			cells = append(cells[:2:2], append([]string{r.Room.Walls[line.from].Ref}, cells[2:]...)...)
		}
		t.Rows = append(t.Rows, draft.Row{Cells: cells, Link: r.PageOf(folio.WallKey(line.from))})
	}
	return t
}

// ordinals say one of how many sheets is numbered.
var ordinals = map[int]string{2: "second", 5: "fifth", 10: "tenth", 20: "twentieth", 50: "fiftieth"}

// areaOn is what is covered of a wall.
func areaOn(s *folio.Set, wall int) (area length.Area) {
	for i := range s.Plan.Runs {
		for j := range s.Plan.Runs[i].Sheets {
			for _, p := range s.Plan.Runs[i].Sheets[j].Pieces {
				if p.Wall == wall {
					area += p.Area
				}
			}
		}
	}
	return area
}

// closing are the lines about girth, closing error and supply, and what has no place on the plan.
func (r *roomKey) closing(missed *keyMissed) []string {
	var lines []string
	girth := L(0)
	for i := range r.Room.Walls {
		girth += r.Room.Walls[i].Length
	}
	lines = append(lines, "Girth "+r.Style.Format(girth)+".")
	if c := r.Plan.Closing; c != nil {
		if c.Gap == 0 && math.Abs(c.AngleSum) < 0.005 {
			lines = append(lines, "The walls close exactly as measured.")
		} else {
			lines = append(lines, fmt.Sprintf("The walls miss closing by %s, %.0f degrees right of the first wall; the angles by %.1f degrees.", r.Style.Words(c.Gap), c.Direction, c.AngleSum))
		}
	}
	total := r.Plan.Totals
	hang, left := hanging(r.Plan) // what an opening takes whole goes back to stock
	supply := sheetCount(hang) + " laid"
	for _, f := range r.Plan.Left {
		left += len(f.Left)
	}
	switch {
	case total.Short > 0:
		supply += fmt.Sprintf(", %d short.", total.Short)
	case len(r.Plan.Left) > 0:
		supply += fmt.Sprintf(", %d left besides the spare ones.", left)
	default:
		supply += "."
	}
	lines = append(lines, supply, "Solid triangle: hanging starts. Diamond: closing seam. Hexagon: change of flitch.")
	if r.every > 1 {
		lines = append(lines, fmt.Sprintf("Ticks: seams; of the sheets the first and the last of a wall and every %s are numbered here, all of them on the elevations.", ordinals[r.every]))
	}
	switch {
	case missed == nil || missed.count() == 0:
	case r.apart:
		lines = append(lines, fmt.Sprintf("Not lettered on the plan, but listed: %s.", cmp.Or(r.PageOf(keyListKey), r.Paper.PageNumber(int(folio.Plans), 2))))
	default:
		lines = append(lines, "Not lettered on the plan: "+strings.Join(missed.lines(r), "; ")+".")
	}
	return lines
}

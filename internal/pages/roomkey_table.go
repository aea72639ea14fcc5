package pages

import (
	"fmt"
	"math"
	"strings"

	"flitchlay/internal/draft"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/scene"
)

// table lists the walls beside the plan, and under it how the room closes and how the sheets suffice.
func (r *roomKey) table() {
	k := r.look
	t := &draft.Table{Row: k.Of(6), Columns: []draft.Column{{Head: "", Bold: true}, {Head: "WALL"}, {Head: "LENGTH", Align: scene.End}, {Head: "COVERS", Align: scene.End, Spare: 1}, {Head: "SHEETS", Wrap: true}, {Head: "PAGE"}}}
	refs := false
	for i := range r.room.Walls {
		refs = refs || r.room.Walls[i].Ref != ""
	}
	if refs {
		t.Columns = append(t.Columns[:2:2], append([]draft.Column{{Head: "MARK"}}, t.Columns[2:]...)...)
	}
	for i := range r.room.Walls {
		w := &r.room.Walls[i]
		covers, sheets := "bare", ""
		if f := faceOf(r.plan, i); f != nil {
			var list []*layout.Sheet
			for _, p := range f.parts {
				list = append(list, p.sheets...)
			}
			sheets = strings.Join(short(list), ", ")
			covers = r.style.FormatArea(r.areaOn(i))
		}
		cells := []string{r.marks[i], w.Name, r.style.Format(w.Length), covers, sheets, r.pageOf(wallKey(i))}
		if refs {
			cells = append(cells[:2:2], append([]string{w.Ref}, cells[2:]...)...)
		}
		t.Rows = append(t.Rows, draft.Row{Cells: cells, Link: r.pageOf(wallKey(i))})
	}
	t.Columns[1].Wrap = true
	t.Fit(k, r.side.W())
	count, box := t.Draw(&r.page.Group, k, scene.Pt(r.side.X0, r.side.Y0), 0, r.side.H()-k.Of(30))
	r.space.Take(r.side)
	y := box.Y1 + k.Of(6)
	if count < len(t.Rows) {
		y = draft.Paragraph(&r.page.Group, scene.Notes, scene.Pt(r.side.X0, y), fmt.Sprintf("... and %d walls more, listed in the schedules.", len(t.Rows)-count), k.Small, false, r.side.W()) + k.Of(2)
	}
	for _, text := range r.closing() {
		y = draft.Paragraph(&r.page.Group, scene.Notes, scene.Pt(r.side.X0, y), text, k.Small, false, r.side.W()) + k.Of(1.5)
	}
}

// areaOn is what is covered of a wall.
func (s *set) areaOn(wall int) (area length.Area) {
	for i := range s.plan.Runs {
		for j := range s.plan.Runs[i].Sheets {
			for _, p := range s.plan.Runs[i].Sheets[j].Pieces {
				if p.Wall == wall {
					area += p.Area
				}
			}
		}
	}
	return area
}

// closing are the lines about girth, closing error and supply.
func (r *roomKey) closing() []string {
	var lines []string
	girth := L(0)
	for i := range r.room.Walls {
		girth += r.room.Walls[i].Length
	}
	lines = append(lines, "Girth "+r.style.Format(girth)+".")
	if c := r.plan.Closing; c != nil {
		if c.Gap == 0 && math.Abs(c.AngleSum) < 0.005 {
			lines = append(lines, "The walls close exactly as measured.")
		} else {
			lines = append(lines, fmt.Sprintf("The walls miss closing by %s, %.0f degrees right of the first wall; the angles by %.1f degrees.", r.style.Words(c.Gap), c.Direction, c.AngleSum))
		}
	}
	total := r.plan.Totals
	supply := fmt.Sprintf("%d sheets laid", total.Sheets)
	left := 0
	for _, f := range r.plan.Left {
		left += len(f.Left)
	}
	switch {
	case total.Short > 0:
		supply += fmt.Sprintf(", %d short.", total.Short)
	case len(r.plan.Left) > 0:
		supply += fmt.Sprintf(", %d left besides the spare ones.", left)
	default:
		supply += "."
	}
	return append(lines, supply, "Solid triangle: hanging starts. Diamond: closing seam. Hexagon: change of flitch.")
}

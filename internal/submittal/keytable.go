package submittal

import (
	"fmt"
	"math"
	"strings"

	"flitchlay/internal/draft"
	"flitchlay/internal/face"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/scene"
)

// table lists the walls beside the plan, and under it how the room closes and how the sheets suffice.
func (r *roomKey) table() {
	k := r.Look
	t := &draft.Table{Row: k.Of(6), Columns: []draft.Column{{Head: "", Bold: true}, {Head: "WALL"}, {Head: "LENGTH", Align: scene.End}, {Head: "COVERS", Align: scene.End, Spare: 1}, {Head: "SHEETS", Wrap: true}, {Head: "PAGE"}}}
	refs := false
	for i := range r.Room.Walls {
		refs = refs || r.Room.Walls[i].Ref != ""
	}
	if refs {
		t.Columns = append(t.Columns[:2:2], append([]draft.Column{{Head: "MARK"}}, t.Columns[2:]...)...)
	}
	for i := range r.Room.Walls {
		w := &r.Room.Walls[i]
		covers, sheets := "bare", ""
		if f := face.On(r.Plan, i); f != nil {
			var list []*layout.Sheet
			for _, p := range f.Parts {
				list = append(list, p.Sheets...)
			}
			sheets = strings.Join(short(list), ", ")
			covers = r.Style.FormatArea(areaOn(r.Board.Set, i))
		}
		cells := []string{r.Marks[i], w.Name, r.Style.Format(w.Length), covers, sheets, r.PageOf(folio.WallKey(i))}
		if refs {
			cells = append(cells[:2:2], append([]string{w.Ref}, cells[2:]...)...)
		}
		t.Rows = append(t.Rows, draft.Row{Cells: cells, Link: r.PageOf(folio.WallKey(i))})
	}
	t.Columns[1].Wrap = true
	t.Fit(k, r.side.W())
	count, box := t.Draw(&r.Page.Group, k, scene.Pt(r.side.X0, r.side.Y0), 0, r.side.H()-k.Of(30))
	r.Space.Take(r.side)
	y := box.Y1 + k.Of(6)
	if count < len(t.Rows) {
		y = draft.Paragraph(&r.Page.Group, scene.Notes, scene.Pt(r.side.X0, y), fmt.Sprintf("... and %d walls more, listed in the schedules.", len(t.Rows)-count), k.Small, false, r.side.W()) + k.Of(2)
	}
	for _, text := range r.closing() {
		y = draft.Paragraph(&r.Page.Group, scene.Notes, scene.Pt(r.side.X0, y), text, k.Small, false, r.side.W()) + k.Of(1.5)
	}
}

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

// closing are the lines about girth, closing error and supply.
func (r *roomKey) closing() []string {
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
	supply := fmt.Sprintf("%d sheets laid", total.Sheets)
	left := 0
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
	return append(lines, supply, "Solid triangle: hanging starts. Diamond: closing seam. Hexagon: change of flitch.")
}

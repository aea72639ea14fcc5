package crew

import (
	"fmt"
	"slices"
	"strings"

	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// TapeWords say how the sheets are cut and what the list measures.
func (d *WallBoard) TapeWords() []string {
	if d.W.Run.Up {
		return append(d.MarkWordsUp(), d.Beside...)
	}
	lines := d.MarkWords()
	lines = append(lines, "trims in; line: right edge; seam "+d.Inches(d.Half)+" left")
	if lean := d.DatumLean(); lean != 0 {
		side := "right"
		if lean < 0 {
			side = "left"
		}
		lines = append(lines, fmt.Sprintf("0 is at the floor: at the level line the corner stands %s %s of it", d.Inches(lean.Abs()), side))
	}
	return append(lines, d.Beside...)
}

// CutsBeside give the cut lengths that have no room in their sheets, those alike together.
func (d *WallBoard) CutsBeside() []string {
	var order []string
	numbers := map[string][]int{}
	for _, s := range d.Cuts {
		cut := d.Say(s.CutLength)
		if s.Hung {
			cut = "hung"
		}
		if numbers[cut] == nil {
			order = append(order, cut)
		}
		numbers[cut] = append(numbers[cut], s.Number)
	}
	var parts []string
	for _, cut := range order {
		who := "?"
		if list := Known(numbers[cut]); len(list) > 0 {
			who = layout.Numbers(list)
		}
		parts = append(parts, who+": "+cut)
	}
	if parts == nil {
		return nil
	}
	return []string{"cut " + strings.Join(parts, "; ")}
}

// Known leaves out the zeros that stand for sheets without a number.
func Known(numbers []int) []int {
	return slices.DeleteFunc(slices.Clone(numbers), func(n int) bool { return n == 0 })
}

// DatumLean is how far the left end of the wall has moved to the right where the level line meets it.
func (d *WallBoard) DatumLean() L {
	w := d.W.W
	floor, ceiling := room.AtRight(w.Floor, d.W.Left), room.AtRight(w.Ceiling, d.W.Left)
	if w.LeanLeft == 0 || d.P.LeftCut() || ceiling <= floor {
		return 0
	}
	return d.Style.Round(length.MulDiv(w.LeanLeft, d.Level-floor, ceiling-floor))
}

// MarkWords say how long the sheets are cut, and how much of that is above and below the level mark, those alike together.
func (d *WallBoard) MarkWords() []string {
	type mark struct{ cut, above, below L }
	var order []mark
	numbers := map[mark][]int{}
	for _, h := range d.P.Rows {
		for _, s := range h.Sheets {
			if s.Hung || s.InGap || h.Before || !d.P.StartsHere(h) || s.CutLength == 0 {
				continue
			}
			m := mark{s.CutLength, s.Above, s.Below}
			if numbers[m] == nil {
				order = append(order, m)
			}
			numbers[m] = append(numbers[m], s.Number)
		}
	}
	switch {
	case len(order) == 0:
		return nil
	case len(order) > 3:
		return append(d.CutsBeside(), "up, down of the level mark: cut list, "+d.PageWord("cuts"))
	}
	var lines []string
	for _, m := range order {
		who := ""
		if list := Known(numbers[m]); len(order) > 1 && len(list) > 0 {
			who = layout.Numbers(list) + ": "
		}
		where := "up " + d.Say(m.above) + " + down " + d.Say(m.below)
		if m.below < 0 { // an upper course
			where = "from " + d.Say(-m.below) + " up to " + d.Say(m.above)
		}
		lines = append(lines, who+d.Say(m.cut)+" = "+where)
	}
	return lines
}

// Besides letters notes under the tape list as far as there is room, and gives back the others.
func (b *Board) Besides(g *scene.Group, notes []Note, y float64) []Note {
	u := b.U
	var rest []Note
	for _, n := range notes {
		var lines []string
		for _, line := range n.Lines {
			lines = append(lines, scene.Wrap(line, CrewText*u, false, b.List.W()-1*u)...)
		}
		if y+(7.4+5.6*float64(len(lines)))*u > b.List.Y1-2.4*u {
			rest = append(rest, n)
			continue
		}
		y += 7.4 * u
		b.Word(g, scene.Pt(b.List.X0, y), n.Head, CrewText*u, true, scene.Start)
		for _, line := range lines {
			y += 5.6 * u
			b.Word(g, scene.Pt(b.List.X0, y), line, CrewText*u, false, scene.Start)
		}
	}
	return rest
}

// NotesPages letter the notes that no page of a wall has room for.
func (c *Set) NotesPages(title string, n int, notes []Note) []*scene.Page {
	var out []*scene.Page
	for len(notes) > 0 {
		b := c.Open(n+len(out), folio.Sheet{Title: title, Lines: [2]string{c.Place(), "notes to the page before"}})
		b.Page.Title = title + ", notes"
		area := b.Area.Inset(3 * c.U)
		notes = b.Columns(area, notes)
		out = append(out, b.Page)
	}
	return out
}

// Columns letters notes in two columns, and gives back what has no room.
func (b *Board) Columns(area scene.Box, notes []Note) []Note {
	u := b.U
	g := b.Page.Part(scene.Tag{Class: "notes"})
	w := (area.W() - 6*u) / 2
	col, y := 0, area.Y0
	for len(notes) > 0 {
		n := notes[0]
		x := area.X0 + float64(col)*(w+6*u)
		var lines []string
		for _, line := range n.Lines {
			lines = append(lines, scene.Wrap(line, CrewText*u, false, w)...)
		}
		room := int((area.Y1 - y - 9*u) / (5.8 * u))
		if room < 1 || room < len(lines) && room < 4 {
			if col++; col == 2 {
				return notes
			}
			y = area.Y0
			continue
		}
		y += 7 * u
		b.Word(g, scene.Pt(x, y), scene.Shorten(n.Head, CrewText*u, true, w), CrewText*u, true, scene.Start)
		shown := min(room, len(lines))
		for _, line := range lines[:shown] {
			y += 5.8 * u
			b.Word(g, scene.Pt(x, y), line, CrewText*u, false, scene.Start)
		}
		y += 3 * u
		if shown < len(lines) {
			notes = append([]Note{{strings.TrimSuffix(n.Head, " (on)") + " (on)", lines[shown:]}}, notes[1:]...)
			continue
		}
		notes = notes[1:]
	}
	return nil
}

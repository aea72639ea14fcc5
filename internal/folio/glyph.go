package folio

import (
	"fmt"
	"strings"

	"flitchlay/internal/finding"
	"flitchlay/internal/font"
	"flitchlay/internal/length"
	"flitchlay/internal/room"
)

// Glyphs finds the texts of a room that hold characters which the drawings' face does not have. They are drawn with a
// mark in their place.
func Glyphs(r *room.Room) []finding.Finding {
	var out []finding.Finding
	style := length.StyleOf(r.Project.Units)
	look := func(what, text string, wall int) {
		missing := font.Missing(text)
		if len(missing) == 0 {
			return
		}
		var signs []string
		for _, sign := range missing {
			signs = append(signs, fmt.Sprintf("%c (U+%04X)", sign, sign))
		}
		place := "room"
		if wall >= 0 {
			place = fmt.Sprintf("wall %d", wall+1)
		}
		out = append(out, finding.Make(style, finding.Glyph, finding.Finding{Place: place, Wall: wall},
			finding.Slots{"what": what, "signs": strings.Join(signs, ", ")}))
	}
	p := r.Project
	for _, t := range [][2]string{{"the title", p.Title}, {"the project's number", p.Number}, {"the room's number", p.Room},
		{"the project's place", p.Place}, {"for", p.For}, {"by", p.By}, {"the section", p.Section}, {"the tag", p.Tag},
		{"the species", r.Veneer.Species}} {
		look(t[0], t[1], -1)
	}
	for _, v := range p.Revisions {
		look("revision "+v.Mark, v.Mark+v.Note, -1)
	}
	for _, f := range r.Flitches {
		look("a flitch's number", f.Number, -1)
	}
	for i := range r.Walls {
		w := &r.Walls[i]
		look(fmt.Sprintf("the name of wall %d", i+1), w.Name, i)
		look(fmt.Sprintf("the architect's mark of wall %d", i+1), w.Ref, i)
		for _, o := range w.Openings {
			look("the name of an opening on wall "+w.Name, o.Name, i)
		}
		for _, k := range w.KeepClear {
			look("the reason of a keep-clear on wall "+w.Name, k.Why, i)
		}
		for _, b := range w.Bare {
			look("the reason of a bare strip on wall "+w.Name, b.Why, i)
		}
	}
	return out
}

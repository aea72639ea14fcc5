package crew

import (
	"flitchlay/internal/face"
	"flitchlay/internal/layout"
)

// goesOn says how far a sheet goes on past a corner: to its seam at the next wall's level line, which is the figure in that wall's
// own tape list; past that wall where its seam is further round.
func (d *wallBoard) goesOn(h *face.Hang, c *layout.Corner) string {
	for _, w := range d.Walls {
		if w.Wall != c.RightWall {
			continue
		}
		for _, n := range w.Hangs {
			if n.Place != h.Place || !n.Before {
				continue
			}
			if n.After {
				return d.Words.Say("wall.past", w.W.Name)
			}
			words := d.Along(w.Face, rightEdge(w.Face, n))
			switch {
			case n.Ends && w.AtLevel():
				return d.Words.Say("wall.to_end_level", words)
			case n.Ends:
				return d.Words.Say("wall.to_end", words)
			case w.AtLevel():
				return d.Words.Say("wall.to_seam_level", words)
			}
			return d.Words.Say("wall.to_seam", words)
		}
	}
	return d.Inches(c.RightReturn)
}

// rightEdge is where the right edge of a place is at the level line: where the covering ends at a corner, that which leans there.
func rightEdge(f *face.Face, h *face.Hang) L {
	if h.Ends && !f.Run.Up && h.X >= f.Right {
		return f.End()
	}
	return h.X
}

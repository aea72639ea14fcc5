package crew

import (
	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
)

// board is a page of the crew's being drawn.
type board struct {
	*Set
	*folio.Taped
	more int // lines by which boxes and rips are higher than the foot
}

// open makes a page of the set ready.
func (c *Set) open(n int, sheet folio.Sheet) *board {
	sheet.Name = "install"
	return &board{Set: c, Taped: c.Tape(n, sheet)}
}

// word letters one line of notes.
func (b *board) word(g *scene.Group, at scene.Point, s string, height float64, bold bool, anchor scene.Anchor) {
	g.Text(scene.Text{At: at, String: s, Height: height, Bold: bold, Anchor: anchor, Layer: scene.Notes})
}

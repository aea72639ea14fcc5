package crew

import (
	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
)

// Board is a page of the crew's being drawn.
type Board struct {
	*Set
	*folio.Taped
	More int // lines by which boxes and rips are higher than the foot
}

// Heights of text and widths of lines of a page that is read from a ladder.
const (
	CrewSmall  = folio.TapedSmall // captions alone
	CrewText   = folio.TapedText
	CrewLarge  = folio.TapedLarge
	CrewName   = folio.TapedName
	CrewNumber = folio.TapedNumber
	CrewHeavy  = 0.7
	CrewFine   = folio.TapedFine
	CrewBorder = folio.TapedBorder // what cheap printers do not reach
)

// Open makes a page of the set ready.
func (c *Set) Open(n int, sheet folio.Sheet) *Board {
	sheet.Name = "install-" + Pad(n)
	return &Board{Set: c, Taped: c.Tape(n, c.Total, c.U, sheet)}
}

// Word letters one line of notes.
func (b *Board) Word(g *scene.Group, at scene.Point, s string, height float64, bold bool, anchor scene.Anchor) {
	g.Text(scene.Text{At: at, String: s, Height: height, Bold: bold, Anchor: anchor, Layer: scene.Notes})
}

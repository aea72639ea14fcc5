package crewday

import (
	"flitchlay/internal/folio"
)

// Board is a page of the crew's being drawn.
type Board struct {
	*Set
	*folio.Taped
	n int // of the page
}

// Open makes a page of the set ready.
func (c *Set) Open(n int, sheet folio.Sheet) *Board {
	sheet.Name = "install"
	return &Board{Set: c, Taped: c.Tape(n, sheet), n: n}
}

package crew

import (
	"flitchlay/internal/crewday"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/paper"
	"flitchlay/internal/scene"
)

// Install draws the install set, to tape on the wall: the room start page, one wall or piece of one per page, the cut
// list. Black and white, to be read at arm's length.
//
// Errors: a page that no backend could draw, which is a fault of the program.
func Install(p *layout.Plan, t *paper.Template) (*scene.Document, error) {
	c := NewSet(p, t, "Install")
	return c.Document(c.installPages())
}

// Set is the install set while it is made: what every page of it needs to know, and its walls.
type Set struct {
	*crewday.Set
	half  L // half an overlap
	Walls []*Wall
}

// NewSet prepares a set for the crew.
func NewSet(p *layout.Plan, t *paper.Template, name string) *Set {
	c := &Set{Set: crewday.NewSet(p, t, name), half: p.Room.Veneer.Overlap.HalfDown()}
	for _, f := range c.Faces {
		c.Walls = append(c.Walls, c.hung(f))
	}
	return c
}

// board is a page of a wall or of the cut list being drawn.
type board struct {
	*Set
	*folio.Taped
	more int // lines by which boxes and rips are higher than the foot
}

// open makes a page of the set ready.
func (c *Set) open(n int, sheet folio.Sheet) *board {
	return &board{Set: c, Taped: c.Set.Open(n, sheet).Taped}
}

// installPages lists the pages in their order.
func (c *Set) installPages() []folio.TapedPage {
	list := []folio.TapedPage{{Key: "start", Draw: c.StartPage}, {Key: "days", Draw: c.DayPages}}
	for _, w := range c.Walls {
		for _, piece := range w.pieces {
			list = append(list, folio.TapedPage{Key: piece.key(), Draw: func(n int) []*scene.Page { return c.wallPage(w, piece, n) }})
		}
	}
	return append(list, folio.TapedPage{Key: "cuts", Draw: c.cutPages})
}

// bare is a length in inches alone, or millimetres.
func (c *Set) bare(l L) string { return c.Style.Inches(l) }

package crew

import (
	"cmp"
	"math"
	"slices"

	"flitchlay/internal/card"
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
	rows string // the pages on which the rows of its sheets stand in the cut list
	more int    // lines by which boxes and rips are higher than the foot
}

// open makes a page of the set ready.
func (c *Set) open(n int, sheet folio.Sheet) *board {
	return &board{Set: c, Taped: c.Set.Open(n, sheet).Taped}
}

// installPages lists the pages in their order: those of the walls as they are hung.
func (c *Set) installPages() []folio.TapedPage {
	list := []folio.TapedPage{{Key: "start", Draw: c.StartPage}, {Key: "days", Draw: c.DayPages}, {Key: crewday.ReceiveKey, Draw: c.ReceivePages}, {Key: "key", Draw: c.keyPages}, {Key: crewday.OffKey, Draw: c.OffPages}}
	for _, p := range c.inOrder() {
		list = append(list, folio.TapedPage{Key: p.key(), Draw: func(n int) []*scene.Page { return c.wallPage(p.wall, p, n) }})
	}
	list = append(list, folio.TapedPage{Key: "cuts", Draw: c.cutPages})
	return append(list, card.Pages(c.TapedSet, c.Count)...)
}

// inOrder are the pieces of all walls by the first sheet that begins on them, in the order of hanging.
func (c *Set) inOrder() []*piece {
	type turn struct{ run, place int }
	var list []*piece
	first := map[*piece]turn{}
	for _, w := range c.Walls {
		run := slices.IndexFunc(c.Plan.Runs, func(r layout.Run) bool { return r.Name == w.Run.Name })
		for _, p := range w.pieces {
			list = append(list, p)
			first[p] = turn{run, math.MaxInt}
			for _, h := range p.Hangs {
				if !h.Before && p.StartsHere(h) || len(p.Hangs) == 1 {
					first[p] = turn{run, min(first[p].place, h.Place)}
				}
			}
		}
	}
	slices.SortStableFunc(list, func(a, b *piece) int {
		return cmp.Or(cmp.Compare(first[a].run, first[b].run), cmp.Compare(first[a].place, first[b].place))
	})
	return list
}

// bare is a length in inches alone, or millimetres.
func (c *Set) bare(l L) string { return c.Style.Inches(l) }

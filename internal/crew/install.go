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
	strip []*strip // on one page each
	cards map[*layout.Sheet]*card.Card
}

// NewSet prepares a set for the crew.
func NewSet(p *layout.Plan, t *paper.Template, name string) *Set {
	c := &Set{Set: crewday.NewSet(p, t, name), half: p.Room.Veneer.Overlap.HalfDown()}
	c.cards = map[*layout.Sheet]*card.Card{}
	for _, x := range card.Of(c.Count) {
		c.cards[x.Sheet] = x
	}
	for _, f := range c.Faces {
		c.Walls = append(c.Walls, c.hung(f))
	}
	c.strip = c.strips()
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

// installPages lists the pages in their order: those of the walls as they are hung.
func (c *Set) installPages() []folio.TapedPage {
	list := []folio.TapedPage{{Key: "start", Draw: c.StartPage}, {Key: "days", Draw: c.DayPages}, {Key: crewday.SiteKey, Draw: c.SitePages}, {Key: crewday.ReceiveKey, Draw: c.ReceivePages}, {Key: "key", Draw: c.keyPages}, {Key: crewday.OffKey, Draw: c.OffPages}}
	for _, s := range c.inOrder() {
		list = append(list, folio.TapedPage{Key: s.lead().key(), Draw: func(n int) []*scene.Page { return c.wallPage(s, n) }})
	}
	list = append(list, folio.TapedPage{Key: "cuts", Draw: c.cutPages})
	return append(list, card.Pages(c.TapedSet, c.Count)...)
}

// inOrder are the pages of all walls by the first sheet that begins on them, in the order of hanging.
func (c *Set) inOrder() []*strip {
	type turn struct{ run, place int }
	first := map[*strip]turn{}
	for _, s := range c.strip {
		run := slices.IndexFunc(c.Plan.Runs, func(r layout.Run) bool { return r.Name == s.lead().wall.Run.Name })
		first[s] = turn{run, math.MaxInt}
		for _, p := range s.pieces {
			for _, h := range p.Hangs {
				if !h.Before && p.StartsHere(h) || len(p.Hangs) == 1 && len(s.pieces) == 1 {
					first[s] = turn{run, min(first[s].place, h.Place)}
				}
			}
		}
	}
	list := slices.Clone(c.strip)
	slices.SortStableFunc(list, func(a, b *strip) int {
		return cmp.Or(cmp.Compare(first[a].run, first[b].run), cmp.Compare(first[a].place, first[b].place),
			cmp.Compare(a.lead().Face.Wall, b.lead().Face.Wall), cmp.Compare(a.lead().Index, b.lead().Index))
	})
	return list
}

// bare is a length in inches alone, or millimetres.
func (c *Set) bare(l L) string { return c.Style.Inches(l) }

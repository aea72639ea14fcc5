package crew

import (
	"flitchlay/internal/card"
	"flitchlay/internal/count"
	"flitchlay/internal/days"
	"flitchlay/internal/face"
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

// Set is the install set while it is made: what every page of it needs to know.
type Set struct {
	*folio.TapedSet
	half  L // half an overlap
	Walls []*Wall
	count *count.Count
	days  *days.Schedule
}

// NewSet prepares a set for the crew.
func NewSet(p *layout.Plan, t *paper.Template, name string) *Set {
	c := &Set{TapedSet: folio.NewTapedSet(p, t, name), half: p.Room.Veneer.Overlap.HalfDown(), count: count.Of(p), days: days.Of(p)}
	for _, f := range face.All(p) {
		c.Walls = append(c.Walls, c.hung(f))
	}
	return c
}

// installPages lists the pages in their order.
func (c *Set) installPages() []folio.TapedPage {
	list := []folio.TapedPage{{Key: "start", Draw: c.startPage}, {Key: "days", Draw: c.dayPages}}
	for _, w := range c.Walls {
		for _, piece := range w.pieces {
			list = append(list, folio.TapedPage{Key: piece.key(), Draw: func(n int) []*scene.Page { return c.wallPage(w, piece, n) }})
		}
	}
	list = append(list, folio.TapedPage{Key: "cuts", Draw: c.cutPages})
	return append(list, card.Pages(c.TapedSet, c.count)...)
}

// bare is a length in inches alone, or millimetres.
func (c *Set) bare(l L) string { return c.Style.Inches(l) }

package crewday

import (
	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
)

// side draws the right part of a page.
type side func(*folio.Board, scene.Box)

// goesOnHigh is kept at the foot of what goes on over a page, to say on which, in mm on letter paper.
const goesOnHigh = 4.4

// halves are the left and the right part of a page.
func (h *hanging) halves() (left, right scene.Box) {
	k := h.look
	pad, wide := k.Of(3), min(k.Of(64), h.box.W()*0.37)
	left = scene.Box{X0: h.box.X0 + pad, Y0: h.box.Y0 + pad, X1: h.box.X1 - wide - 2*pad, Y1: h.box.Y1 - pad}
	return left, scene.Box{X0: left.X1 + 2*pad, Y0: left.Y0, X1: h.box.X1 - pad, Y1: left.Y1}
}

// leaves flow blocks into the left part of as many pages as they take; the right part of the first ones is drawn by the sides,
// that of the others is for notes. What goes on says on which page.
func (h *hanging) leaves(title string, blocks []folio.Block, sides ...side) []*folio.Leaf {
	k := h.look
	left, right := h.halves()
	c := folio.Columns{Box: left, Count: 1, Gap: 0}
	pages := folio.Flow(k, blocks, c)
	if len(pages) > 1 {
		c.Box.Y1 -= k.Of(goesOnHigh)
		pages = folio.Flow(k, blocks, c)
	}
	for len(pages) < len(sides) {
		pages = append(pages, nil)
	}
	var list []*folio.Leaf
	for i, parts := range pages {
		l := &folio.Leaf{Title: title, Wall: -1, Scale: "none"}
		if i > 0 {
			l.Title = h.Words.Say("day.on", l.Title)
		}
		l.Draw = func(b *folio.Board) {
			set := *b.Set
			set.Look = k
			mine := *b
			mine.Set = &set
			mine.Put(blocks, parts, c)
			b.Page.VLine(right.X0-k.Of(3), h.box.Y0, h.box.Y1, scene.Pen(scene.Frame, k.Seam))
			if i+1 < len(pages) && len(pages[i+1]) > 0 {
				h.goesOn(b, left, h.page+1)
			}
			if i < len(sides) {
				sides[i](&mine, right)
			} else {
				h.notes(&mine, right, right.Y0)
			}
		}
		list = append(list, l)
	}
	return list
}

// goesOn says at the foot of a part of a page on which page it goes on.
func (h *hanging) goesOn(b *folio.Board, box scene.Box, page int) {
	b.Page.Text(scene.Text{At: scene.Pt(box.X0, box.Y1), String: h.Words.Say("page.goes_on", page), Height: h.look.Small, Bold: true, Layer: scene.Notes})
}

// listed are sides that letter a list under what the first of them draws: as many as it takes.
func (h *hanging) listed(items []draft.Item, first func(*folio.Board, scene.Box) float64, high float64) []side {
	k := h.look
	_, box := h.halves()
	var sides []side
	for len(items) > 0 || len(sides) == 0 {
		room := box.H()
		if len(sides) == 0 {
			room -= high
		}
		n, used := 0, 0.0
		for n < len(items) {
			used += draft.ParagraphHigh(items[n].Text, k.Small, items[n].Bold, box.W()) + k.Small*0.5
			if used > room && (n > 0 || len(sides) == 0) {
				break
			}
			n++
		}
		part, draws := items[:n], len(sides) == 0
		items = items[n:]
		sides = append(sides, func(b *folio.Board, box scene.Box) {
			y := box.Y0
			if draws {
				y = first(b, box)
			}
			draft.List(&b.Page.Group, scene.Notes, scene.Pt(box.X0, y), part, k.Small, 0, box.W(), box.H())
		})
	}
	return sides
}

// sided makes pages of the form of the hanging days: blocks at the left; at the right under a heading a table, where there is one,
// and a list.
func (c *Set) sided(n int, title, about string, blocks []folio.Block, items []draft.Item, heading string, table func(width float64) *draft.Table) []*scene.Page {
	var out []*scene.Page
	h := &hanging{Set: &c.Set, look: c.readable(), plan: c.Days}
	fresh := func(title string) *Board {
		b := c.Open(n+len(out), folio.Sheet{Title: title, Lines: [2]string{c.Place(), about}})
		b.Page.Title = title
		h.box, h.page = b.Area, n+len(out)
		return b
	}
	fresh("")
	k := h.look
	_, box := h.halves()
	high := draft.ParagraphHigh(c.Words.Say(heading), k.Medium, true, box.W()) + k.Of(2)
	if table != nil {
		high += table(box.W()).High(k) + k.Of(3)
	}
	first := func(b *folio.Board, box scene.Box) float64 {
		y := draft.Paragraph(&b.Page.Group, scene.Notes, scene.Pt(box.X0, box.Y0), c.Words.Say(heading), k.Medium, true, box.W()) + k.Of(2)
		if table == nil {
			return y
		}
		_, taken := table(box.W()).Draw(&b.Page.Group, k, scene.Pt(box.X0, y), 0, box.Y1-y)
		return taken.Y1 + k.Of(3)
	}
	for _, l := range h.leaves(title, blocks, h.listed(items, first, high)...) {
		b := fresh(l.Title)
		l.Draw(&folio.Board{Set: &c.Set, Leaf: l, Page: b.Page, Space: b.Space, Field: h.box})
		out = append(out, b.Page)
	}
	return out
}

package detail

import (
	"cmp"
	"math"
	"slices"

	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
)

// Pages are the plan of every wrapped corner, close ones together in one cell, then once for the set the double cut and the
// terminations, which share the last page of the corners where it has room.
func Pages(s *folio.Set) []*folio.Leaf {
	var list []*folio.Leaf
	for _, p := range folio.Kept(s, "details", func() []detailPage { return arrange(s) }) {
		list = append(list, p.leaf(s))
	}
	return list
}

// detailPage is what stands on a page.
type detailPage struct {
	corners   []cornerCell
	standards []standardCell
}

// Sizes of cells on the office page, the best to read first: of a corner, and the height of a standard detail.
var (
	cornerSizes   = [][2]float64{{128, 104}, {100, 104}, {100, 94}}
	standardHighs = []float64{66, 60}
)

// arrange takes the sizes of cells with which all stands on the fewest pages, of these the largest.
func arrange(s *folio.Set) []detailPage {
	var best []detailPage
	list := chains(s)
	sizes := cornerSizes
	many := slices.ContainsFunc(list, func(c chain) bool { return len(c.bends) > 2 })
	if len(list) == 0 || many {
		sizes = sizes[:1] // many bends need the room
	}
	for i, size := range sizes {
		field, cells := fixedCells(s, size[0], size[1], many)
		if slices.ContainsFunc(list, func(c chain) bool { return len(c.bends) == 1 && !c.loop && !standsAlone(s, c, cells[0]) }) {
			if i > 0 {
				continue
			}
			field, cells = fixedCells(s, size[0], size[1], true)
		}
		var corners [][]cornerCell
		if len(list) > 0 {
			corners = settle(s, list, cells)
		}
		for _, high := range standardHighs {
			if pages := together(s, field, corners, s.Look.Of(high)); best == nil || len(pages) < len(best) {
				best = pages
			}
		}
	}
	return best
}

// fixedCells are as many cells of a size as the field holds, and the field: as wide as it is divided evenly, and no higher than asked
// unless they are to fill it.
func fixedCells(s *folio.Set, wide, high float64, fill bool) (field scene.Box, cells []scene.Box) {
	cells = s.Cells(wide, high)
	field = scene.Around(scene.Pt(cells[0].X0, cells[0].Y0), scene.Pt(cells[len(cells)-1].X1, cells[len(cells)-1].Y1))
	if fill {
		return field, cells
	}
	columns, h := perRow(cells), math.Min(cells[0].H(), s.Look.Of(high))
	for i := range cells {
		row := float64(i / columns)
		cells[i].Y0, cells[i].Y1 = field.Y0+row*h, field.Y0+(row+1)*h
	}
	return field, cells
}

// together puts the standard details behind the corners: under the last of them where their rows have room there.
func together(s *folio.Set, field scene.Box, corners [][]cornerCell, high float64) []detailPage {
	var pages []detailPage
	for _, c := range corners {
		pages = append(pages, detailPage{corners: c})
	}
	foot := field.Y0
	if n := len(pages); n > 0 {
		for _, c := range pages[n-1].corners {
			foot = math.Max(foot, c.box.Y1)
		}
		if foot+high > field.Y1+1e-6 {
			foot = field.Y0
		}
	}
	for i, cells := range standards(s, field, foot, high) {
		if n := len(pages); i == 0 && foot > field.Y0 {
			pages[n-1].standards = cells
		} else {
			pages = append(pages, detailPage{standards: cells})
		}
	}
	return pages
}

// leaf makes the page.
func (p detailPage) leaf(s *folio.Set) *folio.Leaf {
	l := &folio.Leaf{Wall: -1, Scale: draft.Ratio(detailScale(s), s.Metric())}
	var names []string
	for _, c := range p.corners {
		for _, b := range c.bends {
			l.Abouts = append(l.Abouts, "corner "+b.Name)
			names = append(names, b.Name)
		}
		if c.scale != detailScale(s) {
			l.Scale = "" // the title block says: as noted
		}
	}
	slices.SortStableFunc(names, func(a, b string) int { return cmp.Compare(cornerNumber(a), cornerNumber(b)) })
	switch {
	case len(names) == 1:
		l.Title = "CORNER " + names[0]
	case len(names) > 1:
		l.Title = "CORNERS " + ranges(names)
	}
	for _, c := range p.standards {
		l.Scale = ""
		if c.end == nil {
			l.About = "terminations"
		} else {
			l.Abouts = append(l.Abouts, "end "+c.end.Mark)
		}
	}
	switch {
	case len(p.standards) > 0 && len(names) > 0:
		l.Title += ", TERMINATIONS"
	case len(p.standards) > 0 && l.About != "":
		l.Title = "DOUBLE CUT AND TERMINATIONS"
	case len(p.standards) > 0:
		l.Title = "TERMINATIONS"
	}
	l.Draw = func(b *folio.Board) {
		var boxes []scene.Box
		for i, c := range p.corners {
			cornerIn(b, c, i+1)
			boxes = append(boxes, c.box)
		}
		for _, c := range p.standards {
			c.draw(b)
			boxes = append(boxes, c.box)
		}
		grid(b, boxes)
	}
	return l
}

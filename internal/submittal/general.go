package submittal

import (
	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
)

// generalPages are those with numbers from 001 on: the cover with the room unrolled over the first lists, then what the lists and the
// notes of the site take besides.
func generalPages(s *folio.Set) []*folio.Leaf {
	lists := func() []folio.Block { return generalBlocks(s) }
	r := newRibbon(s, lists)
	c, blocks := generalColumns(s, r), func() []folio.Block { return r.blocks(lists()) }
	list := s.Flowed("", "", c, blocks, putChart)
	for i, parts := range folio.Flow(s.Look, blocks(), c) {
		nameGeneral(list[i], blocks(), len(blocks())-len(lists()), len(coverBlocks(s)), parts)
	}
	for _, l := range list {
		l.Listed = true
	}
	first := list[0]
	under := first.Draw
	if r.alone {
		first, under = &folio.Leaf{Wall: -1}, func(*folio.Board) {}
		list = append([]*folio.Leaf{first}, list...)
	}
	first.Listed = false
	title := folio.Cover
	if s.Paper.Room != "" { // the set of a job has one cover, over all its rooms
		title = "ROOM " + s.Paper.Room
	}
	first.Title, first.About, first.Scale = title, "cover", draft.Ratio(r.scale, s.Metric())
	first.Draw = func(b *folio.Board) {
		under(b)
		r := newRibbon(b.Set, lists) // now that all pages are known
		r.heading(b)
		r.draw(b, r.box.Y0+r.headHigh())
	}
	return list
}

// generalBlocks are all lists of these pages.
func generalBlocks(s *folio.Set) []folio.Block { return append(coverBlocks(s), siteBlocks(s)...) }

// generalColumns are the columns that they flow into, under heading and ribbon.
func generalColumns(s *folio.Set, r *ribbon) folio.Columns {
	c, band := s.NoteColumns(), s.ListBand()
	c.Box.Y1 += band
	if !r.alone { // the first page is the cover, which has its reviews
		c.Foot = band
	}
	switch {
	case r.column:
		c.Head = r.headHigh()
	case !r.alone:
		c.Head = r.headHigh() + r.high
	}
	return c
}

// nameGeneral calls a page by the lists that stand on it: so many blocks are before the lists, so many of these are the cover's own.
func nameGeneral(l *folio.Leaf, blocks []folio.Block, before, own int, parts []folio.Placed) {
	notes, site := false, false
	for _, p := range parts {
		block := p.Block - before
		if block < own {
			notes = true
		} else {
			site = true
		}
		switch {
		case block == own && p.First == 0:
			l.Abouts = append(l.Abouts, "site")
		case blocks[p.Block].Table != nil && blocks[p.Block].Table.Title == revisionTitle && p.First == 0:
			l.Abouts = append(l.Abouts, folio.RevisionsKey)
		}
	}
	switch {
	case notes && site:
		l.Title = "NOTES AND SITE"
	case site:
		l.Title = "SITE"
	default:
		l.Title = "NOTES"
	}
}

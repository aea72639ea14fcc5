package submittal

import (
	"math"
	"slices"
	"strings"

	"flitchlay/internal/draft"
	"flitchlay/internal/elevation"
	"flitchlay/internal/face"
	"flitchlay/internal/folio"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// hole is an opening with the wall that it is in.
type hole struct {
	f     *face.Face
	index int
	o     *room.Opening
	short bool // of a wall that stands: broken off over and under it too
}

// cut reports whether an enlargement is broken off over and under its opening: of level bands, for nothing of them is as wide as it is
// high, and of what would be no larger else.
func (h hole) cut() bool { return h.f.Run.Up || h.short }

// holes are all openings of covered walls.
func holes(s *folio.Set) []hole {
	var list []hole
	for _, f := range s.Faces {
		for i := range f.W.Openings {
			list = append(list, hole{f: f, index: i, o: &f.W.Openings[i]})
		}
	}
	return list
}

// openingPages draw every opening large, with one sheet to each side and every distance from a seam to an edge, as many to a page as
// are larger there than on the elevation. One that would be no larger on a page of its own is left out: the elevation says as much.
// Where the covering wraps the reveal, whose folds are drawn nowhere else, it is broken off over and under the opening instead.
func openingPages(s *folio.Set) []*folio.Leaf {
	grids, cuts := openingGrids(s), elevation.CutWalls(s)
	in := make([][]hole, len(grids))
	for _, h := range holes(s) {
		grid := largerGrid(s, h, grids, cuts[h.f.Wall][0].Scale)
		if h.f.Wraps(h.index) && grid != 0 {
			short := h
			short.short = true
			if g := largerGrid(s, short, grids, cuts[h.f.Wall][0].Scale); grid < 0 || g >= 0 && g < grid {
				h, grid = short, g
			}
			if grid < 0 {
				grid = largest(s, h, grids)
			}
		}
		if grid >= 0 {
			in[grid] = append(in[grid], h)
		}
	}
	var pages []*folio.Leaf
	for grid, list := range in {
		if len(list) == 0 {
			continue
		}
		count := (len(list) + len(grids[grid]) - 1) / len(grids[grid]) // pages, filled alike
		for part := range slices.Chunk(list, (len(list)+count-1)/count) {
			pages = append(pages, openingPage(s, part, grids[grid]))
		}
	}
	return pages
}

// largerGrid is the grid with the most cells in which an opening is drawn larger than at a scale; -1 where there is none.
func largerGrid(s *folio.Set, h hole, grids [][]scene.Box, scale int64) int {
	return slices.IndexFunc(grids, func(cells []scene.Box) bool { return enlarged(s, h, cells[0]) < scale })
}

// largest is the grid in whose cells an opening is drawn largest, of several the one with the most cells.
func largest(s *folio.Set, h hole, grids [][]scene.Box) int {
	best := 0
	for i := range grids {
		if enlarged(s, h, grids[i][0]) < enlarged(s, h, grids[best][0]) {
			best = i
		}
	}
	return best
}

// openingPage is the page of some openings, in cells of which there may be more than openings.
func openingPage(s *folio.Set, part []hole, cells []scene.Box) *folio.Leaf {
	names := make([]string, len(part))
	l := &folio.Leaf{Wall: part[0].f.Wall}
	for i, h := range part {
		names[i] = h.o.Name
		l.Abouts = append(l.Abouts, elevation.OpeningKey(h.f.Wall, h.index))
		if h.f.Wall != l.Wall {
			l.Wall = -1
		}
	}
	l.Title = "OPENINGS "
	if len(part) == 1 {
		l.Title = "OPENING "
	}
	l.Title += strings.Join(names, ", ")
	if len(part) < len(cells) && cells[0].Y0 == cells[len(cells)-1].Y0 { // one row: those that are there share its width
		cells = openingColumns(s, len(part))
	}
	l.Draw = func(b *folio.Board) {
		floor := map[int64]float64{} // one line for all of the page that are at one scale
		for i, h := range part {
			e, room, foot, _, _ := openingView(elevation.Scratch(b.Set), cells[i], h)
			scaleOpening(e, h, room, foot)
			if cells[i].Y0 == cells[0].Y0 {
				floor[e.V.Scale] = math.Max(floor[e.V.Scale], e.V.Origin.Y)
			}
		}
		for i, h := range part {
			row := map[int64]float64{}
			if cells[i].Y0 == cells[0].Y0 {
				row = floor
			}
			openingIn(b, cells[i], h, i+1, row)
		}
	}
	return l
}

// openingColumns parts a page into so many columns as high as it.
func openingColumns(s *folio.Set, n int) []scene.Box {
	return s.Cells(s.Paper.Field.W/s.Look.Of(1)/float64(n), 1e4)
}

// openingGrids are the ways in which a page is parted into cells, the most cells first: those of the usual size, then fewer and fewer
// columns as high as the page.
func openingGrids(s *folio.Set) [][]scene.Box {
	grids := [][]scene.Box{s.Cells(190, 205)}
	columns := 0
	for _, c := range grids[0] {
		if c.Y0 == grids[0][0].Y0 {
			columns++
		}
	}
	if columns == len(grids[0]) {
		columns--
	}
	for ; columns > 0; columns-- {
		grids = append(grids, openingColumns(s, columns))
	}
	return grids
}

// enlarged is the scale at which an opening is drawn in a cell.
func enlarged(s *folio.Set, h hole, cell scene.Box) int64 {
	e, room, foot, _, _ := openingView(elevation.Scratch(s), cell, h)
	if !scaleOpening(e, h, room, foot) {
		return math.MaxInt64
	}
	return e.V.Scale
}

// openingView is the view of an opening in a cell before it has a scale, the room for it, the height of its foot, and the table of
// cut-outs, which may stand beside title and bar.
func openingView(b *folio.Board, cell scene.Box, h hole) (e *elevation.View, room scene.Box, foot float64, table *draft.Table, beside bool) {
	k := b.Look
	e = &elevation.View{Board: b, F: h.f, Of: 1, Detail: true}
	e.From, e.To = h.reach(b.Room.NetWidth())
	f := *h.f
	f.Low, f.High = (&face.Piece{Face: h.f, From: e.From, To: e.To}).Extremes() // the wall may be higher elsewhere
	if h.cut() {
		_, z0, _, z1 := f.Hole(h.o)
		f.Low, f.High = max(f.Low, z0-b.Room.NetWidth().HalfDown()), min(f.High, z1+b.Room.NetWidth().HalfDown())
	}
	e.F = &f
	table = holeTable(e, h)
	table.Fit(k, 0)
	room = scene.Box{X0: cell.X0 + k.Of(6), Y0: cell.Y0 + k.Of(6), X1: cell.X1 - k.Of(6), Y1: cell.Y1 - k.Of(5)}
	beside = room.W() > k.Of(titleWide)+table.Width()+k.Of(6)
	title := openingTitle(e, h, 1, room, table, beside)
	lines := title.Low(k) - k.Of(8.5) + title.High(k) - k.Of(7) // more than two under one of the usual height
	foot = math.Max(k.Of(26)+lines, table.High(k))
	if !beside {
		foot = k.Of(30) + lines + table.High(k)
	}
	return e, room, foot, table, beside
}

// reach is what of the wall an enlargement shows: the opening and one sheet to each side, of level bands as much as one is wide.
func (h hole) reach(wide L) (from, to L) {
	from, to = h.f.Left, h.f.Right
	if h.f.Run.Up {
		return max(from, h.o.FromLeft-wide), min(to, h.o.Right()+wide)
	}
	for _, p := range h.f.Parts {
		if p.To <= h.o.FromLeft {
			from = p.From
		} else if p.From <= h.o.FromLeft && p.To > h.o.FromLeft {
			from = max(from, p.From)
		}
	}
	for i := len(h.f.Parts) - 1; i >= 0; i-- {
		p := h.f.Parts[i]
		if p.From >= h.o.Right() {
			to = p.To
		} else if p.To >= h.o.Right() && p.From < h.o.Right() {
			to = min(to, p.To)
		}
	}
	// the sheets that hold the edges, and a little of the next ones
	for _, p := range h.f.Parts {
		if p.From < h.o.FromLeft && h.o.FromLeft <= p.To {
			from = max(h.f.Left, p.From-(p.To-p.From)/3)
		}
		if p.From <= h.o.Right() && h.o.Right() < p.To {
			to = min(h.f.Right, p.To+(p.To-p.From)/3)
		}
	}
	return from, to
}

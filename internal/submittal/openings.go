package submittal

import (
	"fmt"
	"math"
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
}

// holes are all openings of covered walls.
func holes(s *folio.Set) []hole {
	var list []hole
	for _, f := range face.All(s.Plan) {
		if f.Run.Up {
			continue
		}
		for i := range f.W.Openings {
			list = append(list, hole{f, i, &f.W.Openings[i]})
		}
	}
	return list
}

// openingPages draw every opening large, with one sheet to each side and every distance from a seam to an edge. One that would be no
// larger on a page of its own than on the elevation is left out: the elevation says as much, unless the covering wraps the reveal, whose folds are drawn nowhere else.
func openingPages(s *folio.Set) []*folio.Leaf {
	cells, whole := s.Cells(190, 205), s.Cells(1e4, 1e4)
	cuts := elevation.CutWalls(s)
	var parts [][]hole
	var row []hole
	for _, h := range holes(s) {
		drawn := cuts[h.f.Wall][0].Scale
		switch {
		case h.f.Wraps(h.index), enlarged(s, h, cells[0]) < drawn:
			if row = append(row, h); len(row) == len(cells) {
				parts, row = append(parts, row), nil
			}
		case len(cells) > 1 && enlarged(s, h, whole[0]) < drawn:
			parts = append(parts, []hole{h})
		}
	}
	if len(row) > 0 {
		parts = append(parts, row)
	}
	var pages []*folio.Leaf
	for _, part := range parts {
		names := make([]string, len(part))
		l := &folio.Leaf{Wall: part[0].f.Wall}
		for i, h := range part {
			names[i] = h.o.Name
			l.Abouts = append(l.Abouts, elevation.OpeningKey(h.f.Wall, h.index))
			if h.f.Wall != l.Wall {
				l.Wall = -1
			}
		}
		l.Title = "OPENINGS " + strings.Join(names, ", ")
		room := cells
		if len(part) == 1 {
			room = whole
		}
		l.Draw = func(b *folio.Board) {
			for i, h := range part {
				openingIn(b, room[i], h, i+1)
			}
		}
		pages = append(pages, l)
	}
	return pages
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
	e.From, e.To = h.reach()
	table = holeTable(e, h)
	table.Fit(k, 0)
	room = scene.Box{X0: cell.X0 + k.Of(6), Y0: cell.Y0 + k.Of(6), X1: cell.X1 - k.Of(6), Y1: cell.Y1 - k.Of(5)}
	beside = room.W() > k.Of(titleWide)+table.Width()+k.Of(6)
	lines := k.Of(5) * float64(len(wrapWords(e, h)))
	foot = math.Max(k.Of(26)+lines, table.High(k))
	if !beside {
		foot = k.Of(30) + lines + table.High(k)
	}
	return e, room, foot, table, beside
}

// reach is what of the wall an enlargement shows: the opening and one sheet to each side.
func (h hole) reach() (from, to L) {
	from, to = h.f.Left, h.f.Right
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

// titleWide is the least that the title of an enlargement has beside its table, on the office page.
const titleWide = 66

// openingIn draws one opening in a cell: the view with its dimensions, under it title and bar, and beside them the table
// of cut-outs.
func openingIn(b *folio.Board, cell scene.Box, h hole, n int) {
	k := b.Look
	e, room, foot, table, beside := openingView(b, cell, h)
	more := wrapWords(e, h)
	scaleOpening(e, h, room, foot)

	name := strings.ToUpper(h.o.Kind.Named(h.o.Name))
	view := scene.View{Box: e.Box().Inset(-k.Of(1)), Scale: float64(e.V.Scale), Metric: e.Metric(), Name: name, Ratio: draft.Ratio(e.V.Scale, e.Metric())}
	e.Group = b.Page.Viewed(view, folio.Datum("scale", fmt.Sprint(e.V.Scale)), folio.Datum("wall", h.f.W.Name), folio.Datum("opening", h.o.Name))
	e.Body()
	reveal(e, h)
	above, right := holeStacks(e, h)
	above.Draw(e.Group, k, b.Space)
	right.Draw(e.Group, k, b.Space)
	levelLine(e, h)

	under := []string{"SCALE " + draft.Ratio(e.V.Scale, e.Metric()), "wall " + h.f.W.Name + ", page " + e.PageAt(h.f.Wall, (h.o.FromLeft+h.o.Right())/2)}
	title := draft.Title{Mark: fmt.Sprint(n), Page: b.Leaf.Number, Name: name, Under: append(under, more...), Most: room.W() - table.Width() - k.Of(6)}
	if !beside {
		title.Most = room.W()
	}
	openingFoot(e, room, foot, title, table, beside)
	e.OpeningNames()
	e.Numbers()
	e.SeamMarks()
	e.PlateNames()
	if cell.X0 > b.Field.X0+1 {
		b.Page.VLine(cell.X0, cell.Y0+k.Of(4), cell.Y1-k.Of(4), scene.Pen(scene.Frame, k.Extension))
	}
}

// The scales of an enlargement, the largest first, in an inch room and in a metric one.
//
// Source: scales of a US architect's rule; ISO 5455:1979 clause 5.1.
var (
	openingScales       = []int64{12, 16, 24, 32, 48, 64, 96, 128}
	openingScalesMetric = []int64{10, 20, 50, 100, 200}
)

// scaleOpening puts the view into the room that its foot leaves: at the largest scale at which it stands there with all
// its dimensions, a little down where there is much room, else at the smallest.
//
// Shape: false where it stands at none.
func scaleOpening(e *elevation.View, h hole, room scene.Box, foot float64) bool {
	k := e.Look
	scales := openingScales
	if e.Metric() {
		scales = openingScalesMetric
	}
	label := k.Of(4) + scene.Width("level "+e.Style.Format(e.Room.Space.LevelLine), k.Small, false)
	for _, scale := range scales {
		e.V.Scale = scale
		e.V.Origin = scene.Pt(0, 0)
		above, right := holeStacks(e, h)
		all := e.Box().Union(above.Box(k)).Union(right.Box(k))
		all.X0 = math.Min(all.X0, e.Box().X0-label)
		all.Y1 += k.Of(3)
		e.V.Origin = scene.Pt(room.Centre().X-(all.X0+all.X1)/2, room.Y0-all.Y0)
		if all.W() <= room.W() && all.H() <= room.H()-foot-k.Of(6) {
			e.V.Origin.Y += math.Min(k.Of(12), (room.H()-foot-k.Of(6)-all.H())/2)
			return true
		}
	}
	return false
}

// openingFoot draws title and bar under an enlargement, and the table of cut-outs beside them or under them.
func openingFoot(e *elevation.View, room scene.Box, foot float64, title draft.Title, table *draft.Table, beside bool) {
	k, g := e.Look, &e.Page.Group
	at := scene.Pt(room.X0, math.Min(e.Box().Y1+k.Of(14), room.Y1-foot+k.Of(7)))
	tb := title.Draw(g, k, at)
	bar := draft.Bar{Scale: e.V.Scale, Metric: e.Metric()}
	bb := bar.Draw(g, k, scene.Pt(at.X+k.Of(17), tb.Y1+k.Of(8)), k.Of(42))
	tableAt := scene.Pt(room.X1-table.Width(), at.Y-k.Of(7))
	if !beside {
		tableAt = scene.Pt(room.X0, bb.Y1+k.Of(4))
	}
	_, taken := table.Draw(g, k, tableAt, 0, room.Y1-tableAt.Y)
	e.Space.Take(tb, bb, taken)
}

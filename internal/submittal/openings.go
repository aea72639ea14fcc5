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

// openingPages draw every opening large, with one sheet to each side and every distance from a seam to an edge.
func openingPages(s *folio.Set) []*folio.Leaf {
	cells := s.Cells(190, 205)
	list := holes(s)
	var pages []*folio.Leaf
	for first := 0; first < len(list); first += len(cells) {
		part := list[first:min(first+len(cells), len(list))]
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
			room = s.Cells(1e4, 1e4)
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

// openingIn draws one opening in a cell: the view with its dimensions, under it title and bar, and beside them the table
// of cut-outs.
func openingIn(b *folio.Board, cell scene.Box, h hole, n int) {
	k := b.Look
	e := &elevation.View{Board: b, F: h.f, Of: 1, Detail: true}
	e.From, e.To = h.reach()
	table := holeTable(e, h)
	table.Fit(k, 0)
	const titleWide = 66
	room := scene.Box{X0: cell.X0 + k.Of(6), Y0: cell.Y0 + k.Of(6), X1: cell.X1 - k.Of(6), Y1: cell.Y1 - k.Of(5)}
	beside := room.W() > k.Of(titleWide)+table.Width()+k.Of(6)
	foot := math.Max(k.Of(26), table.High(k))
	if !beside {
		foot = k.Of(30) + table.High(k)
	}
	scales := []int64{12, 16, 24, 32, 48, 64, 96, 128}
	if e.Metric() {
		scales = []int64{10, 20, 50, 100, 200}
	}
	label := k.Of(4) + scene.Width("level "+e.Style.Format(e.Room.Space.LevelLine), k.Small, false)
	var above, right draft.Stack
	for _, scale := range scales {
		e.V.Scale = scale
		e.V.Origin = scene.Pt(0, 0)
		above, right = holeStacks(e, h)
		all := e.Box().Union(above.Box(k)).Union(right.Box(k))
		all.X0 = math.Min(all.X0, e.Box().X0-label)
		all.Y1 += k.Of(3)
		e.V.Origin = scene.Pt(room.Centre().X-(all.X0+all.X1)/2, room.Y0-all.Y0)
		if all.W() <= room.W() && all.H() <= room.H()-foot-k.Of(6) {
			e.V.Origin.Y += math.Min(k.Of(12), (room.H()-foot-k.Of(6)-all.H())/2)
			break
		}
	}
	above, right = holeStacks(e, h)

	name := strings.ToUpper(h.o.Kind.Named(h.o.Name))
	view := scene.View{Box: e.Box().Inset(-k.Of(1)), Scale: float64(e.V.Scale), Metric: e.Metric(), Name: name, Ratio: draft.Ratio(e.V.Scale, e.Metric())}
	e.Group = b.Page.Viewed(view, folio.Datum("scale", fmt.Sprint(e.V.Scale)), folio.Datum("wall", h.f.W.Name), folio.Datum("opening", h.o.Name))
	e.Body()
	reveal(e, h.o)
	above.Draw(e.Group, k, b.Space)
	right.Draw(e.Group, k, b.Space)
	levelLine(e, h)

	at := scene.Pt(room.X0, math.Min(e.Box().Y1+k.Of(14), room.Y1-foot+k.Of(7)))
	under := []string{"SCALE " + draft.Ratio(e.V.Scale, e.Metric()), "wall " + h.f.W.Name + ", page " + e.PageOf(folio.WallKey(h.f.Wall))}
	t := draft.Title{Mark: fmt.Sprint(n), Page: b.Leaf.Number, Name: name, Under: under, Most: k.Of(titleWide)}
	if !beside {
		t.Most = room.W()
	}
	tb := t.Draw(&b.Page.Group, k, at)
	b.Space.Take(tb)
	bar := draft.Bar{Scale: e.V.Scale, Metric: e.Metric()}
	bb := bar.Draw(&b.Page.Group, k, scene.Pt(at.X+k.Of(17), tb.Y1+k.Of(8)), k.Of(42))
	b.Space.Take(bb)
	tableAt := scene.Pt(room.X1-table.Width(), at.Y-k.Of(7))
	if !beside {
		tableAt = scene.Pt(room.X0, bb.Y1+k.Of(4))
	}
	_, taken := table.Draw(&b.Page.Group, k, tableAt, 0, room.Y1-tableAt.Y)
	b.Space.Take(taken)
	e.OpeningNames()
	e.Numbers()
	e.SeamMarks()
	e.PlateNames()
	if cell.X0 > b.Field.X0+1 {
		b.Page.VLine(cell.X0, cell.Y0+k.Of(4), cell.Y1-k.Of(4), scene.Pen(scene.Frame, k.Extension))
	}
}

// holeStacks are the dimensions over and beside an enlargement.
func holeStacks(e *elevation.View, h hole) (above, right draft.Stack) {
	k := e.Look
	above = draft.Stack{Edge: e.Box().Y0, Out: -1, Outline: e.Roof, Tiers: edgeTiers(e, h)}
	right = draft.Stack{Upright: true, Edge: e.Box().X1, Out: 1, First: k.Of(10), Tiers: holeHeights(e, h)}
	for i := range above.Tiers {
		above.Tiers[i].Name = "" // the running figures show by their circle where they start
	}
	if !e.Last() {
		right.Edge += k.Of(3)
	}
	return above, right
}

// edgeTiers are the distances along the wall: between neighbours of seams and edges, and from the left edge to every seam
// over the opening and on to the right edge.
func edgeTiers(e *elevation.View, h hole) []draft.Tier {
	all, run := []L{h.o.FromLeft, h.o.Right()}, []L{h.o.FromLeft}
	for _, s := range e.F.Seams {
		if s.X < e.From || s.X > e.To {
			continue
		}
		all = append(all, s.X)
		if s.X > h.o.FromLeft && s.X < h.o.Right() {
			run = append(run, s.X)
		}
	}
	for _, r := range e.F.RawEnds() {
		if r.X >= e.From && r.X <= e.To {
			all = append(all, r.X)
		}
	}
	tiers := []draft.Tier{e.Tier("seams and edges", all, e.V.X)}
	run = append(run, h.o.Right())
	t := draft.Tier{Running: true}
	for i, x := range run {
		t.Marks = append(t.Marks, e.V.X(x))
		text := ""
		if i > 0 {
			text = e.Style.Format(x - h.o.FromLeft)
		}
		t.Figures = append(t.Figures, text)
	}
	t.Data = func(i int) []scene.Datum {
		return []scene.Datum{folio.Datum("tier", "from left edge"), folio.Datum("from", folio.Mm(run[0])), folio.Datum("to", folio.Mm(run[i]))}
	}
	return append(tiers, t)
}

// holeHeights are the heights at the opening: floor, base, sill, head, upper edge of the covering, ceiling.
func holeHeights(e *elevation.View, h hole) []draft.Tier {
	mid := (h.o.FromLeft + h.o.Right()) / 2
	floor, ceiling := room.At(e.F.W.Floor, mid), room.At(e.F.W.Ceiling, mid)
	_, z0, _, z1 := e.F.Hole(h.o)
	list := []L{floor, ceiling, max(z0, floor), min(z1, ceiling)}
	if h.o.SillGiven {
		list = append(list, floor+e.F.W.Base)
	}
	list = append(list, ceiling-e.F.W.Crown)
	tiers := []draft.Tier{e.Tier("", list, e.V.Y)}
	if level := e.Room.Space.LevelLine; level > floor && level < ceiling {
		tiers = append(tiers, e.Tier("", []L{z0, z1, level}, e.V.Y))
	}
	return tiers
}

// levelLine draws the line to which the crew hangs the level marks.
func levelLine(e *elevation.View, h hole) {
	k := e.Look
	level := e.Room.Space.LevelLine
	if level <= e.F.Low || level >= e.F.High {
		return
	}
	y := e.V.Y(level)
	a, b := scene.Pt(e.Box().X0-k.Of(4), y), scene.Pt(e.Box().X1, y)
	box := e.V.Box(e.F.Hole(h.o))
	for _, part := range pairsOf(draft.Outside(a, b, box)) {
		e.Group.Line(part[0], part[1], scene.Pen(scene.Plumb, k.Dimension).As(scene.Chain(k.Dimension)))
		e.Space.Stroke(part[0], part[1])
	}
	t := scene.Text{At: a.Add(-k.Of(1.2), 0), String: "level " + e.Style.Format(level), Height: k.Small, Anchor: scene.End, Seat: scene.Centred, Layer: scene.Plumb}
	if t.Bounds().X0 < e.Field.X0+k.Of(2) {
		t.At, t.Angle, t.Anchor = a.Add(-k.Of(2.4), 0), 90, scene.Middle
	}
	e.Group.Text(t)
	e.Space.Take(t.Bounds())
}

func pairsOf(points []scene.Point) [][2]scene.Point {
	var list [][2]scene.Point
	for i := 0; i+1 < len(points); i += 2 {
		list = append(list, [2]scene.Point{points[i], points[i+1]})
	}
	return list
}

// reveal draws the reveals unfolded at their jambs, dashed at the fold's depth.
func reveal(e *elevation.View, o *room.Opening) {
	k := e.Look
	if o.Reveal == 0 {
		return
	}
	box := e.V.Box(e.F.Hole(o))
	d := e.V.MM(o.Reveal)
	if 2*d > box.W()-k.Of(16) {
		return
	}
	words := "reveal " + e.Style.Format(o.Reveal)
	if o.WrapReveal {
		words = "jamb wrapped " + e.Style.Format(o.Reveal)
	}
	pen := scene.Pen(scene.Openings, k.Thin).As(scene.Dashed(k.Thin))
	for i, x := range []float64{box.X0 + d, box.X1 - d} {
		e.Group.VLine(x, box.Y0, box.Y1, pen)
		e.Space.Stroke(scene.Pt(x, box.Y0), scene.Pt(x, box.Y1))
		t := scene.Text{At: scene.Pt(x+k.Of(1.4)+k.Small, box.Centre().Y), String: words, Height: k.Small, Anchor: scene.Middle, Angle: 90, Layer: scene.Openings}
		if i == 1 {
			t.At.X = x - k.Of(1.4)
		}
		if box.H() > t.Width()+k.Of(4) && e.Space.Free(t.Bounds(), k.Of(0.7)) {
			e.Group.Text(t)
			e.Space.Take(t.Bounds())
		}
	}
}

// holeTable says for every sheet that the opening cuts where the cut-out lies on it: along from its raw left edge, and
// up and down from its level mark.
func holeTable(e *elevation.View, h hole) *draft.Table {
	t := &draft.Table{Columns: []draft.Column{{Head: "SHEET", Bold: true, Align: scene.End}, {Head: "CUT-OUT, FROM RAW LEFT"}, {Head: "FROM LEVEL"}}}
	_, z0, _, z1 := e.F.Hole(h.o)
	level := e.Room.Space.LevelLine
	for _, p := range e.F.Parts {
		for _, s := range p.Sheets {
			a, b := p.Raw(s)
			if b <= h.o.FromLeft || a >= h.o.Right() {
				continue
			}
			along := "left edge to "
			if h.o.FromLeft > a {
				along = e.Style.Format(h.o.FromLeft-a) + " to "
			}
			if h.o.Right() < b {
				along += e.Style.Format(h.o.Right() - a)
			} else {
				along += "right edge"
			}
			up := "foot"
			if h.o.SillGiven {
				up = upDown(e.Set, z0-level)
			}
			t.Rows = append(t.Rows, draft.Row{Cells: []string{elevation.NumberOf(s), along, up + " to " + upDown(e.Set, z1-level)}})
		}
	}
	return t
}

// upDown is a height from the level line: up 3'-0", down 1'-4".
func upDown(s *folio.Set, z L) string {
	if z < 0 {
		return "down " + s.Style.Format(-z)
	}
	return "up " + s.Style.Format(z)
}

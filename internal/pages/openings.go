package pages

import (
	"fmt"
	"math"
	"strings"

	"flitchlay/internal/draft"
	"flitchlay/internal/layout"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// hole is an opening with the wall that it is in.
type hole struct {
	f     *face
	index int
	o     *room.Opening
}

// holes are all openings of covered walls.
func (s *set) holes() []hole {
	var list []hole
	for _, f := range facesOf(s.plan) {
		if f.run.Up {
			continue
		}
		for i := range f.w.Openings {
			list = append(list, hole{f, i, &f.w.Openings[i]})
		}
	}
	return list
}

// openingPages draw every opening large, with one sheet to each side and every distance from a seam to an edge.
func openingPages(s *set) []*leaf {
	cells := s.cells(190, 205)
	list := s.holes()
	var pages []*leaf
	for first := 0; first < len(list); first += len(cells) {
		part := list[first:min(first+len(cells), len(list))]
		names := make([]string, len(part))
		l := &leaf{wall: part[0].f.wall}
		for i, h := range part {
			names[i] = h.o.Name
			l.abouts = append(l.abouts, openingKey(h.f.wall, h.index))
			if h.f.wall != l.wall {
				l.wall = -1
			}
		}
		l.title = "OPENINGS " + strings.Join(names, ", ")
		room := cells
		if len(part) == 1 {
			room = s.cells(1e4, 1e4)
		}
		l.draw = func(b *board) {
			for i, h := range part {
				b.openingIn(room[i], h, i+1)
			}
		}
		pages = append(pages, l)
	}
	return pages
}

// cells divides the field into cells of about a size, at least one.
func (s *set) cells(wide, high float64) []scene.Box {
	k, f := s.look, boxOf(s.paper.Field)
	top := f.Y0
	if s.unfit() {
		top += k.Of(15)
	}
	cols := max(1, int(f.W()/k.Of(wide)+0.06))
	rows := max(1, int((f.Y1-top)/k.Of(high)+0.06))
	var list []scene.Box
	for r := range rows {
		for c := range cols {
			list = append(list, scene.BoxAt(f.X0+f.W()*float64(c)/float64(cols), top+(f.Y1-top)*float64(r)/float64(rows), f.W()/float64(cols), (f.Y1-top)/float64(rows)))
		}
	}
	return list
}

// reach is what of the wall an enlargement shows: the opening and one sheet to each side.
func (h hole) reach() (from, to L) {
	from, to = h.f.left, h.f.right
	for _, p := range h.f.parts {
		if p.to <= h.o.FromLeft {
			from = p.from
		} else if p.from <= h.o.FromLeft && p.to > h.o.FromLeft {
			from = max(from, p.from)
		}
	}
	for i := len(h.f.parts) - 1; i >= 0; i-- {
		p := h.f.parts[i]
		if p.from >= h.o.Right() {
			to = p.to
		} else if p.to >= h.o.Right() && p.from < h.o.Right() {
			to = min(to, p.to)
		}
	}
	// the sheets that hold the edges, and a little of the next ones
	for _, p := range h.f.parts {
		if p.from < h.o.FromLeft && h.o.FromLeft <= p.to {
			from = max(h.f.left, p.from-(p.to-p.from)/3)
		}
		if p.from <= h.o.Right() && h.o.Right() < p.to {
			to = min(h.f.right, p.to+(p.to-p.from)/3)
		}
	}
	return from, to
}

// openingIn draws one opening in a cell: the view with its dimensions, under it title and bar, and beside them the table
// of cut-outs.
func (b *board) openingIn(cell scene.Box, h hole, n int) {
	k := b.look
	e := &elevation{board: b, f: h.f, of: 1, detail: true}
	e.from, e.to = h.reach()
	table := e.holeTable(h)
	table.Fit(k, 0)
	const titleWide = 66
	room := scene.Box{X0: cell.X0 + k.Of(6), Y0: cell.Y0 + k.Of(6), X1: cell.X1 - k.Of(6), Y1: cell.Y1 - k.Of(5)}
	beside := room.W() > k.Of(titleWide)+table.Width()+k.Of(6)
	foot := math.Max(k.Of(26), table.High(k))
	if !beside {
		foot = k.Of(30) + table.High(k)
	}
	scales := []int64{12, 16, 24, 32, 48, 64, 96, 128}
	if e.metric() {
		scales = []int64{10, 20, 50, 100, 200}
	}
	label := k.Of(4) + scene.Width("level "+e.style.Format(e.room.Space.LevelLine), k.Small, false)
	var above, right draft.Stack
	for _, scale := range scales {
		e.v.Scale = scale
		e.v.Origin = scene.Pt(0, 0)
		above, right = e.holeStacks(h)
		all := e.box().Union(above.Box(k)).Union(right.Box(k))
		all.X0 = math.Min(all.X0, e.box().X0-label)
		all.Y1 += k.Of(3)
		e.v.Origin = scene.Pt(room.Centre().X-(all.X0+all.X1)/2, room.Y0-all.Y0)
		if all.W() <= room.W() && all.H() <= room.H()-foot-k.Of(6) {
			e.v.Origin.Y += math.Min(k.Of(12), (room.H()-foot-k.Of(6)-all.H())/2)
			break
		}
	}
	above, right = e.holeStacks(h)

	name := strings.ToUpper(h.o.Kind + " " + h.o.Name)
	view := scene.View{Box: e.box().Inset(-k.Of(1)), Scale: float64(e.v.Scale), Metric: e.metric(), Name: name, Ratio: draft.Ratio(e.v.Scale, e.metric())}
	e.group = b.page.Viewed(view, datum("scale", fmt.Sprint(e.v.Scale)), datum("wall", h.f.w.Name), datum("opening", h.o.Name))
	e.body()
	e.reveal(h.o)
	above.Draw(e.group, k, b.space)
	right.Draw(e.group, k, b.space)
	e.levelLine(h)

	at := scene.Pt(room.X0, math.Min(e.box().Y1+k.Of(14), room.Y1-foot+k.Of(7)))
	under := []string{"SCALE " + draft.Ratio(e.v.Scale, e.metric()), "wall " + h.f.w.Name + ", page " + e.pageOf(wallKey(h.f.wall))}
	t := draft.Title{Mark: fmt.Sprint(n), Page: b.leaf.number, Name: name, Under: under, Most: k.Of(titleWide)}
	if !beside {
		t.Most = room.W()
	}
	tb := t.Draw(&b.page.Group, k, at)
	b.space.Take(tb)
	bar := draft.Bar{Scale: e.v.Scale, Metric: e.metric()}
	bb := bar.Draw(&b.page.Group, k, scene.Pt(at.X+k.Of(17), tb.Y1+k.Of(8)), k.Of(42))
	b.space.Take(bb)
	tableAt := scene.Pt(room.X1-table.Width(), at.Y-k.Of(7))
	if !beside {
		tableAt = scene.Pt(room.X0, bb.Y1+k.Of(4))
	}
	_, taken := table.Draw(&b.page.Group, k, tableAt, 0, room.Y1-tableAt.Y)
	b.space.Take(taken)
	e.openingNames()
	e.numbers()
	e.seamMarks()
	e.plateNames()
	if cell.X0 > b.field.X0+1 {
		b.page.VLine(cell.X0, cell.Y0+k.Of(4), cell.Y1-k.Of(4), scene.Pen(scene.Frame, k.Extension))
	}
}

// holeStacks are the dimensions over and beside an enlargement.
func (e *elevation) holeStacks(h hole) (above, right draft.Stack) {
	k := e.look
	above = draft.Stack{Edge: e.box().Y0, Out: -1, Outline: e.roof, Tiers: e.edgeTiers(h)}
	right = draft.Stack{Upright: true, Edge: e.box().X1, Out: 1, First: k.Of(10), Tiers: e.holeHeights(h)}
	for i := range above.Tiers {
		above.Tiers[i].Name = "" // the running figures show by their circle where they start
	}
	if !e.last() {
		right.Edge += k.Of(3)
	}
	return above, right
}

// edgeTiers are the distances along the wall: between neighbours of seams and edges, and from the left edge to every seam
// over the opening and on to the right edge.
func (e *elevation) edgeTiers(h hole) []draft.Tier {
	all, run := []L{h.o.FromLeft, h.o.Right()}, []L{h.o.FromLeft}
	for _, s := range e.f.seams {
		if s.X < e.from || s.X > e.to {
			continue
		}
		all = append(all, s.X)
		if s.X > h.o.FromLeft && s.X < h.o.Right() {
			run = append(run, s.X)
		}
	}
	for _, r := range e.f.rawEnds() {
		if r.x >= e.from && r.x <= e.to {
			all = append(all, r.x)
		}
	}
	tiers := []draft.Tier{e.tier("seams and edges", all, e.v.X)}
	run = append(run, h.o.Right())
	t := draft.Tier{Running: true}
	for i, x := range run {
		t.Marks = append(t.Marks, e.v.X(x))
		text := ""
		if i > 0 {
			text = e.style.Format(x - h.o.FromLeft)
		}
		t.Figures = append(t.Figures, text)
	}
	t.Data = func(i int) []scene.Datum {
		return []scene.Datum{datum("tier", "from left edge"), datum("from", mm(run[0])), datum("to", mm(run[i]))}
	}
	return append(tiers, t)
}

// holeHeights are the heights at the opening: floor, base, sill, head, upper edge of the covering, ceiling.
func (e *elevation) holeHeights(h hole) []draft.Tier {
	mid := (h.o.FromLeft + h.o.Right()) / 2
	floor, ceiling := room.At(e.f.w.Floor, mid), room.At(e.f.w.Ceiling, mid)
	_, z0, _, z1 := e.f.hole(h.o)
	list := []L{floor, ceiling, max(z0, floor), min(z1, ceiling)}
	if h.o.SillGiven {
		list = append(list, floor+e.f.w.Base)
	}
	list = append(list, ceiling-e.f.w.Crown)
	tiers := []draft.Tier{e.tier("", list, e.v.Y)}
	if level := e.room.Space.LevelLine; level > floor && level < ceiling {
		tiers = append(tiers, e.tier("", []L{z0, z1, level}, e.v.Y))
	}
	return tiers
}

// levelLine draws the line to which the crew hangs the level marks.
func (e *elevation) levelLine(h hole) {
	k := e.look
	level := e.room.Space.LevelLine
	if level <= e.f.low || level >= e.f.high {
		return
	}
	y := e.v.Y(level)
	a, b := scene.Pt(e.box().X0-k.Of(4), y), scene.Pt(e.box().X1, y)
	box := e.v.Box(e.f.hole(h.o))
	for _, part := range pairsOf(draft.Outside(a, b, box)) {
		e.group.Line(part[0], part[1], scene.Pen(scene.Plumb, k.Dimension).As(scene.Chain(k.Dimension)))
		e.space.Stroke(part[0], part[1])
	}
	t := scene.Text{At: a.Add(-k.Of(1.2), 0), String: "level " + e.style.Format(level), Height: k.Small, Anchor: scene.End, Seat: scene.Centred, Layer: scene.Plumb}
	if t.Bounds().X0 < e.field.X0+k.Of(2) {
		t.At, t.Angle, t.Anchor = a.Add(-k.Of(2.4), 0), 90, scene.Middle
	}
	e.group.Text(t)
	e.space.Take(t.Bounds())
}

func pairsOf(points []scene.Point) [][2]scene.Point {
	var list [][2]scene.Point
	for i := 0; i+1 < len(points); i += 2 {
		list = append(list, [2]scene.Point{points[i], points[i+1]})
	}
	return list
}

// reveal draws the reveals unfolded at their jambs, dashed at the fold's depth.
func (e *elevation) reveal(o *room.Opening) {
	k := e.look
	if o.Reveal == 0 {
		return
	}
	box := e.v.Box(e.f.hole(o))
	d := e.v.MM(o.Reveal)
	if 2*d > box.W()-k.Of(16) {
		return
	}
	words := "reveal " + e.style.Format(o.Reveal)
	if o.WrapReveal {
		words = "jamb wrapped " + e.style.Format(o.Reveal)
	}
	pen := scene.Pen(scene.Openings, k.Thin).As(scene.Dashed(k.Thin))
	for i, x := range []float64{box.X0 + d, box.X1 - d} {
		e.group.VLine(x, box.Y0, box.Y1, pen)
		e.space.Stroke(scene.Pt(x, box.Y0), scene.Pt(x, box.Y1))
		t := scene.Text{At: scene.Pt(x+k.Of(1.4)+k.Small, box.Centre().Y), String: words, Height: k.Small, Anchor: scene.Middle, Angle: 90, Layer: scene.Openings}
		if i == 1 {
			t.At.X = x - k.Of(1.4)
		}
		if box.H() > t.Width()+k.Of(4) && e.space.Free(t.Bounds(), k.Of(0.7)) {
			e.group.Text(t)
			e.space.Take(t.Bounds())
		}
	}
}

// holeTable says for every sheet that the opening cuts where the cut-out lies on it: along from its raw left edge, and
// up and down from its level mark.
func (e *elevation) holeTable(h hole) *draft.Table {
	t := &draft.Table{Columns: []draft.Column{{Head: "SHEET", Bold: true, Align: scene.End}, {Head: "CUT-OUT, FROM RAW LEFT"}, {Head: "FROM LEVEL"}}}
	_, z0, _, z1 := e.f.hole(h.o)
	level := e.room.Space.LevelLine
	for _, p := range e.f.parts {
		for _, s := range p.sheets {
			a, b := e.raw(p, s)
			if b <= h.o.FromLeft || a >= h.o.Right() {
				continue
			}
			along := "left edge to "
			if h.o.FromLeft > a {
				along = e.style.Format(h.o.FromLeft-a) + " to "
			}
			if h.o.Right() < b {
				along += e.style.Format(h.o.Right() - a)
			} else {
				along += "right edge"
			}
			up := "foot"
			if h.o.SillGiven {
				up = upDown(e.set, z0-level)
			}
			t.Rows = append(t.Rows, draft.Row{Cells: []string{numberOf(s), along, up + " to " + upDown(e.set, z1-level)}})
		}
	}
	return t
}

// upDown is a height from the level line: up 3'-0", down 1'-4".
func upDown(s *set, z L) string {
	if z < 0 {
		return "down " + s.style.Format(-z)
	}
	return "up " + s.style.Format(z)
}

// raw are the raw edges of a sheet as hung, on this wall.
func (e *elevation) raw(p part, s *layout.Sheet) (left, right L) {
	left, right = s.StartLine-e.f.st.Shift, s.RightLine-e.f.st.Shift
	if e.f.run.Closed {
		for left > p.to {
			left, right = left-e.f.run.Length, right-e.f.run.Length
		}
		for right < p.from {
			left, right = left+e.f.run.Length, right+e.f.run.Length
		}
	}
	return left, right
}

package submittal

import (
	"fmt"
	"math"
	"strings"

	"flitchlay/internal/draft"
	"flitchlay/internal/elevation"
	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
)

// titleWide is the least that the title of an enlargement has beside its table, on the office page.
const titleWide = 66

// openingIn draws one opening in a cell: the view with its dimensions, under it title and bar, and beside them the table
// of cut-outs. Its floor is no higher than that of its scale, where there is room for that.
func openingIn(b *folio.Board, cell scene.Box, h hole, n int, floor map[int64]float64) {
	k := b.Look
	e, room, foot, table, beside := openingView(b, cell, h)
	scaleOpening(e, h, room, foot)
	if down := floor[e.V.Scale] - e.V.Origin.Y; down > 0 && e.Box().Y1+down+k.Of(9) <= room.Y1-foot {
		e.V.Origin.Y += down
	}

	name := strings.ToUpper(h.o.Kind.Named(h.o.Name))
	view := scene.View{Box: e.Box().Inset(-k.Of(1)), Scale: float64(e.V.Scale), Metric: e.Metric(), Name: name, Ratio: draft.Ratio(e.V.Scale, e.Metric())}
	e.Group = b.Page.Viewed(view, folio.Datum("scale", fmt.Sprint(e.V.Scale)), folio.Datum("wall", h.f.W.Name), folio.Datum("opening", h.o.Name))
	drawBody(e, h)
	reveal(e, h)
	above, right, _ := holeStacks(e, h)
	e.DrawBalloons()
	above.Draw(e.Group, k, b.Space)
	right.Draw(e.Group, k, b.Space)
	levelLine(e, h)

	title := openingTitle(e, h, n, room, table, beside)
	openingFoot(e, room, foot, math.Max(e.Box().Y1, right.Box(k).Y1-k.Of(4)), title, table, beside)
	inside := b.Space.Bounds
	if h.cut() { // no number on what is broken off
		b.Space.Bounds = e.Box()
	}
	e.OpeningNames()
	e.Numbers()
	if !h.f.Run.Up {
		e.SeamMarks()
	}
	e.PlateNames()
	b.Space.Bounds = inside
	if cell.X0 > b.Field.X0+1 {
		b.Page.VLine(cell.X0, cell.Y0+k.Of(4), cell.Y1-k.Of(4), scene.Pen(scene.Frame, k.Extension))
	}
}

// drawBody draws the wall round an opening; what is broken off over and under it is clipped away.
func drawBody(e *elevation.View, h hole) {
	if !h.cut() {
		e.Body()
		return
	}
	k, whole := e.Look, e.Group
	box := e.Box().Inset(-e.Look.Wide)
	corners := box.Corners()
	e.Group = whole.Clipped(corners[:]...)
	e.Body()
	e.Group = whole
	for _, y := range []struct {
		z, end L
		y      float64
	}{{e.F.High, h.f.High, box.Y0}, {e.F.Low, h.f.Low, box.Y1}} {
		if y.z != y.end {
			draft.Break(whole, k, scene.Walls, scene.Pt(box.X0-k.Of(2), y.y), scene.Pt(box.X1+k.Of(2), y.y))
		}
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
		for _, e.Inside = range []bool{false, true} { // rather numbers in the field than a smaller scale
			e.V.Origin = scene.Pt(0, 0)
			above, right, numbers := holeStacks(e, h)
			all := e.Box().Union(above.Box(k)).Union(right.Box(k)).Union(numbers)
			all.X0 = math.Min(all.X0, e.Box().X0-label)
			all.Y1 += k.Of(3)
			e.V.Origin = scene.Pt(room.Centre().X-(all.X0+all.X1)/2, room.Y0-all.Y0)
			if all.W() <= room.W() && all.H() <= room.H()-foot-k.Of(6) {
				e.V.Origin.Y += math.Min(k.Of(12), (room.H()-foot-k.Of(6)-all.H())/2)
				return true
			}
		}
	}
	return false
}

// openingTitle is the title of the n-th enlargement of a page.
func openingTitle(e *elevation.View, h hole, n int, room scene.Box, table *draft.Table, beside bool) draft.Title {
	scale := e.V.Scale
	if scale == 0 { // not yet chosen: any says how much room it takes
		scale = openingScales[0]
	}
	under := []string{"SCALE " + draft.Ratio(scale, e.Metric()), "wall " + h.f.W.Name + ", page " + e.PageAt(h.f.Wall, (h.o.FromLeft+h.o.Right())/2)}
	t := draft.Title{Mark: fmt.Sprint(n), Page: e.Leaf.Number, Name: strings.ToUpper(h.o.Kind.Named(h.o.Name)), Under: append(under, wrapWords(e, h)...), Most: room.W()}
	if beside {
		t.Most -= table.Width() + e.Look.Of(6)
	}
	return t
}

// openingFoot draws title and bar directly under what an enlargement takes, and the table of cut-outs beside them, or under them: all as near to
// the middle of the view as the room allows.
func openingFoot(e *elevation.View, room scene.Box, foot, under float64, title draft.Title, table *draft.Table, beside bool) {
	k, g := e.Look, &e.Page.Group
	gap, left := k.Of(12), e.Box().X0
	wide := title.Wide(k)
	if beside {
		wide += gap + table.Width()
	}
	left = math.Max(room.X0, math.Min(left, room.X1-wide))
	at := scene.Pt(left, math.Min(under+k.Of(7)+title.High(k), room.Y1-foot+title.High(k)))
	tb := title.Draw(g, k, at)
	bar := draft.Bar{Scale: e.V.Scale, Metric: e.Metric()}
	bb := bar.Draw(g, k, scene.Pt(at.X+k.Of(17), tb.Y1+k.Of(8)), k.Of(42))
	tableAt := scene.Pt(math.Min(math.Max(e.Box().X1, left+wide), room.X1)-table.Width(), at.Y-k.Of(7))
	if !beside {
		tableAt = scene.Pt(math.Max(room.X0, math.Min(left, room.X1-table.Width())), bb.Y1+k.Of(4))
	}
	_, taken := table.Draw(g, k, tableAt, 0, room.Y1-tableAt.Y)
	e.Space.Take(tb, bb, taken)
}

package aims

import (
	"fmt"
	"math"
	"strings"

	"flitchlay/internal/draft"
	"flitchlay/internal/elevation"
	"flitchlay/internal/face"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/paper"
	"flitchlay/internal/scene"
)

// comparisons is the first figure of the page numbers of a comparison.
//
// Source: sheet types 7 and 8 of the US National CAD Standard are the user's own.
const comparisons folio.Kind = 7

// Draw draws what the three aims make of a room: the walls of each aim one over the other at one scale, and a
// table; then the same of the other layouts of the room's own aim, where there are any. own is the room's own plan, which says
// whether anything may be hung. The logo may be nil.
//
// Errors: a fault of the program: a page that no backend could draw.
func Draw(all *layout.Comparison, own *layout.Plan, t *paper.Template, logo *scene.Picture) (*scene.Document, error) {
	s := folio.NewSet(own, t, logo, "Comparison of aims")
	c := comparingAims(s, all)
	return s.Document([]folio.Section{{Kind: comparisons, Pages: func(*folio.Set) []*folio.Leaf { return append(c.pages(), otherPages(s, all)...) }}})
}

// comparing is the comparison of some layouts while it is drawn.
type comparing struct {
	*folio.Set
	all   *layout.Comparison
	title string
	rows  []aimRow
	table func() *draft.Table // nil where it stands elsewhere
	scale int64
	under bool              // the table stands under the elevations of the first page
	walls [][]elevation.Cut // what stands side by side on each page; the table's own pages come last
}

// aimRow is one layout that is drawn.
type aimRow struct {
	set   *folio.Set
	names []string // of the aims that give it, or its own
	plan  *layout.AimPlan
}

// rowOf is a row of one layout.
func rowOf(s *folio.Set, a *layout.AimPlan, name string) aimRow {
	one := *s
	one.Plan = a.Plan
	return aimRow{&one, []string{name}, a}
}

// Distances of a comparison on the office page.
const (
	aimWide   = 36.0 // of the column with the aims' names
	nameHigh  = 5.5  // over a wall, for its name
	footHigh  = 8.5  // under a wall, for marks
	rowGap    = 4.0
	wallGap   = 7.0
	legendAll = 15.0 // at the foot of the page
)

func comparingAims(s *folio.Set, all *layout.Comparison) *comparing {
	c := &comparing{Set: s, all: all, title: "COMPARISON OF THE AIMS"}
	c.table = c.aimsTable
	for i := range all.Aims {
		a := &all.Aims[i]
		name := layout.AimWord(a.Plan.Aim)
		found := false
		for j := range c.rows {
			if c.rows[j].names[0] == a.Same {
				c.rows[j].names, found = append(c.rows[j].names, name), true
			}
		}
		if !found {
			c.rows = append(c.rows, rowOf(s, a, name))
		}
	}
	c.arrange()
	return c
}

// box is where elevations and table stand.
func (c *comparing) box() scene.Box { return c.Columns(1).Box }

// The scales of a comparison, the largest first, in an inch room and in a metric one.
//
// Source: scales of a US architect's rule; ISO 5455:1979 clause 5.1.
var (
	aimScales       = []int64{16, 24, 32, 48, 64, 96, 128, 192}
	aimScalesMetric = []int64{10, 20, 50, 100, 200}
)

// arrange chooses the one scale:
//
//  1. of those at which all rows stand one over the other and a sheet takes its number, the largest that needs the fewest
//     pages;
//  2. where there is none, for walls so high that numbers do not stand in their sheets, the largest at which the rows
//     stand, half by half down from the largest of all.
func (c *comparing) arrange() {
	k := c.Look
	faces := face.All(c.Plan)
	high, wide := L(0), L(0)
	for _, f := range faces {
		high, wide = max(high, f.High-f.Low), max(wide, f.Right-f.Left)
	}
	box := c.box()
	tableHigh := 0.0
	if c.table != nil {
		t := c.table()
		t.Fit(k, box.W())
		tableHigh = t.High(k) + k.Of(6)
	}
	rest := func(table bool) float64 {
		h := box.H() - k.Of(legendAll)
		if table {
			h -= tableHigh
		}
		return h
	}
	scales := aimScales
	if c.Metric() {
		scales = aimScalesMetric
	}
	legible := scene.Width("88", k.Small, false) + k.Of(1.6)
	net := c.Room.NetWidth().MM()
	best := math.Inf(1)
	try := func(scale int64, must bool) {
		row := c.rowHigh(high, scale)
		all := row * float64(len(c.rows))
		if all > rest(false) || !must && net/float64(scale) < legible {
			return
		}
		under := all <= rest(true)
		walls := c.groups(faces, scale)
		pages := float64(len(walls))
		if !under {
			pages++
		}
		if pages < best {
			best, c.scale, c.under, c.walls = pages, scale, under, walls
		}
	}
	for _, scale := range scales {
		try(scale, false)
	}
	for scale := scales[0]; math.IsInf(best, 1); scale *= 2 {
		try(scale, true)
	}
}

// rowHigh is how high one aim comes out.
func (c *comparing) rowHigh(high L, scale int64) float64 {
	return high.MM()/float64(scale) + c.Look.Of(nameHigh+footHigh+rowGap)
}

// groups sets walls side by side, page by page; a wall wider than a page comes in pieces.
func (c *comparing) groups(faces []*face.Face, scale int64) [][]elevation.Cut {
	k := c.Look
	width := c.box().W() - k.Of(aimWide)
	var pages [][]elevation.Cut
	x := math.Inf(1)
	for _, f := range faces {
		wide := f.Right - f.Left
		n := max(1, int(math.Ceil(wide.MM()/float64(scale)/width-1e-9)))
		for i := range n {
			p := elevation.Cut{From: f.Left + wide*L(i)/L(n), To: f.Left + wide*L(i+1)/L(n), Scale: scale}
			w := (p.To - p.From).MM() / float64(scale)
			if x+w > width {
				pages, x = append(pages, nil), 0
			}
			pages[len(pages)-1] = append(pages[len(pages)-1], p)
			x += w + k.Of(wallGap)
		}
	}
	return pages
}

// views are the pieces of walls on all pages, with the wall that each belongs to, in the order of groups.
func (c *comparing) views() [][]aimView {
	var list [][]aimView
	faces, at := face.All(c.Plan), 0
	n := 1
	for _, page := range c.walls {
		var row []aimView
		for _, p := range page {
			f := faces[at]
			v := aimView{wall: f.Wall, Cut: p, piece: n}
			if v.last = p.To == f.Right; v.last {
				at++
				n = 0
			}
			n++
			v.whole = v.last && v.piece == 1
			row = append(row, v)
		}
		list = append(list, row)
	}
	return list
}

// aimView is a piece of a wall on a page, drawn once for each aim.
type aimView struct {
	wall int
	elevation.Cut
	piece       int // from 1
	last, whole bool
}

// pages are the pages with the elevations, and those of the table where it does not stand under them.
func (c *comparing) pages() []*folio.Leaf {
	var list []*folio.Leaf
	groups := c.views()
	for i, group := range groups {
		title := c.title
		if len(groups) > 1 {
			title += fmt.Sprintf(", %d OF %d", i+1, len(groups))
		}
		l := &folio.Leaf{Title: title, Wall: -1, Scale: draft.Ratio(c.scale, c.Metric())}
		l.Draw = func(b *folio.Board) { c.draw(b, group, i == 0 && c.under && c.table != nil) }
		list = append(list, l)
	}
	if !c.under {
		list = append(list, c.FlowPages(c.title+": FIGURES", "aims", 1, func() []folio.Block { return []folio.Block{{Table: c.table()}} })...)
	}
	return list
}

// draw draws a page: a row for each layout, the table, and what the marks mean.
func (c *comparing) draw(b *folio.Board, group []aimView, table bool) {
	k, box := c.Look, c.box()
	high := L(0)
	for _, f := range face.All(c.Plan) {
		high = max(high, f.High-f.Low)
	}
	y := box.Y0
	for _, row := range c.rows {
		c.aimName(b, row, scene.Box{X0: box.X0, Y0: y + k.Of(nameHigh), X1: box.X0 + k.Of(aimWide-4), Y1: y + c.rowHigh(high, c.scale)})
		x := box.X0 + k.Of(aimWide)
		for _, v := range group {
			e := &aimElevation{Board: b, set: row.set, f: face.On(row.set.Plan, v.wall), aimView: v, aim: row.names[0]}
			e.v = draft.View{Scale: c.scale}
			e.v.Origin = scene.Pt(x-e.v.MM(v.From), y+k.Of(nameHigh)+e.v.MM(high)+e.v.MM(e.f.Low))
			e.draw()
			x += e.v.MM(v.To-v.From) + k.Of(wallGap)
		}
		y += c.rowHigh(high, c.scale)
	}
	if table {
		t := c.table()
		t.Fit(k, box.W())
		_, taken := t.Draw(&b.Page.Group, k, scene.Pt(box.X0, y+k.Of(2)), 0, box.H())
		b.Space.Take(taken)
	}
	c.legend(b, scene.Box{X0: box.X0, Y0: box.Y1 - k.Of(legendAll) + k.Of(3), X1: box.X1, Y1: box.Y1})
}

// aimName letters the name of an aim at the left of its row, what it looks for, and which aims give the same.
func (c *comparing) aimName(b *folio.Board, row aimRow, box scene.Box) {
	k := c.Look
	g := b.Page.Part(scene.Tag{Class: "aim", Data: []scene.Datum{folio.Datum("aim", row.names[0])}})
	name := strings.ToUpper(row.names[0])
	height := draft.FitHeight(name, k.Large, k.Small, true, box.W())
	g.Text(scene.Text{At: scene.Pt(box.X0, box.Y0), String: name, Height: height, Bold: true, Seat: scene.Hanging, Layer: scene.Notes})
	y := box.Y0 + k.Large + k.Of(3)
	var items []draft.Item
	if len(row.names) > 1 {
		verb := " gives"
		if len(row.names) > 2 {
			verb = " give"
		}
		items = append(items, draft.Item{Text: strings.Join(row.names[1:], " and ") + verb + " the same layout", Bold: true})
	}
	items = append(items, draft.Item{Text: plural(row.plan.Plan.Totals.Sheets, "sheet")}, draft.Item{Text: plural(len(row.plan.Narrow), "narrow sheet")})
	if row.plan.Musts > 0 {
		items = append(items, draft.Item{Text: plural(row.plan.Musts, "must finding"), Bold: true})
	}
	draft.List(g, scene.Notes, scene.Pt(box.X0, y), items, k.Small, 0, box.W(), box.Y1-y)
}

func plural(n int, word string) string {
	switch n {
	case 0:
		return "no " + word
	case 1:
		return "1 " + word
	}
	return fmt.Sprintf("%d %ss", n, word)
}

// legend says at the foot of the page what the marks mean, and the scale.
func (c *comparing) legend(b *folio.Board, box scene.Box) {
	k := c.Look
	g := &b.Page.Group
	y := box.Y1 - k.Of(3)
	x := box.X0 + k.Of(2)
	bar := draft.Bar{Scale: c.scale, Metric: c.Metric()}
	most := k.Of(70)
	taken := bar.Draw(g, k, scene.Pt(box.X1-bar.Wide(k, most), y), most)
	scale := scene.Text{At: scene.Pt(taken.X0-k.Of(4), y), String: "SCALE " + draft.Ratio(c.scale, c.Metric()), Height: k.Small, Anchor: scene.End, Layer: scene.Notes}
	g.Text(scale)
	right := scale.Bounds().X0 - k.Of(4)
	for _, it := range []struct {
		draw func(*scene.Group, draft.Look, scene.Point)
		text string
	}{
		{jumpMark, "the grain jumps, right of a narrow sheet (grey)"}, {closingMark, "closing seam"}, {changeMark, "flitch changes"},
	} {
		w := scene.Width(it.text, k.Small, false)
		if x+k.Of(5)+w > right { // a line further up
			x, right, y = box.X0+k.Of(2), box.X1, math.Min(y-k.Of(5.5), taken.Y0-k.Of(2))
		}
		it.draw(g, k, scene.Pt(x, y-k.Small/2))
		g.Text(scene.Text{At: scene.Pt(x+k.Of(4), y), String: it.text, Height: k.Small, Layer: scene.Notes})
		x += k.Of(12) + w
	}
}

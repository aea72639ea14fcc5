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

// Comparisons is the first figure of the page numbers of a comparison.
//
// Source: sheet types 7 and 8 of the US National CAD Standard are the user's own.
const Comparisons folio.Kind = 7

// Draw draws what the three aims make of a room: the walls of each aim one over the other at one scale, and a
// table. own is the room's own plan, which says whether anything may be hung. The logo may be nil.
//
// Errors: a fault of the program: a page that no backend could draw.
func Draw(all *layout.Comparison, own *layout.Plan, t *paper.Template, logo *scene.Picture) (*scene.Document, error) {
	s := folio.NewSet(own, t, logo, "Comparison of aims")
	c := NewComparing(s, all)
	return s.Document([]folio.Section{{Kind: Comparisons, Pages: c.Pages}})
}

// Comparing is the comparison while it is drawn.
type Comparing struct {
	*folio.Set
	All   *layout.Comparison
	Rows  []AimRow
	Scale int64
	Under bool              // the table stands under the elevations of the first page
	Walls [][]elevation.Cut // what stands side by side on each page; the table's own pages come last
}

// AimRow is one layout that is drawn.
type AimRow struct {
	Set   *folio.Set
	Names []string // of the aims that give it
	Plan  *layout.AimPlan
}

// Distances of a comparison on the office page.
const (
	AimWide   = 36.0 // of the column with the aims' names
	NameHigh  = 5.5  // over a wall, for its name
	FootHigh  = 8.5  // under a wall, for marks
	RowGap    = 4.0
	WallGap   = 7.0
	LegendAll = 15.0 // at the foot of the page
)

func NewComparing(s *folio.Set, all *layout.Comparison) *Comparing {
	c := &Comparing{Set: s, All: all}
	for i := range all.Aims {
		a := &all.Aims[i]
		name := layout.AimWord(a.Plan.Aim)
		found := false
		for j := range c.Rows {
			if c.Rows[j].Names[0] == a.Same {
				c.Rows[j].Names, found = append(c.Rows[j].Names, name), true
			}
		}
		if !found {
			one := *s
			one.Plan = a.Plan
			c.Rows = append(c.Rows, AimRow{&one, []string{name}, a})
		}
	}
	c.Arrange()
	return c
}

// Box is where elevations and table stand.
func (c *Comparing) Box() scene.Box { return c.Columns(1).Box }

// Arrange chooses the one scale: of those at which all rows stand one over the other and a sheet takes its number, the
// largest that needs the fewest pages.
func (c *Comparing) Arrange() {
	k := c.Look
	faces := face.All(c.Plan)
	high, wide := L(0), L(0)
	for _, f := range faces {
		high, wide = max(high, f.High-f.Low), max(wide, f.Right-f.Left)
	}
	box := c.Box()
	t := c.Table()
	t.Fit(k, box.W())
	tableHigh := t.High(k) + k.Of(6)
	rest := func(table bool) float64 {
		h := box.H() - k.Of(LegendAll)
		if table {
			h -= tableHigh
		}
		return h
	}
	scales := []int64{16, 24, 32, 48, 64, 96, 128, 192}
	if c.Metric() {
		scales = []int64{10, 20, 50, 100, 200}
	}
	legible := scene.Width("88", k.Small, false) + k.Of(1.6)
	net := elevation.Net(c.Set).MM()
	best := math.Inf(1)
	try := func(scale int64, must bool) {
		row := c.RowHigh(high, scale)
		all := row * float64(len(c.Rows))
		if all > rest(false) || !must && net/float64(scale) < legible {
			return
		}
		under := all <= rest(true)
		walls := c.Groups(faces, scale)
		pages := float64(len(walls))
		if !under {
			pages++
		}
		if pages < best {
			best, c.Scale, c.Under, c.Walls = pages, scale, under, walls
		}
	}
	for _, scale := range scales {
		try(scale, false)
	}
	for scale := scales[0]; math.IsInf(best, 1); scale *= 2 { // walls so high that numbers do not stand in their sheets
		try(scale, true)
	}
}

// RowHigh is how high one aim comes out.
func (c *Comparing) RowHigh(high L, scale int64) float64 {
	return high.MM()/float64(scale) + c.Look.Of(NameHigh+FootHigh+RowGap)
}

// Groups sets walls side by side, page by page; a wall wider than a page comes in pieces.
func (c *Comparing) Groups(faces []*face.Face, scale int64) [][]elevation.Cut {
	k := c.Look
	width := c.Box().W() - k.Of(AimWide)
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
			x += w + k.Of(WallGap)
		}
	}
	return pages
}

// Views are the pieces of walls on all pages, with the wall that each belongs to, in the order of groups.
func (c *Comparing) Views() [][]AimView {
	var list [][]AimView
	faces, at := face.All(c.Plan), 0
	n := 1
	for _, page := range c.Walls {
		var row []AimView
		for _, p := range page {
			f := faces[at]
			v := AimView{Wall: f.Wall, Cut: p, Piece: n}
			if v.Last = p.To == f.Right; v.Last {
				at++
				n = 0
			}
			n++
			v.Whole = v.Last && v.Piece == 1
			row = append(row, v)
		}
		list = append(list, row)
	}
	return list
}

// AimView is a piece of a wall on a page, drawn once for each aim.
type AimView struct {
	Wall int
	elevation.Cut
	Piece       int // from 1
	Last, Whole bool
}

// Pages are the pages with the elevations, and those of the table where it does not stand under them.
func (c *Comparing) Pages(*folio.Set) []*folio.Leaf {
	var list []*folio.Leaf
	groups := c.Views()
	for i, group := range groups {
		title := "COMPARISON OF THE AIMS"
		if len(groups) > 1 {
			title += fmt.Sprintf(", %d OF %d", i+1, len(groups))
		}
		l := &folio.Leaf{Title: title, Wall: -1, Scale: draft.Ratio(c.Scale, c.Metric())}
		l.Draw = func(b *folio.Board) { c.Draw(b, group, i == 0 && c.Under) }
		list = append(list, l)
	}
	if !c.Under {
		list = append(list, c.FlowPages("COMPARISON OF THE AIMS: FIGURES", "aims", 1, func() []folio.Block { return []folio.Block{{Table: c.Table()}} })...)
	}
	return list
}

// Draw draws a page: a row for each layout, the table, and what the marks mean.
func (c *Comparing) Draw(b *folio.Board, group []AimView, table bool) {
	k, box := c.Look, c.Box()
	high := L(0)
	for _, f := range face.All(c.Plan) {
		high = max(high, f.High-f.Low)
	}
	y := box.Y0
	for _, row := range c.Rows {
		c.AimName(b, row, scene.Box{X0: box.X0, Y0: y + k.Of(NameHigh), X1: box.X0 + k.Of(AimWide-4), Y1: y + c.RowHigh(high, c.Scale)})
		x := box.X0 + k.Of(AimWide)
		for _, v := range group {
			e := &AimElevation{Board: b, Set: row.Set, F: face.On(row.Set.Plan, v.Wall), AimView: v, Aim: row.Names[0]}
			e.V = draft.View{Scale: c.Scale}
			e.V.Origin = scene.Pt(x-e.V.MM(v.From), y+k.Of(NameHigh)+e.V.MM(high)+e.V.MM(e.F.Low))
			e.Draw()
			x += e.V.MM(v.To-v.From) + k.Of(WallGap)
		}
		y += c.RowHigh(high, c.Scale)
	}
	if table {
		t := c.Table()
		t.Fit(k, box.W())
		_, taken := t.Draw(&b.Page.Group, k, scene.Pt(box.X0, y+k.Of(2)), 0, box.H())
		b.Space.Take(taken)
	}
	c.Legend(b, scene.Box{X0: box.X0, Y0: box.Y1 - k.Of(LegendAll) + k.Of(3), X1: box.X1, Y1: box.Y1})
}

// AimName letters the name of an aim at the left of its row, what it looks for, and which aims give the same.
func (c *Comparing) AimName(b *folio.Board, row AimRow, box scene.Box) {
	k := c.Look
	g := b.Page.Part(scene.Tag{Class: "aim", Data: []scene.Datum{folio.Datum("aim", row.Names[0])}})
	name := strings.ToUpper(row.Names[0])
	height := draft.FitHeight(name, k.Large, k.Small, true, box.W())
	g.Text(scene.Text{At: scene.Pt(box.X0, box.Y0), String: name, Height: height, Bold: true, Seat: scene.Hanging, Layer: scene.Notes})
	y := box.Y0 + k.Large + k.Of(3)
	var items []draft.Item
	if len(row.Names) > 1 {
		verb := " gives"
		if len(row.Names) > 2 {
			verb = " give"
		}
		items = append(items, draft.Item{Text: strings.Join(row.Names[1:], " and ") + verb + " the same layout", Bold: true})
	}
	items = append(items, draft.Item{Text: Plural(row.Plan.Plan.Totals.Sheets, "sheet")}, draft.Item{Text: Plural(len(row.Plan.Narrow), "narrow sheet")})
	if row.Plan.Musts > 0 {
		items = append(items, draft.Item{Text: Plural(row.Plan.Musts, "must finding"), Bold: true})
	}
	draft.List(g, scene.Notes, scene.Pt(box.X0, y), items, k.Small, 0, box.W(), box.Y1-y)
}

func Plural(n int, word string) string {
	switch n {
	case 0:
		return "no " + word
	case 1:
		return "1 " + word
	}
	return fmt.Sprintf("%d %ss", n, word)
}

// Legend says at the foot of the page what the marks mean, and the scale.
func (c *Comparing) Legend(b *folio.Board, box scene.Box) {
	k := c.Look
	g := &b.Page.Group
	y := box.Y1 - k.Of(3)
	x := box.X0 + k.Of(2)
	bar := draft.Bar{Scale: c.Scale, Metric: c.Metric()}
	most := k.Of(70)
	taken := bar.Draw(g, k, scene.Pt(box.X1-bar.Wide(k, most), y), most)
	scale := scene.Text{At: scene.Pt(taken.X0-k.Of(4), y), String: "SCALE " + draft.Ratio(c.Scale, c.Metric()), Height: k.Small, Anchor: scene.End, Layer: scene.Notes}
	g.Text(scale)
	right := scale.Bounds().X0 - k.Of(4)
	for _, it := range []struct {
		draw func(*scene.Group, draft.Look, scene.Point)
		text string
	}{
		{JumpMark, "the grain jumps, right of a narrow sheet (grey)"}, {ClosingMark, "closing seam"}, {ChangeMark, "flitch changes"},
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

package detail

import (
	"fmt"
	"math"

	"flitchlay/internal/draft"
	"flitchlay/internal/elevation"
	"flitchlay/internal/face"
	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
)

// standardCell is a cell with a detail that stands once for the whole set.
type standardCell struct {
	box scene.Box
	end *face.Termination // nil: the double cut
}

// Sizes of the standard details on the office page.
const (
	standardWide = 88  // of a termination's cell
	cutWide      = 160 // of the double cut's
)

// standards sets the double cut and the terminations into rows of a height, page by page; the first page has room from a height on.
func standards(s *folio.Set, field scene.Box, from, high float64) [][]standardCell {
	columns := max(1, int(field.W()/s.Look.Of(standardWide)+0.06))
	wide := field.W() / float64(columns)
	cut := min(columns, int(math.Ceil(s.Look.Of(cutWide)/wide-0.06)))
	var pages [][]standardCell
	var page []standardCell
	y, column := from, 0
	put := func(end *face.Termination, count int) {
		if column+count > columns {
			y, column = y+high, 0
		}
		if y+high > field.Y1+1e-6 && y > field.Y0 {
			pages, page = append(pages, page), nil
			y, column = field.Y0, 0
		}
		x := field.X0 + wide*float64(column)
		page = append(page, standardCell{scene.Box{X0: x, Y0: y, X1: x + wide*float64(count), Y1: min(y+high, field.Y1)}, end})
		column += count
	}
	put(nil, cut)
	for i := range s.Ends {
		put(&s.Ends[i], 1)
	}
	return append(pages, page)
}

// perRow counts the cells of the first row.
func perRow(cells []scene.Box) int {
	n := 0
	for _, c := range cells {
		if c.Y0 == cells[0].Y0 {
			n++
		}
	}
	return n
}

func (c standardCell) draw(b *folio.Board) {
	if c.end == nil {
		doubleCut(b, c.box)
		return
	}
	terminationIn(b, c.box, *c.end)
}

// doubleCut draws a seam at full size: as hung, both sheets overlapped, and as cut. Wide sheets are broken off, and
// thickness is not to scale.
func doubleCut(b *folio.Board, cell scene.Box) {
	k := b.Look
	v := b.Room.Veneer
	o := v.Overlap.MM()
	half := v.Overlap.HalfDown().MM()
	scale, high := int64(1), cell.H()-k.Of(26)
	wide := math.Min(cell.W()/2-k.Of(20), k.Of(150)) // of a stage: on a large page both stand at its left
	for o/float64(scale) > wide*0.45 {
		scale *= 2
	}
	o, half = o/float64(scale), half/float64(scale)
	name := "DOUBLE CUT"
	view := scene.View{Box: scene.Box{X0: cell.X0 + k.Of(4), Y0: cell.Y0 + k.Of(4), X1: cell.X1 - k.Of(4), Y1: cell.Y1 - k.Of(22)}, Scale: float64(scale), Metric: b.Metric(), Name: name, Ratio: draft.Ratio(scale, b.Metric())}
	g := b.Page.Viewed(view, folio.Datum("scale", fmt.Sprint(scale)))
	for i := range 2 {
		mid := cell.X0 + (wide+k.Of(20))*(0.5+float64(i))
		cutStage(b, g, scene.Pt(mid, cell.Y0+math.Min(k.Of(8)+high*0.62, cell.H()-k.Of(35.5))), o, half, wide/2+k.Of(4), i == 1)
	}
	under := []string{"SCALE " + draft.Ratio(scale, b.Metric()) + ", not to thickness",
		"net " + b.Style.Measured(b.Room.NetWidth()) + ": gross " + elevation.NetOf(b.Set)}
	t := draft.Title{Mark: "S", Page: b.Leaf.Number, Name: name, Under: under, Most: cell.W() - k.Of(12)}
	b.Space.Take(t.Draw(&b.Page.Group, k, scene.Pt(cell.X0+k.Of(6), cell.Y1-k.Of(13))))
}

// cutStage draws one stage of the cut about the seam.
func cutStage(b *folio.Board, g *scene.Group, at scene.Point, o, half, reach float64, done bool) {
	k := b.Look
	x0, x1 := at.X-reach, at.X+reach
	board := scene.Box{X0: x0, Y0: at.Y, X1: x1, Y1: at.Y + k.Of(5)}
	draft.Hatch(g, scene.Pen(scene.Hatch, k.Dimension), board, k.Of(1.6), true)
	g.HLine(x0, x1, at.Y, scene.Pen(scene.Walls, k.Outline))
	pen := scene.Pen(scene.Covering, k.Of(1))
	words := func(x, y float64, text string, anchor scene.Anchor) {
		t := scene.Text{At: scene.Pt(x, y), String: text, Height: k.Small, Anchor: anchor, Layer: scene.Notes}
		g.Text(t)
		b.Space.Take(t.Bounds())
	}
	y1, y2 := at.Y-k.Of(2.4), at.Y-k.Of(4.2)
	right := at.X + half      // right edge of the left sheet as hung
	left := at.X - (o - half) // raw left edge of the right sheet
	if done {
		gap := k.Of(0.3)
		g.HLine(x0, at.X-gap, at.Y-k.Of(1.4), pen)
		g.HLine(at.X+gap, x1, at.Y-k.Of(1.4), pen)
		g.VLine(at.X, at.Y-k.Of(1.4), at.Y-k.Of(9), scene.Pen(scene.Marks, k.Dimension))
		lines := scene.Wrap("finished seam: both sheets cut at once, waste and strip taken out", k.Small, false, x1-x0)
		for i, line := range lines {
			words(at.X, at.Y-k.Of(10.2)-float64(len(lines)-1-i)*k.Of(4.2), line, scene.Middle)
		}
		words((x0+at.X)/2, board.Y1+k.Of(4.5), "left sheet", scene.Middle)
		words((x1+at.X)/2, board.Y1+k.Of(4.5), "right sheet", scene.Middle)
		return
	}
	strip := k.Of(26)
	g.HLine(at.X-strip, at.X+strip, at.Y-k.Of(0.9), scene.Pen(scene.Marks, k.Seam).As(scene.Dashed(k.Dimension)))
	g.HLine(x0, right, y1, pen)
	g.Polyline(pen, scene.Pt(left, y2), scene.Pt(right+k.Of(1.5), y2), scene.Pt(right+k.Of(4), y1), scene.Pt(x1, y1))
	// seam, plumb line, overlap
	g.VLine(at.X, y2-k.Of(3), at.Y+k.Of(1), scene.Pen(scene.Seams, k.Seam))
	st := draft.Stack{Edge: y2 - k.Of(0.6), Out: -1, First: k.Of(8), Tiers: []draft.Tier{
		{Marks: []float64{left, at.X, right}, Figures: b.Style.Chain([]L{0, b.Room.Veneer.Overlap - b.Room.Veneer.Overlap.HalfDown(), b.Room.Veneer.Overlap})},
		{Marks: []float64{left, right}, Figures: []string{b.Style.Format(b.Room.Veneer.Overlap)}}}}
	st.Draw(g, k, b.Space)
	// each word at the end of a line of its own: the strip's at the left, the seam's a row lower, the plumb line's at the right
	y, foot := board.Y1, k.Of(4)
	g.VLine(at.X-strip+k.Of(0.5), at.Y-k.Of(0.9), y+foot, scene.Pen(scene.Marks, k.Dimension))
	words(at.X-strip+k.Of(1.7), y+foot, "cutting strip", scene.Start)
	g.VLine(at.X, at.Y, y+k.Of(5), scene.Pen(scene.Marks, k.Dimension))
	words(at.X, y+k.Of(8.2), "seam", scene.Middle)
	g.VLine(right, at.Y, y+foot, scene.Pen(scene.Plumb, k.Seam))
	for i, line := range []string{"plumb line:", "right edge as hung"} {
		words(right+k.Of(1.5), y+foot+k.Of(4.2)*float64(i), line, scene.Start)
	}
}

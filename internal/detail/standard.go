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

// standardPages are the details that stand once for the whole set: the double cut, and one for each termination.
func standardPages(s *folio.Set) []*folio.Leaf {
	l := &folio.Leaf{Title: "DOUBLE CUT AND TERMINATIONS", Wall: -1, About: "terminations"}
	cells := s.Cells(100, 66)
	var pages []*folio.Leaf
	l.Draw = func(b *folio.Board) { standard(b, cells, s.Ends, true) }
	pages = append(pages, l)
	// the double cut takes the first row; the ends that do not fit go on to further pages
	used := min(len(cells)-perRow(s, cells), len(s.Ends))
	l.Abouts = ends(s.Ends[:used])
	for rest := s.Ends[used:]; len(rest) > 0; {
		part := rest[:min(len(cells), len(rest))]
		rest = rest[len(part):]
		pages = append(pages, &folio.Leaf{Title: "TERMINATIONS", Wall: -1, Abouts: ends(part), Draw: func(b *folio.Board) { standard(b, cells, part, false) }})
	}
	return pages
}

// ends are what other pages look terminations up by.
func ends(list []face.Termination) (abouts []string) {
	for _, t := range list {
		abouts = append(abouts, "end "+t.Mark)
	}
	return abouts
}

// perRow counts the cells of the first row.
func perRow(s *folio.Set, cells []scene.Box) int {
	n := 0
	for _, c := range cells {
		if c.Y0 == cells[0].Y0 {
			n++
		}
	}
	return n
}

func standard(b *folio.Board, cells []scene.Box, ends []face.Termination, cut bool) {
	first := 0
	if cut {
		first = perRow(b.Set, cells)
		row := cells[0]
		row.X1 = cells[first-1].X1
		doubleCut(b, row)
	}
	used := []scene.Box{cells[0]}
	for i, t := range ends {
		if first+i >= len(cells) {
			break
		}
		terminationIn(b, cells[first+i], t)
		used = append(used, cells[first+i])
	}
	grid(b, used)
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
		cutStage(b, g, scene.Pt(mid, cell.Y0+k.Of(8)+high*0.62), o, half, wide/2+k.Of(4), i == 1)
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
		lines := scene.Wrap("finished seam: both cut in one, waste and strip drawn out", k.Small, false, x1-x0)
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
	y := board.Y1
	g.VLine(right, at.Y, y+k.Of(2), scene.Pen(scene.Plumb, k.Seam))
	g.VLine(at.X, at.Y, y+k.Of(7), scene.Pen(scene.Marks, k.Dimension))
	words(right+k.Of(1.5), y+k.Of(4), "plumb line: right edge as hung", scene.Start)
	words(at.X-k.Of(1.5), y+k.Of(8), "seam", scene.End)
	words(at.X-k.Of(1.5), y+k.Of(4), "strip behind, dashed", scene.End)
}

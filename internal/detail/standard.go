package detail

import (
	"fmt"
	"math"
	"strings"

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
	used := len(cells) - perRow(s, cells)
	for rest := s.Ends[min(used, len(s.Ends)):]; len(rest) > 0; {
		part := rest[:min(len(cells), len(rest))]
		rest = rest[len(part):]
		pages = append(pages, &folio.Leaf{Title: "TERMINATIONS", Wall: -1, Draw: func(b *folio.Board) { standard(b, cells, part, false) }})
	}
	return pages
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

// terminationIn draws how the covering ends in one way.
func terminationIn(b *folio.Board, cell scene.Box, t face.Termination) {
	k := b.Look
	view := scene.View{Box: scene.Box{X0: cell.X0 + k.Of(4), Y0: cell.Y0 + k.Of(3), X1: cell.X1 - k.Of(4), Y1: cell.Y1 - k.Of(24)}, Scale: 2, Metric: b.Metric(), Name: t.Mark, Ratio: draft.Ratio(2, b.Metric())}
	g := b.Page.Viewed(view, folio.Datum("scale", "2"), folio.Datum("termination", t.Mark))
	c := view.Box.Centre()
	note := endNote(b, t)
	if t.Kind == "base" || t.Kind == "head" {
		endSection(b, g, c, view.Box.H()/2-k.Of(1), t.Kind)
	} else {
		endPlan(b, g, c, t.Kind)
	}
	lines := scene.Wrap(note, k.Small, false, cell.W()-k.Of(28))
	if len(lines) > 2 {
		lines = append(lines[:1], scene.Shorten(strings.Join(lines[1:], " "), k.Small, false, cell.W()-k.Of(28)))
	}
	under := append([]string{"SCALE " + view.Ratio}, lines...)
	title := draft.Title{Mark: t.Mark, Page: b.Leaf.Number, Name: strings.ToUpper(t.Words), Under: under, Most: cell.W() - k.Of(10)}
	b.Space.Take(title.Draw(&b.Page.Group, k, scene.Pt(cell.X0+k.Of(5), cell.Y1-k.Of(16.5))))
}

// endNote says in words what a termination is.
func endNote(b *folio.Board, t face.Termination) string {
	r := b.Room.Rules
	f := b.Style.Format
	switch t.Kind {
	case "base":
		if b.Room.Space.Behind.Base {
			return "Runs behind the base; " + f(r.BottomTrim) + " extra, cut in place."
		}
		return "Cut to the top of the base; " + f(r.BottomTrim) + " extra, cut in place."
	case "head":
		if b.Room.Space.Behind.Crown {
			return "Runs behind the crown; " + f(r.TopTrim) + " extra, cut in place."
		}
		return "Cut to the crown or the ceiling; " + f(r.TopTrim) + " extra, cut in place."
	case "jamb", "casing":
		return "Cut tight to the casing or jamb; scribed, not caulked."
	case "frame":
		return "Cut against the frame, which is not cut over; half of the edge trim."
	case "inside corner":
		return "Ends in the inside corner; " + f(r.EdgeTrim) + " extra, cut in place."
	case "outside edge":
		return "Ends at the outside edge under a bead or trim by others."
	case "trim":
		return "Ends under the trim."
	case "bare":
		return "Ends at a strip without covering: straight cut, edge sealed."
	}
	return f(r.EdgeTrim) + " extra at the raw end, straight cut."
}

// endPlan draws a termination seen from above: board and veneer from the left, what it meets at the right.
func endPlan(b *folio.Board, g *scene.Group, c scene.Point, kind string) {
	k := b.Look
	reach, bt := k.Of(30), k.Of(7)
	end := c.X + k.Of(4)
	y := c.Y
	right := c.X + reach
	hatch := scene.Pen(scene.Hatch, k.Dimension)
	outline := scene.Pen(scene.Walls, k.Outline)
	thin := scene.Pen(scene.Walls, k.Thin)
	veneer := scene.Pen(scene.Covering, k.Of(1))
	off := k.Of(1.4)
	wood := func(box scene.Box) {
		g.Rect(box, outline.Filled(scene.White))
		draft.Hatch(g, scene.Pen(scene.Hatch, k.Extension), box, k.Of(2.4), false)
	}
	boardTo := right
	switch kind {
	case "inside corner":
		boardTo = end + bt
	case "outside edge":
		boardTo = end
	}
	body := scene.Box{X0: c.X - reach, Y0: y - bt, X1: boardTo, Y1: y}
	draft.Hatch(g, hatch, body, k.Of(1.8), true)
	g.HLine(body.X0, end, y, outline)
	g.HLine(body.X0, boardTo, y-bt, thin)
	switch kind {
	case "inside corner":
		wall := scene.Box{X0: end, Y0: y, X1: end + bt, Y1: y + k.Of(16)}
		draft.Hatch(g, hatch, wall, k.Of(1.8), true)
		g.VLine(end, y, wall.Y1, outline)
		g.VLine(end+bt, y-bt, wall.Y1, thin)
		draft.Break(g, k, scene.Walls, scene.Pt(end-k.Of(1), wall.Y1), scene.Pt(end+bt+k.Of(1), wall.Y1))
		end -= k.Of(0.4)
	case "outside edge":
		g.VLine(end, y-bt, y, outline)
		g.Polyline(scene.Pen(scene.Walls, k.Seam), scene.Pt(end-k.Of(5), y+k.Of(2.6)), scene.Pt(end+k.Of(1), y+k.Of(2.6)), scene.Pt(end+k.Of(1), y-bt))
	case "jamb", "casing":
		wood(scene.Box{X0: end, Y0: y, X1: end + k.Of(11), Y1: y + k.Of(5)})
		g.HLine(end, boardTo, y, outline)
	case "frame":
		wood(scene.Box{X0: end, Y0: y - bt, X1: end + k.Of(9), Y1: y + k.Of(3)})
		g.HLine(end+k.Of(9), boardTo, y, outline)
	case "trim":
		g.HLine(end, boardTo, y, outline)
		wood(scene.Box{X0: end - k.Of(4), Y0: y + k.Of(2.2), X1: end + k.Of(7), Y1: y + k.Of(5)})
	default:
		g.HLine(end, boardTo, y, outline)
	}
	g.HLine(body.X0, end-k.Of(0.3), y+off, veneer)
	draft.Break(g, k, scene.Walls, scene.Pt(body.X0, y+k.Of(3.4)), scene.Pt(body.X0, y-bt-k.Of(1.6)))
	if boardTo == right {
		draft.Break(g, k, scene.Walls, scene.Pt(right, y+k.Of(3.4)), scene.Pt(right, y-bt-k.Of(1.6)))
	}
	b.Space.Take(scene.Box{X0: body.X0, Y0: y - bt - k.Of(2), X1: right, Y1: y + k.Of(6)})
}

// endSection draws base or head in section: the wall upright, the trim before it.
func endSection(b *folio.Board, g *scene.Group, c scene.Point, reach float64, kind string) {
	k := b.Look
	bt := k.Of(7)
	reach = math.Min(reach, k.Of(22))
	hatch, outline, thin := scene.Pen(scene.Hatch, k.Dimension), scene.Pen(scene.Walls, k.Outline), scene.Pen(scene.Walls, k.Thin)
	x := c.X
	body := scene.Box{X0: x - bt, Y0: c.Y - reach, X1: x, Y1: c.Y + reach}
	draft.Hatch(g, hatch, body, k.Of(1.8), true)
	g.VLine(x, body.Y0, body.Y1, outline)
	g.VLine(x-bt, body.Y0, body.Y1, thin)
	sign, open := 1.0, body.Y0 // the trim stands at the foot
	if kind == "head" {
		sign, open = -1, body.Y1
	}
	edge := c.Y + sign*reach // floor or ceiling
	g.HLine(x-bt-k.Of(4), x+k.Of(22), edge, scene.Pen(scene.Walls, k.Wide))
	size := b.Room.Space.Base
	behind := b.Room.Space.Behind.Base
	if kind == "head" {
		size, behind = b.Room.Space.Crown, b.Room.Space.Behind.Crown
	}
	end := edge
	if size > 0 {
		h := reach * 0.8
		trim := scene.Box{X0: x, Y0: math.Min(edge, edge-sign*h), X1: x + k.Of(4.4), Y1: math.Max(edge, edge-sign*h)}
		if behind {
			trim.X0, trim.X1 = trim.X0+k.Of(2.2), trim.X1+k.Of(2.2)
			end = edge - sign*k.Of(1)
		} else {
			end = edge - sign*h
		}
		g.Rect(trim, outline.Filled(scene.White))
		draft.Hatch(g, scene.Pen(scene.Hatch, k.Extension), trim, k.Of(2.4), false)
		t := scene.Text{At: scene.Pt(trim.X1+k.Of(3), trim.Centre().Y), String: b.Style.Format(size), Height: k.Small, Seat: scene.Centred, Layer: scene.Notes}
		g.Text(t)
		b.Space.Take(t.Bounds())
	}
	g.VLine(x+k.Of(1.4), open, end-sign*k.Of(0.4), scene.Pen(scene.Covering, k.Of(1)))
	draft.Break(g, k, scene.Walls, scene.Pt(x-bt-k.Of(1.6), open), scene.Pt(x+k.Of(4), open))
}

package pages

import (
	"fmt"
	"math"
	"sort"
	"strings"

	"flitchlay/internal/draft"
	"flitchlay/internal/layout"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// detailPages are the plan of every wrapped corner, then once for the set the double cut and the terminations.
func detailPages(s *set) []*leaf {
	return append(cornerPages(s), standardPages(s)...)
}

// bend is a wrapped corner with the run that it is in.
type bend struct {
	run *layout.Run
	c   *layout.Corner
}

func cornerPages(s *set) []*leaf {
	cells := s.cells(128, 104)
	var bends []bend
	for i := range s.plan.Runs {
		r := &s.plan.Runs[i]
		for j := range r.Corners {
			bends = append(bends, bend{r, &r.Corners[j]})
		}
	}
	sort.SliceStable(bends, func(i, j int) bool { return bends[i].c.LeftWall < bends[j].c.LeftWall })
	var pages []*leaf
	for first := 0; first < len(bends); first += len(cells) {
		part := bends[first:min(first+len(cells), len(bends))]
		l := &leaf{wall: -1, title: "CORNERS " + part[0].c.Name + " TO " + part[len(part)-1].c.Name, scale: draft.Ratio(s.detailScale(), s.metric())}
		if len(part) == 1 {
			l.title = "CORNER " + part[0].c.Name
		}
		for _, b := range part {
			l.abouts = append(l.abouts, "corner "+b.c.Name)
		}
		l.draw = func(b *board) {
			for i, w := range part {
				b.cornerIn(cells[i], w, i+1)
			}
			b.grid(cells)
		}
		pages = append(pages, l)
	}
	return pages
}

// detailScale is 1:4, in a metric room 1:5.
func (s *set) detailScale() int64 {
	if s.metric() {
		return 5
	}
	return 4
}

// grid parts the cells of a page by hairlines.
func (b *board) grid(cells []scene.Box) {
	k := b.look
	for _, c := range cells {
		if c.X0 > b.field.X0+1 {
			b.page.VLine(c.X0, c.Y0+k.Of(3), c.Y1-k.Of(3), scene.Pen(scene.Frame, k.Extension))
		}
		if c.Y0 > cells[0].Y0+1 {
			b.page.HLine(c.X0+k.Of(3), c.X1-k.Of(3), c.Y0, scene.Pen(scene.Frame, k.Extension))
		}
	}
}

// Thicknesses of a detail on the office page: veneer is drawn as a line, not to its thickness.
const (
	boardThick = 4.0
	veneerPen  = 1.0
	veneerOff  = 1.4 // of the middle of the veneer from the face
	stubLength = 11.0
)

// corner is a corner in plan while it is drawn.
//
//	      d1 ->           inside: the way turns right      the room lies to the right of the way
//	------------+
//	   room     |  d2
//	            v
type cornerPlan struct {
	*board
	bend
	g              *scene.Group
	space          *draft.Space
	at             scene.Point
	d1, d2, r1, r2 scene.Point // directions along both walls, and into the room
	left, right    float64     // returns as drawn
	cutL, cutR     bool        // broken
	scale          int64
	tan, radius    float64 // of an eased corner: from the sharp corner to the tangent point, and the radius of the face
}

func (b *board) cornerIn(cell scene.Box, w bend, n int) {
	k := b.look
	p := &cornerPlan{board: b, bend: w, scale: b.detailScale()}
	turn := w.c.Angle
	if w.c.Kind == room.Outside {
		turn = -turn
	}
	sin, cos := scene.SinCos(turn)
	p.d1, p.d2 = scene.Pt(1, 0), scene.Pt(cos, sin) // y is down: a turn to the right is anticlockwise in numbers
	p.r1, p.r2 = scene.Pt(0, 1), scene.Pt(-sin, cos)
	if w.c.Radius > 0 {
		p.radius = w.c.Radius.MM() / float64(p.scale)
		p.tan = p.radius * math.Tan(w.c.Angle*math.Pi/360)
		if limit := k.Of(24); p.tan > limit { // drawn smaller than it is; its radius is written
			p.radius, p.tan = p.radius*limit/p.tan, limit
		}
	}
	clear := scene.Box{X0: cell.X0 + k.Of(5), Y0: cell.Y0 + k.Of(5), X1: cell.X1 - k.Of(5), Y1: cell.Y1 - k.Of(4)}
	foot := k.Of(20)
	kind := "INSIDE CORNER"
	if w.c.Kind == room.Outside {
		kind = "OUTSIDE CORNER"
	}
	name := w.c.Name + " " + kind
	view := scene.View{Box: cell.Inset(k.Of(4)), Scale: float64(p.scale), Metric: b.metric(), Name: name, Ratio: draft.Ratio(p.scale, b.metric())}
	view.Box.Y1 -= foot
	under := "SCALE " + draft.Ratio(p.scale, b.metric()) + "   " + angle(w.c.Angle)
	if w.c.Radius > 0 {
		under += ", radius " + b.style.Words(w.c.Radius)
	}
	walls := b.room.Walls[w.c.LeftWall].Name + " to " + b.room.Walls[w.c.RightWall].Name
	t := draft.Title{Mark: fmt.Sprint(n), Page: b.leaf.number, Name: name, Under: []string{under, walls}, Most: clear.W()}
	at := scene.Pt(clear.X0, clear.Y1-foot+k.Of(7))
	var trial scene.Group
	titled := t.Draw(&trial, k, at)
	p.fit(clear, clear.H()-foot-k.Of(2))
	lean := b.leanTable(w.c)
	var table scene.Point
	if lean != nil {
		var ok bool
		if table, ok = p.tablePlace(lean, clear, titled); !ok { // then the plan leaves it a row of its own
			high := lean.High(k) + k.Of(3)
			p.fit(clear, clear.H()-foot-k.Of(2)-high)
			table = scene.Pt(clear.X1-lean.Width(), titled.Y0-high)
		}
	}
	p.g = b.page.Viewed(view, datum("scale", fmt.Sprint(p.scale)), datum("corner", w.c.Name))
	p.space = b.space
	p.draw()
	t.Draw(&b.page.Group, k, at)
	b.space.Take(titled)
	if lean != nil {
		_, box := lean.Draw(&b.page.Group, k, table, 0, lean.High(k)+1)
		b.space.Take(box)
	}
}

// fit shortens both legs until the plan stands in the upper part of a cell, and places it there.
func (p *cornerPlan) fit(clear scene.Box, high float64) {
	k := p.look
	most := k.Of(54)
	drawn := func(l L) (float64, bool) {
		mm := l.MM() / float64(p.scale)
		if mm > most {
			return most, true
		}
		return math.Max(mm, 0), false
	}
	for range 16 {
		p.left, p.cutL = drawn(p.c.LeftReturn)
		p.right, p.cutR = drawn(p.c.RightReturn)
		box := p.trial(scene.Pt(0, 0), draft.NewSpace(scene.Box{}))
		if box.W() <= clear.W() && box.H() <= high || most < k.Of(8) {
			p.at = scene.Pt(clear.Centre().X-(box.X0+box.X1)/2, clear.Y0+(high-box.H())/2-box.Y0)
			return
		}
		most *= 0.88
	}
}

// trial draws the plan nowhere, to see what it takes.
func (p *cornerPlan) trial(at scene.Point, space *draft.Space) scene.Box {
	var trial scene.Group
	p.g, p.at, p.space = &trial, at, space
	p.draw()
	return trial.Bounds()
}

// tablePlace finds a place for the table of a leaning corner: in the white on the inner side of the bend, over the title
// or beside it.
func (p *cornerPlan) tablePlace(lean *draft.Table, clear, titled scene.Box) (scene.Point, bool) {
	k := p.look
	space := draft.NewSpace(clear.Inset(-1))
	p.trial(p.at, space)
	space.Take(titled)
	w, h := lean.Width(), lean.High(k)
	low, right := titled.Y0-k.Of(2)-h, clear.X1-w
	for _, c := range []scene.Point{{X: clear.X0, Y: low}, {X: clear.X0, Y: clear.Y0}, {X: right, Y: low}, {X: right, Y: clear.Y0}, {X: right, Y: clear.Y1 - h}} {
		if space.Free(scene.BoxAt(c.X, c.Y, w, h), k.Of(1)) {
			return c, true
		}
	}
	return scene.Point{}, false
}

// angle prints an angle in degrees.
func angle(degrees float64) string {
	text := fmt.Sprintf("%.1f", degrees)
	return strings.TrimSuffix(text, ".0") + "°"
}

// leanTable gives both returns at top and bottom of a leaning corner, the least ones bold, and the skew; nil where the
// corner is plumb.
func (s *set) leanTable(c *layout.Corner) *draft.Table {
	if c.Lean == 0 && c.Skew == 0 {
		return nil
	}
	f := s.style.Format
	t := &draft.Table{Columns: []draft.Column{{}, {Head: "LEFT", Align: scene.End}, {Head: "RIGHT", Align: scene.End}, {Head: "SKEW", Align: scene.End}}}
	worst := min(c.LeftReturnTop, c.RightReturnTop) < min(c.LeftReturnBottom, c.RightReturnBottom)
	t.Rows = []draft.Row{
		{Cells: []string{"top", f(c.LeftReturnTop), f(c.RightReturnTop), f(c.Skew)}, Strong: worst},
		{Cells: []string{"bottom", f(c.LeftReturnBottom), f(c.RightReturnBottom), ""}, Strong: !worst},
	}
	t.Fit(s.look, 0)
	return t
}

// off is a point of the corner moved off the face: positive into the room.
func (p *cornerPlan) off(d float64) scene.Point {
	// where the two faces, both moved, meet
	sx, sy := p.r1.X+p.r2.X, p.r1.Y+p.r2.Y
	den := 1 + p.r1.X*p.r2.X + p.r1.Y*p.r2.Y
	if den < 0.05 {
		den = 0.05
	}
	return p.at.Add(sx*d/den, sy*d/den)
}

// round is the bend at a distance off the face: a point, or the arc of an eased corner.
func (p *cornerPlan) round(d float64) []scene.Point {
	if p.radius == 0 {
		return []scene.Point{p.off(d)}
	}
	side, turn := 1.0, p.c.Angle
	if p.c.Kind == room.Outside {
		side = -1
	}
	a := p.on(false, p.tan, 0)
	c := a.Add(p.r1.X*p.radius*side, p.r1.Y*p.radius*side)
	r := p.radius - side*d
	if r <= 0.05 {
		return []scene.Point{p.off(d)}
	}
	var points []scene.Point
	const n = 12
	for i := range n + 1 {
		sin, cos := scene.SinCos(side * turn * float64(i) / n)
		// from the centre back to the face, turned with the way
		x, y := -p.r1.X*side, -p.r1.Y*side
		points = append(points, c.Add(r*(x*cos-y*sin), r*(x*sin+y*cos)))
	}
	return points
}

// on is a place on a wall, so far from the corner, moved off its face.
func (p *cornerPlan) on(right bool, along, off float64) scene.Point {
	if right {
		return p.at.Add(p.d2.X*along+p.r2.X*off, p.d2.Y*along+p.r2.Y*off)
	}
	return p.at.Add(-p.d1.X*along+p.r1.X*off, -p.d1.Y*along+p.r1.Y*off)
}

func (p *cornerPlan) draw() {
	k := p.look
	left, right := p.left+p.tan, p.right+p.tan // of the seams from the sharp corner
	endL, endR := left+k.Of(stubLength), right+k.Of(stubLength)
	bt, vo := k.Of(boardThick), k.Of(veneerOff)
	// board, hatched, and its face
	face := append(append([]scene.Point{p.on(false, endL, 0)}, p.round(0)...), p.on(true, endR, 0))
	back := []scene.Point{p.on(true, endR, -bt), p.off(-bt), p.on(false, endL, -bt)}
	shape := append(append([]scene.Point{}, face...), back...)
	box := scene.Box{X0: math.Inf(1), Y0: math.Inf(1), X1: math.Inf(-1), Y1: math.Inf(-1)}
	for _, q := range shape {
		box = scene.Box{X0: math.Min(box.X0, q.X), Y0: math.Min(box.Y0, q.Y), X1: math.Max(box.X1, q.X), Y1: math.Max(box.Y1, q.Y)}
	}
	draft.Hatch(p.g.Clipped(shape...), scene.Pen(scene.Hatch, k.Dimension), box, k.Of(1.6), true)
	p.g.Polyline(scene.Pen(scene.Walls, k.Outline), face...)
	p.g.Polyline(scene.Pen(scene.Walls, k.Thin), back...)
	for i := range shape {
		p.space.Stroke(shape[i], shape[(i+1)%len(shape)])
	}
	draft.Break(p.g, k, scene.Walls, p.on(false, endL, k.Of(3)), p.on(false, endL, -bt-k.Of(1.4)))
	draft.Break(p.g, k, scene.Walls, p.on(true, endR, k.Of(3)), p.on(true, endR, -bt-k.Of(1.4)))
	// the sheets: one line round the bend, gaps at its seams
	pen := scene.Pen(scene.Covering, k.Of(veneerPen))
	pen.Join = scene.RoundJoin
	gap := k.Of(0.5)
	sheet := p.g.Part(scene.Tag{Class: "sheet", Title: "the sheet that wraps " + p.c.Name, Data: []scene.Datum{datum("place", fmt.Sprint(p.c.Sheet))}})
	wrapped := append(append([]scene.Point{p.on(false, math.Max(left-gap, p.tan+0.1), vo)}, p.round(vo)...), p.on(true, math.Max(right-gap, p.tan+0.1), vo))
	sheet.Polyline(pen, wrapped...)
	p.g.Line(p.on(false, endL-k.Of(0.5), vo), p.on(false, left+gap, vo), pen)
	p.g.Line(p.on(true, right+gap, vo), p.on(true, endR-k.Of(0.5), vo), pen)
	p.space.Stroke(p.on(false, endL, vo), p.on(false, p.tan, vo))
	p.space.Stroke(p.on(true, endR, vo), p.on(true, p.tan, vo))
	for _, side := range []struct {
		right bool
		at    float64
		cut   bool
	}{{false, left, p.cutL}, {true, right, p.cutR}} {
		// the seam, as a short line across
		a, b := p.on(side.right, side.at, vo+k.Of(2.2)), p.on(side.right, side.at, vo-k.Of(1.2))
		p.g.Part(scene.Tag{Class: "seam"}).Line(a, b, scene.Pen(scene.Seams, k.Seam))
		if side.cut {
			m := p.tan + (side.at-p.tan)/2
			white := scene.Style{Layer: scene.Walls, Fill: scene.Solid(scene.White)}
			w := k.Of(1.2)
			p.g.Polygon(white, p.on(side.right, m-w, vo+k.Of(2)), p.on(side.right, m+w, vo+k.Of(2)), p.on(side.right, m+w, -bt-k.Of(1)), p.on(side.right, m-w, -bt-k.Of(1)))
			draft.Break(p.g, k, scene.Walls, p.on(side.right, m-w, vo+k.Of(2)), p.on(side.right, m-w, -bt-k.Of(1)))
			draft.Break(p.g, k, scene.Walls, p.on(side.right, m+w, vo+k.Of(2)), p.on(side.right, m+w, -bt-k.Of(1)))
		}
	}
	p.dims(bt, vo)
	p.numbers(endL, endR, bt, vo)
}

// dims gives both returns, on the outer side of the bend.
func (p *cornerPlan) dims(bt, vo float64) {
	k := p.look
	gap, sign := bt, 1.0 // to the left of the way: behind the board of an inside corner
	if p.c.Kind == room.Outside {
		gap, sign = vo+k.Of(1.2), -1
	}
	off := sign * (gap + k.Of(9))
	for _, side := range []struct {
		right  bool
		at     float64
		figure L
	}{{false, p.left, p.c.LeftReturn}, {true, p.right, p.c.RightReturn}} {
		a, b := p.on(false, p.tan+side.at, 0), p.on(false, p.tan, 0)
		if side.right {
			a, b = p.on(true, p.tan, 0), p.on(true, p.tan+side.at, 0)
		}
		if side.at == 0 {
			continue
		}
		d := draft.Aligned{A: a, B: b, Off: off, Gap: gap, Figure: p.style.Format(side.figure),
			Tag: scene.Tag{Class: "dimension", Data: []scene.Datum{datum("tier", "return"), datum("corner", p.c.Name), datum("width", mm(side.figure))}}}
		if !side.right && scene.Width(d.Figure, k.Small, false)+k.Of(3) > side.at { // its figure goes out away from the bend
			d.A, d.B, d.Off = b, a, -off
		}
		d.Draw(p.g, k, p.space)
	}
}

// numbers letters the sheets, on the inner side of the bend: the wrapped one at the bend, its neighbours past the seams.
func (p *cornerPlan) numbers(endL, endR, bt, vo float64) {
	k := p.look
	inner := vo + k.Of(7.2)
	if p.c.Kind == room.Outside {
		inner = -bt - k.Of(6.6)
	}
	d := k.Of(9)
	bis := p.off(inner)
	dx, dy := bis.X-p.at.X, bis.Y-p.at.Y
	l := math.Hypot(dx, dy)
	c := p.at.Add(dx/l*(math.Abs(inner)+k.Of(6.5)), dy/l*(math.Abs(inner)+k.Of(6.5)))
	left, right := p.c.Sheet-1, p.c.Sheet+1
	for _, m := range p.run.Seams {
		if m.LeftSheet == p.c.Sheet {
			right = m.RightSheet
		}
		if m.RightSheet == p.c.Sheet {
			left = m.LeftSheet
		}
	}
	put := func(place int, c scene.Point, d float64) {
		sh := p.sheetAt(place)
		if sh == nil {
			return
		}
		in := p.g.Part(scene.Tag{Class: "sheet-number", Data: []scene.Datum{datum("place", fmt.Sprint(place))}})
		p.space.Take(draft.Disc(in, k, scene.Numbers, c, d, k.Seam, numberOf(sh), k.Medium, true))
	}
	put(p.c.Sheet, c, d)
	off := math.Copysign(math.Abs(inner), inner)
	a, b := p.on(false, p.tan+p.left+k.Of(6), off), p.on(true, p.tan+p.right+k.Of(6), off)
	small := k.Of(7.5)
	far := func(q, o scene.Point) bool { return math.Hypot(q.X-o.X, q.Y-o.Y) > (d+small)/2+k.Of(0.8) }
	if far(a, c) {
		put(left, a, small)
	}
	if far(b, c) && far(a, b) {
		put(right, b, small)
	}
}

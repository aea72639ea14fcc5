package detail

import (
	"fmt"
	"math"

	"flitchlay/internal/draft"
	"flitchlay/internal/elevation"
	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
)

// Thicknesses of a detail on the office page: veneer is drawn as a line, not to its thickness.
const (
	BoardThick = 4.0
	VeneerPen  = 1.0
	VeneerOff  = 1.4 // of the middle of the veneer from the face
	StubLength = 11.0
)

// Pose is how a chain comes to stand in a cell.
type Pose struct {
	Scale    int64
	Wide     bool        // over two cells
	Rotation float64     // of its first segment
	Leg      float64     // the longest that a return past the outer bends is drawn
	At       scene.Point // of its origin, and of its table, in what the cell leaves
	Table    scene.Point
}

// ChainPlan is a chain in plan while it is drawn.
type ChainPlan struct {
	*folio.Set
	Chain
	Pose
	*Geometry
	G      *scene.Group
	Space  *draft.Space
	Origin scene.Point // of its geometry, on the page
	Bt, Vo float64     // board, and middle of the veneer
	Sides  []float64   // of the dimensions of each segment: 1 in the room, -1 behind the board
	Dry    bool        // drawn nowhere, to see what it takes
	Lost   int         // words that found no place, lines that meet others
}

// Shape prepares the geometry for a pose.
func (p *ChainPlan) Shape() {
	k := p.Look
	g := NewGeometry(p.Chain, float64(p.Scale))
	p.Geometry, p.Lost = g, 0
	p.Bt, p.Vo = k.Of(BoardThick), k.Of(VeneerOff)
	if len(p.Bends) == 1 { // drawn smaller than it is; its radius is written
		if v := &g.Verts[0]; v.Tan > k.Of(24) {
			f := k.Of(24) / v.Tan
			v.Radius, v.Tan, v.Arc = v.Radius*f, v.Tan*f, v.Arc*f
		}
	}
	stub := k.Of(StubLength)
	for i := range g.Stops {
		x := &g.Stops[i]
		sg := &g.Segs[x.Seg]
		a, b := g.Bounds(x.Seg)
		if a >= 0 && b >= 0 {
			continue
		}
		v, figure := 0, p.Bends[0].LeftReturn
		if a >= 0 {
			v, figure = a, p.Bends[len(p.Bends)-1].RightReturn
		}
		drawn := figure.MM() / g.Ratio
		if sg.Broken = drawn > p.Leg || x.Beyond; sg.Broken {
			drawn = p.Leg
		}
		rest := stub
		if x.Edge() {
			rest = 0
		}
		sg.Long = g.Verts[v].Tan + drawn + rest
		x.Along = rest
		if a >= 0 {
			x.Along = sg.Long - rest
		}
	}
	for i := range g.Segs { // a board is no thicker than the core between two bends of one kind
		if a, b := g.Bounds(i); a >= 0 && b >= 0 && g.Verts[a].Turn*g.Verts[b].Turn > 0 {
			t := math.Tan(math.Abs(g.Verts[a].Turn)*math.Pi/360) + math.Tan(math.Abs(g.Verts[b].Turn)*math.Pi/360)
			if t > 0 {
				p.Bt = math.Min(p.Bt, 0.7*g.Segs[i].Long/t)
			}
		}
	}
	g.Lay(p.Rotation, stub)
	for i := range g.Segs {
		g.Segs[i].From = g.Segs[i].From.Add(p.Origin.X, p.Origin.Y)
	}
}

// Draw draws the plan.
func (p *ChainPlan) Draw() {
	p.Shape()
	p.Board()
	p.Veneer()
	p.Dimension()
	p.Names()
	p.Numbers()
}

// Board draws the board, hatched, and its face.
func (p *ChainPlan) Board() {
	k := p.Look
	n := len(p.Segs)
	shapes := make([][]scene.Point, n)
	var face, back []scene.Point
	for i := range p.Segs {
		long := p.Segs[i].Long
		a, b := p.Bounds(i)
		start, end := []scene.Point{p.On(i, 0, 0)}, []scene.Point{p.On(i, long, 0)}
		backA, backB := p.On(i, 0, -p.Bt), p.On(i, long, -p.Bt)
		if a >= 0 {
			arc := p.Round(a, 0)
			start, backA = arc[len(arc)/2:], p.Corner(a, -p.Bt)
		}
		if b >= 0 {
			arc := p.Round(b, 0)
			end, backB = arc[:len(arc)/2+1], p.Corner(b, -p.Bt)
		}
		front := append(append([]scene.Point{}, start...), end...)
		shapes[i] = append(append([]scene.Point{}, front...), backB, backA)
		face = append(face, front...)
		back = append(back, backA, backB)
		p.Space.Stroke(backA, backB)
		p.Space.Stroke(scene.Pt((backA.X+start[0].X)/2, (backA.Y+start[0].Y)/2), scene.Pt((backB.X+front[len(front)-1].X)/2, (backB.Y+front[len(front)-1].Y)/2))
		for j := 1; j < len(front); j++ {
			p.Space.Stroke(front[j-1], front[j])
		}
	}
	var all []scene.Point
	for _, s := range shapes {
		all = append(all, s...)
	}
	box := BoxAround(all)
	for _, s := range shapes {
		if p.Dry {
			break
		}
		draft.Hatch(p.G.Clipped(s...), scene.Pen(scene.Hatch, k.Dimension), box, k.Of(1.6), true)
	}
	if p.Loop {
		p.G.Polygon(scene.Pen(scene.Walls, k.Outline), face...)
		p.G.Polygon(scene.Pen(scene.Walls, k.Thin), back...)
		return
	}
	p.G.Polyline(scene.Pen(scene.Walls, k.Outline), face...)
	p.G.Polyline(scene.Pen(scene.Walls, k.Thin), back...)
	for _, x := range p.Stops {
		if p.Inner(x.Seg) {
			continue
		}
		along := 0.0
		if a, _ := p.Bounds(x.Seg); a >= 0 {
			along = p.Segs[x.Seg].Long
		}
		if x.Edge() {
			p.G.Line(p.On(x.Seg, along, 0), p.On(x.Seg, along, -p.Bt), scene.Pen(scene.Walls, k.Outline))
			continue
		}
		draft.Break(p.G, k, scene.Walls, p.On(x.Seg, along, k.Of(3)), p.On(x.Seg, along, -p.Bt-k.Of(1.4)))
		for _, side := range []float64{-1.9, 0, 1.9} { // what the zigzag takes
			p.Space.Stroke(p.On(x.Seg, along+k.Of(side), k.Of(3)), p.On(x.Seg, along+k.Of(side), -p.Bt-k.Of(1.4)))
		}
	}
}

// BoxAround is the box of some points.
func BoxAround(points []scene.Point) scene.Box {
	box := scene.Box{X0: math.Inf(1), Y0: math.Inf(1), X1: math.Inf(-1), Y1: math.Inf(-1)}
	for _, q := range points {
		box = scene.Box{X0: math.Min(box.X0, q.X), Y0: math.Min(box.Y0, q.Y), X1: math.Max(box.X1, q.X), Y1: math.Max(box.Y1, q.Y)}
	}
	return box
}

// SheetRun is what of a sheet the plan shows: from one stop to the next, or to where the plan is broken off.
type SheetRun struct {
	Place    int
	From, To Stop
	Bends    []int // vertices that it goes round
	Stub     bool  // a neighbour, of which no more is seen than that it goes on
	Gap      [2]bool
}

// Sheets are the sheets of the plan, in order.
func (p *ChainPlan) Sheets() []SheetRun {
	n := len(p.Stops)
	var list []SheetRun
	if !p.Loop {
		first, last := p.Stops[0], p.Stops[n-1]
		if first.Left > 0 {
			list = append(list, SheetRun{Place: first.Left, From: Stop{Along: p.Look.Of(0.5)}, To: first, Stub: true, Gap: [2]bool{false, true}})
		}
		for i := range n - 1 {
			list = append(list, p.SheetBetween(p.Stops[i], p.Stops[i+1], false))
		}
		if last.Right > 0 {
			end := p.Segs[last.Seg].Long
			list = append(list, SheetRun{Place: last.Right, From: last, To: Stop{Seg: last.Seg, Along: end - p.Look.Of(0.5)}, Stub: true, Gap: [2]bool{true, false}})
		}
		return list
	}
	for i := range n {
		if from, to := p.Stops[i], p.Stops[(i+1)%n]; from.Right > 0 {
			list = append(list, p.SheetBetween(from, to, i == n-1))
		}
	}
	return list
}

// SheetBetween is the sheet from one stop to another. over: it goes on over the end of the loop.
func (p *ChainPlan) SheetBetween(from, to Stop, over bool) SheetRun {
	r := SheetRun{Place: from.Right, From: from, To: to, Gap: [2]bool{!from.Beyond, !to.Beyond}}
	if r.Place == 0 {
		r.Place = to.Left
	}
	n := len(p.Segs)
	count := to.Seg - from.Seg
	if over {
		count += n
	}
	for j := range count {
		_, b := p.Bounds((from.Seg + j) % n)
		r.Bends = append(r.Bends, b)
	}
	return r
}

// Path is the line of a sheet, so far off the face.
func (p *ChainPlan) Path(r SheetRun, off float64) []scene.Point {
	gap := p.Look.Of(0.5)
	a, b := r.From.Along, r.To.Along
	if r.Gap[0] {
		a += gap
	}
	if r.Gap[1] {
		b -= gap
	}
	if len(r.Bends) == 0 {
		if b-a < 0.2 {
			return nil
		}
		return []scene.Point{p.On(r.From.Seg, a, off), p.On(r.To.Seg, b, off)}
	}
	// not past where the lines of two faces meet
	reach := func(v int) float64 {
		return p.Verts[v].Tan + math.Max(0, math.Copysign(off, p.Verts[v].Turn)*math.Tan(math.Abs(p.Verts[v].Turn)*math.Pi/360)) + 0.1
	}
	a = math.Min(a, p.Segs[r.From.Seg].Long-reach(r.Bends[0]))
	b = math.Max(b, reach(r.Bends[len(r.Bends)-1]))
	points := []scene.Point{p.On(r.From.Seg, a, off)}
	for _, v := range r.Bends {
		points = append(points, p.Round(v, off)...)
	}
	return append(points, p.On(r.To.Seg, b, off))
}

// Veneer draws the sheets: one line round the bends, gaps at its seams.
func (p *ChainPlan) Veneer() {
	k := p.Look
	pen := scene.Pen(scene.Covering, k.Of(VeneerPen))
	pen.Join = scene.RoundJoin
	for _, r := range p.Sheets() {
		points := p.Path(r, p.Vo)
		if len(points) < 2 {
			continue
		}
		in := p.G
		if !r.Stub {
			in = p.G.Part(scene.Tag{Class: "sheet", Title: "sheet " + elevation.NumberOf(elevation.SheetAt(p.Set, r.Place)), Data: []scene.Datum{folio.Datum("place", fmt.Sprint(r.Place))}})
		}
		in.Polyline(pen, points...)
		for _, off := range []float64{p.Vo - k.Of(VeneerPen)/2, p.Vo + k.Of(VeneerPen)/2} {
			rim := p.Path(r, off)
			for i := 1; i < len(rim); i++ {
				p.Space.Stroke(rim[i-1], rim[i])
			}
		}
	}
	for _, x := range p.Stops {
		if x.Beyond {
			p.Broken(x)
			continue
		}
		if x.Raw {
			p.RawEnd(x)
		} else { // the seam, as a short line across
			a, b := p.On(x.Seg, x.Along, p.Vo+k.Of(2.2)), p.On(x.Seg, x.Along, p.Vo-k.Of(1.2))
			p.G.Part(scene.Tag{Class: "seam", Data: []scene.Datum{folio.Datum("at", folio.Mm(x.S))}}).Line(a, b, scene.Pen(scene.Seams, k.Seam))
			p.Space.Stroke(a, b)
		}
		p.Broken(x)
	}
}

package detail

import (
	"fmt"
	"math"
	"slices"

	"flitchlay/internal/draft"
	"flitchlay/internal/elevation"
	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
)

// Thicknesses of a detail on the office page: veneer is drawn as a line, not to its thickness.
const (
	boardThick = 4.0
	veneerPen  = 1.0
	veneerOff  = 1.4 // of the middle of the veneer from the face
	stubLength = 11.0
	roundMost  = 24.0 // of the round of a lone bend from its sharp corner: a larger one is drawn smaller than it is
)

// pose is how a chain comes to stand in a cell.
type pose struct {
	scale    int64
	wide     bool        // over two cells
	rotation float64     // of its first segment
	leg      float64     // the longest that a return past the outer bends is drawn
	at       scene.Point // of its origin, and of its table, in what the cell leaves
	table    scene.Point
}

// chainPlan is a chain in plan while it is drawn.
type chainPlan struct {
	*folio.Set
	chain
	pose
	*geometry
	g      *scene.Group
	space  *draft.Space
	origin scene.Point // of its geometry, on the page
	bt, vo float64     // board, and middle of the veneer
	sides  []float64   // of the dimensions of each segment: 1 in the room, -1 behind the board
	dry    bool        // drawn nowhere, to see what it takes
	lost   int         // words that found no place, lines that meet others
}

// shape prepares the geometry for a pose.
func (p *chainPlan) shape() {
	k := p.Look
	g := newGeometry(p.chain, float64(p.scale))
	p.geometry, p.lost = g, 0
	p.bt, p.vo = k.Of(boardThick), k.Of(veneerOff)
	if len(p.bends) == 1 { // drawn smaller than it is; its radius is written
		if v := &g.verts[0]; v.tan > k.Of(roundMost) {
			f := k.Of(roundMost) / v.tan
			v.radius, v.tan, v.arc = v.radius*f, v.tan*f, v.arc*f
		}
	}
	stub := k.Of(stubLength)
	for i := range g.stops {
		x := &g.stops[i]
		sg := &g.segs[x.seg]
		a, b := g.bounds(x.seg)
		if a >= 0 && b >= 0 {
			continue
		}
		v, figure := 0, p.bends[0].LeftReturnBottom
		if a >= 0 {
			v, figure = a, p.bends[len(p.bends)-1].RightReturnBottom
		}
		drawn := figure.MM() / g.ratio
		if sg.broken = drawn > p.leg || x.beyond; sg.broken {
			drawn = p.leg
		}
		rest := stub
		if x.edge() {
			rest = 0
		}
		sg.long = g.verts[v].tan + drawn + rest
		x.along = rest
		if a >= 0 {
			x.along = sg.long - rest
		}
	}
	for i := range g.segs { // a board is no thicker than the core between two bends of one kind
		if a, b := g.bounds(i); a >= 0 && b >= 0 && g.verts[a].turn*g.verts[b].turn > 0 {
			t := math.Tan(math.Abs(g.verts[a].turn)*math.Pi/360) + math.Tan(math.Abs(g.verts[b].turn)*math.Pi/360)
			if t > 0 {
				p.bt = math.Min(p.bt, 0.7*g.segs[i].long/t)
			}
		}
	}
	g.lay(p.rotation, stub)
	for i := range g.segs {
		g.segs[i].from = g.segs[i].from.Add(p.origin.X, p.origin.Y)
	}
}

// draw draws the plan.
func (p *chainPlan) draw() {
	p.shape()
	p.board()
	p.veneer()
	p.dimension()
	p.names()
	p.numbers()
}

// slab is the board behind one segment: its face with half the bends at its ends, and the two ends of its back.
type slab struct {
	front []scene.Point
	back  [2]scene.Point
}

// outline goes once round the slab.
func (s slab) outline() []scene.Point {
	return append(slices.Clone(s.front), s.back[1], s.back[0])
}

// slabs are the boards of all segments.
func (p *chainPlan) slabs() []slab {
	list := make([]slab, len(p.segs))
	for i := range p.segs {
		long := p.segs[i].long
		start, end := []scene.Point{p.on(i, 0, 0)}, []scene.Point{p.on(i, long, 0)}
		back := [2]scene.Point{p.on(i, 0, -p.bt), p.on(i, long, -p.bt)}
		a, b := p.bounds(i)
		if a >= 0 {
			arc := p.round(a, 0)
			start, back[0] = arc[len(arc)/2:], p.corner(a, -p.bt)
		}
		if b >= 0 {
			arc := p.round(b, 0)
			end, back[1] = arc[:len(arc)/2+1], p.corner(b, -p.bt)
		}
		list[i] = slab{slices.Concat(start, end), back}
	}
	return list
}

// board draws the board, hatched, and its face.
func (p *chainPlan) board() {
	k := p.Look
	slabs := p.slabs()
	var face, back, all []scene.Point
	for _, s := range slabs {
		a, b, last := s.back[0], s.back[1], len(s.front)-1
		face, back, all = append(face, s.front...), append(back, a, b), append(all, s.outline()...)
		p.space.Stroke(a, b)
		p.space.Stroke(scene.Pt((a.X+s.front[0].X)/2, (a.Y+s.front[0].Y)/2), scene.Pt((b.X+s.front[last].X)/2, (b.Y+s.front[last].Y)/2))
		for j := range last {
			p.space.Stroke(s.front[j], s.front[j+1])
		}
	}
	if !p.dry {
		for _, s := range slabs {
			draft.Hatch(p.g.Clipped(s.outline()...), scene.Pen(scene.Hatch, k.Dimension), scene.Around(all...), k.Of(1.6), true)
		}
	}
	if p.loop {
		p.g.Polygon(scene.Pen(scene.Walls, k.Outline), face...)
		p.g.Polygon(scene.Pen(scene.Walls, k.Thin), back...)
		return
	}
	p.g.Polyline(scene.Pen(scene.Walls, k.Outline), face...)
	p.g.Polyline(scene.Pen(scene.Walls, k.Thin), back...)
	p.boardEnds()
}

// boardEnds closes the board where its wall ends, and breaks it off where the wall goes on.
func (p *chainPlan) boardEnds() {
	k := p.Look
	for _, x := range p.stops {
		if p.inner(x.seg) {
			continue
		}
		along := 0.0
		if a, _ := p.bounds(x.seg); a >= 0 {
			along = p.segs[x.seg].long
		}
		if x.edge() {
			p.g.Line(p.on(x.seg, along, 0), p.on(x.seg, along, -p.bt), scene.Pen(scene.Walls, k.Outline))
			continue
		}
		draft.Break(p.g, k, scene.Walls, p.on(x.seg, along, k.Of(3)), p.on(x.seg, along, -p.bt-k.Of(1.4)))
		for _, side := range []float64{-1.9, 0, 1.9} { // what the zigzag takes
			p.space.Stroke(p.on(x.seg, along+k.Of(side), k.Of(3)), p.on(x.seg, along+k.Of(side), -p.bt-k.Of(1.4)))
		}
	}
}

// sheetRun is what of a sheet the plan shows: from one stop to the next, or to where the plan is broken off.
type sheetRun struct {
	place    int
	from, to stop
	bends    []int // vertices that it goes round
	stub     bool  // a neighbour, of which no more is seen than that it goes on
	gap      [2]bool
}

// sheets are the sheets of the plan, in order.
func (p *chainPlan) sheets() []sheetRun {
	n := len(p.stops)
	var list []sheetRun
	if !p.loop {
		first, last := p.stops[0], p.stops[n-1]
		if first.left > 0 {
			list = append(list, sheetRun{place: first.left, from: stop{along: p.Look.Of(0.5)}, to: first, stub: true, gap: [2]bool{false, true}})
		}
		for i := range n - 1 {
			list = append(list, p.sheetBetween(p.stops[i], p.stops[i+1], false))
		}
		if last.right > 0 {
			end := p.segs[last.seg].long
			list = append(list, sheetRun{place: last.right, from: last, to: stop{seg: last.seg, along: end - p.Look.Of(0.5)}, stub: true, gap: [2]bool{true, false}})
		}
		return list
	}
	for i := range n {
		if from, to := p.stops[i], p.stops[(i+1)%n]; from.right > 0 {
			list = append(list, p.sheetBetween(from, to, i == n-1))
		}
	}
	return list
}

// sheetBetween is the sheet from one stop to another. over: it goes on over the end of the loop.
func (p *chainPlan) sheetBetween(from, to stop, over bool) sheetRun {
	r := sheetRun{place: from.right, from: from, to: to, gap: [2]bool{!from.beyond, !to.beyond}}
	if r.place == 0 {
		r.place = to.left
	}
	n := len(p.segs)
	count := to.seg - from.seg
	if over {
		count += n
	}
	for j := range count {
		_, b := p.bounds((from.seg + j) % n)
		r.bends = append(r.bends, b)
	}
	return r
}

// path is the line of a sheet, so far off the face.
func (p *chainPlan) path(r sheetRun, off float64) []scene.Point {
	gap := p.Look.Of(0.5)
	a, b := r.from.along, r.to.along
	if r.gap[0] {
		a += gap
	}
	if r.gap[1] {
		b -= gap
	}
	if len(r.bends) == 0 {
		if b-a < 0.2 {
			return nil
		}
		return []scene.Point{p.on(r.from.seg, a, off), p.on(r.to.seg, b, off)}
	}
	// not past where the lines of two faces meet
	reach := func(v int) float64 {
		return p.verts[v].tan + math.Max(0, math.Copysign(off, p.verts[v].turn)*math.Tan(math.Abs(p.verts[v].turn)*math.Pi/360)) + 0.1
	}
	a = math.Min(a, p.segs[r.from.seg].long-reach(r.bends[0]))
	b = math.Max(b, reach(r.bends[len(r.bends)-1]))
	points := []scene.Point{p.on(r.from.seg, a, off)}
	for _, v := range r.bends {
		points = append(points, p.round(v, off)...)
	}
	return append(points, p.on(r.to.seg, b, off))
}

// veneer draws the sheets: one line round the bends, gaps at its seams.
func (p *chainPlan) veneer() {
	k := p.Look
	pen := scene.Pen(scene.Covering, k.Of(veneerPen))
	pen.Join = scene.RoundJoin
	for _, r := range p.sheets() {
		points := p.path(r, p.vo)
		if len(points) < 2 {
			continue
		}
		in := p.g
		if !r.stub {
			in = p.g.Part(scene.Tag{Class: "sheet", Title: "sheet " + elevation.NumberOf(elevation.SheetAt(p.Set, r.place)), Data: []scene.Datum{folio.Datum("place", fmt.Sprint(r.place))}})
		}
		in.Polyline(pen, points...)
		for _, off := range []float64{p.vo - k.Of(veneerPen)/2, p.vo + k.Of(veneerPen)/2} {
			rim := p.path(r, off)
			for i := 1; i < len(rim); i++ {
				p.space.Stroke(rim[i-1], rim[i])
			}
		}
	}
	for _, x := range p.stops {
		if x.beyond {
			p.broken(x)
			continue
		}
		if x.raw {
			p.rawEnd(x)
		} else { // the seam, as a short line across
			a, b := p.on(x.seg, x.along, p.vo+k.Of(2.2)), p.on(x.seg, x.along, p.vo-k.Of(1.2))
			p.g.Part(scene.Tag{Class: "seam", Data: []scene.Datum{folio.Datum("at", folio.Mm(x.s))}}).Line(a, b, scene.Pen(scene.Seams, k.Seam))
			p.space.Stroke(a, b)
		}
		p.broken(x)
	}
}

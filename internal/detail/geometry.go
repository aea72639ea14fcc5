package detail

import (
	"cmp"
	"math"
	"slices"

	"flitchlay/internal/face"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// vertex is a bend of a chain in plan.
type vertex struct {
	c      *layout.Corner // nil: the bend that is cut
	name   string
	at     L       // s
	half   L       // of its arc, along s
	turn   float64 // degrees to the right: an inside bend turns right
	radius float64 // of the face, on paper
	tan    float64 // from the sharp corner to the tangent point
	arc    float64 // half the length of the arc
}

func (c chain) vertices() []vertex {
	var list []vertex
	for _, b := range c.bends {
		list = append(list, vertex{c: b, name: b.Name, at: b.At, half: b.To - b.At - max(0, b.Lean), turn: turned(b.Kind, b.Angle), radius: b.Radius.MM()})
	}
	if x := c.cut; x != nil {
		list = append(list, vertex{name: x.Name, at: x.At, half: x.To - x.At - max(0, x.Lean), turn: turned(x.Kind, x.Angle), radius: x.Radius.MM()})
	}
	return list
}

func turned(k room.Bend, angle float64) float64 {
	if k == room.Outside {
		return -angle
	}
	return angle
}

// stop is where a sheet of a chain ends: at a seam, at a raw end, or where the plan is broken off.
type stop struct {
	seg         int
	along       float64 // from the start of its segment, on paper
	s           L
	left, right int // places of the sheets at both sides, 0 for none
	raw, beyond bool
	end, kind   string // what a raw end meets, in words and as its kind
}

// edge reports whether the wall itself ends with the covering.
func (x stop) edge() bool { return x.kind == "outside edge" }

// segment is one face of a chain: between two bends, or from the first or last bend to where the plan is broken off.
type segment struct {
	from   scene.Point
	d, r   scene.Point // along it, and into the room
	long   float64     // from sharp corner to sharp corner
	broken bool        // drawn shorter than it is
}

// geometry is the plan of a chain at a scale, the way going through the paper from left to right, the room at its right.
//
//	      d ->            inside: the way turns right
//	------------+
//	   room  r  |
//	            v
type geometry struct {
	chain
	ratio float64
	verts []vertex
	segs  []segment // of an open chain one more than bends
	stops []stop    // in order
	miss  float64   // of a loop: how far it missed closing, as a share of its girth
}

// newGeometry measures a chain; it stands nowhere yet.
func newGeometry(c chain, scale float64) *geometry {
	g := &geometry{chain: c, ratio: scale, verts: c.vertices()}
	for i := range g.verts {
		v := &g.verts[i]
		half := math.Abs(v.turn) * math.Pi / 360
		v.radius /= scale
		v.tan, v.arc = v.radius*math.Tan(half), v.radius*half
	}
	n := len(g.verts)
	if !c.loop {
		n++
	}
	g.segs = make([]segment, n)
	for i := range g.segs {
		if a, b := g.bounds(i); a >= 0 && b >= 0 {
			va, vb := g.verts[a], g.verts[b]
			g.segs[i].long = around(c.run, vb.at-va.at).MM()/scale - va.arc - vb.arc + va.tan + vb.tan
		}
	}
	g.stop()
	return g
}

// bounds are the bends at the start and the end of a segment, -1 where it is broken off.
func (g *geometry) bounds(i int) (a, b int) {
	n := len(g.verts)
	if g.loop {
		return i, (i + 1) % n
	}
	a, b = i-1, i
	if b == n {
		b = -1
	}
	return a, b
}

// inner reports whether a segment lies between two bends.
func (g *geometry) inner(i int) bool {
	a, b := g.bounds(i)
	return a >= 0 && b >= 0
}

func (g *geometry) vertexBefore(i int) vertex { a, _ := g.bounds(i); return g.verts[a] }

func (g *geometry) vertexAfter(i int) vertex { _, b := g.bounds(i); return g.verts[b] }

// stop finds the seams and raw ends of the chain.
func (g *geometry) stop() {
	r := g.run
	var all []stop
	for _, m := range r.Seams {
		all = append(all, stop{s: m.At, left: m.LeftSheet, right: m.RightSheet})
	}
	for i, sp := range r.Spans {
		line := &r.Line.Spans[i]
		if !sp.Closed && !sp.LeftSeam {
			all = append(all, stop{s: sp.Left, right: sp.FirstSheet, raw: true, end: sp.LeftEnd, kind: face.EndKind(line.LeftEnd.Kind)})
		}
		if !sp.Closed && !sp.RightSeam {
			all = append(all, stop{s: sp.Right, left: sp.LastSheet, raw: true, end: sp.RightEnd, kind: face.EndKind(line.RightEnd.Kind)})
		}
	}
	for i := range g.segs {
		a, b := g.bounds(i)
		switch {
		case g.loop && g.cut != nil && b == len(g.verts)-1: // to the bend that is cut
			g.between(i, all, true, false)
		case g.loop && g.cut != nil && a == len(g.verts)-1:
			g.between(i, all, false, true)
		case a >= 0 && b >= 0:
			g.between(i, all, false, false)
		case a < 0:
			g.stops = append(g.stops, nearest(all, i, func(x stop) (L, bool) {
				return around(r, g.verts[b].at-x.s), x.raw && x.right > 0 || !x.raw
			}))
		default:
			g.stops = append(g.stops, nearest(all, i, func(x stop) (L, bool) {
				return around(r, x.s-g.verts[a].at), x.raw && x.left > 0 || !x.raw
			}))
		}
	}
}

// nearest is the stop next to a bend.
func nearest(all []stop, seg int, far func(stop) (L, bool)) stop {
	best := stop{seg: seg, beyond: true}
	least := L(math.MaxInt64)
	for _, x := range all {
		if d, ok := far(x); ok && d >= 0 && d < least {
			least, best = d, x
			best.seg = seg
		}
	}
	return best
}

// between adds the seams between two bends, in order. A bend that is cut stops the covering at its face.
func (g *geometry) between(i int, all []stop, cutAfter, cutBefore bool) {
	a, b := g.vertexBefore(i), g.vertexAfter(i)
	whole := around(g.run, b.at-a.at)
	far := func(x stop) L { return around(g.run, x.s-a.at) }
	var list []stop
	for _, x := range all {
		d := far(x)
		if x.raw || d < 0 || d >= whole || d == 0 && !g.loop && i == 1 { // on the first bend: the leg has it
			continue
		}
		x.seg, x.along = i, math.Min(math.Max(d.MM()/g.ratio-a.arc+a.tan, 0), g.segs[i].long)
		list = append(list, x)
	}
	slices.SortStableFunc(list, func(x, y stop) int { return cmp.Compare(far(x), far(y)) })
	if cutBefore {
		place := g.bends[0].Sheet
		if len(list) > 0 {
			place = list[0].left
		}
		g.stops = append(g.stops, stop{seg: i, along: a.tan, s: a.at, right: place, raw: true})
	}
	g.stops = append(g.stops, list...)
	if cutAfter {
		place := g.bends[len(g.bends)-1].Sheet
		if n := len(list); n > 0 {
			place = list[n-1].right
		}
		g.stops = append(g.stops, stop{seg: i, along: g.segs[i].long - b.tan, s: b.at, left: place, raw: true})
	}
}

// figures are the pieces of a face between two bends as its chain prints them: one where no seam is on it. They add up.
func (g *geometry) figures(style length.Style, i int) []string {
	a, b := g.vertexBefore(i), g.vertexAfter(i)
	at := []L{a.half}
	for _, x := range g.stops {
		if d := around(g.run, x.s-a.at); x.seg == i && !x.raw && d > a.half && d < around(g.run, b.at-a.at)-b.half {
			at = append(at, d)
		}
	}
	return style.Chain(append(at, around(g.run, b.at-a.at)-b.half))
}

// closes reports whether the faces of a loop meet, within a tenth of their girth.
func (c chain) closes() bool {
	if len(c.bends) < 2 || math.Abs(math.Abs(c.turns())-360) > 30 {
		return false
	}
	g := newGeometry(c, 1)
	g.lay(0, 0)
	return len(g.verts) >= 3 && g.miss < 0.1
}

// lay gives every segment its place: the first bend of an open chain, or of a loop, in the origin. Legs go on from the
// outer bends by what is given.
//
// Units: rotation of the first segment in degrees, clockwise as seen.
func (g *geometry) lay(rotation, stub float64) {
	dir := rotation
	at := scene.Pt(0, 0)
	for i := range g.segs {
		sg := &g.segs[i]
		a, b := g.bounds(i)
		if a >= 0 && i > 0 {
			dir += g.verts[a].turn
		}
		sin, cos := scene.SinCos(dir)
		sg.d, sg.r = scene.Pt(cos, sin), scene.Pt(-sin, cos)
		if a < 0 {
			sg.from = at.Add(-sg.d.X*sg.long, -sg.d.Y*sg.long)
			continue
		}
		sg.from = at
		if b >= 0 {
			at = at.Add(sg.d.X*sg.long, sg.d.Y*sg.long)
		}
	}
	if !g.loop {
		return
	}
	// what a loop misses is shared by its faces, so that it is drawn closed
	girth := 0.0
	for _, sg := range g.segs {
		girth += sg.long
	}
	g.miss = math.Hypot(at.X, at.Y) / girth
	done := 0.0
	var points []scene.Point
	for _, sg := range g.segs {
		points = append(points, sg.from.Add(-at.X*done/girth, -at.Y*done/girth))
		done += sg.long
	}
	for i := range g.segs {
		sg, to := &g.segs[i], points[(i+1)%len(points)]
		sg.from = points[i]
		dx, dy := to.X-sg.from.X, to.Y-sg.from.Y
		if l := math.Hypot(dx, dy); l > 0 && math.Hypot(at.X, at.Y) > 1e-6 {
			sg.long, sg.d, sg.r = l, scene.Pt(dx/l, dy/l), scene.Pt(-dy/l, dx/l)
		}
	}
}

// on is a place on a face, moved off it: positive into the room.
func (g *geometry) on(i int, along, off float64) scene.Point {
	s := &g.segs[i]
	return s.from.Add(s.d.X*along+s.r.X*off, s.d.Y*along+s.r.Y*off)
}

// before and after are the segments at a bend.
func (g *geometry) before(v int) int {
	if g.loop {
		return (v + len(g.segs) - 1) % len(g.segs)
	}
	return v
}

func (g *geometry) after(v int) int {
	if g.loop {
		return v
	}
	return v + 1
}

// corner is where the two faces at a bend, both moved off, meet.
func (g *geometry) corner(v int, off float64) scene.Point {
	r1, r2 := g.segs[g.before(v)].r, g.segs[g.after(v)].r
	at := g.on(g.after(v), 0, 0)
	den := math.Max(1+r1.X*r2.X+r1.Y*r2.Y, 0.05)
	return at.Add((r1.X+r2.X)*off/den, (r1.Y+r2.Y)*off/den)
}

// round is a bend at a distance off the face: a point, or the arc of an eased corner.
func (g *geometry) round(v int, off float64) []scene.Point {
	x := &g.verts[v]
	side := math.Copysign(1, x.turn)
	r := x.radius - side*off
	if x.radius == 0 || r <= 0.05 {
		return []scene.Point{g.corner(v, off)}
	}
	seg := &g.segs[g.before(v)]
	c := g.on(g.before(v), seg.long-x.tan, side*x.radius)
	var points []scene.Point
	const n = 12
	for i := range n + 1 {
		sin, cos := scene.SinCos(x.turn * float64(i) / n)
		// from the centre back to the face, turned with the way
		dx, dy := -seg.r.X*side, -seg.r.Y*side
		points = append(points, c.Add(r*(dx*cos-dy*sin), r*(dx*sin+dy*cos)))
	}
	return points
}

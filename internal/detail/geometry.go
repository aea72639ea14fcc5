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

// Vertex is a bend of a chain in plan.
type Vertex struct {
	C      *layout.Corner // nil: the bend that is cut
	Name   string
	At     L       // s
	Half   L       // of its arc, along s
	Turn   float64 // degrees to the right: an inside bend turns right
	Radius float64 // of the face, on paper
	Tan    float64 // from the sharp corner to the tangent point
	Arc    float64 // half the length of the arc
}

func (c Chain) Vertices() []Vertex {
	var list []Vertex
	for _, b := range c.Bends {
		list = append(list, Vertex{C: b, Name: b.Name, At: b.At, Half: b.To - b.At - max(0, b.Lean), Turn: Turned(b.Kind, b.Angle), Radius: b.Radius.MM()})
	}
	if x := c.Cut; x != nil {
		list = append(list, Vertex{Name: x.Name, At: x.At, Half: x.To - x.At - max(0, x.Lean), Turn: Turned(x.Kind, x.Angle), Radius: x.Radius.MM()})
	}
	return list
}

func Turned(k room.Bend, angle float64) float64 {
	if k == room.Outside {
		return -angle
	}
	return angle
}

// Stop is where a sheet of a chain ends: at a seam, at a raw end, or where the plan is broken off.
type Stop struct {
	Seg         int
	Along       float64 // from the start of its segment, on paper
	S           L
	Left, Right int // places of the sheets at both sides, 0 for none
	Raw, Beyond bool
	End, Kind   string // what a raw end meets, in words and as its kind
}

// Edge reports whether the wall itself ends with the covering.
func (x Stop) Edge() bool { return x.Kind == "outside edge" }

// Segment is one face of a chain: between two bends, or from the first or last bend to where the plan is broken off.
type Segment struct {
	From   scene.Point
	D, R   scene.Point // along it, and into the room
	Long   float64     // from sharp corner to sharp corner
	Broken bool        // drawn shorter than it is
}

// Geometry is the plan of a chain at a scale, the way going through the paper from left to right, the room at its right.
//
//	      d ->            inside: the way turns right
//	------------+
//	   room  r  |
//	            v
type Geometry struct {
	Chain
	Ratio float64
	Verts []Vertex
	Segs  []Segment // of an open chain one more than bends
	Stops []Stop    // in order
	Miss  float64   // of a loop: how far it missed closing, as a share of its girth
}

// NewGeometry measures a chain; it stands nowhere yet.
func NewGeometry(c Chain, scale float64) *Geometry {
	g := &Geometry{Chain: c, Ratio: scale, Verts: c.Vertices()}
	for i := range g.Verts {
		v := &g.Verts[i]
		half := math.Abs(v.Turn) * math.Pi / 360
		v.Radius /= scale
		v.Tan, v.Arc = v.Radius*math.Tan(half), v.Radius*half
	}
	n := len(g.Verts)
	if !c.Loop {
		n++
	}
	g.Segs = make([]Segment, n)
	for i := range g.Segs {
		if a, b := g.Bounds(i); a >= 0 && b >= 0 {
			va, vb := g.Verts[a], g.Verts[b]
			g.Segs[i].Long = Around(c.Run, vb.At-va.At).MM()/scale - va.Arc - vb.Arc + va.Tan + vb.Tan
		}
	}
	g.Stop()
	return g
}

// Bounds are the bends at the start and the end of a segment, -1 where it is broken off.
func (g *Geometry) Bounds(i int) (a, b int) {
	n := len(g.Verts)
	if g.Loop {
		return i, (i + 1) % n
	}
	a, b = i-1, i
	if b == n {
		b = -1
	}
	return a, b
}

// Inner reports whether a segment lies between two bends.
func (g *Geometry) Inner(i int) bool {
	a, b := g.Bounds(i)
	return a >= 0 && b >= 0
}

func (g *Geometry) VertexBefore(i int) Vertex { a, _ := g.Bounds(i); return g.Verts[a] }

func (g *Geometry) VertexAfter(i int) Vertex { _, b := g.Bounds(i); return g.Verts[b] }

// Stop finds the seams and raw ends of the chain.
func (g *Geometry) Stop() {
	r := g.Run
	var all []Stop
	for _, m := range r.Seams {
		all = append(all, Stop{S: m.At, Left: m.LeftSheet, Right: m.RightSheet})
	}
	for i, sp := range r.Spans {
		line := &r.Line.Spans[i]
		if !sp.Closed && !sp.LeftSeam {
			all = append(all, Stop{S: sp.Left, Right: sp.FirstSheet, Raw: true, End: sp.LeftEnd, Kind: face.EndKind(line.LeftEnd.Kind)})
		}
		if !sp.Closed && !sp.RightSeam {
			all = append(all, Stop{S: sp.Right, Left: sp.LastSheet, Raw: true, End: sp.RightEnd, Kind: face.EndKind(line.RightEnd.Kind)})
		}
	}
	for i := range g.Segs {
		a, b := g.Bounds(i)
		switch {
		case g.Loop && g.Cut != nil && b == len(g.Verts)-1: // to the bend that is cut
			g.Between(i, all, true, false)
		case g.Loop && g.Cut != nil && a == len(g.Verts)-1:
			g.Between(i, all, false, true)
		case a >= 0 && b >= 0:
			g.Between(i, all, false, false)
		case a < 0:
			g.Stops = append(g.Stops, Nearest(all, i, func(x Stop) (L, bool) {
				return Around(r, g.Verts[b].At-x.S), x.Raw && x.Right > 0 || !x.Raw
			}))
		default:
			g.Stops = append(g.Stops, Nearest(all, i, func(x Stop) (L, bool) {
				return Around(r, x.S-g.Verts[a].At), x.Raw && x.Left > 0 || !x.Raw
			}))
		}
	}
}

// Nearest is the stop next to a bend.
func Nearest(all []Stop, seg int, far func(Stop) (L, bool)) Stop {
	best := Stop{Seg: seg, Beyond: true}
	least := L(math.MaxInt64)
	for _, x := range all {
		if d, ok := far(x); ok && d >= 0 && d < least {
			least, best = d, x
			best.Seg = seg
		}
	}
	return best
}

// Between adds the seams between two bends, in order. A bend that is cut stops the covering at its face.
func (g *Geometry) Between(i int, all []Stop, cutAfter, cutBefore bool) {
	a, b := g.VertexBefore(i), g.VertexAfter(i)
	whole := Around(g.Run, b.At-a.At)
	far := func(x Stop) L { return Around(g.Run, x.S-a.At) }
	var list []Stop
	for _, x := range all {
		d := far(x)
		if x.Raw || d < 0 || d >= whole || d == 0 && !g.Loop && i == 1 { // on the first bend: the leg has it
			continue
		}
		x.Seg, x.Along = i, math.Min(math.Max(d.MM()/g.Ratio-a.Arc+a.Tan, 0), g.Segs[i].Long)
		list = append(list, x)
	}
	slices.SortStableFunc(list, func(x, y Stop) int { return cmp.Compare(far(x), far(y)) })
	if cutBefore {
		place := g.Bends[0].Sheet
		if len(list) > 0 {
			place = list[0].Left
		}
		g.Stops = append(g.Stops, Stop{Seg: i, Along: a.Tan, S: a.At, Right: place, Raw: true})
	}
	g.Stops = append(g.Stops, list...)
	if cutAfter {
		place := g.Bends[len(g.Bends)-1].Sheet
		if n := len(list); n > 0 {
			place = list[n-1].Right
		}
		g.Stops = append(g.Stops, Stop{Seg: i, Along: g.Segs[i].Long - b.Tan, S: b.At, Left: place, Raw: true})
	}
}

// Figures are the pieces of a face between two bends as its chain prints them: one where no seam is on it. They add up.
func (g *Geometry) Figures(style length.Style, i int) []string {
	a, b := g.VertexBefore(i), g.VertexAfter(i)
	at := []L{a.Half}
	for _, x := range g.Stops {
		if d := Around(g.Run, x.S-a.At); x.Seg == i && !x.Raw && d > a.Half && d < Around(g.Run, b.At-a.At)-b.Half {
			at = append(at, d)
		}
	}
	return style.Chain(append(at, Around(g.Run, b.At-a.At)-b.Half))
}

// Closes reports whether the faces of a loop meet, within a tenth of their girth.
func (c Chain) Closes() bool {
	if len(c.Bends) < 2 || math.Abs(math.Abs(c.Turns())-360) > 30 {
		return false
	}
	g := NewGeometry(c, 1)
	g.Lay(0, 0)
	return len(g.Verts) >= 3 && g.Miss < 0.1
}

// Lay gives every segment its place: the first bend of an open chain, or of a loop, in the origin. Legs go on from the
// outer bends by what is given.
//
// Units: rotation of the first segment in degrees, clockwise as seen.
func (g *Geometry) Lay(rotation, stub float64) {
	dir := rotation
	at := scene.Pt(0, 0)
	for i := range g.Segs {
		sg := &g.Segs[i]
		a, b := g.Bounds(i)
		if a >= 0 && i > 0 {
			dir += g.Verts[a].Turn
		}
		sin, cos := scene.SinCos(dir)
		sg.D, sg.R = scene.Pt(cos, sin), scene.Pt(-sin, cos)
		if a < 0 {
			sg.From = at.Add(-sg.D.X*sg.Long, -sg.D.Y*sg.Long)
			continue
		}
		sg.From = at
		if b >= 0 {
			at = at.Add(sg.D.X*sg.Long, sg.D.Y*sg.Long)
		}
	}
	if !g.Loop {
		return
	}
	// what a loop misses is shared by its faces, so that it is drawn closed
	girth := 0.0
	for _, sg := range g.Segs {
		girth += sg.Long
	}
	g.Miss = math.Hypot(at.X, at.Y) / girth
	done := 0.0
	var points []scene.Point
	for _, sg := range g.Segs {
		points = append(points, sg.From.Add(-at.X*done/girth, -at.Y*done/girth))
		done += sg.Long
	}
	for i := range g.Segs {
		sg, to := &g.Segs[i], points[(i+1)%len(points)]
		sg.From = points[i]
		dx, dy := to.X-sg.From.X, to.Y-sg.From.Y
		if l := math.Hypot(dx, dy); l > 0 && math.Hypot(at.X, at.Y) > 1e-6 {
			sg.Long, sg.D, sg.R = l, scene.Pt(dx/l, dy/l), scene.Pt(-dy/l, dx/l)
		}
	}
}

// On is a place on a face, moved off it: positive into the room.
func (g *Geometry) On(i int, along, off float64) scene.Point {
	s := &g.Segs[i]
	return s.From.Add(s.D.X*along+s.R.X*off, s.D.Y*along+s.R.Y*off)
}

// Before and after are the segments at a bend.
func (g *Geometry) Before(v int) int {
	if g.Loop {
		return (v + len(g.Segs) - 1) % len(g.Segs)
	}
	return v
}

func (g *Geometry) After(v int) int {
	if g.Loop {
		return v
	}
	return v + 1
}

// Corner is where the two faces at a bend, both moved off, meet.
func (g *Geometry) Corner(v int, off float64) scene.Point {
	r1, r2 := g.Segs[g.Before(v)].R, g.Segs[g.After(v)].R
	at := g.On(g.After(v), 0, 0)
	den := math.Max(1+r1.X*r2.X+r1.Y*r2.Y, 0.05)
	return at.Add((r1.X+r2.X)*off/den, (r1.Y+r2.Y)*off/den)
}

// Round is a bend at a distance off the face: a point, or the arc of an eased corner.
func (g *Geometry) Round(v int, off float64) []scene.Point {
	x := &g.Verts[v]
	side := math.Copysign(1, x.Turn)
	r := x.Radius - side*off
	if x.Radius == 0 || r <= 0.05 {
		return []scene.Point{g.Corner(v, off)}
	}
	seg := &g.Segs[g.Before(v)]
	c := g.On(g.Before(v), seg.Long-x.Tan, side*x.Radius)
	var points []scene.Point
	const n = 12
	for i := range n + 1 {
		sin, cos := scene.SinCos(x.Turn * float64(i) / n)
		// from the centre back to the face, turned with the way
		dx, dy := -seg.R.X*side, -seg.R.Y*side
		points = append(points, c.Add(r*(dx*cos-dy*sin), r*(dx*sin+dy*cos)))
	}
	return points
}

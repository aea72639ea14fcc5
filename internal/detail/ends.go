package detail

import (
	"math"

	"flitchlay/internal/draft"
	"flitchlay/internal/scene"
)

// Broken draws the break of a leg that is drawn shorter than it is.
func (p *ChainPlan) Broken(x Stop) {
	k := p.Look
	if !p.Segs[x.Seg].Broken || p.Inner(x.Seg) {
		return
	}
	m, sign := p.Segs[x.Seg].Long, -1.0 // the tangent point of the bend, and the way from it
	if a, b := p.Bounds(x.Seg); a >= 0 {
		m, sign = p.Verts[a].Tan, 1
	} else {
		m -= p.Verts[b].Tan
	}
	far := math.Abs(x.Along-m) / 2
	if len(p.Bends) > 1 { // past the dimension of the next face, which may end on this one
		far = math.Max(far, math.Min(k.Of(17), 2*far-k.Of(4)))
	}
	m += sign * far
	white := scene.Style{Layer: scene.Walls, Fill: scene.Solid(scene.White)}
	w := k.Of(1.2)
	p.G.Polygon(white, p.On(x.Seg, m-w, p.Vo+k.Of(2)), p.On(x.Seg, m+w, p.Vo+k.Of(2)), p.On(x.Seg, m+w, -p.Bt-k.Of(1)), p.On(x.Seg, m-w, -p.Bt-k.Of(1)))
	for _, side := range []float64{-w, w} {
		a, b := p.On(x.Seg, m+side, p.Vo+k.Of(2)), p.On(x.Seg, m+side, -p.Bt-k.Of(1))
		draft.Break(p.G, k, scene.Walls, a, b)
		p.Space.Stroke(a, b)
	}
}

// RawEnd draws what the covering ends at: the next wall, the edge of its own, or a short line across.
func (p *ChainPlan) RawEnd(x Stop) {
	k := p.Look
	if p.Inner(x.Seg) {
		return // at the bend that is cut
	}
	sign := 1.0 // away from the bend
	if a, _ := p.Bounds(x.Seg); a < 0 {
		sign = -1
	}
	in := p.G.Part(scene.Tag{Class: "termination", Title: x.End})
	a, b := p.On(x.Seg, x.Along, p.Vo+k.Of(2.2)), p.On(x.Seg, x.Along, 0)
	switch x.Kind {
	case "outside edge": // the end of its own wall
	case "inside corner":
		a = p.On(x.Seg, x.Along, p.Vo+k.Of(6))
		c, d := p.On(x.Seg, x.Along+sign*p.Bt, p.Vo+k.Of(6)), p.On(x.Seg, x.Along+sign*p.Bt, 0)
		draft.Hatch(in.Clipped(a, b, d, c), scene.Pen(scene.Hatch, k.Dimension), BoxAround([]scene.Point{a, b, c, d}), k.Of(1.6), false)
		in.Line(a, b, scene.Pen(scene.Walls, k.Outline))
		in.Line(c, d, scene.Pen(scene.Walls, k.Thin))
		draft.Break(in, k, scene.Walls, p.On(x.Seg, x.Along-sign*k.Of(1), p.Vo+k.Of(6)), p.On(x.Seg, x.Along+sign*(p.Bt+k.Of(1)), p.Vo+k.Of(6)))
		p.Space.Stroke(c, d)
		p.Space.Stroke(a, c)
	default:
		in.Line(a, b, scene.Pen(scene.Walls, k.Seam))
	}
	p.Space.Stroke(a, b)
}

package detail

import (
	"math"

	"flitchlay/internal/draft"
	"flitchlay/internal/scene"
)

// broken draws the break of a leg that is drawn shorter than it is.
func (p *chainPlan) broken(x stop) {
	k := p.Look
	if !p.segs[x.seg].broken || p.inner(x.seg) {
		return
	}
	m, sign := p.segs[x.seg].long, -1.0 // the tangent point of the bend, and the way from it
	if a, b := p.bounds(x.seg); a >= 0 {
		m, sign = p.verts[a].tan, 1
	} else {
		m -= p.verts[b].tan
	}
	far := math.Abs(x.along-m) / 2
	if len(p.bends) > 1 { // past the dimension of the next face, which may end on this one
		far = math.Max(far, math.Min(k.Of(17), 2*far-k.Of(4)))
	}
	m += sign * far
	white := scene.Style{Layer: scene.Walls, Fill: scene.Solid(scene.White)}
	w := k.Of(1.2)
	p.g.Polygon(white, p.on(x.seg, m-w, p.vo+k.Of(2)), p.on(x.seg, m+w, p.vo+k.Of(2)), p.on(x.seg, m+w, -p.bt-k.Of(1)), p.on(x.seg, m-w, -p.bt-k.Of(1)))
	for _, side := range []float64{-w, w} {
		a, b := p.on(x.seg, m+side, p.vo+k.Of(2)), p.on(x.seg, m+side, -p.bt-k.Of(1))
		draft.Break(p.g, k, scene.Walls, a, b)
		p.space.Stroke(a, b)
	}
}

// rawEnd draws what the covering ends at: the next wall, the edge of its own, or a short line across.
func (p *chainPlan) rawEnd(x stop) {
	k := p.Look
	if p.inner(x.seg) {
		return // at the bend that is cut
	}
	sign := 1.0 // away from the bend
	if a, _ := p.bounds(x.seg); a < 0 {
		sign = -1
	}
	in := p.g.Part(scene.Tag{Class: "termination", Title: x.end})
	a, b := p.on(x.seg, x.along, p.vo+k.Of(2.2)), p.on(x.seg, x.along, 0)
	switch x.kind {
	case "outside edge": // the end of its own wall
	case "inside corner":
		a = p.on(x.seg, x.along, p.vo+k.Of(6))
		c, d := p.on(x.seg, x.along+sign*p.bt, p.vo+k.Of(6)), p.on(x.seg, x.along+sign*p.bt, 0)
		draft.Hatch(in.Clipped(a, b, d, c), scene.Pen(scene.Hatch, k.Dimension), scene.Around(a, b, c, d), k.Of(1.6), false)
		in.Line(a, b, scene.Pen(scene.Walls, k.Outline))
		in.Line(c, d, scene.Pen(scene.Walls, k.Thin))
		draft.Break(in, k, scene.Walls, p.on(x.seg, x.along-sign*k.Of(1), p.vo+k.Of(6)), p.on(x.seg, x.along+sign*(p.bt+k.Of(1)), p.vo+k.Of(6)))
		p.space.Stroke(c, d)
		p.space.Stroke(a, c)
	default:
		in.Line(a, b, scene.Pen(scene.Walls, k.Seam))
	}
	p.space.Stroke(a, b)
}

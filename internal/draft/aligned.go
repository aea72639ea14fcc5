package draft

import (
	"math"

	"flitchlay/internal/scene"
)

// Aligned is one dimension between two points, its line parallel to theirs.
type Aligned struct {
	A, B   scene.Point
	Off    float64 // of the line from A and B, to the left of the way from A to B as seen; negative: to the right
	Gap    float64 // between the points and their extension lines
	Figure string
	Tag    scene.Tag
}

// Draw draws the dimension: the figure over the middle of the line, or past its end where it does not fit.
func (d Aligned) Draw(g *scene.Group, k Look, space *Space) {
	dx, dy := d.B.X-d.A.X, d.B.Y-d.A.Y
	l := math.Hypot(dx, dy)
	if l == 0 {
		return
	}
	ux, uy := dx/l, dy/l
	nx, ny := uy, -ux // to the left as seen, y being down
	at := func(p scene.Point, off float64) scene.Point { return p.Add(nx*off, ny*off) }
	sign := math.Copysign(1, d.Off)
	in := g.Part(d.Tag)
	a, b := at(d.A, d.Off), at(d.B, d.Off)
	ext := scene.Pen(scene.Dimensions, k.Extension)
	for _, p := range []scene.Point{d.A, d.B} {
		from, to := at(p, sign*(d.Gap+k.Of(objectGap))), at(p, d.Off+sign*k.Of(overshoot))
		in.Line(from, to, ext)
		space.Stroke(from, to)
	}
	w := scene.Width(d.Figure, k.Small, false)
	line := scene.Pen(scene.Dimensions, k.Dimension)
	// the figure stands over the line as it is read: from the foot of the page or from its right
	angle := math.Atan2(-uy, ux) * 180 / math.Pi
	for angle > 90.001 {
		angle -= 180
	}
	for angle <= -89.999 {
		angle += 180
	}
	sin, cos := scene.SinCos(math.Round(angle*1e6) / 1e6)
	upX, upY := -sin, -cos
	m := scene.Pt((a.X+b.X)/2, (a.Y+b.Y)/2)
	end := b
	if w+k.Of(3) > l {
		end = b.Add(ux*(w+k.Of(3.5)), uy*(w+k.Of(3.5)))
		m = b.Add(ux*(w/2+k.Of(2.4)), uy*(w/2+k.Of(2.4)))
	}
	in.Line(a, end, line)
	space.Stroke(a, end)
	c, s := scene.SinCos(math.Round((angle+45)*1e6) / 1e6)
	c, s = s, c
	for _, p := range []scene.Point{a, b} {
		h := k.Of(tick) / 2
		in.Line(p.Add(-h*c, h*s), p.Add(h*c, -h*s), scene.Pen(scene.Dimensions, k.Seam))
	}
	t := scene.Text{At: m.Add(upX*k.Of(figureGap), upY*k.Of(figureGap)), String: d.Figure, Height: k.Small, Anchor: scene.Middle, Angle: math.Round(angle*1e6) / 1e6, Layer: scene.Dimensions}
	in.Text(t)
	space.Take(t.Bounds())
}

package detail

import (
	"math"

	"flitchlay/internal/scene"
)

// Dimension draws the dimensions: all lines, then the figures where they are free of them.
func (p *ChainPlan) Dimension() {
	k := p.Look
	p.Choose()
	list := p.Measures()
	groups := make([]*scene.Group, len(list))
	for i, m := range list {
		groups[i] = p.G.Part(m.Tag)
		for end, along := range []float64{m.From, m.To} {
			at := p.On(m.Seg, along, m.Side*m.Off)
			if m.Open[end] {
				from, to := p.On(m.Seg, along, m.Side*m.First), p.On(m.Seg, along, m.Side*(m.Off+k.Of(OverRun)))
				groups[i].Line(from, to, scene.Pen(scene.Dimensions, k.Extension))
				p.Space.Stroke(from, to)
			}
			p.Tick(groups[i], m.Seg, at)
		}
		a, b := p.On(m.Seg, m.From, m.Side*m.Off), p.On(m.Seg, m.To, m.Side*m.Off)
		groups[i].Line(a, b, scene.Pen(scene.Dimensions, k.Dimension))
		p.Space.Stroke(a, b)
	}
	for _, long := range []bool{true, false} { // those that fit first
		for i, m := range list {
			if (scene.Width(m.Figure, k.Small, false)+k.Of(3) <= m.To-m.From) == long {
				p.Figure(groups[i], m, long)
			}
		}
	}
}

// Tick is the stroke at an end of a dimension line, at 45 degrees as the figure is read.
func (p *ChainPlan) Tick(g *scene.Group, seg int, at scene.Point) {
	k := p.Look
	sin, cos := scene.SinCos(math.Round((p.Read(seg)+45)*1e6) / 1e6)
	h := k.Of(OverTick) / 2
	g.Line(at.Add(-h*cos, h*sin), at.Add(h*cos, -h*sin), scene.Pen(scene.Dimensions, k.Seam))
}

// Read is the angle at which words along a segment are read: from the foot of the page or from its right.
//
// Units: degrees, anticlockwise as seen.
func (p *ChainPlan) Read(seg int) float64 {
	d := p.Segs[seg].D
	angle := math.Atan2(-d.Y, d.X) * 180 / math.Pi
	for angle > 90.001 {
		angle -= 180
	}
	for angle <= -89.999 {
		angle += 180
	}
	return math.Round(angle*1e6) / 1e6
}

// Figure letters a dimension: over the middle of its line, else past one of its ends, else further out on a leader.
func (p *ChainPlan) Figure(g *scene.Group, m Measure, fits bool) {
	k := p.Look
	angle := p.Read(m.Seg)
	sin, cos := scene.SinCos(angle)
	up := scene.Pt(-sin*k.Of(1), -cos*k.Of(1))
	w := scene.Width(m.Figure, k.Small, false)
	text := func(along, off float64) scene.Text {
		c := p.On(m.Seg, along, m.Side*off).Add(up.X, up.Y)
		return scene.Text{At: c, String: m.Figure, Height: k.Small, Anchor: scene.Middle, Angle: angle, Layer: scene.Dimensions}
	}
	free := func(t scene.Text) bool {
		for _, b := range Tiles(t, w, 4) {
			if !p.Space.Free(b, k.Of(0.45)) {
				return false
			}
		}
		return true
	}
	put := func(t scene.Text) {
		g.Text(t)
		p.Space.Take(Tiles(t, w, 1)...)
	}
	line := func(a, b scene.Point) {
		g.Line(a, b, scene.Pen(scene.Dimensions, k.Dimension))
		p.Space.Stroke(a, b)
	}
	mid := (m.From + m.To) / 2
	if t := text(mid, m.Off); fits && free(t) {
		put(t)
		return
	}
	if fits { // pushed along its line
		for _, d := range []float64{0.25, -0.25, 0.5, -0.5} {
			if t := text(mid+d*(m.To-m.From-w-k.Of(2)), m.Off); free(t) {
				put(t)
				return
			}
		}
	}
	outward := []float64{m.To, m.From}
	if a, _ := p.Bounds(m.Seg); a < 0 { // away from the bend
		outward = []float64{m.From, m.To}
	}
	for _, end := range outward {
		sign := math.Copysign(1, end-mid)
		t := text(end+sign*(w/2+k.Of(2.4)), m.Off)
		a, b := p.On(m.Seg, end, m.Side*m.Off), p.On(m.Seg, end+sign*(w+k.Of(3.5)), m.Side*m.Off)
		if free(t) && p.Space.FreeLine(a, b, k.Of(0.5)) {
			line(a, b)
			put(t)
			return
		}
	}
	for _, out := range []float64{4.5, 6.5, 9, 12, 15.5} {
		for _, d := range []float64{0, 4, -4, 8, -8, 12, -12} {
			t := text(mid+k.Of(d), m.Off+k.Of(out))
			foot := p.On(m.Seg, mid+k.Of(d)*0.9, m.Side*(m.Off+k.Of(out)-k.Of(1.2)))
			if m.Side*(p.Segs[m.Seg].R.X*up.X+p.Segs[m.Seg].R.Y*up.Y) < 0 { // the words lie between
				foot = p.On(m.Seg, mid+k.Of(d)*0.9, m.Side*(m.Off+k.Of(out)-k.Small-k.Of(2.2)))
			}
			from := p.On(m.Seg, mid, m.Side*m.Off)
			if free(t) && p.Space.FreeLine(from, foot, k.Of(0.5)) {
				line(from, foot)
				put(t)
				return
			}
		}
	}
	p.Lost++
	put(text(mid, m.Off))
}

// Tiles covers a text by small upright boxes, in so many rows: one box where the text is level or upright, for then that
// is what it takes.
func Tiles(t scene.Text, w float64, rows int) []scene.Box {
	if math.Mod(t.Angle, 90) == 0 {
		return []scene.Box{t.Bounds()}
	}
	sin, cos := scene.SinCos(t.Angle)
	side := t.Height / float64(rows)
	n := int(math.Ceil(w / side))
	r := side / 2 * (math.Abs(sin) + math.Abs(cos))
	var list []scene.Box
	for i := range n {
		x := -w/2 + side/2 + (w-side)*float64(i)/math.Max(float64(n-1), 1)
		for j := range rows {
			y := side * (float64(j) + 0.5)
			c := t.At.Add(x*cos-y*sin, -x*sin-y*cos)
			list = append(list, scene.Box{X0: c.X - r, Y0: c.Y - r, X1: c.X + r, Y1: c.Y + r})
		}
	}
	return list
}

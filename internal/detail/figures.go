package detail

import (
	"math"

	"flitchlay/internal/scene"
)

// dimension draws the dimensions: all lines, then the figures where they are free of them.
func (p *chainPlan) dimension() {
	k := p.Look
	p.choose()
	list := p.measures()
	groups := make([]*scene.Group, len(list))
	for i, m := range list {
		groups[i] = p.g.Part(m.tag)
		for end, along := range []float64{m.from, m.to} {
			at := p.on(m.seg, along, m.side*m.off)
			if m.open[end] {
				from, to := p.on(m.seg, along, m.side*m.first), p.on(m.seg, along, m.side*(m.off+k.Of(overRun)))
				groups[i].Line(from, to, scene.Pen(scene.Dimensions, k.Extension))
				p.space.Stroke(from, to)
			}
			p.tick(groups[i], m.seg, at)
		}
		a, b := p.on(m.seg, m.from, m.side*m.off), p.on(m.seg, m.to, m.side*m.off)
		groups[i].Line(a, b, scene.Pen(scene.Dimensions, k.Dimension))
		p.space.Stroke(a, b)
	}
	for _, long := range []bool{true, false} { // those that fit first
		for i, m := range list {
			if (scene.Width(m.figure, k.Small, false)+k.Of(3) <= m.to-m.from) == long {
				p.figure(groups[i], m, long)
			}
		}
	}
}

// tick is the stroke at an end of a dimension line, at 45 degrees as the figure is read.
func (p *chainPlan) tick(g *scene.Group, seg int, at scene.Point) {
	k := p.Look
	sin, cos := scene.SinCos(math.Round((p.read(seg)+45)*1e6) / 1e6)
	h := k.Of(overTick) / 2
	g.Line(at.Add(-h*cos, h*sin), at.Add(h*cos, -h*sin), scene.Pen(scene.Dimensions, k.Seam))
}

// read is the angle at which words along a segment are read: from the foot of the page or from its right.
//
// Units: degrees, anticlockwise as seen.
func (p *chainPlan) read(seg int) float64 {
	d := p.segs[seg].d
	angle := math.Atan2(-d.Y, d.X) * 180 / math.Pi
	for angle > 90.001 {
		angle -= 180
	}
	for angle <= -89.999 {
		angle += 180
	}
	return math.Round(angle*1e6) / 1e6
}

// figure letters a dimension: over the middle of its line, else past one of its ends, else further out on a leader.
func (p *chainPlan) figure(g *scene.Group, m measure, fits bool) {
	k := p.Look
	angle := p.read(m.seg)
	sin, cos := scene.SinCos(angle)
	up := scene.Pt(-sin*k.Of(1), -cos*k.Of(1))
	w := scene.Width(m.figure, k.Small, false)
	text := func(along, off float64) scene.Text {
		c := p.on(m.seg, along, m.side*off).Add(up.X, up.Y)
		return scene.Text{At: c, String: m.figure, Height: k.Small, Anchor: scene.Middle, Angle: angle, Layer: scene.Dimensions}
	}
	free := func(t scene.Text) bool {
		for _, b := range tiles(t, w, 4) {
			if !p.space.Free(b, k.Of(0.45)) {
				return false
			}
		}
		return true
	}
	put := func(t scene.Text) {
		g.Text(t)
		p.space.Take(tiles(t, w, 1)...)
	}
	line := func(a, b scene.Point) {
		g.Line(a, b, scene.Pen(scene.Dimensions, k.Dimension))
		p.space.Stroke(a, b)
	}
	mid := (m.from + m.to) / 2
	if t := text(mid, m.off); fits && free(t) {
		put(t)
		return
	}
	if fits { // pushed along its line
		for _, d := range []float64{0.25, -0.25, 0.5, -0.5} {
			if t := text(mid+d*(m.to-m.from-w-k.Of(2)), m.off); free(t) {
				put(t)
				return
			}
		}
	}
	outward := []float64{m.to, m.from}
	if a, _ := p.bounds(m.seg); a < 0 { // away from the bend
		outward = []float64{m.from, m.to}
	}
	for _, end := range outward {
		sign := math.Copysign(1, end-mid)
		t := text(end+sign*(w/2+k.Of(2.4)), m.off)
		a, b := p.on(m.seg, end, m.side*m.off), p.on(m.seg, end+sign*(w+k.Of(3.5)), m.side*m.off)
		if free(t) && p.space.FreeLine(a, b, k.Of(0.5)) {
			line(a, b)
			put(t)
			return
		}
	}
	for _, out := range []float64{4.5, 6.5, 9, 12, 15.5} {
		for _, d := range []float64{0, 4, -4, 8, -8, 12, -12} {
			t := text(mid+k.Of(d), m.off+k.Of(out))
			foot := p.on(m.seg, mid+k.Of(d)*0.9, m.side*(m.off+k.Of(out)-k.Of(1.2)))
			if m.side*(p.segs[m.seg].r.X*up.X+p.segs[m.seg].r.Y*up.Y) < 0 { // the words lie between
				foot = p.on(m.seg, mid+k.Of(d)*0.9, m.side*(m.off+k.Of(out)-k.Small-k.Of(2.2)))
			}
			from := p.on(m.seg, mid, m.side*m.off)
			if free(t) && p.space.FreeLine(from, foot, k.Of(0.5)) {
				line(from, foot)
				put(t)
				return
			}
		}
	}
	p.lost++
	put(text(mid, m.off))
}

// tiles covers a text by small upright boxes, in so many rows: one box where the text is level or upright, for then that
// is what it takes.
func tiles(t scene.Text, w float64, rows int) []scene.Box {
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
			list = append(list, scene.BoxRound(c, 2*r, 2*r))
		}
	}
	return list
}

package detail

import (
	"math"
	"slices"

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

// Places for the figure of a dimension.
var (
	figureShifts = []float64{0.25, -0.25, 0.5, -0.5}   // along the line, as shares of what the figure leaves of it
	figureOuts   = []float64{4.5, 6.5, 9, 12, 15.5}    // further out than the line, mm on the office page
	figureAsides = []float64{0, 4, -4, 8, -8, 12, -12} // from its middle, mm on the office page
)

// figure letters a dimension in the first place that is free:
//
//  1. where it fits, over the middle of its line, as a dimension is read;
//  2. where it fits, over the line to one side of the middle, a little before more;
//  3. past one of the ends of the line, drawn on under it: away from the bend first;
//  4. further out on a leader, the nearest row first, in each from the middle by turns to both sides.
//
// Where none is free it stands over the middle all the same, and counts as lost.
func (p *chainPlan) figure(g *scene.Group, m measure, fits bool) {
	f := p.lettering(g, m)
	if fits && f.over() || f.past() || f.led() {
		return
	}
	p.lost++
	f.put(f.text(f.mid, m.off))
}

// lettering is the figure of a dimension that looks for its place.
type lettering struct {
	*chainPlan
	measure
	in    *scene.Group
	angle float64     // at which it is read
	up    scene.Point // from the line to the foot of the figure
	w     float64     // of the figure
	mid   float64     // of the line, along the segment
}

func (p *chainPlan) lettering(g *scene.Group, m measure) *lettering {
	k := p.Look
	f := &lettering{chainPlan: p, measure: m, in: g, angle: p.read(m.seg), w: scene.Width(m.figure, k.Small, false), mid: (m.from + m.to) / 2}
	sin, cos := scene.SinCos(f.angle)
	f.up = scene.Pt(-sin*k.Of(1), -cos*k.Of(1))
	return f
}

// text is the figure at a place along the segment and off it.
func (f *lettering) text(along, off float64) scene.Text {
	c := f.on(f.seg, along, f.side*off).Add(f.up.X, f.up.Y)
	return scene.Text{At: c, String: f.measure.figure, Height: f.Look.Small, Anchor: scene.Middle, Angle: f.angle, Layer: scene.Dimensions}
}

func (f *lettering) free(t scene.Text) bool {
	return !slices.ContainsFunc(tiles(t, f.w, 4), func(b scene.Box) bool { return !f.space.Free(b, f.Look.Of(0.45)) })
}

func (f *lettering) put(t scene.Text) {
	f.in.Text(t)
	f.space.Take(tiles(t, f.w, 1)...)
}

// putWith puts a figure with the line that leads to it.
func (f *lettering) putWith(t scene.Text, a, b scene.Point) {
	f.in.Line(a, b, scene.Pen(scene.Dimensions, f.Look.Dimension))
	f.space.Stroke(a, b)
	f.put(t)
}

// over puts the figure over its line: in its middle, or pushed along it.
func (f *lettering) over() bool {
	if t := f.text(f.mid, f.off); f.free(t) {
		f.put(t)
		return true
	}
	for _, d := range figureShifts {
		if t := f.text(f.mid+d*(f.to-f.from-f.w-f.Look.Of(2)), f.off); f.free(t) {
			f.put(t)
			return true
		}
	}
	return false
}

// past puts the figure past an end of its line.
func (f *lettering) past() bool {
	k := f.Look
	ends := [2]float64{f.to, f.from}
	if a, _ := f.bounds(f.seg); a < 0 { // away from the bend
		ends = [2]float64{f.from, f.to}
	}
	for _, end := range ends {
		sign := math.Copysign(1, end-f.mid)
		t := f.text(end+sign*(f.w/2+k.Of(2.4)), f.off)
		a, b := f.on(f.seg, end, f.side*f.off), f.on(f.seg, end+sign*(f.w+k.Of(3.5)), f.side*f.off)
		if f.free(t) && f.space.FreeLine(a, b, k.Of(0.5)) {
			f.putWith(t, a, b)
			return true
		}
	}
	return false
}

// led puts the figure further out, on a leader from the middle of its line.
func (f *lettering) led() bool {
	k := f.Look
	from := f.on(f.seg, f.mid, f.side*f.off)
	under := k.Of(1.2)                                            // from the foot of the words to the end of the leader
	if r := f.segs[f.seg].r; f.side*(r.X*f.up.X+r.Y*f.up.Y) < 0 { // the words lie between
		under = k.Small + k.Of(2.2)
	}
	for _, out := range figureOuts {
		for _, d := range figureAsides {
			t := f.text(f.mid+k.Of(d), f.off+k.Of(out))
			foot := f.on(f.seg, f.mid+k.Of(d)*0.9, f.side*(f.off+k.Of(out)-under))
			if f.free(t) && f.space.FreeLine(from, foot, k.Of(0.5)) {
				f.putWith(t, from, foot)
				return true
			}
		}
	}
	return false
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

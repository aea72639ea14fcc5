package scene

import "math"

// gather takes items apart into strokes, fills, texts and pictures. clips are the polygons they show in; class is that of the group.
func (f *finder) gather(items []Item, clips [][]Point, class string) {
	for _, it := range items {
		f.order++
		switch it := it.(type) {
		case *Group:
			in, name := clips, class
			if it.Clip != nil {
				in = append(clips[:len(clips):len(clips)], it.Clip)
			}
			if it.Class != "" {
				name = it.Class
			}
			f.gather(it.Items, in, name)
		case *Line:
			f.stroke(it.Style, clips, class, it.A, it.B)
		case *Poly:
			f.shape(it.Style, clips, class, true, it.Closed, it.Points)
		case *Rect:
			f.shape(it.Style, clips, class, true, true, it.Corners())
		case *Circle:
			f.shape(it.Style, clips, class, true, true, ring(it.Centre, it.Radius))
		case *Path:
			outlines := it.flatten()
			for _, o := range outlines {
				f.shape(it.Style, clips, class, len(outlines) == 1, o.closed, o.points)
			}
		case *Text:
			if ink := it.Ink(); ink != nil {
				field := it.FieldBox()
				if field == nil {
					field = ink
				}
				f.texts = append(f.texts, lettering{f.order, it, ink, field, Around(field...), clips})
			}
		case *Image:
			if seen, ok := unclipped(it.Box, clips); ok {
				f.pictures = append(f.pictures, picture{f.order, it, seen})
			}
		}
	}
}

// shape records the fill and the outline of a row of points.
func (f *finder) shape(s Style, clips [][]Point, class string, whole, closed bool, points []Point) {
	if s.Fill.On && len(points) > 2 {
		f.fills = append(f.fills, fill{f.order, points, s.Fill.Light(), whole, Around(points...), clips, origin{s.Layer, class}})
	}
	if s.Width <= 0 {
		return
	}
	for i := 1; i < len(points); i++ {
		f.stroke(s, clips, class, points[i-1], points[i])
	}
	if closed && len(points) > 2 {
		f.stroke(s, clips, class, points[len(points)-1], points[0])
	}
}

// stroke records what the clips leave of a straight piece of line.
func (f *finder) stroke(s Style, clips [][]Point, class string, a, b Point) {
	if s.Width <= 0 {
		return
	}
	add := func(a, b Point) {
		f.strokes = append(f.strokes, stroke{f.order, a, b, s.Width / 2, Around(a, b).Inset(-s.Width / 2), hard(s), s.Colour == White, origin{s.Layer, class}})
	}
	if len(clips) == 0 {
		add(a, b)
		return
	}
	for _, piece := range visible(a, b, clips) {
		add(piece[0], piece[1])
	}
}

// unclipped returns what the boxes round some clips leave of a box.
func unclipped(b Box, clips [][]Point) (Box, bool) {
	for _, c := range clips {
		a := Around(c...)
		b = Box{max(b.X0, a.X0), max(b.Y0, a.Y0), min(b.X1, a.X1), min(b.Y1, a.Y1)}
	}
	return b, b.X0 < b.X1 && b.Y0 < b.Y1
}

// visible returns the pieces of a line inside all clips, of which there is one at least.
func visible(a, b Point, clips [][]Point) [][2]Point {
	if len(clips) == 0 {
		return nil
	}
	pieces := inside(a, b, clips[0])
	for _, c := range clips[1:] {
		var left [][2]Point
		for _, p := range pieces {
			left = append(left, inside(p[0], p[1], c)...)
		}
		pieces = left
	}
	return pieces
}

// ring returns a circle as a polygon within 0.005 mm of it: the number of sides goes with the root of the radius.
func ring(c Point, r float64) []Point {
	n := max(48, int(math.Ceil(8*math.Sqrt(r)))*4)
	points := make([]Point, n)
	for i := range points {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		points[i] = Point{c.X + r*cos, c.Y + r*sin}
	}
	return points
}

type outline struct {
	points []Point
	closed bool
}

// flatten returns the outlines of a path, curves as sixteen straight pieces each. A filled path closes by itself.
func (p *Path) flatten() []outline {
	var out []outline
	for _, s := range p.Steps {
		n := len(out)
		switch s.Kind {
		case MoveTo:
			out = append(out, outline{points: []Point{s.P}})
		case LineTo:
			out[n-1].points = append(out[n-1].points, s.P)
		case CurveTo:
			from := out[n-1].points[len(out[n-1].points)-1]
			for i := 1; i <= 16; i++ {
				out[n-1].points = append(out[n-1].points, bezier(from, s.C1, s.C2, s.P, float64(i)/16))
			}
		case Close:
			out[n-1].closed = true
		}
	}
	return out
}

func bezier(a, b, c, d Point, t float64) Point {
	u := 1 - t
	k0, k1, k2, k3 := u*u*u, 3*u*u*t, 3*u*t*t, t*t*t
	return Point{k0*a.X + k1*b.X + k2*c.X + k3*d.X, k0*a.Y + k1*b.Y + k2*c.Y + k3*d.Y}
}

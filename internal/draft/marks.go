package draft

import (
	"math"

	"flitchlay/internal/scene"
)

// words is a line of text in the middle of something.
func words(layer scene.Layer, at scene.Point, s string, height float64, bold bool) scene.Text {
	return scene.Text{At: at, String: s, Height: height, Bold: bold, Layer: layer, Anchor: scene.Middle, Seat: scene.Centred}
}

// Disc draws a circle with a word in its middle, white inside.
//
// Shape: the box it takes.
func Disc(g *scene.Group, k Look, layer scene.Layer, at scene.Point, diameter, pen float64, word string, height float64, bold bool) scene.Box {
	g.Circle(at, diameter/2, scene.Pen(layer, pen).Filled(scene.White))
	if word != "" {
		g.Text(words(layer, at, word, FitDisc(word, height, k.Small, bold, diameter-pen), bold))
	}
	r := diameter/2 + pen/2
	return scene.BoxRound(at, 2*r, 2*r)
}

// letterings are the heights that letters come in, in mm.
//
// Source: ISO 3098-1, nominal sizes.
var letterings = []float64{20, 14, 10, 7, 5, 3.5, 2.5}

// FitHeight is the height at which a word is no longer than width: the one asked for, or the next of the series that
// fits, but not under least.
func FitHeight(word string, height, least float64, bold bool, width float64) float64 {
	if scene.Width(word, height, bold) <= width {
		return height
	}
	for _, h := range letterings {
		if h < height && h > least && scene.Width(word, h, bold) <= width {
			return h
		}
	}
	return math.Min(height, least)
}

// Squeeze is the height at which a word is no longer than width: the one asked for, or as much less as it takes, but not
// under least. Pages for the crew use it, where each tenth of a millimetre helps an eye on a ladder.
func Squeeze(word string, height, least float64, bold bool, width float64) float64 {
	if w := scene.Width(word, height, bold); w > width {
		return math.Max(least, height*width/w)
	}
	return height
}

// FitDisc is the height at which the corners of a word stay clear of a circle round it: the one asked for, or least where
// that is too high. There is nothing between, as letters come in the heights of a series.
//
// Source: ISO 3098-1, nominal sizes.
func FitDisc(word string, height, least float64, bold bool, clear float64) float64 {
	if DiscAround(word, height, bold, 0) > clear+1e-9 {
		return least
	}
	return height
}

// DiscAround is the diameter of the smallest circle that a word stands clear in.
func DiscAround(word string, height float64, bold bool, pen float64) float64 {
	const air = 0.6
	return math.Hypot(scene.Width(word, height, bold), height) + 2*air + pen
}

// Diamond draws a diamond, white inside, with a word in its middle.
func Diamond(g *scene.Group, k Look, layer scene.Layer, at scene.Point, size, pen float64, fill scene.Colour) scene.Box {
	r := size / 2
	g.Polygon(scene.Pen(layer, pen).Filled(fill), at.Add(0, -r), at.Add(r, 0), at.Add(0, r), at.Add(-r, 0))
	return scene.BoxRound(at, 2*r, 2*r).Inset(-pen / 2)
}

// Hexagon draws a hexagon that stands on a side, white inside.
func Hexagon(g *scene.Group, k Look, layer scene.Layer, at scene.Point, across, pen float64) scene.Box {
	r := across / 2
	var points []scene.Point
	for i := range 6 {
		sin, cos := scene.SinCos(float64(60 * i))
		points = append(points, at.Add(r*cos, -r*sin))
	}
	g.Polygon(scene.Pen(layer, pen).Filled(scene.White), points...)
	return scene.BoxRound(at, 2*r, 2*r).Inset(-pen / 2)
}

// Triangle draws a solid or open triangle whose point lies at a place and looks in a direction.
//
// Units: direction in degrees, 0 to the right, anticlockwise as seen.
func Triangle(g *scene.Group, layer scene.Layer, tip scene.Point, direction, length, width float64, pen float64, open bool) {
	sin, cos := scene.SinCos(direction)
	back := tip.Add(-length*cos, length*sin)
	dx, dy := width/2*sin, width/2*cos
	style := scene.Pen(layer, pen).Filled(scene.Black)
	if open {
		style = scene.Pen(layer, pen).Filled(scene.White)
	}
	g.Polygon(style, tip, back.Add(dx, dy), back.Add(-dx, -dy))
}

// DeltaSize is how far the point of a triangle drawn with a pen stands over its middle, with a mark clear of its sides.
func DeltaSize(k Look, word string, pen float64) float64 {
	air := deltaAir(pen)
	half := scene.Width(word, k.Small, true)/2 + 1.15*air // to a side that slants
	return math.Max(k.Of(3.9), (half/0.5625+air+k.Small)/1.6)
}

func deltaAir(pen float64) float64 { return 0.6 + pen/2 }

// Delta draws the triangle that marks a revision, white inside, with its mark.
//
// Shape: the box it takes.
func Delta(g *scene.Group, k Look, layer scene.Layer, at scene.Point, word string, pen float64) scene.Box {
	r := DeltaSize(k, word, pen)
	g.Polygon(scene.Pen(layer, pen).Filled(scene.White), at.Add(0, -r), at.Add(r*0.9, r*0.6), at.Add(-r*0.9, r*0.6))
	g.Text(words(layer, at.Add(0, r*0.6-deltaAir(pen)-k.Small/2), word, k.Small, true))
	return DeltaBox(at, r)
}

// DeltaBox is the box of a triangle about its middle.
func DeltaBox(at scene.Point, r float64) scene.Box {
	return scene.Box{X0: at.X - r*0.9, Y0: at.Y - r, X1: at.X + r*0.9, Y1: at.Y + r*0.6}
}

// Arrow draws a line with a slim arrowhead at its end, and at its start where both is set.
//
// Source: arrow of about 15 degrees, as long as the figures are high: ISO 129-1 as textbooks restate it.
func Arrow(g *scene.Group, k Look, layer scene.Layer, from, to scene.Point, pen float64, both bool) {
	l := k.Small
	direction := math.Atan2(-(to.Y-from.Y), to.X-from.X) * 180 / math.Pi
	sin, cos := scene.SinCos(math.Round(direction*1e6) / 1e6)
	w := 2 * l * math.Tan(7.5*math.Pi/180) * 1.6
	end, start := to.Add(-l*cos*0.8, l*sin*0.8), from
	if both {
		start = from.Add(l*cos*0.8, -l*sin*0.8)
		Triangle(g, layer, from, math.Round((direction+180)*1e6)/1e6, l, w, 0, false)
	}
	g.Line(start, end, scene.Pen(layer, pen))
	Triangle(g, layer, to, math.Round(direction*1e6)/1e6, l, w, 0, false)
}

// Leader draws a thin line from a dot on something to where its label stands.
func Leader(g *scene.Group, k Look, space *Space, from, to scene.Point) {
	g.Line(from, to, scene.Pen(scene.Marks, k.Dimension))
	g.Circle(from, k.Of(0.45), scene.Style{Layer: scene.Marks, Fill: scene.Solid(scene.Black)})
	space.Stroke(from, to)
}

// Elevation draws the mark of an elevation on a plan: a circle with mark over page, and a filled arrow towards the wall.
//
// Units: direction in degrees, 0 to the right, anticlockwise as seen.
func Elevation(g *scene.Group, k Look, at scene.Point, direction float64, mark, page string) scene.Box {
	r := k.Of(6)
	// the page number stands in the lower half; where it needs more, the circle grows
	half, low := scene.Width(page, k.Small, false)/2, k.Of(0.7)+k.Small
	r = math.Max(r, math.Hypot(half, low)+k.Thin/2+k.Of(0.65))
	sin, cos := scene.SinCos(direction)
	tip := at.Add(r*1.5*cos, -r*1.5*sin)
	Triangle(g, scene.Marks, tip, direction, r*1.5, r*2*0.9, 0, false)
	g.Circle(at, r, scene.Pen(scene.Marks, k.Seam).Filled(scene.White))
	g.HLine(at.X-r, at.X+r, at.Y, scene.Pen(scene.Marks, k.Thin))
	g.Text(words(scene.Marks, at.Add(0, -k.Of(1.3)-k.Small/2), mark, k.Small, true))
	g.Text(words(scene.Marks, at.Add(0, k.Of(0.75)+k.Small/2), page, k.Small, false))
	box := scene.BoxRound(at, 2*r, 2*r)
	return box.Union(scene.BoxRound(tip, 0.02, 0.02))
}

// Break draws the zigzag that says something goes on.
func Break(g *scene.Group, k Look, layer scene.Layer, a, b scene.Point) {
	dx, dy := b.X-a.X, b.Y-a.Y
	l := math.Hypot(dx, dy)
	if l == 0 {
		return
	}
	ux, uy := dx/l, dy/l
	at := func(t, off float64) scene.Point {
		return scene.Pt(a.X+ux*t-uy*off, a.Y+uy*t+ux*off)
	}
	points := []scene.Point{a}
	n := max(1, int(l/k.Of(60)+0.5))
	z := k.Of(1.3)
	for i := range n {
		m := l * (float64(i) + 0.5) / float64(n)
		if l < 6*z {
			z = l / 6
		}
		points = append(points, at(m-z, 0), at(m-z/3, z*1.4), at(m+z/3, -z*1.4), at(m+z, 0))
	}
	points = append(points, b)
	g.Polyline(scene.Pen(layer, k.Thin), points...)
}

// Hatch fills a box with lines at 45 degrees, clear of what lies in it.
func Hatch(g *scene.Group, pen scene.Style, b scene.Box, pitch float64, rising bool, clear ...scene.Box) {
	var points []scene.Point
	for c := -b.H(); c < b.W(); c += pitch {
		p, q := scene.Pt(b.X0+c, b.Y1), scene.Pt(b.X0+c+b.H(), b.Y0)
		if !rising {
			p, q = scene.Pt(b.X0+c, b.Y0), scene.Pt(b.X0+c+b.H(), b.Y1)
		}
		t0, t1, ok := Clip(p, q, b)
		if !ok {
			continue
		}
		at := func(t float64) scene.Point { return scene.Pt(p.X+(q.X-p.X)*t, p.Y+(q.Y-p.Y)*t) }
		points = append(points, Outside(at(t0), at(t1), clear...)...)
	}
	if len(points) > 0 {
		g.Path(pen, scene.Strokes(points...)...)
	}
}

package scene

import "math"

// Add records any item.
func (g *Group) Add(items ...Item) { g.Items = append(g.Items, items...) }

// Part records an empty group and returns it, to be drawn into.
func (g *Group) Part(t Tag) *Group {
	in := &Group{Tag: t}
	g.Add(in)
	return in
}

// Viewed records an empty group of class "view" that is drawn to scale.
func (g *Group) Viewed(v View, data ...Datum) *Group {
	in := g.Part(Tag{Class: "view", Data: data})
	in.View = &v
	return in
}

// Clipped records an empty group that shows only inside a polygon.
func (g *Group) Clipped(outline ...Point) *Group {
	in := g.Part(Tag{})
	in.Clip = outline
	return in
}

// Line records a straight line.
func (g *Group) Line(a, b Point, s Style) { g.Add(&Line{a, b, s}) }

// HLine records a level line.
func (g *Group) HLine(x0, x1, y float64, s Style) { g.Line(Point{x0, y}, Point{x1, y}, s) }

// VLine records an upright line.
func (g *Group) VLine(x, y0, y1 float64, s Style) { g.Line(Point{x, y0}, Point{x, y1}, s) }

// Polyline records a row of lines.
func (g *Group) Polyline(s Style, points ...Point) { g.Add(&Poly{points, false, s}) }

// Polygon records a closed shape.
func (g *Group) Polygon(s Style, points ...Point) { g.Add(&Poly{points, true, s}) }

// Rect records a rectangle.
func (g *Group) Rect(b Box, s Style) { g.Add(&Rect{b, s}) }

// Circle records a circle.
func (g *Group) Circle(centre Point, radius float64, s Style) { g.Add(&Circle{centre, radius, s}) }

// Path records an outline made of steps.
func (g *Group) Path(s Style, steps ...Step) { g.Add(&Path{steps, s}) }

// Text records a line of text.
func (g *Group) Text(t Text) { g.Add(&t) }

// Image records a picture.
func (g *Group) Image(i Image) { g.Add(&i) }

// Link makes a box lead to a page.
func (g *Group) Link(b Box, page string) { g.Add(&Link{Box: b, Page: page}) }

// Web makes a box lead to a URI.
func (g *Group) Web(b Box, uri string) { g.Add(&Link{Box: b, URI: uri}) }

// Arc records part of a circle from one angle to another, anticlockwise where to is the greater.
func (g *Group) Arc(centre Point, radius, from, to float64, s Style) {
	g.Path(s, ArcSteps(centre, radius, from, to)...)
}

// Strokes returns the steps of separate straight strokes: points in pairs.
func Strokes(points ...Point) []Step {
	steps := make([]Step, 0, len(points))
	for i, p := range points {
		kind := LineTo
		if i%2 == 0 {
			kind = MoveTo
		}
		steps = append(steps, Step{Kind: kind, P: p})
	}
	return steps
}

// ArcSteps returns part of a circle as curves of at most an eighth turn, which keep to it within 5e-6 of the radius.
//
// Units: angles in degrees, 0 to the right, anticlockwise as seen.
func ArcSteps(centre Point, radius, from, to float64) []Step {
	n := max(int(math.Ceil(math.Abs(to-from)/45-1e-9)), 1)
	step := (to - from) / float64(n)
	k := 4.0 / 3 * math.Tan(step*math.Pi/180/4) * radius
	at := func(degrees float64) (p, forward Point) {
		sin, cos := SinCos(degrees)
		return Point{centre.X + radius*cos, centre.Y - radius*sin}, Point{-sin, -cos}
	}
	p, f := at(from)
	steps := []Step{{Kind: MoveTo, P: p}}
	for i := range n {
		q, h := at(from + step*float64(i+1))
		steps = append(steps, Step{Kind: CurveTo, C1: p.Add(k*f.X, k*f.Y), C2: q.Add(-k*h.X, -k*h.Y), P: q})
		p, f = q, h
	}
	return steps
}

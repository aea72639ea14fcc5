package draft

import (
	"math"

	"flitchlay/internal/scene"
)

// Stack is the tiers of dimensions on one side of an object, the smallest nearest to it.
type Stack struct {
	Upright bool                        // measured up the page
	Edge    float64                     // of the object: y of a level stack, x of an upright one
	Outline func(along float64) float64 // the object's edge at a place, where it is not straight; nil: Edge
	Out     float64                     // -1: up or to the left of the object, +1: down or to the right
	First   float64                     // from the edge to the first line; 0: 9 on the office page
	NameAt  float64                     // where the names of level tiers end; 0: left of the first mark
	Behind  bool                        // extension lines run behind what is taken already: they are broken there
	Tiers   []Tier
}

// Lay finds where every line and figure comes to lie, without drawing.
//
// Shape: the place across the lines that the stack reaches to.
func (s *Stack) Lay(k Look) (end float64) {
	at := s.First
	if at == 0 {
		at = k.Of(9)
	}
	end = s.Edge
	for i := range s.Tiers {
		t := &s.Tiers[i]
		t.through = nil
		for _, o := range s.Tiers[i+1:] {
			t.through = append(t.through, o.Marks...)
		}
		t.line = s.Edge + s.Out*at
		d := depth(t.lay(k, s.Upright, s.Out))
		end = s.Edge + s.Out*(at+math.Max(d, k.Of(overshoot)))
		next := k.Of(tierPitch)
		if i+1 < len(s.Tiers) {
			n := &s.Tiers[i+1]
			room := d + k.Of(figureAir)
			if s.Out > 0 && !n.Running { // its figures stand this side of its line
				room += k.Of(figureGap+0.8) + n.height(k)
				if len(n.Inner) > 0 {
					room += k.Of(tick) / 2
				}
			} else { // its strokes or its origin circle do
				room += k.Of(originSize) / 2
			}
			next = math.Max(next, room)
		}
		at += next
	}
	return end
}

// Draw draws the tiers and takes their place.
func (s *Stack) Draw(g *scene.Group, k Look, space *Space) (end float64) {
	end = s.Lay(k)
	for i := range s.Tiers {
		s.draw(g, k, space, i)
	}
	s.names(g, k, space)
	return end
}

// pt turns along and across into a point of the page.
func (s *Stack) pt(along, across float64) scene.Point {
	if s.Upright {
		return scene.Pt(across, along)
	}
	return scene.Pt(along, across)
}

func (s *Stack) draw(g *scene.Group, k Look, space *Space, i int) {
	t := &s.Tiers[i]
	if len(t.Marks) == 0 {
		return
	}
	row := g.Part(scene.Tag{Class: "tier", Title: t.Name})
	line, ext := scene.Pen(scene.Dimensions, k.Dimension), scene.Pen(scene.Dimensions, k.Extension)
	for j, m := range t.Marks {
		s.extension(row, k, ext, space, i, j, m)
	}
	a, b := t.Marks[0], t.Marks[len(t.Marks)-1]
	row.Line(s.pt(a, t.line), s.pt(b, t.line), line)
	space.Stroke(s.pt(a, t.line), s.pt(b, t.line))
	for j, m := range t.Marks {
		if t.Running && j == t.Zero {
			c, r := s.pt(m, t.line), k.Of(originSize)/2
			row.Circle(c, r, scene.Pen(scene.Dimensions, k.Thin).Filled(scene.White))
			space.Outline(scene.BoxRound(c, 2*r, 2*r))
			continue
		}
		Tick(row, k, s.pt(m, t.line))
		c, d := s.pt(m, t.line), k.Of(tick)/3
		space.Stroke(c.Add(-d, d), c.Add(d, -d))
	}
	for _, m := range t.Inner {
		Tick(row, k, s.pt(m, t.line))
		c, d := s.pt(m, t.line), k.Of(tick)/3
		space.Stroke(c.Add(-d, d), c.Add(d, -d))
	}
	places := t.lay(k, s.Upright, s.Out)
	for j, text := range t.Figures {
		if text == "" {
			continue
		}
		tag := scene.Tag{Class: "dimension"}
		if t.Data != nil {
			tag.Data = t.Data(j)
		}
		in := row.Part(tag)
		s.figure(in, k, t, places[j], text, space)
	}
}

// figure draws one figure and its leader.
func (s *Stack) figure(g *scene.Group, k Look, t *Tier, p place, text string, space *Space) {
	across := func(out float64) float64 { return t.line + s.Out*out }
	x := scene.Text{String: text, Height: t.height(k), Bold: t.Bold, Layer: scene.Dimensions, Anchor: scene.Middle, Seat: scene.Centred}
	x.At = s.pt(p.along, across(p.out))
	if s.Upright && p.level == 0 || p.turned {
		x.Angle = 90
	}
	if p.level > 0 {
		a, b := s.pt(p.lead[0].along, across(p.lead[0].out)), s.pt(p.lead[1].along, across(p.lead[1].out))
		g.Line(a, b, scene.Pen(scene.Dimensions, k.Dimension))
		space.Stroke(a, b)
	}
	g.Text(x)
	space.Take(x.Bounds())
}

// extension draws the extension line of a mark. Where a tier nearer to the object has the same mark, it goes on from there.
func (s *Stack) extension(g *scene.Group, k Look, pen scene.Style, space *Space, i, j int, m float64) {
	t := &s.Tiers[i]
	from := s.Edge
	if s.Outline != nil {
		from = s.Outline(m)
	}
	from += s.Out * k.Of(objectGap)
	if t.Starts != nil {
		from = t.Starts[j]
	}
	for _, o := range s.Tiers[:i] {
		for n, x := range o.Marks {
			if math.Abs(x-m) < 0.01 && !(o.Running && n != o.Zero) {
				from = o.line + s.Out*k.Of(overshoot)
			}
		}
	}
	to := t.line + s.Out*k.Of(overshoot)
	if t.Running {
		to = t.line
		if j == t.Zero {
			to -= s.Out * k.Of(originSize) / 2
		}
	}
	if (to-from)*s.Out <= 0 {
		return
	}
	parts := []scene.Point{s.pt(m, from), s.pt(m, to)}
	if s.Behind {
		parts = space.Gaps(parts[0], parts[1], k.Of(behindAir))
	}
	for n := 0; n+1 < len(parts); n += 2 {
		if len(parts) > 2 && math.Hypot(parts[n+1].X-parts[n].X, parts[n+1].Y-parts[n].Y) < k.Of(leastBehind) {
			continue
		}
		g.Line(parts[n], parts[n+1], pen)
		space.Stroke(parts[n], parts[n+1])
	}
}

// names letters what each tier measures, at its left end, all ending alike; those of an upright stack read up its line.
func (s *Stack) names(g *scene.Group, k Look, space *Space) {
	first := math.Inf(1)
	for i := range s.Tiers {
		t := &s.Tiers[i]
		for _, m := range t.Marks {
			first = math.Min(first, m-k.Of(overshoot))
		}
		for j, p := range t.lay(k, s.Upright, s.Out) {
			if t.Figures[j] != "" {
				first = math.Min(first, p.from)
			}
		}
	}
	end := first - k.Of(2)
	if !s.Upright && s.NameAt != 0 {
		end = math.Min(end, s.NameAt)
	}
	for i := range s.Tiers {
		t := &s.Tiers[i]
		if t.Name == "" || len(t.Marks) == 0 {
			continue
		}
		x := scene.Text{At: s.pt(end, t.line), String: t.Name, Height: k.Small, Layer: scene.Dimensions, Colour: scene.Grey(0.25), Anchor: scene.End, Seat: scene.Centred}
		if s.Upright {
			x.Anchor, x.Angle = scene.Start, 90
		}
		at, ok := outward(space, k, x, func(off, aside float64) scene.Point { return s.pt(end-off, t.line+aside) })
		if !ok {
			continue
		}
		x.At = at
		g.Text(x)
		space.Take(x.Bounds())
	}
}

// Places for a word outside a stack, in mm on the office page.
const (
	wordStep  = 1.0  // from one place to the next further out
	wordReach = 40.0 // from which on it would no longer be seen to belong to its tier
)

// wordAsides are how far to the side of its line a word may stand, in mm on the office page: on it, then half a
// line of letters aside, then a whole one.
var wordAsides = []float64{0, -1.5, 1.5, -3, 3}

// outward finds a place for a word outside its tier. False where there is none on the page.
//
//  1. On its line the nearest place that is clear of the words and lines of others, then the same a little aside: in line
//     with its tier it is found at once, however far out.
//  2. The same again clear of words alone: across a thin line a word can be read, across another word it cannot.
func outward(space *Space, k Look, x scene.Text, at func(off, aside float64) scene.Point) (scene.Point, bool) {
	for _, free := range []func(scene.Box) bool{
		func(b scene.Box) bool { return space.Free(b, 0.6) },
		func(b scene.Box) bool {
			return space.FreeOfWords(b, 0.5) && (space.Bounds.IsZero() || space.Bounds.Contains(b))
		},
	} {
		for _, aside := range wordAsides {
			for off := 0.0; off < k.Of(wordReach); off += k.Of(wordStep) {
				x.At = at(off, k.Of(aside))
				if free(x.Bounds()) {
					return x.At, true
				}
			}
		}
	}
	return x.At, false
}

// Tick draws the oblique stroke that ends a dimension: at 45 degrees, rising to the right.
func Tick(g *scene.Group, k Look, at scene.Point) {
	d := k.Of(tick) / 2 * math.Sqrt2 / 2
	g.Line(at.Add(-d, d), at.Add(d, -d), scene.Pen(scene.Dimensions, k.Seam))
}

// Box is what the stack takes, as it would be drawn.
func (s *Stack) Box(k Look) scene.Box {
	var g scene.Group
	c := *s
	c.Tiers = append([]Tier(nil), s.Tiers...)
	c.Draw(&g, k, NewSpace(scene.Box{}))
	return g.Bounds()
}

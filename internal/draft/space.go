package draft

import (
	"math"
	"slices"

	"flitchlay/internal/scene"
)

// Space remembers what is taken on a page, so that labels find a free place. Words take boxes, lines take strokes.
type Space struct {
	Bounds  scene.Box // labels stay inside; the zero Box is no bound
	boxes   []scene.Box
	strokes []stroke
}

type stroke struct{ a, b scene.Point }

// NewSpace returns an empty space with bounds.
func NewSpace(bounds scene.Box) *Space { return &Space{Bounds: bounds} }

// Clone is the space as it stands, to which a page that is drawn anew goes back.
func (s *Space) Clone() *Space {
	return &Space{s.Bounds, slices.Clone(s.boxes), slices.Clone(s.strokes)}
}

// Take notes that a box is taken.
func (s *Space) Take(boxes ...scene.Box) {
	for _, b := range boxes {
		if !b.IsZero() {
			s.boxes = append(s.boxes, b)
		}
	}
}

// Stroke notes a line that no words may touch.
func (s *Space) Stroke(a, b scene.Point) { s.strokes = append(s.strokes, stroke{a, b}) }

// Outline notes the lines round a box, whose inside stays free.
func (s *Space) Outline(b scene.Box) {
	c := b.Corners()
	for i := range c {
		s.Stroke(c[i], c[(i+1)%4])
	}
}

// Free reports whether a box with some air around it touches nothing and stays inside.
func (s *Space) Free(b scene.Box, air float64) bool {
	if !s.Bounds.IsZero() && !s.Bounds.Contains(b) {
		return false
	}
	b = b.Inset(-air)
	for _, o := range s.boxes {
		if b.Meets(o) {
			return false
		}
	}
	for _, l := range s.strokes {
		if Crosses(l.a, l.b, b) {
			return false
		}
	}
	return true
}

// FreeOfWords reports whether a box with some air around it meets no words; lines may run through it.
func (s *Space) FreeOfWords(b scene.Box, air float64) bool {
	return !slices.ContainsFunc(s.boxes, b.Inset(-air).Meets)
}

// FreeOfLines reports whether a box with some air around it meets no line; words may stand in it.
func (s *Space) FreeOfLines(b scene.Box, air float64) bool {
	b = b.Inset(-air)
	return !slices.ContainsFunc(s.strokes, func(l stroke) bool { return Crosses(l.a, l.b, b) })
}

// FreeLine reports whether a line runs clear of all words.
func (s *Space) FreeLine(a, b scene.Point, air float64) bool {
	for _, o := range s.boxes {
		if Crosses(a, b, o.Inset(-air)) {
			return false
		}
	}
	return true
}

// FreeFrom reports whether a line that begins at something runs clear of all words but that.
func (s *Space) FreeFrom(own scene.Box, a, b scene.Point, air float64) bool {
	for _, o := range s.boxes {
		if o != own && Crosses(a, b, o.Inset(-air)) {
			return false
		}
	}
	return true
}

// Gaps gives the parts of a line that run clear of all words, as pairs of points.
func (s *Space) Gaps(a, b scene.Point, air float64) []scene.Point {
	boxes := make([]scene.Box, len(s.boxes))
	for i, o := range s.boxes {
		boxes[i] = o.Inset(-air)
	}
	return Outside(a, b, boxes...)
}

// Crosses reports whether a line has a part inside a box, by clipping it to the box unless all of it lies to one side.
func Crosses(a, b scene.Point, o scene.Box) bool {
	if a.X <= o.X0 && b.X <= o.X0 || a.X >= o.X1 && b.X >= o.X1 || a.Y <= o.Y0 && b.Y <= o.Y0 || a.Y >= o.Y1 && b.Y >= o.Y1 {
		return false
	}
	_, _, ok := Clip(a, b, o)
	return ok
}

// Clip cuts a line to a box and gives where it enters and leaves, as shares of its length.
//
// Source: Liang and Barsky 1984.
func Clip(a, b scene.Point, o scene.Box) (t0, t1 float64, ok bool) {
	t0, t1 = 0, 1
	dx, dy := b.X-a.X, b.Y-a.Y
	for _, e := range [4][2]float64{{-dx, a.X - o.X0}, {dx, o.X1 - a.X}, {-dy, a.Y - o.Y0}, {dy, o.Y1 - a.Y}} {
		p, q := e[0], e[1]
		if p == 0 {
			if q <= 0 {
				return 0, 0, false
			}
			continue
		}
		t := q / p
		if p < 0 {
			t0 = math.Max(t0, t)
		} else {
			t1 = math.Min(t1, t)
		}
		if t0 >= t1 {
			return 0, 0, false
		}
	}
	return t0, t1, true
}

// Outside gives the parts of a line that lie outside some boxes, as pairs of points.
func Outside(a, b scene.Point, boxes ...scene.Box) []scene.Point {
	var cuts []Part
	for _, o := range boxes {
		if t0, t1, ok := Clip(a, b, o); ok {
			cuts = append(cuts, Part{t0, t1})
		}
	}
	at := func(t float64) scene.Point { return scene.Pt(a.X+(b.X-a.X)*t, a.Y+(b.Y-a.Y)*t) }
	var out []scene.Point
	for _, p := range Rest(cuts...) {
		out = append(out, at(p.From), at(p.To))
	}
	return out
}

// Part is a part of a line, its ends as shares of the line's length.
type Part struct{ From, To float64 }

// leastPart is the share of a line from which a part of it counts: less is the rounding of a cut that ends where another
// begins.
const leastPart = 1e-9

// Rest gives what cuts leave of a line, in its order.
func Rest(cuts ...Part) []Part {
	left := []Part{{0, 1}}
	for _, c := range cuts {
		var next []Part
		for _, p := range left {
			if c.From > p.From {
				next = append(next, Part{p.From, math.Min(p.To, c.From)})
			}
			if c.To < p.To {
				next = append(next, Part{math.Max(p.From, c.To), p.To})
			}
		}
		left = next
	}
	return slices.DeleteFunc(left, func(p Part) bool { return !(p.To-p.From > leastPart) })
}

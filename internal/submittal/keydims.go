package submittal

import (
	"math"

	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
)

// Places for the dimension of a wall, in mm on the office page.
const (
	dimensionClear = 3.6 // from the numbers behind the wall to the line
	dimensionStep  = 1.8 // from one place to the next
	dimensionSteps = 12
	dimensionOver  = 1.2 // that extension lines reach over the line
	dimensionAir   = 0.8 // between the line and its figure
	dimensionTick  = 0.9 // that its ticks reach to every side
)

// dimensionSights are the places along a wall from which its dimension has to be seen.
var dimensionSights = []float64{0.1, 0.3, 0.5, 0.7, 0.9}

// dimension draws the length of a wall behind it, clear of its numbers, or before it where the walls beside it leave no room there.
// Where it has none at all the label of the wall says it.
func (r *roomKey) dimension(i int) {
	k := r.Look
	for _, side := range []float64{1, -1} {
		first := k.Of(dimensionClear)
		if side > 0 {
			first += r.reach[i]
		}
		for step := range dimensionSteps {
			if r.dimensioned(i, side, first+float64(step)*k.Of(dimensionStep)) {
				if side < 0 && !r.column {
					r.squeezed++
				}
				return
			}
		}
	}
	r.squeezed++
}

// dimensioned draws the dimension of a wall so far behind it or before it, if it has room there.
func (r *roomKey) dimensioned(i int, side, out float64) bool {
	k := r.Look
	a, b := r.outline.Along(i, 0, side*out), r.outline.Along(i, 1, side*out)
	nx, ny := r.outline.Outward(i)
	t := r.figureOver(r.Style.Format(r.Room.Walls[i].Length), a, b)
	if t.Width()+k.Of(2.4) > math.Hypot(b.X-a.X, b.Y-a.Y) || !r.Space.Free(t.Bounds(), k.Of(0.7)) {
		return false
	}
	lines := [][2]scene.Point{{a, b}}
	near, far := k.Of(1), k.Of(1)
	if side > 0 {
		near, far = near+r.thick, r.reach[i]+k.Of(0.5)
	}
	for end, p := range []scene.Point{a, b} {
		tip := p.Add(side*nx*k.Of(dimensionOver), side*ny*k.Of(dimensionOver))
		foot := r.outline.Along(i, float64(end), side*near)
		if !r.Space.FreeLine(foot, tip, k.Of(0.6)) { // a number stands in its way
			foot = r.outline.Along(i, float64(end), side*far)
		}
		lines = append(lines, [2]scene.Point{foot, tip})
	}
	for _, l := range lines {
		if !r.Space.FreeLine(l[0], l[1], k.Of(0.6)) || !r.crossesNothing(l) || !r.inBounds(l) {
			return false
		}
	}
	for _, share := range dimensionSights { // no other wall between the wall and its dimension
		if !r.outline.Sees(r.outline.Along(i, share, side*0.1), r.outline.Along(i, share, side*out)) {
			return false
		}
	}
	for _, at := range lines[0] {
		if tick := r.tickAt(at); !r.Space.FreeLine(tick[0], tick[1], k.Of(0.6)) {
			return false
		}
	}
	w := &r.Room.Walls[i]
	in := r.g.Part(scene.Tag{Class: "dimension", Title: "length of " + w.Name, Data: []scene.Datum{folio.Datum("wall", w.Name), folio.Datum("length", folio.Mm(w.Length))}})
	for n, l := range lines {
		pen := scene.Pen(scene.Dimensions, k.Extension)
		if n == 0 {
			pen = scene.Pen(scene.Dimensions, k.Dimension)
		}
		in.Line(l[0], l[1], pen)
		r.Space.Stroke(l[0], l[1])
	}
	for _, at := range []scene.Point{a, b} {
		draft.Tick(in, k, at)
		tick := r.tickAt(at)
		r.Space.Stroke(tick[0], tick[1])
	}
	in.Text(t)
	r.Space.Take(t.Bounds())
	r.lines = append(r.lines, lines...)
	r.figured[i] = true
	if side < 0 {
		r.inward[i] = out + k.Of(dimensionAir) + k.Small
		return true
	}
	r.reach[i] = out + k.Of(dimensionOver)
	if (t.At.X-a.X)*nx+(t.At.Y-a.Y)*ny > 0 {
		r.reach[i] = out + k.Of(dimensionAir) + k.Small
	}
	return true
}

// tickAt is the tick at an end of a dimension line.
func (r *roomKey) tickAt(at scene.Point) [2]scene.Point {
	by := r.Look.Of(dimensionTick)
	return [2]scene.Point{at.Add(-by, by), at.Add(by, -by)}
}

// figureOver is a length over its dimension line, to be read from below or from the right.
func (r *roomKey) figureOver(figure string, a, b scene.Point) scene.Text {
	k := r.Look
	angle := math.Round(-math.Atan2(b.Y-a.Y, b.X-a.X)*180/math.Pi*1e6) / 1e6
	if angle > 90 {
		angle -= 180
	} else if angle <= -90 {
		angle += 180
	}
	t := scene.Text{String: figure, Height: k.Small, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Dimensions}
	lift := k.Of(dimensionAir) + t.Bounds().Y1 // fractions reach under the line of figures
	sin, cos := scene.SinCos(angle)
	t.At, t.Angle = scene.Pt((a.X+b.X)/2-sin*lift, (a.Y+b.Y)/2-cos*lift), angle
	return t
}

// crossesNothing reports whether a line crosses no wall and no line of another dimension.
func (r *roomKey) crossesNothing(l [2]scene.Point) bool {
	for _, o := range r.backs {
		if folio.Parted(l, o) {
			return false
		}
	}
	return r.outline.Sees(l[0], l[1]) && !r.crossesLines(l)
}

// crossesLines reports whether a line crosses one of a dimension or of a leader.
func (r *roomKey) crossesLines(l [2]scene.Point) bool {
	for _, o := range r.lines {
		if folio.Parted(l, o) {
			return true
		}
	}
	return false
}

// inBounds reports whether a line stays where the plan may stand.
func (r *roomKey) inBounds(l [2]scene.Point) bool {
	return r.Space.Bounds.IsZero() || r.Space.Bounds.Contains(scene.Around(l[0], l[1]))
}

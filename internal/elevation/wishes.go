package elevation

import (
	"fmt"
	"math"
	"slices"

	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// pins draws the ends of the centre line of each pin, past the outline of the wall, and names it.
func (e *View) pins() {
	k := e.Look
	for i := range e.F.W.Pins {
		p := &e.F.W.Pins[i]
		if p.X < e.From || p.X > e.To {
			continue
		}
		key := fmt.Sprintf("pin %d", i)
		in := e.Group.Part(scene.Tag{Class: "pin", Title: "centre line for " + wished[p.Put], Data: []scene.Datum{folio.Datum("x", folio.Mm(p.X)), folio.Datum("put", p.Put)}})
		top, foot := e.pinEnds(p)
		high, low := top.Add(0, -k.Of(5)), foot.Add(0, k.Of(5))
		if !e.elsewhere(key) && !e.centreName(in, key, high, low) {
			e.dropAt(key, e.midAt(p.X), "centre line (CL) at %s, for %s", e.Style.Format(p.X), wished[p.Put])
		}
		for _, l := range [][2]scene.Point{{high, top}, {foot, low}} {
			e.centreLine(in, l[0], l[1], 0)
			e.Space.Stroke(l[0], l[1])
		}
	}
}

// pinLines draws the centre lines on through the wall, broken where words stand. Where a seam stands at the pin, the seam
// is the line.
func (e *View) pinLines() {
	for i := range e.F.W.Pins {
		if p := &e.F.W.Pins[i]; p.X >= e.From && p.X <= e.To && !e.seamNear(p.X) {
			top, foot := e.pinEnds(p)
			e.centreLine(e.Group.Part(scene.Tag{Class: "pin-line", Data: []scene.Datum{folio.Datum("x", folio.Mm(p.X))}}), top, foot, e.Look.Of(1.5))
		}
	}
}

// pinEnds are the points of the ceiling and of the floor at a pin.
func (e *View) pinEnds(p *room.Pin) (top, foot scene.Point) {
	return e.V.Pt(p.X, room.At(e.F.W.Ceiling, p.X)), e.V.Pt(p.X, room.At(e.F.W.Floor, p.X))
}

// centreLine draws the parts of a centre line that run clear of words and are longer than least.
func (e *View) centreLine(in *scene.Group, a, b scene.Point, least float64) {
	k := e.Look
	parts := e.Space.Gaps(a, b, k.Of(0.7))
	for j := 0; j+1 < len(parts); j += 2 {
		if parts[j+1].Y-parts[j].Y > least {
			in.Line(parts[j], parts[j+1], scene.Pen(scene.Marks, k.Dimension).As(scene.Chain(k.Dimension)))
		}
	}
}

// wished says what a pin asks for.
var wished = map[string]string{"seam": "a seam", "middle": "the middle of a sheet", "either": "a seam or the middle of a sheet"}

// seamNear reports whether a seam stands at a pin, to half a step of the grid.
func (e *View) seamNear(x L) bool {
	return slices.ContainsFunc(e.F.Seams, func(s *layout.Seam) bool { return 2*(s.X-x).Abs() <= e.Room.Rules.Snap })
}

// centreReach is how far past the end of a centre line its name may stand, in mm on the office page.
const centreReach = 12

// centreName letters CL at an end of a centre line, in the first place that is free, and reports whether there is one:
//
//  1. at the right of its upper end, of its lower end, then at their left;
//  2. past its upper end, past its lower end, then millimetre by millimetre further out.
func (e *View) centreName(in *scene.Group, key string, high, low scene.Point) bool {
	k := e.Look
	t := scene.Text{String: "CL", Height: k.Small, Bold: true, Anchor: scene.Middle, Layer: scene.Marks}
	half := t.Width() / 2
	var places []scene.Point
	for _, side := range []float64{1, -1} {
		places = append(places, high.Add(side*(half+k.Of(1)), k.Small), low.Add(side*(half+k.Of(1)), 0))
	}
	for out := 0.0; out < centreReach; out++ {
		places = append(places, high.Add(0, -k.Of(0.9+out)), low.Add(0, k.Small+k.Of(0.9+out)))
	}
	for _, at := range places {
		t.At = at
		if e.Space.Free(t.Bounds(), k.Of(0.9)) {
			in.Data = append(in.Data, item(key))
			in.Text(t)
			e.Space.Take(t.Bounds())
			return true
		}
	}
	return false
}

// keeps marks the stretches that are kept free of seams: a line between two bars, with what it is for.
func (e *View) keeps() {
	for i := range e.F.W.KeepClear {
		c := &e.F.W.KeepClear[i]
		from, to := max(c.From, e.From), min(c.To, e.To)
		if from >= to {
			continue
		}
		words := "no seam"
		if c.Why != "" {
			words += ": " + c.Why
		}
		title := words
		figures := e.Style.Format(c.From) + " to " + e.Style.Format(c.To)
		words += ", " + figures
		in := e.Group.Part(scene.Tag{Class: "keep-clear", Title: title, Data: []scene.Datum{folio.Datum("from", folio.Mm(c.From)), folio.Datum("to", folio.Mm(c.To))}})
		bottom, top := e.F.Cover((from + to) / 2)
		x0, x1 := e.V.X(from), e.V.X(to)
		at := func(share float64) float64 { return e.V.Y(bottom) + (e.V.Y(top)-e.V.Y(bottom))*share }
		key := fmt.Sprintf("keep %d", i)
		if e.elsewhere(key) { // the line stands without its words
			for _, share := range keepShares {
				if e.keepLine(in, x0, x1, at(share)) {
					break
				}
			}
			continue
		}
		if e.keepAlong(in, words, "", x0, x1, at) || e.keepAlong(in, title, figures, x0, x1, at) || e.keepAside(in, words, x0, x1, at) {
			in.Data = append(in.Data, item(key))
		} else {
			e.dropAt(key, e.midAt((from+to)/2), "%s", words)
		}
	}
}

// keepShares are the heights, as shares of the covering from its foot, at which a stretch may be marked: high over what
// stands along the wall, first a little lower and higher, then all the way down.
var keepShares = []float64{0.76, 0.7, 0.64, 0.82, 0.58, 0.52, 0.46, 0.4, 0.34, 0.28, 0.22, 0.16, 0.1, 0.06}

// keepShifts move the words along the line, as shares of half of what they leave of it: in its middle, then to both sides.
var keepShifts = []float64{0, -0.5, 0.5, -1, 1}

// keepAlong letters the words over the line, where they are no longer than it is, at the first height at which both are
// free, with what may stand under the line: the words near the middle of the line if they can be, for the height says nothing and the middle does.
func (e *View) keepAlong(in *scene.Group, words, under string, x0, x1 float64, at func(float64) float64) bool {
	k := e.Look
	t := scene.Text{String: words, Height: k.Small, Anchor: scene.Middle, Layer: scene.Notes, Field: 0.4}
	low := scene.Text{String: under, Height: k.Small, Anchor: scene.Middle, Seat: scene.Hanging, Layer: scene.Notes, Field: 0.4}
	spare := x1 - x0 - math.Max(t.Width(), low.Width()) - 2*t.Field - k.Of(2.2)
	if spare < 0 {
		return false
	}
	for _, share := range keepShares {
		for _, shift := range keepShifts {
			y := at(share)
			t.At = scene.Pt((x0+x1)/2+shift*spare/2, y-0.33*k.Small-t.Field-k.Of(0.7))
			low.At = scene.Pt(t.At.X, y+t.Field+k.Of(0.9))
			if under != "" && !e.Space.Free(low.Bounds(), low.Field+k.Of(0.8)) {
				continue
			}
			if e.Space.Free(t.Bounds(), t.Field+k.Of(0.8)) && e.keepLine(in, x0, x1, y) {
				in.Text(t)
				e.Space.Take(t.Bounds().Inset(-t.Field))
				if under != "" {
					in.Text(low)
					e.Space.Take(low.Bounds().Inset(-low.Field))
				}
				return true
			}
		}
	}
	return false
}

// keepAside letters the words outside, on a leader from the first height at which the line is free, and reports whether they
// stand: the line alone may stand without them.
func (e *View) keepAside(in *scene.Group, words string, x0, x1 float64, at func(float64) float64) bool {
	k := e.Look
	t := scene.Text{String: words, Height: k.Small, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Notes, Field: 0.4}
	w, h := t.Width()+2*t.Field+k.Of(0.4), 1.66*k.Small+2*t.Field
	for _, share := range keepShares {
		y := at(share)
		dot := scene.Pt((x0+x1)/2, y)
		own := scene.Box{X0: x0, Y0: y - k.Of(keepBar), X1: x1, Y1: y + k.Of(keepBar)}.Inset(-k.Of(0.85))
		c, ok := e.callOutOff(dot, w, h, k.Of(4), own)
		if box := e.Box(); !ok || c.Y < box.Y0 || c.Y > box.Y1 { // across lines of dimensions the list is better
			return false
		}
		if !e.keepLine(in, x0, x1, y) {
			continue
		}
		enter, _, _ := draft.Clip(dot, c, scene.BoxRound(c, w, h).Inset(-k.Of(0.5)))
		e.leader(in, dot, dot.Add((c.X-dot.X)*enter, (c.Y-dot.Y)*enter))
		t.At = c
		in.Text(t)
		e.Space.Take(t.Bounds().Inset(-t.Field))
		return true
	}
	return false
}

// keepBar is how far a bar at an end of the line of a stretch goes to each side of it, in mm on the office page.
const keepBar = 1.2

// keepLine draws the line of a stretch between its two bars, if no words are in its way.
func (e *View) keepLine(in *scene.Group, x0, x1, y float64) bool {
	k := e.Look
	bar := k.Of(keepBar)
	for i := range e.F.W.Openings {
		a, z0, b, z1 := e.F.Hole(&e.F.W.Openings[i])
		if e.V.X(a) < x1 && e.V.X(b) > x0 && math.Min(math.Abs(e.V.Y(z0)-y), math.Abs(e.V.Y(z1)-y)) < k.Of(2) {
			return false // along an edge it would be lost
		}
	}
	for _, l := range [][2]scene.Point{{scene.Pt(x0, y), scene.Pt(x1, y)}, {scene.Pt(x0, y-bar), scene.Pt(x0, y+bar)}, {scene.Pt(x1, y-bar), scene.Pt(x1, y+bar)}} {
		if !e.Space.FreeLine(l[0], l[1], k.Of(0.6)) {
			return false
		}
	}
	pen := scene.Pen(scene.Marks, k.Thin)
	in.HLine(x0, x1, y, pen)
	in.VLine(x0, y-bar, y+bar, pen)
	in.VLine(x1, y-bar, y+bar, pen)
	e.Space.Stroke(scene.Pt(x0, y), scene.Pt(x1, y))
	for _, x := range []float64{x0, x1} {
		e.Space.Stroke(scene.Pt(x, y-bar), scene.Pt(x, y+bar))
	}
	return true
}

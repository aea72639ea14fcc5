package elevation

import (
	"math"

	"flitchlay/internal/draft"
	"flitchlay/internal/scene"
)

// grainArrow draws one two-headed arrow along the grain, with its word beside it, in the first place that is free: in a
// sheet that is wide on paper, else in any.
func (e *View) grainArrow() {
	k := e.Look
	angle := 90.0
	l := k.Of(18)
	t := scene.Text{String: "GRAIN", Height: k.Small, Anchor: scene.Middle, Layer: scene.Notes, Field: 0.6}
	if e.F.Run.Up {
		angle = 0
	}
	t.Angle = angle
	try := func(c scene.Point) bool {
		a, b := c.Add(0, l/2), c.Add(0, -l/2)
		t.At = c.Add(-k.Of(1.4), 0)
		box := scene.Box{X0: c.X - k.Of(5), Y0: c.Y - l/2, X1: c.X + k.Of(1.4), Y1: c.Y + l/2}
		if angle == 0 {
			a, b = c.Add(-l/2, 0), c.Add(l/2, 0)
			t.At = c.Add(0, -k.Of(1.4))
			box = scene.Box{X0: c.X - l/2, Y0: c.Y - k.Of(5), X1: c.X + l/2, Y1: c.Y + k.Of(1.4)}
		}
		if !e.Space.Free(box, k.Of(1)) || !e.Space.Free(t.Bounds(), t.Field+k.Of(0.75)) {
			return false
		}
		in := e.Group.Part(scene.Tag{Class: "grain", Title: "direction of the grain", Data: []scene.Datum{item("grain")}})
		in.Rect(scene.Box{X0: math.Min(a.X, b.X) - k.Of(0.9), Y0: math.Min(a.Y, b.Y) - k.Of(0.5), X1: math.Max(a.X, b.X) + k.Of(0.9), Y1: math.Max(a.Y, b.Y) + k.Of(0.5)},
			scene.Style{Layer: scene.Grain, Fill: scene.Solid(scene.White)})
		draft.Arrow(in, k, scene.Marks, a, b, k.Thin, true)
		in.Text(t)
		e.Space.Take(box)
		return true
	}
	bare := func(c scene.Point) bool {
		a, b := c.Add(-k.Of(1.5), l/2), c.Add(-k.Of(1.5), -l/2)
		if angle == 0 {
			a, b = c.Add(-l/2, 0), c.Add(l/2, 0)
		}
		box := scene.Box{X0: math.Min(a.X, b.X), Y0: math.Min(a.Y, b.Y), X1: math.Max(a.X, b.X), Y1: math.Max(a.Y, b.Y)}.Inset(-k.Of(0.6))
		if !e.Space.Free(box, k.Of(0.5)) {
			return false
		}
		in := e.Group.Part(scene.Tag{Class: "grain", Title: "direction of the grain", Data: []scene.Datum{item("grain")}})
		in.Rect(box, scene.Style{Layer: scene.Grain, Fill: scene.Solid(scene.White)})
		draft.Arrow(in, k, scene.Marks, a, b, k.Thin, true)
		e.Space.Take(box)
		return true
	}
	if e.elsewhere("grain") || e.tryArrow(try, k.Of(arrowWide)) || e.tryArrow(try, 0) {
		return
	}
	if l = k.Of(arrowShort); e.tryArrow(bare, 0) {
		return
	}
	way := "up the wall"
	if e.F.Run.Up {
		way = "along the wall"
	}
	e.drop("grain", "grain %s", way)
}

// arrowShort is the length of an arrow without its word, where there is no room for both.
const arrowShort = 11

// arrowWide is the width on paper, on the office page, of a sheet in which the grain arrow stands well.
const arrowWide = 14

// Places for the grain arrow.
var (
	arrowShares = []float64{0.62, 0.7, 0.54, 0.46, 0.78, 0.38, 0.3} // of the height of the covering from its upper edge: a little under the middle, where few numbers stand
	arrowOffs   = []float64{0.5, 0.3, 0.7}                          // of the sheet's width: in its middle, else aside
)

// tryArrow tries the sheets that are at least so wide on paper: at each height all sheets from the left, for the height
// matters more than the sheet.
func (e *View) tryArrow(try func(scene.Point) bool, least float64) bool {
	k := e.Look
	for _, share := range arrowShares {
		for _, p := range e.F.Parts {
			x0, x1, shown := e.onPage(p)
			if !shown || x1-x0 < least {
				continue
			}
			bottom, top := e.F.Cover(min(max((p.From+p.To)/2, e.From), e.To))
			for _, off := range arrowOffs {
				c := scene.Pt(x0+(x1-x0)*off+k.Of(1.5), e.V.Y(bottom)+(e.V.Y(top)-e.V.Y(bottom))*(1-share))
				if e.insideCover(c) && try(c) {
					return true
				}
			}
		}
	}
	return false
}

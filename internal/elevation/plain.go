package elevation

import (
	"flitchlay/internal/face"
	"flitchlay/internal/scene"
)

// Plain draws the wall itself as a small picture of it has room for, from the faintest to the strongest: grain, hatch, trim, seams,
// openings, outline. Each end has its line only where asked: where the covering goes round a corner, or the wall goes on, it has none.
func (e *View) Plain(g *scene.Group, left, right bool) {
	f := e.F
	e.Group = g
	e.covering(g)
	wall := e.Points(f.Outline(f.W.Floor, f.W.Ceiling, e.From, e.To))
	n := len(face.Profile(f.W.Floor, e.From, e.To))
	pen := scene.Pen(scene.Walls, e.Look.Outline)
	g.Polyline(pen, wall[n:]...)
	g.Polyline(scene.Pen(scene.Walls, e.Look.Wide), wall[:n]...)
	if right {
		g.Line(wall[n-1], wall[n], pen)
	}
	if left {
		g.Line(wall[0], wall[len(wall)-1], pen)
	}
}

package folio

import (
	"math"
	"slices"

	"flitchlay/internal/draft"
	"flitchlay/internal/room"
	"flitchlay/internal/run"
	"flitchlay/internal/scene"
)

// OutlinePlan is the room seen from above, on paper.
type OutlinePlan struct {
	room  *room.Room
	sides [][2]scene.Point // left and right end of each wall
}

// PlanIn brings the plan of the room into a box, as large as it takes.
func PlanIn(r *room.Room, box scene.Box) OutlinePlan {
	all := sidesOf(r).Box()
	scale := math.Inf(1)
	if all.W() > 0 {
		scale = box.W() / all.W()
	}
	if all.H() > 0 {
		scale = math.Min(scale, box.H()/all.H())
	}
	return PlanAt(r, box, scale)
}

// sidesOf are the walls of the room as a plan shows them, in 1/8 micrometre.
func sidesOf(r *room.Room) OutlinePlan {
	p := OutlinePlan{room: r}
	for _, s := range run.Sides(r) {
		p.sides = append(p.sides, [2]scene.Point{{X: s.X0, Y: s.Y0}, {X: s.X1, Y: s.Y1}})
	}
	return p
}

// PlanAt puts the plan of the room into the middle of a box, at a scale in mm of paper to 1/8 micrometre.
func PlanAt(r *room.Room, box scene.Box, scale float64) OutlinePlan {
	p := sidesOf(r)
	m, from := box.Centre(), p.Box().Centre()
	on := func(c scene.Point) scene.Point { return scene.Pt(m.X+(c.X-from.X)*scale, m.Y+(c.Y-from.Y)*scale) }
	for i, s := range p.sides {
		p.sides[i] = [2]scene.Point{on(s[0]), on(s[1])}
	}
	return p
}

// Box is the box round all walls.
func (p OutlinePlan) Box() scene.Box {
	var points []scene.Point
	for _, s := range p.sides {
		points = append(points, s[0], s[1])
	}
	return scene.Around(points...)
}

// Ends are the ends of a wall.
func (p OutlinePlan) Ends(wall int) (a, b scene.Point) { return p.sides[wall][0], p.sides[wall][1] }

// Along is a place on a wall, as a share of its length, moved out of the room.
func (p OutlinePlan) Along(wall int, share, out float64) scene.Point {
	a, b := p.Ends(wall)
	nx, ny := p.Outward(wall)
	return scene.Pt(a.X+(b.X-a.X)*share+nx*out, a.Y+(b.Y-a.Y)*share+ny*out)
}

// Outward is the direction out of the room across a wall: to the left of the way along it.
func (p OutlinePlan) Outward(wall int) (x, y float64) {
	a, b := p.Ends(wall)
	l := math.Hypot(b.X-a.X, b.Y-a.Y)
	if l == 0 {
		return 0, -1
	}
	return (b.Y - a.Y) / l, -(b.X - a.X) / l
}

// keyPlan draws the small plan of the strip, the wall of the page in heavy line.
func (b *Board) keyPlan(g *scene.Group, box scene.Box) {
	k := b.Look
	p := PlanIn(b.Room, box.Inset(k.Of(4.5)))
	g = g.Part(scene.Tag{Class: "key", Title: "key plan"})
	for i := range b.Room.Walls {
		a, c := p.Ends(i)
		pen := scene.Pen(scene.Walls, k.Thin)
		switch {
		case b.heavy(i):
			pen = scene.Pen(scene.Walls, 2*k.Wide)
			pen.Cap = scene.Square
		case !b.Room.Walls[i].Cover:
			pen = pen.As(scene.Dashed(k.Thin))
		}
		g.Line(a, c, pen)
	}
	taken := []scene.Box{}
	for i := range b.Room.Walls {
		mark, ok := b.Marks[i]
		if !ok {
			continue
		}
		t := scene.Text{At: p.Along(i, 0.5, k.Of(3.2)), String: mark, Height: k.Small, Bold: b.heavy(i), Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Marks}
		if MeetsAny(t.Bounds().Inset(-k.Of(0.6)), taken) || p.Touches(t.Bounds().Inset(-k.Of(0.6)-k.Wide)) {
			continue // a small return: its neighbours tell where it is
		}
		taken = append(taken, t.Bounds())
		g.Text(t)
	}
}

// heavy reports whether the key shows a wall heavy.
func (b *Board) heavy(wall int) bool {
	return wall == b.Leaf.Wall || slices.Contains(b.Leaf.Walls, wall)
}

// MeetsAny reports whether a box meets one of a list.
func MeetsAny(b scene.Box, list []scene.Box) bool {
	return slices.ContainsFunc(list, b.Meets)
}

// Touches reports whether a box comes on a wall of the plan.
func (p OutlinePlan) Touches(b scene.Box) bool {
	for i := range p.room.Walls {
		a, c := p.Ends(i)
		if draft.Crosses(a, c, b) {
			return true
		}
	}
	return false
}

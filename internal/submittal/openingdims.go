package submittal

import (
	"math"
	"slices"

	"flitchlay/internal/draft"
	"flitchlay/internal/elevation"
	"flitchlay/internal/folio"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// holeStacks are the dimensions over and beside an enlargement, and the box of the numbers over it.
func holeStacks(e *elevation.View, h hole) (above, right draft.Stack, numbers scene.Box) {
	k := e.Look
	above = draft.Stack{Edge: e.Box().Y0, Out: -1, Outline: e.Roof, Behind: true, Tiers: edgeTiers(e, h)}
	above.First, numbers = e.NumbersOver()
	if h.cut() && e.F.High < h.f.High { // broken off under the ceiling
		above.Outline = nil
	}
	right = draft.Stack{Upright: true, Edge: e.Box().X1, Out: 1, First: k.Of(10), Tiers: holeHeights(e, h)}
	for i := range above.Tiers {
		above.Tiers[i].Name = "" // the running figures show by their circle where they start
	}
	if !e.Last() {
		right.Edge += k.Of(3)
	}
	if t := right.Tiers[0]; t.Name != "" { // which stands over it, where the figures over the opening may reach
		right.Edge = math.Max(right.Edge, above.Box(k).X1+k.Of(4)-right.First)
	}
	return above, right, numbers
}

// edgeTiers are the distances along the wall: between neighbours of seams and edges, and from the left edge to every seam
// over the opening and on to the right edge.
func edgeTiers(e *elevation.View, h hole) []draft.Tier {
	all, run := []L{h.o.FromLeft, h.o.Right()}, []L{h.o.FromLeft}
	for _, x := range uprightSeams(e) {
		if x < e.From || x > e.To {
			continue
		}
		all = append(all, x)
		if x > h.o.FromLeft && x < h.o.Right() {
			run = append(run, x)
		}
	}
	for _, r := range e.F.RawEnds() {
		if r.X >= e.From && r.X <= e.To {
			all = append(all, r.X)
		}
	}
	tiers := []draft.Tier{e.Tier("seams and edges", all, e.V.X)}
	run = append(run, h.o.Right())
	return append(tiers, e.Running("", "from left edge", h.o.FromLeft, run, e.V.X))
}

// uprightSeams are where seams run up the wall: of level bands their joints.
func uprightSeams(e *elevation.View) []L {
	if e.F.Run.Up {
		return e.F.Run.Joints
	}
	var list []L
	for _, s := range e.F.Seams {
		if len(e.F.Shown(s.X)) > 0 { // none in an opening as high as the wall: nothing hangs there
			list = append(list, s.X)
		}
	}
	return list
}

// bandSeams are the seams of level bands from one height to another.
func bandSeams(e *elevation.View, from, to L) []L {
	var list []L
	for _, s := range e.F.Run.Seams {
		if e.F.Run.Up && s.At > from && s.At < to {
			list = append(list, s.At)
		}
	}
	return list
}

// holeHeights are the heights at the opening: floor, base, sill, head, upper edge of the covering, ceiling, the seams of level bands; over the level of
// the room where the floor is not that.
func holeHeights(e *elevation.View, h hole) []draft.Tier {
	mid := (h.o.FromLeft + h.o.Right()) / 2
	floor, ceiling := room.At(e.F.W.Floor, mid), room.At(e.F.W.Ceiling, mid)
	_, z0, _, z1 := e.F.Hole(h.o)
	list := []L{floor, ceiling, max(z0, floor), min(z1, ceiling)}
	if h.o.SillGiven {
		list = append(list, floor+e.F.W.Base)
	}
	list = append(append(list, ceiling-e.F.W.Crown), bandSeams(e, floor, ceiling)...)
	list = slices.DeleteFunc(list, func(z L) bool { return z < e.F.Low || z > e.F.High })
	tiers := []draft.Tier{e.OverLevel("OVER LEVEL", list...)}
	if e.OnLevel() && !h.short {
		tiers[0] = e.Tier("", list, e.V.Y)
	}
	switch level := e.Room.Space.LevelLine; {
	case level <= max(floor, e.F.Low) || level >= min(ceiling, e.F.High):
	case e.F.Run.Up:
		struck := append(bandSeams(e, e.F.Low, e.F.High), z0, z1, level)
		slices.Sort(struck)
		tiers = append(tiers, e.FromLevel("FROM LEVEL", slices.Compact(struck)))
	default:
		tiers = append(tiers, e.Tier("", []L{z0, z1, level}, e.V.Y))
	}
	return tiers
}

// levelLine draws the line to which the crew hangs the level marks.
func levelLine(e *elevation.View, h hole) {
	k := e.Look
	level := e.Room.Space.LevelLine
	if level <= e.F.Low || level >= e.F.High {
		return
	}
	y := e.V.Y(level)
	a, b := scene.Pt(e.Box().X0-k.Of(4), y), scene.Pt(e.Box().X1, y)
	box := e.V.Box(e.F.Hole(h.o))
	for part := range slices.Chunk(draft.Outside(a, b, box), 2) {
		e.Group.Line(part[0], part[1], scene.Pen(scene.Plumb, k.Dimension).As(scene.Chain(k.Dimension)))
		e.Space.Stroke(part[0], part[1])
	}
	t := scene.Text{At: a.Add(-k.Of(1.2), 0), String: "level " + e.Style.Format(level), Height: k.Small, Anchor: scene.End, Seat: scene.Centred, Layer: scene.Plumb}
	if t.Bounds().X0 < e.Field.X0+k.Of(2) {
		t.At, t.Angle, t.Anchor = a.Add(-k.Of(2.4), 0), 90, scene.Middle
	}
	e.Group.Text(t)
	e.Space.Take(t.Bounds())
}

// upDown is a height from the level line: up 3'-0", down 1'-4".
func upDown(s *folio.Set, z L) string {
	if z < 0 {
		return "down " + s.Style.Format(-z)
	}
	return "up " + s.Style.Format(z)
}

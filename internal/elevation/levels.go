package elevation

import (
	"slices"
	"strings"

	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// onLevel reports whether the floor of a wall is the level of the room from end to end: a height over the one is then a height
// over the other.
func onLevel(w *room.Wall) bool {
	for _, p := range w.Floor {
		if p.Z != 0 {
			return false
		}
	}
	return true
}

// OnLevel reports whether heights over the floor of the wall are heights over the level of the room.
func (e *View) OnLevel() bool { return onLevel(e.F.W) }

// floorsDiffer reports whether some floor of the room is off its level.
func (e *View) floorsDiffer() bool {
	for i := range e.Room.Walls {
		if w := &e.Room.Walls[i]; w.Cover && !onLevel(w) {
			return true
		}
	}
	return false
}

// OverLevel is a tier of heights over the level of the room, from the lowest of them up: a height has one figure on all pages.
//
// What lies so close to the level that its mark would stand in the circle of the origin is left out: a floor, which is marked.
func (e *View) OverLevel(name string, heights ...L) draft.Tier {
	var list []L
	for _, z := range heights {
		if e.F.Low > 0 || e.V.MM(z.Abs()) > e.Look.Of(nearLevel) {
			list = append(list, z)
		}
	}
	if e.F.Low <= 0 {
		list = append(list, 0)
	}
	return e.Running(name, strings.ToLower(name), 0, ascending(list), e.V.Y)
}

// nearLevel is how close to the level a height is lost in its mark, in mm on the office page.
const nearLevel = 2.5

// levelLine draws the line from which level bands are struck, broken where words stand, with its height over it where there is room:
// the notes have it in any case.
func (e *View) levelLine() {
	level := e.Room.Space.LevelLine
	if !e.F.Run.Up || level <= e.F.Low || level >= e.F.High {
		return
	}
	k := e.Look
	a, b := e.V.Pt(e.From, level), e.V.Pt(e.To, level)
	in := e.Group.Part(scene.Tag{Class: "level-line", Data: []scene.Datum{folio.Datum("z", folio.Mm(level))}})
	t := scene.Text{String: "level line " + e.Style.Format(level), Height: k.Small, Anchor: scene.Middle, Layer: scene.Notes, Field: 0.4}
	for _, share := range levelShares {
		t.At = scene.Pt(a.X+(b.X-a.X)*share, a.Y-k.Of(1)-t.Field)
		if box := t.Bounds(); box.X0 > a.X && box.X1 < b.X && e.insideCover(t.At) && e.Space.Free(box, t.Field+k.Of(0.8)) {
			in.Text(t)
			e.Space.Take(box.Inset(-t.Field))
			break
		}
	}
	parts := e.Space.Gaps(a, b, k.Of(0.7))
	for i := 0; i+1 < len(parts); i += 2 {
		for _, p := range slices.Collect(slices.Chunk(draft.Outside(parts[i], parts[i+1], e.openBoxes()...), 2)) {
			if p[1].X-p[0].X > k.Of(1.5) {
				in.Line(p[0], p[1], scene.Pen(scene.Plumb, k.Dimension).As(scene.Chain(k.Dimension)))
			}
		}
	}
}

// levelShares are the places of the words on the level line, as shares of its length.
var levelShares = []float64{0.12, 0.2, 0.3, 0.4, 0.6, 0.7, 0.8, 0.9, 0.5}

// floors are the ends and turns of the floor of what is shown.
func (e *View) floors() []room.Point {
	list := []room.Point{{X: e.From, Z: room.AtRight(e.F.W.Floor, e.From)}}
	for _, p := range e.F.W.Floor {
		if p.X > e.From && p.X < e.To {
			list = append(list, p)
		}
	}
	return append(list, room.Point{X: e.To, Z: room.At(e.F.W.Floor, e.To)})
}

// signed is a height over the level as a level mark has it.
func signed(f string, z L) string {
	if z > 0 {
		return "+" + f
	}
	return f
}

// floorNote says how high the floor of a wall lies over the level of the room; nothing where it lies on it.
func (e *View) floorNote() string {
	if e.OnLevel() {
		return ""
	}
	list := e.floors()
	var at []string
	same := true
	for _, p := range list {
		same = same && p.Z == list[0].Z
		at = append(at, signed(e.Style.Format(p.Z), p.Z)+" at "+e.Style.Format(p.X))
	}
	what := "Floor of " + e.F.W.Name + ", over the level of the room from which all heights are: "
	if same {
		return what + signed(e.Style.Format(list[0].Z), list[0].Z) + "."
	}
	return what + strings.Join(at, ", ") + "."
}

// Places for a level mark, in mm on the office page aside of its place under the floor line.
var floorAsides = []float64{1.8, 2.6, 4}

// floorMarks marks how high the floor lies over the level of the room, at the ends of the wall and where it turns, where floors
// differ: under the floor line, outside the wall before inside. What finds no place stands in the notes.
func (e *View) floorMarks() {
	if !e.floorsDiffer() {
		return
	}
	k := e.Look
	for _, p := range e.floors() {
		text := signed(e.Style.Format(p.Z), p.Z)
		w := scene.Width(text, k.Small, false)
		signs := []float64{-1, 1}
		if p.X > (e.From+e.To)/2 {
			signs = []float64{1, -1}
		}
		at := e.V.Pt(p.X, p.Z).Add(0, k.Wide/2+0.3)
		if tip, sign, ok := e.floorPlace(at, signs, w); ok {
			anchor := scene.Start
			if sign < 0 {
				anchor = scene.End
			}
			in := e.Group.Part(scene.Tag{Class: "floor-level", Data: []scene.Datum{folio.Datum("x", folio.Mm(p.X)), folio.Datum("z", folio.Mm(p.Z))}})
			in.Polygon(scene.Style{Layer: scene.Marks, Fill: scene.Solid(scene.Black)}, tip, tip.Add(-k.Of(1.1), k.Of(1.9)), tip.Add(k.Of(1.1), k.Of(1.9)))
			in.Text(scene.Text{At: tip.Add(sign*k.Of(1.9), k.Of(0.6)+k.Small), String: text, Height: k.Small, Anchor: anchor, Layer: scene.Notes})
			e.Space.Take(e.floorBox(tip, sign, w))
		}
	}
}

// floorBox is what a level mark takes with its figure of a width, to the right of its tip or to the left.
func (e *View) floorBox(tip scene.Point, sign, w float64) scene.Box {
	k := e.Look
	near, far := tip.X-sign*k.Of(1.1), tip.X+sign*(k.Of(1.9)+w)
	return scene.Box{X0: min(near, far), Y0: tip.Y, X1: max(near, far), Y1: tip.Y + k.Of(1) + k.Small*1.14}
}

// floorPlace finds where the tip of a level mark stands, and to which side its figure.
func (e *View) floorPlace(at scene.Point, signs []float64, w float64) (scene.Point, float64, bool) {
	k := e.Look
	for _, dx := range floorAsides {
		for _, sign := range signs {
			tip := at.Add(sign*k.Of(dx), 0)
			if box := e.floorBox(tip, sign, w); e.Space.Free(box, k.Of(0.45)) && box.X0 > e.Field.X0+k.Of(1) && box.X1 < e.Field.X1-k.Of(1) {
				return tip, sign, true
			}
		}
	}
	return at, 0, false
}

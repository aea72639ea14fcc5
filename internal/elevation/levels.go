package elevation

import (
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
var floorAsides = []float64{1.4, 2.6, 4}

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
		if tip, ok := e.floorPlace(at, signs, w); ok {
			in := e.Group.Part(scene.Tag{Class: "floor-level", Data: []scene.Datum{folio.Datum("x", folio.Mm(p.X)), folio.Datum("z", folio.Mm(p.Z))}})
			in.Polygon(scene.Style{Layer: scene.Marks, Fill: scene.Solid(scene.Black)}, tip, tip.Add(-k.Of(1.1), k.Of(1.9)), tip.Add(k.Of(1.1), k.Of(1.9)))
			in.Text(scene.Text{At: tip.Add(k.Of(1.9), k.Of(0.6)+k.Small), String: text, Height: k.Small, Layer: scene.Notes})
			e.Space.Take(e.floorBox(tip, w))
		}
	}
}

// floorBox is what a level mark takes with its figure of a width.
func (e *View) floorBox(tip scene.Point, w float64) scene.Box {
	k := e.Look
	return scene.Box{X0: tip.X - k.Of(1.1), Y0: tip.Y, X1: tip.X + k.Of(1.9) + w, Y1: tip.Y + k.Of(1) + k.Small*1.14}
}

// floorPlace finds where the tip of a level mark stands.
func (e *View) floorPlace(at scene.Point, signs []float64, w float64) (scene.Point, bool) {
	k := e.Look
	for _, sign := range signs {
		for _, dx := range floorAsides {
			tip := at.Add(k.Of(dx), 0)
			if sign < 0 {
				tip = at.Add(-k.Of(dx+1.9)-w, 0)
			}
			if box := e.floorBox(tip, w); e.Space.Free(box, k.Of(0.45)) && box.X0 > e.Field.X0+k.Of(1) && box.X1 < e.Field.X1-k.Of(1) {
				return tip, true
			}
		}
	}
	return at, false
}

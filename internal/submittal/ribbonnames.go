package submittal

import (
	"strings"

	"flitchlay/internal/elevation"
	"flitchlay/internal/face"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// holeAir is between the name of an opening and its edge, in mm on the office page.
const holeAir = 0.9

// openingName is the name of an opening in its white, level or up the page, and whether it has room there: where the picture is too
// small for that, it stands under the title.
func (r *ribbon) openingName(hole scene.Box, name string) (scene.Text, bool) {
	k := r.Look
	for _, angle := range []float64{0, 90} {
		t := scene.Text{At: hole.Centre(), String: name, Height: k.Small, Angle: angle, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Openings}
		if b := t.Bounds(); b.W() <= hole.W()-2*k.Of(holeAir) && b.H() <= hole.H()-2*k.Of(holeAir) {
			return t, true
		}
	}
	return scene.Text{}, false
}

// unnamed are the openings of each wall whose names have no room in them, and those that the end of a row parts, as the title says them:
// all of a wall, from left to right, so that each is found.
func (r *ribbon) unnamed() (list []string) {
	for _, f := range r.Faces {
		var names []string
		lost := false
		for i := range f.W.Openings {
			o := &f.W.Openings[i]
			x0, z0, x1, z1 := f.Hole(o)
			names = append(names, o.Name)
			_, ok := r.openingName(scene.BoxAt(0, 0, r.mm(x1-x0), r.mm(z1-z0)), o.Name)
			lost = lost || !ok || !r.whole(f, o)
		}
		if lost {
			list = append(list, "openings of "+r.Marks[f.Wall]+" from the left: "+strings.Join(names, ", "))
		}
	}
	return list
}

// whole reports whether an opening stands in one row.
func (r *ribbon) whole(f *face.Face, o *room.Opening) bool {
	for _, row := range r.rows {
		for _, p := range row.parts {
			if p.f.Wall == f.Wall && o.FromLeft >= p.from && o.Right() <= p.to {
				return true
			}
		}
	}
	return false
}

// bandAt are the places of a number along a level band, as shares of its length.
var bandAt = []float64{0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8}

// bandNumbers letters the numbers of level bands in them, where they are high enough: clear of openings and of the triangle at their
// left end.
func (r *ribbon) bandNumbers(e *elevation.View, g *scene.Group) {
	k := r.Look
	if !e.F.Run.Up {
		return
	}
	for i := range e.F.Run.Sheets {
		s := &e.F.Run.Sheets[i]
		if left, low, right, high, ok := e.F.Extent(s); ok {
			box := e.V.Box(max(left, e.From), low, min(right, e.To), high)
			for _, share := range bandAt {
				t := scene.Text{At: scene.Pt(box.X0+box.W()*share, box.Centre().Y), String: elevation.NumberOf(s), Height: k.Small, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Numbers, Field: 0.4}
				if wide := t.Bounds().Inset(-k.Of(1)); wide.H() <= box.H() && wide.X0 > box.X0+k.Of(6) && wide.X1 < box.X1 && !r.onHole(e, wide) && underRoof(e, wide) {
					g.Part(scene.Tag{Class: "ribbon-number"}).Text(t)
					break
				}
			}
		}
	}
}

// underRoof reports whether a box lies under the ceiling, which may slope or step.
func underRoof(e *elevation.View, b scene.Box) bool {
	return e.Roof(b.X0) <= b.Y0 && e.Roof(b.Centre().X) <= b.Y0 && e.Roof(b.X1) <= b.Y0
}

// onHole reports whether a box lies on an opening.
func (r *ribbon) onHole(e *elevation.View, b scene.Box) bool {
	for i := range e.F.W.Openings {
		if b.Meets(e.V.Box(e.F.Hole(&e.F.W.Openings[i]))) {
			return true
		}
	}
	return false
}

package submittal

import (
	"fmt"
	"math"

	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
)

// Places for the name of an opening and for the width of a corridor, in mm on the office page.
const (
	holeClear = 1.2 // from the face of the wall to the name of an opening
	holeRow   = 1.6 // from one distance from the wall to the next
	holeRows  = 4
)

// holeShares are the places of a name along its opening, as shares of that.
var holeShares = []float64{0.5, 0.35, 0.65, 0.2, 0.8}

// holeNames letters the name of each opening before it, in the room, where the elevation has it too; else behind it.
func (r *roomKey) holeNames() {
	k := r.Look
	for i := range r.Room.Walls {
		w := &r.Room.Walls[i]
		for j := range w.Openings {
			o := &w.Openings[j]
			t := scene.Text{String: o.Name, Height: k.Small, Anchor: scene.Middle, Seat: scene.Centred, Layer: scene.Openings}
			if !r.holeName(i, r.share(i, o.FromLeft), r.share(i, o.Right()), t) {
				r.missed.holes = append(r.missed.holes, fmt.Sprintf("%s on %s", o.Kind.Named(o.Name), w.Name))
			}
		}
	}
}

// holeName letters the name of an opening between two shares of its wall, if there is room.
func (r *roomKey) holeName(i int, from, to float64, t scene.Text) bool {
	k := r.Look
	nx, ny := r.outline.Outward(i)
	half := (math.Abs(nx)*t.Width() + math.Abs(ny)*t.Height) / 2
	for _, side := range []float64{-1, 1} {
		edge := 0.0
		if side > 0 {
			edge = r.reach[i]
		}
		for row := range holeRows {
			for _, s := range holeShares {
				t.At = r.outline.Along(i, from+(to-from)*s, side*(edge+k.Of(holeClear)+half+k.Of(holeRow)*float64(row)))
				if !r.Space.Free(t.Bounds(), k.Of(0.9)) || !r.outline.Sees(r.outline.Along(i, from+(to-from)*s, side*k.Of(0.1)), t.At) {
					continue
				}
				r.g.Part(scene.Tag{Class: "opening-name", Data: []scene.Datum{folio.Datum("name", t.String), folio.Datum("wall", r.Room.Walls[i].Name)}}).Text(t)
				r.Space.Take(t.Bounds())
				if side > 0 {
					r.reach[i] = math.Max(r.reach[i], edge+k.Of(holeClear)+2*half+k.Of(holeRow)*float64(row))
				}
				return true
			}
		}
	}
	return false
}

// acrossShares are the places along a wall at which its distance from the one that faces it is dimensioned: near the open end first,
// where it was measured.
var acrossShares = []float64{0.97, 0.92, 0.85, 0.75, 0.6, 0.5, 0.4, 0.25, 0.15, 0.08}

// across dimensions how far a wall is from the next, which faces it over an open end.
func (r *roomKey) across() {
	for i := range r.Room.Walls {
		w := &r.Room.Walls[i]
		if w.Across == 0 {
			continue
		}
		reach := w.Across.MM() / float64(r.scale)
		done := false
		for _, share := range acrossShares {
			if done = r.acrossAt(i, share, reach); done {
				break
			}
		}
		if !done {
			r.missed.holes = append(r.missed.holes, fmt.Sprintf("%s across from %s", r.Style.Format(w.Across), w.Name))
		}
	}
}

// acrossAt draws that dimension at a share of the wall, if it has room there.
func (r *roomKey) acrossAt(i int, share, reach float64) bool {
	k, w := r.Look, &r.Room.Walls[i]
	a, b := r.outline.Along(i, share, 0), r.outline.Along(i, share, -reach)
	if i+1 < len(r.Room.Walls) { // the wall that faces it may be shorter
		c, d := r.outline.Ends(i + 1)
		along := ((b.X-c.X)*(d.X-c.X) + (b.Y-c.Y)*(d.Y-c.Y)) / math.Max((d.X-c.X)*(d.X-c.X)+(d.Y-c.Y)*(d.Y-c.Y), 1e-9)
		if along < 0 || along > 1 {
			return false
		}
	}
	t := r.figureOver(r.Style.Format(w.Across), a, b)
	if t.Width()+k.Of(2.4) > reach || !r.Space.Free(t.Bounds(), k.Of(0.8)) || !r.Space.FreeLine(a, b, k.Of(0.7)) {
		return false
	}
	in := r.g.Part(scene.Tag{Class: "across", Title: "across from " + w.Name, Data: []scene.Datum{folio.Datum("wall", w.Name), folio.Datum("across", folio.Mm(w.Across))}})
	in.Line(a, b, scene.Pen(scene.Dimensions, k.Dimension))
	r.Space.Stroke(a, b)
	for _, at := range []scene.Point{a, b} {
		draft.Tick(in, k, at)
		tick := r.tickAt(at)
		r.Space.Stroke(tick[0], tick[1])
	}
	in.Text(t)
	r.Space.Take(t.Bounds())
	r.lines = append(r.lines, [2]scene.Point{a, b})
	return true
}

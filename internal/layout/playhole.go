package layout

import (
	"flitchlay/internal/room"
	"flitchlay/internal/shape"
)

// A sheet carries along what is cut out of it for the boxes behind it. It may be off by what their plates still cover, and not at all
// where it is cut round a plate that is never taken off.

// holeLimit is how far a sheet may be off to one side before a hole of its own shows beside its plate: the least of its holes, at whose
// edge on the other side the sheet has some covering left.
func (p *playRow) holeLimit(place int, way L) Limit {
	least := Limit{}
	for _, st := range p.run.Walls {
		w := &p.room.Walls[st.Wall]
		for i := range w.Boxes {
			x := &w.Boxes[i]
			beside, by := p.plateOver(x, way)
			if (least.Must == NoMust || by < least.By) && p.covers(place, st.Wall, beside) {
				least = Limit{By: by, Must: MustPlate, Name: x.Name}
			}
		}
	}
	return least
}

// plateOver is how far the plate of a box reaches over its hole at the edge that comes out when the sheet is off to one side, and the
// place on the wall right beside that edge: the right edge of the hole when the sheet goes right, the upper one when it goes up.
func (p *playRow) plateOver(x *room.Box, way L) (beside shape.Point, by L) {
	x0, z0, x1, z1 := x.CutOut()
	plate := [2]L{x.X - x.PlateWidth.HalfDown(), x.X - x.PlateWidth.HalfDown() + x.PlateWidth}
	hole, middle := [2]L{x0, x1}, z0+(z1-z0)/2
	if p.run.Up {
		plate = [2]L{x.Z - x.PlateHigh.HalfDown(), x.Z - x.PlateHigh.HalfDown() + x.PlateHigh}
		hole, middle = [2]L{z0, z1}, x0+(x1-x0)/2
	}
	at := hole[1] + 1
	by = plate[1] - hole[1]
	if way < 0 {
		at, by = hole[0]-1, hole[0]-plate[0]
	}
	if p.run.Up {
		return shape.Point{X: middle, Z: at}, max(0, by)
	}
	return shape.Point{X: at, Z: middle}, max(0, by)
}

// covers reports whether a sheet of a place shows at a point of a wall.
func (p *playRow) covers(place, wall int, at shape.Point) bool {
	for _, k := range p.run.column(place) {
		for i := range p.run.Sheets[k].Pieces {
			if q := &p.run.Sheets[k].Pieces[i]; q.Wall == wall && q.Covers(at) {
				return true
			}
		}
	}
	return false
}

package layout

import (
	"flitchlay/internal/length"
	"flitchlay/internal/run"
	"flitchlay/internal/shape"
)

// mostPieces is where bands stop looking for a number of pieces that a sheet is long enough for.
const mostPieces = 100

// bands finds the pieces along the bands of a wall with horizontal grain: as few as the sheets' length allows, equal to
// the grid, their joints in line in all bands.
//
// Shape: x of the joints, ascending.
func (b *builder) bands(r *Run) []L {
	left, right, ok := shape.Reach(b.lying(r), -far, far)
	if !ok {
		return nil
	}
	have, match, snap := b.room.Veneer.Length, b.match(), b.room.Rules.Snap
	tl, tr := b.sideTrims(r)
	n := L(1)
	for n < mostPieces && right-left+tl+tr+(n-1)*2*match > n*have {
		n++
	}
	var joints []L
	for k := L(1); k < n; k++ {
		at := length.MulDiv(right-left, k, n)
		joints = append(joints, left+length.MulDiv(at, 1, snap)*snap)
	}
	return joints
}

// lying is the covering of the wall of a run that goes up it.
func (b *builder) lying(r *Run) shape.Wall {
	w := r.Walls[0].Wall
	return Covering(b.room, Stretch{Wall: w, Right: b.room.Walls[w].Length})
}

// sideTrims are the trims at the two sides of a wall with horizontal grain.
func (b *builder) sideTrims(r *Run) (left, right L) {
	w := &b.room.Walls[r.Walls[0].Wall]
	return run.EdgeTrim(b.room, w.LeftEnd), run.EdgeTrim(b.room, w.RightEnd)
}

// tileUp cuts a wall with horizontal grain into bands, and each band into its pieces. A sheet lies on its side: it is cut
// to the length of its piece, and what design calls above the level line is here right of the wall's left end.
func (b *builder) tileUp(r *Run) {
	cover := b.lying(r)
	var levels []L
	for _, s := range r.Seams {
		levels = append(levels, s.At)
	}
	cells := shape.Grid(cover, r.Joints, levels)
	tl, tr := b.sideTrims(r)
	solid := cover
	solid.Holes = nil
	whole := shape.Grid(solid, r.Joints, levels)
	row := -1
	for k := range r.Sheets {
		s := &r.Sheets[k]
		s.Bends = []L{}
		if s.Course == 1 {
			row++
		}
		var twice length.Area
		for _, polygon := range cells[s.Course-1][row] {
			s.Pieces = append(s.Pieces, Piece{Wall: r.Walls[0].Wall, Polygon: polygon, Area: polygon.Area()})
			twice += polygon.Twice()
		}
		s.Area = twice / 2
		first, last, ok := shape.Bounds(whole[s.Course-1][row])
		if !ok {
			continue
		}
		low, high := first.X-b.match(), last.X+b.match()
		if s.Course == 1 {
			low = first.X - tl
		}
		if s.Course == len(r.Joints)+1 {
			high = last.X + tr
		}
		s.CutLength, s.Above, s.Below = high-low, high, -low
	}
}

package shape

import "flitchlay/internal/length"

// Wall is the covering of a wall before it is cut into sheets.
//
// Shape: what lies over Floor, under Ceiling, right of Left, left of Right, and in no hole.
type Wall struct {
	// Floor and Ceiling bound the covering below and above: x not decreasing, two points at one x are a step. Their end
	// heights are carried on level past their ends, for edges that lean outward; where an edge leans inward it cuts them.
	// Where they cross or touch there is no covering.
	Floor, Ceiling []Point
	Left, Right    Edge
	// Holes may overlap each other and reach past the covering's edges; touching ones make one hole, and one that touches
	// an edge makes a notch in the outline.
	Holes []Rect
}

// Edge is an upright edge of a wall: the straight line through Foot and Head, carried on both ways.
//
// Shape: Head is over Foot; where it is not, as at the end of a slope that runs down to nought, the edge is upright
// through Foot.
type Edge struct{ Foot, Head Point }

func (e Edge) upright() bool { return e.Head.X == e.Foot.X || e.Head.Z <= e.Foot.Z }

// Leaning is the edge that stands at x on the floor and moves by lean to the right up to the ceiling.
//
// Units: floor and ceiling are the wall's own heights at that end, also where the covering stops short of them.
func Leaning(x, lean, floor, ceiling length.Length) Edge {
	return Edge{Foot: Point{x, floor}, Head: Point{x + lean, ceiling}}
}

// Rect is a rectangle with level and upright sides; one without width or height holds nothing.
type Rect struct{ Left, Bottom, Right, Top length.Length }

// Tile cuts the covering along upright seams.
//
// Shape: one more list than seams, from left to right, each with no polygon, one, or more: a hole that crosses a sheet
// from seam to seam leaves what is over it and what is under it.
//
// Errors: seams have to ascend. It panics where they do not.
func Tile(wall Wall, seams []length.Length) [][]Polygon {
	columns := Grid(wall, seams, nil)
	tiles := make([][]Polygon, len(columns))
	for i, rows := range columns {
		tiles[i] = rows[0]
	}
	return tiles
}

// Grid cuts the covering along upright and level lines.
//
// Where a cut, a side of a hole or a leaning edge meets a slope, the point is rounded to the nearest unit once, halves
// away from zero, and is a point of the slope from then on, for all pieces and for Covering with the same cuts.
//
// Shape: by column from the left, in each by row from the bottom; columns one more than uprights, rows one more than
// levels.
//
// Errors: uprights and levels have to ascend. It panics where they do not.
func Grid(wall Wall, uprights, levels []length.Length) [][][]Polygon {
	return bend(wall, uprights, levels).sweep(uprights, levels, nil)
}

// GridBy is Grid with level cuts in some columns only: the others come in one piece, as their row 0. The points that the
// levels make on slopes are there all the same, so that all pieces together still have the area of Covering.
//
// Shape: as Grid's.
//
// Errors: as Grid.
func GridBy(wall Wall, uprights, levels []length.Length, cut func(column int) bool) [][][]Polygon {
	return bend(wall, uprights, levels).sweep(uprights, levels, cut)
}

// Covering is the covering in one piece, or as few as holes and slopes leave, with the points that the cuts of Grid make
// on its slopes: its area is that of Grid's pieces to the last unit. Only tests ask it and CoveringArea: they hold to it that
// the pieces tile a wall.
func Covering(wall Wall, uprights, levels []length.Length) []Polygon {
	return bend(wall, uprights, levels).sweep(nil, nil, nil)[0][0]
}

// CoveringArea is twice the area of Covering.
func CoveringArea(wall Wall, uprights, levels []length.Length) length.Area {
	return Twice(Covering(wall, uprights, levels))
}

// Extent is the lowest and the highest point of the covering between left and right, holes not taken out.
//
// Errors: false where there is no covering.
func Extent(wall Wall, left, right length.Length) (low, high length.Length, ok bool) {
	return RowExtent(wall, left, right, nil, 0)
}

// RowExtent is Extent of one row of the covering cut along level lines, counted from the bottom.
//
// Errors: as Extent; levels have to ascend, and it panics where they do not.
func RowExtent(wall Wall, left, right length.Length, levels []length.Length, row int) (low, high length.Length, ok bool) {
	if left >= right {
		return 0, 0, false
	}
	wall.Holes = nil
	cuts := [2]length.Length{left, right}
	return bend(wall, cuts[:], levels).extent(cuts, levels, row)
}

// Reach is the leftmost and the rightmost point of the covering between two heights, holes not taken out.
//
// Errors: false where there is no covering.
func Reach(wall Wall, low, high length.Length) (left, right length.Length, ok bool) {
	if low >= high {
		return 0, 0, false
	}
	wall.Holes = nil
	first, last, ok := Bounds(Grid(wall, nil, []length.Length{low, high})[0][1])
	return first.X, last.X, ok
}

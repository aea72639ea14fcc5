package count

import (
	"slices"

	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/shape"
)

// far is past every wall: a cut that is not made.
const far = 1000 * length.Metre

// measure finds the bed of every sheet of a run, in the order of its sheets.
func measure(p *layout.Plan, r *layout.Run) []bed {
	beds := make([]bed, len(r.Sheets))
	if r.Up {
		measureUp(p, r, beds)
		return beds
	}
	for _, st := range r.Walls {
		measureWall(p, r, st, beds)
	}
	for k := range r.Sheets {
		if s := &r.Sheets[k]; s.CutLength > 0 {
			beds[k].trims(p, s)
		}
	}
	return beds
}

// measureWall adds what the sheets cover of one wall. The wall is cut as the layout cuts it, so that points on its slopes
// are rounded alike and what no opening touches is the same to the last unit.
func measureWall(p *layout.Plan, r *layout.Run, st layout.Stretch, beds []bed) {
	cover := layout.Covering(p.Room, st)
	cover.Holes = nil
	var cuts []L
	parts := make([][][2]L, len(r.Sheets))
	for k := range r.Sheets {
		parts[k] = r.Stretches(&r.Sheets[k], st)
		for _, x := range parts[k] {
			cuts = append(cuts, x[:]...)
		}
	}
	cuts = slices.DeleteFunc(cuts, func(x L) bool { return x == -far || x == far })
	slices.Sort(cuts)
	cuts = slices.Compact(cuts)
	column := func(x [2]L) int {
		if x[1] == far {
			return len(cuts)
		}
		i, _ := slices.BinarySearch(cuts, x[1])
		return i
	}
	stacked := map[int]bool{}
	for k := range r.Sheets {
		for _, x := range parts[k] {
			stacked[column(x)] = stacked[column(x)] || r.Sheets[k].Course > 1 || piled(r, &r.Sheets[k]) || joined(p, r, &r.Sheets[k], cover, x)
		}
	}
	cells := shape.GridBy(cover, cuts, r.Joints, func(i int) bool { return stacked[i] })
	for k := range r.Sheets {
		s := &r.Sheets[k]
		if s.CutLength == 0 {
			continue
		}
		for _, x := range parts[k] {
			beds[k].take(r, s, cover, x, stacked[column(x)])
			beds[k].solid += shape.Twice(cells[column(x)][s.Course-1])
		}
	}
}

// joined reports whether a lone sheet ends at the end match: the course over it was wholly in an opening.
func joined(p *layout.Plan, r *layout.Run, s *layout.Sheet, cover shape.Wall, x [2]L) bool {
	if len(r.Joints) == 0 || s.CutLength == 0 {
		return false
	}
	_, high, ok := shape.Extent(cover, x[0], x[1])
	return ok && high > r.Joints[0] && s.Above+p.Room.Space.LevelLine-p.Room.Rules.TopTrim == r.Joints[0]
}

// take finds the lowest and the highest point between two places of a wall, in the sheet's own course.
func (b *bed) take(r *layout.Run, s *layout.Sheet, cover shape.Wall, x [2]L, stacked bool) {
	var levels []L
	if stacked {
		levels = r.Joints
	}
	low, high, ok := shape.Bounds(shape.Grid(cover, x[:], levels)[1][s.Course-1])
	if !ok {
		return
	}
	if !b.found {
		b.low, b.high, b.found = low.Z, high.Z, true
	}
	b.low, b.high = min(b.low, low.Z), max(b.high, high.Z)
}

// piled reports whether another course shares the sheet's place.
func piled(r *layout.Run, s *layout.Sheet) bool {
	for k := range r.Sheets {
		if r.Sheets[k].Place == s.Place && r.Sheets[k].Course != s.Course {
			return true
		}
	}
	return false
}

// over reports whether a course lies over the sheet.
func over(r *layout.Run, s *layout.Sheet) bool {
	for k := range r.Sheets {
		if r.Sheets[k].Place == s.Place && r.Sheets[k].Course > s.Course {
			return true
		}
	}
	return false
}

// trims reads the trims off the cut length.
func (b *bed) trims(p *layout.Plan, s *layout.Sheet) {
	level := p.Room.Space.LevelLine
	b.top, b.bottom = level+s.Above-b.high, b.low-(level-s.Below)
}

// measureUp finds the beds of a wall whose grain is level: low and high run along the wall.
func measureUp(p *layout.Plan, r *layout.Run, beds []bed) {
	wall := r.Walls[0].Wall
	cover := layout.Covering(p.Room, layout.Stretch{Wall: wall, Right: p.Room.Walls[wall].Length})
	cover.Holes = nil
	var levels []L
	for _, s := range r.Seams {
		levels = append(levels, s.At)
	}
	cells := shape.Grid(cover, r.Joints, levels)
	row := -1
	for k := range r.Sheets {
		s := &r.Sheets[k]
		if s.Course == 1 {
			row++
		}
		if s.CutLength == 0 {
			continue
		}
		polygons := cells[s.Course-1][row]
		low, high, _ := shape.Bounds(polygons)
		beds[k] = bed{low: low.X, high: high.X, solid: shape.Twice(polygons), top: s.Above - high.X, bottom: low.X + s.Below}
	}
}

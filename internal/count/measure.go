package count

import (
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
		cover := layout.Covering(p.Room, st)
		cover.Holes = nil
		for k := range r.Sheets {
			s := &r.Sheets[k]
			if s.CutLength == 0 {
				continue
			}
			for _, x := range stretches(r, s, st) {
				beds[k].take(p, r, s, cover, x)
			}
		}
	}
	for k := range r.Sheets {
		if s := &r.Sheets[k]; s.CutLength > 0 {
			beds[k].trims(p, s)
		}
	}
	return beds
}

// stretches is what of a wall a sheet covers: from x to x, past every wall where it goes on round the corner.
func stretches(r *layout.Run, s *layout.Sheet, st layout.Stretch) [][2]L {
	var out [][2]L
	for turn := L(0); turn <= r.Length; turn += r.Length {
		a, b := max(s.Left, st.Left+turn), min(s.Right, st.Right+turn)
		if a < b {
			x := [2]L{a - turn - st.Shift, b - turn - st.Shift}
			if a == st.Left+turn {
				x[0] = -far
			}
			if b == st.Right+turn {
				x[1] = far
			}
			out = append(out, x)
		}
		if !r.Closed {
			break
		}
	}
	return out
}

// take adds the covering between two places of a wall, of the sheet's own course.
func (b *bed) take(p *layout.Plan, r *layout.Run, s *layout.Sheet, cover shape.Wall, x [2]L) {
	course := s.Course - 1
	cells := shape.Grid(cover, x[:], r.Joints)[1]
	polygons := cells[course]
	if whole := shape.Grid(cover, x[:], nil)[1][0]; s.Course == 1 && !piled(r, s) {
		// A lone sheet is whole, unless the course over it has vanished: then it still is cut for its end match.
		if len(r.Joints) == 0 || s.Above+p.Room.Space.LevelLine-p.Room.Rules.TopTrim >= topOf(whole) {
			polygons = whole
		}
	}
	low, high, ok := shape.Bounds(polygons)
	if !ok {
		return
	}
	if b.solid == 0 {
		b.low, b.high = low.Z, high.Z
	}
	b.low, b.high = min(b.low, low.Z), max(b.high, high.Z)
	b.solid += shape.Twice(polygons)
}

func topOf(polygons []shape.Polygon) L {
	_, high, ok := shape.Bounds(polygons)
	if !ok {
		return -far
	}
	return high.Z
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
	cover := layout.Covering(p.Room, r.Walls[0])
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

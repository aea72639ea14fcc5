package face

import (
	"slices"

	"flitchlay/internal/layout"
	"flitchlay/internal/shape"
)

// Line is the level line that a sheet is marked for and its heights are figured from, or by which it is set in height.
type Line struct {
	No  int  // 1 the first, also where no second one is near and it is 0; 2 and 3 second ones of a wall
	By  L    // over the first; negative under it, 0 of the first
	Off bool // a second one that runs over the sheet, or under it: one of its ends is set from the line
}

// Second reports whether it is a second line.
func (l Line) Second() bool { return l.No > 1 }

// Lines are the lines of the sheets that hang where a wall has a second one. It is the one rule for where a sheet changes over:
//
//  1. a sheet that the first line crosses, in what it covers of any wall, is figured from that;
//  2. else one that a second line crosses, in what it covers of that line's stretch, is figured from it;
//  3. what neither crosses, but hangs where a second line is, is set from that one: the first is out of reach there. Its own heights
//     are figured from one of its ends;
//  4. elsewhere too what the first line does not cross is figured from an end, and is set from the first.
func Lines(p *layout.Plan) map[*layout.Sheet]Line {
	list, off := map[*layout.Sheet]Line{}, map[*layout.Sheet]Line{}
	for i := range p.Runs {
		r := &p.Runs[i]
		if r.Up {
			continue
		}
		for _, st := range r.Walls {
			for _, second := range seconds(p.Room, &p.Room.Walls[st.Wall]) {
				for k := range r.Sheets {
					s := &r.Sheets[k]
					if _, known := list[s]; !known {
						if line, ok := lineOf(p.Room.Space.LevelLine, s, st.Wall, second); ok && (!line.Off || off[s].No == 0) {
							if line.Off {
								off[s] = line
							} else {
								list[s] = line
							}
						}
					}
				}
			}
		}
	}
	for s, line := range off {
		if _, known := list[s]; !known {
			list[s] = line
		}
	}
	return list
}

// lineOf is the line of a sheet beside a second line of a wall, false where the sheet does not come to its stretch, or has none.
func lineOf(level L, s *layout.Sheet, wall int, second Second) (Line, bool) {
	here := slices.ContainsFunc(s.Pieces, func(q layout.Piece) bool {
		left, right := ends(q.Outline)
		return q.Wall == wall && left < second.To && right > second.From
	})
	if !here {
		return Line{}, false
	}
	for _, q := range s.Pieces {
		if len(across(q.Outline, level)) > 0 {
			return Line{No: 1}, true
		}
	}
	for _, q := range s.Pieces {
		for _, x := range across(q.Outline, level+second.By) {
			if q.Wall == wall && x[0] < second.To && x[1] > second.From {
				return Line{No: second.No, By: second.By}, true
			}
		}
	}
	return Line{No: second.No, By: second.By, Off: true}, true
}

// ends are the leftmost and the rightmost place of an outline.
func ends(o shape.Outline) (left, right L) {
	left, right = o[0].X, o[0].X
	for _, p := range o {
		left, right = min(left, p.X), max(right, p.X)
	}
	return left, right
}

// across are the stretches of a level line just over a height that lie in an outline, from left to right.
func across(o shape.Outline, z L) [][2]L {
	turned := make(shape.Outline, len(o))
	for i, p := range o {
		turned[i] = shape.Point{X: p.Z, Z: p.X}
	}
	return crossed(turned, z)
}

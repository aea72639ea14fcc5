package face

import (
	"slices"

	"flitchlay/internal/layout"
)

// Sliver is a sheet that comes onto a wall only past a joint that leans: at the floor its seam stands on the other wall, further up
// it crosses the joint.
//
//	wall | / sheet of the wall beside
//	     |/|
//	     / |
//	    /| seam
type Sliver struct {
	Place  int
	Sheets []*layout.Sheet // with a piece here, from the lowest course up
	Seam   *layout.Seam
	X      L    // of its seam on this wall
	Far    L    // how far out it comes, at the head of the joint or at its foot
	Right  bool // past the right end of the wall
}

// slivers are the sheets with a piece on the wall that hang on another.
func (f *Face) slivers() []Sliver {
	var list []Sliver
	if f.Run.Up {
		return nil
	}
	for _, sheets := range places(f.Run) {
		s := Sliver{Place: sheets[0].Place}
		if slices.ContainsFunc(f.Hangs, func(h *Hang) bool { return h.Place == s.Place }) {
			continue
		}
		var from, to L
		for _, sheet := range sheets {
			if a, _, b, _, ok := f.Extent(sheet); ok {
				if s.Sheets == nil {
					from, to = a, b
				}
				from, to = min(from, a), max(to, b)
				s.Sheets = append(s.Sheets, sheet)
			}
		}
		if s.Sheets == nil {
			continue
		}
		if s.Right = from >= f.Right; s.Right {
			s.X, s.Far, s.Seam = from, to, f.seamLeftOf(s.Place)
		} else {
			s.X, s.Far, s.Seam = to, from, f.Run.SeamAfter(s.Place)
		}
		list = append(list, s)
	}
	return list
}

// seamLeftOf is the seam at the left of a place.
func (f *Face) seamLeftOf(place int) *layout.Seam {
	for k := range f.Run.Seams {
		if f.Run.Seams[k].RightSheet == place {
			return &f.Run.Seams[k]
		}
	}
	return nil
}

// Heights are those between which the sliver's seam shows on the wall.
func (f *Face) Heights(s *Sliver) [][2]L {
	var list [][2]L
	for _, sheet := range s.Sheets {
		for _, q := range sheet.Pieces {
			if q.Wall == f.Wall {
				list = append(list, upright(q.Outline, s.X)...)
			}
		}
	}
	return joined(list)
}

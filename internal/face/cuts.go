package face

import (
	"sort"

	"flitchlay/internal/layout"
	"flitchlay/internal/room"
)

// Box is a box of the wall with its letter.
type Box struct {
	*room.Box
	Letter string
}

// Boxes lists the boxes of a wall from left to right, those over one another from below; the letters run through the
// whole wall.
func (f *Face) Boxes() []Box {
	var list []Box
	for i := range f.W.Boxes {
		list = append(list, Box{Box: &f.W.Boxes[i]})
	}
	sort.SliceStable(list, func(i, j int) bool {
		a, b := list[i], list[j]
		if a.X != b.X {
			return a.X < b.X
		}
		return a.Z < b.Z
	})
	for i := range list {
		list[i].Letter = letterOf(i)
	}
	return list
}

// letterOf is the letter of the i-th box: a to z, then aa, ab, ...
func letterOf(i int) string {
	if i < 26 {
		return string(rune('a' + i))
	}
	return letterOf(i/26-1) + letterOf(i%26)
}

// Left and the three others are the sides of what is cut out for the box.
func (b Box) Left() L   { x0, _, _, _ := b.CutOut(); return x0 }
func (b Box) Right() L  { _, _, x1, _ := b.CutOut(); return x1 }
func (b Box) Bottom() L { _, z0, _, _ := b.CutOut(); return z0 }
func (b Box) Top() L    { _, _, _, z1 := b.CutOut(); return z1 }

// Hole is an opening as a rectangle of the wall. Where no sill is given it reaches down to the floor.
func (f *Face) Hole(o *room.Opening) (x0, z0, x1, z1 L) {
	z0 = o.Sill
	if !o.SillGiven {
		z0 = min(room.At(f.W.Floor, o.FromLeft), room.At(f.W.Floor, o.Right()))
	}
	return o.FromLeft, z0, o.Right(), o.Head
}

// Meets reports whether an opening stands in what the place covers of its wall, at any height.
func (h *Hang) Meets(o *room.Opening) bool { return o.Right() > h.From && o.FromLeft < h.To }

// OpeningsIn are the openings that stand in what a place covers of the wall.
func (f *Face) OpeningsIn(h *Hang) []*room.Opening {
	return f.openings(h.Meets)
}

// OpeningsOf are the openings that come into one piece of a band.
func (f *Face) OpeningsOf(s *layout.Sheet) []*room.Opening {
	x0, z0, x1, z1, ok := f.Extent(s)
	return f.openings(func(o *room.Opening) bool {
		return ok && o.Right() > x0 && o.FromLeft < x1 && o.Head > z0 && !(o.SillGiven && o.Sill >= z1)
	})
}

func (f *Face) openings(which func(*room.Opening) bool) []*room.Opening {
	var list []*room.Opening
	for i := range f.W.Openings {
		if o := &f.W.Openings[i]; which(o) {
			list = append(list, o)
		}
	}
	return list
}

// BoxIn reports whether the hole of a box comes into what a place covers.
func (f *Face) BoxIn(h *Hang, b Box) bool {
	return b.Right() > h.From && b.Left() < h.To && f.covers(h, b.X, b.Z)
}

// BoxOf reports whether the hole of a box comes into one piece of a band.
func (f *Face) BoxOf(s *layout.Sheet, b Box) bool {
	x0, z0, x1, z1, ok := f.Extent(s)
	return ok && b.Right() > x0 && b.Left() < x1 && b.Top() > z0 && b.Bottom() < z1
}

// covers reports whether a place covers a height at x, or beside x where the place begins or ends short of it.
func (f *Face) covers(h *Hang, x, z L) bool {
	for _, s := range f.Covered(min(max(x, h.From+1), h.To-1)) {
		if s[0] <= z && z <= s[1] {
			return true
		}
	}
	return false
}

// CourseAt is the sheet of a place that covers a height, nil where none does.
func (f *Face) CourseAt(h *Hang, z L) *layout.Sheet {
	for _, s := range h.Sheets {
		for _, p := range s.Pieces {
			low, high := p.Outline[0].Z, p.Outline[0].Z
			for _, q := range p.Outline {
				high = max(high, q.Z)
			}
			if p.Wall == f.Wall && low <= z && z <= high {
				return s
			}
		}
	}
	return nil
}

// Bend is where a place is bent: along the jamb of an opening that is wrapped, or round the corner at its right.
type Bend struct {
	X    L
	Name string
}

// Bends are the bends of a place on this wall and at its right end, from left to right within each opening.
func (f *Face) Bends(h *Hang) []Bend {
	var list []Bend
	for _, o := range f.OpeningsIn(h) {
		for _, x := range []L{o.FromLeft, o.Right()} {
			if o.WrapReveal && x > h.From && x < h.To {
				list = append(list, Bend{x, o.Name})
			}
		}
	}
	if h.After {
		name := ""
		if c, _, _ := f.Neighbour(true); c != nil {
			name = c.Name
		}
		list = append(list, Bend{f.Right, name})
	}
	return list
}

// Bent reports whether the covering of some places goes on round a bend at x: at an end of the wall, wherever it leans
// to, or along a jamb.
func (f *Face) Bent(hangs []*Hang, x L) bool {
	near := func(end, lean L) bool { return min(end, end+lean) <= x && x <= max(end, end+lean) }
	for _, h := range hangs {
		if h.Before && near(f.Left, f.W.LeanLeft) || h.After && near(f.Right, f.W.LeanRight) {
			return true
		}
	}
	for i := range f.W.Openings {
		if o := &f.W.Openings[i]; o.WrapReveal && (x == o.FromLeft || x == o.Right()) {
			return true
		}
	}
	return false
}

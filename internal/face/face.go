package face

import (
	"slices"
	"sort"

	"flitchlay/internal/layout"
	"flitchlay/internal/room"
	"flitchlay/internal/shape"
)

// Face is one covered wall as it is drawn.
type Face struct {
	Wall        int
	W           *room.Wall
	Run         *layout.Run
	St          layout.Stretch
	Left, Right L // x of its ends; of eased corners the middle of the arc
	Datum       L // x from which figures run: where its left corner crosses the level line
	Parts       []Part
	Seams       []*layout.Seam // on this wall, from left to right
	Low, High   L              // of floor and ceiling
	Hangs       []*Hang        // in hanging order; bands from the floor up
	Slivers     []Sliver       // of sheets that hang on the wall beside
	room        *room.Room
}

// Part is what is drawn of one place on a wall: one sheet, or a column of courses, without those that an opening takes
// whole.
type Part struct {
	Place    int
	From, To L
	Sheets   []*layout.Sheet // from the lowest course up
	turn     L               // of its hang
}

// Raw are the raw edges of one of its sheets as hung, on this wall.
func (p Part) Raw(s *layout.Sheet) (left, right L) { return s.StartLine + p.turn, s.RightLine + p.turn }

// Sheet is the lowest of its courses.
func (p Part) Sheet() *layout.Sheet { return p.Sheets[0] }

// All are all covered walls, in room order.
func All(p *layout.Plan) []*Face {
	var list []*Face
	for i := range p.Room.Walls {
		if f := On(p, i); f != nil {
			list = append(list, f)
		}
	}
	return list
}

// On is a covered wall, nil where no run holds it.
func On(p *layout.Plan, wall int) *Face {
	for i := range p.Runs {
		for _, st := range p.Runs[i].Walls {
			if st.Wall == wall {
				return newFace(p.Room, wall, &p.Runs[i], st)
			}
		}
	}
	return nil
}

func newFace(rm *room.Room, wall int, r *layout.Run, st layout.Stretch) *Face {
	f := &Face{Wall: wall, W: &rm.Walls[wall], Run: r, St: st, room: rm}
	f.Left, f.Right = st.Left-st.Shift, st.Right-st.Shift
	if r.Up {
		f.Left, f.Right = 0, f.W.Length
	}
	f.Datum = rm.Datum(wall)
	f.Low, f.High = f.W.Floor[0].Z, f.W.Ceiling[0].Z
	for _, p := range f.W.Floor {
		f.Low = min(f.Low, p.Z)
	}
	for _, p := range f.W.Ceiling {
		f.High = max(f.High, p.Z)
	}
	f.Hangs = f.hangs(rm.Veneer.Overlap.HalfDown())
	f.Parts, f.Slivers = f.parts(), f.slivers()
	for i := range r.Seams {
		if r.Seams[i].Wall == wall {
			f.Seams = append(f.Seams, &r.Seams[i])
		}
	}
	sort.SliceStable(f.Seams, func(i, j int) bool { return f.Seams[i].X < f.Seams[j].X })
	return f
}

// parts are what is drawn of the hangs: of each the courses that have pieces on this wall, from seam to seam or to the
// wall's ends; of bands each piece by itself.
func (f *Face) parts() []Part {
	var list []Part
	for _, h := range f.Hangs {
		var here []*layout.Sheet
		for _, s := range h.Sheets {
			a, _, b, _, held := f.Extent(s)
			switch {
			case !held:
			case f.Run.Up:
				list = append(list, Part{s.Place, a, b, []*layout.Sheet{s}, h.Turn})
			default:
				here = append(here, s)
			}
		}
		if here != nil {
			list = append(list, Part{h.Place, h.From, h.To, here, h.Turn})
		}
	}
	if !f.Run.Up {
		sort.SliceStable(list, func(i, j int) bool { return list[i].From < list[j].From })
	}
	return list
}

// Outline is the wall as a polygon between any two places: floor from left to right, ceiling back, the ends leaning by
// as much as they lean from floor to ceiling. Part of a piece cuts Whole or Covering exactly, also at a leaning end whose
// base and crown are not covered, and without the holes.
func (f *Face) Outline(floor, ceiling []room.Point, from, to L) []room.Point {
	leanLeft, leanRight := f.W.LeanLeft, f.W.LeanRight
	if from > f.Left {
		leanLeft = 0
	}
	if to < f.Right {
		leanRight = 0
	}
	back := Profile(ceiling, from+leanLeft, to+leanRight)
	slices.Reverse(back)
	return append(Profile(floor, from, to), back...)
}

// Profile is a floor or ceiling between two places.
func Profile(list []room.Point, from, to L) []room.Point {
	out := []room.Point{{X: from, Z: room.AtRight(list, from)}}
	for _, p := range list {
		if p.X > from && p.X < to {
			out = append(out, p)
		}
	}
	return append(out, room.Point{X: to, Z: room.At(list, to)})
}

// Neighbour is the wall that the covering goes on to round an end, with the part of its sheet there at the floor, where every
// figure along a wall is; nil where the covering does not go on.
func (f *Face) Neighbour(right bool) (c *layout.Corner, width L, place int) {
	if f.Run.Up {
		return nil, 0, 0
	}
	for i := range f.Run.Corners {
		k := &f.Run.Corners[i]
		if right && k.LeftWall == f.Wall {
			return k, k.RightReturnBottom, k.Sheet
		}
		if !right && k.RightWall == f.Wall {
			return k, k.LeftReturnBottom, k.Sheet
		}
	}
	return nil, 0, 0
}

// Bare are the openings and bare strips, where no covering is.
func (f *Face) Bare() []shape.Rect {
	var list []shape.Rect
	for i := range f.W.Openings {
		x0, z0, x1, z1 := f.Hole(&f.W.Openings[i])
		list = append(list, shape.Rect{Left: x0, Right: x1, Bottom: z0, Top: z1})
	}
	for _, b := range f.W.Bare {
		list = append(list, shape.Rect{Left: b.From, Right: b.To, Bottom: f.Low, Top: f.High})
	}
	return list
}

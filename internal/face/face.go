package face

import (
	"sort"

	"flitchlay/internal/layout"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
	"flitchlay/internal/shape"
)

// Face is one covered wall as it is drawn.
type Face struct {
	Wall        int
	W           *room.Wall
	Run         *layout.Run
	St          layout.Stretch
	Left, Right L // x of its ends; of eased corners the middle of the arc
	Parts       []Part
	Seams       []*layout.Seam // on this wall, from left to right
	Low, High   L              // of floor and ceiling
}

// Part is what one place covers of a wall: one sheet, or a column of courses.
type Part struct {
	Place    int
	From, To L
	Sheets   []*layout.Sheet // from the lowest course up
}

// Sheet is the lowest of its courses.
func (p Part) Sheet() *layout.Sheet { return p.Sheets[0] }

// Cut is the lowest of its courses that is cut to hang; where an opening takes them all, the lowest.
func (p Part) Cut() *layout.Sheet {
	for _, s := range p.Sheets {
		if !s.InGap {
			return s
		}
	}
	return p.Sheets[0]
}

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
		r := &p.Runs[i]
		for _, st := range r.Walls {
			if st.Wall == wall {
				return newFace(&p.Room.Walls[wall], wall, r, st)
			}
		}
	}
	return nil
}

func newFace(w *room.Wall, wall int, r *layout.Run, st layout.Stretch) *Face {
	f := &Face{Wall: wall, W: w, Run: r, St: st}
	f.Left, f.Right = st.Left-st.Shift, st.Right-st.Shift
	if r.Up {
		f.Left, f.Right = 0, f.W.Length
	}
	f.Low, f.High = f.W.Floor[0].Z, f.W.Ceiling[0].Z
	for _, p := range f.W.Floor {
		f.Low = min(f.Low, p.Z)
	}
	for _, p := range f.W.Ceiling {
		f.High = max(f.High, p.Z)
	}
	for i := range r.Sheets {
		f.take(&r.Sheets[i])
	}
	if !r.Up {
		sort.SliceStable(f.Parts, func(i, j int) bool { return f.Parts[i].From < f.Parts[j].From })
	}
	for i := range r.Seams {
		if r.Seams[i].Wall == wall {
			f.Seams = append(f.Seams, &r.Seams[i])
		}
	}
	sort.SliceStable(f.Seams, func(i, j int) bool { return f.Seams[i].X < f.Seams[j].X })
	return f
}

// take adds a sheet that has pieces on this wall to the parts, from seam to seam or to the wall's ends. A sheet that goes
// all round a room can come to a wall twice.
func (f *Face) take(s *layout.Sheet) {
	held := false
	for _, p := range s.Pieces {
		held = held || p.Wall == f.Wall
	}
	if !held {
		return
	}
	if f.Run.Up { // one piece of a band
		a, b := f.Right, f.Left
		for _, p := range s.Pieces {
			for _, q := range p.Outline {
				a, b = min(a, q.X), max(b, q.X)
			}
		}
		f.Parts = append(f.Parts, Part{s.Place, a, b, []*layout.Sheet{s}})
		return
	}
	for turn := -f.Run.Length; turn <= f.Run.Length; turn += max(f.Run.Length, 1) {
		if turn != 0 && !f.Run.Closed {
			continue
		}
		a, b := max(s.Left+turn-f.St.Shift, f.Left), min(s.Right+turn-f.St.Shift, f.Right)
		if a >= b {
			continue
		}
		found := false
		for i := range f.Parts {
			if q := &f.Parts[i]; q.Place == s.Place && q.From == a && q.To == b {
				q.Sheets, found = append(q.Sheets, s), true
			}
		}
		if !found {
			f.Parts = append(f.Parts, Part{s.Place, a, b, []*layout.Sheet{s}})
		}
	}
}

// Cover are the highest and lowest of the covering at x.
func (f *Face) Cover(x L) (bottom, top L) {
	return room.At(f.W.CoverFloor(), x), room.At(f.W.CoverCeiling(), x)
}

// Hole is an opening as a rectangle of the wall. Where no sill is given it reaches down to the floor.
func (f *Face) Hole(o *room.Opening) (x0, z0, x1, z1 L) {
	z0 = o.Sill
	if !o.SillGiven {
		z0 = min(room.At(f.W.Floor, o.FromLeft), room.At(f.W.Floor, o.Right()))
	}
	return o.FromLeft, z0, o.Right(), o.Head
}

// Shown are the heights between which the line at x shows in the covering: the upright edges of the pieces there.
func (f *Face) Shown(x L) [][2]L {
	var list [][2]L
	for _, p := range f.Parts {
		for _, s := range p.Sheets {
			for _, q := range s.Pieces {
				if q.Wall == f.Wall {
					list = append(list, upright(q.Outline, x)...)
				}
			}
		}
	}
	return joined(list)
}

// upright lists the edges of an outline that run straight up at x.
func upright(o shape.Outline, x L) [][2]L {
	var list [][2]L
	for i, p := range o {
		q := o[(i+1)%len(o)]
		if p.X == x && q.X == x && p.Z != q.Z {
			list = append(list, [2]L{min(p.Z, q.Z), max(p.Z, q.Z)})
		}
	}
	return list
}

// joined sorts stretches and joins those that meet.
func joined(list [][2]L) [][2]L {
	sort.Slice(list, func(i, j int) bool { return list[i][0] < list[j][0] })
	var out [][2]L
	for _, s := range list {
		if n := len(out); n > 0 && s[0] <= out[n-1][1] {
			out[n-1][1] = max(out[n-1][1], s[1])
			continue
		}
		out = append(out, s)
	}
	return out
}

// Outline is the wall as a polygon: floor from left to right, ceiling back, the ends leaning as they do.
func (f *Face) Outline(floor, ceiling []room.Point, from, to L) []room.Point {
	leanLeft, leanRight := f.W.LeanLeft, f.W.LeanRight
	if from > f.Left {
		leanLeft = 0
	}
	if to < f.Right {
		leanRight = 0
	}
	points := []room.Point{{X: from, Z: room.AtRight(floor, from)}}
	for _, p := range floor {
		if p.X > from && p.X < to {
			points = append(points, p)
		}
	}
	points = append(points, room.Point{X: to, Z: room.At(floor, to)}, room.Point{X: to + leanRight, Z: room.At(ceiling, to+leanRight)})
	for i := len(ceiling) - 1; i >= 0; i-- {
		if p := ceiling[i]; p.X > from+leanLeft && p.X < to+leanRight {
			points = append(points, p)
		}
	}
	return append(points, room.Point{X: from + leanLeft, Z: room.AtRight(ceiling, from+leanLeft)})
}

// Neighbour is the wall that the covering goes on to round an end, with the part of its sheet there, nil where the
// covering does not go on.
func (f *Face) Neighbour(right bool) (c *layout.Corner, width L, place int) {
	if f.Run.Up {
		return nil, 0, 0
	}
	for i := range f.Run.Corners {
		k := &f.Run.Corners[i]
		if right && k.LeftWall == f.Wall {
			return k, k.RightReturn, k.Sheet
		}
		if !right && k.RightWall == f.Wall {
			return k, k.LeftReturn, k.Sheet
		}
	}
	return nil, 0, 0
}

// Bare are boxes of the page over the openings and bare strips, where no covering is.
func (f *Face) Bare(to func(x0, z0, x1, z1 L) scene.Box) []scene.Box {
	var list []scene.Box
	for i := range f.W.Openings {
		list = append(list, to(f.Hole(&f.W.Openings[i])))
	}
	for _, b := range f.W.Bare {
		list = append(list, to(b.From, f.Low, b.To, f.High))
	}
	return list
}

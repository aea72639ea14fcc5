package pages

import (
	"sort"

	"flitchlay/internal/layout"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
	"flitchlay/internal/shape"
)

// face is one covered wall as it is drawn.
type face struct {
	wall        int
	w           *room.Wall
	run         *layout.Run
	st          layout.Stretch
	left, right L // x of its ends; of eased corners the middle of the arc
	parts       []part
	seams       []*layout.Seam // on this wall, from left to right
	low, high   L              // of floor and ceiling
}

// part is what one place covers of a wall: one sheet, or a column of courses.
type part struct {
	place    int
	from, to L
	sheets   []*layout.Sheet // from the lowest course up
}

func (p part) sheet() *layout.Sheet { return p.sheets[0] }

// facesOf are all covered walls, in room order.
func facesOf(p *layout.Plan) []*face {
	var list []*face
	for i := range p.Room.Walls {
		if f := faceOf(p, i); f != nil {
			list = append(list, f)
		}
	}
	return list
}

// faceOf is a covered wall, nil where no run holds it.
func faceOf(p *layout.Plan, wall int) *face {
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

func newFace(w *room.Wall, wall int, r *layout.Run, st layout.Stretch) *face {
	f := &face{wall: wall, w: w, run: r, st: st}
	f.left, f.right = st.Left-st.Shift, st.Right-st.Shift
	if r.Up {
		f.left, f.right = 0, f.w.Length
	}
	f.low, f.high = f.w.Floor[0].Z, f.w.Ceiling[0].Z
	for _, p := range f.w.Floor {
		f.low = min(f.low, p.Z)
	}
	for _, p := range f.w.Ceiling {
		f.high = max(f.high, p.Z)
	}
	for i := range r.Sheets {
		f.take(&r.Sheets[i])
	}
	if !r.Up {
		sort.SliceStable(f.parts, func(i, j int) bool { return f.parts[i].from < f.parts[j].from })
	}
	for i := range r.Seams {
		if r.Seams[i].Wall == wall {
			f.seams = append(f.seams, &r.Seams[i])
		}
	}
	sort.SliceStable(f.seams, func(i, j int) bool { return f.seams[i].X < f.seams[j].X })
	return f
}

// take adds a sheet that has pieces on this wall to the parts, from seam to seam or to the wall's ends. A sheet that goes
// all round a room can come to a wall twice.
func (f *face) take(s *layout.Sheet) {
	held := false
	for _, p := range s.Pieces {
		held = held || p.Wall == f.wall
	}
	if !held {
		return
	}
	if f.run.Up { // one piece of a band
		a, b := f.right, f.left
		for _, p := range s.Pieces {
			for _, q := range p.Outline {
				a, b = min(a, q.X), max(b, q.X)
			}
		}
		f.parts = append(f.parts, part{s.Place, a, b, []*layout.Sheet{s}})
		return
	}
	for turn := -f.run.Length; turn <= f.run.Length; turn += max(f.run.Length, 1) {
		if turn != 0 && !f.run.Closed {
			continue
		}
		a, b := max(s.Left+turn-f.st.Shift, f.left), min(s.Right+turn-f.st.Shift, f.right)
		if a >= b {
			continue
		}
		found := false
		for i := range f.parts {
			if q := &f.parts[i]; q.place == s.Place && q.from == a && q.to == b {
				q.sheets, found = append(q.sheets, s), true
			}
		}
		if !found {
			f.parts = append(f.parts, part{s.Place, a, b, []*layout.Sheet{s}})
		}
	}
}

// cover are the highest and lowest of the covering at x.
func (f *face) cover(x L) (bottom, top L) {
	return room.At(f.w.CoverFloor(), x), room.At(f.w.CoverCeiling(), x)
}

// hole is an opening as a rectangle of the wall. Where no sill is given it reaches down to the floor.
func (f *face) hole(o *room.Opening) (x0, z0, x1, z1 L) {
	z0 = o.Sill
	if !o.SillGiven {
		z0 = min(room.At(f.w.Floor, o.FromLeft), room.At(f.w.Floor, o.Right()))
	}
	return o.FromLeft, z0, o.Right(), o.Head
}

// shown are the heights between which the line at x shows in the covering: the upright edges of the pieces there.
func (f *face) shown(x L) [][2]L {
	var list [][2]L
	for _, p := range f.parts {
		for _, s := range p.sheets {
			for _, q := range s.Pieces {
				if q.Wall == f.wall {
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

// outline is the wall as a polygon: floor from left to right, ceiling back, the ends leaning as they do.
func (f *face) outline(floor, ceiling []room.Point, from, to L) []room.Point {
	leanLeft, leanRight := f.w.LeanLeft, f.w.LeanRight
	if from > f.left {
		leanLeft = 0
	}
	if to < f.right {
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

// neighbour is the wall that the covering goes on to round an end, with the part of its sheet there, nil where the
// covering does not go on.
func (f *face) neighbour(right bool) (c *layout.Corner, width L, place int) {
	if f.run.Up {
		return nil, 0, 0
	}
	for i := range f.run.Corners {
		k := &f.run.Corners[i]
		if right && k.LeftWall == f.wall {
			return k, k.RightReturn, k.Sheet
		}
		if !right && k.RightWall == f.wall {
			return k, k.LeftReturn, k.Sheet
		}
	}
	return nil, 0, 0
}

// pieceBoxes are boxes of the page over the openings and bare strips, where no covering is.
func (f *face) bare(to func(x0, z0, x1, z1 L) scene.Box) []scene.Box {
	var list []scene.Box
	for i := range f.w.Openings {
		list = append(list, to(f.hole(&f.w.Openings[i])))
	}
	for _, b := range f.w.Bare {
		list = append(list, to(b.From, f.low, b.To, f.high))
	}
	return list
}

package face

import (
	"math"
	"slices"
	"sort"

	"flitchlay/internal/layout"
	"flitchlay/internal/room"
	"flitchlay/internal/shape"
)

// Cover are the highest and lowest of the covering at x.
func (f *Face) Cover(x L) (bottom, top L) {
	return room.At(f.W.CoverFloor(), x), room.At(f.W.CoverCeiling(), x)
}

// Covering is the covering of the wall before it is cut into sheets: its holes are the openings and bare strips.
func (f *Face) Covering() shape.Wall { return layout.Covering(f.room, f.stretch()) }

// Whole is the wall from floor to ceiling, with nothing open in it.
func (f *Face) Whole() shape.Wall { return layout.Whole(f.room, f.stretch()) }

// stretch is the part of the run that the wall is; where the run goes up the wall, the wall from end to end.
func (f *Face) stretch() layout.Stretch {
	if f.Run.Up {
		return layout.Stretch{Wall: f.Wall, Right: f.W.Length}
	}
	return f.St
}

// Shown are the heights between which an edge of a sheet shows at x: the upright edges of the pieces there. Along the jamb
// of an opening too, where a seam stands on one.
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

// SeamsIn are the seams that show over or under an opening inside its width, between two places.
func (f *Face) SeamsIn(o *room.Opening, from, to L) []*layout.Seam {
	var list []*layout.Seam
	for _, m := range f.Seams {
		if m.X > max(o.FromLeft, from) && m.X < min(o.Right(), to) && len(f.Shown(m.X)) > 0 {
			list = append(list, m)
		}
	}
	return list
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

// Covered are the heights between which any line straight up at x lies on covering, whether a sheet has an edge there or
// not. Nothing is covered along the jamb of an opening, as nothing is struck there: that is the difference to Shown.
func (f *Face) Covered(x L) [][2]L {
	floor, ceiling := f.W.CoverFloor(), f.W.CoverCeiling()
	list := [][2]L{{max(room.At(floor, x), room.AtRight(floor, x)), min(room.At(ceiling, x), room.AtRight(ceiling, x))}}
	cut := func(low, high L) {
		var next [][2]L
		for _, s := range list {
			if low > s[0] {
				next = append(next, [2]L{s[0], min(s[1], low)})
			}
			if high < s[1] {
				next = append(next, [2]L{max(s[0], high), s[1]})
			}
		}
		list = next
	}
	for i := range f.W.Openings {
		if o := &f.W.Openings[i]; o.FromLeft <= x && x <= o.Right() {
			low := L(math.MinInt64)
			if o.SillGiven {
				low = o.Sill
			}
			cut(low, o.Head)
		}
	}
	for _, b := range f.W.Bare {
		if b.From <= x && x <= b.To {
			cut(math.MinInt64, math.MaxInt64)
		}
	}
	return slices.DeleteFunc(list, func(s [2]L) bool { return s[0] >= s[1] })
}

// CoveredBy are the heights between which a sheet covers the wall just right of x, piece by piece, those of each from the
// lowest.
func (f *Face) CoveredBy(s *layout.Sheet, x L) [][2]L {
	var list [][2]L
	for _, q := range s.Pieces {
		if q.Wall == f.Wall {
			list = append(list, crossed(q.Outline, x)...)
		}
	}
	return list
}

// crossed are the heights between which an outline is crossed just right of x: in pairs from the lowest.
func crossed(o shape.Outline, x L) [][2]L {
	var cuts []L
	for i, a := range o {
		b := o[(i+1)%len(o)]
		if a.X > b.X {
			a, b = b, a
		}
		if a.X <= x && x < b.X {
			cuts = append(cuts, a.Z+L(float64(b.Z-a.Z)*float64(x-a.X)/float64(b.X-a.X)))
		}
	}
	slices.Sort(cuts)
	var out [][2]L
	for i := 0; i+1 < len(cuts); i += 2 {
		out = append(out, [2]L{cuts[i], cuts[i+1]})
	}
	return out
}

// Edge is a level edge of a sheet, from end to end as its outline runs.
type Edge struct{ From, To, Z L }

// Feet are the lower edges of the upper courses of a place, where they stand on those under them.
func (f *Face) Feet(h *Hang) []Edge {
	var list []Edge
	for _, s := range h.Sheets[1:] {
		for _, p := range s.Pieces {
			if p.Wall == f.Wall {
				for _, e := range level(p.Outline, p.Outline[0].Z) {
					if e.From < e.To { // an upper edge runs back
						list = append(list, e)
					}
				}
			}
		}
	}
	return list
}

// Heads are the upper edges of the pieces of a band, along the seam over it.
func (f *Face) Heads(h *Hang) []Edge {
	var list []Edge
	for _, s := range h.Sheets {
		for _, p := range s.Pieces {
			if p.Wall == f.Wall {
				list = append(list, level(p.Outline, h.X)...)
			}
		}
	}
	return list
}

// level lists the edges of an outline that run level at a height.
func level(o shape.Outline, z L) []Edge {
	var list []Edge
	for i, p := range o {
		if q := o[(i+1)%len(o)]; p.Z == z && q.Z == z && p.X != q.X {
			list = append(list, Edge{p.X, q.X, z})
		}
	}
	return list
}

// Joints are where courses meet: heights, or in a wall whose sheets lie level, places along it.
func (f *Face) Joints() []L {
	var list []L
	for _, h := range f.Hangs {
		for _, s := range h.Sheets[1:] {
			for _, p := range s.Pieces {
				if p.Wall != f.Wall || len(p.Outline) == 0 {
					continue
				}
				at := p.Outline[0].Z
				if f.Run.Up {
					at = p.Outline[0].X
					for _, q := range p.Outline {
						at = min(at, q.X)
					}
				}
				if slices.Contains(f.Run.Joints, at) { // else it begins over the head of an opening, or right of its jamb
					list = append(list, at)
				}
			}
		}
	}
	slices.Sort(list)
	return slices.Compact(list)
}

// Extent is a sheet's extent on the wall, over all its pieces there; false where it has none.
func (f *Face) Extent(s *layout.Sheet) (x0, z0, x1, z1 L, ok bool) {
	for _, p := range s.Pieces {
		if p.Wall != f.Wall {
			continue
		}
		for _, q := range p.Outline {
			if !ok {
				x0, z0, x1, z1, ok = q.X, q.Z, q.X, q.Z, true
			}
			x0, z0, x1, z1 = min(x0, q.X), min(z0, q.Z), max(x1, q.X), max(z1, q.Z)
		}
	}
	return x0, z0, x1, z1, ok
}

// Between are the lowest and highest point of a sheet's pieces on the wall from a to b; where they have none there, those
// of the covering at a.
func (f *Face) Between(s *layout.Sheet, a, b L) (low, high L) {
	low, high = f.Cover(a)
	first := true
	for _, p := range s.Pieces {
		if p.Wall != f.Wall {
			continue
		}
		for _, q := range p.Outline {
			if q.X < a || q.X > b {
				continue
			}
			if first {
				low, high, first = q.Z, q.Z, false
			}
			low, high = min(low, q.Z), max(high, q.Z)
		}
	}
	return low, high
}

package layout

import (
	"cmp"
	"slices"

	"flitchlay/internal/length"
	"flitchlay/internal/room"
	"flitchlay/internal/run"
)

// sight answers how much of a seam shows at a place of a run.
type sight struct {
	line  *run.Run
	holes []hiding // by s
}

// hiding is an opening as it hides a seam: nothing shows between its sill and its head.
type hiding struct {
	a, b, sill, head L
}

// lowest stands for the floor in an opening that reaches down to it.
const lowest = L(-1) << 62

func newSight(line *run.Run) *sight {
	v := &sight{line: line}
	for _, st := range line.Walls {
		w := &line.Room.Walls[st.Wall]
		for i := range w.Openings {
			o := &w.Openings[i]
			h := hiding{a: st.Shift + o.FromLeft, b: st.Shift + o.Right(), sill: lowest, head: o.Head}
			if o.SillGiven {
				h.sill = o.Sill
			}
			v.holes = append(v.holes, h)
		}
	}
	return v
}

// seen is the height of wall that shows a seam at s: from floor + base to ceiling - crown, less openings and what is
// hidden. In the strip that a leaning corner sweeps the wall on the left counts, its end heights carried on.
func (v *sight) seen(s L) L {
	if v.line.Up {
		return v.across(s)
	}
	s = v.line.Round(s)
	low, high := v.between(s)
	return v.less(s, low, high)
}

// between is what a wall shows at s where no opening is.
func (v *sight) between(s L) (low, high L) {
	st := v.wallAt(s)
	w := &v.line.Room.Walls[st.Wall]
	x := s - st.Shift
	if v.line.Closed && s < v.line.Walls[0].Right && st.Wall == v.line.Walls[len(v.line.Walls)-1].Wall && len(v.line.Walls) > 1 {
		x += v.line.Length // the last wall, carried on over the start
	}
	low, high = room.At(w.Floor, x)+w.Base, room.At(w.Ceiling, x)-w.Crown
	if w.HiddenBelow > 0 {
		low = max(low, w.HiddenBelow)
	}
	return low, high
}

// less takes the openings at s out of the stretch from low to high.
func (v *sight) less(s, low, high L) L {
	if low >= high {
		return 0
	}
	seen := high - low
	top := low // openings of a wall do not overlap, but two may share the edge at s
	var cut []hiding
	for _, h := range v.holes {
		if h.a <= s && s <= h.b || v.line.Closed && (s == 0 && h.b == v.line.Length) {
			cut = append(cut, h)
		}
	}
	if len(cut) > 1 {
		slices.SortFunc(cut, func(h, k hiding) int { return cmp.Compare(h.sill, k.sill) })
	}
	for _, h := range cut {
		a, b := max(h.sill, top), min(h.head, high)
		if a < b {
			seen -= b - a
			top = b
		}
	}
	return seen
}

// stretches are the parts between low and high that show a seam at s, from the lowest up: what less adds up.
func (v *sight) stretches(s, low, high L) [][2]L {
	list := [][2]L{{low, high}}
	for _, h := range v.holes {
		if !(h.a <= s && s <= h.b || v.line.Closed && (s == 0 && h.b == v.line.Length)) {
			continue
		}
		var left [][2]L
		for _, p := range list {
			left = append(left, [2]L{p[0], min(p[1], h.sill)}, [2]L{max(p[0], h.head), p[1]})
		}
		list = left
	}
	return slices.DeleteFunc(list, func(p [2]L) bool { return p[0] >= p[1] })
}

// wallAt is the wall whose height counts at s.
func (v *sight) wallAt(s L) run.Stretch {
	line := v.line
	for _, c := range line.Corners {
		if c.Lean <= 0 {
			continue
		}
		if d := line.Round(s - c.At); d <= c.Lean && (line.Closed || s >= c.At) {
			if st, ok := line.Of(c.LeftWall); ok {
				return st
			}
		}
	}
	for i, st := range line.Walls {
		if s > st.Left && s <= st.Right || i == 0 && s <= st.Left && !line.Closed {
			return st
		}
	}
	return line.Walls[len(line.Walls)-1] // past the end; in a closed run the place where the last wall meets the first
}

// across is the length of wall that shows a seam at height z, where the grain is horizontal.
func (v *sight) across(z L) L {
	w := &v.line.Room.Walls[v.line.Walls[0].Wall]
	if w.HiddenBelow > 0 && z < w.HiddenBelow {
		return 0
	}
	stops := []L{0, w.Length}
	for _, profile := range [2][]room.Point{w.Floor, w.Ceiling} {
		lift := w.Base
		if &profile[0] == &w.Ceiling[0] {
			lift = -w.Crown
		}
		for i, p := range profile {
			stops = append(stops, p.X)
			if i == 0 || profile[i-1].Z == p.Z || profile[i-1].X == p.X {
				continue
			}
			q := profile[i-1]
			if a, b := q.Z+lift-z, p.Z+lift-z; a < 0 && b > 0 || a > 0 && b < 0 {
				stops = append(stops, length.Lerp(z, q.Z+lift, q.X, p.Z+lift, p.X))
			}
		}
	}
	for _, h := range v.sides(w) {
		stops = append(stops, h[0], h[1])
	}
	slices.Sort(stops)
	seen := L(0)
	for i := 1; i < len(stops); i++ {
		a, b := stops[i-1], stops[i]
		if b <= a || a < 0 || b > w.Length {
			continue
		}
		mid := a + (b - a).HalfDown()
		if z < room.At(w.Floor, mid)+w.Base || z > room.At(w.Ceiling, mid)-w.Crown || v.taken(w, mid, z) {
			continue
		}
		seen += b - a
	}
	return seen
}

// sides lists the sides of the openings and bare strips of a wall.
func (v *sight) sides(w *room.Wall) [][2]L {
	var out [][2]L
	for i := range w.Openings {
		out = append(out, [2]L{w.Openings[i].FromLeft, w.Openings[i].Right()})
	}
	for _, b := range w.Bare {
		out = append(out, [2]L{b.From, b.To})
	}
	return out
}

// taken reports whether an opening or a bare strip stands at x, z.
func (v *sight) taken(w *room.Wall, x, z L) bool {
	for i := range w.Openings {
		o := &w.Openings[i]
		if o.FromLeft < x && x < o.Right() && (!o.SillGiven || o.Sill <= z) && z <= o.Head {
			return true
		}
	}
	for _, b := range w.Bare {
		if b.From < x && x < b.To {
			return true
		}
	}
	return false
}

package detail

import (
	"slices"
	"sort"

	"flitchlay/internal/elevation"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/room"
	"flitchlay/internal/run"
)

// MostBends is how many bends are drawn together at the most.
const MostBends = 8

// Chain is a wrapped corner, or several that lie close together on a run: they are drawn in one plan.
//
// Bends lie close where no raw end is between two of them and no more than the net width of a sheet and a quarter: one
// sheet goes round both, or the face between them has one seam or two.
type Chain struct {
	Run   *layout.Run
	Bends []*layout.Corner
	Loop  bool        // the last bend is followed by the first: a column, or a small room
	Cut   *run.Corner // the bend that closes a loop, but is cut; nil where there is none
}

// Chains are all wrapped corners of the set, in the order of the walls.
func Chains(s *folio.Set) []Chain {
	var list []Chain
	for i := range s.Plan.Runs {
		r := &s.Plan.Runs[i]
		var bends []*layout.Corner
		for j := range r.Corners {
			bends = append(bends, &r.Corners[j])
		}
		sort.SliceStable(bends, func(i, j int) bool { return bends[i].At < bends[j].At })
		list = append(list, ChainsOf(s, r, bends)...)
	}
	sort.SliceStable(list, func(i, j int) bool { return list[i].First() < list[j].First() })
	return list
}

// First is the wall by which a chain stands in order.
func (c Chain) First() int {
	n := c.Bends[0].LeftWall
	for _, b := range c.Bends {
		n = min(n, b.LeftWall)
	}
	return n
}

// ChainsOf parts the bends of a run where two of them are not close.
func ChainsOf(s *folio.Set, r *layout.Run, bends []*layout.Corner) []Chain {
	n := len(bends)
	if n == 0 {
		return nil
	}
	near := func(i int) bool { return Close(s, r, bends[i], bends[(i+1)%n]) }
	start, all := 0, r.Closed && n > 1
	if r.Closed { // begin after a wide place, so that no chain is cut by where the run begins
		for i := range n {
			if !near(i) {
				start, all = (i+1)%n, false
				break
			}
		}
	}
	turned := append(append([]*layout.Corner{}, bends[start:]...), bends[:start]...)
	if all && n <= MostBends {
		for i, b := range bends { // a loop begins with the first of its bends as they are named
			if b.LeftWall < bends[start].LeftWall {
				start = i
			}
		}
		turned = append(append([]*layout.Corner{}, bends[start:]...), bends[:start]...)
		if c := (Chain{Run: r, Bends: turned, Loop: true}); c.Closes() {
			return []Chain{c}
		}
	}
	var list []Chain
	from := 0
	for i := range turned {
		if i+1 < n && i+1-from < MostBends && Close(s, r, turned[i], turned[i+1]) {
			continue
		}
		list = append(list, CutLoop(s, Chain{Run: r, Bends: turned[from : i+1]}))
		from = i + 1
	}
	return list
}

// Close reports whether two bends that follow one another lie close.
func Close(s *folio.Set, r *layout.Run, a, b *layout.Corner) bool {
	d := Around(r, b.At-a.At)
	if d <= 0 || d > Closest(s) {
		return false
	}
	for _, end := range RunEnds(r) {
		if Around(r, end-a.At) < d && (r.Closed || end > a.At) {
			return false
		}
	}
	return true
}

// Closest is the widest face between two bends that are drawn together.
func Closest(s *folio.Set) L { return elevation.Net(s) + elevation.Net(s)/4 }

// Around is a distance along a run, in a closed one brought to what is less than its length.
func Around(r *layout.Run, d L) L {
	if r.Closed {
		return ((d % r.Length) + r.Length) % r.Length
	}
	return d
}

// RunEnds are the places where the covering of a run ends.
func RunEnds(r *layout.Run) []L {
	var list []L
	for _, sp := range r.Spans {
		if !sp.Closed && !sp.LeftSeam {
			list = append(list, sp.Left)
		}
		if !sp.Closed && !sp.RightSeam {
			list = append(list, sp.Right)
		}
	}
	return list
}

// CutLoop closes a chain by the bend that is cut, where that and no other follows its last and precedes its first.
func CutLoop(s *folio.Set, c Chain) Chain {
	if !c.Run.Closed || len(c.Bends) < 2 {
		return c
	}
	first, last := c.Bends[0], c.Bends[len(c.Bends)-1]
	for i := range c.Run.Line.Corners {
		x := &c.Run.Line.Corners[i]
		if x.Wrapped || x.Kind == room.Straight || x.LeftWall != last.RightWall || x.RightWall != first.LeftWall {
			continue
		}
		if Around(c.Run, x.At-last.At) > Closest(s) || Around(c.Run, first.At-x.At) > Closest(s) || !c.RawAt(x) {
			continue
		}
		closed := Chain{Run: c.Run, Bends: c.Bends, Loop: true, Cut: x}
		if closed.Closes() {
			return closed
		}
	}
	return c
}

// RawAt reports whether the covering ends on both sides of a cut bend, and nowhere else on the faces beside it.
func (c Chain) RawAt(x *run.Corner) bool {
	first, last := c.Bends[0], c.Bends[len(c.Bends)-1]
	n := 0
	for _, end := range RunEnds(c.Run) {
		d, whole := Around(c.Run, end-last.At), Around(c.Run, first.At-last.At)
		if d >= whole {
			continue
		}
		n++
		// a leaning edge, or half of an eased one, is not more than this off
		if off := Around(c.Run, x.At-last.At) - d; max(off, -off) > x.To-x.From+max(x.Lean, -x.Lean) {
			return false
		}
	}
	return n > 0
}

// Parted splits a chain that fits no cell: at its longest face with a seam on it, else at its longest face.
func (c Chain) Parted() []Chain {
	if c.Loop {
		c.Loop, c.Cut = false, nil
		if len(c.Bends) == 1 {
			return []Chain{c}
		}
	}
	best, at := L(-1), 0
	for i := range c.Bends[:len(c.Bends)-1] {
		a, b := c.Bends[i].At, c.Bends[i+1].At
		d := Around(c.Run, b-a)
		if slices.ContainsFunc(c.Run.Seams, func(m layout.Seam) bool { e := Around(c.Run, m.At-a); return e > 0 && e < d }) {
			d += c.Run.Length
		}
		if d > best {
			best, at = d, i+1
		}
	}
	return []Chain{{Run: c.Run, Bends: c.Bends[:at]}, {Run: c.Run, Bends: c.Bends[at:]}}
}

// Names are the names of the bends.
func (c Chain) Names() []string {
	var list []string
	for _, b := range c.Bends {
		list = append(list, b.Name)
	}
	return list
}

// Title says what the bends make together.
func (c Chain) Title() string {
	kinds := ""
	for _, b := range c.Bends {
		kinds += map[room.Bend]string{room.Inside: "i", room.Outside: "o"}[b.Kind]
	}
	names := Ranges(c.Names())
	switch {
	case kinds == "i":
		return names + " INSIDE CORNER"
	case kinds == "o":
		return names + " OUTSIDE CORNER"
	case c.Loop && c.Turns() < 0:
		return "COLUMN " + names
	case kinds == "iooi":
		return "PILASTER " + names
	case kinds == "oiio":
		return "NICHE " + names
	}
	return "CORNERS " + names
}

// Turns is how far the way turns to the right in all, in degrees.
func (c Chain) Turns() float64 {
	sum := 0.0
	for _, v := range c.Vertices() {
		sum += v.Turn
	}
	return sum
}

// Angles says the angles of the bends under the title, where they are not written at each.
func Angles(s *folio.Set, c Chain) string {
	if len(c.Bends) == 1 {
		text := Angle(c.Bends[0].Angle)
		if r := c.Bends[0].Radius; r > 0 {
			text += ", radius " + s.Style.Words(r)
		}
		return text
	}
	for _, b := range c.Bends {
		if b.Angle != 90 {
			return "angles as noted"
		}
	}
	return "all 90°"
}

// RoundBends reports whether a return runs on round another bend of the chain, or is rounded in its plan otherwise than
// it stands elsewhere.
func RoundBends(s *folio.Set, c Chain) bool {
	for _, b := range c.Bends {
		for _, o := range c.Bends {
			if o == b {
				continue
			}
			right, left := Around(c.Run, o.At-b.At), Around(c.Run, b.At-o.At)
			if right > 0 && right < b.RightReturn || left > 0 && left < b.LeftReturn {
				return true
			}
		}
	}
	g := NewGeometry(c, float64(DetailScale(s)))
	for i := range g.Segs {
		if !g.Inner(i) {
			continue
		}
		list := g.Figures(s.Style, i)
		if len(list) < 2 {
			continue
		}
		if a, b := g.VertexBefore(i), g.VertexAfter(i); a.C != nil && list[0] != s.Style.Format(a.C.RightReturn) || b.C != nil && list[len(list)-1] != s.Style.Format(b.C.LeftReturn) {
			return true
		}
	}
	return false
}

package detail

import (
	"cmp"
	"math"
	"slices"

	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/room"
	"flitchlay/internal/run"
)

// mostBends is how many bends are drawn together at the most.
const mostBends = 8

// chain is a wrapped corner, or several that lie close together on a run: they are drawn in one plan.
//
// Bends lie close where no raw end is between two of them and no more than the net width of a sheet and a quarter: one
// sheet goes round both, or the face between them has one seam or two.
type chain struct {
	run   *layout.Run
	bends []*layout.Corner
	loop  bool        // the last bend is followed by the first: a column, or a small room
	cut   *run.Corner // the bend that closes a loop, but is cut; nil where there is none
}

// chains are all wrapped corners of the set, in the order of the walls.
func chains(s *folio.Set) []chain {
	var list []chain
	for i := range s.Plan.Runs {
		r := &s.Plan.Runs[i]
		var bends []*layout.Corner
		for j := range r.Corners {
			bends = append(bends, &r.Corners[j])
		}
		slices.SortStableFunc(bends, func(a, b *layout.Corner) int { return cmp.Compare(a.At, b.At) })
		list = append(list, chainsOf(s, r, bends)...)
	}
	slices.SortStableFunc(list, func(a, b chain) int { return cmp.Compare(a.first(), b.first()) })
	return list
}

// first is the wall by which a chain stands in order.
func (c chain) first() int {
	n := c.bends[0].LeftWall
	for _, b := range c.bends {
		n = min(n, b.LeftWall)
	}
	return n
}

// chainsOf parts the bends of a run where two of them are not close.
func chainsOf(s *folio.Set, r *layout.Run, bends []*layout.Corner) []chain {
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
	if all && n <= mostBends {
		for i, b := range bends { // a loop begins with the first of its bends as they are named
			if b.LeftWall < bends[start].LeftWall {
				start = i
			}
		}
		turned = append(append([]*layout.Corner{}, bends[start:]...), bends[:start]...)
		if c := (chain{run: r, bends: turned, loop: true}); c.closes() {
			return []chain{c}
		}
	}
	var list []chain
	from := 0
	for i := range turned {
		if i+1 < n && i+1-from < mostBends && Close(s, r, turned[i], turned[i+1]) {
			continue
		}
		list = append(list, cutLoop(s, chain{run: r, bends: turned[from : i+1]}))
		from = i + 1
	}
	return list
}

// Close reports whether two bends that follow one another lie close.
func Close(s *folio.Set, r *layout.Run, a, b *layout.Corner) bool {
	d := around(r, b.At-a.At)
	if d <= 0 || d > closest(s) {
		return false
	}
	for _, end := range runEnds(r) {
		if around(r, end-a.At) < d && (r.Closed || end > a.At) {
			return false
		}
	}
	return true
}

// closest is the widest face between two bends that are drawn together.
func closest(s *folio.Set) L { return s.Room.NetWidth() + s.Room.NetWidth()/4 }

// around is a distance along a run, in a closed one brought to what is less than its length.
func around(r *layout.Run, d L) L {
	if r.Closed {
		return ((d % r.Length) + r.Length) % r.Length
	}
	return d
}

// runEnds are the places where the covering of a run ends.
func runEnds(r *layout.Run) []L {
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

// cutLoop closes a chain by the bend that is cut, where that and no other follows its last and precedes its first.
func cutLoop(s *folio.Set, c chain) chain {
	if !c.run.Closed || len(c.bends) < 2 {
		return c
	}
	first, last := c.bends[0], c.bends[len(c.bends)-1]
	for i := range c.run.Line.Corners {
		x := &c.run.Line.Corners[i]
		if x.Wrapped || x.Kind == room.Straight || x.LeftWall != last.RightWall || x.RightWall != first.LeftWall {
			continue
		}
		if around(c.run, x.At-last.At) > closest(s) || around(c.run, first.At-x.At) > closest(s) || !c.rawAt(x) {
			continue
		}
		closed := chain{run: c.run, bends: c.bends, loop: true, cut: x}
		if closed.closes() {
			return closed
		}
	}
	return c
}

// rawAt reports whether the covering ends on both sides of a cut bend, and nowhere else on the faces beside it.
func (c chain) rawAt(x *run.Corner) bool {
	first, last := c.bends[0], c.bends[len(c.bends)-1]
	n := 0
	for _, end := range runEnds(c.run) {
		d, whole := around(c.run, end-last.At), around(c.run, first.At-last.At)
		if d >= whole {
			continue
		}
		n++
		// a leaning edge, or half of an eased one, is not more than this off
		if off := around(c.run, x.At-last.At) - d; max(off, -off) > x.To-x.From+max(x.Lean, -x.Lean) {
			return false
		}
	}
	return n > 0
}

// parted splits a chain that fits no cell: at its longest face with a seam on it, else at its longest face.
func (c chain) parted() []chain {
	if c.loop {
		c.loop, c.cut = false, nil
		if len(c.bends) == 1 {
			return []chain{c}
		}
	}
	best, at := L(-1), 0
	for i := range c.bends[:len(c.bends)-1] {
		a, b := c.bends[i].At, c.bends[i+1].At
		d := around(c.run, b-a)
		if slices.ContainsFunc(c.run.Seams, func(m layout.Seam) bool { e := around(c.run, m.At-a); return e > 0 && e < d }) {
			d += c.run.Length
		}
		if d > best {
			best, at = d, i+1
		}
	}
	return []chain{{run: c.run, bends: c.bends[:at]}, {run: c.run, bends: c.bends[at:]}}
}

// names are the names of the bends.
func (c chain) names() []string {
	var list []string
	for _, b := range c.bends {
		list = append(list, b.Name)
	}
	return list
}

// title says what the bends make together.
func (c chain) title() string {
	kinds := ""
	for _, b := range c.bends {
		kinds += map[room.Bend]string{room.Inside: "i", room.Outside: "o"}[b.Kind]
	}
	names := ranges(c.names())
	switch {
	case kinds == "i":
		return names + " INSIDE CORNER"
	case kinds == "o":
		return names + " OUTSIDE CORNER"
	case c.loop && c.turns() < 0:
		return "COLUMN " + names
	case kinds == "iooi":
		return "PILASTER " + names
	case kinds == "oiio":
		return "NICHE " + names
	}
	return "CORNERS " + names
}

// turns is how far the way turns to the right in all, in degrees.
func (c chain) turns() float64 {
	sum := 0.0
	for _, v := range c.vertices() {
		sum += v.turn
	}
	return sum
}

// angles says the angles of the bends under the title, where they are not written at each.
func angles(s *folio.Set, c chain) string {
	if len(c.bends) == 1 {
		text := angle(c.bends[0].Angle)
		if r := c.bends[0].Radius; r > 0 {
			text += ", radius " + s.Style.Words(r) + ", " + s.Style.Words(arcOf(c.bends[0])) + " round it"
		}
		return text
	}
	for _, b := range c.bends {
		if b.Angle != 90 {
			return "angles as noted"
		}
	}
	return "all 90°"
}

// arcOf is how much of a sheet lies on the round of an eased corner: what its two returns do not have.
func arcOf(b *layout.Corner) L {
	return L(math.Round(float64(b.Radius) * b.Angle * math.Pi / 180))
}

// roundBends reports whether a return runs on round another bend of the chain, or is rounded in its plan otherwise than
// it stands elsewhere.
func roundBends(s *folio.Set, c chain) bool {
	for _, b := range c.bends {
		for _, o := range c.bends {
			if o == b {
				continue
			}
			right, left := around(c.run, o.At-b.At), around(c.run, b.At-o.At)
			if right > 0 && right < b.RightReturnBottom || left > 0 && left < b.LeftReturnBottom {
				return true
			}
		}
	}
	g := newGeometry(c, float64(detailScale(s)))
	for i := range g.segs {
		if !g.inner(i) {
			continue
		}
		list := g.figures(s.Style, i)
		if len(list) < 2 {
			continue
		}
		if a, b := g.vertexBefore(i), g.vertexAfter(i); a.c != nil && list[0] != s.Style.Format(a.c.RightReturnBottom) || b.c != nil && list[len(list)-1] != s.Style.Format(b.c.LeftReturnBottom) {
			return true
		}
	}
	return false
}

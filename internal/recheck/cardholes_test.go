package recheck

import (
	"fmt"
	"math"
	"slices"

	"github.com/stretchr/testify/assert"

	"flitchlay/internal/room"
	"flitchlay/internal/shape"
)

// ringOf is an outline of a card as its points.
func ringOf(o shape.Outline) []ring {
	var out []ring
	for _, q := range o {
		out = append(out, ring{int64(q.X), int64(q.Z)})
	}
	return out
}

func ringsOf(list []shape.Outline) [][]ring {
	var out [][]ring
	for _, o := range list {
		out = append(out, ringOf(o))
	}
	return out
}

// trims are what the sheet has over at its top and foot, in whole units.
func (c *cutter) trims() (top, bottom int64) {
	_, _, t, b := c.course(c.line, c.sheet.Course, c.courses())
	return int64(math.Round(t * 8000)), int64(math.Round(b * 8000))
}

// courses are those of the sheet's place.
func (c *cutter) courses() []int {
	var list []int
	for _, s := range c.run.Sheets {
		if s.Place == c.sheet.Place {
			list = append(list, s.Course)
		}
	}
	return list
}

// cutOuts finds every opening and every box of the walls that comes into the sheet as it hangs; the card has the same, each
// edge to the last unit, and no other.
func (c *cutter) cutOuts() {
	level, above, below := int64(c.room.Space.LevelLine), units(c.t, c.sheet.Above), units(c.t, c.sheet.Below)
	top, bottom := c.trims()
	var want, got []string
	add := func(wall int, left, right, low, high int64, o *hole) {
		opening := o != nil
		low, high = max(low-level, -below), min(high-level, above)
		if opening && (high <= bottom-below || low >= above-top) {
			return // only in a trim, which is cut off
		}
		for turn := -2 * c.line.length; turn <= 2*c.line.length; turn += c.line.length {
			a, b := max(left+turn-c.start, 0), min(right+turn-c.start, c.width)
			if !opening && b-a <= 203_200/8 && (c.start+b <= c.from || c.start+a >= c.to) {
				continue // no knife goes into the strip that a seam cuts off for so little
			}
			if (turn == 0 || c.line.closed) && a < b && low < high {
				low, high := low, high
				if opening {
					x := c.start - turn - o.left + int64(o.FromLeft)
					under, over := leaves(&c.room.Walls[wall], o.Opening, a+x, b+x)
					if !under || low <= bottom-below {
						low = -below // no tongue stays in the trim
					}
					if !over || high >= above-top {
						high = above
					}
				}
				want = append(want, fmt.Sprint(wall, a, b, low, high))
			}
		}
	}
	for i := range c.line.openings {
		o := &c.line.openings[i]
		if o.gap && !o.through {
			continue // the covering ends at its jambs
		}
		in := int64(0)
		if o.WrapReveal {
			in = int64(o.Reveal) // the jambs stay on the sheet
		}
		add(o.wall, o.left+in, o.right-in, o.sill, o.head, o)
	}
	for _, st := range c.line.walls {
		for _, b := range c.line.wall(st).Boxes {
			x, z, wide, high := boxSize(&b)
			add(st.wall, st.shift+x-wide/2, st.shift+x-wide/2+wide, z-high/2, z-high/2+high, nil)
		}
	}
	for _, h := range c.card.Holes {
		got = append(got, fmt.Sprint(h.Hole.Wall, int64(h.Left), int64(h.Right), int64(h.Bottom), int64(h.Top)))
	}
	slices.Sort(want)
	slices.Sort(got)
	assert.Equal(c.t, want, got, c.what+"cut-outs")
}

// leaves reports whether an opening leaves covering under and over it somewhere between two places of its wall.
func leaves(w *room.Wall, o *room.Opening, from, to int64) (under, over bool) {
	base, crown := float64(w.Base), float64(w.Crown)
	if w.Behind.Base {
		base = 0
	}
	if w.Behind.Crown {
		crown = 0
	}
	at := []int64{from, to}
	for _, q := range slices.Concat(w.Floor, w.Ceiling) {
		if x := int64(q.X); from < x && x < to {
			at = append(at, x)
		}
	}
	for _, x := range at {
		for _, side := range []int{-1, 1} {
			if x == from && side < 0 || x == to && side > 0 {
				continue
			}
			floor, _ := height(w.Floor, x, side).Float64()
			ceiling, _ := height(w.Ceiling, x, side).Float64()
			under = under || o.SillGiven && float64(o.Sill) > floor+base
			over = over || float64(o.Head) < ceiling-crown
		}
	}
	return under, over
}

// boxSize is the middle of a box and what is cut out for it: its hole, or its plate where it is never taken off.
func boxSize(b *room.Box) (x, z, wide, high int64) {
	if b.Kind.Traits().NeverCovered {
		return int64(b.X), int64(b.Z), int64(b.PlateWidth), int64(b.PlateHigh)
	}
	return int64(b.X), int64(b.Z), int64(b.HoleWidth), int64(b.HoleHigh)
}

// folded folds the sheet where the card says, and finds the corner's edge there at its foot and at its head.
func (c *cutter) folded() {
	assert.Len(c.t, c.card.Folds, c.bent(), c.what+"folds")
	for _, f := range c.card.Folds {
		found := false
		for _, b := range c.line.corners {
			if f.Corner == nil || b.name != f.Corner.Name {
				continue
			}
			w := &c.room.Walls[b.wall]
			right := int64(w.Length)
			if b.half > 0 {
				_, tangent := easing(w)
				right -= tangent - b.half
			}
			foot, _ := height(w.Floor, right, -1).Float64()
			head, _ := height(w.Ceiling, right, -1).Float64()
			near := func(p shape.Point) bool {
				at := float64(b.at - c.start)
				if lean := float64(w.LeanRight); lean != 0 && head > foot {
					at += lean * (float64(p.Z) + float64(c.room.Space.LevelLine) - foot) / (head - foot)
				}
				off := float64(p.X) - at
				if c.line.closed {
					off = math.Mod(off, float64(c.line.length))
					off = min(math.Abs(off), float64(c.line.length)-math.Abs(off))
				}
				return math.Abs(off) <= 1
			}
			found = near(f.Foot) && near(f.Head)
		}
		if f.Corner == nil {
			found = slices.ContainsFunc(c.line.openings, func(o hole) bool {
				off := (int64(f.Foot.X) + c.start - o.left) % max(1, c.line.length)
				other := (int64(f.Foot.X) + c.start - o.right) % max(1, c.line.length)
				return o.WrapReveal && (off == 0 || other == 0) && f.Foot.X == f.Head.X
			})
		}
		assert.True(c.t, found, c.what+"fold %s", f.Bend.Name)
	}
}

// bent counts the bends of a sheet but those along jambs that it comes to at another height.
func (c *cutter) bent() int {
	n := len(c.sheet.Bends)
	for _, at := range c.sheet.Bends {
		for _, o := range c.line.openings {
			low, high := o.sill-int64(c.room.Space.LevelLine), o.head-int64(c.room.Space.LevelLine)
			if s := units(c.t, at); o.WrapReveal && (s == c.line.round(o.left) || s == c.line.round(o.right)) && max(low, -units(c.t, c.sheet.Below)) >= min(high, units(c.t, c.sheet.Above)) {
				n--
			}
		}
	}
	return n
}

// cutOff cuts the sheet on its wall: what is kept of it, between its seams and the trims, less the openings of the card, has
// the area of its pieces.
func (c *cutter) cutOff() {
	k := c.card.Kept
	level := asMM(c.room.Space.LevelLine)
	foot, head, _, _ := c.course(c.line, c.sheet.Course, c.courses())
	foot, head = max(foot, asMM(k.Bottom)+level), min(head, asMM(k.Top)+level)
	sum := 0.0
	for _, st := range c.line.walls {
		w := c.line.wall(st)
		around := outline(w, st)
		for _, x := range c.line.parts(st, c.r) {
			part := between(around, x, foot, head)
			sum += area(part)
			for _, b := range w.Bare {
				sum -= area(strip(part, asMM(b.From), asMM(b.To), 0))
			}
			sum -= c.openAt(st, part)
		}
	}
	got := 0.0
	for _, p := range c.card.Pieces {
		for _, o := range append([][]ring{ringOf(p.Outline)}, ringsOf(p.Holes)...) {
			twice, _ := twiceOf(o).Float64()
			got += twice / 2 / 64e6
		}
	}
	// points are rounded to 1/8 µm: over the height of a wall that stays under 2 mm2
	assert.InDelta(c.t, sum, got, 2, c.what+"area of what stays")
}

// openAt is the area that the openings of the card take out of a part of a wall. Where a jamb is wrapped the veneer at it
// stays on the sheet, but is none of the wall's.
func (c *cutter) openAt(st stretch, part []point) float64 {
	sum := 0.0
	level := asMM(c.room.Space.LevelLine)
	for _, h := range c.card.Holes {
		if h.Hole.Wall != st.wall || h.Hole.Kind.Traits().Box || c.room.Walls[st.wall].Openings[h.Hole.Index].WrapReveal {
			continue
		}
		for turn := -2 * c.line.length; turn <= 2*c.line.length; turn += c.line.length {
			if turn == 0 || c.line.closed {
				left := mm(int64(h.Left) + c.start - turn - st.shift)
				right := mm(int64(h.Right) + c.start - turn - st.shift)
				sum += area(between(part, [2]float64{left, right}, asMM(h.Bottom)+level, asMM(h.Top)+level))
			}
		}
	}
	for i := range c.room.Walls[st.wall].Openings {
		if o := &c.room.Walls[st.wall].Openings[i]; o.WrapReveal {
			low := -1e5
			if o.SillGiven {
				low = asMM(o.Sill)
			}
			sum += area(between(part, [2]float64{asMM(o.FromLeft), asMM(o.Right())}, low, asMM(o.Head)))
		}
	}
	return sum
}

// lying holds the card of a sheet whose grain is level: its pieces, and the boxes of its wall.
func (c *cutter) lying() {
	c.flat()
	k, s := c.card.Kept, c.sheet
	assert.Equal(c.t, []int64{-units(c.t, s.Below), units(c.t, s.Above)}, []int64{int64(k.Left), int64(k.Right)}, c.what+"ends")
	boxes := 0
	for _, h := range c.card.Holes {
		if !h.Hole.Kind.Traits().Box {
			continue
		}
		boxes++
		x, z, wide, high := boxSize(&c.room.Walls[h.Hole.Wall].Boxes[h.Hole.Index])
		assert.Equal(c.t, []int64{max(x-wide/2, int64(k.Left)), min(x-wide/2+wide, int64(k.Right)), max(z-high/2-c.start, 0), min(z-high/2+high-c.start, c.width)},
			[]int64{int64(h.Left), int64(h.Right), int64(h.Bottom), int64(h.Top)}, c.what+"hole of a box")
	}
	want := 0
	for i := range c.room.Walls {
		if w := &c.room.Walls[i]; w.Name == s.Pieces[0].Wall {
			for _, b := range w.Boxes {
				x, z, wide, high := boxSize(&b)
				if x+wide/2 > int64(k.Left) && x-wide/2 < int64(k.Right) && z+high/2 > c.start && z-high/2 < c.start+c.width {
					want++
				}
			}
		}
	}
	assert.Equal(c.t, want, boxes, c.what+"boxes")
}

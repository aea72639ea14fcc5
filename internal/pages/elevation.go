package pages

import (
	"fmt"
	"math"
	"strings"

	"flitchlay/internal/draft"
	"flitchlay/internal/scene"
)

// elevation is the view of one wall, or of one piece of a long one.
type elevation struct {
	*board
	f         *face
	from, to  L // what of the wall is shown
	piece, of int
	v         draft.View
	group     *scene.Group
	detail    bool // an opening drawn large: its sides are broken off

	above, below, left, right draft.Stack
	ghostLeft, ghostRight     ghost
}

// ghost is the wall next door as far as the sheet that comes round the corner covers it.
type ghost struct {
	corner string
	wall   int
	width  L // to the seam
	place  int
	stub   bool // broken: there is no room to show it whole
}

func (h ghost) shown() bool { return h.corner != "" }

// elevationPages are the pages with the views of all walls.
func elevationPages(s *set) []*leaf {
	var list []*leaf
	for _, f := range s.faces() {
		pieces := s.cutWall(f)
		for i, p := range pieces {
			f, p := f, p
			title := "ELEVATION: " + strings.ToUpper(f.w.Name)
			if len(pieces) > 1 {
				title += fmt.Sprintf(", %d OF %d", i+1, len(pieces))
			}
			l := &leaf{title: title, scale: draft.Ratio(p.scale, s.metric()), wall: f.wall, about: wallKey(f.wall)}
			l.draw = func(b *board) {
				e := &elevation{board: b, f: f, from: p.from, to: p.to, piece: i, of: len(pieces)}
				e.v.Scale = p.scale
				e.draw()
			}
			list = append(list, l)
		}
	}
	return list
}

// cut is one piece of a wall on one page.
type cut struct {
	from, to L
	scale    int64
}

// cutWall chooses the scale of a wall: the largest at which it stands on a page, else the smallest, in pieces that meet
// in the middle of a sheet.
func (s *set) cutWall(f *face) []cut {
	t := s.paper.Elevation
	scales := t.Inch
	if s.metric() {
		scales = t.Metric
	}
	wide, high := f.right-f.left, f.high-f.low
	onPaper := func(l L, scale int64) float64 { return l.MM() / float64(scale) }
	for _, scale := range scales {
		whole := cut{f.left, f.right, scale}
		if onPaper(high, scale) <= t.Height && onPaper(wide, scale) <= t.Width && s.stands(f, whole, 0, 1) {
			return []cut{whole}
		}
	}
	scale := scales[len(scales)-1]
	for onPaper(high, scale) > t.Height {
		scale *= 2
	}
	for {
		most := L(t.Width * float64(scale) * millimetre)
		least := int((wide + most - 1) / most)
		for n := max(least, 1); n <= 2*least+6; n++ {
			cuts := s.pieces(f, n, most, scale)
			ok := true
			for i, c := range cuts {
				ok = ok && s.stands(f, c, i, len(cuts))
			}
			if ok {
				return cuts
			}
		}
		if scale *= 2; scale > 2000 { // no paper takes it: draw it all the same
			return s.pieces(f, max(least, 1), most, scale)
		}
	}
}

// pieces parts a long wall.
func (s *set) pieces(f *face, n int, most L, scale int64) []cut {
	wide := f.right - f.left
	var cuts []cut
	from := f.left
	for i := 1; i < n; i++ {
		ideal := f.left + wide*L(i)/L(n)
		at := f.matchLine(ideal, max(from+wide/L(4*n), f.right-L(n-i)*most), min(from+most, f.right-wide/L(4*n)))
		cuts = append(cuts, cut{from, at, scale})
		from = at
	}
	return append(cuts, cut{from, f.right, scale})
}

// stands reports whether the view of a piece with all its dimensions stands on a page.
func (s *set) stands(f *face, c cut, i, of int) bool {
	plan := *s
	plan.list = nil
	l := &leaf{wall: f.wall}
	e := &elevation{board: &board{set: &plan, leaf: l, page: scene.NewPage("", "", 1, 1), space: draft.NewSpace(scene.Box{}), field: boxOf(s.paper.Field)}, f: f, from: c.from, to: c.to, piece: i, of: of}
	e.v.Scale = c.scale
	return e.compose(e.notes(e.noteLines()))
}

const millimetre = 8000

// matchLine finds where to part a long wall: the middle of a sheet, over an opening if there is one, near the ideal.
func (f *face) matchLine(ideal, least, most L) L {
	best, cost := ideal, L(math.MaxInt64)
	for _, p := range f.parts {
		m := (p.from + p.to) / 2
		if m < least || m > most {
			continue
		}
		c := (m - ideal).Abs()
		for i := range f.w.Openings {
			if o := &f.w.Openings[i]; o.FromLeft < m && m < o.Right() {
				c /= 4
			}
		}
		if c < cost {
			best, cost = m, c
		}
	}
	return min(max(best, least), max(least, most))
}

// draw composes the page: notes at the head, dimensions over the wall, the wall, dimensions under it, title, bar, table.
func (e *elevation) draw() {
	k := e.look
	e.compose(e.notes(e.noteLines()))

	title := strings.ToUpper(e.f.w.Name)
	view := scene.View{Box: e.box().Inset(-k.Of(1)), Scale: float64(e.v.Scale), Metric: e.metric(), Name: title, Ratio: draft.Ratio(e.v.Scale, e.metric())}
	e.group = e.page.Viewed(view, datum("scale", fmt.Sprint(e.v.Scale)), datum("wall", e.f.w.Name), datum("unit", e.room.Project.Units.String()))
	e.body()

	for _, stack := range []*draft.Stack{&e.above, &e.below, &e.left, &e.right} {
		stack.Draw(e.group, k, e.space)
	}
	e.cornerMarks()
	e.foot()
	e.labels()
}

// box is where the piece of the wall stands on the page.
func (e *elevation) box() scene.Box { return e.v.Box(e.from, e.f.low, e.to, e.f.high) }

// first reports whether the piece holds the wall's left end, last whether its right end.
func (e *elevation) first() bool { return e.from == e.f.left }
func (e *elevation) last() bool  { return e.to == e.f.right }

// ghosts finds what is seen of the walls next door.
func (e *elevation) ghosts() {
	most := e.look.Of(28)
	for _, right := range []bool{false, true} {
		if right && !e.last() || !right && !e.first() {
			continue
		}
		c, width, place := e.neighbour(e.f, right)
		if c == nil {
			continue
		}
		h := ghost{corner: c.Name, wall: c.LeftWall, width: width, place: place}
		if right {
			h.wall = c.RightWall
		}
		h.stub = e.v.MM(width) > most
		if right {
			e.ghostRight = h
		} else {
			e.ghostLeft = h
		}
	}
}

// wide is how far a ghost reaches from the corner on paper.
func (e *elevation) wide(h ghost) float64 {
	switch {
	case !h.shown():
		return 0
	case h.stub:
		return e.look.Of(8)
	}
	return e.v.MM(h.width)
}

// compose finds the origin of the view: its middle where the template has it, its top no higher than allowed and clear
// of what stands over it. Where the sides do not fit, ghosts become stubs, and the view moves.
//
// Shape: false where the page is too small for the view at this scale.
func (e *elevation) compose(notes float64) bool {
	k, t := e.look, e.paper.Elevation
	air := k.Of(3)
	w, h := e.v.MM(e.to-e.from), e.v.MM(e.f.high-e.f.low)
	e.v.Origin = scene.Pt(t.Middle-w/2-e.v.MM(e.from), t.Top+h+e.v.MM(e.f.low))
	e.ghosts()
	all := e.around()
	if all.W() > e.field.W()-2*air {
		e.ghostLeft.stub, e.ghostRight.stub = true, true
		all = e.around()
	}
	fits := all.W() <= e.field.W()-2*air
	switch {
	case all.X0 < e.field.X0+air:
		e.v.Origin.X += e.field.X0 + air - all.X0
	case all.X1 > e.field.X1-air:
		e.v.Origin.X -= all.X1 - e.field.X1 + air
	}
	if over := notes + k.Of(2) - all.Y0; over > 0 {
		e.v.Origin.Y += over
	}
	all = e.around()
	spare := e.field.Y1 - k.Of(1) - math.Max(all.Y1+e.titleHigh(), e.box().Y1+k.Of(41.5))
	if e.tableHigh() > spare-k.Of(6) || e.tableHigh() == 0 {
		e.v.Origin.Y += math.Max(0, math.Min(spare/3, k.Of(40)))
	}
	e.around()
	return fits && spare >= 0
}

// around lays the dimensions anew for the origin as it stands, and gives the box of the wall with all of them.
func (e *elevation) around() scene.Box {
	e.stacks()
	box := e.box()
	box.X0 -= e.wide(e.ghostLeft)
	box.X1 += e.wide(e.ghostRight)
	for _, stack := range []*draft.Stack{&e.above, &e.below, &e.left, &e.right} {
		box = box.Union(stack.Box(e.look))
	}
	box.Y1 += e.look.Of(8) // corner marks
	if e.apart() > 0 {
		box.Y1 += e.look.Of(2)
	}
	return box
}

package pages

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"flitchlay/internal/draft"
	"flitchlay/internal/room"
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
	detail    bool                           // an opening drawn large: its sides are broken off
	holes     map[*room.Opening]*scene.Group // openings as drawn
	middle    float64                        // x at which the middle of the wall should stand
	line      float64                        // of the titles of the page; 0: of this one alone
	lean      bool                           // without the heights of openings
	shared    bool                           // other views stand on the page: they share a scale bar

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

// elevationPages are the pages with the views of all walls. Walls in a row that stand side by side on a page at the scale
// that each would have alone share it.
func elevationPages(s *set) []*leaf {
	var list []*leaf
	var row []wallView
	flush := func() {
		if len(row) > 0 {
			list = append(list, s.viewPage(row))
		}
		row = nil
	}
	for _, f := range facesOf(s.plan) {
		pieces := s.cutWall(f)
		if len(pieces) > 1 {
			flush()
			for i, p := range pieces {
				list = append(list, s.viewPage([]wallView{{f: f, cut: p, piece: i, of: len(pieces)}}))
			}
			continue
		}
		v := wallView{f: f, cut: pieces[0], of: 1}
		v.wide = s.viewWide(v)
		sum := v.wide
		for _, o := range row {
			sum += o.wide
		}
		if len(row) > 0 && (row[0].cut.scale != v.cut.scale || sum > s.paper.Field.W-s.look.Of(6) || !s.standTogether(append(slices.Clone(row), v))) {
			flush()
		}
		row = append(row, v)
	}
	flush()
	return list
}

// standTogether reports whether the views of a row have room over the foot of a page with their floors in line.
func (s *set) standTogether(row []wallView) bool {
	var list []*elevation
	for _, v := range row {
		e := s.trial(v)
		e.shared = true
		list = append(list, e)
	}
	notes, floor := list[0].notes(pageNotes(list)), 0.0
	for _, e := range list {
		e.compose(notes)
		floor = math.Max(floor, e.v.Origin.Y)
	}
	for _, e := range list {
		e.v.Origin.Y = floor
		if e.spare(e.around()) < 0 {
			return false
		}
	}
	return true
}

// spare is what is left under a view, its dimensions and its title; negative where they have no room.
func (e *elevation) spare(all scene.Box) float64 {
	k := e.look
	return e.field.Y1 - k.Of(1) - math.Max(all.Y1+e.titleHigh(), e.box().Y1+k.Of(41.5))
}

// wallView is one view of a page: a wall, or a piece of one.
type wallView struct {
	f         *face
	cut       cut
	piece, of int
	wide      float64 // that it takes with its dimensions and its title
}

// viewWide is how wide a view comes out with all that belongs to it.
func (s *set) viewWide(v wallView) float64 {
	e := s.trial(v)
	e.compose(0)
	k := s.look
	return math.Max(e.around().W()+k.Of(8), e.title().Wide(k)+k.Of(14))
}

// viewPage is the page of some views.
func (s *set) viewPage(row []wallView) *leaf {
	first := row[0]
	l := &leaf{scale: draft.Ratio(first.cut.scale, s.metric()), wall: first.f.wall, about: wallKey(first.f.wall)}
	var names []string
	for _, v := range row {
		names = append(names, strings.ToUpper(v.f.w.Name))
		l.abouts = append(l.abouts, wallKey(v.f.wall))
		l.walls = append(l.walls, v.f.wall)
	}
	l.title = "ELEVATION: " + names[0]
	switch {
	case first.of > 1:
		l.title += fmt.Sprintf(", %d OF %d", first.piece+1, first.of)
	case len(row) > 1:
		l.title = "ELEVATIONS: " + strings.Join(names, ", ")
		if len(l.title) > 44 { // no title block has room for it
			var marks []string
			for _, v := range row {
				marks = append(marks, s.marks[v.f.wall])
			}
			l.title = "ELEVATIONS " + strings.Join(marks, ", ")
		}
	}
	l.draw = func(b *board) { b.views(row) }
	return l
}

// views draws the views of a page side by side, their floors in line.
func (b *board) views(row []wallView) {
	sum := 0.0
	for _, v := range row {
		sum += v.wide
	}
	var list []*elevation
	x := b.field.X0
	for _, v := range row {
		at := *b
		if len(row) > 1 {
			w := v.wide + (b.field.W()-sum)/float64(len(row))
			at.field.X0, at.field.X1 = x, x+w
			x += w
		}
		e := &elevation{board: &at, f: v.f, from: v.cut.from, to: v.cut.to, piece: v.piece, of: v.of, middle: at.field.Centre().X, shared: len(row) > 1}
		if len(row) == 1 {
			e.middle = b.paper.Elevation.Middle
		}
		e.v.Scale, e.lean = v.cut.scale, v.cut.lean
		list = append(list, e)
	}
	notes := b.notes(pageNotes(list))
	floor := 0.0
	for _, e := range list {
		e.compose(notes)
		floor = math.Max(floor, e.v.Origin.Y)
	}
	line := 0.0
	for _, e := range list {
		e.v.Origin.Y = floor
		e.around()
		line = math.Max(line, e.titleY())
	}
	for _, e := range list {
		e.line = line
		e.draw()
	}
	if len(list) > 1 {
		list[0].sharedBar()
	}
	for _, e := range list {
		e.labels()
	}
}

// cut is one piece of a wall on one page.
type cut struct {
	from, to L
	scale    int64
	lean     bool // too crowded for the heights of its openings: their enlargements have them
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
		whole := cut{f.left, f.right, scale, false}
		if onPaper(high, scale) <= t.Height && onPaper(wide, scale) <= t.Width && s.stands(f, whole, 0, 1) {
			return []cut{whole}
		}
	}
	scale := scales[len(scales)-1]
	for onPaper(high, scale) > t.Height {
		scale *= 2
	}
	for most := 4 * scale; scale <= most; scale *= 2 {
		for _, lean := range []bool{false, true} {
			if cuts := s.standing(f, scale, lean); cuts != nil {
				return cuts
			}
		}
	}
	return s.pieces(f, 1, f.right-f.left, scale, true) // no paper takes it: draw it all the same
}

// standing parts a wall into the fewest pieces that stand on a page each, nil where none do.
func (s *set) standing(f *face, scale int64, lean bool) []cut {
	wide := f.right - f.left
	most := L(s.paper.Elevation.Width * float64(scale) * millimetre)
	least := max(int((wide+most-1)/most), 1)
	for n := least; n <= 2*least+6; n++ {
		cuts := s.pieces(f, n, most, scale, lean)
		ok := true
		for i, c := range cuts {
			ok = ok && s.stands(f, c, i, len(cuts))
		}
		if ok {
			return cuts
		}
	}
	return nil
}

// pieces parts a long wall.
func (s *set) pieces(f *face, n int, most L, scale int64, lean bool) []cut {
	wide := f.right - f.left
	var cuts []cut
	from := f.left
	for i := 1; i < n; i++ {
		ideal := f.left + wide*L(i)/L(n)
		at := f.matchLine(ideal, max(from+wide/L(4*n), f.right-L(n-i)*most), min(from+most, f.right-wide/L(4*n)))
		cuts = append(cuts, cut{from, at, scale, lean})
		from = at
	}
	return append(cuts, cut{from, f.right, scale, lean})
}

// stands reports whether the view of a piece with all its dimensions stands on a page.
func (s *set) stands(f *face, c cut, i, of int) bool {
	e := s.trial(wallView{f: f, cut: c, piece: i, of: of})
	return e.compose(e.notes(pageNotes([]*elevation{e})))
}

// trial is a view on a page that is thrown away.
func (s *set) trial(v wallView) *elevation {
	plan := *s
	plan.list = nil
	b := &board{set: &plan, leaf: &leaf{wall: v.f.wall}, page: scene.NewPage("", "", 1, 1), space: draft.NewSpace(scene.Box{}), field: boxOf(s.paper.Field)}
	e := &elevation{board: b, f: v.f, from: v.cut.from, to: v.cut.to, piece: v.piece, of: v.of, middle: s.paper.Elevation.Middle}
	e.v.Scale, e.lean = v.cut.scale, v.cut.lean
	return e
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

// sharedBar draws one scale bar for all views of the page, which are at one scale: at the right under the titles, or
// where else there is room for it.
func (e *elevation) sharedBar() {
	k := e.look
	bar := draft.Bar{Scale: e.v.Scale, Metric: e.metric()}
	field := boxOf(e.paper.Field)
	for _, most := range []float64{104, 84, 64, 52, 40, 30, 20} {
		w := bar.Wide(k, k.Of(most))
		for _, y := range []float64{e.titleY() + k.Of(1.5), e.titleY() + k.Of(16), field.Y1 - k.Of(3), e.titleY() + k.Of(8)} {
			for x := field.X1 - k.Of(8) - w; x > field.X0+k.Of(8); x -= k.Of(3) {
				box := scene.Box{X0: x - k.Of(5), Y0: y - k.Of(3.4) - k.Small, X1: x + w + k.Of(7), Y1: y + k.Of(0.6)}
				if y < field.Y1-k.Of(2) && e.space.Free(box, k.Of(1.5)) {
					e.space.Take(bar.Draw(&e.page.Group, k, scene.Pt(x, y), k.Of(most)))
					return
				}
			}
		}
	}
}

// draw draws the view: the wall, dimensions on its four sides, corners, title, bar, table. Labels come last, when all
// views of the page stand.
func (e *elevation) draw() {
	k := e.look
	title := strings.ToUpper(e.f.w.Name)
	view := scene.View{Box: e.box().Inset(-k.Of(1)), Scale: float64(e.v.Scale), Metric: e.metric(), Name: title, Ratio: draft.Ratio(e.v.Scale, e.metric())}
	e.group = e.page.Viewed(view, datum("scale", fmt.Sprint(e.v.Scale)), datum("wall", e.f.w.Name), datum("unit", e.room.Project.Units.String()))
	e.body()
	for _, stack := range []*draft.Stack{&e.above, &e.below, &e.left, &e.right} {
		stack.Draw(e.group, k, e.space)
	}
	e.cornerMarks()
	e.foot()
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
		c, width, place := e.f.neighbour(right)
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
	e.v.Origin = scene.Pt(e.middle-w/2-e.v.MM(e.from), t.Top+h+e.v.MM(e.f.low))
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
	spare := e.spare(all)
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
	box.Y1 += e.look.Of(8.7) // corner marks
	if e.apart() > 0 {
		box.Y1 += e.look.Of(2)
	}
	return box
}

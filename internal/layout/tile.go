package layout

import (
	"cmp"
	"slices"

	"flitchlay/internal/length"
	"flitchlay/internal/room"
	"flitchlay/internal/run"
	"flitchlay/internal/shape"
)

// far is past every wall: a cut that is not made.
const far = 1000 * length.Metre

// Whole is a wall between its upright edges from floor to ceiling, with nothing open in it.
func Whole(r *room.Room, st Stretch) shape.Wall {
	w := &r.Walls[st.Wall]
	left, right := st.Left-st.Shift, st.Right-st.Shift
	return shape.Wall{Floor: points(w.Floor), Ceiling: points(w.Ceiling),
		Left:  shape.Leaning(left, w.LeanLeft, room.AtRight(w.Floor, left), room.AtRight(w.Ceiling, left)),
		Right: shape.Leaning(right, w.LeanRight, room.At(w.Floor, right), room.At(w.Ceiling, right))}
}

// Covering is a wall's covering before it is cut: what lies between its upright edges, over floor and base, under
// ceiling and crown, less openings and bare strips.
func Covering(r *room.Room, st Stretch) shape.Wall {
	w := &r.Walls[st.Wall]
	out := Whole(r, st)
	out.Floor, out.Ceiling = points(w.CoverFloor()), points(w.CoverCeiling())
	for i := range w.Openings {
		o := &w.Openings[i]
		hole := shape.Rect{Left: o.FromLeft, Right: o.Right(), Bottom: -far, Top: o.Head}
		if o.SillGiven {
			hole.Bottom = o.Sill
		}
		out.Holes = append(out.Holes, hole)
	}
	for _, b := range w.Bare {
		out.Holes = append(out.Holes, shape.Rect{Left: b.From, Right: b.To, Bottom: -far, Top: far})
	}
	return out
}

// points is a floor or a ceiling as package shape takes it.
func points(profile []room.Point) []shape.Point {
	out := make([]shape.Point, len(profile))
	for i, p := range profile {
		out[i] = shape.Point{X: p.X, Z: p.Z}
	}
	return out
}

// tile cuts the covering of every wall into the pieces of its sheets, and measures what each sheet has to be cut to.
func (b *builder) tile() {
	for i := range b.plan.Runs {
		r := &b.plan.Runs[i]
		if r.Up {
			b.tileUp(r)
			continue
		}
		for _, st := range r.Walls {
			b.tileWall(r, st)
		}
		for k := range r.Sheets {
			// what an opening takes whole is never cut: it keeps its number and goes back to stock
			if s := &r.Sheets[k]; len(s.Pieces) == 0 && s.CutLength != 0 {
				s.InGap, s.CutLength, s.Above, s.Below, s.Ripped, s.RipTo = true, 0, 0, 0, "", 0
			}
		}
		r.dropEmpty()
		b.cutLengths(r)
		for k := range r.Sheets {
			r.Sheets[k].Bends, r.Sheets[k].Corners = r.bends(&r.Sheets[k])
		}
	}
}

// dropEmpty takes out of every column the courses that have nothing to cover: the upper one under a slope, the lower one
// over a landing. No sheet is cut for them, and what is left of the column ends there at a trim, not at an end match. A
// place keeps one sheet at least.
func (r *Run) dropEmpty() {
	var kept []Sheet
	for i := 0; i < len(r.Sheets); {
		column := r.column(r.Sheets[i].Place)
		first := len(kept)
		for _, k := range column {
			if s := r.Sheets[k]; s.CutLength != 0 || s.InGap {
				kept = append(kept, s)
			}
		}
		if len(kept) == first {
			kept = append(kept, r.Sheets[i])
		}
		kept[first].Lowest = true
		i += len(column)
	}
	r.Sheets = kept
}

// tileWall gives every sheet its pieces on one wall.
func (b *builder) tileWall(r *Run, st Stretch) {
	cover := Covering(b.room, st)
	parts := r.parts(st)
	var cuts []L
	for _, p := range parts {
		cuts = append(cuts, p.from, p.to)
	}
	cuts = slices.DeleteFunc(cuts, func(x L) bool { return x == -far || x == far })
	slices.Sort(cuts)
	cuts = slices.Compact(cuts)
	levels := r.Joints
	at := func(p part) int {
		if p.to == far {
			return len(cuts)
		}
		column, _ := slices.BinarySearch(cuts, p.to)
		return column
	}
	stacked := map[int]bool{}
	for _, p := range parts {
		stacked[at(p)] = len(r.column(p.place)) > 1
	}
	known := b.shapes.of(&cover)
	cells := known.grid(cover, cuts, levels, stacked)
	for _, p := range parts {
		for _, k := range r.column(p.place) {
			s := &r.Sheets[k]
			if s.InGap {
				continue
			}
			for _, polygon := range cells[at(p)][s.Course-1] {
				s.Pieces = append(s.Pieces, Piece{Wall: st.Wall, Polygon: polygon, Area: polygon.Area()})
			}
		}
	}
	for _, p := range parts {
		list := r.column(p.place)
		for _, k := range list {
			s := &r.Sheets[k]
			low, high, ok := known.extent(cover, p, levels[:len(list)-1], s.Course)
			if !ok || s.InGap {
				continue
			}
			if s.CutLength == 0 { // kept as lowest and highest until cutLengths
				s.Below, s.Above, s.CutLength = low, high, 1
				continue
			}
			s.Below, s.Above = min(s.Below, low), max(s.Above, high)
		}
	}
}

// column finds the sheets of a place.
func (r *Run) column(place int) []int {
	var out []int
	i, _ := slices.BinarySearchFunc(r.Sheets, place, func(s Sheet, place int) int { return cmp.Compare(s.Place, place) })
	for ; i < len(r.Sheets) && r.Sheets[i].Place == place; i++ {
		out = append(out, i)
	}
	return out
}

// cutLengths adds the trims to what the sheets cover.
func (b *builder) cutLengths(r *Run) {
	rules, level := b.room.Rules, b.room.Space.LevelLine
	match := b.match()
	for k := range r.Sheets {
		s := &r.Sheets[k]
		if s.CutLength == 0 {
			continue
		}
		top, bottom := rules.TopTrim, rules.BottomTrim
		column := r.column(s.Place)
		if k < column[len(column)-1] {
			top = match
		}
		if !s.Lowest {
			bottom = match
		}
		low, high := s.Below-bottom, s.Above+top
		s.CutLength, s.Above, s.Below = high-low, high-level, level-low
		var twice length.Area
		for _, p := range s.Pieces {
			twice += p.Twice()
		}
		s.Area = twice / 2
	}
}

// bends lists the corners and wrapped jambs that a sheet goes round, in order from its left edge.
func (r *Run) bends(s *Sheet) (bends []L, corners []string) {
	type bend struct {
		s    L
		name string
	}
	var list []bend
	add := func(at L, name string) {
		if at = r.Line.From(at, s.Left); s.Left < at && at < s.Right {
			list = append(list, bend{at, name})
		}
	}
	for _, c := range r.Line.Corners {
		if c.Wrapped {
			add(c.At, c.Name)
		}
	}
	for _, o := range r.Openings {
		if o.Wrap {
			add(o.Left, "")
			add(o.Right, "")
		}
	}
	slices.SortStableFunc(list, func(x, y bend) int { return cmp.Compare(x.s, y.s) })
	bends = []L{}
	for _, x := range list {
		bends = append(bends, r.Line.Round(x.s))
		if x.name != "" {
			corners = append(corners, x.name)
		}
	}
	return bends, corners
}

// measureCorners finds the returns at every wrapped corner.
func (b *builder) measureCorners() {
	for i := range b.plan.Runs {
		r := &b.plan.Runs[i]
		for _, c := range r.Line.Corners {
			if c.Wrapped {
				r.Corners = append(r.Corners, b.corner(r, c))
			}
		}
	}
}

// corner measures the veneer past a bend on both sides, at the floor and at the ceiling.
func (b *builder) corner(r *Run, c run.Corner) Corner {
	out := Corner{Name: c.Name, Kind: c.Kind, Angle: c.Angle, Radius: c.Radius, At: c.At, From: c.From, To: c.To, Lean: c.Lean,
		LeftWall: c.LeftWall, RightWall: c.RightWall, Skew: c.Skew}
	half := c.Half()
	for k := range r.Sheets {
		s := &r.Sheets[k]
		at := c.At
		for r.Closed && at < s.Left {
			at += r.Length
		}
		if at < s.Left || at > s.Right || !s.Lowest {
			continue
		}
		span, line := &r.Spans[s.Span], r.Line.Spans[s.Span]
		out.Sheet = s.Place
		leftBottom, rightBottom := r.footing(s)
		leftTop, rightTop := leftBottom, rightBottom
		if s.Place == span.FirstSheet && !line.Closed {
			leftTop += line.LeftEnd.Lean
		}
		if s.Place == span.LastSheet && !line.Closed {
			rightTop += line.RightEnd.Lean
		}
		out.LeftReturnBottom, out.LeftReturnTop = at-half-leftBottom, at-half+c.Lean-leftTop
		lean := b.room.Walls[c.RightWall].LeanLeft
		out.RightReturnBottom, out.RightReturnTop = rightBottom-at-half, rightTop-at-half-lean
		if at == s.Left || at == s.Right { // the nearest seam stands on the bend
			out.LeftReturnBottom, out.LeftReturnTop, out.RightReturnBottom, out.RightReturnTop = 0, 0, 0, 0
		}
		for _, l := range [4]*L{&out.LeftReturnBottom, &out.LeftReturnTop, &out.RightReturnBottom, &out.RightReturnTop} {
			*l = max(0, *l) // a seam inside the strip that the corner sweeps
		}
		out.LeftReturn = min(out.LeftReturnBottom, out.LeftReturnTop)
		out.RightReturn = min(out.RightReturnBottom, out.RightReturnTop)
		break
	}
	return out
}

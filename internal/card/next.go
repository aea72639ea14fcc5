package card

import (
	"slices"

	"flitchlay/internal/layout"
	"flitchlay/internal/run"
	"flitchlay/internal/shape"
)

// next finds what a sheet meets: along the run its neighbours by their seams, in its place those of other courses. Where the
// grain is level the run goes up and courses lie side by side.
func next(r *layout.Run, s *layout.Sheet) Next {
	var left, right, under, over Neighbour
	for i := range r.Seams {
		switch m := &r.Seams[i]; s.Place {
		case m.RightSheet:
			left = met(r, sheetAt(r, m.LeftSheet, s.Course))
			if m.LeftSheet == s.Place { // one sheet goes all round
				right = left
			}
		case m.LeftSheet:
			right = met(r, sheetAt(r, m.RightSheet, s.Course))
		}
	}
	span := &r.Spans[s.Span]
	if left == (Neighbour{}) {
		left.End = span.Ends[0]
	}
	if right == (Neighbour{}) {
		right.End = span.Ends[1]
	}
	for i := range r.Sheets {
		if t := &r.Sheets[i]; t.Place == s.Place {
			switch t.Course {
			case s.Course - 1:
				under = met(r, t)
			case s.Course + 1:
				over = met(r, t)
			}
		}
	}
	if r.Up {
		return Next{Left: under, Right: over, Under: left, Over: right}
	}
	return Next{left, right, under, over}
}

// met is what meets a sheet where the plan has another: where an opening takes that one whole it hangs nowhere, and the sheet
// meets the opening.
func met(r *layout.Run, s *layout.Sheet) Neighbour {
	if s == nil || len(s.Pieces) > 0 {
		return Neighbour{Sheet: s}
	}
	for i := range r.Openings {
		if o := &r.Openings[i]; !r.Up && r.Line.DistanceTo(s.Left+s.Width.HalfDown(), o.Left, o.Right) == 0 {
			return Neighbour{End: &run.End{Kind: string(o.Kind), Name: o.Name}}
		}
	}
	return Neighbour{End: &run.End{Kind: "gap"}}
}

// sheetAt is the sheet of a place in a course, or the nearest course that it has.
func sheetAt(r *layout.Run, place, course int) *layout.Sheet {
	var best *layout.Sheet
	away := func(s *layout.Sheet) int { return max(s.Course-course, course-s.Course) }
	for i := range r.Sheets {
		if s := &r.Sheets[i]; s.Place == place && (best == nil || away(s) < away(best)) {
			best = s
		}
	}
	return best
}

// Mirrored is the card as the sheet is seen from its back, left and right exchanged about the middle of what is kept.
func (c *Card) Mirrored() *Card {
	sum := c.Kept.Left + c.Kept.Right
	point := func(p shape.Point) shape.Point { return shape.Point{X: sum - p.X, Z: p.Z} }
	rect := func(r shape.Rect) shape.Rect {
		return shape.Rect{Left: sum - r.Right, Right: sum - r.Left, Bottom: r.Bottom, Top: r.Top}
	}
	outline := func(o shape.Outline) shape.Outline {
		out := make(shape.Outline, len(o))
		for i, p := range o {
			out[len(o)-1-i] = point(p)
		}
		return out
	}
	m := *c
	m.Back = !c.Back
	m.Raw, m.Kept, m.Zero = rect(c.Raw), rect(c.Kept), point(c.Zero)
	m.Next.Left, m.Next.Right = c.Next.Right, c.Next.Left
	m.Folds, m.Holes, m.Rakes, m.Pieces = slices.Clone(c.Folds), slices.Clone(c.Holes), slices.Clone(c.Rakes), slices.Clone(c.Pieces)
	for i := range m.Folds {
		m.Folds[i].Foot, m.Folds[i].Head = point(c.Folds[i].Foot), point(c.Folds[i].Head)
	}
	for i := range m.Holes {
		m.Holes[i].Rect = rect(c.Holes[i].Rect)
	}
	for i := range m.Rakes {
		m.Rakes[i].Points = outline(c.Rakes[i].Points)
	}
	for i := range m.Pieces {
		m.Pieces[i].Outline, m.Pieces[i].Holes = outline(c.Pieces[i].Outline), nil
		for _, o := range c.Pieces[i].Holes {
			m.Pieces[i].Holes = append(m.Pieces[i].Holes, outline(o))
		}
	}
	return &m
}

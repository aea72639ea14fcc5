package layout

import (
	"cmp"
	"slices"

	"flitchlay/internal/run"
	"flitchlay/internal/seam"
)

// addSpan turns the seams of one span into sheets and seams of the plan; the answer is the next free place.
func (b *builder) addSpan(out *Run, q *question, found seam.Layout, place int) int {
	bounds, closing := q.bounds(found)
	n := len(bounds) - 1
	v := newSight(out.Line)
	span := Span{Left: q.from.L, Right: q.from.R, Closed: q.from.Closed, Score: found.Score,
		FirstSheet: place, LastSheet: place + n - 1, LeftSeam: q.LeftSeam, RightSeam: q.RightSeam}
	if !q.from.Closed {
		span.LeftTrim, span.RightTrim = q.from.LeftEnd.Trim, q.from.RightEnd.Trim
		span.LeftEnd, span.RightEnd = q.from.LeftEnd.Words(), q.from.RightEnd.Words()
		span.Ends = [2]*run.End{&q.from.LeftEnd, &q.from.RightEnd}
	}
	if q.LeftSeam {
		span.Left = L(q.L)
		span.Right = L(q.R)
	}
	index := len(out.Spans)
	for k := 0; k < n; k++ {
		s := Sheet{Place: place + k, Course: 1, Lowest: true, Left: bounds[k], Right: bounds[k+1], Width: bounds[k+1] - bounds[k],
			Span: index, End: k == 0 || k == n-1, Hung: k < len(q.hung)}
		s.InGap = out.inGap(s.Left, s.Right)
		b.rip(&s, q, k == 0 && !closing, k == n-1 && !closing, k == 0)
		if s.InGap {
			s.Ripped, s.RipTo = "", 0 // never hung, never cut
		}
		if !s.End && q.Loses(int64(s.Width)) {
			s.Lost = b.net - s.Width
			s.Narrow = v.seen(s.Right) > b.room.Rules.ShortSeam
		}
		out.Sheets = append(out.Sheets, s)
	}
	for k := 1; k < n; k++ {
		out.Seams = append(out.Seams, b.seam(out, v, bounds[k], place+k-1, place+k, index, k <= len(q.hung)))
	}
	if closing {
		s := b.seam(out, v, bounds[0], place+n-1, place, index, len(q.hung) > 0)
		s.Closing = true
		out.Seams = append(out.Seams, s)
	}
	out.Spans = append(out.Spans, span)
	return place + n
}

// bounds are the left edge of the first sheet, every seam, and the right edge of the last one, ascending; in a closed
// span from the closing seam to itself, once round.
func (q *question) bounds(found seam.Layout) (bounds []L, closing bool) {
	if q.Closed {
		c := found.Closing
		for _, s := range found.Seams[c:] {
			bounds = append(bounds, L(s))
		}
		for _, s := range found.Seams[:c] {
			bounds = append(bounds, L(s+q.Period))
		}
		return append(bounds, L(found.Seams[c]+q.Period)), true
	}
	bounds = []L{q.left}
	for _, h := range q.hung {
		bounds = append(bounds, h.right)
	}
	if q.done {
		return bounds, q.from.Closed
	}
	for _, s := range found.Seams {
		bounds = append(bounds, L(s))
	}
	return append(bounds, L(q.R)), q.from.Closed
}

// rip says how a sheet is cut narrower before it is hung, and where its edges come to lie.
//
//	raw left edge                     raw right edge = plumb line of its seam
//	     |  o/2  seam        seam  o/2  |
//	     |<----->|<- width ->|<----->|
func (b *builder) rip(s *Sheet, q *question, rawLeft, rawRight, first bool) {
	half := b.room.Veneer.Overlap.HalfDown()
	overlap, gross := b.room.Veneer.Overlap, b.room.Veneer.GrossWidth
	left, right := s.Left-(overlap-half), s.Right+half
	if first && !rawLeft {
		left = s.Left - half // the closing seam's own line
	}
	if rawLeft {
		left = s.Left - q.from.LeftEnd.Trim
	}
	if rawRight {
		right = s.Right + q.from.RightEnd.Trim
		if !rawLeft {
			left = s.Left - half
		}
	}
	need := right - left
	if !rawLeft && !rawRight {
		need = s.Width + overlap
	}
	switch {
	case s.End && gross-need >= b.room.Rules.Snap, !s.End && q.Loses(int64(s.Width)):
		s.RipTo = need
		s.Ripped = "right"
		if first && !rawRight {
			s.Ripped = "left"
		}
	default:
		need = gross
	}
	s.RightLine = right
	s.StartLine = right - need
	if first && s.Ripped == "" {
		s.RightLine, s.StartLine = right, right-gross
	}
	if rawRight && !rawLeft && s.Ripped == "" {
		s.StartLine, s.RightLine = left, left+gross
	}
}

// inGap reports whether the stretch from a to b lies wholly in a gap behind which the grain counts on.
func (r *Run) inGap(a, b L) bool {
	for _, o := range r.Openings {
		if !o.Through {
			continue
		}
		left, right := o.Left, o.Right
		for r.Closed && left < a-r.Length {
			left, right = left+r.Length, right+r.Length
		}
		for k := 0; k < 3; k++ { // one turn before the stretch, the turn it is in, one after: sheets may stand past Length
			if left <= a && b <= right {
				return true
			}
			if !r.Closed {
				break
			}
			left, right = left+r.Length, right+r.Length
		}
	}
	return false
}

// seam describes a finished joint.
func (b *builder) seam(out *Run, v *sight, at L, left, right, span int, hung bool) Seam {
	line := out.Line
	at = line.Round(at)
	st := line.Find(at)
	s := Seam{Number: left, At: at, PlumbLine: at + b.room.Veneer.Overlap.HalfDown(), Wall: st.Wall, X: at - st.Shift,
		LeftSheet: left, RightSheet: right, Seen: v.seen(at), Span: span, Hung: hung}
	for _, o := range out.Openings {
		d := min(line.Distance(at, o.Left), line.Distance(at, o.Right))
		if s.NearestOpening == nil || d < s.NearestOpening.Distance {
			s.NearestOpening = &Near{o.Name, d}
		}
	}
	for _, c := range line.Corners {
		if !c.Wrapped {
			continue
		}
		d := line.DistanceTo(at, c.From, c.To)
		if s.NearestCorner == nil || d < s.NearestCorner.Distance {
			s.NearestCorner = &Near{c.Name, d}
		}
	}
	return s
}

func sortSeams(seams []Seam) {
	slices.SortStableFunc(seams, func(s, t Seam) int { return cmp.Compare(s.At, t.At) })
}

package layout

import (
	"slices"

	"flitchlay/internal/length"
	"flitchlay/internal/room"
	"flitchlay/internal/run"
	"flitchlay/internal/seam"
)

// How far a change may go to count as small. Common practice, no source.
const (
	nearlyTrim  = length.Inch / 2 // less of a trim: what a steady hand can do without
	nearlyKept  = length.Inch / 2 // of a trim always left: the knife needs something to bear on
	nearlyRule  = length.Inch / 2 // less of a rule: an architect may grant it, more is another design
	nearlyStock = length.Inch     // more of a sheet: sheets often come longer than ordered
	nearlyTape  = length.Inch / 8 // off a measure: as far as two readings of a tape come apart
)

// nearlySteps is the step of changes: what a tape is read to.
func nearlySteps(unit length.Unit) L {
	if unit == length.Millimetres {
		return length.Millimetre
	}
	return length.Inch / 16
}

// nudge is one figure of the room that can be a little different.
type nudge struct {
	rank  int // of equal amounts the lowest first
	most  L   // how far it may go
	words func(by L) string
	apply func(r *room.Room, by L) bool         // false where the room would not stand
	span  func(q *question, s *seam.Span, by L) // the same made on a span, where it only changes figures of it; else nil
	moves func(wall int) bool                   // whether seams of the run that holds a wall may move
}

// Which runs a change may move seams of.
func noSeams(int) bool  { return false }
func allSeams(int) bool { return true }

// moved reports whether seams of a run may move with a change.
func (c *nudge) moved(r *Run) bool {
	return slices.ContainsFunc(r.Walls, func(st Stretch) bool { return c.moves(st.Wall) })
}

// Of equal amounts comes first what is in the hands of who hangs the room, then what is only to be looked at again, then
// what has to be bought, then what others have to grant.
const (
	rankTrim = 10 * iota
	rankTape
	rankStock
	rankRule
)

// trim is a trim made smaller.
func (b *builder) trim(name string, rank int, of func(*room.Rules) *L) nudge {
	now := *of(&b.room.Rules)
	return nudge{rank: rankTrim + rank, most: max(0, min(nearlyTrim, now-nearlyKept)),
		words: func(by L) string { return "less of " + name + " (" + b.style.Words(now-by) + ")" },
		apply: func(r *room.Room, by L) bool { *of(&r.Rules) -= by; return true }}
}

// topTrim is also what a span has over at its upper end, where the grain is horizontal.
func (b *builder) topTrim() nudge {
	c := b.trim("top_trim", 0, func(r *room.Rules) *L { return &r.TopTrim })
	c.span = func(_ *question, s *seam.Span, by L) { s.TrimRight -= int64(by) }
	c.moves = func(int) bool { return b.room.Veneer.Horizontal }
	return c
}

func (b *builder) bottomTrim() nudge {
	c := b.trim("bottom_trim", 1, func(r *room.Rules) *L { return &r.BottomTrim })
	c.span = func(_ *question, s *seam.Span, by L) { s.TrimLeft -= int64(by) }
	c.moves = func(int) bool { return b.room.Veneer.Horizontal }
	return c
}

func (b *builder) edgeTrim() nudge {
	c := b.trim("edge_trim", 2, func(r *room.Rules) *L { return &r.EdgeTrim })
	c.span = func(q *question, s *seam.Span, by L) {
		trim := func(end run.End) int64 {
			if end.Frame {
				return int64((b.room.Rules.EdgeTrim - by).HalfDown())
			}
			return int64(b.room.Rules.EdgeTrim - by)
		}
		s.TrimLeft, s.TrimRight = trim(q.from.LeftEnd), trim(q.from.RightEnd)
	}
	c.moves = func(int) bool { return !b.room.Veneer.Horizontal }
	return c
}

// grants are the musts that an architect may ease; none goes under half of what it is. No preference is among them: in
// every aim preferences count after sheets and narrow sheets, so that less of one saves nothing that nearly looks for.
// Nor is least_overlap: what is left of an overlap is the knife's need, nobody's to grant.
func (b *builder) grants() []nudge {
	var out []nudge
	for i, rule := range []struct {
		name string
		of   func(*room.Rules) *L
		in   func(*seam.Span) *int64
	}{
		{"least_width", func(r *room.Rules) *L { return &r.LeastWidth }, func(s *seam.Span) *int64 { return &s.LeastWidth }},
		{"corner_return", func(r *room.Rules) *L { return &r.CornerReturn }, func(s *seam.Span) *int64 { return &s.CornerReturn }},
		{"leg", func(r *room.Rules) *L { return &r.Leg }, func(s *seam.Span) *int64 { return &s.Leg }},
		{"opening_clear", func(r *room.Rules) *L { return &r.OpeningClear }, func(s *seam.Span) *int64 { return &s.OpeningClear }},
	} {
		now := *rule.of(&b.room.Rules)
		out = append(out, nudge{rank: rankRule + i, most: min(nearlyRule, now.HalfDown()),
			words: func(by L) string {
				return "less of " + rule.name + " (" + b.style.Words(now-by) + "; for the architect to say)"
			},
			apply: func(r *room.Room, by L) bool { *rule.of(&r.Rules) -= by; return true },
			span:  func(_ *question, s *seam.Span, by L) { *rule.in(s) -= int64(by) }, moves: allSeams})
	}
	return out
}

// stock is longer sheets, while none are delivered.
func (b *builder) longerStock() nudge {
	c := nudge{rank: rankStock, moves: noSeams, words: func(by L) string {
		return "more length of the sheets (" + b.style.Words(b.room.Veneer.Length+by) + "; none is delivered yet)"
	}, apply: func(r *room.Room, by L) bool { r.Veneer.Length += by; return true }}
	if len(b.room.Flitches) == 0 {
		c.most = nearlyStock
	}
	return c
}

// lower is a wall's ceiling measured again.
func (b *builder) lower(wall int) nudge {
	name := b.room.Walls[wall].Name
	return nudge{rank: rankTape, most: nearlyTape, moves: only(wall),
		words: func(by L) string { return "less height of wall " + name + " (measure it again)" },
		apply: func(r *room.Room, by L) bool {
			w := alone(r, wall)
			w.Ceiling = slices.Clone(w.Ceiling)
			for i := range w.Ceiling {
				w.Ceiling[i].Z -= by
			}
			return true
		}}
}

// longer is a wall's length measured again, shorter is the same the other way.
func (b *builder) longer(wall int) nudge {
	c := b.shorter(wall)
	less := c.apply
	name := b.room.Walls[wall].Name
	c.rank, c.words = rankTape+2, func(by L) string { return "more length of wall " + name + " (measure it again)" }
	c.apply = func(r *room.Room, by L) bool { return less(r, -by) }
	return c
}

// shorter leaves every object of the wall as far from its left end as it is. A wall with one at its right end does not
// change: both would have been measured wrong.
func (b *builder) shorter(wall int) nudge {
	name := b.room.Walls[wall].Name
	return nudge{rank: rankTape + 1, most: nearlyTape, moves: only(wall),
		words: func(by L) string { return "less length of wall " + name + " (measure it again)" },
		apply: func(r *room.Room, by L) bool {
			w := alone(r, wall)
			was := w.Length
			w.Length -= by
			last := L(0)
			for i := range w.Openings {
				last = max(last, w.Openings[i].Right())
			}
			for i := range w.Boxes {
				last = max(last, w.Boxes[i].X+w.Boxes[i].PlateWidth)
			}
			for _, s := range w.Bare {
				last = max(last, s.To)
			}
			w.KeepClear = slices.Clone(w.KeepClear)
			for i := range w.KeepClear {
				if w.KeepClear[i].To == was {
					w.KeepClear[i].To = w.Length
				}
				last = max(last, w.KeepClear[i].From+1)
			}
			for _, p := range w.Pins {
				last = max(last, p.X)
			}
			for _, profile := range [2]*[]room.Point{&w.Floor, &w.Ceiling} {
				*profile = slices.Clone(*profile)
				for i := range *profile {
					p := &(*profile)[i]
					if p.X == was {
						p.X = w.Length
					} else {
						last = max(last, p.X)
					}
				}
			}
			return last < min(was, w.Length)
		}}
}

// only is true of one wall.
func only(wall int) func(int) bool { return func(other int) bool { return other == wall } }

// alone makes a wall of a copied room one of its own, so that it can be changed.
func alone(r *room.Room, wall int) *room.Wall {
	r.Walls = slices.Clone(r.Walls)
	return &r.Walls[wall]
}

// changed is a copy of the room with a change made.
func (b *builder) changed(c *nudge, by L) (*room.Room, bool) {
	r := *b.room
	ok := c.apply(&r, by)
	return &r, ok
}

// asks puts the spans of a run of a changed room to words the solver knows, nil where they are other ones.
func (b *builder) asks(r *room.Room, i int) []*question {
	lines, err := run.Unroll(r)
	if err != nil || len(lines) != len(b.plan.Runs) {
		return nil
	}
	t := builder{room: r, aim: b.aim, style: b.style, net: b.net, plan: &Plan{Room: r}, trial: true}
	if asked := t.questions(lines[i]); len(asked) == len(b.asked[i]) {
		return asked
	}
	return nil
}

// turns finds the steps from 1 to n at which something is another than a step before, by halving: what is equal at both
// ends of a stretch is equal all through it, as it only ever gets better. tell hears of each, with what is from there on.
func turns[S comparable](n int, at func(step int) S, tell func(step int, then S)) {
	var part func(low, high int, first, last S)
	part = func(low, high int, first, last S) {
		switch {
		case first == last:
		case high == low+1:
			tell(high, last)
		default:
			mid := (low + high) / 2
			now := at(mid)
			part(low, mid, first, now)
			part(mid, high, now, last)
		}
	}
	if n > 0 {
		part(0, n, at(0), at(n))
	}
}

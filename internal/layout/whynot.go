package layout

import (
	"cmp"
	"slices"
	"strings"

	"flitchlay/internal/finding"
	"flitchlay/internal/seam"
)

// demand is one thing the room asks of a span, which can be left out to see whether the rest can be met.
type demand struct {
	name  string
	leave func(*seam.Span)
	s     L   // where it stands, for the order in the message
	wall  int // -1: everywhere
}

// judgeMusts says, where a must is broken, which rules cannot all be met: a set from which none can be left out.
func (b *builder) judgeMusts(i int) {
	r := &b.plan.Runs[i]
	for k, q := range b.asked[i] {
		if score := r.Spans[k].Score; q.done || score.Bends+score.Edges == 0 {
			continue
		}
		kept := b.conflict(q)
		if len(kept) == 0 {
			continue
		}
		var names []string
		for _, d := range kept {
			names = append(names, d.name)
		}
		wall := q.line.Find(L(q.L)).Wall
		for j := range r.Seams {
			if s := &r.Seams[j]; s.Span == k && !s.Hung && len(b.near(q, s.At)) > 0 {
				wall = s.Wall
				break
			}
		}
		b.say(finding.CannotMeet, finding.Finding{Place: b.wallPlace(wall), Wall: wall}, finding.Slots{
			"where": b.where(kept, q), "rules": strings.Join(names, "; "), "mend": b.mends(q, kept)})
	}
}

// where names the walls that a conflict stands on.
func (b *builder) where(kept []demand, q *question) string {
	var walls []string
	for _, d := range kept {
		if d.wall < 0 {
			continue
		}
		name := b.room.Walls[d.wall].Name
		if !slices.Contains(walls, name) {
			walls = append(walls, name)
		}
	}
	if len(walls) == 0 {
		return "run " + q.line.Name
	}
	if len(walls) == 1 {
		return "wall " + walls[0]
	}
	return "walls " + strings.Join(walls, ", ")
}

// demands lists what the room asks of a span, in order of s.
func (b *builder) demands(q *question) []demand {
	rules := b.room.Rules
	out := []demand{{name: "no sheet under " + b.style.Words(rules.LeastWidth) + " (least_width)", s: far, wall: -1,
		leave: func(s *seam.Span) { s.LeastWidth = 0 }}}
	for k, c := range q.corners {
		strip := q.Corners[k]
		out = append(out, demand{"returns of " + b.style.Words(rules.CornerReturn) + " at corner " + c.Name, func(s *seam.Span) {
			s.Corners = slices.DeleteFunc(slices.Clone(s.Corners), func(x seam.Strip) bool { return x == strip })
		}, c.At, c.LeftWall})
	}
	k := 0
	for _, st := range q.line.Walls {
		w := &b.room.Walls[st.Wall]
		for i := range w.Openings {
			o := q.Openings[k]
			k++
			text := "legs of " + b.style.Words(rules.Leg) + " and seams " + b.style.Words(rules.OpeningClear) + " inside at "
			if o.Wrap {
				text = "returns of " + b.style.Words(rules.CornerReturn) + " and jambs of " + b.style.Words(L(o.Reveal)) + " at "
			}
			out = append(out, demand{text + b.openingWords(st.Wall, i), func(s *seam.Span) {
				s.Openings = slices.DeleteFunc(slices.Clone(s.Openings), func(x seam.Opening) bool { return x == o })
			}, L(o.A), st.Wall})
		}
		for _, keep := range w.KeepClear {
			strip := seam.Strip{From: int64(st.Shift + keep.From), To: int64(st.Shift + keep.To)}
			out = append(out, demand{"no seam from " + b.style.Words(keep.From) + " to " + b.style.Words(keep.To) + " on wall " + w.Name,
				func(s *seam.Span) {
					s.Keep = slices.DeleteFunc(slices.Clone(s.Keep), func(x seam.Strip) bool { return x == strip })
				}, L(strip.From), st.Wall})
		}
	}
	return out
}

// conflict finds a set of demands that cannot all be met and from which none can be left out, by leaving out ever
// smaller parts of the list while the rest still collides.
func (b *builder) conflict(q *question) []demand {
	all := b.demands(q)
	kept := slices.Clone(all)
	collide := func(list []demand) bool {
		free := q.Span
		free.Pins = nil
		for _, d := range all {
			if !slices.ContainsFunc(list, func(kept demand) bool { return kept.name == d.name }) {
				d.leave(&free)
			}
		}
		met, err := seam.Meets(free)
		return err == nil && !met
	}
	// 1. Halves of the list are left out first: a conflict is mostly of few demands, and large parts go at once. 2. Smaller and
	// smaller parts after that, 3. single demands last: only then it is known that none can be left out.
	for size := (len(kept) + 1) / 2; size >= 1; size /= 2 {
		for at := 0; at < len(kept); {
			end := min(at+size, len(kept))
			less := slices.Delete(slices.Clone(kept), at, end)
			if collide(less) {
				kept = less
				continue
			}
			at = end
		}
	}
	slices.SortStableFunc(kept, func(x, y demand) int { return cmp.Compare(x.s, y.s) })
	return kept
}

package recheck

import (
	"flitchlay/internal/room"
)

// pair is a seam and one thing it must or should stand off: what the sums of the score count, and what a finding names.
type pair struct {
	sum          string // the sum its shortfall goes into: bends or edges
	must, should string // codes of the finding where the must is broken, and where only the preference is
	d            int64
	need, prefer int64
	what         string // that the finding's message names
}

// preference counts as 0 where it is less than its must.
func preference(prefer, must room.L) int64 {
	if prefer < must {
		return 0
	}
	return int64(prefer)
}

// pairs lists everything that a seam at s must or should stand off.
func (l *line) pairs(s int64) []pair {
	rules := l.room.Rules
	var out []pair
	bend := func(d int64, what string) pair {
		return pair{"bends", "return-short", "return-close", d, int64(rules.CornerReturn), preference(rules.PreferReturn, rules.CornerReturn), what}
	}
	for _, c := range l.corners {
		if round := int64(l.room.Walls[c.wall].Radius); c.wrapped && (round == 0 || round < int64(rules.CurveRadius)) {
			out = append(out, bend(l.wayTo(s, c.from, c.to), c.name))
		}
	}
	clear := preference(rules.PreferClear, rules.OpeningClear)
	for _, o := range l.openings {
		sides := [2]int64{l.way(s, o.left), l.way(s, o.right)}
		near := min(sides[0], sides[1])
		inside := l.inside(s, o.left, o.right)
		switch {
		case !inside && o.WrapReveal:
			out = append(out, bend(near, o.Name))
		case !inside:
			out = append(out, pair{"edges", "leg-thin", "leg-close", near, int64(rules.Leg), preference(rules.PreferLeg, rules.Leg), o.Name})
		case o.gap && near > 0: // behind the gap nobody sees it
		default:
			for _, d := range sides {
				switch {
				case !o.WrapReveal:
					out = append(out, pair{"edges", "clear-short", "clear-close", d, int64(rules.OpeningClear), clear, o.Name})
				case d == 0: // on the jamb it stands on the pier's side, and on the opening's
					out = append(out, bend(0, o.Name), pair{"bends", "clear-short", "clear-close", 0, int64(rules.OpeningClear), clear, o.Name})
				default:
					out = append(out, pair{"bends", "reveal-short", "clear-close", d, int64(o.Reveal + rules.OpeningClear), preference(o.Reveal+rules.PreferClear, o.Reveal+rules.OpeningClear), o.Name})
				}
			}
		}
	}
	for _, st := range l.walls {
		w := l.wall(st)
		for i := range w.Boxes {
			b := &w.Boxes[i]
			from := st.shift + int64(b.X) - int64(b.PlateWidth)>>1
			out = append(out, pair{should: "plate-close", d: l.wayTo(s, from, from+int64(b.PlateWidth)), prefer: int64(rules.BoxClear), what: b.Name})
		}
		for _, k := range w.KeepClear {
			from, to := st.shift+int64(k.From), st.shift+int64(k.To)
			if d := min(l.way(s, from), l.way(s, to)); l.inside(s, from, to) && d > 0 {
				// the way out of it is what it lacks, and what the finding measures
				out = append(out, pair{sum: "edges", must: "kept-clear", d: d, need: 2 * d, what: w.Name})
			}
		}
	}
	return out
}

// lacks is what d lacks of need.
func lacks(need, d int64) int64 { return max(0, need-d) }

// main reports whether a place is on a main wall; on a corner the wall that begins there counts.
func (l *line) main(s int64) bool { return l.wall(l.at(s)).Main }

// at is the wall of a place: the one that begins there, the last one at a run's end.
func (l *line) at(s int64) stretch {
	s = l.round(s)
	for i := len(l.walls) - 1; i > 0; i-- {
		if s >= l.walls[i].left {
			return l.walls[i]
		}
	}
	return l.walls[0]
}

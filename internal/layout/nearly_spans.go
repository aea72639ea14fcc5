package layout

import (
	"slices"

	"flitchlay/internal/finding"
	"flitchlay/internal/length"
	"flitchlay/internal/seam"
)

// standing is how a span stands in what nearly looks for; where a must is broken, in nothing else.
type standing struct {
	broken       bool
	shown        int64 // feet of closing seam
	main, narrow int64 // 0 under the aim even, which narrows every sheet on purpose
	sheets       int64
	dropped      int
}

func stands(score seam.Score, dropped int, aim seam.Aim) standing {
	if score.Bends+score.Edges > 0 {
		return standing{broken: true}
	}
	s := standing{shown: score.Closing, main: score.NarrowMain, narrow: score.Narrow, sheets: score.Sheets, dropped: dropped}
	if aim == seam.Even {
		s.main, s.narrow = 0, 0
	}
	return s
}

// wants is what a span that stands otherwise has saved.
func (now standing) wants(then standing, run int) []thing {
	var out []thing
	if now.broken && !then.broken {
		return []thing{{savesMust, run}}
	}
	if then.main < now.main {
		out = append(out, thing{savesNarrow, run})
	}
	if then.sheets < now.sheets {
		out = append(out, thing{savesSheet, run})
	}
	return out
}

// could is how many things a span could save at most.
func (now standing) could() int {
	if now.main > 0 {
		return 2
	}
	return 1
}

// spans looks for changes that make a span do with a sheet less, without a narrow sheet on a main wall, or without a broken
// must.
func (s *search) spans() {
	for i := range s.plan.Runs {
		for k, q := range s.asked[i] {
			score := s.plan.Runs[i].Spans[k].Score
			now := stands(score, len(q.found.Dropped), s.aim)
			loose := now.broken || now.main > 0 || score.Sheets > leastSheets(q.Span)
			s.tapes(i, k, now)
			if loose || leastSheets(s.untrimmed(q)) < score.Sheets {
				s.eased(i, k, now, loose)
			}
		}
	}
}

// leastSheets is how few sheets can cover a span, whatever the rules say.
func leastSheets(s seam.Span) int64 {
	net := s.NetWidth()
	if s.Closed {
		return int64(length.CeilDiv(L(s.Period), L(net)))
	}
	long := s.R - s.L
	if long <= s.Gross-s.TrimLeft-s.TrimRight {
		return 1
	}
	rest := long - s.EndWidth(s.TrimLeft) - s.EndWidth(s.TrimRight)
	return 2 + int64(length.CeilDiv(L(max(0, rest)), L(net)))
}

// covers is how much so many sheets cover at most.
func covers(s seam.Span, sheets int64) int64 {
	switch {
	case s.Closed:
		return sheets * s.NetWidth()
	case sheets == 1:
		return s.Gross - s.TrimLeft - s.TrimRight
	}
	return s.EndWidth(s.TrimLeft) + s.EndWidth(s.TrimRight) + (sheets-2)*s.NetWidth()
}

// untrimmed is a span with its trims as small as they may be made, all of them at once.
func (s *search) untrimmed(q *question) seam.Span {
	out := q.Span
	if !q.Closed {
		for _, trim := range s.sideways(q) {
			trim.span(q, &out, trim.most)
		}
	}
	return out
}

// sideways are the trims at the ends of a span.
func (s *search) sideways(q *question) []nudge {
	if q.line.Up {
		return []nudge{s.topTrim(), s.bottomTrim()}
	}
	return []nudge{s.edgeTrim()}
}

// eased tries smaller trims and musts on a span: first all of them at once as small as they may be, which is no worse than
// any one of them, then each.
func (s *search) eased(i, k int, now standing, loose bool) {
	q := s.asked[i][k]
	all := s.untrimmed(q)
	var list []nudge
	if !q.Closed {
		list = s.sideways(q)
	}
	if loose {
		for _, c := range s.grants() {
			c.span(q, &all, c.most)
			list = append(list, c)
		}
	}
	if s.solved(q, all, now) == now {
		return
	}
	wall := q.line.Find(L(q.L)).Wall
	if bad := s.troubled(i, now); (now.broken || now.main > 0) && len(bad) > 0 {
		wall = bad[0]
	}
	most := int(max(nearlyTrim, nearlyRule) / s.step)
	for _, c := range list {
		at := func(step int) standing {
			if step == 0 {
				return now
			}
			return s.with(&c, L(step), i, k, now)
		}
		turns(min(most, s.steps(&c)), at, func(step int, then standing) {
			if s.spent > nearlySolve/2 {
				return // not all that was asked was answered
			}
			want := now.wants(then, i)
			s.hope(c, L(step), wall, want...)
			if len(want) == now.could() {
				most = min(most, step) // what takes more than that is of no use
			}
		})
	}
}

// with is how a span stands with a change made; as it stands now where it is no longer the same span.
func (s *search) with(c *nudge, steps L, i, k int, now standing) standing {
	q := s.asked[i][k]
	if c.span != nil {
		span := q.Span
		c.span(q, &span, steps*s.step)
		return s.solved(q, span, now)
	}
	if r, ok := s.changed(c, steps*s.step); ok {
		if asked := s.asks(r, i); asked != nil {
			return s.solved(asked[k], asked[k].Span, now)
		}
	}
	return now
}

// solved is how a span stands when it is solved again. What now breaks a must is only asked whether it still does. Past
// the bound on what all this may cost, half of which is left for trials, everything is as it is.
func (s *search) solved(q *question, span seam.Span, now standing) standing {
	if s.spent += int(leastSheets(span)); s.spent > nearlySolve/2 {
		return now
	}
	if now.broken {
		return standing{broken: !meets(span)}
	}
	found, err := s.layer.try(q, span, s.aim)
	if err != nil {
		return now
	}
	return stands(found.Score, len(found.Dropped), s.aim)
}

// tapes tries walls of a span measured again: the longest where the span is just over what a sheet less would cover, and the
// walls on which a must is broken or a narrow sheet ends, longer and shorter.
func (s *search) tapes(i, k int, now standing) {
	q := s.asked[i][k]
	long := q.from.R - q.from.L
	if q.Closed {
		long = L(q.Period)
	}
	if sheets := s.plan.Runs[i].Spans[k].Score.Sheets; sheets > 1 && !now.broken {
		if excess := long - L(covers(q.Span, sheets-1)); excess > 0 {
			wall := s.longest(q)
			c := s.shorter(wall)
			if q.line.Up {
				c = s.lower(wall)
			}
			s.hope(c, s.over(excess), wall, thing{savesSheet, i})
		}
	}
	if q.line.Up || !now.broken && now.main == 0 {
		return
	}
	for _, wall := range s.troubled(i, now) {
		for _, c := range []nudge{s.shorter(wall), s.longer(wall)} {
			for step := 1; step <= s.steps(&c); step++ {
				if want := now.wants(s.with(&c, L(step), i, k, now), i); len(want) > 0 {
					s.hope(c, L(step), wall, want...)
					break
				}
			}
		}
	}
}

// longest is the longest wall of a span: where a tape errs most.
func (s *search) longest(q *question) int {
	best := q.line.Find(q.from.L).Wall
	for _, st := range q.line.Walls {
		for turn := L(0); turn <= q.line.Length; turn += q.line.Length {
			in := min(q.from.R, st.Right+turn) > max(q.from.L, st.Left+turn)
			if (in || q.Closed) && s.room.Walls[st.Wall].Length > s.room.Walls[best].Length {
				best = st.Wall
			}
		}
	}
	return best
}

// troubled are the walls of a run that have what could be saved, in order.
func (s *search) troubled(i int, now standing) []int {
	var out []int
	for _, f := range s.plan.Findings {
		bad := slices.Contains(ofSeams, f.Code)
		if !now.broken {
			bad = f.Code == finding.NarrowSheet && f.Wall >= 0 && s.room.Walls[f.Wall].Main
		}
		if !bad || f.Wall < 0 || slices.Contains(out, f.Wall) {
			continue
		}
		if _, ok := s.plan.Runs[i].Line.Of(f.Wall); ok {
			out = append(out, f.Wall)
		}
	}
	return out
}

// meets reports whether a span breaks no must.
func meets(s seam.Span) bool {
	ok, err := seam.Meets(s)
	return err == nil && ok
}

package pages

import (
	"strconv"

	"flitchlay/internal/layout"
	"flitchlay/internal/length"
)

// termination is one way in which the covering ends.
type termination struct {
	mark  string // T1, T2, ...
	kind  string // base, head, jamb, inside corner, outside edge, casing, frame, trim, free, bare, ...
	words string
}

// terminations lists how the covering of the whole room ends: at the base, at the head, at openings, and at every kind
// of raw end, in the order in which they come.
func terminations(p *layout.Plan) []termination {
	var list []termination
	add := func(kind string) {
		for _, t := range list {
			if t.kind == kind {
				return
			}
		}
		list = append(list, termination{"T" + strconv.Itoa(len(list)+1), kind, endWords(p, kind)})
	}
	add("base")
	add("head")
	for i := range p.Runs {
		if len(p.Runs[i].Openings) > 0 {
			add("jamb")
		}
	}
	for i := range p.Runs {
		r := &p.Runs[i]
		if r.Up {
			add("side")
			continue
		}
		for _, s := range r.Line.Spans {
			if s.Closed {
				continue
			}
			add(endKind(s.LeftEnd.Kind))
			add(endKind(s.RightEnd.Kind))
		}
	}
	return list
}

// endKind is the kind of termination at a raw end.
func endKind(kind string) string {
	switch kind {
	case "opening":
		return "jamb"
	case "":
		return "free"
	}
	return kind
}

// endWords says what happens at a termination.
func endWords(p *layout.Plan, kind string) string {
	switch kind {
	case "base":
		return "base"
	case "head":
		return "head"
	case "jamb":
		return "opening"
	case "side":
		return "side of a wall"
	case "bare":
		return "bare strip"
	case "free":
		return "free end"
	}
	return kind
}

// endMark is the mark of a termination, "" where the room has none of the kind.
func (s *set) endMark(kind string) string {
	for _, t := range s.ends {
		if t.kind == kind {
			return t.mark
		}
	}
	return ""
}

// rawEnd is a raw end of the covering on a wall.
type rawEnd struct {
	x     L
	right bool // the covering ends to its right
	kind  string
	words string
	trim  L
}

// rawEnds are the raw ends on a wall, from left to right.
func (f *face) rawEnds() []rawEnd {
	if f.run.Up {
		return nil
	}
	var list []rawEnd
	for _, s := range f.run.Line.Spans {
		if s.Closed {
			continue
		}
		if s.LeftEnd.Wall == f.wall {
			if x, ok := f.on(s.L); ok {
				list = append(list, rawEnd{x: x, kind: endKind(s.LeftEnd.Kind), words: s.LeftEnd.Words(), trim: s.LeftEnd.Trim})
			}
		}
		if s.RightEnd.Wall == f.wall {
			if x, ok := f.on(s.R); ok {
				list = append(list, rawEnd{x: x, right: true, kind: endKind(s.RightEnd.Kind), words: s.RightEnd.Words(), trim: s.RightEnd.Trim})
			}
		}
	}
	return list
}

// on gives the x of a place of the run on this wall; false where the place is on another one. A leaning end may lie a
// little outside.
func (f *face) on(s L) (L, bool) {
	const play = length.Foot
	for turn := -f.run.Length; turn <= f.run.Length; turn += max(f.run.Length, 1) {
		x := s + turn - f.st.Shift
		if x >= f.left-play && x <= f.right+play {
			return x, true
		}
	}
	return 0, false
}

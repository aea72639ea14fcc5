package face

import (
	"strconv"

	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/room"
	"flitchlay/internal/run"
)

// Termination is one way in which the covering ends.
type Termination struct {
	Mark  string // T1, T2, ...
	Kind  string // base, head, jamb, reveal, inside corner, outside edge, casing, frame, trim, free, bare, ...
	Words string
}

// Terminations lists how the covering of the whole room ends: at the base, at the head, at openings, and at every kind
// of raw end, in the order in which they come.
func Terminations(p *layout.Plan) []Termination {
	var list []Termination
	add := func(kind string) {
		for _, t := range list {
			if t.Kind == kind {
				return
			}
		}
		list = append(list, Termination{"T" + strconv.Itoa(len(list)+1), kind, endWords(p, kind)})
	}
	add("base")
	add("head")
	for i := range p.Runs {
		for j := range p.Runs[i].Openings {
			if wraps(&p.Runs[i], &p.Runs[i].Openings[j]) {
				add("reveal")
			} else {
				add("jamb")
			}
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
			add(EndKind(s.LeftEnd.Kind))
			add(EndKind(s.RightEnd.Kind))
		}
	}
	return list
}

// wraps reports whether the covering goes on into the reveal of an opening.
func wraps(r *layout.Run, o *layout.Opening) bool { return o.Wrap && !r.Up && (!o.Gap || o.Through) }

// Wraps reports whether the covering goes on into the reveal of an opening of the wall.
func (f *Face) Wraps(index int) bool {
	for i := range f.Run.Openings {
		if o := &f.Run.Openings[i]; o.Wall == f.Wall && o.Index == index {
			return wraps(f.Run, o)
		}
	}
	return false
}

// EndKind is the kind of termination at a raw end.
func EndKind(kind string) string {
	switch kind {
	case "opening", "casing": // one drawing, one mark
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
		return "casing or jamb"
	case "reveal":
		return "wrapped jamb"
	case "side":
		return "side of a wall"
	case "bare":
		return "bare strip"
	case "free":
		return "free end"
	}
	return kind
}

// RawEnd is a raw end of the covering on a wall.
type RawEnd struct {
	X     L
	Right bool // the covering ends to its right
	Kind  string
	Words string
	trim  L
}

// RawEnds are the raw ends on a wall, from left to right.
func (f *Face) RawEnds() []RawEnd {
	if f.Run.Up {
		return nil
	}
	var list []RawEnd
	for _, s := range f.Run.Line.Spans {
		if s.Closed {
			continue
		}
		if s.LeftEnd.Wall == f.Wall {
			if x, ok := f.on(s.L); ok {
				list = append(list, RawEnd{X: x, Kind: EndKind(s.LeftEnd.Kind), Words: s.LeftEnd.Words(), trim: s.LeftEnd.Trim})
			}
		}
		if s.RightEnd.Wall == f.Wall {
			if x, ok := f.on(s.R); ok {
				list = append(list, RawEnd{X: x, Right: true, Kind: EndKind(s.RightEnd.Kind), Words: s.RightEnd.Words(), trim: s.RightEnd.Trim})
			}
		}
	}
	return list
}

// EndAt is how the covering ends at an end of the wall, nil where it goes on there or has no raw end.
func (f *Face) EndAt(right bool) *run.End {
	for i := range f.Run.Line.Spans {
		s := &f.Run.Line.Spans[i]
		switch {
		case s.Closed:
		case right && s.RightEnd.Wall == f.Wall && f.W.Corner != room.Straight && f.near(s.R, f.Right, f.W.LeanRight):
			return &s.RightEnd
		case !right && s.LeftEnd.Wall == f.Wall && f.near(s.L, f.Left, f.W.LeanLeft):
			return &s.LeftEnd
		}
	}
	return nil
}

// near reports whether a place of the run is at an end of the wall, wherever it leans to.
func (f *Face) near(s, end, lean L) bool {
	x := s - f.St.Shift
	if n := f.Run.Length; f.Run.Closed && n > 0 {
		for x > end+n/2 {
			x -= n
		}
		for x < end-n/2 {
			x += n
		}
	}
	return x >= end-lean.Abs() && x <= end+lean.Abs()
}

// on gives the x of a place of the run on this wall; false where the place is on another one. A leaning end may lie a
// little outside.
func (f *Face) on(s L) (L, bool) {
	const play = length.Foot
	turns := []L{0}
	if f.Run.Closed {
		turns = []L{-f.Run.Length, 0, f.Run.Length}
	}
	for _, turn := range turns {
		x := s + turn - f.St.Shift
		if x >= f.Left-play && x <= f.Right+play {
			return x, true
		}
	}
	return 0, false
}

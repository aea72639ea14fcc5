package run

import (
	"cmp"
	"fmt"
	"slices"

	"flitchlay/internal/length"
	"flitchlay/internal/room"
)

// hole is a stretch of the run without covering: a gap, a bare strip, or a cut corner, which has no width.
type hole struct {
	from, to     L    // at floor level
	before       End  // what the covering at its left ends against
	after        End  // what the covering at its right ends against
	leanB, leanA L    // how the raw edges lean
	startsHere   bool // close_at names this corner
}

// cut finds the spans of the run, and unwraps the corners that stand at a raw end or at a gap's edge.
func (line *Run) cut() error {
	holes, strips := line.holes()
	for i := range line.Corners {
		c := &line.Corners[i]
		for _, strip := range strips {
			if line.DistanceTo(c.At, strip[0], strip[1]) == 0 {
				c.Wrapped = false // beside an eased corner a strip's edge can stand past its middle
			}
		}
	}
	holes = merged(holes)
	if line.Closed {
		line.cutRound(holes)
	} else {
		line.cutOpen(holes)
	}
	return line.checkSpans()
}

// holes lists the stretches without covering in order of s, and the strips in which and at whose edges no corner can be
// wrapped.
func (line *Run) holes() (holes []hole, strips [][2]L) {
	r := line.Room
	full := r.Rules.EdgeTrim
	for _, st := range line.Walls {
		w := &r.Walls[st.Wall]
		for i := range w.Openings {
			o := &w.Openings[i]
			if !w.FullHeight(o) {
				continue
			}
			a, b := st.Shift+o.FromLeft, st.Shift+o.Right()
			strips = append(strips, [2]L{a, b})
			if o.Grain == "through" {
				continue
			}
			end := End{Kind: "opening", Name: o.Name, Wall: st.Wall, Trim: full}
			holes = append(holes, hole{from: a, to: b, before: end, after: end})
		}
		for _, bare := range w.Bare {
			a, b := st.Shift+bare.From, st.Shift+bare.To
			strips = append(strips, [2]L{a, b})
			end := End{Kind: "bare", Name: bare.Why, Wall: st.Wall, Trim: full}
			holes = append(holes, hole{from: a, to: b, before: end, after: end})
		}
	}
	for _, c := range line.Corners {
		if c.Wrapped {
			continue
		}
		left, right := &r.Walls[c.LeftWall], &r.Walls[c.RightWall]
		holes = append(holes, hole{from: c.At, to: c.At,
			before: line.end(left.RightEnd, c.Kind, c.Name, c.LeftWall),
			after:  line.end(right.LeftEnd, c.Kind, c.Name, c.RightWall),
			leanB:  left.LeanRight, leanA: right.LeanLeft,
			startsHere: r.Space.CloseAt != nil && r.Space.CloseAt.Corner == c.LeftWall})
	}
	// of holes that begin at one place a cut corner comes first: the covering before it ends against the corner
	slices.SortStableFunc(holes, func(a, b hole) int { return cmp.Or(cmp.Compare(a.from, b.from), cmp.Compare(a.to, b.to)) })
	return holes, strips
}

// end tells what a raw end meets: what the room file says, else what the corner there is.
func (line *Run) end(given string, kind room.Bend, name string, wall int) End {
	e := End{Kind: given, Name: name, Wall: wall, Trim: EdgeTrim(line.Room, given), Frame: given == frame}
	if given == "" {
		switch kind {
		case room.Inside:
			e.Kind = "inside corner"
		case room.Outside:
			e.Kind = "outside edge"
		}
	}
	return e
}

// frame is the word of the room file for an end that a frame covers.
const frame = "frame"

// EdgeTrim is the trim at a raw end by what the room file says of it: half, rounded down, against a frame.
func EdgeTrim(r *room.Room, given string) L {
	if given == frame {
		return r.Rules.EdgeTrim.HalfDown()
	}
	return r.Rules.EdgeTrim
}

// merged joins holes that touch or overlap.
func merged(holes []hole) []hole {
	var out []hole
	for _, h := range holes {
		if n := len(out); n > 0 && h.from <= out[n-1].to {
			last := &out[n-1]
			last.startsHere = last.startsHere || h.startsHere
			if h.to >= last.to {
				last.to, last.after, last.leanA = h.to, h.after, h.leanA
			}
			continue
		}
		out = append(out, h)
	}
	return out
}

// cutOpen takes the holes out of an open run.
func (line *Run) cutOpen(holes []hole) {
	r := line.Room
	first, last := line.Walls[0].Wall, line.Walls[len(line.Walls)-1].Wall
	holes = append([]hole{{after: line.runEnd(first, false), leanA: r.Walls[first].LeanLeft}}, holes...)
	holes = append(holes, hole{from: line.Length, to: line.Length, before: line.runEnd(last, true), leanB: r.Walls[last].LeanRight})
	holes = merged(holes)
	for i := 0; i+1 < len(holes); i++ {
		line.span(holes[i], holes[i+1], 0)
	}
}

// runEnd is what the run's own end meets. Next to a bare wall it is the corner between the two.
func (line *Run) runEnd(wall int, right bool) End {
	r := line.Room
	n := len(r.Walls)
	given, neighbour, corner := r.Walls[wall].LeftEnd, (wall+n-1)%n, (wall+n-1)%n
	if right {
		given, neighbour, corner = r.Walls[wall].RightEnd, (wall+1)%n, wall
	}
	kind := r.Walls[corner].Corner
	across := wall == 0 && !right || wall == n-1 && right
	if across && !r.Space.Closed || neighbour == wall {
		kind = room.None
	}
	name := ""
	if kind == room.Inside || kind == room.Outside {
		name = fmt.Sprintf("C%d", corner+1)
	}
	return line.end(given, kind, name, wall)
}

// cutRound takes the holes out of a closed run.
func (line *Run) cutRound(holes []hole) {
	n := len(holes)
	if n == 0 {
		line.Spans = []Span{{L: 0, R: line.Length, Closed: true}}
		return
	}
	if last := &holes[n-1]; n > 1 && last.to >= holes[0].from+line.Length {
		last.to, last.after, last.leanA = holes[0].to+line.Length, holes[0].after, holes[0].leanA
		last.startsHere = last.startsHere || holes[0].startsHere
		holes = holes[1:]
		n--
	}
	first := 0
	for i := range holes {
		next, turn := holes[(i+1)%n], L(0)
		if i == n-1 {
			turn = line.Length
		}
		before := len(line.Spans)
		line.span(holes[i], next, turn)
		if holes[i].startsHere && len(line.Spans) > before {
			first = before
		}
	}
	for i := range line.Spans {
		if s := &line.Spans[i]; s.L >= line.Length {
			s.L, s.R = s.L-line.Length, s.R-line.Length
		}
	}
	if first == 0 {
		slices.SortStableFunc(line.Spans, func(s, t Span) int { return cmp.Compare(s.L, t.L) })
		return
	}
	line.Spans = slices.Concat(line.Spans[first:], line.Spans[:first])
}

// span adds the covering from one hole to the next, which stands turn further round.
func (line *Run) span(a, b hole, turn L) {
	s := Span{L: a.to + min(0, a.leanA), R: b.from + turn + max(0, b.leanB), LeftEnd: a.after, RightEnd: b.before}
	s.LeftEnd.Lean, s.RightEnd.Lean = a.leanA, b.leanB
	if b.from+turn <= a.to {
		return
	}
	line.Spans = append(line.Spans, s)
}

// checkSpans finds the mistakes of the room file that only spans show.
func (line *Run) checkSpans() error {
	r := line.Room
	style := length.StyleOf(r.Project.Units)
	for _, s := range line.Spans {
		if s.Closed {
			continue
		}
		w := &r.Walls[s.LeftEnd.Wall]
		if s.R-s.L < r.Rules.Snap {
			left, snap := style.Apart(s.R-s.L, r.Rules.Snap)
			return r.Mistake(w.At, fmt.Sprintf("only %s of covering is left beside %s on wall %q, less than one snap (%s)",
				left, s.LeftEnd.Words(), w.Name, snap),
				"end the gap or the bare strip at the wall's end, or leave room for a sheet")
		}
		for _, end := range [2]End{s.LeftEnd, s.RightEnd} {
			e := r.Veneer.GrossWidth - r.Veneer.Overlap.HalfDown() - end.Trim
			if e < r.Rules.LeastWidth {
				most, least := style.Apart(e, r.Rules.LeastWidth)
				return r.Mistake(w.At, fmt.Sprintf("a sheet that ends against %s covers at most %s, less than least_width (%s)",
					end.Words(), most, least),
					"give a smaller least_width or edge_trim")
			}
		}
	}
	return nil
}

// Words names what a raw end meets, inside a sentence.
func (e End) Words() string {
	switch {
	case e.Kind == "opening":
		return "opening " + e.Name
	case e.Kind == "bare" && e.Name != "":
		return "the bare strip (" + e.Name + ")"
	case e.Kind == "bare":
		return "the bare strip"
	case e.Kind == "":
		return "the end of the run"
	case e.Kind == "free":
		return "a free end"
	case e.Name != "":
		return e.Kind + " " + e.Name
	}
	return "the " + e.Kind
}

package run

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"flitchlay/internal/length"
	"flitchlay/internal/room"
)

// Unroll joins the covered walls of a room into runs and cuts them into spans.
//
// Errors: mistakes of the room file that need spans to be seen.
func Unroll(r *room.Room) ([]*Run, error) {
	if r.Veneer.Horizontal {
		return upright(r)
	}
	var runs []*Run
	for i, chain := range chains(r) {
		line := &Run{Name: strconv.Itoa(i + 1), Room: r, Closed: chain.closed}
		line.lay(chain.walls)
		line.bend()
		if err := line.cut(); err != nil {
			return nil, err
		}
		runs = append(runs, line)
	}
	return runs, nil
}

// chain is a row of walls that are covered without a break.
type chain struct {
	walls  []int
	closed bool
}

// chains parts the walls at bare ones and at corners "none". The chain with the first covered wall comes first.
func chains(r *room.Room) []chain {
	n := len(r.Walls)
	joined := func(i int) bool { // wall i goes on into the next one
		j := (i + 1) % n
		if j == 0 && !r.Space.Closed {
			return false
		}
		return r.Walls[i].Cover && r.Walls[j].Cover && r.Walls[i].Corner != room.None
	}
	start := 0
	for start < n && joined((start+n-1)%n) {
		start++
	}
	if start == n { // all joined: closed
		all := make([]int, n)
		for i := range all {
			all[i] = i
		}
		return []chain{{all, true}}
	}
	var out []chain
	var row []int
	for k := 0; k < n; k++ {
		i := (start + k) % n
		if !r.Walls[i].Cover {
			continue
		}
		row = append(row, i)
		if !joined(i) || k == n-1 {
			out = append(out, chain{walls: row})
			row = nil
		}
	}
	first := slices.IndexFunc(r.Walls, func(w room.Wall) bool { return w.Cover })
	where := slices.IndexFunc(out, func(c chain) bool { return slices.Contains(c.walls, first) })
	if where < 0 {
		return nil // no wall is covered
	}
	return slices.Concat(out[where:], out[:where])
}

// arc is how a corner's easing changes the run: half its arc, and its tangent length, each rounded once.
func arc(w *room.Wall) (half, tangent L) {
	if w.Radius == 0 || w.Corner != room.Inside && w.Corner != room.Outside {
		return 0, 0
	}
	turn := w.Angle * math.Pi / 180
	half = L(math.Round(float64(w.Radius) * turn / 2))
	tangent = L(math.Round(float64(w.Radius) * math.Tan(turn/2)))
	return half, tangent
}

// lay puts the walls one behind the other.
//
//	   x = 0 of the next wall, where the faces would meet sharp
//	------+          the walls meet in the middle of the arc;
//	    '. |          s of x = left + half - tangent + x
//	      \|
//	       |
func (line *Run) lay(walls []int) {
	s := L(0)
	for k, i := range walls {
		w := &line.Room.Walls[i]
		var half, tangent, nextHalf, nextTangent L
		if k > 0 {
			half, tangent = arc(&line.Room.Walls[walls[k-1]])
		} else if line.Closed {
			half, tangent = arc(&line.Room.Walls[walls[len(walls)-1]])
		}
		if k < len(walls)-1 || line.Closed {
			nextHalf, nextTangent = arc(w)
		}
		shift := s + half - tangent
		right := shift + w.Length - nextTangent + nextHalf
		line.Walls = append(line.Walls, Stretch{Wall: i, Left: s, Right: right, Shift: shift})
		s = right
	}
	line.Length = s
}

// bend lists the corners between the walls of the run, in order of s.
func (line *Run) bend() {
	n := len(line.Walls)
	for k, st := range line.Walls {
		next := line.Walls[(k+1)%n]
		if k == n-1 && !line.Closed {
			break
		}
		w, v := &line.Room.Walls[st.Wall], &line.Room.Walls[next.Wall]
		if w.Corner == room.Straight || w.Corner == room.None {
			continue
		}
		half, _ := arc(w)
		c := Corner{
			Name: "C" + strconv.Itoa(st.Wall+1), Kind: w.Corner, Angle: w.Angle, Radius: w.Radius,
			At: st.Right, Lean: w.LeanRight, Skew: w.LeanRight - v.LeanLeft,
			LeftWall: st.Wall, RightWall: next.Wall, Wrapped: w.Wrap,
			Curve: w.Radius > 0 && w.Radius >= line.Room.Rules.CurveRadius,
		}
		if k == n-1 {
			c.At = 0
		}
		c.From, c.To = c.At-half+min(0, c.Lean), c.At+half+max(0, c.Lean)
		if k == n-1 {
			line.Corners = append([]Corner{c}, line.Corners...)
		} else {
			line.Corners = append(line.Corners, c)
		}
	}
}

// Find tells which wall of the run s is on: a place on a corner belongs to the wall that begins there. Places past the
// ends belong to the first and the last wall; in a closed run s is taken round.
func (line *Run) Find(s L) Stretch {
	s = line.Round(s)
	for _, st := range line.Walls {
		if s < st.Right {
			return st
		}
	}
	return line.Walls[len(line.Walls)-1]
}

// Round takes s round into 0 <= s < Length in a closed run.
func (line *Run) Round(s L) L {
	if !line.Closed {
		return s
	}
	s %= line.Length
	if s < 0 {
		s += line.Length
	}
	return s
}

// From takes s on round a closed run until it is no longer left of a place; in an open run it stays.
func (line *Run) From(s, place L) L {
	for line.Closed && s < place {
		s += line.Length
	}
	return s
}

// Of finds the stretch of a wall, false where the wall is not in this run.
func (line *Run) Of(wall int) (Stretch, bool) {
	for _, st := range line.Walls {
		if st.Wall == wall {
			return st, true
		}
	}
	return Stretch{}, false
}

// Distance is the way between two places, in a closed run the shorter way round.
func (line *Run) Distance(a, b L) L {
	d := (a - b).Abs()
	if line.Closed {
		d %= line.Length
		d = min(d, line.Length-d)
	}
	return d
}

// DistanceTo is the way from s to a strip, 0 inside it.
func (line *Run) DistanceTo(s, from, to L) L {
	if line.Closed {
		if line.Round(s-from) <= to-from {
			return 0
		}
	} else if from <= s && s <= to {
		return 0
	}
	return min(line.Distance(s, from), line.Distance(s, to))
}

// upright makes each covered wall a run of its own with s going up.
func upright(r *room.Room) ([]*Run, error) {
	var runs []*Run
	for i := range r.Walls {
		w := &r.Walls[i]
		if !w.Cover {
			continue
		}
		low, high := extremes(w)
		line := &Run{Name: strconv.Itoa(len(runs) + 1), Room: r, Up: true, Length: high}
		line.Walls = []Stretch{{Wall: i, Left: 0, Right: high}}
		line.Spans = []Span{{L: low, R: high,
			LeftEnd:  End{Kind: "floor", Wall: i, Trim: r.Rules.BottomTrim},
			RightEnd: End{Kind: "ceiling", Wall: i, Trim: r.Rules.TopTrim}}}
		if err := line.checkSpans(); err != nil {
			return nil, err
		}
		runs = append(runs, line)
	}
	return runs, nil
}

// extremes are the lowest and the highest place of a wall's covering.
func extremes(w *room.Wall) (low, high length.Length) {
	byHeight := func(p, q room.Point) int { return cmp.Compare(p.Z, q.Z) }
	return slices.MinFunc(w.CoverFloor(), byHeight).Z, slices.MaxFunc(w.CoverCeiling(), byHeight).Z
}

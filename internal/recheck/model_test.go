package recheck

import (
	"fmt"
	"math"
	"sort"

	"flitchlay/internal/room"
)

// line is a run, unrolled a second time.
type line struct {
	room     *room.Room
	closed   bool
	length   int64
	walls    []stretch
	corners  []bend
	openings []hole
	spans    []span
}

// stretch is a wall in a run: from left to right, its x = 0 at s = shift.
type stretch struct {
	wall               int
	left, right, shift int64
}

// bend is a corner of a run: the strip from..to that it sweeps, half of it the easing on either side.
type bend struct {
	name           string
	kind           string
	angle          float64
	at, from, to   int64
	half           int64
	lean, leanNext int64
	wall, next     int
	wrapped        bool
}

// hole is an opening in a run.
type hole struct {
	*room.Opening
	wall        int
	left, right int64
	sill, head  int64
	gap         bool
	through     bool
}

// span is a stretch in which the grain goes on. Its ends lean where an upright edge ends it.
type span struct {
	left, right         int64
	closed              bool
	leftWall, rightWall int
	leftLean, rightLean int64
	leftTrim, rightTrim int64
}

// lines unrolls a room: walls that follow each other until one is bare, or a corner is none, or an open room ends.
func lines(r *room.Room) []*line {
	n := len(r.Walls)
	goesOn := func(i int) bool {
		j := (i + 1) % n
		return r.Walls[i].Cover && r.Walls[j].Cover && r.Walls[i].Corner != room.None && (j != 0 || r.Space.Closed)
	}
	whole := true
	for i := range r.Walls {
		whole = whole && goesOn(i)
	}
	var out []*line
	if whole {
		l := &line{room: r, closed: true}
		for i := range r.Walls {
			l.walls = append(l.walls, stretch{wall: i})
		}
		out = append(out, l)
	} else {
		for i := range r.Walls {
			if !r.Walls[i].Cover || goesOn((i+n-1)%n) {
				continue // bare, or not the first of its run
			}
			l := &line{room: r, walls: []stretch{{wall: i}}}
			for k := i; goesOn(k); k = (k + 1) % n {
				l.walls = append(l.walls, stretch{wall: (k + 1) % n})
			}
			out = append(out, l)
		}
		// the run that holds the first covered wall comes first, the others follow as one goes round
		first := 0
		for !r.Walls[first].Cover {
			first++
		}
		for !out[0].holds(first) {
			out = append(out[1:], out[0])
		}
	}
	for _, l := range out {
		l.measure()
		l.bends()
		l.holes()
		l.cut()
	}
	return out
}

func (l *line) holds(wall int) bool {
	for _, st := range l.walls {
		if st.wall == wall {
			return true
		}
	}
	return false
}

func (l *line) wall(st stretch) *room.Wall { return &l.room.Walls[st.wall] }

// easing is half the arc of an eased corner and the length of its tangent, each rounded once.
func easing(w *room.Wall) (half, tangent int64) {
	if w.Radius == 0 || w.Corner != room.Inside && w.Corner != room.Outside {
		return 0, 0
	}
	a := w.Angle / 180 * math.Pi
	return int64(math.Round(float64(w.Radius) * a / 2)), int64(math.Round(float64(w.Radius) * math.Tan(a/2)))
}

// measure gives every wall its place in the run.
func (l *line) measure() {
	at := int64(0)
	n := len(l.walls)
	for i := range l.walls {
		st := &l.walls[i]
		var arc0, tan0, arc1, tan1 int64
		if i > 0 || l.closed {
			arc0, tan0 = easing(l.wall(l.walls[(i+n-1)%n]))
		}
		if i < n-1 || l.closed {
			arc1, tan1 = easing(l.wall(*st))
		}
		st.left, st.shift = at, at+arc0-tan0
		at = st.shift + int64(l.wall(*st).Length) - tan1 + arc1
		st.right = at
	}
	l.length = at
}

// bends lists the corners between the walls.
func (l *line) bends() {
	n := len(l.walls)
	for i, st := range l.walls {
		if i == n-1 && !l.closed {
			break
		}
		w, next := l.wall(st), l.walls[(i+1)%n]
		if w.Corner != room.Inside && w.Corner != room.Outside {
			continue
		}
		half, _ := easing(w)
		lean := int64(w.LeanRight)
		b := bend{name: fmt.Sprintf("C%d", st.wall+1), kind: w.Corner.String(), angle: w.Angle, at: l.round(st.right), half: half,
			lean: lean, leanNext: int64(l.wall(next).LeanLeft), wall: st.wall, next: next.wall, wrapped: w.Wrap}
		b.from, b.to = b.at-half+min(0, lean), b.at+half+max(0, lean)
		l.corners = append(l.corners, b)
	}
	sort.Slice(l.corners, func(i, j int) bool { return l.corners[i].at < l.corners[j].at })
}

// holes lists the openings and finds which are full-height gaps. A corner in a gap or a bare strip, or
// on its edge, is not wrapped.
func (l *line) holes() {
	for _, st := range l.walls {
		w := l.wall(st)
		for i := range w.Openings {
			o := &w.Openings[i]
			h := hole{Opening: o, wall: st.wall, left: st.shift + int64(o.FromLeft), right: st.shift + int64(o.FromLeft+o.Width),
				sill: int64(o.Sill), head: int64(o.Head)}
			if !o.SillGiven {
				h.sill = round(height(w.Floor, int64(o.FromLeft), 0))
			}
			h.gap = full(w, o)
			h.through = h.gap && o.Grain == "through"
			l.openings = append(l.openings, h)
			if h.gap {
				l.unwrap(h.left, h.right)
			}
		}
		for _, b := range w.Bare {
			l.unwrap(st.shift+int64(b.From), st.shift+int64(b.To))
		}
	}
	sort.SliceStable(l.openings, func(i, j int) bool { return l.openings[i].left < l.openings[j].left })
}

// unwrap takes corners out that stand in a stretch without covering, or on its edge: there is nothing to go round them.
func (l *line) unwrap(from, to int64) {
	for i := range l.corners {
		if l.inside(l.corners[i].at, from, to) {
			l.corners[i].wrapped = false
		}
	}
}

// full reports whether an opening leaves no covering over or under it anywhere in its width.
func full(w *room.Wall, o *room.Opening) bool {
	a, b := int64(o.FromLeft), int64(o.FromLeft+o.Width)
	floor, ceiling := 0.0, 0.0
	if !w.Behind.Base {
		floor = float64(w.Base)
	}
	if !w.Behind.Crown {
		ceiling = float64(w.Crown)
	}
	stops := []int64{a, b}
	for _, p := range append(append([]room.Point{}, w.Floor...), w.Ceiling...) {
		if x := int64(p.X); a < x && x < b {
			stops = append(stops, x)
		}
	}
	for _, x := range stops {
		for side := -1; side <= 1; side += 2 {
			if x == a && side < 0 || x == b && side > 0 {
				continue
			}
			low, _ := height(w.Floor, x, side).Float64()
			high, _ := height(w.Ceiling, x, side).Float64()
			if o.SillGiven && float64(o.Sill) > low+floor || float64(o.Head) < high-ceiling {
				return false
			}
		}
	}
	return true
}

// round takes a place round a closed run: 0 <= s < length.
func (l *line) round(s int64) int64 {
	if l.closed {
		s = ((s % l.length) + l.length) % l.length
	}
	return s
}

// way is the distance of two places, in a closed run the shorter way round.
func (l *line) way(a, b int64) int64 {
	if l.closed {
		d := l.round(a - b)
		return min(d, l.length-d)
	}
	return max(a-b, b-a)
}

// inside reports whether a place lies on a strip, its ends included.
func (l *line) inside(s, from, to int64) bool {
	if l.closed {
		return l.round(s-from) <= to-from
	}
	return from <= s && s <= to
}

// wayTo is the distance to a strip, 0 on it.
func (l *line) wayTo(s, from, to int64) int64 {
	if l.inside(s, from, to) {
		return 0
	}
	return min(l.way(s, from), l.way(s, to))
}

// gapOrCut is a stretch without covering; a cut corner has no width.
type gapOrCut struct {
	from, to      int64
	before, after int // wall on which the covering ends, and on which it begins again
	leanB, leanA  int64
	trimB, trimA  int64
	first         bool // the room's covering is to begin here
}

// trim is the edge trim at a raw end: half of it, rounded down, against a frame.
func trim(r *room.Room, end string) int64 {
	if end == "frame" {
		return int64(r.Rules.EdgeTrim) >> 1
	}
	return int64(r.Rules.EdgeTrim)
}

// cut parts the run into spans.
func (l *line) cut() {
	r := l.room
	var cuts []gapOrCut
	for _, o := range l.openings {
		if o.gap && !o.through {
			t := int64(r.Rules.EdgeTrim)
			cuts = append(cuts, gapOrCut{from: o.left, to: o.right, before: o.wall, after: o.wall, trimB: t, trimA: t})
		}
	}
	for _, st := range l.walls {
		for _, b := range l.wall(st).Bare {
			t := int64(r.Rules.EdgeTrim)
			cuts = append(cuts, gapOrCut{from: st.shift + int64(b.From), to: st.shift + int64(b.To), before: st.wall, after: st.wall, trimB: t, trimA: t})
		}
	}
	for _, c := range l.corners {
		w := &r.Walls[c.wall]
		if w.Wrap {
			continue
		}
		next := &r.Walls[c.next]
		cuts = append(cuts, gapOrCut{from: c.at, to: c.at, before: c.wall, after: c.next, leanB: c.lean, leanA: c.leanNext,
			trimB: trim(r, w.RightEnd), trimA: trim(r, next.LeftEnd), first: r.Space.CloseAt != nil && r.Space.CloseAt.Corner == c.wall})
	}
	if !l.closed {
		a, b := l.walls[0], l.walls[len(l.walls)-1]
		cuts = append(cuts, gapOrCut{from: 0, to: 0, after: a.wall, leanA: int64(l.wall(a).LeanLeft), trimA: trim(r, l.wall(a).LeftEnd)})
		cuts = append(cuts, gapOrCut{from: l.length, to: l.length, before: b.wall, leanB: int64(l.wall(b).LeanRight), trimB: trim(r, l.wall(b).RightEnd)})
	}
	if len(cuts) == 0 {
		l.spans = []span{{right: l.length, closed: true}}
		return
	}
	// of two that begin at one place the corner comes first: the covering before it ends on its leaning edge
	sort.SliceStable(cuts, func(i, j int) bool {
		a, b := cuts[i], cuts[j]
		return a.from < b.from || a.from == b.from && a.to < b.to
	})
	cuts = joined(cuts)
	if last := len(cuts) - 1; l.closed && last > 0 && cuts[last].to == cuts[0].from+l.length {
		cuts[0].from, cuts[0].before, cuts[0].leanB, cuts[0].trimB = cuts[last].from-l.length, cuts[last].before, cuts[last].leanB, cuts[last].trimB
		cuts[0].first = cuts[0].first || cuts[last].first
		cuts = cuts[:last]
	}
	start := 0
	for i, c := range cuts {
		next := gapOrCut{}
		switch {
		case i+1 < len(cuts):
			next = cuts[i+1]
		case l.closed:
			next = cuts[0]
			next.from += l.length
		default:
			continue
		}
		if next.from == c.to {
			continue
		}
		if c.first {
			start = len(l.spans)
		}
		l.spans = append(l.spans, span{left: c.to + min(0, c.leanA), right: next.from + max(0, next.leanB), leftWall: c.after, rightWall: next.before,
			leftLean: c.leanA, rightLean: next.leanB, leftTrim: c.trimA, rightTrim: next.trimB})
	}
	l.spans = append(append([]span{}, l.spans[start:]...), l.spans[:start]...)
}

// joined joins stretches that touch.
func joined(cuts []gapOrCut) []gapOrCut {
	var out []gapOrCut
	for _, c := range cuts {
		n := len(out) - 1
		if n < 0 || c.from > out[n].to {
			out = append(out, c)
			continue
		}
		out[n].first = out[n].first || c.first
		if c.to >= out[n].to {
			out[n].to, out[n].after, out[n].leanA, out[n].trimA = c.to, c.after, c.leanA, c.trimA
		}
	}
	return out
}

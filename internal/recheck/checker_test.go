package recheck

import (
	"fmt"
	"math"
	"math/big"
	"slices"
	"sort"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/room"
)

// checker holds a printed layout to the room.
type checker struct {
	t     testing.TB
	room  *room.Room
	p     *printed
	net   int64 // W
	place int   // the last place
	lines []*line
	want  []string // findings about seams and sheets that are due, one line each
	net2  *big.Rat // pieces less holes, in squares of 1/8 micrometre
	gross *big.Rat
	laps  *big.Rat // overlaps as far as they show
	ends  *big.Rat // length of the covering along its runs
}

// check computes everything again that a printed layout of a room holds.
func check(t testing.TB, text string) *printed {
	r, err := room.Decode("room.toml", []byte(text))
	require.NoError(t, err)
	p, status := lay(t, text)
	require.LessOrEqual(t, status, 1)
	c := &checker{t: t, room: r, p: p, lines: lines(r), net2: new(big.Rat), gross: new(big.Rat), laps: new(big.Rat), ends: new(big.Rat)}
	c.net = int64(r.Veneer.GrossWidth-r.Veneer.Overlap) / int64(r.Rules.Snap) * int64(r.Rules.Snap)
	c.head(status)
	require.Len(t, p.Runs, len(c.lines))
	for i := range p.Runs {
		c.run(&p.Runs[i], c.lines[i])
	}
	c.registers()
	c.findings()
	c.totals()
	return p
}

func (c *checker) is(want int64, got num, what string, args ...any) {
	c.t.Helper()
	assert.Equal(c.t, want, units(c.t, got), fmt.Sprintf(what, args...))
}

// near allows one unit where a point is rounded.
func (c *checker) near(want *big.Rat, got num, level bool, what string, args ...any) {
	c.t.Helper()
	diff := new(big.Rat).Sub(want, big.NewRat(units(c.t, got), 1))
	limit := big.NewRat(0, 1)
	if !level {
		limit = big.NewRat(1, 1)
	}
	if diff.Abs(diff).Cmp(limit) > 0 {
		assert.Fail(c.t, "a length", "%s: %s 1/8 µm, printed %s mm", fmt.Sprintf(what, args...), want.FloatString(2), got)
	}
}

// head is what stands before the runs, and the exit status.
func (c *checker) head(status int) {
	assert.Equal(c.t, "flitchlay-layout/1", c.p.Format)
	assert.Equal(c.t, "mm", c.p.Unit)
	assert.Equal(c.t, c.room.Rules.Aim, c.p.Aim)
	assert.Equal(c.t, c.room.Project.Title, c.p.Title)
	must := slices.ContainsFunc(c.p.Findings, func(f printedFinding) bool { return f.Level == "must" })
	assert.Equal(c.t, must, status == 1, "status 1 for a must finding")
}

func (c *checker) run(p *printedRun, l *line) {
	name := func(i int) string { return c.room.Walls[i].Name }
	assert.Equal(c.t, "along", p.Axis)
	assert.Equal(c.t, l.closed, p.Closed)
	c.is(l.length, p.Length, "length of run %s", p.Name)
	require.Len(c.t, p.Walls, len(l.walls))
	for i, st := range l.walls {
		assert.Equal(c.t, name(st.wall), p.Walls[i].Name)
		c.is(st.left, p.Walls[i].Left, "left of wall %s", name(st.wall))
		c.is(st.right, p.Walls[i].Right, "right of wall %s", name(st.wall))
	}
	require.Len(c.t, p.Openings, len(l.openings))
	for i, o := range l.openings {
		q := p.Openings[i]
		assert.Equal(c.t, []string{o.Name, name(o.wall), string(o.Kind)}, []string{q.Name, q.Wall, q.Kind})
		c.is(o.left, q.Left, "left of %s", o.Name)
		c.is(o.right, q.Right, "right of %s", o.Name)
		c.is(o.sill, q.Sill, "sill of %s", o.Name)
		c.is(o.head, q.Head, "head of %s", o.Name)
	}
	c.seams(p, l)
	c.sheets(p, l)
	c.corners(p, l)
}

// seams recomputes all that follows from where a seam stands.
func (c *checker) seams(p *printedRun, l *line) {
	half := int64(c.room.Veneer.Overlap) >> 1
	last := int64(math.MinInt64)
	for i, s := range p.Seams {
		at := units(c.t, s.At)
		assert.Greater(c.t, at, last, "seams ascend")
		last = at
		st := l.at(at)
		c.is(at+half, s.PlumbLine, "plumb line of seam %d", i)
		assert.Equal(c.t, c.room.Walls[st.wall].Name, s.Wall)
		c.is(at-st.shift, s.FromWallLeft, "seam %d from its wall's left end", i)
		c.near(l.seen(at), s.Seen, l.level(), "seen height of the seam at %s", s.At)
		c.nearest(s, l, at)
		c.laps.Add(c.laps, new(big.Rat).Mul(big.NewRat(units(c.t, s.Seen), 1), big.NewRat(int64(c.room.Veneer.Overlap), 1)))
	}
}

// nearest recomputes what a seam is nearest to.
func (c *checker) nearest(s printedSeam, l *line, at int64) {
	openings, corners := map[string]int64{}, map[string]int64{}
	for _, o := range l.openings {
		openings[o.Name] = min(l.way(at, o.left), l.way(at, o.right))
	}
	for _, b := range l.corners {
		if b.wrapped {
			corners[b.name] = l.wayTo(at, b.from, b.to)
		}
	}
	for _, pair := range []struct {
		all map[string]int64
		got *printedNear
	}{{openings, s.NearestOpening}, {corners, s.NearestCorner}} {
		if len(pair.all) == 0 {
			assert.Nil(c.t, pair.got)
			continue
		}
		require.NotNil(c.t, pair.got, "seam at %s", s.At)
		least := int64(math.MaxInt64)
		for _, d := range pair.all {
			least = min(least, d)
		}
		c.is(least, pair.got.Distance, "distance of the seam at %s from %s", s.At, pair.got.Name)
		d, ok := pair.all[pair.got.Name]
		assert.True(c.t, ok && d == least, "the seam at %s is nearest to %s", s.At, pair.got.Name)
	}
}

// hangs are the sheets of a run that hang already: the left edge of the first, and the seams at their right.
func (c *checker) hangs(l *line) (from *int64, seams []int64) {
	for _, h := range c.room.Hung {
		for _, st := range l.walls {
			if st.wall != h.Wall {
				continue
			}
			if h.Left != nil && from == nil {
				s := l.round(st.shift + int64(*h.Left))
				from = &s
			}
			seams = append(seams, st.shift+int64(h.Seam))
		}
	}
	return from, seams
}

// sheets recomputes sheets, and the spans that they fill.
func (c *checker) sheets(p *printedRun, l *line) {
	from, hung := c.hangs(l)
	var at []int64
	closing := int64(-1)
	for _, s := range p.Seams {
		at = append(at, units(c.t, s.At))
		if s.Closing {
			assert.Negative(c.t, closing, "one closing seam")
			closing = units(c.t, s.At)
		}
	}
	require.Len(c.t, p.Spans, len(l.spans))
	assert.Equal(c.t, len(l.spans) == 1 && l.spans[0].closed, closing >= 0, "a closed span has a closing seam, no other has")
	next := 0 // sheet
	for i, sp := range l.spans {
		edges := []int64{sp.left}
		rest := at
		if sp.closed {
			edges = []int64{closing}
			if from != nil {
				assert.Equal(c.t, *from, closing, "the covering closes on the first hung sheet")
			}
			sp.left, sp.right = closing, closing+l.length
		}
		for _, s := range rest {
			for l.closed && s < sp.left {
				s += l.length
			}
			if sp.left < s && s < sp.right {
				edges = append(edges, s)
			}
		}
		slices.Sort(edges)
		edges = append(edges, sp.right)
		first := c.place + 1
		for k := 0; k+1 < len(edges); k++ {
			c.place++
			var courses []int
			for next < len(p.Sheets) && p.Sheets[next].Place == c.place {
				courses = append(courses, p.Sheets[next].Course)
				next++
			}
			require.NotEmpty(c.t, courses, "a sheet at place %d", c.place)
			assert.True(c.t, slices.IsSorted(courses), "courses of place %d from its foot up", c.place)
			for n := next - len(courses); n < next; n++ {
				c.sheet(p, l, &p.Sheets[n], sp, edges, k, len(hung), courses)
			}
		}
		c.places(p, l, edges, first, sp.closed)
		c.score(p, l, i, sp, edges, hung, first)
		c.plays(p, l, sp, edges, len(hung), first)
		c.ends.Add(c.ends, big.NewRat(sp.right-sp.left, 1))
	}
	assert.Equal(c.t, len(p.Sheets), next, "no sheet outside the spans")
}

// places holds the seams to the sheets at their sides.
func (c *checker) places(p *printedRun, l *line, edges []int64, first int, closed bool) {
	n := len(edges) - 1
	for k, e := range edges {
		if !closed && (k == 0 || k == n) || k == n {
			continue
		}
		left, right := first+k-1, first+k
		if k == 0 {
			left = first + n - 1
		}
		found := false
		for _, s := range p.Seams {
			if units(c.t, s.At) == l.round(e) {
				found = true
				assert.Equal(c.t, []int{left, right}, []int{s.LeftSheet, s.RightSheet}, "the sheets beside the seam at %s", s.At)
			}
		}
		assert.True(c.t, found)
	}
}

// sheet recomputes one sheet of one course.
func (c *checker) sheet(p *printedRun, l *line, s *printedSheet, sp span, edges []int64, k, hung int, courses []int) {
	n := len(edges) - 1
	from, to := edges[k], edges[k+1]
	what := fmt.Sprintf("sheet at place %d: ", s.Place)
	c.edge(l, from, s.Left, what+"left")
	c.edge(l, to, s.Right, what+"right")
	c.is(to-from, s.Width, "%swidth", what)
	snap, gross, overlap := int64(c.room.Rules.Snap), int64(c.room.Veneer.GrossWidth), int64(c.room.Veneer.Overlap)
	inner := k > 0 && k < n-1
	under := inner && to-from <= c.net-snap
	seen := new(big.Rat)
	if inner {
		seen = l.seen(l.round(to))
	}
	assert.Equal(c.t, under && seen.Cmp(big.NewRat(int64(c.room.Rules.ShortSeam), 1)) > 0, s.Narrow, what+"narrow")
	// an end sheet is ripped where a snap or more of its gross width is left over
	need := to - from + overlap
	if !sp.closed {
		half := overlap >> 1
		switch {
		case n == 1:
			need = to - from + sp.leftTrim + sp.rightTrim
		case k == 0:
			need = to - from + half + sp.leftTrim
		case k == n-1:
			need = to - from + half + sp.rightTrim
		}
	}
	if k >= hung {
		want := []string{""}
		switch {
		case len(s.Pieces) == 0: // goes back to stock as it is; cutOf holds the lack of pieces against the covering
		case !inner && gross-need < snap, inner && !under:
		case n == 1:
			want = []string{"left", "right"}
		case k == 0:
			want = []string{"left"}
		default:
			want = []string{"right"}
		}
		got := ""
		if s.Ripped != nil {
			got = *s.Ripped
			if c.room.Veneer.Horizontal {
				got = map[string]string{"lower": "left", "upper": "right"}[got]
			}
		}
		assert.Contains(c.t, want, got, what+"ripped")
	}
	c.bendsOf(l, s, from, to, what)
	r := reach{from: from, to: to}
	if !sp.closed { // past its foot a raw end lies on no other wall
		r = reach{max(from, sp.left-min(0, sp.leftLean)), min(to, sp.right-max(0, sp.rightLean)), k == 0, k == n-1}
	}
	c.cutOf(l, s, r, courses, what)
}

// edge compares a place of a sheet's edge: in a closed run it may be told as it is taken round.
func (c *checker) edge(l *line, want int64, got num, what string) {
	g := units(c.t, got)
	if l.closed && g != want {
		assert.Equal(c.t, l.round(want), l.round(g), what)
		assert.True(c.t, 0 <= g && g <= l.length, what+" within the run")
		return
	}
	assert.Equal(c.t, want, g, what)
}

// bendsOf recomputes the bends that a sheet goes round.
func (c *checker) bendsOf(l *line, s *printedSheet, from, to int64, what string) {
	var want []int64
	add := func(at int64) {
		for l.closed && at < from {
			at += l.length
		}
		if from < at && at < to {
			want = append(want, at)
		}
	}
	for _, b := range l.corners {
		if b.wrapped {
			add(b.at)
		}
	}
	for _, o := range l.openings {
		if o.WrapReveal {
			add(o.left)
			add(o.right)
		}
	}
	slices.Sort(want)
	require.Len(c.t, s.Bends, len(want), what+"bends")
	for i, b := range want {
		c.is(l.round(b), s.Bends[i], "%sbend %d", what, i)
	}
}

// inGap reports whether a stretch lies wholly in a gap behind which the grain counts on.
func (l *line) inGap(from, to int64) bool {
	for _, o := range l.openings {
		if o.through && l.inside(from, o.left, o.right) && l.inside(to, o.left, o.right) && to-from <= o.right-o.left {
			return true
		}
	}
	return false
}

// reach is what a sheet covers along its run: from s to s, and whether it ends there raw, with no sheet past it.
type reach struct {
	from, to          int64
	rawLeft, rawRight bool
}

// parts finds what of a wall a sheet covers: x to x, far off where a raw edge follows the wall's own end. The edges are
// plumb: where the wall's end leans past one, the rest of the wall is beyond it.
func (l *line) parts(st stretch, r reach) [][2]float64 {
	const far = 1e5
	w := l.wall(st)
	lean := int64(max(w.LeanLeft.Abs(), w.LeanRight.Abs()))
	var out [][2]float64
	for turn := -l.length; turn <= l.length; turn += l.length {
		left, right := st.left+turn, st.right+turn
		switch {
		case !l.closed && turn != 0:
			continue
		case r.to <= left-lean || r.from >= right+lean: // other walls are between
			continue
		case r.rawLeft && right <= r.from || r.rawRight && left >= r.to: // it ends where the wall begins
			continue
		}
		x := [2]float64{mm(r.from - turn - st.shift), mm(r.to - turn - st.shift)}
		if r.rawLeft && r.from == left {
			x[0] = -far
		}
		if r.rawRight && r.to == right {
			x[1] = far
		}
		out = append(out, x)
	}
	return out
}

// cutOf recomputes cut length, the parts above and below the level line, the area, and holds the pieces to the covering.
func (c *checker) cutOf(l *line, s *printedSheet, r reach, courses []int, what string) {
	gap := l.inGap(r.from, r.to)
	foot, head, top, bottom := c.course(l, s.Course, courses)
	low, high := math.Inf(1), math.Inf(-1)
	sum := new(big.Rat)
	pieces := map[string][]printedPiece{}
	for _, p := range s.Pieces {
		pieces[p.Wall] = append(pieces[p.Wall], p)
		sum.Add(sum, c.piece(p, what))
	}
	c.net2.Add(c.net2, sum)
	assert.Equal(c.t, squareMetres(sum), s.Area.String(), what+"area")
	for _, st := range l.walls {
		w := l.wall(st)
		ring := outline(w, st)
		whole, wholeLow, wholeHigh := 0.0, math.Inf(1), math.Inf(-1)
		for _, x := range l.parts(st, r) {
			part := between(ring, x, foot, head)
			whole += area(part) - holes(w, part)
			a, b := extent(strip(part, x[0], x[1], 1e-7))
			wholeLow, wholeHigh = min(wholeLow, a), max(wholeHigh, b)
		}
		if gap {
			whole = 0
		}
		low, high = min(low, wholeLow), max(high, wholeHigh)
		printed := 0.0
		for _, p := range pieces[w.Name] {
			a, err := p.Area.Float64()
			require.NoError(c.t, err)
			printed += a
			c.within(p, st, l.parts(st, r), what)
		}
		// points are rounded to 1/8 µm, areas to 1 mm2: over the height of a wall that stays under 2 mm2
		assert.InDelta(c.t, whole, printed*1e6, 2, what+"covering on wall %s", w.Name)
		delete(pieces, w.Name)
	}
	assert.Empty(c.t, pieces, what+"pieces on walls of the run only")
	c.gross.Add(c.gross, new(big.Rat).Mul(big.NewRat(units(c.t, s.CutLength), 1), big.NewRat(int64(c.room.Veneer.GrossWidth), 1)))
	if gap || math.IsInf(low, 0) {
		assert.Empty(c.t, s.Pieces)
	}
	if len(s.Pieces) == 0 { // openings take all of it
		c.is(0, s.CutLength, "%scut length", what)
		return
	}
	level := mm(int64(c.room.Space.LevelLine))
	assert.Equal(c.t, units(c.t, s.CutLength), units(c.t, s.Above)+units(c.t, s.Below), what+"above and below make the cut length")
	const hair = 1.01 / 8000 // the point is rounded to 1/8 µm, where a leaning edge meets a slope both of them
	for _, v := range []struct {
		want float64
		got  num
		what string
		hair float64
	}{{high - level + top, s.Above, "above", hair}, {level - low + bottom, s.Below, "below", hair}, {high - low + top + bottom, s.CutLength, "cut length", 2 * hair}} {
		assert.InDelta(c.t, v.want, mm(units(c.t, v.got)), v.hair, what+v.what)
	}
}

// course is the stretch of height that a course covers, and what its sheets have over at their top and foot: a trim, or at
// an end match half an overlap and 1/2 in.
func (c *checker) course(l *line, course int, courses []int) (foot, head, top, bottom float64) {
	joints := map[int64]bool{}
	for _, f := range c.p.Findings {
		for _, st := range l.walls {
			if f.Code == "joint" && f.Place == "wall "+l.wall(st).Name {
				joints[units(c.t, *f.Measured)] = true
			}
		}
	}
	var heights []int64
	for z := range joints {
		heights = append(heights, z)
	}
	slices.Sort(heights)
	const far = 1e5
	foot, head = -far, far
	match := mm(int64(c.room.Veneer.Overlap)>>1) + 12.7
	top, bottom = mm(int64(c.room.Rules.TopTrim)), mm(int64(c.room.Rules.BottomTrim))
	if slices.Contains(courses, course-1) {
		require.LessOrEqual(c.t, course-1, len(heights), "a joint under course %d", course)
		foot, bottom = mm(heights[course-2]), match
	}
	if slices.Contains(courses, course+1) {
		require.LessOrEqual(c.t, course, len(heights), "a joint over course %d", course)
		head, top = mm(heights[course-1]), match
	}
	return foot, head, top, bottom
}

// piece recomputes the area of a piece from its outline, and holds its points to the order in which they are printed.
func (c *checker) piece(p printedPiece, what string) *big.Rat {
	twice := c.twice(p.Outline)
	assert.Positive(c.t, twice.Sign(), what+"an outline runs anticlockwise")
	for i := range p.Outline[1:] {
		a, b := p.Outline[0], p.Outline[i+1]
		az, bz, ax, bx := units(c.t, a[1]), units(c.t, b[1]), units(c.t, a[0]), units(c.t, b[0])
		assert.True(c.t, az < bz || az == bz && ax < bx, what+"an outline starts at its lowest, then leftmost point")
	}
	for _, h := range p.Holes {
		hole := c.twice(h)
		assert.Negative(c.t, hole.Sign(), what+"a hole runs clockwise")
		twice.Add(twice, hole)
	}
	sum := new(big.Rat).SetFrac(twice, big.NewInt(2))
	assert.Equal(c.t, squareMetres(sum), p.Area.String(), what+"area of a piece on wall %s", p.Wall)
	return sum
}

// twice is twice the area of a ring.
func (c *checker) twice(ring [][2]num) *big.Int {
	sum := new(big.Int)
	for i := range ring {
		a, b := ring[i], ring[(i+1)%len(ring)]
		ax, az, bx, bz := big.NewInt(units(c.t, a[0])), big.NewInt(units(c.t, a[1])), big.NewInt(units(c.t, b[0])), big.NewInt(units(c.t, b[1]))
		sum.Add(sum, new(big.Int).Mul(ax, bz)).Sub(sum, new(big.Int).Mul(bx, az))
	}
	return sum
}

// within holds the points of a piece to the strip of its sheet on the wall.
func (c *checker) within(p printedPiece, st stretch, parts [][2]float64, what string) {
	for _, q := range p.Outline {
		x := mm(units(c.t, q[0]))
		ok := slices.ContainsFunc(parts, func(part [2]float64) bool { return part[0] <= x && x <= part[1] })
		assert.True(c.t, ok, what+"point at %s on wall %s is in its strip", q[0], p.Wall)
	}
}

// squareMetres prints an area as the layout does: up to nine decimals, halves away from zero, no more than needed.
func squareMetres(sum *big.Rat) string {
	r := new(big.Rat).Quo(sum, big.NewRat(64_000_000_000_000, 1))
	text := r.FloatString(9)
	if strings.Contains(text, ".") {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	return text
}

// corners recomputes the wrapped corners and their returns, the least over the height.
func (c *checker) corners(p *printedRun, l *line) {
	var wrapped []bend
	for _, b := range l.corners {
		if b.wrapped {
			wrapped = append(wrapped, b)
		}
	}
	require.Len(c.t, p.Corners, len(wrapped))
	sort.SliceStable(p.Corners, func(i, j int) bool { return units(c.t, p.Corners[i].At) < units(c.t, p.Corners[j].At) })
	for i, b := range wrapped {
		q := p.Corners[i]
		assert.Equal(c.t, []string{b.name, b.kind}, []string{q.Name, q.Kind})
		assert.Equal(c.t, b.angle, q.Angle)
		c.is(b.at, q.At, "place of corner %s", b.name)
		c.is(b.lean, q.Lean, "lean of corner %s", b.name)
		left, right := c.returns(p, l, b)
		c.is(left, q.LeftReturn, "left return of corner %s", b.name)
		c.is(right, q.RightReturn, "right return of corner %s", b.name)
	}
}

// returns measures from a bend to the nearest seam or raw end on either side, at the floor and at the ceiling. The bend
// leans on both walls, a raw end may lean, a seam is plumb. Nothing wraps where a seam stands in an easing.
func (c *checker) returns(p *printedRun, l *line, b bend) (left, right int64) {
	left, right = math.MaxInt64, math.MaxInt64
	use := func(d int64, floor, ceiling int64, side *int64) { *side = min(*side, d+floor, d+ceiling) }
	for _, s := range p.Seams {
		at := units(c.t, s.At)
		if !l.closed {
			if at <= b.at {
				use(b.at-b.half-at, 0, b.lean, &left)
			}
			if at >= b.at {
				use(at-b.at-b.half, 0, -b.leanNext, &right)
			}
			continue
		}
		use(l.round(b.at-at)-b.half, 0, b.lean, &left)
		use(l.round(at-b.at)-b.half, 0, -b.leanNext, &right)
	}
	for _, sp := range l.spans {
		if sp.closed {
			continue
		}
		a, z := sp.left-min(0, sp.leftLean), sp.right-max(0, sp.rightLean) // at the floor
		at := b.at
		if l.closed && at < a {
			at += l.length
		}
		if a <= at && at <= z {
			use(at-b.half-a, 0, b.lean-sp.leftLean, &left)
			use(z-at-b.half, 0, sp.rightLean-b.leanNext, &right)
		}
	}
	return max(0, left), max(0, right)
}

package crew_test

import (
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/room"
)

// readCard is a card as a stranger reads it: the number in front, and what is to be done.
type readCard struct{ number, words string }

var (
	cardStart   = regexp.MustCompile(`(\d+) sheet(?:, [^"]{0,80}? issue \S+ (?:\d{4}-\d\d-\d\d|no date))? `)
	ripPattern  = regexp.MustCompile(`RIP (LEFT|RIGHT|LOWER|UPPER): ` + figure + ` stays, from raw (left|right|lower|upper) edge`)
	foldPattern = regexp.MustCompile(`fold (C\d+) (in|out)(?:, round ` + figure + `)?: ` + figure + `(?: at head, (?:` + figure + ` at level, )?` + figure + ` at foot,)? from (left|ripped) edge`)
	markPattern = regexp.MustCompile(`MARK ` + figure + ` (below its raw head|from its raw foot, which hangs up), then cut`)
	markLine    = regexp.MustCompile(`MARK LINE 2 at ` + figure + ` (below the raw end that hangs up|above the raw end that hangs down), then cut`)
	hangPattern = regexp.MustCompile(`HANG (its (?:raw )?(head|foot)(?: as cut|, now the (head|foot),)?|the (head|foot) of its piece) ` + figure + ` (over|under) (the level line|LINE 2)`)
	upPattern   = regexp.MustCompile(`which hangs up: head ` + figure + ` from it`)
	onWall      = regexp.MustCompile(`(\S+)(?: (?:outlet|switch|thermostat|light|alarm|bracket|panel|other))?(?: on ([^:]+?))?: $`)
)

// cardsOf reads the cards of a room, in the order of their pages.
func cardsOf(t *testing.T, p *layout.Plan) []readCard {
	var list []readCard
	for _, page := range printed(t, p) {
		if !strings.Contains(page, "cut apart, lay each on its sheet") {
			continue
		}
		at := cardStart.FindAllStringSubmatchIndex(page, -1)
		require.NotEmpty(t, at, page)
		for i, m := range at {
			end := len(page)
			if i+1 < len(at) {
				end = at[i+1][0]
			}
			list = append(list, readCard{page[m[2]:m[3]], page[m[1]:end]})
		}
	}
	return list
}

// TestCardsAreCutAsTheySay takes each card for what its words say: where its mark is, what is ripped off, where it is folded,
// what is cut out of it; and finds the same in the room.
func TestCardsAreCutAsTheySay(t *testing.T) {
	for name, p := range rooms(t) {
		t.Run(name, func(t *testing.T) {
			var got, want []int
			for i := range p.Runs {
				for k := range p.Runs[i].Sheets {
					if s := &p.Runs[i].Sheets[k]; !s.Hung && len(s.Pieces) > 0 {
						want = append(want, s.Number)
					}
				}
			}
			for _, c := range cardsOf(t, p) {
				r, s := sheetOf(t, p, c.number)
				got = append(got, s.Number)
				assertMark(t, p, r, s, c)
				assertRip(t, p, s, c)
				assertFolds(t, p, r, s, c)
				assertCutOuts(t, p, r, s, c)
			}
			assert.Equal(t, want, got, "a card for every sheet still to hang, in the order of hanging")
		})
	}
}

// assertMark finds the mark where the highest sheet of its kind is cut.
func assertMark(t *testing.T, p *layout.Plan, r *layout.Run, s *layout.Sheet, c readCard) {
	t.Helper()
	m := markPattern.FindStringSubmatch(c.words)
	high, low := s.Above, -s.Below
	for i := range p.Runs {
		for _, o := range p.Runs[i].Sheets {
			if o.Flitch == s.Flitch && o.Course == s.Course && o.Turned == s.Turned && o.CutLength > 0 {
				high, low = max(high, o.Above), min(low, -o.Below)
			}
		}
	}
	if x := markLine.FindStringSubmatch(c.words); x != nil {
		by := secondOn(t, p, s.Pieces[0].Wall)
		at := high - by
		if x[2] == "above the raw end that hangs down" {
			at = by - low
		}
		assert.True(t, near(at, read(t, p, x[1])), "the mark of sheet %d: %s", s.Number, x[0])
		assert.Equal(t, low > 0, x[2] == "above the raw end that hangs down", x[0])
		assert.Nil(t, m, "two marks on sheet %d", s.Number)
		return
	}
	hangs := hangPattern.FindStringSubmatch(c.words)
	if r.Up || low > 0 || hangs != nil {
		assert.Nil(t, m, "no level line on sheet %d: %s", s.Number, c.words)
		if assert.Equal(t, r.Up, hangs == nil, "sheet %d can be set in height: %s", s.Number, c.words); hangs != nil {
			assertSet(t, p, s, c, hangs, [2]length.Length{high, low})
		}
		return
	}
	assert.True(t, s.Above >= 0 && s.Below >= 0, "the mark of sheet %d comes off: %s", s.Number, c.words)
	require.NotNil(t, m, "the mark of sheet %d: %s", s.Number, c.words)
	assert.True(t, near(high, read(t, p, m[1])), "the mark of sheet %d: %s", s.Number, m[0])
	assert.Equal(t, s.Turned, m[2] != "below its raw head")
	assert.Equal(t, s.Turned, strings.Contains(c.words, "TURNED"))
}

// assertSet cuts a sheet without a mark from its raw end, and hangs it by the end that is named: it is where the layout has it.
func assertSet(t *testing.T, p *layout.Plan, s *layout.Sheet, c readCard, m []string, reach [2]length.Length) {
	t.Helper()
	end, at, over := m[2]+m[4], read(t, p, m[5]), p.Room.Space.LevelLine
	if m[3] != "" {
		end = m[3]
	}
	if m[6] == "under" {
		at = -at
	}
	by := secondOn(t, p, s.Pieces[0].Wall)
	assert.True(t, m[7] == "LINE 2" || lineOf(t, p, s) == 0, c.words)
	if m[7] == "LINE 2" {
		at += by
		over += by
	}
	want := s.Above
	if end == "foot" {
		want = -s.Below
	}
	taken, left := takesEnd(p, s, c, end, want)
	assert.Equal(t, taken, m[4] != "", "an opening takes the end that it is hung by: %s", c.words)
	if taken {
		want = left
	}
	assert.True(t, near(want, at), "sheet %d: %s", s.Number, m[0])
	assert.True(t, slices.ContainsFunc(p.Room.Walls[s.Pieces[0].Wall].Floor, func(x room.Point) bool { return x.Z < over }), "a line that is over the floor")
	raw := end == "head" && near(s.Above, reach[0]) || end == "foot" && near(-s.Below, reach[1])
	if reach[1] > 0 {
		raw = end == "foot" && near(-s.Below, reach[1]) || s.Above+s.Below >= p.Room.Veneer.Length
	}
	assert.Equal(t, raw && !taken, strings.Contains(m[1], "raw"), "an end that is cut is not raw: %s", c.words)
	if x := upPattern.FindStringSubmatch(c.words); x != nil {
		assert.True(t, near(reach[0]-s.Above, read(t, p, x[1])), "the head of sheet %d: %s", s.Number, x[0])
	} else if reach[1] <= 0 {
		assert.Contains(t, c.words, "which hangs up: no cut there")
		assert.Equal(t, reach[0], s.Above)
	}
}

// takesEnd reports whether an opening cuts an end of a sheet off over its whole width before it hangs, and how high over the level line it leaves it.
func takesEnd(p *layout.Plan, s *layout.Sheet, c readCard, which string, end length.Length) (taken bool, left length.Length) {
	level, wide := p.Room.Space.LevelLine, p.Room.Veneer.GrossWidth
	if s.Ripped != "" {
		wide = s.RipTo
	}
	for i := range p.Room.Walls {
		_, st := stretchOf(p, i)
		from := s.StartLine - st.Shift
		for k := range p.Room.Walls[i].Openings {
			o := &p.Room.Walls[i].Openings[k]
			if !slices.ContainsFunc(s.Pieces, func(q layout.Piece) bool { return q.Wall == i }) || o.FromLeft > from || from+wide > o.Right() ||
				o.Sill > level+end || level+end > o.Head || strings.Contains(c.words, o.Name+": trim its "+which+" on the wall") {
				continue
			}
			if which == "head" {
				return true, o.Sill - level
			}
			return true, o.Head - level
		}
	}
	return false, 0
}

// assertRip holds a rip to the sheet; one that closes the room is ripped to its gap.
func assertRip(t *testing.T, p *layout.Plan, s *layout.Sheet, c readCard) {
	t.Helper()
	if strings.Contains(c.words, "closes: measure the gap") {
		return
	}
	m := ripPattern.FindStringSubmatch(c.words)
	if s.Ripped == "" {
		assert.Nil(t, m, c.words)
		return
	}
	require.NotNil(t, m, "sheet %d is ripped: %s", s.Number, c.words)
	side := map[string]string{"LEFT": "left", "LOWER": "left", "RIGHT": "right", "UPPER": "right"}[m[1]]
	kept := map[string]string{"left": "left", "lower": "left", "right": "right", "upper": "right"}[m[3]]
	assert.Equal(t, s.Ripped, side, c.words)
	assert.NotEqual(t, side, kept, "measured from the edge that stays raw")
	assert.True(t, near(s.RipTo, read(t, p, m[2])), m[0])
}

// assertFolds folds the sheet at head and foot, and finds the corner's edge there.
func assertFolds(t *testing.T, p *layout.Plan, r *layout.Run, s *layout.Sheet, c readCard) {
	t.Helper()
	var names []string
	for _, m := range foldPattern.FindAllStringSubmatch(c.words, -1) {
		names = append(names, m[1])
		i := slices.IndexFunc(r.Corners, func(k layout.Corner) bool { return k.Name == m[1] })
		require.GreaterOrEqual(t, i, 0, m[0])
		k := &r.Corners[i]
		head := read(t, p, m[4])
		foot := head
		assert.Equal(t, m[6] != "" && s.Above >= 0 && s.Below >= 0, m[5] != "", "the level line's figure where the sheet has it: %s", m[0])
		if m[6] != "" {
			foot = read(t, p, m[6])
		}
		wall := &p.Room.Walls[k.LeftWall]
		end := func(profile []length.Length) length.Length { return profile[len(profile)-1] }
		var floor, ceiling []length.Length
		for _, q := range wall.Floor {
			floor = append(floor, q.Z)
		}
		for _, q := range wall.Ceiling {
			ceiling = append(ceiling, q.Z)
		}
		at := func(z length.Length) length.Length {
			z += p.Room.Space.LevelLine
			return k.At + length.MulDiv(k.Lean, z-end(floor), end(ceiling)-end(floor))
		}
		ends := []struct{ x, z length.Length }{{head, s.Above}, {foot, -s.Below}}
		if m[5] != "" {
			ends = append(ends, struct{ x, z length.Length }{read(t, p, m[5]), 0})
		}
		for _, f := range ends {
			off := s.StartLine + f.x - at(f.z)
			for r.Closed && off.Abs() > r.Length/2 {
				off -= r.Length * (off / off.Abs())
			}
			assert.True(t, off.Abs() <= length.Inch/16, "%s, on sheet %d: %s off", m[0], s.Number, p.Style.Format(off))
		}
		assert.Equal(t, s.Ripped == "left", m[7] == "ripped", m[0])
	}
	assert.ElementsMatch(t, s.Corners, names, "folds of sheet %d: %s", s.Number, c.words)
}

// assertCutOuts cuts out what the card says, and finds on the walls the boxes and openings that fill it.
func assertCutOuts(t *testing.T, p *layout.Plan, r *layout.Run, s *layout.Sheet, c readCard) {
	t.Helper()
	boxes := 0
	for _, at := range cutPattern.FindAllStringIndex(c.words, -1) {
		cut, ok := readCut(t, p, c.words[at[0]:at[1]])
		require.True(t, ok)
		before := onWall.FindStringSubmatch(c.words[:at[0]])
		require.NotNil(t, before, c.words[:at[0]])
		wall := s.Pieces[0].Wall
		if before[2] != "" {
			wall = slices.IndexFunc(p.Room.Walls, func(w room.Wall) bool { return w.Name == before[2] })
			require.GreaterOrEqual(t, wall, 0, before[0])
		}
		assert.Equal(t, s.Ripped == "left", cut.edge == "ripped", c.words)
		if cut.what != "opening" {
			assertBox(t, p, r, s, cut, wall)
			boxes++
			continue
		}
		i := slices.IndexFunc(p.Room.Walls[wall].Openings, func(o room.Opening) bool { return o.Name == before[1] })
		require.GreaterOrEqual(t, i, 0, before[0])
		o := &p.Room.Walls[wall].Openings[i]
		left, right := o.FromLeft, o.Right()
		if o.WrapReveal {
			left, right = left+o.Reveal, right-o.Reveal
		}
		x0, z0, x1, z1 := cut.onWall(t, p, r, s, wall)
		if r.Up { // ends and edges of the sheet cut it short
			assert.True(t, x0 >= left-length.Inch/16 && x1 <= right+length.Inch/16 && z1 <= o.Head+length.Inch/16, c.words)
			continue
		}
		width := p.Room.Veneer.GrossWidth
		if s.Ripped != "" {
			width = s.RipTo
		}
		assert.True(t, near(x0, left) || cut.from == 0 && x0 > left, "left edge of %s: %s", o.Name, c.words)
		assert.True(t, near(x1, right) || near(cut.to, width) && x1 < right, "right edge of %s: %s", o.Name, c.words)
		foot, head := p.Room.Space.LevelLine-s.Below, p.Room.Space.LevelLine+s.Above
		low, high := standsIn(s, wall, x0, x1)
		assert.True(t, near(z0, max(o.Sill, foot)) || near(z0, foot) && o.Sill <= low, "sill of %s: %s", o.Name, c.words)
		assert.True(t, near(z1, min(o.Head, head)) || near(z1, head) && o.Head >= high, "head of %s: %s", o.Name, c.words)
	}
	assert.Equal(t, boxesIn(p, r, s), boxes, "boxes of sheet %d: %s", s.Number, c.words)
}

// standsIn are the lowest and the highest corner that the sheet has on a wall strictly between two places: beyond an opening that
// leaves nothing there it has none.
func standsIn(s *layout.Sheet, wall int, x0, x1 length.Length) (low, high length.Length) {
	low, high = math.MaxInt64, math.MinInt64
	for _, q := range s.Pieces {
		for _, at := range q.Outline {
			if q.Wall == wall && at.X > x0+length.Inch/16 && at.X < x1-length.Inch/16 {
				low, high = min(low, at.Z), max(high, at.Z)
			}
		}
	}
	return low, high
}

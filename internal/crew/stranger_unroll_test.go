package crew_test

import (
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

// wallsOn are the walls drawn on every page that draws one, by the titles of the pages, from left to right.
func wallsOn(t *testing.T, p *layout.Plan) map[string][]int {
	t.Helper()
	out := map[string][]int{}
	for _, g := range written(t, p, "view") {
		if i := slices.IndexFunc(p.Room.Walls, func(w room.Wall) bool { return w.Name == g.facts["data-wall"] }); i >= 0 {
			out[g.page] = append(out[g.page], i)
		}
	}
	return out
}

// TestUnrolledWallsAreDrawnWhole finds on the page of walls unrolled all that their own pages would have: every seam, every box, the
// number of every sheet once, the name of every corner between them; and no wall of the room is left out.
func TestUnrolledWallsAreDrawnWhole(t *testing.T) {
	strips := 0
	for file, p := range rooms(t) {
		drawn := map[int]bool{}
		for title, walls := range wallsOn(t, p) {
			for _, i := range walls {
				drawn[i] = true
			}
			if len(walls) == 1 {
				continue
			}
			strips++
			on := func(class string) (list []svgGroup) {
				for _, g := range written(t, p, class) {
					if g.page == title {
						list = append(list, g)
					}
				}
				return list
			}
			assertFollow(t, p, file+", "+title, walls, on("corner"))
			r, _ := stretchOf(p, walls[0])
			seams, boxes := 0, 0
			for _, s := range r.Seams {
				if !slices.Contains(walls, s.Wall) {
					continue
				}
				seams++
				assert.True(t, slices.ContainsFunc(on("seam"), func(g svgGroup) bool {
					return g.facts["data-at"] == s.At.Decimal() && g.wall == p.Room.Walls[s.Wall].Name
				}), "%s, %s: seam %d", file, title, s.Number)
			}
			assert.Len(t, on("seam"), seams, "%s, %s", file, title)
			for _, i := range walls {
				boxes += len(p.Room.Walls[i].Boxes)
			}
			assert.Len(t, on("box"), boxes, "%s, %s", file, title)
			assertOnce(t, p, file+", "+title, walls, on("sheet"))
		}
		for i := range p.Room.Walls {
			_, st := stretchOf(p, i)
			assert.Equal(t, st.Right > st.Left, drawn[i], "%s: %s", file, p.Room.Walls[i].Name)
		}
	}
	assert.GreaterOrEqual(t, strips, 5)
}

// assertFollow holds that walls follow one another round corners whose names stand over them.
func assertFollow(t *testing.T, p *layout.Plan, what string, walls []int, names []svgGroup) {
	t.Helper()
	r, _ := stretchOf(p, walls[0])
	for k, i := range walls[1:] {
		c := slices.IndexFunc(r.Corners, func(c layout.Corner) bool { return c.LeftWall == walls[k] && c.RightWall == i })
		require.GreaterOrEqual(t, c, 0, "%s: %s", what, p.Room.Walls[i].Name)
		kind := map[room.Bend]string{room.Inside: " in", room.Outside: " out"}[r.Corners[c].Kind]
		assert.True(t, slices.ContainsFunc(names, func(g svgGroup) bool { return slices.Equal(g.words, []string{r.Corners[c].Name + kind}) }),
			"%s: %s", what, r.Corners[c].Name)
	}
}

// assertOnce holds that the number of every sheet on some walls stands once.
func assertOnce(t *testing.T, p *layout.Plan, what string, walls []int, numbers []svgGroup) {
	t.Helper()
	r, _ := stretchOf(p, walls[0])
	want := 0
	for k := range r.Sheets {
		s := &r.Sheets[k]
		if !slices.ContainsFunc(s.Pieces, func(q layout.Piece) bool { return slices.Contains(walls, q.Wall) }) {
			continue
		}
		want++
		found := 0
		for _, g := range numbers {
			if g.facts["data-place"] == itoa(s.Place) && g.facts["data-number"] == itoa(s.Number) {
				found++
				assert.Contains(t, g.words, itoa(s.Number), "%s", what)
			}
		}
		assert.Equal(t, 1, found, "%s: sheet %d", what, s.Number)
	}
	assert.Len(t, numbers, want, what)
}

// TestUnrolledWallsSayWhereTheirFiguresBegin reads the list of walls unrolled wall by wall: each names the corner at which its 0 is
// and how long it is at the level line, and every line under its name is where its own 0 has it.
func TestUnrolledWallsSayWhereTheirFiguresBegin(t *testing.T) {
	head := regexp.MustCompile(`\b([A-Z]) ([^:]+): 0 at (C\d+) (?:in|out), ends ` + figure)
	limits := regexp.MustCompile(` ← \S+(?: \d+/\d+)? → \S+(?: \d+/\d+)?`)
	inches, mm := `((?:\d+'-)?\d+(?: \d+/\d+)?")`, `(\d+(?:,\d)?)`
	faces, lines := 0, 0
	for file, p := range rooms(t) {
		for _, page := range printed(t, p) {
			if !unrolled(page) {
				continue
			}
			_, list, _ := strings.Cut(page, "TAPE LIST, at level, each from its 0")
			list, _, _ = strings.Cut(list, " left of raw edge")
			list = limits.ReplaceAllString(list, "")
			one := inches
			if p.Room.Project.Units == length.Millimetres {
				one = mm
			}
			row := regexp.MustCompile(`(?:^| )(\d+) ` + one + ` (?:check |over \d+ )?` + one)
			list = regexp.MustCompile(`\d+ `+one+` left edge, seam right `+one).ReplaceAllString(list, "")
			at := head.FindAllStringSubmatchIndex(list, -1)
			for k, m := range at {
				faces++
				words := func(i int) string { return list[m[2*i]:m[2*i+1]] }
				i := slices.IndexFunc(p.Room.Walls, func(w room.Wall) bool { return w.Name == words(2) })
				require.GreaterOrEqual(t, i, 0, list)
				before := 0 // covered walls: the plan of the room letters them in their order, without I and O
				for _, w := range p.Room.Walls[:i] {
					if w.Cover {
						before++
					}
				}
				assert.Equal(t, "ABCDEFGHJKLMNPQRSTUVWXYZ"[before:before+1], words(1), "%s: %s", file, list)
				r, st := stretchOf(p, i)
				level := p.Room.Space.LevelLine
				zero := cornerAt(p, i, false, level)
				assert.True(t, near(p.Room.Walls[i].Length+cornerAt(p, i, true, level)-zero, read(t, p, words(4))), "%s: %s", file, list)
				assert.True(t, slices.ContainsFunc(r.Corners, func(c layout.Corner) bool { return c.RightWall == i && c.Name == words(3) }), "%s: %s", file, list)
				rest := list[m[1]:]
				if k+1 < len(at) {
					rest = list[m[1]:at[k+1][0]]
				}
				for _, x := range row.FindAllStringSubmatch(rest, -1) {
					_, s := sheetOf(t, p, x[1])
					edge := s.RightLine - st.Shift - zero - partAt(p, i, skewInto(p, i), false, level)
					plumb := s.RightLine - st.Shift - zero
					got := read(t, p, x[2])
					ok := false
					for _, turn := range []length.Length{0, r.Length, -r.Length} {
						ok = ok || (turn == 0 || r.Closed) && (near(edge+turn, got) || near(plumb+turn, got))
					}
					assert.True(t, ok, "%s, %s: %s, its edge is at %s", file, words(2), x[0], p.Style.Format(plumb))
					lines++
				}
			}
		}
	}
	assert.GreaterOrEqual(t, faces, 17)
	assert.GreaterOrEqual(t, lines, 10)
}

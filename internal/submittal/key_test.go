package submittal

import (
	"cmp"
	"maps"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
	"flitchlay/internal/elevation"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/roomtest"
	"flitchlay/internal/scene"
)

// keyOf draws the page of the plan alone.
func keyOf(t *testing.T, p *layout.Plan, paper string) (*folio.Set, *scene.Page) {
	t.Helper()
	s := folio.NewSet(p, roomtest.Template(t, paper), nil, "Submittal")
	s.Number(Submittal)
	return s, planPages(t, s)[0]
}

// planPages draws the pages of the plan: its own, and those of the list of what has no room there.
func planPages(t *testing.T, s *folio.Set) (pages []*scene.Page) {
	t.Helper()
	for _, l := range s.List {
		if l.Kind == folio.Plans {
			b := s.Open(l)
			l.Draw(b)
			pages = append(pages, b.Page)
		}
	}
	require.NotEmpty(t, pages, "no plan")
	return pages
}

// Marks with their pages, sheets and corners as the list of what has no room on the plan has them.
var (
	listedMarks = regexp.MustCompile(`\b[Mm]arks? (\S+)(?: to (\S+))? of [^;]*?, (\S+?-\d+)(?: to (\S+?-\d+))?`)
	listedOther = regexp.MustCompile(`\b([Ss]heet|[Cc]orner)s? (\w+(?: to \d+)?(?:, \w+(?: to \d+)?)*)`)
)

// listedOf is what that list tells of, of marks that may be: "A Z-201", "sheet 3", "corner C1".
func listedOf(pages []*scene.Page, marks []string) map[string]bool {
	var words []string
	for _, p := range pages {
		words = append(words, roomtest.Lettering(&p.Group)...)
	}
	all, list := strings.Join(words, " "), map[string]bool{}
	for _, m := range listedMarks.FindAllStringSubmatch(all, -1) {
		first := m[1] + " " + m[3]
		last := cmp.Or(m[2], m[1]) + " " + cmp.Or(m[4], m[3])
		if from, to := slices.Index(marks, first), slices.Index(marks, last); from >= 0 {
			for _, mark := range marks[from:max(from, to+1)] {
				list[mark] = true
			}
		}
	}
	for _, m := range listedOther.FindAllStringSubmatch(all, -1) {
		for _, part := range strings.Split(m[2], ", ") {
			from, to, _ := strings.Cut(part, " to ")
			list[strings.ToLower(m[1])+" "+from] = true
			first, _ := strconv.Atoi(from)
			last, _ := strconv.Atoi(to)
			for n := first; n <= last; n++ {
				list["sheet "+strconv.Itoa(n)] = true
			}
		}
	}
	return list
}

// The plan of every sample has a mark for each view of a wall, with the page and the letter that its title has; a circle for each
// corner that is wrapped; each sheet's number, where it says of none that they are left out; and the length of each wall, at a
// dimension line or beside its name. What has no room there stands in the list beside the table of walls.
func TestPlanHasAllThatItShows(t *testing.T) {
	rooms := roomtest.Samples(t)
	if !effort.Full() {
		maps.DeleteFunc(rooms, func(name, _ string) bool {
			return !strings.HasPrefix(name, "samples l") && !strings.HasPrefix(name, "samples ca")
		})
	}
	roomtest.OnPapers(t, rooms, []string{"a4", "ansi-b", "arch-d"}, func(t *testing.T, text, paper string) {
		p := roomtest.Laid(t, "room.toml", text)
		if len(p.Room.Walls) == 1 { // a line has no plan: TestANicheTakesSixPages
			return
		}
		s, page := keyOf(t, p, paper)
		var want, got []string
		seen := map[int]int{}
		views := map[int]int{}
		for _, l := range s.List {
			for _, v := range l.Shown {
				views[v.Wall]++
			}
		}
		for _, l := range s.List {
			for _, v := range l.Shown {
				mark := s.Marks[v.Wall]
				if views[v.Wall] > 1 {
					mark = elevation.PieceMark(mark, seen[v.Wall])
				}
				seen[v.Wall]++
				want = append(want, mark+" "+l.Number)
			}
		}
		for _, g := range roomtest.Classed(&page.Group, "elevation-mark") {
			got = append(got, roomtest.Fact(g, "mark")+" "+roomtest.Fact(g, "page"))
		}
		require.NotEmpty(t, want)
		words := roomtest.Lettering(&page.Group)
		left := listedOf(planPages(t, s), want)
		assert.ElementsMatch(t, slices.DeleteFunc(want, func(w string) bool { return !slices.Contains(got, w) && left[w] }), got, "marks")
		want, got = nil, nil
		numbers := map[string]bool{}
		for i := range p.Runs {
			for _, c := range p.Runs[i].Corners {
				want = append(want, c.Name)
			}
			for j := range p.Runs[i].Sheets {
				if sh := &p.Runs[i].Sheets[j]; len(sh.Pieces) > 0 && !p.Runs[i].Up && sh.Course <= 1 || len(sh.Pieces) > 0 && p.Runs[i].Up {
					numbers[elevation.NumberOf(sh)] = true
				}
			}
		}
		for _, g := range roomtest.Classed(&page.Group, "corner") {
			got = append(got, roomtest.Fact(g, "name"))
		}
		assert.ElementsMatch(t, slices.DeleteFunc(want, func(w string) bool { return !slices.Contains(got, w) && left["corner "+w] }), got, "corners")
		if !slices.ContainsFunc(words, func(w string) bool { return strings.Contains(w, "are numbered here") }) {
			for _, g := range roomtest.Classed(&page.Group, "key-number") {
				for _, n := range regexp.MustCompile("/|, ").Split(roomtest.Fact(g, "number"), -1) {
					delete(numbers, n)
				}
			}
			for n := range numbers {
				assert.True(t, left["sheet "+n], "sheet %s", n)
			}
		}
		holesNamed(t, p, page, planPages(t, s))
		hang, _ := hanging(p)
		assert.Contains(t, strings.Join(words, " "), sheetCount(hang)+" laid", "as many as the cover says")
		starts, runs := len(roomtest.Classed(&page.Group, "start")), 0
		for i := range p.Runs {
			if len(p.Runs[i].Sheets) > 0 {
				runs++
			}
		}
		assert.Equal(t, runs, starts, "a triangle where each run starts")
		assert.NotContains(t, strings.Join(words, " "), map[bool]string{true: "this way", false: "from the foot"}[p.Room.Veneer.Horizontal])
		for i := range p.Room.Walls {
			assert.Contains(t, words, p.Style.Format(p.Room.Walls[i].Length), "length of %s", p.Room.Walls[i].Name)
		}
		north := 0
		if p.Room.Space.North != nil {
			north = 1
		}
		assert.Len(t, roomtest.Classed(&page.Group, "north"), north, "north")
	})
}

// holesNamed holds that every opening has its name on the plan, or in what is not lettered there; that no arrow of an elevation points
// into one while a wall beside it has room; and that the title stands under the plan and not at the foot of the page.
func holesNamed(t *testing.T, p *layout.Plan, page *scene.Page, pages []*scene.Page) {
	var words []string
	for _, pg := range pages {
		words = append(words, roomtest.Lettering(&pg.Group)...)
	}
	named := map[string]bool{}
	for _, g := range roomtest.Classed(&page.Group, "opening-name") {
		key := roomtest.Fact(g, "wall") + " " + roomtest.Fact(g, "name")
		assert.False(t, named[key], "%s twice", key)
		named[key] = true
	}
	all := strings.Join(words, " ")
	for i := range p.Room.Walls {
		w := &p.Room.Walls[i]
		for j := range w.Openings {
			o := &w.Openings[j]
			assert.True(t, named[w.Name+" "+o.Name] || strings.Contains(all, o.Kind.Named(o.Name)+" on "+w.Name), "opening %s of %s", o.Name, w.Name)
		}
	}
	plan, title := scene.Box{}, 0.0
	for _, g := range roomtest.Classed(&page.Group, "view") {
		plan = plan.Union(g.Bounds())
	}
	page.Texts(func(t *scene.Text) {
		if t.String == "ROOM KEY" && (title == 0 || t.At.Y < title) {
			title = t.At.Y
		}
	})
	assert.Less(t, title-plan.Y1, 30.0, "the title stands under its plan")
}

// A corridor is dimensioned across, from face to face, by the figure that was measured.
func TestPlanOfACorridorIsDimensionedAcross(t *testing.T) {
	for _, paper := range []string{"ansi-b", "a4"} {
		p := roomtest.Laid(t, "room.toml", roomtest.Samples(t)["samples corridor.toml"])
		_, page := keyOf(t, p, paper)
		list := roomtest.Classed(&page.Group, "across")
		require.Len(t, list, 1, paper)
		assert.Equal(t, []string{`6'-0"`}, roomtest.Lettering(list[0]))
		b := list[0].Bounds()
		scale, err := strconv.ParseFloat(roomtest.Fact(roomtest.Classed(&page.Group, "view")[0], "scale"), 64)
		require.NoError(t, err)
		assert.InDelta(t, 72*25.4/scale, b.H(), 2.5, "as long as it says, with its ticks")
	}
}

// Arrows of elevations point at walls, not into openings: a share of the wall that the mark has as data lies in none.
func TestMarksPointAtWalls(t *testing.T) {
	for _, name := range []string{"samples reading-room.toml", "samples lift-lobby.toml"} {
		p := roomtest.Laid(t, "room.toml", roomtest.Samples(t)[name])
		_, page := keyOf(t, p, "ansi-b")
		looked := 0
		for _, g := range roomtest.Classed(&page.Group, "elevation-mark") {
			for i := range p.Room.Walls {
				w := &p.Room.Walls[i]
				if w.Name != roomtest.Fact(g, "wall") || roomtest.Fact(g, "at") == "" {
					continue
				}
				at, err := length.Parse(roomtest.Fact(g, "at"), length.Millimetres)
				require.NoError(t, err)
				for _, o := range w.Openings {
					assert.False(t, at > o.FromLeft && at < o.Right(), "%s: the mark of %s points into %s", name, w.Name, o.Name)
				}
				looked++
			}
		}
		assert.Positive(t, looked)
	}
}

// The two sides of a corridor face each other on the plan, and what looks at them stands between them.
func TestMarksOfACorridorStandInIt(t *testing.T) {
	_, page := keyOf(t, roomtest.Laid(t, "room.toml", roomtest.Samples(t)["samples corridor.toml"]), "ansi-b")
	walls := roomtest.Classed(&page.Group, "wall")
	require.Len(t, walls, 2)
	upper, lower := walls[0].Bounds(), walls[1].Bounds()
	assert.InDelta(t, 72*25.4/64, lower.Y0-upper.Y1, 4, "6 ft apart at 3/16 in to the foot, less the thickness of their lines")
	marks := roomtest.Classed(&page.Group, "elevation-mark")
	require.NotEmpty(t, marks)
	for _, g := range marks {
		b := g.Bounds()
		assert.Greater(t, b.Y0, upper.Y1)
		assert.Less(t, b.Y1, lower.Y0)
	}
}

// Walls that only count on from each other stand in one line of the table; one that is longer has its own.
func TestWallsThatRepeatShareALine(t *testing.T) {
	text := roomtest.Head("in")
	for range 5 {
		text += roomtest.Wall("", `2'`, `9'`) + "corner = \"straight\"\n"
	}
	text = strings.ReplaceAll(text, "name = \"\"\n", "") + strings.ReplaceAll(roomtest.Wall("", `3'`, `9'`), "name = \"\"\n", "")
	p := roomtest.Laid(t, "room.toml", text)
	_, page := keyOf(t, p, "arch-d")
	words := roomtest.Lettering(&page.Group)
	assert.Contains(t, words, "Wall 1 to 5")
	assert.Contains(t, words, `5 x 2'-0"`)
	assert.Contains(t, words, "A to E")
	assert.Contains(t, words, "Wall 6")
}

// Nothing touches on the plans of rooms made at random, nor in the strip under them.
func TestNothingTouchesOnThePlan(t *testing.T) {
	papers := []string{"ansi-b", "a4", "arch-d", "a3"}
	roomtest.RandomPlans(t, effort.Of(4, 60), func(seed uint64, _ string, p *layout.Plan) {
		for _, paper := range effort.Turns(int(seed), papers) {
			s := folio.NewSet(p, roomtest.Template(t, paper), nil, "Submittal")
			s.Number(Submittal)
			if line := len(p.Room.Walls) == 1; line { // which has no plan
				assert.Empty(t, s.PageOf("room key"))
				continue
			}
			for n, page := range planPages(t, s) {
				for _, o := range scene.Overlaps(page, 0.5) {
					t.Errorf("seed %d on %s, page %d: %s", seed, paper, n+1, o)
				}
			}
		}
	})
}

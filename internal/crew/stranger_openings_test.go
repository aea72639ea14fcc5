package crew_test

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/room"
	"flitchlay/internal/roomtest"
	"flitchlay/internal/scene"
)

// wallPages are the pages that show a wall, with the notes that they point to.
func wallPages(t *testing.T, p *layout.Plan, wall int) (pages []*scene.Page, words string) {
	t.Helper()
	d := install(t, p)
	for _, page := range d.Pages {
		for _, g := range roomtest.Classed(&page.Group, "view") {
			if roomtest.Fact(g, "wall") == p.Room.Walls[wall].Name {
				pages = append(pages, page)
				words += strings.Join(roomtest.Lettering(&page.Group), " ") + " "
			}
		}
		if page.Title == "Cut list" {
			for _, q := range pages {
				if _, notes, ok := strings.Cut(strings.Join(roomtest.Lettering(&page.Group), " "), q.Title+", tape list"); ok {
					words += notes + " "
				}
			}
		}
	}
	return pages, words
}

// TestOpeningsStandWhereThePageHasThem reads of every opening where its edges are, along the wall from 0 and up and down of the level
// line, and finds them there in the room.
func TestOpeningsStandWhereThePageHasThem(t *testing.T) {
	found, high := 0, 0
	for name, p := range rooms(t) {
		for i := range p.Room.Walls {
			w := &p.Room.Walls[i]
			pages, words := wallPages(t, p, i)
			for k := range w.Openings {
				o := &w.Openings[k]
				if pages == nil || p.Room.Project.Units != length.Inches {
					continue
				}
				zero := cornerAt(p, i, false, p.Room.Space.LevelLine)
				m := regexp.MustCompile(`\b` + o.Name + ` (?:left ` + figure + ` right ` + figure + `|at (?:[A-Z] )?` + figure + ` to (?:[A-Z] )?` + figure + `)`).FindStringSubmatch(words)
				if !assert.NotNil(t, m, "%s: where %s stands on %s", name, o.Name, w.Name) {
					continue
				}
				left, right := m[1]+m[3], m[2]+m[4]
				assert.True(t, near(o.FromLeft-zero, read(t, p, left)), "%s: left edge of %s: %s", name, o.Name, m[0])
				assert.True(t, near(o.Right()-zero, read(t, p, right)), "%s: right edge of %s: %s", name, o.Name, m[0])
				heights := regexp.MustCompile(regexp.QuoteMeta(m[0]) + `(.{0,200}?),? head (up|down) ` + figure + `(?:,? sill (up|down) ` + figure + `)?`).FindStringSubmatch(words)
				if w.FullHeight(o) {
					assert.Nil(t, heights, "%s: %s leaves nothing over it", name, o.Name)
				} else if assert.NotNil(t, heights, "%s: how high %s is, beside where it stands", name, o.Name) {
					level := p.Room.Space.LevelLine
					assert.NotRegexp(t, `[WDFGBP]\d+ (?:left|at) `, heights[1], "%s: the heights of another opening", name)
					assert.True(t, near(o.Head-level, arrowed(t, p, heights[3], heights[2])), "%s: %s", name, heights[0])
					if assert.Equal(t, o.SillGiven, heights[4] != "", "%s: %s", name, heights[0]); o.SillGiven {
						assert.True(t, near(o.Sill-level, arrowed(t, p, heights[5], heights[4])), "%s: %s", name, heights[0])
					}
					high++
				}
				found++
			}
		}
	}
	assert.Greater(t, found, 8)
	assert.Greater(t, high, 8)
}

// TestLinesOverADoorHaveNoArrowAtTheFloor counts the arrows of every line: one at the floor and one at the ceiling, as far as the
// covering that it is struck on comes there.
func TestLinesOverADoorHaveNoArrowAtTheFloor(t *testing.T) {
	over, whole := 0, 0
	for name, p := range rooms(t) {
		for i := range p.Room.Walls {
			w := &p.Room.Walls[i]
			pages, _ := wallPages(t, p, i)
			for _, page := range pages {
				views := roomtest.Classed(&page.Group, "view")
				if len(views) > 1 || p.Room.Veneer.Horizontal {
					continue
				}
				for _, g := range roomtest.Classed(views[0], "plumb-line") {
					at, err := length.Parse(roomtest.Fact(g, "at"), length.Millimetres)
					require.NoError(t, err)
					heads := 0
					for _, it := range g.Items {
						if _, ok := it.(*scene.Poly); ok {
							heads++
						}
					}
					floor, ceiling := 1, 1
					for k := range w.Openings {
						if o := &w.Openings[k]; onWallAt(p, i, at, o) {
							if !o.SillGiven || o.Sill <= room.At(w.CoverFloor(), o.FromLeft) {
								floor = 0
							}
							if o.Head >= room.At(w.CoverCeiling(), o.FromLeft) {
								ceiling = 0
							}
						}
					}
					if floor == 0 {
						over++
					} else {
						whole++
					}
					assert.Equal(t, floor+ceiling, heads, "%s, %s: the line at %s", name, w.Name, p.Style.Format(at))
				}
			}
		}
	}
	assert.Positive(t, over)
	assert.Positive(t, whole)
}

// onWallAt reports whether a place of a run is in an opening of a wall.
func onWallAt(p *layout.Plan, wall int, at length.Length, o *room.Opening) bool {
	for i := range p.Runs {
		r := &p.Runs[i]
		for _, st := range r.Walls {
			if st.Wall != wall {
				continue
			}
			for _, turn := range []length.Length{-r.Length, 0, r.Length} {
				if x := at + turn - st.Shift; (turn == 0 || r.Closed) && o.FromLeft <= x && x <= o.Right() {
					return true
				}
			}
		}
	}
	return false
}

// TestBaseAndCrownStandOnTheWallsPages finds on the pages of every wall how high its base and its crown are, and that the covering
// stops there or goes on behind.
func TestBaseAndCrownStandOnTheWallsPages(t *testing.T) {
	found := 0
	for name, p := range rooms(t) {
		for i := range p.Room.Walls {
			w := &p.Room.Walls[i]
			pages, words := wallPages(t, p, i)
			if pages == nil {
				continue
			}
			here := lettered(pages) // without what is carried over to another page
			for _, x := range []struct {
				what   string
				high   length.Length
				behind bool
				edge   string
			}{{"base", w.Base, w.Behind.Base, "its upper edge"}, {"crown", w.Crown, w.Behind.Crown, "its lower edge"}} {
				m := regexp.MustCompile(x.what + ` ` + figure + ` high: cut (at its (?:upper|lower) edge|behind it)`).FindStringSubmatch(words)
				if x.high == 0 {
					assert.Nil(t, m, "%s, %s", name, w.Name)
					continue
				}
				require.NotNil(t, m, "%s, %s: %s", name, w.Name, x.what)
				assert.Contains(t, here, x.what+" "+m[1], "%s, %s: the figure on the wall's own page", name, w.Name)
				assert.True(t, near(x.high, read(t, p, m[1])), m[0])
				assert.Equal(t, map[bool]string{false: "at " + x.edge, true: "behind it"}[x.behind], m[2])
				found++
			}
		}
	}
	assert.Greater(t, found, 8)
}

// TestLevelGrainBeginsAtTheLeft finds START left of the wall beside its lowest band, where the first sheet lies, and no heading twice.
func TestLevelGrainBeginsAtTheLeft(t *testing.T) {
	pages, _ := wallPages(t, rooms(t)["horiz"], 0)
	require.Len(t, pages, 1)
	view := roomtest.Classed(&pages[0].Group, "view")[0]
	starts, heads := 0, 0
	pages[0].Texts(func(x *scene.Text) {
		switch x.String {
		case "START":
			starts++
			assert.Less(t, x.At.X, view.View.Box.X0)
			assert.Greater(t, x.At.Y, view.View.Box.Y1-view.View.Box.H()/6)
		case "BOXES AND OPENINGS":
			heads++
		}
	})
	assert.Equal(t, 1, starts)
	assert.Equal(t, 1, heads)
}

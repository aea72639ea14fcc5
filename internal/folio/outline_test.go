package folio_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/crew"
	"flitchlay/internal/folio"
	"flitchlay/internal/paper"
	"flitchlay/internal/pole"
	"flitchlay/internal/roomtest"
	"flitchlay/internal/scene"
	"flitchlay/internal/submittal"
)

// sets are all sets of a room, with the outline of each as lines, two blanks for each level.
func Outlines(t *testing.T, text string) map[string]*scene.Document {
	template, err := paper.Named("ansi-b")
	require.NoError(t, err)
	letter, err := paper.Named("ansi-a")
	require.NoError(t, err)
	p := roomtest.Laid(t, "room.toml", text)
	out := map[string]*scene.Document{}
	out["Submittal"], err = submittal.Photographed(p, template, nil, folio.Photographs{})
	require.NoError(t, err)
	out["Install"], err = crew.Install(p, letter)
	require.NoError(t, err)
	out["Story pole"], err = pole.Draw(p, letter)
	require.NoError(t, err)
	return out
}

// The outline goes by set, wall and page, in every set, and every page is in it once.
func TestOutlineGoesBySetWallAndPage(t *testing.T) {
	for why, text := range roomtest.Samples(t) {
		t.Run(why, func(t *testing.T) {
			r := roomtest.Laid(t, "room.toml", text).Room
			for name, d := range Outlines(t, text) {
				require.NotEmpty(t, d.Outline)
				assert.Equal(t, scene.Entry{Title: d.Subject + " set", Page: d.Pages[0].Name}, d.Outline[0], name)
				listed, walls := map[string]int{}, map[string]int{}
				for i, e := range d.Outline[1:] {
					require.Contains(t, []int{1, 2}, e.Level)
					next := 0
					if i+2 < len(d.Outline) {
						next = d.Outline[i+2].Level
					}
					if e.Level == 1 && next == 2 {
						walls[e.Title]++
						assert.Equal(t, e.Page, d.Outline[i+2].Page, "a wall leads to its first page")
						continue
					}
					listed[e.Page]++
				}
				for _, p := range d.Pages {
					assert.Equal(t, 1, listed[p.Name], "%s: page %s", name, p.Name)
				}
				for i := range r.Walls {
					if w := &r.Walls[i]; w.Cover {
						n := 0
						for title, times := range walls { // walls that are unrolled on one page stand together
							if strings.Contains(", "+title+", ", ", "+w.Name+", ") {
								n += times
							}
						}
						assert.Equal(t, 1, n, "%s: wall %s", name, w.Name)
					}
				}
			}
		})
	}
}

// A wall's elevation and its photographs stand under its name.
func TestAWallHoldsItsElevationAndItsPhotographs(t *testing.T) {
	d := Outlines(t, roomtest.Head("in")+roomtest.Wall("North", `14'`, `9'`)+roomtest.Wall("East", `9'`, `9'`))["Submittal"]
	var lines []string
	for _, e := range d.Outline {
		lines = append(lines, strings.Repeat("  ", e.Level)+e.Title)
	}
	text := strings.Join(lines, "\n")
	assert.Contains(t, text, "\n  North\n    Z-201  ELEVATION: NORTH\n    Z-203  PHOTOGRAPHS: NORTH\n")
	assert.Contains(t, text, "\n  East\n    Z-202  ELEVATION: EAST\n    Z-204  PHOTOGRAPHS: EAST\n")
	assert.Equal(t, "Submittal set", lines[0])
}

// Who has a page read to them hears what it is.
func TestPagesSayWhatTheyAre(t *testing.T) {
	for name, d := range Outlines(t, roomtest.Head("in")+roomtest.Wall("North", `14'`, `9'`)) {
		for i, p := range d.Pages {
			assert.Contains(t, p.Desc, "Harbour Lane Library: reading room", "%s %s", name, p.Name)
			assert.NotEmpty(t, p.Title)
			if i == 0 {
				assert.Contains(t, p.Desc, "page 1 of")
			}
		}
	}
	d := Outlines(t, roomtest.Head("in")+roomtest.Wall("North", `14'`, `9'`))["Submittal"]
	i := slices.IndexFunc(d.Pages, func(p *scene.Page) bool { return p.Name == "Z-201" })
	require.NotEqual(t, -1, i)
	assert.Contains(t, d.Pages[i].Desc, `NORTH at 1/2" = 1'-0" (1:24)`)
}

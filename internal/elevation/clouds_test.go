package elevation_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
	"flitchlay/internal/layout"
	"flitchlay/internal/roomtest"
	"flitchlay/internal/scene"
	"flitchlay/internal/submittal"
)

// revised is a room with a revision of each kind of thing: an opening that the note names, a box and a door at the place, bare wall.
func revised() string {
	return strings.Replace(roomtest.Head("in"), "[veneer]", `[[project.revision]]
note = "Window W1 moved 3 in left"
wall = "North"
at = "9'"
[[project.revision]]
note = "Outlet added"
wall = "North"
at = "12' 6"
[[project.revision]]
note = "Door wider"
wall = "East"
at = "4'"
[[project.revision]]
note = "Seam moved"
wall = "East"
at = "10'"
[[project.revision]]
note = "New tag"
[veneer]`, 1) + roomtest.Wall("North", `16'`, `9'`, roomtest.Window(`3'`, `4'`), roomtest.Box("outlet", `12' 6`, `1' 4`)) + roomtest.Wall("East", `14'`, `9'`, roomtest.Door(`3'`, `3'`))
}

// Every revision that has a place is in a cloud there, drawn in arcs: round the opening or the box that moved, else round a stretch of
// the wall. Its triangle stands beside the cloud.
func TestRevisionsAreInCloudsWhereTheyMovedSomething(t *testing.T) {
	_, d := Drawn(t, revised())
	clouds, marks := map[string]*scene.Group{}, map[string]*scene.Group{}
	round := map[string]scene.Box{}
	for _, v := range roomtest.ElevationViews(d) {
		for _, g := range roomtest.Classed(v, "cloud") {
			clouds[roomtest.Fact(g, "mark")] = g
			g.Walk(func(it scene.Item) {
				if path, ok := it.(*scene.Path); ok {
					assert.Equal(t, scene.CurveTo, path.Steps[1].Kind, "arcs")
				}
			})
		}
		for _, g := range roomtest.Classed(v, "revision") {
			marks[roomtest.Fact(g, "mark")] = g
		}
		for class, names := range map[string]map[string]string{"opening": {"W1": "A", "D1": "C"}, "box": {"E1": "B"}} {
			for _, g := range roomtest.Classed(v, class) {
				round[names[roomtest.Fact(g, "name")]] = g.Bounds()
			}
		}
	}
	require.Len(t, clouds, 4)
	require.Len(t, marks, 4)
	for mark, g := range clouds {
		cloud := g.Bounds()
		if thing, ok := round[mark]; ok {
			assert.True(t, cloud.Contains(scene.BoxRound(thing.Centre(), 0.1, 0.1)), mark)
			assert.InDelta(t, thing.Centre().X, cloud.Centre().X, 12, mark)
			assert.Greater(t, cloud.W(), 0.5*thing.W(), mark)
		}
		assert.True(t, cloud.Inset(-20).Meets(marks[mark].Bounds()), "the triangle of %s stands beside its cloud", mark)
	}
}

// A cloud runs neither along the edges of an opening nor through the rows of dimensions where it has room elsewhere, also where the mark
// of a deviation stands at the place.
func TestCloudsKeepOffEdgesAndDimensions(t *testing.T) {
	_, d := Drawn(t, revised())
	seen := 0
	for _, v := range roomtest.ElevationViews(d) {
		for _, g := range roomtest.Classed(v, "cloud") {
			cloud := g.Bounds()
			seen++
			assert.True(t, v.View.Box.Inset(-6.5).Contains(cloud), "off the rows of dimensions")
			for _, o := range roomtest.Classed(v, "opening") {
				hole := o.Bounds()
				for _, x := range []float64{hole.X0, hole.X1} {
					g.Walk(func(it scene.Item) {
						arc, ok := it.(*scene.Path)
						if ok && arc.Bounds().H() > arc.Bounds().W() && arc.Bounds().Y1 > hole.Y0 && arc.Bounds().Y0 < hole.Y1 {
							assert.False(t, arc.Bounds().X0 < x && x < arc.Bounds().X1, "along the edge of %s", roomtest.Fact(o, "name"))
						}
					})
				}
			}
		}
	}
	assert.Equal(t, 4, seen)
}

// No cloud touches a word or another mark, on random rooms with a revision on every wall; one that finds no triangle is in the list.
func TestCloudsTouchNoWords(t *testing.T) {
	papers := []string{"ansi-b", "a4", "arch-d", "a3"}
	n, clouds, places := 0, 0, 0
	roomtest.RandomPlans(t, effort.Of(3, 40), func(seed uint64, text string, p *layout.Plan) {
		for i, w := range p.Room.Walls {
			if w.Cover {
				text += fmt.Sprintf("\n[[project.revision]]\nnote = \"Moved\"\nwall = %q\n", p.Room.Walls[i].Name)
				places++
			}
		}
		paper := papers[n%len(papers)]
		n++
		d, err := submittal.Photographed(roomtest.Laid(t, "room.toml", text), roomtest.Template(t, paper), nil, nil)
		require.NoError(t, err)
		for _, page := range d.Pages {
			for _, g := range roomtest.Classed(&page.Group, "cloud") {
				clouds++
				g.Walk(func(it scene.Item) {
					arc, ok := it.(*scene.Path)
					if !ok {
						return
					}
					page.Texts(func(x *scene.Text) {
						assert.False(t, arc.Bounds().Meets(x.Bounds()), "seed %d, page %s on %s: a cloud touches %q", seed, page.Name, paper, x.String)
					})
				})
			}
		}
	})
	assert.GreaterOrEqual(t, clouds, places*9/10, "of %d places", places)
	t.Logf("%d clouds of %d places", clouds, places)
}

package elevation_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/elevation"
	"flitchlay/internal/folio"
	"flitchlay/internal/length"
	"flitchlay/internal/roomtest"
	"flitchlay/internal/scene"
)

// A revision that has a place is marked there on the elevation, and in the block of every page by the same shape; one that
// has none is in the block alone.
//
// Source: mark in a triangle near the change, the same shape in the block: drawing practice of public works (NAVFAC manuals),
// as restated publicly.
func TestRevisionsAreMarkedWhereTheChangeIs(t *testing.T) {
	text := strings.Replace(roomtest.Head("in"), "[veneer]", `[[project.revision]]
note = "Outlet added"
wall = "East"
at = "7' 6"
[[project.revision]]
note = "New tag"
[veneer]`, 1) + roomtest.Wall("North", `9'`, `9'`) + roomtest.Wall("East", `12'`, `9'`)
	_, d := Drawn(t, text)
	marked := map[string][]string{}
	var at float64
	var east *scene.Group
	for _, v := range roomtest.ElevationViews(d) {
		for _, g := range roomtest.Classed(v, "revision") {
			marked[roomtest.Fact(v, "wall")] = append(marked[roomtest.Fact(v, "wall")], roomtest.Lettering(g)...)
			at = (g.Bounds().X0 + g.Bounds().X1) / 2
			east = v
		}
	}
	assert.Equal(t, map[string][]string{"East": {"A"}}, marked)
	require.NotNil(t, east)
	box := east.View.Box
	place := box.X0 + 1 + (box.W()-2)*90/144 // 7'-6" of 12'-0"; the box is 1 mm larger than the wall on each side
	assert.Less(t, math.Abs(at-place), 14.0, "beside the place")
	for _, p := range d.Pages {
		found := 0
		p.Walk(func(it scene.Item) {
			if poly, ok := it.(*scene.Poly); ok && poly.Closed && len(poly.Points) == 3 && poly.Layer == scene.Frame {
				found++
			}
		})
		assert.Equal(t, 2, found, "triangles in the block of %s", p.Name)
	}
}

// A deviation's pentagon stands on its seam or in its sheet, or a leader runs from it to a dot there: none stands on the sheet beside.
func TestDeviationsStandOnWhatTheySpeakOf(t *testing.T) {
	p, d := Drawn(t, roomtest.Samples(t)["samples cannot-meet.toml"])
	list, looked := elevation.Deviations(&folio.Set{Plan: p, Room: p.Room}), 0
	for _, v := range roomtest.ElevationViews(d) {
		box := v.View.Box.Inset(1)
		from, to := lengthOf(t, roomtest.Fact(v, "from")), lengthOf(t, roomtest.Fact(v, "to"))
		for _, g := range roomtest.Classed(v, "deviation") {
			for _, dev := range list {
				if strconv.Itoa(dev.Number) != roomtest.Fact(g, "number") || p.Room.Walls[dev.Wall].Name != roomtest.Fact(v, "wall") {
					continue
				}
				x := box.X0 + box.W()*float64(dev.At-from)/float64(to-from)
				on := math.Abs(g.Bounds().Centre().X-x) < 0.2
				v.Walk(func(it scene.Item) {
					if l, ok := it.(*scene.Line); ok {
						on = on || math.Abs(l.A.X-x) < 0.2 || math.Abs(l.B.X-x) < 0.2
					}
				})
				assert.True(t, on, "deviation %d on %s", dev.Number, roomtest.Fact(v, "wall"))
				looked++
			}
		}
	}
	assert.Greater(t, looked, 8)
}

// Where a door takes the whole height there is no seam: the chain goes from edge to edge of the door.
func TestNoSeamIsFiguredInADoorThatTakesTheWholeHeight(t *testing.T) {
	text := roomtest.Head("in") + roomtest.Wall("West", `20'`, `8'`, "[[wall.opening]]\nkind = \"door\"\nfrom_left = \"6'\"\nwidth = \"7'\"\nheight = \"8'\"\n")
	p, d := Drawn(t, text)
	require.True(t, p.Room.Walls[0].FullHeight(&p.Room.Walls[0].Openings[0]))
	var places []string
	for _, v := range roomtest.ElevationViews(d) {
		for _, g := range roomtest.Classed(v, "dimension") {
			if roomtest.Fact(g, "tier") == "seams" {
				places = append(places, roomtest.Fact(g, "from"), roomtest.Fact(g, "to"))
				from, to := lengthOf(t, roomtest.Fact(g, "from")), lengthOf(t, roomtest.Fact(g, "to"))
				door := p.Room.Walls[0].Openings[0]
				for _, x := range []length.Length{from, to} {
					assert.False(t, x > door.FromLeft && x < door.Right(), "a figure from %s to %s", roomtest.Fact(g, "from"), roomtest.Fact(g, "to"))
				}
			}
		}
	}
	assert.Contains(t, places, folio.Mm(p.Room.Walls[0].Openings[0].FromLeft))
	assert.Contains(t, places, folio.Mm(p.Room.Walls[0].Openings[0].Right()))
}

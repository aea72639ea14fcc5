package elevation_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

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

package elevation_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/roomtest"
	"flitchlay/internal/scene"
)

// Grain goes on past the foot of a wall that leans outwards, up to its head, and into what comes onto the wall from the sheet
// beside: the wall here is 70 in long at its foot and 73 at its head, and the seam stands at 71 1/2.
func TestGrainFillsALeaningEnd(t *testing.T) {
	_, d := Drawn(t, roomtest.Head("in")+"[[wall]]\nname = \"Alder\"\nlength = \"70\"\nheight = \"96\"\ncorner = \"straight\"\nlean = [0, \"3\"]\n"+
		"[[wall]]\nname = \"Birch\"\nlength = \"60\"\nheight = \"96\"\n[[wall.pin]]\nat = \"1 1/2\"\n")
	found := false
	for _, v := range roomtest.ElevationViews(d) {
		if roomtest.Fact(v, "wall") != "Alder" {
			continue
		}
		found = true
		const inch = 25.4
		left := math.Inf(1)
		var across []float64 // of the points of the grain
		walk(v, func(it scene.Item) {
			if p, ok := it.(*scene.Path); ok && p.Style.Layer == scene.Grain {
				for _, s := range p.Steps {
					across, left = append(across, s.P.X), min(left, s.P.X)
				}
			}
		})
		require.NotEmpty(t, across)
		strips := map[string]int{}
		for _, x := range across {
			switch at := (x - left) * v.View.Scale / inch; {
			case at > 70.2 && at < 71.4:
				strips["of the wall's own last sheet"]++
			case at > 71.6 && at < 73.1:
				strips["of the sheet beside"]++
			}
		}
		assert.Len(t, strips, 2, "%v", strips)
	}
	assert.True(t, found)
}

// walk visits an item and all in it.
func walk(it scene.Item, visit func(scene.Item)) {
	visit(it)
	if g, ok := it.(*scene.Group); ok {
		for _, in := range g.Items {
			walk(in, visit)
		}
	}
}

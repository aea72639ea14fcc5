package submittal

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/roomtest"
	"flitchlay/internal/scene"
)

// enlargements are the views of openings of a set, by the name of the opening, with the words of their pages.
func enlargements(d *scene.Document) (views map[string]*scene.Group, words map[string][]string) {
	views, words = map[string]*scene.Group{}, map[string][]string{}
	for _, page := range d.Pages {
		for _, v := range roomtest.Classed(&page.Group, "view") {
			if name := roomtest.Fact(v, "opening"); name != "" {
				views[name], words[name] = v, roomtest.Lettering(&page.Group)
			}
		}
	}
	return views, words
}

// The scale under an enlargement is the one that it is drawn at, in metric rooms too, whose largest scale is larger than that of inches.
func TestEnlargementsSayTheScaleTheyAreDrawnAt(t *testing.T) {
	small := roomtest.Metric() + roomtest.WallMM("A", 2500, 2700, "[[wall.opening]]\nkind = \"built-in\"\nname = \"Niche\"\nfrom_left = 900\nwidth = 700\nsill = 900\nheight = 500\nreveal = 120\nwrap_reveal = true\n")
	seen := 0
	for why, text := range map[string]string{"a niche": small, "a window": roomtest.Metric() + roomtest.WallMM("A", 4000, 2700, roomtest.WindowMM(1200, 1000)),
		"inches": roomtest.Head("in") + roomtest.Wall("A", `12'`, `9'`, roomtest.Window(`4'`, `3' 6`))} {
		_, d := drawnOnce(t, text)
		views, words := enlargements(d)
		for name, v := range views {
			seen++
			assert.Contains(t, words[name], "SCALE "+v.View.Ratio, "%s, %s", why, name)
			if why == "a niche" {
				assert.Equal(t, 10.0, v.View.Scale)
			}
		}
	}
	assert.GreaterOrEqual(t, seen, 2)
}

// An enlargement takes the height that its own stretch of the wall has, not that of the whole wall: a door under the low end of a slope
// is drawn as large as under a ceiling as low.
func TestEnlargementsTakeTheHeightOfTheirStretch(t *testing.T) {
	door := "[[wall.opening]]\nkind = \"door\"\nname = \"D1\"\nfrom_left = \"16'\"\nwidth = \"2' 6\"\nheight = \"4'\"\n"
	slope := roomtest.Head("in") + "[[wall]]\nname = \"A\"\nlength = \"20'\"\nheight = [[\"0\", \"16'\"], [\"12'\", \"5' 6\"], [\"20'\", \"5' 6\"]]\n" + door
	level := roomtest.Head("in") + "[[wall]]\nname = \"A\"\nlength = \"20'\"\nheight = \"5' 6\"\n" + door
	scale := func(text string) float64 {
		_, d := drawnOnce(t, text)
		views, _ := enlargements(d)
		require.Contains(t, views, "D1", strings.SplitN(text, "[[wall]]", 2)[1])
		return views["D1"].View.Scale
	}
	assert.Equal(t, scale(level), scale(slope))
}

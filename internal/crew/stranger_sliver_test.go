package crew_test

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/roomtest"
)

// TestWallsNameWhatComesPastALeaningJoint reads the page of a wall onto which a sheet comes past a joint that leans: which one, where
// its seam stands there, and how wide it gets. Each is held against the pieces of the layout, and the widths that the page gives at
// the head add up to the wall's there.
func TestWallsNameWhatComesPastALeaningJoint(t *testing.T) {
	text := roomtest.Head("in") + "[[wall]]\nname = \"Alder\"\nlength = \"70\"\nheight = \"96\"\ncorner = \"straight\"\nlean = [0, \"3\"]\n" +
		"[[wall]]\nname = \"Birch\"\nlength = \"60\"\nheight = \"96\"\n[[wall.pin]]\nat = \"1 1/2\"\n"
	p := roomtest.Laid(t, "room.toml", text)
	found := 0
	for _, page := range printed(t, p) {
		m := regexp.MustCompile(`(\d+) crosses the joint: seam ` + figure + `, sheet right of it, ` + figure + ` at most`).FindStringSubmatch(page)
		if m == nil {
			continue
		}
		found++
		assert.Equal(t, 0, wallNamed(p, page))
		at, wide := read(t, p, m[2]), read(t, p, m[3])
		low, high := at, at
		for _, s := range p.Runs[0].Sheets {
			if fmt.Sprint(s.Number) != m[1] {
				continue
			}
			for _, q := range s.Pieces {
				for _, pt := range q.Outline {
					if q.Wall == 0 {
						low, high = min(low, pt.X), max(high, pt.X)
					}
				}
			}
		}
		assert.Equal(t, at, low)
		assert.Equal(t, wide, high-low)
		assert.Equal(t, p.Room.Walls[0].Length+p.Room.Walls[0].LeanRight, at+wide, "at the head the wall is 73 in wide")
	}
	require.Equal(t, 1, found, "one wall has one")
	for _, g := range written(t, p, "seam") {
		if strings.Contains(g.facts["data-at"], "1816.1") { // 71 1/2 in along the run
			found++
		}
	}
	assert.Equal(t, 3, found, "its seam is drawn on both walls")
}

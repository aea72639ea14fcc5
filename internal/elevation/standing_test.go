package elevation_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/roomtest"
	"flitchlay/internal/scene"
)

// standing is a wall that leans at both ends, whose floor turns, on which sheets hang already and of which a desk hides the foot.
func standing() string {
	return roomtest.Head("in") + roomtest.Wall("North", `14'`, `9'`) + `hidden_below = "2' 6"
lean = ["1/4", "-3/8"]
floor = [[0, 0], ["5'", "-1/2"], ["14'", "-1"]]
right_end = "trim"
crown = "8"
base = "8"
[[hung]]
wall = "North"
sheet = 1
seam = "1' 10"
[[hung]]
wall = "North"
sheet = 2
seam = ["3' 9 1/2", "3' 9 5/8"]
`
}

// The elevation says what the wall is like before it is covered: how far each end leans and which way, where the floor turns and how
// high it is there, below what the covering is hidden, which sheets hang already and where their last seam was read; all labelled.
func TestElevationsSayWhatStands(t *testing.T) {
	p, d := Drawn(t, standing())
	require.Len(t, p.Room.Hung, 2)
	views := roomtest.ElevationViews(d)
	require.Len(t, views, 1)
	say := func(class string) []string {
		var list []string
		for _, g := range roomtest.Classed(views[0], class) {
			list = append(list, strings.Join(roomtest.Lettering(g), " "))
		}
		return list
	}
	assert.Equal(t, []string{`leans 1/4" right at the head`, `leans 3/8" left at the head`}, say("lean"))
	assert.Equal(t, []string{`hidden below 2'-6"`}, say("hidden"))
	assert.Equal(t, []string{"hung already"}, say("hung"))
	assert.Equal(t, []string{"base", "crown"}, say("trim"))
	var turns []string
	for _, g := range roomtest.Classed(views[0], "dimension") {
		if roomtest.Fact(g, "tier") == "floor" {
			turns = append(turns, roomtest.Lettering(g)...)
		}
	}
	assert.Equal(t, []string{`5'-0"`, `9'-0"`}, turns)
	assert.Equal(t, []string{`0"`, `-1/2"`, `-1"`}, say("floor-level"))
	words := strings.ReplaceAll(roomtest.Texts(d.Pages), "\n", " ")
	style := p.Room.Hung[1]
	assert.Contains(t, words, "Hung already on North: sheets 1 to 2, seam at ")
	assert.NotEqual(t, style.Seam, style.Top)
	assert.Contains(t, words, "at the floor, ")
	for _, page := range d.Pages {
		assert.Empty(t, scene.Overlaps(page, 0.5), page.Name)
	}
}

// A wall that is plumb, level and bare is said nothing of.
func TestNothingIsSaidOfAPlumbWall(t *testing.T) {
	_, d := Drawn(t, roomtest.Head("in")+roomtest.Wall("North", `14'`, `9'`))
	for _, v := range roomtest.ElevationViews(d) {
		for _, class := range []string{"lean", "hidden", "hung", "floor-level", "cloud", "level-line"} {
			assert.Empty(t, roomtest.Classed(v, class), class)
		}
	}
}

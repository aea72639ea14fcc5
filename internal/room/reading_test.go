package room

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What a reading makes of a wall of 12 ft by 8 ft, worked by hand; the level line is at 4 ft.
func TestReadingsChangeWallsWhereTheyWereRead(t *testing.T) {
	read := func(text string) *Room {
		r, err := Decode("room.toml", []byte(least+"[[reading]]\nwall = 'Wall 1'\n"+text))
		require.NoError(t, err)
		now := r.AsRead()
		assert.Equal(t, in("12'"), r.Walls[0].Length, "the room itself stays")
		assert.Equal(t, r.Walls[1].Length, now.Walls[1].Length)
		return now
	}
	w := read("length = \"12' 1\"").Walls[0]
	assert.Equal(t, in("12' 1"), w.Length)
	for _, x := range []string{"0", "6'", "12'", "12' 1"} {
		assert.Equal(t, []L{0, in("8'")}, []L{At(w.Floor, in(x)), At(w.Ceiling, in(x))}, "the heights go on level")
	}
	w = read("length = \"11'\"\nceiling_up = [\"4'\", \"4' 1\"]").Walls[0]
	assert.Equal(t, []Point{{0, in("8'")}, {in("11'"), in("8' 1")}}, w.Ceiling, "the right one is at the end as read")
	assert.Equal(t, []Point{{0, 0}, {in("11'"), 0}}, w.Floor)

	w = read("floor_down = [[24, \"4' 1\"], [\"6'\", \"4'\"]]").Walls[0]
	assert.Equal(t, []L{in("-1"), in("-1"), in("-1/2"), 0, 0}, []L{At(w.Floor, 0), At(w.Floor, in("24")), At(w.Floor, in("4'")), At(w.Floor, in("6'")), At(w.Floor, in("12'"))},
		"evenly between two places, and past the outermost as there")

	r := read("lean = [\"-1/8\", \"1/4\"]")
	assert.Equal(t, []L{in("-1/8"), in("1/4")}, []L{r.Walls[0].LeanLeft, r.Walls[0].LeanRight})
	assert.Equal(t, in("1/4"), r.Walls[1].LeanLeft, "the next wall leans as this one at their corner, while nothing says otherwise")

	r = read("length = \"12' 1/40\"\nlean = \"-1/40\"\nfloor_down = \"47 39/40\"")
	w = r.Walls[0]
	assert.Equal(t, []L{in("12'"), 0, 0}, []L{w.Length, w.LeanRight, At(w.Floor, 0)}, "what prints alike is as planned")
}

// What hangs was measured from where the corner crosses the level line, and stays as far from there.
func TestWhatHangsMovesWithTheCornerAsRead(t *testing.T) {
	r, err := Decode("room.toml", []byte(least+"[[hung]]\nwall='Wall 1'\nsheet=1\nseam=20\n[[reading]]\nwall='Wall 1'\nlean=[1, 0]\n"))
	require.NoError(t, err)
	assert.Equal(t, in("20"), r.Hung[0].Seam)
	assert.Equal(t, in("20 1/2"), r.AsRead().Hung[0].Seam, "half of the lean of 1 in, at half the height")
}

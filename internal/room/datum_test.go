package room

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/length"
)

// TestDatumIsWhereTheCornerCrossesTheLevelLine takes a corner that leans 1/2 in over 8 ft: 1/4 in at 4 ft, 3/16 in at 3 ft.
func TestDatumIsWhereTheCornerCrossesTheLevelLine(t *testing.T) {
	at := func(level, floor, lean string) length.Length {
		r, err := Decode("r.toml", []byte("[project]\ntitle = 't'\n[veneer]\ngross_width = '24 1/2'\noverlap = 1\nlength = \"12'\"\n[room]\nlevel_line = '"+level+"'\n[[wall]]\nlength = \"20'\"\nheight = \"8'\"\nfloor = ['"+floor+"', '0']\nlean = ["+lean+"]\n"))
		require.NoError(t, err)
		return r.Datum(0)
	}
	assert.Equal(t, length.Inch/4, at("48", "0", "'1/2', 0"))
	assert.Equal(t, -length.Inch/4, at("48", "0", "'-1/2', 0"))
	assert.Equal(t, length.Inch*3/16, at("36", "0", "'1/2', 0"))
	assert.Equal(t, length.Inch*3/16, at("60", "38 2/5", "'1/2', 0"), "21.6 in of 57.6 in are three eighths of it")
	assert.Zero(t, at("48", "0", "0, '1/2'"), "the right end leans")
	assert.Zero(t, at("48", "50", "'1/2', 0"), "the floor stands over the line: from the floor")
}

// TestLeanGoesOnPastFloorAndCeiling takes a right end that leans 1 in over a room 100 in high, on a floor that falls by 4 in.
func TestLeanGoesOnPastFloorAndCeiling(t *testing.T) {
	w := Wall{Length: 100 * length.Inch, LeanRight: length.Inch, Floor: []Point{{0, 0}, {100 * length.Inch, -4 * length.Inch}}, Ceiling: []Point{{0, 96 * length.Inch}, {100 * length.Inch, 96 * length.Inch}}}
	for z, want := range map[length.Length]length.Length{-4: 0, 96: 100, 46: 50, -9: -5, 101: 105} {
		assert.Equal(t, want*length.Inch/100, w.LeanAt(true, z*length.Inch), "%d in", z)
	}
	assert.Zero(t, w.LeanAt(false, 50*length.Inch))
}

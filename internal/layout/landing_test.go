package layout

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/finding"
	"flitchlay/internal/length"
)

// landing is a wall of 12 ft over a landing at 8 ft, with sheets of 8 ft: the joint stands at 7 ft, under the landing.
// The flitch has exactly what the wall takes: two sheets a place where the floor is low, one over the landing.
const landing = `
[project]
title = "Landing"
[veneer]
gross_width = 24.5
overlap = 1
length = "8'"
cut = "plain"
[rules]
bottom_trim = "3"
joint_height = "7'"
[[flitch]]
number = "L-1"
sheets = "1-6"
[room]
base = 0
[[wall]]
name = "Stair"
length = 91
left_end = "casing"
right_end = "casing"
height = "12'"
floor = [["0", "0"], [45.5, 0], [45.5, "8'"], [91, "8'"]]
`

// A sheet over a landing above the joint has no sheet under it: it takes the trim at its foot, and no number goes to
// stock for what the landing takes.
func TestNothingBelowTheJoint(t *testing.T) {
	p := lay(t, landing)
	r := p.Runs[0]
	assert.Empty(t, messages(p, finding.FlitchShort), "six sheets are enough")
	assert.Empty(t, messages(p, finding.SheetInGap))
	require.Equal(t, []int{1, 2, 3, 4, 5, 6}, numbersOf(r), "no number is left out")
	for k, s := range r.Sheets {
		over := s.Left >= 45*length.Inch
		switch {
		case over: // 48 + 2 + 3, hung as its neighbours of the upper course
			assert.Equal(t, 2, s.Course, "sheet %d", k+1)
			assert.True(t, s.Lowest)
			assert.Equal(t, 53*length.Inch, s.CutLength, "sheet %d", k+1)
		case s.Course == 1: // 84 + 3 + 1/2 + 1/2
			assert.Equal(t, 88*length.Inch, s.CutLength, "sheet %d", k+1)
		default: // 60 + 2 + 1
			assert.False(t, s.Lowest)
			assert.Equal(t, 63*length.Inch, s.CutLength, "sheet %d", k+1)
		}
	}
}

func numbersOf(r Run) []int {
	var out []int
	for _, s := range r.Sheets {
		out = append(out, s.Number)
	}
	return out
}

// A seam in the strip of a straight joint that leans shows for the height of the wall it stands on at the floor; beside
// a corner that leans as much it shows for that of the wall at the left.
func TestStraightJointSweepsNothing(t *testing.T) {
	for kind, seen := range map[string]L{"straight": 90 * length.Inch, "inside": 100 * length.Inch} {
		p := lay(t, `[project]
title = "Joint"
[veneer]
gross_width = 24.5
overlap = 1
length = "10'"
[rules]
corner_return = 0
prefer_return = 0
[room]
base = 0
[[wall]]
name = "West"
length = 94
height = 100
corner = "`+kind+`"
lean = [0, 2]
[[wall]]
name = "East"
length = 92
height = 90
lean = [2, 0]
[[wall.pin]]
at = 1
`)
		at := -1
		for k, s := range p.Runs[0].Seams {
			if s.Wall == 1 && s.X == length.Inch {
				at = k
			}
		}
		require.GreaterOrEqual(t, at, 0, "the pin is kept")
		assert.Equal(t, seen, p.Runs[0].Seams[at].Seen, kind)
	}
}

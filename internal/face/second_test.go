package face

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"flitchlay/internal/length"
	"flitchlay/internal/roomtest"
)

// Worked by hand: the level line is at 4'-0" over a floor that is level for 4 ft and then climbs by 6 ft over 12 ft, so that it
// comes to the line 12 ft from the left; half way to its end it is 1 ft over the line, and 4 ft more are best for the hand.
func TestASecondLevelLineWhereTheFirstIsOutOfReach(t *testing.T) {
	ft := length.Foot
	stair := func(floor string) []Second {
		p := roomtest.Laid(t, "room.toml", roomtest.Head("in")+roomtest.Wall("Stair", "16'", "14'")+"floor = "+floor+"\n")
		list := seconds(p.Room, &p.Room.Walls[0])
		for i, s := range All(p)[0].Seconds() { // struck as far as its sheets come, so at least to the seam before
			assert.LessOrEqual(t, s.From, list[i].From)
			assert.Less(t, list[i].From-s.From, p.Room.Veneer.GrossWidth)
			assert.Equal(t, Second{s.No, list[i].From, list[i].To, s.By}, list[i])
			edge := s.From == list[i].From
			for _, x := range All(p)[0].Seams {
				edge = edge || x.X == s.From
			}
			assert.True(t, edge, "from a seam on")
		}
		return list
	}
	assert.Equal(t, []Second{{2, 12 * ft, 16 * ft, 5 * ft}}, stair(`[[0, 0], ["4'", 0], ["16'", "6'"]]`))
	assert.Empty(t, stair(`[[0, 0], ["4'", 0], ["16'", "4'"]]`), "a floor that only comes to the line")
	// down to 9 ft under the line: from 7 ft under it, 9 1/2 ft from the left, the floor is 8 ft under it in the middle
	assert.Equal(t, []Second{{2, ft * 48 / 5, 16 * ft, -4 * ft}}, stair(`[0, "-5'"]`))
	assert.Empty(t, stair(`[0, "-3'"]`), "seven feet are in reach")
	assert.Equal(t, []Second{{2, 8 * ft, 16 * ft, 6 * ft}}, stair(`[[0, 0], ["8'", 0], ["8'", "6'"], ["16'", "6'"]]`), "a landing")
}

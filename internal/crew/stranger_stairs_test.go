package crew

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/roomtest"
)

// The stair climbs by 64 in from 44 1/2 in to 148 1/2 in, and its level line is 48 in over its foot; the landing is 16 in over that.
// The words of the second line name the first by a whole number of feet, and slopes say what a bevel square is set to.
func TestStairsHaveASecondLineAndBevels(t *testing.T) {
	p := roomtest.Laid(t, "stair.toml", strangers(t)["stair"])
	d, err := Install(p, roomtest.Template(t, "ansi-a"))
	require.NoError(t, err)
	all := strings.Join(strings.Fields(roomtest.Texts(d.Pages)), " ")
	assert.Contains(t, all, "line 2 on Stair wall, struck from it: 5'-0\" over it")
	assert.Contains(t, all, "LINE 2: 5'-0\" over the level line, from")
	// the landing is covered from 16 in over the first line up to where courses meet, 21 in over it, and sheets are cut 1 in past that
	assert.Contains(t, all, "13, 15: HANG its raw head 3'-2\" under LINE 2")
	// sheet 9 lies wholly on the slope: as much as its two edges differ
	assert.Contains(t, all, "FOOT SLOPES: 1'-7 5/8\" down at left edge, 4 1/4\" down at other edge; bevel, to the right, 15 3/8\" up in 24 1/2\"")
}

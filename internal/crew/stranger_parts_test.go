package crew_test

import (
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/length"
)

// TestPiecesHangRoundTheirOpening reads of every card that falls into an upper and a lower piece where both hang: each is as long as its
// ends are apart, and what is left free between them is an opening of its wall, from sill to head.
func TestPiecesHangRoundTheirOpening(t *testing.T) {
	falls := regexp.MustCompile(`FALLS INTO 2 PIECES: upper piece ` + figure + ` long, hangs ` + figure + ` (up|down) to ` + figure + ` (up|down)(?:, from line 2)? lower piece ` + figure + ` long, hangs ` + figure + ` (up|down) to ` + figure + ` (up|down)`)
	found := 0
	for _, file := range []string{"oldhouse", "tall14", "winwall"} {
		p := rooms(t)[file]
		for _, c := range cardsOf(t, p) {
			m := falls.FindStringSubmatch(c.words)
			if m == nil {
				continue
			}
			_, s := sheetOf(t, p, c.number)
			at := func(k int) length.Length {
				if z := read(t, p, m[k]); m[k+1] == "up" {
					return z
				} else {
					return -z
				}
			}
			assert.Equal(t, read(t, p, m[1]), at(4)-at(2), "%s: %s", file, m[0])
			assert.Equal(t, read(t, p, m[6]), at(9)-at(7), "%s: %s", file, m[0])
			assert.True(t, near(s.Above, at(4)) && near(-s.Below, at(7)), "its ends as cut: %s", m[0])
			free := false
			for _, o := range p.Room.Walls[s.Pieces[0].Wall].Openings {
				free = free || near(o.Sill-p.Room.Space.LevelLine, at(9)) && near(o.Head-p.Room.Space.LevelLine, at(2))
			}
			assert.True(t, free, "%s: %s", file, m[0])
			if at(2) > 0 && at(9) < 0 {
				assert.Contains(t, c.words, "0, cut out", "its mark goes with the opening")
				assert.NotContains(t, c.words, "MARK = 0")
			}
			found++
		}
	}
	require.GreaterOrEqual(t, found, 2)
}

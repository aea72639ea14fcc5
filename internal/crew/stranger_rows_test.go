package crew_test

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/length"
)

// TestRowsOfTheCutListAddUp reads every row of the cut list as who cuts does: its length, where its ends are, what is ripped off at which
// edge, and the wall it is for. They are those of the layout, and what is over the mark and under it comes to the length, to the last
// figure printed.
func TestRowsOfTheCutListAddUp(t *testing.T) {
	updown := regexp.MustCompile(`^` + figure + ` (up|down)$`)
	along := regexp.MustCompile(`^` + figure + `( left of 0)?$`)
	added, ripped := 0, 0
	for file, p := range rooms(t) {
		for _, row := range cutListOf(t, p) {
			s, words := row.sheet, row.words
			require.GreaterOrEqual(t, len(words), 5, "%s: %s", file, words)
			assert.Equal(t, s.Flitch, words[0], file)
			assert.True(t, near(s.CutLength, read(t, p, words[1])), "%s: sheet %d is cut %s", file, s.Number, words[1])
			all := strings.Join(words, " ")
			ends := [2]length.Length{}
			n := 0
			for i, word := range words[2:4] {
				if m := updown.FindStringSubmatch(word); m != nil && !row.run.Up {
					ends[i] = read(t, p, m[1])
					if m[2] == "down" {
						ends[i] = -ends[i]
					}
					n++
				} else if m := along.FindStringSubmatch(word); m != nil && row.run.Up {
					ends[i] = -read(t, p, m[1])
					if m[2] != "" {
						ends[i] = -ends[i]
					}
					n++
				}
			}
			if n == 2 {
				assert.Equal(t, read(t, p, words[1]), ends[0]-ends[1], "%s: sheet %d: %s", file, s.Number, all)
				added++
			}
			switch {
			case s.Ripped == "":
				assert.NotRegexp(t, `\b(LEFT|RIGHT|LOWER|UPPER)\b`, all, file)
			case !strings.Contains(all, "to gap"):
				side := strings.ToUpper(s.Ripped)
				if row.run.Up {
					side = map[string]string{"LEFT": "LOWER", "RIGHT": "UPPER"}[side]
				}
				m := regexp.MustCompile(`(LEFT|RIGHT|LOWER|UPPER) ` + figure + ` `).FindStringSubmatch(all)
				require.NotNil(t, m, "%s: sheet %d: %s", file, s.Number, all)
				assert.Equal(t, side, m[1], "%s: sheet %d", file, s.Number)
				assert.True(t, near(s.RipTo, read(t, p, m[2])), "%s: sheet %d stays %s", file, s.Number, m[2])
				ripped++
			}
			onOne := false
			for _, piece := range s.Pieces {
				onOne = onOne || strings.Contains(all, p.Room.Walls[piece.Wall].Name)
			}
			assert.True(t, onOne, "%s: sheet %d", file, s.Number)
		}
	}
	assert.Greater(t, added, 100)
	assert.Greater(t, ripped, 15)
}

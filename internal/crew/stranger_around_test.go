package crew_test

import (
	"regexp"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/layout"
)

// TestSheetsGoOnAsFarAsTheNextPageSays reads over a corner how far a sheet goes on round it, and finds its seam there on the next
// wall, from where that wall's corner crosses the level line; that wall's tape list has the same figure.
func TestSheetsGoOnAsFarAsTheNextPageSays(t *testing.T) {
	said := regexp.MustCompile(`(C\d+) (?:in|out): (?:\d+\+)?(\d+) goes on ` + figure + ` to its seam, at level`)
	found := 0
	for file, p := range rooms(t) {
		pages := printed(t, p)
		for _, page := range pages {
			for _, m := range said.FindAllStringSubmatch(page, -1) {
				found++
				r, s := sheetOf(t, p, m[2])
				i := slices.IndexFunc(r.Corners, func(c layout.Corner) bool { return c.Name == m[1] })
				require.GreaterOrEqual(t, i, 0, m[0])
				wall := r.Corners[i].RightWall
				_, st := stretchOf(p, wall)
				seam := s.Right - st.Shift - cornerAt(p, wall, false, p.Room.Space.LevelLine)
				at := read(t, p, m[3])
				assert.True(t, near(seam, at) || r.Closed && near(seam-r.Length, at), "%s: %s, the seam is at %s", file, m[0], p.Style.Format(seam))
				next := regexp.MustCompile(`TAPE LIST.*\b` + m[2] + `\b.* ` + regexp.QuoteMeta(m[3]))
				assert.True(t, slices.ContainsFunc(pages, func(other string) bool { return shows(p, other, wall) && next.MatchString(other) }), "%s: %s is not in the list of the next page", file, m[0])
			}
		}
	}
	assert.GreaterOrEqual(t, found, 8)
}

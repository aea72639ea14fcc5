package layout_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"flitchlay/internal/roomtest"
)

// TestSeamsAreNamedByTheirSheets takes a flitch that begins with 4 and whose sheet 6 is damaged.
func TestSeamsAreNamedByTheirSheets(t *testing.T) {
	p := roomtest.SmallPlan(t)
	r := &p.Runs[0]
	var names []string
	for i := range r.Seams[:3] {
		names = append(names, p.SeamName(r, &r.Seams[i]))
	}
	assert.Equal(t, []string{"4 | 5, Bar", "5 | 7, Bar", "7 | 8, Bar"}, names)
	assert.Equal(t, "?", p.PlaceName(r, 99), "no place")
	tall := roomtest.Laid(t, "room.toml", roomtest.OddRooms["a tall wall in two courses"])
	assert.Regexp(t, `^\d+\+\d+ \| \d+\+\d+, `, tall.SeamName(&tall.Runs[0], &tall.Runs[0].Seams[0]), "lower course first")
}

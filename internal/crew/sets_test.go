package crew

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/folio"
	"flitchlay/internal/roomtest"
	"flitchlay/internal/submittal"
)

// The days stand in the install set between the room start and the walls, with the readings of the site, what the site is held to in the submittal set behind the cover.
func TestSetsHoldTheDaysAndTheSite(t *testing.T) {
	p := roomtest.Laid(t, "room.toml", roomtest.Head("in")+roomtest.Wall("North", `12'`, `9'`))
	var titles []string
	for _, l := range NewSet(p, roomtest.Template(t, "ansi-a"), "Install").installPages() {
		titles = append(titles, l.Key)
	}
	require.Greater(t, len(titles), 3)
	assert.Equal(t, []string{"start", "days", "site"}, titles[:3])
	s := folio.NewSet(p, roomtest.Template(t, "ansi-b"), nil, "Submittal")
	s.Number(submittal.Submittal)
	assert.Equal(t, "Z-002", s.PageOf("site"))
}

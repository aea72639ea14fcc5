package submittal

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/roomtest"
)

// Every wall is named on the plan with its sheets, also one that has no room outside: a pier between two walls that stand
// back to back.
func TestEveryWallIsNamedOnThePlan(t *testing.T) {
	text := strings.Replace(roomtest.Head("in"), "sheets = \"1-60\"\nspare = 2\n", "sheets = \"1-10\"\n[[flitch]]\nnumber = \"F-312\"\nsheets = \"201-240\"\n", 1) +
		roomtest.Wall("Entry", `7' 3`, `9'`) + roomtest.Outside(roomtest.Wall("Long", `24' 9`, `9'`)) + roomtest.Window(`9'`, `3' 6`) + roomtest.Outside(roomtest.Wall("Pier", `14`, `9'`)) + roomtest.Wall("Back", `11' 5`, `9'`)
	plan := roomtest.Laid(t, "room.toml", text)
	d, err := Photographed(plan, roomtest.Template(t, "ansi-b"), nil, nil)
	require.NoError(t, err)
	for _, p := range d.Pages {
		if p.Title != "ROOM KEY" {
			continue
		}
		views := roomtest.Classed(&p.Group, "view")
		assert.Len(t, views, 1)
		words := roomtest.Lettering(views[0])
		for _, w := range plan.Room.Walls {
			assert.Contains(t, words, w.Name)
		}
		return
	}
	assert.Fail(t, "no key of the room")
}

package pages

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Every wall is named on the plan with its sheets, also one that has no room outside: a pier between two walls that stand
// back to back.
func TestEveryWallIsNamedOnThePlan(t *testing.T) {
	text := strings.Replace(head("in"), "sheets = \"1-60\"\nspare = 2\n", "sheets = \"1-10\"\n[[flitch]]\nnumber = \"F-312\"\nsheets = \"201-240\"\n", 1) +
		wall("Entry", `7' 3`, `9'`) + outside(wall("Long", `24' 9`, `9'`)) + window(`9'`, `3' 6`) + outside(wall("Pier", `14`, `9'`)) + wall("Back", `11' 5`, `9'`)
	plan, d := drawn(t, text)
	for _, p := range d.Pages {
		if p.Title != "ROOM KEY" {
			continue
		}
		views := classed(&p.Group, "view")
		assert.Len(t, views, 1)
		words := lettering(views[0])
		for _, w := range plan.Room.Walls {
			assert.Contains(t, words, w.Name)
		}
		return
	}
	assert.Fail(t, "no key of the room")
}

package submittal

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"flitchlay/internal/roomtest"
)

// A firebox whose clearance to what burns is not stated is an open question of the cover; one that is given is stated with the
// material, and asked no more. Nothing is asked of another opening.
func TestAFireboxAsksForItsClearance(t *testing.T) {
	const opening = "[[wall.opening]]\nkind = \"fireplace\"\nname = \"Hearth\"\nfrom_left = \"4'\"\nwidth = \"4'\"\nheight = \"3'\"\n"
	drawn := func(openings string) string {
		var d drawnList
		d.draw(roomtest.Laid(t, "room.toml", roomtest.Head("in")+roomtest.Wall("Chimney", `14'`, `8'`)+openings), roomtest.Template(t, "ansi-b"))
		return running(coversOf(d.pages))
	}
	questions := func(all string) string {
		_, list, _ := strings.Cut(all, "OPEN QUESTIONS ")
		list, _, _ = strings.Cut(list, "DRAWINGS ")
		return list
	}
	const asked = "Which clearance to combustibles does fireplace Hearth on wall Chimney ask for, by the local code or the listing of the appliance?"
	assert.Contains(t, questions(drawn(opening)), asked)
	given := drawn(opening + "clearance = \"8\"\n")
	assert.NotContains(t, given, "combustibles")
	assert.Contains(t, given, "8\" from fireplace Hearth on wall Chimney to what burns, as stated")
	none := drawn(opening + "clearance = 0\n")
	assert.NotContains(t, none, "combustibles", "0 is an answer too")
	assert.NotContains(t, drawn(strings.Replace(opening, "fireplace", "built-in", 1)), "combustibles")
}

package submittal

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
	"flitchlay/internal/layout"
	"flitchlay/internal/roomtest"
	"flitchlay/internal/scene"
)

var (
	openingHead = regexp.MustCompile(`(?m)^\[\[wall\.opening\]\]$`)
	wallHead    = regexp.MustCompile(`(?m)^\[\[wall\]\]$(\nname = .*)?`)
)

// longNamed gives a room names, notes and references as long as people write them.
func longNamed(text string) string {
	n := 0
	count := func(format string) func(string) string {
		return func(string) string { n++; return fmt.Sprintf(format, n) }
	}
	text = strings.ReplaceAll(text, `"Wall 1"`, `"North wall 1 of the reading room behind the long reference desk"`)
	text = wallHead.ReplaceAllStringFunc(text, count("[[wall]]\nname = \"North wall %d of the reading room behind the long reference desk\"\nref = \"elevation %[1]d on A-712\""))
	n = 0
	text = openingHead.ReplaceAllStringFunc(text, count("[[wall.opening]]\nname = \"WINDOW-%d-OVER-THE-BENCH\""))
	text = strings.Replace(text, `title = "Random"`, `title = "Harbour Lane Library and Community Centre: reading room on the second level, and the gallery"
room = "214 and 215, reading room with gallery"
place = "Level 2, north wing, by the old stair"
for = "Osprey, Vane, Alder and Partners, Architects and Planners"
by = "Northlight Architectural Finishes and Restoration"
section = "09 72 00, wood veneer wall covering"
tag = "WD-1, white oak, quarter cut"
drawn = 2026-04-14
measured = 2026-04-10`, 1)
	text += "\n[[project.revision]]\nmark = \"A\"\ndate = 2026-05-02\nnote = \"Every window of the north wing moved three inches to the left as the architect asked, and the doors with them\"\n"
	return text
}

// Nothing on a page of the set is cut by dots: what is long stands on more lines, smaller, or is said elsewhere. Tried on random rooms
// whose names are as long as people write them; TestNothingOverlapsOnAnyPageOfTheSubmittalSet tries all others.
func TestNothingIsCutByDots(t *testing.T) {
	papers := []string{"ansi-b", "a4", "a3", "arch-d", "ansi-a"}
	n := 0
	roomtest.RandomPlans(t, effort.Of(3, 40), func(seed uint64, text string, _ *layout.Plan) {
		paper := papers[n%len(papers)]
		n++
		d, err := Photographed(roomtest.Laid(t, "room.toml", longNamed(text)), roomtest.Template(t, paper), nil, nil)
		require.NoError(t, err)
		for _, page := range d.Pages {
			page.Texts(func(x *scene.Text) {
				assert.NotContains(t, x.String, "…", "seed %d, page %s on %s", seed, page.Name, paper)
			})
		}
	})
}

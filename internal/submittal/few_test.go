package submittal

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/roomtest"
)

// A small room takes few pages also on small paper: one wall, four feet wide, six of them, and nobody is handed a plan of one line.
func TestANicheTakesSixPages(t *testing.T) {
	text := roomtest.Head("in") + strings.Replace(roomtest.Wall("Niche", `4'`, `8'`, roomtest.Box("outlet", `3' 4`, `1' 4`)), "[[wall.box]]", "left_end = \"inside corner\"\nright_end = \"inside corner\"\n[[wall.box]]", 1)
	for paper, most := range map[string]int{"a4": 6, "ansi-a": 7} { // letter is shorter
		d, err := Photographed(roomtest.Laid(t, "room.toml", text), roomtest.Template(t, paper), nil, nil)
		require.NoError(t, err)
		var titles []string
		for _, p := range d.Pages {
			titles = append(titles, p.Title)
		}
		assert.LessOrEqual(t, len(titles), most, "%s: %s", paper, strings.Join(titles, ", "))
		assert.NotContains(t, titles, "ROOM KEY")
	}
}

// The reviews have their room on the cover and on every drawing; a page of nothing but lists takes it where the strip has a band for them.
func TestListsTakeTheRoomOfTheReviews(t *testing.T) {
	for paper, taken := range map[string]bool{"a4": true, "ansi-b": false} {
		d, err := Photographed(roomtest.Laid(t, "room.toml", roomtest.Samples(t)["samples reading-room.toml"]), roomtest.Template(t, paper), nil, nil)
		require.NoError(t, err)
		lists := 0
		for i, p := range d.Pages {
			list := i > 0 && strings.HasPrefix(p.Name, "Z-0") || strings.HasPrefix(p.Name, "Z-6")
			if list {
				lists++
			}
			assert.Equal(t, taken && list, len(p.Keep) == 0, "%s on %s", p.Name, paper)
		}
		assert.Positive(t, lists)
	}
}

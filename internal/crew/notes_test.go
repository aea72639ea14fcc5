package crew

import (
	"maps"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/roomtest"
	"flitchlay/internal/scene"
)

// TestWhatHasNoRoomIsPointedTo follows the page number under a tape list that has no room for its words to the end of the cut
// list, and finds them there under the wall's name. No page is made for them but by the cut list.
func TestWhatHasNoRoomIsPointedTo(t *testing.T) {
	texts := map[string]string{"oldhouse": strangers(t)["oldhouse"]}
	maps.Copy(texts, map[string]string{
		"two courses round a corner": strings.Replace(roomtest.Head("in"), "[room]", "[room]\nclosed = true", 1) +
			roomtest.Wall("High", `23'`, `18'`, "lean = ['1/4', '-1/2']\n", roomtest.Door(`4'`, `5'`)) + roomtest.Wall("Deep", `23'`, `18'`) + roomtest.Wall("Far", `23'`, `18'`) + roomtest.Wall("Near", `23'`, `18'`),
	})
	pointer, found := regexp.MustCompile(`^more: page (\d+)$`), 0
	for _, name := range slices.Sorted(maps.Keys(texts)) {
		p := roomtest.Laid(t, name+".toml", texts[name])
		d, err := Install(p, roomtest.Template(t, "ansi-a"))
		require.NoError(t, err)
		for _, page := range d.Pages {
			assert.NotContains(t, page.Title, "notes", name)
			for _, s := range TextsOf(&page.Group) {
				m := pointer.FindStringSubmatch(s)
				if m == nil {
					continue
				}
				found++
				n, err := strconv.Atoi(m[1])
				require.NoError(t, err)
				there := roomtest.Texts([]*scene.Page{d.Pages[n-1]})
				assert.Equal(t, "Cut list", d.Pages[n-1].Title, "%s: %s", name, s)
				assert.Contains(t, there, page.Title+", tape list", "%s: %s", name, s)
			}
		}
	}
	assert.Positive(t, found)
}

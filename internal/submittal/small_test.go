package submittal

import (
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
	"flitchlay/internal/layout"
	"flitchlay/internal/roomtest"
	"flitchlay/internal/scene"
)

// On the smallest paper nothing touches either, whatever the room, and what stands in lists and notes pushes nothing off its page. No
// wall is drawn there much smaller than it can be read: rather its notes stand on the next page.
func TestSmallPaperHoldsAnyRoom(t *testing.T) {
	views, small := 0, 0
	roomtest.RandomPlans(t, effort.Of(4, 56), func(seed uint64, _ string, p *layout.Plan) {
		d, err := Photographed(p, roomtest.Template(t, "a4"), nil, nil)
		require.NoError(t, err)
		for _, page := range d.Pages {
			for _, o := range scene.Overlaps(page, 0.5) {
				t.Errorf("seed %d, %s: %v", seed, page.Name, o)
			}
			if !strings.HasPrefix(page.Title, "ELEVATION") {
				continue
			}
			for _, v := range roomtest.Classed(&page.Group, "view") {
				scale, err := strconv.Atoi(roomtest.Fact(v, "scale"))
				require.NoError(t, err)
				assert.LessOrEqual(t, scale, 64, "seed %d, %s", seed, page.Name)
				if views++; scale > 50 {
					small++
				}
			}
		}
	})
	assert.Greater(t, views, 10)
	assert.LessOrEqual(t, small, views/100, "walls drawn smaller than 1:50")
}

package submittal

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
	"flitchlay/internal/layout"
	"flitchlay/internal/roomtest"
	"flitchlay/internal/scene"
)

// The numbers of an enlargement stand over it, each on a leader into its sheet: in the field a narrow sheet's number would stand on its
// neighbour. In the field is what does not reach up to the edge, under an opening or another course, and level grain.
func TestNumbersOfEnlargementsStandOverThem(t *testing.T) {
	over, in := 0, 0
	count := func(d *scene.Document) {
		for _, p := range d.Pages {
			for _, v := range roomtest.Classed(&p.Group, "view") {
				if roomtest.Fact(v, "opening") == "" {
					continue
				}
				balloons := len(roomtest.Classed(v, "balloon"))
				over += balloons
				in += len(roomtest.Classed(v, "sheet-number")) - balloons
			}
		}
	}
	for name, text := range roomtest.Samples(t) {
		if name := strings.Fields(name); name[1] == "corridor.toml" || name[1] == "reading-room.toml" {
			_, d := drawnOnce(t, text)
			count(d)
		}
	}
	assert.Greater(t, over, 10)
	assert.Zero(t, in)
	roomtest.RandomPlans(t, effort.Of(4, 60), func(_ uint64, text string, p *layout.Plan) {
		if strings.Contains(text, `"horizontal"`) {
			return
		}
		for i := range p.Runs {
			if len(p.Runs[i].Joints) > 0 {
				return
			}
		}
		d, err := Photographed(p, roomtest.Template(t, "ansi-b"), nil, nil)
		require.NoError(t, err)
		count(d)
	})
	assert.LessOrEqual(t, in, over/20, "numbers in the field")
}

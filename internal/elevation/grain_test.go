package elevation_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/roomtest"
	"flitchlay/internal/scene"
)

// Grain is as dense on paper at every scale, straight grain and cathedrals: lines of it over a millimetre, half way up the wall.
func TestGrainIsAsDenseOnPaperAtEveryScale(t *testing.T) {
	for _, cut := range []string{"quarter", "plain"} {
		least, most := math.Inf(1), 0.0
		scales := map[float64]bool{}
		for _, walls := range []string{roomtest.Wall("North", `12'`, `6'`), roomtest.Wall("North", `25'`, `8'`), roomtest.Wall("North", `30'`, `9'`), roomtest.Wall("North", `20'`, `16'`)} {
			_, d := Drawn(t, strings.Replace(roomtest.Head("in"), `cut = "plain"`, `cut = "`+cut+`"`, 1)+walls)
			v := roomtest.ElevationViews(d)[0]
			box, lines := v.View.Box, 0
			y := (box.Y0 + box.Y1) / 2
			v.Walk(func(it scene.Item) {
				path, ok := it.(*scene.Path)
				if !ok || path.Layer != scene.Grain {
					return
				}
				for i := 1; i < len(path.Steps); i++ {
					if a, b := path.Steps[i-1], path.Steps[i]; b.Kind == scene.LineTo && (a.P.Y-y)*(b.P.Y-y) < 0 {
						lines++
					}
				}
			})
			dense := float64(lines) / box.W()
			least, most = math.Min(least, dense), math.Max(most, dense)
			scales[v.View.Scale] = true
		}
		require.GreaterOrEqual(t, len(scales), 3, "scales")
		assert.Greater(t, least, 1.2, "lines over a millimetre, %s", cut)
		assert.Less(t, most/least, 1.35, "%s: from %.2f to %.2f over a millimetre", cut, least, most)
	}
}

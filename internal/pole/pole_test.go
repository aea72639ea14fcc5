package pole

import (
	"math"
	"regexp"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/roomtest"
	"flitchlay/internal/scene"
	"flitchlay/internal/svg"
)

func TestPoleIsTrueToScale(t *testing.T) {
	p := roomtest.SmallPlan(t)
	d, err := Draw(p, roomtest.Template(t, "ansi-a"))
	require.NoError(t, err)
	seams := map[string]int{}
	for _, page := range d.Pages {
		bars := roomtest.PartsOf(&page.Group, "check-bar")
		require.Len(t, bars, 2, "page %s has both bars", page.Name)
		for i, want := range []float64{100, 101.6} { // 4 in = 101.6 mm: 1 in = 25.4 mm exactly, NIST SP 811
			line := bars[i].Items[0].(*scene.Line)
			assert.InDelta(t, want, line.B.X-line.A.X, 0.05)
		}
		for _, v := range roomtest.PartsOf(&page.Group, "view") {
			assert.Equal(t, "1", v.Data["scale"])
			from, err := strconv.ParseFloat(v.Data["from"], 64)
			require.NoError(t, err)
			for _, s := range roomtest.PartsOf(v.Group, "seam") {
				x, err := strconv.ParseFloat(s.Data["x"], 64)
				require.NoError(t, err)
				assert.InDelta(t, v.View.Box.X0+x-from, s.Items[0].(*scene.Line).A.X, 0.05)
				seams[s.Data["at"]]++
			}
		}
	}
	for i := range p.Runs[0].Seams {
		assert.Positive(t, seams[p.Runs[0].Seams[i].At.Decimal()], "seam %d is on a pole", p.Runs[0].Seams[i].Number)
	}
}

// TestPoleMeasuresTrueInSVG measures the bars of the SVG file, whose user units are millimetres on paper.
func TestPoleMeasuresTrueInSVG(t *testing.T) {
	d, err := Draw(roomtest.SmallPlan(t), roomtest.Template(t, "a4"))
	require.NoError(t, err)
	out, err := svg.Page(d.Pages[0], svg.Options{})
	require.NoError(t, err)
	for length, want := range map[string]float64{"100": 100, "101.6": 101.6} {
		m := regexp.MustCompile(`data-length="` + regexp.QuoteMeta(length) + `"[^>]*>\s*<[^>]*?(?:x1="([-0-9.]+)"[^>]*?x2="([-0-9.]+)"|d="M([-0-9.]+)[ ,][-0-9.]+ ?[LH] ?([-0-9.]+))`).FindSubmatch(out)
		require.NotNil(t, m, "bar of %s mm", length)
		a, b := string(m[1])+string(m[3]), string(m[2])+string(m[4])
		x1, err := strconv.ParseFloat(a, 64)
		require.NoError(t, err)
		x2, err := strconv.ParseFloat(b, 64)
		require.NoError(t, err)
		assert.InDelta(t, want, math.Abs(x2-x1), 0.05)
	}
}

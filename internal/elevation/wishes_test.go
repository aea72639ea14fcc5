package elevation_test

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/finding"
	"flitchlay/internal/roomtest"
	"flitchlay/internal/scene"
)

// Uprights gives the x of the upright lines of a group, and from where to where they reach.
func Uprights(g *scene.Group) (x []float64, high, low float64) {
	high, low = math.Inf(1), math.Inf(-1)
	g.Walk(func(it scene.Item) {
		if l, ok := it.(*scene.Line); ok && math.Abs(l.A.X-l.B.X) < 1e-6 {
			x = append(x, l.A.X)
			high, low = min(high, l.A.Y, l.B.Y), max(low, l.A.Y, l.B.Y)
		}
	})
	return x, high, low
}

// The designer's wishes are on the elevation: a centre line at each pin, past the outline, named CL; and each stretch that
// is kept free of seams between two bars, with what it is for.
func TestWishesOfTheDesignerAreOnTheElevation(t *testing.T) {
	text := roomtest.Head("in") + roomtest.Wall("Hearth", `16'`, `9'`,
		"[[wall.pin]]\nat = \"4'\"\nput = \"middle\"\n", "[[wall.pin]]\nat = \"12' 10\"\nput = \"seam\"\n",
		"[[wall.keep_clear]]\nfrom = \"7'\"\nto = \"8' 6\"\nwhy = \"screen\"\n",
		"[[wall.keep_clear]]\nfrom = \"14' 2\"\nto = \"14' 7\"\nwhy = \"bracket of the sliding library ladder\"\n")
	_, d := Drawn(t, text)
	views := roomtest.ElevationViews(d)
	require.Len(t, views, 1)
	scale, err := strconv.ParseFloat(roomtest.Fact(views[0], "scale"), 64)
	require.NoError(t, err)
	paperMM := func(inches float64) float64 { return inches * 25.4 / scale }

	pins := roomtest.Classed(views[0], "pin")
	require.Len(t, pins, 2)
	var at [2]float64
	for i, p := range pins {
		x, high, low := Uprights(p)
		require.NotEmpty(t, x)
		for _, v := range x {
			assert.InDelta(t, x[0], v, 1e-6)
		}
		at[i] = x[0]
		assert.Greater(t, low-high, paperMM(108)+5, "pin %d, at %v from %.1f to %.1f: the line goes on past the wall at both ends", i, x, high, low)
		assert.Equal(t, []string{"CL"}, roomtest.Lettering(p))
	}
	assert.InDelta(t, paperMM(106), at[1]-at[0], 0.05, "from 4'-0\" to 12'-10\"")

	keeps := roomtest.Classed(views[0], "keep-clear")
	require.Len(t, keeps, 2)
	for i, want := range []struct {
		from, to float64
		words    string
		figures  string
	}{{84, 102, "no seam: screen", `7'-0" to 8'-6"`}, {170, 175, "no seam: bracket of the sliding library ladder", `14'-2" to 14'-7"`}} {
		var x []float64
		keeps[i].Walk(func(it scene.Item) {
			if l, ok := it.(*scene.Line); ok && math.Abs(l.A.X-l.B.X) < 1e-6 && math.Abs(l.A.Y-l.B.Y) < 3 {
				x = append(x, l.A.X) // a bar
			}
		})
		require.Len(t, x, 2)
		assert.InDelta(t, paperMM(want.from-48), x[0]-at[0], 0.05)
		assert.InDelta(t, paperMM(want.to-48), x[1]-at[0], 0.05)
		said := roomtest.Lettering(keeps[i])
		for _, g := range roomtest.Classed(&d.Pages[slices.IndexFunc(d.Pages, func(p *scene.Page) bool { return strings.HasPrefix(p.Title, "ELEVATION") })].Group, "listed") {
			if roomtest.Fact(g, "item") == fmt.Sprintf("keep %d", i) { // it has no room for its words
				said = append(said, roomtest.Lettering(g)[1:]...)
			}
		}
		assert.Regexp(t, "^"+regexp.QuoteMeta(want.words)+"[, ]*"+regexp.QuoteMeta(want.figures)+"$", strings.Join(said, " "))
	}
}

// Inside the wall a centre line is drawn where no seam is: through the middle of a sheet, not along a seam.
func TestACentreLineGivesWayToASeam(t *testing.T) {
	text := roomtest.Head("in") + roomtest.Wall("Hearth", `16'`, `9'`, "[[wall.pin]]\nat = \"4'\"\nput = \"middle\"\n", "[[wall.pin]]\nat = \"12' 10\"\nput = \"seam\"\n")
	plan, d := Drawn(t, text)
	for _, f := range plan.Findings {
		require.NotEqual(t, finding.PinDropped, f.Code)
	}
	view := roomtest.ElevationViews(d)[0]
	require.Len(t, roomtest.Classed(view, "pin"), 2)
	lines := roomtest.Classed(view, "pin-line")
	require.Len(t, lines, 1)
	x, high, low := Uprights(lines[0])
	ends, _, _ := Uprights(roomtest.Classed(view, "pin")[0])
	assert.InDelta(t, ends[0], x[0], 1e-6, "through the pin in the middle of a sheet")
	assert.Greater(t, low-high, 100.0)
}

package scene_test

import (
	"strings"
	"testing"

	"flitchlay/internal/scene"

	"github.com/stretchr/testify/assert"
)

func TestWrapNeverBreaksAFigure(t *testing.T) {
	text := `W1: 6/8 from 15 1/2 +, 11/12 to 4 1/2 +, head up 3'-6 7/16", hole 2 3/8 x 3 1/4, sill down 6"`
	for width := 30.0; width < 130; width++ {
		lines := scene.Wrap(text, 3.5, false, width)
		assert.Equal(t, text, strings.Join(lines, " "))
		for _, line := range lines {
			assert.LessOrEqual(t, scene.Width(line, 3.5, false), width)
			first := strings.Fields(line)[0]
			assert.NotContains(t, []string{"1/2", `7/16",`, "3/8", "1/4,", "+,", "+", "x"}, first, "a line begins inside a figure at width %g", width)
			assert.False(t, strings.HasSuffix(line, " x"), "a size is broken at width %g", width)
		}
	}
}

func TestWrapBreaksAWordThatIsTooLong(t *testing.T) {
	lines := scene.Wrap("a "+strings.Repeat("m", 60), 3.5, false, 50)
	assert.Greater(t, len(lines), 2)
	for _, line := range lines {
		assert.LessOrEqual(t, scene.Width(line, 3.5, false), 50.0)
	}
}

// A seam between places of several courses that is too long for a line is broken between its numbers, never inside one: 11 at the end of a line
// is another sheet than 111.
func TestWrapBreaksALongSeamBetweenItsNumbers(t *testing.T) {
	const text = "109+110 | 111+112 to 113+114 | 115+116"
	for width := scene.Width("109+", 3.5, false) + 0.01; width < 120; width++ {
		lines := scene.Wrap(text, 3.5, false, width)
		for _, line := range lines {
			for _, number := range strings.FieldsFunc(line, func(r rune) bool { return r < '0' || r > '9' }) {
				assert.Len(t, number, 3, "at width %g: %q", width, lines)
			}
		}
	}
}

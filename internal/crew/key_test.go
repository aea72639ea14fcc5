package crew_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/roomtest"
	"flitchlay/internal/scene"
)

// explained are the marks of the key by the class of what they explain; what stands with its own words, or is the thing itself, has
// none.
var explained = map[string][]string{
	"plumb-line": {"line", "check"}, "witness-line": {"check"}, "datum": {"level"}, "hold": {"hold"}, "turned": {"turned"}, "raw-end": {"raw_end"},
	"box": {"box", "device"}, "covering": {"round", "match"}, "sheet": {"ripped"},
	"raw": {"raw", "trim"}, "kept": {"cut"}, "slit": {"cut"}, "shows": {"shows"}, "fold": {"fold"}, "cut-out": {"cut_out", "never"}, "zero": {"zero"},
	"card-head": {"tick"}, "cut-marks": {"apart"}, "level-line": {"level"},
	"corner": nil, "trim": nil, "opening": nil, "seam": nil, "dimension": nil, "view": nil, "frame": nil, "tape-list": nil, "cut-list": nil, "card": nil, "heights": nil,
	"names": nil, "rip": nil, "up": nil, "work": nil, "length": nil, "joint": nil, "scale-bar": nil, "key": nil, "leans": nil, "checks": nil,
	"second-line": {"second"}, "bevel": {"bevel"}, "bevels": {"bevel"},
	"sign": nil, "rounding": nil, "explained": nil, "legend": nil, "legend-mark": nil, "limits": nil, "arrival": nil, "wall-end": nil, "stock": nil,
}

// TestKeyExplainsEveryMark goes through all that is drawn on the pages of the walls and the cards: each class is known here, and the
// key says what its marks mean.
func TestKeyExplainsEveryMark(t *testing.T) {
	for file, p := range rooms(t) {
		d := install(t, p)
		key := map[string]bool{}
		classes := map[string]bool{}
		for _, page := range d.Pages {
			page.Walk(func(it scene.Item) {
				g, ok := it.(*scene.Group)
				if !ok || g.Tag.Class == "" {
					return
				}
				if g.Tag.Class == "legend-mark" {
					assert.False(t, key[strings.TrimPrefix(roomtest.Fact(g, "mark"), "key.")], "%s once", roomtest.Fact(g, "mark"))
					key[strings.TrimSuffix(strings.TrimPrefix(roomtest.Fact(g, "mark"), "key."), "_level")] = true
					assert.GreaterOrEqual(t, len(g.Items), 2, "a mark and its words")
				}
				classes[g.Tag.Class] = true
			})
		}
		require.NotEmpty(t, key, file)
		for class := range classes {
			marks, known := explained[class]
			assert.True(t, known, "%s: what %s means stands in the key, or in its own words", file, class)
			for _, m := range marks {
				assert.True(t, key[m], "%s: the key has %s, of %s", file, m, class)
			}
		}
		for _, class := range []string{"plumb-line", "datum", "raw", "kept", "zero", "cut-marks", "legend"} {
			assert.True(t, classes[class], "%s: %s", file, class)
		}
	}
}

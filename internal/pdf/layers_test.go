package pdf

import (
	"fmt"
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Layers stand in the order of scene.Layers, then any others, each with its name, all in the list that a viewer shows:
// ISO 32000-1, 8.11.4; that the list names every one is also ISO 19005-2, 6.9.
func TestLayersAreListed(t *testing.T) {
	file := write(t, sample())
	out := run(t, file, "mutool", "show", "FILE", "trailer/Root/OCProperties")
	groups := regexp.MustCompile(`(?s)/OCGs \[ ([0-9R ]+) \]`).FindStringSubmatch(out)
	order := regexp.MustCompile(`(?s)/Order \[ ([0-9R ]+) \]`).FindStringSubmatch(out)
	if assert.Len(t, groups, 2, out) && assert.Len(t, order, 2, out) {
		assert.Equal(t, groups[1], order[1])
	}
	assert.Contains(t, out, "/Name (Layers)")
	for i, name := range []string{"frame", "walls", "seams", "dimensions", "marks", "own"} {
		group := run(t, file, "mutool", "show", "FILE", "trailer/Root/OCProperties/OCGs/"+string(rune('1'+i)))
		utf := "FEFF" // ISO 32000-1, 7.9.2.2
		for _, c := range name {
			utf += fmt.Sprintf("%04X", c)
		}
		assert.Contains(t, group, "/Name <"+utf+">", name)
		assert.Contains(t, group, "/Type /OCG")
	}
}

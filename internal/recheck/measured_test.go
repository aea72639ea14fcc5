package recheck

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Rooms whose sheets were measured when they came: one wall and a closed room, with sheets that are narrower, wider and too narrow.
func TestMeasuredSheets(t *testing.T) {
	const head = "[project]\ntitle = \"Measured\"\n[veneer]\ngross_width = 25\noverlap = 1\nlength = 120\n" +
		"[[flitch]]\nnumber = \"F\"\nsheets = \"1-40\"\nwidths = [[2, \"24 5/8\"], [3, \"24 7/16\"], [4, \"25 1/8\"], [6, \"24 1/2\"], [7, \"24 9/16\"], [20, 24]]\n"
	walls := ""
	for i, long := range []int{100, 130, 100, 130} {
		walls += fmt.Sprintf("[[wall]]\nname = \"%c\"\nlength = %d\nheight = 96\n[[wall.box]]\nx = 30\nz = 40\n", 'A'+i, long)
	}
	for _, text := range []string{head + walls, head + "[room]\nclosed = true\n" + walls} {
		p := check(t, text)
		moved := 0
		for _, s := range p.Runs[0].Seams {
			if units(t, s.PlumbLine)-units(t, s.At) != 101600 {
				moved++
			}
		}
		assert.Equal(t, 3, moved, "lines of sheets 2, 6 and 7")
		assert.Positive(t, checkCards(t, text))
	}
}

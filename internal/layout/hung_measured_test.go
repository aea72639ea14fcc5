package layout

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// typed are the first sheets of a plan as [[hung]], by the raw edges that its pages print.
func typed(p *Plan, count int) string {
	r, text := &p.Runs[0], ""
	for k := range count {
		s := &r.Seams[k]
		text += fmt.Sprintf("[[hung]]\nwall = %q\nsheet = %d\nedge = \"%s mm\"\n", p.Room.Walls[s.Wall].Name, r.Sheets[k].Number, (s.PlumbLine - (s.At - s.X)).Decimal())
		if k == 0 && r.Closed {
			left := r.Sheets[0].StartLine - (s.At - s.X)
			if left > s.X {
				left -= r.Length
			}
			text += fmt.Sprintf("left_edge = \"%s mm\"\n", left.Decimal())
		}
	}
	return text
}

// What is typed as it was planned hangs as it was planned, of sheets that came narrower too: the first at a raw end or of a room
// that closes, one that is ripped, the one that closes.
func TestNarrowSheetsReadByTheirRawEdges(t *testing.T) {
	widths := `widths = [[1, "24 5/8"], [2, "24 9/16"], [4, "24 1/2"], [5, "24 3/4"], [16, "24 1/2"], [17, "24 1/2"]]` + "\n"
	head := "[project]\ntitle = \"Measured\"\n[veneer]\ngross_width = 25\noverlap = 1\nlength = 120\n" +
		"[[flitch]]\nnumber = \"F\"\nsheets = \"1-24\"\nspare = 2\n" + widths
	wall := func(name string, long string) string {
		return fmt.Sprintf("[[wall]]\nname = %q\nlength = %s\nheight = 96\n", name, long)
	}
	closed := "[room]\nclosed = true\n" + wall("A", "120") + wall("B", "80") + wall("C", "120") + wall("D", "80")
	for name, text := range map[string]string{
		"a plain wall": measuredWall(widths[:strings.Index(widths, ", [16")] + "]\n"),
		"a long wall":  head + wall("A", "300"),
		"another":      head + wall("A", "290"),
		"a room":       head + closed,
	} {
		t.Run(name, func(t *testing.T) {
			p := lay(t, text)
			narrow := 0
			for count := 1; count <= min(6, len(p.Runs[0].Seams)); count++ {
				if p.Runs[0].Sheets[count-1].Short > 0 {
					narrow++
				}
				got := lay(t, text+typed(p, count))
				require.Len(t, got.Runs[0].Seams, len(p.Runs[0].Seams))
				for k := range count {
					want, is := &p.Runs[0].Seams[k], &got.Runs[0].Seams[k]
					assert.InDelta(t, float64(want.At), float64(is.At), 2, "%d hang: seam %d", count, k+1)
					assert.InDelta(t, float64(want.PlumbLine), float64(is.PlumbLine), 2, "%d hang: line %d", count, k+1)
				}
				assert.Empty(t, got.Moves, "%d hang", count)
			}
			assert.Positive(t, narrow)
		})
	}
}

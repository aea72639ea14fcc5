package layout

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/finding"
)

// measuredWall is a plain wall of 100 in for sheets of 25 in with 1 in overlap, of which some were measured when they came.
func measuredWall(widths string) string {
	return "[project]\ntitle = \"Measured\"\n[veneer]\ngross_width = 25\noverlap = 1\nlength = 120\n" +
		"[[flitch]]\nnumber = \"F\"\nsheets = \"1-12\"\nspare = 2\n" + widths + "[[wall]]\nname = \"A\"\nlength = 100\nheight = 96\n"
}

// A sheet under 24 + 1/2 in is not laid, and it is said why; no seam moves for one that is narrower but will do, its line does.
func TestSheetsHangAsWideAsTheyCame(t *testing.T) {
	whole := lay(t, measuredWall(""))
	p := lay(t, measuredWall("widths = [[2, \"24 5/8\"], [3, \"24 7/16\"], [4, \"25 1/8\"], [5, \"24 1/2\"]]\n"))
	assert.Equal(t, at(whole), at(p), "seams stay")
	assert.Equal(t, "1, 2, 4-6", numbers(p))
	assert.Equal(t, []string{"of flitch F, delivered 1-12, sheet 3 is not laid (measured under 24 1/2 in)"}, messages(p, finding.NumbersLeftOut)[:1])
	assert.Equal(t, []int{3}, p.Left[0].Damaged)

	sheets, seams := p.Runs[0].Sheets, p.Runs[0].Seams
	require.Len(t, sheets, 5)
	for i, want := range []struct{ gross, short L }{{25 * in, 0}, {24*in + 5*in/8, 3 * in / 8}, {25 * in, 0}, {24*in + in/2, in / 2}, {25 * in, 0}} {
		s := &sheets[i]
		assert.Equal(t, want.gross, s.Gross, i)
		assert.Equal(t, want.short, s.Short, i)
		if i == 0 || i == 4 { // 14 in wide, ripped to 15 1/2
			assert.Equal(t, 15*in+in/2, s.RipTo, i)
			continue
		}
		assert.Equal(t, s.RightLine-s.StartLine, s.Gross, i)
		assert.Equal(t, s.Right+in/2-want.short/2, s.RightLine, "raw right edge of %d", i)
		assert.Equal(t, s.Left-in/2+want.short/2, s.StartLine, "raw left edge of %d", i)
		assert.Equal(t, s.RightLine, seams[i].PlumbLine, "line %d", i)
	}
	for i := 1; i < len(sheets); i++ {
		assert.GreaterOrEqual(t, sheets[i-1].RightLine-sheets[i].StartLine, p.Room.Rules.LeastOverlap, "overlap %d", i)
	}
}

// A sheet that is ripped narrower than it came is ripped as it would have been, and one that came narrower than that is not ripped.
func TestRippedSheetThatCameNarrow(t *testing.T) {
	text := "[rules]\nleast_width = 5\n" + measuredWall("widths = [[1, \"24 3/4\"]]\n")
	p := lay(t, text)
	first := &p.Runs[0].Sheets[0]
	assert.Equal(t, []L{15*in + in/2, 0}, []L{first.RipTo, first.Short})
	assert.Equal(t, lay(t, "[rules]\nleast_width = 5\n"+measuredWall("")).Runs[0].Sheets[0].StartLine, first.StartLine)
}

// All courses of a place hang by the line of the narrowest.
func TestCoursesHangByOneLine(t *testing.T) {
	text := "[project]\ntitle = \"Tall\"\n[veneer]\ngross_width = 25\noverlap = 1\nlength = 96\n" +
		"[[flitch]]\nnumber = \"F\"\nsheets = \"1-20\"\nwidths = [[4, \"24 5/8\"]]\n[[wall]]\nname = \"A\"\nlength = 100\nheight = 150\n"
	p := lay(t, text)
	var lines []L
	for _, s := range p.Runs[0].Sheets {
		if s.Number == 3 || s.Number == 4 {
			lines = append(lines, s.RightLine-s.Right)
		}
	}
	assert.Equal(t, []L{in/2 - 3*in/16, in/2 - 3*in/16}, lines)
}

package count

import (
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/layout"
)

// TestWhatHangsIsNotOrderedAgain counts a wall of 120 by 96 in, two of whose six sheets hang, up to a seam at 40 in:
//
//	paste on      80 x 96 = 7 680, and 4 seams x 1 x 96 = 384 with the one the next sheet is lapped at: 8 064 sq in = 56 sq ft;
//	              + 10 % = 61.6; / 150 = 0.41: 0.5 gal
//	primer on     7 680 + 80 x 4 = 8 000 sq in = 55.6 sq ft; / 300 = 0.19: 0.2 gal
//	cutting strip 4 x (96 + 4) = 400
func TestWhatHangsIsNotOrderedAgain(t *testing.T) {
	const head = "\n[[wall]]\nname = \"Long\"\nlength = \"10'\"\nheight = \"8'\"\n[paste]\ncoverage = \"150 sq ft/gal\"\n[primer]\ncoverage = \"300 sq ft/gal\"\n"
	hung := func(sheets, seams string) *Count {
		return counted(t, veneer("24 1/2", "1", "10'")+head+"[[hung]]\nwall = \"Long\"\nsheets = \""+sheets+"\"\nseams = ["+seams+"]\n")
	}
	n := hung("1-2", "\"16 1/2\", 40")
	require.Equal(t, 6, n.Sheets)
	assert.Equal(t, squareInches(8_064), n.Material.PasteOn)
	assert.Equal(t, squareInches(8_000), n.Material.PrimerOn)
	assert.Equal(t, &layout.Amount{Amount: 0.5, Unit: "gal"}, n.Material.Paste)
	assert.Equal(t, &layout.Amount{Amount: 0.2, Unit: "gal"}, n.Material.Primer)
	assert.Equal(t, Strip{4, 400 * in}, n.Material.Strip)
	assert.Equal(t, Blades{Seams: 4}, n.Material.Blades)
	for _, l := range n.Order {
		if l.Item == "paste" || l.Item == "primer" {
			assert.Contains(t, l.Why, "still to hang, ")
		}
	}
	assert.Equal(t, &layout.Amount{Amount: 0.7, Unit: "gal"}, n.Plan.Totals.Paste, "the whole room takes what it took: (11 520 + 480) / 144 x 1.1 / 150 = 0.61")

	all := hung("1-6", "\"16 1/2\", 40, \"63 1/2\", 87, 104, 120")
	assert.Zero(t, all.Material.PasteOn)
	assert.Zero(t, all.Material.Strip.Count)
	assert.Zero(t, all.Material.Paste.Amount)
	for _, l := range all.Order {
		if l.Item == "paste" || l.Item == "primer" {
			assert.Empty(t, l.Quantity)
		}
	}
}

// TestEdgesThatAreCutTakeNoBlade has a door from 10 to 30 in, 80 high: two sheets hang over all of it; or one alone, up to 16 1/2 in,
// and then its left side is cut, its right side is not, and of its head a part is not.
func TestEdgesThatAreCutTakeNoBlade(t *testing.T) {
	const head = "\n[[wall]]\nname = \"Long\"\nlength = \"10'\"\nheight = \"8'\"\n[[wall.opening]]\nkind = \"door\"\nfrom_left = 10\nwidth = 20\nheight = 80\n"
	for hung, want := range map[string]int{
		"": 3,
		"[[hung]]\nwall = \"Long\"\nsheets = \"1\"\nseams = [\"16 1/2\"]\n":       2,
		"[[hung]]\nwall = \"Long\"\nsheets = \"1-2\"\nseams = [\"16 1/2\", 40]\n": 0,
	} {
		n := counted(t, veneer("24 1/2", "1", "10'")+head+hung)
		assert.Equal(t, want, n.Material.Blades.Edges, hung)
	}
}

// jsonOf is what the JSON says of one room.
func jsonOf(t *testing.T, n *Count) string {
	t.Helper()
	var b bytes.Buffer
	put(t, JSON(&b), []*Count{n})
	return b.String()
}

// TestLevelGrainIsRippedAtItsLowerOrUpperEdge reads the JSON of a wall whose grain is level: four bands of a height of 90 in, the
// first ripped at its foot and the last at its head.
func TestLevelGrainIsRippedAtItsLowerOrUpperEdge(t *testing.T) {
	n := counted(t, strings.Replace(veneer("24 1/2", "1", "10'"), "[veneer]\n", "[veneer]\ngrain = \"horizontal\"\n", 1)+"[[wall]]\nlength = \"100\"\nheight = \"86\"\n")
	text := jsonOf(t, n)
	assert.Contains(t, text, `"ripped": "lower"`)
	assert.Contains(t, text, `"ripped": "upper"`)
	assert.NotContains(t, text, `"ripped": "left"`)
	assert.NotContains(t, text, `"ripped": "right"`)
	plan := string(n.Plan.JSON())
	assert.Contains(t, plan, `"ripped": "lower"`)
	assert.Contains(t, plan, `"ripped": "upper"`)
	assert.NotContains(t, plan, `"ripped": "left"`)
}

// TestRegistersAreToldAsTheyAreMarked holds the register of a wall of two courses against a hand's figures: level line at 48 in,
// 150 in high, joint at 75 in, trims of 2 in, and 1 in past the joint.
//
//	lower  the joint is 27 in over the level line, and the sheet goes 1 in past it: 28 below the raw head; it needs 28 + 50 = 78
//	upper  hangs from 26 in over the level line, so that no mark comes to it: from there to 150 + 2 it needs 78
func TestRegistersAreToldAsTheyAreMarked(t *testing.T) {
	n := counted(t, veneer("24 1/2", "1", "10'")+"[[flitch]]\nnumber = \"F\"\nsheets = \"1-14\"\n[[wall]]\nlength = \"60\"\nheight = \"150\"\n")
	table := n.Table("registers")
	var rows []string
	for _, r := range table.Rows {
		var cells []string
		for _, c := range r {
			cells = append(cells, c.Text)
		}
		rows = append(rows, strings.Join(cells, " | "))
	}
	assert.Equal(t, []string{
		`F | 1 | 2'-4" | below the raw head, which hangs up | 6'-6" | 1 | 1 | `,
		`F | 2 | 2'-2" | from the level line up to the raw foot, which hangs down | 6'-6" | 2 | 2 | `}, rows)
	text := jsonOf(t, n)
	assert.Contains(t, text, `"from_raw": "head"`)
	assert.Contains(t, text, `"mark": 711.2`)
	assert.Contains(t, text, `"over_level": 660.4`)
	assert.Contains(t, string(n.Plan.JSON()), `"over_level": 660.4`)
}

// TestEndsAndBoxesThatHangAreBehind counts a wall of 120 by 96 in with trims at both ends and three outlets, two of whose six sheets
// hang, up to a seam at 40 in: the left end is trimmed, the outlet at 20 in has its extender; that at 40 in stands in the seam, with a
// sheet still to come.
func TestEndsAndBoxesThatHangAreBehind(t *testing.T) {
	head := "\n[[wall]]\nname = \"Long\"\nlength = \"10'\"\nheight = \"8'\"\nleft_end = \"trim\"\nright_end = \"trim\"\n"
	for _, x := range []string{"20", "40", "100"} {
		head += "[[wall.box]]\nkind = \"outlet\"\nx = " + x + "\nz = 18\n"
	}
	for hung, want := range map[string][2]int{
		"": {2, 3},
		"[[hung]]\nwall = \"Long\"\nsheets = \"1-2\"\nseams = [\"16 1/2\", 40]\n":                           {1, 2},
		"[[hung]]\nwall = \"Long\"\nsheets = \"1-6\"\nseams = [\"16 1/2\", 40, \"63 1/2\", 87, 104, 120]\n": {0, 0},
	} {
		n := counted(t, veneer("24 1/2", "1", "10'")+head+hung)
		ends, extenders := 0, 0
		for _, e := range n.Material.Ends {
			ends += e.Count
		}
		for _, e := range n.Material.Extenders {
			extenders += e.Count
		}
		assert.Equal(t, want, [2]int{ends, extenders}, hung)
	}
}

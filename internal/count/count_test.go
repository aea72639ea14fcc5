package count

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/report"
	"flitchlay/internal/roomtest"
)

const in = length.Inch

// counted lays a room out and counts it; a room here never has a mistake.
func counted(t testing.TB, text string) *Count {
	t.Helper()
	return Of(roomtest.PlanOf(t, "room.toml", []byte(text)))
}

// veneer is a room's head: gross width, overlap and length of the sheets.
func veneer(gross, overlap, long string) string {
	return fmt.Sprintf("[project]\ntitle = \"Test room\"\n[veneer]\ngross_width = %q\noverlap = %q\nlength = %q\n", gross, overlap, long)
}

// squareInches is twice an area in square inches.
func squareInches(f float64) length.Area { return length.Area(2 * f * float64(in) * float64(in)) }

// TestOpenWalls holds the number of sheets of one wall against N = ceil((L + t - o)/(w - o)), t the trim of both ends:
// N sheets of width w cover N w less N - 1 overlaps less t. The formula is derived, each number by hand.
func TestOpenWalls(t *testing.T) {
	for _, c := range []struct {
		name, long, width, overlap, trim string
		want                             int
	}{
		{"144 of 24, 2 lost a seam: 142/22 = 6.45", "144", "24", "2", "0", 7},
		{"144 of 24, 1 lost a seam: 143/23 = 6.22", "144", "24", "1", "0", 7},
		{"120 of 24, 2 lost a seam: 118/22 = 5.36", "120", "24", "2", "0", 6},
		{"96 of 24, 2 lost a seam, 2 at each end: 98/22 = 4.45", "96", "24", "2", "2", 5},
		{"240 of 18, 1 lost a seam, 1 at each end: 241/17 = 14.2", "240", "18", "1", "1", 15},
		{"24 of 24: one sheet covers it", "24", "24", "2", "0", 1},
		{"1/64 more than one sheet: two", "24 1/64", "24", "2", "0", 2},
	} {
		t.Run(c.name, func(t *testing.T) {
			n := counted(t, veneer(c.width, c.overlap, "10'")+fmt.Sprintf("[rules]\naim = \"fewest\"\nedge_trim = %q\n[[wall]]\nlength = %q\nheight = \"8'\"\n",
				c.trim, c.long))
			assert.Equal(t, c.want, n.Sheets)
			assert.Equal(t, c.want, n.Lengths[0].Sheets)
			assert.Equal(t, 1, len(n.Walls))
			assert.Equal(t, c.want, n.Walls[0].Begin)
		})
	}
}

// TestClosedRooms holds the number of sheets of a closed room against N = ceil(P/(w - o)): every sheet loses one overlap.
// The formula is derived. 12 by 10 ft is 528 in round, 11 by 9 ft 480 in.
func TestClosedRooms(t *testing.T) {
	for _, c := range []struct {
		name, a, b, width, overlap string
		want                       int
	}{
		{"528 of 24, 2 lost: 528/22 = 24 even", "12'", "10'", "24", "2", 24},
		{"528 of 24, 1 lost: 528/23 = 22.96", "12'", "10'", "24", "1", 23},
		{"528 of 18, 1 lost: 528/17 = 31.06", "12'", "10'", "18", "1", 32},
		{"480 of 24, 2 lost: 480/22 = 21.8", "11'", "9'", "24", "2", 22},
	} {
		t.Run(c.name, func(t *testing.T) {
			var b strings.Builder
			b.WriteString(veneer(c.width, c.overlap, "10'") + "[rules]\naim = \"fewest\"\ncorner_return = \"2\"\nprefer_return = \"2\"\n[room]\nclosed = true\n")
			for _, long := range []string{c.a, c.b, c.a, c.b} {
				fmt.Fprintf(&b, "[[wall]]\nlength = %q\nheight = \"8'\"\n", long)
			}
			n := counted(t, b.String())
			require.False(t, n.Broken, "%v", n.Plan.Findings)
			assert.Equal(t, c.want, n.Sheets)
			begin := 0
			for _, w := range n.Walls {
				begin += w.Begin
			}
			assert.Equal(t, c.want, begin, "every sheet begins on one wall")
		})
	}
}

// TestPlainWall works one wall through. 10 ft by 8 ft over a base of 5 1/2 in; sheets 24 1/2 in with 1 in lost a seam,
// 10 ft long; trims 2 in at top and bottom, 1 in at each end.
//
//	end sheets cover 24 1/2 - 1/2 - 1 = 23, inner ones 23 1/2: 46 + 3 x 23 1/2 = 116 1/2 < 120 <= 140: 6 sheets
//	cut length    96 - 5 1/2 + 2 + 2 = 94 1/2
//	gross         6 x 24 1/2 x 94 1/2 = 13 891.5 sq in
//	on the wall   120 x 90 1/2        = 10 860
//	overlaps      5 x 1 x 94 1/2      =    472.5
//	top, bottom   120 x 2             =    240 each
//	edge trim     2 x 1 x 94 1/2      =    189
//	ripped off    147 of gross widths less 120 + 5 + 2 as hung = 20, x 94 1/2 = 1 890
//	              10 860 + 472.5 + 240 + 240 + 189 + 1 890 = 13 891.5
//	paste on      10 860 + 5 x 1 x 90 1/2 = 11 312.5 sq in = 78.56 sq ft; + 10 % = 86.4; / 150 = 0.58: 0.6 gal, 1 pail
//	primer on     10 860 + 120 x 4 = 11 340 sq in = 78.75 sq ft; / 300 = 0.26: 0.3 gal, 1 pail
//	cutting strip 5 x (90 1/2 + 4) = 472 1/2
//	stock ends    6 x 24 1/2 x (120 - 94 1/2) = 3 748.5 sq in
func TestPlainWall(t *testing.T) {
	n := counted(t, veneer("24 1/2", "1", "10'")+`
[[flitch]]
number = "F-1"
sheets = "1-12"
damaged = [2]
spare = 2
[room]
base = "5 1/2"
[[wall]]
name = "Long"
length = "10'"
height = "8'"
[[wall.box]]
kind = "outlet"
x = "3'"
z = "1' 4"
[[wall.box]]
kind = "switch"
gang = 2
x = "7'"
z = "4'"
[[wall.box]]
kind = "alarm"
x = "5'"
z = "7'"
[paste]
coverage = "150 sq ft/gal"
[primer]
coverage = "300 sq ft/gal"
`)
	assert.Equal(t, 6, n.Sheets)
	assert.Equal(t, squareInches(13_891.5), n.Areas.Gross)
	assert.Equal(t, [parts]length.Area{Net: squareInches(10_860), Overlaps: squareInches(472.5), TopTrim: squareInches(240),
		BottomTrim: squareInches(240), EdgeTrim: squareInches(189), Ends: squareInches(1_890)}, n.Areas.Of)
	assert.Equal(t, squareInches(3_748.5), n.Areas.StockEnds())
	assert.Equal(t, squareInches(11_312.5), n.Material.PasteOn)
	assert.Equal(t, squareInches(11_340), n.Material.PrimerOn)
	assert.Equal(t, &layout.Amount{Amount: 0.6, Unit: "gal"}, n.Material.Paste)
	assert.Equal(t, &layout.Amount{Amount: 0.3, Unit: "gal"}, n.Material.Primer)
	assert.Equal(t, "1 pail of 1 gal", PailWords(*n.Material.Paste))
	assert.Equal(t, Strip{5, 945 * in / 2}, n.Material.Strip)
	assert.Equal(t, Blades{Seams: 5}, n.Material.Blades)
	assert.Equal(t, []Extender{{1, 1}, {2, 1}}, n.Material.Extenders, "the alarm takes none")
	assert.Equal(t, 1, n.Material.Alarms)
	assert.Equal(t, []Stock{{8 * length.Foot, 6, []int{1, 3, 4, 5, 6, 7}}}, n.Lengths, "94 1/2 in is cut from 8 ft")

	// 12 delivered less 1 damaged less 2 spare less 6 laid leaves 3; a tenth of 6 is under 2, so 2 spares are wanted
	require.Len(t, n.Flitches, 1)
	f := n.Flitches[0]
	assert.Equal(t, []int{2}, f.Damaged)
	assert.Equal(t, []int{11, 12}, f.Spare)
	assert.Equal(t, []int{1, 3, 4, 5, 6, 7}, f.Laid)
	assert.Equal(t, []int{8, 9, 10}, f.Left)
	assert.Equal(t, 2, f.Want)
	assert.Empty(t, n.Order[0].Quantity)
	assert.Contains(t, n.Order[0].Why, "12 delivered less 1 damaged (2) makes 11: 5 over")

	// 120 less 94 1/2 is left on the longest cut
	assert.Equal(t, 51*in/2, n.Longest.Left)
}

// TestHeaderAndLowerPart works a door 5 ft wide in a wall 10 ft long through: pins put seams at 36 and 59 1/2, so that
// the sheet between stands wholly over the door, which is from 30 to 90 and 80 in high.
//
//	its cut length 96 + 4 = 100; hung height 16 over the door, so from the foot of the raw sheet (2 in under the floor)
//	80 + 2 = 82 in come up to the head, of which 2 in stay on as trim: the lower part kept is 80 in long, 24 1/2 wide
//	a door has 3 edges: two sides and a head
func TestHeaderAndLowerPart(t *testing.T) {
	n := counted(t, veneer("24 1/2", "1", "10'")+`
[[wall]]
name = "Door wall"
length = "10'"
height = "8'"
[[wall.opening]]
kind = "door"
from_left = "30"
width = "60"
height = "80"
[[wall.pin]]
at = "36"
[[wall.pin]]
at = "59 1/2"
`)
	require.False(t, n.Broken, "%v", n.Plan.Findings)
	var header []Cut
	for _, c := range n.Cuts {
		if c.HeaderOnly {
			header = append(header, c)
		}
	}
	require.NotEmpty(t, header)
	h := header[0]
	assert.Equal(t, "header of D1", h.Over)
	assert.Equal(t, 100*in, h.Length)
	assert.Equal(t, []Hole{{Kind: "door", Name: "D1", From: 0, To: 49 * in / 2, Low: -50 * in, High: 32 * in, Wall: 0, Index: 0}}, h.Holes,
		"from the raw left edge to the right one; head 32 over the level line at 48, down through the trim of 2 under the floor")
	assert.Contains(t, n.Kept, Kept{"lower part", "", h.Number, 49 * in / 2, 80 * in})
	assert.Equal(t, len(header), n.All.Headers)
	assert.Equal(t, 3, n.Material.Blades.Edges)
}

// TestCutList works the places of bends and cut-outs through. A run of two walls, 40 in and 80 in, round an inside corner;
// pins put seams at s = 20 and at s = 43 1/2: the second sheet hangs with its raw right edge half an overlap right of 43
// 1/2, at 44, so its raw left edge is at 44 - 24 1/2 = 19 1/2. The corner at 40 is 20 1/2 from there. An outlet with a
// hole of 2 x 3 in has its middle at x = 30, 16 in up: from 29 - 19 1/2 = 9 1/2 to 11 1/2, and from 14 1/2 - 48 = -33 1/2
// to -30 1/2 from the level line.
func TestCutList(t *testing.T) {
	n := counted(t, veneer("24 1/2", "1", "10'")+`
[rules]
corner_return = "3"
prefer_return = "3"
[[wall]]
name = "A"
length = "40"
height = "8'"
[[wall.pin]]
at = "20"
[[wall.box]]
kind = "outlet"
x = "30"
z = "16"
[[wall]]
name = "B"
length = "80"
height = "8'"
[[wall.pin]]
at = "3 1/2"
`)
	require.False(t, n.Broken, "%v", n.Plan.Findings)
	c := n.Cuts[1]
	assert.Equal(t, []string{"A", "B"}, c.Walls)
	require.Len(t, c.Bends, 1)
	b := c.Bends[0]
	assert.Equal(t, "C1", b.Name)
	assert.Equal(t, []L{41 * in / 2, 41 * in / 2, 41 * in / 2}, []L{b.At, b.Foot, b.Head})
	assert.Nil(t, b.Of)
	assert.Equal(t, []Hole{{"outlet", "E1", 19 * in / 2, 23 * in / 2, -67 * in / 2, -61 * in / 2, 0, 0}}, c.Holes)
	assert.Equal(t, 47*in/2, c.Net)
	assert.Equal(t, 49*in/2, c.Width)
	first := n.Cuts[0]
	assert.Equal(t, "left", first.Rip, "the first sheet covers 20 in")
	assert.Equal(t, 43*in/2, first.Width, "1 in of trim, 20 covered, half an overlap")
	assert.Equal(t, 1*in, first.LeftTrim)
}

// TestCourses works a wall 12 ft high with sheets of 8 ft through: two courses. Both courses take 6 sheets over 10 ft
// (see TestPlainWall), so 12 in all, bottom and top of a place one after the other. The end match uses up half an overlap
// and 1/2 in on each side, 1 in of each sheet: matches 2 x 1 x 120 = 240 sq in. Cut lengths of a place add up to 144 + 2 +
// 2 + 1 + 1 = 150. Sheets of one place: 5 seams, 6 end matches, and 11 + 6 x 4 in of strip over what they join: 5 x 148
// + 120 + 6 x 4 = 884.
func TestCourses(t *testing.T) {
	n := counted(t, veneer("24 1/2", "1", "8'")+"[[wall]]\nlength = \"10'\"\nheight = \"12'\"\n")
	assert.Equal(t, 12, n.Sheets)
	assert.Equal(t, squareInches(240), n.Areas.Of[Matches])
	assert.Equal(t, squareInches(240), n.Areas.Of[TopTrim])
	assert.Equal(t, squareInches(240), n.Areas.Of[BottomTrim])
	for i := 0; i < 12; i += 2 {
		assert.Equal(t, 150*in, n.Cuts[i].Length+n.Cuts[i+1].Length)
	}
	assert.Equal(t, Blades{Seams: 5, Matches: 6}, n.Material.Blades)
	assert.Equal(t, Strip{11, (5*148 + 120 + 6*4) * in}, n.Material.Strip)
}

// TestTwoFlitches works two flitches through: 3 and 4 sheets for 6 places, 1 spare of each kept back. The first gives 2,
// the second 3: one is short. With the spares laid all 6 could be.
func TestTwoFlitches(t *testing.T) {
	n := counted(t, veneer("24 1/2", "1", "10'")+`
[[flitch]]
number = "A"
sheets = "1-3"
spare = 1
[[flitch]]
number = "B"
sheets = "1-4"
spare = 1
[[wall]]
length = "10'"
height = "8'"
`)
	require.Len(t, n.Flitches, 2)
	assert.Equal(t, 1, n.All.Short)
	assert.Equal(t, 0, n.Flitches[0].Short)
	assert.Equal(t, 1, n.Flitches[1].Short)
	assert.Equal(t, []int{1, 2}, n.Flitches[0].Laid)
	assert.Equal(t, []int{1, 2, 3}, n.Flitches[1].Laid)
	// A: 2 laid and 2 spare want 4 of 3: 1 more. B: 3 laid, 1 more, 2 spare want 6 of 4: 2 more.
	assert.Equal(t, 1, n.Order[0].Sheets)
	assert.Equal(t, 2, n.Order[1].Sheets)
	assert.Contains(t, n.Order[1].Why, "3 laid and 1 more needed")
	n.Solve()
	assert.Nil(t, n.Margins.Lost, "it falls already")
}

// TestThroughGap works a sheet that hangs nowhere through: a full-height opening 35 in wide behind which the grain counts
// on, from 40 to 75 of a wall of 16 ft; pins put seams at 46 and 69 1/2, so the sheet between is wholly in the gap, and the next is not: 5 1/2 in would be under the least width.
func TestThroughGap(t *testing.T) {
	n := counted(t, veneer("24 1/2", "1", "10'")+`
[[flitch]]
number = "G"
sheets = "1-20"
[[wall]]
length = "16'"
height = "8'"
[[wall.opening]]
kind = "cased opening"
from_left = "40"
width = "35"
height = "8'"
grain = "through"
[[wall.pin]]
at = "46"
[[wall.pin]]
at = "69 1/2"
`)
	f := n.Flitches[0]
	require.Len(t, f.Gaps, 1)
	assert.Contains(t, n.Kept, Kept{"whole sheet", "G", f.Gaps[0], 49 * in / 2, 120 * in})
	assert.Len(t, f.Delivered, len(f.Laid)+len(f.Gaps)+len(f.Left))
	assert.Equal(t, n.Sheets, len(f.Laid)+len(f.Gaps))
	assert.Equal(t, 2, n.Material.Blades.Edges, "the two sides of the opening")
}

// TestMetricWall works a metric wall through, 3 m by 2.6 m, sheets 640 mm with 25 mm lost a seam, 2.9 m long; trims are 50
// mm at top and bottom, 25 at each end.
//
//	end sheets cover 640 - 12.5 - 25 = 602.5, inner ones 615: 1205 + 2 x 615 = 2435 < 3000 <= 3050: 5 sheets
//	cut length 2700, gross 5 x 640 x 2700 = 8.64 m2, on the wall 3 x 2.6 = 7.8 m2
//	cutting strip 4 x (2600 + 100) = 10 800
func TestMetricWall(t *testing.T) {
	n := counted(t, `[project]
title = "Metric"
units = "mm"
[veneer]
gross_width = 640
overlap = 25
length = 2900
[[wall]]
length = 3000
height = 2600
left_end = "free"
right_end = "trim"
`)
	assert.Equal(t, 5, n.Sheets)
	var gross report.Sum
	gross.Plus(n.Areas.Gross)
	assert.Equal(t, "8.64", gross.SquareMetres())
	var net report.Sum
	net.Plus(n.Areas.Of[Net])
	assert.Equal(t, "7.8", net.SquareMetres())
	assert.Equal(t, Strip{4, 10_800 * length.Millimetre}, n.Material.Strip)
	assert.Equal(t, []Stock{{2700 * length.Millimetre, 5, []int{1, 2, 3, 4, 5}}}, n.Lengths)
	assert.Equal(t, []End{{"free", "end bead", 1, 2600 * length.Millimetre, 2600 * length.Millimetre},
		{"trim", "edge trim", 1, 2600 * length.Millimetre, 2600 * length.Millimetre}}, n.Material.Ends)
}

// TestPails holds whole pails against hand-made sums.
func TestPails(t *testing.T) {
	for _, c := range []struct {
		amount float64
		unit   string
		want   string
	}{{0.2, "gal", "1 pail of 1 gal"}, {4.9, "gal", "1 pail of 5 gal"}, {5, "gal", "1 pail of 5 gal"}, {5.1, "gal", "1 pail of 5 gal, 1 pail of 1 gal"},
		{12.0, "gal", "2 pails of 5 gal, 2 pails of 1 gal"}, {13, "L", "1 pail of 10 L, 3 pails of 1 L"}} {
		assert.Equal(t, c.want, PailWords(layout.Amount{Amount: c.amount, Unit: c.unit}))
	}
}

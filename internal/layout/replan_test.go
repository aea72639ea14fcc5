package layout

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/finding"
	"flitchlay/internal/room"
)

// hang writes sheets that hang on a wall: pairs of a number and the reading at its right seam.
func hang(wall string, pairs ...any) string {
	text := ""
	for i := 0; i < len(pairs); i += 2 {
		reading := fmt.Sprint(pairs[i+1])
		if !strings.HasPrefix(reading, "[") {
			reading = `"` + reading + `"`
		}
		text += fmt.Sprintf("[[hung]]\nwall = %q\nsheet = %v\nseam = %s\n", wall, pairs[i], reading)
	}
	return text
}

// flitched is the usual head with a flitch of 14.
func flitched(rest string) string {
	return head + "[[flitch]]\nnumber = \"F\"\nsheets = \"1-14\"\n" + rest
}

// A wall of 192 in: (192 + 2 - 1) / 23 1/2 = 8.2, 9 sheets; 192 - 7 x 23 1/2 = 27 1/2 for two ends: seams 13 3/4, 37 1/4, 60 3/4, 84 1/4,
// 107 3/4, 131 1/4, 154 3/4, 178 1/4.
const hungWall = "192"

func TestReplanOneReading(t *testing.T) {
	fresh := lay(t, flitched(plain("A", hungWall, "none", "")))
	require.Equal(t, "13 3/4 37 1/4 60 3/4 84 1/4 107 3/4 131 1/4 154 3/4 178 1/4", at(fresh))
	p := lay(t, flitched(plain("A", hungWall, "none", "")+hang("A", 1, "13 3/4", 2, "37 3/8")))
	// from 37 3/8 six whole sheets reach 178 3/8, and 13 5/8 is left
	assert.Equal(t, "13 3/4 37 3/8 60 7/8 84 3/8 107 7/8 131 3/8 154 7/8 178 3/8", at(p))
	assert.Equal(t, "1-9", numbers(p))
	assert.Equal(t, []string{"sheet 2, the last one hung, ends 1/8 in right of the plan without it on wall A; of the seams still to hang 6 move, by up to 1/8 in"},
		messages(p, finding.Drift))
	require.Len(t, p.Moves, 7, "the hung seam and six behind it; the first stands where it was planned")
	for k, m := range p.Moves {
		assert.Equal(t, in/8, m.To-m.From)
		assert.Equal(t, k == 0, m.Hung)
		assert.Equal(t, k+2, m.Place)
	}
	r := p.Runs[0]
	assert.True(t, r.Sheets[1].Hung && !r.Sheets[2].Hung)
	assert.Equal(t, L(37*in+3*in/8), r.Spans[0].Left, "the rest is a span of its own from the last hung seam")
	assert.EqualValues(t, 7, r.Spans[0].Score.Sheets)
	assert.False(t, r.Sheets[2].End, "beside a hung seam a sheet is inner")
	assert.True(t, r.Sheets[8].End)
}

func TestReplanAsPlannedSaysNothing(t *testing.T) {
	p := lay(t, flitched(plain("A", hungWall, "none", "")+hang("A", 1, "13 3/4", 2, "37 1/4", 3, "60 3/4")))
	assert.Empty(t, p.Moves)
	assert.Empty(t, messages(p, finding.Drift))
	assert.Equal(t, "13 3/4 37 1/4 60 3/4 84 1/4 107 3/4 131 1/4 154 3/4 178 1/4", at(p))
}

func TestReplanOffTheGrid(t *testing.T) {
	// a reading of 37 19/64 is kept to the last fraction, and the grid of 1/16 goes on from it
	p := lay(t, flitched(plain("A", hungWall, "none", "")+hang("A", 1, "13 3/4", 2, "37 19/64")))
	s := p.Runs[0].Seams
	assert.Equal(t, 37*in+19*in/64, s[1].At)
	for _, x := range s[2:] {
		assert.Zero(t, (x.At-s[1].At)%(in/16))
	}
}

func TestReplanTwoReadings(t *testing.T) {
	// the seam leans 3/8 from floor to ceiling: s is the bottom, and the next sheet starts with that askew
	wall := func(top, lean string) *Plan {
		return lay(t, flitched(plain("A", "60", "inside", lean)+plain("B", "60", "none", "lean = [0, 0]")+hang("A", 1, "18", 2, `["41 1/2", "`+top+`"]`)))
	}
	p := wall("41 7/8", "")
	assert.Equal(t, 83*in/2, p.Runs[0].Seams[1].At)
	assert.Empty(t, messages(p, finding.SkewEatsOverlap), "3/8 of the 1/2 that may go")
	p = wall("42 1/16", "")
	assert.Equal(t, []string{"sheet 3 goes 9/16 in askew round the seam hung before it; the overlap allows of 1/2 in"}, messages(p, finding.SkewEatsOverlap))
	// a corner that leans on adds up with it
	p = wall("41 7/8", "lean = \"1/4\"")
	assert.Equal(t, []string{"sheet 3 goes 5/8 in askew round C1 and the seam hung before it; the overlap allows of 1/2 in"}, messages(p, finding.SkewEatsOverlap))
	p = wall("41 1/8", "lean = \"3/8\"")
	assert.Empty(t, messages(p, finding.SkewEatsOverlap), "and one that leans back takes from it")
}

func TestReplanDamagedAfterHangingBegan(t *testing.T) {
	walls := plain("A", hungWall, "none", "")
	hung := hang("A", 1, "13 3/4", 2, "37 1/4", 3, "60 3/4")
	before := lay(t, flitched(walls+hung))
	require.Equal(t, "1-9", numbers(before))
	p := lay(t, strings.Replace(flitched(walls+hung), "sheets = \"1-14\"\n", "sheets = \"1-14\"\ndamaged = [5]\n", 1))
	assert.Equal(t, "1-4, 6-10", numbers(p))
	assert.Equal(t, at(before), at(p), "no seam moves for a number")
	// the second sheet was spoilt while it was hung: 3 hangs in its place
	p = lay(t, strings.Replace(flitched(walls+hang("A", 1, "13 3/4", 3, "37 1/4")), "sheets = \"1-14\"\n", "sheets = \"1-14\"\ndamaged = [2]\n", 1))
	assert.Equal(t, "1, 3-10", numbers(p))
	assert.Equal(t, []int{1, 3, 4, 5, 6, 7, 8, 9, 10}, p.Left[0].Laid)
	assert.Equal(t, []int{11, 12, 13, 14}, p.Left[0].Left)
	// a hung number that skips one puts that one back to stock: it cannot hang further right
	p = lay(t, flitched(walls+hang("A", 1, "13 3/4", 4, "37 1/4")))
	assert.Equal(t, "1, 4-11", numbers(p))
	assert.Equal(t, []int{2, 3, 12, 13, 14}, p.Left[0].Left)
}

func TestReplanAcrossAGap(t *testing.T) {
	// 60 in beside a full-height door of 36, 104 behind it
	walls := plain("A", "200", "none", opening("door", 60, 36, 0, 96, ""))
	p := lay(t, flitched(walls+hang("A", 1, "18 1/4", 2, "41 3/4", 3, "60", 4, "118")))
	// 200 - 118 = 82 = 3 x 23 1/2 + 11 1/2
	assert.Equal(t, "18 1/4 41 3/4 118 141 1/2 165 188 1/2", at(p))
	assert.Equal(t, "1-8", numbers(p))
	for _, s := range p.Runs[0].Sheets {
		assert.Equal(t, s.Place <= 4, s.Hung)
	}
	assert.Zero(t, p.Runs[0].Spans[0].Score.Sheets, "nothing of the first span is left to solve")
	assert.EqualValues(t, 4, p.Runs[0].Spans[1].Score.Sheets)
}

func TestReplanMistakes(t *testing.T) {
	walls := plain("A", "200", "none", opening("door", 60, 36, 0, 96, ""))
	for _, c := range []struct{ name, text, says string }{
		{"the first span does not hang", flitched(walls + hang("A", 1, "118")), "sheet 1 hangs, but sheets left of it on its run do not"},
		{"it does not hang to its end", flitched(walls + hang("A", 1, "18 1/4", 2, "118")), "sheet 2 hangs, but sheets left of it on its run do not"},
		{"a seam inside the door", flitched(walls + hang("A", 1, "18 1/4", 2, "41 3/4", 3, "60", 4, "80")), "the seam of hung sheet 4 stands where no covering is"},
	} {
		t.Run(c.name, func(t *testing.T) {
			r, err := room.Decode("room.toml", []byte(c.text))
			require.NoError(t, err)
			_, err = Lay(r)
			require.Error(t, err)
			assert.Contains(t, err.Error(), c.says)
			assert.Contains(t, err.Error(), "[[hung]]", "with the line it stands on")
		})
	}
}

func TestReplanClosedRoom(t *testing.T) {
	// 44 ft round; the first hung sheet from 20 to 43 on A: the seam at its left is the closing seam
	p := lay(t, closedRoom(`close_at = { wall = "B", at = "60" }`)+strings.Replace(hang("A", 1, "43", 2, "66 1/2"), "seam", "left_seam = \"20\"\nseam", 1))
	r := p.Runs[0]
	assert.Empty(t, messages(p, finding.PinDropped), "the closing seam hangs: a wish for it no longer counts")
	assert.Empty(t, messages(p, finding.ClosingSeam), "and no finding names a hung seam")
	assert.Equal(t, 20*in, r.Sheets[0].Left)
	last := r.Sheets[len(r.Sheets)-1]
	assert.Equal(t, 20*in+44*ft, last.Right)
	assert.Equal(t, 20*in, r.SeamAfter(last.Place).At)
	assert.True(t, r.SeamAfter(last.Place).Closing)
	sum := L(0)
	for _, s := range r.Sheets {
		sum += s.Width
	}
	assert.Equal(t, 44*ft, sum)
	assert.Equal(t, [2]L{66*in + in/2, 20*in + 44*ft}, [2]L{r.Spans[0].Left, r.Spans[0].Right})
	assert.Zero(t, r.Spans[0].Score.Closing)
	require.Len(t, messages(p, finding.Drift), 1)
	for _, f := range p.Findings {
		for _, n := range []int{1, last.Place} {
			assert.NotEqual(t, fmt.Sprintf("seam %d", n), f.Place, "hung seams are named by no finding: %s", f.Message)
		}
	}
}

func TestReplanAllHung(t *testing.T) {
	p := lay(t, flitched(plain("A", "46", "none", "")+hang("A", 1, "23", 2, "46")))
	assert.Equal(t, "23", at(p))
	for _, s := range p.Runs[0].Sheets {
		assert.True(t, s.Hung)
	}
	assert.Zero(t, musts(p))
}

func TestReplanPins(t *testing.T) {
	wall := func(pins string) string {
		return flitched(plain("A", hungWall, "none", pins) + hang("A", 1, "13 3/4", 2, "37 3/8"))
	}
	p := lay(t, wall("[[wall.pin]]\nat = \"20\"\n"))
	assert.Empty(t, messages(p, finding.PinDropped), "a pin left of the last hung seam no longer counts")
	p = lay(t, wall("[[wall.pin]]\nat = \"84 1/4\"\n"))
	assert.Empty(t, messages(p, finding.PinDropped))
	assert.Contains(t, at(p), " 84 1/4 ", "one right of it does")
	assert.EqualValues(t, 1, p.Runs[0].Spans[0].Score.Narrow, "84 1/4 - 37 3/8 = 46 7/8: two sheets, 1/8 short of 47")
}

func TestReplanColumns(t *testing.T) {
	// two courses: the hung number is the lower sheet's, the upper one has the next
	p := lay(t, flitched("[[wall]]\nname = \"A\"\nlength = \"60\"\nheight = 150\n"+hang("A", 1, "18 1/4", 3, "41 3/4")))
	assert.Equal(t, "1-6", numbers(p))
	for _, s := range p.Runs[0].Sheets {
		assert.Equal(t, s.Place <= 2, s.Hung)
	}
}

func TestReplanColumnsWithADamagedNumber(t *testing.T) {
	// 4 was damaged: over 3 hangs 5
	text := strings.Replace(flitched("[[wall]]\nname = \"A\"\nlength = \"60\"\nheight = 150\n"+hang("A", 1, "18 1/4", 3, "41 3/4")),
		"sheets = \"1-14\"\n", "sheets = \"1-14\"\ndamaged = [4]\n", 1)
	p := lay(t, text)
	assert.Equal(t, "1-3, 5-7", numbers(p))
}

// onlyBHangs is two walls of 90, four sheets each, that do not meet; sheets hang on the second one only.
func onlyBHangs(hung string) string {
	return plain("A", "90", "none", "") + plain("B", "90", "none", "") + hung
}

func TestReplanOnTheSecondRun(t *testing.T) {
	p := lay(t, flitched(onlyBHangs(hang("B", 6, "21 3/8", 7, "44"))))
	assert.Equal(t, "1-4, 6-9", numbers(p), "what hangs keeps its number, and the wall at its left takes lower ones")
	assert.Equal(t, []int{5, 10, 11, 12, 13, 14}, p.Left[0].Left)
	assert.Equal(t, "1-4, 6-9", numbers(lay(t, head+onlyBHangs(hang("B", 6, "21 3/8", 7, "44")))), "without a flitch too")
	p = lay(t, strings.Replace(flitched(onlyBHangs(hang("B", 6, "21 3/8", 7, "44"))), "sheets = \"1-14\"\n", "sheets = \"1-14\"\ndamaged = [2]\n", 1))
	assert.Equal(t, "1, 3-9", numbers(p))
	for _, text := range []string{flitched(onlyBHangs(hang("B", 3, "21 3/8", 4, "44"))), head + onlyBHangs(hang("B", 3, "21 3/8", 4, "44"))} {
		r, err := room.Decode("room.toml", []byte(text))
		require.NoError(t, err)
		_, err = Lay(r)
		require.Error(t, err)
		assert.Contains(t, err.Error(), "sheet 3 hangs at place 5, but only 2 sheets with lower numbers can stand before it")
	}
	// a number that both flitches have is of the second once the first is past it
	both := "[[flitch]]\nnumber = \"F\"\nsheets = \"1-2\"\n[[flitch]]\nnumber = \"G\"\nsheets = \"1-14\"\n"
	p = lay(t, head+both+plain("A", "90", "none", "")+hang("A", 1, "21 1/2", 2, "45", 1, "68 1/2"))
	assert.Equal(t, "G", p.Runs[0].Sheets[2].Flitch)
	assert.Equal(t, "1, 2, 1, 2", numbers(p))
	// two flitches: the hung one is of the second, the first wall takes the first
	text := head + "[[flitch]]\nnumber = \"F\"\nsheets = \"1-4\"\n[[flitch]]\nnumber = \"G\"\nsheets = \"11-20\"\n" + onlyBHangs(hang("B", 12, "21 3/8"))
	p = lay(t, text)
	assert.Equal(t, "1-4, 12-15", numbers(p))
	assert.Equal(t, "F", p.Runs[0].Sheets[3].Flitch)
	assert.Equal(t, "G", p.Runs[1].Sheets[0].Flitch)
}

func TestReplanInACornerThatDrifted(t *testing.T) {
	// the third sheet ends at 57, 3 in before the corner: it hangs, so no finding names it, and the next seam still clears the bend
	p := lay(t, flitched(plain("A", "60", "inside", "")+plain("B", "60", "none", "")+hang("A", 1, "21", 2, "44", 3, "57")))
	assert.Empty(t, messages(p, finding.ReturnShort), "the seam at 57 hangs")
	for _, s := range p.Runs[0].Seams {
		if !s.Hung {
			assert.GreaterOrEqual(t, s.NearestCorner.Distance, 4*in)
		}
	}
	assert.Equal(t, 3*in, p.Runs[0].Corners[0].LeftReturn, "but the corner list tells it")
}

// closedHung is a room of 44 ft round, with an overlap of 1 in, whose first sheets hang.
func closedHung(readings string) string {
	return closedRoom("") + "[[hung]]\nwall = \"A\"\n" + readings
}

func TestReadingsOfEdgesAndOfSeamsAreOneRoom(t *testing.T) {
	// sheets of 24 1/2 in: from 20 1/2 to 44 raw, ripped to 24; seams half an inch inside
	whole := lay(t, closedHung("sheet = 1\nleft_seam = 20\nseam = 43\n[[hung]]\nwall = \"A\"\nsheet = 2\nseam = [\"66 1/2\", \"66 5/8\"]\n"))
	for _, same := range []string{
		"sheet = 1\nleft_edge = \"19 1/2\"\nedge = \"43 1/2\"\n[[hung]]\nwall = \"A\"\nsheet = 2\nedge = [67, \"67 1/8\"]\n",
		"sheets = \"1-2\"\nleft_edge = \"19 1/2\"\nedges = [\"43 1/2\", [67, \"67 1/8\"]]\n",
		"sheets = [1, 2]\nleft_seam = 20\nseams = [43, [\"66 1/2\", \"66 5/8\"]]\n",
		"sheet = 1\nleft_edge = \"19 3/8\"\nleft_seam = 20\nedge = \"43 5/8\"\nseam = 43\n[[hung]]\nwall = \"A\"\nsheets = \"2\"\nseams = [[\"66 1/2\", \"66 5/8\"]]\n",
	} {
		p := lay(t, closedHung(same))
		assert.Equal(t, whole.JSON(), p.JSON(), same)
	}
}

func TestAnEdgeAtARawEnd(t *testing.T) {
	// 60 in beside a full-height door of 36: the third sheet ends at the door, and hangs an edge trim of 1 in past it
	walls := plain("A", "200", "none", opening("door", 60, 36, 0, 96, ""))
	seams := lay(t, flitched(walls+hang("A", 1, "18 1/4", 2, "41 3/4", 3, "60", 4, "118")))
	for _, end := range []string{"60", "60 7/8", "61"} {
		edges := flitched(walls + "[[hung]]\nwall = \"A\"\nsheets = \"1-4\"\nedges = [\"18 3/4\", \"42 1/4\", \"" + end + "\", \"118 1/2\"]\n")
		assert.Equal(t, seams.JSON(), lay(t, edges).JSON(), "the third edge at %s", end)
	}
	all := lay(t, flitched(plain("A", "46", "none", "")+"[[hung]]\nwall = \"A\"\nsheets = \"1-2\"\nedges = [\"23 1/2\", 47]\n"))
	assert.Equal(t, lay(t, flitched(plain("A", "46", "none", "")+hang("A", 1, "23", 2, "46"))).JSON(), all.JSON())
}

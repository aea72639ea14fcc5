package crew_test

import (
	"fmt"
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/roomtest"
)

// TestSheetsAreReceived types back what the page of receiving asks for: the width under which it refuses is the least that hangs,
// every sheet delivered has its boxes, and the sheet that came narrower hangs by the line that its wall's page then prints.
func TestSheetsAreReceived(t *testing.T) {
	text, err := os.ReadFile("testdata/rooms/oldhouse.toml")
	require.NoError(t, err)
	p := rooms(t)["oldhouse"]
	page := ""
	for _, s := range printed(t, p) {
		if strings.Contains(s, "WIDTH OF EACH SHEET") {
			page += s + " "
		}
	}
	m := regexp.MustCompile(`gross width (\S+(?: \d+/\d+)?") overlap (\S+(?: \d+/\d+)?") refuse under (\S+(?: \d+/\d+)?")`).FindStringSubmatch(page)
	require.NotNil(t, m, page)
	limit, err := length.Parse(m[3], length.Inches)
	require.NoError(t, err)
	for _, n := range p.Left[0].Delivered {
		assert.Regexp(t, `(^| )`+itoa(n)+`( |$)`, page)
	}
	measured := func(width layout.L) *layout.Plan {
		wide := length.StyleOf(length.Inches).Inches(width)
		return roomtest.Laid(t, "measured", strings.Replace(string(text), "[[flitch]]\n", "[[flitch]]\nwidths = [[3, \""+wide+"\"]]\n", 1))
	}
	under := measured(limit - length.Inch/16)
	assert.Contains(t, under.Left[0].Damaged, 3)
	assert.Contains(t, strings.Join(printed(t, under), " "), "too narrow")

	q := measured(limit)
	assert.NotContains(t, q.Left[0].Damaged, 3)
	was, is := layout.L(0), layout.L(0)
	for _, x := range []struct {
		plan *layout.Plan
		line *layout.L
	}{{p, &was}, {q, &is}} {
		for _, s := range printed(t, x.plan) {
			if strings.Contains(s, "TAPE LIST") {
				if row, ok := tapeOf(s)[3]; ok && *x.line == 0 {
					*x.line, err = length.Parse(row.edge, length.Inches)
					require.NoError(t, err)
				}
			}
		}
	}
	lacks := (p.Room.Veneer.GrossWidth - limit) - (p.Room.Veneer.GrossWidth - p.Room.Veneer.Overlap - p.Room.NetWidth())
	assert.Positive(t, lacks)
	assert.InDelta(t, float64(lacks/2), float64(was-is), float64(length.Inch/32))
	assert.Regexp(t, `3 came .* wide: its seam .* left of its raw edge`, strings.Join(printed(t, q), " "))
}

// TestNarrowSheetsSayThatTheyAre reads of sheets that came narrower where both their raw edges hang, which are as far apart as the
// sheet measured; their cards say so, and the lists say of one that was refused what it measured.
func TestNarrowSheetsSayThatTheyAre(t *testing.T) {
	text, err := os.ReadFile("testdata/rooms/oldhouse.toml")
	require.NoError(t, err)
	p := roomtest.Laid(t, "narrow", strings.Replace(string(text), "damaged = [9]", "damaged = [9]\nwidths = [[4, \"24\"], [6, \"23\"]]", 1))
	require.Equal(t, []int{6, 9}, p.Left[0].Damaged)
	all := strings.Join(printed(t, p), " ")
	came := regexp.MustCompile(`\b(\d+) came ` + figure + ` wide: its seam ` + figure + ` left of its raw edge, its raw left edge at ` + figure)
	found := map[string]bool{}
	for _, page := range printed(t, p) {
		tape := tapeOf(page)
		for _, m := range came.FindAllStringSubmatch(page, -1) {
			found[m[1]] = true
			n, wide := 0, read(t, p, m[2])
			_, err := fmt.Sscan(m[1], &n)
			require.NoError(t, err)
			require.Contains(t, tape, n)
			edge, seam := read(t, p, tape[n].edge), read(t, p, tape[n].seam)
			assert.True(t, near(wide, edge-read(t, p, m[4])), m[0])
			assert.True(t, near(edge-seam, read(t, p, m[3])), m[0])
		}
	}
	assert.True(t, found["4"], "sheet 4 has a line of its own")
	for _, c := range cardsOf(t, p) {
		assert.Equal(t, c.number == "4", strings.Contains(c.words, "NARROW: came "), "card %s", c.number)
	}
	assert.Contains(t, all, `6 W-8, refused: too narrow (measured 23", least 23 1/2")`)
	assert.Contains(t, all, "damaged: 9; refused, too narrow: 6; ")
	assert.Contains(t, all, "9 W-8, damaged")
}

// TestTooNarrowIsSaidOfWhatIsDamagedToo reads of a sheet that is listed as damaged and came too narrow besides what it measured, at the
// start, on the page of receiving and in the cut list.
func TestTooNarrowIsSaidOfWhatIsDamagedToo(t *testing.T) {
	text, err := os.ReadFile("testdata/rooms/oldhouse.toml")
	require.NoError(t, err)
	p := roomtest.Laid(t, "both.toml", strings.Replace(string(text), "damaged = [9]", "damaged = [9, 11]\nwidths = [[9, \"22 1/2\"]]", 1))
	all := strings.Join(printed(t, p), " ")
	assert.Contains(t, all, `9 W-8, refused: too narrow (measured 22 1/2", least 23 1/2")`)
	assert.Contains(t, all, `9 22 1/2" too narrow`)
	assert.Contains(t, all, "damaged: 11; refused, too narrow: 9; ")
	assert.NotContains(t, all, "9 W-8, damaged")
}

// TestNarrowClosingSheetIsNotRipped reads how a sheet closes a room that came narrower than the gap and its overlaps: it is not
// ripped, and the gap to check by is what its neighbours' raw edges leave.
func TestNarrowClosingSheetIsNotRipped(t *testing.T) {
	wall := func(name, long string) string {
		return "[[wall]]\nname = \"" + name + "\"\nlength = \"" + long + "\"\nheight = \"8'\"\n"
	}
	p := roomtest.Laid(t, "closes", "[project]\ntitle = \"Closes\"\n[veneer]\ngross_width = 25\noverlap = 1\nlength = 120\n"+
		"[[flitch]]\nnumber = \"F\"\nsheets = \"1-24\"\nspare = 2\nwidths = [[16, \"24 5/8\"]]\n[room]\nclosed = true\n"+
		wall("A", "112")+wall("B", "80")+wall("C", "112")+wall("D", "80"))
	require.Len(t, p.Runs[0].Sheets, 16)
	all := strings.Join(printed(t, p), " ")
	assert.Contains(t, all, `16 closes, no rip: came 24 5/8 wide; lap over both evenly`)
	m := regexp.MustCompile(`closes, came 24 5/8 wide: do not rip; measure the gap of raw edges at [^;]*?, lap over both evenly; gap to check: ` + figure).FindStringSubmatch(all)
	require.NotNil(t, m, all)
	r := &p.Runs[0]
	gap := r.Length + r.Sheets[0].StartLine - r.Sheets[14].RightLine
	for gap > r.Length {
		gap -= r.Length
	}
	assert.True(t, near(gap, read(t, p, m[1])), "%s: %s", m[1], p.Style.Format(gap))
	assert.NotContains(t, all, "rip right edge off")
}

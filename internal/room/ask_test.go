package room

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/finding"
)

// quiet is a room of which nothing is asked; text of a case goes to its end, into the second wall.
const quiet = `[project]
title = "t"
measured = 2026-03-01
[veneer]
gross_width = "24 1/2"
overlap = "1"
length = "10'"
[site]
temperature = 68
humidity = 42
[room]
base = "5"
casing = "3 1/2"
[[wall]]
name = "N"
length = "12'"
height = "8'"
left_end = "trim"
[[wall]]
name = "E"
length = "10'"
height = "8'"
right_end = "trim"
`

// asked holds for each code an edit of the quiet room that earns it, what is asked then, and another edit that answers it by a key.
var asked = []struct {
	code      finding.Code
	old, text string // "+": at the end
	want      string // line, answer, message
	mend      [2]string
}{
	{finding.WallOdd, `"12'"`, `12.5`, `16 wall-odd N: wall N is 12 1/2 in long, less than the usual 24 in: is it so?`, [2]string{`12.5`, `"12' 6"`}},
	{finding.WallOdd, `"12'"`, `3815`, `16 wall-odd N: wall N is 317'-11" long, more than the usual 150'-0": is it so?`, [2]string{`3815`, `"3815 mm"`}},
	{finding.WallOdd, `"12'"`, `"1' 2"`, `16 wall-odd N: wall N is 14 in long, less than the usual 24 in: is it so?`, [2]string{`1' 2`, `12' 2`}},
	{finding.CeilingOdd, `height = "8'"`, `height = "4' 6"`, `17 ceiling-odd N: the ceiling of wall N is 4'-6" up, less than the usual 6'-0": is it so?`, [2]string{`4' 6`, `8' 6`}},
	{finding.CeilingOdd, `height = "8'"`, `height = "96'"`, `17 ceiling-odd N: the ceiling of wall N is 96'-0" up, more than the usual 40'-0": is it so?`, [2]string{`96'`, `96`}},
	{finding.OpeningNarrow, "+", window(`width = 4.5`, ``), `27 opening-narrow W1: window W1 is 4 1/2 in wide, less than the usual 12 in: is it so?`, [2]string{`4.5`, `"4' 6"`}},
	{finding.DoorLow, "+", door("30", `"5' 11"`), `27 door-low D1: door D1 is 5'-11" high, less than the usual 6'-0": is it so?`, [2]string{`5' 11`, `6' 11`}},
	{finding.DoorWide, "+", door("80", "79"), `26 door-wide D1: door D1 is 6'-8" wide and 6'-7" high: are the two figures in each other's place?`, [2]string{`width = 80`, `width = 30`}},
	{finding.SillHigh, "+", window(`width = 40`, `sill = 61`), `29 sill-high W1: the sill of window W1 is 5'-1" up, more than the usual 5'-0": is it so?`, [2]string{`sill = 61`, `sill = 60`}},
	{finding.SheetOdd, `"24 1/2"`, `622`, `5 sheet-odd gross_width: gross_width of the veneer is 51'-10", more than the usual 5'-0": is it so?`, [2]string{`622`, `"622 mm"`}},
	{finding.SheetOdd, `"10'"`, `10`, `7 sheet-odd length: length of the veneer is 10 in, less than the usual 4'-0": is it so?`, [2]string{`= 10`, `= "10'"`}},
	{finding.SheetOdd, `"1"`, `"6"`, `6 sheet-odd overlap: overlap of the veneer is 6 in, more than the usual 4 in: is it so?`, [2]string{`= "6"`, `= "1"`}},
	{finding.TrimOdd, `"5"`, `25`, `12 trim-odd base: base is 25 in, more than the usual 24 in: is it so?`, [2]string{`base = 25`, `base = "5"`}},
	{finding.LevelOdd, `casing =`, "level_line = 12\ncasing =", `13 level-odd: the level line is 12 in up, less than the usual 24 in: is it so?`, [2]string{`level_line = 12`, `level_line = 48`}},
	{finding.PlateOdd, "+", box(`plate = [2, 30]`), `28 plate-odd E1: the plate of outlet E1 is 30 in high, more than the usual 24 in: is it so?`, [2]string{`[2, 30]`, `[2, 3]`}},
	{finding.ClosedUnsaid, "+", "[[wall]]\nlength = \"12'\"\nheight = 96\n[[wall]]\nlength = \"9' 11\"\nheight = 96\nright_end = \"trim\"\n", `27 closed-unsaid: the last wall ends 1 in from where the first begins: do the walls close?`, [2]string{`[room]`, "[room]\nclosed = false"}},
	{finding.LeftEndUnsaid, "left_end = \"trim\"\n", "", `14 left-end-unsaid N: what does the covering run against at the left end of wall N? Nothing is said, and a free end is counted`, [2]string{`name = "N"`, "name = \"N\"\nleft_end = \"free\""}},
	{finding.RightEndUnsaid, "right_end = \"trim\"\n", "", `19 right-end-unsaid E: what does the covering run against at the right end of wall E? Nothing is said, and a free end is counted`, [2]string{`name = "E"`, "name = \"E\"\nright_end = \"frame\""}},
	{finding.LeanUnsaid, "+", "lean = \"1/8\"\n", `14 lean-unsaid: at other corners a lean was read: is that at the right end of wall N plumb?`, [2]string{`name = "N"`, "name = \"N\"\nlean = 0"}},
	{finding.WrapUnsaid, "+", window(`width = 40`, "sill = 30\nreveal = 5"), `30 wrap-unsaid W1: window W1 has sides 5 in deep: are they covered?`, [2]string{`reveal = 5`, "reveal = 5\nwrap_reveal = false"}},
	{finding.ClearanceUnsaid, "+", "[[wall.opening]]\nkind = \"fireplace\"\nname = \"Hearth\"\nfrom_left = 30\nwidth = 40\nheight = 36\n", `24 clearance-unsaid Hearth: which clearance to combustibles does fireplace Hearth on wall E ask for, by the local code or the listing of the appliance? None is stated: the covering is laid up to its edge`, [2]string{`height = 36`, "height = 36\nclearance = 0"}},
	{finding.CasingUnsaid, "casing = \"3 1/2\"\n[[wall]]\nname = \"N\"", "[[wall]]\nopening = [{ from_left = 9, width = 30, height = 80 }, { kind = \"built-in\", from_left = 50, width = 30, height = 80 }]\nname = \"N\"", `14 casing-unsaid: how wide are casings? Nothing is said of door D1, on walls with a base; figures run to the outer edge of a casing`, [2]string{`height = 80 }, {`, `height = 80, casing = 0 }, {`}},
	{finding.HeightsFew, `"12'"`, `"25' 1"`, `17 heights-few N: wall N is 25'-1" long, and its ceiling is given at its ends only: is it straight between them?`, [2]string{`height = "8'"`, `height = [[0, 96], [150, 96], [301, 96]]`}},
	{finding.BoxNear, "+", door("30", "80") + box(``), `28 box-near E1: the plate of outlet E1 stands 5/8 in from door D1: was it measured from the same end?`, [2]string{`from_left = 20`, `from_left = 19`}},
	{finding.NotMeasured, "measured = 2026-03-01\n", "", `1 not-measured: the room is not yet said to be measured: are the figures from the drawings?`, [2]string{`title`, "measured = 2026-01-01\ntitle"}},
	{finding.MeasuredLongAgo, "measured", "drawn = 2026-05-31\nmeasured", `4 measured-long-ago: the room was measured on 2026-03-01, 91 days before it was drawn: is it still as it was?`, [2]string{`05-31`, `05-30`}},
	{finding.IssueUndated, "measured = 2026-03-01\n", "drawn = 2026-04-02\nmeasured = 2026-03-01\nrevision = [{ date = 2026-04-01 }, { date = 2026-04-02 }]\n", `3 issue-undated: on which day was the first issue? The drawing is of 2026-04-02, later than revision A, so that its row has no date`, [2]string{`drawn = `, "issued = 2026-03-20\ndrawn = "}},
	{finding.SiteUnread, "[site]\ntemperature = 68\nhumidity = 42\n", "", `0 climate-unread: what are temperature and humidity of the site? Nothing is said of them`, [2]string{`[room]`, "[site]\ntemperature = 68\nhumidity = 42\n[room]"}},
	{finding.BoardUnread, "humidity = 42", "humidity = 42\nboard = { meter = \"gypsum\" }", `11 board-unread: what does the meter read on the wall? Its scale is named, and no reading`, [2]string{`"gypsum"`, `"gypsum", reading = 1`}},
	{finding.SparesMany, "[room]", "[rules]\nspare_share = 0.95\n[room]", `12 spares-many: spare_share 0.95 asks for 95 spare sheets of 100: is one in so many meant?`, [2]string{`0.95`, `0.5`}},
	{finding.PinsClose, "+", "pin = [{ at = 40 }, { at = 50 }, { at = 45, put = \"middle\" }]\n", `24 pins-close E: the pins seam at 3'-4" and at 4'-2" on wall E are 10 in apart, less than the 23 1/2 in that a sheet covers: are both wanted?`, [2]string{`at = 50`, `at = 63.5`}},
	{finding.FractionOdd, `"24 1/2"`, `"24 3/7"`, `5 fraction-odd 24 3/7: gross_width is written "24 3/7", and no rule is marked so: is one of its figures another?`, [2]string{`3/7`, `3/8`}},
	{finding.FractionOdd, `"5"`, `"5 2/4"`, `12 fraction-odd 5 2/4: base is written "5 2/4", and no rule is marked so: is one of its figures another?`, [2]string{`2/4`, `3/4`}},
	{finding.AnswersNothing, `[room]`, "[room]\nanswered = [\"wall-odd M\"]", `12 answers-nothing wall-odd M: answered holds "wall-odd M", and nothing asks that`, [2]string{`"wall-odd M"`, ``}},
}

func window(width, rest string) string {
	return "[[wall.opening]]\nkind = \"window\"\nfrom_left = 20\n" + width + "\nheight = 30\n" + rest + "\n"
}

func door(width, high string) string {
	return "[[wall.opening]]\nfrom_left = 20\nwidth = " + width + "\nheight = " + high + "\n"
}

func box(rest string) string {
	return "[[wall.box]]\nkind = \"outlet\"\nx = 18\nz = 16\n" + rest + "\n"
}

// asks are the questions of a file in one line each.
func asks(t *testing.T, text string) (list []string, answers []string) {
	r, err := Decode("r", []byte(text))
	require.NoError(t, err, text)
	for _, f := range r.Asks {
		assert.Equal(t, finding.Ask, f.Level)
		assert.NotEmpty(t, f.Mend)
		list = append(list, fmt.Sprintf("%d %s: %s", f.Line, f.Answer, f.Message))
		answers = append(answers, f.Answer)
	}
	return list, answers
}

func TestEveryAskIsEarnedAndAnswered(t *testing.T) {
	got, _ := asks(t, quiet)
	require.Empty(t, got)
	earned := map[finding.Code]bool{}
	for _, c := range asked {
		t.Run(string(c.code), func(t *testing.T) {
			text := quiet + c.text
			if c.old != "+" {
				require.Contains(t, quiet, c.old)
				text = strings.Replace(quiet, c.old, c.text, 1)
			}
			got, answers := asks(t, text)
			require.Equal(t, []string{c.want}, got)
			earned[c.code] = true

			require.Contains(t, text, c.mend[0])
			left, _ := asks(t, strings.Replace(text, c.mend[0], c.mend[1], 1))
			assert.Empty(t, left, "answered by the key that it names")
			if c.code != finding.AnswersNothing {
				left, _ = asks(t, strings.Replace(text, "[room]", fmt.Sprintf("[room]\nanswered = [%q]", answers[0]), 1))
				assert.Empty(t, left, "answered by its words")
			}
		})
	}
	for _, code := range finding.OfFile() {
		assert.True(t, earned[code], "nothing asks %s", code)
	}
}

func TestAnsweredIsRead(t *testing.T) {
	for text, want := range map[string]string{
		`"wall-odd N"`:                 "answered takes a list of texts, not a text",
		`["wal-odd N"]`:                `nothing is asked by the word "wal-odd"`,
		`[3]`:                          "answered takes a text, not a whole number",
		`["wall-odd N", "wall-odd N"]`: `answered holds "wall-odd N" twice`,
	} {
		_, err := Decode("r", []byte(strings.Replace(quiet, "[room]", "[room]\nanswered = "+text, 1)))
		if assert.Error(t, err, text) {
			assert.Contains(t, err.Error(), want)
		}
	}
}

// What is said of a near word of what is open leads to it.
func TestAnswerNearToWhatIsOpen(t *testing.T) {
	text := strings.Replace(quiet, `"12'"`, "12.5", 1)
	list, _ := asks(t, strings.Replace(text, "[room]", "[room]\nanswered = [\"wall-odd Nn\"]", 1))
	assert.Contains(t, strings.Join(list, "\n"), `answered holds "wall-odd Nn", and nothing asks that: is "wall-odd N" meant?`)
}

// A wall between corners of which one juts out is a side of something and may be short; other rooms are asked of it.
func TestShortWallsOfAPilasterAreNotAsked(t *testing.T) {
	text := strings.Replace(quiet, "[[wall]]\nname = \"E\"", "corner = \"inside\"\n[[wall]]\nlength = 7\nheight = 96\ncorner = \"outside\"\n"+
		"[[wall]]\nlength = 20\nheight = 96\ncorner = \"outside\"\n[[wall]]\nlength = 7\nheight = 96\n[[wall]]\nname = \"E\"", 1)
	list, _ := asks(t, text)
	assert.Empty(t, list)
	list, _ = asks(t, strings.Replace(text, "length = 7", "length = \"1.9\"", 1))
	assert.Equal(t, []string{`21 wall-odd Wall 2: wall Wall 2 is 1 7/8 in long, less than the usual 24 in: is it so?`}, list)
}

func TestSamplesAndStartersLeaveNothingOpen(t *testing.T) {
	for _, pattern := range []string{"../../samples/*.toml", "../../templates/rooms/*.toml"} {
		files, err := filepath.Glob(pattern)
		require.NoError(t, err)
		require.NotEmpty(t, files)
		for _, f := range files {
			text, err := os.ReadFile(f)
			require.NoError(t, err)
			list, _ := asks(t, string(text))
			assert.Empty(t, list, f)
		}
	}
}

// A figure that lies where such figures lie once it is read in another unit is said with that unit, as it is to be typed.
func TestUnitsThatMayBeMeant(t *testing.T) {
	for _, c := range []struct{ old, text, want string }{
		{`"12'"`, `12.5`, `length = "12.5 ft" if feet are meant`},
		{`"12'"`, `3815`, `length = "3815 mm" if millimetres are meant`},
		{`"24 1/2"`, `622`, `gross_width = "622 mm" if millimetres are meant`},
		{`"12'"`, `"1' 3"`, `length`},
		{"[veneer]\n", "units = \"mm\"\n[veneer]\n", `length = "12.5 m" if metres are meant`},
	} {
		text := strings.Replace(quiet, c.old, c.text, 1)
		if strings.Contains(c.text, "mm\"\n") {
			text = strings.NewReplacer(`"12'"`, "12.5", `"24 1/2"`, "620", `"1"`, "25").Replace(text)
		}
		r, err := Decode("r", []byte(text))
		require.NoError(t, err)
		var mends []string
		for _, f := range r.Asks {
			mends = append(mends, f.Mend)
		}
		assert.Contains(t, mends, c.want)
	}
}

// ref points to a value.
func ref[T any](v T) *T { return &v }

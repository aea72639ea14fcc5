package layout

import (
	"fmt"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/finding"
	"flitchlay/internal/length"
)

// twoWalls is a room that was laid out before its walls were read once more.
const twoWalls = head + `[[wall]]
name = "A"
length = "60"
height = "8'"
[[wall]]
name = "B"
length = "50"
height = "8'"
`

// provoked holds for each code a room that earns it, and what it says.
var provoked = []struct {
	code finding.Code
	text string
	says string
}{
	{finding.SheetThin, head + `[rules]
corner_return = "12"
prefer_return = "12"
short_seam = "96"
[[wall]]
name = "A"
length = "10"
height = "8'"
[[wall]]
name = "B"
length = "14"
height = "8'"`, "sheet 2 covers 2 in of wall B; no sheet may be under 6 in"},
	{finding.ReturnShort, narrowFace, "from corner C1; 11 in must wrap past a bend"},
	{finding.LegThin, twoSheets(24), "seam 1 | 2 leaves a leg of 1 in beside window W1; a leg must be 3 in"},
	{finding.ClearShort, wall(`length = "12'"
height = "8'"
[[wall.opening]]
kind = "door"
from_left = "21"
width = "3"
height = "7'"
[[wall.opening]]
kind = "door"
from_left = "25"
width = "3"
height = "7'"
[[wall.keep_clear]]
from = "0"
to = "21"
`), ""},
	{finding.RevealShort, wrapped(`width = "24"
reveal = "11"`, `[[wall.keep_clear]]
from = "0"
to = "29"
[[wall.keep_clear]]
from = "55"
to = "79"`), ""},
	{finding.KeptClear, wall(`length = "12'"
height = "8'"
[[wall.keep_clear]]
from = "20"
to = "60"
why = "bracket"`), "inside the stretch kept clear from 20 in to 5'-0\" on wall Long (bracket)"},
	{finding.RevealsOverlap, wrapped(`width = "16"
reveal = "9"`, ""), "the two jambs of window W1 take 18 in of the sheets over it, but it is only 16 in wide"},
	{finding.SkewEatsOverlap, head + `[[wall]]
name = "A"
length = "60"
height = "8'"
lean = "5/8"
[[wall]]
name = "B"
length = "60"
height = "8'"
lean = [0, 0]`, "goes 5/8 in askew round C1; the overlap allows of 1/2 in"},
	{finding.PlanAgain, twoWalls + `[[reading]]
wall = "B"
ceiling_up = "4' 2 1/8"`, "wall B as read: PLAN AGAIN: sheets 3, 4, 5 as cut are 1/8 in short at their head. Put the reading into"},
	{finding.Restrike, twoWalls + `[[reading]]
wall = "A"
length = "60 3/16"`, "wall B, by the readings of other walls: RE-STRIKE, sheets and cut lengths stand: the lines of sheets 3, 4 lie 3/16 in further left; what is cut out and folded for it lies 3/16 in further right on the sheets"},
	{finding.HangIt, twoWalls + `[[reading]]
wall = "A"
length = "60"
ceiling_up = ["4'", "4' 1"]`, "wall A as read: HANG: the lines stand as printed; the trims give 1 in of 2 in at the head"},
	{finding.PinDropped, wall(`length = "30"
height = "8'"
[[wall.pin]]
at = "1"`), `the pin for a seam at 1 in on wall Long is dropped: no row of sheets of at most 23 1/2 in and at least 6 in can stand so`},
	{finding.SheetShort, wall(`length = "20"
height = "12'"
[rules]
joint_height = "9' 9 1/2"
`), "sheet 1 has to be cut 10'-0 1/2\" long; the sheets are 10'-0\""},
	{finding.FlitchShort, flitchRoom("1-3"), "6 sheets are laid and 3 can be: 3 short"},
	{finding.Misclosure, strings.Replace(closedRoom(""), `length = "12'"`, `length = "12' 3"`, 1), "miss closing by 3 in, wall C is 3 in shorter than wall A, the angles by 0 degrees"},
	{finding.CannotMeet, narrowFace, "not all of these can be met on wall B: returns of 11 in at corner C1; returns of 11 in at corner C2"},

	{finding.ReturnClose, head + `[rules]
least_width = "20"
[[wall]]
name = "A"
length = "28"
height = "8'"
[[wall]]
name = "B"
length = "18"
height = "8'"`, "seam 1 | 2 is 5 in from corner C1; better 6 in"},
	{finding.LegClose, twoSheets(27), "seam 1 | 2 leaves a leg of 4 in beside window W1; better 6 in"},
	{finding.ClearClose, twoSheets(20), "seam 1 | 2 is 3 in inside the left edge of window W1; better 4 in"},
	{finding.PlateClose, wall(`length = "46"
height = "8'"
[[wall.box]]
kind = "outlet"
x = "23"
z = "16"`), "seam 1 | 2 runs behind the plate of outlet E1; better 1 in beside it"},
	{finding.SheetSlim, wall(`length = "46 1/16"
height = "8'"`), "sheet 1 covers 11 5/16 in of wall Long; better 12 in"},
	{finding.EndClose, head + `[[wall]]
name = "A"
length = "60"
height = "8'"
[[wall]]
name = "B"
length = "60"
height = "8'"
[[wall.bare]]
from = "3"
to = "5"`, "the covering ends 3 in from corner C1 against the bare strip; better 4 in"},
	{finding.RevealShallow, wrapped(`width = "40"
reveal = "3"`, ""), "the jambs of window W1 are 3 in deep; 4 in should wrap past a bend"},
	{finding.BoxInOpening, wall(`length = "12'"
height = "8'"
[[wall.opening]]
kind = "window"
from_left = "40"
width = "40"
sill = "30"
height = "40"
[[wall.box]]
kind = "switch"
x = "40"
z = "48"`), "the plate of switch S1 at 3'-4\" on wall Long reaches 1 3/8 in into window W1"},
	{finding.PieceThin, wall(`length = "60"
height = ["12' 6", "12' 6"]
floor = [[0, 0], ["30", 0], ["30", "70"], ["60", "70"]]
[rules]
joint_height = "6' 3"
`), "is no more than 5 in high; a strip under 6 in is hard to hang straight"},
	{finding.FigureSteps, wall(`length = "20'"
height = ["9'", "9' 6"]
floor = ["-6", 0]
[room]
level_line = "4'"
`), "the sheets of the room need 5'-8\" above the level line and 4'-8\" below it, 10'-4\" in all; out of 10'-0\" the figure steps from sheet to sheet; sheet 11 reaches up and sheet 1 down the most"},
	{finding.FlitchChangeInField, flitchRoom("1-3") + "[[flitch]]\nnumber = \"F-2\"\nsheets = \"1-9\"\n", "flitch F-1 runs out at seam 3 | 1, in the open field of wall Long"},
	{finding.SparesFew, flitchRoom("1-7"), "1 spare of flitch F-1 for 6 sheets laid; better 2"},
	{finding.ClosesBadly, strings.Replace(closedRoom(""), `length = "12'"`, `length = "12' 1 1/2"`, 1), "better 1 in"},
	{finding.EdgeBare, wall(`length = "60"
height = "8'"
right_end = "outside edge"`), "the covering ends at outside edge at the right of wall Long, at 5'-0\", without a trim"},

	{finding.LeansMuch, wall(`length = "10'"
height = "8'"
lean = ["0", "-3/8"]`), `the right end of wall Long leans 3/8 in to the left over 8'-0", which is 9/16 in in 12'-0"; over 1/2 in a wall is put right`},
	{finding.HungDamaged, flitchRoom("1-9") + "damaged = [1, 4]\n" + hungAt("15"), "sheet 1 of flitch F-1, said to be damaged, hangs on the wall and counts as laid"},
	{finding.Leans, wall(`length = "10'"
height = "9'"
lean = ["1/4", "0"]`), `the left end of wall Long leans 1/4 in to the right over 9'-0", which is 5/16 in in 12'-0"; woodwork is made for walls within 1/4 in in that (AWS 6.1.10.1)`},
	{finding.NarrowSheet, wall(`length = "20'"
height = "8'"
[[wall.pin]]
at = "60"
[[wall.pin]]
at = "75"`), ", ripped to 16 in, covers 15 in of 23 1/2 in: the grain jumps 8 1/2 in at seam"},
	{finding.JumpSeen, wall(`length = "20'"
height = "2'"
[[wall.pin]]
at = "60"
[[wall.pin]]
at = "75"`), ", ripped to 16 in, covers 15 in of 23 1/2 in: the grain jumps 8 1/2 in at seam 4 | 5, seen for all its height of 24 in"},
	{finding.NarrowSheet, wall(`length = "20'"
height = "8'"
[[wall.pin]]
at = "60"
[[wall.pin]]
at = "75"
[[wall.opening]]
kind = "window"
from_left = "5'"
width = "4'"
sill = "3'"
height = "2'"`), "at seam 4 | 5, seen for 6'-0\", 3'-0\" under and 3'-0\" over window W1"},
	{finding.FlitchBegins, wall(`length = "186"
height = "8'"
[[wall.opening]]
kind = "window"
from_left = "80"
width = "36"
sill = "70"
height = "10"
`) + "[[flitch]]\nnumber = \"F-1\"\nsheets = \"1-5\"\n[[flitch]]\nnumber = \"F-2\"\nsheets = \"1-20\"\n",
		"flitch F-2 begins at seam"},
	{finding.ClosingSeam, closedRoom(""), "meets sheet 1 at the closing seam"},
	{finding.ClosesWithin, closedRoom(""), "the walls close within 0 in over 44'-0\" of girth"},
	{finding.NumbersLeftOut, flitchRoom("1-20") + "damaged = [2, 3, 4, 9]\n", "of flitch F-1, delivered 1-20, sheets 2-4, 9 are not laid (damaged)"},
	{finding.SheetInGap, wall(`length = "20'"
height = "8'"
[[wall.opening]]
kind = "door"
from_left = "60"
width = "60"
height = "8'"
grain = "through"`), "falls wholly into door D1 and goes back to stock"},
	{finding.PinToGrid, wall(`length = "12'"
height = "8'"
[[wall.pin]]
at = "5' 0 1/32"`), "1/16 in off"},
	{finding.HeadAndSill, wrapped(`width = "40"
reveal = "5"`, ""), "the jambs of window W1, 5 in deep, are wrapped; the head and the sill of it on wall Long need separate pieces or paint"},
	{finding.AlarmStaysBare, wall(`length = "12'"
height = "8'"
[[wall.box]]
kind = "alarm"
x = "40"
z = "84"`), "alarm AL1 at 3'-4\" on wall Long, 7'-0\" up, is an alarm device"},
	{finding.Joint, wall(`length = "60"
height = "12'"`), "wall Long takes two courses; 1 and 2 meet at 6'-0\" over the level: the middle between"},
	{finding.Nearly, wall(`length = "60"
height = "9' 8 1/16"`), "1/16 in less of top_trim (1 15/16 in) would hang wall Long in one course: 3 sheets and not 6"},
	{finding.Turned, wall(`length = "60"
height = "12'"
[rules]
upper = "turned"`), "the upper sheets of wall Long, 2, 4, 6, hang turned end for end"},
	{finding.Drift, wall(`length = "12'"
height = "8'"`) + hungAt("20 1/16"), "the last one hung, ends"},
	{finding.Chosen, head + "[room]\nchoose = 2\n[[wall]]\nlength = \"8' 4 1/2\"\nheight = \"8'\"\n",
		"not the best layout but number 2 of those that compare lists is laid out, as choose in [room] asks"},
	{finding.NoFlitch, wall(`length = "60"
height = "8'"`), "no flitch is given: the 3 sheets are numbered from 1"},
	{finding.RoomMade, head + `[[wall]]
name = "A"
length = "60"
height = "8'"
[[wall]]
name = "B"
length = "80"
height = "8'"
[[wall.opening]]
kind = "window"
from_left = "3"
width = "30"
sill = "30"
height = "40"`, "the left edge of window W1 stands 3 in from corner C1; 4 in should wrap past a bend"},
}

// narrowFace is a face of 20 in between two outside corners at which 11 in must wrap: no seam has room on it, and no sheet
// covers it with both returns.
const narrowFace = head + `[rules]
corner_return = "11"
prefer_return = "11"
[[wall]]
name = "A"
length = "60"
height = "8'"
corner = "outside"
[[wall]]
name = "B"
length = "20"
height = "8'"
corner = "outside"
[[wall]]
name = "C"
length = "60"
height = "8'"
`

// twoSheets is a wall of 46 in, which two sheets of 23 in cover with their seam at 23 in, and a window from there.
func twoSheets(from int) string {
	return fmt.Sprintf(`%s[rules]
least_width = "20"
[[wall]]
name = "Long"
length = "46"
height = "8'"
[[wall.opening]]
kind = "window"
from_left = %d
width = 16
sill = 30
height = 40
`, head, from)
}

func hungAt(seam string) string {
	return "\n[[hung]]\nwall = \"Long\"\nsheet = 1\nseam = \"" + seam + "\"\n"
}

func flitchRoom(sheets string) string {
	return wall(`length = "10'"
height = "8'"
`) + "[[flitch]]\nnumber = \"F-1\"\nsheets = \"" + sheets + "\"\n"
}

func wrapped(opening, rest string) string {
	return wall(`length = "14'"
height = "8'"
[[wall.opening]]
kind = "window"
from_left = "30"
sill = "30"
height = "40"
wrap_reveal = true
` + opening + "\n" + rest)
}

func TestEveryCodeIsProvoked(t *testing.T) {
	have := map[finding.Code]bool{finding.Glyph: true} // made by the drawings, which know the face
	for _, code := range finding.OfFile() {
		have[code] = true // asked of the room file, before there is a layout
	}
	for _, code := range finding.OfSite() {
		have[code] = true // made where the climate is known
	}
	for _, c := range provoked {
		have[c.code] = true
		t.Run(string(c.code), func(t *testing.T) {
			p := lay(t, c.text)
			list := messages(p, c.code)
			require.NotEmpty(t, list, "codes: %s\nwidths: %s", codes(p), widths(p))
			assert.Contains(t, strings.Join(list, "\n"), c.says)
			level, _, _ := finding.ByCode(c.code)
			for _, f := range p.Findings {
				if f.Code == c.code {
					assert.Equal(t, level, f.Level)
					assert.NotEmpty(t, f.Place)
				}
			}
		})
	}
	for _, code := range finding.Codes() {
		assert.True(t, have[code], "no room provokes %s", code)
	}
}

// What makes so many sheets is said where they are short, and which walls miss each other where they do not close.
func TestCausesStandWithTheirEffects(t *testing.T) {
	p := lay(t, strings.Replace(flitchRoom("1-3"), `length = "10'"`, `length = "5'"`, 1))
	assert.Contains(t, messages(p, finding.FlitchShort)[0], "; wall Long takes more than one course, for a sheet is only 5'-0\" long")
	p = lay(t, strings.Replace(closedRoom(""), `length = "12'"`, `length = "11' 9"`, 1))
	assert.Contains(t, messages(p, finding.Misclosure)[0], "wall A is 3 in shorter than wall C")
}

// The traverse ABCDEA of five sides; its misclosure is 0.081 ft in 2466.00 ft.
// Source: C. D. Ghilani, P. R. Wolf, Elementary Surveying, chapter on traverse computations, the example of latitudes and
// departures (figures from memory; departures 517.451, 5.964, 192.889, -590.565, -125.715 and latitudes -388.815,
// -202.942, 694.045, 153.708, -255.919 ft, sums 0.024 and 0.077). Here at a tenth of its size.
// Azimuths to a second leave 0.0035 ft open on the longest side.
func TestMisclosureOfAPublishedTraverse(t *testing.T) {
	sides := []struct{ feet, azimuth string }{
		{"64.725", "126 55 17"}, {"20.303", "178 19 00"}, {"72.035", "15 31 54"}, {"61.024", "284 35 20"}, {"28.513", "206 09 41"}}
	text := head + "[room]\nclosed = true\n"
	turn := func(i int) float64 { // from side i to the next, to the left
		d := degrees(t, sides[i].azimuth) - degrees(t, sides[(i+1)%len(sides)].azimuth)
		for d <= -180 {
			d += 360
		}
		for d > 180 {
			d -= 360
		}
		return d
	}
	for i, s := range sides {
		kind, angle := "inside", turn(i)
		if angle < 0 {
			kind, angle = "outside", -angle
		}
		text += "[[wall]]\nlength = \"" + s.feet + " ft\"\nheight = \"8'\"\ncorner = \"" + kind + "\"\nangle = " + decimal(angle) + "\n"
	}
	p := lay(t, text)
	require.NotNil(t, p.Closing)
	assert.InDelta(t, 0.0081, float64(p.Closing.Gap)/float64(length.Foot), 0.0004)
	assert.InDelta(t, 246.600, float64(p.Closing.Girth)/float64(length.Foot), 1e-6)
	assert.InDelta(t, 0, p.Closing.AngleSum, 1e-6)
}

func degrees(t *testing.T, text string) float64 {
	t.Helper()
	var d, m, s float64
	_, err := fmt.Sscanf(text, "%f %f %f", &d, &m, &s)
	require.NoError(t, err)
	return d + m/60 + s/3600
}

func decimal(f float64) string { return strconv.FormatFloat(f, 'f', 12, 64) }

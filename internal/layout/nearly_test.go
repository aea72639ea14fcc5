package layout

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/finding"
	"flitchlay/internal/room"
)

// twoTall are walls of 4, 3 and 3 places: twice 23 in at the ends and 23 1/2 in for each sheet between. A and B are 9' 8
// 1/16 in high, which with trims of 2 in at top and foot is 120 1/16 in, 1/16 in more than a sheet is long: 7 places of two
// sheets and 3 of one, 17 sheets for 10 places.
const twoTall = head + `[[wall]]
name = "A"
length = "93"
height = "9' 8 1/16"
corner = "none"
[[wall]]
name = "B"
length = "69 1/2"
height = "9' 8 1/16"
corner = "none"
[[wall]]
name = "C"
length = "69 1/2"
height = "9'"
`

// TestStockShortOfFullTrims is the room of two tall walls, whose stock is 1/16 in short.
func TestStockShortOfFullTrims(t *testing.T) {
	p := lay(t, twoTall)
	require.Equal(t, 17, p.Totals.Sheets)
	assert.Equal(t, []string{"1/16 in less of top_trim (1 15/16 in) would hang walls A, B in one course: 10 sheets and not 17"}, messages(p, finding.Nearly))
	require.Len(t, p.Nearly, 1)
	assert.Equal(t, Saving{By: in / 16, Change: "less of top_trim (1 15/16 in)", Wall: 0, Courses: 2, Sheets: 7,
		Saves: "hang walls A, B in one course: 10 sheets and not 17"}, p.Nearly[0])
	then := lay(t, twoTall+"[rules]\ntop_trim = \"1 15/16\"\n")
	assert.Equal(t, 10, then.Totals.Sheets)
	assert.Empty(t, then.Nearly)
}

const (
	delivered  = "\n[[flitch]]\nnumber = \"F-1\"\nsheets = \"1-60\"\n"
	leastTrims = "\n[rules]\ntop_trim = \"1/2\"\nbottom_trim = \"1/2\"\nedge_trim = \"1/2\"\n"
)

// TestNearlyByHand works each kind of change through. With trims of 1/2 in, of which nothing is taken, an end sheet covers
// 24 1/2 less 1/2 less 1/2, 23 1/2 in.
func TestNearlyByHand(t *testing.T) {
	for _, c := range []struct {
		name, text string
		says       []string
	}{
		{"no more of the upper trim can go, so some of the lower: 116 1/2 and 2 1/2 in and 1/16 in over", wall("length = \"60\"\nheight = \"117 9/16\"") + "\n[rules]\ntop_trim = \"1/2\"\n",
			[]string{"1/16 in less of bottom_trim (1 15/16 in) would hang wall Long in one course: 3 sheets and not 6"}},
		{"neither trim can go: 119 1/4 and 1 in take 1/4 in more stock, too much for a tape to be wrong", wall("length = \"60\"\nheight = \"119 1/4\"") + leastTrims,
			[]string{"1/4 in more length of the sheets (10'-0 1/4\"; none is delivered yet) would hang wall Long in one course: 3 sheets and not 6"}},
		{"the same while sheets are there: nothing", wall("length = \"60\"\nheight = \"119 1/4\"") + leastTrims + delivered, nil},
		{"an eighth over: perhaps the tape", wall("length = \"60\"\nheight = \"119 1/8\"") + leastTrims + delivered,
			[]string{"1/8 in less height of wall Long (measure it again) would hang wall Long in one course: 3 sheets and not 6"}},
		{"1/2 in over, all that a trim may lose", wall("length = \"60\"\nheight = \"116 1/2\"") + delivered,
			[]string{"1/2 in less of top_trim (1 1/2 in) would hang wall Long in one course: 3 sheets and not 6"}},
		{"9/16 in over: nothing", wall("length = \"60\"\nheight = \"116 9/16\"") + delivered, nil},
		{"an inch over, in stock to be ordered", wall("length = \"60\"\nheight = \"117\""),
			[]string{"1 in more length of the sheets (10'-1\"; none is delivered yet) would hang wall Long in one course: 3 sheets and not 6"}},
		{"1 1/16 in over: nothing", wall("length = \"60\"\nheight = \"117 1/16\""), nil},
		{"two millimetres over 3000", "[project]\ntitle = \"T\"\nunits = \"mm\"\n[veneer]\ngross_width = 620\noverlap = 25\nlength = 3000\n[[wall]]\nname = \"Long\"\nlength = 1700\nheight = 2902\n" + delivered,
			[]string{"2 mm less of top_trim (48 mm) would hang wall Long in one course: 3 sheets and not 6"}},
		{"two courses in place of three: 2 x 120 is 2 trims of 2 in, 2 matches of 1 in and 234 in, and 1/4 in over", wall("length = \"60\"\nheight = \"234 1/4\"") + delivered,
			[]string{"1/4 in less of top_trim (1 3/4 in) would hang wall Long in two courses: 6 sheets and not 9"}},
		{"two end sheets cover 46 in, and 1/16 in more for each 1/16 in of its trim", wall("length = \"46 1/8\"\nheight = \"8'\""),
			[]string{"1/16 in less of edge_trim (15/16 in) would do with 2 sheets and not 3"}},
		{"and 47 in with the least trims, but a tape may be wrong by 1/16 in", wall("length = \"47 1/16\"\nheight = \"8'\"") + leastTrims,
			[]string{"1/16 in less length of wall Long (measure it again) would do with 2 sheets and not 3"}},
		{"not by 3/16 in: nothing", wall("length = \"47 3/16\"\nheight = \"8'\"") + leastTrims, nil},
		{"not where a door stands at the end that was measured: nothing", wall("length = \"47 1/16\"\nheight = \"8'\"\n[[wall.opening]]\nkind = \"door\"\nfrom_left = \"27 1/16\"\nwidth = \"20\"\nheight = \"7'\"") + leastTrims, nil},
		{"grain level: a band of 118 1/16 in and trims of 1 in is 1/16 in too long, 5 bands of two pieces", lyingWall("length = \"118 1/16\"\nheight = \"8'\"") + delivered,
			[]string{"1/16 in less of edge_trim (15/16 in) would hang wall Long in one piece a band: 5 sheets and not 10"}},
		{"the lower sheet of 117 1/2 in, 2 in of trim and 1 in at the match is 120 1/2 in, cut out of 120", wall("length = \"20\"\nheight = \"12'\"") + "\n[rules]\njoint_height = \"9' 9 1/2\"\n" + delivered,
			[]string{"1/2 in less of bottom_trim (1 1/2 in) would break no rule that must be met"}},
		{"a sheet saved ends a shortage", wall("length = \"46 1/8\"\nheight = \"8'\"") + "\n[[flitch]]\nnumber = \"F-1\"\nsheets = \"1, 2\"\n",
			[]string{"1/16 in less of edge_trim (15/16 in) would break no rule that must be met: 2 sheets and not 3"}},
		{"a seam in a face of 20 in has 10 in to both corners", face("10 1/4"),
			[]string{"1/4 in less of corner_return (10 in; for the architect to say) would break no rule that must be met"}},
		{"10 9/16 in are 9/16 too much: nothing", face("10 9/16"), nil},
		{"four sheets of 94 in meet at 23 1/2, 47 and 70 1/2 in, 2 3/4 in from a window", wall("length = \"94\"\nheight = \"8'\"\n[[wall.opening]]\nkind = \"window\"\nfrom_left = \"49 3/4\"\nwidth = \"10\"\nsill = \"30\"\nheight = \"40\"") + leastTrims,
			[]string{"1/4 in less of leg (2 3/4 in; for the architect to say) would do with 4 sheets and not 5"}},
		// Three sheets cover 70 1/2 in of 71. Four whole ones stand at p, p + 23 1/2 and p + 47, with 6 to 18 in left for p;
		// only 18 is not kept clear, and it leaves a leg of 2 3/4 in.
		{"whole sheets between narrow ends leave too thin a leg", main71 + leastTrims,
			[]string{"1/4 in less of leg (2 3/4 in; for the architect to say) would leave no narrow sheets on main walls, where there is one"}},
		{"sheets hang: nothing", wall("length = \"60\"\nheight = \"116 1/16\"") + hungAt("20"), nil},
		{"nothing is over: nothing", wall("length = \"60\"\nheight = \"116\""), nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := lay(t, c.text)
			assert.Equal(t, c.says, messages(p, finding.Nearly), "codes: %s\nwidths: %s", codes(p), widths(p))
		})
	}
}

// lyingWall is a wall with horizontal grain.
func lyingWall(keys string) string {
	return "[project]\ntitle = \"T\"\n[veneer]\ngross_width = \"24 1/2\"\noverlap = \"1\"\nlength = \"10'\"\ngrain = \"horizontal\"\n[[wall]]\nname = \"Long\"\n" + keys + "\n"
}

// face is a face of 20 in between two outside corners at which so much must wrap.
func face(wraps string) string {
	return head + "\n[rules]\ncorner_return = \"" + wraps + "\"\n" + `[[wall]]
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
}

const main71 = head + `[[wall]]
name = "Long"
length = "71"
height = "8'"
main = true
[[wall.keep_clear]]
from = "5"
to = "18"
[[wall.opening]]
kind = "window"
from_left = "20 3/4"
width = "30"
sill = "30"
height = "48"
`

func TestManyNamesAreCut(t *testing.T) {
	assert.Equal(t, "A, B, C, D, E, F", fewNames([]string{"A", "B", "C", "D", "E", "F"}))
	assert.Equal(t, "A, B, C, D, E and 2 more", fewNames([]string{"A", "B", "C", "D", "E", "F", "G"}))
}

// TestLayAimSaysNothingNearly holds that only a room's own layout is searched, and that the rest of what is said is the same.
func TestLayAimSaysNothingNearly(t *testing.T) {
	r, err := room.Decode("room.toml", []byte(twoTall))
	require.NoError(t, err)
	p, err := LayAim(r, aims[r.Rules.Aim])
	require.NoError(t, err)
	assert.Empty(t, p.Nearly)
	assert.Empty(t, messages(p, finding.Nearly))
	own, err := Lay(r)
	require.NoError(t, err)
	assert.Equal(t, p.Runs, own.Runs)
	assert.Equal(t, p.Totals, own.Totals)
}

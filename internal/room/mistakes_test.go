package room

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"flitchlay/internal/source"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The whole of what a person sees of a file with many mistakes. To write the golden anew, set GOLDEN=write.
func TestAllMistakesOfAFile(t *testing.T) {
	text, err := os.ReadFile("testdata/mistakes.toml")
	require.NoError(t, err)
	_, err = Decode("room.toml", text)
	require.Error(t, err)
	got := err.Error() + "\n"
	if os.Getenv("GOLDEN") == "write" {
		require.NoError(t, os.WriteFile("testdata/mistakes.txt", []byte(got), 0o644))
	}
	want, err := os.ReadFile("testdata/mistakes.txt")
	require.NoError(t, err)
	assert.Equal(t, string(want), got)
	for range 20 {
		_, err := Decode("room.toml", text)
		require.EqualError(t, err, strings.TrimSuffix(got, "\n"), "the same each time")
	}
}

// Each case is a file with one thing wrong, as an edit of the least room: text put in the place of other text, "+" for
// text at the end (in the second, last wall), and all mistakes that it must give: line, offending text, message.
func TestMistakes(t *testing.T) {
	opening := func(rest string) string { return "opening = [ { name = 'A', " + rest + " } ]\n" }
	box := func(rest string) string { return "box = [ { x = 60, z = 40, " + rest + " } ]\n" }
	flitch := func(rest string) string { return "[[flitch]]\nnumber = 'F'\n" + rest + "\n" }
	const closed = "[[wall]]\nlength = \"12 ft\""
	inRoom := func(rest string) string { return "[room]\n" + rest + "\n" + closed }
	for _, c := range []struct {
		name, old, text string
		want            []string
	}{
		{"required: title", `title = "t"`, "", []string{`1 project: the project has no title`}},
		{"required: the whole project", "[project]\ntitle = \"t\"\n", "", []string{`1 : the project has no title`}},
		{"required: sizes of the veneer", "gross_width = \"24 1/2 in\"\noverlap = \"1 in\"\nlength = \"10 ft\"\n", "", []string{
			`3 veneer: the veneer has no gross_width`, `3 veneer: the veneer has no overlap`, `3 veneer: the veneer has no length`}},
		{"required: a wall", least[strings.Index(least, "[[wall]]"):], "", []string{`1 : the room has no wall`}},
		{"required: length and height of a wall", "length = \"12 ft\"\nheight = \"8 ft\"\n", "name = 'N'\n", []string{`7 wall: wall "N" has no length`, `7 wall: wall "N" has no height`}},
		{"required: of an opening", "+", "[[wall.opening]]", []string{`13 opening: opening "D1" has no from_left`, `13 opening: opening "D1" has no width`, `13 opening: opening "D1" has no height`}},
		{"required: of a box", "+", "[[wall.box]]", []string{`13 box: box X1 has no x`, `13 box: box X1 has no z`}},
		{"required: of a pin", "+", "[[wall.pin]]", []string{`13 pin: a pin has no at`}},
		{"required: of a keep-clear", "+", "[[wall.keep_clear]]", []string{`13 keep_clear: the keep-clear stretch has no from`, `13 keep_clear: the keep-clear stretch has no to`}},
		{"required: of a bare strip", "+", "[[wall.bare]]", []string{`13 bare: the bare strip has no from`, `13 bare: the bare strip has no to`}},
		{"required: of a flitch", "+", "[[flitch]]", []string{`13 flitch: a flitch has no number`, `13 flitch: flitch "" has no sheets`}},
		{"required: of hung", "+", "[[hung]]", []string{`13 hung: a hung sheet has no wall`, `13 hung: a hung sheet has no sheet`, `13 hung: a hung sheet has no seam`}},
		{"required: coverage", "+", "[paste]\n[primer]", []string{`13 paste: the paste has no coverage`, `14 primer: the primer has no coverage`}},

		{"unknown key with the nearest", "height = \"8 ft\"\n[[wall]]", "height = \"8 ft\"\nwidht = 3\nhieght = 2\n[[wall]]", []string{`10 widht: unknown key widht in [[wall]]`, `11 hieght: unknown key hieght in [[wall]]`}},
		{"unknown key of another case, which the library would match", `title = "t"`, "title = 't'\nTitle = 'u'", []string{`3 Title: unknown key Title in [project]`}},
		{"unknown tables", "+", "[sight]\nhumidity = 3\n[[Wall]]\nlength = 3\n[[wall.openings]]\nwidth = 3", []string{
			`13 sight: unknown table sight in the top of the file`, `15 Wall: unknown table Wall in the top of the file`, `17 openings: unknown table openings in [[wall]]`}},
		{"unknown key of an inline table", "+", "[site]\ntemperature = 68\nhumidity = 40\nshop = { temperature = 68, humidty = 3, humidity = 4 }", []string{`16 humidty: unknown key humidty in [site.shop]`}},
		{"one table where a list is wanted", "+", "[flitch]\nnumber = 'F'", []string{`13 flitch: flitch is a list of tables, not a table`}},
		{"a list where one table is wanted", "[project]", "[[project]]", []string{`1 : the project has no title`, `1 project: project is one table, not a list`}},
		{"a value where a table is wanted", "[project]", "site = 3\n[project]", []string{`1 site: site is one table, not a whole number`}},

		{"words", "overlap =", "cut = 'rotary'\nmatch = 'end'\ngrain = 'up'\noverlap =", []string{`5 'rotary': cut "rotary" is not known`, `6 'end': match "end" is not known`, `7 'up': grain "up" is not known`}},
		{"word that is no text", "overlap =", "cut = 3\noverlap =", []string{`5 3: cut takes one of the words plain, quarter, rift, not a whole number`}},
		{"kind, put, corner, ends, behind", "+", "corner = 'inner'\nleft_end = 'wall'\nright_end = 'jamb'\nbehind = 'trim'\nbox = [{x=60,z=40,kind='socket'}]\nopening=[{from_left=3,width=9,height=9,kind='gate'}]\npin=[{at=4,put='edge'}]", []string{
			`13 'inner': corner "inner" is not known`, `14 'wall': left_end "wall" is not known`, `15 'jamb': right_end "jamb" is not known`, `16 'trim': behind "trim" is not known`,
			`17 'socket': kind "socket" is not known`, `18 'gate': kind "gate" is not known`, `19 'edge': put "edge" is not known`}},
		{"text where a number is wanted", "+", "angle = 'square'\nmain = 1\nlean = true\nref = 3\n", []string{`13 'square': angle takes a number, not a text`, `14 1: main takes true or false, not a whole number`, `15 true: lean takes a length, not true or false`, `16 3: ref takes a text, not a whole number`}},
		{"dates", `title = "t"`, "title = 't'\ndrawn = '2026-02-30'\nmeasured = 12\n", []string{`3 '2026-02-30': "2026-02-30" is no date`, `4 12: measured takes a date, not a whole number`}},
		{"photographs without numbers", "overlap =", "face = 'oak.jpg'\noverlap =", []string{`5 'oak.jpg': face "oak.jpg" has no place for the number of a sheet`}},
		{"revision marks", "[veneer]", "[[project.revision]]\nmark = 'B'\n[[project.revision]]\n[veneer]", []string{`5 revision: revision "B" stands twice`}},
		{"places of revisions", "[veneer]", "[[project.revision]]\nwall = 'Wall 1'\nat = '99 ft'\n[[project.revision]]\nat = 3\n[[project.revision]]\nwall = 'Wal 1'\n[veneer]", []string{
			`5 '99 ft': the change stands outside wall "Wall 1" (12'-0")`, `7 3: a change at a place needs its wall`, `9 'Wal 1': no wall is named "Wal 1"`}},

		{"no length", "\"8 ft\"\n[[wall]]", "\"8 fort\"\nfloor = ''\nradius = nan\nbase = inf\n[[wall]]", []string{
			`9 "8 fort": height "8 fort" is no length: "fort" is left over after the length`, `10 '': floor "" is no length: an empty text is no length`, `11 nan: radius nan is no length to build`, `12 inf: base inf is no length to build`}},
		{"zero and negative sizes", "\"12 ft\"", "0", []string{`8 0: wall "Wall 1" has a length of 0 in`}},
		{"negative trims and rules", "[veneer]", "[rules]\nleg = -1\nsnap = 0\n[room]\nbase = '-1'\n[veneer]", []string{`4 -1: leg is less than 0`, `5 0: snap is 0`, `7 '-1': base is less than 0`}},
		{"height over 30 m", "\"8 ft\"\n[[wall]]", "\"31 m\"\n[[wall]]", []string{`9 "31 m": height of 101'-8 1/2" is more than 30 m away from the room's level`}},
		{"a grid too fine for its walls", "\"12 ft\"", "\"25 m\"\nheight = \"8 ft\"\n[rules]\nsnap = \"0.1 mm\"\n[[wall]]\nlength = 99", []string{
			`11 "0.1 mm": snap = "0.1 mm" is too fine for covered walls, 100'-3 1/4" long in all: they would have over 250,000 places for seams`}},
		{"a grid just coarse enough for its walls", "\"12 ft\"", "\"18 m\"\nheight = \"8 ft\"\n[rules]\nsnap = \"0.1 mm\"\n[[wall]]\nlength = 99", nil},
		{"sheets too narrow for their walls", "overlap = \"1 in\"\nlength = \"10 ft\"\n[[wall]]\nlength = \"12 ft\"",
			"overlap = \"23 in\"\nlength = \"10 ft\"\n[rules]\nleast_width = 1\n[[wall]]\nlength = \"300 ft\"", []string{
				`4 "24 1/2 in": gross_width = "24 1/2 in" is too narrow for covered walls, 310'-0" long in all: they would take over 1,500 sheets`}},
		{"walls that close too long for the usual grid", "\"12 ft\"", "\"642 ft\"\nheight = \"8 ft\"\n[room]\nclosed = true\n[[wall]]\nlength = 9", []string{
			`1 : snap = 1/16 in is too fine for covered walls that close, 652'-9" long in all: they would have over 125,000 places for seams`}},
		{"sheets too narrow for walls that close", "overlap = \"1 in\"\nlength = \"10 ft\"\n[[wall]]\nlength = \"12 ft\"",
			"overlap = \"23 in\"\nlength = \"10 ft\"\n[rules]\nleast_width = 1\n[room]\nclosed = true\n[[wall]]\nlength = \"60 ft\"", []string{
				`4 "24 1/2 in": gross_width = "24 1/2 in" is too narrow for covered walls that close, 70'-0" long in all: they would take over 500 sheets`}},
		{"walls over 370 m", "\"12 ft\"", "\"369 m\"", []string{`11 "10 ft": with wall "Wall 2" the walls are over 370 m long`}},

		{"ceiling not above the floor", "\"8 ft\"\n[[wall]]", "[96, 40]\nfloor = [0, 40]\n[[wall]]", []string{`9 [96, 40]: the ceiling of wall "Wall 1" is not above its floor 12'-0" from its left end`}},
		{"ceiling under the floor at a step only", "\"8 ft\"\n[[wall]]", "[[0, 96], [60, 96], [60, 80], [144, 80]]\nfloor = [[0, 85], [60, 85], [60, 0], [144, 0]]\n[[wall]]", nil},
		{"ceiling under the floor on one side of a step", "\"8 ft\"\n[[wall]]", "[[0, 96], [60, 96], [60, 80], [144, 80]]\nfloor = [[0, 0], [59, 0], [59, 85], [144, 0]]\n[[wall]]", []string{`9 [[0, 96], [60, 96], [60, 80], [144, 80]]: the ceiling of wall "Wall 1" is not above its floor 5'-0" from its left end`}},
		{"trims leave nothing", "\"8 ft\"\n[[wall]]", "96\nbase = 50\ncrown = 46\n[[wall]]", []string{`9 96: base and crown leave nothing of wall "Wall 1" at its left end, where it is 8'-0" high`}},
		{"profile does not begin at the left end", "\"8 ft\"\n[[wall]]", "[[1, 96], [144, 96]]\n[[wall]]", []string{`9 1: the profile of height begins at 1 in, not at the wall's left end`}},
		{"profile does not reach the right end", "\"8 ft\"\n[[wall]]", "[[0, 96], ['11 ft 11 63/64', 96]]\n[[wall]]", []string{`9 '11 ft 11 63/64': the profile of height ends at 11'-11 63/64", not at the wall's right end (12'-0")`}},
		{"profile goes back", "\"8 ft\"\n[[wall]]", "[[0, 96], [50, 96], [40, 96], [144, 96]]\n[[wall]]", []string{`9 40: the profile of height goes back from 4'-2" to 3'-4"`}},
		{"profile with three points at one x", "\"8 ft\"\n[[wall]]", "[[0, 96], [50, 96], [50, 80], [50, 90], [144, 96]]\n[[wall]]", []string{`9 50: the profile of height has three points at one x`}},
		{"profile with a step at its end", "\"8 ft\"\n[[wall]]", "[[0, 90], [0, 96], [144, 96]]\n[[wall]]", []string{`9 [[0, 90], [0, 96], [144, 96]]: the profile of height has a step at the wall's end`}},
		{"profile of one point, of three figures, of odd points", "\"8 ft\"\n[[wall]]", "[[0, 90]]\nfloor = [0, 1, 2]\n[[wall]]\nlength = 3\nheight = [[0, 3], 4, [3]]\n[[wall]]", []string{
			`9 [[0, 90]]: the profile of height has one point`, `10 [0, 1, 2]: floor has 3 figures`, `13 4: a point of height has not two figures`, `13 [3]: a point of height has not two figures`}},

		{"angles", "\"8 ft\"\n[[wall]]", "96\nangle = 180\n[[wall]]", []string{`10 180: an angle of 180 is not between 0 and 180 degrees`}},
		{"angle and radius of no bend", "\"8 ft\"\n[[wall]]", "96\ncorner = 'straight'\nangle = 90\nradius = 1\nwrap = false\n[[wall]]", []string{
			`11 90: corner "straight" of wall "Wall 1" has no angle`, `12 1: corner "straight" of wall "Wall 1" has no radius`, `13 false: a straight corner of wall "Wall 1" has no bend to cut`}},
		// 60 in x tan(90 / 2) is 60 in on each wall; on a wall 120 in long two of them just fit, and 60 1/64 does not
		{"radius that just fits", closed + "\nheight = \"8 ft\"", closed + "\nheight = 96\nradius = 120", nil},
		{"radius too large", closed + "\nheight = \"8 ft\"", closed + "\nheight = 96\nradius = '120 1/64'", []string{`10 '120 1/64': eased corners take 10'-0 1/64" of wall "Wall 2", which is 10'-0" long`}},
		{"a corner behind the last wall", "+", "corner = 'outside'", []string{`13 'outside': no wall follows wall "Wall 2", the last of an open room`}},
		{"lean of three figures", "+", "lean = [1, 2, 3]", []string{`13 [1, 2, 3]: lean has 3 figures`}},
		{"walls that lean shut", "+", "lean = ['5 ft', '-5 ft']", []string{`13 ['5 ft', '-5 ft']: the ends of wall "Wall 2" lean so far that nothing is left of it at the ceiling`}},
		{"a lean of more than the height", "+", "lean = ['0', '8 ft 1']", []string{`13 ['0', '8 ft 1']: a lean of 8'-1" is more than wall "Wall 2" is high`}},
		{"a leaf wider than a sheet", "overlap =", "leaf_width = 25\noverlap =", []string{`5 25: a leaf of 25 in is wider than a sheet of 24 1/2 in`}},
		{"two walls of one name", "+", "name = 'N'\n[[wall]]\nname = 'N'\nlength = 9\nheight = 9", []string{`15 'N': a second wall is named "N"`}},
		{"empty names", "+", "name = ''\nopening = [{name='',from_left=0,width=2,height=2}]", []string{`13 '': the wall's name is empty`, `14 '': the opening's name is empty`}},
		{"all walls bare", "\"8 ft\"\n[[wall]]", "96\ncover = false\n[[wall]]\ncover=false", []string{`10 false: all walls are bare`}},
		{"level line over a wall", closed, inRoom("level_line = '8 ft'"), []string{`8 '8 ft': a level line at 8'-0" does not cross wall "Wall 1", which reaches from 0 in to 8'-0"`}},

		{"opening past the wall", "+", opening("from_left = 90, width = 31.5, height = 80"), []string{`13 31.5: opening "A" ends 1 1/2 in past wall "Wall 2" (10'-0")`}},
		{"opening past the wall by less than is printed", "+", opening("from_left = 90, width = '30.001', height = 80"), []string{`13 '30.001': opening "A" ends just over 0 in past wall "Wall 2" (10'-0")`}},
		{"opening up to the wall's end", "+", opening("from_left = 90, width = 30, height = 80"), nil},
		{"opening left of the wall, and without a width", "+", opening("from_left = -2, width = 0, height = -1"), []string{
			`13 -2: opening "A" begins 2 in left of wall "Wall 2"`, `13 0: opening "A" has a width of 0 in`, `13 -1: opening "A" has a height of -1 in`}},
		{"opening right of the wall", "+", opening("from_left = 120, width = 1, height = 1"), []string{`13 120: opening "A" begins at the end of wall "Wall 2" (10'-0") or past it`}},
		{"head over the ceiling", "+", opening("from_left = 9, width = 9, height = '96 1/16'"), []string{`13 '96 1/16': the head of opening "A" is at 8'-0 1/16", 1/16 in over the ceiling of wall "Wall 2" there`}},
		{"head of a window over a sloping ceiling", "height = \"8 ft\"\n[[wall]]", "height = [96, 48]\nopening = [{from_left=72,width=36,sill=30,height=50}]\n[[wall]]", []string{`10 50: the head of opening "W1" is at 6'-8", 8 in over the ceiling of wall "Wall 1" there`}},
		{"sill under the floor", "+", opening("from_left = 9, width = 9, sill = -1, height = 40"), []string{`13 -1: the sill of opening "A" lies 1 in under the floor`}},
		{"openings overlap", "+", "opening = [{from_left=10,width=10,height=80},{from_left=0,width=11,height=80}]", []string{`13 10: opening "D1" overlaps opening "D2" by 1 in`}},
		{"openings touch", "+", "opening = [{from_left=10,width=10,height=80},{from_left=0,width=10,height=80}]", nil},
		{"a window over a door", "+", "opening = [{from_left=10,width=10,height=70},{from_left=10,width=10,sill=70,height=20}]", nil},
		{"two openings of one name", "+", "opening = [{name='A',from_left=10,width=10,height=80},{name='A',from_left=0,width=10,height=80}]", []string{`13 'A': a second opening is named "A"`}},
		{"grain where covering is left over the opening", "+", opening("from_left=10,width=10,height=80,grain='skip'"), []string{`13 'skip': grain is for full-height gaps; opening "A" leaves covering above or below it`}},
		{"grain of a gap under a crown", "+", "crown = 4\n" + opening("from_left=10,width=10,height=92,grain='through'"), nil},
		{"grain where the covering runs behind the crown", "+", "crown = 4\nbehind = 'crown'\n" + opening("from_left=10,width=10,height=92,grain='through'"), []string{`15 'through': grain is for full-height gaps; opening "A" leaves covering above or below it`}},
		{"grain of a gap that stands on the base", "+", "base = 4\n" + opening("from_left=10,width=10,sill=4,height=92,grain='skip'"), nil},
		{"grain over a sill that leaves covering below", "+", "base = 4\n" + opening("from_left=10,width=10,sill=5,height=91,grain='skip'"), []string{`14 'skip': grain is for full-height gaps; opening "A" leaves covering above or below it`}},
		{"wrapped reveal without a reveal", "+", opening("from_left=10,width=10,height=80,wrap_reveal=true"), []string{`13 true: opening "A" has no reveal to wrap`}},
		{"a clearance to what burns of a window", "+", opening("from_left=10,width=10,height=80,clearance=6"), []string{`13 6: opening "A" asks for no clearance to what burns`}},
		{"wrapped reveal with horizontal grain", "[[wall]]\nlength = \"12 ft\"", "grain='horizontal'\n[[wall]]\nopening=[{from_left=10,width=10,height=80,reveal=4,wrap_reveal=true}]\nlength = \"12 ft\"", []string{`9 true: only long grain wraps: opening "D1" cannot be wrapped with horizontal grain`}},

		{"box past the wall", "+", "box = [{x=119,z=40},{x=1,z=40}]", []string{`13 119: the plate of box X1 reaches 3/8 in past wall "Wall 2" (10'-0")`, `13 1: the plate of box X2 reaches 3/8 in left of wall "Wall 2"`}},
		{"box under the floor and over the ceiling", "+", "box = [{x=60,z=2},{x=60,z=95}]", []string{`13 2: the plate of box X1 reaches 1/4 in under the floor`, `13 95: the plate of box X2 reaches 1 1/4 in over the ceiling`}},
		{"bracket and panel must say their plate", "+", box("kind = 'bracket'"), []string{`13 { x = 60, z = 40, kind = 'bracket' }: bracket BR1 has no plate: a bracket has no usual size`}},
		{"plate of too many gang", "+", box("gang = 5") + "[[wall]]\nlength=50\nheight=50\nbox=[{x=20,z=20,gang=5,plate=[10,5]},{x=20,z=20,gang=0}]", []string{`13 5: a plate of 5 gang is not known`, `17 0: a plate of 0 gang is not known`}},
		{"hole larger than its plate", "+", box("hole = ['2', '4 5/8']"), []string{`13 ['2', '4 5/8']: the hole of box X1 is larger than its plate (2 3/4 in x 4 1/2 in)`}},
		{"plate of one figure, of no size", "+", box("plate = 3, hole = [0, 3]") + "[[wall]]\nlength=50\nheight=50\nbox=[{x=20,z=20,plate=[-1,0]}]", []string{`13 3: plate has not two figures`, `17 -1: an item of plate is less than 0`, `17 0: an item of plate is 0`}},
		{"pins outside", "+", "pin = [{at='-1/64'},{at=120},{at='120 1/64'}]", []string{`13 '-1/64': the pin stands outside wall "Wall 2" (10'-0")`, `13 '120 1/64': the pin stands outside wall "Wall 2" (10'-0")`}},
		{"stretches outside and turned round", "+", "keep_clear = [{from=-1,to=5},{from=9,to=9}]\nbare=[{from=110,to=121}]", []string{
			`13 -1: the keep-clear stretch begins outside wall "Wall 2" (10'-0")`, `13 9: the keep-clear stretch ends at 9 in, not right of 9 in where it begins`, `14 121: the bare strip ends at 10'-1", outside wall "Wall 2" (10'-0")`}},

		{"overlap as wide as the sheet", `overlap = "1 in"`, `overlap = "24 1/2"`, []string{`5 "24 1/2": an overlap of 24 1/2 in leaves nothing of a sheet of 24 1/2 in`}},
		{"overlap under least_overlap", `overlap = "1 in"`, `overlap = "31/64"`, []string{`5 "31/64": an overlap of 31/64 in is under least_overlap (1/2 in)`}},
		{"overlap of least_overlap", `overlap = "1 in"`, `overlap = "1/2"`, nil},
		{"snap over least_width", "[veneer]", "[rules]\nsnap = '6 1/64'\n[veneer]", []string{`4 '6 1/64': snap (6 1/64 in) is over least_width (6 in)`}},
		{"snap of least_width", "[veneer]", "[rules]\nsnap = 6\n[veneer]", nil},
		{"snap finer than a cut", "[veneer]", "[rules]\nsnap = '0.09 mm'\n[veneer]", []string{`4 '0.09 mm': a snap of less than 0.1 mm is finer than a seam can be cut`}},
		// W = 23 1/2 in, rounded down to a multiple of 5 in: 20 in
		{"net width under least_width, by the grid", "[veneer]", "[rules]\nsnap = 5\nleast_width = 21\n[veneer]", []string{`5 21: a sheet covers at most 20 in, less than least_width (21 in)`}},
		{"trims as long as the sheet", `length = "10 ft"`, `length = 4`, []string{`6 4: top_trim and bottom_trim leave nothing of a sheet 4 in long`}},
		{"share of spares", "[veneer]", "[rules]\nspare_share = -0.1\njoint_height = 'high'\n[veneer]", []string{`4 -0.1: spare_share -0.1 is no share between 0 and 1`, `5 'high': joint_height "high" is no length: no figure at "high"`}},

		{"sheets that cannot be read", "+", flitch("sheets = '1-'") + flitch("sheets = 'a'") + flitch("sheets = '5-2'") + flitch("sheets = '1-99999'") + flitch("sheets = [0, 2, 2]"), []string{
			`15 '1-': sheets "1-": a sheet number is missing`, `17 'F': a second flitch has the number "F"`, `18 'a': sheets "a": "a" is no sheet number`, `20 'F': a second flitch has the number "F"`,
			`21 '5-2': sheets "5-2": 5-2 runs backwards`, `23 'F': a second flitch has the number "F"`, `24 '1-99999': sheets "1-99999": more than 10000 sheets`,
			`26 'F': a second flitch has the number "F"`, `27 0: 0 is no sheet number`, `27 2: sheet 2 stands twice`}},
		{"widths: no list, no pair, no length", "+", flitch("sheets = '1-6'\nwidths = '24'"), []string{`16 '24': widths takes a list, not a text`}},
		{"widths: not pairs", "+", flitch("sheets = '1-6'\nwidths = [3, [4], ['5', 24]]"), []string{`16 3: 3 is no sheet number with a width`,
			`16 [4]: [4] is no sheet number with a width`, `16 ['5', 24]: ['5', 24] is no sheet number with a width`}},
		{"widths: not delivered, twice, too wide", "+", flitch("sheets = '1-6'\nwidths = [[7, 24], [2, '24 1/4'], [2, 24], [3, 26]]"), []string{
			`16 7: widths sheet 7 is not one of the sheets of flitch "F"`, `16 2: widths has sheet 2 twice`,
			`16 26: sheet 3 cannot be 26 in wide: gross_width is 24 1/2 in`}},
		{"widths: none is left", "+", flitch("sheets = '1-2'\nwidths = [[1, 23], [2, 23]]"), []string{`15 '1-2': no sheet of flitch "F" is left to hang`}},
		{"damaged and spare not delivered", "+", flitch("sheets = '1-6, 8-9'\ndamaged = [3, 7]\nspare = '10'"), []string{`16 7: damaged sheet 7 is not one of the sheets of flitch "F"`, `17 '10': spare sheet 10 is not one of the sheets of flitch "F"`}},
		{"more spares than sheets", "+", flitch("sheets = '1-6'\nspare = 7"), []string{`16 7: flitch "F" has no 7 sheets to spare`}},
		{"nothing left to hang", "+", flitch("sheets = '1-6'\nspare = 6"), []string{`15 '1-6': no sheet of flitch "F" is left to hang`}},

		{"close_at in an open room", closed, inRoom("close_at = {wall='Wall 1',at=3}"), []string{`8 {wall='Wall 1',at=3}: close_at names a place in an open room, which does not close`}},
		{"close_at auto in an open room", closed, inRoom("close_at = 'auto'"), nil},
		{"close_at of an unknown wall", closed, inRoom("closed = true\nclose_at = {wall='Wall 3',at=3}"), []string{`9 'Wall 3': no wall is named "Wall 3"`}},
		{"close_at outside its wall", closed, inRoom("closed = true\nclose_at = {wall='Wall 2',at='11 ft'}"), []string{`9 '11 ft': the closing place stands outside wall "Wall 2" (10'-0")`}},
		{"close_at without at, with both, of another word", closed, inRoom("closed = true\nclose_at = {wall='Wall 2'}"), []string{`9 close_at: close_at has no at`}},
		{"close_at with a corner and a place", closed, inRoom("closed = true\nclose_at = {wall='Wall 2', corner='Wall 1'}"), []string{`9 'Wall 1': close_at names a corner and a place`}},
		{"close_at of another word", closed, inRoom("closed = true\nclose_at = 'door'"), []string{`9 'door': close_at = 'door' does not say where on a wall`}},
		{"close_at at a corner that is none", closed, inRoom("closed = true\nclose_at = {corner='Wall 1'}") + "\ncorner='none'", []string{`9 'Wall 1': the corner of wall "Wall 1" is "none": it cannot be cut`}},
		{"close_at on a bare wall", closed, inRoom("closed = true\nclose_at = {wall='Wall 1',at=0}") + "\ncover=false", []string{`9 'Wall 1': wall "Wall 1" is bare: nothing closes on it`}},

		{"across in a room that closes", closed, inRoom("closed = true\nacross = 72") + "\ncorner='none'", []string{`9 72: across is asked of a room that closes`}},
		{"across without an open end", closed, inRoom("across = 72"), []string{`8 72: across is asked of a room without an open end between two walls`}},
		{"across for more open ends than there are", closed, inRoom("across = [72, 72]") + "\ncorner='none'", []string{`8 [72, 72]: across has 2 lengths for 1 open ends`}},
		{"across of nothing", closed, inRoom("across = 0") + "\ncorner='none'", []string{`8 0: across is 0`}},
		{"north is a direction", closed, inRoom("north = 360"), []string{`8 360: north = 360 is no direction in degrees`}},
		{"north is a number", closed, inRoom("north = 'up'"), []string{`8 'up': north takes a number, not a text`}},

		{"hung sheet in no flitch", "+", flitch("sheets = '1-6'") + "[[hung]]\nwall='Wall 1'\nsheet=1\nseam=20\n[[hung]]\nwall='Wall 1'\nsheet=7\nseam=40", []string{`22 7: hung sheet 7 is in no flitch`}},
		{"hung sheets not increasing", "+", flitch("sheets = '1-6'") + "[[hung]]\nwall='Wall 1'\nsheet=1\nseam=20\n[[hung]]\nwall='Wall 1'\nsheet=1\nseam=15", []string{`22 1: hung sheet 1 follows sheet 1`, `23 15: the seam at 15 in is not right of the one before it at 20 in`}},
		{"hung sheets not from the first", "+", flitch("sheets = '1-6'") + "[[hung]]\nwall='Wall 1'\nsheet=2\nseam=20", []string{`18 2: the first hung sheet is 2, not the first of flitch "F"`}},
		{"the first sheet was damaged", "+", flitch("sheets = '1-6'\ndamaged=[1]") + "[[hung]]\nwall='Wall 1'\nsheet=2\nseam=20", nil},
		{"hung without a flitch", "+", "[[hung]]\nwall='Wall 1'\nsheet=2\nseam=20\n[[hung]]\nwall='Wall 1'\nsheet=2\nseam=40", []string{`15 2: the first hung sheet is 2, not 1`, `19 2: hung sheet 2 follows sheet 2`}},
		{"hung on into the next flitch", "+", flitch("sheets = '1-2'") + "[[flitch]]\nnumber='G'\nsheets='1-9'\n[[hung]]\nwall='Wall 1'\nsheet=1\nseam=20\n[[hung]]\nwall='Wall 1'\nsheet=2\nseam=[40,'40 1/8']\n[[hung]]\nwall='Wall 1'\nsheet=1\nseam=60", nil},
		{"hung not from the left end of its run", "+", "[[hung]]\nwall='Wall 1'\nsheet=1\nseam=40", []string{`16 40: the first hung seam is 3'-4" from the left end of its run, and a sheet is 24 1/2 in wide`}},
		{"hung on the next wall, not from the left end of the run", "+", "[[hung]]\nwall='Wall 2'\nsheet=1\nseam=20", []string{`16 20: the first hung seam is 13'-8" from the left end of its run, and a sheet is 24 1/2 in wide`}},
		{"hung round a corner", "+", "[[wall]]\nlength=100\nheight=90\ncorner='none'\n[[hung]]\nwall='Wall 1'\nsheet=1\nseam=24\n[[hung]]\nwall='Wall 1'\nsheet=2\nseam=48\n[[hung]]\nwall='Wall 1'\nsheet=3\nseam=72\n[[hung]]\nwall='Wall 1'\nsheet=4\nseam=96\n[[hung]]\nwall='Wall 1'\nsheet=5\nseam=120\n[[hung]]\nwall='Wall 1'\nsheet=6\nseam=141\n[[hung]]\nwall='Wall 2'\nsheet=7\nseam=21\n", nil},
		{"a hung sheet left out", "+", "[[hung]]\nwall='Wall 1'\nsheet=1\nseam=24\n[[hung]]\nwall='Wall 1'\nsheet=3\nseam=72", []string{`20 72: the seam is 4'-0" from the one before it, and a sheet is 24 1/2 in wide: it is expected at 3'-11 1/2"`}},
		{"hung back on an earlier wall", "+", "[[hung]]\nwall='Wall 2'\nleft_edge=0\nsheet=1\nseam=24\n[[hung]]\nwall='Wall 1'\nsheet=2\nseam=72", []string{`21 72: the seam at 6'-0" is not right of the one before it at 24 in`}},
		{"hung from a bare strip on", "+", "bare = [{from=0,to=60}]\n[[hung]]\nwall='Wall 2'\nsheet=1\nseam=80", nil},
		{"hung in a closed run without its left edge", closed, inRoom("closed = true\n[[hung]]\nwall='Wall 1'\nsheet=1\nseam=20"), []string{`9 hung: in a closed run the first hung sheet needs its left edge`}},
		{"hung outside its wall, on no wall", "+", "[[hung]]\nwall='Wall 9'\nsheet=1\nseam=500\n[[hung]]\nwall='Wall 2'\nsheet=2\nseam=121\n[[hung]]\nwall='Wall 2'\nsheet=3\nseam=30\n[[hung]]\nwall='Wall 2'\nsheet=4\nseam=[50]", []string{
			`14 'Wall 9': no wall is named "Wall 9"`, `20 121: the hung seam stands outside wall "Wall 2" (10'-0")`, `24 30: the seam at 30 in is not right of the one before it at 10'-1"`, `28 [50]: seam has 1 figures`}},
		{"the hung sheet wider than a sheet, from edge to seam", "+", "[[hung]]\nwall='Wall 2'\nsheet=1\nleft_edge=0\nseam=30", []string{
			`17 30: from left_edge 0 in to seam 30 in the sheet is 30 1/2 in wide between its raw edges, and no sheet is wider than 24 1/2 in: the seam is expected at 24 in, or left of it`}},
		{"the hung sheet wider than a sheet, from edge to edge", "+", "[[hung]]\nwall='Wall 2'\nsheet=1\nleft_edge=4\nedge='28 3/4'", []string{
			`17 '28 3/4': from left_edge 4 in to edge 28 3/4 in the sheet is 24 3/4 in wide between its raw edges, and no sheet is wider than 24 1/2 in: the edge is expected at 28 1/2 in, or left of it`}},
		{"wet paste lets a sheet grow by 1/8 in", "+", "[[hung]]\nwall='Wall 2'\nsheet=1\nleft_edge=0\nedge='24 5/8'", nil},
		{"hung from a raw edge typed as a seam", closed, inRoom("closed = true\n[[hung]]\nwall='Wall 1'\nsheet=1\nleft_seam='19 1/2'\nseam='43 1/2'"), []string{
			`13 '43 1/2': from left_seam 19 1/2 in to seam 3'-7 1/2" the sheet is 25 in wide between its raw edges, and no sheet is wider than 24 1/2 in: the seam is expected at 3'-7", or left of it`}},
		{"a hung sheet that ends before it begins", "+", "[[hung]]\nwall='Wall 2'\nsheet=1\nleft_edge=60\nedge=20", []string{`16 60: the hung sheet begins at 5'-0", not left of its edge at 20 in`}},
		{"a seam outside the overlap of its edge", "+", "[[hung]]\nwall='Wall 1'\nsheet=1\nedge=20\nseam='20 1/16'", []string{
			`17 '20 1/16': the sheet's right edge hangs at 20 in, and its seam is cut in the overlap of 1 in left of that: it is expected at 19 1/2 in`}},
		{"a seam inside it", "+", "[[hung]]\nwall='Wall 1'\nsheet=1\nedge=20\nseam='19 5/8'", nil},
		{"a left seam outside the overlap of its edge", closed, inRoom("closed = true\n[[hung]]\nwall='Wall 1'\nsheet=1\nleft_edge=20\nleft_seam='19 1/2'\nedge=44"), []string{
			`13 '19 1/2': the sheet's left edge hangs at 20 in, and the seam there is cut in the overlap of 1 in right of that: it is expected at 20 1/2 in`}},
		{"a left seam in an open run", "+", "[[hung]]\nwall='Wall 1'\nsheet=1\nleft_seam=0\nedge=20", []string{`16 0: the first sheet of a run that does not go round has no seam at its left`}},
		{"a left side of another than the first", "+", "[[hung]]\nwall='Wall 1'\nsheet=1\nedge=20\n[[hung]]\nwall='Wall 1'\nsheet=2\nleft_edge=19\nedge=43", []string{`20 19: only the first hung sheet has left_edge`}},
		{"the key that said neither edge nor seam", "+", "[[hung]]\nwall='Wall 1'\nsheet=1\nfrom=0\nseam=20", []string{`16 from: unknown key from in [[hung]]`}},
		{"hung as a list", "+", "[[hung]]\nwall='Wall 1'\nsheets='1-3'\nedges=[20, '43 1/2', [67, '67 1/8']]", nil},
		{"hung as a list, one too far", "+", "[[hung]]\nwall='Wall 1'\nsheets='1-3'\nedges=[20, 43, 70]", []string{
			`16 70: the edge is 27 in from the one before it, and a sheet is 24 1/2 in wide: it is expected at 5'-6 1/2"`}},
		{"a list of another length", "+", "[[hung]]\nwall='Wall 1'\nsheets='1-3'\nseams=[20, 43]", []string{`16 [20, 43]: of 3 sheets seams holds 2`}},
		{"a list with one sheet, sheets with one reading", "+", "[[hung]]\nwall='Wall 1'\nsheet=1\nseams=[20]\n[[hung]]\nwall='Wall 1'\nsheets='2-3'\nseam=43", []string{
			`15 1: seams are readings of several sheets`, `19 '2-3': sheets goes with a list of readings, not with seam`}},
		{"sheets named twice, read twice", "+", "[[hung]]\nwall='Wall 1'\nsheet=1\nsheets='1'\nseam=20\nedges=[20]", []string{
			`15 1: sheet and sheets name the same sheets twice`, `18 [20]: seam and edges are readings of the same sheets`}},
		{"a list that is none", "+", "[[hung]]\nwall='Wall 1'\nsheets='1'\nedges=20", []string{`16 20: edges takes a list with a reading of each sheet`}},
		{"required: of a reading", "+", "[[reading]]", []string{`13 reading: a reading has no wall`}},
		{"a reading that says nothing", "+", "[[reading]]\nwall='Wall 1'", []string{`13 reading: the reading of wall "Wall 1" says nothing`}},
		{"a wall read twice", "+", "[[reading]]\nwall='Wall 1'\nlength=144\n[[reading]]\nwall='Wall 1'\nlength=145", []string{`17 'Wall 1': wall "Wall 1" is read twice`}},
		{"a reading of a bare wall", "+", "[[wall]]\nname='B'\nlength=90\nheight=96\ncover=false\n[[reading]]\nwall='B'\nlength=90", []string{`19 'B': wall "B" is bare: nothing is hung on it`}},
		{"readings that are none", "+", "[[reading]]\nwall='Wall 1'\nlength=0\nlean=[1]\nfloor_down=[[1]]\nceiling_up=[]", []string{
			`15 0: length is 0`, `16 [1]: lean has 1 figures`, `17 [1]: a height of floor_down has not two figures`, `18 []: ceiling_up holds no figure`}},
		{"places of readings", "+", "[[reading]]\nwall='Wall 1'\nfloor_down=[[4,48],[4,48]]\nceiling_up=[[145,48]]", []string{
			`15 4: floor_down is read at 4 in after 4 in`, `16 145: ceiling_up is read at 12'-1", outside the wall (12'-0")`}},
		{"a wall read shorter than what stands on it", "+", box("kind='outlet'") + "[[reading]]\nwall='Wall 2'\nlength=50", []string{
			`16 50: as read wall "Wall 2" is 4'-2" long, and outlet E1 stands at 5'-0"`}},
		{"a lean that cannot be", "+", "[[reading]]\nwall='Wall 1'\nlean=100", []string{`15 100: as read the ends of wall "Wall 1" lean by more than can be`}},
		{"a ceiling under the floor", "+", "[[reading]]\nwall='Wall 1'\nceiling_up=-50", []string{`15 -50: as read base and crown leave nothing of wall "Wall 1", where it is -2 in high`}},
		{"a level line that is under the floor", "+", "[[reading]]\nwall='Wall 1'\nfloor_down=-2", []string{`15 -2: as read the level line does not cross wall "Wall 1"`}},

		{"sheets in an order that is not rising", "+", flitch("sheets = '1-10, 30-52, 11-29'") + "[[flitch]]\nnumber = 'G'\nsheets = [3, 1]\n", []string{
			`15 '1-10, 30-52, 11-29': the numbers of sheets go down in '1-10, 30-52, 11-29'`, `18 [3, 1]: the numbers of sheets go down in [3, 1]`}},
		{"how many sheets, or which one", "+", flitch("sheets = 52"), []string{`15 52: sheets = 52 names one sheet, or says how many there are`}},
		{"damaged sheets in any order", "+", flitch("sheets = '1-9'\ndamaged = [7, 2]"), nil},
		{"temperatures", "+", "[site]\ntemperature = '20 K'\nhumidity = 101\nshop = { temperature = 300, humidity = '40' }", []string{
			`14 '20 K': "20 K" is no temperature`, `15 101: a relative humidity of 101 is not between 0 and 100 per cent`, `16 300: 300 is no temperature of a room`, `16 '40': humidity takes a number, not a text`}},
		{"half a climate", "+", "[site]\ntemperature = 70\nshop = { humidity = 40 }", []string{`13 site: the site has no humidity`, `15 shop: the shop has no temperature`}},
		{"coverage", "+", "[paste]\ncoverage = '150'\n[primer]\ncoverage = '0 sq ft/gal'", []string{`14 '150': coverage "150" does not say how much a pail covers`, `16 '0 sq ft/gal': coverage "0 sq ft/gal" does not say how much a pail covers`}},
	} {
		t.Run(c.name, func(t *testing.T) {
			text := least + c.text
			if c.old != "+" {
				require.Contains(t, least, c.old)
				text = strings.Replace(least, c.old, c.text, 1)
			}
			_, err := Decode("r", []byte(text))
			var got []string
			if err != nil {
				var all *source.Mistakes
				require.ErrorAs(t, err, &all)
				for _, m := range all.List() {
					line, _ := all.Text.Place(m.Span.Start)
					got = append(got, fmt.Sprintf("%d %s: %s", line, all.Text.Slice(m.Span), m.Message))
					assert.NotEmpty(t, m.Mend, m.Message)
				}
			}
			assert.Equal(t, c.want, got)
		})
	}
}

// The ends of lines and a byte order mark change neither the room nor where its mistakes are.
func TestEndsOfLines(t *testing.T) {
	text := everyKey(t)
	want, err := Decode("r", text)
	require.NoError(t, err)
	other := []byte("\ufeff" + strings.ReplaceAll(string(text), "\n", "\r\n"))
	got, err := Decode("r", other)
	require.NoError(t, err)
	want.src, got.src = source.Value{}, source.Value{}
	assert.Equal(t, want, got)

	bad, err := os.ReadFile("testdata/mistakes.toml")
	require.NoError(t, err)
	_, want1 := Decode("r", bad)
	_, got1 := Decode("r", []byte("\ufeff"+strings.ReplaceAll(string(bad), "\n", "\r\n")))
	assert.EqualError(t, got1, want1.Error())
}

func BenchmarkDecode(b *testing.B) {
	text, err := os.ReadFile("../../samples/reading-room.toml")
	require.NoError(b, err)
	b.SetBytes(int64(len(text)))
	for b.Loop() {
		if _, err := Decode("r", text); err != nil {
			b.Fatal(err)
		}
	}
}

func TestForms(t *testing.T) {
	for text, want := range map[string]Coverage{
		"150 sq ft/gal": {true, 150, "sq ft", "gal"}, "3.7 m2/L": {true, 3.7, "m2", "L"}, "7,5 m²/l": {true, 7.5, "m2", "L"},
		"300 ft2 per gallon": {true, 300, "sq ft", "gal"}, "6 sq m/litre": {true, 6, "m2", "L"}, "150SF/GAL": {true, 150, "sq ft", "gal"},
	} {
		r, err := Decode("r", file("[paste]\ncoverage = '"+text+"'"))
		if assert.NoError(t, err, text) {
			assert.Equal(t, want, r.Paste, text)
		}
	}
	for text, want := range map[string]float64{"68": 68, "68.5": 68.5, "'20 C'": 68, "'68 F'": 68, "'-10 °C'": 14, "'21,5 c'": 70.7, "'70 deg F'": 70} {
		r, err := Decode("r", file("[site]\nhumidity = 40\ntemperature = "+text))
		if assert.NoError(t, err, text) {
			assert.InDelta(t, want, r.Site.Temperature, 1e-9, text)
		}
	}
	for text, want := range map[string][]int{"'1-4'": {1, 2, 3, 4}, "'1-2, 4'": {1, 2, 4}, "'7 - 8,9'": {7, 8, 9}, "[1, 3]": {1, 3}, "[5]": {5}, "'1–3'": {1, 2, 3}} {
		r, err := Decode("r", file("[[flitch]]\nnumber = 'F'\nsheets = "+text))
		if assert.NoError(t, err, text) {
			assert.Equal(t, want, r.Flitches[0].Sheets, text)
		}
	}
}

package pages

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"flitchlay/internal/layout"
	"flitchlay/internal/room"
)

// oddRooms are rooms that try what a page can bear. Each is a room file, with the reason as its name.
var oddRooms = map[string]string{
	"narrow piers between three windows": head("in") + wall("Bay", `9'`, `9'`, window(`4`, `2' 3`), window(`3'`, `2' 3`), window(`5' 10`, `2' 6`)) + wall("Return", `3' 6`, `9'`),
	"many boxes in one corner": head("in") + wall("Plant", `14'`, `9'`, box("outlet", "10", "1' 6"), box("outlet", "13", "1' 6"), box("switch", "10", "4'"),
		box("thermostat", "13", "5'"), box("light", "11 1/2", "7'"), box("alarm", "1' 8", "8'"), box("switch", "1' 7", "3' 10"), box("outlet", "1' 9", "1'")),
	"long names":                          head("in") + wall("North wall of the reading room behind the long reference desk", `20'`, `9'`, door(`8'`, `3'`)),
	"a tiny wall":                         head("in") + wall("Nib", `14`, `8'`) + wall("Long", `12'`, `8'`),
	"an outside corner and a column":      head("in") + outside(wall("A", `5'`, `9'`)) + outside(wall("B", `16`, `9'`)) + outside(wall("C", `16`, `9'`)) + wall("D", `6'`, `9'`),
	"a long wall in pieces":               head("in") + wall("Corridor", `96'`, `9'`, door(`20'`, `3'`), door(`47'`, `3'`), door(`80'`, `3'`)),
	"metric":                              metric() + wallMM("Head", 4280, 2700, windowMM(900, 1200)) + wallMM("Side", 3105, 2700),
	"a slope and a step":                  head("in") + strings.Replace(wall("Gable", `16'`, `9'`), `height = "9'"`, `height = [["0", "7'"], ["8'", "9' 6"], ["12'", "8' 2"], ["12'", "7'"], ["16'", "7'"]]`, 1),
	"a floor out of level, leaning ends":  head("in") + wall("Old", `15'`, `9'`) + "lean = [\"-1/4\", \"3/8\"]\nfloor = [\"0\", \"-3/4\"]\n" + wall("Next", `8'`, `9'`),
	"a strip without covering":            head("in") + wall("Joint", `18'`, `9'`, "[[wall.bare]]\nfrom = \"9'\"\nto = \"9' 3\"\nwhy = \"control joint\"\n"),
	"a gap from floor to ceiling":         head("in") + wall("Lift", `18'`, `8'`, strings.Replace(door(`7'`, `4'`), `height = "7'"`, `height = "8'"`, 1)),
	"a gap that the grain counts through": head("in") + wall("Lift", `18'`, `8'`, strings.Replace(door(`7'`, `4'`), `height = "7'"`, `height = "8'"`, 1)+"grain = \"through\"\n"),
	"wrapped jambs":                       head("in") + wall("Bay", `16'`, `9'`, window(`5'`, `5'`)+"reveal = \"8\"\nwrap_reveal = true\n"),
	"nothing but a crown and base":        head("in") + wall("Plain", `11'`, `12'`) + "base = \"8\"\ncrown = \"6\"\n",
	"a window too narrow for its name":    head("in") + wall("Slit", `12'`, `9'`, window(`6'`, `4`)),
	"no layout keeps the rules":           head("in") + wall("Tight", `5'`, `9'`, window(`8`, `1' 4`), window(`2' 6`, `1' 8`)),
	"an architect with a long name, many revisions": strings.Replace(head("in"), `for = "Osprey & Vane Architects"`, `for = "The Office of Osprey, Vane, Plover, Lapwing & Daughters, Architects and Landscape Architects"`, 1) +
		revisions(9) + wall("North", `12'`, `9'`),
	"grain level":                    strings.Replace(head("in"), `cut = "plain"`, "cut = \"quarter\"\ngrain = \"horizontal\"", 1) + wall("Bar", `22'`, `9'`, window(`5'`, `4'`), box("outlet", "15'", "1' 6")) + wall("Back", `9'`, `9'`),
	"sheets hang already":            head("in") + wall("North", `14'`, `9'`) + "[[hung]]\nwall = \"North\"\nsheet = 1\nseam = \"1' 10\"\n",
	"a tall wall in two courses":     strings.Replace(head("in"), `length = "13'"`, `length = "8'"`, 1) + wall("Stair", `9'`, `14'`, window(`3'`, `3'`)),
	"a name the faces cannot letter": head("in") + wall("西 wall", `12'`, `9'`),
}

func head(units string) string {
	return `[project]
title = "Harbour Lane Library: reading room"
number = "HL-207"
for = "Osprey & Vane Architects"
by = "Northlight Finishes"
section = "09 72 00"
tag = "WD-1"
drawn = 2026-04-14
measured = 2026-04-10
units = "` + units + `"
[veneer]
species = "white oak"
cut = "plain"
match = "book"
gross_width = "24 1/2"
overlap = "1"
length = "13'"
[[flitch]]
number = "F-311"
sheets = "1-60"
spare = 2
[room]
base = "5 1/2"
`
}

func metric() string {
	return `[project]
title = "Dune hotel, room 12"
units = "mm"
by = "Northlight Finishes"
[veneer]
species = "oak"
cut = "quarter"
gross_width = 640
overlap = 25
length = 3050
[room]
base = 100
`
}

func revisions(n int) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, "[[project.revision]]\nmark = %q\ndate = 2026-05-%02d\nnote = \"Window moved three inches to the left, and the door with it, as the architect asked\"\n", string(rune('A'+i)), i+1)
	}
	return b.String()
}

func wall(name, length, height string, parts ...string) string {
	return fmt.Sprintf("[[wall]]\nname = %q\nlength = %q\nheight = %q\n", name, length, height) + strings.Join(parts, "")
}

func wallMM(name string, length, height int, parts ...string) string {
	return fmt.Sprintf("[[wall]]\nname = %q\nlength = %d\nheight = %d\n", name, length, height) + strings.Join(parts, "")
}

func outside(w string) string { return w + "corner = \"outside\"\n" }

func window(from, width string) string {
	return fmt.Sprintf("[[wall.opening]]\nkind = \"window\"\nfrom_left = %q\nwidth = %q\nsill = \"2' 8\"\nheight = \"4' 6\"\n", from, width)
}

func windowMM(from, width int) string {
	return fmt.Sprintf("[[wall.opening]]\nkind = \"window\"\nfrom_left = %d\nwidth = %d\nsill = 900\nheight = 1200\n", from, width)
}

func door(from, width string) string {
	return fmt.Sprintf("[[wall.opening]]\nkind = \"door\"\nfrom_left = %q\nwidth = %q\nheight = \"7'\"\n", from, width)
}

func box(kind, x, z string) string {
	return fmt.Sprintf("[[wall.box]]\nkind = %q\nx = %q\nz = %q\n", kind, x, z)
}

// laid decodes and lays out a room, once for all tests: nothing changes a plan.
func laid(t require.TestingT, name, text string) *layout.Plan {
	laidOut.Lock()
	defer laidOut.Unlock()
	if p, ok := laidOut.known[text]; ok {
		return p
	}
	r, err := room.Decode(name, []byte(text))
	require.NoError(t, err)
	p, err := layout.Lay(r)
	require.NoError(t, err)
	laidOut.known[text] = p
	return p
}

var laidOut = struct {
	sync.Mutex
	known map[string]*layout.Plan
}{known: map[string]*layout.Plan{}}

// samples are the rooms that come with the program.
func samples(t *testing.T) map[string]string {
	out := map[string]string{}
	for _, dir := range []string{"../../samples", "../../templates/rooms"} {
		files, err := filepath.Glob(dir + "/*.toml")
		require.NoError(t, err)
		for _, f := range files {
			text, err := os.ReadFile(f)
			require.NoError(t, err)
			out[filepath.Base(dir)+" "+filepath.Base(f)] = string(text)
		}
	}
	require.NotEmpty(t, out)
	return out
}

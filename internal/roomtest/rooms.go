package roomtest

import (
	"fmt"
	"strings"
)

// OddRooms are rooms that try what a page can bear. Each is a room file, with the reason as its name.
var OddRooms = map[string]string{
	"narrow piers between three windows": Head("in") + Wall("Bay", `9'`, `9'`, Window(`4`, `2' 3`), Window(`3'`, `2' 3`), Window(`5' 10`, `2' 6`)) + Wall("Return", `3' 6`, `9'`),
	"many boxes in one corner": Head("in") + Wall("Plant", `14'`, `9'`, Box("outlet", "10", "1' 6"), Box("outlet", "13", "1' 6"), Box("switch", "10", "4'"),
		Box("thermostat", "13", "5'"), Box("light", "11 1/2", "7'"), Box("alarm", "1' 8", "8'"), Box("switch", "1' 7", "3' 10"), Box("outlet", "1' 9", "1'")),
	"long names":                          Head("in") + Wall("North wall of the reading room behind the long reference desk", `20'`, `9'`, Door(`8'`, `3'`)),
	"a tiny wall":                         Head("in") + Wall("Nib", `14`, `8'`) + Wall("Long", `12'`, `8'`),
	"an outside corner and a column":      Head("in") + Outside(Wall("A", `5'`, `9'`)) + Outside(Wall("B", `16`, `9'`)) + Outside(Wall("C", `16`, `9'`)) + Wall("D", `6'`, `9'`),
	"a long wall in pieces":               Head("in") + Wall("Corridor", `96'`, `9'`, Door(`20'`, `3'`), Door(`47'`, `3'`), Door(`80'`, `3'`)),
	"metric":                              Metric() + WallMM("Head", 4280, 2700, WindowMM(900, 1200)) + WallMM("Side", 3105, 2700),
	"a slope and a step":                  Head("in") + strings.Replace(Wall("Gable", `16'`, `9'`), `height = "9'"`, `height = [["0", "7'"], ["8'", "9' 6"], ["12'", "8' 2"], ["12'", "7'"], ["16'", "7'"]]`, 1),
	"a floor out of level, leaning ends":  Head("in") + Wall("Old", `15'`, `9'`) + "lean = [\"-1/4\", \"3/8\"]\nfloor = [\"0\", \"-3/4\"]\n" + Wall("Next", `8'`, `9'`),
	"a strip without covering":            Head("in") + Wall("Joint", `18'`, `9'`, "[[wall.bare]]\nfrom = \"9'\"\nto = \"9' 3\"\nwhy = \"control joint\"\n"),
	"a gap from floor to ceiling":         Head("in") + Wall("Lift", `18'`, `8'`, strings.Replace(Door(`7'`, `4'`), `height = "7'"`, `height = "8'"`, 1)),
	"a gap that the grain counts through": Head("in") + Wall("Lift", `18'`, `8'`, strings.Replace(Door(`7'`, `4'`), `height = "7'"`, `height = "8'"`, 1)+"grain = \"through\"\n"),
	"wrapped jambs":                       Head("in") + Wall("Bay", `16'`, `9'`, Window(`5'`, `5'`)+"reveal = \"8\"\nwrap_reveal = true\n"),
	"nothing but a crown and base":        Head("in") + Wall("Plain", `11'`, `12'`) + "base = \"8\"\ncrown = \"6\"\n",
	"a window too narrow for its name":    Head("in") + Wall("Slit", `12'`, `9'`, Window(`6'`, `4`)),
	"no layout keeps the rules":           Head("in") + Wall("Tight", `5'`, `9'`, Window(`8`, `1' 4`), Window(`2' 6`, `1' 8`)),
	"an architect with a long name, many revisions": strings.Replace(Head("in"), `for = "Osprey & Vane Architects"`, `for = "The Office of Osprey, Vane, Plover, Lapwing & Daughters, Architects and Landscape Architects"`, 1) +
		revisions(9) + Wall("North", `12'`, `9'`),
	"grain level":                    strings.Replace(Head("in"), `cut = "plain"`, "cut = \"quarter\"\ngrain = \"horizontal\"", 1) + Wall("Bar", `22'`, `9'`, Window(`5'`, `4'`), Box("outlet", "15'", "1' 6")) + Wall("Back", `9'`, `9'`),
	"sheets hang already":            Head("in") + Wall("North", `14'`, `9'`) + "[[hung]]\nwall = \"North\"\nsheet = 1\nseam = \"1' 10\"\n",
	"a tall wall in two courses":     strings.Replace(Head("in"), `length = "13'"`, `length = "8'"`, 1) + Wall("Stair", `9'`, `14'`, Window(`3'`, `3'`)),
	"a name the faces cannot letter": Head("in") + Wall("西 wall", `12'`, `9'`),
}

// Head is the text of a room before its walls.
func Head(units string) string {
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

// Metric is the same in millimetres.
func Metric() string {
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

// Wall is the text of a wall with what is on it.
func Wall(name, length, height string, parts ...string) string {
	return fmt.Sprintf("[[wall]]\nname = %q\nlength = %q\nheight = %q\n", name, length, height) + strings.Join(parts, "")
}

// WallMM is the same in millimetres.
func WallMM(name string, length, height int, parts ...string) string {
	return fmt.Sprintf("[[wall]]\nname = %q\nlength = %d\nheight = %d\n", name, length, height) + strings.Join(parts, "")
}

// Outside ends a wall at an outside corner.
func Outside(w string) string { return w + "corner = \"outside\"\n" }

// Window is the text of a window.
func Window(from, width string) string {
	return fmt.Sprintf("[[wall.opening]]\nkind = \"window\"\nfrom_left = %q\nwidth = %q\nsill = \"2' 8\"\nheight = \"4' 6\"\n", from, width)
}

// WindowMM is the same in millimetres.
func WindowMM(from, width int) string {
	return fmt.Sprintf("[[wall.opening]]\nkind = \"window\"\nfrom_left = %d\nwidth = %d\nsill = 900\nheight = 1200\n", from, width)
}

// Door is the text of a door.
func Door(from, width string) string {
	return fmt.Sprintf("[[wall.opening]]\nkind = \"door\"\nfrom_left = %q\nwidth = %q\nheight = \"7'\"\n", from, width)
}

// Box is the text of a box.
func Box(kind, x, z string) string {
	return fmt.Sprintf("[[wall.box]]\nkind = %q\nx = %q\nz = %q\n", kind, x, z)
}

package detail

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/paper"
	"flitchlay/internal/roomtest"
	"flitchlay/internal/scene"
)

// bentWall is a wall of nine feet with more keys: the bend at its right end.
func bentWall(name, length string, keys ...string) string {
	return roomtest.Wall(name, length, "9'") + strings.Join(keys, "\n") + "\n"
}

// sheetsOf gives a room's sheets other numbers.
func sheetsOf(room, sheets string) string { return strings.Replace(room, `"1-60"`, `"`+sheets+`"`, 1) }

// closedRoom makes a room closed.
func closedRoom(room string) string {
	return strings.Replace(room, "[room]\n", "[room]\nclosed = true\n", 1)
}

// columnOf is a closed room of walls with the same bend between them.
func columnOf(lengths []string, keys ...string) string {
	text := closedRoom(roomtest.Head("in"))
	for i, l := range lengths {
		text += bentWall(fmt.Sprintf("Face %d", i+1), l, keys...)
	}
	return text
}

func pilaster(depth, face string, keys ...string) string {
	in, out := append([]string{`corner = "inside"`}, keys...), append([]string{`corner = "outside"`}, keys...)
	return roomtest.Head("in") + bentWall("Left", `9' 3`, in...) + bentWall("Side left", depth, out...) + bentWall("Face", face, out...) + bentWall("Side right", depth, in...) + bentWall("Right", `7' 1`)
}

const isOutside = `corner = "outside"`

// bentRooms are rooms that try what the plans of corners can bear, with the reason as their name.
var bentRooms = map[string]string{
	"a pilaster eight inches deep":          pilaster("8", `1' 8`),
	"a shallow pilaster":                    pilaster("3", `1' 2`),
	"a pilaster, three figures":             sheetsOf(pilaster("8", `1' 8`), "201-260"),
	"a pilaster, four figures":              sheetsOf(pilaster("8", `1' 8`), "1201-1260"),
	"a pilaster that leans":                 pilaster("8", `1' 8`, `lean = "3/16"`),
	"a pilaster with slanting sides":        pilaster("9", `1' 2`, "angle = 45"),
	"a pilaster with acute bends":           pilaster("9", `1' 8`, "angle = 105"),
	"a square column":                       columnOf([]string{"16", "16", "16", "16"}, isOutside),
	"an oblong column, four figures":        sheetsOf(columnOf([]string{`1' 11`, `1' 3`, `1' 11`, `1' 3`}, isOutside), "1201-1260"),
	"a thin column in one sheet":            columnOf([]string{"5", "5", "5", "5"}, isOutside),
	"a column with bullnoses":               columnOf([]string{"18", "18", "18", "18"}, isOutside, `radius = "3"`),
	"a column of six faces":                 columnOf([]string{"12", "12", "12", "12", "12", "12"}, isOutside, "angle = 60"),
	"a column whose last bend is cut":       columnOf([]string{"16", "16", "16"}, isOutside) + bentWall("Face 4", "16", isOutside, "wrap = false"),
	"a closet":                              columnOf([]string{`1' 9`, `1' 6`, `1' 9`, `1' 6`}),
	"a nib":                                 roomtest.Head("in") + bentWall("Left", `9' 3`, isOutside) + bentWall("End", "5 1/2", isOutside) + bentWall("Right", `7' 1`),
	"a nib with bullnoses":                  roomtest.Head("in") + bentWall("Left", `9' 3`, isOutside, `radius = "1 1/2"`) + bentWall("End", "8", isOutside, `radius = "1 1/2"`) + bentWall("Right", `7' 1`),
	"a niche":                               roomtest.Head("in") + bentWall("Left", `5' 3`, isOutside) + bentWall("Side", "9") + bentWall("Back", `2'`) + bentWall("Other side", "9", isOutside) + bentWall("Right", `7' 1`),
	"acute and obtuse angles":               sheetsOf(roomtest.Head("in")+bentWall("A", `9' 3`, isOutside, "angle = 120")+bentWall("B", "17", isOutside, "angle = 135")+bentWall("C", `8'`, "angle = 110")+bentWall("D", `6'`, "angle = 30")+bentWall("E", `6'`), "98-140"),
	"a large radius that leans":             roomtest.Head("in") + bentWall("A", `9' 3`, isOutside, `radius = "6"`, `lean = "1/4"`) + bentWall("B", `8'`),
	"a covering that ends near its bends":   roomtest.Head("in") + bentWall("A", "9", isOutside, `left_end = "frame"`) + bentWall("B", `9' 3`) + bentWall("C", "11", `right_end = "inside corner"`),
	"a covering that ends at outside edges": roomtest.Head("in") + bentWall("A", "9", isOutside, `left_end = "outside edge"`) + bentWall("B", `9' 3`, isOutside) + bentWall("C", "11", `right_end = "outside edge"`),
	"ten steps":                             steps(10),
	"a metric pilaster":                     roomtest.Metric() + "[[flitch]]\nnumber = \"F\"\nsheets = \"301-360\"\n" + roomtest.WallMM("Left", 2735, 2700) + roomtest.WallMM("Side", 203, 2700, "corner = \"outside\"\n") + roomtest.WallMM("Face", 508, 2700, "corner = \"outside\"\n") + roomtest.WallMM("Other side", 203, 2700) + roomtest.WallMM("Right", 2214, 2700),
	"a metric column with bullnoses":        closedRoom(roomtest.Metric()) + roomtest.WallMM("A", 450, 2700, "corner = \"outside\"\nradius = 25\n") + roomtest.WallMM("B", 450, 2700, "corner = \"outside\"\nradius = 25\n") + roomtest.WallMM("C", 450, 2700, "corner = \"outside\"\nradius = 25\n") + roomtest.WallMM("D", 450, 2700, "corner = \"outside\"\nradius = 25\n"),
}

// steps is a wall that goes in and out.
func steps(n int) string {
	text := roomtest.Head("in") + bentWall("Left", `5' 3`, isOutside)
	for i := range n {
		turn := isOutside
		if i%2 == 0 {
			turn = `corner = "inside"`
		}
		text += bentWall(fmt.Sprintf("Step %d", i+1), "10 1/4", turn)
	}
	return text + bentWall("Right", `7' 1`)
}

// detailsOf draws the detail pages of a room.
func detailsOf(t *testing.T, text, named string) (*folio.Set, []*scene.Page) {
	template, err := paper.Named(named)
	require.NoError(t, err)
	s := folio.NewSet(roomtest.Laid(t, "room.toml", text), template, nil, "")
	s.Number([]folio.Section{{Kind: folio.Details, Pages: Pages}})
	var list []*scene.Page
	for _, l := range s.List {
		b := s.Open(l)
		l.Draw(b)
		list = append(list, b.Page)
	}
	return s, list
}

func TestNothingOverlapsOnAnyDetail(t *testing.T) {
	roomtest.OnPapers(t, bentRooms, paper.Names(), func(t *testing.T, text, name string) {
		s, list := detailsOf(t, text, name)
		numbers := 0
		for _, p := range list {
			for _, o := range scene.Overlaps(p, 0.5) {
				t.Errorf("%s: %v", p.Name, o)
			}
			p.Texts(func(x *scene.Text) {
				assert.GreaterOrEqual(t, x.Height, 2.5-1e-9, "%s: %q is under 2.5 mm", p.Name, x.String)
			})
			for _, g := range roomtest.Classed(&p.Group, "sheet-number") {
				for _, it := range g.Items {
					if x, ok := it.(*scene.Text); ok {
						assert.InDelta(t, s.Look.Medium, x.Height, 1e-9, "%s: sheet %s is lettered at a height of the series", p.Name, x.String)
						numbers++
					}
				}
			}
		}
		assert.Positive(t, numbers)
	})
}

// Every bend is in one plan, named in it, and the plan leads from where other pages look it up.
func TestEveryBendIsDrawnOnce(t *testing.T) {
	for why, text := range bentRooms {
		for _, name := range []string{"ansi-b", "a4", "a1"} {
			s, list := detailsOf(t, text, name)
			at := map[string][]string{}
			for _, p := range list {
				for _, v := range roomtest.Classed(&p.Group, "view") {
					for _, c := range strings.Fields(roomtest.Fact(v, "corners")) {
						at[c] = append(at[c], p.Name)
					}
					if many := strings.Fields(roomtest.Fact(v, "corners")); len(many) > 1 {
						for _, c := range many {
							assert.Contains(t, roomtest.Lettering(v), c, "%s on %s", why, name)
						}
					}
				}
			}
			n := 0
			for _, r := range s.Plan.Runs {
				for _, c := range r.Corners {
					assert.Equal(t, []string{s.PageOf("corner " + c.Name)}, at[c.Name], "%s on %s: %s", why, name, c.Name)
					n++
				}
			}
			assert.Len(t, at, n)
		}
	}
}

// Close bends stand together: a pilaster and a column whole, and every face between two bends has its length.
func TestCloseBendsAreDrawnTogether(t *testing.T) {
	for why, want := range map[string]struct {
		title string
		bends int
		faces []string
	}{
		"a pilaster eight inches deep":    {"PILASTER C1 TO C4", 4, []string{`8"`, `1'-8"`, `8"`}},
		"a square column":                 {"COLUMN C1 TO C4", 4, []string{`1'-4"`, `1'-4"`, `1'-4"`, `1'-4"`}},
		"a column with bullnoses":         {"COLUMN C1 TO C4", 4, []string{`1'-6"`, `1'-6"`, `1'-6"`, `1'-6"`}},
		"a column whose last bend is cut": {"COLUMN C1 TO C3", 3, []string{`1'-4"`, `1'-4"`, `1'-4"`, `1'-4"`}},
		"a niche":                         {"NICHE C1 TO C4", 4, []string{`9"`, `2'-0"`, `9"`}},
		"a metric pilaster":               {"PILASTER C1 TO C4", 4, []string{"203", "508", "203"}},
	} {
		for _, name := range paper.Names() {
			s, list := detailsOf(t, bentRooms[why], name)
			var found *scene.Group
			for _, p := range list {
				for _, v := range roomtest.Classed(&p.Group, "view") {
					if v.View.Name == want.title {
						found = v
					}
				}
			}
			if !assert.NotNil(t, found, "%s on %s", why, name) {
				continue
			}
			assert.Len(t, strings.Fields(roomtest.Fact(found, "corners")), want.bends)
			var faces []string
			for _, g := range roomtest.Classed(found, "dimension") {
				if roomtest.Fact(g, "tier") == "face" {
					faces = append(faces, roomtest.Lettering(g)...)
				}
			}
			assert.Equal(t, want.faces, faces, "%s on %s", why, name)
			scales := []float64{4, 8, 12, 16, 24}
			if s.Metric() {
				scales = []float64{5, 10, 20, 50}
			}
			assert.Contains(t, scales, found.View.Scale, "a standard scale")
		}
	}
}

// Faces between bends are never broken: what is drawn is as long as its figure says, at the scale under the title.
func TestFacesBetweenBendsAreTrueToScale(t *testing.T) {
	measured := 0
	for why, text := range bentRooms {
		_, list := detailsOf(t, text, "ansi-b")
		for _, p := range list {
			for _, v := range roomtest.Classed(&p.Group, "view") {
				for _, g := range roomtest.Classed(v, "dimension") {
					if roomtest.Fact(g, "tier") != "face" {
						continue
					}
					long := 0.0
					for _, it := range g.Items {
						if l, ok := it.(*scene.Line); ok {
							long = math.Max(long, math.Hypot(l.B.X-l.A.X, l.B.Y-l.A.Y))
						}
					}
					unit := length.Inches
					if v.View.Metric {
						unit = length.Millimetres
					}
					figure, err := length.Parse(strings.Join(roomtest.Lettering(g), ""), unit)
					require.NoError(t, err, why)
					want := figure.MM() / v.View.Scale
					if want > 25 { // shorter ones have extension lines that are longer than they are
						assert.InDelta(t, want, long, 0.5/v.View.Scale+0.06, "%s, %s: %v", why, v.View.Name, roomtest.Lettering(g))
						measured++
					}
				}
			}
		}
	}
	assert.Greater(t, measured, 20)
}

// The pieces of a face add up to it, and a return that goes on round another bend stands in the table.
func TestReturnsOfCloseBendsAreAllGiven(t *testing.T) {
	for why, text := range bentRooms {
		s, list := detailsOf(t, text, "ansi-b")
		byName := map[string]*layout.Corner{}
		for i := range s.Plan.Runs {
			for j := range s.Plan.Runs[i].Corners {
				c := &s.Plan.Runs[i].Corners[j]
				byName[c.Name] = c
			}
		}
		for _, p := range list {
			for _, v := range roomtest.Classed(&p.Group, "view") {
				words := roomtest.Lettering(v)
				for _, name := range strings.Fields(roomtest.Fact(v, "corners")) {
					c := byName[name]
					for _, l := range []L{c.LeftReturn, c.RightReturn} {
						if l > 0 {
							assert.Contains(t, words, s.Style.Format(l), "%s: %s", why, name)
						}
					}
				}
			}
		}
	}
}

func TestNamesOfCornersInShort(t *testing.T) {
	for want, names := range map[string][]string{
		"C1": {"C1"}, "C1 AND C2": {"C1", "C2"}, "C1 TO C3": {"C1", "C2", "C3"}, "C1 TO C4, C9": {"C1", "C2", "C3", "C4", "C9"}, "C8 AND C1": {"C8", "C1"},
	} {
		assert.Equal(t, want, ranges(names))
	}
}

func TestCellsAreTakenInOrder(t *testing.T) {
	taken := []bool{true, false, false, true, false, false}
	assert.Equal(t, 1, freeCells(taken, 3, false))
	assert.Equal(t, 1, freeCells(taken, 3, true))
	assert.Equal(t, 3, freeCells([]bool{true, true, false, false, false, false}, 3, true), "two cells lie in one row")
	assert.Equal(t, -1, freeCells([]bool{false, true, false, true}, 2, true))
}

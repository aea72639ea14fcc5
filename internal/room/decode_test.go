package room

import (
	"os"
	"strings"
	"testing"

	"flitchlay/internal/length"
	"flitchlay/internal/source"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// in reads a length of an inch room.
func in(text string) L {
	l, err := length.Parse(text, length.Inches)
	if err != nil {
		panic(err)
	}
	return l
}

func everyKey(t *testing.T) []byte {
	text, err := os.ReadFile("testdata/every-key.toml")
	require.NoError(t, err)
	return text
}

// The file really holds every key of the schema; close_at = { corner } stands against the other two, a seam at the left of the
// first sheet is only in a run that goes round, and an open end is only in an open room.
func TestEveryKeyIsThere(t *testing.T) {
	root, err := source.Parse("every-key.toml", everyKey(t))
	require.NoError(t, err)
	var holds func(v source.Value, path []string, key string) bool
	holds = func(v source.Value, path []string, key string) bool {
		for _, item := range v.Items() {
			if holds(item, path, key) {
				return true
			}
		}
		if len(path) > 0 {
			return holds(v.Get(path[0]), path[1:], key)
		}
		return v.Get(key).Given()
	}
	for _, table := range Schema {
		for _, key := range table.Keys {
			if table.Path == "room.close_at" && key.Name == "corner" || table.Path == "hung" && key.Name == "left_seam" || key.Name == "across" {
				continue
			}
			assert.True(t, holds(root, strings.Split(table.Path, "."), key.Name), "%s.%s", table.Path, key.Name)
			assert.NotEmpty(t, key.Kind+strings.Join(key.Words, ""), "%s.%s", table.Path, key.Name)
			assert.NotEmpty(t, key.Doc, "%s.%s", table.Path, key.Name)
		}
	}
}

func TestEveryKeyDecodes(t *testing.T) {
	r, err := Decode("every-key.toml", everyKey(t))
	require.NoError(t, err)

	assert.Equal(t, Project{Title: "Harbour Lane Library: reading room", Number: "HL-207", Room: "214", Place: "Level 2",
		For: "Osprey & Vane Architects", By: "Northlight Finishes", Section: "09 72 00", Tag: "WD-1",
		Drawn: "2026-04-14", Issued: "2026-04-12", Measured: "2026-04-10", Units: length.Inches,
		Submittal: "097200-003", Resubmittal: "R1", Document: "Shop drawing", Contractor: "Tern Quay Builders",
		ContractDrawings: "A-601; details 3 and 4 on A-901", Sample: "control sample 2, approved 2026-03-20",
		DrawnBy: "D. Mason", CheckedBy: "R. Lund", ApprovedBy: "E. Shaw",
		Revisions: []Revision{{"A", "2026-05-02", "Window W2 moved 3 in left", -1, 0}, {"B", "", "Door added", 0, in("3'")}}}, r.Project)
	assert.Equal(t, Veneer{Species: "white oak", Cut: "quarter", Match: "slip", LeafWidth: in("6"), GrossWidth: in("24 1/2"),
		Overlap: in("1"), Length: in("10'"), Thickness: in("0.03"), Face: "photos/f311-#.jpg",
		FaceGrade: "AA", Backing: "paper, 10 mil", Finish: "clear catalysed, in the shop", Sheen: "20 at 60 degrees", FireReport: "TL-4410, 2025-11-03"}, r.Veneer)
	assert.Equal(t, []string{"clear wheat paste, 2 parts", "acrylic primer, white"}, []string{r.PasteName, r.PrimerName})
	assert.Equal(t, "097200-003-R1", r.Project.SubmittalNumber())

	require.Len(t, r.Flitches, 2)
	assert.Equal(t, []int{9, 15}, r.Flitches[0].Damaged, "and one that came under 23 1/2 + 5/8 in")
	assert.Equal(t, []int{15}, r.Flitches[0].Refused)
	assert.Equal(t, []SheetWidth{{12, in("24 1/4")}, {13, in("24 5/8")}, {15, in("24")}}, r.Flitches[0].Widths)
	assert.Equal(t, []L{in("24 1/4"), in("24 1/2"), in("24 1/2")}, []L{r.GrossOf("F-311", 12), r.GrossOf("F-311", 13), r.GrossOf("F-312", 3)})
	assert.Equal(t, []int{23, 24}, r.Flitches[0].Spare)
	assert.Len(t, r.Flitches[0].Sheets, 23)
	assert.NotContains(t, r.Flitches[0].Sheets, 7)
	assert.Equal(t, Flitch{Number: "F-312", Sheets: []int{1, 2, 3, 5}, From: FromLast, Damaged: []int{3}, Spare: []int{5}, At: Place{55, 3}}, r.Flitches[1])

	seven := in("7'")
	assert.Equal(t, Rules{CornerReturn: in("4 1/2"), PreferReturn: in("6 1/2"), CurveRadius: in("7"), Leg: in("3 1/2"), PreferLeg: in("6 1/4"),
		OpeningClear: in("2 1/2"), PreferClear: in("4 1/2"), BoxClear: in("1 1/2"), LeastWidth: in("6 3/4"), PreferWidth: in("12 1/2"),
		ShortSeam: in("30 1/2"), LeastOverlap: in("5/8"), EdgeTrim: in("1 1/4"), TopTrim: in("2 1/4"), BottomTrim: in("2 3/4"),
		Snap: in("1/8"), Aim: "even", JointHeight: &seven, Upper: "turned", SpareShare: 0.125, SpareShareParts: 125_000}, r.Rules)
	north := 330.0
	assert.Equal(t, Space{Name: "Reading room", North: &north, Closed: true, LevelLine: in("4'"), Base: in("5 1/2"), Crown: in("3"), Behind: Behind{Crown: true},
		CloseAt: &CloseAt{Wall: 2, At: in("3' 2"), Corner: -1, Where: Place{91, 1}}, Casing: ref(in("3 1/2")), Choose: 2, ChooseAt: Place{92, 1}}, r.Space)

	require.Len(t, r.Walls, 4)
	w := r.Walls[0]
	assert.Equal(t, []Opening{
		{Name: "View", Kind: "window", FromLeft: in("3'"), Width: in("4'"), Sill: in("2' 8"), SillGiven: true, Height: in("4' 6"),
			Head: in("7' 2"), Casing: ref(in("4")), Reveal: in("5"), WrapReveal: true, At: Place{114, 8}},
		{Name: "O1", Kind: "cased opening", FromLeft: in("12'"), Width: in("4'"), Sill: w.Openings[1].Sill, Height: in("9' 3"),
			Head: w.Openings[1].Head, Casing: ref(in("3 1/2")), Grain: "through", At: Place{124, 8}}}, w.Openings)
	// on 18'-4 1/4" the ceiling falls 6 in and the floor 1/4 in: at 12' the ceiling is at 114 - 6 x 144/220.25 = 110.07719 in,
	// at 16' the floor is at -1/4 x 192/220.25 = -0.21793 in
	assert.InDelta(t, 110.07719, float64(w.Openings[1].Head)/float64(length.Inch), 1e-5)
	assert.InDelta(t, -0.21793, float64(w.Openings[1].Sill)/float64(length.Inch), 1e-5)
	assert.Equal(t, []Box{
		{Name: "E1", Kind: "outlet", X: in("9' 2"), Z: in("1' 4"), Gang: 3, PlateWidth: in("6 1/2"), PlateHigh: in("4 3/4"),
			HoleWidth: in("5 1/2"), HoleHigh: in("3"), At: Place{131, 8}},
		{Name: "S1", Kind: "switch", X: in("8'"), Z: in("4'"), Gang: 2, PlateWidth: in("4 1/2"), PlateHigh: in("4 1/2"),
			HoleWidth: in("3 13/16"), HoleHigh: in("3"), At: Place{139, 8}}}, w.Boxes)
	assert.Equal(t, []Pin{{in("9' 2 1/8"), "middle", Place{146, 1}}}, w.Pins)
	assert.Equal(t, []KeepClear{{in("6'"), in("8'"), "screen bracket", Place{149, 8}}}, w.KeepClear)
	assert.Equal(t, []Bare{{in("17'"), in("17' 4"), "control joint", Place{154, 8}}}, w.Bare)
	w.Openings, w.Boxes, w.Pins, w.KeepClear, w.Bare = nil, nil, nil, nil, nil
	assert.Equal(t, Wall{Name: "North", Ref: "3/A-512", Length: in("18' 4 1/4"), Ceiling: []Point{{0, in("9' 6")}, {in("18' 4 1/4"), in("9'")}},
		Floor: []Point{{0, 0}, {in("18' 4 1/4"), in("-1/4")}}, Corner: Outside, Angle: 45.5, Radius: in("3/4"), Wrap: true,
		LeanRight: in("1/4"), LeanLeftGiven: true, LeftEnd: "inside corner", RightEnd: "casing", Main: true, HiddenBelow: in("2' 6"),
		Cover: true, Base: in("4"), Behind: Behind{true, true}, At: Place{94, 3}}, w)

	w = r.Walls[1]
	assert.Equal(t, Wall{Name: "Wall 2", Length: in("10'"), Ceiling: []Point{{0, in("9'")}, {in("5'"), in("9'")}, {in("5'"), in("8'")}, {in("10'"), in("8'")}},
		Floor: []Point{{0, 0}, {in("10'"), 0}}, Corner: Inside, Angle: 90, Wrap: true, LeanLeft: in("1/4"), Cover: true,
		Base: in("5 1/2"), Crown: in("3"), Behind: Behind{Crown: true}, At: Place{159, 3}}, w)
	assert.Equal(t, Straight, r.Walls[2].Corner)
	assert.Zero(t, r.Walls[2].Angle)
	assert.Equal(t, in("-1/8"), r.Walls[3].LeanLeft, "across a straight corner too")
	assert.Equal(t, "Wall 4", r.Walls[3].Name)
	assert.True(t, r.Walls[3].Openings[0].Cleared)
	assert.Equal(t, in("6"), r.Walls[3].Openings[0].Clearance)

	require.Len(t, r.Hung, 6)
	assert.Equal(t, in("1/2"), *r.Hung[0].Left, "half an overlap of 1 in right of the raw edge")
	r.Hung[0].Left = nil
	assert.Equal(t, []Hung{
		{Sheet: 1, Seam: in("1' 11 1/4"), Top: in("1' 11 3/8"), Where: Place{174, 3}},
		{Sheet: 2, Seam: in("3' 10 3/4"), Top: in("3' 10 3/4"), Edge: true, Where: Place{179, 3}},
		{Sheet: 3, Seam: in("5' 10 1/4"), Top: in("5' 10 1/4"), Edge: true, Where: Place{183, 3}},
		{Sheet: 4, Seam: in("7' 9 3/4"), Top: in("7' 9 5/8"), Edge: true, Where: Place{183, 3}},
		{Sheet: 5, Seam: in("9' 9 1/4"), Top: in("9' 9 1/4"), Where: Place{187, 3}},
		{Sheet: 6, Seam: in("11' 8 3/4"), Top: in("11' 8 3/4"), Where: Place{187, 3}},
	}, r.Hung)
	require.Len(t, r.Readings, 1)
	x := r.Readings[0]
	assert.Equal(t, []L{in("17' 11 1/8"), in("1/8"), in("-1/16")}, []L{*x.Length, *x.LeanLeft, *x.LeanRight})
	assert.Equal(t, 2, x.Wall)
	assert.Equal(t, []Point{{0, 0}, {in("6' 2"), in("-1/8")}}, x.Floor, "down from the level line at 4'-0\"")
	assert.Equal(t, []Point{{0, in("9' 1/4")}, {in("17' 11 1/8"), in("9'")}}, x.Ceiling, "up from it")
	wall, reading, limit := 63.5, 0.6, 1.0
	assert.Equal(t, Site{Given: true, ShopGiven: true, Temperature: 68, Humidity: 45, Shop: Climate{70, 35}, Wall: &wall,
		Year: &Band{25, 55.5}, Board: &Board{"gypsum scale", &reading, &limit}}, r.Site)
	assert.Equal(t, Day{Plain: 18, Wrap: 25, Opening: 28, Narrow: 21, Box: 5, Cut: 9, Rest: 12, Open: 45, Group: 4, LayOut: 3, Look: 20,
		Start: 7 * 60, End: 16*60 + 30, Breaks: []Break{{9*60 + 30, 9*60 + 45}, {12 * 60, 12*60 + 45}}, Crew: 3}, r.Day)
	assert.Equal(t, Coverage{true, 150, "sq ft", "gal"}, r.Paste)
	assert.Equal(t, Coverage{true, 7.5, "m2", "L"}, r.Primer)
	assert.Equal(t, Page{"ansi-b", "ansi-a", "our-mark.png", "en+es"}, r.Page)
}

// least is a room with required keys only.
const least = `[project]
title = "t"
[veneer]
gross_width = "24 1/2 in"
overlap = "1 in"
length = "10 ft"
[[wall]]
length = "12 ft"
height = "8 ft"
[[wall]]
length = "10 ft"
height = "8 ft"
`

func TestDefaults(t *testing.T) {
	r, err := Decode("r.toml", []byte(least))
	require.NoError(t, err)
	assert.Equal(t, Rules{CornerReturn: in("4"), PreferReturn: in("6"), CurveRadius: in("6"), Leg: in("3"), PreferLeg: in("6"), OpeningClear: in("2"), PreferClear: in("4"),
		BoxClear: in("1"), LeastWidth: in("6"), PreferWidth: in("12"), ShortSeam: in("30"), LeastOverlap: in("1/2"), EdgeTrim: in("1"),
		TopTrim: in("2"), BottomTrim: in("2"), Snap: in("1/16"), Aim: "steady", Upper: "auto", SpareShare: 0.10, SpareShareParts: 100_000}, r.Rules)
	assert.Equal(t, Space{LevelLine: in("4'"), Choose: 1}, r.Space)
	assert.Equal(t, []Bend{Inside, None}, []Bend{r.Walls[0].Corner, r.Walls[1].Corner})
	assert.Equal(t, []string{"Wall 1", "Wall 2"}, []string{r.Walls[0].Name, r.Walls[1].Name})
	assert.Empty(t, r.Flitches)

	r, err = Decode("r.toml", []byte(strings.Replace(least, "[veneer]", "units = 'mm'\n[room]\nclosed=true\n[veneer]", 1)))
	require.NoError(t, err)
	const mm = length.Millimetre
	assert.Equal(t, Rules{CornerReturn: 100 * mm, PreferReturn: 150 * mm, CurveRadius: 150 * mm, Leg: 75 * mm, PreferLeg: 150 * mm, OpeningClear: 50 * mm, PreferClear: 100 * mm,
		BoxClear: 25 * mm, LeastWidth: 150 * mm, PreferWidth: 300 * mm, ShortSeam: 750 * mm, LeastOverlap: 12 * mm, EdgeTrim: 25 * mm,
		TopTrim: 50 * mm, BottomTrim: 50 * mm, Snap: mm, Aim: "steady", Upper: "auto", SpareShare: 0.10, SpareShareParts: 100_000}, r.Rules)
	assert.Equal(t, 1200*mm, r.Space.LevelLine)
	assert.Equal(t, Inside, r.Walls[1].Corner)
	assert.Equal(t, in("24 1/2"), r.Veneer.GrossWidth)
}

// room makes a file of the least room with more text at its end, which belongs to the second wall.
func file(more string) []byte { return []byte(least + more) }

func TestNamesByKind(t *testing.T) {
	r, err := Decode("r.toml", file(`
opening = [
  { from_left = 0, width = 10, height = 50 },
  { from_left = 20, width = 10, height = 50, sill = 10 },
  { from_left = 40, width = 10, height = 50, kind = "window", name = "W1" },
  { from_left = 60, width = 10, height = 50, kind = "fireplace" },
  { from_left = 80, width = 10, height = 50, kind = "built-in" },
]
box = [ {x=15,z=30,kind="outlet"}, {x=35,z=30,kind="switch"}, {x=55,z=30,kind="thermostat"}, {x=75,z=30,kind="light"}, {x=95,z=30,kind="alarm"},
  {x=100,z=60,kind="bracket",plate=[1,9]}, {x=104,z=60,kind="panel",plate=[3,9]}, {x=110,z=60}, {x=15,z=40,kind="outlet"} ]
[[wall]]
length = 100
height = 90
opening = [ { from_left = 0, width = 10, height = 50, sill = 3 } ]
`))
	require.NoError(t, err)
	var names, kinds []string
	for _, w := range r.Walls {
		for _, o := range w.Openings {
			names, kinds = append(names, o.Name), append(kinds, string(o.Kind))
		}
		for _, b := range w.Boxes {
			names = append(names, b.Name)
		}
	}
	assert.Equal(t, []string{"D1", "W2", "W1", "F1", "B1", "E1", "S1", "TH1", "L1", "AL1", "BR1", "P1", "X1", "E2", "W3"}, names)
	assert.Equal(t, []string{"door", "window", "window", "fireplace", "built-in", "window"}, kinds, "a sill makes a window")
	assert.Equal(t, in("1"), r.Walls[1].Boxes[5].HoleWidth, "a usual hole is no wider than its plate")
}

// North is read in degrees to either side, and kept from 0 to 360.
func TestNorth(t *testing.T) {
	for given, want := range map[string]float64{"0": 0, "30": 30, "-30": 330, "359.5": 359.5} {
		r, err := Decode("r.toml", []byte(strings.Replace(least, "[[wall]]", "[room]\nnorth = "+given+"\n[[wall]]", 1)))
		require.NoError(t, err)
		require.NotNil(t, r.Space.North, given)
		assert.Equal(t, want, *r.Space.North, given)
	}
}

// A left end that is not given leans as the wall before it across the corner: design of the room file.
func TestLeansAcrossCorners(t *testing.T) {
	walls := func(closed, last string) []Wall {
		r, err := Decode("r.toml", []byte(strings.Replace(least, "[[wall]]", "[room]\nclosed="+closed+"\n[[wall]]", 1)+`lean = "1/4"
[[wall]]
length = 100
height = 90
lean = ["-1/8", "1/8"]
corner = "none"
[[wall]]
length = 100
height = 90
lean = "3/8"
`+last))
		require.NoError(t, err)
		return r.Walls
	}
	w := walls("true", "")
	assert.Equal(t, []L{in("3/8"), 0, in("-1/8"), 0}, []L{w[0].LeanLeft, w[1].LeanLeft, w[2].LeanLeft, w[3].LeanLeft})
	assert.Zero(t, walls("true", "corner = 'none'")[0].LeanLeft)
	assert.Zero(t, walls("false", "")[0].LeanLeft)
}

func TestCloseAtCornerCutsIt(t *testing.T) {
	r, err := Decode("r.toml", []byte(strings.Replace(least, "[[wall]]", "[room]\nclosed=true\nclose_at={corner='Wall 2'}\n[[wall]]", 1)))
	require.NoError(t, err)
	assert.Equal(t, &CloseAt{Wall: -1, Corner: 1, Where: Place{9, 1}}, r.Space.CloseAt)
	assert.True(t, r.Walls[0].Wrap)
	assert.False(t, r.Walls[1].Wrap)
}

// Without a level line of its own a room of low walls gets one that crosses them all.
func TestOwnLevelLine(t *testing.T) {
	r, err := Decode("r.toml", file("[[wall]]\nlength = 50\nheight = 40\n"))
	require.NoError(t, err)
	assert.Equal(t, in("20"), r.Space.LevelLine)
}

// The same room in millimetres and in inches is the same room.
func TestBareNumbersAndTextsAgree(t *testing.T) {
	for _, c := range []struct{ units, bare, text string }{
		{"in", "24.5", "'24 1/2'"},
		{"in", "2_4.5e0", "24½"},
		{"in", "0x18", "\"2'\""},
		{"in", "24.015625", "'24 1/64'"},
		{"mm", "622.3", "'24 1/2 in'"},
		{"mm", "600.0000625", "'600.000125 mm'"}, // half of 1/8 micrometre goes up, as written, not as binary
	} {
		a := strings.Replace(least, `"24 1/2 in"`, c.bare, 1)
		b := strings.Replace(least, `"24 1/2 in"`, c.text, 1)
		if !strings.ContainsAny(c.text, `'"`) {
			b = strings.Replace(least, `"24 1/2 in"`, `"`+c.text+`"`, 1)
		}
		units := "units = '" + c.units + "'\n[veneer]"
		ra, err := Decode("a", []byte(strings.Replace(a, "[veneer]", units, 1)))
		require.NoError(t, err, c.bare)
		rb, err := Decode("b", []byte(strings.Replace(b, "[veneer]", units, 1)))
		require.NoError(t, err, c.text)
		assert.Equal(t, rb.Veneer.GrossWidth, ra.Veneer.GrossWidth, c.bare)
	}
}

func TestMistakeOfALaterStage(t *testing.T) {
	r, err := Decode("r.toml", file("[[wall.pin]]\n\tat = 30\n"))
	require.NoError(t, err)
	err = r.Mistake(r.Walls[1].Pins[0].Where, "the pin is out of reach", "move it")
	assert.EqualError(t, err, "r.toml:14:2: the pin is out of reach\n  \tat = 30\n  \t^^\n  mend: move it")
	err = r.Mistake(r.Walls[1].At, "a wall", "move it")
	assert.EqualError(t, err, "r.toml:10:3: a wall\n  [[wall]]\n    ^^^^\n  mend: move it")
	assert.EqualError(t, new(Room).Mistake(Place{}, "a wall", "move it"), "a wall: move it")
}

// Revisions without a mark are lettered by the series, and a change without a distance is in the middle of its wall.
//
// Source: letters A, B, C and so on without I, O, Q, S, X and Z: drawing practice of public works (NAVFAC manuals), as
// restated publicly.
func TestRevisionsAreLetteredAndPlaced(t *testing.T) {
	text := "[project]\ntitle = 't'\n" + strings.Repeat("[[project.revision]]\n", 21) + `[[project.revision]]
wall = "Long"
[[project.revision]]
wall = "Long"
at = "2 ft"
[veneer]
gross_width = 24
overlap = 1
length = "10 ft"
[[wall]]
name = "Long"
length = "12 ft"
height = "8 ft"
`
	r, err := Decode("room.toml", []byte(text))
	require.NoError(t, err)
	var marks []string
	for _, v := range r.Project.Revisions {
		marks = append(marks, v.Mark)
	}
	assert.Equal(t, strings.Fields("A B C D E F G H J K L M N P R T U V W Y AA AB AC"), marks)
	last := r.Project.Revisions[20:]
	assert.Equal(t, -1, last[0].Wall)
	assert.Equal(t, 0, last[1].Wall)
	assert.Equal(t, r.Walls[0].Length/2, last[1].At)
	assert.Equal(t, r.Walls[0].Length/6, last[2].At)
}

// A head is level, and its height is taken at the left edge: the floor there is 2 in up, and falls on to nought.
func TestHeadOverASlopingFloor(t *testing.T) {
	r, err := Decode("r.toml", file("[[wall]]\nname = 'Ramp'\nlength = 100\nheight = 110\nfloor = [[0, 0], [40, 2], [80, 0], [100, 0]]\n"+
		"[[wall.opening]]\nkind = 'door'\nfrom_left = 40\nwidth = 40\nheight = 84\n"))
	require.NoError(t, err)
	o := r.Walls[2].Openings[0]
	assert.Equal(t, in("86"), o.Head)
	assert.Zero(t, o.Sill, "down to the lowest of the floor under it")
}

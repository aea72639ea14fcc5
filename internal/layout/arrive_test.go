package layout_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
	"flitchlay/internal/finding"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/room"
	"flitchlay/internal/roomtest"
)

// arriving is a room of two walls round a corner, in both units: 7 ft and 9 ft (2130 and 2740 mm), 8 ft high, an outlet on the second.
// Sheets of 24 1/2 in (622 mm) overlap by 1 in (25 mm), so that the net width is 23 1/2 in (597 mm); trims are 2 in (50 mm).
var arriving = map[string]string{
	"in": `[project]
title = "t"
[veneer]
gross_width = "24 1/2"
overlap = 1
length = "10'"
[[wall]]
name = "West"
length = 84
height = 96
[[wall]]
name = "North"
length = 108
height = 96
box = [ { x = 40, z = 16 } ]
`,
	"mm": `[project]
title = "t"
units = "mm"
[veneer]
gross_width = 622
overlap = 25
length = 3000
[[wall]]
name = "West"
length = 2130
height = 2430
[[wall]]
name = "North"
length = 2740
height = 2430
box = [ { x = 1000, z = 400 } ]
`,
}

// words are the word and the lines of each wall.
func words(p *layout.Plan) string {
	var out []string
	for i := range p.Arrivals {
		a := &p.Arrivals[i]
		text := p.Room.Walls[a.Wall].Name + ": " + a.Word.String()
		for _, x := range a.Lines {
			text += fmt.Sprintf(" %s %s>%s", x.Sheet, p.Style.Format(x.Planned), p.Style.Format(x.Now))
		}
		for _, x := range a.Lacks {
			text += fmt.Sprintf(" %s %s %s", x.Sheet, x.Side, p.Style.Format(x.By))
		}
		if a.Cut != 0 {
			text += fmt.Sprintf(" cut %s", p.Style.Words(a.Cut))
		}
		for _, f := range a.Broken {
			text += " " + string(f.Code)
		}
		out = append(out, text)
	}
	return strings.Join(out, "; ")
}

// Each reading, and what is to be done for it, worked by hand.
func TestReadingsOnArrival(t *testing.T) {
	for _, c := range []struct{ why, unit, reading, want string }{
		{"all as planned", "in", `length = 84
lean = [0, 0]
floor_down = 48
ceiling_up = [[0, 48], [40, 48], [84, 48]]`, "West: hang"},
		{"less than the pages print is as planned", "in", `length = "84 1/40"
lean = "1/40"
ceiling_up = "48 1/40"`, "West: hang"},
		{"trims cover all of their 2 in, at head and foot", "in", `ceiling_up = [50, 48]
floor_down = 50`, "West: hang"},
		{"and 1/16 in more they do not, where it is", "in", `ceiling_up = [[0, 48], [84, "50 1/16"]]`, "West: plan again 4 head 1/16\""},
		{"a floor that is higher lets the sheets end higher", "in", `floor_down = 46`, "West: hang"},
		{"a longer wall: what comes after it is nearer to its corner, and the outlet further right on its sheet", "in", `length = "84 3/16"`,
			`West: hang; North: re-strike 4 5 1/2">5 5/16" 5 2'-5">2'-4 13/16" 6 4'-4 1/2">4'-4 5/16" 7 6'-4">6'-3 13/16" 8 8'-3 1/2">8'-3 5/16" cut 3/16 in`},
		{"so much longer that under 4 in of sheet 4 wrap, and sheet 9 ends before its wall", "in", `length = "85 1/2"`, `West: hang; North: plan again 4 5 1/2">4" 5 2'-5">2'-3 1/2" 6 4'-4 1/2">4'-3" 7 6'-4">6'-2 1/2" 8 8'-3 1/2">8'-2" 9 right 1/2" cut 1 1/2 in return-short`},
		{"shorter by as much as a sheet is trimmed", "in", `length = "83"`, `West: hang; North: re-strike 4 5 1/2">6 1/2" 5 2'-5">2'-6" 6 4'-4 1/2">4'-5 1/2" 7 6'-4">6'-5" 8 8'-3 1/2">8'-4 1/2" cut -1 in`},
		{"the corner at the level line, half way up, is half of its lean to the right", "in", `lean = ["1/2", 0]`, `West: re-strike 1 1'-7">1'-6 3/4" 2 3'-6 1/2">3'-6 1/4" 3 5'-6">5'-5 3/4"`},
		{"the next wall follows at the corner: its left end leans so too", "in", `lean = [0, "1/4"]`, `West: hang; North: re-strike 4 5 1/2">5 3/8" 5 2'-5">2'-4 7/8" 6 4'-4 1/2">4'-4 3/8" 7 6'-4">6'-3 7/8" 8 8'-3 1/2">8'-3 3/8"`},
		{"past a corner whose walls lean differently the edge is askew", "in", `lean = [0, "1/4"]
[[reading]]
wall = "North"
lean = [0, 0]`, `West: hang; North: re-strike 4 0">-1/4"`},
		{"more askew than the overlap of 1 in less 1/2 in allows", "in", `lean = [0, "9/16"]
[[reading]]
wall = "North"
lean = [0, 0]`, `West: plan again skew-eats-overlap; North: re-strike 4 0">-9/16"`},
		{"a wall that is as planned, after one that is not", "in", `length = "83 1/2"
[[reading]]
wall = "North"
length = 108`, `West: hang; North: re-strike 4 5 1/2">6" 5 2'-5">2'-5 1/2" 6 4'-4 1/2">4'-5" 7 6'-4">6'-4 1/2" 8 8'-3 1/2">8'-4" cut -1/2 in`},
		{"all as planned", "mm", `length = 2130
ceiling_up = 1230`, "West: hang"},
		{"half a millimetre is printed", "mm", `length = "2130.5"`, `West: hang; North: re-strike 4 139,5>139 5 736,5>736 6 1333,5>1333 7 1930,5>1930 8 2527,5>2527 cut 0,5 mm`},
		{"a quarter is not", "mm", `length = "2130.2"`, "West: hang"},
		{"trims of 50 mm", "mm", `floor_down = [[1000, 1251]]`, `West: plan again 1 foot 1 2 foot 1 3 foot 1 4 foot 1`},
	} {
		t.Run(c.why+", "+c.unit, func(t *testing.T) {
			p := roomtest.Laid(t, "room.toml", arriving[c.unit]+"[[reading]]\nwall = \"West\"\n"+c.reading)
			assert.Equal(t, c.want, words(p))
		})
	}
}

// round is a room that goes round, by the lengths of its four walls; it closes on the second, 40 in from its left.
func round(lengths ...string) string {
	text := "[project]\ntitle = \"t\"\n[veneer]\ngross_width = \"24 1/2\"\noverlap = 1\nlength = \"10'\"\n[room]\nclosed = true\nclose_at = { wall = \"B\", at = 40 }\n"
	for i, l := range lengths {
		text += fmt.Sprintf("[[wall]]\nname = %q\nlength = %q\nheight = 96\n", "ABCD"[i:i+1], l)
	}
	return text
}

// What is read before the closing seam, after it, and where hangs already something; pins are musts.
func TestReadingsRoundARoom(t *testing.T) {
	hung := strings.Replace(arriving["in"], "[[wall]]\nname = \"West\"", "[[hung]]\nwall = \"West\"\nsheets = \"1-3\"\nedges = [19, \"42 1/2\", 66]\n[[wall]]\nname = \"West\"", 1)
	for _, c := range []struct{ why, text, want string }{
		{"sheets go round from the closing seam: the wall before it has what comes after the longer one", round("100", "80", "100", "80") + "[[reading]]\nwall = \"D\"\nlength = \"80 1/2\"", `A: re-strike 10 10 1/2">10" 11 2'-10">2'-9 1/2" 12 4'-9 1/2">4'-9" 13 6'-9">6'-8 1/2" cut 1/2 in; B: plan again 14 4 1/2">4" 15 2'-4">2'-3 1/2" cut 1/2 in return-short; D: hang`},
		{"a wall that closes the room gives its gap more", round("100", "80", "100", "80") + "[[reading]]\nwall = \"A\"\nlength = \"99 1/2\"", `A: hang; B: re-strike 14 4 1/2">5" 15 2'-4">2'-4 1/2" cut -1/2 in`},
		{"more than a sheet covers", round("105", "80", "100", "80") + "[[reading]]\nwall = \"D\"\nlength = \"80 1/4\"", `A: plan again 10 4 1/2">4 1/4" 11 2'-4">2'-3 3/4" 12 4'-3 1/2">4'-3 1/4" 13 6'-3">6'-2 3/4" 14 8'-2 1/2">8'-2 1/4" cut 1/4 in return-short; B: plan again 15 1'-5">1'-4 3/4" 16 gap 1/4" cut 1/4 in; D: plan again misclosure`},
		{"a room that does not close as read", round("100", "80", "100", "80") + "[[reading]]\nwall = \"D\"\nlength = \"77 1/2\"", `A: re-strike 10 10 1/2">1'-1" 11 2'-10">3'-0 1/2" 12 4'-9 1/2">5'-0" 13 6'-9">6'-11 1/2" cut -2 1/2 in; B: re-strike 14 4 1/2">7" 15 2'-4">2'-6 1/2" cut -2 1/2 in; D: plan again misclosure`},
		{"sheets that hang stay", hung + "[[reading]]\nwall = \"North\"\nlength = \"108 3/4\"", `North: hang`},
		{"and what follows hangs on them", hung + "[[reading]]\nwall = \"West\"\nlength = \"83 3/4\"", `West: hang; North: re-strike 4 5 1/2">5 3/4" 5 2'-5">2'-5 1/4" 6 4'-4 1/2">4'-4 3/4" 7 6'-4">6'-4 1/4" 8 8'-3 1/2">8'-3 3/4" cut -1/4 in`},
		{"a pin that is met no more", arriving["in"] + "pin = [ { at = 5 } ]\n[[reading]]\nwall = \"West\"\nlength = \"84 1/8\"", `West: hang; North: plan again 4 5 1/2">5 3/8" 5 2'-5">2'-4 7/8" 6 4'-4 1/2">4'-4 3/8" 7 6'-4">6'-3 7/8" 8 8'-3 1/2">8'-3 3/8" cut 1/8 in pin-dropped`},
	} {
		t.Run(c.why, func(t *testing.T) { assert.Equal(t, c.want, words(roomtest.Laid(t, "room.toml", c.text))) })
	}
}

// What a page prints of a wall and is read again says hang, whatever the room is.
func TestReadAsPrintedSaysHang(t *testing.T) {
	count := 0
	roomtest.RandomPlans(t, effort.Of(8, 80), func(seed uint64, text string, p *layout.Plan) {
		print := func(l layout.L) string {
			return fmt.Sprintf(`"%.4f mm"`, float64(p.Style.Round(l))/float64(length.Millimetre))
		}
		var b strings.Builder
		b.WriteString(text)
		for i := range p.Room.Walls {
			w := &p.Room.Walls[i]
			if !w.Cover {
				continue
			}
			level := p.Room.Space.LevelLine
			var floor, ceiling []string
			for _, x := range []layout.L{0, w.Length / 3, w.Length / 2, w.Length} {
				at := fmt.Sprintf(`"%.6f mm"`, float64(x)/float64(length.Millimetre))
				floor = append(floor, "["+at+", "+print(level-room.At(w.Floor, x))+"]")
				ceiling = append(ceiling, "["+at+", "+print(room.At(w.Ceiling, x)-level)+"]")
			}
			fmt.Fprintf(&b, "\n[[reading]]\nwall = %q\nlength = %s\nlean = [%s, %s]\nfloor_down = [%s]\nceiling_up = [%s]\n", w.Name, print(w.Length),
				print(w.LeanLeft), print(w.LeanRight), strings.Join(floor, ", "), strings.Join(ceiling, ", "))
			count++
		}
		r, err := room.Decode("room.toml", []byte(b.String()))
		require.NoError(t, err, "seed %d", seed)
		q, err := layout.Lay(r)
		require.NoError(t, err, "seed %d", seed)
		require.NotEmpty(t, q.Arrivals)
		for _, a := range q.Arrivals {
			assert.True(t, a.Read)
			assert.Equal(t, layout.HangIt, a.Word, "seed %d, %s", seed, words(q))
		}
		had := func(p *layout.Plan) (n int) {
			for _, f := range p.Findings {
				if f.Code != finding.HangIt {
					n++
				}
			}
			return n
		}
		assert.Equal(t, had(p), had(q), "seed %d: nothing else is said", seed)
	})
	assert.Positive(t, count)
}

package layout

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/finding"
	"flitchlay/internal/length"
	"flitchlay/internal/room"
)

// head is a room's head with the usual sheet: 24 1/2 in gross, 1 in overlap, 10 ft long: W = 23 1/2, E = 23.
const head = `
[project]
title = "Test room"
[veneer]
gross_width = "24 1/2"
overlap = "1"
length = "10'"
`

// lay decodes and lays out; a room here never has a mistake.
func lay(t *testing.T, text string) *Plan {
	t.Helper()
	r, err := room.Decode("room.toml", []byte(text))
	require.NoError(t, err)
	p, err := Lay(r)
	require.NoError(t, err)
	return p
}

// widths prints the net widths of all sheets in inches.
func widths(p *Plan) string {
	var out []string
	for _, r := range p.Runs {
		for _, s := range r.Sheets {
			out = append(out, p.Style.Inches(s.Width))
		}
	}
	return strings.Join(out, " ")
}

// codes lists the codes of the findings, each once, in order.
func codes(p *Plan) string {
	var out []string
	seen := map[finding.Code]bool{}
	for _, f := range p.Findings {
		if !seen[f.Code] {
			seen[f.Code] = true
			out = append(out, string(f.Code))
		}
	}
	return strings.Join(out, " ")
}

func messages(p *Plan, code finding.Code) []string {
	var out []string
	for _, f := range p.Findings {
		if f.Code == code {
			out = append(out, f.Message)
		}
	}
	return out
}

func wall(rest string) string { return head + "[[wall]]\nname = \"Long\"\n" + rest }

func TestNamedSpans(t *testing.T) {
	for _, c := range []struct{ name, text, widths, codes string }{
		{"a lone sheet that fits by 0: 24 1/2 less twice 1 in of trim", wall(`length = "22 1/2"
height = "8'"`), "22 1/2", "no-flitch"},
		{"a lone sheet that misses by a snap takes a seam", wall(`length = "22 9/16"
height = "8'"`), "11 5/16 11 1/4", "sheet-slim no-flitch nearly"},
		{"two sheets that fit by 0: twice 23", wall(`length = "46"
height = "8'"`), "23 23", "no-flitch"},
		{"the same and a snap: three sheets, the middle one whole", wall(`length = "46 1/16"
height = "8'"`), "11 5/16 23 1/2 11 1/4", "sheet-slim no-flitch nearly"},
		{"a run under least_width owes nothing", wall(`length = "5"
height = "8'"`), "5", "sheet-slim no-flitch"},
		{"against a frame half the trim is kept: 24 1/2 less 1 in", wall(`length = "23 1/2"
height = "8'"
left_end = "frame"
right_end = "frame"`), "23 1/2", "no-flitch"},
		{"a leaning end counts to where it leans", wall(`length = "22 1/4"
height = "8'"
lean = ["-1/8", "1/8"]`), "22 1/2", "no-flitch"},
		{"a pinned middle", wall(`length = "10'"
height = "8'"
[[wall.pin]]
at = "5'"
put = "middle"`), "12 3/4 23 1/2 23 1/2 23 1/2 23 1/2 13 1/4", "no-flitch"},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := lay(t, c.text)
			if strings.Contains(c.name, "pinned middle") {
				assert.Equal(t, 60*length.Inch, midOf(p, 60*length.Inch), "a sheet's middle stands on the pin")
				return
			}
			assert.Equal(t, c.widths, widths(p))
			assert.Equal(t, c.codes, codes(p))
		})
	}
}

// midOf is the middle of the sheet that covers s.
func midOf(p *Plan, s L) L {
	for _, sheet := range p.Runs[0].Sheets {
		if sheet.Left < s && s <= sheet.Right {
			return sheet.Left + sheet.Width.HalfDown()
		}
	}
	return 0
}

func TestPins(t *testing.T) {
	t.Run("of two pins 4 in apart the later one is dropped, and names the first", func(t *testing.T) {
		p := lay(t, wall(`length = "12'"
height = "8'"
[[wall.pin]]
at = "5'"
[[wall.pin]]
at = "5' 4"`))
		require.Len(t, messages(p, finding.PinDropped), 1)
		assert.Equal(t, `the pin for a seam at 5'-4" on wall Long is dropped: it cannot be met together with the pin for a seam at 5'-0" on wall Long`,
			messages(p, finding.PinDropped)[0])
	})
	t.Run("a pin in a keep-clear is dropped", func(t *testing.T) {
		p := lay(t, wall(`length = "12'"
height = "8'"
[[wall.pin]]
at = "6' 6"
[[wall.keep_clear]]
from = "6'"
to = "8'"
why = "bracket"`))
		assert.Equal(t, []string{`the pin for a seam at 6'-6" on wall Long is dropped: a seam there is 6 in inside the stretch kept clear`},
			messages(p, finding.PinDropped))
	})
	t.Run("a pin off the grid is met within half a snap and says so", func(t *testing.T) {
		p := lay(t, wall(`length = "12'"
height = "8'"
[[wall.pin]]
at = "5' 0 1/32"`))
		require.Len(t, messages(p, finding.PinToGrid), 1)
		assert.Contains(t, messages(p, finding.PinToGrid)[0], "1/16 in off")
	})
	t.Run("a pin in a gap stands in no span", func(t *testing.T) {
		p := lay(t, wall(`length = "12'"
height = "8'"
[[wall.opening]]
kind = "door"
from_left = "5'"
width = "3'"
height = "8'"
[[wall.pin]]
at = "6'"`))
		assert.Equal(t, []string{`the pin for a seam at 6'-0" on wall Long is dropped: no covering is there`}, messages(p, finding.PinDropped))
	})
	t.Run("close_at is the closing seam", func(t *testing.T) {
		p := lay(t, closedRoom(`close_at = { wall = "B", at = "5'" }`))
		at := L(-1)
		for _, s := range p.Runs[0].Seams {
			if s.Closing {
				at = s.X
				assert.Equal(t, 1, s.Wall)
			}
		}
		assert.Equal(t, 5*length.Foot, at)
	})
	t.Run("close_at too near a corner is dropped", func(t *testing.T) {
		p := lay(t, closedRoom(`close_at = { wall = "B", at = "2" }`))
		assert.Equal(t, []string{`the pin for the closing seam at 2 in on wall B is dropped: a seam there is 2 in from corner C1 (4 in must wrap)`},
			messages(p, finding.PinDropped))
	})
	t.Run("close_at a corner cuts it: raw ends, no closing seam, place 1 begins there", func(t *testing.T) {
		p := lay(t, closedRoom(`close_at = { corner = "B" }`))
		assert.Empty(t, messages(p, finding.ClosingSeam))
		assert.Equal(t, 22*length.Foot, p.Runs[0].Sheets[0].Left)
	})
}

// closedRoom is 12 ft by 10 ft, 8 ft high.
func closedRoom(space string) string {
	text := head + "[room]\nclosed = true\n" + space + "\n"
	for i, l := range []string{"12'", "10'", "12'", "10'"} {
		text += fmt.Sprintf("[[wall]]\nname = %q\nlength = %q\nheight = \"8'\"\ncorner = \"inside\"\n", string(rune('A'+i)), l)
	}
	return text
}

func TestClosedRemainder(t *testing.T) {
	// 44 ft = 528 in = 22 x 23 1/2 + 11: one sheet is short of its width, and being an end sheet it makes no jump
	p := lay(t, closedRoom(""))
	assert.Len(t, p.Runs[0].Sheets, 23)
	sum := L(0)
	for _, s := range p.Runs[0].Sheets {
		sum += s.Width
	}
	assert.Equal(t, 44*length.Foot, sum)
	assert.EqualValues(t, 0, p.Runs[0].Spans[0].Score.Narrow)
	assert.Equal(t, "no-flitch closing-seam closes-within", strings.ReplaceAll(codes(p), "return-close ", ""))
}

func TestOneSeamColumn(t *testing.T) {
	// four faces of 5 in, girth 20 in: one sheet round. A seam x from one bend stands 5 - x from the next: of twice 4 in it
	// lacks 3 wherever it stands, and of equals the one furthest right wins: 1 in before the last bend.
	text := head + "[room]\nclosed = true\n"
	for i := range 4 {
		text += fmt.Sprintf("[[wall]]\nname = \"Face %d\"\nlength = \"5\"\nheight = \"8'\"\ncorner = \"outside\"\n", i+1)
	}
	p := lay(t, text)
	require.Len(t, p.Runs[0].Sheets, 1)
	assert.Equal(t, 20*length.Inch, p.Runs[0].Sheets[0].Width)
	assert.Len(t, p.Runs[0].Sheets[0].Bends, 4)
	assert.Equal(t, []string{"seam 1 | 1 is 1 in from corner C4; 4 in must wrap past a bend"}, messages(p, finding.ReturnShort))
	assert.Len(t, messages(p, finding.CannotMeet), 1)
	assert.Equal(t, 3*length.Inch, L(p.Runs[0].Spans[0].Score.Bends), "4 - 1")
}

// A wall of 104 in with a door from 59 to 80 and a stretch kept clear behind it. Steady spends a sixth sheet: its one sheet
// under 23 1/2, of 11 1/2, ends over the door, where the jump shows for 96 - 80 = 16 in, less than short_seam. Fewest takes
// five and pays with a narrow sheet of 17, whose jump shows from floor to ceiling. Even shares 104 out over five:
// of its three inner sheets the one that ends at 63, over the door, is no narrow one.
func TestAimsPart(t *testing.T) {
	base := wall(`length = "104"
height = "8'"
[[wall.opening]]
kind = "door"
from_left = 59
width = 21
height = 80
[[wall.keep_clear]]
from = 84
to = 96
`)
	for _, c := range []struct {
		aim, widths    string
		sheets, narrow int64
	}{
		{"steady", "14 23 1/2 23 1/2 11 1/2 23 1/2 8", 6, 0},
		{"fewest", "20 23 1/2 23 1/2 17 20", 5, 1},
		{"even", "21 21 21 21 20", 5, 2},
	} {
		p := lay(t, strings.Replace(base, "[[wall]]", "[rules]\naim = \""+c.aim+"\"\n[[wall]]", 1))
		score := p.Runs[0].Spans[0].Score
		assert.Equal(t, c.widths, widths(p), c.aim)
		assert.Equal(t, c.sheets, score.Sheets, c.aim)
		assert.Equal(t, c.narrow, score.Narrow, c.aim)
		assert.Zero(t, score.Bends+score.Edges, c.aim)
	}
}

func TestNarrowChase(t *testing.T) {
	// a chase 7 in wide between two walls: no seam can stand on its face (twice 4 in), but one sheet goes round both bends
	text := head
	for _, w := range []string{`length = "40"` + "\ncorner = \"outside\"", `length = "7"` + "\ncorner = \"outside\"", `length = "40"`} {
		text += "[[wall]]\n" + w + "\nheight = \"8'\"\n"
	}
	p := lay(t, text)
	assert.Empty(t, messages(p, finding.ReturnShort))
	c := p.Runs[0].Corners
	require.Len(t, c, 2)
	assert.Equal(t, c[0].Sheet, c[1].Sheet)
	assert.GreaterOrEqual(t, c[0].LeftReturn, 4*length.Inch)
}

func TestLimitMetExactly(t *testing.T) {
	// a leg of exactly 3 in is met: a pin holds the seam there
	p := lay(t, wall(`length = "12'"
height = "8'"
[[wall.opening]]
kind = "window"
from_left = "4'"
width = "3'"
sill = "30"
height = "40"
[[wall.pin]]
at = "45"`))
	assert.Empty(t, messages(p, finding.LegThin))
	assert.Empty(t, messages(p, finding.PinDropped))
	assert.Contains(t, strings.Join(messages(p, finding.LegClose), "\n"), "leaves a leg of 3 in beside window W1; better 6 in")
}

func TestHungSheets(t *testing.T) {
	p := lay(t, head+`[[flitch]]
number = "F-1"
sheets = "1-20"
damaged = [4]
[[wall]]
name = "Long"
length = "16'"
height = "8'"
[[hung]]
wall = "Long"
sheet = 1
seam = "20"
[[hung]]
wall = "Long"
sheet = 2
seam = "43 7/16"
`)
	s := p.Runs[0].Sheets
	assert.True(t, s[0].Hung && s[1].Hung && !s[2].Hung)
	assert.Equal(t, 43*length.Inch+7*length.Inch/16, s[1].Right, "hung seams stay exactly")
	numbers := ""
	for _, x := range s {
		numbers += fmt.Sprint(x.Number, " ")
	}
	assert.True(t, strings.HasPrefix(numbers, "1 2 3 5 "), numbers)
	// the grid goes on from the last hung seam
	for _, x := range p.Runs[0].Seams[2:] {
		assert.Zero(t, (x.At-s[1].Right)%(length.Inch/16))
	}
}

func TestHungClosed(t *testing.T) {
	p := lay(t, closedRoom("")+`[[hung]]
wall = "A"
sheet = 1
left_seam = "20"
seam = "43"
`)
	r := p.Runs[0]
	assert.Equal(t, 20*length.Inch, r.Sheets[0].Left)
	assert.Equal(t, 20*length.Inch+44*length.Foot, r.Sheets[len(r.Sheets)-1].Right)
	closing := 0
	for _, s := range r.Seams {
		if s.Closing {
			closing++
			assert.Equal(t, 20*length.Inch, s.At)
		}
	}
	assert.Equal(t, 1, closing)
	assert.EqualValues(t, 0, r.Spans[0].Score.Closing)
}

func TestCourses(t *testing.T) {
	// a wall 12 ft high takes two courses of a 10 ft sheet; the door head is inside the possible range
	p := lay(t, head+`cut = "quarter"
[[flitch]]
number = "F-1"
sheets = "1-20"
[[wall]]
name = "Tall"
length = "8'"
height = "12'"
[[wall.opening]]
kind = "door"
from_left = "3'"
width = "2'"
height = "7'"
`)
	r := p.Runs[0]
	assert.Equal(t, []L{7 * length.Foot}, r.Joints)
	require.NotEmpty(t, r.Sheets)
	for k, s := range r.Sheets {
		assert.Equal(t, k+1, s.Number, "bottom then top")
		assert.Equal(t, k%2+1, s.Course)
		assert.Equal(t, k%2 == 1, s.Turned)
		if s.Course == 1 { // 84 + 2 + 1/2 + 1/2
			assert.Equal(t, 87*length.Inch, s.CutLength)
		} else { // 60 + 2 + 1
			assert.Equal(t, 63*length.Inch, s.CutLength)
		}
	}
	assert.Len(t, messages(p, finding.Joint), 1)
	assert.Len(t, messages(p, finding.Turned), 1)
}

func TestHorizontalGrain(t *testing.T) {
	p := lay(t, head+`grain = "horizontal"
[[wall]]
name = "A"
length = "21'"
height = "8'"
corner = "inside"
[[wall]]
name = "B"
length = "6'"
height = "8'"
`)
	require.Len(t, p.Runs, 2)
	a := p.Runs[0]
	assert.True(t, a.Up)
	// 252 in + 2 in of trim + 4 x 1 in... three pieces of 84 in: 1 + 84 + 1
	assert.Equal(t, []L{84 * length.Inch, 168 * length.Inch}, a.Joints)
	for _, s := range a.Sheets {
		want := 86 * length.Inch
		assert.Equal(t, want, s.CutLength, "84 in, a trim or a match of 1 in on either side")
		assert.Equal(t, s.CutLength, s.Above+s.Below)
	}
	assert.Empty(t, p.Runs[1].Joints)
}

func TestFlitchChange(t *testing.T) {
	// 24 sheets from a flitch of 16 and one of 12: the change goes back to the seam over the door
	p := lay(t, head+`[[flitch]]
number = "F-1"
sheets = "1-16"
[[flitch]]
number = "F-2"
sheets = "1-16"
[[wall]]
name = "Long"
length = "45'"
height = "8'"
[[wall.opening]]
kind = "door"
from_left = "23'"
width = "3' 4"
height = "7'"
`)
	at := ""
	for _, s := range p.Runs[0].Seams {
		if s.FlitchChange {
			at += p.Style.Format(s.At)
			assert.True(t, s.At >= 23*length.Foot && s.At <= 26*length.Foot+4*length.Inch)
		}
	}
	assert.NotEmpty(t, at)
	assert.Empty(t, messages(p, finding.FlitchChangeInField))
	q := lay(t, head+`[[flitch]]
number = "F-1"
sheets = "1-16"
[[flitch]]
number = "F-2"
sheets = "1-16"
[[wall]]
name = "Long"
length = "45'"
height = "8'"
`)
	require.Len(t, messages(q, finding.FlitchChangeInField), 1)
	assert.Equal(t, "flitch F-1 runs out at seam 16 | 1, in the open field of wall Long", messages(q, finding.FlitchChangeInField)[0])
}

// With use_up the same flitch is laid to its last sheet, though the seam over the door would show less.
func TestFlitchUsedUp(t *testing.T) {
	const room = head + `[[flitch]]
number = "F-1"
sheets = "1-16"
use_up = true
[[flitch]]
number = "F-2"
sheets = "1-16"
[[wall]]
name = "Long"
length = "45'"
height = "8'"
[[wall.opening]]
kind = "door"
from_left = "23'"
width = "3' 4"
height = "7'"
`
	p := lay(t, room)
	assert.Len(t, p.Left[0].Laid, 16)
	require.Len(t, messages(p, finding.FlitchChangeInField), 1)
	q := lay(t, strings.Replace(room, "use_up = true", "use_up = false", 1))
	assert.Less(t, len(q.Left[0].Laid), 16)
}

func TestFlitchShort(t *testing.T) {
	p := lay(t, head+`[[flitch]]
number = "F-1"
sheets = "1-6"
[[wall]]
name = "Long"
length = "16'"
height = "8'"
`)
	require.Len(t, messages(p, finding.FlitchShort), 1)
	assert.Equal(t, "9 sheets are laid and 6 can be: 3 short; no layout takes fewer", messages(p, finding.FlitchShort)[0])
	last := p.Runs[0].Sheets[8]
	assert.Equal(t, 0, last.Number)
	var doc map[string]any
	require.NoError(t, json.Unmarshal(p.JSON(), &doc))
	sheet := doc["runs"].([]any)[0].(map[string]any)["sheets"].([]any)[8].(map[string]any)
	assert.Nil(t, sheet["number"])
	assert.Nil(t, sheet["flitch"])
}

// secondRun is two runs of which only the second one hangs so far.
func secondRun(first, second int) string {
	return fmt.Sprintf(`%s[[flitch]]
number = "F-1"
sheets = "1-14"
[[wall]]
name = "A"
length = "90"
height = "8'"
corner = "none"
[[wall]]
name = "B"
length = "90"
height = "8'"
[[hung]]
wall = "B"
sheet = %d
seam = "21 3/8"
[[hung]]
wall = "B"
sheet = %d
seam = "44"
`, head, first, second)
}

func TestSecondRunHangsFirst(t *testing.T) {
	p := lay(t, secondRun(6, 7))
	var numbers []int
	for _, r := range p.Runs {
		for _, s := range r.Sheets {
			numbers = append(numbers, s.Number)
		}
	}
	assert.Equal(t, []int{1, 2, 3, 4, 6, 7, 8, 9}, numbers, "the numbers on the wall stay, those before them stay below")
	r, err := room.Decode("room.toml", []byte(secondRun(3, 4)))
	require.NoError(t, err)
	_, err = Lay(r)
	require.Error(t, err)
	assert.Contains(t, err.Error(), "sheet 3 hangs at place 5, but only 2 sheets with lower numbers can stand before it")
}

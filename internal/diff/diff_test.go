package diff

import (
	"bytes"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/room"
	"flitchlay/internal/roomtest"
)

func planOf(t testing.TB, text string) *layout.Plan {
	t.Helper()
	return roomtest.PlanOf(t, "room.toml", []byte(text))
}

// doorWall is a wall of 15 ft with a door, a box, a flitch and seams pinned at 36 in and at a place of the test's own.
func doorWall(door, pin, height, extra string) string {
	return `[project]
title = "Test room"
[veneer]
gross_width = "24 1/2"
overlap = "1"
length = "10'"
[[flitch]]
number = "F"
sheets = "1-14"
` + extra + `
[[wall]]
name = "Long"
length = "15'"
height = "` + height + `"
[[wall.opening]]
kind = "door"
from_left = "` + door + `"
width = "40"
height = "80"
[[wall.box]]
kind = "outlet"
x = "20"
z = "16"
[[wall.pin]]
at = "36"
[[wall.pin]]
at = "` + pin + `"
`
}

func compare(t testing.TB, old, new string) (*Changes, string) {
	t.Helper()
	d := Compare(ViewOf(planOf(t, old)), ViewOf(planOf(t, new)), length.StyleOf(length.Inches))
	var b bytes.Buffer
	require.NoError(t, d.Write(&b))
	for _, line := range strings.Split(b.String(), "\n") {
		if !strings.HasPrefix(line, "note = ") {
			assert.LessOrEqual(t, len([]rune(line)), 100, line)
		}
	}
	return d, b.String()
}

func TestNothingChanged(t *testing.T) {
	room := doorWall("90", "59 1/2", "8'", "")
	d, text := compare(t, room, room)
	assert.True(t, d.Same())
	assert.Equal(t, "nothing changed\n", text)
	assert.Equal(t, "No change", d.Note())
}

// TestSeamMoved moves the second pin by 1 in to the left: the seam at 59 1/2 is at 58 1/2, and nothing says that another
// came or went.
func TestSeamMoved(t *testing.T) {
	d, text := compare(t, doorWall("90", "59 1/2", "8'", ""), doorWall("90", "58 1/2", "8'", ""))
	moved := false
	for _, s := range d.Seams {
		require.NotNil(t, s.Old)
		require.NotNil(t, s.New)
		if s.Old.X == 119*length.Inch/2 {
			moved = true
			assert.Equal(t, -length.Inch, s.Moved())
		}
	}
	assert.True(t, moved)
	assert.Contains(t, text, `4'-11 1/2"  4'-10 1/2"  1 in left`)
	assert.Contains(t, d.Note(), "moved")
	assert.Empty(t, d.Room)
}

// TestRoomChanged moves the door 1 in within the sheets that it is cut out of, raises the ceiling, moves the box.
func TestRoomChanged(t *testing.T) {
	old := doorWall("90", "59 1/2", "8'", "")
	new := strings.Replace(doorWall("89", "59 1/2", "8' 1", ""), `z = "16"`, `z = "18"`, 1)
	d, text := compare(t, old, new)
	assert.Equal(t, []string{"door D1 on wall Long moved 1 in left", "ceiling of wall Long at 8'-1\", was at 8'-0\"", "outlet E1 on wall Long moved 2 in up"}, d.Room)
	assert.Contains(t, text, `cut 8'-5", was 8'-4" (too short if cut)`)
	assert.Contains(t, text, "[[project.revision]]\nmark = \"A\"\n")
	assert.NotContains(t, text, "shorter")

	d, text = compare(t, old, doorWall("89 1/2", "59 1/2", "8'", ""))
	assert.Equal(t, []string{"door D1 on wall Long moved 1/2 in left"}, d.Room)
	assert.Contains(t, text, "cut out otherwise", "the sheets hang where they hung, with another hole")
}

// TestPlanChanged turns a plan and moves its walls apart: no seam moves, but the drawing is another.
func TestPlanChanged(t *testing.T) {
	of := func(head string) string {
		return strings.Replace(doorWall("90", "59 1/2", "8'", ""), "[[wall]]", "[room]\n"+head+"\n[[wall]]\nname = \"Face\"\nlength = \"4'\"\nheight = \"8'\"\ncorner = \"none\"\n[[wall]]", 1)
	}
	d, _ := compare(t, of("across = \"6'\""), of("across = \"5' 6\"\nname = \"Passage\"\nnorth = 90"))
	assert.Equal(t, []string{"the room is called Passage, was not given", "north is another", "across the open end after wall Face it is 5'-6\", was 6'-0\""}, d.Room)
	assert.Empty(t, d.Seams)
}

// TestSheetDamaged takes sheet 3 out: all after it hang one place further on.
func TestSheetDamaged(t *testing.T) {
	old, new := doorWall("90", "59 1/2", "8'", ""), doorWall("90", "59 1/2", "8'", "damaged = [3]")
	d, text := compare(t, old, new)
	assert.Equal(t, []string{"flitch F: damaged 3, was not given"}, d.Room)
	n := planOf(t, old).Totals.Sheets
	renumbered := d.Renumbered()
	require.Len(t, renumbered, n-2, "all but 1 and 2")
	for i, p := range renumbered {
		assert.Equal(t, i+3, p[0].Number)
		assert.Equal(t, i+4, p[1].Number)
	}
	assert.Empty(t, d.Seams)
	assert.Contains(t, text, "back to stock")
	assert.Contains(t, text, "laid now")
}

// TestMark gives the mark of the revision that the note is for.
func TestMark(t *testing.T) {
	rev := func(marks ...string) []room.Revision {
		var out []room.Revision
		for _, m := range marks {
			out = append(out, room.Revision{Mark: m})
		}
		return out
	}
	for _, c := range []struct {
		name     string
		old, new []room.Revision
		want     string
	}{{"the first", nil, nil, "A"}, {"the next after B", rev("A", "B"), rev("A", "B"), "C"}, {"written down already", rev("A"), rev("A", "B"), "B"}} {
		t.Run(c.name, func(t *testing.T) {
			d := &Changes{Old: &View{Revisions: c.old}, New: &View{Revisions: c.new}}
			assert.Equal(t, c.want, d.Mark())
		})
	}
}

// TestKeptLayoutIsThePlan keeps plans as JSON and compares them with themselves: whatever the format carries is the same.
func TestKeptLayoutIsThePlan(t *testing.T) {
	check := func(name string, p *layout.Plan) {
		text := p.JSON()
		require.True(t, IsKept(text))
		v, err := ReadKept(text)
		require.NoError(t, err, name)
		w := ViewOf(p)
		assert.Equal(t, len(w.Sheets), len(v.Sheets), name)
		d := Compare(v, w, p.Style)
		assert.Empty(t, d.Seams, name)
		assert.Empty(t, d.Sheets, name)
		assert.Empty(t, d.Room, name)
		assert.Equal(t, w.Musts, v.Musts, name)
		assert.InDelta(t, float64(w.Total.NetArea), float64(v.Total.NetArea), 64_000, "nine decimals of a square metre")
		v.Total.NetArea, v.Total.GrossArea = w.Total.NetArea, w.Total.GrossArea
		v.Total.Short = w.Total.Short
		assert.Equal(t, w.Total, v.Total, name)
	}
	for name, p := range roomtest.SamplePlans(t) {
		check(name, p)
	}
	roomtest.RandomPlans(t, 40, func(_ uint64, text string, p *layout.Plan) { check(text, p) })
	_, err := ReadKept([]byte(`{"format": "other/1"}`))
	assert.ErrorContains(t, err, "other/1")
	_, err = ReadKept([]byte(`{`))
	assert.Error(t, err)
	assert.False(t, IsKept([]byte("[project]\n")))
}

// TestPairsMoveLeast pairs rows of seams as a search over all ways to pair does.
func TestPairsMoveLeast(t *testing.T) {
	rnd := rand.New(rand.NewPCG(3, 4))
	row := func() []Seam {
		var out []Seam
		at := L(0)
		for range rnd.IntN(5) {
			at += L(1 + rnd.IntN(40))
			out = append(out, Seam{X: at})
		}
		return out
	}
	const apart = 20
	var least func(a, b []Seam) L
	least = func(a, b []Seam) L {
		if len(a) == 0 || len(b) == 0 {
			return L(len(a)+len(b)) * apart / 2
		}
		return min((a[0].X-b[0].X).Abs()+least(a[1:], b[1:]), apart/2+least(a[1:], b), apart/2+least(a, b[1:]))
	}
	for range 500 {
		a, b := row(), row()
		cost := L(0)
		old, new := 0, 0
		for _, p := range pair(a, b, apart) {
			switch {
			case p.Old == nil:
				cost, new = cost+apart/2, new+1
			case p.New == nil:
				cost, old = cost+apart/2, old+1
			default:
				cost, old, new = cost+p.Moved().Abs(), old+1, new+1
			}
		}
		require.Equal(t, least(a, b), cost)
		require.Equal(t, []int{len(a), len(b)}, []int{old, new})
	}
}

package run

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/length"
	"flitchlay/internal/room"
)

const head = `
[project]
title = "Test room"
[veneer]
gross_width = "24 1/2"
overlap = "1"
length = "10'"
`

func decode(t *testing.T, text string) *room.Room {
	t.Helper()
	r, err := room.Decode("room.toml", []byte(head+text))
	require.NoError(t, err)
	return r
}

func unroll(t *testing.T, text string) []*Run {
	t.Helper()
	runs, err := Unroll(decode(t, text))
	require.NoError(t, err)
	return runs
}

const in = length.Inch

func TestOpenRun(t *testing.T) {
	runs := unroll(t, `
[[wall]]
length = "100"
height = "96"
lean = ["-1/2", "3/8"]
[[wall]]
length = "50"
height = "96"
lean = "1/4"
`)
	require.Len(t, runs, 1)
	r := runs[0]
	assert.Equal(t, 150*in, r.Length)
	require.Len(t, r.Corners, 1)
	c := r.Corners[0]
	assert.Equal(t, "C1", c.Name)
	assert.Equal(t, [2]L{100 * in, 100*in + 3*in/8}, [2]L{c.From, c.To}, "the strip that the corner sweeps")
	assert.True(t, c.Wrapped)
	require.Len(t, r.Spans, 1)
	assert.Equal(t, -in/2, r.Spans[0].L, "a left end that leans out begins there")
	assert.Equal(t, 150*in+in/4, r.Spans[0].R)
}

func TestGapsAndBareStrips(t *testing.T) {
	runs := unroll(t, `
[[wall]]
length = "100"
height = "96"
[[wall.opening]]
kind = "door"
from_left = "70"
width = "30"
height = "96"
[[wall]]
length = "50"
height = "96"
[[wall.bare]]
from = "20"
to = "21"
why = "control joint"
`)
	r := runs[0]
	assert.False(t, r.Corners[0].Wrapped, "a corner at a gap's edge is not wrapped")
	require.Len(t, r.Spans, 3)
	assert.Equal(t, [2]L{0, 70 * in}, [2]L{r.Spans[0].L, r.Spans[0].R})
	assert.Equal(t, [2]L{100 * in, 120 * in}, [2]L{r.Spans[1].L, r.Spans[1].R})
	assert.Equal(t, [2]L{121 * in, 150 * in}, [2]L{r.Spans[2].L, r.Spans[2].R})
	assert.Equal(t, "opening D1", r.Spans[0].RightEnd.Words())
	assert.Equal(t, "the bare strip (control joint)", r.Spans[2].LeftEnd.Words())
}

func TestThroughGapCutsNothing(t *testing.T) {
	runs := unroll(t, `
[[wall]]
length = "100"
height = "96"
[[wall.opening]]
kind = "door"
from_left = "40"
width = "30"
height = "96"
grain = "through"
`)
	assert.Len(t, runs[0].Spans, 1)
}

func TestGapUnderCrown(t *testing.T) {
	// a door of 91 in under a crown of 5 in leaves no covering; behind the crown 5 in of it are left
	text := `
[room]
crown = "5"
[[wall]]
length = "100"
height = "96"
[[wall.opening]]
kind = "door"
from_left = "40"
width = "30"
height = "91"
`
	assert.Len(t, unroll(t, text)[0].Spans, 2)
	assert.Len(t, unroll(t, `
[room]
crown = "5"
behind = "crown"
[[wall]]
length = "100"
height = "96"
[[wall.opening]]
kind = "door"
from_left = "40"
width = "30"
height = "91"
`)[0].Spans, 1)
}

func closed(extra, w1, w2, w3, w4 string) string {
	text := "[room]\nclosed = true\n" + extra
	for i, w := range []string{w1, w2, w3, w4} {
		text += "[[wall]]\nlength = \"" + []string{"144", "120"}[i%2] + "\"\nheight = \"96\"\ncorner = \"inside\"\n" + w
	}
	return text
}

func TestClosedRun(t *testing.T) {
	r := unroll(t, closed("", "", "", "", ""))[0]
	assert.True(t, r.Closed)
	assert.Equal(t, 528*in, r.Length)
	require.Len(t, r.Corners, 4)
	assert.Equal(t, "C4", r.Corners[0].Name, "the corner at s = 0 is the last wall's")
	assert.Equal(t, []Span{{L: 0, R: 528 * in, Closed: true}}, r.Spans)
	assert.Equal(t, 2*in, r.Distance(1*in, 527*in), "the shorter way round")
	assert.Equal(t, 3*in, r.DistanceTo(525*in, 0, 1*in))
	assert.Equal(t, L(0), r.DistanceTo(0, 527*in, 529*in))
}

func TestClosedRunCut(t *testing.T) {
	door := "[[wall.opening]]\nkind = \"door\"\nfrom_left = \"40\"\nwidth = \"30\"\nheight = \"96\"\n"
	r := unroll(t, closed("", "", door, "", ""))[0]
	require.Len(t, r.Spans, 1)
	assert.Equal(t, [2]L{214 * in, 712 * in}, [2]L{r.Spans[0].L, r.Spans[0].R}, "round the room from one side of the door to the other")
	r = unroll(t, closed("close_at = { corner = \"Wall 3\" }\n", "", "", "", ""))[0]
	require.Len(t, r.Spans, 1)
	assert.Equal(t, 408*in, r.Spans[0].L)
	r = unroll(t, closed("", "", "", "wrap = false\n", door))[0]
	require.Len(t, r.Spans, 2)
	assert.Equal(t, [2]L{408 * in, 448 * in}, [2]L{r.Spans[0].L, r.Spans[0].R})
	assert.Equal(t, [2]L{478 * in, 936 * in}, [2]L{r.Spans[1].L, r.Spans[1].R})
}

// close_at with a corner of a run that goes round and has a gap: two spans, the first from the corner on. Of a run with two
// ends: the corner is cut, and the first span is the one at the left end.
func TestCloseAtCornerOfARunThatEndsElsewhere(t *testing.T) {
	door := "[[wall.opening]]\nkind = \"door\"\nfrom_left = \"40\"\nwidth = \"30\"\nheight = \"96\"\n"
	at := "close_at = { corner = \"Wall 2\" }\n"
	r := unroll(t, closed(at, "", "", "", door))[0]
	require.Len(t, r.Spans, 2)
	assert.Equal(t, [2]L{264 * in, 448 * in}, [2]L{r.Spans[0].L, r.Spans[0].R}, "from the corner to the door")
	assert.Equal(t, [2]L{478 * in, 792 * in}, [2]L{r.Spans[1].L, r.Spans[1].R}, "from the door round to the corner")
	r = unroll(t, closed(at, "", "", "", "cover = false\n"))[0]
	require.Len(t, r.Spans, 2)
	assert.Equal(t, [2]L{0, 264 * in}, [2]L{r.Spans[0].L, r.Spans[0].R})
	assert.Equal(t, [2]L{264 * in, 408 * in}, [2]L{r.Spans[1].L, r.Spans[1].R})
}

func TestBareWallEndsTheRun(t *testing.T) {
	runs := unroll(t, closed("", "", "cover = false\n", "", ""))
	require.Len(t, runs, 1)
	assert.False(t, runs[0].Closed)
	walls := []int{}
	for _, st := range runs[0].Walls {
		walls = append(walls, st.Wall)
	}
	assert.Equal(t, []int{2, 3, 0}, walls)
	assert.Equal(t, "inside corner C1", runs[0].Spans[0].RightEnd.Words())
}

// Bullnose of 3/4 in at a square corner: the girth is shorter than to the sharp corner by (2 - pi/2) R = 0.322 in.
// Source: plane geometry.
func TestEasedCorner(t *testing.T) {
	r := unroll(t, `
[[wall]]
length = "100"
height = "96"
corner = "outside"
radius = "3/4"
[[wall]]
length = "50"
height = "96"
`)[0]
	assert.InDelta(t, 150-0.3219, float64(r.Length)/float64(in), 1e-4)
	c := r.Corners[0]
	assert.InDelta(t, 0.75*math.Pi/2, float64(c.To-c.From)/float64(in), 1e-5, "from tangent to tangent")
	st := r.Walls[1]
	assert.InDelta(t, float64(c.To)/float64(in), float64(st.Shift)/float64(in)+0.75, 1e-5, "x = 3/4 in is the tangent point of the next wall")
}

// A closed traverse with a gap: three sides of a 3-4-5 triangle whose last side is measured 1 in short; departures and
// latitudes by hand: the end lies 1 in before the start along the last side, which runs back at 233.13 degrees.
// Source: latitudes and departures as in any text on plane surveying; the triangle is our own.
func TestTraverse(t *testing.T) {
	r := decode(t, `
[room]
closed = true
[[wall]]
length = "36"
height = "96"
corner = "inside"
angle = 90
[[wall]]
length = "48"
height = "96"
corner = "inside"
angle = 143.13010235415598
[[wall]]
length = "59"
height = "96"
corner = "inside"
angle = 126.86989764584402
`)
	m := Traverse(r)
	assert.Equal(t, 1.0, math.Round(float64(m.Gap)/float64(in)*1e6)/1e6)
	assert.InDelta(t, 0, m.AngleSum, 1e-9)
	// the last side runs to (0,0) along the heading 233.13; 1 in short of it the end lies at heading 53.13 from the start
	assert.InDelta(t, 53.13010235, m.Direction, 1e-6)
}

// Two sides of a corridor face each other across its open end: walls 10 ft and 8 ft long, 6 ft apart, then by hand. Without across the
// second goes straight on.
func TestAcross(t *testing.T) {
	corridor := func(across string) []Side {
		return Sides(decode(t, `
[room]
`+across+`
[[wall]]
length = "10'"
height = "8'"
corner = "none"
[[wall]]
length = "8'"
height = "8'"
corner = "none"
[[wall]]
length = "3'"
height = "8'"
`))
	}
	ft := float64(12 * in)
	for why, c := range map[string]struct {
		across string
		want   []Side
	}{
		"straight on":          {"", []Side{{0, 0, 10, 0}, {10, 0, 18, 0}, {18, 0, 21, 0}}},
		"the same at all ends": {`across = "6'"`, []Side{{0, 0, 10, 0}, {10, 6, 2, 6}, {2, 0, 5, 0}}},
		"each its own":         {`across = ["6'", 0]`, []Side{{0, 0, 10, 0}, {10, 6, 2, 6}, {2, 6, -1, 6}}},
	} {
		got := corridor(c.across)
		require.Len(t, got, 3, why)
		for i, w := range c.want {
			assert.InDeltaSlice(t, []float64{w.X0 * ft, w.Y0 * ft, w.X1 * ft, w.Y1 * ft}, []float64{got[i].X0, got[i].Y0, got[i].X1, got[i].Y1}, 1, "%s: wall %d", why, i+1)
		}
	}
}

func TestSpanMistakes(t *testing.T) {
	_, err := Unroll(decode(t, `
[[wall]]
length = "100"
height = "96"
[[wall.bare]]
from = "1/32"
to = "4"
`))
	require.Error(t, err)
	assert.Contains(t, err.Error(), "room.toml:9:3: only 1/32 in")
	assert.Contains(t, err.Error(), "less than one snap")
	_, err = Unroll(decode(t, `
[rules]
least_width = "23 1/4"
[[wall]]
length = "100"
height = "96"
`))
	require.Error(t, err)
	assert.Contains(t, err.Error(), "covers at most 23 in, less than least_width (23 1/4 in)")
}

package recheck

import (
	"fmt"
	"math/rand/v2"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
	"flitchlay/internal/room"
)

// A room says the same in inches and in strings of millimetres: the whole layout is the same, and so is every message.
func TestInchesAndMillimetres(t *testing.T) {
	t.Parallel()
	first, count := effort.Seeds(t, "FLITCHLAY_ROOMS", 20, effort.Waited(300, 500))
	compared := 0
	for seed := first; seed < first+count; seed++ {
		inches, mm := random(seed, inInches, false), random(seed, inMM, false)
		if _, err := room.Decode("room.toml", []byte(inches)); err != nil {
			_, err = room.Decode("room.toml", []byte(mm))
			assert.Error(t, err, "seed %d: what is a mistake in inches is one in millimetres", seed)
			continue
		}
		compared++
		a, status := lay(t, inches)
		b, other := lay(t, mm)
		require.Equal(t, status, other)
		require.Equal(t, a, b, "seed %d:\n%s", seed, mm)
	}
	require.Greater(t, compared, count/2)
}

// In a metric room with every rule written out, on a grid of as many times 1.5875 mm (1/16 in), the seams are the same.
//
// Seen heights are counted up in steps of 300 mm there, in place of feet. Heights of whole feet, n of them, count as n + 1
// then (up to 60 ft), so that one seam ranks against another as before, and so do sums over all seams; but a jump of two
// sheets may not rank against one of a single sheet as before, so layouts with two such sheets are left out.
func TestMetricRoom(t *testing.T) {
	t.Parallel()
	first, count := effort.Seeds(t, "FLITCHLAY_ROOMS", 20, effort.Waited(360, 600))
	compared, jumps := 0, 0
	for seed := first; seed < first+count; seed++ {
		inches, mm := random(seed, inInches, true), random(seed, metric, true)
		if _, err := room.Decode("room.toml", []byte(inches)); err != nil {
			continue
		}
		a, status := lay(t, inches)
		b, other := lay(t, mm)
		require.Equal(t, status > 1, other > 1, "seed %d", seed)
		if status > 1 {
			continue
		}
		if jumping(t, inches, a) > 1 || jumping(t, mm, b) > 1 {
			jumps++
			continue
		}
		compared++
		require.Equal(t, seamsOf(a), seamsOf(b), "seed %d:\n%s", seed, mm)
	}
	t.Logf("%d compared, %d with jumps left out", compared, jumps)
	require.Greater(t, compared, count/5)
}

// jumping counts the sheets of a layout that are neither first nor last of their span and a snap or more under the net
// width.
func jumping(t testing.TB, text string, p *printed) int {
	r, err := room.Decode("room.toml", []byte(text))
	require.NoError(t, err)
	snap := int64(r.Rules.Snap)
	net := int64(r.Veneer.GrossWidth-r.Veneer.Overlap) / snap * snap
	count := 0
	for _, run := range p.Runs {
		closing := map[int]bool{}
		for _, s := range run.Seams {
			if s.Closing {
				closing[s.LeftSheet], closing[s.RightSheet] = true, true
			}
		}
		inner := func(place int) bool { // seams on both sides, and not beside the closing one
			left, right := false, false
			for _, s := range run.Seams {
				left, right = left || s.RightSheet == place, right || s.LeftSheet == place
			}
			return left && right && !closing[place]
		}
		for k, s := range run.Sheets {
			if (k == 0 || run.Sheets[k-1].Place != s.Place) && inner(s.Place) && units(t, s.Width) <= net-snap {
				count++
			}
		}
	}
	return count
}

// seamsOf are the places of all seams.
func seamsOf(p *printed) []string {
	var out []string
	for _, r := range p.Runs {
		for _, s := range r.Seams {
			out = append(out, fmt.Sprintf("%s %s %v", r.Name, s.At, s.Closing))
		}
	}
	return out
}

// mirror is a room whose lengths are all on the grid, and the same seen in a mirror.
type mirror struct {
	walls  []mirrorWall
	closed bool
	aim    string
	head   string
}

type mirrorWall struct {
	long, high        int // inches
	corner            string
	wrap              bool
	leanLeft, leanEnd int // halves of an inch
	objects           []mirrorObject
	leftEnd, rightEnd string
	main              bool
}

// mirrorObject is something from..to on a wall.
type mirrorObject struct {
	from, to int
	text     string // with the place as %s and %s
}

// seen is the room in a mirror: the walls the other way round, each turned left to right.
func (m mirror) seen() mirror {
	out := mirror{closed: m.closed, aim: m.aim, head: m.head}
	n := len(m.walls)
	for i := n - 1; i >= 0; i-- {
		w := m.walls[i]
		v := w
		v.leanLeft, v.leanEnd = -w.leanEnd, -w.leanLeft
		v.leftEnd, v.rightEnd = w.rightEnd, w.leftEnd
		// the corner at its right end is the one at its left end in the room
		before := m.walls[(i+n-1)%n]
		v.corner, v.wrap = before.corner, before.wrap
		v.objects = nil
		for k := len(w.objects) - 1; k >= 0; k-- {
			o := w.objects[k]
			v.objects = append(v.objects, mirrorObject{w.long - o.to, w.long - o.from, o.text})
		}
		out.walls = append(out.walls, v)
	}
	if !m.closed {
		out.walls[n-1].corner, out.walls[n-1].wrap = "none", true
	}
	return out
}

// file writes the room file.
func (m mirror) file() string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s[rules]\naim = %q\nsnap = \"1/2\"\n[room]\nclosed = %v\n", m.head, m.aim, m.closed)
	for i, w := range m.walls {
		fmt.Fprintf(&b, "[[wall]]\nname = \"Wall %d\"\nlength = %d\nheight = %d\ncorner = %q\nlean = [\"%d/2\", \"%d/2\"]\nmain = %v\n",
			i+1, w.long, w.high, w.corner, w.leanLeft, w.leanEnd, w.main)
		if !w.wrap {
			b.WriteString("wrap = false\n")
		}
		if w.leftEnd != "" {
			fmt.Fprintf(&b, "left_end = %q\n", w.leftEnd)
		}
		if w.rightEnd != "" {
			fmt.Fprintf(&b, "right_end = %q\n", w.rightEnd)
		}
		for _, o := range w.objects {
			fmt.Fprintf(&b, o.text, o.from, o.to-o.from, o.to)
		}
	}
	return b.String()
}

// The texts of objects take from, width and to; %[n]d picks one.
const (
	mirrorWindow = "[[wall.opening]]\nkind = \"window\"\nfrom_left = %[1]d\nwidth = %[2]d\nsill = 30\nheight = 40\n"
	mirrorJamb   = "[[wall.opening]]\nkind = \"window\"\nfrom_left = %[1]d\nwidth = %[2]d\nsill = 30\nheight = 40\nreveal = 3\nwrap_reveal = true\n"
	mirrorGap    = "[[wall.opening]]\nkind = \"door\"\nfrom_left = %[1]d\nwidth = %[2]d\nheight = 96\n"
	mirrorGoesOn = "[[wall.opening]]\nkind = \"door\"\nfrom_left = %[1]d\nwidth = %[2]d\nheight = 96\ngrain = \"through\"\n"
	mirrorBare   = "[[wall.bare]]\nfrom = %[1]d\nto = %[3]d\n"
	mirrorKeep   = "[[wall.keep_clear]]\nfrom = %[1]d\nto = %[3]d\n"
)

// randomMirror makes such a room. Where narrow sheets and jumps count, which are told at a sheet's right seam, nothing
// hides a part of a seam: there left and right would not be alike.
func randomMirror(rng *rand.Rand) mirror {
	m := mirror{closed: rng.IntN(2) == 0, aim: []string{"steady", "fewest", "even"}[rng.IntN(3)]}
	m.head = fmt.Sprintf("[project]\ntitle = \"Mirror\"\n[veneer]\ngross_width = %d\noverlap = 1\nlength = 120\n", 14+rng.IntN(12))
	objects := []string{mirrorBare, mirrorKeep, mirrorGap}
	if m.aim == "even" {
		objects = append(objects, mirrorWindow, mirrorWindow, mirrorJamb, mirrorGoesOn)
	}
	n := 1 + rng.IntN(4)
	if m.closed {
		n = 3 + rng.IntN(3)
	}
	for i := range n {
		w := mirrorWall{long: 30 + rng.IntN(100), high: 96, corner: []string{"inside", "inside", "outside", "straight"}[rng.IntN(4)], wrap: true}
		w.leanLeft, w.leanEnd = rng.IntN(3)-1, rng.IntN(3)-1
		if rng.IntN(8) == 0 && w.corner != "straight" {
			w.wrap = false
		}
		if rng.IntN(4) == 0 {
			w.leftEnd = "frame"
		}
		if rng.IntN(4) == 0 {
			w.rightEnd = "trim"
		}
		if i == n-1 && !m.closed {
			w.corner, w.wrap = "none", true
		}
		for at := rng.IntN(40); ; {
			to := at + 4 + rng.IntN(30)
			if to > w.long {
				break
			}
			w.objects = append(w.objects, mirrorObject{at, to, objects[rng.IntN(len(objects))]})
			at = to + 1 + rng.IntN(30)
		}
		m.walls = append(m.walls, w)
	}
	if m.closed {
		// corners lean as one: what is the right lean of a wall is the left lean of the next
		for i := range m.walls {
			m.walls[(i+1)%n].leanLeft = m.walls[i].leanEnd
		}
	} else {
		for i := range m.walls[1:] {
			m.walls[i+1].leanLeft = m.walls[i].leanEnd
		}
	}
	return m
}

// A room and its mirror image, all lengths on the grid, have layouts of the same score.
func TestMirrored(t *testing.T) {
	t.Parallel()
	first, count := effort.Seeds(t, "FLITCHLAY_ROOMS", 40, effort.Waited(900, 1500))
	compared := 0
	for seed := first; seed < first+count; seed++ {
		m := randomMirror(rand.New(rand.NewPCG(uint64(seed), 11)))
		text, turned := m.file(), m.seen().file()
		if _, err := room.Decode("room.toml", []byte(text)); err != nil {
			continue
		}
		compared++
		a, status := lay(t, text)
		b, other := lay(t, turned)
		require.Equal(t, status, other, "seed %d:\n%s\n%s", seed, text, turned)
		if status > 1 {
			continue
		}
		require.Equal(t, scores(t, a), scores(t, b), "seed %d:\n%s\n%s", seed, text, turned)
	}
	require.Greater(t, compared, count/2)
}

// scores adds the scores of all spans, item by item.
func scores(t testing.TB, p *printed) map[string]int64 {
	sum := map[string]int64{}
	for _, r := range p.Runs {
		for _, sp := range r.Spans {
			s := sp.Score
			sum["bends"] += units(t, s.Bends)
			sum["edges"] += units(t, s.Edges)
			sum["closing"] += s.Closing
			sum["sheets"] += s.Sheets
			sum["should"] += units(t, s.Should)
			sum["seen"] += s.Seen
			if p.Aim != "even" {
				sum["narrow_main"] += s.NarrowMain
				sum["narrow"] += s.Narrow
				sum["narrow_jump"] += s.NarrowJump
				sum["sliver"] += units(t, s.Sliver)
				sum["jump"] += s.Jump
				sum["difference"] += units(t, s.Difference)
			}
		}
	}
	return sum
}

// What is said about a room is said of that room: no message stands in the findings of two rooms.
func TestMessagesAreOfOneRoom(t *testing.T) {
	said := map[string]string{}
	for _, name := range roomFiles(t) {
		text, err := os.ReadFile(name)
		require.NoError(t, err)
		p, _ := lay(t, string(text))
		for _, f := range p.Findings {
			if other, ok := said[f.Message]; ok && other != name {
				assert.Fail(t, "a message of two rooms", "%s and %s: %s", other, name, f.Message)
			}
			said[f.Message] = name
		}
	}
	require.Greater(t, len(said), 50)
}

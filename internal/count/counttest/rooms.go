// Package counttest has rooms for the tests of what counts and compares plans: every sample and starter as laid out, and
// rooms made at random.
//
// Coordinates and units: those of package layout. Order: random rooms by their seed.
//
// Not here: what is held of them.
package counttest

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"flitchlay/internal/layout"
	"flitchlay/internal/room"
)

// Samples lays out every sample and starter room.
func Samples(t testing.TB) map[string]*layout.Plan {
	t.Helper()
	out := map[string]*layout.Plan{}
	for _, pattern := range []string{"../../samples/*.toml", "../../templates/rooms/*.toml"} {
		files, err := filepath.Glob(pattern)
		hold(t, err)
		if len(files) == 0 {
			t.Fatalf("no room in %s", pattern)
		}
		for _, f := range files {
			text, err := os.ReadFile(f)
			hold(t, err)
			r, err := room.Decode(f, text)
			hold(t, err)
			p, err := layout.Lay(r)
			hold(t, err)
			out[f] = p
		}
	}
	return out
}

// randomRoom makes the text of a room: open or closed, inches or millimetres, with slopes, steps, leans, rounded
// corners, openings, gaps, bare strips, boxes, courses, level grain, hung sheets and flitches. Not every text is a room
// without a mistake.
func randomRoom(rnd *rand.Rand) string {
	var b strings.Builder
	metric := rnd.IntN(4) == 0
	q := func(f float64) string { // inches, to 1/16, or their like in millimetres
		if metric {
			return fmt.Sprintf("%d", int(f*25.4+0.5))
		}
		return fmt.Sprintf("\"%d %d/16\"", int(f), int(f*16)%16)
	}
	units := "in"
	if metric {
		units = "mm"
	}
	fmt.Fprintf(&b, "[project]\ntitle = \"Random\"\nunits = %q\n", units)
	level := rnd.IntN(12) == 0
	long := []float64{96, 108, 120}[rnd.IntN(3)]
	grain := "vertical"
	if level {
		grain = "horizontal"
	}
	fmt.Fprintf(&b, "[veneer]\ngross_width = %s\noverlap = %s\nlength = %s\ngrain = %q\ncut = %q\n", q(18+float64(rnd.IntN(16))/2), q(1+float64(rnd.IntN(3))/2),
		q(long), grain, []string{"plain", "quarter", "rift"}[rnd.IntN(3)])
	if n := rnd.IntN(4); n > 0 {
		for i := range n {
			fmt.Fprintf(&b, "[[flitch]]\nnumber = \"F-%d\"\nsheets = \"1-%d\"\nspare = %d\n", i+1, 10+rnd.IntN(40), rnd.IntN(4))
			if rnd.IntN(3) == 0 {
				fmt.Fprintf(&b, "damaged = [%d, %d]\n", 1+rnd.IntN(4), 5+rnd.IntN(5))
			}
		}
	}
	fmt.Fprintf(&b, "[rules]\naim = %q\nupper = %q\n", []string{"steady", "fewest", "even"}[rnd.IntN(3)], []string{"auto", "upright", "turned"}[rnd.IntN(3)])
	if rnd.IntN(3) == 0 {
		fmt.Fprintf(&b, "snap = %s\nedge_trim = %s\n", q(float64(1+rnd.IntN(8))/8), q(float64(rnd.IntN(5))/2))
	}
	closed := rnd.IntN(2) == 0
	fmt.Fprintf(&b, "[room]\nclosed = %t\nbase = %s\ncrown = %s\nbehind = %q\n", closed, q(float64(rnd.IntN(12))/2), q(float64(rnd.IntN(6))/2),
		[]string{"none", "base", "crown", "both"}[rnd.IntN(4)])
	if rnd.IntN(2) == 0 {
		b.WriteString("[paste]\ncoverage = \"150 sq ft/gal\"\n")
	}
	walls := 1 + rnd.IntN(4)
	if closed {
		walls = 4
	}
	lengths := make([]float64, walls)
	for i := range lengths {
		lengths[i] = 40 + float64(rnd.IntN(16*160))/16
		if closed && i > 1 {
			lengths[i] = lengths[i-2]
		}
	}
	hung := !closed && rnd.IntN(5) == 0
	high := 90 + float64(rnd.IntN(80))/2
	for i, wide := range lengths {
		fmt.Fprintf(&b, "[[wall]]\nlength = %s\n", q(wide))
		other := high + float64(rnd.IntN(40))/16
		switch rnd.IntN(6) {
		case 0:
			fmt.Fprintf(&b, "height = [%s, %s]\n", q(high), q(other))
		case 1:
			fmt.Fprintf(&b, "height = [[0, %s], [%s, %s], [%s, %s], [%s, %s]]\n", q(high), q(wide/2), q(other), q(wide/2), q(high-7), q(wide), q(high))
		default:
			fmt.Fprintf(&b, "height = %s\n", q(high))
		}
		if rnd.IntN(5) == 0 {
			fmt.Fprintf(&b, "floor = [0, %s]\n", q(float64(rnd.IntN(16))/16))
		}
		if rnd.IntN(4) == 0 {
			fmt.Fprintf(&b, "lean = [%s, %s]\n", q(float64(rnd.IntN(8))/16), q(float64(rnd.IntN(8))/16))
		}
		if !closed && i < walls-1 && rnd.IntN(4) == 0 {
			b.WriteString("corner = \"outside\"\n")
		}
		if rnd.IntN(6) == 0 && (i < walls-1 || closed) {
			fmt.Fprintf(&b, "radius = %s\n", q(float64(rnd.IntN(5))/2))
		}
		if rnd.IntN(8) == 0 && (i < walls-1 || closed) {
			b.WriteString("wrap = false\n")
		}
		if rnd.IntN(4) == 0 {
			fmt.Fprintf(&b, "right_end = %q\n", []string{"casing", "frame", "trim", "free"}[rnd.IntN(4)])
		}
		at := 4.0
		if i == 0 && hung {
			at = wide // what hangs already hangs on a bare stretch of wall
		}
		for range rnd.IntN(3) {
			w := 12 + float64(rnd.IntN(60))
			from := at + float64(rnd.IntN(16*30))/16
			if from+w > wide-2 {
				break
			}
			at = from + w + 3
			switch rnd.IntN(5) {
			case 0:
				fmt.Fprintf(&b, "[[wall.opening]]\nkind = \"door\"\nfrom_left = %s\nwidth = %s\nheight = %s\n", q(from), q(w), q(80))
			case 1:
				fmt.Fprintf(&b, "[[wall.opening]]\nkind = \"cased opening\"\nfrom_left = %s\nwidth = %s\nheight = %s\ngrain = %q\n", q(from), q(w), q(high),
					[]string{"skip", "through"}[rnd.IntN(2)])
			case 2:
				fmt.Fprintf(&b, "[[wall.bare]]\nfrom = %s\nto = %s\n", q(from), q(from+w))
			default:
				fmt.Fprintf(&b, "[[wall.opening]]\nkind = \"window\"\nfrom_left = %s\nwidth = %s\nsill = %s\nheight = %s\nreveal = %s\nwrap_reveal = %t\n", q(from), q(w),
					q(30), q(40), q(5), rnd.IntN(3) == 0 && w > 14 && !level)
			}
		}
		for range rnd.IntN(3) {
			fmt.Fprintf(&b, "[[wall.box]]\nkind = %q\nx = %s\nz = %s\n", []string{"outlet", "switch", "alarm"}[rnd.IntN(3)], q(4+rnd.Float64()*(wide-8)), q(16+float64(rnd.IntN(60))))
		}
	}
	if hung {
		fmt.Fprintf(&b, "[[hung]]\nwall = \"Wall 1\"\nsheet = 1\nfrom = 0\nseam = %s\n", q(15+float64(rnd.IntN(32))/16))
	}
	return b.String()
}

// RandomPlans lays out n random rooms; texts that are no rooms do not count.
func RandomPlans(t testing.TB, n int, f func(seed uint64, text string, p *layout.Plan)) {
	t.Helper()
	for seed, found := uint64(1), 0; found < n; seed++ {
		if seed >= uint64(20*n) {
			t.Fatal("most texts are no rooms")
		}
		text := randomRoom(rand.New(rand.NewPCG(seed, 5)))
		r, err := room.Decode("room.toml", []byte(text))
		if err != nil {
			continue
		}
		p, err := layout.Lay(r)
		if err != nil {
			continue
		}
		found++
		f(seed, text, p)
	}
}

func hold(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

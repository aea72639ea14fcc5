package layout

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// heavy is a kind of room that takes long for the size of its text: as long as a room may be, or as full as 64 kB of text can say.
type heavy struct {
	name              string
	closed            bool
	feet              int    // of all walls together
	net, snap         string // of a sheet, and of the grid
	windows           bool
	pins, keeps       int // on every wall
	narrowest, widest int // walls, in inches
}

// mostText is the text of a room that check has to answer at once.
const mostText = 64_000

// longest is how many feet of walls a room may have: 370 m.
const longest = 1213

var heavyRooms = []heavy{
	{name: "closed pins", closed: true, feet: 1200, pins: 10, narrowest: 150, widest: 250},
	{name: "closed pins windows", closed: true, feet: 1200, pins: 4, windows: true, narrowest: 120, widest: 300},
	{name: "open pins windows", feet: 1200, pins: 4, windows: true, narrowest: 120, widest: 300},
	{name: "open keeps pins", feet: 1200, pins: 5, keeps: 5, narrowest: 150, widest: 250},
	{name: "closed keeps pins", closed: true, feet: 1200, pins: 5, keeps: 5, narrowest: 150, widest: 250},
	{name: "closed keeps", closed: true, feet: 1200, keeps: 6, narrowest: 150, widest: 250},
	{name: "open keeps", feet: 1200, keeps: 6, narrowest: 150, widest: 250},
	{name: "closed bare", closed: true, feet: longest, narrowest: 200, widest: 400},
	{name: "closed windows", closed: true, feet: longest, windows: true, narrowest: 200, widest: 400},
	{name: "open fine", feet: longest, snap: "1/32", windows: true, narrowest: 200, widest: 400},
	{name: "closed fine", closed: true, feet: longest, snap: "1/32", windows: true, narrowest: 200, widest: 400},
	{name: "closed fine bare", closed: true, feet: longest, snap: "1/32", narrowest: 200, widest: 400},
	{name: "closed fine pins", closed: true, feet: longest, snap: "1/32", pins: 6, narrowest: 150, widest: 250},
	{name: "closed fine keeps", closed: true, feet: longest, snap: "1/32", keeps: 6, narrowest: 150, widest: 250},
	{name: "closed fine keeps pins", closed: true, feet: longest, snap: "1/32", keeps: 5, pins: 5, narrowest: 150, widest: 250},
	{name: "open fine keeps pins", feet: longest, snap: "1/32", keeps: 5, pins: 5, narrowest: 150, widest: 250},
	{name: "closed slats", closed: true, feet: longest, net: "2", narrowest: 200, widest: 400},
	{name: "closed slats windows", closed: true, feet: longest, net: "2", windows: true, narrowest: 200, widest: 400},
	{name: "open slats", feet: longest, net: "2", windows: true, narrowest: 200, widest: 400},
	{name: "closed slats pins", closed: true, feet: longest, net: "2", pins: 5, keeps: 5, narrowest: 150, widest: 250},
}

// text is a room file of the kind.
func (h heavy) text(aim string) string {
	rnd := rand.New(rand.NewPCG(17, 4))
	net, snap, least := h.net, h.snap, ""
	if net == "" {
		net = "24"
	} else {
		least = "least_width = \"1\"\nprefer_width = \"1\"\nleg = \"1/2\"\nprefer_leg = \"1/2\"\ncorner_return = \"1/2\"\nprefer_return = \"1/2\"\n" +
			"opening_clear = \"1/4\"\nprefer_clear = \"1/4\"\n"
	}
	if snap == "" {
		snap = "1/16"
	}
	var b strings.Builder
	fmt.Fprintf(&b, "[project]\ntitle = \"Heavy\"\n[veneer]\ngross_width = \"%s 1/2\"\noverlap = \"1/2\"\nlength = \"10'\"\n[rules]\nsnap = %q\naim = %q\n%s[room]\nclosed = %v\n",
		net, snap, aim, least, h.closed)
	room := b.String()
	for left := 12 * h.feet; left >= h.narrowest; {
		b.Reset()
		long := min(left, h.narrowest+rnd.IntN(h.widest-h.narrowest))
		left -= long
		fmt.Fprintf(&b, "[[wall]]\nlength = %d\nheight = 96\ncorner = \"inside\"\n", long)
		for x := 14 + rnd.IntN(20); h.windows && x+40 < long-14; x += 60 + rnd.IntN(60) {
			fmt.Fprintf(&b, "[[wall.opening]]\nkind = \"window\"\nfrom_left = %d\nwidth = 36\nsill = 30\nheight = 50\n", x)
		}
		for range h.keeps {
			at := rnd.IntN(long - 30)
			fmt.Fprintf(&b, "[[wall.keep_clear]]\nfrom = %d\nto = %d\n", at, at+6+rnd.IntN(24))
		}
		for range h.pins {
			fmt.Fprintf(&b, "[[wall.pin]]\nat = %d\nput = %q\n", 4+rnd.IntN(long-8), []string{"seam", "middle", "either"}[rnd.IntN(3)])
		}
		if len(room)+b.Len() > mostText {
			break
		}
		room += b.String()
	}
	if !h.closed {
		room = room[:strings.LastIndex(room, "corner = \"inside\"\n")] + room[strings.LastIndex(room, "corner = \"inside\"\n")+len("corner = \"inside\"\n"):]
	}
	return room
}

// used is the processor time that this process has taken, in seconds: others may use the machine.
func used(t testing.TB) float64 {
	var u syscall.Rusage
	require.NoError(t, syscall.Getrusage(syscall.RUSAGE_SELF, &u))
	return (time.Duration(u.Utime.Nano()) * time.Nanosecond).Seconds()
}

// BenchmarkHeavy lays out the rooms that take longest, as check does, and reports the processor time of one.
func BenchmarkHeavy(b *testing.B) {
	for _, h := range heavyRooms {
		for _, aim := range []string{"steady", "fewest", "even"} {
			b.Run(strings.ReplaceAll(h.name, " ", "-")+"/"+aim, func(b *testing.B) {
				r := roomOf(b, h.text(aim))
				begun, rounds := used(b), 0
				for b.Loop() {
					p, err := Lay(r)
					require.NoError(b, err)
					rounds++
					b.ReportMetric(float64(len(p.Findings)), "findings")
				}
				b.ReportMetric((used(b)-begun)/float64(rounds), "cpu-s/op")
			})
		}
	}
}

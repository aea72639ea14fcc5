//go:build unix

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
	over              string // by how much the walls are longer than whole feet
	windows           bool
	pins, keeps       int // on every wall
	narrowest, widest int // walls, in inches
}

// mostText is the text of a room that check has to answer at once.
const mostText = 64_000

// How many feet of walls a room may have: open and closed, on the usual grid and on one half as fine, and in sheets 2 in wide.
const (
	openFeet, openFine, openSlats       = 1213, 650, 250
	closedFeet, closedFine, closedSlats = 650, 325, 83
)

var heavyRooms = []heavy{
	{name: "closed pins", closed: true, feet: closedFeet, pins: 20, narrowest: 150, widest: 250},
	{name: "closed pins windows", closed: true, feet: closedFeet, pins: 12, windows: true, narrowest: 120, widest: 300},
	{name: "closed keeps pins", closed: true, feet: closedFeet, pins: 10, keeps: 10, narrowest: 150, widest: 250},
	{name: "closed some keeps pins", closed: true, feet: closedFeet, pins: 10, keeps: 2, narrowest: 150, widest: 250},
	{name: "closed keeps", closed: true, feet: closedFeet, keeps: 12, narrowest: 150, widest: 250},
	{name: "closed some keeps", closed: true, feet: closedFeet, keeps: 3, narrowest: 150, widest: 250},
	{name: "closed bare", closed: true, feet: closedFeet, narrowest: 200, widest: 400},
	{name: "closed bare over", closed: true, feet: closedFeet, over: " 1/16", narrowest: 200, widest: 400},
	{name: "closed windows", closed: true, feet: closedFeet, windows: true, narrowest: 200, widest: 400},
	{name: "open pins windows", feet: openFeet, pins: 4, windows: true, narrowest: 120, widest: 300},
	{name: "open keeps pins", feet: openFeet, pins: 5, keeps: 5, narrowest: 150, widest: 250},
	{name: "open keeps", feet: openFeet, keeps: 6, narrowest: 150, widest: 250},
	{name: "open fine", feet: openFine, snap: "1/32", windows: true, narrowest: 200, widest: 400},
	{name: "open fine keeps pins", feet: openFine, snap: "1/32", keeps: 10, pins: 10, narrowest: 150, widest: 250},
	{name: "closed fine", closed: true, feet: closedFine, snap: "1/32", windows: true, narrowest: 200, widest: 400},
	{name: "closed fine bare", closed: true, feet: closedFine, over: " 1/32", snap: "1/32", narrowest: 200, widest: 400},
	{name: "closed fine pins", closed: true, feet: closedFine, snap: "1/32", pins: 40, narrowest: 150, widest: 250},
	{name: "closed fine keeps", closed: true, feet: closedFine, snap: "1/32", keeps: 24, narrowest: 150, widest: 250},
	{name: "closed fine keeps pins", closed: true, feet: closedFine, snap: "1/32", keeps: 20, pins: 20, narrowest: 150, widest: 250},
	{name: "closed slats", closed: true, feet: closedSlats, net: "2", narrowest: 200, widest: 400},
	{name: "closed slats over", closed: true, feet: closedSlats, over: " 1/16", net: "2", narrowest: 200, widest: 400},
	{name: "closed slats windows", closed: true, feet: closedSlats, net: "2", windows: true, narrowest: 200, widest: 400},
	{name: "closed slats keeps pins", closed: true, feet: closedSlats, net: "2", pins: 40, keeps: 40, narrowest: 150, widest: 250},
	{name: "open slats", feet: openSlats, net: "2", windows: true, narrowest: 200, widest: 400},
	{name: "open slats pins", feet: openSlats, net: "2", pins: 20, keeps: 20, narrowest: 150, widest: 250},
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
		over := ""
		if left < h.narrowest { // the last
			long, over = long+left, h.over
		}
		fmt.Fprintf(&b, "[[wall]]\nlength = \"%d%s\"\nheight = 96\ncorner = \"inside\"\n", long, over)
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

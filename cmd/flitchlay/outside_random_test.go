package main

import (
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"flitchlay/internal/cli"
	"flitchlay/internal/effort"
)

// madeUp writes a room file from chance: one to five walls, some sloping, leaning, stepped, turned outwards or split by a
// gap, with openings and boxes. Both unit systems say the same room, to the sixteenth of an inch or to a tenth of a
// millimetre.
func madeUp(seed uint64, metric bool) string {
	r := rand.New(rand.NewPCG(seed, 4))
	chance := func(n int) bool { return r.IntN(n) == 0 }
	sixteenths := func(low, high int) float64 { return float64(16*low+r.IntN(16*(high-low))) / 16 }
	size := func(inches float64) string {
		if metric {
			return fmt.Sprintf("%.1f", inches*25.4)
		}
		return fmt.Sprintf("\"%d %d/16\"", int(inches), int(inches*16)%16)
	}
	units := "in"
	if metric {
		units = "mm"
	}
	var b strings.Builder
	line := func(format string, args ...any) { fmt.Fprintf(&b, format+"\n", args...) }
	height := sixteenths(90, 130)
	line("[project]\ntitle = \"Room %d\"\nunits = %q\ntag = \"WD-%d\"\ndrawn = 2026-04-14", seed, units, seed%9)
	line("[veneer]\nmatch = %q\ngross_width = %s\noverlap = %s\nlength = %s", []string{"book", "slip", "random"}[r.IntN(3)], size(sixteenths(20, 28)), size(1), size(height+float64(8+r.IntN(20))))
	line("[[flitch]]\nnumber = \"F-1\"\nsheets = \"1-%d\"\n[[flitch]]\nnumber = \"F-2\"\nsheets = \"201-260\"", 5+r.IntN(60))
	line("[room]\nlevel_line = %s\nbase = %s", size(48), size(sixteenths(3, 8)))
	walls, last, lastLong := 1+r.IntN(5), "", 0.0
	for i := range walls {
		long := sixteenths(30, 260)
		if chance(5) {
			long = sixteenths(9, 24)
		}
		name := []string{"North", "Wall of the old refectory beside the lift lobby", "C", "Side", "Gegenüber"}[r.IntN(5)]
		last, lastLong = fmt.Sprintf("%s %d", name, i+1), long
		line("[[wall]]\nname = %q\nlength = %s", last, size(long))
		slope := r.IntN(6)
		switch slope {
		case 0:
			line("height = [%s, %s]", size(height), size(height-sixteenths(1, 12)))
		case 1:
			line("height = [[0, %s], [%s, %s], [%s, %s]]", size(height-8), size(float64(int(long/2))), size(height), size(long), size(height-12))
		default:
			line("height = %s", size(height))
		}
		if chance(3) {
			line("lean = [%s, %s]", size(sixteenths(0, 1)), size(sixteenths(0, 1)))
		}
		if turn := []string{"inside", "inside", "outside", "straight"}[r.IntN(4)]; i+1 < walls {
			line("corner = %q", turn)
		}
		x := sixteenths(3, 40)
		for x < long-30 && !chance(3) {
			wide := min(sixteenths(4, 60), long-x-8)
			kind := r.IntN(4)
			switch {
			case kind == 0 && height > 93:
				line("[[wall.opening]]\nkind = \"door\"\nfrom_left = %s\nwidth = %s\nheight = %s", size(x), size(wide), size(80))
			case kind == 1 && slope > 1: // a gap from floor to ceiling
				line("[[wall.opening]]\nkind = \"built-in\"\nfrom_left = %s\nwidth = %s\nheight = %s", size(x), size(wide), size(height))
			default:
				line("[[wall.opening]]\nkind = \"window\"\nfrom_left = %s\nwidth = %s\nsill = %s\nheight = %s", size(x), size(wide), size(sixteenths(20, 36)), size(sixteenths(14, 40)))
			}
			x += wide + sixteenths(5, 70)
		}
		for range r.IntN(5) {
			line("[[wall.box]]\nkind = %q\nx = %s\nz = %s", []string{"outlet", "switch", "alarm", "thermostat"}[r.IntN(4)], size(sixteenths(3, max(4, int(long)-3))), size(sixteenths(12, 70)))
		}
		if at := sixteenths(3, max(4, int(long)-3)); chance(3) {
			line("[[wall.pin]]\nat = %s\nput = %q", size(at), []string{"seam", "middle", "either"}[r.IntN(3)])
		}
		if from := sixteenths(2, max(3, int(long)-6)); chance(3) {
			line("[[wall.keep_clear]]\nfrom = %s\nto = %s\nwhy = %q", size(from), size(min(from+sixteenths(2, 30), long-1)), []string{"", "screen", "bracket of the sliding ladder"}[r.IntN(3)])
		}
	}
	for range r.IntN(3) {
		line("[[project.revision]]\nnote = \"Window moved, as the architect asked\"\nwall = %q\nat = %s", last, size(sixteenths(0, int(lastLong))))
	}
	return b.String()
}

// No word lies in another in rooms that nobody thought of, by turns in inches and in millimetres, and on one paper after
// the other.
//
// One room, 8 with FLITCHLAY_CHECK=1, or as many as FLITCHLAY_DRAWN says, then on all papers: 500 take a quarter of an
// hour.
func TestWordsOfRandomRoomsAreApart(t *testing.T) {
	effort.Tool(t, "pdftotext")
	effort.Tool(t, "mutool")
	wanted := effort.Of(1, 8)
	if n := effort.Drawn(); n > 0 {
		wanted = n
	}
	list := papers(t)
	count := 0
	for seed := uint64(1); count < wanted && seed < 4*uint64(wanted)+40; seed++ {
		metric, paper := count%2 == 1, list[count/2%len(list)]
		text := madeUp(seed, metric)
		if !readable(t, text) {
			continue // openings or boxes stand where no room may have them
		}
		count++
		t.Run(fmt.Sprintf("seed %d, metric %v, on %s", seed, metric, paper), func(t *testing.T) {
			t.Parallel()
			dir := t.TempDir()
			file := filepath.Join(dir, "room.toml")
			require.NoError(t, os.WriteFile(file, []byte(otherPaper(text, paper)), 0o644))
			d := draw(file, dir)
			require.LessOrEqual(t, d.status, 1, d.messages)
			require.Greater(t, apart(t, dir, sets), 100)
		})
	}
	require.Equal(t, wanted, count, "so many rooms have to be readable")
}

// readable reports whether a room can be laid out.
func readable(t *testing.T, text string) bool {
	file := filepath.Join(t.TempDir(), "room.toml")
	require.NoError(t, os.WriteFile(file, []byte(text), 0o644))
	return cli.Run([]string{"check", file}, nil, io.Discard, io.Discard) <= 1
}

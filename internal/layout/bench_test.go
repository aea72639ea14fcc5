package layout

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"flitchlay/internal/room"
)

// hall is the text of an open hall of many walls, with windows and so many pins on each; many of them fall.
func hall(walls, pins int) string {
	rnd := rand.New(rand.NewPCG(8, 9))
	var b strings.Builder
	b.WriteString("[project]\ntitle = \"Hall\"\n[veneer]\ngross_width = \"24 1/2\"\noverlap = \"1\"\nlength = \"10'\"\n")
	for i := range walls {
		long := 120 + rnd.IntN(180)
		fmt.Fprintf(&b, "[[wall]]\nlength = \"%d\"\nheight = \"96\"\n", long)
		if i < walls-1 {
			b.WriteString("corner = \"inside\"\n")
		}
		for x := 14; x+40 < long-14; x += 44 + rnd.IntN(32) {
			fmt.Fprintf(&b, "[[wall.opening]]\nkind = \"window\"\nfrom_left = \"%d\"\nwidth = \"36\"\nsill = \"30\"\nheight = \"50\"\n", x)
		}
		for range pins {
			fmt.Fprintf(&b, "[[wall.pin]]\nat = \"%d\"\nput = \"%s\"\n", 4+rnd.IntN(long-8), []string{"seam", "middle", "either"}[rnd.IntN(3)])
		}
	}
	return b.String()
}

// BenchmarkCheckLarge lays out halls whose pins fall for many reasons, with all that check says of them.
func BenchmarkCheckLarge(b *testing.B) {
	for _, c := range []struct{ walls, pins int }{{30, 1}, {66, 1}, {24, 5}} {
		r, err := room.Decode("room.toml", []byte(hall(c.walls, c.pins)))
		if err != nil {
			b.Fatal(err)
		}
		b.Run(fmt.Sprintf("%d walls %d pins each", c.walls, c.pins), func(b *testing.B) {
			for b.Loop() {
				if _, err := Lay(r); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

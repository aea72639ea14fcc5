package crew

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
)

// crewGap is what words keep clear of each other and of lines on a page for the crew, in mm.
const crewGap = 0.5

// Clean checks that nothing on any page is in the way of anything else, and that no text is too small.
func Clean(t *testing.T, d *scene.Document) {
	t.Helper()
	for _, p := range d.Pages {
		for _, o := range scene.Overlaps(p, crewGap) {
			t.Errorf("page %s %s: %s", p.Name, p.Title, o)
		}
		p.Texts(func(x *scene.Text) {
			if x.Height < folio.TapedSmall-1e-9 {
				t.Errorf("page %s: %q is only %.2f mm high", p.Name, x.String, x.Height)
			}
		})
	}
}

// RandomRoom writes a room file with much that is odd: slopes, steps, leans, narrow walls, long names, gaps, bare strips,
// several flitches, sheets that hang, courses, millimetres.
func RandomRoom(seed uint64) string {
	r := rand.New(rand.NewPCG(seed, 7))
	var b strings.Builder
	metric := r.IntN(4) == 0
	in := func(v float64) string { // inches, in the room's unit
		if metric {
			return fmt.Sprintf("%.1f", v*25)
		}
		return fmt.Sprintf(`"%d %d/16"`, int(v), int(v*16)%16)
	}
	chance := func(n int) bool { return r.IntN(n) == 0 }
	pick := func(list ...string) string { return list[r.IntN(len(list))] }
	names := []string{"North", "East wall of the old refectory beside the elevator lobby", "C", "Wand gegenüber der Tür", "Side, second part", "Long gallery, courtyard side"}
	units, gross, overlap := "in", 24.5, 1.0
	if metric {
		units = "mm"
	}
	if chance(4) {
		gross, overlap = float64(18+r.IntN(20)), 0.75
	}
	height := float64(84 + r.IntN(60))
	long := height + 12
	if chance(6) {
		long = height * 0.7 // two courses
	}
	fmt.Fprintf(&b, "[project]\ntitle = %q\nunits = %q\nroom = \"%d\"\ntag = \"WD-1\"\n", pick("Room", "The Harbour Lane Library and Reading Room Society: great reading room, north end"), units, r.IntN(999))
	if chance(2) {
		b.WriteString("drawn = 2026-04-14\n[[project.revision]]\nmark = \"" + pick("A", "AB", "12") + "\"\ndate = 2026-05-02\nnote = \"again\"\n")
	}
	if b.WriteString("[veneer]\n"); chance(10) {
		b.WriteString("grain = \"horizontal\"\n")
	}
	fmt.Fprintf(&b, "gross_width = %s\noverlap = %s\nlength = %s\n", in(gross), in(overlap), in(long))
	switch r.IntN(4) {
	case 0:
		fmt.Fprintf(&b, "[[flitch]]\nnumber = \"F-1\"\nsheets = \"%d-%d\"\nspare = 2\n", 1, 80)
	case 1:
		fmt.Fprintf(&b, "[[flitch]]\nnumber = \"F-1\"\nsheets = \"1-%d\"\ndamaged = [3]\n[[flitch]]\nnumber = \"LONG-FLITCH-2\"\nsheets = \"101-190\"\n", 4+r.IntN(12))
	case 2:
		fmt.Fprintf(&b, "[[flitch]]\nnumber = \"G\"\nsheets = \"1-%d\"\n", 3+r.IntN(8))
	}
	closed := chance(2)
	fmt.Fprintf(&b, "[rules]\naim = %q\n", pick("steady", "fewest", "even"))
	fmt.Fprintf(&b, "[room]\nclosed = %v\nlevel_line = %s\nbase = %s\ncrown = %s\n", closed, in(float64(36+r.IntN(24))), in(float64(r.IntN(8))), in(float64(r.IntN(4))))
	walls := 1 + r.IntN(5)
	if closed {
		walls = 4
	}
	for i := range walls {
		w := float64(40+r.IntN(240)) + float64(r.IntN(16))/16
		switch {
		case chance(5):
			w = float64(9 + r.IntN(20))
		case chance(6):
			w = float64(300 + r.IntN(500))
		}
		fmt.Fprintf(&b, "[[wall]]\nname = %q\nlength = %s\n", fmt.Sprintf("%s %d", pick(names...), i+1), in(w))
		switch {
		case chance(5):
			fmt.Fprintf(&b, "height = [%s, %s]\n", in(height), in(height-float64(r.IntN(40))))
		case chance(7):
			fmt.Fprintf(&b, "height = [[0, %s], [%s, %s], [%s, %s]]\n", in(height-30), in(float64(int(w/2))), in(height), in(w), in(height-30))
		default:
			fmt.Fprintf(&b, "height = %s\n", in(height))
		}
		if chance(4) {
			fmt.Fprintf(&b, "floor = [0, %s]\n", in(0.5))
		}
		if chance(3) {
			fmt.Fprintf(&b, "lean = [%s, %s]\n", pick("0", in(0.25)), pick("0", in(0.5)))
		}
		fmt.Fprintf(&b, "corner = %q\n", pick("inside", "inside", "inside", "outside", "straight"))
		if chance(6) {
			b.WriteString("wrap = false\n")
		}
		if chance(9) && walls > 1 {
			b.WriteString("cover = false\n")
		}
		x := 6.0
		for n := 0; n < 3 && x < w-20 && !chance(3); n++ {
			ow := 4 + float64(r.IntN(int(w-x-12)))
			if ow > 60 {
				ow = 60
			}
			kind := pick("window", "door", "built-in")
			fmt.Fprintf(&b, "[[wall.opening]]\nkind = %q\nfrom_left = %s\nwidth = %s\n", kind, in(x), in(ow))
			switch {
			case chance(8):
				fmt.Fprintf(&b, "height = %s\n", in(height+20)) // a gap
				if chance(2) {
					b.WriteString("grain = \"through\"\n")
				}
			case kind == "door":
				fmt.Fprintf(&b, "height = %s\n", in(80))
			default:
				fmt.Fprintf(&b, "sill = %s\nheight = %s\n", in(30), in(float64(20+r.IntN(24))))
				if chance(4) {
					fmt.Fprintf(&b, "reveal = %s\nwrap_reveal = true\n", in(6))
				}
			}
			x += ow + float64(4+r.IntN(50))
		}
		if chance(8) && x < w-30 {
			fmt.Fprintf(&b, "[[wall.bare]]\nfrom = %s\nto = %s\nwhy = \"control joint\"\n", in(x+4), in(x+8))
		}
		for n := r.IntN(6); n > 0; n-- {
			fmt.Fprintf(&b, "[[wall.box]]\nkind = %q\nx = %s\nz = %s\n", pick("outlet", "switch", "alarm", "thermostat"), in(4+float64(r.IntN(int(w)-8))), in(float64(12+r.IntN(60))))
		}
	}
	return b.String()
}

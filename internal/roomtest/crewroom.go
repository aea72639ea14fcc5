package roomtest

import (
	"fmt"
	"math/rand/v2"
	"strings"
)

// CrewRoom writes a room file with much that is odd: slopes, steps, leans, narrow walls, long names, gaps, bare strips,
// several flitches, sheets that hang, courses, millimetres.
func CrewRoom(seed uint64) string {
	w := &roomWriter{Rand: rand.New(rand.NewPCG(seed, 7))}
	w.metric = w.IntN(4) == 0
	w.head()
	closed := w.chance(2)
	w.line("[rules]\naim = %q\n", w.pick("steady", "fewest", "even"))
	w.line("[room]\nclosed = %v\nlevel_line = %s\nbase = %s\ncrown = %s\n", closed, w.in(float64(36+w.IntN(24))), w.in(float64(w.IntN(8))), w.in(float64(w.IntN(4))))
	walls := 1 + w.IntN(5)
	if closed {
		walls = 4
	}
	for i := range walls {
		w.wall(i, walls)
	}
	return w.text.String()
}

// roomWriter writes a room file by chance. What is written in which order decides what later chances come to.
type roomWriter struct {
	*rand.Rand
	text   strings.Builder
	metric bool
	height float64 // of the walls
}

func (w *roomWriter) line(format string, values ...any) { fmt.Fprintf(&w.text, format, values...) }

func (w *roomWriter) chance(n int) bool { return w.IntN(n) == 0 }

func (w *roomWriter) pick(list ...string) string { return list[w.IntN(len(list))] }

// in prints inches in the room's unit.
func (w *roomWriter) in(v float64) string {
	if w.metric {
		return fmt.Sprintf("%.1f", v*25)
	}
	return fmt.Sprintf(`"%d %d/16"`, int(v), int(v*16)%16)
}

// head writes the project, the veneer and the flitches.
func (w *roomWriter) head() {
	units, gross, overlap := "in", 24.5, 1.0
	if w.metric {
		units = "mm"
	}
	if w.chance(4) {
		gross, overlap = float64(18+w.IntN(20)), 0.75
	}
	w.height = float64(84 + w.IntN(60))
	long := w.height + 12
	if w.chance(6) {
		long = w.height * 0.7 // two courses
	}
	w.line("[project]\ntitle = %q\nunits = %q\nroom = \"%d\"\ntag = \"WD-1\"\n", w.pick("Room", "The Harbour Lane Library and Reading Room Society: great reading room, north end"), units, w.IntN(999))
	if w.chance(2) {
		w.line("drawn = 2026-04-14\n[[project.revision]]\nmark = %q\ndate = 2026-05-02\nnote = \"again\"\n", w.pick("A", "AB", "12"))
	}
	if w.line("[veneer]\n"); w.chance(10) {
		w.line("grain = \"horizontal\"\n")
	}
	w.line("gross_width = %s\noverlap = %s\nlength = %s\n", w.in(gross), w.in(overlap), w.in(long))
	switch w.IntN(4) {
	case 0:
		w.line("[[flitch]]\nnumber = \"F-1\"\nsheets = \"%d-%d\"\nspare = 2\n", 1, 80)
	case 1:
		w.line("[[flitch]]\nnumber = \"F-1\"\nsheets = \"1-%d\"\ndamaged = [3]\n[[flitch]]\nnumber = \"LONG-FLITCH-2\"\nsheets = \"101-190\"\n", 4+w.IntN(12))
	case 2:
		w.line("[[flitch]]\nnumber = \"G\"\nsheets = \"1-%d\"\n", 3+w.IntN(8))
	}
}

// wall writes the i-th of so many walls with all that is on it.
func (w *roomWriter) wall(i, of int) {
	names := []string{"North", "East wall of the old refectory beside the elevator lobby", "C", "Wand gegenüber der Tür", "Side, second part", "Long gallery, courtyard side"}
	wide := float64(40+w.IntN(240)) + float64(w.IntN(16))/16
	switch {
	case w.chance(5):
		wide = float64(9 + w.IntN(20))
	case w.chance(6):
		wide = float64(300 + w.IntN(500))
	}
	w.line("[[wall]]\nname = %q\nlength = %s\n", fmt.Sprintf("%s %d", w.pick(names...), i+1), w.in(wide))
	switch {
	case w.chance(5):
		w.line("height = [%s, %s]\n", w.in(w.height), w.in(w.height-float64(w.IntN(40))))
	case w.chance(7):
		w.line("height = [[0, %s], [%s, %s], [%s, %s]]\n", w.in(w.height-30), w.in(float64(int(wide/2))), w.in(w.height), w.in(wide), w.in(w.height-30))
	default:
		w.line("height = %s\n", w.in(w.height))
	}
	if w.chance(4) {
		w.line("floor = [0, %s]\n", w.in(0.5))
	}
	if w.chance(3) {
		w.line("lean = [%s, %s]\n", w.pick("0", w.in(0.25)), w.pick("0", w.in(0.5)))
	}
	w.line("corner = %q\n", w.pick("inside", "inside", "inside", "outside", "straight"))
	if w.chance(6) {
		w.line("wrap = false\n")
	}
	if w.chance(9) && of > 1 {
		w.line("cover = false\n")
	}
	x := w.openings(wide)
	if w.chance(8) && x < wide-30 {
		w.line("[[wall.bare]]\nfrom = %s\nto = %s\nwhy = \"control joint\"\n", w.in(x+4), w.in(x+8))
	}
	for n := w.IntN(6); n > 0; n-- {
		w.line("[[wall.box]]\nkind = %q\nx = %s\nz = %s\n", w.pick("outlet", "switch", "alarm", "thermostat"), w.in(4+float64(w.IntN(int(wide)-8))), w.in(float64(12+w.IntN(60))))
	}
}

// openings writes the openings of a wall so wide, and gives where there is room again.
func (w *roomWriter) openings(wide float64) (x float64) {
	x = 6.0
	for n := 0; n < 3 && x < wide-20 && !w.chance(3); n++ {
		open := min(4+float64(w.IntN(int(wide-x-12))), 60)
		kind := w.pick("window", "door", "built-in")
		w.line("[[wall.opening]]\nkind = %q\nfrom_left = %s\nwidth = %s\n", kind, w.in(x), w.in(open))
		switch {
		case w.chance(8):
			w.line("height = %s\n", w.in(w.height+20)) // a gap
			if w.chance(2) {
				w.line("grain = \"through\"\n")
			}
		case kind == "door":
			w.line("height = %s\n", w.in(80))
		default:
			w.line("sill = %s\nheight = %s\n", w.in(30), w.in(float64(20+w.IntN(24))))
			if w.chance(4) {
				w.line("reveal = %s\nwrap_reveal = true\n", w.in(6))
			}
		}
		x += open + float64(4+w.IntN(50))
	}
	return x
}

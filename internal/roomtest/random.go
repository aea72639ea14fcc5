package roomtest

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"flitchlay/internal/layout"
	"flitchlay/internal/room"
)

// maker writes the text of a room at random.
type maker struct {
	*rand.Rand
	strings.Builder
	metric, level bool // units and grain
	closed, hung  bool
	walls         int
	high          float64 // of the room, in inches
}

// size writes inches, to 1/16, or their like in millimetres.
func (m *maker) size(f float64) string {
	if m.metric {
		return fmt.Sprintf("%d", int(f*25.4+0.5))
	}
	return fmt.Sprintf("\"%d %d/16\"", int(f), int(f*16)%16)
}

// part is a share of a whole: one of n parts of it, chosen at random.
func (m *maker) part(n int, of float64) float64 { return float64(m.IntN(n)) / of }

// once is true once in n times.
func (m *maker) once(n int) bool { return m.IntN(n) == 0 }

// one is one of some words.
func (m *maker) one(words ...string) string { return words[m.IntN(len(words))] }

// put writes a line. What stands in it is drawn from chance in the order in which it is written.
func (m *maker) put(format string, args ...any) { fmt.Fprintf(m, format+"\n", args...) }

// randomRoom makes the text of a room: open or closed, inches or millimetres, with slopes, steps, leans, rounded
// corners, openings, gaps, bare strips, boxes, courses, level grain, hung sheets and flitches. Not every text is a room
// without a mistake.
func randomRoom(rnd *rand.Rand) string {
	m := &maker{Rand: rnd}
	m.head()
	m.space()
	lengths := make([]float64, m.walls)
	for i := range lengths {
		lengths[i] = 40 + m.part(16*160, 16)
		if m.closed && i > 1 {
			lengths[i] = lengths[i-2]
		}
	}
	m.hung = !m.closed && m.once(5)
	m.high = 90 + m.part(80, 2)
	for i, wide := range lengths {
		m.wall(i, wide)
		m.openings(i, wide)
		for range m.IntN(3) {
			m.put("[[wall.box]]\nkind = %q\nx = %s\nz = %s", m.one("outlet", "switch", "alarm"), m.size(4+m.Float64()*(wide-8)), m.size(16+float64(m.IntN(60))))
		}
	}
	if m.hung {
		m.put("[[hung]]\nwall = \"Wall 1\"\nsheet = 1\nseam = %s", m.size(15+m.part(32, 16)))
	}
	return m.String()
}

// head writes what stands before the room: the project, its veneer, flitches and rules.
func (m *maker) head() {
	units := "in"
	if m.metric = m.once(4); m.metric {
		units = "mm"
	}
	m.put("[project]\ntitle = \"Random\"\nunits = %q", units)
	grain := "vertical"
	if m.level = m.once(12); m.level {
		grain = "horizontal"
	}
	long := []float64{96, 108, 120}[m.IntN(3)]
	m.put("[veneer]\ngross_width = %s\noverlap = %s\nlength = %s\ngrain = %q\ncut = %q", m.size(18+m.part(16, 2)), m.size(1+m.part(3, 2)), m.size(long), grain,
		m.one("plain", "quarter", "rift"))
	for i := range m.IntN(4) {
		m.put("[[flitch]]\nnumber = \"F-%d\"\nsheets = \"1-%d\"\nspare = %d", i+1, 10+m.IntN(40), m.IntN(4))
		if m.once(3) {
			m.put("damaged = [%d, %d]", 1+m.IntN(4), 5+m.IntN(5))
		}
	}
	m.put("[rules]\naim = %q\nupper = %q", m.one("steady", "fewest", "even"), m.one("auto", "upright", "turned"))
	if m.once(3) {
		m.put("snap = %s\nedge_trim = %s", m.size(float64(1+m.IntN(8))/8), m.size(m.part(5, 2)))
	}
}

// space writes the room itself, and says how many walls it has.
func (m *maker) space() {
	m.closed = m.once(2)
	m.put("[room]\nclosed = %t\nbase = %s\ncrown = %s\nbehind = %q", m.closed, m.size(m.part(12, 2)), m.size(m.part(6, 2)), m.one("none", "base", "crown", "both"))
	if m.once(2) {
		m.put("[paste]\ncoverage = \"150 sq ft/gal\"")
	}
	m.walls = 1 + m.IntN(4)
	if m.closed {
		m.walls = 4
	}
}

// wall writes a wall with its ends and corners.
func (m *maker) wall(i int, wide float64) {
	m.put("[[wall]]\nlength = %s", m.size(wide))
	other := m.high + m.part(40, 16)
	switch m.IntN(6) {
	case 0:
		m.put("height = [%s, %s]", m.size(m.high), m.size(other))
	case 1:
		m.put("height = [[0, %s], [%s, %s], [%s, %s], [%s, %s]]", m.size(m.high), m.size(wide/2), m.size(other), m.size(wide/2), m.size(m.high-7), m.size(wide), m.size(m.high))
	default:
		m.put("height = %s", m.size(m.high))
	}
	if m.once(5) {
		m.put("floor = [0, %s]", m.size(m.part(16, 16)))
	}
	if m.once(4) {
		m.put("lean = [%s, %s]", m.size(m.part(8, 16)), m.size(m.part(8, 16)))
	}
	turns := i < m.walls-1 || m.closed
	if !m.closed && i < m.walls-1 && m.once(4) {
		m.put("corner = \"outside\"")
	}
	if m.once(6) && turns {
		m.put("radius = %s", m.size(m.part(5, 2)))
	}
	if m.once(8) && turns {
		m.put("wrap = false")
	}
	if m.once(4) {
		m.put("right_end = %q", m.one("casing", "frame", "trim", "free"))
	}
}

// openings writes up to two openings, gaps or bare strips of a wall, from left to right.
func (m *maker) openings(i int, wide float64) {
	at := 4.0
	if i == 0 && m.hung {
		at = wide // what hangs already hangs on a bare stretch of wall
	}
	for range m.IntN(3) {
		w := 12 + float64(m.IntN(60))
		from := at + m.part(16*30, 16)
		if from+w > wide-2 {
			break
		}
		at = from + w + 3
		switch m.IntN(5) {
		case 0:
			m.put("[[wall.opening]]\nkind = \"door\"\nfrom_left = %s\nwidth = %s\nheight = %s", m.size(from), m.size(w), m.size(80))
		case 1:
			m.put("[[wall.opening]]\nkind = \"cased opening\"\nfrom_left = %s\nwidth = %s\nheight = %s\ngrain = %q", m.size(from), m.size(w), m.size(m.high), m.one("skip", "through"))
		case 2:
			m.put("[[wall.bare]]\nfrom = %s\nto = %s", m.size(from), m.size(from+w))
		default:
			m.put("[[wall.opening]]\nkind = \"window\"\nfrom_left = %s\nwidth = %s\nsill = %s\nheight = %s\nreveal = %s\nwrap_reveal = %t", m.size(from), m.size(w),
				m.size(30), m.size(40), m.size(5), m.once(3) && w > 14 && !m.level)
		}
	}
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

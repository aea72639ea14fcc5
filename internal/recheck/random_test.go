package recheck

import (
	"fmt"
	"math/rand/v2"
	"strings"
)

// writing is how a room file is written.
type writing int

const (
	asDrawn  writing = iota // in inches, or in a third of the rooms in millimetres
	inInches                // in inches, every rule written out
	inMM                    // the same lengths in strings of millimetres, in an inch room
	metric                  // the same in a metric room
)

// maker writes a room file at random.
type maker struct {
	*rand.Rand
	strings.Builder
	how    writing
	metric bool // bare numbers are millimetres
	feet   bool // heights are whole feet, and nothing slopes
}

func (m *maker) line(format string, args ...any) { fmt.Fprintf(m, format+"\n", args...) }

// chance is true once in n times.
func (m *maker) chance(n int) bool { return m.IntN(n) == 0 }

// length writes a length: n sixteenths of an inch, or as many times 1.5 mm.
func (m *maker) length(n int) string {
	if m.how == inMM || m.how == metric {
		return fmt.Sprintf(`"%d.%04d mm"`, n*15875/10000, n*15875%10000)
	}
	if m.metric {
		return fmt.Sprintf("%d.%d", n*3/2, n*3%2*5)
	}
	return fmt.Sprintf(`"%d %d/16"`, n/16, n%16)
}

// inches is a length of whole inches from a to b.
func (m *maker) inches(a, b int) int { return 16 * (a + m.IntN(b-a+1)) }

// rules are the lengths of the rules beside the grid, with their defaults in an inch room.
var rules = []struct {
	name   string
	inches int
	varies bool
}{{"corner_return", 4, true}, {"curve_radius", 6, false}, {"prefer_return", 6, true}, {"leg", 3, true}, {"prefer_leg", 6, true}, {"opening_clear", 2, true}, {"prefer_clear", 4, true},
	{"box_clear", 1, true}, {"least_width", 6, false}, {"prefer_width", 12, false}, {"short_seam", 30, false}, {"edge_trim", 1, false},
	{"top_trim", 2, false}, {"bottom_trim", 2, false}}

// up is a height of whole inches from a to b, or of whole feet.
func (m *maker) up(a, b int) int {
	n := m.inches(a, b)
	if m.feet {
		n = (n + 96) / 192 * 192
	}
	return n
}

// random writes a room: of one to five walls, each with an opening or two at most, at figures that collide often enough.
func random(seed int, how writing, feet bool) string {
	m := &maker{Rand: rand.New(rand.NewPCG(uint64(seed), 7)), how: how, feet: feet}
	m.metric = m.chance(3) && how == asDrawn
	closed := !m.chance(3)
	m.line("[project]\ntitle = \"Random room\"")
	if m.metric || how == metric {
		m.line("units = \"mm\"")
	}
	m.line("[veneer]\ngross_width = %s\noverlap = %s\nlength = %s", m.length(m.inches(12, 30)+m.IntN(16)), m.length(8+m.IntN(24)), m.length(m.inches(96, 140)))
	if m.chance(3) {
		many := 5 + m.IntN(30)
		m.line("[[flitch]]\nnumber = \"F-1\"\nsheets = \"1-%d\"\nspare = 2\nfrom = %q", many, []string{"first", "last"}[many%2])
		m.line("[[flitch]]\nnumber = \"F-2\"\nsheets = \"3-40\"\ndamaged = [4, 9]\nfrom = %q", []string{"first", "last"}[many/2%2])
	}
	m.line("[rules]\naim = %q", []string{"steady", "steady", "fewest", "even"}[m.IntN(4)])
	// a coarse grid keeps the search short; most rooms are on one
	m.line("snap = %s", m.length([]int{1, 2, 4, 4, 8}[m.IntN(5)]))
	for _, rule := range rules {
		if own := m.inches(0, 8); m.chance(4) && rule.varies {
			m.line("%s = %s", rule.name, m.length(own))
		} else if how != asDrawn {
			m.line("%s = %s", rule.name, m.length(16*rule.inches))
		}
	}
	if m.chance(6) {
		m.line("spare_share = %.3f", m.Float64()/3)
	}
	m.line("[room]\nclosed = %v\nbase = %s\ncrown = %s", closed, m.length(m.up(0, 5)), m.length(m.up(0, 4)))
	if m.chance(3) {
		m.line("behind = %q", []string{"base", "crown", "both"}[m.IntN(3)])
	}
	if how != asDrawn {
		m.line("level_line = %s", m.length(48*16))
	} else if m.chance(2) {
		m.line("level_line = %s", m.length(m.inches(30, 60)))
	}
	walls := 1 + m.IntN(5)
	if closed {
		walls = 3 + m.IntN(4)
	}
	for i := range walls {
		m.wall(i, walls, closed)
	}
	if m.chance(3) {
		m.line("[paste]\ncoverage = \"150 sq ft/gal\"\n[primer]\ncoverage = \"7.4 m2/L\"")
	}
	return m.String()
}

func (m *maker) wall(i, walls int, closed bool) {
	long := m.inches(40, 150) + m.IntN(16)
	high := m.up(84, 110)
	m.line("[[wall]]\nname = \"Wall %c\"\nlength = %s", 'A'+i, m.length(long))
	switch shape := m.IntN(8); {
	case shape == 0 && !m.feet:
		m.line("height = [%s, %s]", m.length(high), m.length(high+m.inches(0, 20)))
	case shape == 1 && !m.feet:
		step := m.inches(10, 30)
		m.line("height = [[0, %s], [%s, %s], [%s, %s], [%s, %s]]", m.length(high), m.length(step), m.length(high), m.length(step), m.length(high+m.inches(1, 9)), m.length(long), m.length(high+m.inches(1, 20)))
	default:
		m.line("height = %s", m.length(high))
	}
	if m.chance(6) && !m.feet {
		m.line("floor = [0, %s]", m.length(m.IntN(20)))
	}
	last := i == walls-1 && !closed
	if !last {
		kind := []string{"inside", "inside", "inside", "outside", "straight"}[m.IntN(5)]
		m.line("corner = %q", kind)
		if kind != "straight" && m.chance(4) {
			m.line("radius = %s", m.length(m.inches(1, 8)))
		}
		if kind != "straight" && m.chance(8) {
			m.line("angle = %d", 30+m.IntN(100))
		}
		if m.chance(10) {
			m.line("wrap = false")
		}
	}
	if m.chance(3) {
		m.line("lean = %s", m.signed(1+m.IntN(6)))
	}
	if m.chance(5) {
		m.line("left_end = \"frame\"\nright_end = \"trim\"")
	}
	if m.chance(4) {
		m.line("main = true")
	}
	if m.chance(6) && !m.feet {
		m.line("hidden_below = %s", m.length(m.inches(10, 40)))
	}
	m.objects(long, high)
}

// objects puts openings, plates, and stretches into a wall, from left to right so that they stand apart.
func (m *maker) objects(long, high int) {
	at := m.inches(0, 20)
	for m.chance(2) || at == 0 {
		wide := m.inches(10, 50)
		if at+wide > long {
			break
		}
		switch what := m.IntN(6); {
		case what == 0 && !m.feet: // up to the ceiling and over it
			m.line("[[wall.opening]]\nkind = \"door\"\nfrom_left = %s\nwidth = %s\nheight = %s", m.length(at), m.length(wide), m.length(high-m.IntN(2)*16))
			if m.chance(2) {
				m.line("grain = \"through\"")
			}
		case what == 1:
			m.line("[[wall.bare]]\nfrom = %s\nto = %s", m.length(at), m.length(at+wide/4))
		case what == 2:
			m.line("[[wall.opening]]\nkind = \"door\"\nfrom_left = %s\nwidth = %s\nheight = %s", m.length(at), m.length(wide), m.length(high-m.up(8, 20)))
		default:
			m.line("[[wall.opening]]\nkind = \"window\"\nfrom_left = %s\nwidth = %s\nsill = %s\nheight = %s", m.length(at), m.length(wide), m.length(m.up(20, 40)), m.length(m.up(10, 30)))
			if m.chance(3) {
				m.line("reveal = %s\nwrap_reveal = true", m.length(m.inches(2, 6)))
			}
		}
		at += wide + m.inches(0, 30)
	}
	if m.chance(3) {
		m.line("[[wall.box]]\nkind = \"outlet\"\nx = %s\nz = %s\nplate = [%s, %s]", m.length(m.inches(4, 20)), m.length(m.inches(14, 40)), m.length(m.inches(2, 8)), m.length(72))
	}
	if m.chance(5) {
		m.line("[[wall.keep_clear]]\nfrom = %s\nto = %s", m.length(m.inches(0, 10)), m.length(m.inches(11, 30)))
	}
	if m.chance(6) {
		m.line("[[wall.pin]]\nat = %s\nput = %q", m.length(m.inches(4, 30)), []string{"seam", "middle", "either"}[m.IntN(3)])
	}
}

// signed is a length to the right or to the left.
func (m *maker) signed(n int) string {
	if text := m.length(n); m.chance(2) {
		return text
	} else if m.metric {
		return "-" + text
	} else {
		return `"-` + text[1:]
	}
}

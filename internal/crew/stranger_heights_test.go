package crew_test

import (
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/length"
	"flitchlay/internal/room"
)

// TestLevelLineHasAPlace measures up from the floor where the start page says, and comes to the level line; and up from the
// floor at the left of every wall that gives its own figure.
func TestLevelLineHasAPlace(t *testing.T) {
	at := regexp.MustCompile(`closing on itself: ` + figure + ` above the floor at the left end of (.*?)(?: leans| START| [A-Z] | [a-z] |$)`)
	for file, p := range rooms(t) {
		t.Run(file, func(t *testing.T) {
			pages := printed(t, p)
			m := at.FindStringSubmatch(pages[0])
			require.NotNil(t, m, pages[0])
			wall := -1
			for i := range p.Room.Walls {
				if strings.HasPrefix(m[2], p.Room.Walls[i].Name) {
					wall = i
				}
			}
			require.GreaterOrEqual(t, wall, 0, m[2])
			assert.True(t, near(room.AtRight(p.Room.Walls[wall].Floor, 0)+read(t, p, m[1]), p.Room.Space.LevelLine), m[0])
			for _, page := range pages {
				if m := regexp.MustCompile(`LEVEL ` + figure).FindStringSubmatch(page); m != nil && !strings.Contains(page, ", piece ") {
					i := wallNamed(p, page)
					require.GreaterOrEqual(t, i, 0)
					assert.True(t, near(room.AtRight(p.Room.Walls[i].Floor, 0)+read(t, p, m[1]), p.Room.Space.LevelLine), "%s on %s", m[0], p.Room.Walls[i].Name)
				}
			}
		})
	}
}

// TestHeightsSayTheirSide reads the heights of floor and ceiling from the level line at every place where they are to be
// read, also where stairs climb past it.
func TestHeightsSayTheirSide(t *testing.T) {
	p := rooms(t)["stair"]
	page := printed(t, p)[1]
	w := &p.Room.Walls[0]
	grids := strings.Split(page, " from left floor ceiling up ")[1:]
	require.NotEmpty(t, grids, page)
	grid := strings.Join(grids, " ")
	ups := 0
	columns := regexp.MustCompile(figure+` `+figure+` (up|down) `+figure).FindAllStringSubmatch(grid, -1)
	require.Len(t, columns, 6, "its ends, 8'-0\", and where floor and ceiling begin to slope and end: %s", page)
	for _, m := range columns {
		x, z := read(t, p, m[1]), read(t, p, m[2])
		if m[3] == "up" {
			ups++
		} else {
			z = -z
		}
		assert.True(t, near(room.At(w.Floor, x), p.Room.Space.LevelLine+z), "floor: %s", m[0])
		assert.True(t, near(room.At(w.Ceiling, x), p.Room.Space.LevelLine+read(t, p, m[4])), "ceiling: %s", m[0])
	}
	assert.Equal(t, 2, ups, "at 12'-2\" and at the end")
}

// TestRegisterIsOneForAll marks every sheet where the register says and cuts over and under it: each comes out as long and
// as high as the layout has it, out of a sheet as delivered.
func TestRegisterIsOneForAll(t *testing.T) {
	mark := regexp.MustCompile(`(?:(\S+), )?(?:course (\d+), )?(mark every sheet ` + figure + ` below its raw head|measure every sheet from its raw (?:head|foot), which hangs down: ` + figure + ` above the level line)`)
	for file, p := range rooms(t) {
		if p.Room.Veneer.Horizontal {
			continue
		}
		t.Run(file, func(t *testing.T) {
			all := strings.Join(printed(t, p), " ")
			require.Contains(t, all, "REGISTER")
			found := 0
			for _, m := range mark.FindAllStringSubmatch(all[strings.Index(all, "REGISTER"):], -1) {
				for i := range p.Runs {
					for k := range p.Runs[i].Sheets {
						s := &p.Runs[i].Sheets[k]
						if s.CutLength == 0 || s.Flitch != m[1] || m[2] != "" && m[2] != strconv.Itoa(s.Course) {
							continue
						}
						found++
						head, foot := s.Above, s.Below // what is kept over the mark and under it
						have := p.Room.Veneer.Length
						if m[4] != "" {
							at := read(t, p, m[4]) + length.Inch/16
							assert.LessOrEqual(t, head, at, "sheet %d is cut over the mark", s.Number)
							assert.LessOrEqual(t, foot, have-at+length.Inch/8, "and under it")
							continue
						}
						at := read(t, p, m[5])
						assert.LessOrEqual(t, at, -foot+length.Inch/16, "sheet %d begins at the raw end or over it", s.Number)
						assert.LessOrEqual(t, head-at, have+length.Inch/16)
					}
				}
			}
			cut := 0
			for i := range p.Runs {
				for k := range p.Runs[i].Sheets {
					if p.Runs[i].Sheets[k].CutLength > 0 {
						cut++
					}
				}
			}
			assert.Equal(t, cut, found, "every sheet has a register, and one")
		})
	}
}

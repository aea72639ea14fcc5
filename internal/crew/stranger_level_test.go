package crew_test

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/room"
)

// partAt is how much of what an upright moves by from floor to ceiling at an end of a wall it has moved by at a height.
func partAt(p *layout.Plan, wall int, whole length.Length, right bool, z length.Length) length.Length {
	w := &p.Room.Walls[wall]
	floor, ceiling := room.AtRight(w.Floor, 0), room.AtRight(w.Ceiling, 0)
	if right {
		floor, ceiling = room.At(w.Floor, w.Length), room.At(w.Ceiling, w.Length)
	}
	return length.Length(float64(whole) * float64(z-floor) / float64(ceiling-floor))
}

// cornerAt is how far right of where it stands at the floor a corner of a wall is at a height.
func cornerAt(p *layout.Plan, wall int, right bool, z length.Length) length.Length {
	lean := p.Room.Walls[wall].LeanLeft
	if right {
		lean = p.Room.Walls[wall].LeanRight
	}
	return partAt(p, wall, lean, right, z)
}

// skewInto is how much more than the wall's left corner the sheets lean that come round it.
func skewInto(p *layout.Plan, wall int) length.Length {
	for i := range p.Runs {
		for _, c := range p.Runs[i].Corners {
			if c.RightWall == wall {
				return p.Room.Walls[c.LeftWall].LeanRight - p.Room.Walls[wall].LeanLeft
			}
		}
	}
	return 0
}

// TestLinesAreFiguredAtTheLevelLine hooks the tape where the left corner of a wall crosses the level line, and finds every line
// at its figure: plumb over where it stands at the floor, but for the edges that come askew round the corner.
func TestLinesAreFiguredAtTheLevelLine(t *testing.T) {
	one := regexp.MustCompile(`^` + figure + `$`)
	for file, p := range rooms(t) {
		t.Run(file, func(t *testing.T) {
			level, found := p.Room.Space.LevelLine, 0
			for _, g := range written(t, p, "plumb-line") {
				i := slices.IndexFunc(p.Room.Walls, func(w room.Wall) bool { return w.Name == g.wall })
				require.GreaterOrEqual(t, i, 0, g.page)
				words := strings.Join(g.words, " ")
				s, err := length.Parse(g.facts["data-at"], length.Millimetres)
				require.NoError(t, err)
				r, st := stretchOf(p, i)
				if r.Up {
					m := regexp.MustCompile(`^` + figure + ` ([↑↓])$`).FindStringSubmatch(words)
					require.NotNil(t, m, words)
					z := read(t, p, m[1])
					if m[2] == "↓" {
						z = -z
					}
					at, err := length.Parse(g.facts["data-at"], length.Millimetres)
					require.NoError(t, err)
					assert.True(t, near(at, level+z), "%s: a band's line at %s", words, p.Style.Format(at))
					found++
					continue
				}
				m := one.FindStringSubmatch(words)
				require.NotNil(t, m, words)
				at := cornerAt(p, i, false, level) + read(t, p, m[1])
				on := func(x length.Length) bool {
					return near(x, at) || near(x-partAt(p, i, skewInto(p, i), false, level), at)
				}
				x := s - st.Shift
				assert.True(t, on(x) || r.Closed && (on(x+r.Length) || on(x-r.Length)), "%s: %s at %s from the floor's corner", g.page, words, p.Style.Format(x))
				found++
			}
			assert.Positive(t, found)
		})
	}
}

// stretchOf is where a wall lies in its run.
func stretchOf(p *layout.Plan, wall int) (*layout.Run, layout.Stretch) {
	for i := range p.Runs {
		for _, st := range p.Runs[i].Walls {
			if st.Wall == wall {
				return &p.Runs[i], st
			}
		}
	}
	return nil, layout.Stretch{}
}

// TestAskewEdgesSayHowTheyStand measures from the corner at three heights to the right edge of a sheet that comes askew round
// it: as much as the sheet has left there, which was hung plumb on the wall before.
func TestAskewEdgesSayHowTheyStand(t *testing.T) {
	said := regexp.MustCompile(`(?:\b([A-Z]): )?(\d+), raw right edge from the corner: foot ` + figure + `, level ` + figure + `, head ` + figure + `: do not pull it plumb; the seam is cut plumb`)
	found := 0
	for file, p := range rooms(t) {
		for _, page := range printed(t, p) {
			for _, m := range said.FindAllStringSubmatch(page, -1) {
				found++
				i := wallNamed(p, page)
				if m[1] != "" {
					i = letterOf(p, page, m[1])
				}
				r, s := sheetOf(t, p, m[2])
				c := r.Corners[slices.IndexFunc(r.Corners, func(c layout.Corner) bool { return c.RightWall == i })]
				left, w := &p.Room.Walls[c.LeftWall], &p.Room.Walls[i]
				assert.NotEqual(t, left.LeanRight, w.LeanLeft, "%s: %s", file, m[0])
				floor, ceiling := room.AtRight(w.Floor, 0), room.AtRight(w.Ceiling, 0)
				edge := s.RightLine - c.At
				for edge > r.Length/2 {
					edge -= r.Length
				}
				for k, z := range []length.Length{floor + w.Base, p.Room.Space.LevelLine, ceiling - w.Crown} {
					gone := length.Length(float64(left.LeanRight) * float64(z-floor) / float64(ceiling-floor))
					assert.True(t, near(edge-gone, read(t, p, m[3+k])), "%s: %s at height %s: %s", file, m[0], p.Style.Format(z), p.Style.Format(edge-gone))
				}
			}
		}
	}
	assert.GreaterOrEqual(t, found, 2, "corners whose walls lean differently")
}

// TestBendsAreWhereTheirFiguresSay folds each sheet at the figures of its row, from left to right, and finds the corners and
// jambs there: at the level line, and where the corner leans at both ends of the sheet as they are cut.
func TestBendsAreWhereTheirFiguresSay(t *testing.T) {
	line := regexp.MustCompile(`fold from (left|ripped) edge: (.*?)(?: slit .*)?$`)
	each := regexp.MustCompile(`(\S+)(?: (?:left|right) jamb)? at ` + figure + `(?: \(foot ` + figure + `, head ` + figure + `\)| at its foot, ` + figure + ` at its head)?`)
	leaning := 0
	for file, p := range rooms(t) {
		t.Run(file, func(t *testing.T) {
			for _, row := range cutListOf(t, p) {
				s, r := row.sheet, row.run
				var got [][]string
				if m := line.FindStringSubmatch(strings.Join(row.words, " ")); m != nil {
					assert.Equal(t, s.Ripped == "left", m[1] == "ripped", m[0])
					got = each.FindAllStringSubmatch(m[2], -1)
				}
				require.Len(t, got, len(s.Bends), "bends of sheet %d: %s", s.Number, row.words)
				before := length.Length(0)
				for _, b := range got {
					corner := slices.IndexFunc(r.Corners, func(c layout.Corner) bool { return c.Name == b[1] })
					at := func(z length.Length) length.Length { // where the room has it
						for _, x := range s.Bends {
							for _, turn := range []length.Length{0, r.Length, -r.Length} {
								x := x + turn - s.StartLine
								if turn != 0 && !r.Closed || x <= 0 || x >= s.Right-s.StartLine {
									continue
								}
								by := length.Length(0)
								if corner >= 0 {
									by = cornerAt(p, r.Corners[corner].LeftWall, true, z)
								}
								if (x + by - read(t, p, b[2])).Abs() <= length.Inch/4+by.Abs() {
									return x + by
								}
							}
						}
						return -1
					}
					level := p.Room.Space.LevelLine
					first, foot, head := read(t, p, b[2]), b[3], b[4]
					assert.GreaterOrEqual(t, first, before, "from left to right")
					before = first
					switch {
					case foot != "":
						leaning++
						assert.True(t, near(first, at(level)) && near(read(t, p, foot), at(level-s.Below)) && near(read(t, p, head), at(level+s.Above)), "sheet %d: %s", s.Number, b[0])
					case b[5] != "":
						leaning++
						assert.True(t, near(first, at(level-s.Below)) && near(read(t, p, b[5]), at(level+s.Above)), "sheet %d: %s", s.Number, b[0])
					default:
						assert.True(t, near(first, at(level)), "sheet %d: %s, %s", s.Number, b[0], strconv.FormatBool(corner >= 0))
					}
				}
			}
		})
	}
	assert.Greater(t, leaning, 4)
}

// TestWallsHaveOneLength finds the length of every wall on the start page and at the end of its own: the same figure, or where its
// ends lean both, each under its name, on both pages.
func TestWallsHaveOneLength(t *testing.T) {
	differ := 0
	for file, p := range rooms(t) {
		all := strings.Join(printed(t, p), " ")
		for _, g := range written(t, p, "wall-end") {
			i := slices.IndexFunc(p.Room.Walls, func(w room.Wall) bool { return w.Name == g.wall })
			require.GreaterOrEqual(t, i, 0, g.page)
			w := &p.Room.Walls[i]
			floor, end := p.Style.Format(w.Length), strings.Join(g.words, " ")
			if end == floor {
				assert.Contains(t, all, w.Name+" "+floor, "%s: %s", file, g.page)
				continue
			}
			if r, _ := stretchOf(p, i); r.Up {
				continue // its figures are heights
			}
			differ++
			at := w.Length - cornerAt(p, i, false, p.Room.Space.LevelLine)
			where := [2]string{"from 0", "from 0 to its end"} // over a floor that comes up to the level line
			if room.At(w.Floor, w.Length) < p.Room.Space.LevelLine {
				at += cornerAt(p, i, true, p.Room.Space.LevelLine)
				where = [2]string{"level", "at the level line"}
			}
			assert.True(t, near(at, read(t, p, end)), "%s: %s ends at %s", file, g.page, end)
			assert.Contains(t, all, "floor "+floor+" "+where[0]+" "+end+" ", "%s: %s", file, g.page)
			assert.Contains(t, all, "wall: "+floor+" at the floor, "+end+" "+where[1], "%s: %s", file, g.page)
		}
	}
	assert.GreaterOrEqual(t, differ, 6, "walls whose length at the level line is another than at the floor")
}

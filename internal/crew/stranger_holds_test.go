package crew_test

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/days"
)

// TestHoldsAreTheSameEverywhere reads after which sheets the walls' pages stop, and how many sheets the cut list cuts first:
// those of the timetable.
func TestHoldsAreTheSameEverywhere(t *testing.T) {
	after := regexp.MustCompile(`HOLD after ([\d+]+(?: and [\d+]+)*) look from`)
	for file, p := range rooms(t) {
		t.Run(file, func(t *testing.T) {
			var want []string
			for _, k := range days.Of(p).Tasks {
				if k.Hold != days.NoHold {
					want = append(want, itoa(k.Number))
				}
			}
			require.NotEmpty(t, want)
			var got []string
			pages := printed(t, p)
			for _, page := range pages {
				for _, m := range after.FindAllStringSubmatch(page, -1) {
					for _, numbers := range strings.Split(m[1], " and ") {
						sheets := strings.Split(numbers, "+")
						got = append(got, sheets[len(sheets)-1])
					}
				}
			}
			slices.Sort(got)
			slices.Sort(want)
			assert.Equal(t, want, got, "on the walls")
			first, then := "", "" // the last row before the hold, and the first after it
			list := cutListOf(t, p)
			words := strings.Join(pages, " ")
			for i, row := range list {
				if slices.Contains(want, itoa(row.sheet.Number)) && first == "" {
					if first = itoa(row.sheet.Number); i+1 < len(list) {
						then = itoa(list[i+1].sheet.Number)
					}
				}
			}
			if then != "" {
				assert.Regexp(t, `THEN, when the hold is signed(?: NUMBER flitch CUT \S+ \S+ rip, to wall)? \d+ `+then+` `, words)
			}
		})
	}
}

// TestTurnedSheetsHaveAnArrow finds an arrow on the walls for every sheet that hangs head down, and for every sheet that the level
// line does not come to the mark at the end from which its heights are.
func TestTurnedSheetsHaveAnArrow(t *testing.T) {
	turned, high := 0, 0
	for file, p := range rooms(t) {
		arrows := written(t, p, "turned")
		marks := written(t, p, "raw-end")
		for i := range p.Runs {
			for k := range p.Runs[i].Sheets {
				s := &p.Runs[i].Sheets[k]
				if s.Hung || len(s.Pieces) == 0 || p.Runs[i].Up {
					continue
				}
				of := func(g svgGroup) bool {
					return g.facts["data-place"] == itoa(s.Place) && g.facts["data-course"] == itoa(s.Course)
				}
				if s.Turned {
					turned++
				}
				ends := s.Below < 0 && lineOf(t, p, s) != 2 // neither line crosses it
				if ends {
					high++
				}
				assert.Equal(t, s.Turned, slices.ContainsFunc(arrows, of), "%s: arrow of sheet %d", file, s.Number)
				assert.Equal(t, ends, slices.ContainsFunc(marks, of), "%s: mark of sheet %d", file, s.Number)
			}
		}
	}
	assert.Greater(t, turned, 10)
	assert.Greater(t, high, 20)
}

// TestWallsSayWhereCoursesMeet reads the height of every joint on the page of each wall that has it.
func TestWallsSayWhereCoursesMeet(t *testing.T) {
	found := 0
	meet := regexp.MustCompile(`courses meet at: ` + figure + ` (up|down)`)
	for file, p := range rooms(t) {
		for _, page := range printed(t, p) {
			for _, m := range meet.FindAllStringSubmatch(page, -1) {
				z := read(t, p, m[1])
				if m[2] == "down" {
					z = -z
				}
				i := wallNamed(p, page)
				require.GreaterOrEqual(t, i, 0)
				joint := false
				for k := range p.Runs {
					for _, s := range p.Runs[k].Sheets {
						for _, q := range s.Pieces {
							joint = joint || s.Course > 1 && q.Wall == i && len(q.Outline) > 0 && near(q.Outline[0].Z, p.Room.Space.LevelLine+z)
						}
					}
				}
				assert.True(t, joint, "%s: %s on %s", file, m[0], p.Room.Walls[i].Name)
				found++
			}
		}
	}
	assert.GreaterOrEqual(t, found, 3, "two walls of one room and one of another")
}

// TestWorkGoesOnWhereSheetsAreLeft reads on the pages of a room that hangs in part where it starts again, what still has to
// lie on the floor, and that nothing that hangs is listed past the end of its wall.
func TestWorkGoesOnWhereSheetsAreLeft(t *testing.T) {
	for _, file := range []string{"halfhung", "halfhung-edge"} {
		p := rooms(t)[file]
		tasks := days.Of(p).Tasks
		pages := printed(t, p)
		assert.Contains(t, pages[0], "STILL TO HANG: "+itoa(len(tasks))+" sheets", file)
		assert.NotContains(t, pages[0], "HOLD 0", file)
		assert.Contains(t, strings.Join(pages, " "), "START "+itoa(tasks[0].Number)+" ", file)
		assert.Equal(t, days.FirstSheets, tasks[2].Hold, "after the third that is left")
		for _, page := range pages {
			i := wallNamed(p, page)
			if !strings.Contains(page, "TAPE LIST") || i < 0 {
				continue
			}
			for _, m := range regexp.MustCompile(`hangs `+figure).FindAllStringSubmatch(page, -1) {
				assert.LessOrEqual(t, read(t, p, m[1]), p.Room.Walls[i].Length, "%s: %s on %s", file, m[0], p.Room.Walls[i].Name)
			}
		}
	}
}

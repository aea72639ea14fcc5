package crew_test

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/days"
	"flitchlay/internal/layout"
	"flitchlay/internal/roomtest"
	"flitchlay/internal/scene"
)

// TestHoldsAreTheSameEverywhere reads the hold points of the timetable, of the walls' pages and of the cut list: each has its number
// and its sheets, the same in all three; on the walls and in the timetable it has a signature of its own, and in the cut list it
// stands right under the last sheet before it.
func TestHoldsAreTheSameEverywhere(t *testing.T) {
	hold := `HOLD (\d+) after ([\d+]+)`
	looks := regexp.MustCompile(hold + `: look at`)
	signed := regexp.MustCompile(hold + `: (?:the first sheets|the new flitch|all of it) name, signature date, time`)
	field := regexp.MustCompile(hold + ` (?:` + hold + ` )?(?:look from [^;]*; call )?name, signature date, time`)
	after := regexp.MustCompile(hold)
	listed := regexp.MustCompile(hold + `(?:\. THEN, when it is signed: (\d+) |)`)
	for file, p := range rooms(t) {
		t.Run(file, func(t *testing.T) {
			want := holdsOf(p)
			require.NotEmpty(t, want)
			var timetable, lines, walls, cuts []string
			for i, page := range printed(t, p) {
				switch {
				case strings.Contains(page, "TAPE LIST"):
					walls = append(walls, found(after, field.FindString(page))...)
				case strings.Contains(page, "TIMETABLE"):
					timetable, lines = append(timetable, found(looks, page)...), append(lines, found(signed, page)...)
				case install(t, p).Pages[i].Title == "Cut list":
					cuts = append(cuts, found(listed, page)...)
				}
			}
			slices.Sort(walls) // which are in the order of their pages
			assert.Equal(t, want, timetable, "in the timetable")
			assert.Equal(t, want, lines, "signed in the timetable")
			assert.Equal(t, want, walls, "signed on the walls")
			assert.Equal(t, want, cuts, "in the cut list")
			drawn := map[string]bool{}
			for _, g := range written(t, p, "sign") {
				drawn[g.facts["data-hold"]] = true
			}
			assert.Len(t, drawn, len(want), "each with lines of its own")
			all := strings.Join(printed(t, p), " ")
			for i, task := range days.Of(p).Tasks {
				if tasks := days.Of(p).Tasks; task.Hold != days.NoHold && i+1 < len(tasks) {
					assert.Regexp(t, "HOLD "+itoa(task.HoldNo)+` after [\d+]+\. THEN, when it is signed:(?: .{0,160}NUMBER flitch CUT \S+ \S+ rip, to wall)? \d+ `+itoa(tasks[i+1].Number)+" ", all)
				}
			}
		})
	}
}

// holdsOf are the hold points of a plan as they are printed.
func holdsOf(p *layout.Plan) (list []string) {
	s := days.Of(p)
	for i := range s.Tasks {
		if k := &s.Tasks[i]; k.Hold != days.NoHold {
			var numbers []string
			for _, x := range s.Column(k) {
				numbers = append(numbers, itoa(x.Number))
			}
			list = append(list, itoa(k.HoldNo)+" after "+strings.Join(numbers, "+"))
		}
	}
	return list
}

// found are the hold points that a pattern finds on a page.
func found(pattern *regexp.Regexp, page string) (list []string) {
	for _, m := range pattern.FindAllStringSubmatch(page, -1) {
		list = append(list, m[1]+" after "+m[2])
	}
	return list
}

// TestEveryHoldOfAPageIsSigned reads a wall whose flitches change so often that a page has more hold points than it has lines for:
// those are signed with the hanging days, which the page names.
func TestEveryHoldOfAPageIsSigned(t *testing.T) {
	text, _, _ := strings.Cut(roomtest.Head("in"), "[[flitch]]")
	for _, f := range []string{"P", "Q", "R", "S"} {
		text += "[[flitch]]\nnumber = '" + f + "'\nsheets = '1-2'\n"
	}
	p := roomtest.Laid(t, "flitches.toml", text+"[day]\ngroup = 2\nplain = 2\ncut = 2\nrest = 0\nlay_out = 0\nlook = 2\n"+roomtest.Wall("Long wall", "15' 6", "9'"))
	require.Len(t, holdsOf(p), 4)
	all := strings.Join(printed(t, p), " ")
	m := regexp.MustCompile(`HOLD 1 after 2 name, signature date, time HOLD 2 to 4: sign pages (\d+), (\d+) look from`).FindStringSubmatch(all)
	require.NotNil(t, m, all)
	signed := ""
	for _, n := range m[1:] {
		page, err := strconv.Atoi(n)
		require.NoError(t, err)
		signed += printed(t, p)[page-1] + " "
	}
	for _, hold := range []string{"HOLD 2 after 2: the new flitch name, signature", "HOLD 3 after 2: the new flitch name, signature", "HOLD 4 after 2: all of it name, signature"} {
		assert.Contains(t, signed, hold)
	}
}

// TestRulesOfAListStandWhereHoldsFallDue finds the heavy rule of a column unrolled, whose last sheet closes on the wall that is listed
// first, under the last row of the list.
func TestRulesOfAListStandWhereHoldsFallDue(t *testing.T) {
	found := 0
	for _, page := range install(t, rooms(t)["freecol"]).Pages {
		for _, g := range roomtest.PartsOf(&page.Group, "tape-list") {
			heavy, last := 0.0, 0.0
			for _, it := range g.Items {
				switch x := it.(type) {
				case *scene.Line:
					if x.Style.Width == 1 {
						assert.Zero(t, heavy, "one hold")
						heavy = x.A.Y
					}
				case *scene.Rect:
					last = max(last, x.Box.Y1)
				}
			}
			assert.InDelta(t, last, heavy, 0.5)
			found++
		}
	}
	assert.Equal(t, 1, found)
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

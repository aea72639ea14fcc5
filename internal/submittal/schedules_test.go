package submittal

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/roomtest"
	"flitchlay/internal/scene"
)

// Figures of a metric room have a comma, all of them.
//
// Source: ISO 129-1:2018: the decimal marker is a comma.
func TestMetricSchedulesHaveDecimalCommas(t *testing.T) {
	points, commas := regexp.MustCompile(`\d\.\d`), 0
	listPages(t, func(t *testing.T, s *folio.Set, pages []*scene.Page) {
		if !s.Metric() {
			return
		}
		for _, p := range pages {
			if p.Name < s.Paper.PageNumber(int(folio.Schedules), 1) {
				continue
			}
			p.Texts(func(x *scene.Text) {
				if x.At.Y > s.Paper.Field.Y+s.Paper.Field.H {
					return // the title block says what the room file does
				}
				assert.NotRegexp(t, points, x.String)
				if regexp.MustCompile(`^\d+,\d`).MatchString(x.String) {
					commas++
				}
			})
		}
	})
	assert.Greater(t, commas, 100)
}

// The title of a page of schedules says which tables it holds, and the first page of each is found by its name.
func TestSchedulePagesAreNamedByWhatTheyHold(t *testing.T) {
	names := []scheduleName{{title: "SHEETS"}, {title: "SEAMS"}, {title: "OPENINGS"}, {title: "BOXES"}, {title: "QUANTITIES"}, {title: "QUANTITIES"}}
	for _, c := range []struct {
		first, last int
		want        string
	}{{0, 0, "SCHEDULE OF SHEETS"}, {0, 1, "SHEETS, SEAMS"}, {1, 1, "SCHEDULE OF SEAMS"}, {0, 5, "SHEETS TO QUANTITIES"}, {2, 3, "OPENINGS, BOXES"}, {4, 5, "SCHEDULE OF QUANTITIES"}} {
		assert.Equal(t, c.want, scheduleTitle(names, c.first, c.last))
	}
	listPages(t, func(t *testing.T, s *folio.Set, pages []*scene.Page) {
		list := listedOn(s.Paper, pages)
		titles := []string{"SCHEDULE OF SHEETS", "SEAMS", "JOINTS", "OPENINGS", "BOXES", "QUANTITIES", "FLITCHES"}
		if !jointed(s) {
			titles = slices.Delete(titles, 2, 3)
		}
		for i, title := range titles {
			for _, l := range list {
				if l.Title == title && !l.Goes {
					assert.Equal(t, pages[l.Page].Name, s.PageOf(scheduleNames(s)[i].about), title)
				}
			}
		}
	})
}

// Sheets that differ in nothing but their numbers share a row, which says from which number to which; every sheet of the room is in
// one row, and a row with a note, a rip or another wall stands by itself.
func TestSheetsThatRepeatShareARow(t *testing.T) {
	most := 0
	for why, p := range roomtest.SamplePlans(t) {
		s := folio.NewSet(p, roomtest.Template(t, "ansi-b"), nil, "Submittal")
		s.Number(Submittal)
		var got, want []string
		for _, r := range sheetSchedule(s).Rows {
			first, last, many := strings.Cut(r.Cells[0], " to ")
			if !many {
				got = append(got, first)
				continue
			}
			a, err := strconv.Atoi(first)
			require.NoError(t, err, why)
			b, err := strconv.Atoi(last)
			require.NoError(t, err, why)
			require.Greater(t, b, a, why)
			for n := a; n <= b; n++ {
				got = append(got, strconv.Itoa(n))
			}
			most = max(most, b-a+1)
		}
		for i := range p.Runs {
			for j := range p.Runs[i].Sheets {
				want = append(want, sheetRow(s, &p.Runs[i], &p.Runs[i].Sheets[j]).Cells[0])
			}
		}
		assert.Equal(t, want, got, why)
	}
	assert.GreaterOrEqual(t, most, 8, "of the reading room's longest wall")
	row := func(cells ...string) draft.Row { return draft.Row{Cells: cells} }
	assert.Equal(t, []draft.Row{row("13 to 15", "North"), row("16", "East"), row("18", "East"), row("-", "East"), row("-", "East")},
		grouped([]draft.Row{row("13", "North"), row("14", "North"), row("15", "North"), row("16", "East"), row("18", "East"), row("-", "East"), row("-", "East")}))
}

// Sheets that lie say from where to where they do, their seams how high they are and on which page, and where sheets meet end to end is
// listed with who meets there; a set without such joints has no list of them.
func TestLevelSheetsAreListedByTheirWall(t *testing.T) {
	text := strings.Replace(roomtest.Head("in"), "[veneer]", "[veneer]\ngrain = \"horizontal\"", 1) + roomtest.Wall("Bar back", `18'`, `8'`) + roomtest.Wall("Return", `5'`, `8'`)
	s := folio.NewSet(roomtest.Laid(t, "room.toml", text), roomtest.Template(t, "ansi-b"), nil, "Submittal")
	s.Number(Submittal)
	column := func(tb *draft.Table, head string) int {
		return slices.IndexFunc(tb.Columns, func(c draft.Column) bool { return c.Head == head })
	}
	sheets := sheetSchedule(s)
	require.Negative(t, column(sheets, "ABOVE LINE"))
	from, to := column(sheets, "FROM"), column(sheets, "TO")
	require.Positive(t, from)
	assert.Equal(t, []string{`0"`, `9'-0"`}, []string{sheets.Rows[0].Cells[from], sheets.Rows[0].Cells[to]})
	seams := seamSchedule(s)
	assert.Contains(t, seams.Title, "heights")
	for i, r := range seams.Rows {
		assert.NotEmpty(t, r.Cells[column(seams, "PAGE")], "row %d", i)
		assert.NotEmpty(t, r.Link)
	}
	joints := jointSchedule(s)
	require.Len(t, joints.Rows, 1, "the return takes one sheet to a band")
	assert.Equal(t, `9'-0"`, joints.Rows[0].Cells[2])
	assert.Regexp(t, `^1, 3, 5`, joints.Rows[0].Cells[3])
	assert.Regexp(t, `^2, 4, 6`, joints.Rows[0].Cells[4])
	upright := folio.NewSet(roomtest.Laid(t, "room.toml", roomtest.Head("in")+roomtest.Wall("North", `9'`, `8'`)), roomtest.Template(t, "ansi-b"), nil, "Submittal")
	assert.False(t, jointed(upright))
	assert.Len(t, scheduleBlocks(upright), len(scheduleNames(upright)))
}

// Spare sheets have one figure: what the table of flitches keeps back, and only where no flitch is given how many are wanted.
func TestSparesAreCountedInOnePlace(t *testing.T) {
	spares := func(text string) (kept, wanted bool) {
		s := folio.NewSet(roomtest.Laid(t, "room.toml", text+roomtest.Wall("North", `9'`, `8'`)), roomtest.Template(t, "ansi-b"), nil, "")
		for _, r := range quantities(s).Rows {
			wanted = wanted || strings.Contains(strings.ToLower(r.Cells[0]), "spare")
		}
		return len(s.Plan.Left) > 0, wanted
	}
	kept, wanted := spares(roomtest.Head("in"))
	assert.True(t, kept && !wanted)
	kept, wanted = spares(regexp.MustCompile(`(?s)\[\[flitch\]\].*?(\n\[|$)`).ReplaceAllString(roomtest.Head("in"), "$1"))
	assert.True(t, !kept && wanted)
}

// A number that is left out of the sequence is said at its seam, and among the places at which the grain breaks.
func TestNumbersLeftOutBreakTheMatch(t *testing.T) {
	text := strings.Replace(roomtest.Head("in"), `"1-60"`, `"1-60"`+"\ndamaged = [3]", 1) + roomtest.Wall("North", `16'`, `8'`)
	s := folio.NewSet(roomtest.Laid(t, "room.toml", text), roomtest.Template(t, "ansi-b"), nil, "Submittal")
	s.Number(Submittal)
	found := 0
	for _, r := range seamSchedule(s).Rows {
		if r.Cells[0] == "2 | 4" {
			found++
			assert.Contains(t, r.Cells, "sheet 3 left out")
		}
	}
	assert.Equal(t, 1, found)
	assert.Contains(t, strings.Join(breaks(s), "; "), "at 2 | 4 on wall North, where sheet 3 is left out")
}

// Where two flitches have sheets of the same numbers the schedule of seams says of each seam whose; elsewhere a number is enough.
func TestSeamsSayTheirFlitchWhereNumbersComeTwice(t *testing.T) {
	for sample, want := range map[string]bool{"samples lift-lobby.toml": true, "samples reading-room.toml": false} {
		p := roomtest.Laid(t, "room.toml", roomtest.Samples(t)[sample])
		table := seamSchedule(folio.NewSet(p, roomtest.Template(t, "ansi-b"), nil, "Submittal"))
		assert.Equal(t, want, table.Columns[1].Head == "FLITCH", sample)
		if !want {
			continue
		}
		changes := 0
		for _, row := range table.Rows {
			assert.Contains(t, row.Cells[1], "S-", row.Cells[0])
			if strings.Contains(row.Cells[1], " | ") {
				changes++
			}
		}
		assert.Positive(t, changes, "the seam between the flitches")
	}
}

// A seam in an opening as high as the wall is said not to be cut, wherever its sheets hang besides.
func TestSeamsInWholeOpeningsAreNotCut(t *testing.T) {
	n := 0
	for _, p := range roomtest.SamplePlans(t) {
		s := folio.NewSet(p, roomtest.Template(t, "ansi-b"), nil, "Submittal")
		row := 0
		for i := range p.Runs {
			for j := range p.Runs[i].Seams {
				m := &p.Runs[i].Seams[j]
				cells := seamSchedule(s).Rows[row].Cells
				if row++; m.Seen == 0 && inOpening(s, m) && !m.Closing && !m.FlitchChange {
					assert.Equal(t, "in an opening: not cut", cells[len(cells)-1])
					n++
				}
			}
		}
	}
	assert.Positive(t, n)
}

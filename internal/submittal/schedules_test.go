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

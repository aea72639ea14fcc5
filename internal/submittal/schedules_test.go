package submittal

import (
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"

	"flitchlay/internal/folio"
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
	for _, c := range []struct {
		first, last int
		want        string
	}{{0, 0, "SCHEDULE OF SHEETS"}, {0, 1, "SHEETS, SEAMS"}, {1, 1, "SCHEDULE OF SEAMS"}, {0, 5, "SHEETS TO QUANTITIES"}, {2, 3, "OPENINGS, BOXES"}, {4, 5, "SCHEDULE OF QUANTITIES"}} {
		assert.Equal(t, c.want, scheduleTitle(c.first, c.last))
	}
	listPages(t, func(t *testing.T, s *folio.Set, pages []*scene.Page) {
		list := listedOn(s.Paper, pages)
		for i, title := range []string{"SCHEDULE OF SHEETS", "SEAMS", "OPENINGS", "BOXES", "QUANTITIES", "FLITCHES"} {
			for _, l := range list {
				if l.Title == title && !l.Goes {
					assert.Equal(t, pages[l.Page].Name, s.PageOf(scheduleNames[i].about), title)
				}
			}
		}
	})
}

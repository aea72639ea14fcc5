package submittal

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/paper"
	"flitchlay/internal/roomtest"
	"flitchlay/internal/scene"
)

// longRooms are rooms with very much to list.
func longRooms() map[string]string {
	inch := strings.Replace(roomtest.Head("in"), `"1-60"`, `"1-400"`, 1)
	var walls, bays, mm strings.Builder
	for i := range 6 {
		var parts, metric []string
		for j := range 5 {
			at := 4 + 12*j
			parts = append(parts, roomtest.Window(fmt.Sprintf("%d'", at), `3' 6`), roomtest.Box("outlet", fmt.Sprintf("%d'", at-2), "1' 6"), roomtest.Box("switch", fmt.Sprintf("%d'", at+5), "4'"))
			metric = append(metric, roomtest.WindowMM(1200+3600*j, 1000))
		}
		walls.WriteString(roomtest.Wall(fmt.Sprintf("Gallery %d", i+1), `62'`, `9'`, parts...))
		mm.WriteString(roomtest.WallMM(fmt.Sprintf("Saal %d", i+1), 19000, 2700, metric...))
		bays.WriteString(roomtest.Wall(fmt.Sprintf("Bay %d", i+1), `9'`, `9'`, roomtest.Window(`4`, `2' 3`), roomtest.Window(`3'`, `2' 3`), roomtest.Window(`5' 10`, `2' 6`)))
	}
	return map[string]string{"many sheets, openings and boxes": inch + walls.String(), "the same in metric": roomtest.Metric() + mm.String(), "many findings": inch + bays.String()}
}

// listedOn reads back which parts of tables and lists stand in the field of pages: without reviews it reaches down to the title.
func listedOn(t *paper.Template, pages []*scene.Page) (list []roomtest.Listed) {
	for i, p := range pages {
		foot := folio.BoxOf(t.Field).Y1
		if len(p.Keep) == 0 {
			foot += (&folio.Set{Paper: t}).ListBand()
		}
		for _, l := range roomtest.ListedOver(folio.LookOf(t), foot, pages[i:i+1]) {
			l.Page = i
			list = append(list, l)
		}
	}
	return list
}

// drawnLists are the pages that lists flow over, once they are drawn: no test changes them.
var drawnLists struct {
	sync.Once
	list []*drawnList
}

type drawnList struct {
	why   string
	set   *folio.Set
	pages []*scene.Page
}

// draw draws the pages of lists.
func (d *drawnList) draw(p *layout.Plan, template *paper.Template) {
	d.set = folio.NewSet(p, template, nil, "Submittal")
	d.set.Number(Submittal)
	for _, l := range d.set.List {
		if l.Kind == folio.General || l.Kind == folio.Schedules {
			b := d.set.Open(l)
			l.Draw(b)
			d.pages = append(d.pages, b.Page)
		}
	}
}

// listPages tries the pages that lists flow over: of every sample and starter and of rooms with much to list, on every
// paper; in the short run on a fifth of them.
func listPages(t *testing.T, try func(t *testing.T, s *folio.Set, pages []*scene.Page)) {
	drawnLists.Do(func() {
		rooms := roomtest.Samples(t)
		for why, text := range longRooms() {
			rooms[why] = text
		}
		var wait sync.WaitGroup
		// a fifth of the papers by turns is enough that every rule comes up, with every room and with every paper
		for i, why := range slices.Sorted(maps.Keys(rooms)) {
			for k, name := range paper.Names() {
				if !effort.Full() && (i+k)%5 != 0 {
					continue
				}
				d := &drawnList{why: why + ", " + name}
				drawnLists.list = append(drawnLists.list, d)
				p, template := roomtest.Laid(t, "room.toml", rooms[why]), roomtest.Template(t, name)
				wait.Go(func() { d.draw(p, template) })
			}
		}
		wait.Wait()
	})
	require.NotEmpty(t, drawnLists.list)
	for _, d := range drawnLists.list {
		t.Run(d.why, func(t *testing.T) { try(t, d.set, d.pages) })
	}
}

// No table goes on with fewer rows than a reader sees as a table, none is parted that is as short, no head stands alone,
// forms and charts are whole. Lists go on with two paragraphs at least.
func TestNoListEndsInAFewRows(t *testing.T) {
	parts, parted := 0, 0
	listPages(t, func(t *testing.T, s *folio.Set, pages []*scene.Page) {
		list := listedOn(s.Paper, pages)
		times, rows, high := map[string]int{}, map[string]int{}, map[string]float64{}
		for _, l := range list {
			times[l.Title]++
			rows[l.Title] += l.Rows
			high[l.Title] += l.Foot - l.At.Y
		}
		for i, l := range list {
			parts++
			assert.Positive(t, l.Rows, "%s on %s has a head alone", l.Title, pages[l.Page].Name)
			assert.Equal(t, i > 0 && list[i-1].Title == l.Title, l.Goes, "%s on %s says that it goes on", l.Title, pages[l.Page].Name)
			if times[l.Title] == 1 {
				continue
			}
			parted++
			least := folio.LeastItems
			if l.Table {
				least = folio.LeastRows
			}
			if rows[l.Title] < 2*least {
				assert.Greater(t, high[l.Title], s.Columns(1).Box.H(), "%s is parted on %s", l.Title, pages[l.Page].Name)
			}
			assert.GreaterOrEqual(t, l.Rows, min(least, rows[l.Title]/2), "%s on %s", l.Title, pages[l.Page].Name)
			for _, form := range []string{chartTitle, "QUANTITIES"} {
				assert.NotContains(t, l.Title, form, "on %s", pages[l.Page].Name)
			}
		}
	})
	assert.Greater(t, parts, effort.Of(300, 2000))
	assert.Greater(t, parted, effort.Of(30, 200), "so many are parted that the rule is tried")
}

// groupedAway counts the sheets that have no row of their own in the schedule of sheets: those of 13 to 23 but the first.
func groupedAway(pages []*scene.Page) int {
	n := 0
	for _, p := range pages {
		for _, row := range roomtest.PartsOf(&p.Group, "row") {
			if places := strings.Fields(row.Data["place"]); len(places) > 0 {
				n += len(places) - 1
			}
		}
	}
	return n
}

// What is listed is listed once and in full: every sheet, seam, opening and box has its row, and no figure is cut off.
func TestSchedulesListAllOfIt(t *testing.T) {
	listPages(t, func(t *testing.T, s *folio.Set, pages []*scene.Page) {
		sheets, seams, openings, boxes := 0, 0, 0, 0
		for i := range s.Plan.Runs {
			sheets += len(s.Plan.Runs[i].Sheets)
			seams += len(s.Plan.Runs[i].Seams)
		}
		for i := range s.Room.Walls {
			openings += len(s.Room.Walls[i].Openings)
			boxes += len(s.Room.Walls[i].Boxes)
		}
		rows := map[string]int{}
		for _, l := range listedOn(s.Paper, pages) {
			rows[l.Title] += l.Rows
		}
		rows["SCHEDULE OF SHEETS"] += groupedAway(pages)
		assert.Equal(t, []int{sheets, seams, max(openings, 1), max(boxes, 1)}, []int{rows["SCHEDULE OF SHEETS"], rows["SEAMS"], rows["OPENINGS"], rows["BOXES"]})
		for _, p := range pages {
			p.Texts(func(x *scene.Text) {
				if x.At.Y < s.Paper.Field.Y+s.Paper.Field.H {
					assert.False(t, strings.HasSuffix(x.String, "…"), "%q on %s is cut off", x.String, p.Name)
				}
			})
		}
	})
}

// Lists leave no page that is all but empty behind fuller ones: no page holds less than a quarter of what the fullest of
// its kind does, by how far down its columns go.
func TestListsFillTheirPagesEvenly(t *testing.T) {
	several := 0
	listPages(t, func(t *testing.T, s *folio.Set, pages []*scene.Page) {
		list := listedOn(s.Paper, pages)
		full := map[string]map[int]map[float64]float64{} // kind, page, column
		for _, l := range list {
			kind := pages[l.Page].Title
			if kind == "COVER" || strings.HasPrefix(kind, "NOTES") || kind == "SITE" {
				kind = "GENERAL"
			} else {
				kind = "SCHEDULES"
			}
			if full[kind] == nil {
				full[kind] = map[int]map[float64]float64{}
			}
			if full[kind][l.Page] == nil {
				full[kind][l.Page] = map[float64]float64{}
			}
			full[kind][l.Page][l.At.X] = max(full[kind][l.Page][l.At.X], l.Foot-folio.BoxOf(s.Paper.Field).Y0)
		}
		for kind, on := range full {
			least, most := math.Inf(1), 0.0
			for _, columns := range on {
				sum := 0.0
				for _, high := range columns {
					sum += high
				}
				least, most = min(least, sum), max(most, sum)
			}
			if len(on) > 1 {
				several++
			}
			assert.Greater(t, least, most/4, kind)
		}
	})
	assert.Greater(t, several, effort.Of(20, 60))
}

// Nothing touches on the pages of lists.
func TestNothingOverlapsOnThePagesOfLists(t *testing.T) {
	listPages(t, func(t *testing.T, _ *folio.Set, pages []*scene.Page) {
		t.Parallel()
		for _, p := range pages {
			for _, o := range scene.Overlaps(p, 0.5) {
				t.Errorf("%s: %v", p.Name, o)
			}
		}
	})
}

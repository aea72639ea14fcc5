package pages

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/draft"
	"flitchlay/internal/paper"
	"flitchlay/internal/scene"
)

// longRooms are rooms with very much to list.
func longRooms() map[string]string {
	inch := strings.Replace(head("in"), `"1-60"`, `"1-400"`, 1)
	var walls, bays, mm strings.Builder
	for i := range 6 {
		var parts, metric []string
		for j := range 5 {
			at := 4 + 12*j
			parts = append(parts, window(fmt.Sprintf("%d'", at), `3' 6`), box("outlet", fmt.Sprintf("%d'", at-2), "1' 6"), box("switch", fmt.Sprintf("%d'", at+5), "4'"))
			metric = append(metric, windowMM(1200+3600*j, 1000))
		}
		walls.WriteString(wall(fmt.Sprintf("Gallery %d", i+1), `62'`, `9'`, parts...))
		mm.WriteString(wallMM(fmt.Sprintf("Saal %d", i+1), 19000, 2700, metric...))
		bays.WriteString(wall(fmt.Sprintf("Bay %d", i+1), `9'`, `9'`, window(`4`, `2' 3`), window(`3'`, `2' 3`), window(`5' 10`, `2' 6`)))
	}
	return map[string]string{"many sheets, openings and boxes": inch + walls.String(), "the same in metric": metric() + mm.String(), "many findings": inch + bays.String()}
}

// listed is a part of a table or list as it is drawn on a page.
type listed struct {
	title string // its main part, as it is repeated
	goes  bool   // goes on from another part
	page  int
	at    scene.Point
	rows  int       // of a table: the lines under its rows; of a list: the marks before its paragraphs
	foot  float64   // the lowest of it
	lines []float64 // of a table, from the upper one on
	table bool
}

// listedOn reads back which parts of tables and lists stand in the field of pages.
func listedOn(t *paper.Template, pages []*scene.Page) []listed {
	return listedOver(lookOf(t), boxOf(t.Field).Y1, pages)
}

// listedOver reads back the same of a look, over the foot of a field.
func listedOver(k draft.Look, foot float64, pages []*scene.Page) []listed {
	var list []listed
	for i, p := range pages {
		from := len(list)
		p.Texts(func(x *scene.Text) {
			if x.Height == k.Medium && x.Bold && x.Seat == scene.Hanging && x.Layer == scene.Notes && x.At.Y < foot {
				title, goes := strings.CutSuffix(x.String, " (continued)")
				if !goes {
					title, goes = strings.CutSuffix(title, ", on")
				}
				title, _, _ = strings.Cut(title, ",")
				list = append(list, listed{title: title, goes: goes, page: i, at: x.At})
			}
		})
		here := list[from:]
		// under gives the part whose left edge is at x, the nearest over y
		under := func(x, y float64) *listed {
			var found *listed
			for j := range here {
				if l := &here[j]; math.Abs(l.at.X-x) < 1e-6 && l.at.Y < y && y < foot && (found == nil || l.at.Y > found.at.Y) {
					found = l
				}
			}
			return found
		}
		p.Walk(func(it scene.Item) {
			if line, ok := it.(*scene.Line); ok && line.A.Y == line.B.Y && line.Layer == scene.Frame {
				if l := under(line.A.X, line.A.Y); l != nil {
					l.table = true
					l.rows++
					l.foot = max(l.foot, line.A.Y)
					l.lines = append(l.lines, line.A.Y)
				}
			}
		})
		p.Texts(func(x *scene.Text) {
			if l := under(x.At.X, x.At.Y); l != nil && !l.table && x.Height == k.Small {
				l.rows++
				l.foot = max(l.foot, x.At.Y+x.Height)
			}
		})
		for j := range here {
			switch l := &here[j]; {
			case l.table && headless[l.title]:
				l.rows-- // the line over the first row
			case l.table:
				l.rows -= 2 // and the one over the head
			}
		}
	}
	return list
}

// headless are the tables whose columns have no heads.
var headless = map[string]bool{"SUBMITTAL": true, "MATERIAL": true, "SHOP AND SITE": true, "QUANTITIES": true, "MOISTURE OVER HUMIDITY": true}

// drawnLists are the pages that lists flow over, once they are drawn: no test changes them.
var drawnLists struct {
	sync.Once
	list []drawnList
}

type drawnList struct {
	why   string
	set   *set
	pages []*scene.Page
}

// listPages tries the pages that lists flow over: of every sample and starter and of rooms with much to list, on every
// paper.
func listPages(t *testing.T, try func(t *testing.T, s *set, pages []*scene.Page)) {
	drawnLists.Do(func() {
		rooms := samples(t)
		for why, text := range longRooms() {
			rooms[why] = text
		}
		for why, text := range rooms {
			for _, name := range paper.Names() {
				s := newSet(laid(t, "room.toml", text), template(t, name), nil, "Submittal")
				s.number(submittal)
				var pages []*scene.Page
				for _, l := range s.list {
					if l.kind == general || l.kind == schedules {
						b := s.open(l)
						l.draw(b)
						pages = append(pages, b.page)
					}
				}
				drawnLists.list = append(drawnLists.list, drawnList{why + ", " + name, s, pages})
			}
		}
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
	listPages(t, func(t *testing.T, s *set, pages []*scene.Page) {
		list := listedOn(s.paper, pages)
		times, rows, high := map[string]int{}, map[string]int{}, map[string]float64{}
		for _, l := range list {
			times[l.title]++
			rows[l.title] += l.rows
			high[l.title] += l.foot - l.at.Y
		}
		for i, l := range list {
			parts++
			assert.Positive(t, l.rows, "%s on %s has a head alone", l.title, pages[l.page].Name)
			assert.Equal(t, i > 0 && list[i-1].title == l.title, l.goes, "%s on %s says that it goes on", l.title, pages[l.page].Name)
			if times[l.title] == 1 {
				continue
			}
			parted++
			least := leastItems
			if l.table {
				least = leastRows
			}
			if rows[l.title] < 2*least {
				assert.Greater(t, high[l.title], s.columns(1).box.H(), "%s is parted on %s", l.title, pages[l.page].Name)
			}
			assert.GreaterOrEqual(t, l.rows, min(least, rows[l.title]/2), "%s on %s", l.title, pages[l.page].Name)
			for _, form := range []string{chartTitle, "WALLS RELEASED", "TEMPERATURE AND", "MOISTURE READINGS", "QUANTITIES"} {
				assert.NotContains(t, l.title, form, "on %s", pages[l.page].Name)
			}
		}
	})
	assert.Greater(t, parts, 2000)
	assert.Greater(t, parted, 200, "so many are parted that the rule is tried")
}

// What is listed is listed once and in full: every sheet, seam, opening and box has its row, and no figure is cut off.
func TestSchedulesListAllOfIt(t *testing.T) {
	listPages(t, func(t *testing.T, s *set, pages []*scene.Page) {
		sheets, seams, openings, boxes := 0, 0, 0, 0
		for i := range s.plan.Runs {
			sheets += len(s.plan.Runs[i].Sheets)
			seams += len(s.plan.Runs[i].Seams)
		}
		for i := range s.room.Walls {
			openings += len(s.room.Walls[i].Openings)
			boxes += len(s.room.Walls[i].Boxes)
		}
		rows := map[string]int{}
		for _, l := range listedOn(s.paper, pages) {
			rows[l.title] += l.rows
		}
		assert.Equal(t, []int{sheets, seams, max(openings, 1), max(boxes, 1)}, []int{rows["SCHEDULE OF SHEETS"], rows["SEAMS"], rows["OPENINGS"], rows["BOXES"]})
		for _, p := range pages {
			p.Texts(func(x *scene.Text) {
				if x.At.Y < s.paper.Field.Y+s.paper.Field.H {
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
	listPages(t, func(t *testing.T, s *set, pages []*scene.Page) {
		list := listedOn(s.paper, pages)
		full := map[string]map[int]map[float64]float64{} // kind, page, column
		for _, l := range list {
			kind := pages[l.page].Title
			if kind != "COVER" && kind != "SITE AND CAUTIONS" {
				kind = "SCHEDULES"
			}
			if full[kind] == nil {
				full[kind] = map[int]map[float64]float64{}
			}
			if full[kind][l.page] == nil {
				full[kind][l.page] = map[float64]float64{}
			}
			full[kind][l.page][l.at.X] = max(full[kind][l.page][l.at.X], l.foot-boxOf(s.paper.Field).Y0)
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
	assert.Greater(t, several, 60)
}

// Nothing touches on the pages of lists.
func TestNothingOverlapsOnThePagesOfLists(t *testing.T) {
	listPages(t, func(t *testing.T, _ *set, pages []*scene.Page) {
		for _, p := range pages {
			for _, o := range scene.Overlaps(p, 0.5) {
				t.Errorf("%s: %v", p.Name, o)
			}
		}
	})
}

// tried are blocks as a seed makes them: small tables, long ones, forms, lists.
func tried(seed uint64) ([]block, columns) {
	r := rand.New(rand.NewPCG(seed, 1))
	var blocks []block
	for range 1 + r.IntN(3) {
		if r.IntN(3) == 0 {
			b := block{title: "LIST"}
			for range r.IntN(5) {
				b.items = append(b.items, draft.Item{Mark: "1", Text: strings.Repeat("words ", 1+r.IntN(30))})
			}
			blocks = append(blocks, b)
			continue
		}
		b := block{table: &draft.Table{Title: "TABLE", Columns: []draft.Column{{Head: "A"}}}, whole: r.IntN(4) == 0}
		for i := range r.IntN(14) {
			b.table.Rows = append(b.table.Rows, draft.Row{Cells: []string{"a"}, On: i > 0 && r.IntN(5) == 0, Rule: r.IntN(5) == 0})
		}
		blocks = append(blocks, b)
	}
	return blocks, columns{scene.BoxAt(0, 0, 200, 40+60*r.Float64()), 1 + r.IntN(2), 12}
}

// Of all ways to break, the one taken costs least: every way is tried on small lists.
func TestBreaksCostTheLeast(t *testing.T) {
	k := draft.Office()
	found := 0
	for seed := range uint64(150) {
		blocks, c := tried(seed)
		f := newFlowing(k, blocks, c).spaced(wideGap)
		const most = 4
		var try func(from, column int) float64
		try = func(from, column int) float64 {
			if from == len(f.place) {
				return 0
			}
			if column == most {
				return math.Inf(1)
			}
			best, first := math.Inf(1), f.place[from]
			for to := from + 1; to <= len(f.place); to++ {
				high := 0.0
				for p := from; p < to; p++ {
					at := f.place[p]
					if p == from || at.row == 0 {
						high += f.above[at.block]
						if p > from {
							high += f.gap
						}
					}
					high += f.rows[at.block][at.row]
				}
				if high > f.high+1e-6 && to > from+1 {
					break
				}
				cost := (1 + float64(column)/(100*most)) * high / f.high * high / f.high
				if to < len(f.place) {
					begun := 0
					if f.place[to].block == first.block {
						begun = first.row
					}
					cost += f.cost(f.place[to], begun, (column+1)%f.count == 0)
				}
				best = min(best, cost+try(to, column+1))
			}
			return best
		}
		want := try(0, 0)
		starts, cost := f.breaks(most)
		if math.IsInf(want, 1) {
			assert.True(t, math.IsInf(cost, 1), "seed %d", seed)
			continue
		}
		found++
		assert.InDelta(t, want, cost, 1e-9, "seed %d", seed)
		assert.LessOrEqual(t, len(starts), most, "seed %d", seed)
	}
	assert.Greater(t, found, 100)
}

// Every row is placed once, in order, inside its column, whatever flows.
func TestFlowPlacesEveryRowOnce(t *testing.T) {
	k := draft.Office()
	for seed := range uint64(400) {
		blocks, c := tried(seed)
		at, row := 0, 0
		for page, parts := range flow(k, blocks, c) {
			require.NotEmpty(t, parts, "seed %d, page %d", seed, page)
			for _, p := range parts {
				if p.block != at {
					assert.Equal(t, blocks[at].rows(), row, "seed %d", seed)
					at, row = at+1, 0
				}
				require.Equal(t, at, p.block, "seed %d", seed)
				assert.Equal(t, row, p.first, "seed %d", seed)
				above, rows := blocks[p.block].heights(k, c.width())
				for high := above; row < len(rows) && high+rows[row] <= p.height+1e-6; row++ {
					high += rows[row]
				}
				assert.LessOrEqual(t, p.y+p.height, c.box.Y1+1e-6, "seed %d", seed)
			}
		}
		assert.Equal(t, blocks[at].rows(), row, "seed %d", seed)
		assert.Equal(t, len(blocks)-1, at, "seed %d", seed)
	}
}

// What belongs together is kept so where a page more is enough for it, and one page more only.
func TestWhatBelongsTogetherTakesAPageMore(t *testing.T) {
	k := draft.Office()
	table := func(rows int) *draft.Table {
		t := &draft.Table{Title: "TABLE", Columns: []draft.Column{{Head: "A"}}}
		for range rows {
			t.Rows = append(t.Rows, draft.Row{Cells: []string{"a"}})
		}
		return t
	}
	high := func(rows int) float64 { t := table(rows); t.Fit(k, 100); return t.High(k) }
	pagesOf := func(c columns, blocks ...block) (list []string) {
		for _, parts := range flow(k, blocks, c) {
			var words []string
			for _, p := range parts {
				words = append(words, fmt.Sprintf("%d from %d", p.block, p.first))
			}
			list = append(list, strings.Join(words, ", "))
		}
		return list
	}
	one := columns{scene.BoxAt(0, 0, 100, high(20)), 1, 0}
	assert.Equal(t, []string{"0 from 0"}, pagesOf(one, block{table: table(20)}))
	assert.Equal(t, []string{"0 from 0", "0 from 11"}, pagesOf(one, block{table: table(21)}), "rows are spread, the fuller page first")
	assert.Equal(t, []string{"0 from 0", "0 from 17", "0 from 33"}, pagesOf(one, block{table: table(49)}))
	assert.Equal(t, []string{"0 from 0", "1 from 0"}, pagesOf(one, block{table: table(14)}, block{table: table(7)}), "seven rows are not parted")
	assert.Equal(t, []string{"0 from 0", "1 from 0"}, pagesOf(one, block{table: table(12)}, block{table: table(12), whole: true}))
	two := columns{scene.BoxAt(0, 0, 212, high(20)), 2, 12}
	assert.Equal(t, []string{"0 from 0, 0 from 15"}, pagesOf(two, block{table: table(30)}), "columns of a page come out even")
	tied := table(24)
	for i := 8; i < 18; i++ {
		tied.Rows[i].On = true
	}
	assert.Equal(t, []string{"0 from 0", "0 from 7"}, pagesOf(one, block{table: tied}), "rows that go on are not parted from theirs")
}

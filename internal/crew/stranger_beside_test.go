package crew_test

import (
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/days"
	"flitchlay/internal/effort"
	"flitchlay/internal/layout"
	"flitchlay/internal/roomtest"
	"flitchlay/internal/scene"
)

// lettered are the words of pages, one page after the other.
func lettered(pages []*scene.Page) string {
	words := ""
	for _, page := range pages {
		words += strings.Join(roomtest.Lettering(&page.Group), " ") + " "
	}
	return words
}

// TestHeightsOfOpeningsStandOnTheirWallsPage looks for the head of every opening on the page of its wall itself, not on one that is behind the cut
// list: in its white, in the list beside it, or with what is cut out of a sheet for it, which has its lower and its upper edge.
func TestHeightsOfOpeningsStandOnTheirWallsPage(t *testing.T) {
	beside := 0
	for file, p := range rooms(t) {
		for i := range p.Room.Walls {
			w := &p.Room.Walls[i]
			pages, _ := wallPages(t, p, i)
			words := lettered(pages)
			for k := range w.Openings {
				o := &w.Openings[k]
				if pages == nil || w.FullHeight(o) {
					continue
				}
				own := regexp.MustCompile(`\b` + o.Name + ` (?:left|at) .{0,200}?head (?:up|down) ` + figure).MatchString(words)
				cut := regexp.MustCompile(`\b` + o.Name + ` in [\d+]+: (?:fold [^,]+, cut )?opening ` + figure + ` to ` + figure + ` from (?:left|ripped|lower) edge, ` + figure).MatchString(words)
				assert.True(t, own || cut, "%s: %s of %s: %s", file, o.Name, w.Name, words)
				if cut {
					beside++
				}
			}
		}
	}
	assert.GreaterOrEqual(t, beside, 3)
}

// TestCutsBesideTheDrawingHaveTheirHeights holds that no line under or beside a drawing gives a width to cut for an opening without where it ends.
func TestCutsBesideTheDrawingHaveTheirHeights(t *testing.T) {
	effort.Tool(t, "pdftotext")
	line := regexp.MustCompile(`\b[WDFGBP]\d+ in [\d+]+: (?:fold [^,]+, cut )?` + figure + ` to `)
	for file, p := range rooms(t) {
		for _, page := range printed(t, p) {
			assert.Empty(t, line.FindAllString(page, -1), file)
		}
	}
}

// TestNumbersStandApartFromNames holds that no sheet's number is level with the name of an opening right beside it: 10 D1 would be a name.
func TestNumbersStandApartFromNames(t *testing.T) {
	number, name := regexp.MustCompile(`^\d+$`), regexp.MustCompile(`^[WDFGBP]\d+$`)
	names := 0
	for file, p := range rooms(t) {
		for _, page := range install(t, p).Pages {
			if len(roomtest.Classed(&page.Group, "view")) == 0 {
				continue
			}
			var all []*scene.Text
			page.Texts(func(x *scene.Text) { all = append(all, x) })
			for _, n := range all {
				if !name.MatchString(n.String) || n.Angle != 0 {
					continue
				}
				names++
				b := n.Bounds()
				for _, x := range all {
					q := x.Bounds()
					if number.MatchString(x.String) && x.Angle == 0 && q.Y0 < b.Y1 && b.Y0 < q.Y1 && b.X0-q.X1 < 2*n.Height && q.X0 < b.X0 {
						assert.Greater(t, q.X0-b.X1, 0.0, "%s, %s: %s %s", file, page.Title, x.String, n.String)
					}
				}
			}
		}
	}
	assert.Greater(t, names, 12)
}

// TestUnpastedEdgesStandInTheirRows reads the timetable as who pastes does: every edge that must stay dry is named in the row in which its sheet is
// hung, and no edge in another.
func TestUnpastedEdgesStandInTheirRows(t *testing.T) {
	effort.Tool(t, "pdftotext")
	row := regexp.MustCompile(`\d+:\d\d \d+:\d\d \d+:\d\d ((?:\d+, )*\d+) (\D.*?|\d+ \D.*?)\d+:\d\d`)
	dry := regexp.MustCompile(`; (?:right|upper) edge of ((?:\d+, )*\d+) unpasted`)
	edges := 0
	for file, p := range rooms(t) {
		plan := days.Of(p)
		want := map[string]bool{}
		for i := range plan.Tasks {
			if !plan.Tasks[i].DryEdge {
				continue
			}
			list := plan.OpenEdges(i)
			if len(list) == 0 {
				list = []int{i}
			}
			for _, k := range list {
				want[itoa(plan.Tasks[k].Number)] = true
			}
		}
		got := map[string]bool{}
		for _, page := range printed(t, p) {
			_, table, ok := strings.Cut(page, "TIMETABLE")
			for at := 0; ok; {
				m := row.FindStringSubmatchIndex(table[at:])
				if m == nil {
					break
				}
				hung := ", " + table[at+m[2]:at+m[3]] + ", "
				if d := dry.FindStringSubmatch(table[at+m[4] : at+m[5]]); d != nil {
					for _, n := range strings.Split(d[1], ", ") {
						assert.Contains(t, hung, ", "+n+", ", "%s: %s", file, table[at+m[0]:at+m[1]])
						got[n] = true
						edges++
					}
				}
				at += m[5]
			}
		}
		assert.Equal(t, want, got, file)
	}
	assert.Greater(t, edges, 30)
}

// TestRawHeadsOfBandsLieAtTheLeft reads of every sheet that lies at which end its raw head is: the same on its card and over the cut list, since none
// is turned end for end.
func TestRawHeadsOfBandsLieAtTheLeft(t *testing.T) {
	effort.Tool(t, "pdftotext")
	p := rooms(t)["horiz"]
	assert.Contains(t, strings.Join(printed(t, p), " "), "raw heads lie at the left")
	cards := cardsOf(t, p)
	require.Len(t, cards, len(p.Runs[0].Sheets))
	for _, c := range cards {
		_, s := sheetOf(t, p, c.number)
		assert.False(t, s.Turned, "sheet %d", s.Number)
		assert.Contains(t, c.words, "RAW HEAD at the LEFT end, its face seen")
		assert.NotContains(t, c.words, "hangs down")
	}
}

// TestNumbersOfAWallComeAsTheyHang reads in the head of every wall's page the sheets of a flitch: those that hang there, none that goes back to
// stock, in the order in which they are hung.
func TestNumbersOfAWallComeAsTheyHang(t *testing.T) {
	effort.Tool(t, "pdftotext")
	head := regexp.MustCompile(`flitch (\S+) (?:sheets?) ((?:\d+(?:-\d+)?, )*\d+(?:-\d+)?|\d+ to \d+)[,;]`)
	last := roomtest.Laid(t, "last.toml", strings.NewReplacer(`sheets = "`, "from = \"last\"\nsheets = \"").Replace(roomText(t, "oldhouse")))
	plans := map[string]*layout.Plan{"oldhouse laid from the last": last}
	for file, p := range rooms(t) {
		plans[file] = p
	}
	found := 0
	for file, p := range plans {
		for _, page := range printed(t, p) {
			if !strings.Contains(page, "TAPE LIST") {
				continue
			}
			for _, m := range head.FindAllStringSubmatch(page, -1) {
				place := 0
				for _, n := range spread(t, m[2]) {
					_, s := sheetOf(t, p, itoa(n))
					assert.NotEmpty(t, s.Pieces, "%s: %d hangs nowhere: %s", file, n, m[0])
					assert.GreaterOrEqual(t, s.Place, place, "%s: %s", file, m[0])
					place = s.Place
				}
				found++
			}
		}
	}
	assert.Greater(t, found, 25)
}

// spread are the numbers of "12-10, 8" or "1 to 9", one by one.
func spread(t *testing.T, s string) (list []int) {
	t.Helper()
	for _, part := range strings.Split(strings.ReplaceAll(s, " to ", "-"), ", ") {
		first, last, through := strings.Cut(part, "-")
		if !through {
			last = first
		}
		a, b := roomtest.Numbers(t, first), roomtest.Numbers(t, last)
		require.Len(t, append(a, b...), 2)
		step := 1
		if b[0] < a[0] {
			step = -1
		}
		for n := a[0]; ; n += step {
			list = append(list, n)
			if n == b[0] {
				break
			}
		}
	}
	return list
}

// roomText is the text of a room to try figures on.
func roomText(t *testing.T, name string) string {
	t.Helper()
	text, err := os.ReadFile("testdata/rooms/" + name + ".toml")
	require.NoError(t, err)
	return string(text)
}

// TestSheetsWithoutARightEdgeHangByTheirLeft reads in the row of a line where the left edge of a sheet goes whose raw right edge a door takes.
func TestSheetsWithoutARightEdgeHangByTheirLeft(t *testing.T) {
	effort.Tool(t, "pdftotext")
	p := rooms(t)["tall14"]
	m := regexp.MustCompile(`11 10 ` + figure + ` 10: left edge to ` + figure + ` `).FindStringSubmatch(strings.Join(printed(t, p), " "))
	require.NotNil(t, m)
	r, s := sheetOf(t, p, "10")
	assert.True(t, near(s.StartLine-r.Walls[0].Shift-cornerAt(p, r.Walls[0].Wall, false, p.Room.Space.LevelLine), read(t, p, m[2])), m[0])
}

package crew

import (
	"maps"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/layout"
	"flitchlay/internal/roomtest"
	"flitchlay/internal/scene"
)

// Whoever is sent to a page finds there what he was sent for, and is sent to no page more. Each sentence that points to a page is
// read off the page that it stands on; one that nobody here can read is a mistake.

// pointer is a sentence that names pages, and who knows what has to stand on them.
type pointer struct {
	says *regexp.Regexp
	hold func(r *pointed, t *testing.T, from int, said []string, to []int)
}

const toPages = `pages? (\d+(?:-\d+)?(?:, \d+(?:-\d+)?)*)`

var pointers = []pointer{
	{regexp.MustCompile(`(?:cut lengths, up, down(?:, bevels)?: |of the level mark(?:, bevels)?: cut list, |cut lengths: in the cut list, )` + toPages), (*pointed).rowsOfBegun},
	{regexp.MustCompile(`((?:(?:\d+|\?), )*(?:\d+|\?)): in pieces when cut, each hung by its own ends: list, ` + toPages), (*pointed).rowsInPieces},
	{regexp.MustCompile(`slopes and bevels: ` + toPages), (*pointed).rowsThatSlope},
	{regexp.MustCompile(`the others: cut list, ` + toPages), (*pointed).rowOfCard},
	{regexp.MustCompile(`(?:the )?others: (?:beside, )?(?:or )?` + toPages), (*pointed).rowsWithMore},
	{regexp.MustCompile(`more: ` + toPages), (*pointed).notesOfWall},
	{regexp.MustCompile(`(?:off: |STOP, (?:plan again, )?|may be off: )` + toPages), (*pointed).limitsOfWall},
	{regexp.MustCompile(`closes: rip to the gap, ` + toPages), (*pointed).gapThere},
	{regexp.MustCompile(`goes on: ` + toPages), (*pointed).goesOn},
	{regexp.MustCompile(`how figures are rounded: ` + toPages), (*pointed).rounding},
	{regexp.MustCompile(`HOLD (\d+) to (\d+): sign ` + toPages), (*pointed).signed},
	{regexp.MustCompile(`level line of ` + toPages), titled("Room start")},
	{regexp.MustCompile(`(?:tables, |length and leans \()` + toPages), titled("Room start")},
	{regexp.MustCompile(`(?:(?:over|under) it \(|trims up, or not yet: )` + toPages), titled("Room start")},
	{regexp.MustCompile(`START: ([0-9?]+)[^:]*?[,;] ` + toPages), (*pointed).begins},
	{regexp.MustCompile(`(?:MATCH LINE: |on |, )page (\d+)`), (*pointed).sameWall},
}

// pointed is a set while its pointers are followed.
type pointed struct {
	plan  *layout.Plan
	pages []*scene.Page
	texts []string       // of pages
	rows  map[string]int // pages of the rows of sheets in the cut list
	words map[string]string
	list  []listRow // all of the cut list
}

// AssertPointers follows all pointers of an install set in English.
func AssertPointers(t *testing.T, p *layout.Plan, d *scene.Document) {
	t.Helper()
	r := &pointed{plan: p, pages: d.Pages, rows: map[string]int{}, words: map[string]string{}}
	for i, page := range d.Pages {
		r.texts = append(r.texts, strings.Join(strings.Fields(strings.Join(roomtest.Lettering(&page.Group), " ")), " "))
		for _, list := range roomtest.Classed(&page.Group, "cut-list") {
			for _, g := range roomtest.Classed(list, "sheet") {
				row := listRow{i + 1, sheetKey(g), strings.Join(roomtest.Lettering(g), " ")}
				r.rows[row.key], r.words[row.key] = row.page, row.words
				r.list = append(r.list, row)
			}
		}
	}
	any := regexp.MustCompile(toPages)
	own := regexp.MustCompile(`page \d+ of \d+`)
	for i := range d.Pages {
		text := own.ReplaceAllString(r.texts[i], "")
		for _, x := range pointers {
			for _, m := range x.says.FindAllStringSubmatch(text, -1) {
				to := roomtest.Numbers(t, m[len(m)-1])
				for _, n := range to {
					require.True(t, n >= 1 && n <= len(d.Pages), "page %d says %q", i+1, m[0])
				}
				x.hold(r, t, i+1, m, to)
			}
			text = x.says.ReplaceAllString(text, "")
		}
		assert.Empty(t, any.FindAllString(text, -1), "page %d: nobody here reads what points to them: %s", i+1, text)
	}
}

func sheetKey(g *scene.Group) string {
	return roomtest.Fact(g, "flitch") + " " + roomtest.Fact(g, "number") + " " + roomtest.Fact(g, "place") + " " + roomtest.Fact(g, "cut")
}

// on are the sheets that are drawn on a page.
func (r *pointed) on(page int) []string {
	var list []string
	for _, g := range roomtest.Classed(&r.pages[page-1].Group, "sheet") {
		list = append(list, sheetKey(g))
	}
	return list
}

// onWalls is on how many pages of walls a sheet is drawn.
func (r *pointed) onWalls(key string) (n int) {
	for i, page := range r.pages {
		if roomtest.Classed(&page.Group, "view") != nil && slices.Contains(r.on(i+1), key) {
			n++
		}
	}
	return n
}

// begun are the sheets of a page whose left edge is on one of its walls, by the layout.
func (r *pointed) begun(page int) []string {
	var list []string
	for _, key := range r.on(page) {
		if run, s := r.sheet(key); s != nil && !s.Hung && r.wallPage(run, s) == page {
			list = append(list, key)
		}
	}
	return list
}

// sheet is the sheet of a key.
func (r *pointed) sheet(key string) (*layout.Run, *layout.Sheet) {
	for i := range r.plan.Runs {
		for k := range r.plan.Runs[i].Sheets {
			s := &r.plan.Runs[i].Sheets[k]
			if key == s.Flitch+" "+itoa(s.Number)+" "+itoa(s.Place)+" "+s.CutLength.Decimal() {
				return &r.plan.Runs[i], s
			}
		}
	}
	return nil, nil
}

// wallPage is the page on which a sheet begins: the first, in the order of the set, of those of the wall in whose stretch its left edge
// lies, that show it.
func (r *pointed) wallPage(run *layout.Run, s *layout.Sheet) int {
	left := s.Left
	for run.Closed && left >= run.Length {
		left -= run.Length
	}
	wall := run.Walls[0].Wall
	for _, st := range run.Walls {
		for _, turn := range []L{0, run.Length} {
			if st.Left <= left+turn && left+turn < st.Right && (turn == 0 || run.Closed) {
				wall = st.Wall
			}
		}
	}
	key := s.Flitch + " " + itoa(s.Number) + " " + itoa(s.Place) + " " + s.CutLength.Decimal()
	var pages []int
	for i, page := range r.pages {
		for _, g := range roomtest.Classed(&page.Group, "view") {
			if roomtest.Fact(g, "wall") == r.plan.Room.Walls[wall].Name && slices.Contains(r.on(i+1), key) {
				pages = append(pages, i+1)
			}
		}
	}
	if len(pages) == 0 {
		return 0
	}
	for _, n := range pages[1:] { // one that a match line parts begins where it is the last from the left
		if list := r.on(n); list[len(list)-1] == key && r.on(pages[0])[0] == key {
			return n
		}
	}
	return pages[0]
}

// pagesOfRows are the pages of the rows of some sheets.
func (r *pointed) pagesOfRows(keys []string) []int {
	pages := map[int]bool{}
	for _, k := range keys {
		if n := r.rows[k]; n > 0 {
			pages[n] = true
		}
	}
	return slices.Sorted(maps.Keys(pages))
}

func (r *pointed) rowsOfBegun(t *testing.T, from int, said []string, to []int) {
	assert.Equal(t, r.pagesOfRows(r.begun(from)), to, "page %d: %s", from, said[0])
}

func (r *pointed) rowsThatSlope(t *testing.T, from int, said []string, to []int) {
	keys := slices.DeleteFunc(r.begun(from), func(k string) bool { return !strings.Contains(r.words[k], " SLOPES") })
	assert.Equal(t, r.pagesOfRows(keys), to, "page %d: %s", from, said[0])
}

// rowsWithMore finds on each page the row of a sheet of the wall that is cut out, or ripped.
func (r *pointed) rowsWithMore(t *testing.T, from int, said []string, to []int) {
	more := regexp.MustCompile(`hole|plate|opening|bend|LEFT|RIGHT|LOWER|UPPER|never cover`)
	numberless := slices.ContainsFunc(r.on(from), func(k string) bool { _, s := r.sheet(k); return s == nil || s.Number == 0 })
	for _, n := range to {
		if numberless { // they cannot be told apart
			break
		}
		assert.True(t, slices.ContainsFunc(r.on(from), func(k string) bool { return r.rows[k] == n && more.MatchString(r.words[k]) }), "page %d: %s: nothing on %d: %s", from, said[0], n, r.texts[from-1])
	}
	// what is cut out of a sheet and does not stand on the wall's page has its row on one of them
	box := regexp.MustCompile(`\b([a-z]{1,2}|[WDFGBP]\d+): (?:hole|plate|opening)`)
	for _, k := range r.on(from) {
		run, s := r.sheet(k)
		if s == nil || s.Hung || s.Number == 0 || run.Up || r.onWalls(k) > 1 { // a box stands on one of its walls' pages alone
			continue
		}
		for _, m := range box.FindAllStringSubmatch(r.words[k], -1) {
			here := regexp.MustCompile(`\b` + m[1] + `\b.* ?\b` + itoa(s.Number) + `\b`)
			if !here.MatchString(r.texts[from-1]) {
				assert.Contains(t, to, r.rows[k], "page %d: %s of %d", from, m[1], s.Number)
			}
		}
	}
}

func (r *pointed) rowOfCard(t *testing.T, from int, said []string, to []int) {
	found := false
	for _, g := range roomtest.Classed(&r.pages[from-1].Group, "card") {
		if !strings.Contains(strings.Join(roomtest.Lettering(g), " "), said[0]) {
			continue
		}
		for k, n := range r.rows {
			if _, s := r.sheet(k); s != nil && itoa(s.Place) == roomtest.Fact(g, "place") && itoa(s.Course) == roomtest.Fact(g, "course") {
				found = found || slices.Equal(to, []int{n})
			}
		}
	}
	assert.True(t, found, "page %d: %s", from, said[0])
}

func (r *pointed) notesOfWall(t *testing.T, from int, said []string, to []int) {
	require.Len(t, to, 1)
	assert.Contains(t, r.texts[to[0]-1], r.pages[from-1].Title+", tape list", "page %d: %s", from, said[0])
}

func (r *pointed) sameWall(t *testing.T, from int, said []string, to []int) {
	wall := func(n int) string {
		list := roomtest.Classed(&r.pages[n-1].Group, "view")
		if list == nil {
			return ""
		}
		return roomtest.Fact(list[0], "wall")
	}
	require.Len(t, to, 1)
	assert.NotEqual(t, from, to[0])
	if r.pages[from-1].Title == "Cut list" { // in what a wall's page had no room for
		assert.NotEmpty(t, wall(to[0]), "page %d: %s", from, said[0])
		return
	}
	assert.NotEmpty(t, wall(from), "page %d: %s", from, said[0])
	assert.Equal(t, wall(from), wall(to[0]), "page %d: %s", from, said[0])
}

// begins finds the first sheet on its wall's page.
func (r *pointed) begins(t *testing.T, from int, said []string, to []int) {
	require.Len(t, to, 1)
	assert.NotEmpty(t, roomtest.Classed(&r.pages[to[0]-1].Group, "view"), "page %d: %s", from, said[0])
	first := slices.ContainsFunc(r.on(to[0]), func(key string) bool {
		_, s := r.sheet(key)
		return s == nil || s.Number == 0 || itoa(s.Number) == said[1]
	})
	assert.True(t, first, "page %d: %s: the sheet is not drawn there", from, said[0])
}

func (r *pointed) gapThere(t *testing.T, from int, said []string, to []int) {
	require.Len(t, to, 1)
	assert.Regexp(t, `closes(?:: rip to raw gap|, no rip|: measure)`, r.texts[to[0]-1], "page %d: %s", from, said[0])
}

func (r *pointed) rounding(t *testing.T, from int, said []string, to []int) {
	require.Len(t, to, 1)
	assert.Contains(t, r.texts[to[0]-1], "HOW FIGURES ARE ROUNDED Every figure runs from its own 0", "page %d: %s", from, said[0])
}

// signed finds the lines of the first and the last of some hold points on the pages named, and those of one of them on each.
func (r *pointed) signed(t *testing.T, from int, said []string, to []int) {
	all := ""
	for _, n := range to {
		assert.Regexp(t, `HOLD \d+ after [^:]+: (?:the first sheets|the new flitch|all of it) name, signature`, r.texts[n-1], "page %d: %s", from, said[0])
		all += r.texts[n-1] + " "
	}
	for _, hold := range said[1:3] {
		assert.Regexp(t, `HOLD `+hold+` after [^:]+: (?:the first sheets|the new flitch|all of it) name, signature`, all, "page %d: %s", from, said[0])
	}
}

func (r *pointed) goesOn(t *testing.T, from int, said []string, to []int) {
	assert.Equal(t, []int{from + 1}, to)
	assert.Equal(t, strings.TrimSuffix(r.pages[from-1].Title, ", on"), strings.TrimSuffix(r.pages[from].Title, ", on"), said[0])
}

// titled finds that the pages have a title.
func titled(title string) func(*pointed, *testing.T, int, []string, []int) {
	return func(r *pointed, t *testing.T, from int, said []string, to []int) {
		for _, n := range to {
			assert.True(t, strings.HasPrefix(r.pages[n-1].Title, title), "page %d: %s: page %d is %q", from, said[0], n, r.pages[n-1].Title)
		}
	}
}

// AssertWhole holds that no words of a set are cut short by dots.
func AssertWhole(t *testing.T, d *scene.Document) {
	t.Helper()
	for _, page := range d.Pages {
		for _, s := range roomtest.Lettering(&page.Group) {
			assert.NotContains(t, s, "…", "page %s %s", page.Name, page.Title)
		}
	}
}

package crew_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/crew"
	"flitchlay/internal/effort"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/paper"
	"flitchlay/internal/pdf"
	"flitchlay/internal/room"
	"flitchlay/internal/roomtest"
	"flitchlay/internal/scene"
)

// Here a stranger has the print and nothing else: pages are read as another program reads them, a figure is taken for what
// its words say, and where it comes to on the wall is held against the room and its layout.

// rooms are the rooms to try figures on, by the names of their files: leaning corners, ripped first sheets, courses, stairs,
// level grain, a free column, what hangs already.
func rooms(t *testing.T) map[string]*layout.Plan {
	t.Helper()
	if laid != nil {
		return laid
	}
	files, err := filepath.Glob("testdata/rooms/*.toml")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	out := map[string]*layout.Plan{}
	for _, file := range files {
		text, err := os.ReadFile(file)
		require.NoError(t, err)
		out[strings.TrimSuffix(filepath.Base(file), ".toml")] = roomtest.Laid(t, file, string(text))
	}
	laid = out
	return out
}

// laid are the rooms once some test has asked for them: nothing changes a plan, and each is drawn once.
var laid map[string]*layout.Plan

// drawn are the install sets on letter paper that some test has asked for, by their plans.
var drawn sync.Map // of func() (*scene.Document, error)

// install draws a plan once for all tests here: nothing changes a set.
func install(t *testing.T, p *layout.Plan) *scene.Document {
	t.Helper()
	template := roomtest.Template(t, "ansi-a")
	once, _ := drawn.LoadOrStore(p, sync.OnceValues(func() (*scene.Document, error) { return crew.Install(p, template) }))
	d, err := once.(func() (*scene.Document, error))()
	require.NoError(t, err)
	return d
}

// pagesRead are the pages of the sets that some test has asked for as words, by their plans.
var pagesRead sync.Map // of func() ([]string, error)

// printed are the pages of the install set as pdftotext of poppler reads them, each as one line of words.
func printed(t *testing.T, p *layout.Plan) []string {
	t.Helper()
	tool := effort.Tool(t, "pdftotext")
	d := install(t, p)
	file := filepath.Join(t.TempDir(), "install.pdf")
	once, _ := pagesRead.LoadOrStore(p, sync.OnceValues(func() ([]string, error) { return printedBy(tool, d, file) }))
	pages, err := once.(func() ([]string, error))()
	require.NoError(t, err)
	require.Len(t, pages, len(d.Pages))
	return pages
}

// printedBy writes a document into a file and has pdftotext read it.
func printedBy(tool string, d *scene.Document, file string) (pages []string, err error) {
	out, err := pdf.Write(d)
	if err != nil {
		return nil, err
	}
	if err := os.WriteFile(file, out, 0o644); err != nil {
		return nil, err
	}
	text, err := exec.Command(tool, "-raw", file, "-").Output()
	for _, page := range strings.Split(strings.TrimSuffix(string(text), "\f"), "\f") {
		pages = append(pages, strings.Join(strings.Fields(page), " "))
	}
	return pages, err
}

// itoa is strconv.Itoa.
func itoa(n int) string { return strconv.Itoa(n) }

// figure is a figure of a page, so many as its pattern takes.
const figure = `((?:\d+'-)?\d+(?:[.,]\d+)?(?: \d+/\d+)?"?|\d+/\d+"?)`

// read is a printed figure as a length.
func read(t *testing.T, p *layout.Plan, s string) length.Length {
	t.Helper()
	l, err := length.Parse(s, p.Room.Project.Units)
	require.NoError(t, err, s)
	return l
}

// cutOf is a cut-out as a stranger reads it: what it is, and its four edges on the sheet.
type cutOf struct {
	what, edge string
	from, to   length.Length
	low, high  length.Length
	over       string // "level", "line 2", or the end of the sheet that the heights are from
}

var cutPattern = regexp.MustCompile(`(hole|plate|opening) ` + figure + ` to ` + figure + ` from (left|ripped|lower) edge, ` + figure +
	` (?:(down) )?to ` + figure + ` (up|down|over its foot|under its head|from left end)(?: of (line 2))?(, never cover)?`)

// readCut takes the first cut-out of some words.
func readCut(t *testing.T, p *layout.Plan, words string) (cutOf, bool) {
	m := cutPattern.FindStringSubmatch(words)
	if m == nil {
		return cutOf{}, false
	}
	c := cutOf{what: m[1], edge: m[4], from: read(t, p, m[2]), to: read(t, p, m[3]), low: read(t, p, m[5]), high: read(t, p, m[7]), over: "level"}
	switch {
	case m[6] == "down":
		c.low = -c.low
	case m[8] == "down":
		c.low, c.high = -c.high, -c.low
	case m[8] != "up":
		c.over = m[8]
	}
	if m[9] != "" {
		c.over = m[9]
	}
	assert.Equal(t, c.what == "plate", m[10] != "", "what is never covered is cut round its plate: %s", m[0])
	return c, true
}

// sheetOf is the sheet with a number, and its run.
func sheetOf(t *testing.T, p *layout.Plan, number string) (*layout.Run, *layout.Sheet) {
	t.Helper()
	n, err := strconv.Atoi(number)
	require.NoError(t, err)
	for i := range p.Runs {
		for k := range p.Runs[i].Sheets {
			if s := &p.Runs[i].Sheets[k]; s.Number == n && s.CutLength > 0 {
				return &p.Runs[i], s
			}
		}
	}
	t.Fatalf("no sheet %s", number)
	return nil, nil
}

// onWall is where a cut-out comes to on a wall when the sheet hangs, its edges from left to right and from below.
func (c cutOf) onWall(t *testing.T, p *layout.Plan, r *layout.Run, s *layout.Sheet, wall int) (x0, z0, x1, z1 length.Length) {
	level := p.Room.Space.LevelLine
	if r.Up {
		return c.low - s.Below, s.StartLine + c.from, c.high - s.Below, s.StartLine + c.to
	}
	shift := length.Length(0)
	for _, st := range r.Walls {
		if st.Wall == wall {
			shift = st.Shift
		}
	}
	x0, x1 = s.StartLine+c.from-shift, s.StartLine+c.to-shift
	for r.Closed && x0 > p.Room.Walls[wall].Length { // a round further
		x0, x1 = x0-r.Length, x1-r.Length
	}
	switch c.over {
	case "level":
		return x0, level + c.low, x1, level + c.high
	case "line 2":
		level += secondOn(t, p, wall)
		return x0, level + c.low, x1, level + c.high
	case "over its foot":
		return x0, level - s.Below + c.low, x1, level - s.Below + c.high
	}
	return x0, level + s.Above - c.high, x1, level + s.Above - c.low
}

// near reports whether two lengths are the same but for the rounding of printed figures.
func near(a, b length.Length) bool { return (a - b).Abs() <= length.Inch/16 }

// TestHolesAreWhereTheirFiguresSay cuts the hole of every box that a page gives figures for, and finds the box in it.
func TestHolesAreWhereTheirFiguresSay(t *testing.T) {
	line := regexp.MustCompile(`\b([a-z]{1,2})(?: on ([^:]+?))? in (\d+): `)
	for name, p := range rooms(t) {
		t.Run(name, func(t *testing.T) {
			found := 0
			for _, page := range printed(t, p) {
				for _, at := range line.FindAllStringSubmatchIndex(page, -1) {
					c, ok := readCut(t, p, page[at[1]:min(at[1]+120, len(page))])
					require.True(t, ok, page[at[0]:])
					r, s := sheetOf(t, p, page[at[6]:at[7]])
					assert.Equal(t, s.Ripped == "left", c.edge == "ripped", "the edge of sheet %d", s.Number)
					wall := wallNamed(p, page)
					if at[4] >= 0 { // of walls unrolled, each box names its own
						wall = slices.IndexFunc(p.Room.Walls, func(w room.Wall) bool { return w.Name == page[at[4]:at[5]] })
					}
					require.GreaterOrEqual(t, wall, 0, page)
					assert.Equal(t, unrolled(page), at[4] >= 0, page)
					assertBox(t, p, r, s, c, wall)
					found++
				}
			}
			assert.Equal(t, name != "freecol", found > 0, "figures found")
		})
	}
}

// wallNamed is the wall whose page it is.
func wallNamed(p *layout.Plan, page string) int {
	best := -1
	for i := range p.Room.Walls {
		if n := p.Room.Walls[i].Name; strings.HasPrefix(page, n) || strings.Contains(page[:min(len(page), 200)], n+" page") || strings.Contains(page[:min(len(page), 260)], " "+n+" ") {
			if best < 0 || strings.Index(page, n) < strings.Index(page, p.Room.Walls[best].Name) {
				best = i
			}
		}
	}
	return best
}

// unrolled reports whether several walls stand on a page side by side.
func unrolled(page string) bool {
	return strings.Contains(page, "TAPE LIST, at level, each from its 0")
}

// shows reports whether a wall stands on a page, alone or unrolled beside others.
func shows(p *layout.Plan, page string, wall int) bool {
	if unrolled(page) {
		return strings.Contains(page, " "+p.Room.Walls[wall].Name+": 0 at ")
	}
	return wallNamed(p, page) == wall
}

// letterOf is the wall of an unrolled page that a letter stands for.
func letterOf(p *layout.Plan, page, letter string) int {
	return slices.IndexFunc(p.Room.Walls, func(w room.Wall) bool { return strings.Contains(page, letter+" "+w.Name+": 0 at ") })
}

// assertBox finds a box of the wall that a cut-out belongs to: all its edges are edges of the hole, or of the plate of what
// is never covered, but where the sheet ends in it.
func assertBox(t *testing.T, p *layout.Plan, r *layout.Run, s *layout.Sheet, c cutOf, wall int) {
	t.Helper()
	x0, z0, x1, z1 := c.onWall(t, p, r, s, wall)
	width := p.Room.Veneer.GrossWidth
	if s.Ripped != "" {
		width = s.RipTo
	}
	for _, b := range p.Room.Walls[wall].Boxes {
		wide, high := b.HoleWidth, b.HoleHigh
		if b.Kind.Traits().NeverCovered {
			wide, high = b.PlateWidth, b.PlateHigh
		}
		left, right, low, top := b.X-wide/2, b.X+wide/2, b.Z-high/2, b.Z+high/2
		across := (near(x0, left) || c.from == 0 && x0 > left) && (near(x1, right) || c.to == width && x1 < right)
		if r.Up {
			across = near(x0, left) && near(x1, right) && (near(z0, low) || c.from == 0) && (near(z1, top) || c.to == width)
			low, top = z0, z1
		}
		if across && near(z0, low) && near(z1, top) {
			return
		}
	}
	t.Errorf("sheet %d: no box has its edges at %v to %v, %v to %v of wall %s", s.Number, p.Style.Format(x0), p.Style.Format(x1), p.Style.Format(z0), p.Style.Format(z1), p.Room.Walls[wall].Name)
}

// TestStrangersRoomsAreClean holds that nothing is in the way of anything else on the pages of these rooms.
func TestStrangersRoomsAreClean(t *testing.T) {
	texts := map[string]string{}
	files, err := filepath.Glob("testdata/rooms/*.toml")
	require.NoError(t, err)
	for _, file := range files {
		text, err := os.ReadFile(file)
		require.NoError(t, err)
		texts[filepath.Base(file)] = string(text)
	}
	roomtest.OnPapers(t, texts, paper.Names(), func(t *testing.T, text, name string) {
		p := roomtest.Laid(t, "room.toml", text)
		d, err := crew.Install(p, roomtest.Template(t, name))
		require.NoError(t, err)
		crew.Clean(t, d)
		crew.AssertPointers(t, p, d)
		crew.AssertWhole(t, d)
	})
}

package crew_test

import (
	"bytes"
	"encoding/xml"
	"io"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/scene"
	"flitchlay/internal/svg"
)

// groupsRead are the groups of the sets that some test has asked for, by their plans.
var groupsRead sync.Map // of func() ([]svgGroup, error)

// written are the pages of the install set as SVG, and of each the words of the groups of a class.
func written(t *testing.T, p *layout.Plan, class string) (groups []svgGroup) {
	t.Helper()
	d := install(t, p)
	once, _ := groupsRead.LoadOrStore(p, sync.OnceValues(func() ([]svgGroup, error) { return groupsOf(d) }))
	all, err := once.(func() ([]svgGroup, error))()
	require.NoError(t, err)
	for _, g := range all {
		if g.facts["class"] == class {
			groups = append(groups, g)
		}
	}
	return groups
}

// groupsOf writes the pages of a document as SVG and reads every group of them, in the order in which they begin.
func groupsOf(d *scene.Document) (groups []svgGroup, err error) {
	for _, page := range d.Pages {
		out, err := svg.Page(page, svg.Options{})
		if err != nil {
			return nil, err
		}
		var open []int // indices of the groups that are open
		dec := xml.NewDecoder(bytes.NewReader(out))
		text := false
		for {
			token, err := dec.Token()
			if err == io.EOF {
				break
			}
			if err != nil {
				return nil, err
			}
			switch x := token.(type) {
			case xml.StartElement:
				text = x.Name.Local == "text"
				if x.Name.Local != "g" {
					continue
				}
				facts := map[string]string{}
				for _, a := range x.Attr {
					facts[a.Name.Local] = a.Value
				}
				open = append(open, len(groups))
				wall := facts["data-wall"]
				for _, i := range open[:len(open)-1] {
					if groups[i].wall != "" {
						wall = groups[i].wall
					}
				}
				groups = append(groups, svgGroup{page: page.Title, wall: wall, facts: facts})
			case xml.EndElement:
				text = false
				if x.Name.Local == "g" {
					open = open[:len(open)-1]
				}
			case xml.CharData:
				if text && strings.TrimSpace(string(x)) != "" {
					for _, i := range open {
						groups[i].words = append(groups[i].words, string(x))
					}
				}
			}
		}
	}
	return groups, nil
}

// svgGroup is a group of a page as it is written.
type svgGroup struct {
	page  string
	wall  string // whose view it is in
	facts map[string]string
	words []string
}

// cutRow is a row of the cut list as a stranger reads it.
type cutRow struct {
	run   *layout.Run
	sheet *layout.Sheet
	words []string
}

// cutListOf reads the cut list: its rows by their numbers.
func cutListOf(t *testing.T, p *layout.Plan) []cutRow {
	var rows []cutRow
	for _, g := range written(t, p, "sheet") {
		if g.page != "Cut list" {
			continue
		}
		require.GreaterOrEqual(t, len(g.words), 3, g.words)
		r, s := sheetOf(t, p, g.words[1])
		rows = append(rows, cutRow{r, s, g.words[2:]})
	}
	require.NotEmpty(t, rows)
	return rows
}

// TestCutListGivesEveryHoleToItsSheet takes the boxes from the room and finds out which sheets they come into; the rows of
// these and of no others give figures for them, and the figures are right.
func TestCutListGivesEveryHoleToItsSheet(t *testing.T) {
	name := regexp.MustCompile(`^([a-z]{1,2})(?: on (.+))?: `)
	for file, p := range rooms(t) {
		t.Run(file, func(t *testing.T) {
			boxes := 0
			for _, row := range cutListOf(t, p) {
				text := strings.Join(row.words, " ")
				got := 0
				for i, w := range row.words {
					if m := name.FindStringSubmatch(w); m != nil {
						whole := strings.Join(row.words[i:min(i+3, len(row.words))], " ")
						c, ok := readCut(t, p, whole)
						require.True(t, ok, whole)
						wall := wallOf(p, row, m[2])
						require.GreaterOrEqual(t, wall, 0, text)
						assertBox(t, p, row.run, row.sheet, c, wall)
						got++
					}
				}
				assert.Equal(t, boxesIn(p, row.run, row.sheet), got, "boxes of sheet %d: %s", row.sheet.Number, text)
				boxes += got
				assert.Equal(t, row.sheet.Turned, strings.Contains(text, "TURNED"), "sheet %d", row.sheet.Number)
				assert.NotRegexp(t, `(^| )-\d`, text, "no figure has a sign")
			}
			assert.Equal(t, file != "freecol", boxes > 0)
		})
	}
}

// wallOf is the wall that a row names: that of a cut-out, else that on which the sheet begins.
func wallOf(p *layout.Plan, row cutRow, name string) int {
	for i := range p.Room.Walls {
		if w := p.Room.Walls[i].Name; w == name || name == "" && slices.Contains(row.words, w) {
			return i
		}
	}
	return -1
}

// sliver reports whether what a sheet has of a box is no more than a nick, which its seam cuts off.
func sliver(s *layout.Sheet, from, to length.Length) bool {
	return to-from <= length.Inch/8 && (to <= s.Left || from >= s.Right)
}

// boxesIn counts the boxes whose cut-out a sheet covers as it hangs before anything of it is cut off at seams and trims, but for nicks.
func boxesIn(p *layout.Plan, r *layout.Run, s *layout.Sheet) int {
	width := p.Room.Veneer.GrossWidth
	if s.Ripped != "" {
		width = s.RipTo
	}
	level, n := p.Room.Space.LevelLine, 0
	for _, st := range r.Walls {
		for _, b := range p.Room.Walls[st.Wall].Boxes {
			wide, high := b.HoleWidth/2, b.HoleHigh/2
			if b.Kind.Traits().NeverCovered {
				wide, high = b.PlateWidth/2, b.PlateHigh/2
			}
			if r.Up {
				if low, top := max(b.Z-high, s.StartLine), min(b.Z+high, s.StartLine+width); low < top && !sliver(s, low, top) && b.X+wide > -s.Below && b.X-wide < s.Above {
					n++
				}
				continue
			}
			if b.Z+high <= level-s.Below || b.Z-high >= level+s.Above {
				continue
			}
			for _, turn := range []length.Length{-r.Length, 0, r.Length} {
				at := b.X + st.Shift + turn
				if from, to := max(at-wide, s.StartLine), min(at+wide, s.StartLine+width); (turn == 0 || r.Closed) && from < to && !sliver(s, from, to) {
					n++
				}
			}
		}
	}
	return n
}

// TestClosingSheetIsRippedToItsGap measures the gap that the layout leaves between the raw edges of the sheets before and
// after the closing one, and rips that and what the page adds: it comes to the figure that is there to check by.
func TestClosingSheetIsRippedToItsGap(t *testing.T) {
	line := regexp.MustCompile(`(\d+) closes: rip to raw gap \((?:head, level, foot|ceiling, over D1)\) \+ ` + figure + `; check ` + figure)
	for _, file := range []string{"oldhouse", "halfhung", "freecol"} {
		p := rooms(t)[file]
		found := 0
		for _, page := range printed(t, p) {
			for _, m := range line.FindAllStringSubmatch(page, -1) {
				r, s := sheetOf(t, p, m[1])
				var before, first *layout.Sheet
				for k := range r.Sheets {
					x := &r.Sheets[k]
					if x.Place == s.Place-1 {
						before = x
					}
					if x.Place == r.Spans[s.Span].FirstSheet {
						first = x
					}
				}
				require.NotNil(t, first)
				require.NotNil(t, before)
				gap := first.StartLine + r.Length - before.RightLine
				assert.True(t, near(gap+read(t, p, m[2]), read(t, p, m[3])), "%s: gap %s, %s", file, p.Style.Format(gap), m[0])
				found++
			}
		}
		assert.Equal(t, 1, found, file)
	}
}

// TestStartHasOneFigure reads where the first sheet of a closed room starts in the tape list: the line that is struck for
// its raw edge, under which the word stands in the drawing too.
func TestStartHasOneFigure(t *testing.T) {
	p := rooms(t)["freecol"]
	for _, page := range printed(t, p) {
		for _, m := range regexp.MustCompile(`START \d+ at `+figure).FindAllStringSubmatch(page, -1) {
			assert.Contains(t, page, m[1]+" left edge")
		}
		for _, m := range regexp.MustCompile(`((?:\d+'-)?\d+(?: \d+/\d+)?") left edge`).FindAllStringSubmatch(page, -1) {
			r := &p.Runs[0]
			at := read(t, p, m[1])
			assert.True(t, slices.ContainsFunc(r.Walls, func(st layout.Stretch) bool {
				at := at + cornerAt(p, st.Wall, false, p.Room.Space.LevelLine)
				return near(r.Sheets[0].StartLine-st.Shift, at) || near(r.Sheets[0].StartLine+r.Length-st.Shift, at)
			}), m[0])
		}
	}
}

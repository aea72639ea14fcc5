package page

import (
	"encoding/json"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/layout"
	"flitchlay/internal/roomtest"
	"flitchlay/internal/scene"
)

// drawer of a room's text.
func drawerOf(t testing.TB, text string) (*Drawer, *layout.Plan) {
	t.Helper()
	p := roomtest.Laid(t, "room.toml", text)
	d, err := NewDrawer(p, false)
	require.NoError(t, err)
	return d, p
}

// seamLine finds the lines of seams in a drawing, with the x of the wall that the item tells.
var seamLine = regexp.MustCompile(`<g class="seam"[^>]* data-x="([0-9.-]+)"[^>]*>\s*<title>[^<]*</title>\s*<line x1="([0-9.]+)"`)

// Where a drawing says that its walls stand, they do: every seam's line is at the place that is told of it, in all rooms, on the
// ribbon and on the wall.
func TestDrawingsAreWhereTheySay(t *testing.T) {
	found := 0
	for why, text := range roomtest.AllRooms(t) {
		d, p := drawerOf(t, text)
		for _, w := range d.Facts(false) {
			_, err := json.Marshal(w)
			require.NoError(t, err, why)
		}
		ribbon, err := d.Ribbon(300)
		require.NoError(t, err, why)
		assert.Len(t, ribbon.Walls, len(d.set.Faces), why)
		for i := range p.Room.Walls {
			wall, err := d.Wall(i, 300, 150)
			require.NoError(t, err, why)
			if wall == nil {
				assert.Nil(t, d.set.Face(i), why)
				continue
			}
			assert.LessOrEqual(t, wall.Width, 300.0+1e-6, why)
			s := wall.Walls[0]
			for _, m := range seamLine.FindAllStringSubmatch(wall.SVG, -1) {
				x, err := strconv.ParseFloat(m[1], 64)
				require.NoError(t, err)
				at, err := strconv.ParseFloat(m[2], 64)
				require.NoError(t, err)
				assert.InDelta(t, s.X+x/float64(wall.Scale), at, 0.002, why)
				found++
			}
		}
	}
	assert.Greater(t, found, 300)
}

// Nothing that is lettered touches anything, on the ribbon and on every wall, at a phone's width and at a desk's.
func TestNothingTouches(t *testing.T) {
	for why, text := range roomtest.AllRooms(t) {
		d, p := drawerOf(t, text)
		for _, wide := range []float64{85, 230} {
			parts, scale, low, high := d.ribbonParts(wide)
			page, _ := d.compose(parts, scale, low, high, "ribbon", "")
			pages := []*scene.Page{page}
			for i := range p.Room.Walls {
				if f := d.set.Face(i); f != nil {
					page, _ := d.compose([]part{{f: f}}, d.wallScale(f, wide, 130), f.Low, f.High, "wall", "")
					pages = append(pages, page)
				}
			}
			for _, page := range pages {
				for _, o := range scene.Overlaps(page, 0.2) {
					t.Errorf("%s, %v mm, %s: %v", why, wide, page.Title, o)
				}
			}
		}
	}
}

// What is told of a seam is what the layout has: its places, and how far it may be off before what.
func TestWhatIsToldOfASeam(t *testing.T) {
	d, p := drawerOf(t, roomtest.Samples(t)["samples reading-room.toml"])
	walls := d.Facts(true)
	seams := 0
	for i := range p.Runs {
		r := &p.Runs[i]
		for k := range r.Seams {
			s := &r.Seams[k]
			for _, m := range walls[s.Wall].Seams {
				if m.Name != Word("seam", p.SeamName(r, s)) {
					continue
				}
				seams++
				assert.InDelta(t, s.X.MM(), m.X, 1e-9)
				assert.Contains(t, m.Rows, Row{Word("from_left"), p.Style.Format(s.X)})
				told := map[string]bool{}
				for _, row := range m.Rows {
					told[row[0]] = true
				}
				assert.True(t, told[Word("play_left")] && told[Word("play_right")], "%s: %v", m.Name, m.Rows)
			}
		}
	}
	assert.Equal(t, p.Totals.Sheets, seams, "in a closed room there are as many seams as sheets")
	for _, f := range d.Findings() {
		if f.Wall >= 0 {
			assert.NotZero(t, f.Line, "%s has its line", f.Place)
		}
	}
}

// A must that is broken is marked at its place.
func TestMustsAreMarked(t *testing.T) {
	d, p := drawerOf(t, roomtest.Samples(t)["samples cannot-meet.toml"])
	n := 0
	for _, w := range d.Facts(false) {
		n += len(w.Musts)
	}
	assert.Positive(t, d.Counts().Musts)
	assert.Positive(t, n)
	assert.NotEmpty(t, p.Findings)
}

// The single file loads nothing, its policy names its own script and style, and text of a room stays text in it.
func TestFile(t *testing.T) {
	const planted = `</script><script>alert(1)</script><img src=x onerror=alert(1)>`
	text := strings.Replace(roomtest.Samples(t)["samples metric-headwall.toml"], `title    = "`, `title    = "`+planted, 1)
	require.Contains(t, text, planted)
	p := roomtest.Laid(t, "room.toml", text)
	data, err := File(p, nil)
	require.NoError(t, err)
	file := string(data)
	assert.NotContains(t, file, planted)
	assert.NotContains(t, file, "<img")
	assert.Contains(t, file, "&lt;script&gt;alert(1)")
	for _, tag := range []string{"style", "script"} {
		list := regexp.MustCompile(`(?s)<`+tag+`(?: type="module")?>(.*?)</`+tag+`>`).FindAllStringSubmatch(file, -1)
		require.Len(t, list, 1, tag)
		assert.Contains(t, file, strings.ReplaceAll(tag+"-src &#39;"+digest(list[0][1])+"&#39;", "+", "&#43;"))
	}
	for _, m := range regexp.MustCompile(`(?:src|href|url)(?:="|\()["']?([^"')]*)`).FindAllStringSubmatch(file, -1) {
		assert.Regexp(t, `^(#|data:|\$\{|$)`, m[1], "it loads nothing")
	}
	again, err := File(p, nil)
	require.NoError(t, err)
	assert.Equal(t, file, string(again), "the same room gives the same bytes")
	assert.NotRegexp(t, `(?m)^import `, file)
}

// A finding leads to the line that it is about: of the thing that it names, of the pin that fell; only else to its wall's.
func TestFindingsHaveTheirLines(t *testing.T) {
	text := roomtest.Samples(t)["samples reading-room.toml"]
	text = strings.Replace(text, "[site]", "[[wall.pin]]\nat = \"0\"\n\n[site]", 1)
	d, _ := drawerOf(t, text)
	list := d.Findings()
	Quote(list, []byte(text))
	want := map[string]string{"plate-close": "[[wall.box]]", "pin-dropped": `at = "0"`}
	for _, f := range list {
		if line, ok := want[f.Code]; ok {
			assert.Equal(t, line, f.Text, f.Message)
			delete(want, f.Code)
		}
	}
	assert.Empty(t, want)
}

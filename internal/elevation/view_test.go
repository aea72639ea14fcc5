package elevation_test

import (
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/elevation"
	"flitchlay/internal/face"
	"flitchlay/internal/finding"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/paper"
	"flitchlay/internal/roomtest"
	"flitchlay/internal/scene"
	"flitchlay/internal/submittal"
)

// drawnAnew draws a room's submittal set on the office page.
func drawnAnew(t *testing.T, text string) *scene.Document {
	d, err := submittal.Photographed(roomtest.Laid(t, "room.toml", text), roomtest.Template(t, "ansi-b"), nil, nil)
	require.NoError(t, err)
	return d
}

// drawnSets are the sets that some test has asked for, by the text of the room: no test changes them.
var drawnSets = map[string]*scene.Document{}

// Drawn is a room's submittal set on the office page, drawn once for all tests.
func Drawn(t *testing.T, text string) (*layout.Plan, *scene.Document) {
	if drawnSets[text] == nil {
		drawnSets[text] = drawnAnew(t, text)
	}
	return roomtest.Laid(t, "room.toml", text), drawnSets[text]
}

// A millimetre of paper is a millimetre of wall at the scale that stands under the view.
func TestSeamsStandAtTrueScale(t *testing.T) {
	pairs := 0
	for why, text := range roomtest.Samples(t) {
		_, d := Drawn(t, text)
		for _, v := range roomtest.ElevationViews(d) {
			scale, err := strconv.ParseFloat(roomtest.Fact(v, "scale"), 64)
			require.NoError(t, err)
			assert.Equal(t, scale, v.View.Scale)
			var at, x []float64
			for _, s := range roomtest.Classed(v, "seam") {
				if roomtest.Fact(s, "x") == "" || len(s.Items) == 0 {
					continue
				}
				mm, err := strconv.ParseFloat(roomtest.Fact(s, "x"), 64)
				require.NoError(t, err)
				at, x = append(at, mm), append(x, s.Items[0].(*scene.Line).A.X)
			}
			for i := 1; i < len(at); i++ {
				assert.InDelta(t, (at[i]-at[0])/scale, x[i]-x[0], 1e-6, "%s, wall %s", why, roomtest.Fact(v, "wall"))
				pairs++
			}
		}
	}
	assert.Greater(t, pairs, 50)
}

// The parts of a rounded chain add up to the whole that is printed: of a wall with an eased corner too, at which the chain of
// seams stops at the round as the detail does.
func TestFiguresOfAChainAddUpToTheWall(t *testing.T) {
	joined := 0
	sum := func(list []*scene.Group, unit length.Unit) (total length.Length, count int) {
		for _, g := range list {
			for _, s := range roomtest.Lettering(g) {
				parse := func(s string) length.Length {
					l, err := length.Parse(strings.ReplaceAll(s, ",", "."), unit)
					require.NoError(t, err)
					return l
				}
				if n, rest, many := strings.Cut(s, " x "); many { // equal neighbours: each, and what they come to
					each, whole, _ := strings.Cut(rest, " = ")
					number, err := strconv.Atoi(n)
					require.NoError(t, err)
					require.Equal(t, roomtest.Fact(g, "equal"), n)
					require.Equal(t, parse(whole), parse(each)*length.Length(number), s)
					joined++
					s = whole
				}
				total += parse(s)
				count++
			}
		}
		return total, count
	}
	rooms := roomtest.AllRooms(t)
	chains := 0
	for why, text := range rooms {
		p, d := Drawn(t, text)
		for _, v := range roomtest.ElevationViews(d) {
			tiers := map[string][]*scene.Group{}
			for _, g := range roomtest.Classed(v, "dimension") {
				tiers[roomtest.Fact(g, "tier")] = append(tiers[roomtest.Fact(g, "tier")], g)
			}
			whole := tiers["wall"]
			if whole == nil {
				whole = tiers["piece"]
			}
			require.Len(t, whole, 1, "%s: the wall is dimensioned once (ISO 129-1)", why)
			want, _ := sum(whole, p.Room.Project.Units)
			for _, name := range []string{"seams", "openings", "ceiling", "joints"} {
				if got, n := sum(tiers[name], p.Room.Project.Units); n > 0 {
					assert.Equal(t, want, got, "%s, wall %s, %s", why, roomtest.Fact(v, "wall"), name)
					chains++
				}
			}
		}
	}
	assert.Greater(t, chains, 40)
	assert.Greater(t, joined, 10, "equal sheets share a figure")
}

func TestEverySheetAndSeamOfTheWallIsOnItsElevation(t *testing.T) {
	rooms := roomtest.AllRooms(t)
	for why, text := range rooms {
		p, d := Drawn(t, text)
		numbered, seams := map[string]bool{}, map[string]bool{}
		for _, v := range roomtest.ElevationViews(d) {
			for _, g := range roomtest.Classed(v, "sheet-number") {
				for _, s := range roomtest.Lettering(g) {
					numbered[roomtest.Fact(v, "wall")+" "+s] = true
				}
			}
			for _, g := range roomtest.Classed(v, "seam") {
				seams[roomtest.Fact(g, "at")] = true
			}
		}
		for i := range p.Runs {
			r := &p.Runs[i]
			for _, s := range r.Sheets {
				for _, q := range s.Pieces {
					assert.True(t, numbered[p.Room.Walls[q.Wall].Name+" "+elevation.NumberOf(&s)], "%s: sheet %s on wall %s", why, elevation.NumberOf(&s), p.Room.Walls[q.Wall].Name)
				}
			}
			for _, m := range r.Seams {
				if m.Seen > 0 && !r.Up {
					assert.True(t, seams[m.At.Decimal()], "%s: seam %d", why, m.Number)
				}
			}
		}
	}
}

// Each return past a wrapped corner is written on the elevations at both its walls and on its detail.
func TestEveryCornerHasItsReturnsAndItsDetail(t *testing.T) {
	for why, text := range roomtest.Samples(t) {
		p, d := Drawn(t, text)
		for i := range p.Runs {
			for _, c := range p.Runs[i].Corners {
				found := 0
				for _, page := range d.Pages {
					for _, v := range roomtest.Classed(&page.Group, "view") {
						if !slices.Contains(strings.Fields(roomtest.Fact(v, "corners")), c.Name) {
							continue
						}
						found++
						list := roomtest.Lettering(v)
						assert.Contains(t, list, p.Style.Format(c.LeftReturn), "%s %s", why, c.Name)
						assert.Contains(t, list, p.Style.Format(c.RightReturn), "%s %s", why, c.Name)
					}
				}
				assert.Equal(t, 1, found, "%s: %s is drawn once", why, c.Name)
			}
		}
	}
}

// Source: sheet numbers of the US National CAD Standard: a discipline of one letter and a hyphen, or two letters, one
// figure for the type, two for the sequence.
func TestPageNumbersAreOfTheNationalForm(t *testing.T) {
	form := regexp.MustCompile(`^([A-Z]-|[A-Z]{2})[0-9][0-9]{2}$`)
	_, d := Drawn(t, roomtest.Samples(t)["samples reading-room.toml"])
	for _, p := range d.Pages {
		assert.Regexp(t, form, p.Name)
		assert.Contains(t, roomtest.Lettering(&p.Group), p.Name)
	}
	assert.Equal(t, "ID207", (&paper.Template{Discipline: "ID"}).PageNumber(int(folio.Elevations), 7), "two letters take no hyphen")
}

// Source: two stamps, the hanger's own approval first (AIA A201-2017 3.12.5); 70 x 30 mm clear.
func TestTwoStampBoxesStayEmptyOnEveryPage(t *testing.T) {
	_, d := Drawn(t, roomtest.Samples(t)["samples cannot-meet.toml"])
	for _, p := range d.Pages {
		require.Len(t, p.Keep, 2)
		for _, a := range p.Keep {
			assert.GreaterOrEqual(t, a.W(), 70-1e-6)
			assert.GreaterOrEqual(t, a.H(), 30-1e-6)
		}
	}
}

func TestEveryPageOfAPlanThatBreaksARuleSaysSo(t *testing.T) {
	for name, unfit := range map[string]bool{"samples cannot-meet.toml": true, "samples reading-room.toml": false} {
		p, d := Drawn(t, roomtest.Samples(t)[name])
		require.Equal(t, unfit, finding.Any(p.Findings, finding.Must), name)
		for _, page := range d.Pages {
			assert.Equal(t, unfit, slices.Contains(roomtest.Lettering(&page.Group), "NOT FOR HANGING"), "%s %s", name, page.Name)
		}
	}
}

// A deviation that is drawn is listed, and one that is listed and has a place on a wall is drawn there.
func TestDeviationsAreDrawnAndListed(t *testing.T) {
	p, d := Drawn(t, roomtest.Samples(t)["samples cannot-meet.toml"])
	drawnOnes := map[string]bool{}
	for _, v := range roomtest.ElevationViews(d) {
		for _, g := range roomtest.Classed(v, "deviation") {
			drawnOnes[roomtest.Fact(g, "number")] = true
		}
	}
	cover := strings.Join(append(roomtest.Lettering(&d.Pages[0].Group), roomtest.Lettering(&d.Pages[1].Group)...), " ")
	s := &folio.Set{Plan: p}
	require.NotEmpty(t, elevation.Deviations(s))
	for _, x := range elevation.Deviations(s) {
		first := strings.Join(strings.Fields(elevation.Capital(x.Message))[:4], " ")
		assert.Contains(t, cover, first)
		if x.Wall >= 0 {
			assert.True(t, drawnOnes[strconv.Itoa(x.Number)], "deviation %d on wall %d", x.Number, x.Wall)
		}
	}
}

// Source: reduction scales of ISO 5455:1979 clause 5.1; scales of a US architect's rule.
func TestViewsAreAtStandardScalesAndSaySoTwice(t *testing.T) {
	iso := []float64{1, 2, 5, 10, 20, 50, 100, 200, 500, 1000}
	us := []float64{1, 2, 4, 8, 12, 16, 24, 32, 48, 64, 96, 128, 192, 384}
	rooms := roomtest.Samples(t)
	rooms["metric"] = roomtest.OddRooms["metric"]
	for why, text := range rooms {
		p, d := Drawn(t, text)
		for _, page := range d.Pages {
			for _, v := range roomtest.Classed(&page.Group, "view") {
				known := us
				if p.Room.Project.Units == length.Millimetres {
					known = iso
				}
				assert.Contains(t, known, v.View.Scale, "%s %s %s", why, page.Name, v.View.Name)
				if roomtest.Fact(v, "wall") == "" {
					continue
				}
				words := strings.Join(roomtest.Lettering(&page.Group), "\n")
				assert.Contains(t, words, "SCALE "+v.View.Ratio, "the scale stands under the view (GSA P100)")
				bars := roomtest.Classed(&page.Group, "scale-bar")
				assert.True(t, slices.ContainsFunc(bars, func(g *scene.Group) bool { return roomtest.Fact(g, "scale") == roomtest.Fact(v, "scale") }), "a bar for each scale (GSA P100)")
			}
		}
	}
}

// A bar is as long as it says.
func TestAScaleBarMeasuresWhatItSays(t *testing.T) {
	_, d := Drawn(t, roomtest.Samples(t)["samples reading-room.toml"])
	for _, p := range d.Pages {
		for _, g := range roomtest.Classed(&p.Group, "scale-bar") {
			scale, err := strconv.ParseFloat(roomtest.Fact(g, "scale"), 64)
			require.NoError(t, err)
			x0, x1 := math.Inf(1), math.Inf(-1)
			var last string
			for _, it := range g.Items {
				switch it := it.(type) {
				case *scene.Rect:
					x0, x1 = math.Min(x0, it.X0), math.Max(x1, it.X1)
				case *scene.Text:
					if _, err := strconv.ParseFloat(it.String, 64); err == nil {
						last = it.String
					}
				}
			}
			n, err := strconv.ParseFloat(last, 64)
			require.NoError(t, err)
			unit := map[string]float64{"ft": 304.8, "in": 25.4}[roomtest.Lettering(g)[len(roomtest.Lettering(g))-1]]
			assert.InDelta(t, n*unit/scale, x1-x0, 1e-6, p.Name)
		}
	}
}

// The largest scale is taken at which the wall fits: 26 feet at 1:24, longer ones at the next. From 1:48 on it is parted instead,
// where no more than two pages come of one.
func TestScaleIsTheLargestThatFits(t *testing.T) {
	template, err := paper.Named("ansi-b")
	require.NoError(t, err)
	for _, c := range []struct {
		long  string
		scale int64
		count int
	}{{"12'", 16, 1}, {"18'", 24, 1}, {"25'", 24, 1}, {"30'", 32, 1}, {"45'", 24, 2}, {"80'", 32, 3}, {"150'", 32, 5}} {
		s := folio.NewSet(roomtest.Laid(t, "room.toml", roomtest.Head("in")+roomtest.Wall("North", c.long, "6'")), template, nil, "")
		cuts := elevation.CutWall(s, face.All(s.Plan)[0])
		require.Len(t, cuts, c.count, c.long)
		assert.Equal(t, c.scale, cuts[0].Scale, c.long)
		for i := 1; i < len(cuts); i++ {
			assert.Equal(t, cuts[i-1].To, cuts[i].From, "pieces meet")
			in := false
			for _, p := range face.All(s.Plan)[0].Parts {
				in = in || p.From < cuts[i].From && cuts[i].From < p.To
			}
			assert.True(t, in, "a match line lies inside a sheet, not on a seam")
		}
	}
}

func TestSameRoomSamePages(t *testing.T) {
	text := roomtest.Samples(t)["samples lift-lobby.toml"]
	a, b := drawnAnew(t, text), drawnAnew(t, text)
	require.NotEmpty(t, a.Pages)
	for i := range a.Pages {
		assert.Equal(t, scene.Dump(a.Pages[i]), scene.Dump(b.Pages[i]))
	}
}

// A room file that is not laid out on paper as a whole would be worse than none: links lead to pages that are there.
func TestLinksAndOutlineLeadToPages(t *testing.T) {
	for _, text := range roomtest.Samples(t) {
		_, d := Drawn(t, text)
		assert.NoError(t, d.Validate())
		listed := map[string]int{}
		for i, e := range d.Outline {
			if i+1 == len(d.Outline) || d.Outline[i+1].Level <= e.Level { // nothing under it
				listed[e.Page]++
			}
		}
		for _, p := range d.Pages {
			assert.Equal(t, 1, listed[p.Name], "page %s stands once in the outline", p.Name)
		}
	}
}

func BenchmarkSubmittal(b *testing.B) {
	template, err := paper.Named("ansi-b")
	if err != nil {
		b.Fatal(err)
	}
	p := roomtest.Laid(b, "room.toml", roomtest.Head("in")+roomtest.Wall("North", "22'", "9'", roomtest.Window("4'", "3'"), roomtest.Door("14'", "3'"))+roomtest.Wall("East", "16'", "9'"))
	b.ReportAllocs()
	for b.Loop() {
		if _, err := submittal.Photographed(p, template, nil, nil); err != nil {
			b.Fatal(err)
		}
	}
}

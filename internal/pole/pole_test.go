package pole

import (
	"math"
	"regexp"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/length"
	"flitchlay/internal/paper"
	"flitchlay/internal/roomtest"
	"flitchlay/internal/scene"
	"flitchlay/internal/svg"
	"flitchlay/templates"
)

func TestPoleIsTrueToScale(t *testing.T) {
	p := roomtest.SmallPlan(t)
	d, err := Draw(p, roomtest.Template(t, "ansi-a"))
	require.NoError(t, err)
	seams := map[string]int{}
	for _, page := range d.Pages {
		bars := roomtest.PartsOf(&page.Group, "check-bar")
		require.Len(t, bars, 2, "page %s has both bars", page.Name)
		for i, want := range []float64{100, 101.6} { // 4 in = 101.6 mm: 1 in = 25.4 mm exactly, NIST SP 811
			line := bars[i].Items[0].(*scene.Line)
			assert.InDelta(t, want, line.B.X-line.A.X, 0.05)
		}
		for _, v := range roomtest.PartsOf(&page.Group, "view") {
			assert.Equal(t, "1", v.Data["scale"])
			from, err := strconv.ParseFloat(v.Data["from"], 64)
			require.NoError(t, err)
			for _, s := range roomtest.PartsOf(v.Group, "seam") {
				x, err := strconv.ParseFloat(s.Data["x"], 64)
				require.NoError(t, err)
				assert.InDelta(t, v.View.Box.X0+x-from, s.Items[0].(*scene.Line).A.X, 0.05)
				seams[s.Data["at"]]++
			}
		}
	}
	for i := range p.Runs[0].Seams {
		assert.Positive(t, seams[p.Runs[0].Seams[i].At.Decimal()], "seam %d is on a pole", p.Runs[0].Seams[i].Number)
	}
}

// TestPoleMeasuresTrueInSVG measures the bars of the SVG file, whose user units are millimetres on paper.
func TestPoleMeasuresTrueInSVG(t *testing.T) {
	d, err := Draw(roomtest.SmallPlan(t), roomtest.Template(t, "a4"))
	require.NoError(t, err)
	out, err := svg.Page(d.Pages[0], svg.Options{})
	require.NoError(t, err)
	for length, want := range map[string]float64{"100": 100, "101.6": 101.6} {
		m := regexp.MustCompile(`data-length="` + regexp.QuoteMeta(length) + `"[^>]*>\s*<[^>]*?(?:x1="([-0-9.]+)"[^>]*?x2="([-0-9.]+)"|d="M([-0-9.]+)[ ,][-0-9.]+ ?[LH] ?([-0-9.]+))`).FindSubmatch(out)
		require.NotNil(t, m, "bar of %s mm", length)
		a, b := string(m[1])+string(m[3]), string(m[2])+string(m[4])
		x1, err := strconv.ParseFloat(a, 64)
		require.NoError(t, err)
		x2, err := strconv.ParseFloat(b, 64)
		require.NoError(t, err)
		assert.InDelta(t, want, math.Abs(x2-x1), 0.05)
	}
}

// asked is letter paper with keys of [pole].
func asked(t *testing.T, keys string) *paper.Template {
	text, err := templates.Files.ReadFile("pages/ansi-a.toml")
	require.NoError(t, err)
	out, err := paper.Decode("office.toml", append(text, "\n[pole]\n"+keys...))
	require.NoError(t, err)
	return out
}

// counted counts the parts of a class on all pages.
func counted(d *scene.Document, class string) int {
	n := 0
	for _, page := range d.Pages {
		n += len(roomtest.PartsOf(&page.Group, class))
	}
	return n
}

// TestPolesWithoutLinesAreDrawnWhereAsked counts poles and marks: one pole a wall, with its lines; the others, and what is open
// or set in the wall, only where the template asks for them.
func TestPolesWithoutLinesAreDrawnWhereAsked(t *testing.T) {
	p := roomtest.SmallPlan(t)
	titles := func(keys string) map[string]int {
		d, err := Draw(p, asked(t, keys))
		require.NoError(t, err)
		out := map[string]int{"opening": counted(d, "opening"), "box": counted(d, "box")}
		for _, page := range d.Pages {
			for _, v := range roomtest.PartsOf(&page.Group, "view") {
				if v.Data["strip"] == "1" {
					out[v.View.Name]++
				}
			}
		}
		return out
	}
	usual := titles("")
	assert.Equal(t, map[string]int{"Bar, along the level line": 1, "Return, along the level line": 1, "opening": 0, "box": 0}, usual)
	all := titles("other = true\nopenings = true\n")
	assert.Equal(t, 1, all["Bar, up the wall"])
	assert.Positive(t, all["opening"])
	assert.Positive(t, all["box"])
}

// TestPoleOnARollIsInOnePiece draws the poles on a roll: one strip each, as long as the wall at full size, and each mark where
// the strips have it.
func TestPoleOnARollIsInOnePiece(t *testing.T) {
	p := roomtest.SmallPlan(t)
	d, err := Draw(p, asked(t, "roll = '24 in'\n"))
	require.NoError(t, err)
	require.Len(t, d.Pages, 1)
	assert.InDelta(t, 609.6, d.Pages[0].Height, 0.01, "24 in = 609.6 mm")
	views := roomtest.PartsOf(&d.Pages[0].Group, "view")
	require.Len(t, views, 2)
	for i, v := range views {
		w := &p.Room.Walls[i]
		assert.InDelta(t, (w.Length - p.Room.Datum(i)).MM(), v.View.Box.W(), 13, "the pole of %s is as long as it, but for its leans", w.Name)
		for _, s := range roomtest.PartsOf(v.Group, "seam") {
			x, err := strconv.ParseFloat(s.Data["x"], 64)
			require.NoError(t, err)
			assert.InDelta(t, v.View.Box.X0+x, s.Items[0].(*scene.Line).A.X, 0.05)
		}
	}
	short, err := Draw(p, asked(t, "roll = '24 in'\nlongest = 1500\n"))
	require.NoError(t, err)
	assert.Greater(t, counted(short, "joint"), 0, "longer poles are parted")
	for _, page := range short.Pages {
		assert.LessOrEqual(t, page.Width, 1500.0)
	}
	for _, doc := range []*scene.Document{d, short} {
		for _, page := range doc.Pages {
			assert.Empty(t, scene.Overlaps(page, 0.5), page.Name)
		}
	}
}

// TestPoleOfAnInchRoomCountsFeetAndInches reads the figures under the ticks: each stands at as many feet and inches from the
// datum as it says, and there is one at every foot.
func TestPoleOfAnInchRoomCountsFeetAndInches(t *testing.T) {
	d, err := Draw(roomtest.SmallPlan(t), asked(t, "roll = '24 in'\n"))
	require.NoError(t, err)
	for _, v := range roomtest.PartsOf(&d.Pages[0].Group, "view") {
		feet, all := 0, 0
		v.Texts(func(x *scene.Text) {
			if x.Height != 2.5 || x.Angle != 0 {
				return
			}
			l, err := length.Parse(x.String, length.Inches)
			require.NoError(t, err, x.String)
			assert.InDelta(t, v.View.Box.X0+l.MM(), x.At.X, 0.01, x.String)
			if all++; l%length.Foot == 0 {
				feet++
			}
		})
		assert.GreaterOrEqual(t, feet, int(v.View.Box.W()/304.8)-1, "a figure at every foot but where a mark stands")
		assert.Greater(t, all, 5*feet)
	}
}

// TestStripsCarryEveryMarkOnce sets the strips of poles on a batten by their figures from 0: each begins where it says, none lies over
// another, all marks are on them at their places, those between which nothing lies are joined, and there are about as many as seams.
func TestStripsCarryEveryMarkOnce(t *testing.T) {
	p := roomtest.SmallPlan(t)
	for _, keys := range []string{"", "other = true\nopenings = true\n"} {
		d, err := Draw(p, asked(t, keys))
		require.NoError(t, err)
		roll, err := Draw(p, asked(t, keys+"roll = '24 in'\n")) // in one piece
		require.NoError(t, err)
		alone := 0
		assert.Equal(t, marksOf(t, roll), marksOf(t, d), keys)
		ends := map[string]float64{}
		for _, page := range d.Pages {
			assert.Empty(t, scene.Overlaps(page, 0.5), page.Name)
			for _, v := range roomtest.PartsOf(&page.Group, "view") {
				from, err := strconv.ParseFloat(v.Data["from"], 64)
				require.NoError(t, err)
				name, first := v.View.Name, v.Data["strip"] == "1"
				assert.True(t, first || from >= ends[name]-0.01, "%s, strip %s begins behind the end of the one before it", name, v.Data["strip"])
				sets, joints := roomtest.PartsOf(v.Group, "set"), roomtest.PartsOf(v.Group, "joint")
				switch joined := !first && math.Abs(from-ends[name]) < 0.01; {
				case first:
					assert.Empty(t, sets)
				case joined:
					assert.Empty(t, sets)
					assert.NotEmpty(t, joints)
				default:
					alone++
					require.Len(t, sets, 1, "%s, strip %s", name, v.Data["strip"])
					sets[0].Texts(func(x *scene.Text) {
						m := regexp.MustCompile(`^← (.*) from 0$`).FindStringSubmatch(x.String)
						require.NotNil(t, m, x.String)
						l, err := length.Parse(m[1], length.Inches)
						require.NoError(t, err)
						assert.InDelta(t, from, l.MM(), 0.001, "figures of strips are exact")
					})
				}
				ends[name] = from + v.View.Box.W()
			}
		}
		assert.Positive(t, alone, "strips that stand alone")
	}
}

// marksOf are the places of the marks of all poles, by their names and kinds, each once.
func marksOf(t *testing.T, d *scene.Document) map[string]bool {
	t.Helper()
	out := map[string]bool{}
	for _, page := range d.Pages {
		for _, v := range roomtest.PartsOf(&page.Group, "view") {
			for _, class := range []string{"datum", "seam", "plumb-line", "opening", "box", "corner", "level", "covering"} {
				for _, s := range roomtest.PartsOf(v.Group, class) {
					out[v.View.Name+" "+class+" "+s.Data["x"]] = true
				}
			}
		}
	}
	require.NotEmpty(t, out)
	return out
}

// TestStripsUnderZeroHaveNoSign draws the pole of heights of a wall whose floor falls 5 ft under the room's: a strip that begins under 0 says
// so in a word.
func TestStripsUnderZeroHaveNoSign(t *testing.T) {
	p := roomtest.Laid(t, "down.toml", roomtest.Head("in")+roomtest.Wall("Down", "12'", "9'")+"floor = [[\"0\", \"0\"], [\"3'\", \"0\"], [\"11'\", \"-5'\"], [\"12'\", \"-5'\"]]\n")
	d, err := Draw(p, asked(t, "other = true\n"))
	require.NoError(t, err)
	under := 0
	for _, page := range d.Pages {
		for _, s := range roomtest.PartsOf(&page.Group, "set") {
			at, err := strconv.ParseFloat(s.Data["at"], 64)
			require.NoError(t, err)
			s.Texts(func(x *scene.Text) {
				assert.NotRegexp(t, `^← -`, x.String)
				assert.Equal(t, at < 0, regexp.MustCompile(`^← \S+ before 0$`).MatchString(x.String), x.String)
			})
			if at < 0 {
				under++
			}
		}
	}
	assert.Positive(t, under)
}

// TestStretchesLeaveOutWhatCarriesNothing parts a pole of 22 ft with a seam and its line every 2 ft on strips of 10 in: of 27 that are
// joined end to end 13 carry a mark.
func TestStretchesLeaveOutWhatCarriesNothing(t *testing.T) {
	p := pole{to: 22 * length.Foot}
	for x := length.Foot; x < p.to; x += 2 * length.Foot {
		p.marks = append(p.marks, poleMark{at: x, kind: seamMark}, poleMark{at: x + length.Inch/2, kind: lineMark})
	}
	p.marks = append(p.marks, poleMark{at: p.to, kind: endMark})
	list := p.stretches(10*length.Inch, length.Inch)
	assert.Len(t, list, 13)
	assert.Equal(t, stretch{0, false}, list[0])
	assert.Equal(t, stretch{10 * length.Inch, true}, list[1], "9 in would be before the end of the first")
}

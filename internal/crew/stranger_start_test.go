package crew_test

import (
	"math"
	"os"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/crew"
	"flitchlay/internal/finding"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/room"
	"flitchlay/internal/roomtest"
	"flitchlay/internal/scene"
)

// startOf are the words of the pages of the room's start.
func startOf(t *testing.T, p *layout.Plan) string {
	var words []string
	for i, page := range install(t, p).Pages {
		if strings.HasPrefix(page.Title, "Room start") {
			words = append(words, printed(t, p)[i])
		}
	}
	return strings.Join(words, " ")
}

// TestStartOfBandsGoesUp reads the pages before the walls of a room whose grain lies level: nothing on them is said of upright sheets.
func TestStartOfBandsGoesUp(t *testing.T) {
	p := rooms(t)["horiz"]
	start := startOf(t, p)
	assert.Contains(t, start, "hung bottom to top, START at the floor")
	assert.NotContains(t, start, "left to right")
	assert.Contains(t, start, `A Head wall floor 15'-7" 1/4" R 1/8" L`, "which length that is")
	key := ""
	for i, page := range install(t, p).Pages {
		if page.Title == "Key to the marks" {
			key += printed(t, p)[i]
		}
	}
	assert.Contains(t, key, "a line to strike level, from end to end of the wall: the raw UPPER edge")
	for _, words := range []string{"RIGHT", "left edge", "floor to ceiling", "witness"} {
		assert.NotContains(t, key, words)
	}
}

// TestLeansTooMuchAreMarkedAtTheStart finds beside every end of a wall that is to be put right first its mark, beside no other end, and
// the check that says what is done about it.
func TestLeansTooMuchAreMarkedAtTheStart(t *testing.T) {
	marked := 0
	for file, p := range rooms(t) {
		ends := map[[2]int]bool{}
		for _, f := range p.Findings {
			if f.Code == finding.LeansMuch {
				side := 0
				if f.At > 0 {
					side = 1
				}
				ends[[2]int{f.Wall, side}] = true
			}
		}
		start := startOf(t, p)
		assert.Equal(t, len(ends), len(regexp.MustCompile(`" [RL] !|\d [RL] !`).FindAllString(start, -1)), file)
		assert.Equal(t, len(ends) > 0, strings.Contains(start, "leans with a !: put right, then drawn anew, or as the architect says"), file)
		marked += len(ends)
	}
	assert.Contains(t, startOf(t, rooms(t)["winwall"]), `level 13'-0 13/16" plumb 3/8" L !`)
	assert.GreaterOrEqual(t, marked, 3)
}

// TestEveryWallHasItsLetterOnThePlan finds on the plan of the first page the letter of every wall that is covered, however short.
func TestEveryWallHasItsLetterOnThePlan(t *testing.T) {
	plans := map[string]*layout.Plan{}
	for file, p := range rooms(t) {
		plans[file] = p
	}
	for file, text := range roomtest.Samples(t) {
		plans[file] = roomtest.Laid(t, file, text)
	}
	for file, p := range plans {
		for _, paper := range []string{"ansi-a", "a4"} {
			page := crew.NewSet(p, roomtest.Template(t, paper), "Install").StartPage(1)[0]
			plan := roomtest.PartsOf(&page.Group, "key")
			require.Len(t, plan, 1)
			letters := map[string]int{}
			plan[0].Texts(func(x *scene.Text) { letters[x.String]++ })
			for wall, mark := range folio.WallMarks(p) {
				assert.Equal(t, 1, letters[mark], "%s on %s: %s of wall %s", file, paper, mark, p.Room.Walls[wall].Name)
			}
		}
	}
}

// TestHeightsHaveBlanks counts the blanks beside the heights: one for every place along every wall.
func TestHeightsHaveBlanks(t *testing.T) {
	for file, p := range rooms(t) {
		want, got := 0, 0
		for i := range p.Room.Walls {
			if w := &p.Room.Walls[i]; w.Cover {
				step := 4 * length.Foot
				if p.Room.Project.Units == length.Millimetres {
					step = 1200 * length.Millimetre
				}
				knees := kneesOf(w)
				want += 1 + len(knees) // its end, and where it begins to slope
				for x := layout.L(0); x < w.Length-step/4; x += step {
					if x == 0 || !slices.ContainsFunc(knees, func(k layout.L) bool { return (k - x).Abs() < step/4 }) {
						want++
					}
				}
			}
		}
		for _, g := range written(t, p, "heights") {
			for _, w := range g.words {
				if w == "read" {
					got++
				}
			}
		}
		assert.Equal(t, want, got, file)
	}
}

// kneesOf are where the floor or the ceiling of a wall changes its slope by more than 2 in over 4 ft.
func kneesOf(w *room.Wall) []layout.L {
	var list []layout.L
	for _, profile := range [][]room.Point{w.Floor, w.Ceiling} {
		for i := 1; i+1 < len(profile); i++ {
			a, b, c := profile[i-1], profile[i], profile[i+1]
			rise := func(a, b room.Point) float64 { return float64(b.Z-a.Z) / float64(b.X-a.X) }
			if a.X < b.X && b.X < c.X && math.Abs(rise(a, b)-rise(b, c)) >= 2.0/48 && !slices.Contains(list, b.X) {
				list = append(list, b.X)
			}
		}
	}
	return list
}

// TestStairsSayWhereTheySlopeAndHowTheTapeGoesOn takes the figures of a wall over a stair: its floor and its ceiling begin and end to slope
// where they say, over 0 of the tape list; and where the tape goes on along the second line, the first is still on the wall.
func TestStairsSayWhereTheySlopeAndHowTheTapeGoesOn(t *testing.T) {
	slope := regexp.MustCompile(`(floor|ceiling) (climbs|falls) from ` + figure + ` to ` + figure)
	carry := regexp.MustCompile(`where line 1 cannot be reached: plumb from it at ` + figure + ` to line 2, hold the tape there at ` + figure + ` and run it on along line 2`)
	for _, file := range []string{"stair", "landing"} {
		p := rooms(t)[file]
		start := startOf(t, p)
		w, level := &p.Room.Walls[0], p.Room.Space.LevelLine
		zero := cornerAt(p, 0, false, level)
		found := 0
		for _, m := range slope.FindAllStringSubmatch(start, -1) {
			found++
			profile := w.Floor
			if m[1] == "ceiling" {
				profile = w.Ceiling
			}
			from, to := read(t, p, m[3])+zero, read(t, p, m[4])+zero
			for _, x := range []length.Length{from, to} {
				assert.True(t, slices.ContainsFunc(profile, func(q room.Point) bool { return near(q.X, x) }), "%s: no knee at %s", m[0], p.Style.Format(x))
			}
			a, b := room.At(profile, from), room.At(profile, to)
			assert.Equal(t, m[2] == "climbs", b > a, m[0])
		}
		assert.Equal(t, len(slope.FindAllString(start, -1)), found)
		assert.GreaterOrEqual(t, found, 1, "%s: %s", file, start)
		m := carry.FindStringSubmatch(start)
		require.NotNil(t, m, start)
		assert.Equal(t, m[1], m[2])
		at := read(t, p, m[1]) + zero
		assert.Less(t, room.At(w.Floor, at), level, "%s: line 1 is on the wall at %s", file, m[1])
		from, to := stretchOfSecond(t, p, 0)
		assert.True(t, near(at, from) || near(at, to), "and line 2 begins there")
		assert.Regexp(t, `struck from it: `+figure+` over it \(page \d+\)`, start)
	}
	assert.NotContains(t, startOf(t, rooms(t)["oldhouse"]), "cannot be reached")
}

// TestStairsHaveTheirCaution finds what is said of ladders on stairs where a floor is one, and nowhere else.
func TestStairsHaveTheirCaution(t *testing.T) {
	for file, p := range rooms(t) {
		all := strings.Join(printed(t, p), " ")
		assert.Equal(t, file == "stair" || file == "landing", strings.Contains(all, "Stairs: no ladder stands on treads without a levelling platform"), file)
	}
}

// TestTopCutIsSaidOfEveryWall reads beside the name of every wall at which height the covering is cut at its foot and at its head, also where
// there is no base and no crown.
func TestTopCutIsSaidOfEveryWall(t *testing.T) {
	bare := 0
	for file, p := range rooms(t) {
		start := startOf(t, p)
		for i := range p.Room.Walls {
			w := &p.Room.Walls[i]
			if !w.Cover {
				continue
			}
			foot, head := "no base: cut at the floor", "no crown: cut at the ceiling"
			if w.Base > 0 {
				foot = "base " + inch(p, w.Base) + " high: cut "
			}
			if w.Crown > 0 {
				head = "crown " + inch(p, w.Crown) + " high: cut "
			} else {
				bare++
			}
			assert.Regexp(t, regexp.QuoteMeta(w.Name+" "+foot)+"[^;]*; "+regexp.QuoteMeta(head), start, file)
		}
	}
	assert.Positive(t, bare)
}

// inch prints a short length with its mark.
func inch(p *layout.Plan, l length.Length) string {
	if p.Room.Project.Units == length.Millimetres {
		return p.Style.Inches(l)
	}
	return p.Style.Inches(l) + `"`
}

// TestStartPageSaysWhereToBegin follows the start page to the first sheet: its number, its wall and the page that has it.
func TestStartPageSaysWhereToBegin(t *testing.T) {
	at := regexp.MustCompile(`START: ([0-9+]+) on ([A-Z]+) (.*?), (?:left edge at ` + figure + `(?:, witness line at ` + figure + `)?; )?page (\d+)`)
	for file, p := range rooms(t) {
		pages := printed(t, p)
		m := at.FindStringSubmatch(pages[0])
		require.NotNil(t, m, "%s: %s", file, pages[0])
		first := cutListOf(t, p)[0]
		assert.Contains(t, strings.Split(m[1], "+"), itoa(first.sheet.Number), file)
		n, err := strconv.Atoi(m[6])
		require.NoError(t, err)
		i := slices.IndexFunc(p.Room.Walls, func(w room.Wall) bool { return w.Name == m[3] })
		require.GreaterOrEqual(t, i, 0, m[0])
		assert.Equal(t, m[2], folio.WallMarks(p)[i], file)
		assert.Contains(t, pages[n-1], "TAPE LIST", "%s: %s", file, m[0])
		assert.Contains(t, pages[n-1], "START", "%s: %s", file, m[0])
	}
}

// TestWhoMixesReadsPasteAndPrimer reads what is mixed, how far it goes and how long it stays open; what the room file does not say is a
// line to write on.
func TestWhoMixesReadsPasteAndPrimer(t *testing.T) {
	text, err := os.ReadFile("testdata/rooms/oldhouse.toml")
	require.NoError(t, err)
	named := strings.NewReplacer("[paste]", "[paste]\nname = \"Heron clear\"", "[primer]", "[primer]\nname = \"Heron base\"").Replace(string(text))
	all := strings.Join(printed(t, roomtest.Laid(t, "named.toml", named)), " ")
	assert.Regexp(t, `PASTE AND PRIMER NAME SPREAD NEEDED STAYS OPEN paste Heron clear 150 sq ft a gal \d+(\.\d)? gal 60 min primer Heron base 300 sq ft a gal \d+(\.\d)? gal`, all)
	assert.Contains(t, all, "primer Heron base on and dry: name, date")
	assert.Regexp(t, `paste _+ _+ _+ 60 min primer _+ _+ _+`, strings.Join(printed(t, rooms(t)["horiz"]), " "))
}

// TestCautionsStandOnce counts what may hurt somebody: once in a set, and what stands first gives way to codes and trades.
func TestCautionsStandOnce(t *testing.T) {
	for file, p := range rooms(t) {
		all := strings.Join(printed(t, p), " ")
		assert.Equal(t, 1, strings.Count(all, "CAUTIONS Local codes, the makers' instructions and licensed trades decide;"), file)
		for _, word := range []string{"by who is licensed to", "Lead paint: ", "asbestos", "Dust: ", "Blades: ", "Ladders: ", "ratings are the architect's"} {
			assert.Equal(t, 1, strings.Count(all, word), "%s: %s", file, word)
		}
	}
}

// TestRoundingIsSaidInOnePlace follows what points to how figures are rounded: to the one page that says so, and no page has another word
// for a small amount.
func TestRoundingIsSaidInOnePlace(t *testing.T) {
	points := regexp.MustCompile(`how figures are rounded: page (\d+)`)
	for file, p := range rooms(t) {
		pages := printed(t, p)
		all := strings.Join(pages, " ")
		assert.Equal(t, 1, strings.Count(all, "HOW FIGURES ARE ROUNDED"), file)
		assert.NotContains(t, all, " hair", file)
		found := points.FindAllStringSubmatch(all, -1)
		require.GreaterOrEqual(t, len(found), 2, file)
		for _, m := range found {
			n, err := strconv.Atoi(m[1])
			require.NoError(t, err)
			assert.Contains(t, pages[n-1], "HOW FIGURES ARE ROUNDED Every figure runs from its own 0, to the nearest "+map[bool]string{true: "0,5", false: `1/16"`}[p.Room.Project.Units == length.Millimetres]+":", file)
		}
	}
}

// TestLimitsStandWhole reads under the blanks of every wall's page all limits that the start page has.
func TestLimitsStandWhole(t *testing.T) {
	walls := 0
	for _, page := range printed(t, rooms(t)["oldhouse"]) {
		if strings.Contains(page, "TAPE LIST") {
			assert.Contains(t, page, "air F RH % wall F board")
			assert.Contains(t, page, "go: air 60 to 90 F, RH 30 to 55 %, wall min 53.8 F, board max 1")
			walls++
		}
	}
	assert.Positive(t, walls)
}

// TestNoHeadingStandsTwice reads the pages of walls: what begins at the foot and goes on beside the drawing says that it does.
func TestNoHeadingStandsTwice(t *testing.T) {
	on := 0
	for file, p := range rooms(t) {
		for _, page := range install(t, p).Pages {
			heads := map[string]int{}
			page.Texts(func(x *scene.Text) {
				if x.Bold && regexp.MustCompile(`^[A-Z]{4,}( [A-Z]+)*(, on)?$`).MatchString(x.String) {
					heads[x.String]++
					if strings.HasSuffix(x.String, ", on") {
						on++
					}
				}
			})
			for _, head := range []string{"BOXES", "BOXES AND OPENINGS", "OPENINGS", "RIP BEFORE PASTING", "TAPE LIST"} {
				assert.LessOrEqual(t, heads[head], 1, "%s: %s on %s", file, head, page.Title)
			}
		}
	}
	assert.Positive(t, on)
}

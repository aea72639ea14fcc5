package elevation_test

import (
	"maps"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
	"flitchlay/internal/elevation"
	"flitchlay/internal/face"
	"flitchlay/internal/folio"
	"flitchlay/internal/room"
	"flitchlay/internal/roomtest"
	"flitchlay/internal/scene"
	"flitchlay/internal/submittal"
)

// pieced is a room whose first wall is drawn in pieces on the office page, with an opening on each of them, and whose third wall has
// the letter of corners.
func pieced() string {
	return roomtest.Head("in") + roomtest.Wall("Long", `70'`, `9'`, roomtest.Door(`6'`, `3'`), roomtest.Window(`30'`, `4'`), roomtest.Door(`60'`, `3'`)) +
		roomtest.Wall("Short", `14'`, `9'`) + roomtest.Wall("Other", `66'`, `9'`, roomtest.Door(`50'`, `3'`))
}

// The enlargement of an opening names the page on which the opening is seen, also where its wall is drawn in pieces.
func TestEnlargementsPointToThePageThatShowsTheOpening(t *testing.T) {
	p, d := Drawn(t, pieced())
	pages, pointed := map[string][]string{}, 0
	for _, page := range d.Pages {
		for _, v := range roomtest.Classed(&page.Group, "view") {
			if roomtest.Fact(v, "from") == "" {
				continue
			}
			from, to := lengthOf(t, roomtest.Fact(v, "from")), lengthOf(t, roomtest.Fact(v, "to"))
			for i := range p.Room.Walls {
				for _, o := range p.Room.Walls[i].Openings {
					if m := (o.FromLeft + o.Right()) / 2; p.Room.Walls[i].Name == roomtest.Fact(v, "wall") && from <= m && m <= to {
						pages[o.Name] = append(pages[o.Name], page.Name)
					}
				}
			}
		}
	}
	for _, page := range d.Pages {
		words := roomtest.Lettering(&page.Group)
		for _, v := range roomtest.Classed(&page.Group, "view") {
			if name := roomtest.Fact(v, "opening"); name != "" {
				require.Len(t, pages[name], 1)
				assert.Contains(t, words, "wall "+roomtest.Fact(v, "wall")+", page "+pages[name][0], name)
				pointed++
			}
		}
	}
	assert.Equal(t, 4, pointed)
	assert.NotEqual(t, pages["D1"], pages["D2"])
}

// The mark of a piece of a wall is no mark of a corner, a termination or an opening: those end in figures.
func TestMarksOfPiecesAreNoMarksOfCorners(t *testing.T) {
	_, d := Drawn(t, pieced())
	words := strings.Split(roomtest.Texts(d.Pages), "\n")
	for _, mark := range []string{"Aa", "Ab", "Ac", "Ca", "Cb"} {
		assert.Contains(t, words, mark)
	}
	corner := regexp.MustCompile(`^[A-Z]+[0-9]+$`)
	for piece := range 60 {
		assert.False(t, corner.MatchString(elevation.PieceMark("C", piece)))
	}
	assert.Equal(t, "Caa", elevation.PieceMark("C", 26))
}

// Walls of a room are drawn at one scale with their floors at one height of the page. A wall that has no room at the scale of the
// others has its own.
func TestWallsOfARoomAreAtOneScaleOnOneFloorLine(t *testing.T) {
	floors := func(text string) (scales []string, lines []float64) {
		_, d := Drawn(t, text)
		for _, v := range roomtest.ElevationViews(d) {
			scales = append(scales, roomtest.Fact(v, "scale"))
			lines = append(lines, v.View.Box.Y1-1)
		}
		return scales, lines
	}
	scales, lines := floors(pieced())
	require.Len(t, scales, 6)
	for i := range scales {
		assert.Equal(t, scales[0], scales[i])
		assert.InDelta(t, lines[0], lines[i], 1e-6)
	}
	scales, _ = floors(roomtest.Head("in") + roomtest.Wall("Low", `14'`, `8'`) + roomtest.Wall("Tower", `14'`, `24'`))
	require.Len(t, scales, 2)
	assert.NotEqual(t, scales[0], scales[1], "the tower has no room at the scale of the low wall, and does not shrink it")
}

// An enlargement is larger than the elevation that it enlarges, or it is left out.
func TestEnlargementsAreLargerThanWhatTheyEnlarge(t *testing.T) {
	larger, left := 0, 0
	rooms := roomtest.AllRooms(t)
	for i, why := range slices.Sorted(maps.Keys(rooms)) {
		if !effort.Full() && i%3 == 2 {
			continue
		}
		for _, paper := range effort.Turns(i, []string{"ansi-b", "a4"}) {
			p, d := Drawn(t, rooms[why])
			s := folio.NewSet(p, roomtest.Template(t, paper), nil, "")
			cuts := elevation.CutWalls(s)
			if paper != "ansi-b" {
				var err error
				d, err = s.Document(submittal.Submittal)
				require.NoError(t, err)
			}
			drawn := 0
			for _, page := range d.Pages {
				for _, v := range roomtest.Classed(&page.Group, "view") {
					if roomtest.Fact(v, "opening") == "" {
						continue
					}
					drawn++
					for _, f := range face.All(p) {
						i := slices.IndexFunc(f.W.Openings, func(o room.Opening) bool { return o.Name == roomtest.Fact(v, "opening") })
						if f.W.Name == roomtest.Fact(v, "wall") && i >= 0 {
							assert.Less(t, v.View.Scale, float64(cuts[f.Wall][0].Scale), "%s on %s, %s", why, paper, roomtest.Fact(v, "opening"))
						}
					}
				}
			}
			larger += drawn
			for _, f := range face.All(p) {
				if !f.Run.Up {
					left += len(f.W.Openings)
				}
			}
			left -= drawn
		}
	}
	assert.Greater(t, larger, effort.Of(10, 20))
	assert.Greater(t, left, 3, "some are left out")
}

// A number stands in its sheet, or on a leader to it that crosses no other leader of a number.
func TestLeadersOfNumbersCrossNoOthers(t *testing.T) {
	leaders := 0
	for why, text := range roomtest.AllRooms(t) {
		_, d := Drawn(t, text)
		for _, v := range roomtest.ElevationViews(d) {
			var list [][2]scene.Point
			var owner []int
			for i, g := range roomtest.Classed(v, "balloon") {
				g.Walk(func(it scene.Item) {
					if l, ok := it.(*scene.Poly); ok && !l.Closed {
						for j := 0; j+1 < len(l.Points); j++ {
							if l.Points[j] != l.Points[j+1] {
								list, owner = append(list, [2]scene.Point{l.Points[j], l.Points[j+1]}), append(owner, i)
							}
						}
					}
				})
			}
			for i := range list {
				for j := range i {
					if owner[i] != owner[j] {
						assert.False(t, cross(list[i], list[j]), "%s, wall %s: %v and %v", why, roomtest.Fact(v, "wall"), list[i], list[j])
					}
				}
			}
			leaders += len(list)
		}
	}
	assert.Greater(t, leaders, 100)
}

// cross reports whether two lines meet.
func cross(a, b [2]scene.Point) bool {
	turn := func(p, q, r scene.Point) float64 { return (q.X-p.X)*(r.Y-p.Y) - (q.Y-p.Y)*(r.X-p.X) }
	m, n := turn(a[0], a[1], b[0])*turn(a[0], a[1], b[1]), turn(b[0], b[1], a[0])*turn(b[0], b[1], a[1])
	return m <= 0 && n <= 0 && (m < 0 || n < 0)
}

// Equal sheets are one dimension, with a stroke where two of them meet; running figures of many boxes are turned, not fanned out.
func TestEqualSheetsAreOneDimension(t *testing.T) {
	var boxes []string
	for x := range 20 {
		boxes = append(boxes, roomtest.Box("outlet", strconv.Itoa(8+12*x+x%3), "16"))
	}
	_, d := Drawn(t, roomtest.Head("in")+roomtest.Wall("North", `24'`, `9'`, boxes...))
	views := roomtest.ElevationViews(d)
	require.Len(t, views, 1)
	equal, strokes, turned := 0, 0, 0
	for _, g := range roomtest.Classed(views[0], "tier") {
		for _, in := range roomtest.Classed(g, "dimension") {
			if roomtest.Fact(in, "tier") == "boxes" {
				in.Texts(func(x *scene.Text) {
					if x.Angle == 90 {
						turned++
					}
				})
			}
		}
		if !slices.ContainsFunc(roomtest.Classed(g, "dimension"), func(in *scene.Group) bool { return roomtest.Fact(in, "tier") == "seams" }) {
			continue
		}
		for _, in := range roomtest.Classed(g, "dimension") {
			if n, err := strconv.Atoi(roomtest.Fact(in, "equal")); err == nil {
				equal += n
			}
		}
		for _, it := range g.Items {
			if l, ok := it.(*scene.Line); ok && l.A.X != l.B.X && l.A.Y != l.B.Y {
				strokes++
			}
		}
	}
	assert.GreaterOrEqual(t, equal, 8)
	seams := map[string]bool{}
	for _, g := range roomtest.Classed(views[0], "seam") {
		seams[roomtest.Fact(g, "x")] = true
	}
	assert.Equal(t, len(seams)+2, strokes, "a stroke at each seam and at both ends")
	assert.Equal(t, 20, turned)
}

// Where the grain is level, the sides of a wall are raw ends like its base and its head: the page names their detail.
func TestSidesOfLevelGrainNameTheirDetail(t *testing.T) {
	_, d := Drawn(t, strings.Replace(roomtest.Head("in"), "[veneer]", "[veneer]\ngrain = \"horizontal\"", 1)+roomtest.Wall("North", `9'`, `8'`))
	page := d.Pages[slices.IndexFunc(d.Pages, func(p *scene.Page) bool { return p.Name == "Z-201" })]
	assert.Regexp(t, `Terminations Z-5\d\d: base T1, head T2, sides T3\.`, strings.Join(roomtest.Lettering(&page.Group), " "))
}

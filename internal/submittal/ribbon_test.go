package submittal

import (
	"math"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/elevation"
	"flitchlay/internal/face"
	"flitchlay/internal/folio"
	"flitchlay/internal/paper"
	"flitchlay/internal/roomtest"
	"flitchlay/internal/scene"
)

// The cover shows the whole room unrolled: every covered wall from end to end, side by side in the order of the room at one scale,
// each with its mark and the pages that show it; every corner round which a sheet goes; and lists under it or beside it.
func TestTheCoverUnrollsTheRoom(t *testing.T) {
	roomtest.OnPapers(t, roomtest.AllRooms(t), paper.Names(), func(t *testing.T, text, name string) {
		p := roomtest.Laid(t, "room.toml", text)
		s := folio.NewSet(p, roomtest.Template(t, name), nil, "Submittal")
		s.Number(Submittal)
		b := s.Open(s.List[0])
		s.List[0].Draw(b)
		require.Equal(t, folio.Cover, s.List[0].Title)
		shown := map[string]float64{} // of each wall, in mm on the wall
		end := math.Inf(-1)
		foot := 0.0
		for _, g := range roomtest.PartsOf(&b.Page.Group, "ribbon-wall") {
			from, to := mm(t, g.Data["from"]), mm(t, g.Data["to"])
			assert.Less(t, from, to)
			shown[g.Data["name"]] += to - from
			box := g.Bounds()
			if box.Y0 < foot { // in the same row
				assert.Greater(t, box.X1, end, "walls follow each other")
			}
			end, foot = box.X1, math.Max(foot, box.Y1)
		}
		named := map[string]bool{}
		for _, g := range roomtest.Classed(&b.Page.Group, "opening-name") {
			named[roomtest.Fact(g, "wall")+" "+roomtest.Fact(g, "name")] = true
		}
		said := strings.ReplaceAll(roomtest.Texts([]*scene.Page{b.Page}), "\n", " ")
		for _, f := range face.All(p) {
			assert.InDelta(t, (f.Right - f.Left).MM(), shown[f.W.Name], 1e-3, f.W.Name)
			mark := s.Marks[f.Wall]
			assert.Regexp(t, `(^| )`+mark+` `, said)
			var pages []string
			for _, l := range s.List {
				for _, at := range l.Shown {
					if at.Wall == f.Wall {
						pages = append(pages, l.Number)
					}
				}
			}
			for i := range f.W.Openings {
				o := &f.W.Openings[i]
				key := f.W.Name + " " + o.Name
				assert.True(t, named[key] || regexp.MustCompile(`openings of `+mark+` from the left: [^;]*\b`+regexp.QuoteMeta(o.Name)+`\b`).MatchString(said), "opening %s is named", key)
			}
			assert.Contains(t, said, pages[0], "the first page of wall "+f.W.Name)
			assert.Contains(t, said, pages[len(pages)-1], "the last page of wall "+f.W.Name)
		}
		for i := range p.Runs {
			for _, c := range p.Runs[i].Corners {
				assert.Contains(t, said, c.Name)
			}
		}
	})
}

// Level bands have their numbers in them on the cover, and the triangle at the left end of the lowest.
func TestTheRibbonNumbersLevelBands(t *testing.T) {
	text := strings.Replace(roomtest.Head("in"), "overlap", "grain = \"horizontal\"\noverlap", 1) + roomtest.Wall("Head wall", `15'`, `8'`, "left_end = \"free\"\nright_end = \"free\"\n")
	p := roomtest.Laid(t, "room.toml", text)
	require.True(t, p.Room.Veneer.Horizontal)
	s := folio.NewSet(p, roomtest.Template(t, "ansi-b"), nil, "Submittal")
	s.Number(Submittal)
	b := s.Open(s.List[0])
	s.List[0].Draw(b)
	numbers := map[string]bool{}
	for _, g := range roomtest.Classed(&b.Page.Group, "ribbon-number") {
		for _, n := range roomtest.Lettering(g) {
			numbers[n] = true
		}
	}
	for i := range p.Runs[0].Sheets {
		assert.True(t, numbers[elevation.NumberOf(&p.Runs[0].Sheets[i])], "band %d", i+1)
	}
	assert.Len(t, roomtest.Classed(&b.Page.Group, "start"), 1)
	assert.Contains(t, strings.ReplaceAll(roomtest.Texts([]*scene.Page{b.Page}), "\n", " "), "bands hang from the foot up")
}

// The ribbon is drawn to the scale that it states, and takes as much of the page as the lists leave: on the sample that closes on
// itself all four walls stand in one row that is nearly as wide as the page.
func TestTheRibbonIsAsLargeAsThePageTakes(t *testing.T) {
	p := roomtest.Laid(t, "room.toml", roomtest.Samples(t)["samples reading-room.toml"])
	for _, name := range []string{"ansi-b", "arch-d", "a3"} {
		s := folio.NewSet(p, roomtest.Template(t, name), nil, "Submittal")
		s.Number(Submittal)
		r := newRibbon(s, func() []folio.Block { return generalBlocks(s) })
		require.Len(t, r.rows, 1, name)
		assert.Greater(t, r.rows[0].wide, 0.7*r.box.W(), name)
		assert.InDelta(t, p.Runs[0].Length.MM(), r.rows[0].wide*float64(r.scale), 1, "girth")
	}
}

// A room whose walls no page holds side by side comes in rows, which end at corners and inside a wall at a seam; each has its place
// on every paper, the longest room that is taken too.
func TestLongRibbonsComeInRows(t *testing.T) {
	long := strings.Replace(roomtest.Head("in"), `"1-60"`, `"1-900"`, 1)
	for _, w := range []string{"One", "Two", "Three", "Four"} {
		long += roomtest.Wall(w, `260'`, `8'`)
	}
	p := roomtest.Laid(t, "room.toml", long)
	for _, name := range []string{"a4", "arch-d"} {
		s := folio.NewSet(p, roomtest.Template(t, name), nil, "Submittal")
		r := newRibbon(s, func() []folio.Block { return generalBlocks(s) })
		require.Greater(t, len(r.rows), 1, name)
		assert.LessOrEqual(t, r.headHigh()+r.high, r.box.H(), name)
		for _, row := range r.rows {
			assert.LessOrEqual(t, row.wide, r.box.W()+1e-6)
			for _, part := range row.parts {
				seam := part.last()
				for _, m := range part.f.Seams {
					seam = seam || m.X == part.to
				}
				assert.True(t, seam, "a row ends at a seam")
			}
		}
	}
}

// What has no place under a row is said under the title, and nothing else is.
func TestWhatHasNoPlaceOnTheRibbonIsSaid(t *testing.T) {
	text := roomtest.Head("in") + roomtest.Wall("Long", `60'`, `8'`, "corner = \"inside\"\n")
	for _, w := range []string{"Ai", "Bi", "Ci", "Di", "Ei", "Fi", "Gi", "Hi"} {
		text += roomtest.Wall(w+" of the many narrow piers", `10`, `8'`)
	}
	p := roomtest.Laid(t, "room.toml", text)
	s := folio.NewSet(p, roomtest.Template(t, "ansi-a"), nil, "Submittal")
	s.Number(Submittal)
	b := s.Open(s.List[0])
	s.List[0].Draw(b)
	all := running([]*scene.Page{b.Page})
	for _, f := range face.All(p) {
		assert.Regexp(t, `\b`+s.Marks[f.Wall]+`\b(  ?`+regexp.QuoteMeta(f.W.Name)+`)?`, all)
	}
}

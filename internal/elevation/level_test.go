package elevation_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/face"
	"flitchlay/internal/folio"
	"flitchlay/internal/length"
	"flitchlay/internal/roomtest"
	"flitchlay/internal/scene"
)

// levelRoom is a wall of level bands with a window, and one round the corner that it does not turn.
func levelRoom() string {
	text := strings.Replace(roomtest.Head("in"), `match = "book"`, "match = \"slip\"\ngrain = \"horizontal\"", 1)
	text = strings.Replace(text, `length = "13'"`, `length = "10'"`, 1)
	return text + roomtest.Wall("Bar back", `18'`, `9' 2`, roomtest.Window(`6'`, `5'`)) + roomtest.Wall("Return", `5'`, `9' 2`)
}

// Level bands are dimensioned from the level line that they are struck from, every seam of them, up and down; the line is drawn, and
// the notes say how high it is and that the bands are hung upward.
func TestLevelBandsAreFiguredFromTheLevelLine(t *testing.T) {
	p, d := Drawn(t, levelRoom())
	style, level := length.StyleOf(p.Room.Project.Units), p.Room.Space.LevelLine
	for _, v := range roomtest.ElevationViews(d) {
		want, got := map[string]bool{}, map[string]bool{}
		for i := range p.Room.Walls {
			if f := face.On(p, i); f.W.Name == roomtest.Fact(v, "wall") {
				for _, s := range f.Run.Seams {
					want[style.Format((s.At - level).Abs())] = true
				}
			}
		}
		for _, g := range roomtest.Classed(v, "dimension") {
			if roomtest.Fact(g, "tier") == "from level" {
				assert.Equal(t, level, lengthOf(t, roomtest.Fact(g, "from")))
				got[roomtest.Lettering(g)[0]] = true
			}
		}
		assert.Equal(t, want, got)
		assert.NotEmpty(t, want)
		require.Len(t, roomtest.Classed(v, "level-line"), 1)
		assert.NotEmpty(t, roomtest.Classed(v, "level-line")[0].Items)
	}
	words := roomtest.Texts(d.Pages)
	assert.Contains(t, words, "Bands are struck from the level line, 4'-0\" over the level of the room: up from it, and down.")
	assert.Contains(t, words, "hung in number order from the foot up")
}

// The cover of a set of level bands speaks of no wrapped corner and no returns, for they have none; nor of hanging from left to right.
func TestCoverOfLevelBandsSpeaksOfNoCorners(t *testing.T) {
	cover := func(text string) string {
		_, d := Drawn(t, text)
		n := slices.IndexFunc(d.Pages, func(p *scene.Page) bool { return !strings.HasPrefix(p.Name, "Z-00") })
		require.Positive(t, n)
		return strings.ReplaceAll(roomtest.Texts(d.Pages[:n]), "\n", " ")
	}
	for _, words := range []string{"wrapped corner", "Returns at a corner", "dashed ghost", "left to right"} {
		assert.NotContains(t, cover(levelRoom()), words)
		assert.Contains(t, cover(roomtest.Head("in")+roomtest.Wall("A", `9'`, `9'`)+roomtest.Wall("B", `9'`, `9'`)), words)
	}
	assert.Contains(t, cover(levelRoom()), "hung in number order from the foot up")
}

// The enlargement of an opening in level bands shows their joints and seams with figures, is broken off over and under it, and says
// for each band what is cut out of it.
func TestOpeningsInLevelBandsShowTheJoints(t *testing.T) {
	p, d := Drawn(t, levelRoom())
	f := face.On(p, 0)
	o := f.W.Openings[0]
	enlarged := 0
	for _, page := range d.Pages {
		for _, v := range roomtest.Classed(&page.Group, "view") {
			if roomtest.Fact(v, "opening") == "" {
				continue
			}
			enlarged++
			at := map[string]bool{}
			for _, g := range roomtest.Classed(v, "dimension") {
				at[roomtest.Fact(g, "to")], at[roomtest.Fact(g, "from")] = true, true
			}
			for _, x := range f.Run.Joints {
				assert.True(t, at[folio.Mm(x)], "joint at %v", x)
			}
			for _, s := range f.Run.Seams {
				if s.At > o.Sill && s.At < o.Sill+o.Height {
					assert.True(t, at[folio.Mm(s.At)], "seam at %v", s.At)
				}
			}
			words := roomtest.Lettering(&page.Group)
			assert.Contains(t, strings.Join(words, " "), "CUT-OUT, FROM LEFT END")
			assert.Contains(t, words, "6'-1\" to 9'-2\"")
			assert.Contains(t, words, "ends at the opening, 6'-0\"")
			assert.Contains(t, words, "begins at the opening")
			assert.Less(t, v.View.Scale, 24.0, "larger than the elevation")
		}
	}
	assert.Equal(t, 1, enlarged)
}

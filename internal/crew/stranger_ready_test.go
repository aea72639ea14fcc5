package crew_test

import (
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/roomtest"
)

// TestFlapsAreSlitBetweenFoldAndEdge reads on cards and in the cut list where the flap of a wrapped jamb is slit: level with the
// opening's head and sill, from its fold to where the opening is cut out.
func TestFlapsAreSlitBetweenFoldAndEdge(t *testing.T) {
	slit := regexp.MustCompile(`slit (\S+)'s flap level at ` + figure + ` (up|down)(?: and ` + figure + ` (up|down))?, ` + figure + ` to ` + figure + ` from (?:left|ripped) edge`)
	for file, want := range map[string]int{"winwall": 4, "column": 2} {
		p := rooms(t)[file]
		level := p.Room.Space.LevelLine
		found := [2]int{}
		check := func(words, number string, k int) {
			r, s := sheetOf(t, p, number)
			for _, m := range slit.FindAllStringSubmatch(words, -1) {
				found[k]++
				matched := false
				for w := range p.Room.Walls {
					for i := range p.Room.Walls[w].Openings {
						o := &p.Room.Walls[w].Openings[i]
						if o.Name != m[1] {
							continue
						}
						_, st := stretchOf(p, w)
						a, b := s.StartLine+read(t, p, m[6])-st.Shift, s.StartLine+read(t, p, m[7])-st.Shift
						for r.Closed && a > r.Length {
							a, b = a-r.Length, b-r.Length
						}
						matched = near(a, o.FromLeft) && near(b, o.FromLeft+o.Reveal) || near(a, o.Right()-o.Reveal) && near(b, o.Right())
						z := func(fig, side string) length.Length {
							if side == "down" {
								return level - read(t, p, fig)
							}
							return level + read(t, p, fig)
						}
						if m[4] != "" {
							assert.True(t, near(z(m[2], m[3]), o.Sill) && near(z(m[4], m[5]), o.Head), m[0])
						} else {
							assert.True(t, near(z(m[2], m[3]), o.Head), m[0])
						}
					}
				}
				assert.True(t, matched, "%s: sheet %s: %s", file, number, m[0])
			}
		}
		for _, c := range cardsOf(t, p) {
			check(c.words, c.number, 0)
		}
		for _, row := range cutListOf(t, p) {
			check(strings.Join(row.words, " "), itoa(row.sheet.Number), 1)
		}
		assert.Equal(t, [2]int{want, want}, found, file)
		assert.Len(t, written(t, p, "slit"), want, "drawn as a cut: %s", file)
	}
}

// TestClosingSheetIsNeverRippedBefore finds what closes a room on every page that rips it: none has a width to rip it to at once.
func TestClosingSheetIsNeverRippedBefore(t *testing.T) {
	text, err := os.ReadFile("testdata/rooms/freecol.toml")
	require.NoError(t, err)
	large := strings.NewReplacer(`length = "16"`, `length = "64"`, "23-28", "23-60", `base = "4"`, "base = \"4\"\n[room.close_at]\nwall = \"North face\"\nat = \"12\"").Replace(string(text))
	plans := map[string]*layout.Plan{"freecol": rooms(t)["freecol"], "oldhouse": rooms(t)["oldhouse"], "large column": roomtest.Laid(t, "large.toml", large)}
	for file, number := range map[string]string{"freecol": "24", "oldhouse": "32", "large column": "30"} {
		p := plans[file]
		_, s := sheetOf(t, p, number)
		require.NotEmpty(t, s.Ripped)
		all := strings.Join(printed(t, p), " ")
		assert.NotRegexp(t, `\b`+number+`: (left|right) edge off`, all)
		assert.GreaterOrEqual(t, strings.Count(all, "rip "+s.Ripped+" edge off at each to gap + "), 2, "cut list and card of %s name the edge", file)
		elsewhere := number + ` closes: rip to the gap, page \d+`
		switch file {
		case "oldhouse":
			assert.Contains(t, all, "at the ceiling and just over D1")
			assert.NotContains(t, all, "head, level, foot", "the door is in the way")
		case "large column":
			assert.Regexp(t, elsewhere, all)
		default: // unrolled, it begins and ends on one page
			assert.Regexp(t, number+` closes: rip to raw gap`, all)
			assert.NotRegexp(t, elsewhere, all)
		}
	}
}

// TestNoCutWhereTheRawEndIs holds that a card which cuts an end and one whose raw end stays differ by more than a figure tells.
func TestNoCutWhereTheRawEndIs(t *testing.T) {
	all := strings.Join(printed(t, rooms(t)["oldhouse"]), " ")
	assert.Contains(t, all, "raw head stays")
}

package crew_test

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
	"flitchlay/internal/roomtest"
)

// TestRevealsAreAsDeepAsThePageSays reads of every opening whose jambs are wrapped how deep its flaps reach, and what is still to be asked:
// what covers its head, and its sill where it has one.
func TestRevealsAreAsDeepAsThePageSays(t *testing.T) {
	effort.Tool(t, "pdftotext")
	said := regexp.MustCompile(`\b([WDFGBP]\d+(?:, [WDFGBP]\d+)*): flaps cover the sides, ` + figure + ` deep\. Ask what covers (head and sill|the head): grain _+ offcut of _+`)
	wrapped := 0
	for file, p := range rooms(t) {
		found := map[string]bool{}
		for _, m := range said.FindAllStringSubmatch(strings.Join(printed(t, p), " "), -1) {
			for _, name := range strings.Split(m[1], ", ") {
				o := openingNamed(p, name)
				require.NotNil(t, o, m[0])
				assert.True(t, o.WrapReveal, "%s: %s", file, m[0])
				assert.True(t, near(o.Reveal, read(t, p, m[2])), "%s: %s", file, m[0])
				assert.Equal(t, map[bool]string{true: "head and sill", false: "the head"}[o.SillGiven], m[3], "%s: %s", file, name)
				found[name] = true
			}
		}
		for i := range p.Room.Walls {
			for k := range p.Room.Walls[i].Openings {
				o := &p.Room.Walls[i].Openings[k]
				wants := o.WrapReveal && !p.Room.Veneer.Horizontal
				assert.Equal(t, wants, found[o.Name], "%s: %s", file, o.Name)
				if wants {
					wrapped++
				}
			}
		}
	}
	assert.GreaterOrEqual(t, wrapped, 3)
}

// casedRoom has openings with casings of their own, one with the room's, and one that has none.
const casedRoom = `casing = "2 3/4"
[[wall]]
name = "Alder"
length = "240"
height = "96"
[[wall.opening]]
name = "W1"
kind = "window"
from_left = "20"
width = "40"
sill = "30"
height = "44"
casing = "3 1/2"
[[wall.opening]]
name = "D1"
kind = "door"
from_left = "90"
width = "41"
height = "84"
[[wall.opening]]
name = "W2"
kind = "window"
from_left = "160"
width = "48"
sill = "30"
height = "44"
casing = 0
`

// TestCasingsCoverWhatThePageSays reads at every opening how far in from its edges its casing covers; where there is none it says nothing.
func TestCasingsCoverWhatThePageSays(t *testing.T) {
	effort.Tool(t, "pdftotext")
	p := roomtest.Laid(t, "room.toml", roomtest.Head("in")+casedRoom)
	_, words := wallPages(t, p, 0)
	got := map[string]string{}
	one := regexp.MustCompile(`\b([WD]\d) (?:left .*?|at .*?)casing covers ` + figure)
	for _, part := range regexp.MustCompile(`\b[WD]\d (?:left|at) `).Split(words, -1)[1:] {
		assert.LessOrEqual(t, strings.Count(part, "casing covers"), 1, part)
	}
	at := regexp.MustCompile(`\b[WD]\d (?:left|at) `).FindAllStringIndex(words, -1)
	for i, x := range at {
		end := len(words)
		if i+1 < len(at) {
			end = at[i+1][0]
		}
		if m := one.FindStringSubmatch(words[x[0]:end]); m != nil {
			got[m[1]] = m[2]
		}
	}
	want := map[string]bool{}
	for i := range p.Room.Walls[0].Openings {
		o := &p.Room.Walls[0].Openings[i]
		require.NotNil(t, o.Casing)
		if *o.Casing == 0 {
			continue
		}
		want[o.Name] = true
		if assert.NotEmpty(t, got[o.Name], "%s: %s", o.Name, words) {
			assert.Equal(t, *o.Casing, read(t, p, got[o.Name]), o.Name)
		}
	}
	assert.Len(t, want, 2)
	assert.Len(t, got, 2, "W2 has none")
}

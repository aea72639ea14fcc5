package crew

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/roomtest"
	"flitchlay/internal/scene"
)

// strangers are the rooms that are read by strangers, by the names of their files.
func strangers(t *testing.T) map[string]string {
	files, err := filepath.Glob("testdata/rooms/*.toml")
	require.NoError(t, err)
	out := map[string]string{}
	for _, file := range files {
		text, err := os.ReadFile(file)
		require.NoError(t, err)
		out[strings.TrimSuffix(filepath.Base(file), ".toml")] = string(text)
	}
	require.NotEmpty(t, out)
	return out
}

// TestEverySheetHasItsNumber finds the number of every sheet that has a piece on a page in that piece, or at the end of a line
// that leads into it, and in no other.
func TestEverySheetHasItsNumber(t *testing.T) {
	names := []string{"horiz", "tall14", "stair", "metric", "column"}
	for _, name := range names[:effort.Of(3, len(names))] {
		for _, paper := range []string{"ansi-a", "a4", "ansi-b"}[:effort.Of(1, 3)] {
			c := NewSet(roomtest.Laid(t, name+".toml", strangers(t)[name]), roomtest.Template(t, paper), "Install")
			for _, s := range c.inOrder() {
				b := c.open(1, folio.Sheet{Title: s.title(), Form: folio.Beside})
				d := c.fit(b, s, b.Area)
				assertNumbers(t, d, name+", "+paper+", "+s.title())
			}
		}
	}
}

// assertNumbers holds the numbers of a drawn page against the pieces of its sheets: a sheet that goes round corners of walls
// unrolled has its number once.
func assertNumbers(t *testing.T, d *wallBoard, what string) {
	t.Helper()
	parts := roomtest.PartsOf(d.g, "sheet")
	for _, f := range d.faces {
		for _, h := range f.p.Hangs {
			for _, s := range h.Sheets {
				if !slices.ContainsFunc(s.Pieces, func(p layout.Piece) bool { return p.Wall == f.w.Wall }) {
					continue
				}
				found := 0
				for _, g := range parts {
					if g.Data["place"] != itoa(s.Place) || g.Data["number"] != itoa(s.Number) {
						continue
					}
					at, ok := numberAt(g.Items, d.SheetNumber(s))
					if assert.True(t, ok, "%s: sheet %d has its number", what, s.Number) {
						found++
						in := slices.ContainsFunc(d.faces, func(f *wallBoard) bool { return f.within(s, at) })
						assert.True(t, in, "%s: number %d stands in its sheet", what, s.Number)
					}
				}
				assert.Positive(t, found, "%s: sheet %d is numbered", what, s.Number)
				assert.False(t, d.unrolled() && found > 1, "%s: sheet %d is numbered %d times", what, s.Number, found)
			}
		}
	}
	for _, words := range d.beside {
		assert.NotRegexp(t, `^sheet \d`, words, what)
	}
}

// numberAt is where a number says it belongs: the end of its line, else where it stands.
func numberAt(items []scene.Item, number string) (scene.Point, bool) {
	var at scene.Point
	found, led := false, false
	for _, it := range items {
		switch x := it.(type) {
		case *scene.Text:
			if x.String == number && !found {
				found = true
				if !led {
					at = x.Bounds().Centre()
				}
			}
		case *scene.Circle:
			led, at = true, x.Centre
		}
	}
	return at, found
}

// TestWallsComeInTheOrderOfHanging reads which sheet each page of a wall begins with: never an earlier one than on the page
// before.
func TestWallsComeInTheOrderOfHanging(t *testing.T) {
	moved := 0
	for name, text := range strangers(t) {
		c := NewSet(roomtest.Laid(t, name+".toml", text), roomtest.Template(t, "ansi-a"), "Install")
		at := map[string]int{}
		list := c.inOrder()
		for i, p := range list {
			if p.lead().Face.Wall != c.Walls[min(i, len(c.Walls)-1)].Wall {
				moved++
			}
			first := -1
			for _, p := range p.pieces {
				for _, h := range p.Hangs {
					if !h.Before && p.StartsHere(h) && (first < 0 || h.Place < first) {
						first = h.Place
					}
				}
			}
			if first < 0 {
				continue // what hangs here begins on another page
			}
			run := p.lead().Face.Run.Name
			assert.LessOrEqual(t, at[run], first, "%s: %s", name, p.lead().key())
			at[run] = first
		}
	}
	assert.Positive(t, moved, "a closed room that starts on another wall than the first")
}

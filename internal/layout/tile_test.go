package layout

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
	"flitchlay/internal/length"
	"flitchlay/internal/room"
	"flitchlay/internal/shape"
)

// randomRoom is a room of three to six walls with slopes, leans, openings, boxes, gaps and bare strips.
func randomRoom(rng *rand.Rand) string {
	var b strings.Builder
	b.WriteString(head)
	if rng.IntN(5) == 0 {
		b.WriteString("grain = \"horizontal\"\n")
	}
	horizontal := strings.Contains(b.String(), "horizontal")
	closed := rng.IntN(2) == 0
	fmt.Fprintf(&b, "[room]\nclosed = %v\nbase = \"%d\"\ncrown = \"%d\"\nbehind = %q\n", closed, rng.IntN(7), rng.IntN(5),
		[]string{"none", "base", "crown", "both"}[rng.IntN(4)])
	n := 3 + rng.IntN(4)
	for i := range n {
		wide := 40 + rng.IntN(160)
		fmt.Fprintf(&b, "[[wall]]\nname = \"W%d\"\nlength = \"%d %d/16\"\n", i, wide, 1+rng.IntN(15))
		high := 90 + rng.IntN(24)
		switch rng.IntN(4) {
		case 0:
			fmt.Fprintf(&b, "height = [%d, %d]\n", high, 90+rng.IntN(40))
		case 1:
			fmt.Fprintf(&b, "height = [[0, %d], [%d, %d], [%d, %d], [\"%d %d/16\", %d]]\n", high, wide/2, high+rng.IntN(20), wide/2, high-rng.IntN(6), wide, 1, 100)
			b2 := strings.LastIndex(b.String(), "[\"")
			text := b.String()[:b2]
			b.Reset()
			b.WriteString(text)
			fmt.Fprintf(&b, "[\"%s\", %d]]\n", lastLength(text), 100)
		default:
			fmt.Fprintf(&b, "height = %d\n", high)
		}
		if rng.IntN(3) == 0 {
			fmt.Fprintf(&b, "floor = [0, \"%d/16\"]\n", rng.IntN(30)-15)
		}
		if rng.IntN(3) == 0 && !horizontal {
			fmt.Fprintf(&b, "lean = \"%d/16\"\n", rng.IntN(13)-6)
		}
		if i < n-1 || closed {
			fmt.Fprintf(&b, "corner = %q\n", []string{"inside", "outside", "straight"}[rng.IntN(3)])
			if !horizontal && rng.IntN(6) == 0 {
				b.WriteString("wrap = false\n")
			}
		}
		if rng.IntN(4) == 0 {
			fmt.Fprintf(&b, "main = true\n")
		}
		at := 2 + rng.IntN(20)
		for at+14 < wide {
			w := 10 + rng.IntN(40)
			if at+w > wide {
				break
			}
			switch rng.IntN(4) {
			case 0:
				fmt.Fprintf(&b, "[[wall.opening]]\nkind = \"window\"\nfrom_left = %d\nwidth = %d\nsill = %d\nheight = %d\n", at, w, 20+rng.IntN(20), 20+rng.IntN(25))
			case 1:
				fmt.Fprintf(&b, "[[wall.opening]]\nkind = \"door\"\nfrom_left = %d\nwidth = %d\nheight = %d\n", at, w, 70+rng.IntN(14))
			}
			at += w + rng.IntN(30)
		}
		if rng.IntN(5) == 0 {
			fmt.Fprintf(&b, "[[wall.bare]]\nfrom = \"%d\"\nto = \"%d 1/2\"\n", wide-8, wide-8+rng.IntN(4))
		}
	}
	return b.String()
}

// lastLength is the length of the last wall in a text.
func lastLength(text string) string {
	i := strings.LastIndex(text, "length = \"") + len("length = \"")
	return text[i : i+strings.IndexByte(text[i:], '"')]
}

// tiles holds every wall's pieces against its covering.
func tiles(t *testing.T, p *Plan, name string) {
	t.Helper()
	for i := range p.Runs {
		r := &p.Runs[i]
		for _, st := range r.Walls {
			var pieces, covering length.Area
			var cuts, levels []L
			cover := Covering(p.Room, st)
			if r.Up {
				cover = Covering(p.Room, Stretch{Wall: st.Wall, Right: p.Room.Walls[st.Wall].Length})
				cuts = r.Joints
				for _, s := range r.Seams {
					levels = append(levels, s.At)
				}
			} else {
				levels = r.Joints
				for _, part := range r.parts(st) {
					cuts = append(cuts, part.from, part.to)
				}
				cuts = slices.DeleteFunc(cuts, func(x L) bool { return x == far || x == -far })
				slices.Sort(cuts)
				cuts = slices.Compact(cuts)
			}
			covering = shape.CoveringArea(cover, cuts, levels)
			for _, s := range r.Sheets {
				for _, piece := range s.Pieces {
					if piece.Wall == st.Wall {
						pieces += piece.Twice()
					}
				}
			}
			assert.Equal(t, covering, pieces, "%s: wall %s, twice the area", name, p.Room.Walls[st.Wall].Name)
		}
		last := map[string]int{}
		for _, s := range r.Sheets {
			assert.Equal(t, s.CutLength, s.Above+s.Below, "%s: sheet %d: above and below the level line", name, s.Place)
			if s.Number > 0 {
				assert.Greater(t, s.Number, last[s.Flitch], "%s: numbers go up", name)
				last[s.Flitch] = s.Number
			}
			if !r.Up && s.CutLength > 0 {
				fits(t, p, r, &s, name)
			}
		}
	}
}

// fits holds a sheet's pieces against one gross sheet, ripped as said: side by side they are no wider than its net width
// and no higher than its cut length less trims.
func fits(t *testing.T, p *Plan, r *Run, s *Sheet, name string) {
	t.Helper()
	raw := p.Room.Veneer.GrossWidth
	if s.Ripped != "" {
		raw = s.RipTo
		assert.Less(t, raw, p.Room.Veneer.GrossWidth, "%s: sheet %d", name, s.Place)
	}
	assert.LessOrEqual(t, s.Width, raw, "%s: sheet %d is wider than what it is cut from", name, s.Place)
	low, high := far, -far
	for _, piece := range s.Pieces {
		for _, q := range piece.Outline {
			low, high = min(low, q.Z), max(high, q.Z)
		}
	}
	assert.LessOrEqual(t, high-low, s.CutLength-2*p.Room.Veneer.Overlap.HalfDown(), "%s: sheet %d is taller than it is cut", name, s.Place)
}

func TestPiecesTile(t *testing.T) {
	t.Parallel()
	files, err := filepath.Glob("../../samples/*.toml")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, file := range files {
		text, err := os.ReadFile(file)
		require.NoError(t, err)
		tiles(t, lay(t, string(text)), file)
	}
	laid := 0
	for seed := range uint64(effort.Of(50, 150)) {
		text := randomRoom(rand.New(rand.NewPCG(seed, 7)))
		r, err := room.Decode("room.toml", []byte(text))
		if err != nil {
			continue // an opening over the ceiling, a slope through the floor
		}
		p, err := Lay(r)
		if err != nil {
			continue // a span shorter than a snap
		}
		laid++
		tiles(t, p, fmt.Sprintf("seed %d", seed))
		if t.Failed() {
			t.Logf("seed %d:\n%s", seed, text)
			return
		}
	}
	assert.Greater(t, laid, effort.Of(20, 60))
}

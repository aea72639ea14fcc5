package crew_test

import (
	"regexp"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/room"
)

// openingNamed finds an opening of a room, nil where it has none of the name.
func openingNamed(p *layout.Plan, name string) *room.Opening {
	for i := range p.Room.Walls {
		for k := range p.Room.Walls[i].Openings {
			if o := &p.Room.Walls[i].Openings[k]; o.Name == name {
				return o
			}
		}
	}
	return nil
}

// rawTop is how far over the level line the raw end of a sheet comes that hangs up: that of the one that is cut highest of its kind.
func rawTop(p *layout.Plan, s *layout.Sheet) length.Length {
	high := s.Above
	for i := range p.Runs {
		for _, o := range p.Runs[i].Sheets {
			if o.Flitch == s.Flitch && o.Course == s.Course && o.Turned == s.Turned && o.CutLength > 0 {
				high = max(high, o.Above)
			}
		}
	}
	return high
}

// TestHeadsOfOpeningsAreMeasuredFromTheRawHead lays the tape on the raw head of a sheet: the mark is so far from it as the card says, and
// what is cut for an opening begins as much nearer as its head is up of the mark. On the wall that is where the opening ends, and its sill
// too, also where the cut runs on through the trim of a joint and the opening's own end is said beside it.
func TestHeadsOfOpeningsAreMeasuredFromTheRawHead(t *testing.T) {
	effort.Tool(t, "pdftotext")
	cut := regexp.MustCompile(`(\S+)(?: on [^:]+)?: ` + cutPattern.String() + `(?:; (head|sill) of (\S+): ` + figure + ` (up|down))?`)
	trim := regexp.MustCompile(`(\S+): trim its foot on the wall at ` + figure + ` (up|down), ` + figure + ` to ` + figure + ` from (?:left|ripped) edge`)
	heads, said, trims := 0, 0, 0
	for file, p := range rooms(t) {
		level := p.Room.Space.LevelLine
		signed := func(fig, side string) length.Length {
			if side == "down" {
				return -read(t, p, fig)
			}
			return read(t, p, fig)
		}
		for _, c := range cardsOf(t, p) {
			r, s := sheetOf(t, p, c.number)
			mark := markPattern.FindStringSubmatch(c.words)
			for _, at := range cut.FindAllStringSubmatchIndex(c.words, -1) {
				words := c.words[at[0]:at[1]]
				x, ok := readCut(t, p, words)
				require.True(t, ok, words)
				o := openingNamed(p, c.words[at[2]:at[3]])
				if x.what != "opening" || r.Up || x.over != "level" || mark == nil || o == nil {
					continue
				}
				head := x.high
				if m := cut.FindStringSubmatch(words); m[12] != "" { // the cut runs on past it
					assert.Equal(t, o.Name, m[13], words)
					if m[12] == "head" {
						head = signed(m[14], m[15])
						assert.Greater(t, x.high, head, "%s: sheet %s: %s", file, c.number, words)
					} else {
						assert.True(t, near(o.Sill-level, signed(m[14], m[15])), "%s: sheet %s: %s", file, c.number, words)
					}
					said++
				}
				if o.Head > level+s.Above { // it goes on above
					continue
				}
				under := read(t, p, mark[1]) - head // the tape, from the raw head down
				assert.True(t, near(level+rawTop(p, s)-under, o.Head), "%s: sheet %s, %s under its raw head: %s", file, c.number, p.Style.Format(under), words)
				heads++
			}
			for _, m := range trim.FindAllStringSubmatch(c.words, -1) {
				o := openingNamed(p, m[1])
				require.NotNil(t, o, m[0])
				assert.True(t, near(o.Head-level, signed(m[2], m[3])), "%s: sheet %s: %s", file, c.number, m[0])
				assert.Greater(t, o.Head, level-s.Below, "%s: sheet %s: %s", file, c.number, m[0])
				i := slices.IndexFunc(p.Room.Walls, func(w room.Wall) bool {
					return slices.ContainsFunc(w.Openings, func(q room.Opening) bool { return q.Name == m[1] })
				})
				_, st := stretchOf(p, i)
				from, to := s.StartLine-st.Shift+read(t, p, m[4]), s.StartLine-st.Shift+read(t, p, m[5])
				assert.True(t, near(from, max(o.FromLeft, s.StartLine-st.Shift)) && near(to, min(o.Right(), s.RightLine-st.Shift)), "%s: sheet %s: %s", file, c.number, m[0])
				trims++
			}
		}
	}
	assert.Greater(t, heads, 12)
	assert.GreaterOrEqual(t, said, 2)
	assert.GreaterOrEqual(t, trims, 3)
}

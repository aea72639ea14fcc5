package crew_test

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
)

// arrowed is a height with an arrow for its side of the level line.
func arrowed(t *testing.T, p *layout.Plan, fig, arrow string) length.Length {
	t.Helper()
	if arrow == "↓" || arrow == "down" {
		return -read(t, p, fig)
	}
	return read(t, p, fig)
}

// TestBandsLieWhereTheirListSays reads the list of a wall whose grain is level: every line is the raw upper edge of its sheets, half an
// overlap over their seam; the last runs to the ceiling, which has its height at both ends.
func TestBandsLieWhereTheirListSays(t *testing.T) {
	effort.Tool(t, "pdftotext")
	p := rooms(t)["horiz"]
	level, r := p.Room.Space.LevelLine, &p.Runs[0]
	row := regexp.MustCompile(`(\d+) (\d+) ` + figure + ` ([↑↓]) ` + figure + ` ([↑↓]) ↓ \S+`)
	last := regexp.MustCompile(`(\d+) (\d+) no line, top ` + figure + ` ([↑↓]) left ` + figure + ` ([↑↓])`)
	half := regexp.MustCompile(`line: upper edge; seam ` + figure + ` under`)
	lines, tops := 0, 0
	for _, page := range printed(t, p) {
		_, list, ok := strings.Cut(page, "TAPE LIST: ↑ up, ↓ down of level")
		if !ok {
			continue
		}
		for _, m := range row.FindAllStringSubmatch(list, -1) {
			_, s := sheetOf(t, p, m[1])
			_, right := sheetOf(t, p, m[2])
			assert.Equal(t, s.Place, right.Place, m[0])
			assert.True(t, near(s.RightLine-level, arrowed(t, p, m[3], m[4])), "sheet %d: %s", s.Number, m[0])
			for _, seam := range r.Seams {
				if seam.LeftSheet == s.Place {
					assert.True(t, near(seam.At-level, arrowed(t, p, m[5], m[6])), "sheet %d: %s", s.Number, m[0])
					lines++
				}
			}
		}
		for _, m := range last.FindAllStringSubmatch(list, -1) {
			ceiling := p.Room.Walls[0].Ceiling
			assert.True(t, near(ceiling[len(ceiling)-1].Z-level, arrowed(t, p, m[3], m[4])), m[0])
			assert.True(t, near(ceiling[0].Z-level, arrowed(t, p, m[5], m[6])), m[0])
			tops++
		}
		m := half.FindStringSubmatch(list)
		require.NotNil(t, m, list)
		assert.Equal(t, p.Room.Veneer.Overlap.HalfDown(), read(t, p, m[1]))
	}
	assert.Equal(t, len(r.Seams), lines)
	assert.Equal(t, 1, tops)
}

// TestBandsLapAtTheirEndMatch reads where two sheets of a band meet, from where to where they lap, and how far off that the cut may be.
func TestBandsLapAtTheirEndMatch(t *testing.T) {
	effort.Tool(t, "pdftotext")
	p := rooms(t)["horiz"]
	r := &p.Runs[0]
	zero := cornerAt(p, 0, false, p.Room.Space.LevelLine)
	said := regexp.MustCompile(`end match at `+figure+`; lap `+figure+` to `+figure+`, cut both in one, less than `+figure+` off it`).FindAllStringSubmatch(strings.Join(printed(t, p), " "), -1)
	require.Len(t, said, len(r.Joints))
	for i, m := range said {
		at, from, to := read(t, p, m[1])+zero, read(t, p, m[2])+zero, read(t, p, m[3])+zero
		assert.True(t, near(r.Joints[i], at), m[0])
		for _, s := range r.Sheets {
			switch s.Course {
			case i + 1:
				assert.LessOrEqual(t, to, s.Above+length.Inch/32, "sheet %d ends in it: %s", s.Number, m[0])
			case i + 2:
				assert.GreaterOrEqual(t, from, -s.Below-length.Inch/32, "sheet %d begins in it: %s", s.Number, m[0])
			}
		}
		assert.True(t, near(min(to-at, at-from), read(t, p, m[4])), m[0])
	}
}

// TestCardsOfBandsSayHowTheyLie reads a card whose sheet lies: how high its upper and its lower edge are, how long it is and where its left
// end hangs.
func TestCardsOfBandsSayHowTheyLie(t *testing.T) {
	effort.Tool(t, "pdftotext")
	p := rooms(t)["horiz"]
	level, zero := p.Room.Space.LevelLine, cornerAt(p, 0, false, p.Room.Space.LevelLine)
	upper := regexp.MustCompile(figure + ` (up|down) upper edge`)
	lower := regexp.MustCompile(figure + ` (up|down) (lower|ripped) edge`)
	long := regexp.MustCompile(`CUT ` + figure + ` long; its left end hangs ` + figure + `( left of 0)?, plumb from 0 on the level line`)
	cards := cardsOf(t, p)
	require.Len(t, cards, 10)
	for _, c := range cards {
		_, s := sheetOf(t, p, c.number)
		m := upper.FindStringSubmatch(c.words)
		require.NotNil(t, m, c.words)
		wide := p.Room.Veneer.GrossWidth
		if s.Ripped != "" {
			wide = s.RipTo
		}
		assert.True(t, near(s.StartLine+wide-level, arrowed(t, p, m[1], m[2])), "sheet %d: %s", s.Number, m[0])
		m = lower.FindStringSubmatch(c.words)
		require.NotNil(t, m, c.words)
		assert.True(t, near(s.StartLine-level, arrowed(t, p, m[1], m[2])), "sheet %d: %s", s.Number, m[0])
		assert.Equal(t, s.Ripped == "left", m[3] == "ripped", "sheet %d: %s", s.Number, m[0])
		m = long.FindStringSubmatch(c.words)
		require.NotNil(t, m, c.words)
		assert.True(t, near(s.CutLength, read(t, p, m[1])), "sheet %d: %s", s.Number, m[0])
		left := read(t, p, m[2])
		if m[3] != "" {
			left = -left
		}
		assert.True(t, near(-s.Below-zero, left), "sheet %d: %s", s.Number, m[0])
	}
}

package layout

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/finding"
	"flitchlay/internal/seam"
)

// Whatever is charged for a distance or a width is said: each cause has a code for the must, or for the preference, of that
// level.
func TestEveryChargeIsSaid(t *testing.T) {
	for cause := seam.Return; cause <= seam.Width; cause++ {
		codes, ok := said[cause]
		require.True(t, ok, "cause %d", cause)
		assert.NotEqual(t, codes.broken+codes.close, finding.Code(""), "cause %d", cause)
		for code, want := range map[finding.Code]finding.Level{codes.broken: finding.Must, codes.close: finding.Should} {
			if code == "" {
				continue
			}
			level, _, known := finding.ByCode(code)
			assert.True(t, known, code)
			assert.Equal(t, want, level, code)
		}
	}
}

// The bends and edges of the score are what the findings of seams and sheets lack, to the last unit: nothing is said that is
// not charged, and nothing charged that is not said.
func TestFindingsLackWhatTheScoreCharges(t *testing.T) {
	for _, c := range conflicts {
		t.Run(c.name, func(t *testing.T) {
			p := lay(t, c.text)
			charged, lacking := L(0), L(0)
			for _, r := range p.Runs {
				for _, s := range r.Spans {
					charged += L(s.Score.Bends + s.Score.Edges)
				}
			}
			for _, f := range p.Findings {
				switch f.Code {
				case finding.KeptClear:
					lacking += *f.Measured
				case finding.SheetThin, finding.ReturnShort, finding.LegThin, finding.ClearShort, finding.RevealShort:
					lacking += *f.Required - *f.Measured
				}
			}
			assert.Positive(t, charged)
			assert.Equal(t, charged, lacking, codes(p))
		})
	}
}

// Of two stretches that are kept clear for two reasons at one place, each is named.
func TestEachStretchKeptClearIsNamed(t *testing.T) {
	p := lay(t, head+plain("A", "120", "none", "[[wall.keep_clear]]\nfrom = \"40\"\nto = \"70\"\nwhy = \"screen\"\n"+
		"[[wall.keep_clear]]\nfrom = \"40\"\nto = \"70\"\nwhy = \"panel\"\n"))
	list := messages(p, finding.KeptClear)
	require.Len(t, list, 2, codes(p))
	assert.Contains(t, list[0], "(screen)")
	assert.Contains(t, list[1], "(panel)")
}

// A clear that is under its must is asked for by nothing, in wrapped jambs either: no seam moves for its sake, and no finding
// names it. Over 30 in between jambs of 16 in a seam lacks 6 in of 2 x 18 wherever it stands.
func TestPreferClearInWrappedJambs(t *testing.T) {
	for _, c := range []struct {
		clear  string
		should L
		says   []string
	}{
		{"1", 0, nil},
		{"2", 6 * in, nil}, // as much as the must, and so asked: short of 18 in by the same 6 in
		{"3", 8 * in, []string{"seam 2 | 3 is 18 in inside the right edge of window W1; better 19 in"}},
	} {
		p := lay(t, head+"[rules]\nprefer_return = \"4\"\nprefer_width = \"6\"\nprefer_clear = \""+c.clear+"\"\n"+
			plain("Long", "168", "none", opening("window", 30, 30, 30, 40, "reveal = 16\nwrap_reveal = true")))
		score := p.Runs[0].Spans[0].Score
		assert.Equal(t, [2]L{6 * in, c.should}, [2]L{L(score.Bends), L(score.Should)}, "prefer_clear %s", c.clear)
		assert.Equal(t, c.says, messages(p, finding.ClearClose), "prefer_clear %s", c.clear)
	}
}

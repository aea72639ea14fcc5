package job

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/finding"
)

// Spares are judged of a flitch of the job, not of what a room may take of it: once, and where the flitch has them not at all.
func TestSparesAreJudgedOfTheFlitch(t *testing.T) {
	for _, c := range []struct{ sheets, more, want string }{
		{"1-40", "", ""},
		{"1-22", "", ""}, // 20 laid, two over: a tenth
		{"1-22", "damaged = [22]\n", "1 spare of flitch F for 20 sheets laid in all rooms; better 2"},
		{"1-22", "spare = 2\n", ""},
		{"1-20", "", "0 spare of flitch F for 20 sheets laid in all rooms; better 2"},
	} {
		j := run(t, "[[flitch]]\nnumber = 'F'\nsheets = '"+c.sheets+"'\n"+c.more+"[[room]]\nfile = 'a.toml'\nas = '1-5'\n", map[string]string{"a.toml": wall(4)})
		b := NewBook(j)
		require.NoError(t, j.Each(2, nil, func(l *Laid) error {
			require.NoError(t, l.Err)
			for _, f := range l.Plan.Findings {
				assert.NotEqual(t, finding.SparesFew, f.Code, "%s: a room says nothing of the flitch", c.sheets)
			}
			b.Add(l)
			return nil
		}))
		b.End()
		if c.want == "" {
			assert.Empty(t, b.Findings, c.sheets)
			continue
		}
		if assert.Len(t, b.Findings, 1, c.sheets) {
			assert.Equal(t, c.want, b.Findings[0].Message)
			assert.Equal(t, finding.Should, b.Findings[0].Level)
		}
	}
	// a room with flitches of its own says it of them as ever
	j := Of([]string{"own.toml"}, files(map[string]string{"own.toml": wall(4) + "[[flitch]]\nnumber = 'G'\nsheets = '1-4'\n"}))
	j.Run(1)
	said := false
	require.NoError(t, j.Each(1, nil, func(l *Laid) error {
		for _, f := range l.Plan.Findings {
			said = said || f.Code == finding.SparesFew
		}
		return nil
	}))
	assert.True(t, said)
}

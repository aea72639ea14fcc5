package seam_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/seam"
	"flitchlay/internal/seam/oracletest"
)

// Answers worked by hand. Net width 20, first and last sheet up to 20; a sliver is under (6 + 12) / 2 = 9.
func TestSlivers(t *testing.T) {
	const tall = 96
	span := func(seen func(int64) int64) seam.Span { // no seam from 7 to 19, and so an end of 6 and one of 20
		return seam.Span{R: 66, Period: 66, Snap: 1, Keep: []seam.Strip{{From: 6, To: 20}}, Gross: 22, Overlap: 2, TrimLeft: 1, TrimRight: 1, Foot: 12,
			Rules: seam.Rules{LeastWidth: 6, PreferWidth: 12, ShortSeam: 30}, Seen: seen}
	}
	over := func(from, to, high int64) func(int64) int64 { // seams between from and to show over a door alone
		return func(at int64) int64 {
			if from < at && at < to {
				return high
			}
			return tall
		}
	}
	for _, c := range []struct {
		name   string
		span   seam.Span
		seams  []int64
		sliver int64
		rip    int64 // what shows of all jumps
	}{
		{"a rip of 14 over the door leaves 12", span(over(25, 60, 16)), []int64{20, 40, 54}, 0, 2},
		{"a rip would show: the end stays", span(over(0, 0, 0)), []int64{20, 40, 60}, 3, 0},
		{"its own seam shows over a door alone: no sliver", span(over(25, 62, 16)), []int64{20, 40, 60}, 0, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := seam.Solve(c.span, seam.Steady)
			require.NoError(t, err)
			want, ok := oracletest.Sweep(c.span, seam.Steady)
			require.True(t, ok)
			assert.Equal(t, want.Seams, got.Seams)
			assert.Equal(t, c.seams, got.Seams)
			assert.Equal(t, c.sliver, got.Score.Sliver)
			assert.Equal(t, c.rip, got.Score.Jump)
		})
	}
}

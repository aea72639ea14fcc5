package oracletest_test

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
	"flitchlay/internal/seam"
	"flitchlay/internal/seam/oracletest"
)

// Random spans show every feature of the rules often enough to trust a comparison over a few hundred of them.
func TestRandomSpansShowEveryFeature(t *testing.T) {
	t.Parallel()
	cases := effort.Of(400, 1200)
	rng := rand.New(rand.NewPCG(1, 2))
	share := map[string]int{}
	count := func(name string, is bool) {
		if is {
			share[name]++
		}
	}
	for range cases {
		c := oracletest.Random(rng, oracletest.Small)
		s := c.Span
		best, ok := oracletest.Best(s, c.Aim)
		count("has a layout", ok)
		if !ok {
			continue
		}
		again, ok := oracletest.Score(s, best.Seams, best.Closing)
		require.True(t, ok, "%s", c)
		require.Equal(t, best.Score, again, "%s", c)

		score := best.Score
		count("steady", c.Aim == seam.Steady)
		count("fewest", c.Aim == seam.Fewest)
		count("even", c.Aim == seam.Even)
		count("open", !s.Closed)
		count("closed", s.Closed)
		count("musts collide", score.Bends+score.Edges > 0)
		count("edges alone collide", score.Bends == 0 && score.Edges > 0)
		count("past the period", s.RunClosed && !s.Closed && s.R > s.Period)
		count("rest of an open run", s.LeftSeam && !s.RightSeam)
		count("rest of a closed run", s.RightSeam)
		count("difference", score.Difference > 0)
		count("jump", score.Jump > 0)
		count("narrow", score.Narrow > 0)
		count("narrow on main", score.NarrowMain > 0)
		count("jump of a narrow one", score.NarrowJump > 0)
		count("sliver", score.Sliver > 0)
		count("should", score.Should > 0)
		count("pin kept", len(s.Pins) > len(best.Dropped))
		count("pin dropped", len(best.Dropped) > 0)
		count("under least width", !s.Closed && s.R-s.L < s.LeastWidth || s.Closed && s.Period < s.LeastWidth)
		count("no seam", len(best.Seams) == 0)
		count("one sheet round", s.Closed && len(best.Seams) == 1)
		count("odd overlap", s.Overlap%2 == 1)
		count("unlike trims", s.TrimLeft != s.TrimRight)
		count("short last step", (s.R-s.L)%s.Snap != 0)
		count("swept corner", anyOf(s.Corners, func(x seam.Strip) bool { return x.From < x.To }))
		count("plate", len(s.Boxes) > 0)
		count("keep-clear", len(s.Keep) > 0)
		count("gap", anyOf(s.Openings, func(o seam.Opening) bool { return o.Gap }))
		count("wrapped jambs", anyOf(s.Openings, func(o seam.Opening) bool { return o.Wrap }))
		count("slope", anyOf(c.Profile.Steps, func(x oracletest.Step) bool { return x.Rise != 0 }))
		count("hidden seam", anyOf(c.Profile.Steps, func(x oracletest.Step) bool { return x.Height == 0 }))
		for _, pin := range s.Pins {
			count([]string{"pin seam", "pin middle", "pin either", "pin close"}[pin.Put], true)
		}
	}
	t.Log(share)
	for name, percent := range map[string]int{
		"has a layout": 95, "steady": 25, "fewest": 25, "even": 25, "open": 25, "closed": 25, "musts collide": 33,
		"edges alone collide": 3, "past the period": 10, "rest of an open run": 5, "rest of a closed run": 2,
		"difference": 3, "jump": 15, "narrow": 10, "narrow on main": 3, "jump of a narrow one": 3, "sliver": 3, "should": 40, "pin kept": 20, "pin dropped": 10,
		"under least width": 2, "no seam": 2, "one sheet round": 1, "odd overlap": 25, "unlike trims": 25,
		"short last step": 25, "swept corner": 10, "plate": 20, "keep-clear": 20, "gap": 20, "wrapped jambs": 15,
		"slope": 20, "hidden seam": 20, "pin seam": 10, "pin middle": 10, "pin either": 10, "pin close": 5,
	} {
		assert.GreaterOrEqual(t, share[name]*100, percent*cases, name)
	}
}

func anyOf[T any](list []T, is func(T) bool) bool {
	for _, x := range list {
		if is(x) {
			return true
		}
	}
	return false
}

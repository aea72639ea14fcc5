package seam

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
)

// However coarse the grid, a pin is kept in one way, so that many pins are no more choices than one: but where two end sheets can
// meet, and where the one end of a span lies over the other; there the same pin again is no choice more.
func TestPinsAreKeptInOneWay(t *testing.T) {
	several := 0
	for seed := range uint64(2000) {
		r := rand.New(rand.NewPCG(seed, 26))
		snap := 1 + r.Int64N(9)
		s := Span{Closed: seed%3 == 0, Snap: snap, Overlap: r.Int64N(6 * snap), Foot: 12, Seen: func(int64) int64 { return 90 }}
		s.Gross = s.Overlap + snap*(1+r.Int64N(4)) + r.Int64N(snap)
		s.R = snap*(2+r.Int64N(12)) + r.Int64N(2)*r.Int64N(snap)
		s.Period, s.RunClosed = s.R, s.Closed || seed%3 == 1
		s.LeftSeam, s.RightSeam = !s.Closed && r.IntN(3) == 0, !s.Closed && r.IntN(3) == 0
		g := newBareGrid(&s)
		for range 20 {
			pin := Pin{At: r.Int64N(s.R + 1), Put: Put(r.IntN(4))}
			if r.IntN(2) == 0 {
				pin.At = pin.At / snap * snap
			}
			ways := g.ways(pin)
			if s.RunClosed && !s.Closed && pin.At%s.Period == 0 {
				continue // the span may lie twice over it
			}
			if len(ways) > 1 {
				several++
				line := int(pin.At / snap)
				require.Equal(t, PutMiddle, pin.Put)
				require.LessOrEqual(t, line, g.firstReach(), "%+v %+v", s, pin)
				require.LessOrEqual(t, s.R-g.at(line), s.lastReach(), "%+v %+v", s, pin)
			}
		}
	}
	require.Positive(t, several)
	s := Span{R: 8, Period: 8, Snap: 2, Gross: 7, Overlap: 4, Foot: 12, Seen: func(int64) int64 { return 90 }}
	for range 60 {
		s.Pins = append(s.Pins, Pin{At: 4, Put: PutMiddle})
	}
	p := &problem{s: &s, g: newGrid(&s)}
	p.findWays()
	require.Len(t, p.can, 60)
	require.Equal(t, []int{0}, p.choices(p.can))
	found, err := Solve(s, Steady)
	require.NoError(t, err)
	require.Empty(t, found.Dropped)
}

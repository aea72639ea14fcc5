package layout

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
	"flitchlay/internal/room"
	"flitchlay/internal/seam"
)

// randomSpan is a span in small units with objects that leave little room, open or round, with seams that hang.
func randomSpan(rng *rand.Rand) seam.Span {
	n := func(most int) int64 { return int64(rng.IntN(most)) }
	s := seam.Span{Snap: 1 + n(3), Gross: 14 + n(12), Overlap: n(3), TrimLeft: n(3), TrimRight: n(3), Foot: 12, Seen: func(int64) int64 { return 1 },
		Rules: seam.Rules{LeastWidth: n(9), CornerReturn: n(6), Leg: n(5), OpeningClear: n(5)}}
	s.Period = 3 + n(90)
	s.Closed = rng.IntN(2) == 0
	s.R = s.Period
	if !s.Closed {
		s.RunClosed = rng.IntN(3) == 0
		s.L = n(4)
		s.R = s.L + 1 + n(int(s.Period))
		s.LeftSeam, s.RightSeam = rng.IntN(4) == 0, rng.IntN(4) == 0
		if s.LeftSeam {
			s.TrimLeft = 0
		}
		if s.RightSeam {
			s.TrimRight = 0
		}
	}
	strip := func(most int) seam.Strip {
		from := n(int(s.Period))
		return seam.Strip{From: from, To: min(from+n(most), s.Period)}
	}
	for range rng.IntN(4) {
		s.Corners = append(s.Corners, strip(3))
	}
	for range rng.IntN(3) {
		x := strip(20)
		s.Openings = append(s.Openings, seam.Opening{A: x.From, B: max(x.From+1, x.To), Gap: rng.IntN(5) == 0, Wrap: rng.IntN(3) == 0, Reveal: 0})
		if o := &s.Openings[len(s.Openings)-1]; o.Wrap {
			o.Reveal = n(4)
		}
	}
	for range rng.IntN(3) {
		s.Keep = append(s.Keep, strip(25))
	}
	return s
}

// whole lists all that a span asks.
func whole(s *seam.Span) []demand {
	out := []demand{{demandKey: demandKey{kind: leastDemand}}}
	for i := range s.Corners {
		out = append(out, demand{demandKey: demandKey{kind: cornerDemand}, index: i})
	}
	for i := range s.Openings {
		out = append(out, demand{demandKey: demandKey{kind: openingDemand}, index: i})
	}
	for i := range s.Keep {
		out = append(out, demand{demandKey: demandKey{kind: keepDemand}, index: i})
	}
	return out
}

// What stands says of a span is what the solver says of it: by whole rows of lines or by single ones, a seam may stand at the same
// places.
func TestStandsAgreesWithTheSolver(t *testing.T) {
	met := map[bool]int{}
	for seed := range uint64(effort.Of(4000, 200_000)) {
		s := randomSpan(rand.New(rand.NewPCG(seed, 31)))
		want, err := seam.Meets(s)
		if err != nil {
			continue
		}
		met[want]++
		require.Equal(t, want, new(scratch).stands(&s, whole(&s)), "seed %d: %+v", seed, s)
	}
	require.Greater(t, met[true], 500)
	require.Greater(t, met[false], 500)
}

// The same of the spans of random rooms, under rules that are hard to meet.
func TestStandsAgreesWithTheSolverInRooms(t *testing.T) {
	met := map[bool]int{}
	for seed := range uint64(effort.Of(40, 1000)) {
		r, err := room.Decode("room.toml", []byte(hard(randomRoom(rand.New(rand.NewPCG(seed, 37))))))
		if err != nil {
			continue
		}
		k, ok := (&clash{builder: &builder{room: r, plan: &Plan{}}, tries: &trials{left: 1 << 40}}).altered()
		if !ok {
			continue
		}
		for _, sp := range k.spots() {
			want, err := seam.Meets(sp.q.Span)
			require.NoError(t, err)
			met[want]++
			require.Equal(t, want, new(scratch).stands(&sp.q.Span, sp.all), "seed %d", seed)
		}
	}
	require.Positive(t, met[true])
	require.Positive(t, met[false])
}

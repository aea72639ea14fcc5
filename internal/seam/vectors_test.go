package seam

import (
	"bufio"
	"encoding/json"
	"os"
	"testing"

	"github.com/stretchr/testify/require"
)

// vector is one line of testdata/vectors.jsonl: a small span with its best layout for each aim, found by trying every
// set of grid lines.
type vector struct {
	Name string
	Span vectorSpan
	Want map[string]vectorWant
}

type vectorSpan struct {
	Closed       bool    `json:"closed"`
	L            int64   `json:"l"`
	R            int64   `json:"r"`
	LeftSeam     bool    `json:"left_seam"`
	RightSeam    bool    `json:"right_seam"`
	P            int64   `json:"p"`
	RunClosed    bool    `json:"run_closed"`
	Snap         int64   `json:"snap"`
	G            int64   `json:"g"`
	O            int64   `json:"o"`
	TL           int64   `json:"tl"`
	TR           int64   `json:"tr"`
	LeastWidth   int64   `json:"least_width"`
	PreferWidth  int64   `json:"prefer_width"`
	CornerReturn int64   `json:"corner_return"`
	PreferReturn int64   `json:"prefer_return"`
	Leg          int64   `json:"leg"`
	PreferLeg    int64   `json:"prefer_leg"`
	OpeningClear int64   `json:"opening_clear"`
	PreferClear  int64   `json:"prefer_clear"`
	BoxClear     int64   `json:"box_clear"`
	ShortSeam    int64   `json:"short_seam"`
	Foot         int64   `json:"foot"`
	OneWall      bool    `json:"one_wall"`
	Corners      []strip `json:"corners"`
	Openings     []struct {
		A, B      int64
		Gap, Wrap bool
		Reveal    int64
	} `json:"openings"`
	Boxes []strip `json:"boxes"`
	Keep  []strip `json:"keep"`
	Pins  []struct {
		At  int64
		Put string
	} `json:"pins"`
	Heights [][2]int64 `json:"heights"`
	Main    []strip    `json:"main"`
}

type strip [2]int64

type vectorWant struct {
	Seams     []int64          `json:"seams"`
	ClosingAt *int64           `json:"closing_at"`
	Dropped   []int            `json:"dropped"`
	Score     map[string]int64 `json:"score"`
}

func strips(from []strip) []Strip {
	var out []Strip
	for _, s := range from {
		out = append(out, Strip{s[0], s[1]})
	}
	return out
}

// steps turns a list of [from s, height] into a seen height; round says that s is taken round the period.
func steps(heights [][2]int64, period int64, round bool) func(int64) int64 {
	return func(s int64) int64 {
		if round {
			s = ((s % period) + period) % period
		}
		h := heights[0][1]
		for _, step := range heights {
			if s >= step[0] {
				h = step[1]
			}
		}
		return h
	}
}

func (v vectorSpan) span(t testing.TB) Span {
	s := Span{
		Closed: v.Closed, L: v.L, R: v.R, LeftSeam: v.LeftSeam, RightSeam: v.RightSeam, Period: v.P,
		RunClosed: v.RunClosed, Snap: v.Snap, Gross: v.G, Overlap: v.O, TrimLeft: v.TL, TrimRight: v.TR,
		Rules: Rules{
			LeastWidth: v.LeastWidth, PreferWidth: v.PreferWidth, CornerReturn: v.CornerReturn,
			PreferReturn: v.PreferReturn, Leg: v.Leg, PreferLeg: v.PreferLeg, OpeningClear: v.OpeningClear,
			PreferClear: v.PreferClear, BoxClear: v.BoxClear, ShortSeam: v.ShortSeam,
		},
		Foot: v.Foot, OneWall: v.OneWall, Corners: strips(v.Corners), Boxes: strips(v.Boxes), Keep: strips(v.Keep),
		Main: strips(v.Main), Seen: steps(v.Heights, v.P, v.RunClosed),
	}
	for _, o := range v.Openings {
		s.Openings = append(s.Openings, Opening{A: o.A, B: o.B, Gap: o.Gap, Wrap: o.Wrap, Reveal: o.Reveal})
	}
	puts := map[string]Put{"seam": PutSeam, "middle": PutMiddle, "either": PutEither, "close": PutClose}
	for _, p := range v.Pins {
		put, known := puts[p.Put]
		require.True(t, known, "put %q", p.Put)
		s.Pins = append(s.Pins, Pin{At: p.At, Put: put})
	}
	return s
}

// items names the score as the vectors do.
func items(s Score) map[string]int64 {
	return map[string]int64{
		"bends": s.Bends, "edges": s.Edges, "closing": s.Closing, "narrow_main": s.NarrowMain, "narrow": s.Narrow,
		"sheets": s.Sheets, "narrow_jump": s.NarrowJump, "sliver": s.Sliver, "jump": s.Jump, "should": s.Should, "seen": s.Seen, "difference": s.Difference,
		"unevenness": int64(s.Unevenness.Lo),
	}
}

// readVectors reads them all; none is a failure, for then nothing would be checked.
func readVectors(t testing.TB) []vector {
	file, err := os.Open("testdata/vectors.jsonl")
	require.NoError(t, err)
	defer file.Close()
	var all []vector
	lines := bufio.NewScanner(file)
	lines.Buffer(nil, 1<<20)
	for lines.Scan() {
		var v vector
		require.NoError(t, json.Unmarshal(lines.Bytes(), &v))
		all = append(all, v)
	}
	require.NoError(t, lines.Err())
	require.NotEmpty(t, all, "no vectors")
	return all
}

var aims = map[string]Aim{"steady": Steady, "fewest": Fewest, "even": Even}

func TestVectors(t *testing.T) {
	for _, v := range readVectors(t) {
		require.Len(t, v.Want, len(aims), v.Name)
		for name, want := range v.Want {
			t.Run(v.Name+"/"+name, func(t *testing.T) {
				aim, known := aims[name]
				require.True(t, known)
				span := v.Span.span(t)
				got, err := Solve(span, aim)
				require.NoError(t, err)
				require.Equal(t, want.Score, items(got.Score))
				require.Equal(t, want.Seams, append([]int64{}, got.Seams...))
				require.Equal(t, want.Dropped, append([]int{}, got.Dropped...))
				if want.ClosingAt == nil {
					require.Equal(t, -1, got.Closing)
				} else {
					require.GreaterOrEqual(t, got.Closing, 0)
					require.Equal(t, *want.ClosingAt, got.Seams[got.Closing])
				}
				require.Equal(t, got.Score, span.Score(got.Seams, got.Closing), "scored again")
			})
		}
	}
}

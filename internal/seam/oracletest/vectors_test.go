package oracletest_test

import (
	"bufio"
	"bytes"
	"encoding/json"
	"maps"
	"os"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
	"flitchlay/internal/seam"
	"flitchlay/internal/seam/oracletest"
)

// vector is one line of vectors.jsonl: small cases whose answers were found by another brute force than this one.
type vector struct {
	Name string
	Span struct {
		Closed       bool
		L, R         int64
		LeftSeam     bool `json:"left_seam"`
		RightSeam    bool `json:"right_seam"`
		P            int64
		RunClosed    bool `json:"run_closed"`
		Snap, G, O   int64
		TL, TR       int64
		LeastWidth   int64 `json:"least_width"`
		PreferWidth  int64 `json:"prefer_width"`
		CornerReturn int64 `json:"corner_return"`
		PreferReturn int64 `json:"prefer_return"`
		Leg          int64
		PreferLeg    int64 `json:"prefer_leg"`
		OpeningClear int64 `json:"opening_clear"`
		PreferClear  int64 `json:"prefer_clear"`
		BoxClear     int64 `json:"box_clear"`
		ShortSeam    int64 `json:"short_seam"`
		Foot         int64
		OneWall      bool `json:"one_wall"`
		Corners      [][2]int64
		Openings     []seam.Opening
		Boxes, Keep  [][2]int64
		Pins         []struct {
			At  int64
			Put string
		}
		Heights, Main [][2]int64
	}
	Want map[string]struct {
		Seams     []int64
		ClosingAt *int64 `json:"closing_at"`
		Dropped   []int
		Score     struct {
			Bends, Edges, Closing              int64
			NarrowMain                         int64 `json:"narrow_main"`
			NarrowJump                         int64 `json:"narrow_jump"`
			Sliver                             int64
			Narrow, Sheets, Jump, Should, Seen int64
			Difference                         int64
			Unevenness                         uint64
		}
	}
}

var puts = map[string]seam.Put{"seam": seam.PutSeam, "middle": seam.PutMiddle, "either": seam.PutEither, "close": seam.PutClose}

var aims = map[string]seam.Aim{"steady": seam.Steady, "fewest": seam.Fewest, "even": seam.Even}

func strips(pairs [][2]int64) []seam.Strip {
	var list []seam.Strip
	for _, p := range pairs {
		list = append(list, seam.Strip{From: p[0], To: p[1]})
	}
	return list
}

func (v vector) span(t *testing.T) seam.Span {
	s := v.Span
	span := seam.Span{
		Closed: s.Closed, L: s.L, R: s.R, LeftSeam: s.LeftSeam, RightSeam: s.RightSeam,
		Period: s.P, RunClosed: s.RunClosed, Snap: s.Snap, Gross: s.G, Overlap: s.O, TrimLeft: s.TL, TrimRight: s.TR,
		Rules: seam.Rules{
			LeastWidth: s.LeastWidth, PreferWidth: s.PreferWidth, CornerReturn: s.CornerReturn, PreferReturn: s.PreferReturn,
			Leg: s.Leg, PreferLeg: s.PreferLeg, OpeningClear: s.OpeningClear, PreferClear: s.PreferClear,
			BoxClear: s.BoxClear, ShortSeam: s.ShortSeam,
		},
		Foot: s.Foot, OneWall: s.OneWall, Corners: strips(s.Corners), Openings: s.Openings,
		Boxes: strips(s.Boxes), Keep: strips(s.Keep), Main: strips(s.Main),
	}
	for _, pin := range s.Pins {
		put, known := puts[pin.Put]
		require.True(t, known, pin.Put)
		span.Pins = append(span.Pins, seam.Pin{At: pin.At, Put: put})
	}
	var profile oracletest.Profile
	if s.RunClosed {
		profile.Period = s.P
	}
	for _, h := range s.Heights {
		profile.Steps = append(profile.Steps, oracletest.Step{From: h[0], Height: h[1]})
	}
	span.Seen = profile.Seen
	return span
}

func readVectors(t *testing.T) []vector {
	file, err := os.Open("../testdata/vectors.jsonl")
	require.NoError(t, err)
	defer file.Close()
	var all []vector
	lines := bufio.NewScanner(file)
	lines.Buffer(nil, 1<<20)
	for lines.Scan() {
		var v vector
		decoder := json.NewDecoder(bytes.NewReader(lines.Bytes()))
		decoder.DisallowUnknownFields()
		require.NoError(t, decoder.Decode(&v))
		all = append(all, v)
	}
	require.NoError(t, lines.Err())
	require.NotEmpty(t, all)
	return all
}

// The brute force finds every answer of the file, for every aim; so both read the rules alike. Without FLITCHLAY_CHECK=1
// the aims take turns.
func TestBestFindsEveryVector(t *testing.T) {
	for i, v := range readVectors(t) {
		span := v.span(t)
		require.Len(t, v.Want, len(aims), v.Name)
		for _, name := range effort.Turns(i, slices.Sorted(maps.Keys(v.Want))) {
			want := v.Want[name]
			t.Run(v.Name+"/"+name, func(t *testing.T) {
				t.Parallel()
				got, ok := oracletest.Best(span, aims[name])
				require.True(t, ok)
				closing := -1
				if want.ClosingAt != nil {
					closing = slices.Index(want.Seams, *want.ClosingAt)
				}
				score := seam.Score{
					Bends: want.Score.Bends, Edges: want.Score.Edges, Closing: want.Score.Closing,
					NarrowMain: want.Score.NarrowMain, Narrow: want.Score.Narrow, Sheets: want.Score.Sheets,
					NarrowJump: want.Score.NarrowJump, Sliver: want.Score.Sliver,
					Jump: want.Score.Jump, Should: want.Score.Should, Seen: want.Score.Seen,
					Difference: want.Score.Difference, Unevenness: seam.Square{Lo: want.Score.Unevenness},
				}
				assert.ElementsMatch(t, want.Seams, got.Seams)
				assert.Equal(t, closing, got.Closing)
				assert.ElementsMatch(t, want.Dropped, got.Dropped)
				assert.Equal(t, score, got.Score)

				again, ok := oracletest.Score(span, want.Seams, closing)
				require.True(t, ok)
				assert.Equal(t, score, again)
			})
		}
	}
}

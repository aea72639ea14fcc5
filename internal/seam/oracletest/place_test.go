package oracletest_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"flitchlay/internal/seam"
	"flitchlay/internal/seam/oracletest"
)

// Worked by hand from the rules: what a seam owes where the vectors have no case.
func TestPlaceAt(t *testing.T) {
	rules := seam.Rules{
		LeastWidth: 5, CornerReturn: 4, PreferReturn: 7, Leg: 3, PreferLeg: 6, OpeningClear: 2, PreferClear: 5, BoxClear: 3, ShortSeam: 30,
	}
	plain := seam.Opening{A: 20, B: 40}
	gap := seam.Opening{A: 20, B: 40, Gap: true}
	jambs := seam.Opening{A: 20, B: 40, Wrap: true, Reveal: 6}
	slim := seam.Opening{A: 20, B: 25, Wrap: true, Reveal: 6}
	for _, c := range []struct {
		reason               string
		change               func(*seam.Span)
		at                   int64
		bends, edges, should int64
	}{
		{"on an edge it is inside: clear to both edges, no leg", openings(plain), 20, 0, 2, 5},
		{"one outside an edge: the leg to it alone", openings(plain), 19, 0, 2, 5},
		{"one inside an edge", openings(plain), 21, 0, 1, 4},
		{"one inside a gap's edge: no rule", openings(gap), 21, 0, 0, 0},
		{"on a gap's edge: not strictly inside, so clear", openings(gap), 40, 0, 2, 5},
		{"one outside a gap's edge: a leg", openings(gap), 41, 0, 2, 5},
		{"pier side of a jamb: a return", openings(jambs), 19, 3, 0, 6},
		{"on a jamb: corner_return and opening_clear, the other is far", openings(jambs), 20, 4 + 2, 0, 7 + 5},
		{"opening side of a jamb: reveal and clear", openings(jambs), 21, 8 - 1, 0, 11 - 1},
		{"in a slim opening both jambs count", openings(slim), 22, 8 - 2 + 8 - 3, 0, 11 - 2 + 11 - 3},
		{"on a jamb of a slim opening the other one counts too", openings(slim), 25, 4 + 2 + 8 - 5, 0, 7 + 5 + 11 - 5},
		{"a preference under its must asks for no reveal either", func(s *seam.Span) {
			s.Openings, s.PreferClear = []seam.Opening{jambs}, 1
		}, 21, 8 - 1, 0, 0},
		{"one as great as its must asks for both", func(s *seam.Span) {
			s.Openings, s.PreferClear = []seam.Opening{jambs}, s.OpeningClear
		}, 21, 8 - 1, 0, 8 - 1},
		{"two corners count twice", func(s *seam.Span) { s.Corners = []seam.Strip{{From: 20, To: 20}, {From: 23, To: 25}} }, 22, 2 + 3, 0, 5 + 6},
		{"in a swept strip d is nought", func(s *seam.Span) { s.Corners = []seam.Strip{{From: 20, To: 25}} }, 23, 4, 0, 7},
		{"a strip over the end of a closed run, inside it", func(s *seam.Span) { s.RunClosed, s.Corners = true, []seam.Strip{{From: 58, To: 63}} }, 2, 4, 0, 7},
		{"the same, a little past it", func(s *seam.Span) { s.RunClosed, s.Corners = true, []seam.Strip{{From: 58, To: 63}} }, 5, 2, 0, 5},
		{"a strip that begins before the start of a closed run", func(s *seam.Span) { s.RunClosed, s.Corners = true, []seam.Strip{{From: -2, To: 1}} }, 57, 3, 0, 6},
		{"in an open run nothing goes round", func(s *seam.Span) { s.Corners = []seam.Strip{{From: 58, To: 60}} }, 1, 0, 0, 0},
		{"a place past the period of a closed run", func(s *seam.Span) { s.RunClosed, s.Corners = true, []seam.Strip{{From: 3, To: 3}} }, 64, 3, 0, 6},
		{"keep-clear: the way to the nearer end", func(s *seam.Span) { s.Keep = []seam.Strip{{From: 20, To: 30}} }, 27, 0, 3, 0},
		{"keep-clear: its end is free", func(s *seam.Span) { s.Keep = []seam.Strip{{From: 20, To: 30}} }, 30, 0, 0, 0},
		{"two keep-clears over each other count twice", func(s *seam.Span) { s.Keep = []seam.Strip{{From: 20, To: 30}, {From: 24, To: 40}} }, 27, 0, 6, 0},
		{"on a plate", func(s *seam.Span) { s.Boxes = []seam.Strip{{From: 20, To: 30}} }, 25, 0, 0, 3},
		{"beside a plate", func(s *seam.Span) { s.Boxes = []seam.Strip{{From: 20, To: 30}} }, 32, 0, 0, 1},
	} {
		span := seam.Span{R: 60, Period: 60, Snap: 1, Gross: 22, Overlap: 2, Rules: rules, Foot: 12, Seen: func(int64) int64 { return 31 }}
		c.change(&span)
		want := oracletest.Place{Bends: c.bends, Edges: c.edges, Should: c.should, Feet: 3, Tall: true}
		assert.Equal(t, want, oracletest.PlaceAt(span, c.at), c.reason)
	}
}

func openings(list ...seam.Opening) func(*seam.Span) {
	return func(s *seam.Span) { s.Openings = list }
}

// A seam on the end of a main stretch is not on it; a stretch over the end of a closed run goes on at its start.
func TestPlaceAtMain(t *testing.T) {
	span := seam.Span{R: 60, Period: 60, RunClosed: true, Foot: 12, Main: []seam.Strip{{From: 50, To: 65}}, Seen: func(int64) int64 { return 30 }, Rules: seam.Rules{ShortSeam: 30}}
	for at, main := range map[int64]bool{49: false, 50: true, 59: true, 0: true, 4: true, 5: false, 64: true, 65: false} {
		assert.Equal(t, oracletest.Place{Feet: 3, Main: main}, oracletest.PlaceAt(span, at), at)
	}
}

// The rest beside a hung seam: its first sheet is inner and its last one an end sheet, also where it is the only one.
func TestSheetsOfARest(t *testing.T) {
	span := seam.Span{L: 10, R: 50, LeftSeam: true, Period: 60, Snap: 5, Gross: 22, Overlap: 2}
	assert.Equal(t, []oracletest.Sheet{
		{Left: 10, Right: 30, RightCounts: true},
		{Left: 30, Right: 50, RightRaw: true, End: true},
	}, oracletest.Sheets(span, []int64{30}, -1))
	assert.Equal(t, []oracletest.Sheet{{Left: 10, Right: 50, RightRaw: true, End: true}}, oracletest.Sheets(span, nil, -1))
	span.RightSeam = true
	assert.Equal(t, []oracletest.Sheet{{Left: 10, Right: 50, End: true}}, oracletest.Sheets(span, nil, -1))
}

// A hung seam and the closing seam beside the first hung sheet keep the pins that are near them.
func TestKeepsOfARest(t *testing.T) {
	span := seam.Span{L: 40, R: 75, LeftSeam: true, RightSeam: true, Period: 60, RunClosed: true, Snap: 4, Gross: 22, Overlap: 2}
	for _, c := range []struct {
		pin  seam.Pin
		kept bool
	}{
		{seam.Pin{At: 38, Put: seam.PutSeam}, true},
		{seam.Pin{At: 37, Put: seam.PutSeam}, false},
		{seam.Pin{At: 17, Put: seam.PutSeam}, true}, // 77 after one round
		{seam.Pin{At: 18, Put: seam.PutSeam}, false},
		{seam.Pin{At: 50, Put: seam.PutMiddle}, true}, // of the sheet from 40 to 60
		{seam.Pin{At: 7, Put: seam.PutMiddle}, false}, // the sheet from 60 to 75 is no whole one
	} {
		assert.Equal(t, c.kept, oracletest.Keeps(span, []int64{60}, -1, c.pin), "%+v", c.pin)
	}
}

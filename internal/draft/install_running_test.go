package draft

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
)

// apart checks that no figure touches another in its row, and that no stem runs through a figure on its way to a deeper row.
func apart(t *testing.T, flags []Flag, perches []Perch, air float64) {
	t.Helper()
	for i, p := range perches {
		assert.InDelta(t, flags[i].Width, p.To-p.From, 1e-9)
		assert.LessOrEqual(t, p.From, flags[i].At+1e-9, "a figure touches its stem")
		assert.GreaterOrEqual(t, p.To, flags[i].At-1e-9, "a figure touches its stem")
		for j, q := range perches {
			if i == j {
				continue
			}
			if p.Row == q.Row {
				assert.True(t, p.To+air <= q.From+1e-9 || q.To+air <= p.From+1e-9, "figures %d and %d of row %d", i, j, p.Row)
			}
			if q.Row < p.Row {
				assert.True(t, flags[i].At <= q.From-air+1e-9 || flags[i].At >= q.To+air-1e-9, "stem %d and figure %d", i, j)
			}
		}
	}
}

func TestRowsOfEvenFlagsAlternate(t *testing.T) {
	var flags []Flag
	for i := range 8 {
		flags = append(flags, Flag{At: 20 + 18.6*float64(i), Width: 24})
	}
	perches, ok := Rows(flags, 3, 1.2, 0, 200)
	require.True(t, ok)
	apart(t, flags, perches, 1.2)
	for i, p := range perches {
		assert.Equal(t, 1+(i+perches[0].Row-1)%2, p.Row, "two rows are enough, in turn")
		assert.InDelta(t, flags[i].At, (p.From+p.To)/2, 1e-9, "in the middle under its flag")
	}
}

func TestRowsKeepTheRowAndTheSideAskedFor(t *testing.T) {
	flags := []Flag{{At: 50, Width: 20, Row: 2}, {At: 53, Width: 20, Aside: 1}, {At: 90, Width: 20, Row: 3}}
	perches, ok := Rows(flags, 3, 1, 0, 120)
	require.True(t, ok)
	apart(t, flags, perches, 1)
	assert.Equal(t, 2, perches[0].Row)
	assert.Equal(t, 3, perches[2].Row)
	assert.InDelta(t, 53, perches[1].From, 1, "begins at its flag")
}

func TestRowsSayWhereTheyDoNotSuffice(t *testing.T) {
	var flags []Flag
	for i := range 10 {
		flags = append(flags, Flag{At: 50 + float64(i), Width: 30})
	}
	_, ok := Rows(flags, 3, 1, 0, 100)
	assert.False(t, ok)
}

func TestRowsOfRandomFlagsStayApart(t *testing.T) {
	found := 0
	for seed := range uint64(300) {
		r := rand.New(rand.NewPCG(seed, 3))
		var flags []Flag
		x := 5.0
		for range 1 + r.IntN(13) {
			x += 3 + 20*r.Float64()
			flags = append(flags, Flag{At: x, Width: 10 + 14*r.Float64()})
		}
		perches, ok := Rows(flags, 4, 1.2, 0, x+30)
		if !ok {
			continue
		}
		found++
		apart(t, flags, perches, 1.2)
	}
	assert.Greater(t, found, 150, "most rows of flags find their places")
}

// plainRows is the search without memory: every answer is tried, in the same order.
func plainRows(flags []Flag, rows int, air, lo, hi float64) float64 {
	s := rowSearch{flags: flags, rows: rows, air: air, lo: lo, hi: hi, now: make([]Perch, len(flags))}
	for _, f := range flags {
		s.widest = math.Max(s.widest, f.Width)
	}
	var least func(i int) float64
	least = func(i int) float64 {
		if i == len(flags) {
			return 0
		}
		best := math.Inf(1)
		for row := 1; row <= rows; row++ {
			for _, side := range []int{0, -1, 1} {
				f := flags[i]
				p, extra, ok := s.perch(f, row, side)
				if f.Row != 0 && f.Row != row || f.Aside != 0 && f.Aside != side || !ok || !s.clear(i, p) {
					continue
				}
				s.now[i] = p
				best = min(best, float64(row)+extra+least(i+1))
			}
		}
		return best
	}
	return least(0)
}

func TestRowsCostNoMoreThanAnyAnswer(t *testing.T) {
	none := 0
	for seed := range uint64(effort.Of(150, 3000)) {
		r := rand.New(rand.NewPCG(seed, 9))
		var flags []Flag
		x := 12 * r.Float64()
		for range 2 + r.IntN(4) {
			x += 1 + 14*r.Float64()
			flags = append(flags, Flag{At: x, Width: 8 + 14*r.Float64(), Row: max(0, r.IntN(9)-6), Aside: max(-2, r.IntN(10)-8) % 2})
		}
		hi := x + 12*r.Float64()
		want := plainRows(flags, 3, 1.2, 0, hi)
		perches, ok := Rows(flags, 3, 1.2, 0, hi)
		require.Equal(t, !math.IsInf(want, 1), ok, "seed %d", seed)
		if !ok {
			none++
			continue
		}
		s, cost := rowSearch{flags: flags, rows: 3, lo: 0, hi: hi}, 0.0
		for i, p := range perches {
			for _, side := range []int{0, -1, 1} {
				if q, extra, ok := s.perch(flags[i], p.Row, side); ok && q == p && (flags[i].Aside == 0 || flags[i].Aside == side) {
					cost += float64(p.Row) + extra
					break
				}
			}
		}
		assert.InDelta(t, want, cost, 1e-9, "seed %d", seed)
	}
	assert.Positive(t, none, "some have no answer")
}

func TestShelfKeepsOrderPitchAndBounds(t *testing.T) {
	for seed := range uint64(200) {
		r := rand.New(rand.NewPCG(seed, 5))
		var at []float64
		x := 10.0
		for range 1 + r.IntN(14) {
			x += 12 * r.Float64()
			at = append(at, x)
		}
		const pitch = 5.5
		out := Shelf(at, pitch, 0, math.Max(x+5, pitch*float64(len(at))))
		require.Len(t, out, len(at))
		for i := range out {
			assert.GreaterOrEqual(t, out[i], pitch/2-1e-9)
			if i > 0 {
				assert.GreaterOrEqual(t, out[i]-out[i-1], pitch-1e-9)
			}
		}
	}
}

func TestShelfLeavesAloneWhatHasRoom(t *testing.T) {
	assert.Equal(t, []float64{10, 30, 50}, Shelf([]float64{10, 30, 50}, 5, 0, 60))
	out := Shelf([]float64{30, 30}, 6, 0, 60)
	assert.InDeltaSlice(t, []float64{27, 33}, out, 1e-9, "two at one place part evenly")
}

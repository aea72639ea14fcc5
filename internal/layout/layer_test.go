package layout_test

import (
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
	"flitchlay/internal/layout"
	"flitchlay/internal/room"
	"flitchlay/internal/roomtest"
	"flitchlay/internal/seam"
)

// touched is a copy of a room with one small thing changed, and what it was.
func touched(rnd *rand.Rand, was *room.Room) (*room.Room, string) {
	r := *was
	r.Walls = slices.Clone(r.Walls)
	w := &r.Walls[rnd.IntN(len(r.Walls))]
	step := r.Rules.Snap
	by := step * layout.L(rnd.IntN(9)-4)
	switch kind := rnd.IntN(9); {
	case kind < 4 && len(w.Pins) > 0:
		w.Pins = slices.Clone(w.Pins)
		p := &w.Pins[rnd.IntN(len(w.Pins))]
		p.X = max(0, min(p.X+by, w.Length))
		return &r, "a pin moved"
	case kind < 5:
		w.Pins = append(slices.Clone(w.Pins), room.Pin{X: w.Length / 3, Put: []string{"seam", "middle", "either"}[rnd.IntN(3)]})
		return &r, "a pin more"
	case kind == 5 && len(w.Pins) > 0:
		w.Pins = w.Pins[1:]
		return &r, "a pin less"
	case kind == 6 && len(r.Flitches) > 0:
		r.Flitches = slices.Clone(r.Flitches)
		f := &r.Flitches[0]
		f.Damaged = append(slices.Clone(f.Damaged), rnd.IntN(5)+1)
		slices.Sort(f.Damaged)
		f.Damaged = slices.Compact(f.Damaged)
		return &r, "a number lost"
	case kind == 7:
		r.Rules.Leg = max(0, r.Rules.Leg+by)
		return &r, "a rule changed"
	case len(w.Openings) > 0:
		w.Openings = slices.Clone(w.Openings)
		o := &w.Openings[0]
		if o.SillGiven && o.Sill > step {
			o.Sill -= step
		}
		return &r, "a sill lowered"
	}
	w.Main = !w.Main
	return &r, "a main wall more or less"
}

// A Layer lays every changed room out as if it knew nothing: about a hundred small changes, or hundreds, one after the other, in
// rooms made at random.
func TestLayerLaysOutAsAFirstTime(t *testing.T) {
	kinds := map[string]int{}
	follow := func(r *room.Room, seed uint64, steps int) {
		rnd := rand.New(rand.NewPCG(seed, 31))
		y := layout.NewLayer()
		for range steps {
			next, what := touched(rnd, r)
			want, err := layout.Lay(next)
			got, again := y.Lay(next)
			require.Equal(t, err == nil, again == nil, what)
			if err != nil {
				continue
			}
			require.Equal(t, string(want.JSON()), string(got.JSON()), "%s: seed %d", what, seed)
			require.Equal(t, want.Nearly, got.Nearly)
			aim := seam.Aim(rnd.IntN(3))
			want, err = layout.LayAim(next, aim)
			require.NoError(t, err)
			got, err = y.LayAim(next, aim)
			require.NoError(t, err)
			require.Equal(t, string(want.JSON()), string(got.JSON()), "%s: seed %d", what, seed)
			r = next
			kinds[what]++
		}
	}
	roomtest.RandomPlans(t, effort.Of(8, effort.Waited(35, 60)), func(seed uint64, text string, p *layout.Plan) { follow(p.Room, seed, 8) })
	require.Greater(t, kinds["a pin moved"], 10)
	require.Greater(t, kinds["a pin more"], 10)
	require.Len(t, kinds, 7, "%v", kinds)
}

// samples reads the sample rooms.
func samples(t testing.TB) map[string]*room.Room {
	out := map[string]*room.Room{}
	list, err := filepath.Glob("../../samples/*.toml")
	require.NoError(t, err)
	for _, name := range list {
		text, err := os.ReadFile(name)
		require.NoError(t, err)
		r, err := room.Decode(name, text)
		require.NoError(t, err)
		out[filepath.Base(name)] = r
	}
	return out
}

// BenchmarkLayAgain moves a pin of each sample by one step and back, then loses a number, and reports what a Layer takes to lay
// the room out again, in times of what LayAim takes.
func BenchmarkLayAgain(b *testing.B) {
	for name, r := range samples(b) {
		aim := seam.Aim(slices.Index([]string{"steady", "fewest", "even"}, r.Rules.Aim))
		pinned := *r
		pinned.Walls = slices.Clone(r.Walls)
		w := &pinned.Walls[0]
		w.Pins = append(slices.Clone(w.Pins), room.Pin{X: w.Length / 3, Put: "seam"})
		moved := pinned
		moved.Walls = slices.Clone(pinned.Walls)
		moved.Walls[0].Pins = slices.Clone(w.Pins)
		moved.Walls[0].Pins[len(w.Pins)-1].X += 2 * r.Rules.Snap
		lost := moved
		if len(r.Flitches) > 0 {
			lost.Flitches = slices.Clone(r.Flitches)
			lost.Flitches[0].Damaged = append(slices.Clone(lost.Flitches[0].Damaged), 1)
		}
		b.Run(name, func(b *testing.B) {
			var first, again, firstLost, number time.Duration
			least := func(best *time.Duration, lay func() (*layout.Plan, error)) {
				start := time.Now()
				if _, err := lay(); err != nil {
					b.Fatal(err)
				}
				if spent := time.Since(start); *best == 0 || spent < *best {
					*best = spent
				}
			}
			for b.Loop() {
				y := layout.NewLayer()
				_, _ = y.LayAim(&pinned, aim)
				least(&first, func() (*layout.Plan, error) { return layout.LayAim(&moved, aim) })
				least(&again, func() (*layout.Plan, error) { return y.LayAim(&moved, aim) })
				least(&firstLost, func() (*layout.Plan, error) { return layout.LayAim(&lost, aim) })
				least(&number, func() (*layout.Plan, error) { return y.LayAim(&lost, aim) })
			}
			b.ReportMetric(float64(again)/float64(first), "pin-of-first")
			b.ReportMetric(float64(number)/float64(firstLost), "number-of-first")
		})
	}
}

package seam

import (
	"fmt"
	"math/rand/v2"
	"runtime"
	"slices"
	"testing"
	"time"
)

const inch = 203200

// roomRules are the defaults of an inch room.
var roomRules = Rules{
	LeastWidth: 6 * inch, PreferWidth: 12 * inch,
	CornerReturn: 4 * inch, PreferReturn: 6 * inch,
	Leg: 3 * inch, PreferLeg: 6 * inch,
	OpeningClear: 2 * inch, PreferClear: 4 * inch,
	BoxClear: inch, ShortSeam: 30 * inch,
}

// stretch of the run whose seen height is not that of the wall.
type hidden struct{ from, to, seen int64 }

// seenBy gives wall height but on the stretches, which do not overlap and ascend.
func seenBy(height int64, over []hidden, period int64) func(int64) int64 {
	return func(s int64) int64 {
		if period > 0 && s >= period {
			s -= period
		}
		i, _ := slices.BinarySearchFunc(over, s, func(h hidden, s int64) int {
			if h.to < s {
				return -1
			}
			return 1
		})
		if i < len(over) && over[i].from <= s {
			return over[i].seen
		}
		return height
	}
}

// room makes a run of walls with windows, doors and plates; length 0 picks one about 120 ft.
func room(seed uint64, length int64, closed bool) Span {
	r := rand.New(rand.NewPCG(seed, 120))
	sixteenth := func(low, high float64) int64 { return int64((low+r.Float64()*(high-low))*16) * (inch / 16) }
	gross := []int64{inch * 49 / 2, inch * 24, inch * 37 / 2, inch * 36, inch * 26}[[]int{0, 0, 0, 1, 2, 3, 4}[r.IntN(7)]]
	s := Span{
		Closed: closed, RunClosed: closed, Snap: inch / 16, Gross: gross, Overlap: inch,
		TrimLeft: inch, TrimRight: inch, Rules: roomRules, Foot: 12 * inch,
	}
	if length == 0 {
		length = sixteenth(1400, 1480)
		if seed%3 == 0 {
			length = 120*12*inch/s.NetWidth()*s.NetWidth() + inch/16
		}
	}
	s.R, s.Period = length, length
	height := sixteenth(96, 120)
	var over []hidden
	wall := int64(0)
	for wall < length {
		end := wall + sixteenth(100, 400)
		if length-end < 60*inch {
			end = length
		}
		if end < length || closed {
			lean := int64(0)
			if r.IntN(3) == 0 {
				lean = sixteenth(0, 0.5)
			}
			s.Corners = append(s.Corners, Strip{end, end + lean})
		}
		if r.IntN(5) == 0 {
			s.Main = append(s.Main, Strip{wall, end})
		}
		for at := wall + sixteenth(8, 80); ; {
			wide, shown := sixteenth(30, 72), height-sixteenth(40, 60)
			if r.IntN(3) == 0 {
				wide, shown = sixteenth(32, 42), height-86*inch
			}
			if at+wide > end-8*inch {
				break
			}
			s.Openings = append(s.Openings, Opening{A: at, B: at + wide})
			over = append(over, hidden{at, at + wide, shown})
			plate := at + wide + sixteenth(4, 12)
			s.Boxes = append(s.Boxes, Strip{plate, plate + inch*11/4})
			at += wide + sixteenth(20, 150)
		}
		wall = end
	}
	period := int64(0)
	if closed {
		period = length
	}
	s.Seen = seenBy(height, over, period)
	return s
}

// measure solves each span a few times per loop and reports median and greatest time, in milliseconds, of the best loop
// (others may use the machine, so run many), and the memory one solving takes, in megabytes.
func measure(b *testing.B, spans []Span, aim Aim) {
	times := make([][]float64, len(spans))
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	const repeat = 2
	rounds := 0
	for b.Loop() {
		rounds++
		for i, s := range spans {
			start := time.Now()
			for range repeat {
				if _, err := Solve(s, aim); err != nil {
					b.Fatal(err)
				}
			}
			times[i] = append(times[i], float64(time.Since(start).Microseconds())/1000/repeat)
		}
	}
	runtime.ReadMemStats(&after)
	var best []float64
	worst, at := 0.0, 0
	for i, t := range times {
		best = append(best, slices.Min(t))
		if best[i] > worst {
			worst, at = best[i], i
		}
	}
	slices.Sort(best)
	b.ReportMetric(best[len(best)/2], "median-ms")
	b.ReportMetric(worst, "max-ms")
	b.ReportMetric(float64(after.TotalAlloc-before.TotalAlloc)/float64(rounds*len(spans)*repeat)/1e6, "MB/solve")
	b.Logf("slowest: span %d", at)
}

func rooms(count int, change func(int, *Span)) []Span {
	var all []Span
	for i := range count {
		s := room(uint64(i), 0, true)
		if change != nil {
			change(i, &s)
		}
		all = append(all, s)
	}
	return all
}

var aimNames = []string{"steady", "fewest", "even"}

func BenchmarkClosed120(b *testing.B) {
	for aim, name := range aimNames[:2] {
		b.Run(name, func(b *testing.B) { measure(b, rooms(50, nil), Aim(aim)) })
	}
}

func BenchmarkEven(b *testing.B) { measure(b, rooms(50, nil), Even) }

// BenchmarkLeastBad has rooms in which a pier, a keep-clear and two corners leave no layout without a broken must.
func BenchmarkLeastBad(b *testing.B) {
	for aim, name := range aimNames {
		b.Run(name, func(b *testing.B) {
			measure(b, rooms(20, func(i int, s *Span) {
				corner := s.Corners[0].From
				s.Corners = append(s.Corners, Strip{corner + 6*inch, corner + 6*inch}, Strip{corner + 14*inch, corner + 14*inch},
					Strip{corner + 20*inch, corner + 20*inch}, Strip{corner - 7*inch, corner - 7*inch}, Strip{corner - 15*inch, corner - 15*inch})
				if i%2 == 0 {
					at := s.Corners[1].From - 70*inch
					s.Keep = append(s.Keep, Strip{at, at + 40*inch})
				}
			}), Aim(aim))
		})
	}
}

// BenchmarkGrowth has open spans of ten times the length each.
func BenchmarkGrowth(b *testing.B) {
	for aim, name := range aimNames {
		for _, feet := range []int64{10, 100, 1000} {
			b.Run(fmt.Sprintf("%s/%dft", name, feet), func(b *testing.B) {
				var spans []Span
				for i := range 5 {
					s := room(uint64(i), feet*12*inch, false)
					s.OneWall = true
					spans = append(spans, s)
				}
				measure(b, spans, Aim(aim))
			})
		}
	}
}

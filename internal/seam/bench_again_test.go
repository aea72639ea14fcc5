package seam

import (
	"slices"
	"testing"
	"time"
)

// BenchmarkClosedThousand has a thousand closed rooms of about 120 ft on a grid of 1/16 in, and reports the median and the worst.
func BenchmarkClosedThousand(b *testing.B) {
	spans := rooms(1000, nil)
	for aim, name := range aimNames {
		b.Run(name, func(b *testing.B) { measure(b, spans, Aim(aim)) })
	}
}

// bareRun is a closed run without openings that whole sheets miss by 1/16 in; a round one has no corners either.
func bareRun(seed uint64, sheets int64, round bool) Span {
	s := room(seed, 0, true)
	s.Period = s.NetWidth()*sheets + inch/16
	s.R = s.Period
	s.Openings, s.Boxes, s.Main = nil, nil, nil
	s.Seen = func(int64) int64 { return 100 * inch }
	s.Corners = slices.DeleteFunc(s.Corners, func(c Strip) bool { return round || c.To >= s.Period-20*inch })
	if !round {
		s.Corners = append(s.Corners, Strip{s.Period, s.Period})
	}
	return s
}

// BenchmarkBareRun has closed runs without openings whose girth whole sheets miss by 1/16 in.
func BenchmarkBareRun(b *testing.B) {
	for _, c := range []struct {
		name   string
		sheets int64
		round  bool
	}{{"round 20 sheets", 20, true}, {"round 30 sheets", 30, true}, {"corners 20 sheets", 20, false}, {"corners 30 sheets", 30, false}} {
		for aim, name := range aimNames {
			b.Run(c.name+"/"+name, func(b *testing.B) {
				var spans []Span
				for seed := range uint64(8) {
					spans = append(spans, bareRun(seed, c.sheets, c.round))
				}
				measure(b, spans, Aim(aim))
			})
		}
	}
}

// BenchmarkAgain moves a pin of a closed room of 120 ft by half an inch, and reports what the Solver takes to solve it
// again, in times of what Solve takes; and the same where nothing that moves a seam has changed, as where a number is lost.
func BenchmarkAgain(b *testing.B) {
	for aim, name := range aimNames {
		b.Run(name, func(b *testing.B) {
			var first, again, same time.Duration
			for b.Loop() {
				for seed := range uint64(20) {
					span := room(seed, 0, true)
					span.Pins = []Pin{{At: span.Period / 3, Put: PutSeam}}
					v, err := NewSolver(span)
					if err == nil {
						_, err = v.Solve(span.Pins, Aim(aim))
					}
					span.Pins = []Pin{{At: span.Period/3 + inch/2, Put: PutSeam}}
					t0 := time.Now()
					_, _ = Solve(span, Aim(aim))
					t1 := time.Now()
					_, _ = v.Solve(span.Pins, Aim(aim))
					t2 := time.Now()
					_, _ = v.Solve(span.Pins, Aim(aim))
					first, again, same = first+t1.Sub(t0), again+t2.Sub(t1), same+time.Since(t2)
					if err != nil {
						b.Fatal(err)
					}
				}
			}
			b.ReportMetric(float64(again)/float64(first), "of-first")
			b.ReportMetric(float64(same)/float64(first), "unchanged-of-first")
		})
	}
}

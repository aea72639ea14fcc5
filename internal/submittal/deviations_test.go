package submittal

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"

	"flitchlay/internal/effort"
	"flitchlay/internal/elevation"
	"flitchlay/internal/finding"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/room"
	"flitchlay/internal/roomtest"
)

// Every rule and every preference that is broken is a deviation, and so is every jump of the grain that is seen over all the height of
// its wall and every sheet that is narrow where its seam is seen, on random rooms: told by seams and sheets, not by findings.
func TestJumpsAndBrokenPreferencesAreDeviations(t *testing.T) {
	jumps, shoulds := 0, 0
	roomtest.RandomPlans(t, effort.Of(40, 150), func(seed uint64, _ string, p *layout.Plan) {
		s := folio.NewSet(p, roomtest.Template(t, "a3"), nil, "")
		var list []finding.Finding
		for i, d := range elevation.Deviations(s) {
			assert.Equal(t, i+1, d.Number, "seed %d", seed)
			list = append(list, d.Finding)
		}
		for _, f := range p.Findings {
			if f.Level == finding.Must || f.Level == finding.Should {
				shoulds++
				assert.Contains(t, list, f, "seed %d", seed)
			}
		}
		for i := range p.Runs {
			r := &p.Runs[i]
			for _, m := range r.Seams {
				left, w := r.Hanging(m.LeftSheet), &p.Room.Walls[m.Wall]
				whole := !r.Up && m.Seen > 0 && m.Seen >= room.At(w.Ceiling, m.X)-room.At(w.Floor, m.X)-w.Base-w.Crown
				if m.Hung || left.Hung || left.Lost == 0 || !whole && m.Seen <= p.Room.Rules.ShortSeam {
					continue
				}
				jumps++
				assert.True(t, slices.ContainsFunc(list, func(f finding.Finding) bool {
					return f.Wall == m.Wall && f.At == m.X && (f.Code == finding.NarrowSheet || f.Code == finding.JumpSeen)
				}), "seed %d: %s on wall %s, main %v", seed, p.SeamNumbers(r, &m), w.Name, w.Main)
			}
		}
	})
	assert.Greater(t, jumps, 3)
	assert.Greater(t, shoulds, 20)
	t.Logf("%d jumps, %d rules and preferences", jumps, shoulds)
}

package folio_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/roomtest"
	"flitchlay/internal/scene"
)

// The plan in the strip has the letter of every wall, and shows heavy what of a wall its page shows.
func TestKeyOfTheStripHasEveryLetter(t *testing.T) {
	roomtest.OnPapers(t, roomtest.Samples(t), []string{"ansi-b", "a4"}, func(t *testing.T, text, paper string) {
		letters(t, roomtest.Laid(t, "room.toml", text), paper, paper)
	})
	roomtest.RandomPlans(t, effort.Of(15, 150), func(seed uint64, _ string, p *layout.Plan) {
		letters(t, p, "ansi-b", fmt.Sprint("seed ", seed))
	})
}

func letters(t *testing.T, p *layout.Plan, paper, why string) {
	s := folio.NewSet(p, roomtest.Template(t, paper), nil, "Submittal")
	b := s.Open(&folio.Leaf{Number: "Z-201", Wall: 0, Shown: []folio.Stretch{{Wall: 0, To: p.Room.Walls[0].Length / 2}}})
	keys := roomtest.Classed(&b.Page.Group, "key")
	require.Len(t, keys, 1, why)
	var want []string
	for _, mark := range s.Marks {
		want = append(want, mark)
	}
	assert.ElementsMatch(t, want, roomtest.Lettering(keys[0]), why)
	heavy := 0.0
	keys[0].Walk(func(it scene.Item) {
		if l, ok := it.(*scene.Line); ok && l.Width > 1.3*s.Look.Wide {
			heavy += l.B.X - l.A.X
		}
	})
	plan := 0.0
	keys[0].Walk(func(it scene.Item) {
		if l, ok := it.(*scene.Line); ok && plan == 0 {
			plan = l.B.X - l.A.X
		}
	})
	assert.InDelta(t, plan/2, heavy, 0.01, "%s: half of the first wall", why)
}

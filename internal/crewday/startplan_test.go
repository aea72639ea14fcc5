package crewday_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/crewday"
	"flitchlay/internal/draft"
	"flitchlay/internal/effort"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/room"
	"flitchlay/internal/roomtest"
	"flitchlay/internal/scene"
)

// crowdedRooms are rooms whose short walls crowd the letters of the plan.
var crowdedRooms = []uint64{311, 453, 470}

// The plan at the room start has the letter of every wall, and no letter or leader of it touches another or a wall.
func TestStartPlanPartsItsLetters(t *testing.T) {
	seeds := crowdedRooms
	for seed := uint64(1); len(seeds) < effort.Of(3, 300); seed++ {
		seeds = append(seeds, seed)
	}
	leaders := 0
	for _, seed := range seeds {
		r, err := room.Decode("random.toml", []byte(roomtest.CrewRoom(seed)))
		if err != nil {
			continue
		}
		p, err := layout.Lay(r)
		if err != nil {
			continue
		}
		for _, paper := range []string{"ansi-a", "a4"} {
			page := crewday.NewSet(p, roomtest.Template(t, paper), "Install").StartPage(1)[0]
			leaders += partedLetters(t, page, p, fmt.Sprintf("seed %d on %s", seed, paper))
		}
	}
	assert.NotZero(t, leaders, "some letters stand on leaders")
}

// startAtItsArrow finds the word START beside the arrow, or on a leader that comes to it.
func startAtItsArrow(t *testing.T, key *scene.Group, leaders []*scene.Line, why string) {
	t.Helper()
	var arrow, word scene.Box
	key.Walk(func(it scene.Item) {
		switch x := it.(type) {
		case *scene.Poly:
			arrow = scene.Around(x.Points...)
		case *scene.Text:
			if x.String == "START" {
				word = x.Bounds()
			}
		}
	})
	gap := func(a, b scene.Box) float64 {
		return math.Hypot(math.Max(0, math.Max(a.X0-b.X1, b.X0-a.X1)), math.Max(0, math.Max(a.Y0-b.Y1, b.Y0-a.Y1)))
	}
	at := func(p scene.Point) scene.Box { return scene.Box{X0: p.X, Y0: p.Y, X1: p.X, Y1: p.Y} }
	led := slices.ContainsFunc(leaders, func(l *scene.Line) bool { return gap(at(l.A), arrow) < 3 && gap(at(l.B), word) < 1.5 })
	assert.True(t, led || gap(arrow, word) < 8, "%s: START stands %.1f mm from its arrow", why, gap(arrow, word))
}

// partedLetters looks over one plan and counts its leaders.
func partedLetters(t *testing.T, page *scene.Page, p *layout.Plan, why string) int {
	keys := roomtest.Classed(&page.Group, "key")
	require.Len(t, keys, 1, why)
	var leaders, walls []*scene.Line
	var letters []*scene.Text
	said := roomtest.Lettering(keys[0])
	for _, mark := range folio.WallMarks(p) {
		assert.Contains(t, said, mark, why)
	}
	assert.Contains(t, said, "START", why)
	keys[0].Walk(func(it scene.Item) {
		switch x := it.(type) {
		case *scene.Line:
			if x.Layer == scene.Marks {
				leaders = append(leaders, x)
			} else if x.Layer == scene.Walls {
				walls = append(walls, x)
			}
		case *scene.Text:
			if x.Layer == scene.Marks {
				letters = append(letters, x)
			}
		}
	})
	startAtItsArrow(t, keys[0], leaders, why)
	for i, l := range leaders {
		for _, x := range letters {
			assert.False(t, draft.Crosses(l.A, l.B, x.Bounds().Inset(-0.2)), "%s: a leader touches %q", why, x.String)
		}
		for _, o := range append(leaders[i+1:len(leaders):len(leaders)], walls...) {
			assert.False(t, folio.Parted([2]scene.Point{l.A, l.B}, [2]scene.Point{o.A, o.B}), "%s: a leader crosses another or a wall", why)
		}
	}
	return len(leaders)
}

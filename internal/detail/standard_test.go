package detail

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/face"
	"flitchlay/internal/folio"
	"flitchlay/internal/paper"
	"flitchlay/internal/roomtest"
	"flitchlay/internal/scene"
)

// Each word under the double cut stands clear of the others, at the foot of its own line and of no other.
func TestWordsOfTheDoubleCutBelongToTheirLines(t *testing.T) {
	for _, name := range paper.Names() {
		for why, room := range map[string]string{"inches": roomtest.Head("in") + roomtest.Wall("A", `8'`, `9'`), "metric": roomtest.Metric() + roomtest.WallMM("A", 2500, 2700)} {
			_, list := detailsOf(t, room, name)
			var words []*scene.Text
			var lines []scene.Box
			for _, p := range list {
				p.Texts(func(x *scene.Text) {
					switch x.String {
					case "cutting strip", "seam", "plumb line:":
						words = append(words, x)
					}
				})
				p.Walk(func(it scene.Item) {
					if l, ok := it.(*scene.Line); ok && l.A.X == l.B.X {
						lines = append(lines, scene.Around(l.A, l.B))
					}
				})
			}
			require.Len(t, words, 3, why+" on "+name)
			near := map[string]float64{}
			for _, w := range words {
				b := w.Bounds()
				for _, o := range words {
					assert.False(t, o != w && o.Bounds().Inset(-0.8).Meets(b), "%s on %s: %q touches %q", why, name, w.String, o.String)
				}
				best := math.Inf(1)
				for _, l := range lines {
					dx := math.Max(0, math.Max(b.X0-l.X0, l.X0-b.X1))
					dy := math.Max(0, math.Max(b.Y0-l.Y1, l.Y0-b.Y1))
					if d := math.Hypot(dx, dy); d < best {
						best, near[w.String] = d, l.X0
					}
				}
				assert.Less(t, best, 3.0, "%s on %s: %q has no line", why, name, w.String)
			}
			assert.Less(t, near["cutting strip"], near["seam"]-3, "%s on %s", why, name)
			assert.Greater(t, near["plumb line:"], near["seam"]+3, "%s on %s", why, name)
		}
	}
}

// No two terminations of a set have the same drawing: those that are alike have one mark.
func TestTerminationsOfASetDiffer(t *testing.T) {
	kinds := []string{"inside corner", "outside edge", "casing", "frame", "trim", "free"}
	room := roomtest.Head("in")
	for i, kind := range kinds {
		room += roomtest.Wall(fmt.Sprintf("W%d", i), `8'`, `9'`, fmt.Sprintf("left_end = %q\nright_end = %q\n", kind, kinds[(i+1)%len(kinds)]))
	}
	s, list := detailsOf(t, room, "ansi-b")
	require.NotEmpty(t, s.Ends)
	seen := map[string]string{}
	for _, p := range list {
		for _, g := range append(roomtest.Classed(&p.Group, "sketch"), roomtest.Classed(&p.Group, "view")...) {
			mark := roomtest.Fact(g, "termination")
			if mark == "" {
				continue
			}
			is := shapeOf(g)
			assert.Empty(t, seen[is], "%s is drawn as %s", mark, seen[is])
			seen[is] = mark
		}
	}
	assert.Len(t, seen, len(s.Ends), "a drawing for each")
	assert.Equal(t, face.EndKind("casing"), face.EndKind("opening"), "both are drawn tight to a casing")
	// what stands at no end of a room above
	for _, pair := range [][2]string{{"bare", "free"}, {"side", "free"}, {"bare", "side"}} {
		assert.NotEqual(t, alone(s, pair[0]), alone(s, pair[1]))
	}
}

// shapeOf is what a group draws, wherever on the page.
func shapeOf(g *scene.Group) string {
	at := scene.Pt(g.Bounds().X0, g.Bounds().Y0)
	var list []string
	g.Walk(func(it scene.Item) {
		switch x := it.(type) {
		case *scene.Text:
			list = append(list, x.String)
		case *scene.Line:
			list = append(list, fmt.Sprintf("%.1f %.1f %.1f %.1f", x.A.X-at.X, x.A.Y-at.Y, x.B.X-at.X, x.B.Y-at.Y))
		case *scene.Poly:
			for _, p := range x.Points {
				list = append(list, fmt.Sprintf("%.1f %.1f", p.X-at.X, p.Y-at.Y))
			}
		}
	})
	return strings.Join(list, "; ")
}

// alone draws the plan of an end.
func alone(s *folio.Set, kind string) string {
	b := s.Open(s.List[0])
	g := b.Page.Part(scene.Tag{})
	endPlan(b, g, scene.Pt(100, 100), kind)
	return shapeOf(g)
}

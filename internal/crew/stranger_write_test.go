package crew_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/roomtest"
	"flitchlay/internal/scene"
)

// TestThereIsRoomToWriteHowALineHangs looks at the last column of every tape list. It is as wide as a hand needs for a figure with sixteenths, its head says that the
// raw edge is written there, at its two ends; beside every line that is struck it is empty, and parted into two fields that a hand can write in.
func TestThereIsRoomToWriteHowALineHangs(t *testing.T) {
	const wide, high = 11.0, 3.9 // mm on letter paper
	lists, fields := 0, 0
	for file, p := range rooms(t) {
		for _, page := range install(t, p).Pages {
			for _, g := range roomtest.Classed(&page.Group, "tape-list") {
				var upright, level, dashed []*scene.Line
				var frame scene.Box
				visitLines(g, func(l *scene.Line) {
					switch {
					case l.A.X == l.B.X:
						upright = append(upright, l)
					case len(l.Dash.Lengths()) > 0:
						dashed = append(dashed, l)
					default:
						level = append(level, l)
						frame = frame.Union(scene.Box{X0: l.A.X, Y0: l.A.Y, X1: l.B.X, Y1: l.B.Y})
					}
				})
				what := file + ", " + page.Title
				require.NotEmpty(t, upright, what)
				at := slices.MaxFunc(upright, func(a, b *scene.Line) int { return int(a.A.X*100) - int(b.A.X*100) }).A.X
				right := slices.MaxFunc(level, func(a, b *scene.Line) int { return int(a.B.X*100) - int(b.B.X*100) }).B.X
				assert.GreaterOrEqual(t, right-at, wide, what)
				head := ""
				top := slices.MinFunc(level, func(a, b *scene.Line) int { return int(a.A.Y*100) - int(b.A.Y*100) }).A.Y
				g.Texts(func(x *scene.Text) {
					if b := x.Bounds(); b.X0 >= at && b.Y1 <= top {
						head += x.String + " "
					}
				})
				lies := p.Room.Veneer.Horizontal
				assert.Regexp(t, map[bool]string{false: `head.*foot`, true: `left.*right`}[lies], head, what)
				for _, l := range dashed {
					fields++
					above := top
					below := frame.Y1 + 100
					for _, x := range level {
						if x.A.Y < l.A.Y {
							above = max(above, x.A.Y)
						} else {
							below = min(below, x.A.Y)
						}
					}
					assert.InDelta(t, at, l.A.X, 0.01, what)
					assert.GreaterOrEqual(t, l.A.Y-above, high, "%s: over the line at %v", what, l.A.Y)
					if below < frame.Y1+100 { // the last row ends at the frame of the list
						assert.GreaterOrEqual(t, below-l.A.Y, high, "%s: under the line at %v", what, l.A.Y)
					}
					g.Texts(func(x *scene.Text) {
						if b := x.Bounds(); b.X1 > at && b.Y1 > above && b.Y0 < min(below, l.A.Y+high) {
							t.Errorf("%s: %q stands where a hand writes", what, x.String)
						}
					})
				}
				lists++
			}
		}
	}
	assert.Greater(t, lists, 25)
	assert.Greater(t, fields, 100)
}

// visitLines walks all lines under a group.
func visitLines(g *scene.Group, do func(*scene.Line)) {
	for _, it := range g.Items {
		switch x := it.(type) {
		case *scene.Group:
			visitLines(x, do)
		case *scene.Line:
			do(x)
		}
	}
}

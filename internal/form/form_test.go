package form

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/paper"
	"flitchlay/internal/scene"
	"flitchlay/internal/words"
)

func drawn(t *testing.T, name, language string, walls int) *scene.Document {
	p, err := paper.Named(name)
	require.NoError(t, err)
	p.Words, err = words.Named(language)
	require.NoError(t, err)
	d, err := Draw(p, walls)
	require.NoError(t, err)
	return d
}

// texts are the lines of a page.
func texts(p *scene.Page) []string {
	var list []string
	for _, item := range p.Items {
		if g, ok := item.(*scene.Group); ok {
			g.Texts(func(x *scene.Text) { list = append(list, x.String) })
		}
	}
	return list
}

// A page for the room and one for each wall, on which nothing is in the way of anything else, on every paper and in every language.
func TestFormsAreClean(t *testing.T) {
	for _, name := range paper.Names() {
		for _, language := range words.Names() {
			d := drawn(t, name, language, 2)
			require.Len(t, d.Pages, 3)
			for _, p := range d.Pages {
				for _, o := range scene.Overlaps(p, 0.3) {
					assert.Fail(t, "in the way", "%s %s %s: %s", name, language, p.Name, o)
				}
				for _, item := range p.Items {
					if g, ok := item.(*scene.Group); ok {
						g.Texts(func(x *scene.Text) {
							assert.True(t, p.Frame.Contains(x.Bounds()), "%s %s %s: %q is cut off", name, language, p.Name, x.String)
							assert.GreaterOrEqual(t, x.Height, 2.0, x.String)
						})
					}
				}
			}
		}
	}
}

// Every key that a wall cannot do without has its box, and what is read at both ends has two.
func TestAllThatAWallNeedsIsAsked(t *testing.T) {
	d := drawn(t, "ansi-a", "en", 3)
	first, wall := strings.Join(texts(d.Pages[0]), "\n"), texts(d.Pages[2])
	for _, key := range []string{"title", "measured", "units", "gross_width", "overlap", "length", "sheets", "closed", "level_line", "base", "crown", "casing", "temperature", "humidity"} {
		assert.Contains(t, first, key)
	}
	count := map[string]int{} // keys are bold
	for _, item := range d.Pages[2].Items {
		if g, ok := item.(*scene.Group); ok {
			g.Texts(func(x *scene.Text) {
				if x.Bold {
					count[x.String]++
				}
			})
		}
	}
	for key, n := range map[string]int{"name": 2, "ref": 1, "length": 3, "height": 4, "floor": 3, "lean": 2, "corner": 1, "angle": 1, "left_end": 1, "right_end": 1,
		"hidden_below": 1, "base": 1, "crown": 1, "from_left": 1, "sill": 1, "reveal": 1, "clearance": 1, "x": 2, "z": 1, "plate": 1} {
		assert.Equal(t, n, count[key], "%s on %q", key, wall)
	}
	assert.Contains(t, wall, "Wall 2")
	assert.Contains(t, wall, "outside edge")
	assert.Contains(t, wall, "straight")
	for _, line := range append(wall, texts(d.Pages[0])...) {
		assert.NotContains(t, line, "issue", "a blank form has none")
	}
}

// Boxes are large enough to write into: under what they ask stands at least a line of handwriting.
func TestBoxesHaveRoomForHandwriting(t *testing.T) {
	const hand = 5.5 // from line to line
	for _, p := range drawn(t, "ansi-a", "es", 1).Pages {
		var boxes []scene.Box
		for _, item := range p.Items {
			g, ok := item.(*scene.Group)
			if !ok || g.Tag.Class != "form" {
				continue
			}
			for _, x := range g.Items {
				if r, ok := x.(*scene.Rect); ok && r.Width == fine {
					boxes = append(boxes, r.Box)
				}
			}
			for _, b := range boxes {
				foot, options := b.Y0, false
				g.Texts(func(x *scene.Text) {
					if b.Contains(x.Bounds()) {
						foot = max(foot, x.Bounds().Y1)
						options = options || x.String == "trim" || x.String == "straight"
					}
				})
				assert.True(t, options || b.Y1-foot >= hand, "%s: %s", p.Name, fmt.Sprint(b, foot))
			}
		}
		assert.NotEmpty(t, boxes)
	}
}

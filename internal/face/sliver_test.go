package face_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/face"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/roomtest"
)

// leaning is two walls of 70 and 60 in with a straight joint that leans by so much in 96, and a seam so far right of it, or 1 1/2 in
// left.
func leaning(lean, seam string) string {
	wall, pin := "B", seam
	if seam[0] == '-' {
		wall, pin = "A", "68 1/2"
	}
	text := roomtest.Head("in")
	for _, w := range []struct{ name, long, rest string }{{"A", "70", "corner = \"straight\"\nlean = [0, \"" + lean + "\"]\n"}, {"B", "60", ""}} {
		text += fmt.Sprintf("[[wall]]\nname = %q\nlength = %q\nheight = \"96\"\n%s", w.name, w.long, w.rest)
		if w.name == wall {
			text += "[[wall.pin]]\nat = \"" + pin + "\"\n"
		}
	}
	return text
}

// TestSliversPastALeaningJointAreOnTheirWall holds a seam 1 1/2 in past a joint that leans by 3: from half its height it stands on the
// other wall, with a sliver of 1 1/2 in at the head.
func TestSliversPastALeaningJointAreOnTheirWall(t *testing.T) {
	for _, c := range []struct {
		why, lean, seam string
		wall            int
		x, far          length.Length
		right           bool
	}{
		{"to the right", "3", "1 1/2", 0, 71*in + in/2, 73 * in, true},
		{"to the left", "-3", "-1 1/2", 1, -in - in/2, -3 * in, false},
	} {
		p := roomtest.Laid(t, "room.toml", leaning(c.lean, c.seam))
		for i := range p.Room.Walls {
			f := face.On(p, i)
			if i != c.wall {
				assert.Empty(t, f.Slivers, c.why)
				continue
			}
			require.Len(t, f.Slivers, 1, c.why)
			s := f.Slivers[0]
			assert.Equal(t, [2]length.Length{c.x, c.far}, [2]length.Length{s.X, s.Far}, c.why)
			assert.Equal(t, c.right, s.Right, c.why)
			require.NotNil(t, s.Seam)
			assert.Equal(t, c.x, s.Seam.At-f.St.Shift, "%s: the seam of the run, in the wall's own terms", c.why)
			assert.Equal(t, [][2]length.Length{{48 * in, 96 * in}}, f.Heights(&s), "%s: from half the height", c.why)
		}
	}
}

// TestEverySheetOfAWallIsOnItsFace counts, for all samples and odd rooms, the sheets with a piece on a wall: each is a part of its face
// or a sliver.
func TestEverySheetOfAWallIsOnItsFace(t *testing.T) {
	each := func(why string, p *layout.Plan, f *face.Face) {
		shown := map[int]bool{}
		for _, q := range f.Parts {
			shown[q.Place] = true
		}
		for _, s := range f.Slivers {
			assert.False(t, shown[s.Place], "%s: place %d is there twice", why, s.Place)
			shown[s.Place] = true
		}
		for i := range p.Runs {
			for _, s := range p.Runs[i].Sheets {
				for _, q := range s.Pieces {
					if q.Wall == f.Wall {
						assert.True(t, shown[s.Place], "%s: place %d", why, s.Place)
					}
				}
			}
		}
	}
	faces(t, each)
	for _, lean := range []string{"3", "1/2", "-1/2", "-3"} {
		for _, seam := range []string{"1/4", "1 1/2", "-1 1/2"} {
			p := roomtest.Laid(t, "room.toml", leaning(lean, seam))
			for _, f := range face.All(p) {
				each("lean "+lean+", seam "+seam, p, f)
			}
		}
	}
}

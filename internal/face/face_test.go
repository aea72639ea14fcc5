package face_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/face"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/roomtest"
)

const in = length.Inch

// faces are all covered walls of all samples, starters and odd rooms.
func faces(t *testing.T, do func(why string, p *layout.Plan, f *face.Face)) {
	rooms := roomtest.Samples(t)
	for why, text := range roomtest.OddRooms {
		rooms[why] = text
	}
	n := 0
	for why, text := range rooms {
		p := roomtest.Laid(t, "room.toml", text)
		for _, f := range face.All(p) {
			do(why+", "+f.W.Name, p, f)
			n++
		}
	}
	require.Greater(t, n, 60, "walls to look at")
}

// laid is the first wall of a room whose walls are given.
func laid(t *testing.T, walls ...string) *face.Face {
	return face.On(roomtest.Laid(t, "room.toml", roomtest.Head("in")+strings.Join(walls, "")), 0)
}

func TestHangsFollowOneAnotherAlongTheWall(t *testing.T) {
	faces(t, func(why string, p *layout.Plan, f *face.Face) {
		for i, h := range f.Hangs {
			assert.NotEmpty(t, h.Sheets, why)
			if i > 0 {
				assert.LessOrEqual(t, f.Hangs[i-1].Place, h.Place, "%s: in hanging order", why)
			}
			for _, s := range h.Sheets {
				assert.Equal(t, h.Place, s.Place, why)
				assert.True(t, h.Holds(s), why)
			}
			if f.Run.Up {
				assert.Equal(t, [2]length.Length{0, f.W.Length}, [2]length.Length{h.From, h.To}, "%s: a band goes from end to end", why)
				continue
			}
			assert.True(t, f.Left <= h.From && h.From < h.To && h.To <= f.Right, "%s: place %d covers %s to %s", why, h.Place, h.From.Decimal(), h.To.Decimal())
			assert.False(t, h.After && h.Seam != nil, "%s: the seam of a sheet that goes on stands on the next wall", why)
			if h.Seam != nil {
				assert.Equal(t, h.X+p.Room.Veneer.Overlap.HalfDown(), h.Line, "%s: the line is half an overlap right of the seam", why)
			}
		}
	})
}

func TestPartsAreTheHangsLessWhatOpeningsTakeWhole(t *testing.T) {
	faces(t, func(why string, _ *layout.Plan, f *face.Face) {
		parts := map[*layout.Sheet]bool{}
		for i, q := range f.Parts {
			for _, s := range q.Sheets {
				parts[s] = true
			}
			if i > 0 && !f.Run.Up {
				assert.Less(t, f.Parts[i-1].From, q.From, "%s: from left to right", why)
			}
		}
		for _, h := range f.Hangs {
			for _, s := range h.Sheets {
				_, _, _, _, ok := f.Extent(s)
				assert.Equal(t, ok, parts[s], "%s: place %d course %d is drawn where it has a piece", why, s.Place, s.Course)
			}
		}
	})
}

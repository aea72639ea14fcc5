package face_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/face"
	"flitchlay/internal/layout"
	"flitchlay/internal/room"
	"flitchlay/internal/roomtest"
)

func TestSplitMeetsThroughTheMiddleOfASheet(t *testing.T) {
	faces(t, func(why string, _ *layout.Plan, f *face.Face) {
		for _, most := range []int{3, 5, 12, 1000} {
			pieces := f.Split(most)
			require.NotEmpty(t, pieces, why)
			assert.Equal(t, f.Left, pieces[0].From, why)
			assert.Equal(t, f.Right, pieces[len(pieces)-1].To, why)
			for i, p := range pieces {
				assert.Equal(t, []any{i, len(pieces)}, []any{p.Index, p.Of}, why)
				assert.True(t, len(p.Hangs) <= most || f.Run.Up, "%s: %d sheets on a piece of %d", why, len(p.Hangs), most)
				if i > 0 {
					before := pieces[i-1]
					require.True(t, before.RightCut() && p.LeftCut(), why)
					assert.Equal(t, before.To, p.From, "%s: pieces meet", why)
					assert.Equal(t, p.Hangs[0].Middle(), p.From, "%s: through the middle of a sheet", why)
					assert.Same(t, before.Hangs[len(before.Hangs)-1], p.Hangs[0], "%s: that stands on both", why)
				}
			}
			if len(f.Hangs) <= most {
				assert.Len(t, pieces, 1, why)
			}
		}
	})
}

func TestSplitPrefersAnOpening(t *testing.T) {
	f := laid(t, roomtest.Wall("Corridor", `60'`, `9'`, roomtest.Door(`20'`, `5'`)))
	pieces := f.Split(20)
	require.Len(t, pieces, 2)
	assert.True(t, f.Open(pieces[1].From) || pieces[1].From > 28*12*in, "over the door where it is near enough")
	assert.False(t, f.Open(20*12*in), "its jamb is no part of what is open")
	assert.True(t, f.Open(21*12*in))
}

func TestExtremesOfAPieceAreItsOwn(t *testing.T) {
	text := strings.Replace(roomtest.Wall("Gable", `40'`, `9'`), `height = "9'"`, `height = [["0", "8'"], ["40'", "12'"]]`, 1)
	f := laid(t, text)
	pieces := f.Split(12)
	require.Greater(t, len(pieces), 1)
	low, high := pieces[0].Extremes()
	assert.Zero(t, low)
	assert.Equal(t, room.At(f.W.Ceiling, pieces[0].To), high, "the ceiling rises to the match line")
	_, high = pieces[len(pieces)-1].Extremes()
	assert.Equal(t, f.High, high)
	assert.Len(t, pieces[0].MatchLines(), 1)
	for _, p := range pieces {
		for _, q := range p.Part(f.Covering()) {
			for _, o := range q.Outline {
				assert.True(t, p.From <= o.X && o.X <= p.To, "what is cut out stays between the match lines")
			}
		}
	}
}

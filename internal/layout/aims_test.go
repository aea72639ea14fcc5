package layout

import (
	"cmp"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/room"
	"flitchlay/internal/seam"
)

// order lists a span's score as an aim puts it, least first.
func order(v seam.Score, aim seam.Aim) []uint64 {
	n := func(list ...int64) (out []uint64) {
		for _, x := range list {
			out = append(out, uint64(x))
		}
		return out
	}
	switch aim {
	case seam.Steady:
		return n(v.Bends, v.Edges, v.Closing, v.NarrowMain, v.Narrow, v.Sheets, v.NarrowJump, v.Sliver, v.Jump, v.Should, v.Seen, v.Difference)
	case seam.Fewest:
		return n(v.Bends, v.Edges, v.Closing, v.Sheets, v.NarrowMain, v.Narrow, v.NarrowJump, v.Sliver, v.Jump, v.Should, v.Seen, v.Difference)
	}
	out := n(v.Bends, v.Edges, v.Closing, v.Sheets, v.Should)
	return append(out, v.Unevenness.Hi, v.Unevenness.Lo, uint64(v.Seen))
}

// bestByItsOwn holds the three aims of a room against each other: by its own order none is beaten by another's layout.
func bestByItsOwn(t *testing.T, r *room.Room) bool {
	t.Helper()
	all := []seam.Aim{seam.Steady, seam.Fewest, seam.Even}
	plans := map[seam.Aim]*Plan{}
	for _, aim := range all {
		p, err := LayAim(r, aim)
		if err != nil {
			return false // a span shorter than a snap
		}
		plans[aim] = p
	}
	// a pin that one aim drops and another keeps makes them layouts of two rooms; a room here has none that is dropped
	for _, aim := range all {
		for _, other := range all {
			for i := range plans[aim].Runs {
				for k, span := range plans[aim].Runs[i].Spans {
					mine, theirs := order(span.Score, aim), order(plans[other].Runs[i].Spans[k].Score, aim)
					assert.LessOrEqual(t, slices.CompareFunc(mine, theirs, cmp.Compare), 0, "run %d, span %d: %s is beaten by %s: %v, %v", i+1, k+1,
						AimWord(aim), AimWord(other), mine, theirs)
				}
			}
		}
	}
	return true
}

func TestNoAimIsBeatenByAnotherInItsOwnOrder(t *testing.T) {
	t.Parallel()
	files, err := filepath.Glob("testdata/jobs/*.toml")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, file := range files {
		text, err := os.ReadFile(file)
		require.NoError(t, err)
		r, err := room.Decode(file, text)
		require.NoError(t, err)
		require.True(t, bestByItsOwn(t, r), file)
	}
	someRooms(t, 60, 20, same, func(t *testing.T, r *room.Room, _ string) bool { return bestByItsOwn(t, r) })
}

// What the aims are for, on the boardroom: steady takes one narrow sheet and no sheet more than fewest; even has no rule against
// narrow sheets and makes them alike.
func TestAimsOfTheBoardroom(t *testing.T) {
	text, err := os.ReadFile("testdata/jobs/boardroom.toml")
	require.NoError(t, err)
	r, err := room.Decode("boardroom.toml", text)
	require.NoError(t, err)
	c, err := Compare(r)
	require.NoError(t, err)
	require.Len(t, c.Aims, 3)
	steady, fewest, even := c.Aims[0], c.Aims[1], c.Aims[2]
	assert.Len(t, steady.Narrow, 1)
	assert.Equal(t, 7*in/2, steady.Lost)
	assert.Equal(t, "window W4", steady.Narrow[0].Over)
	assert.Equal(t, "steady", fewest.Same, "13 sheets are the fewest, and that is what steady takes")
	assert.Equal(t, 13, even.Plan.Totals.Sheets)
	assert.Empty(t, even.Same)
	widest, least := L(0), far
	for _, s := range even.Plan.Runs[0].Sheets {
		widest, least = max(widest, s.Width), min(least, s.Width)
	}
	// 301 / 13 = 23.15: spread out only as far as the legs beside the windows leave it
	assert.Less(t, widest-least, 7*in/2, "the narrowest of even is wider than the one narrow sheet of steady")
}

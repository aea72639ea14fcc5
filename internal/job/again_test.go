package job

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/layout"
	"flitchlay/internal/room"
)

// A room whose file says something else has the sheets that it had, and where it takes one more those of the rooms after it; what is
// kept back stays so.
func TestAgain(t *testing.T) {
	const dir = "../../samples/job"
	text, err := os.ReadFile(filepath.Join(dir, "ferry-terminal.toml"))
	require.NoError(t, err)
	j, err := Read("ferry-terminal.toml", text, func(file string) (string, []byte, error) {
		text, err := os.ReadFile(filepath.Join(dir, file))
		return file, text, err
	})
	require.NoError(t, err)
	j.Run(1)
	laid := func(i int, more bool) *layout.Plan {
		text, err := os.ReadFile(filepath.Join(dir, j.Rooms[i].File))
		require.NoError(t, err)
		again, err := j.Again(i, text, more)
		require.NoError(t, err)
		r, err := room.DecodeText(again)
		require.NoError(t, err)
		p, err := layout.LayOwn(r)
		require.NoError(t, err)
		return p
	}
	grown := 0
	for i := range j.Rooms {
		whole, plain, more := j.Lay(i, nil), laid(i, false), laid(i, true)
		require.NoError(t, whole.Err)
		assert.Equal(t, LaidRows(whole.Plan), LaidRows(plain), j.Rooms[i].Name())
		assert.Equal(t, whole.Plan.Room.Flitches, plain.Room.Flitches)
		assert.Equal(t, LaidRows(whole.Plan), LaidRows(more), "it takes what it took while that is enough")
		for k, f := range more.Room.Flitches {
			grown += len(f.Sheets) - len(plain.Room.Flitches[k].Sheets)
			assert.Subset(t, f.Sheets, plain.Room.Flitches[k].Sheets)
		}
	}
	assert.Positive(t, grown)
	_, err = j.Again(0, []byte("[[wall"), false)
	assert.Error(t, err)
}

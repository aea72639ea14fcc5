package room

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestStartersDecode(t *testing.T) {
	decode(t, "../../templates/rooms", 4)
}

func TestSamplesDecode(t *testing.T) {
	decode(t, "../../samples", 6)
}

// decode reads all rooms of a folder, of which there are so many at least.
func decode(t *testing.T, folder string, least int) {
	files, err := filepath.Glob(folder + "/*.toml")
	require.NoError(t, err)
	require.GreaterOrEqual(t, len(files), least)
	for _, name := range files {
		t.Run(filepath.Base(name), func(t *testing.T) {
			text, err := os.ReadFile(name)
			require.NoError(t, err)
			decodes(t, filepath.Base(name), text)
		})
	}
}

// decodes reads a file that has no mistake and says at its top what it shows.
func decodes(t *testing.T, name string, text []byte) {
	r, err := Decode(name, text)
	require.NoError(t, err)
	assert.NotEmpty(t, r.Walls)
	assert.Equal(t, "# ", string(text[:2]), "a comment at the top says what the room shows")
}

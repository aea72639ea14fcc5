package room

import (
	"io/fs"
	"os"
	"path/filepath"
	"testing"

	"flitchlay/templates"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestStartersDecode(t *testing.T) {
	files, err := fs.Glob(templates.Files, "rooms/*.toml")
	require.NoError(t, err)
	require.Equal(t, []string{"rooms/corridor.toml", "rooms/feature-wall.toml", "rooms/four-wall.toml", "rooms/lift-lobby.toml"}, files)
	for _, name := range files {
		t.Run(name, func(t *testing.T) {
			text, err := templates.Files.ReadFile(name)
			require.NoError(t, err)
			decodes(t, name, text)
		})
	}
}

func TestSamplesDecode(t *testing.T) {
	files, err := filepath.Glob("../../samples/*.toml")
	require.NoError(t, err)
	require.GreaterOrEqual(t, len(files), 6)
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

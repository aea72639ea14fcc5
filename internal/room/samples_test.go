package room

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestStartersDecode(t *testing.T) {
	for _, name := range []string{"corridor", "feature-wall", "four-wall", "lift-lobby"} {
		t.Run(name, func(t *testing.T) {
			text, err := os.ReadFile("../../templates/rooms/" + name + ".toml")
			require.NoError(t, err)
			decodes(t, name+".toml", text)
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

package templates

import (
	"io/fs"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What is embedded is what stands in the folders.
func TestFilesAreEmbedded(t *testing.T) {
	for _, c := range []struct {
		folder string
		some   string
	}{{"rooms", "four-wall.toml"}, {"pages", "ansi-b.toml"}, {"words", "es.toml"}} {
		onDisk, err := filepath.Glob(c.folder + "/*.toml")
		require.NoError(t, err)
		embedded, err := fs.Glob(Files, c.folder+"/*.toml")
		require.NoError(t, err)
		assert.Equal(t, onDisk, embedded)
		assert.Contains(t, embedded, c.folder+"/"+c.some)
		for _, name := range embedded {
			want, err := os.ReadFile(name)
			require.NoError(t, err)
			got, err := Files.ReadFile(name)
			require.NoError(t, err)
			assert.Equal(t, want, got, name)
		}
	}
}

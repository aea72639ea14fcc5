package room

import (
	"os"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Files with one mistake each, with the whole of what a person sees. Each was read with one question: would a foreman know what to
// type? To write what is said anew, set FLITCHLAY_UPDATE=1, and read every change with that question.
func TestOneMistake(t *testing.T) {
	const path = "testdata/one-mistake.txtar"
	archive, err := txtar.ParseFile(path)
	require.NoError(t, err)
	require.GreaterOrEqual(t, len(archive.Files), 150)
	schema := compiled(t)
	marked := 0
	for i := range archive.Files {
		f := &archive.Files[i]
		edit, want, found := strings.Cut(string(f.Data), "\n==\n")
		require.True(t, found, f.Name)
		old, text, found := strings.Cut(edit, "\n=>\n")
		require.True(t, found, f.Name)
		file := quiet + text + "\n"
		if old != "+" {
			require.Contains(t, quiet, old, f.Name)
			file = strings.Replace(quiet, old, text, 1)
		}
		got := ""
		if _, err := Decode("room.toml", []byte(file)); assert.Error(t, err, f.Name) {
			got = err.Error() + "\n"
		}
		// what an editor marks is a mistake; it need not mark all
		if v, ok := plainJSON(t, file); ok && schema.Validate(v) != nil {
			marked++
		}
		if os.Getenv("FLITCHLAY_UPDATE") != "" {
			f.Data = []byte(edit + "\n==\n" + got)
			continue
		}
		assert.Equal(t, want, got, f.Name)
		assert.Contains(t, got, "  mend: ", f.Name)
	}
	assert.Greater(t, marked, 50, "the schema sees many of them in the editor")
	if os.Getenv("FLITCHLAY_UPDATE") != "" {
		require.NoError(t, os.WriteFile(path, txtar.Format(archive), 0o644))
	}
}

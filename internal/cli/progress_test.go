package cli

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// In a pipe and in a file nothing is shown; where a person looks on the bar says of how many rooms, and goes away in the end.
func TestProgressIsForATerminal(t *testing.T) {
	f, err := os.Create(filepath.Join(t.TempDir(), "messages"))
	require.NoError(t, err)
	defer f.Close()
	for _, to := range []*sink{{to: f}, {to: &bytes.Buffer{}}} {
		c := &call{messages: to}
		b := c.progress(400)
		b.step()
		b.pause()
		b.done()
		assert.Nil(t, b.shown)
	}
	size, err := f.Seek(0, 2)
	require.NoError(t, err)
	assert.Zero(t, size)

	var seen bytes.Buffer
	b := bar{progressBar(&seen, 2)}
	b.step()
	assert.Contains(t, seen.String(), "drawing rooms")
	assert.Contains(t, seen.String(), "1/2")
	b.step()
	b.done()
	last := seen.String()[bytes.LastIndexByte(seen.Bytes(), '\r')+1:]
	assert.Empty(t, last, "the line is free again")
}

package main

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/cli"
)

// KEYS.md is what the program prints. To write it anew, set FLITCHLAY_UPDATE=1.
func TestKeysAreDocumented(t *testing.T) {
	var out, messages bytes.Buffer
	require.Zero(t, cli.Run([]string{"keys", "--markdown"}, nil, &out, &messages), messages.String())
	path := filepath.Join(top, "KEYS.md")
	if os.Getenv("FLITCHLAY_UPDATE") != "" {
		require.NoError(t, os.WriteFile(path, out.Bytes(), 0o644))
	}
	want, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, string(want), out.String())
}

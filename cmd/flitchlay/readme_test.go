package main

import (
	"bytes"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/cli"
	"flitchlay/internal/effort"
)

// block is what stands in the README between a fence of that kind and the next one.
func block(t *testing.T, text, kind string) string {
	_, rest, ok := strings.Cut(text, "```"+kind+"\n")
	require.True(t, ok, "a block of %s", kind)
	inside, _, ok := strings.Cut(rest, "```")
	require.True(t, ok)
	return inside
}

// The room of the README is a room, and the program says of it what the README says.
func TestReadme(t *testing.T) {
	path := filepath.Join(top, "README.md")
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	text := string(data)
	var out, messages bytes.Buffer
	status := cli.Run([]string{"check", "-"}, strings.NewReader(block(t, text, "toml")), &out, &messages)
	assert.Zero(t, status, messages.String())
	said := block(t, text, "text")
	if effort.Updating() {
		require.NoError(t, os.WriteFile(path, []byte(strings.Replace(text, said, out.String(), 1)), 0o644))
		return
	}
	assert.Equal(t, out.String(), said)
}

// commands are the names of all commands but help, which needs no words.
func commands(t *testing.T) (names []string) {
	var out, messages bytes.Buffer
	require.Zero(t, cli.Run([]string{"--help"}, nil, &out, &messages))
	_, list, ok := strings.Cut(out.String(), "Available Commands:\n")
	require.True(t, ok)
	list, _, _ = strings.Cut(list, "\n\n")
	lines := strings.Split(list, "\n")
	require.Greater(t, len(lines), 4)
	for _, line := range lines {
		name := strings.Fields(line)[0]
		if name != "help" {
			names = append(names, name)
		}
	}
	return names
}

// The README names every command.
func TestReadmeNamesEveryCommand(t *testing.T) {
	data, err := os.ReadFile(filepath.Join(top, "README.md"))
	require.NoError(t, err)
	for _, name := range commands(t) {
		assert.True(t, strings.Contains(string(data), "| `flitchlay "+name+"` |"), "a row of the README for %s", name)
	}
}

// Every command shows an example of itself, and a script runs it.
func TestHelpShowsAnExampleOfEveryCommand(t *testing.T) {
	scripts, err := filepath.Glob("testdata/script/*.txtar")
	require.NoError(t, err)
	require.NotEmpty(t, scripts)
	var ran strings.Builder
	for _, s := range scripts {
		text, err := os.ReadFile(s)
		require.NoError(t, err)
		ran.Write(text)
	}
	for _, name := range commands(t) {
		assert.True(t, regexp.MustCompile(`(?m)^status \d flitchlay `+name+`\b`).MatchString(ran.String()), "a script in testdata/script runs %s", name)
		if name == "completion" {
			continue // the library's own
		}
		var out, messages bytes.Buffer
		require.Zero(t, cli.Run([]string{name, "--help"}, nil, &out, &messages))
		assert.Contains(t, out.String(), "Examples:\n  flitchlay "+name+" ", "the Example of %s", name)
	}
}

// Every starter room says what it is, meets its musts, and draws.
func TestEveryStarterComesOutWhole(t *testing.T) {
	files, err := filepath.Glob(filepath.Join(top, "templates", "rooms", "*.toml"))
	require.NoError(t, err)
	require.NotEmpty(t, files)
	var list, messages bytes.Buffer
	require.Zero(t, cli.Run([]string{"new", "--list"}, nil, &list, &messages))
	for _, f := range files {
		assert.Regexp(t, `(?m)^  `+strings.TrimSuffix(filepath.Base(f), ".toml")+` +[A-Z]`, list.String(), "the comment at its top is its line in the list")
		var messages bytes.Buffer
		status := cli.Run([]string{"draw", "-o", t.TempDir(), f}, nil, &messages, &messages)
		assert.Zero(t, status, "%s: %s", f, messages.String())
	}
}

// pictures are pages of samples that the README shows.
var pictures = map[string][2]string{
	"elevation.svg": {"reading-room.toml", "svg/Z-202.svg"},
}

// The pictures of the README are what the program draws.
func TestPictures(t *testing.T) {
	for name, of := range pictures {
		dir := drawn(t, filepath.Join(top, "samples", of[0]))
		want, err := os.ReadFile(filepath.Join(dir, of[1]))
		require.NoError(t, err)
		path := filepath.Join(top, "samples", "pictures", name)
		if effort.Updating() {
			require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o755))
			require.NoError(t, os.WriteFile(path, want, 0o644))
			continue
		}
		got, err := os.ReadFile(path)
		require.NoError(t, err)
		assert.True(t, bytes.Equal(want, got), "%s is page %s of %s as drawn; make update draws it anew", path, of[1], of[0])
	}
}

package cli

import (
	"bufio"
	"bytes"
	"fmt"
	"io"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/view"
)

// viewOf is what view reads of a path.
func viewOf(path string) view.Source {
	c := &call{out: &sink{to: io.Discard}, messages: &sink{to: io.Discard}}
	return c.viewed(path)
}

// All that a room's drawings depend on is followed: page template, logo, photographs, table of words; for a room of a job its own file
// and the job's.
func TestViewFollowsAllFiles(t *testing.T) {
	dir := t.TempDir()
	text, err := os.ReadFile("../../samples/metric-headwall.toml")
	require.NoError(t, err)
	room := strings.Replace(string(text), "[veneer]", "[veneer]\nface = \"photos/p-%d.jpg\"", 1)
	page, rest, found := strings.Cut(room, "[page]\n")
	if found {
		_, rest, _ = strings.Cut(rest, "\n\n")
	}
	room = page + "\n" + rest + "\n[page]\nsubmittal = \"own.toml\"\nlogo = \"mark.png\"\nlanguage = \"words.toml\"\n"
	path := filepath.Join(dir, "room.toml")
	require.NoError(t, os.WriteFile(path, []byte(room), 0o666))
	source := viewOf(path)
	h := source.Read(false)
	require.Len(t, h.Rooms, 1)
	require.NotNil(t, h.Rooms[0].Plan, "%v", h.Rooms[0].Err)
	assert.ErrorContains(t, h.Rooms[0].Err, "own.toml cannot be read", "what is beside is wrong; the layout is there")
	for _, name := range []string{"room.toml", "own.toml", "mark.png", "words.toml", "photos/p-1.jpg"} {
		assert.Contains(t, h.Files, filepath.Join(dir, name))
	}
	before := h.Sum
	require.NoError(t, os.WriteFile(filepath.Join(dir, "mark.png"), []byte("x"), 0o666))
	assert.NotEqual(t, before, source.Read(false).Sum, "a file that comes is a change")
}

// The rooms of a job have the sheets that the job gives them, in what is tried too.
func TestViewOfAJobKeepsItsNumbers(t *testing.T) {
	const job = "../../samples/job/ferry-terminal.toml"
	h := viewOf(job).Read(false)
	require.NoError(t, h.Err)
	require.Greater(t, len(h.Rooms), 2)
	assert.Contains(t, h.Files, job)
	for _, r := range h.Rooms {
		require.NoError(t, r.Err, r.Name)
		assert.Contains(t, h.Files, r.File)
		again, err := r.Again(r.Text, false)
		require.NoError(t, err)
		assert.Equal(t, r.Plan.Room.Flitches, again.Flitches, r.Name)
	}
}

// A file is exchanged whole, through a link too, and only where it is still what it was; its rights stay.
func TestExchange(t *testing.T) {
	dir := t.TempDir()
	path, link := filepath.Join(dir, "a.toml"), filepath.Join(dir, "l.toml")
	require.NoError(t, os.WriteFile(path, []byte("one"), 0o640))
	require.NoError(t, os.Symlink(path, link))
	require.NoError(t, exchange(link, []byte("one"), []byte("two")))
	info, err := os.Lstat(link)
	require.NoError(t, err)
	assert.NotZero(t, info.Mode()&os.ModeSymlink, "a link stays a link")
	info, err = os.Stat(path)
	require.NoError(t, err)
	assert.Equal(t, os.FileMode(0o640), info.Mode().Perm())
	assert.ErrorIs(t, exchange(path, []byte("one"), []byte("three")), view.ErrChanged)
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, "two", string(text))
	list, err := os.ReadDir(dir)
	require.NoError(t, err)
	assert.Len(t, list, 2, "nothing is left beside")
}

// The sets are drawn as draw draws them.
func TestViewDrawsAsDraw(t *testing.T) {
	path := copied(t, "metric-headwall.toml")
	to := t.TempDir()
	require.Equal(t, fine, Run([]string{"draw", path, "-o", to, "--set", "pole"}, strings.NewReader(""), io.Discard, io.Discard))
	want, err := os.ReadFile(filepath.Join(to, "pole.pdf"))
	require.NoError(t, err)
	source := viewOf(path)
	r := source.Read(true).Rooms[0]
	drawn, err := source.Draw(r, r.Plan, "pole")
	require.NoError(t, err)
	assert.Equal(t, want, drawn.PDF)
}

// It prints the address, serves until the terminal ends it, and then ends as what has done its work.
func TestViewEndsWithTheTerminal(t *testing.T) {
	r, w := io.Pipe()
	done := make(chan int, 1)
	go func() {
		done <- Run([]string{"view", copied(t, "metric-headwall.toml"), "--no-open"}, strings.NewReader(""), w, io.Discard)
	}()
	address, err := bufio.NewReader(r).ReadString('\n')
	require.NoError(t, err)
	assert.Regexp(t, `^http://127\.0\.0\.1:[0-9]+/[A-Za-z0-9_-]{24}/\n$`, address)
	answer, err := http.Get(strings.TrimSpace(address) + "state")
	require.NoError(t, err)
	assert.Equal(t, http.StatusOK, answer.StatusCode)
	require.NoError(t, answer.Body.Close())
	require.NoError(t, syscall.Kill(os.Getpid(), syscall.SIGHUP))
	assert.Equal(t, fine, <-done)
	_, err = http.Get(strings.TrimSpace(address) + "state")
	assert.Error(t, err, "nobody listens any more")
}

// A port that somebody has is said.
func TestViewSaysThatAPortIsTaken(t *testing.T) {
	l, err := net.Listen("tcp", "127.0.0.1:0")
	require.NoError(t, err)
	defer l.Close()
	var out bytes.Buffer
	port := fmt.Sprint(l.Addr().(*net.TCPAddr).Port)
	assert.Equal(t, unusable, Run([]string{"view", copied(t, "metric-headwall.toml"), "--no-open", "--port", port}, strings.NewReader(""), &out, &out))
	assert.Contains(t, out.String(), "port "+port+" cannot be used")
}

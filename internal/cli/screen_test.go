package cli

import (
	"bytes"
	"encoding/json"
	"io"
	"regexp"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/creack/pty"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// onTerminal runs a command line on a terminal of so many columns and gives what came up there.
func onTerminal(t *testing.T, columns int, args ...string) string {
	t.Helper()
	main, end, err := pty.Open()
	if err != nil {
		t.Skipf("no terminal can be opened here: %v", err)
	}
	require.NoError(t, pty.Setsize(end, &pty.Winsize{Rows: 50, Cols: uint16(columns)}))
	read := make(chan string)
	go func() {
		var out bytes.Buffer
		io.Copy(&out, main) // ends with an error, once the other end is closed
		read <- strings.ReplaceAll(out.String(), "\r\n", "\n")
	}()
	Run(args, nil, end, io.Discard)
	end.Close()
	defer main.Close()
	return <-read
}

// piped runs a command line whose output goes into a pipe.
func piped(args ...string) string {
	var out bytes.Buffer
	Run(args, nil, &out, io.Discard)
	return out.String()
}

const (
	attic  = "../../samples/attic-studio.toml"
	cannot = "../../samples/cannot-meet.toml"
)

// escapes are the sequences that colour text.
var escapes = regexp.MustCompile("\x1b\\[[0-9;]*m")

func together(s string) string {
	return strings.Join(strings.Fields(escapes.ReplaceAllString(s, "")), " ")
}

// What people read fits the terminal that it comes up on.
func TestTextFitsTheTerminal(t *testing.T) {
	t.Setenv("NO_COLOR", "")
	t.Setenv("TERM", "xterm")
	for _, c := range [][]string{{"check", attic}, {"check", cannot}, {"compare", attic}, {"count", "--quick", attic}, {"keys"}, {"climate", "--list"},
		{"climate", "../../samples/reading-room.toml"}, {"diff", attic, cannot}, {"--help"}, {"check", "--help"}} {
		for _, columns := range []int{80, 132} {
			out := onTerminal(t, columns, c...)
			require.NotEmpty(t, out)
			for line := range strings.Lines(escapes.ReplaceAllString(out, "")) {
				if line = strings.TrimSuffix(line, "\n"); strings.HasPrefix(line, "note = ") {
					continue // of a room file, to be copied as it is
				}
				assert.LessOrEqual(t, utf8.RuneCountInString(line), columns, "%v: %s", c, line)
			}
			if c[0] == "keys" || strings.HasSuffix(c[len(c)-1], "help") { // nothing side by side
				assert.Equal(t, together(piped(c...)), together(out), c)
			}
		}
	}
}

// Broken or not, every message of check comes up whole, in the colour of its level; and in no colour where none is wanted.
func TestFindingsOnATerminal(t *testing.T) {
	t.Setenv("NO_COLOR", "")
	t.Setenv("TERM", "xterm")
	var said struct {
		Findings []struct{ Level, Code, Message string }
	}
	require.NoError(t, json.Unmarshal([]byte(piped("check", "--json", cannot)), &said))
	require.NotEmpty(t, said.Findings)
	colours := map[string]string{"must": "\x1b[1;31mmust\x1b[0m", "should": "\x1b[33mshould\x1b[0m", "ask": "\x1b[36mask\x1b[0m", "note": "\x1b[2mnote\x1b[0m"}
	for _, columns := range []int{80, 200} {
		out := onTerminal(t, columns, "check", cannot)
		for _, f := range said.Findings {
			assert.Contains(t, together(out), together(f.Message))
			assert.Regexp(t, "(?m)^"+regexp.QuoteMeta(colours[f.Level])+" +"+f.Code, out)
		}
	}
	coloured := onTerminal(t, 80, "check", cannot)
	plain := escapes.ReplaceAllString(coloured, "")
	require.NotEqual(t, plain, coloured)
	t.Setenv("NO_COLOR", "1")
	assert.Equal(t, plain, onTerminal(t, 80, "check", cannot))
	t.Setenv("NO_COLOR", "")
	t.Setenv("TERM", "dumb")
	assert.Equal(t, plain, onTerminal(t, 80, "check", cannot))
	assert.Equal(t, plain, onTerminal(t, 0, "check", cannot), "of a terminal that does not say how wide it is")
}

// What a pipe gets has neither colours nor the width of any terminal.
func TestPipesGetTheSameEverywhere(t *testing.T) {
	before := piped("check", cannot)
	t.Setenv("COLUMNS", "50")
	t.Setenv("TERM", "xterm")
	assert.Equal(t, before, piped("check", cannot))
	assert.NotContains(t, before, "\x1b")
}

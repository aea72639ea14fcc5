package main

import (
	"bufio"
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"net/textproto"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/cli"
)

// An editor with a language server of TOML marks nothing in a starter, a sample or a page template as it is written, marks a mistake
// where it stands, completes a key and says what it means: by the schema beside the file and nothing else.
func TestEditorsReadTheSchema(t *testing.T) {
	server, err := exec.LookPath("tombi")
	if err != nil {
		t.Skip("the language server is not installed: it comes from a registry that a machine may not reach")
	}
	e := newEditor(t, server)
	// the rooms of a job are left out: alone they lack what the job gives them
	for what, name := range map[string]string{"room": "flitchlay-room.json", "job": "flitchlay-job.json", "page": "flitchlay-page.json"} {
		flitchlay(t, "schema", what, "-o", filepath.Join(e.dir, name))
	}
	sound := map[string]string{}
	for schema, pattern := range map[string]string{"room": "templates/rooms/*.toml samples/*.toml", "job": "samples/job/ferry-terminal.toml", "page": "templates/pages/*.toml"} {
		for _, pattern := range strings.Fields(pattern) {
			files, err := filepath.Glob(filepath.Join(top, pattern))
			require.NoError(t, err)
			require.NotEmpty(t, files, pattern)
			for _, f := range files {
				text, err := os.ReadFile(f)
				require.NoError(t, err)
				sound[filepath.Base(f)] = "#:schema flitchlay-" + schema + ".json\n" + string(text)
			}
		}
	}
	flitchlay(t, "new", "-o", filepath.Join(e.dir, "new.toml"), "four-wall")
	starter, err := os.ReadFile(filepath.Join(e.dir, "new.toml"))
	require.NoError(t, err)
	sound["new.toml"] = string(starter)
	for name, text := range sound {
		assert.Empty(t, e.marks(name, text), name)
	}

	lines := strings.Split(string(starter), "\n")
	at := 0
	for i, line := range lines {
		if line == "[veneer]" {
			at = i + 1
		}
	}
	require.NotZero(t, at)
	with := func(line string) string {
		return strings.Join(append(append(append([]string(nil), lines[:at]...), line), lines[at:]...), "\n")
	}
	for line, said := range map[string]string{"croft = 3": "croft", `grain = "Vertical"`: "horizontal", "leaf_width = true": "String", `grain = "vertical"`: ""} {
		marks := e.marks("new.toml", with(line))
		if said == "" {
			assert.Empty(t, marks, line)
			continue
		}
		if assert.NotEmpty(t, marks, line) {
			assert.Equal(t, at, marks[0].Range.Start.Line, "%s: %v", line, marks)
			assert.Contains(t, marks[0].Message, said, line)
		}
	}
	e.marks("new.toml", with("gr"))
	var offers []struct {
		Label         string `json:"label"`
		Documentation struct {
			Value string `json:"value"`
		} `json:"documentation"`
	}
	e.ask("textDocument/completion", e.place("new.toml", at, 2), &offers)
	if assert.Len(t, offers, 1) {
		assert.Equal(t, "grain", offers[0].Label)
		assert.Contains(t, offers[0].Documentation.Value, "way of the grain on the wall")
	}
	var hover struct {
		Contents struct {
			Value string `json:"value"`
		} `json:"contents"`
	}
	e.marks("new.toml", with(`grain = "vertical"`))
	e.ask("textDocument/hover", e.place("new.toml", at, 2), &hover)
	assert.Contains(t, hover.Contents.Value, "way of the grain on the wall")
}

// flitchlay runs the program, which has to end well.
func flitchlay(t *testing.T, args ...string) {
	var out, messages bytes.Buffer
	require.Zero(t, cli.Run(args, nil, &out, &messages), messages.String())
}

// editor talks to a language server as an editor does.
type editor struct {
	t       *testing.T
	dir     string
	in      io.Writer
	out     *bufio.Reader
	id      int
	version map[string]int
}

// mark is a mistake that an editor underlines.
type mark struct {
	Range struct {
		Start struct {
			Line      int `json:"line"`
			Character int `json:"character"`
		} `json:"start"`
	} `json:"range"`
	Message string `json:"message"`
}

func newEditor(t *testing.T, server string) *editor {
	e := &editor{t: t, dir: t.TempDir(), version: map[string]int{}}
	cmd := exec.Command(server, "lsp", "--offline", "--no-cache")
	cmd.Dir = e.dir
	in, err := cmd.StdinPipe()
	require.NoError(t, err)
	out, err := cmd.StdoutPipe()
	require.NoError(t, err)
	require.NoError(t, cmd.Start())
	e.in, e.out = in, bufio.NewReader(out)
	// a server that says nothing ends the test, not the patience of whoever waits for it
	slow := time.AfterFunc(time.Minute, func() { out.Close() })
	t.Cleanup(func() {
		slow.Stop()
		e.ask("shutdown", nil, nil)
		e.say("exit", nil)
		in.Close()
		cmd.Process.Kill()
		cmd.Wait()
	})
	root := "file://" + (&url.URL{Path: e.dir}).EscapedPath()
	e.ask("initialize", map[string]any{"processId": os.Getpid(), "rootUri": root, "workspaceFolders": []any{map[string]any{"uri": root, "name": "rooms"}},
		"capabilities": map[string]any{"textDocument": map[string]any{"publishDiagnostics": map[string]any{}, "completion": map[string]any{}, "hover": map[string]any{}}}}, nil)
	e.say("initialized", map[string]any{})
	return e
}

func (e *editor) uri(name string) string {
	return "file://" + (&url.URL{Path: filepath.ToSlash(filepath.Join(e.dir, name))}).EscapedPath()
}

// place is a place in a file, as requests name it.
func (e *editor) place(name string, line, character int) any {
	return map[string]any{"textDocument": map[string]any{"uri": e.uri(name)}, "position": map[string]any{"line": line, "character": character}}
}

// marks opens a file, or types another text into it, and is what the server then underlines.
func (e *editor) marks(name, text string) []mark {
	e.version[name]++
	document := map[string]any{"uri": e.uri(name), "version": e.version[name], "languageId": "toml", "text": text}
	if e.version[name] == 1 {
		require.NoError(e.t, os.WriteFile(filepath.Join(e.dir, name), []byte(text), 0o666))
		e.say("textDocument/didOpen", map[string]any{"textDocument": document})
	} else {
		e.say("textDocument/didChange", map[string]any{"textDocument": document, "contentChanges": []any{map[string]any{"text": text}}})
	}
	for {
		m := e.read()
		var told struct {
			URI         string `json:"uri"`
			Version     int    `json:"version"`
			Diagnostics []mark `json:"diagnostics"`
		}
		if m.Method != "textDocument/publishDiagnostics" {
			continue
		}
		require.NoError(e.t, json.Unmarshal(m.Params, &told))
		if filepath.Base(told.URI) == filepath.Base(e.uri(name)) && told.Version == e.version[name] {
			return told.Diagnostics
		}
	}
}

// ask sends a request and reads its answer into a value.
func (e *editor) ask(method string, params, answer any) {
	e.id++
	request := map[string]any{"id": e.id, "method": method}
	if params != nil {
		request["params"] = params
	}
	e.send(request)
	for {
		m := e.read()
		if m.Method != "" || string(m.ID) != strconv.Itoa(e.id) {
			continue
		}
		require.Empty(e.t, string(m.Error), method)
		if answer != nil {
			require.NoError(e.t, json.Unmarshal(m.Result, answer), "%s: %s", method, m.Result)
		}
		return
	}
}

// say sends what has no answer.
func (e *editor) say(method string, params any) {
	request := map[string]any{"method": method}
	if params != nil {
		request["params"] = params
	}
	e.send(request)
}

func (e *editor) send(message map[string]any) {
	message["jsonrpc"] = "2.0"
	text, err := json.Marshal(message)
	require.NoError(e.t, err)
	_, err = fmt.Fprintf(e.in, "Content-Length: %d\r\n\r\n%s", len(text), text)
	require.NoError(e.t, err)
}

// message is what a server says.
type message struct {
	ID     json.RawMessage `json:"id"`
	Method string          `json:"method"`
	Params json.RawMessage `json:"params"`
	Result json.RawMessage `json:"result"`
	Error  json.RawMessage `json:"error"`
}

// read is the next message; what the server itself asks is answered with nothing.
func (e *editor) read() (m message) {
	head, err := textproto.NewReader(e.out).ReadMIMEHeader()
	require.NoError(e.t, err, "the language server says nothing more")
	n, err := strconv.Atoi(head.Get("Content-Length"))
	require.NoError(e.t, err)
	text := make([]byte, n)
	_, err = io.ReadFull(e.out, text)
	require.NoError(e.t, err)
	require.NoError(e.t, json.Unmarshal(text, &m))
	if m.Method != "" && len(m.ID) > 0 {
		e.send(map[string]any{"id": m.ID, "result": nil})
	}
	return m
}

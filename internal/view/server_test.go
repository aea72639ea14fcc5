package view

import (
	"bufio"
	"bytes"
	"context"
	"encoding/json"
	"io"
	"io/fs"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/layout"
	"flitchlay/internal/room"
)

// small is a room of one wall.
const small = "[project]\ntitle = \"Small\"\n[veneer]\ngross_width = \"24 1/2\"\noverlap = \"1\"\nlength = \"10'\"\n\n[[wall]] # the only one\nname = \"North\"\nlength = \"12'\"\nheight = \"8'\"\n"

// source reads one file plainly.
func source(path string) Source {
	y := layout.NewLayer()
	return Source{
		Sets: []string{"install"},
		Read: func(bool) *House {
			text, err := os.ReadFile(path)
			r := &Room{Name: "room", File: path, Text: text, Err: err, Judge: func(*layout.Plan) {}}
			r.Again = func(text []byte, _ bool) (*room.Room, error) { return room.Decode(filepath.Base(path), text) }
			if err == nil {
				var decoded *room.Room
				if decoded, r.Err = r.Again(text, false); r.Err == nil {
					r.Plan, r.Err = y.LayOwn(decoded)
				}
			}
			return &House{Title: "room", Rooms: []*Room{r}, Files: []string{path}, Sum: string(text)}
		},
		Write: func(path string, was, text []byte) error {
			now, err := os.ReadFile(path)
			if err != nil {
				return err
			}
			if !bytes.Equal(now, was) {
				return ErrChanged
			}
			return os.WriteFile(path, text, 0o666)
		},
	}
}

// serve serves a room's text until the test ends.
func serve(t testing.TB, text string) (*Server, string) {
	t.Helper()
	path := filepath.Join(t.TempDir(), "room.toml")
	require.NoError(t, os.WriteFile(path, []byte(text), 0o666))
	ctx, stop := context.WithCancel(context.Background())
	s, err := New(ctx, source(path), 0)
	require.NoError(t, err)
	done := make(chan error, 1)
	go func() { done <- s.Serve() }()
	t.Cleanup(func() { stop(); require.NoError(t, <-done) })
	return s, path
}

// asking is a request, as the page makes it but for what is changed.
func asking(t testing.TB, s *Server, method, path, body string, change func(*http.Request)) (int, string, http.Header) {
	t.Helper()
	r, err := http.NewRequest(method, strings.TrimSuffix(s.Address(), "/")+path, strings.NewReader(body))
	require.NoError(t, err)
	if method == http.MethodPost {
		r.Header.Set("Origin", "http://"+s.host)
		r.Header.Set("Content-Type", "application/json")
	}
	if change != nil {
		change(r)
	}
	answer, err := http.DefaultTransport.RoundTrip(r)
	require.NoError(t, err)
	defer answer.Body.Close()
	data, err := io.ReadAll(answer.Body)
	require.NoError(t, err)
	return answer.StatusCode, string(data), answer.Header
}

// stateOf is the room as the page is told of it.
func stateOf(t testing.TB, s *Server) *state {
	t.Helper()
	code, body, _ := asking(t, s, "GET", "/state?wide=200&high=100&ribbon=200", "", nil)
	require.Equal(t, http.StatusOK, code, body)
	var out state
	require.NoError(t, json.Unmarshal([]byte(body), &out))
	return &out
}

// pinned is a trial that pins a seam, as the page sends it.
func pinned(base string, mm float64) string {
	data, err := json.Marshal(trial{asked: asked{Wide: 200, High: 100, Ribbon: 200, Quick: true}, Base: base, Client: "c", Step: 1, Changes: []wish{{Do: "pin", Item: -1, X: mm, Put: "seam"}}})
	if err != nil {
		panic(err)
	}
	return string(data)
}

// What is not from the page itself is refused: another secret, another host, another origin, a form, a page of another site.
func TestForgedRequestsAreRefused(t *testing.T) {
	s, path := serve(t, small)
	base := stateOf(t, s).Base
	header := func(name, value string) func(*http.Request) {
		return func(r *http.Request) { r.Header.Set(name, value) }
	}
	for why, x := range map[string]struct {
		method, path string
		change       func(*http.Request)
		want         int
	}{
		"another secret":                     {"GET", "/state", func(r *http.Request) { r.URL.Path = "/" + strings.Repeat("a", 24) + "/state" }, 403},
		"no secret":                          {"GET", "/state", func(r *http.Request) { r.URL.Path = "/" }, 403},
		"a name that leads here":             {"GET", "/state", func(r *http.Request) { r.Host = "rooms.example" }, 421},
		"an address of a network":            {"GET", "/state", func(r *http.Request) { r.Host = "192.168.0.1" }, 421},
		"another page's reading":             {"GET", "/state", header("Origin", "http://rooms.example"), 403},
		"another page's picture":             {"GET", "/state", header("Sec-Fetch-Site", "cross-site"), 403},
		"another port's page":                {"POST", "/keep", header("Origin", "http://127.0.0.1:1"), 403},
		"no origin":                          {"POST", "/keep", func(r *http.Request) { r.Header.Del("Origin") }, 403},
		"a page without an address":          {"POST", "/keep", header("Origin", "null"), 403},
		"a form":                             {"POST", "/keep", header("Content-Type", "application/x-www-form-urlencoded"), 415},
		"a text that no leave is asked for":  {"POST", "/keep", header("Content-Type", "text/plain"), 415},
		"reading what writes":                {"GET", "/keep", nil, 405},
		"a way up, which leads to no secret": {"GET", "/a/..%2f..%2froom.toml", nil, 307},
		"a file of the folder":               {"GET", "/room.toml", nil, 404},
		"the program's own page text":        {"GET", "/a/view.html", nil, 404},
	} {
		code, body, _ := asking(t, s, x.method, x.path, pinned(base, 1000), x.change)
		assert.Equal(t, x.want, code, "%s: %s", why, body)
		assert.NotContains(t, body, "North", why)
	}
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, small, string(text))
}

// The page and all it loads say what may be loaded: what this server has, and no script in the page.
func TestPolicy(t *testing.T) {
	s, _ := serve(t, small)
	for _, path := range []string{"/", "/a/view.js", "/a/lists.js", "/a/hung.js", "/a/prints.js", "/a/see.js", "/a/parts.js", "/a/page.css", "/a/view.css", "/a/regular.ttf", "/a/bold.ttf", "/a/mark.svg", "/state"} {
		code, body, h := asking(t, s, "GET", path, "", nil)
		assert.Equal(t, 200, code, path)
		assert.NotEmpty(t, body, path)
		assert.Equal(t, policy, h.Get("Content-Security-Policy"))
		assert.Equal(t, "nosniff", h.Get("X-Content-Type-Options"))
		assert.Equal(t, "no-referrer", h.Get("Referrer-Policy"))
	}
	_, page, _ := asking(t, s, "GET", "/", "", nil)
	assert.NotRegexp(t, `<script>|<style|style=|\son[a-z]+=|(src|href)="[a-z]+:`, page)
	assert.NotContains(t, policy, "unsafe")
	assert.True(t, strings.HasPrefix(s.host, "127.0.0.1:"), "the loopback address alone")
}

// A trial is laid out and writes nothing; kept, it is in the file, and all else as it was.
func TestTryThenKeep(t *testing.T) {
	s, path := serve(t, small)
	base := stateOf(t, s)
	code, body, _ := asking(t, s, "POST", "/try", pinned(base.Base, 1000), nil)
	require.Equal(t, 200, code, body)
	var out state
	require.NoError(t, json.Unmarshal([]byte(body), &out))
	require.NotNil(t, out.Plan)
	assert.True(t, out.Good)
	assert.Len(t, out.Plan.Walls[0].Pins, 1)
	assert.Contains(t, body, "3' 3 3/8", "1000 mm to a sixteenth of an inch")
	at := out.Plan.Walls[0].Seams[0]
	for _, m := range out.Plan.Walls[0].Seams {
		if m.Pin == 0 {
			at = m
		}
	}
	assert.InDelta(t, 1000, at.X, 1, "a seam stands there")
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, small, string(text), "a trial never changes a file")

	code, body, _ = asking(t, s, "POST", "/keep", pinned(base.Base, 1000), nil)
	require.Equal(t, 200, code, body)
	text, err = os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, small+"\n[[wall.pin]]\nat = \"3' 3 3/8\"\n", string(text))
}

// What was tried on a file that has changed since is not written, nor what could not be laid out.
func TestKeepIsRefused(t *testing.T) {
	s, path := serve(t, small)
	base := stateOf(t, s).Base
	code, body, _ := asking(t, s, "POST", "/keep", `{"base":"`+base+`","changes":[{"do":"keep","item":-1,"x":100,"to":100}]}`, nil)
	assert.Equal(t, 422, code)
	assert.Contains(t, body, "the keep-clear stretch ends at")
	code, body, _ = asking(t, s, "POST", "/keep", `{"base":"`+base+`","changes":[{"do":"pin","wall":4,"item":-1,"x":100}]}`, nil)
	assert.Equal(t, 422, code, body)
	code, _, _ = asking(t, s, "POST", "/keep", `{"base":`, nil)
	assert.Equal(t, 400, code)
	code, body, _ = asking(t, s, "POST", "/keep", pinned("0000", 1000), nil)
	assert.Equal(t, 409, code)
	assert.Contains(t, body, `"stale":true`)
	// the server has not seen yet what somebody has just written
	s.source.Write = func(string, []byte, []byte) error { return ErrChanged }
	code, body, _ = asking(t, s, "POST", "/keep", pinned(base, 1000), nil)
	assert.Equal(t, 409, code)
	assert.Contains(t, body, `"stale":true`)
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, small, string(text))
}

// Every page that listens is told of a change; a file that breaks leaves the layout before, and says the line.
func TestChangesAreTold(t *testing.T) {
	s, path := serve(t, small)
	r, err := http.Get(s.Address() + "events")
	require.NoError(t, err)
	defer r.Body.Close()
	told := make(chan string, 16)
	go func() {
		for lines := bufio.NewScanner(r.Body); lines.Scan(); {
			if text, ok := strings.CutPrefix(lines.Text(), "data: "); ok {
				told <- text
			}
		}
	}()
	first := <-told
	until := func(good bool) *state {
		t.Helper()
		late := time.NewTimer(10 * time.Second)
		for {
			select {
			case <-told:
				if now := stateOf(t, s); now.Good == good {
					return now
				}
			case <-late.C:
				require.Fail(t, "nothing was told")
			}
		}
	}
	require.NotEmpty(t, first)
	require.NoError(t, os.WriteFile(path, []byte(strings.Replace(small, `"12'"`, `"12'`, 1)), 0o666))
	broken := until(false)
	require.NotNil(t, broken.Plan, "the last layout stays")
	require.Len(t, broken.Mistakes, 1)
	assert.Equal(t, 10, broken.Mistakes[0].Line)
	assert.Equal(t, `length = "12'`, broken.Mistakes[0].Text)
	beside := path + "~"
	require.NoError(t, os.WriteFile(beside, []byte(strings.Replace(small, `"12'"`, `"14'"`, 1)), 0o666))
	require.NoError(t, os.Rename(beside, path), "as many an editor saves")
	mended := until(true)
	assert.InDelta(t, 14*304.8, mended.Plan.Walls[0].Outline[1][0], 0.1)
}

// Of steps that come while another is laid out only the last counts.
func TestLateStepsAreDropped(t *testing.T) {
	s, _ := serve(t, small)
	base := stateOf(t, s).Base
	later := strings.Replace(pinned(base, 1000), `"step":1`, `"step":5`, 1)
	code, body, _ := asking(t, s, "POST", "/try", later, nil)
	require.Equal(t, 200, code, body)
	code, body, _ = asking(t, s, "POST", "/try", pinned(base, 1100), nil)
	assert.Equal(t, http.StatusGone, code, body)
}

// Pages that were left take no memory for long.
func TestLanesAreBounded(t *testing.T) {
	s, _ := serve(t, small)
	first := s.laneOf("first")
	assert.Same(t, first, s.laneOf("first"))
	for i := range 10 * mostLanes {
		s.laneOf(strings.Repeat("c", i+1))
	}
	n := 0
	s.lanes.Range(func(any, any) bool { n++; return true })
	assert.LessOrEqual(t, n, mostLanes)
}

// Lengths are written as room files have them.
func TestRaw(t *testing.T) {
	in := func(mm float64) L { return L(mm * float64(254) / 10 * 8000) }
	assert.Equal(t, `"3 1/2"`, Raw(in(3.5), 0))
	assert.Equal(t, `"3' 2 1/2"`, Raw(in(38.5), 0))
	assert.Equal(t, `"12' 0"`, Raw(in(144), 0))
	assert.Equal(t, `"0"`, Raw(0, 0))
	assert.Equal(t, "965.5", Raw(L(965.5*8000), 1))
	assert.Equal(t, "965", Raw(L(965*8000), 1))
}

// A folder that cannot be followed is said, and nothing is served.
func TestWhatCannotBeFollowedIsSaid(t *testing.T) {
	path := filepath.Join(t.TempDir(), "gone", "room.toml")
	s, err := New(context.Background(), source(path), 0)
	require.NoError(t, err)
	assert.ErrorIs(t, s.Serve(), fs.ErrNotExist)
}

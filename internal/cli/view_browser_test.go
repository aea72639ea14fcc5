package cli

import (
	"context"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
	"flitchlay/internal/view"
)

// served serves what a path stands for until the test ends.
func served(t testing.TB, path string) *view.Server {
	t.Helper()
	ctx, stop := context.WithCancel(context.Background())
	c := &call{out: &sink{to: io.Discard}, messages: &sink{to: io.Discard}}
	s, err := view.New(ctx, c.viewed(path), 0)
	require.NoError(t, err)
	done := make(chan error, 1)
	go func() { done <- s.Serve() }()
	t.Cleanup(func() { stop(); require.NoError(t, <-done) })
	return s
}

// copied is a copy of a sample in a folder of its own.
func copied(t testing.TB, name string) string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("../../samples", name))
	require.NoError(t, err)
	path := filepath.Join(t.TempDir(), filepath.Base(name))
	require.NoError(t, os.WriteFile(path, text, 0o666))
	return path
}

// browser is a page of a real browser. What a page complains of in its console fails the test.
type browser struct {
	testing.TB
	context.Context
}

// chromium starts a real browser, which ends with the test.
func chromium(t testing.TB) context.Context {
	t.Helper()
	program := effort.Tool(t, "chromium")
	options := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(program), chromedp.NoSandbox)
	alloc, stop := chromedp.NewExecAllocator(context.Background(), options...)
	t.Cleanup(stop)
	ctx, end := chromedp.NewContext(alloc)
	t.Cleanup(end)
	require.NoError(t, chromedp.Do(ctx))
	return ctx
}

// browsing opens a page of a browser, as large as a screen.
func browsing(t testing.TB, in context.Context, wide, high int64) *browser {
	t.Helper()
	ctx, end := chromedp.NewContext(in)
	t.Cleanup(end)
	require.NoError(t, chromedp.Do(ctx))
	require.NoError(t, chromedp.Listen(ctx, func(e any) {
		switch e := e.(type) {
		case *runtime.EventExceptionThrown:
			t.Errorf("in the page: %+v", e.ExceptionDetails)
		case *runtime.EventConsoleAPICalled:
			if e.Type == "error" || e.Type == "warning" {
				t.Errorf("in the console: %+v", e.Args)
			}
		}
	}))
	ctx, late := context.WithTimeout(ctx, 4*time.Minute)
	t.Cleanup(late)
	b := &browser{t, ctx}
	b.run(chromedp.EmulateViewport(wide, high))
	return b
}

// run runs actions. What an action was to be done to may be drawn anew between being found and being used: then it is looked for again.
func (b *browser) run(actions ...chromedp.Action[chromedp.Void]) {
	b.Helper()
	for _, action := range actions {
		err := chromedp.Do(b.Context, action)
		for try := 0; try < 20 && drawnAnew(err); try++ {
			err = chromedp.Do(b.Context, action)
		}
		require.NoError(b, err)
	}
}

// drawnAnew reports whether an action came too late for the element that it had found, and so did nothing.
func drawnAnew(err error) bool {
	return err != nil && (strings.Contains(err.Error(), "Could not find node with given id") || strings.Contains(err.Error(), "Could not compute box model"))
}

// ask evaluates an expression of the page.
func ask[T any](b *browser, expression string) T {
	b.Helper()
	v, err := chromedp.Run(b.Context, chromedp.Evaluate[T](expression))
	require.NoError(b, err, expression)
	return v
}

// is waits until an expression of the page is true.
func (b *browser) is(expression string) {
	b.Helper()
	_, err := chromedp.Run(b.Context, chromedp.Poll[bool]("!!("+expression+")", chromedp.WithPollingInterval(10*time.Millisecond), chromedp.WithPollingTimeout(60*time.Second)))
	if err != nil {
		b.Fatalf("never: %s: %v\n%s", expression, err, ask[string](b, `document.body.innerText.slice(0, 3000)`))
	}
}

// open opens a page and waits until it shows a room.
func (b *browser) open(s *view.Server) {
	b.Helper()
	b.run(chromedp.Navigate(s.Address()))
	b.is(`document.querySelectorAll("#pane svg").length === 2 && document.body.dataset.version !== undefined`)
}

// picture takes a picture of the whole page, into the folder that FLITCHLAY_PICTURES names.
func (b *browser) picture(name string) {
	b.Helper()
	data, err := chromedp.Run(b.Context, chromedp.FullScreenshot(100))
	require.NoError(b, err)
	if folder := os.Getenv("FLITCHLAY_PICTURES"); folder != "" {
		require.NoError(b, os.WriteFile(filepath.Join(folder, name+".png"), data, 0o666))
	}
}

// What a person sees and does, in a real browser.
func TestViewInABrowser(t *testing.T) {
	if !effort.Full() {
		t.Skip("a browser is asked only where all is to be tried")
	}
	in := chromium(t)
	for what, do := range map[string]func(*testing.T, context.Context){
		"on every screen": viewOnEveryScreen, "follows": viewFollows, "tries and keeps": viewTriesAndKeeps, "text is text": viewShowsTextAsText,
		"by keys": viewByKeys, "tries the rest": viewTriesTheRest, "reads back": viewReadsBack, "a job": viewOfAJob, "for everybody": viewIsForEverybody,
	} {
		t.Run(what, func(t *testing.T) { do(t, in) })
	}
}

// viewOnEveryScreen opens the page at a phone's width, on a desk, and on a large screen: nothing of it is wider than the screen.
func viewOnEveryScreen(t *testing.T, in context.Context) {
	s := served(t, copied(t, "reading-room.toml"))
	for _, size := range [][2]int64{{360, 740}, {1280, 900}, {3840, 2160}} {
		b := browsing(t, in, size[0], size[1])
		b.open(s)
		b.picture(fmt.Sprintf("view-%d", size[0]))
		b.is(`document.documentElement.scrollWidth <= window.innerWidth`)
	}
}

// doing evaluates an expression for what it does.
func doing(expression string) chromedp.Action[chromedp.Void] {
	return func(ctx context.Context, t *chromedp.Target) (chromedp.Void, error) {
		_, err := chromedp.Evaluate[any]("(() => {"+expression+"})(), null")(ctx, t)
		return chromedp.Void{}, err
	}
}

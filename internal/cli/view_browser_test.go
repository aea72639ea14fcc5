package cli

import (
	"context"
	"io"
	"os"
	"path/filepath"
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

// browser is a real browser with one page. What a page complains of in its console fails the test.
type browser struct {
	testing.TB
	context.Context
}

func browsing(t testing.TB, wide, high int) *browser {
	t.Helper()
	program := effort.Tool(t, "chromium")
	options := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(program), chromedp.NoSandbox, chromedp.WindowSize(wide, high))
	alloc, stop := chromedp.NewExecAllocator(context.Background(), options...)
	t.Cleanup(stop)
	ctx, end := chromedp.NewContext(alloc)
	t.Cleanup(end)
	ctx, late := context.WithTimeout(ctx, 90*time.Second)
	t.Cleanup(late)
	chromedp.ListenTarget(ctx, func(e any) {
		switch e := e.(type) {
		case *runtime.EventExceptionThrown:
			t.Errorf("in the page: %s", e.ExceptionDetails.Error())
		case *runtime.EventConsoleAPICalled:
			if e.Type == runtime.APITypeError || e.Type == runtime.APITypeWarning {
				t.Errorf("in the console: %s", e.Args[0].Value)
			}
		}
	})
	return &browser{t, ctx}
}

// run runs actions.
func (b *browser) run(actions ...chromedp.Action) {
	b.Helper()
	require.NoError(b, chromedp.Run(b.Context, actions...))
}

// is waits until an expression of the page is true.
func (b *browser) is(expression string) {
	b.Helper()
	var ok bool
	if err := chromedp.Run(b.Context, chromedp.Poll(expression, &ok, chromedp.WithPollingInterval(10*time.Millisecond), chromedp.WithPollingTimeout(20*time.Second))); err != nil {
		var text string
		_ = chromedp.Run(b.Context, chromedp.Evaluate(`document.body.innerText.slice(0, 3000)`, &text))
		b.Fatalf("never: %s: %v\n%s", expression, err, text)
	}
}

// open opens a page and waits until it shows a room.
func (b *browser) open(s *view.Server) {
	b.Helper()
	b.run(chromedp.Navigate(s.Address()))
	b.is(`document.querySelectorAll("#pane svg").length === 2 && document.body.dataset.version !== undefined`)
}

// picture takes a picture of the whole page, to look at.
func (b *browser) picture(name string) {
	b.Helper()
	var data []byte
	b.run(chromedp.FullScreenshot(&data, 100))
	folder := os.Getenv("FLITCHLAY_PICTURES")
	if folder != "" {
		require.NoError(b, os.WriteFile(filepath.Join(folder, name+".png"), data, 0o666))
	}
}

// The page at a phone's width, on a desk, and on a large screen.
func TestViewLooksAlike(t *testing.T) {
	if !effort.Full() {
		t.Skip("a browser is asked only where all is to be tried")
	}
	s := served(t, copied(t, "reading-room.toml"))
	for _, size := range [][2]int{{360, 740}, {1280, 900}, {3840, 2160}} {
		b := browsing(t, size[0], size[1])
		b.open(s)
		b.picture(filepath.Base("view-" + itoaTest(size[0])))
		b.is(`document.documentElement.scrollWidth <= window.innerWidth`)
	}
}

func itoaTest(n int) string { return map[int]string{360: "360", 1280: "1280", 3840: "3840"}[n] }

package cli

import (
	"encoding/json"
	"fmt"
	"io"
	"net/http"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/view"
)

// long120 is a closed room 120 ft round, a window on each wall.
func long120() string {
	var b strings.Builder
	b.WriteString("[project]\ntitle = \"Long\"\n[veneer]\ngross_width = \"24 1/2\"\noverlap = \"1\"\nlength = \"10'\"\n[[flitch]]\nnumber = \"L-1\"\nsheets = \"1-90\"\n[room]\nclosed = true\n")
	for i, l := range []string{"36'", "24'", "36'", "24'"} {
		fmt.Fprintf(&b, "[[wall]]\nname = \"W%d\"\nlength = \"%s\"\nheight = \"9'\"\n[[wall.opening]]\nfrom_left = \"5' 3\"\nwidth = \"4' 4\"\nsill = \"2' 6\"\nheight = \"4'\"\n", i, l)
	}
	return b.String()
}

// benchRooms are the samples and the long room, each in a folder of its own.
func benchRooms(b *testing.B) map[string]string {
	out := map[string]string{}
	list, err := filepath.Glob("../../samples/*.toml")
	require.NoError(b, err)
	for _, name := range list {
		out[filepath.Base(name)] = copied(b, filepath.Base(name))
	}
	long := filepath.Join(b.TempDir(), "long120.toml")
	require.NoError(b, os.WriteFile(long, []byte(long120()), 0o666))
	out["long120.toml"] = long
	return out
}

// spread reports the middle and the worst of some times.
func spread(b *testing.B, what string, times []time.Duration) {
	slices.Sort(times)
	b.ReportMetric(float64(times[len(times)/2].Microseconds())/1000, what+"-ms")
	b.ReportMetric(float64(times[len(times)-1].Microseconds())/1000, what+"-worst-ms")
	b.ReportMetric(0, "ns/op")
}

// BenchmarkViewStep drags a pin along the first covered wall, a step of half an inch at a time, and reports what a step takes from
// the request to the answer.
func BenchmarkViewStep(b *testing.B) {
	for name, path := range benchRooms(b) {
		b.Run(name, func(b *testing.B) {
			s := served(b, path)
			state := askState(b, s)
			wall := int(state["plan"].(map[string]any)["wall"].(float64))
			var times []time.Duration
			step := 0
			for b.Loop() {
				for i := range 40 {
					step++
					body := fmt.Sprintf(`{"wide":220,"high":140,"ribbon":330,"quick":true,"wall":%d,"base":%q,"client":"b","step":%d,"changes":[{"do":"pin","wall":%d,"item":-1,"x":%f}]}`,
						wall, state["base"], step, wall, 900+12.7*float64(i))
					start := time.Now()
					post(b, s, "try", body)
					times = append(times, time.Since(start))
				}
			}
			spread(b, "step", times)
		})
	}
}

// post sends what the page sends.
func post(b *testing.B, s *view.Server, path, body string) {
	b.Helper()
	r, err := http.NewRequest("POST", s.Address()+path, strings.NewReader(body))
	require.NoError(b, err)
	r.Header.Set("Content-Type", "application/json")
	r.Header.Set("Origin", strings.Join(strings.SplitN(s.Address(), "/", 4)[:3], "/"))
	answer, err := http.DefaultClient.Do(r)
	require.NoError(b, err)
	defer answer.Body.Close()
	data, err := io.ReadAll(answer.Body)
	require.NoError(b, err)
	require.Equal(b, 200, answer.StatusCode, string(data))
}

func askState(b *testing.B, s *view.Server) map[string]any {
	b.Helper()
	answer, err := http.Get(s.Address() + "state?wide=220&high=140&ribbon=330")
	require.NoError(b, err)
	defer answer.Body.Close()
	var out map[string]any
	require.NoError(b, json.NewDecoder(answer.Body).Decode(&out))
	return out
}

// BenchmarkViewSaved saves rooms with their title changed, as an editor does, and reports how long it takes until a real browser shows
// it, painted.
func BenchmarkViewSaved(b *testing.B) {
	in := chromium(b)
	for name, path := range benchRooms(b) {
		b.Run(name, func(b *testing.B) {
			page := browsing(b, in, 1280, 900)
			page.open(served(b, path))
			page.run(doing(`window.seen = []; new MutationObserver(() => { const t = document.title; requestAnimationFrame(() => setTimeout(() => window.seen.push([t, performance.timeOrigin + performance.now()]))); }).observe(document.querySelector("title"), { childList: true })`))
			var times []time.Duration
			n := 0
			text, err := os.ReadFile(path)
			require.NoError(b, err)
			from := strings.Index(string(text), "title")
			from += strings.Index(string(text)[from:], `"`) + 1
			for b.Loop() {
				for range 12 {
					n++
					title := fmt.Sprintf("Room %d", n)
					to := from + strings.Index(string(text)[from:], `"`)
					text = []byte(string(text)[:from] + title + string(text)[to:])
					require.NoError(b, os.WriteFile(path+"~", text, 0o666))
					start := time.Now()
					require.NoError(b, os.Rename(path+"~", path))
					page.is(fmt.Sprintf(`window.seen.some((x) => x[0].startsWith(%q))`, title+":"))
					at := ask[float64](page, fmt.Sprintf(`window.seen.find((x) => x[0].startsWith(%q))[1]`, title+":"))
					times = append(times, time.Duration(at*float64(time.Millisecond))-time.Duration(start.UnixNano()))
					page.run(chromedp.Sleep(150 * time.Millisecond)) // what takes longer is found in quiet
				}
			}
			spread(b, "saved", times)
		})
	}
}

// BenchmarkViewDrag drags a seam in a real browser and reports how long it takes from the hand's move until the layout that belongs to it
// is painted.
func BenchmarkViewDrag(b *testing.B) {
	in := chromium(b)
	for name, path := range benchRooms(b) {
		b.Run(name, func(b *testing.B) {
			page := browsing(b, in, 1280, 900)
			page.open(served(b, path))
			page.run(chromedp.Sleep(900 * time.Millisecond)) // until it has found in quiet what it looks for
			page.run(doing(`window.times = []; window.since = 0;
				document.getElementById("pane").addEventListener("pointermove", () => { window.since = performance.now(); }, true);
				new MutationObserver(() => { const from = window.since; requestAnimationFrame(() => setTimeout(() => window.times.push(performance.now() - from))); }).observe(document.body, { attributes: true, attributeFilter: ["data-step"] })`))
			var times []time.Duration
			for b.Loop() {
				x, y := page.hold(1)
				for i := range 24 {
					before := ask[int](page, `window.times.length`)
					page.drag(x+float64(2*i+3), y)
					page.is(fmt.Sprintf(`window.times.length > %d`, before))
				}
				page.release(x, y)
				page.run(chromedp.Sleep(300 * time.Millisecond))
			}
			for _, ms := range ask[[]float64](page, `window.times.slice(0, 24)`) {
				times = append(times, time.Duration(ms*float64(time.Millisecond)))
			}
			spread(b, "drag", times)
		})
	}
}

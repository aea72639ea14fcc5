package cli

import (
	"bytes"
	"compress/gzip"
	"encoding/json"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// fault is something that who cannot see or point well stumbles over.
type fault struct {
	ID, Impact, Help string
	Nodes            []struct{ HTML, FailureSummary string }
}

// faults are what axe finds on the page.
func (b *browser) faults() []fault {
	b.Helper()
	packed, err := os.ReadFile("testdata/axe.min.js.gz")
	require.NoError(b, err)
	r, err := gzip.NewReader(bytes.NewReader(packed))
	require.NoError(b, err)
	script, err := io.ReadAll(r)
	require.NoError(b, err)
	require.Greater(b, len(script), 400_000)
	b.run(doing(string(script)))
	b.run(doing(`window.found = ""; axe.run(document, { resultTypes: ["violations"] }).then((r) => { window.found = JSON.stringify({ passes: r.passes.length, violations: r.violations }); })`))
	b.is(`window.found !== ""`)
	var out struct {
		Passes     int
		Violations []fault
	}
	require.NoError(b, json.Unmarshal([]byte(ask[string](b, `window.found`)), &out))
	require.Greater(b, out.Passes, 15, "it has looked")
	return out.Violations
}

// in brings the page into light or dark.
func (b *browser) in(scheme string) {
	b.Helper()
	name, value := "prefers-color-scheme", scheme
	_, err := chromedp.Call(b.Context, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Features: []*emulation.MediaFeature{{Name: name, Value: value}}})
	require.NoError(b, err)
}

// axe finds nothing serious, in light and in dark: on the walls, with a trial beside a broken must, on the pages as they print, and on the
// single file.
func TestViewIsForEverybody(t *testing.T) {
	onlyFull(t)
	file := copied(t, "reading-room.toml")
	var out bytes.Buffer
	folder := t.TempDir()
	require.Equal(t, fine, Run([]string{"draw", file, "--page", "-o", folder}, strings.NewReader(""), &out, &out), out.String())
	b := browsing(t, 1280, 900)
	s := served(t, file)
	look := func(what string, schemes ...string) {
		for _, scheme := range schemes {
			b.in(scheme)
			for _, f := range b.faults() {
				var where []string
				for _, n := range f.Nodes[:min(3, len(f.Nodes))] {
					where = append(where, n.HTML[:min(200, len(n.HTML))]+" "+n.FailureSummary)
				}
				assert.NotContains(t, []string{"serious", "critical"}, f.Impact, "%s, %s: %s: %s\n%s", what, scheme, f.ID, f.Help, strings.Join(where, "\n"))
				t.Log(what, scheme, f.Impact, f.ID, f.Help)
			}
			b.picture(strings.ReplaceAll(fmt.Sprintf("axe-%s-%s", what, scheme), " ", "-"))
		}
	}
	b.open(s)
	look("walls", "light", "dark")
	b.run(chromedp.SetValue("#which", "1"), doing(`document.getElementById("which").dispatchEvent(new Event("change"))`))
	b.is(`document.querySelector("#pane .over").getAttribute("aria-label").startsWith("East")`)
	x, y := b.hold(0)
	for i := 1; i <= 10; i++ {
		b.drag(x-float64(8*i), y)
	}
	b.is(`document.querySelector("#counts .bad") && document.querySelector("#findings .must-level")`)
	b.release(x-80, y)
	b.is(`!document.getElementById("keep").disabled`)
	look("a trial", "light", "dark")
	b.run(chromedp.Click("#tab-pages"))
	b.is(`document.querySelectorAll("#sheets img").length > 5`)
	look("pages", "dark")
	b.run(chromedp.Navigate("file://" + filepath.Join(folder, pageName)))
	b.is(`document.querySelectorAll(".pane .over").length > 3`)
	look("file", "light", "dark")
	b.run(doing(`document.querySelector(".wall-part .over [data-id]").dispatchEvent(new PointerEvent("pointerdown", { bubbles: true, clientX: 60, clientY: 60 }))`))
	b.is(`document.querySelector(".told dl")`)
}

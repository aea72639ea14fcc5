package cli

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// seamPoint is where a seam of the wall in view can be taken hold of.
const seamPoint = `(() => { const l = document.querySelectorAll("#pane .seam line.hit")[%d]; l.scrollIntoView({ block: "center" }); const r = l.getBoundingClientRect(); return [r.left + r.width / 2, r.top + r.height / 3]; })()`

// hold presses the pointer on a seam, counted from the left.
func (b *browser) hold(seam int) (x, y float64) {
	b.Helper()
	p := ask[[]float64](b, fmt.Sprintf(seamPoint, seam))
	b.run(chromedp.MouseEvent(input.DispatchMouseEventTypeMousePressed, p[0], p[1], chromedp.ButtonType(input.MouseButtonLeft), chromedp.ClickCount(1)))
	return p[0], p[1]
}

func (b *browser) drag(x, y float64) {
	b.Helper()
	b.run(chromedp.MouseEvent(input.DispatchMouseEventTypeMouseMoved, x, y, chromedp.ButtonType(input.MouseButtonLeft)))
}

func (b *browser) release(x, y float64) {
	b.Helper()
	b.run(chromedp.MouseEvent(input.DispatchMouseEventTypeMouseReleased, x, y, chromedp.ButtonType(input.MouseButtonLeft), chromedp.ClickCount(1)))
}

// edited replaces text in a file, as an editor saves it: the new file is put in the place of the old one.
func edited(t testing.TB, path, old, now string) {
	t.Helper()
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	require.Contains(t, string(text), old)
	beside := path + "~"
	require.NoError(t, os.WriteFile(beside, []byte(strings.Replace(string(text), old, now, 1)), 0o666))
	require.NoError(t, os.Rename(beside, path))
}

// viewFollows: saved is seen, in two browsers at once; a file that breaks leaves its last layout greyed, with the message and the line; mended, it
// comes back.
func viewFollows(t *testing.T, in context.Context) {
	path := copied(t, "reading-room.toml")
	s := served(t, path)
	one, two := browsing(t, in, 1280, 900), browsing(t, in, 700, 900)
	one.open(s)
	two.open(s)
	edited(t, path, `title    = "Harbour Lane Library: reading room"`, `title    = "Larkspur House"`)
	one.is(`document.getElementById("title").textContent === "Larkspur House"`)
	two.is(`document.getElementById("title").textContent === "Larkspur House"`)
	edited(t, path, `length = "22' 9"`, `length = "22' 9`)
	one.is(`document.body.classList.contains("old") && !document.getElementById("mistakes").hidden`)
	assert.Contains(t, ask[string](one, `document.getElementById("mistakes").innerText`), ":63:")
	assert.Equal(t, 2, ask[int](one, `document.querySelectorAll("#pane svg").length`), "what is drawn stays")
	one.picture("view-broken")
	edited(t, path, `length = "22' 9`, `length = "22' 9"`)
	one.is(`!document.body.classList.contains("old") && document.getElementById("mistakes").hidden`)
	two.is(`!document.body.classList.contains("old")`)
}

// viewTriesAndKeeps: a seam is dragged: the layout comes after the hand and the file stays as it is, until it is kept: then it has the pin and not a byte
// else. Undo and redo go through what was tried.
func viewTriesAndKeeps(t *testing.T, in context.Context) {
	path := copied(t, "reading-room.toml")
	before, err := os.ReadFile(path)
	require.NoError(t, err)
	s := served(t, path)
	b := browsing(t, in, 1280, 900)
	b.open(s)
	b.run(chromedp.SetValue("#which", "1"), doing(`document.getElementById("which").dispatchEvent(new Event("change"))`))
	b.is(`document.querySelector("#pane .over").getAttribute("aria-label").startsWith("East")`)
	x, y := b.hold(1)
	for i := 1; i <= 8; i++ {
		b.drag(x+float64(3*i), y)
	}
	b.is(`Number(document.body.dataset.step) > 0 && document.querySelector("#diff .new")`)
	b.picture("view-drag")
	b.release(x+24, y)
	b.is(`!document.getElementById("keep").disabled`)
	now, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, string(before), string(now), "a trial writes nothing")
	b.run(chromedp.Click("#undo"))
	b.is(`document.getElementById("keep").disabled && !document.querySelector("#diff .new")`)
	b.run(chromedp.Click("#redo"))
	b.is(`!document.getElementById("keep").disabled && document.querySelector("#diff .new")`)
	shown := ask[string](b, `[...document.querySelectorAll("#diff .new")].map((e) => e.textContent.slice(8)).join("\n")`)
	b.run(chromedp.Click("#keep"))
	b.is(`document.getElementById("says").textContent.startsWith("Written into")`)
	now, err = os.ReadFile(path)
	require.NoError(t, err)
	was, is := strings.Split(string(before), "\n"), strings.Split(string(now), "\n")
	require.Len(t, is, len(was)+3, "a pin: its header, its place, and a blank line")
	var added []string
	for i, k := 0, 0; i < len(is); i++ {
		if k < len(was) && is[i] == was[k] {
			k++
			continue
		}
		added = append(added, is[i])
	}
	assert.Equal(t, strings.Split(shown, "\n"), added)
	assert.Contains(t, string(now), "[[wall.pin]]\nat = \"")
	b.is(`document.querySelectorAll("#marks li button").length === 1`)
}

// viewShowsTextAsText: every text of a room that a page can show is planted with a script and with markup: nothing of it runs, nothing becomes an element.
func viewShowsTextAsText(t *testing.T, in context.Context) {
	path := copied(t, "reading-room.toml")
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	const planted = `<img src=x onerror=document.body.dataset.ran=1><script>document.body.dataset.ran=1</script></svg></style><b class=planted>`
	var out []string
	for _, line := range strings.Split(string(text), "\n") {
		key, value, ok := strings.Cut(line, "=")
		switch name := strings.TrimSpace(key); {
		case !ok || strings.Contains(value, `"ansi-`) || !strings.HasPrefix(strings.TrimSpace(value), `"`):
		case name == "wall":
			line = `wall = "North` + planted + `"`
		case name == "name" && strings.Contains(value, "North"):
			line = `name = "North` + planted + `"`
		case strings.Contains(" title number room place for by section tag submittal document contractor contract_drawings sample drawn_by checked_by approved_by note species ref ", " "+name+" "):
			quote := strings.LastIndex(line, `"`)
			line = line[:quote] + planted + line[quote:]
		}
		out = append(out, line)
	}
	require.NoError(t, os.WriteFile(path, []byte(strings.Join(out, "\n")), 0o666))
	b := browsing(t, in, 1280, 900)
	b.open(served(t, path))
	b.is(`document.getElementById("title").textContent.includes("<script>")`)
	assert.Contains(t, ask[string](b, `document.getElementById("which").textContent`), planted)
	edited(t, path, `number   = "`, "number   = \"\"\nfoo<script>document.body.dataset.ran=1</script> = \"")
	b.is(`!document.getElementById("mistakes").hidden && document.getElementById("mistakes").textContent.includes("<script>")`)
	assert.Zero(t, ask[int](b, `document.querySelectorAll(".planted, #walls img, #mistakes script, main script").length`))
	b.run(chromedp.Click("#tab-pages"))
	b.is(`document.querySelectorAll("#sheets img").length > 5 && document.querySelector("#sheets img").complete`)
	assert.Equal(t, "", ask[string](b, `document.body.dataset.ran ?? ""`))
	b.picture("view-pages")
}

// viewByKeys: keys alone go from seam to seam, move one, undo, and show a card; a finding leads to its place and its line.
func viewByKeys(t *testing.T, in context.Context) {
	b := browsing(t, in, 1280, 900)
	b.open(served(t, copied(t, "reading-room.toml")))
	b.run(chromedp.Focus(`#pane [tabindex="0"]`), chromedp.KeyEvent("\uE074")) // arrow right
	b.is(`document.activeElement.closest("#pane") && document.getElementById("told").textContent.length > 10`)
	b.run(doing(`document.querySelector("#pane .seam[data-id]").focus()`))
	told := ask[string](b, `document.getElementById("told").innerText`)
	for _, want := range []string{"seam ", "from the left end, at the floor", "from 0 at the level line", "from bend C", "room to the left", "room to the right"} {
		assert.Contains(t, told, want)
	}
	b.picture("view-told")
	b.run(doing(`document.activeElement.dispatchEvent(new KeyboardEvent("keydown", { key: "ArrowRight", shiftKey: true, bubbles: true }))`))
	b.is(`document.querySelector("#diff .new") && !document.getElementById("keep").disabled`)
	b.run(doing(`document.dispatchEvent(new KeyboardEvent("keydown", { key: "z", ctrlKey: true, bubbles: true }))`))
	b.is(`document.getElementById("keep").disabled`)
	b.run(doing(`const p = document.getElementById("pane"), r = p.getBoundingClientRect(); const at = (kind, id, x) => p.dispatchEvent(new PointerEvent(kind, { pointerId: id, bubbles: true, clientX: r.left + x, clientY: r.top + 90 })); at("pointerdown", 7, 200); at("pointerdown", 8, 260); at("pointermove", 8, 400); at("pointerup", 7, 200); at("pointerup", 8, 400)`))
	b.is(`document.getElementById("pane").classList.contains("zoomed")`) // two fingers
	b.run(chromedp.Click("#zoom-all"))
	b.is(`!document.getElementById("pane").classList.contains("zoomed")`)
	b.run(chromedp.Click("#findings li button"))
	b.is(`document.querySelector("#pane .here") && document.getElementById("told").textContent.includes("line 145[[wall.box]]")`)
	b.run(doing(`[...document.querySelectorAll("#pane [data-id]")].find((e) => e.querySelector(".sheet")).focus(); document.activeElement.dispatchEvent(new KeyboardEvent("keydown", { key: "Enter", bubbles: true }))`))
	b.is(`document.getElementById("card").open && document.querySelector("#card img").complete && document.querySelector("#card img").naturalWidth > 50`)
	b.picture("view-card")
}

// viewReadsBack: what hangs is typed under the words of the wall's page, and planned with.
func viewReadsBack(t *testing.T, in context.Context) {
	path := copied(t, "feature-wall-fireplace.toml")
	b := browsing(t, in, 1280, 900)
	b.open(served(t, path))
	b.run(chromedp.Click("#hung summary"))
	first := ask[string](b, `document.querySelector("#hung [name=first]").value`)
	assert.Equal(t, "as hung, edge, foot", ask[string](b, `document.querySelector("#hung [name=edge-`+first+`]").closest("label").innerText`))
	b.run(chromedp.SetValue(`#hung [name=edge-`+first+`]`, `1' 11 1/2`), chromedp.Click("#hung button"))
	b.is(`[...document.querySelectorAll("#diff .new")].some((e) => e.textContent.includes("[[hung]]"))`)
	b.is(`!document.getElementById("keep").disabled`)
	assert.Equal(t, 2, ask[int](b, `document.querySelectorAll("#trials button dl").length`), "the new plan stands beside the old")
	b.picture("view-hung")
	b.run(chromedp.Click("#keep"))
	b.is(`document.getElementById("says").textContent.startsWith("Written into")`)
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Contains(t, string(text), `edges  = ["1' 11 1/2"]`)
}

// viewOfAJob: the rooms of a job are chosen and tried like any; what the job says holds in them, and the pin goes into the room's own file.
func viewOfAJob(t *testing.T, in context.Context) {
	dir := t.TempDir()
	list, err := filepath.Glob("../../samples/job/*.toml")
	require.NoError(t, err)
	require.NotEmpty(t, list)
	for _, name := range list {
		text, err := os.ReadFile(name)
		require.NoError(t, err)
		require.NoError(t, os.WriteFile(filepath.Join(dir, filepath.Base(name)), text, 0o666))
	}
	b := browsing(t, in, 1280, 900)
	b.open(served(t, filepath.Join(dir, "ferry-terminal.toml")))
	b.is(`document.querySelectorAll("#rooms option").length === 5`)
	b.run(chromedp.SetValue("#rooms select", "2"), doing(`document.querySelector("#rooms select").dispatchEvent(new Event("change"))`))
	b.is(`document.getElementById("file").textContent.endsWith("waiting-room.toml") && document.querySelectorAll("#pane svg").length === 2`)
	b.picture("view-job")
	x, y := b.hold(1)
	for i := 1; i <= 4; i++ {
		b.drag(x+float64(4*i), y)
	}
	b.is(`document.querySelector("#diff .new")`)
	b.release(x+16, y)
	b.is(`!document.getElementById("keep").disabled`)
	b.run(chromedp.Click("#keep"))
	b.is(`document.getElementById("says").textContent.startsWith("Written into")`)
	text, err := os.ReadFile(filepath.Join(dir, "waiting-room.toml"))
	require.NoError(t, err)
	assert.Contains(t, string(text), "[[wall.pin]]")
}

// viewTriesTheRest: the closing seam, the middle of a sheet, a stretch without seams and the aim are tried as a seam is; trials stand side
// by side; what is marked is taken out again; two points are measured, drawn to what is near.
func viewTriesTheRest(t *testing.T, in context.Context) {
	b := browsing(t, in, 1280, 900)
	b.open(served(t, copied(t, "reading-room.toml")))
	choose := func(id, value string) {
		b.run(doing(`const e = document.getElementById("` + id + `"); e.value = "` + value + `"; e.dispatchEvent(new Event("change"))`))
	}
	pull := func(from, to float64) {
		p := ask[[]float64](b, `(() => { const e = document.getElementById("pane"); e.scrollIntoView({ block: "center" }); const r = e.getBoundingClientRect(); return [r.left, r.width, r.top + r.height / 2]; })()`)
		b.run(chromedp.MouseEvent(input.DispatchMouseEventTypeMousePressed, p[0]+p[1]*from, p[2], chromedp.ButtonType(input.MouseButtonLeft), chromedp.ClickCount(1)))
		for i := 1; i <= 4; i++ {
			b.drag(p[0]+p[1]*(from+(to-from)*float64(i)/4), p[2])
		}
		b.release(p[0]+p[1]*to, p[2])
	}
	wrote := func(what string) {
		b.is(`[...document.querySelectorAll("#diff .new")].some((e) => e.textContent.includes("` + what + `")) && !document.getElementById("keep").disabled`)
	}
	choose("aim", "even")
	wrote(`aim = \"even\"`)
	b.run(chromedp.Click("#new-trial"))
	choose("tool", "keep")
	pull(0.3, 0.36)
	wrote("[[wall.keep_clear]]")
	assert.Equal(t, 3, ask[int](b, `document.querySelectorAll("#trials button").length`), "the file and two trials")
	choose("tool", "middle")
	pull(0.6, 0.62)
	wrote("middle")
	assert.Equal(t, 1, ask[int](b, `document.querySelectorAll("#pane .kept").length`))
	b.run(doing(`[...document.querySelectorAll("#marks button")].at(-1).click()`))
	b.is(`document.querySelectorAll("#pane .kept").length === 0`)
	choose("tool", "measure")
	x := ask[[]float64](b, `[...document.querySelectorAll("#pane .seam line.hit")].slice(1, 3).map((l) => { const r = l.getBoundingClientRect(); return r.left + r.width / 2; })`)
	y := ask[float64](b, `(() => { const r = document.getElementById("pane").getBoundingClientRect(); return r.top + r.height * 0.3; })()`)
	for _, at := range x {
		b.run(chromedp.MouseClickXY(at+3, y))
	}
	b.is(`document.querySelector("#pane .ruled")`)
	told := ask[string](b, `document.querySelector("#told h3").textContent`)
	gaps := ask[string](b, `document.querySelector("#pane .over").getAttribute("aria-label")`)
	assert.Contains(t, told, " across, ", gaps)
	choose("which", "2")
	b.is(`document.querySelector("#pane .over").getAttribute("aria-label").startsWith("South")`)
	choose("tool", "seam")
	b.run(doing(`document.getElementById("trials").firstElementChild.click()`))
	const closing = `[...document.querySelectorAll("#pane .seam[data-id]")].find((e) => e.getAttribute("aria-label").includes("closing seam"))`
	b.is(closing)
	b.run(doing(closing + `.focus()`))
	b.run(doing(`document.activeElement.dispatchEvent(new KeyboardEvent("keydown", { key: "ArrowLeft", shiftKey: true, altKey: true, bubbles: true }))`))
	wrote("close_at")
	b.picture("view-rest")
}

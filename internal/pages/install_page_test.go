package pages

import (
	"bytes"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/pdf"
	"flitchlay/internal/scene"
	"flitchlay/internal/svg"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// smallRoom has a start, a wrap, a box, an opening that reaches down to the floor, and a rip at both ends.
const smallRoom = `[project]
title = "Linden Court: bar"
room = "7"
tag = "WD-4"
drawn = 2026-03-03
units = "in"
[[project.revision]]
mark = "B"
date = 2026-03-20
note = "Door moved"
[veneer]
gross_width = "24 1/2"
overlap = "1"
length = "10'"
[[flitch]]
number = "H-2"
sheets = "4-20"
damaged = [6]
spare = 2
[room]
level_line = "4'"
base = "5 1/2"
[[wall]]
name = "Bar"
length = "9' 4 1/4"
height = "9'"
corner = "inside"
lean = ["1/4", "0"]
left_end = "casing"
[[wall.opening]]
kind = "door"
from_left = "3'"
width = "3'"
height = "7'"
[[wall.box]]
kind = "outlet"
x = "1' 2"
z = "1' 6"
[[wall]]
name = "Return"
length = "3' 1"
height = "9'"
right_end = "trim"
`

func smallPlan(t *testing.T) *layout.Plan { return planOf(t, "small.toml", []byte(smallRoom)) }

func smallInstall(t *testing.T) *scene.Document {
	d, err := Install(smallPlan(t), template(t, "ansi-a"))
	require.NoError(t, err)
	return d
}

func TestInstallGolden(t *testing.T) {
	c := newCrew(smallPlan(t), template(t, "ansi-a"), "Install")
	pages := append(c.startPage(1), c.wallPage(c.walls[0], c.walls[0].pieces[0], 2)...)
	pages = append(append(pages, c.wallPage(c.walls[1], c.walls[1].pieces[0], 3)...), c.cutPages(4)...)
	var b strings.Builder
	for _, p := range pages {
		b.WriteString(scene.Dump(p))
	}
	file := filepath.Join("testdata", "install", "small.txt")
	if os.Getenv("FLITCHLAY_UPDATE") == "1" {
		require.NoError(t, os.MkdirAll(filepath.Dir(file), 0o755))
		require.NoError(t, os.WriteFile(file, []byte(b.String()), 0o644))
	}
	want, err := os.ReadFile(file)
	require.NoError(t, err, "make update writes it")
	assert.Equal(t, string(want), b.String())
}

func TestInstallSameBytes(t *testing.T) {
	var files [2][]byte
	for i := range files {
		out, err := pdf.Write(smallInstall(t))
		require.NoError(t, err)
		files[i] = out
	}
	assert.True(t, bytes.Equal(files[0], files[1]), "same input, same bytes")
}

// part is what a test reads from a scene: a group of a class with its data.
type drawnPart struct {
	*scene.Group
	data map[string]string
}

func partsOf(g *scene.Group, class string) []drawnPart {
	var list []drawnPart
	for _, it := range g.Items {
		in, ok := it.(*scene.Group)
		if !ok {
			continue
		}
		if in.Class == class {
			data := map[string]string{}
			for _, d := range in.Data {
				data[d.Key] = d.Value
			}
			list = append(list, drawnPart{in, data})
		}
		list = append(list, partsOf(in, class)...)
	}
	return list
}

func textsOf(g *scene.Group) []string {
	var list []string
	g.Texts(func(t *scene.Text) { list = append(list, t.String) })
	return list
}

func pageTitled(t *testing.T, d *scene.Document, title string) *scene.Page {
	t.Helper()
	for _, p := range d.Pages {
		if p.Title == title {
			return p
		}
	}
	t.Fatalf("no page %q", title)
	return nil
}

func TestInstallDrawsEverySeamToScale(t *testing.T) {
	p := smallPlan(t)
	d := smallInstall(t)
	for _, wall := range []string{"Bar", "Return"} {
		page := pageTitled(t, d, wall)
		view := partsOf(&page.Group, "view")
		require.Len(t, view, 1)
		assert.Equal(t, wall, view[0].data["wall"])
		scale, err := strconv.ParseFloat(view[0].data["scale"], 64)
		require.NoError(t, err)
		// the datum's circle is x = 0
		datum := partsOf(&page.Group, "datum")
		require.Len(t, datum, 1)
		zero := 0.0
		for _, it := range datum[0].Items {
			if c, ok := it.(*scene.Circle); ok {
				zero = c.Centre.X
			}
		}
		seams := partsOf(&page.Group, "seam")
		count := 0
		for i := range p.Runs[0].Seams {
			s := &p.Runs[0].Seams[i]
			if p.Room.Walls[s.Wall].Name != wall {
				continue
			}
			found := false
			for _, g := range seams {
				if g.data["at"] != s.At.Decimal() {
					continue
				}
				found = true
				for _, it := range g.Items {
					line := it.(*scene.Line)
					assert.InDelta(t, zero+s.X.MM()/scale, line.A.X, 1e-9, "seam %d", s.Number)
					assert.InDelta(t, line.A.X, line.B.X, 1e-9, "a seam is upright")
				}
			}
			assert.True(t, found, "seam %d is drawn", s.Number)
			count++
		}
		assert.Len(t, seams, count, "no seam is drawn that is not there")
		for _, g := range partsOf(&page.Group, "plumb-line") {
			for _, it := range g.Items {
				if l, ok := it.(*scene.Line); ok {
					assert.True(t, l.A.Y >= view[0].View.Box.Y1 || l.B.Y <= view[0].View.Box.Y0 || l.B.Y >= view[0].View.Box.Y1,
						"plumb lines stay outside the wall")
				}
			}
		}
	}
}

func TestInstallFiguresComeFromThePlan(t *testing.T) {
	p := smallPlan(t)
	d := smallInstall(t)
	bar := pageTitled(t, d, "Bar")
	var figures []string
	for _, g := range partsOf(&bar.Group, "dimension") {
		figures = append(figures, textsOf(g.Group)...)
	}
	tape := strings.Join(textsOf(partsOf(&bar.Group, "tape-list")[0].Group), "\n")
	for i := range p.Runs[0].Seams {
		s := &p.Runs[0].Seams[i]
		if p.Room.Walls[s.Wall].Name != "Bar" {
			continue
		}
		line := p.Style.Format(s.X + p.Room.Veneer.Overlap.HalfDown())
		assert.Contains(t, figures, line, "running figure of seam %d's line", s.Number)
		assert.Contains(t, tape, line, "line of seam %d in the tape list", s.Number)
		assert.Contains(t, tape, p.Style.Format(s.X), "seam %d in the tape list", s.Number)
	}
	assert.Contains(t, figures, p.Style.Format(p.Room.Walls[0].Length), "the wall's end")
	// A lean of 1/4 in from the floor to 9 ft is 1/9 in at 4 ft: 1/8 in to the sixteenth.
	assert.Contains(t, tape, `1/8" right of it`)
}

func TestInstallNumbersAreThoseOfTheFlitch(t *testing.T) {
	p := smallPlan(t)
	bar := pageTitled(t, smallInstall(t), "Bar")
	require.Equal(t, 4, p.Runs[0].Sheets[0].Number, "the flitch begins with 4")
	for _, g := range partsOf(&bar.Group, "sheet") {
		place, err := strconv.Atoi(g.data["place"])
		require.NoError(t, err)
		assert.Contains(t, textsOf(g.Group), strconv.Itoa(p.Runs[0].Sheets[place-1].Number))
		assert.NotContains(t, textsOf(g.Group), "6", "sheet 6 is damaged")
	}
	assert.Contains(t, textsOf(&bar.Group), "B", "the issue stands in its box")
}

func TestInstallIsBlackAndWhite(t *testing.T) {
	for _, p := range smallInstall(t).Pages {
		dump := scene.Dump(p)
		for _, m := range regexp.MustCompile(`#[0-9a-f]{6}`).FindAllString(dump, -1) {
			assert.Contains(t, []string{"#000000", "#ffffff"}, m, "page %s", p.Name)
		}
	}
}

func TestInstallSaysWhatMayNotBeHung(t *testing.T) {
	text := strings.Replace(smallRoom, `length = "10'"`, `length = "8'"`, 1)
	text = strings.Replace(text, "[room]\n", "[rules]\njoint_height = \"2'\"\n[room]\n", 1)
	p := planOf(t, "short.toml", []byte(strings.Replace(text, `sheets = "4-20"`, `sheets = "4-8"`, 1)))
	d, err := Install(p, template(t, "ansi-a"))
	require.NoError(t, err)
	pole, err := Pole(p, template(t, "ansi-a"))
	require.NoError(t, err)
	for _, page := range append(d.Pages, pole.Pages...) {
		assert.Contains(t, textsOf(&page.Group), "NOT FOR HANGING", "page %s", page.Name)
	}
	for _, page := range smallInstall(t).Pages {
		assert.NotContains(t, textsOf(&page.Group), "NOT FOR HANGING", "page %s", page.Name)
	}
}

// TestInstallTextIsFound reads the PDF back with pdftotext of poppler.
func TestInstallTextIsFound(t *testing.T) {
	tool, err := exec.LookPath("pdftotext")
	if err != nil {
		t.Skip("pdftotext is not here")
	}
	out, err := pdf.Write(smallInstall(t))
	require.NoError(t, err)
	file := filepath.Join(t.TempDir(), "install.pdf")
	require.NoError(t, os.WriteFile(file, out, 0o644))
	text, err := exec.Command(tool, "-layout", file, "-").Output()
	require.NoError(t, err)
	p := smallPlan(t)
	for _, want := range []string{"TAPE LIST", "DATUM", "HOLD 0: dry lay-out", "RIP BEFORE PASTING", "FIRST: cut these, hang, hold", "C1 in",
		p.Style.Format(p.Runs[0].Sheets[0].CutLength), p.Style.Format(p.Runs[0].Sheets[0].Above), "damaged"} {
		assert.Contains(t, string(text), want)
	}
}

func TestPoleIsTrueToScale(t *testing.T) {
	p := smallPlan(t)
	d, err := Pole(p, template(t, "ansi-a"))
	require.NoError(t, err)
	seams := map[string]int{}
	for _, page := range d.Pages {
		bars := partsOf(&page.Group, "check-bar")
		require.Len(t, bars, 2, "page %s has both bars", page.Name)
		for i, want := range []float64{100, 101.6} { // 4 in = 101.6 mm: 1 in = 25.4 mm exactly, NIST SP 811
			line := bars[i].Items[0].(*scene.Line)
			assert.InDelta(t, want, line.B.X-line.A.X, 0.05)
		}
		for _, v := range partsOf(&page.Group, "view") {
			assert.Equal(t, "1", v.data["scale"])
			from, err := strconv.ParseFloat(v.data["from"], 64)
			require.NoError(t, err)
			for _, s := range partsOf(v.Group, "seam") {
				x, err := strconv.ParseFloat(s.data["x"], 64)
				require.NoError(t, err)
				assert.InDelta(t, v.View.Box.X0+x-from, s.Items[0].(*scene.Line).A.X, 0.05)
				seams[s.data["at"]]++
			}
		}
	}
	for i := range p.Runs[0].Seams {
		assert.Positive(t, seams[p.Runs[0].Seams[i].At.Decimal()], "seam %d is on a pole", p.Runs[0].Seams[i].Number)
	}
}

// TestPoleMeasuresTrueInSVG measures the bars of the SVG file, whose user units are millimetres on paper.
func TestPoleMeasuresTrueInSVG(t *testing.T) {
	d, err := Pole(smallPlan(t), template(t, "a4"))
	require.NoError(t, err)
	out, err := svg.Page(d.Pages[0], svg.Options{})
	require.NoError(t, err)
	for length, want := range map[string]float64{"100": 100, "101.6": 101.6} {
		m := regexp.MustCompile(`data-length="` + regexp.QuoteMeta(length) + `"[^>]*>\s*<[^>]*?(?:x1="([-0-9.]+)"[^>]*?x2="([-0-9.]+)"|d="M([-0-9.]+)[ ,][-0-9.]+ ?[LH] ?([-0-9.]+))`).FindSubmatch(out)
		require.NotNil(t, m, "bar of %s mm", length)
		a, b := string(m[1])+string(m[3]), string(m[2])+string(m[4])
		x1, err := strconv.ParseFloat(a, 64)
		require.NoError(t, err)
		x2, err := strconv.ParseFloat(b, 64)
		require.NoError(t, err)
		assert.InDelta(t, want, math.Abs(x2-x1), 0.05)
	}
}

func TestInstallSplitsLongWallsThroughSheets(t *testing.T) {
	text := strings.Replace(smallRoom, `length = "9' 4 1/4"`, `length = "62'"`, 1)
	text = strings.Replace(text, `sheets = "4-20"`, `sheets = "4-60"`, 1)
	p := planOf(t, "long.toml", []byte(text))
	c := newCrew(p, template(t, "ansi-a"), "Install")
	w := c.walls[0]
	require.Greater(t, len(w.pieces), 2)
	seen := map[int]int{}
	for i, piece := range w.pieces {
		assert.LessOrEqual(t, len(piece.hangs), mostSheets)
		for _, h := range piece.hangs {
			seen[h.place]++
		}
		if i > 0 {
			assert.Equal(t, w.pieces[i-1].to, piece.from, "pieces meet")
			assert.Same(t, w.pieces[i-1].hangs[len(w.pieces[i-1].hangs)-1], piece.hangs[0], "the sheet that is cut through is on both")
			h := piece.hangs[0]
			assert.Equal(t, (h.from+h.to)/2, piece.from, "through the middle of it")
		}
	}
	twice := 0
	for _, h := range w.hangs {
		assert.Positive(t, seen[h.place], "sheet at place %d is on a page", h.place)
		if seen[h.place] == 2 {
			twice++
		}
	}
	assert.Equal(t, len(w.pieces)-1, twice)
}

func TestCutListTotals(t *testing.T) {
	c := newCrew(smallPlan(t), template(t, "ansi-a"), "Install")
	rows := c.cutRows()
	require.NotEmpty(t, rows)
	assert.Equal(t, c.plan.Totals.Sheets, len(rows))
	// 9 ft less 5 1/2 in of base, and trims of 2 in at head and foot: 8'-10 1/2", to be ordered as 9 ft.
	assert.Equal(t, 106*length.Inch+length.Inch/2, rows[0].sheet.CutLength)
	lines := c.stockLengths(rows)
	assert.Equal(t, strconv.Itoa(len(rows))+" out of 9 ft", lines[1])
	var struck []string
	for _, r := range c.struckRows() {
		struck = append(struck, r.number+" "+r.struck)
	}
	assert.Equal(t, []string{"19, 20 spare", "6 damaged"}, struck)
}

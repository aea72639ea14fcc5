package crew

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
	"flitchlay/internal/length"
	"flitchlay/internal/pdf"
	"flitchlay/internal/roomtest"
	"flitchlay/internal/scene"
)

func SmallInstall(t *testing.T) *scene.Document {
	d, err := Install(roomtest.SmallPlan(t), roomtest.Template(t, "ansi-a"))
	require.NoError(t, err)
	return d
}

func TestInstallGolden(t *testing.T) {
	c := NewSet(roomtest.SmallPlan(t), roomtest.Template(t, "ansi-a"), "Install")
	require.Len(t, c.strip, 2, "a page for each wall")
	pages := append(c.StartPage(1), c.wallPage(c.strip[0], 2)...)
	pages = append(append(pages, c.wallPage(c.strip[1], 3)...), c.cutPages(4)...)
	var b strings.Builder
	for _, p := range pages {
		b.WriteString(scene.Dump(p))
	}
	file := filepath.Join("testdata", "install", "small.txt")
	if effort.Updating() {
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
		out, err := pdf.Write(SmallInstall(t))
		require.NoError(t, err)
		files[i] = out
	}
	assert.True(t, bytes.Equal(files[0], files[1]), "same input, same bytes")
}

func TextsOf(g *scene.Group) []string {
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
	p := roomtest.SmallPlan(t)
	d := SmallInstall(t)
	for _, wall := range []string{"Bar", "Return"} {
		page := pageTitled(t, d, wall)
		view := roomtest.PartsOf(&page.Group, "view")
		require.Len(t, view, 1)
		assert.Equal(t, wall, view[0].Data["wall"])
		scale, err := strconv.ParseFloat(view[0].Data["scale"], 64)
		require.NoError(t, err)
		// the datum's circle stands where the left corner crosses the level line
		datum := roomtest.PartsOf(&page.Group, "datum")
		require.Len(t, datum, 1)
		zero := 0.0
		for _, it := range datum[0].Items {
			if c, ok := it.(*scene.Circle); ok {
				zero = c.Centre.X
			}
		}
		for i := range p.Room.Walls {
			if p.Room.Walls[i].Name == wall {
				zero -= p.Room.Datum(i).MM() / scale
			}
		}
		seams := roomtest.PartsOf(&page.Group, "seam")
		count := 0
		for i := range p.Runs[0].Seams {
			s := &p.Runs[0].Seams[i]
			if p.Room.Walls[s.Wall].Name != wall {
				continue
			}
			found := false
			for _, g := range seams {
				if g.Data["at"] != s.At.Decimal() {
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
		for _, g := range roomtest.PartsOf(&page.Group, "plumb-line") {
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
	p := roomtest.SmallPlan(t)
	d := SmallInstall(t)
	bar := pageTitled(t, d, "Bar")
	var figures []string
	for _, g := range roomtest.PartsOf(&bar.Group, "dimension") {
		figures = append(figures, TextsOf(g.Group)...)
	}
	tape := strings.Join(TextsOf(roomtest.PartsOf(&bar.Group, "tape-list")[0].Group), "\n")
	// A lean of 1/4 in from the floor to 9 ft is 1/9 in at 4 ft: 1/8 in to the sixteenth. The level line begins there.
	corner := length.Inch / 8
	for i := range p.Runs[0].Seams {
		s := &p.Runs[0].Seams[i]
		if p.Room.Walls[s.Wall].Name != "Bar" {
			continue
		}
		line := p.Style.Format(s.X + p.Room.Veneer.Overlap.HalfDown() - corner)
		assert.Contains(t, figures, line, "running figure of seam %d's line", s.Number)
		assert.Contains(t, tape, line, "line of seam %d in the tape list", s.Number)
		assert.Contains(t, tape, p.Style.Format(s.X-corner), "seam %d in the tape list", s.Number)
	}
	assert.Contains(t, figures, p.Style.Format(p.Room.Walls[0].Length-corner), "the wall's end")
}

func TestInstallNumbersAreThoseOfTheFlitch(t *testing.T) {
	p := roomtest.SmallPlan(t)
	bar := pageTitled(t, SmallInstall(t), "Bar")
	require.Equal(t, 4, p.Runs[0].Sheets[0].Number, "the flitch begins with 4")
	for _, g := range roomtest.PartsOf(&bar.Group, "sheet") {
		place, err := strconv.Atoi(g.Data["place"])
		require.NoError(t, err)
		assert.Contains(t, TextsOf(g.Group), strconv.Itoa(p.Runs[0].Sheets[place-1].Number))
		assert.NotContains(t, TextsOf(g.Group), "6", "sheet 6 is damaged")
	}
	assert.Contains(t, TextsOf(&bar.Group), "B", "the issue stands in its box")
}

func TestInstallIsBlackAndWhite(t *testing.T) {
	for _, p := range SmallInstall(t).Pages {
		dump := scene.Dump(p)
		for _, m := range regexp.MustCompile(`#[0-9a-f]{6}`).FindAllString(dump, -1) {
			assert.Contains(t, []string{"#000000", "#ffffff"}, m, "page %s", p.Name)
		}
	}
}

// TestInstallTextIsFound reads the PDF back with pdftotext of poppler.
func TestInstallTextIsFound(t *testing.T) {
	tool := effort.Tool(t, "pdftotext")
	out, err := pdf.Write(SmallInstall(t))
	require.NoError(t, err)
	file := filepath.Join(t.TempDir(), "install.pdf")
	require.NoError(t, os.WriteFile(file, out, 0o644))
	text, err := exec.Command(tool, "-layout", file, "-").Output()
	require.NoError(t, err)
	p := roomtest.SmallPlan(t)
	for _, want := range []string{"TAPE LIST", "DATUM", "HOLD 0: dry lay-out", "RIP BEFORE PASTING", "FIRST: cut these, hang them, HOLD 1", "C1 in",
		p.Style.Format(p.Runs[0].Sheets[0].CutLength), p.Style.Format(p.Runs[0].Sheets[0].Above), "damaged"} {
		assert.Contains(t, string(text), want)
	}
}

func TestInstallSplitsLongWallsThroughSheets(t *testing.T) {
	text := strings.Replace(roomtest.SmallRoom, `length = "9' 4 1/4"`, `length = "62'"`, 1)
	text = strings.Replace(text, `sheets = "4-20"`, `sheets = "4-60"`, 1)
	p := roomtest.PlanOf(t, "long.toml", []byte(text))
	c := NewSet(p, roomtest.Template(t, "ansi-a"), "Install")
	w := c.Walls[0]
	require.Greater(t, len(w.pieces), 2)
	seen := map[int]int{}
	for i, piece := range w.pieces {
		assert.LessOrEqual(t, len(piece.Hangs), mostSheets)
		for _, h := range piece.Hangs {
			seen[h.Place]++
		}
		if i > 0 {
			assert.Equal(t, w.pieces[i-1].To, piece.From, "pieces meet")
			assert.Same(t, w.pieces[i-1].Hangs[len(w.pieces[i-1].Hangs)-1], piece.Hangs[0], "the sheet that is cut through is on both")
			h := piece.Hangs[0]
			assert.Equal(t, (h.From+h.To)/2, piece.From, "through the middle of it")
		}
	}
	twice := 0
	for _, h := range w.Hangs {
		assert.Positive(t, seen[h.Place], "sheet at place %d is on a page", h.Place)
		if seen[h.Place] == 2 {
			twice++
		}
	}
	assert.Equal(t, len(w.pieces)-1, twice)
}

func TestCutListTotals(t *testing.T) {
	c := NewSet(roomtest.SmallPlan(t), roomtest.Template(t, "ansi-a"), "Install")
	rows := c.cutRows()
	require.NotEmpty(t, rows)
	assert.Equal(t, c.Plan.Totals.Sheets, len(rows))
	// 9 ft less 5 1/2 in of base, and trims of 2 in at head and foot: 8'-10 1/2", to be ordered as 9 ft.
	assert.Equal(t, 106*length.Inch+length.Inch/2, rows[0].sheet.CutLength)
	lines := c.stockLengths(rows)
	assert.Equal(t, "all by number, from sheets 9 ft long or longer; none from an offcut", lines[1])
	var struck []string
	for _, r := range c.struckRows() {
		struck = append(struck, r.number+" "+r.struck)
	}
	assert.Equal(t, []string{"19, 20 spare", "6 damaged", "12-18 not used"}, struck)
}

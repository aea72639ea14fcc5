package pdf

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/go-pdf/fpdf"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
	"flitchlay/internal/font"
	"flitchlay/internal/scene"
)

// run writes the file and has a program read it. The program is skipped where it is missing, unless FLITCHLAY_CHECK=1.
func run(t *testing.T, file []byte, name string, args ...string) string {
	t.Helper()
	path := effort.Tool(t, name)
	at := filepath.Join(t.TempDir(), "d.pdf")
	require.NoError(t, os.WriteFile(at, file, 0o644))
	for i := range args {
		args[i] = strings.ReplaceAll(args[i], "FILE", at)
	}
	var out, faults bytes.Buffer
	c := exec.Command(path, args...)
	c.Stdout, c.Stderr = &out, &faults
	require.NoError(t, c.Run(), "%s: %s", name, faults.String())
	return out.String()
}

func write(t testing.TB, d *scene.Document) []byte {
	t.Helper()
	out, err := Write(d)
	require.NoError(t, err)
	return out
}

// sample is a document with something of everything.
func sample() *scene.Document {
	p := scene.NewPage("Z-201", "Elevation", 431.8, 279.4)
	v := p.Viewed(scene.View{Box: scene.BoxAt(50, 50, 300, 150), Scale: 48, Name: "North (wall)", Ratio: `1/4" = 1'-0"`})
	v.HLine(60, 160.25, 100, scene.Pen(scene.Walls, 0.5).As(scene.Dashed(0.5)))
	v.Part(scene.Tag{Class: "seam"}).VLine(60, 50, 200, scene.Pen(scene.Seams, 0.35))
	v.Text(scene.Text{At: scene.Pt(100, 99), String: `12'-6 3/8"`, Height: 2.5, Anchor: scene.Middle, Layer: scene.Dimensions})
	v.Text(scene.Text{At: scene.Pt(40, 99), String: `9'-1 1/2"`, Height: 2.5, Anchor: scene.Middle, Angle: 90, Layer: scene.Dimensions})
	p.Text(scene.Text{At: scene.Pt(60, 210), String: "NORTH WALL é 墙😀", Height: 5, Bold: true, Layer: scene.Marks, Field: 1})
	m := image.NewNRGBA(image.Rect(0, 0, 3, 2))
	m.Set(1, 1, color.NRGBA{200, 0, 0, 128})
	var buf bytes.Buffer
	if err := png.Encode(&buf, m); err != nil {
		panic(err)
	}
	for range 2 {
		p.Image(scene.Image{Box: scene.BoxAt(390, 240, 24, 7), Kind: "png", Data: buf.Bytes(), Alt: "mark", Layer: scene.Frame})
	}
	p.Link(scene.BoxAt(60, 205, 50, 6), "Z-202")
	p.Web(scene.BoxAt(60, 215, 50, 6), "https://example.org/(a)?b=c")
	p.Web(scene.BoxAt(60, 225, 50, 6), "javascript:alert(1)")
	q := scene.NewPage("Z-202", "Details", 279.4, 215.9)
	c := q.Viewed(scene.View{Box: scene.BoxAt(20, 20, 100, 100), Scale: 25, Metric: true, Name: "Corner"}).Clipped(scene.Pt(20, 20), scene.Pt(120, 20), scene.Pt(20, 120))
	c.Circle(scene.Pt(60, 60), 30, scene.Pen("own", 0.35).Filled(scene.Grey(0.9)))
	q.Link(scene.BoxAt(0, 0, 20, 20), "Z-201")
	return &scene.Document{
		Title: "Harbour Lane: (reading) room é😀", Author: "Northlight Finishes", Subject: `a\b`,
		Date:  time.Date(2026, 4, 14, 0, 0, 0, 0, time.UTC),
		Pages: []*scene.Page{p, q},
		Outline: []scene.Entry{
			{Title: "Elevations é", Page: "Z-201"}, {Title: "North", Level: 1, Page: "Z-201", Y: 50}, {Title: "Corner", Level: 1, Page: "Z-202", Y: 20}, {Title: "Details", Page: "Z-202"},
		},
		Attachments: []scene.Attachment{
			{Name: "room.toml", About: "the room", Type: "application/toml", Data: []byte("units = \"in\"\n")},
			{Name: "cut list é.csv", Data: []byte("1,2\nendobj\nendstream\n")},
		},
	}
}

func TestStructureIsSound(t *testing.T) {
	out := run(t, write(t, sample()), "qpdf", "--check", "FILE")
	assert.Contains(t, out, "No syntax or stream encoding errors found")
	assert.Contains(t, out, "PDF Version: 1.7")
}

func TestDescriptionAndSizes(t *testing.T) {
	out := run(t, write(t, sample()), "pdfinfo", "-f", "1", "-l", "2", "FILE")
	for _, want := range []string{
		`Title: +Harbour Lane: \(reading\) room é😀`, `Author: +Northlight Finishes`, `Subject: +a\\b`, `CreationDate: +Tue Apr 14 \d\d:\d\d:\d\d 2026`,
		// 17 x 11 in is 1224 x 792 pt, 11 x 8.5 in 792 x 612 (ASME Y14.1 B and A).
		`Page +1 size: +1224 x 792 pts`, `Page +2 size: +792 x 612 pts`, `JavaScript: +no`,
	} {
		assert.Regexp(t, want, out)
	}
}

// MediaBox of every size against the paper standards: ISO 216 and ASME Y14.1 in points.
func TestMediaBoxIsThePaper(t *testing.T) {
	for _, c := range []struct {
		name                string
		width, height, w, h float64
	}{
		{"A1 landscape", 841, 594, 2383.937, 1683.780}, {"A4", 210, 297, 595.276, 841.890}, {"ANSI D", 863.6, 558.8, 2448, 1584}, {"ARCH E1", 1066.8, 762, 3024, 2160},
	} {
		out := write(t, &scene.Document{Pages: []*scene.Page{scene.NewPage("1", "", c.width, c.height)}})
		m := regexp.MustCompile(`/MediaBox \[0 0 ([0-9.]+) ([0-9.]+)\]`).FindSubmatch(out)
		require.Len(t, m, 3, c.name)
		w, err := strconv.ParseFloat(string(m[1]), 64)
		require.NoError(t, err)
		h, err := strconv.ParseFloat(string(m[2]), 64)
		require.NoError(t, err)
		assert.InDelta(t, c.w, w, 0.01, c.name)
		assert.InDelta(t, c.h, h, 0.01, c.name)
	}
}

func TestFontsAreEmbeddedSubsets(t *testing.T) {
	out := run(t, write(t, sample()), "pdffonts", "FILE")
	rows := strings.Split(strings.TrimSpace(out), "\n")[2:]
	require.Len(t, rows, 2)
	for i, name := range []string{`[A-Z]{6}\+FlitchlaySans`, `[A-Z]{6}\+FlitchlaySans-Bold`} {
		assert.Regexp(t, "^"+name+` +CID TrueType +Identity-H +yes yes yes`, rows[i])
	}
}

func TestTextIsFound(t *testing.T) {
	out := run(t, write(t, sample()), "pdftotext", "-layout", "FILE", "-")
	assert.Contains(t, out, `12'-6 3/8"`)
	assert.Contains(t, out, `9'-1 1/2"`)
	assert.Contains(t, out, "NORTH WALL é \uFFFD\uFFFD")
}

func TestOutlineLabelsAndLinksLeadToTheirPages(t *testing.T) {
	file := write(t, sample())
	out := run(t, file, "mutool", "show", "FILE", "outline")
	assert.Regexp(t, `(?s)"Elevations é"\s+#page=1.*"North"\s+#page=1.*"Corner"\s+#page=2.*"Details"\s+#page=2`, out)
	out = run(t, file, "mutool", "show", "FILE", "trailer/Root/PageLabels")
	assert.Regexp(t, `(?s)0 <<\s+/P \(Z-201\)\s+>> 1 <<\s+/P \(Z-202\)`, out)
	out = run(t, file, "mutool", "show", "FILE", "trailer/Root/ViewerPreferences/PrintScaling")
	assert.Equal(t, "/None", strings.TrimSpace(out))

	second := strings.TrimSpace(strings.TrimPrefix(strings.Split(run(t, file, "mutool", "show", "FILE", "pages"), "\n")[1], "page 2 = "))
	link := run(t, file, "mutool", "show", "FILE", "pages/1/Annots/1")
	assert.Contains(t, link, "/Dest [ "+second+" /Fit ]")
	// 60, 205 to 110, 211 mm on a page 279.4 high
	assert.Contains(t, link, "/Rect [ 170.079 193.89 311.811 210.898 ]")
	assert.Contains(t, run(t, file, "mutool", "show", "FILE", "pages/1/Annots/2"), "/URI (https://example.org/\\(a\\)?b=c)")
	assert.Contains(t, run(t, file, "mutool", "show", "FILE", "pages/1/Annots/3"), "null", "a script is no link")
}

func TestAttachmentsComeBackWhole(t *testing.T) {
	file := write(t, sample())
	out := run(t, file, "pdfdetach", "-list", "FILE")
	assert.Contains(t, out, "2 embedded files")
	assert.Contains(t, out, "1: room.toml")
	assert.Contains(t, out, "cut list")
	dir := t.TempDir()
	run(t, file, "pdfdetach", "-save", "2", "-o", filepath.Join(dir, "x"), "FILE")
	data, err := os.ReadFile(filepath.Join(dir, "x"))
	require.NoError(t, err)
	assert.Equal(t, sample().Attachments[1].Data, data)
}

func TestViewsCanBeMeasured(t *testing.T) {
	file := write(t, sample())
	out := run(t, file, "mutool", "show", "FILE", "pages/1/VP/1")
	assert.Contains(t, out, "/BBox [ 141.732 225.071 992.126 650.268 ]")
	assert.Contains(t, out, `/R (1/4" = 1'-0")`)
	out = run(t, file, "mutool", "show", "FILE", "pages/2/VP/1")
	assert.Contains(t, out, "/U (mm)")
	assert.Contains(t, out, "/R (1:25)")
}

// ISO 32000-1, 12.9: at 1/4 in to the foot 225.5625 points are 12.53125 ft, shown as 12 ft 6 3/8 in.
func TestScaleFactors(t *testing.T) {
	factor := func(v scene.View) float64 {
		m := regexp.MustCompile(`/C (0\.[0-9]+)`).FindStringSubmatch(scale(&v))
		require.Len(t, m, 2)
		c, err := strconv.ParseFloat(m[1], 64)
		require.NoError(t, err)
		return c
	}
	feet := 225.5625 * factor(scene.View{Scale: 48})
	assert.InDelta(t, 12.53125, feet, 1e-6)
	assert.Equal(t, 6.375, math.Round((feet-12)*12*16)/16)
	// Feet, or metres, in a point at the architect's and metric scales.
	for ratio, want := range map[float64]float64{128: 0.14814814814814814, 96: 0.1111111111111111, 24: 0.027777777777777776, 16: 0.018518518518518517, 1: 0.0011574074074074073} {
		assert.InDelta(t, want, factor(scene.View{Scale: ratio}), 1e-9)
	}
	for ratio, want := range map[float64]float64{10: 3.527777777, 20: 7.055555555, 50: 17.638888888, 100: 35.277777777} {
		assert.InDelta(t, want, 1000*factor(scene.View{Scale: ratio, Metric: true}), 1e-6)
	}
}

// trace is what mutool sees drawn.
type trace struct {
	strokes []drawn
	fills   []drawn
	letters []letter
	layers  []string
}

type drawn struct {
	width, color, layer string
	points              [][2]float64 // mm from the upper left
}

type letter struct {
	text       string
	x, y, adv  float64 // mm
	size       float64
	layer      string
	horizontal bool
}

func traced(t *testing.T, file []byte, page, height float64) trace {
	t.Helper()
	d := xml.NewDecoder(strings.NewReader(run(t, file, "mutool", "draw", "-F", "trace", "FILE", strconv.Itoa(int(page)))))
	var out trace
	layer, size := "", 0.0
	level := true
	var last *drawn
	value := func(s string) float64 {
		v, err := strconv.ParseFloat(s, 64)
		require.NoError(t, err)
		return v
	}
	for {
		tok, err := d.Token()
		if err == io.EOF {
			return out
		}
		require.NoError(t, err)
		e, ok := tok.(xml.StartElement)
		if !ok {
			continue
		}
		a := map[string]string{}
		for _, x := range e.Attr {
			a[x.Name.Local] = x.Value
		}
		at := func(x, y string) [2]float64 { return [2]float64{value(x) / perMM, height - value(y)/perMM} }
		switch e.Name.Local {
		case "layer":
			layer = a["name"]
			out.layers = append(out.layers, layer)
		case "end_layer":
			layer = ""
		case "stroke_path":
			out.strokes = append(out.strokes, drawn{width: a["linewidth"], color: a["color"], layer: layer})
			last = &out.strokes[len(out.strokes)-1]
		case "fill_path":
			out.fills = append(out.fills, drawn{color: a["color"], layer: layer})
			last = &out.fills[len(out.fills)-1]
		case "clip_path":
			last = &drawn{}
		case "moveto", "lineto":
			last.points = append(last.points, at(a["x"], a["y"]))
		case "span":
			m := strings.Fields(a["trm"])
			level = value(m[1]) == 0
			size = math.Hypot(value(m[0]), value(m[1]))
		case "g":
			p := at(a["x"], a["y"])
			out.letters = append(out.letters, letter{a["unicode"], p[0], p[1], value(a["adv"]) * size / perMM, size / perMM, layer, level})
		}
	}
}

func TestLinesAreTrueToAHundredthOfAMillimetre(t *testing.T) {
	for _, height := range []float64{279.4, 609.6} {
		p := scene.NewPage("1", "", 914.4, height)
		p.HLine(10, 110.25, 20.125, scene.Pen(scene.Walls, 0.5))
		p.VLine(900, 5, height-5, scene.Pen(scene.Seams, 0.35))
		p.Rect(scene.BoxAt(20, 30, 762.333, 100), scene.Pen(scene.Frame, 0.7))
		tr := traced(t, write(t, &scene.Document{Pages: []*scene.Page{p}}), 1, height)
		require.Len(t, tr.strokes, 3)
		at := tr.strokes[0].points
		assert.InDelta(t, 100.25, at[1][0]-at[0][0], 0.01)
		assert.InDelta(t, 20.125, at[0][1], 0.01)
		at = tr.strokes[1].points
		assert.InDelta(t, height-10, at[1][1]-at[0][1], 0.01)
		at = tr.strokes[2].points
		assert.InDelta(t, 762.333, math.Abs(at[1][0]-at[0][0]), 0.01)
		assert.Equal(t, []string{"walls", "seams", "frame"}, tr.layers)
	}
}

// The same in Go alone, for machines without mutool: the page as fpdf wrote it, not compressed.
func TestLineInThePagesOwnWords(t *testing.T) {
	p := scene.NewPage("1", "", 431.8, 279.4)
	p.HLine(10, 110.25, 20, scene.Pen(scene.Walls, 0.5))
	raw, _, err := draw(&scene.Document{Pages: []*scene.Page{p}}, false)
	require.NoError(t, err)
	m := regexp.MustCompile(`([0-9.]+) ([0-9.]+) m ([0-9.]+) ([0-9.]+) l S`).FindSubmatch(bytes.ReplaceAll(raw, []byte("\n"), []byte(" ")))
	require.Len(t, m, 5)
	var n [4]float64
	for i := range n {
		n[i], err = strconv.ParseFloat(string(m[i+1]), 64)
		require.NoError(t, err)
	}
	assert.InDelta(t, 100.25, (n[2]-n[0])/perMM, 0.01)
	assert.InDelta(t, 279.4-20, n[1]/perMM, 0.01)
	assert.Equal(t, n[1], n[3])
}

// The widths a reader gives the letters are those they were measured with: to a thousandth of the height each.
func TestTextHasItsMeasuredWidth(t *testing.T) {
	for _, bold := range []bool{false, true} {
		for _, angle := range []float64{0, 90, 45} {
			const s = `WALL 12'-6 3/8" é½`
			p := scene.NewPage("1", "", 300, 300)
			text := scene.Text{At: scene.Pt(150, 150), String: s, Height: 3.5, Bold: bold, Anchor: scene.Middle, Angle: angle, Layer: scene.Notes}
			p.Text(text)
			tr := traced(t, write(t, &scene.Document{Pages: []*scene.Page{p}}), 1, 300)
			require.Len(t, tr.letters, len([]rune(s)))
			total := 0.0
			for _, l := range tr.letters {
				total += l.adv
				assert.InDelta(t, font.Of(bold).Size(3.5), l.size, 0.002)
			}
			want := scene.Width(s, 3.5, bold)
			assert.InDelta(t, want, total, want*0.001)
			assert.InDelta(t, text.Pen().X, tr.letters[0].x, 0.02)
			assert.InDelta(t, text.Pen().Y, tr.letters[0].y, 0.02)
		}
	}
}

// A clip gives back the state before it: colours, widths, dashes, fonts and layers around it are what their items say.
func TestStateSurvivesAClip(t *testing.T) {
	red, blue := scene.Colour{R: 255}, scene.Colour{B: 255}
	p := scene.NewPage("1", "", 100, 100)
	line := func(g *scene.Group, y float64) {
		g.HLine(10, 90, y, scene.Pen(scene.Walls, 1).In(red).As(scene.Dashed(1)))
		g.Rect(scene.BoxAt(10, y, 5, 1), scene.Style{Layer: scene.Walls, Fill: scene.Solid(red)})
		g.Text(scene.Text{At: scene.Pt(10, y), String: "A", Height: 5, Bold: true, Colour: red, Layer: scene.Notes})
	}
	line(&p.Group, 10)
	c := p.Clipped(scene.BoxAt(20, 20, 50, 50).Corners()...)
	c.HLine(10, 90, 30, scene.Pen(scene.Seams, 2).In(blue))
	c.Text(scene.Text{At: scene.Pt(10, 30), String: "B", Height: 2.5, Colour: blue, Layer: scene.Notes})
	line(&p.Group, 80)
	tr := traced(t, write(t, &scene.Document{Pages: []*scene.Page{p}}), 1, 100)
	require.Len(t, tr.strokes, 3)
	for _, i := range []int{0, 2} {
		assert.Equal(t, drawn{"2.83", "1 0 0", "walls", tr.strokes[i].points}, tr.strokes[i])
	}
	assert.Equal(t, drawn{"5.67", "0 0 1", "seams", tr.strokes[1].points}, tr.strokes[1])
	require.Len(t, tr.fills, 2)
	assert.Equal(t, "1 0 0", tr.fills[0].color)
	assert.Equal(t, "1 0 0", tr.fills[1].color)
	require.Len(t, tr.letters, 3)
	assert.InDelta(t, tr.letters[0].size, tr.letters[2].size, 1e-9)
	assert.InDelta(t, 2, tr.letters[0].size/tr.letters[1].size, 0.01)
}

func TestSameInputSameBytes(t *testing.T) {
	first := write(t, sample())
	var wait sync.WaitGroup
	for range 10 {
		wait.Go(func() {
			again, err := Write(sample())
			if assert.NoError(t, err) {
				assert.Equal(t, first, again)
			}
		})
	}
	wait.Wait()
	assert.NotContains(t, string(first), "utf8"+family)
}

func TestWhatCannotBeDrawnIsAnError(t *testing.T) {
	_, err := Write(&scene.Document{})
	assert.ErrorContains(t, err, "without pages")
	d := sample()
	d.Pages[1].HLine(0, math.Inf(1), 5, scene.Pen(scene.Walls, 0.5))
	_, err = Write(d)
	assert.ErrorContains(t, err, "not finite")
	d = sample()
	d.Pages[0].Image(scene.Image{Box: scene.BoxAt(0, 0, 1, 1), Kind: "png", Data: []byte("no picture")})
	_, err = Write(d)
	assert.Error(t, err)
}

func FuzzText(f *testing.F) {
	for _, s := range []string{"WALL", "(a)\\)", "\xff", "墙😀", "\u0301", "endstream endobj", "\r\n"} {
		f.Add(s, 2.5, 45.0)
	}
	f.Fuzz(func(t *testing.T, s string, height, angle float64) {
		p := scene.NewPage(s, s, 100, 100)
		p.Text(scene.Text{At: scene.Pt(50, 50), String: s, Height: height, Angle: angle, Layer: scene.Layer(s), Field: 1})
		p.Link(scene.BoxAt(0, 0, 5, 5), s)
		d := &scene.Document{Title: s, Author: s, Pages: []*scene.Page{p}, Outline: []scene.Entry{{Title: s, Page: s}},
			Attachments: []scene.Attachment{{Name: s, About: s, Type: s, Data: []byte(s)}}}
		out, err := Write(d)
		if err != nil {
			if d.Validate() == nil {
				t.Fatal(err)
			}
			return
		}
		back, err := parse(out)
		if err != nil {
			t.Fatal(err)
		}
		if len(back.find("<<\n/Type /Catalog")) != 1 {
			t.Fatal("no catalog")
		}
	})
}

func set(pages int) *scene.Document {
	d := &scene.Document{Title: "Set"}
	for n := range pages {
		p := scene.NewPage(fmt.Sprintf("Z-%03d", n+1), "Elevation", 431.8, 279.4)
		for i := range 2000 {
			x, y := float64(i%50)*8, float64(i/50)*6
			p.Line(scene.Pt(x, y), scene.Pt(x+7, y+5.123), scene.Pen(scene.Layers[i/40%4], 0.25))
		}
		for i := range 300 {
			x, y := float64(i%20)*20, float64(i/20)*18
			p.Text(scene.Text{At: scene.Pt(x, y), String: fmt.Sprintf(`%d'-%d 3/8"`, i/12, i%12), Height: 2.5, Layer: scene.Dimensions, Bold: i%7 == 0})
		}
		d.Pages = append(d.Pages, p)
		d.Outline = append(d.Outline, scene.Entry{Title: p.Name, Page: p.Name})
	}
	return d
}

func BenchmarkWrite(b *testing.B) {
	for _, pages := range []int{1, 60} {
		d := set(pages)
		b.Run(fmt.Sprintf("%d pages", pages), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				out, err := Write(d)
				if err != nil {
					b.Fatal(err)
				}
				b.ReportMetric(float64(len(out)), "bytes")
			}
		})
		b.Run(fmt.Sprintf("%d pages fpdf alone", pages), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				var out bytes.Buffer
				f := fpdf.NewCustom(&fpdf.InitType{OrientationStr: "P", UnitStr: "pt", Size: size(d.Pages[0])})
				f.SetCatalogSort(true)
				f.AddUTF8FontFromBytes("x", "", font.Regular.Data())
				f.AddUTF8FontFromBytes("x", "B", font.Bold.Data())
				for _, p := range d.Pages {
					f.AddPageFormat("P", size(p))
					f.SetLineWidth(0.7)
					f.SetFont("x", "", 9.72)
					for _, it := range p.Items {
						switch it := it.(type) {
						case *scene.Line:
							f.Line(it.A.X*perMM, it.A.Y*perMM, it.B.X*perMM, it.B.Y*perMM)
						case *scene.Text:
							f.Text(it.At.X*perMM, it.At.Y*perMM, it.String)
						}
					}
				}
				if err := f.Output(&out); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

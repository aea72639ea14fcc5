package main

import (
	"encoding/xml"
	"image"
	_ "image/png"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"sort"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
)

// hair is how far a line may stand off its place on paper, in millimetres.
const hair = 0.05

// run runs a program and gives what it says.
func run(t *testing.T, name string, args ...string) string {
	t.Helper()
	out, err := exec.Command(name, args...).CombinedOutput()
	require.NoError(t, err, "%s %s\n%s", name, strings.Join(args, " "), out)
	return string(out)
}

// element is an element of an SVG file.
type element struct {
	XMLName  xml.Name
	Attrs    []xml.Attr `xml:",any,attr"`
	Children []element  `xml:",any"`
	Text     string     `xml:",chardata"`
}

func (e *element) attr(name string) string {
	for _, a := range e.Attrs {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

func (e *element) number(t *testing.T, name string) float64 {
	f, err := strconv.ParseFloat(e.attr(name), 64)
	require.NoError(t, err, "%s of %s", name, e.XMLName.Local)
	return f
}

// each visits an element and all in it.
func (e *element) each(visit func(*element)) {
	visit(e)
	for i := range e.Children {
		e.Children[i].each(visit)
	}
}

// of lists all elements of a class.
func (e *element) of(class string) []*element {
	var out []*element
	e.each(func(c *element) {
		if slices.Contains(strings.Fields(c.attr("class")), class) {
			out = append(out, c)
		}
	})
	return out
}

// texts are all words that can be selected.
func (e *element) texts() []string {
	var out []string
	e.each(func(c *element) {
		if c.XMLName.Local == "text" {
			out = append(out, strings.Fields(c.Text)...)
		}
	})
	return out
}

var figure = regexp.MustCompile(`-?\d+(\.\d+)?`)

// across is how far from left to right the feet of the outlines in some elements reach: above them edges may lean.
func across(t *testing.T, parts []*element) (left, right float64) {
	left, right = math.Inf(1), math.Inf(-1)
	for _, p := range parts {
		p.each(func(c *element) {
			switch c.XMLName.Local {
			case "polygon":
				xs, ys := points(c.attr("points"))
				foot := slices.Max(append(ys, math.Inf(-1)))
				for i, x := range xs {
					if ys[i] == foot {
						left, right = min(left, x), max(right, x)
					}
				}
			case "rect":
				left, right = min(left, c.number(t, "x")), max(right, c.number(t, "x")+c.number(t, "width"))
			}
		})
	}
	return left, right
}

// points reads the points of a polygon.
func points(text string) (xs, ys []float64) {
	for i, n := range figure.FindAllString(text, -1) {
		f, err := strconv.ParseFloat(n, 64)
		if err != nil {
			panic(err) // it matched
		}
		if i%2 == 0 {
			xs = append(xs, f)
		} else {
			ys = append(ys, f)
		}
	}
	return xs, ys
}

// On every elevation the seams stand as far apart, to the scale that the view says, as they do on the wall, and the sheets
// reach as far as the covering. Every seam of the layout is on an elevation of the submittal set.
func TestElevationsAreTrueToScale(t *testing.T) {
	for _, room := range some(t) {
		t.Run(filepath.Base(room), func(t *testing.T) {
			plan := laid(t, room)
			pages := svgs(t, drawn(t, room))
			measured, shown := 0, map[string]bool{}
			for name, page := range pages {
				for _, view := range page.of("view") {
					scale, err := strconv.ParseFloat(view.attr("data-scale"), 64)
					if err != nil || view.attr("data-wall") == "" {
						continue
					}
					var x0, at0 float64
					first := true
					for _, s := range view.of("seam") {
						x, onWall, ok := seamPlace(t, s)
						if !ok {
							continue
						}
						if first {
							x0, at0, first = x, onWall, false
						}
						assert.InDelta(t, (onWall-at0)/scale, x-x0, hair, "%s: seam at %s", name, s.attr("data-at"))
						shown[s.attr("data-at")] = true
						measured++
					}
					if strings.HasPrefix(name, "Z-2") { // elevations
						measured += wholeWall(t, plan, name, view, scale)
					}
				}
			}
			require.Greater(t, measured, 10)
			for _, r := range plan.Runs {
				for _, s := range r.Seams {
					if s.Seen == 0 {
						continue // behind a gap that the grain counts on through
					}
					assert.True(t, shown[strconv.FormatFloat(s.At, 'f', -1, 64)], "the seam at %v of wall %s is drawn", s.At, s.Wall)
				}
			}
		})
	}
}

// seamPlace is where a seam stands on paper, and on its wall.
func seamPlace(t *testing.T, s *element) (x, onWall float64, ok bool) {
	if s.attr("data-x") == "" {
		return 0, 0, false
	}
	s.each(func(c *element) {
		if c.XMLName.Local == "line" && !ok && c.attr("x1") == c.attr("x2") {
			x, ok = c.number(t, "x1"), true
		}
	})
	return x, s.number(t, "data-x"), ok
}

// wholeWall holds a wall that is shown whole to its length: from the left edge of its first sheet to the right edge of its
// last one.
func wholeWall(t *testing.T, plan walls, page string, view *element, scale float64) int {
	places := map[string]bool{}
	sheets := view.of("sheet")
	for _, s := range sheets {
		places[s.attr("data-number")] = true
	}
	low, high := math.Inf(1), math.Inf(-1)
	for _, r := range plan.Runs {
		for _, s := range r.Sheets {
			for _, p := range s.Pieces {
				if p.Wall != view.attr("data-wall") {
					continue
				}
				if s.Number == nil || !places[strconv.Itoa(*s.Number)] {
					return 0 // a piece of the wall is on another page
				}
				foot := math.Inf(1)
				for _, q := range p.Outline {
					foot = min(foot, q[1])
				}
				for _, q := range p.Outline {
					if q[1] == foot {
						low, high = min(low, q[0]), max(high, q[0])
					}
				}
			}
		}
	}
	left, right := across(t, sheets)
	if math.IsInf(left, 0) {
		return 0
	}
	assert.InDelta(t, (high-low)/scale, right-left, hair, "%s: the covering of wall %s", page, view.attr("data-wall"))
	return 1
}

// The same lines stand in the PDF file, as another program reads it.
//
// Source: MuPDF's trace of everything that is drawn.
func TestPDFStandsWhereSVGStands(t *testing.T) {
	effort.Tool(t, "mutool")
	for which, room := range some(t) {
		t.Run(filepath.Base(room), func(t *testing.T) {
			dir, order := drawnSets(t, room)
			pages := svgs(t, dir)
			compared := 0
			for _, set := range setsOf(which) {
				file := filepath.Join(dir, set+".pdf")
				uprights := uprights(t, file)
				require.Len(t, uprights, len(order[set]), "%s: the program reads as many pages", set)
				for i, name := range order[set] {
					page := pages[name]
					require.NotNil(t, page, "page %s is there as SVG", name)
					for _, s := range page.of("seam") {
						x, _, ok := seamPlace(t, s)
						if !ok {
							continue
						}
						k := sort.SearchFloat64s(uprights[i], x-hair)
						assert.True(t, k < len(uprights[i]) && uprights[i][k] <= x+hair, "%s page %s: a line at %v mm", set, name, x)
						compared++
					}
				}
			}
			require.Greater(t, compared, 5)
		})
	}
}

// uprights are the places of all upright lines of a file by page, ascending, in millimetres.
func uprights(t *testing.T, file string) [][]float64 {
	var out [][]float64
	matrix, last := make([]float64, 6), []float64{0, 0}
	trace(t, file, func(step string, at map[string]string) {
		switch step {
		case "page":
			out = append(out, nil)
		case "stroke_path":
			numbers(t, at["transform"], matrix)
		case "moveto", "lineto":
			place := make([]float64, 2)
			numbers(t, at["x"]+" "+at["y"], place)
			if step == "lineto" && place[0] == last[0] && place[1] != last[1] && matrix[1] == 0 {
				out[len(out)-1] = append(out[len(out)-1], (place[0]*matrix[0]+matrix[4])*25.4/72)
			}
			last = place
		}
	})
	for i := range out {
		sort.Float64s(out[i])
		require.NotEmpty(t, out[i], "page %d has lines", i+1)
	}
	return out
}

// The PDF files are sound to qpdf, and every typeface is in them.
func TestPDFIsSound(t *testing.T) {
	qpdf, pdffonts := effort.Tool(t, "qpdf"), effort.Tool(t, "pdffonts")
	for which, room := range some(t) {
		dir := drawn(t, room)
		for _, set := range setsOf(which) {
			file := filepath.Join(dir, set+".pdf")
			assert.Contains(t, run(t, qpdf, "--check", file), "No syntax or stream encoding errors found", room)
			lines := strings.Split(strings.TrimSpace(run(t, pdffonts, file)), "\n")
			require.Greater(t, len(lines), 2, "a head, a rule, and typefaces")
			for _, line := range lines[2:] {
				f := strings.Fields(line)
				// name type encoding emb sub uni object ID, from the right: the type may be of several words
				assert.Equal(t, "yes", f[len(f)-5], "embedded: %s", line)
				assert.Equal(t, "yes", f[len(f)-3], "with its characters: %s", line)
			}
		}
	}
}

// Every word of every page, sheet numbers and dimensions among them, is text in the PDF as it is in the SVG.
func TestPDFIsText(t *testing.T) {
	pdftotext := effort.Tool(t, "pdftotext")
	for which, room := range some(t) {
		dir, order := drawnSets(t, room)
		pages := svgs(t, dir)
		for _, set := range setsOf(which) {
			said := strings.Split(run(t, pdftotext, "-raw", filepath.Join(dir, set+".pdf"), "-"), "\f")
			require.Len(t, said, len(order[set])+1, "%s: every page ends with a form feed", set)
			for i, name := range order[set] {
				got := strings.Join(strings.Fields(said[i]), "")
				for _, word := range pages[name].texts() {
					assert.Contains(t, got, word, "%s %s page %s", filepath.Base(room), set, name)
				}
				for _, s := range pages[name].of("sheet-number") {
					assert.NotEmpty(t, s.texts(), "%s %s page %s: a sheet's number is text", filepath.Base(room), set, name)
				}
				for _, s := range pages[name].of("dimension") {
					assert.NotEmpty(t, s.texts(), "%s %s page %s: a dimension is text", filepath.Base(room), set, name)
				}
			}
		}
	}
}

// Two programs that draw SVG draw every page of a sample, at its size, with something on it.
//
// Three pages by the one; with FLITCHLAY_CHECK=1 all that TestPagesLookTheSameInThreePrograms leaves out too, and an elevation by
// a browser.
func TestSVGIsDrawn(t *testing.T) {
	rsvg := effort.Tool(t, "rsvg-convert")
	dir, order := drawnSets(t, filepath.Join(top, "samples", "reading-room.toml"))
	pages, pictures := svgs(t, dir), t.TempDir()
	names := []string{"Z-201", "install-03", "pole-01"}
	if strips := order["pole"]; effort.Full() && len(strips) > mostStrips+1 {
		names = append(names, strips[mostStrips+1:]...)
	}
	for _, name := range names {
		page := pages[name]
		require.NotNil(t, page, name)
		file := filepath.Join(dir, "svg", name+".svg")
		png := filepath.Join(pictures, name+".png")
		run(t, rsvg, "-d", "50.8", "-p", "50.8", "-b", "white", "-o", png, file)
		box := figure.FindAllString(page.attr("viewBox"), -1)
		require.Len(t, box, 4)
		w, err := strconv.ParseFloat(box[2], 64)
		require.NoError(t, err)
		picture := read(t, png)
		assert.InDelta(t, 2*w, picture.Bounds().Dx(), 1, "%s: two points to a millimetre", name)
		assert.Greater(t, dark(picture), 500, "%s: something is drawn", name)
	}
	if !effort.Full() {
		return
	}
	chromium := effort.Tool(t, "chromium")
	page := filepath.Join(dir, "svg", "Z-201.svg")
	shot := filepath.Join(pictures, "shot.png")
	abs, err := filepath.Abs(page)
	require.NoError(t, err)
	run(t, chromium, "--headless", "--no-sandbox", "--disable-gpu", "--hide-scrollbars", "--window-size=1632,1056", "--screenshot="+shot, "file://"+abs)
	assert.Greater(t, dark(read(t, shot)), 5000, "the elevation is drawn")
}

func read(t *testing.T, file string) image.Image {
	f, err := os.Open(file)
	require.NoError(t, err)
	defer f.Close()
	picture, _, err := image.Decode(f)
	require.NoError(t, err)
	return picture
}

// dark counts the dark points of a picture.
func dark(p image.Image) int {
	count := 0
	for y := p.Bounds().Min.Y; y < p.Bounds().Max.Y; y++ {
		for x := p.Bounds().Min.X; x < p.Bounds().Max.X; x++ {
			if r, g, b, a := p.At(x, y).RGBA(); a > 0x8000 && r+g+b < 3*0x6000 {
				count++
			}
		}
	}
	return count
}

package main

import (
	"math"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
)

// measured is a room of which every length is known beforehand: 15 ft by 9 ft, a window 3 ft wide at 4 ft and 4 ft high at
// 2 1/2 ft, an outlet at 10 ft, sheets that cover 24 in.
const measured = `[project]
title = "Harbour Lane Library: one wall"
units = "in"
[page]
install = "./poles.toml"
[veneer]
gross_width = "25"
overlap = "1"
length = "10'"
[room]
level_line = "4'"
base = "6"
[[wall]]
name = "North"
length = "15'"
height = "9'"
[[wall.opening]]
kind = "window"
from_left = "4'"
width = "3'"
sill = "2' 6"
height = "4'"
[[wall.box]]
kind = "outlet"
x = "10'"
z = "1' 6"
`

const (
	foot      = 304.8 // mm, exactly
	wallLong  = 15 * foot
	wallHigh  = 9 * foot
	winLeft   = 4 * foot
	winRight  = 7 * foot
	boxAt     = 10 * foot
	stripLong = 254.0 // of a pole
)

// stroke is a straight line as it stands in a file, in millimetres, y down.
type stroke struct {
	a, b   point
	width  float64
	dashed bool
}

func (s stroke) upright() bool { return math.Abs(s.a.x-s.b.x) < 0.005 }
func (s stroke) level() bool   { return math.Abs(s.a.y-s.b.y) < 0.005 }
func (s stroke) long() float64 { return math.Hypot(s.b.x-s.a.x, s.b.y-s.a.y) }
func (s stroke) top() float64  { return min(s.a.y, s.b.y) }
func (s stroke) of(w float64) bool {
	return math.Abs(s.width-w) < 0.006 // a hundredth of a point, as the file rounds
}

// strokesOf are all straight lines of a PDF file by page.
//
// Source: MuPDF's trace of everything that is drawn.
func strokesOf(t *testing.T, file string) [][]stroke {
	t.Helper()
	var out [][]stroke
	var to [6]float64
	var pen stroke
	var at, start point
	stroking := false
	add := func(b point) {
		if stroking {
			s := pen
			s.a, s.b = at, b
			out[len(out)-1] = append(out[len(out)-1], s)
		}
		at = b
	}
	trace(t, file, func(step string, v map[string]string) {
		place := func() point {
			var p [2]float64
			numbers(t, v["x"]+" "+v["y"], p[:])
			return point{(p[0]*to[0] + p[1]*to[2] + to[4]) * 25.4 / 72, (p[0]*to[1] + p[1]*to[3] + to[5]) * 25.4 / 72}
		}
		switch step {
		case "page":
			out = append(out, nil)
		case "fill_path", "clip_path", "clip_stroke_path":
			stroking = false
			numbers(t, v["transform"], to[:])
		case "stroke_path":
			stroking = true
			numbers(t, v["transform"], to[:])
			width, err := strconv.ParseFloat(v["linewidth"], 64)
			require.NoError(t, err)
			pen = stroke{width: width * math.Hypot(to[0], to[1]) * 25.4 / 72, dashed: v["dash"] != ""}
		case "moveto":
			at = place()
			start = at
		case "lineto":
			add(place())
		case "closepath":
			add(start)
		}
	})
	return out
}

// onlyRoom draws the measured room, with all poles and all that can stand on them.
func onlyRoom(t *testing.T) (dir string, order map[string][]string, seams, lines []float64) {
	page, err := os.ReadFile(filepath.Join(top, "templates", "pages", "ansi-a.toml"))
	require.NoError(t, err)
	keptFile(t, "poles.toml", string(page)+"\n[pole]\nother = true\nopenings = true\n")
	file := keptFile(t, "measured.toml", measured)
	dir, order = drawnSets(t, file)
	for _, r := range laid(t, file).Runs {
		for _, s := range r.Seams {
			seams, lines = append(seams, s.At), append(lines, s.At+12.7) // a line is half the overlap of 1 in from the seam
		}
	}
	// 180 in are six sheets of 24 in and two ends alike
	want := []float64{}
	for x := 18.0; x < 180; x += 24 {
		want = append(want, x*25.4)
	}
	require.InDeltaSlice(t, want, seams, 1e-6, "the seams of a wall without anything in the way")
	return dir, order, seams, lines
}

// near lists which of the wanted places have nothing near, and which there are that nobody wants.
func near(t *testing.T, what string, want, got []float64) {
	t.Helper()
	for _, w := range want {
		assert.True(t, slices.ContainsFunc(got, func(g float64) bool { return math.Abs(g-w) <= hair }), "%s: nothing at %.3f mm; there are %.3f", what, w, got)
	}
	for _, g := range got {
		assert.True(t, slices.ContainsFunc(want, func(w float64) bool { return math.Abs(g-w) <= hair }), "%s: a line at %.3f mm that is none of %.3f", what, g, want)
	}
}

// On the strips of a story pole, as they stand in the PDF, every seam, plumb line, opening edge, box and the end of the
// wall is where it is on the wall, the ticks are a millimetre and an eighth of an inch apart, and both bars are as long as
// they say.
func TestPoleIsFullSizeInPDF(t *testing.T) {
	effort.Tool(t, "mutool")
	dir, order, seams, lines := onlyRoom(t)
	pages := strokesOf(t, filepath.Join(dir, "pole.pdf"))
	drawn := svgs(t, dir)
	ticked, poles := 0, 0 // millimetres that strips have to show; poles that have begun
	var seamAt, lineAt, edgeAt, boxes, ends []float64
	millimetres, eighths := 0, 0
	for i, page := range pages {
		var bars []float64
		var left, tops []float64 // of the strips: their dashed frames
		for _, s := range page {
			switch {
			case s.level() && s.of(0.35) && (math.Abs(s.long()-100) <= hair || math.Abs(s.long()-101.6) <= hair):
				bars = append(bars, s.long())
			case s.level() && s.of(0.18) && s.dashed && math.Abs(s.long()-stripLong) <= hair:
				left, tops = append(left, min(s.a.x, s.b.x)), append(tops, s.a.y)
			}
		}
		near(t, "check bars", []float64{100, 101.6}, bars)
		slices.Sort(tops)
		for k := 0; k+1 < len(tops); k += 2 {
			views := drawn[order["pole"][i]].of("view")
			require.Less(t, k/2, len(views))
			strip, from := views[k/2].attr("data-strip"), views[k/2].number(t, "data-from")
			if strip == "1" {
				poles++
			}
			if poles > 1 {
				continue // up the wall
			}
			ticked += int(min(from+stripLong, wallLong)) - int(math.Ceil(from-hair)) + 1
			for _, s := range page {
				mid := (s.a.y + s.b.y) / 2
				if !s.upright() || mid < tops[k] || mid > tops[k+1] {
					continue
				}
				at := from + s.a.x - left[0]
				switch {
				case s.of(0.13) && math.Abs(s.a.y-(tops[k]+44)) < hair && s.b.y < s.a.y: // over the line
					assert.InDelta(t, math.Round(at), at, hair, "a millimetre of strip %s", strip)
					millimetres++
				case s.of(0.13) && math.Abs(s.a.y-(tops[k]+44)) < hair: // under it, where they are numbered
					assert.InDelta(t, math.Round(at/3.175)*3.175, at, hair, "an eighth of an inch of strip %s", strip)
					eighths++
				case s.long() < 40:
				case s.of(0.7) && s.dashed:
					lineAt = append(lineAt, at)
				case s.of(0.7):
					seamAt = append(seamAt, at)
				case s.of(0.5):
					ends = append(ends, at)
				case s.of(0.25) && s.dashed:
					boxes = append(boxes, at)
				case s.of(0.25):
					edgeAt = append(edgeAt, at)
				}
			}
		}
	}
	near(t, "seams", seams, seamAt)
	near(t, "plumb lines", lines, lineAt)
	near(t, "edges of the window, each a line on either side", []float64{winLeft - 0.5, winLeft + 0.5, winRight - 0.5, winRight + 0.5}, edgeAt)
	near(t, "the outlet", []float64{boxAt}, boxes)
	near(t, "the datum and the end of the wall", []float64{0, wallLong}, ends)
	assert.Equal(t, ticked, millimetres, "a tick for every millimetre of a strip")
	assert.GreaterOrEqual(t, eighths, ticked*10/32, "a tick for every eighth of an inch")
}

// In the PDF of the submittal set the wall, its seams and its window stand at the scale that is written under the view.
func TestElevationIsToScaleInPDF(t *testing.T) {
	effort.Tool(t, "mutool")
	pdftotext := effort.Tool(t, "pdftotext")
	dir, order, seams, _ := onlyRoom(t)
	i := slices.Index(order["submittal"], "Z-201")
	require.GreaterOrEqual(t, i, 0)
	file := filepath.Join(dir, "submittal.pdf")
	said := strings.Join(strings.Fields(run(t, pdftotext, "-raw", "-f", strconv.Itoa(i+1), "-l", strconv.Itoa(i+1), file, "-")), " ")
	require.Contains(t, said, `SCALE 1/2" = 1'-0" (1:24)`)
	wallIn(t, strokesOf(t, file)[i], 24, 0.5, 0.5, seams)
}

// In the PDF of the install set, which takes the largest scale that the paper bears, they stand at the one that the page
// carries as its data.
func TestInstallPageIsToScaleInPDF(t *testing.T) {
	effort.Tool(t, "mutool")
	dir, order, seams, _ := onlyRoom(t)
	pages := svgs(t, dir)
	strokes := strokesOf(t, filepath.Join(dir, "install.pdf"))
	walls := 0
	for i, name := range order["install"] {
		for _, view := range pages[name].of("view") {
			wallIn(t, strokes[i], view.number(t, "data-scale"), 0.35, 0.7, seams)
			walls++
		}
	}
	require.Equal(t, 1, walls, "the wall takes one page")
}

// wallIn finds the measured wall in the lines of a page by its height, with pens of some width for its ends and for the
// window, and holds all of it to a scale.
func wallIn(t *testing.T, page []stroke, scale, end, window float64, seams []float64) {
	t.Helper()
	var ends []float64
	low := 0.0
	for _, s := range page {
		if s.upright() && s.of(end) && math.Abs(s.long()-wallHigh/scale) <= hair {
			ends, low = append(ends, s.a.x), max(s.a.y, s.b.y)
		}
	}
	require.Len(t, ends, 2, "the two ends of a wall 9 ft high")
	slices.Sort(ends)
	assert.InDelta(t, wallLong/scale, ends[1]-ends[0], hair, "the wall on paper")
	var got []float64
	for _, s := range page {
		x := s.a.x - ends[0]
		if !s.upright() || x < 1 || x > ends[1]-ends[0]-1 {
			continue
		}
		fromTop := math.Abs(s.top()-(low-wallHigh/scale)) <= hair && s.long() > 10 // a seam begins at the ceiling
		if s.of(0.35) && fromTop || s.of(window) && math.Abs(s.long()-4*foot/scale) <= hair {
			got = append(got, x)
		}
	}
	want := []float64{winLeft / scale, winRight / scale}
	for _, x := range seams {
		want = append(want, x/scale)
	}
	near(t, "seams and the window on paper", want, got)
}

// In the SVG files of all three sets the window and the seams of every view stand as far apart as on the wall, at the
// scale that the view says; strips of the pole are at full size.
func TestViewsOfAllSetsAreToScaleInSVG(t *testing.T) {
	dir, order, _, _ := onlyRoom(t)
	pages := svgs(t, dir)
	for _, set := range sets {
		measured := 0
		for _, name := range order[set] {
			for _, view := range pages[name].of("view") {
				if view.attr("data-wall") == "" {
					continue
				}
				scale := view.number(t, "data-scale")
				var zero []float64 // where 0 of the wall stands, by everything that says where it is
				for _, class := range []string{"seam", "plumb-line"} {
					for _, s := range view.of(class) {
						s.each(func(c *element) {
							if c.XMLName.Local == "line" && c.attr("x1") == c.attr("x2") && s.attr("data-at") != "" {
								// the only wall begins where its run does
								zero = append(zero, c.number(t, "x1")-s.number(t, "data-at")/scale)
							}
						})
					}
				}
				for _, o := range view.of("opening") {
					if o.attr("data-left") != "" {
						left, right := across(t, []*element{o})
						require.False(t, math.IsInf(left, 0), "%s: a window has an outline", name)
						zero = append(zero, left-winLeft/scale, right-winRight/scale)
					}
				}
				if set == "pole" {
					assert.Equal(t, 1.0, scale, name)
					for _, frame := range view.Children {
						if frame.attr("data-layer") == "frame" {
							left, right := across(t, []*element{&frame})
							assert.InDelta(t, stripLong, right-left, hair, "%s: a strip", name)
							if !strings.Contains(pages[name].title(), "up the wall") {
								zero = append(zero, left-view.number(t, "data-from"))
							}
						}
					}
				}
				for _, z := range zero {
					assert.InDelta(t, zero[0], z, hair, "%s, 1:%v", name, scale)
				}
				measured += len(zero)
			}
		}
		assert.Greater(t, measured, 7, "%s set", set)
	}
}

// title is the title of a page.
func (e *element) title() string {
	for _, c := range e.Children {
		if c.XMLName.Local == "title" {
			return c.Text
		}
	}
	return ""
}

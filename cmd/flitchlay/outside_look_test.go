package main

import (
	"fmt"
	"image"
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

// Two pictures of a page agree if of the dark points of either at most one in a thousand has nothing dark within a point of
// it in the other. A point is 0.254 mm: 100 of them are an inch.
//
// Poppler draws the thinnest line, of 0.13 mm, one point wide and black. Others share it out: where it falls between two
// points, each is covered by 0.13/2 of 0.254 mm, and is 190 of 255 light. What is under 205 is therefore something dark.
const (
	dpi      = 100
	darkness = 100   // of 255: what counts as dark
	darkish  = 205   // what a dark point may be in another picture, see below
	mostLost = 0.001 // of the dark points
)

// shades is a picture in grey, 0 black to 255 white, on white ground.
type shades struct {
	w, h int
	at   []uint8
}

func shadesOf(p image.Image) shades {
	box := p.Bounds()
	s := shades{box.Dx(), box.Dy(), make([]uint8, box.Dx()*box.Dy())}
	if pix, stride := opaque(p); pix != nil { // what other programs write, without a call for each point
		for i := range s.at {
			at := pix[i/s.w*stride+i%s.w*4:]
			s.at[i] = uint8((int(at[0]) + int(at[1]) + int(at[2])) * 0x101 / 3 >> 8)
		}
		return s
	}
	for y := range s.h {
		for x := range s.w {
			r, g, b, a := p.At(box.Min.X+x, box.Min.Y+y).RGBA()
			s.at[y*s.w+x] = uint8(((r+g+b)/3 + 0xFFFF - a) >> 8)
		}
	}
	return s
}

// pixmap reads a picture as pdftoppm writes it: P6, width and height, the most that a colour has, a byte for each of three colours.
//
// Source: the file format of the Netpbm project, ppm(5).
func pixmap(t *testing.T, file string) shades {
	data, err := os.ReadFile(file)
	require.NoError(t, err)
	var s shades
	var most int
	_, err = fmt.Sscanf(string(data[:min(len(data), 64)]), "P6\n%d %d\n%d\n", &s.w, &s.h, &most)
	require.NoError(t, err, file)
	require.Equal(t, 255, most, file)
	require.Greater(t, len(data), 3*s.w*s.h, file)
	data = data[len(data)-3*s.w*s.h:]
	s.at = make([]uint8, s.w*s.h)
	for i := range s.at {
		s.at[i] = uint8((int(data[3*i]) + int(data[3*i+1]) + int(data[3*i+2])) * 0x101 / 3 >> 8)
	}
	return s
}

// isOfItsSize holds a picture to the size that the page states, within a point.
func isOfItsSize(t *testing.T, name string, page *element, s shades) {
	t.Helper()
	w, h := inches(t, page)
	assert.InDelta(t, w*dpi, s.w, 1, "%s: points across", name)
	assert.InDelta(t, h*dpi, s.h, 1, "%s: points down", name)
}

// mostStrips is the last page of a pole that is compared.
const mostStrips = 6

// opaque are the points of a picture in four bytes each where none shows what is behind it, and how many bytes a row takes.
func opaque(p image.Image) (pix []uint8, stride int) {
	switch m := p.(type) {
	case *image.RGBA:
		if m.Opaque() {
			return m.Pix, m.Stride
		}
	case *image.NRGBA:
		if m.Opaque() {
			return m.Pix, m.Stride
		}
	}
	return nil, 0
}

// lost counts the dark points of one picture, and those of them with nothing dark in the other on or next to them.
func (s shades) lost(o shades) (dark, lost int) {
	for y := range s.h {
		for x := range s.w {
			if s.at[y*s.w+x] >= darkness {
				continue
			}
			dark++
			found := false
			for v := max(0, y-1); v <= min(o.h-1, y+1) && !found; v++ {
				for u := max(0, x-1); u <= min(o.w-1, x+1) && !found; u++ {
					found = o.at[v*o.w+u] < darkish
				}
			}
			if !found {
				lost++
			}
		}
	}
	return dark, lost
}

// agree holds two pictures of a page to the limit, either way.
func agree(t *testing.T, what string, a, b shades) {
	t.Helper()
	assert.InDelta(t, a.w, b.w, 1, "%s: width in points", what)
	assert.InDelta(t, a.h, b.h, 1, "%s: height in points", what)
	for _, way := range []struct {
		name     string
		from, to shades
	}{{what, a, b}, {what + ", the other way", b, a}} {
		dark, lost := way.from.lost(way.to)
		assert.Greater(t, dark, 500, "%s: something is drawn", way.name)
		assert.LessOrEqual(t, float64(lost), mostLost*float64(dark), "%s: %d of %d dark points have no match", way.name, lost, dark)
	}
}

// Every page looks the same as PDF and as SVG, in three programs that share no line of code: Poppler draws the PDF, librsvg
// and a browser draw the SVG. The limit is that of agree.
//
// Four pages by Poppler and librsvg, by turns of a room in inches and of one in millimetres. With
// FLITCHLAY_CHECK=1 every page of the architect's set of every sample and, by turns of the samples, every third of the crew's, whose
// pages are of few kinds, and one page of each kind of both in the browser too; FLITCHLAY_CHECK=long takes every page.
func TestPagesLookTheSameInThreePrograms(t *testing.T) {
	pdftoppm, rsvg := effort.Tool(t, "pdftoppm"), effort.Tool(t, "rsvg-convert")
	browser := ""
	if effort.Full() {
		browser = effort.Tool(t, "chromium")
	}
	kinds := []string{"Z-001", "Z-101", "Z-201", "Z-401", "Z-501", "Z-601", "install-01", "install-03", "pole-01"}
	if !effort.Full() {
		kinds = []string{"Z-001", "Z-201", "install-03", "pole-01"}
	}
	rooms := some(t)
	for which, room := range rooms {
		t.Run(filepath.Base(room), func(t *testing.T) {
			t.Parallel()
			dir, order := drawnSets(t, room)
			pages, pictures := svgs(t, dir), t.TempDir()
			fromBrowser := map[string]shades{}
			if browser != "" && slices.Contains([]string{"reading-room.toml", "metric-headwall.toml"}, filepath.Base(room)) {
				fromBrowser = browsed(t, browser, dir, pictures, kinds, pages)
			}
			for _, set := range sets {
				fromPoppler := popplers(t, pdftoppm, dir, pictures, set, order[set])
				for i, name := range order[set] {
					kind := slices.Index(kinds, name)
					shot := kind >= 0
					switch {
					case !effort.Full() && (!shot || kind%len(rooms) != which):
						continue
					case !shot && set == "pole" && i > mostStrips:
						continue // all strips are drawn alike
					case !shot && set == "install" && (i+which)%effort.Waited(3, 1) > 0:
						continue
					}
					svg, out := filepath.Join(dir, "svg", name+".svg"), filepath.Join(pictures, name)
					fromPDF := pixmap(t, fromPoppler(i+1))
					isOfItsSize(t, name, pages[name], fromPDF)
					run(t, rsvg, "-d", strconv.Itoa(dpi), "-p", strconv.Itoa(dpi), "-b", "white", "-o", out+"-rsvg.png", svg)
					agree(t, name+": PDF by Poppler, SVG by librsvg", fromPDF, shadesOf(read(t, out+"-rsvg.png")))
					if in, ok := fromBrowser[name]; ok {
						agree(t, name+": PDF by Poppler, SVG in the browser", fromPDF, in)
						delete(fromBrowser, name)
					}
				}
			}
			require.Empty(t, fromBrowser, "all that the browser shows is compared")
		})
	}
}

// popplers tells where Poppler's picture of a page of a set is, counted from 1. Where all are looked at they are drawn at once, which
// takes half the time.
func popplers(t *testing.T, pdftoppm, dir, pictures, set string, pages []string) func(page int) string {
	t.Helper()
	ask := func(first, last int, out string) {
		run(t, pdftoppm, "-r", strconv.Itoa(dpi), "-f", strconv.Itoa(first), "-l", strconv.Itoa(last), "-forcenum", filepath.Join(dir, set+".pdf"), out)
	}
	found := func(out string, at int) string {
		files, err := filepath.Glob(out + "-*.ppm") // the figures are as many as those of the last page
		require.NoError(t, err)
		require.Greater(t, len(files), at)
		slices.Sort(files)
		return files[at]
	}
	if !effort.Full() {
		return func(page int) string {
			out := filepath.Join(pictures, pages[page-1]+"-pdf")
			ask(page, page, out)
			return found(out, 0)
		}
	}
	last := len(pages)
	if set == "pole" {
		last = min(last, mostStrips+1)
	}
	out := filepath.Join(pictures, set)
	ask(1, last, out)
	return func(page int) string { return found(out, page-1) }
}

// browsed are pages as a browser shows them, one over the other in one window, by name; of a name that is no page of the room there
// is none.
func browsed(t *testing.T, browser, dir, pictures string, names []string, pages map[string]*element) map[string]shades {
	const inch = 96 // CSS pixels in an inch; a page begins at a whole inch, so that its points fall on those of the picture
	var html strings.Builder
	html.WriteString("<!DOCTYPE html><style>img { display: block; position: absolute; left: 0 }</style>\n")
	type place struct{ top, w, h int } // in points
	places, wide, top := map[string]place{}, 0, 0
	for _, name := range names {
		if pages[name] == nil {
			continue
		}
		w, h := inches(t, pages[name])
		path, err := filepath.Abs(filepath.Join(dir, "svg", name+".svg"))
		require.NoError(t, err)
		fmt.Fprintf(&html, "<img style=\"top: %dpx\" src=\"file://%s\">\n", top*inch, path)
		places[name] = place{top * dpi, int(math.Round(w * dpi)), int(math.Round(h * dpi))}
		top += int(math.Ceil(h))
		wide = max(wide, int(math.Ceil(w)))
	}
	file, png := filepath.Join(pictures, "pages.html"), filepath.Join(pictures, "pages.png")
	require.NoError(t, os.WriteFile(file, []byte(html.String()), 0o644))
	run(t, browser, "--headless", "--no-sandbox", "--disable-gpu", "--hide-scrollbars", fmt.Sprintf("--force-device-scale-factor=%.9f", dpi/float64(inch)),
		fmt.Sprintf("--window-size=%d,%d", wide*inch, top*inch), "--screenshot="+png, "file://"+file)
	all, out := shadesOf(read(t, png)), map[string]shades{}
	for name, p := range places {
		require.LessOrEqual(t, p.top+p.h, all.h, "%s is in the picture", name)
		s := shades{p.w, p.h, nil}
		for y := range p.h {
			s.at = append(s.at, all.at[(p.top+y)*all.w:][:p.w]...)
		}
		out[name] = s
	}
	return out
}

// inches is the size that a page states, in inches.
func inches(t *testing.T, page *element) (w, h float64) {
	t.Helper()
	box := figure.FindAllString(page.attr("viewBox"), -1)
	require.Len(t, box, 4)
	var size [2]float64
	for i, text := range box[2:] {
		mm, err := strconv.ParseFloat(text, 64)
		require.NoError(t, err)
		size[i] = mm / 25.4
	}
	return size[0], size[1]
}

// The measure finds a line that is missing, one that stands a tenth of an inch off, and one too faint; it
// does not find one that falls between two points.
func TestPicturesThatDifferAreFound(t *testing.T) {
	paint := func(draw func(set func(x, y int, v uint8))) shades {
		s := shades{200, 200, slices.Repeat([]uint8{255}, 200*200)}
		draw(func(x, y int, v uint8) { s.at[y*200+x] = v })
		return s
	}
	line := func(x int, v uint8) func(set func(x, y int, v uint8)) {
		return func(set func(x, y int, v uint8)) {
			for y := 20; y < 180; y++ {
				set(x, y, v)
			}
		}
	}
	want := paint(line(50, 0))
	for _, c := range []struct {
		name  string
		other shades
		found bool
	}{
		{"the same", paint(line(50, 0)), false},
		{"half a point off", paint(func(set func(x, y int, v uint8)) { line(50, 128)(set); line(51, 128)(set) }), false},
		{"a tenth of an inch off", paint(line(60, 0)), true},
		{"not there", paint(func(func(x, y int, v uint8)) {}), true},
		{"too faint to see", paint(line(50, 230)), true},
	} {
		dark, lost := want.lost(c.other)
		require.Equal(t, 160, dark)
		assert.Equal(t, c.found, float64(lost) > mostLost*float64(dark), c.name)
	}
}

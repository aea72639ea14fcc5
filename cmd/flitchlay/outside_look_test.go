package main

import (
	"fmt"
	"image"
	"math"
	"path/filepath"
	"slices"
	"strconv"
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
// A page of each kind by Poppler and librsvg, by turns of a room in inches and of one in millimetres. With
// FLITCHLAY_CHECK=1 every page of every sample, and one page of each kind of both in the browser too.
func TestPagesLookTheSameInThreePrograms(t *testing.T) {
	pdftoppm, rsvg := effort.Tool(t, "pdftoppm"), effort.Tool(t, "rsvg-convert")
	browser := ""
	if effort.Full() {
		browser = effort.Tool(t, "chromium")
	}
	kinds := []string{"Z-001", "Z-101", "Z-201", "Z-401", "Z-501", "Z-601", "install-01", "install-03", "pole-01"}
	rooms := some(t)
	for which, room := range rooms {
		t.Run(filepath.Base(room), func(t *testing.T) {
			t.Parallel()
			dir, order := drawnSets(t, room)
			pages, pictures := svgs(t, dir), t.TempDir()
			browsable := browser != "" && slices.Contains([]string{"reading-room.toml", "metric-headwall.toml"}, filepath.Base(room))
			for _, set := range sets {
				for i, name := range order[set] {
					kind := slices.Index(kinds, name)
					shot := kind >= 0
					switch {
					case !effort.Full() && (!shot || kind%len(rooms) != which):
						continue
					case !shot && set == "pole" && i > 6:
						continue // all strips are drawn alike
					}
					n, svg := strconv.Itoa(i+1), filepath.Join(dir, name+".svg")
					out := filepath.Join(pictures, name)
					run(t, pdftoppm, "-r", strconv.Itoa(dpi), "-png", "-singlefile", "-f", n, "-l", n, filepath.Join(dir, set+".pdf"), out+"-pdf")
					fromPDF := shadesOf(read(t, out+"-pdf.png"))
					run(t, rsvg, "-d", strconv.Itoa(dpi), "-p", strconv.Itoa(dpi), "-b", "white", "-o", out+"-rsvg.png", svg)
					agree(t, name+": PDF by Poppler, SVG by librsvg", fromPDF, shadesOf(read(t, out+"-rsvg.png")))
					if browsable && shot {
						agree(t, name+": PDF by Poppler, SVG in the browser", fromPDF, shadesOf(browsed(t, browser, svg, out+"-browser.png", pages[name])))
					}
				}
			}
		})
	}
}

// browsed is a page as a browser shows it.
func browsed(t *testing.T, browser, svg, png string, page *element) image.Image {
	box := figure.FindAllString(page.attr("viewBox"), -1)
	require.Len(t, box, 4)
	var size [2]int
	for i, text := range box[2:] {
		mm, err := strconv.ParseFloat(text, 64)
		require.NoError(t, err)
		size[i] = int(math.Ceil(mm / 25.4 * 96)) // a CSS inch is 96 CSS pixels
	}
	path, err := filepath.Abs(svg)
	require.NoError(t, err)
	run(t, browser, "--headless", "--no-sandbox", "--disable-gpu", "--hide-scrollbars", fmt.Sprintf("--force-device-scale-factor=%.9f", dpi/96.0),
		fmt.Sprintf("--window-size=%d,%d", size[0], size[1]), "--screenshot="+png, "file://"+path)
	return read(t, png)
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

package pdf_test

import (
	"fmt"
	"image"
	_ "image/png"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/effort"
	"flitchlay/internal/pdf"
	"flitchlay/internal/scene"
	"flitchlay/internal/svg"
)

// The two backends draw the same picture: whatever is dark in the one is dark in the other, give or take a pixel of 0.17 mm.
func TestPDFAndSVGShowTheSame(t *testing.T) {
	effort.Tool(t, "pdftoppm")
	effort.Tool(t, "rsvg-convert")
	p := everything()
	dir := t.TempDir()
	file, err := pdf.Write(&scene.Document{Pages: []*scene.Page{p}})
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(filepath.Join(dir, "p.pdf"), file, 0o644))
	shell(t, "pdftoppm", "-r", "150", "-png", "-singlefile", filepath.Join(dir, "p.pdf"), filepath.Join(dir, "pdf"))
	want := open(t, filepath.Join(dir, "pdf.png"))
	for _, mode := range []svg.Lettering{svg.Overlaid, svg.Outlined} {
		page, err := svg.Page(p, svg.Options{Lettering: mode})
		require.NoError(t, err)
		require.NoError(t, os.WriteFile(filepath.Join(dir, "p.svg"), page, 0o644))
		shell(t, "rsvg-convert", "-d", "150", "-p", "150", filepath.Join(dir, "p.svg"), "-o", filepath.Join(dir, "svg.png"))
		got := open(t, filepath.Join(dir, "svg.png"))
		require.Equal(t, want.Bounds(), got.Bounds())
		dark, lost := compare(want, got)
		assert.Greater(t, dark, 20_000, "there is something to see")
		assert.Empty(t, lost, "in the PDF only")
		_, lost = compare(got, want)
		assert.Empty(t, lost, "in the SVG only")
	}
}

func shell(t *testing.T, name string, args ...string) {
	t.Helper()
	out, err := exec.Command(name, args...).CombinedOutput()
	require.NoError(t, err, string(out))
}

func open(t *testing.T, path string) image.Image {
	t.Helper()
	f, err := os.Open(path)
	require.NoError(t, err)
	defer f.Close()
	img, _, err := image.Decode(f)
	require.NoError(t, err)
	return img
}

// compare counts the dark pixels of a, and lists up to ten of them with nothing as dark, nearly, in b on or next to them.
func compare(a, b image.Image) (dark int, lost []image.Point) {
	light := func(i image.Image, x, y int) uint32 {
		r, g, b, a := i.At(x, y).RGBA()
		return ((r+g+b)/3 + 0xFFFF - a) >> 8 // on white
	}
	box := a.Bounds()
	for y := box.Min.Y; y < box.Max.Y; y++ {
		for x := box.Min.X; x < box.Max.X; x++ {
			if light(a, x, y) >= 100 {
				continue
			}
			dark++
			found := false
			for dy := -1; dy <= 1 && !found; dy++ {
				for dx := -1; dx <= 1 && !found; dx++ {
					found = image.Pt(x+dx, y+dy).In(box) && light(b, x+dx, y+dy) < 190
				}
			}
			if !found && len(lost) < 10 {
				lost = append(lost, image.Pt(x, y))
			}
		}
	}
	return dark, lost
}

// everything is a page with every kind of item in every manner.
func everything() *scene.Page {
	p := scene.NewPage("Z-201", "Elevation", 200, 150)
	for i, dash := range []scene.Dash{{}, scene.Dashed(0.35), scene.Chain(0.35), scene.Phantom(0.35), {2}, {3, 1, 1}} {
		for k, end := range []scene.Cap{scene.Butt, scene.Round, scene.Square} {
			s := scene.Style{Layer: scene.Walls, Width: 0.7, Dash: dash, Cap: end}
			p.Line(scene.Pt(10, 10+float64(6*i+2*k)), scene.Pt(60, 11+float64(6*i+2*k)), s)
		}
	}
	for i, join := range []scene.Join{scene.Miter, scene.RoundJoin, scene.Bevel} {
		s := scene.Style{Layer: scene.Marks, Width: 1.4, Join: join}
		x := 70 + 14*float64(i)
		p.Polyline(s, scene.Pt(x, 20), scene.Pt(x+5, 10), scene.Pt(x+10, 20))
		p.Polyline(s, scene.Pt(x, 30), scene.Pt(x+10, 31), scene.Pt(x, 32)) // under the miter limit
		p.Polygon(s.Filled(scene.Grey(0.2)), scene.Pt(x, 36), scene.Pt(x+10, 36), scene.Pt(x+3, 45))
	}
	p.Rect(scene.BoxAt(115, 10, 30, 20), scene.Style{Layer: scene.Frame, Width: 0.5})
	p.Rect(scene.BoxAt(120, 15, 30, 20), scene.Style{Layer: scene.Frame, Fill: scene.Solid(scene.Colour{R: 20, G: 60, B: 20})})
	p.Circle(scene.Pt(165, 25), 12, scene.Pen(scene.Marks, 0.5).Filled(scene.Black))
	p.Circle(scene.Pt(165, 25), 8, scene.Pen(scene.Marks, 0.5).Filled(scene.White))
	p.Arc(scene.Pt(165, 25), 5, 30, 300, scene.Pen(scene.Marks, 0.7))
	// two rings in one path: the way round decides what is filled
	ring := func(r, to float64) []scene.Step {
		return append(scene.ArcSteps(scene.Pt(30, 70), r, 0, to), scene.Step{Kind: scene.Close})
	}
	p.Path(scene.Style{Layer: scene.Hatch, Fill: scene.Solid(scene.Black)}, append(ring(12, 360), ring(6, -360)...)...)
	p.Path(scene.Style{Layer: scene.Hatch, Fill: scene.Solid(scene.Black)}, append(ring(3, 360), ring(1, 360)...)...)
	outer := p.Clipped(scene.Pt(50, 55), scene.Pt(90, 55), scene.Pt(70, 90))
	outer.Rect(scene.BoxAt(50, 60, 40, 5), scene.Style{Layer: scene.Hatch, Fill: scene.Solid(scene.Black)})
	outer.Clipped(scene.BoxAt(60, 60, 10, 30).Corners()...).Rect(scene.BoxAt(50, 70, 40, 5), scene.Style{Layer: scene.Hatch, Fill: scene.Solid(scene.Black)})
	p.Rect(scene.BoxAt(50, 92, 40, 3), scene.Style{Layer: scene.Hatch, Fill: scene.Solid(scene.Black)})
	for i, angle := range []float64{0, 45, 90, 135, 180, 270, 330} {
		for k, anchor := range []scene.Anchor{scene.Start, scene.Middle, scene.End} {
			p.Text(scene.Text{
				At: scene.Pt(20+25*float64(i), 105+14*float64(k)), String: fmt.Sprintf(`%d'-6½" Ég`, i), Height: 2.5, Bold: k == 1, Anchor: anchor,
				Seat: scene.Seat(k), Angle: angle, Layer: scene.Notes,
			})
		}
	}
	p.Rect(scene.BoxAt(100, 55, 90, 30), scene.Style{Layer: scene.Hatch, Fill: scene.Solid(scene.Black)})
	p.Text(scene.Text{At: scene.Pt(105, 65), String: "FIELD (wide)", Height: 5, Field: 1, Layer: scene.Marks})
	p.Text(scene.Text{At: scene.Pt(150, 80), String: "SLANTED", Height: 3.5, Bold: true, Angle: 30, Field: 0.7, Layer: scene.Marks})
	p.Text(scene.Text{At: scene.Pt(105, 78), String: "white on black", Height: 3.5, Colour: scene.White, Layer: scene.Marks})
	return p
}

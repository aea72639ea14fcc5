package scene

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// letterF is a picture whose quarters are red, green, blue and black: no turn nor mirror image is like it.
func letterF(w, h int) *image.RGBA {
	m := image.NewRGBA(image.Rect(0, 0, w, h))
	for y := range h {
		for x := range w {
			c := color.RGBA{A: 255}
			switch {
			case x < w/2 && y < h/2:
				c.R = 255
			case y < h/2:
				c.G = 255
			case x < w/2:
				c.B = 255
			}
			m.SetRGBA(x, y, c)
		}
	}
	return m
}

// corners are the colours of a picture's quarters, left to right, then down.
func corners(t *testing.T, p Picture) string {
	img, _, err := image.Decode(bytes.NewReader(p.Data))
	require.NoError(t, err)
	assert.Equal(t, img.Bounds(), image.Rect(0, 0, p.Width, p.Height))
	out := ""
	for i := range 4 {
		r, g, b, _ := img.At(p.Width*(1+2*(i%2))/4, p.Height*(1+2*(i/2))/4).RGBA()
		switch {
		case r > 0x8000:
			out += "R"
		case g > 0x8000:
			out += "G"
		case b > 0x8000:
			out += "B"
		default:
			out += "-"
		}
	}
	return out
}

// jpegOf is a JPEG picture, with an orientation of a camera where it is not 0.
func jpegOf(t *testing.T, img image.Image, orientation byte, big bool) []byte {
	var out bytes.Buffer
	require.NoError(t, jpeg.Encode(&out, img, &jpeg.Options{Quality: 95}))
	if orientation == 0 {
		return out.Bytes()
	}
	tiff := []byte{'I', 'I', 42, 0, 8, 0, 0, 0, 1, 0, 0x12, 1, 3, 0, 1, 0, 0, 0, orientation, 0, 0, 0, 0, 0, 0, 0}
	if big {
		tiff = []byte{'M', 'M', 0, 42, 0, 0, 0, 8, 0, 1, 1, 0x12, 0, 3, 0, 0, 0, 1, 0, orientation, 0, 0, 0, 0, 0, 0}
	}
	body := append([]byte("Exif\x00\x00"), tiff...)
	segment := append([]byte{0xFF, 0xE1, 0, byte(len(body) + 2)}, body...)
	return append(append(bytes.Clone(out.Bytes()[:2]), segment...), out.Bytes()[2:]...)
}

// A camera that is held on its side stores the picture on its side and says so.
//
// Source: Exif 2.32, orientation 0x0112: where row 0 and column 0 of what is stored lie in what was seen: 1 top left,
// 2 top right, 3 bottom right, 4 bottom left, 5 left top, 6 right top, 7 right bottom, 8 left bottom.
func TestPhotographsStandUpright(t *testing.T) {
	// what is stored is R G over B -, so that by the standard what was seen is:
	seen := map[byte]string{0: "RGB-", 1: "RGB-", 2: "GR-B", 3: "-BGR", 4: "B-RG", 5: "RBG-", 6: "BR-G", 7: "-GBR", 8: "G-RB"}
	for orientation, want := range seen {
		for _, big := range []bool{false, true} {
			t.Run(fmt.Sprintf("orientation %d, %v", orientation, big), func(t *testing.T) {
				p, err := ReadPhotograph(jpegOf(t, letterF(64, 48), orientation, big), 400)
				require.NoError(t, err)
				assert.Equal(t, want, corners(t, p))
				if orientation >= 5 {
					assert.Equal(t, [2]int{48, 64}, [2]int{p.Width, p.Height})
				}
			})
		}
	}
}

func TestTurnedGoesAnticlockwise(t *testing.T) {
	p, err := ReadPhotograph(jpegOf(t, letterF(64, 48), 0, false), 400)
	require.NoError(t, err)
	for n, want := range map[int]string{0: "RGB-", 1: "G-RB", 2: "-BGR", 3: "BR-G", 4: "RGB-", -1: "BR-G"} {
		q, err := p.Turned(n)
		require.NoError(t, err)
		assert.Equal(t, want, corners(t, q), "%d quarters", n)
	}
}

// A picture is made smaller by the mean of the pixels, not by leaving some out; a small one stays as it is.
func TestPhotographsAreMadeSmaller(t *testing.T) {
	m := image.NewRGBA(image.Rect(0, 0, 1000, 400))
	for y := range 400 {
		for x := range 1000 {
			v := uint8(255 * ((x + y) % 2))
			m.SetRGBA(x, y, color.RGBA{v, v, v, 255})
		}
	}
	var out bytes.Buffer
	require.NoError(t, png.Encode(&out, m))
	p, err := ReadPhotograph(out.Bytes(), 100)
	require.NoError(t, err)
	assert.Equal(t, [2]int{100, 40}, [2]int{p.Width, p.Height})
	img, _, err := image.Decode(bytes.NewReader(p.Data))
	require.NoError(t, err)
	for _, at := range []image.Point{{0, 0}, {37, 21}, {99, 39}} {
		r, _, _, _ := img.At(at.X, at.Y).RGBA()
		assert.InDelta(t, 127.5, float64(r>>8), 1, "black and white by turns are grey at %v", at)
	}
	p, err = ReadPhotograph(out.Bytes(), 2000)
	require.NoError(t, err)
	assert.Equal(t, [2]int{1000, 400}, [2]int{p.Width, p.Height})
}

func TestWhatIsNoPhotographIsAnError(t *testing.T) {
	whole := jpegOf(t, letterF(64, 48), 6, true)
	for why, data := range map[string][]byte{"no picture": []byte("units"), "nothing": nil, "cut off": whole[:len(whole)/2]} {
		_, err := ReadPhotograph(data, 400)
		assert.Error(t, err, why)
	}
}

// What the clips leave of a picture is on the page; the rest is not.
func TestClippedPictureIsInTheWayOnlyWhereItShows(t *testing.T) {
	p := NewPage("A", "", 100, 100)
	p.Reserve("stamp", BoxAt(60, 60, 30, 30))
	p.Clipped(Pt(10, 10), Pt(30, 10), Pt(30, 30), Pt(10, 30)).Image(Image{Box: BoxAt(-20, -20, 200, 200), Kind: "png", Layer: Covering})
	p.Text(Text{At: Pt(50, 50), String: "beside", Height: 2.5})
	assert.Empty(t, Overlaps(p, 0.5))
	p.Text(Text{At: Pt(12, 20), String: "over it", Height: 2.5})
	assert.Len(t, Overlaps(p, 0.5), 1)
}

// Whatever stands in a picture's head, reading it ends with a picture or an error.
func FuzzPhotograph(f *testing.F) {
	var out bytes.Buffer
	require.NoError(f, jpeg.Encode(&out, letterF(8, 8), nil))
	f.Add(out.Bytes())
	f.Add([]byte("\xFF\xD8\xFF\xE1\x00\x10Exif\x00\x00MM\x00\x2A\x00\x00\x00\x08"))
	f.Fuzz(func(t *testing.T, data []byte) {
		if o := orientation(data); o < 1 || o > 8 {
			t.Errorf("orientation %d", o)
		}
		if c, _, err := image.DecodeConfig(bytes.NewReader(data)); err != nil || c.Width*c.Height > 1<<16 {
			return
		}
		if p, err := ReadPhotograph(data, 16); err == nil && (p.Width > 16 || p.Height > 16) {
			t.Errorf("%d x %d", p.Width, p.Height)
		}
	})
}

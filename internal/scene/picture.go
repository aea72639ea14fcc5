package scene

import (
	"bytes"
	"errors"
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"image/jpeg"
	"image/png"
)

// MaxPixels is the largest picture that is read.
const MaxPixels = 24_000_000

// Picture is a picture file that has been read, with its size in pixels.
type Picture struct {
	Kind          string // "png" or "jpeg"
	Data          []byte
	Width, Height int
}

// ReadPicture reads a PNG or JPEG file. What backends might draw differently (interlaced or deep PNG, JPEG in printing inks) comes back
// as a plain PNG.
//
// Errors: neither PNG nor JPEG, broken, or larger than MaxPixels.
func ReadPicture(data []byte) (Picture, error) {
	c, kind, err := image.DecodeConfig(bytes.NewReader(data))
	if err != nil {
		return Picture{}, fmt.Errorf("neither a PNG nor a JPEG picture: %w", err)
	}
	if c.Width <= 0 || c.Height <= 0 || c.Width > MaxPixels/c.Height {
		return Picture{}, fmt.Errorf("picture of %d x %d pixels is too large", c.Width, c.Height)
	}
	p := Picture{Kind: kind, Data: data, Width: c.Width, Height: c.Height}
	var img image.Image
	switch kind {
	case "png":
		img, err = png.Decode(bytes.NewReader(data))
	case "jpeg":
		img, err = jpeg.Decode(bytes.NewReader(data))
		if err == nil && (c.ColorModel == color.YCbCrModel || c.ColorModel == color.GrayModel) {
			return p, nil
		}
	default:
		err = errors.New("kind " + kind)
	}
	if err != nil {
		return Picture{}, fmt.Errorf("broken picture: %w", err)
	}
	plain := image.NewNRGBA(image.Rect(0, 0, c.Width, c.Height))
	draw.Draw(plain, plain.Bounds(), img, img.Bounds().Min, draw.Src)
	var out bytes.Buffer
	if err := png.Encode(&out, plain); err != nil {
		return Picture{}, fmt.Errorf("picture: %w", err)
	}
	p.Kind, p.Data = "png", out.Bytes()
	return p, nil
}

// Fit returns the largest box of the picture's proportions within b, in its middle.
func (p Picture) Fit(b Box) Box {
	w, h := b.W(), b.H()
	if k := float64(p.Width) / float64(p.Height); w > h*k {
		w = h * k
	} else {
		h = w / k
	}
	c := b.Centre()
	return BoxAt(c.X-w/2, c.Y-h/2, w, h)
}

// Image returns the item that draws the picture into a box.
func (p Picture) Image(b Box, alt string, layer Layer) Image {
	return Image{Box: b, Kind: p.Kind, Data: p.Data, Alt: alt, Layer: layer}
}

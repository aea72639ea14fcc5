package scene

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"image/jpeg"
	"image/png"
)

// MaxPhotoPixels is the largest photograph that is read.
const MaxPhotoPixels = 120_000_000

// quality of the JPEG that a photograph comes back as.
const quality = 92

// ReadPhotograph reads a PNG or JPEG photograph, stands it upright as the camera says, and makes it no larger than so
// many pixels on its longer side: a drawing needs no more, and a set of forty stays a file that can be sent.
//
// Errors: neither PNG nor JPEG, broken, or larger than MaxPhotoPixels.
//
// Source: the orientation tag 0x0112 of Exif 2.32, values 1 to 8.
func ReadPhotograph(data []byte, most int) (Picture, error) {
	c, kind, err := image.DecodeConfig(bytes.NewReader(data))
	if err != nil {
		return Picture{}, fmt.Errorf("neither a PNG nor a JPEG picture: %w", err)
	}
	if c.Width <= 0 || c.Height <= 0 || c.Width > MaxPhotoPixels/c.Height {
		return Picture{}, fmt.Errorf("picture of %d x %d pixels is too large", c.Width, c.Height)
	}
	img, err := decode(kind, data)
	if err != nil {
		return Picture{}, fmt.Errorf("broken picture: %w", err)
	}
	small := shrunk(img, most)
	if kind == "jpeg" {
		small = oriented(small, orientation(data))
	}
	return packed(kind, small)
}

// Turned is the picture turned anticlockwise by so many quarters.
//
// Errors: a picture that cannot be read.
func (p Picture) Turned(quarters int) (Picture, error) {
	if quarters%4 == 0 {
		return p, nil
	}
	img, err := decode(p.Kind, p.Data)
	if err != nil {
		return Picture{}, fmt.Errorf("broken picture: %w", err)
	}
	// what stands upright once it is turned by that
	return packed(p.Kind, oriented(shrunk(img, max(p.Width, p.Height)), [4]int{1, 8, 3, 6}[(quarters%4+4)%4]))
}

func decode(kind string, data []byte) (image.Image, error) {
	switch kind {
	case "png":
		return png.Decode(bytes.NewReader(data))
	case "jpeg":
		return jpeg.Decode(bytes.NewReader(data))
	}
	return nil, errors.New("kind " + kind)
}

func packed(kind string, img *image.RGBA) (Picture, error) {
	p := Picture{Kind: kind, Width: img.Rect.Dx(), Height: img.Rect.Dy()}
	var out bytes.Buffer
	var err error
	if kind == "jpeg" {
		err = jpeg.Encode(&out, img, &jpeg.Options{Quality: quality})
	} else {
		err = png.Encode(&out, img)
	}
	if err != nil {
		return Picture{}, fmt.Errorf("picture: %w", err)
	}
	p.Data = out.Bytes()
	return p, nil
}

// shrunk is a picture on white, no more than so many pixels on its longer side: each pixel is the mean of those it stands
// for. It is taken in strips, so that a large picture is never held in full twice.
func shrunk(img image.Image, most int) *image.RGBA {
	b := img.Bounds()
	w, h := b.Dx(), b.Dy()
	nw, nh := w, h
	if longest := max(w, h); longest > most && most > 0 {
		nw, nh = max(1, (w*most+longest/2)/longest), max(1, (h*most+longest/2)/longest)
	}
	out := image.NewRGBA(image.Rect(0, 0, nw, nh))
	for y := range nh {
		y0, y1 := y*h/nh, max(y*h/nh+1, (y+1)*h/nh)
		strip := image.NewRGBA(image.Rect(0, 0, w, y1-y0))
		draw.Draw(strip, strip.Rect, image.NewUniform(color.White), image.Point{}, draw.Src)
		draw.Draw(strip, strip.Rect, img, image.Pt(b.Min.X, b.Min.Y+y0), draw.Over)
		for x := range nw {
			x0, x1 := x*w/nw, max(x*w/nw+1, (x+1)*w/nw)
			var sum [3]int
			for sy := range y1 - y0 {
				row := strip.Pix[sy*strip.Stride+4*x0 : sy*strip.Stride+4*x1]
				for i := 0; i < len(row); i += 4 {
					sum[0], sum[1], sum[2] = sum[0]+int(row[i]), sum[1]+int(row[i+1]), sum[2]+int(row[i+2])
				}
			}
			n := (y1 - y0) * (x1 - x0)
			out.SetRGBA(x, y, color.RGBA{uint8((sum[0] + n/2) / n), uint8((sum[1] + n/2) / n), uint8((sum[2] + n/2) / n), 255})
		}
	}
	return out
}

// oriented stands a picture upright that is stored in an orientation of Exif: 3 is upside down, 6 needs a quarter turn
// clockwise, 8 one anticlockwise, 2, 4, 5, 7 are mirrored.
func oriented(img *image.RGBA, orientation int) *image.RGBA {
	w, h := img.Rect.Dx(), img.Rect.Dy()
	var from func(x, y int) (int, int) // of a pixel of the upright picture
	switch orientation {
	case 2:
		from = func(x, y int) (int, int) { return w - 1 - x, y }
	case 3:
		from = func(x, y int) (int, int) { return w - 1 - x, h - 1 - y }
	case 4:
		from = func(x, y int) (int, int) { return x, h - 1 - y }
	case 5:
		from = func(x, y int) (int, int) { return y, x }
	case 6:
		from = func(x, y int) (int, int) { return y, h - 1 - x }
	case 7:
		from = func(x, y int) (int, int) { return w - 1 - y, h - 1 - x }
	case 8:
		from = func(x, y int) (int, int) { return w - 1 - y, x }
	default:
		return img
	}
	if orientation >= 5 {
		w, h = h, w
	}
	out := image.NewRGBA(image.Rect(0, 0, w, h))
	w, h = img.Rect.Dx(), img.Rect.Dy()
	for y := range out.Rect.Dy() {
		for x := range out.Rect.Dx() {
			out.SetRGBA(x, y, img.RGBAAt(from(x, y)))
		}
	}
	return out
}

// orientation reads how a camera stored a JPEG picture; 1, upright, where it does not say.
func orientation(data []byte) int {
	for at := 2; at+4 <= len(data) && data[at] == 0xFF; {
		size := int(binary.BigEndian.Uint16(data[at+2:]))
		end := at + 2 + size
		if size < 2 || end > len(data) || data[at+1] == 0xDA {
			return 1
		}
		if body := data[at+4 : end]; data[at+1] == 0xE1 && bytes.HasPrefix(body, []byte("Exif\x00\x00")) {
			return tiffOrientation(body[6:])
		}
		at = end
	}
	return 1
}

// tiffOrientation reads the tag from the first directory of a TIFF header.
func tiffOrientation(t []byte) int {
	if len(t) < 8 {
		return 1
	}
	var order binary.ByteOrder = binary.LittleEndian
	if t[0] == 'M' {
		order = binary.BigEndian
	}
	at := int64(order.Uint32(t[4:]))
	if at+2 > int64(len(t)) {
		return 1
	}
	count := int(order.Uint16(t[at:]))
	for i := range count {
		entry := at + 2 + 12*int64(i)
		if entry+12 > int64(len(t)) {
			return 1
		}
		if order.Uint16(t[entry:]) == 0x0112 {
			if v := int(order.Uint16(t[entry+8:])); v >= 1 && v <= 8 {
				return v
			}
			return 1
		}
	}
	return 1
}

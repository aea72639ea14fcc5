package font

import (
	"fmt"
	"strconv"

	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// Outline returns the outline of a rune as path data: the letters M, L, Q and Z of SVG, in font units, y DOWN from the baseline.
// It is empty for a rune without ink.
func (f *Face) Outline(r rune) string {
	var buf sfnt.Buffer
	segments, err := f.outline.LoadGlyph(&buf, sfnt.GlyphIndex(f.glyph(r)), fixed.I(f.upem), &sfnt.LoadGlyphOptions{})
	if err != nil {
		panic(fmt.Sprintf("font %s: outline of %U: %v", f.name, r, err))
	}
	var b []byte
	point := func(p fixed.Point26_6) {
		b = appendFixed(b, p.X)
		if p.Y >= 0 {
			b = append(b, ' ')
		}
		b = appendFixed(b, p.Y)
	}
	for _, s := range segments {
		switch s.Op {
		case sfnt.SegmentOpMoveTo:
			if len(b) > 0 {
				b = append(b, 'Z')
			}
			b = append(b, 'M')
			point(s.Args[0])
		case sfnt.SegmentOpLineTo:
			b = append(b, 'L')
			point(s.Args[0])
		case sfnt.SegmentOpQuadTo:
			b = append(b, 'Q')
			point(s.Args[0])
			if s.Args[1].X >= 0 {
				b = append(b, ' ')
			}
			point(s.Args[1])
		}
	}
	if len(b) > 0 {
		b = append(b, 'Z')
	}
	return string(b)
}

// appendFixed writes a coordinate; halves occur where a curve's point lies between two of the font's.
func appendFixed(b []byte, v fixed.Int26_6) []byte {
	if v < 0 {
		b = append(b, '-')
		v = -v
	}
	b = strconv.AppendInt(b, int64(v>>6), 10)
	if frac := v & 63; frac != 0 {
		b = append(b, '.')
		b = strconv.AppendInt(b, int64((frac*10+32)>>6), 10)
	}
	return b
}

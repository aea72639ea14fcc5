package scene

import (
	"math"
	"strconv"
)

// AppendNum appends a number as files hold it: at most three decimals, no exponent, never -0, no trailing zeros.
func AppendNum(b []byte, v float64) []byte {
	n := int64(math.Round(v * 1000))
	if n < 0 {
		b = append(b, '-')
		n = -n
	}
	b = strconv.AppendInt(b, n/1000, 10)
	frac := n % 1000
	if frac == 0 {
		return b
	}
	b = append(b, '.', byte('0'+frac/100))
	if frac%100 != 0 {
		b = append(b, byte('0'+frac/10%10))
		if frac%10 != 0 {
			b = append(b, byte('0'+frac%10))
		}
	}
	return b
}

// Hex returns the colour as #rrggbb.
func (c Colour) Hex() string {
	const digits = "0123456789abcdef"
	b := []byte("#000000")
	for i, v := range []uint8{c.R, c.G, c.B} {
		b[1+2*i], b[2+2*i] = digits[v>>4], digits[v&15]
	}
	return string(b)
}

// Data returns the path in the letters of SVG: M, L, C, Z.
func (p *Path) Data() string {
	b := make([]byte, 0, 16*len(p.Steps))
	point := func(q Point) {
		b = AppendNum(b, q.X)
		b = append(b, ' ')
		b = AppendNum(b, q.Y)
	}
	for _, s := range p.Steps {
		switch s.Kind {
		case MoveTo:
			b = append(b, 'M')
			point(s.P)
		case LineTo:
			b = append(b, 'L')
			point(s.P)
		case CurveTo:
			b = append(b, 'C')
			point(s.C1)
			b = append(b, ' ')
			point(s.C2)
			b = append(b, ' ')
			point(s.P)
		case Close:
			b = append(b, 'Z')
		}
	}
	return string(b)
}

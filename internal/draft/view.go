package draft

import (
	"math"

	"flitchlay/internal/length"
	"flitchlay/internal/scene"
)

// View turns wall space into page space: x to the right, z up, at a scale.
type View struct {
	Origin scene.Point // where x = 0, z = 0 comes to lie
	Scale  int64       // 24 for 1:24
}

// MM is how long a length is on paper.
func (v View) MM(l length.Length) float64 { return l.MM() / float64(v.Scale) }

// Length is how long on the wall what is so long on paper is, in mm.
func (v View) Length(mm float64) length.Length {
	return length.Length(math.Round(mm * float64(v.Scale) * float64(length.Millimetre)))
}

// X is where a place along the wall comes to lie.
func (v View) X(x length.Length) float64 { return v.Origin.X + v.MM(x) }

// Y is where a height comes to lie.
func (v View) Y(z length.Length) float64 { return v.Origin.Y - v.MM(z) }

// Pt is where a point of the wall comes to lie.
func (v View) Pt(x, z length.Length) scene.Point { return scene.Pt(v.X(x), v.Y(z)) }

// Box is where an upright rectangle of the wall comes to lie.
func (v View) Box(x0, z0, x1, z1 length.Length) scene.Box {
	return scene.Box{X0: v.X(x0), Y0: v.Y(z1), X1: v.X(x1), Y1: v.Y(z0)}
}

// Ratio is how a scale is written under a view: 1/2" = 1'-0" (1:24), or 1:20.
//
// Source: US architect's scales; ISO 5455 for the plain ratio.
func Ratio(scale int64, metric bool) string {
	plain := "1:" + decimal(scale)
	if metric || scale == 1 {
		return plain
	}
	for _, s := range architect {
		if s.scale == scale {
			return s.text + ` = 1'-0" (` + plain + ")"
		}
	}
	return plain
}

// architect are the scales of a US architect's rule.
var architect = []struct {
	scale int64
	text  string
}{
	{4, `3"`}, {8, `1 1/2"`}, {12, `1"`}, {16, `3/4"`}, {24, `1/2"`}, {32, `3/8"`}, {48, `1/4"`}, {64, `3/16"`}, {96, `1/8"`}, {128, `3/32"`}, {192, `1/16"`},
}

func decimal(n int64) string {
	if n < 10 {
		return string(rune('0' + n))
	}
	return decimal(n/10) + string(rune('0'+n%10))
}

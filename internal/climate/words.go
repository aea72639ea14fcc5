package climate

import (
	"math"
	"strconv"
	"strings"

	"flitchlay/internal/length"
	"flitchlay/internal/wood"
)

// Words print the figures of a site as the room's drawings do: degrees F and inches, or degrees C, millimetres and
// the decimal comma.
type Words struct{ Metric bool }

// WordsOf are the words for a style of lengths.
func WordsOf(style length.Style) Words { return Words{style.Unit == length.Millimetres} }

// Decimal prints a figure with at most so many decimals.
func (w Words) Decimal(f float64, decimals int) string {
	text := strconv.FormatFloat(f, 'f', decimals, 64)
	if strings.Contains(text, ".") {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	if text == "-0" {
		text = "0"
	}
	if w.Metric {
		text = strings.Replace(text, ".", ",", 1)
	}
	return text
}

// Percent prints a share of a hundred.
func (w Words) Percent(f float64) string { return w.Decimal(f, 2) + " %" }

// Degrees prints a temperature that is given in degrees F.
func (w Words) Degrees(f float64) string {
	if w.Metric {
		return w.Decimal(wood.Celsius(f), 1) + " C"
	}
	return w.Decimal(f, 1) + " F"
}

// Spread prints a difference of temperatures that is given in degrees F.
func (w Words) Spread(f float64) string {
	if w.Metric {
		return w.Decimal(f/1.8, 1) + " C"
	}
	return w.Decimal(f, 1) + " F"
}

// Small prints a length that a ruler hardly shows: 0.045 in, 1,14 mm.
func (w Words) Small(l L) string {
	if w.Metric {
		return w.Decimal(l.MM(), 2) + " mm"
	}
	return strconv.FormatFloat(float64(l)/float64(length.Inch), 'f', 3, 64) + " in"
}

// Grow says what a movement does to a width.
func (w Words) Grow(l L) string {
	switch {
	case l > 0:
		return "grow " + w.Small(l) + " wider"
	case l < 0:
		return "shrink by " + w.Small(l.Abs())
	}
	return "stay as it is"
}

// Moisture prints what wood comes to in a climate.
func (w Words) Moisture(c wood.Climate) string {
	return w.Decimal(math.Round(c.Moisture()*10)/10, 1) + " %"
}

package report

import (
	"math/big"
	"strconv"
	"strings"

	"flitchlay/internal/length"
)

// Whole is the cell of a whole number.
func Whole(n int) Cell {
	return Cell{Text: strconv.Itoa(n), Value: strconv.Itoa(n), Number: true}
}

// Length is the cell of a length.
func Length(l length.Length, s length.Style) Cell {
	return Cell{Text: s.Format(l), Value: Plain(l, s.Unit), Number: true}
}

// Width is the cell of a width, in inches alone.
func Width(l length.Length, s length.Style) Cell {
	return Cell{Text: WidthWords(s, l), Value: Plain(l, s.Unit), Number: true}
}

// WidthWords is a width as the trade says it: 24 1/2", not 2'-0 1/2".
func WidthWords(s length.Style, l length.Length) string {
	if s.Unit == length.Millimetres {
		return s.Inches(l)
	}
	return s.Inches(l) + `"`
}

// Plain is a length as a plain decimal number of inches or millimetres, to six decimals.
func Plain(l length.Length, unit length.Unit) string {
	return strings.TrimSuffix(strings.TrimRight(new(big.Rat).SetFrac64(int64(l), int64(unit.Of())).FloatString(6), "0"), ".")
}

// Squares is the cell of an area that was rounded already, in the unit of lengths squared.
func Squares(r *big.Rat, unit length.Unit) Cell {
	value := r.FloatString(2)
	shown := r.FloatString(1)
	if unit == length.Millimetres {
		shown = strings.Replace(value, ".", ",", 1)
	}
	return Cell{Text: shown, Value: value, Number: true}
}

// AreaHead is the head of a column of areas.
func AreaHead(unit length.Unit) string {
	if unit == length.Millimetres {
		return "m²"
	}
	return "sq ft"
}

// Plural counts things.
func Plural(n int, thing string) string {
	switch {
	case n == 1:
		return "1 " + thing
	case strings.HasSuffix(thing, "ch"):
		return strconv.Itoa(n) + " " + thing + "es"
	}
	return strconv.Itoa(n) + " " + thing + "s"
}

// Number prints a figure as short as it is, to three decimals.
func Number(f float64) string {
	text := strconv.FormatFloat(f, 'f', 3, 64)
	return strings.TrimSuffix(strings.TrimRight(text, "0"), ".")
}

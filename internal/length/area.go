package length

import (
	"math/big"
	"strconv"
	"strings"
)

// Area is a signed area in squares of 1/8 micrometre. It holds a square of 370 m.
type Area int64

// Times is the area of a rectangle, exact.
func (l Length) Times(w Length) Area { return Area(int64(l) * int64(w)) }

// Cross is twice the signed area of the triangle (0,0), (ax,ay), (bx,by).
func Cross(ax, ay, bx, by Length) Area {
	return Area(int64(ax)*int64(by) - int64(ay)*int64(bx))
}

// squareMetre is the number of area units in a square metre: (8 000 000)^2.
const squareMetre = 64_000_000_000_000

// SquareMetres is for physics and prices only.
func (a Area) SquareMetres() float64 { return float64(a) / squareMetre }

// SquareFeet is for tables of an inch room.
func (a Area) SquareFeet() float64 {
	return float64(a) / (float64(Foot) * float64(Foot))
}

// Decimal prints an area in square metres as JSON takes it: rounded to nine decimals, halves away from zero, no more
// than needed.
func (a Area) Decimal() string { return HalfDecimal(big.NewInt(int64(a)), 1) }

// HalfDecimal prints sum / parts area units in square metres, rounded once to nine decimals.
func HalfDecimal(sum *big.Int, parts int64) string {
	n := new(big.Int).Mul(sum, big.NewInt(1_000_000_000))
	neg := n.Sign() < 0
	n.Abs(n)
	den := new(big.Int).Mul(big.NewInt(squareMetre), big.NewInt(parts))
	n.Lsh(n, 1).Add(n, den).Quo(n, new(big.Int).Lsh(den, 1))
	text := Decimals(n.String(), 9)
	if neg && text != "0" {
		text = "-" + text
	}
	return text
}

// FormatArea prints an area for people: square feet or square metres to one decimal, halves away from zero.
func (s Style) FormatArea(a Area) string { return s.areaTenths(s.tenths(a)) }

// FormatAreas prints the parts of an area so that the printed parts add up to the printed whole, as Chain does with lengths.
func (s Style) FormatAreas(parts []Area) []string {
	list := make([]string, len(parts))
	sum, last := Area(0), int64(0)
	for i, a := range parts {
		sum += a
		at := s.tenths(sum)
		list[i], last = s.areaTenths(at-last), at
	}
	return list
}

// tenths rounds an area to tenths of what it is printed in.
func (s Style) tenths(a Area) int64 {
	unit := int64(Foot) * int64(Foot)
	if s.Unit == Millimetres {
		unit = squareMetre
	}
	n := new(big.Int).Mul(big.NewInt(int64(a)), big.NewInt(20))
	neg := n.Sign() < 0
	n.Abs(n).Add(n, big.NewInt(unit)).Quo(n, big.NewInt(2*unit))
	if neg {
		return -n.Int64()
	}
	return n.Int64()
}

func (s Style) areaTenths(tenths int64) string {
	sign, mark, name := "", ".", " sq ft"
	if s.Unit == Millimetres {
		mark, name = ",", " m²"
	}
	if tenths < 0 {
		sign, tenths = "-", -tenths
	}
	return sign + strconv.FormatInt(tenths/10, 10) + mark + strconv.FormatInt(tenths%10, 10) + name
}

// Decimals puts a point before the last places digits and drops zeros at the end.
func Decimals(digits string, places int) string {
	for len(digits) <= places {
		digits = "0" + digits
	}
	whole, part := digits[:len(digits)-places], strings.TrimRight(digits[len(digits)-places:], "0")
	if part == "" {
		return whole
	}
	return whole + "." + part
}

package report

import (
	"math/big"
	"strings"

	"flitchlay/internal/length"
)

// Sum is a sum of twice-areas without an end: of a job of any number of rooms.
type Sum struct{ big.Int }

// Plus adds twice an area.
func (s *Sum) Plus(twice length.Area) { s.Add(&s.Int, big.NewInt(int64(twice))) }

// SquareMetres is the area as JSON takes it.
func (s *Sum) SquareMetres() string { return length.HalfDecimal(&s.Int, 2) }

// in prints the area with a number of decimals, halves away from zero, in square feet or square metres.
func (s *Sum) in(unit length.Unit, decimals int) string {
	one := big.NewInt(int64(length.Foot))
	if unit == length.Millimetres {
		one = big.NewInt(int64(length.Metre))
	}
	den := new(big.Int).Mul(one, one)
	return new(big.Rat).SetFrac(&s.Int, den.Lsh(den, 1)).FloatString(decimals)
}

// Shares rounds the parts of a whole so that the printed parts add up to the printed whole: each is the difference of
// two rounded running sums.
func Shares(list []length.Area, print func(*Sum) *big.Rat) []*big.Rat {
	var sum Sum
	last := new(big.Rat)
	out := make([]*big.Rat, len(list))
	for i, a := range list {
		sum.Plus(a)
		at := print(&sum)
		out[i] = new(big.Rat).Sub(at, last)
		last = at
	}
	return out
}

// Decimals gives the rounding of Shares: so many decimals of a square foot or a square metre.
func Decimals(unit length.Unit, n int) func(*Sum) *big.Rat {
	return func(s *Sum) *big.Rat {
		r, _ := new(big.Rat).SetString(s.in(unit, n))
		return r
	}
}

// AreaDecimals is how many decimals of an area people read.
func AreaDecimals(unit length.Unit) int {
	if unit == length.Millimetres {
		return 2
	}
	return 1
}

// Words prints the area for people.
func (s *Sum) Words(unit length.Unit) string {
	if unit == length.Millimetres {
		return strings.Replace(s.in(unit, 1), ".", ",", 1) + " m²"
	}
	return s.in(unit, 1) + " sq ft"
}

// Cell is the cell of an area of any size.
func (s *Sum) Cell(unit length.Unit) Cell {
	return Squares(Decimals(unit, AreaDecimals(unit))(s), unit)
}

// Package length holds exact lengths: reading them, printing them, and chains that add up.
//
// Units: a Length is a whole number of 1/8 micrometre, so 1 in = 203 200, 1/64 in = 3 175 and 0.001 mm = 8: rooms in
// feet and inches and rooms in millimetres both compute without drift. An Area is a whole number of squares of it.
//
// Order: nothing here sorts.
//
// Not here: points and outlines (package shape), what a length means (package room).
package length

import (
	"math"
	"math/big"
	"math/bits"
)

// Length is a signed length in 1/8 micrometre.
type Length int64

// Exact lengths of the units.
//
// Source: 1 in = 25.4 mm exactly, international yard and pound agreement of 1959 (NIST SP 811, appendix B.6).
const (
	Micrometre Length = 8
	Millimetre Length = 1000 * Micrometre
	Metre      Length = 1000 * Millimetre
	Inch       Length = 254 * Millimetre / 10
	Foot       Length = 12 * Inch
)

// Unit is the unit of bare numbers and of drawings.
type Unit int

// The two units a room can be in.
const (
	Inches Unit = iota
	Millimetres
)

// String gives the key word of the room file.
func (u Unit) String() string {
	if u == Millimetres {
		return "mm"
	}
	return "in"
}

// Of is the length of one unit.
func (u Unit) Of() Length {
	if u == Millimetres {
		return Millimetre
	}
	return Inch
}

// Grain is the unit in which seen heights are scored: a foot, 300 mm in a metric room.
func (u Unit) Grain() Length {
	if u == Millimetres {
		return 300 * Millimetre
	}
	return Foot
}

// FromRat rounds an exact number of units to the nearest length, halves away from zero.
//
// Errors: false where it is outside plus or minus Limit.
func FromRat(r *big.Rat, unit Length) (Length, bool) {
	v := new(big.Rat).Mul(r, new(big.Rat).SetInt64(int64(unit)))
	num, den := new(big.Int).Set(v.Num()), v.Denom()
	neg := num.Sign() < 0
	num.Abs(num)
	num.Lsh(num, 1)
	num.Add(num, den)
	num.Quo(num, new(big.Int).Lsh(den, 1))
	if !num.IsInt64() || num.Int64() > int64(Limit) {
		return 0, false
	}
	if neg {
		return Length(-num.Int64()), true
	}
	return Length(num.Int64()), true
}

// Limit is the longest length that is read: 370 m, so that the area of its square stays inside 64 bits.
const Limit = 370 * Metre

// MM is the length in millimetres, for the last step of a backend only.
func (l Length) MM() float64 { return float64(l) / float64(Millimetre) }

// Abs is the length without its sign.
func (l Length) Abs() Length {
	if l < 0 {
		return -l
	}
	return l
}

// HalfDown is half the length, rounded down: half an overlap, half a trim, the middle of a sheet.
func (l Length) HalfDown() Length { return l >> 1 }

// MulDiv is a * b / c, rounded to the nearest, halves away from zero, with a product of 128 bits between.
//
// Errors: it panics where c is 0 or the answer does not fit.
func MulDiv(a, b, c Length) Length {
	neg := (a < 0) != (b < 0) != (c < 0)
	ua, ub, uc := uint64(a.Abs()), uint64(b.Abs()), uint64(c.Abs())
	hi, lo := bits.Mul64(ua, ub)
	lo, carry := bits.Add64(lo, uc/2, 0)
	hi += carry
	q, _ := bits.Div64(hi, lo, uc)
	// uc/2 rounded down is right for odd uc too: no remainder is exactly half then.
	return signed(q, neg)
}

// signed gives a quotient its sign.
func signed(q uint64, neg bool) Length {
	if q > math.MaxInt64 {
		panic("length: a quotient does not fit")
	}
	if neg {
		return -Length(q)
	}
	return Length(q)
}

// Lerp is the height at s of the straight line from (s0, z0) to (s1, z1), rounded once to the nearest, halves away from
// zero. The line read from its other end gives the same height, and a line turned upside down the same with its sign.
//
// Errors: it panics where s0 = s1 or the answer does not fit.
func Lerp(s, s0, z0, s1, z1 Length) Length {
	if z0 == z1 {
		return z0
	}
	rise, way, whole := z1-z0, s-s0, s1-s0
	if whole < 0 {
		way, whole = -way, -whole
	}
	hi, lo := bits.Mul64(uint64(rise.Abs()), uint64(way.Abs()))
	q, r := bits.Div64(hi, lo, uint64(whole))
	z, rest := z0+signed(q, false), Length(r)
	if (rise < 0) != (way < 0) { // z0 less q + r/whole, as a whole number and a fraction of not less than 0
		z = z0 - signed(q, false)
		if rest > 0 {
			z, rest = z-1, whole-rest
		}
	}
	if left := whole - rest; rest > left || rest == left && z >= 0 {
		z++
	}
	return z
}

// CeilDiv is a / b rounded up, for a not negative.
func CeilDiv(a, b Length) int64 { return int64((a + b - 1) / b) }

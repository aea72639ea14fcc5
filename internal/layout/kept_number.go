package layout

import (
	"fmt"
	"math/big"
	"strconv"

	"flitchlay/internal/length"
	"flitchlay/internal/seam"
	"flitchlay/internal/shape"
)

// MM is a length that JSON keeps in millimetres, exactly.
type MM L

// MarshalJSON writes the number.
func (l MM) MarshalJSON() ([]byte, error) { return []byte(L(l).Decimal()), nil }

// UnmarshalJSON reads the number.
func (l *MM) UnmarshalJSON(data []byte) error {
	r, ok := new(big.Rat).SetString(string(data))
	if !ok {
		return fmt.Errorf("%s is no length in millimetres", data)
	}
	x, ok := length.FromRat(r, length.Millimetre)
	if !ok {
		return fmt.Errorf("%s mm is longer than 370 m", data)
	}
	*l = MM(x)
	return nil
}

// SquareMetres is an area that JSON keeps in square metres; read back it is good to the nearest unit.
type SquareMetres length.Area

// MarshalJSON writes the number.
func (a SquareMetres) MarshalJSON() ([]byte, error) { return []byte(length.Area(a).Decimal()), nil }

// UnmarshalJSON reads the number.
func (a *SquareMetres) UnmarshalJSON(data []byte) error {
	r, ok := new(big.Rat).SetString(string(data))
	if !ok {
		return fmt.Errorf("%s is no area", data)
	}
	r.Mul(r, new(big.Rat).SetInt64(int64(length.Metre)))
	r.Mul(r, new(big.Rat).SetInt64(int64(length.Metre)))
	n := new(big.Int).Quo(r.Num(), r.Denom())
	if !n.IsInt64() {
		return fmt.Errorf("%s is too large an area", data)
	}
	*a = SquareMetres(n.Int64())
	return nil
}

// Plain is a number that JSON keeps without an exponent.
type Plain float64

// MarshalJSON writes the number.
func (f Plain) MarshalJSON() ([]byte, error) {
	return strconv.AppendFloat(nil, float64(f), 'f', -1, 64), nil
}

// Squares is a sum of squared lengths that JSON keeps in square millimetres, rounded to six decimals. It is written
// only: no reader asks for it.
type Squares struct{ sum *big.Int }

func squaresOf(v seam.Score) Squares {
	sum := new(big.Int).Lsh(new(big.Int).SetUint64(v.Unevenness.Hi), 64)
	return Squares{sum.Add(sum, new(big.Int).SetUint64(v.Unevenness.Lo))}
}

// MarshalJSON writes the number.
func (s Squares) MarshalJSON() ([]byte, error) {
	n := new(big.Int).Mul(s.sum, big.NewInt(1_000_000))
	den := big.NewInt(int64(length.Millimetre) * int64(length.Millimetre))
	n.Lsh(n, 1).Add(n, den).Quo(n, new(big.Int).Lsh(den, 1))
	return []byte(length.Decimals(n.String(), 6)), nil
}

// UnmarshalJSON passes the number over.
func (s *Squares) UnmarshalJSON([]byte) error { return nil }

// KeptPoint is x and z.
type KeptPoint [2]MM

func keptPoints(list shape.Outline) []KeptPoint {
	out := make([]KeptPoint, len(list))
	for i, q := range list {
		out[i] = KeptPoint{MM(q.X), MM(q.Z)}
	}
	return out
}

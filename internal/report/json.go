package report

import (
	"encoding/json"
	"io"
	"math/big"
	"strings"

	"flitchlay/internal/length"
)

// MM is a length as JSON takes it.
type MM length.Length

// MarshalJSON writes millimetres, exactly.
func (l MM) MarshalJSON() ([]byte, error) { return []byte(length.Length(l).Decimal()), nil }

// SquareMetres is an area as JSON takes it: a decimal number.
type SquareMetres string

// MarshalJSON writes the number.
func (a SquareMetres) MarshalJSON() ([]byte, error) { return []byte(a), nil }

// Null gives null for nothing.
func Null[T comparable](v T) *T {
	var zero T
	if v == zero {
		return nil
	}
	return &v
}

// List gives an empty list for none.
func List[T any](v []T) []T {
	if v == nil {
		return []T{}
	}
	return v
}

// Each makes a list of another, entry by entry.
func Each[A, B any](from []A, f func(*A) B) []B {
	out := make([]B, len(from))
	for i := range from {
		out[i] = f(&from[i])
	}
	return out
}

// Metres is twice an area as JSON takes it.
func Metres(twice length.Area) SquareMetres {
	var s Sum
	s.Plus(twice)
	return SquareMetres(s.SquareMetres())
}

// metreDecimals is how many decimals of a square metre JSON takes where parts have to add up.
const metreDecimals = 9

// MetreShares rounds the parts of a whole so that they add up to it, however large they are.
func MetreShares(list []Sum) []SquareMetres {
	rounded := Decimals(length.Millimetres, metreDecimals)
	var sum Sum
	var out []SquareMetres
	last := new(big.Rat)
	for i := range list {
		sum.Add(&sum.Int, &list[i].Int)
		at := rounded(&sum)
		out = append(out, plainMetres(new(big.Rat).Sub(at, last)))
		last = at
	}
	return out
}

// plainMetres takes zeros off the end of a decimal.
func plainMetres(r *big.Rat) SquareMetres {
	s := strings.TrimSuffix(strings.TrimRight(r.FloatString(metreDecimals), "0"), ".")
	if s == "-0" || s == "" {
		s = "0"
	}
	return SquareMetres(s)
}

// PutJSON writes a head and a value after it, its further lines with an indent in front.
func PutJSON(w io.Writer, head, indent string, value any) error {
	if _, err := io.WriteString(w, head); err != nil {
		return err
	}
	var b strings.Builder
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	e.SetIndent(indent, "  ")
	if err := e.Encode(value); err != nil {
		return err
	}
	_, err := io.WriteString(w, strings.TrimRight(b.String(), "\n"))
	return err
}

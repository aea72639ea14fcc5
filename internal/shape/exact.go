package shape

import (
	"cmp"
	"math/big"
	"math/bits"

	"flitchlay/internal/length"
)

// compareProducts is the sign of a b - c d, exact.
func compareProducts(a, b, c, d L) int {
	ah, al := product(a, b)
	ch, cl := product(c, d)
	return cmp.Or(cmp.Compare(ah, ch), cmp.Compare(al, cl))
}

// product is a b in 128 bits, two's complement.
func product(a, b L) (hi int64, lo uint64) {
	h, l := bits.Mul64(uint64(a.Abs()), uint64(b.Abs()))
	if (a < 0) != (b < 0) {
		var borrow uint64
		l, borrow = bits.Sub64(0, l, 0)
		h, _ = bits.Sub64(0, h, borrow)
	}
	return int64(h), l
}

// turn is 1 where the way p, q, r turns left, -1 where it turns right, 0 where it goes straight on or back.
func turn(p, q, r Point) int {
	return compareProducts(q.X-p.X, r.Z-p.Z, q.Z-p.Z, r.X-p.X)
}

// along is base + rise part / run in whole units and a rest: rest / run of a unit is to be added.
//
// Errors: it panics where run is not positive.
func along(base, rise, part, run L) (whole, rest L) {
	h, l := bits.Mul64(uint64(rise.Abs()), uint64(part.Abs()))
	quotient, remainder := bits.Div64(h, l, uint64(run))
	if (rise < 0) != (part < 0) {
		quotient = -quotient
		if remainder != 0 {
			quotient, remainder = quotient-1, uint64(run)-remainder
		}
	}
	return base + L(quotient), L(remainder)
}

// nearest rounds whole + rest / run to the nearest unit, halves away from zero.
//
// One rule for all lines: two lines that meet half-way between units must round to the same one.
func nearest(whole, rest, run L) L {
	left := run - rest
	if rest > left || rest == left && whole >= 0 {
		return whole + 1
	}
	return whole
}

// line is a straight line through two points, X of a not right of X of b.
type line struct{ a, b Point }

// heightAt is the height of the line at x in whole units and a rest: rest / (b.X - a.X) of a unit is to be added.
func (s line) heightAt(x L) (whole, rest L) {
	return along(s.a.Z, s.b.Z-s.a.Z, x-s.a.X, s.b.X-s.a.X)
}

// atX is where the line meets an upright at x, rounded.
func (s line) atX(x L) Point {
	whole, rest := s.heightAt(x)
	return Point{x, nearest(whole, rest, s.b.X-s.a.X)}
}

// atZ is where the line meets a level at z, rounded.
func (s line) atZ(z L) Point {
	run, part := s.b.Z-s.a.Z, z-s.a.Z
	if run < 0 {
		run, part = -run, -part
	}
	whole, rest := along(s.a.X, s.b.X-s.a.X, part, run)
	return Point{nearest(whole, rest, run), z}
}

// meet is where two lines cross, rounded.
//
// Errors: false where they are parallel, or cross farther out than any length goes.
func (s line) meet(t line) (Point, bool) {
	wide := func(l L) *big.Int { return big.NewInt(int64(l)) }
	cross := func(ax, az, bx, bz L) *big.Int {
		left := new(big.Int).Mul(wide(ax), wide(bz))
		return left.Sub(left, new(big.Int).Mul(wide(az), wide(bx)))
	}
	dx, dz := s.b.X-s.a.X, s.b.Z-s.a.Z
	tx, tz := t.b.X-t.a.X, t.b.Z-t.a.Z
	run := cross(dx, dz, tx, tz)
	if run.Sign() == 0 {
		return Point{}, false
	}
	part := cross(t.a.X-s.a.X, t.a.Z-s.a.Z, tx, tz)
	on := func(base, rise L) (L, bool) {
		top := new(big.Int).Mul(wide(rise), part)
		top.Add(top, new(big.Int).Mul(wide(base), run))
		return length.FromRat(new(big.Rat).SetFrac(top, run), 1)
	}
	x, inX := on(s.a.X, dx)
	z, inZ := on(s.a.Z, dz)
	return Point{x, z}, inX && inZ
}

// passes tells whether the line goes through the inside of the unit square round p, as long as p lies between its
// ends in both directions.
func (s line) passes(p Point) bool {
	// In half units. Of the four corners of the square the two across the line's slope tell.
	a, b := Point{2 * s.a.X, 2 * s.a.Z}, Point{2 * s.b.X, 2 * s.b.Z}
	up, down := Point{2*p.X - 1, 2*p.Z + 1}, Point{2*p.X + 1, 2*p.Z - 1}
	if s.b.Z < s.a.Z {
		up, down = Point{2*p.X + 1, 2*p.Z + 1}, Point{2*p.X - 1, 2*p.Z - 1}
	}
	return turn(a, b, up) > 0 && turn(a, b, down) < 0
}

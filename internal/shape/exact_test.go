package shape

import (
	"math/big"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"flitchlay/internal/length"
)

// randomPoints are points far apart and close together, and again and again in line.
func randomPoints(random *rand.Rand, n int) []Point {
	reach := []L{3, 1000, length.Limit}[random.IntN(3)]
	points := make([]Point, n)
	for i := range points {
		points[i] = Point{L(random.Int64N(int64(2*reach))) - reach, L(random.Int64N(int64(2*reach))) - reach}
	}
	return points
}

func TestTurnAgreesWithLongIntegers(t *testing.T) {
	const seed = 3
	random := rand.New(rand.NewPCG(seed, 0))
	seen := map[int]int{}
	for range 20_000 {
		p := randomPoints(random, 3)
		minus := func(a, b L) *big.Int { return big.NewInt(int64(a - b)) }
		left := new(big.Int).Mul(minus(p[1].X, p[0].X), minus(p[2].Z, p[0].Z))
		right := new(big.Int).Mul(minus(p[1].Z, p[0].Z), minus(p[2].X, p[0].X))
		want := left.Cmp(right)
		require.Equal(t, want, turn(p[0], p[1], p[2]), "seed %d: %v", seed, p)
		seen[want]++
	}
	require.Len(t, seen, 3, "left, right and straight on")
}

// exactly is the nearest whole number to a fraction, halves away from nought.
func exactly(r *big.Rat) L {
	half := big.NewRat(1, 2)
	if r.Sign() < 0 {
		half.Neg(half)
	}
	r = new(big.Rat).Add(r, half)
	return L(new(big.Int).Quo(r.Num(), r.Denom()).Int64())
}

func TestMeetingPointsAgreeWithFractions(t *testing.T) {
	const seed = 5
	random := rand.New(rand.NewPCG(seed, 0))
	rat := func(l L) *big.Rat { return new(big.Rat).SetInt64(int64(l)) }
	on := func(base, rise L, part *big.Rat) *big.Rat {
		return new(big.Rat).Add(rat(base), new(big.Rat).Mul(rat(rise), part))
	}
	halves := 0
	for range 20_000 {
		p := randomPoints(random, 5)
		s, u := line{p[0], p[1]}, line{p[2], p[3]}
		if s.a.X > s.b.X {
			s.a, s.b = s.b, s.a
		}
		if s.a.X == s.b.X || s.a.Z == s.b.Z {
			continue
		}
		x, z := min(max(p[4].X, s.a.X), s.b.X), min(max(p[4].Z, min(s.a.Z, s.b.Z)), max(s.a.Z, s.b.Z))
		height := on(s.a.Z, s.b.Z-s.a.Z, new(big.Rat).SetFrac64(int64(x-s.a.X), int64(s.b.X-s.a.X)))
		require.Equal(t, Point{x, exactly(height)}, s.atX(x), "seed %d: %v at x %d", seed, s, x)
		if height.Denom().Int64() == 2 {
			halves++
		}
		across := on(s.a.X, s.b.X-s.a.X, new(big.Rat).SetFrac64(int64(z-s.a.Z), int64(s.b.Z-s.a.Z)))
		require.Equal(t, Point{exactly(across), z}, s.atZ(z), "seed %d: %v at z %d", seed, s, z)

		got, ok := s.meet(u)
		if !ok {
			continue
		}
		// By Cramer's rule on a x + b z = c.
		a, b := rat(s.b.Z-s.a.Z), rat(s.a.X-s.b.X)
		c, d := rat(u.b.Z-u.a.Z), rat(u.a.X-u.b.X)
		mul := func(p, q *big.Rat) *big.Rat { return new(big.Rat).Mul(p, q) }
		sub := func(p, q *big.Rat) *big.Rat { return new(big.Rat).Sub(p, q) }
		add := func(p, q *big.Rat) *big.Rat { return new(big.Rat).Add(p, q) }
		e := add(mul(a, rat(s.a.X)), mul(b, rat(s.a.Z)))
		f := add(mul(c, rat(u.a.X)), mul(d, rat(u.a.Z)))
		run := sub(mul(a, d), mul(b, c))
		want := Point{exactly(new(big.Rat).Quo(sub(mul(e, d), mul(b, f)), run)), exactly(new(big.Rat).Quo(sub(mul(a, f), mul(e, c)), run))}
		require.Equal(t, want, got, "seed %d: %v and %v", seed, s, u)
	}
	require.Greater(t, halves, 100, "halves were tried")
}

func TestLinesThatDoNotMeet(t *testing.T) {
	level := line{Point{0, 0}, Point{10, 0}}
	_, ok := level.meet(line{Point{0, 4}, Point{10, 4}})
	require.False(t, ok, "parallel")
	_, ok = line{Point{0, 0}, Point{length.Limit, 0}}.meet(line{Point{0, -1}, Point{1000, -2}})
	require.True(t, ok)
	_, ok = line{Point{0, 0}, Point{length.Limit, 0}}.meet(line{Point{0, length.Limit}, Point{1000, length.Limit - 1}})
	require.False(t, ok, "farther out than any length goes")
}

func TestPassesIsTheInsideOfASquare(t *testing.T) {
	for _, c := range []struct {
		name       string
		ax, az     L
		bx, bz     L
		x, z       L
		wantPasses bool
	}{
		{"through the middle", 0, 0, 4, 4, 2, 2, true},
		{"along the edge of the square, at half a unit", 0, 0, 2, 1, 1, 1, true},
		{"a whole unit over", 0, 0, 4, 2, 2, 2, false},
		{"through a corner only", 0, 1, 1, 0, 1, 1, false},
		{"falling, through the middle", 0, 4, 4, 0, 1, 3, true},
		{"falling, clear of it", 0, 4, 4, 0, 1, 1, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			require.Equal(t, c.wantPasses, line{Point{c.ax, c.az}, Point{c.bx, c.bz}}.passes(Point{c.x, c.z}))
		})
	}
}

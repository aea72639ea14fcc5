package length

import (
	"math"
	"math/big"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// nearest rounds a fraction to the nearest whole number, halves away from zero, in big numbers.
func nearest(r *big.Rat) *big.Int {
	half := big.NewRat(1, 2)
	if r.Sign() < 0 {
		return new(big.Int).Neg(nearest(new(big.Rat).Neg(r)))
	}
	sum := new(big.Rat).Add(r, half)
	return new(big.Int).Quo(sum.Num(), sum.Denom())
}

// some gives lengths of all sizes, small ones often.
func some(random *rand.Rand, limit int64) Length {
	n := random.Int64N(limit) >> random.IntN(62)
	if random.IntN(2) == 0 {
		n = -n
	}
	return Length(n)
}

func TestMulDivAgainstBigNumbers(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 4))
	done, refused := 0, 0
	for range 20_000 {
		a, b, c := some(random, math.MaxInt64), some(random, math.MaxInt64), some(random, math.MaxInt64)
		if c == 0 {
			continue
		}
		want := nearest(new(big.Rat).SetFrac(new(big.Int).Mul(big.NewInt(int64(a)), big.NewInt(int64(b))), big.NewInt(int64(c))))
		if !want.IsInt64() {
			require.Panics(t, func() { MulDiv(a, b, c) }, "%d * %d / %d", a, b, c)
			refused++
			continue
		}
		require.Equal(t, want.Int64(), int64(MulDiv(a, b, c)), "%d * %d / %d", a, b, c)
		done++
	}
	assert.Greater(t, done, 5_000)
	assert.Greater(t, refused, 1_000)
	assert.Equal(t, Length(2), MulDiv(3, 1, 2), "halves away from zero")
	assert.Equal(t, Length(-2), MulDiv(-3, 1, 2))
	assert.Equal(t, Length(-2), MulDiv(3, 1, -2))
	assert.Panics(t, func() { MulDiv(1, 1, 0) })
	assert.Panics(t, func() { MulDiv(math.MaxInt64, 2, 1) }, "not -2")
}

func TestLerpAgainstBigNumbers(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 6))
	halves := 0
	for range 20_000 {
		s0, z0, s1, z1 := some(random, int64(Limit)), some(random, int64(Limit)), some(random, int64(Limit)), some(random, int64(Limit))
		if s0 == s1 {
			continue
		}
		s := s0 + MulDiv(s1-s0, Length(random.Int64N(9)-1), 7) // also a little past the ends
		way := new(big.Rat).SetFrac64(int64(s-s0), int64(s1-s0))
		exact := new(big.Rat).Add(new(big.Rat).SetInt64(int64(z0)), way.Mul(way, new(big.Rat).SetInt64(int64(z1-z0))))
		if new(big.Rat).Mul(exact, big.NewRat(2, 1)).IsInt() && !exact.IsInt() {
			halves++
		}
		want := nearest(exact).Int64()
		require.Equal(t, want, int64(Lerp(s, s0, z0, s1, z1)), "at %d of (%d, %d), (%d, %d)", s, s0, z0, s1, z1)
		require.Equal(t, want, int64(Lerp(s, s1, z1, s0, z0)), "from the other end")
		require.Equal(t, want, int64(Lerp(-s, -s0, z0, -s1, z1)), "mirrored")
		require.Equal(t, -want, int64(Lerp(s, s0, -z0, s1, -z1)), "upside down")
	}
	assert.Greater(t, halves, 50, "halves are among the cases")
	assert.Equal(t, Length(10), Lerp(1, 0, 10, 2, 9), "9 1/2 goes up, as a height and not as a fall")
	assert.Equal(t, Length(5), Lerp(7, 7, 5, 7, 5), "level")
	assert.Panics(t, func() { Lerp(7, 7, 5, 7, 6) })
}

func TestSmallParts(t *testing.T) {
	assert.Equal(t, []Length{1, -2, 0, -1}, []Length{Length(3).HalfDown(), Length(-3).HalfDown(), Length(1).HalfDown(), Length(-1).HalfDown()}, "half is rounded down")
	assert.Equal(t, []int64{0, 1, 1, 2}, []int64{CeilDiv(0, 12), CeilDiv(1, 12), CeilDiv(12, 12), CeilDiv(13, 12)})
	assert.Equal(t, [2]string{"in", "mm"}, [2]string{Inches.String(), Millimetres.String()})
	assert.Equal(t, [2]Length{Inch, Millimetre}, [2]Length{Inches.Of(), Millimetres.Of()})
	assert.Equal(t, [2]Length{Foot, 300 * Millimetre}, [2]Length{Inches.Grain(), Millimetres.Grain()})
	assert.Equal(t, 25.4, Inch.MM())
	assert.True(t, Style{}.Exact(Inch/16))
	assert.False(t, Style{}.Exact(Inch/32))
	assert.Equal(t, Inch/16, Style{}.Round(Inch/32), "half of the last place goes up")
}

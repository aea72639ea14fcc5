package length

import (
	"fmt"
	"math/big"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// inch is n/64 in.
func inch(n64 int64) Length { return Length(n64 * 3175) }

func TestUnitsAreExact(t *testing.T) {
	// Source: 1 in = 25.4 mm and 1 ft = 0.3048 m exactly, NIST SP 811 (2008), appendix B.8.
	assert.Equal(t, Length(203_200), Inch)
	assert.Equal(t, 254*Millimetre, 10*Inch)
	assert.Equal(t, 3048*Metre, 10_000*Foot)
	assert.Equal(t, Length(8), Micrometre)
	assert.Equal(t, Length(3_175), Inch/64)
	assert.Zero(t, Inch%64)
}

// Every form in which the room file takes a length, and what people type besides.
func TestParseForms(t *testing.T) {
	const room = 12*12*64 + 6*64 + 24 // 12'-6 3/8" in 1/64 in
	for _, c := range []struct {
		text string
		unit Unit
		want Length
	}{
		{`12' 6 3/8`, Inches, inch(room)},
		{`12'-6 3/8"`, Inches, inch(room)},
		{`12ft 6-3/8in`, Inches, inch(room)},
		{`6 3/8 in`, Inches, inch(6*64 + 24)},
		{`3810 mm`, Inches, 3810 * Millimetre},
		{`3.81 m`, Inches, 3810 * Millimetre},
		{`12′-6 3/8″`, Inches, inch(room)},
		{`12’ 6 3/8”`, Inches, inch(room)},
		{`12'-6⅜`, Inches, inch(room)},
		{`12' 6 ⅜"`, Inches, inch(room)},
		{`12'-6 3/8''`, Inches, inch(room)},
		{`12 ft. 6 3/8 in.`, Inches, inch(room)},
		{`12 feet 6 3/8 inches`, Inches, inch(room)},
		{`12FT 6 3/8IN`, Inches, inch(room)},
		{`12' - 6 3/8"`, Inches, inch(room)},
		{`12' 6 3/8`, Millimetres, inch(room)}, // after feet it is inches in a metric room too
		{`12'`, Inches, 12 * Foot},
		{`12'-0"`, Inches, 12 * Foot},
		{`12'-0 1/2"`, Inches, 12*Foot + Inch/2},
		{`0'-6"`, Inches, 6 * Inch},
		{`24 1/2`, Inches, inch(24*64 + 32)},
		{`24½`, Inches, inch(24*64 + 32)},
		{`½`, Inches, Inch / 2},
		{`½ in`, Millimetres, Inch / 2},
		{`¼`, Inches, Inch / 4},
		{`1/16`, Inches, Inch / 16},
		{`6¹⁵⁄₁₆`, Inches, inch(6*64 + 60)},
		{`6 15⁄16"`, Inches, inch(6*64 + 60)},
		{`24.5`, Inches, inch(24*64 + 32)},
		{`.5`, Inches, Inch / 2},
		{`2,5 mm`, Inches, 2*Millimetre + 500*Micrometre},
		{`12,5`, Millimetres, 12*Millimetre + 500*Micrometre},
		{`1200`, Millimetres, 1200 * Millimetre},
		{`25.4 cm`, Millimetres, 10 * Inch},
		{`-1/4`, Inches, -Inch / 4},
		{`−1/4`, Inches, -Inch / 4},
		{`- 1' 6"`, Inches, -18 * Inch},
		{`+3`, Inches, 3 * Inch},
		{"\t 3\u00a0in ", Millimetres, 3 * Inch},
		{`0`, Inches, 0},
		{`370 m`, Inches, Limit},
	} {
		t.Run(c.text, func(t *testing.T) {
			got, err := Parse(c.text, c.unit)
			require.NoError(t, err)
			assert.Equal(t, c.want, got)
		})
	}
}

func TestParseRefuses(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{``, `an empty text is no length`},
		{`  `, `an empty text is no length`},
		{`six`, `no figure at "six"`},
		{`6 inche`, `"inche" is left over after the length`},
		{`12 6`, `"6" is left over after the length`},
		{`12' 6 mm`, `after feet only inches can follow`},
		{`12' 13"`, `12 or more inches after feet`},
		{`12' 12`, `12 or more inches after feet`},
		{`12' 6" 3`, `"3" is left over after the length`},
		{`6 8/8`, `the fraction 1 behind a whole number is not less than one`},
		{`6 1/0`, `a fraction over 0`},
		{`6 1/`, `a fraction without its lower figure`},
		{`1.5/2`, `a fraction is made of whole numbers`},
		{`6.5 1/2`, `a decimal and a fraction in one figure`},
		{`-`, `a figure is missing at the end`},
		{`12'-`, `a figure is missing at the end`},
		{`--3`, `no figure at "-3"`},
		{`3 m2`, `"2" is left over after the length`},
		{`1,234 mm`, `"1,234" can be read in two ways: write 1234 or 1.234`},
		{`370.001 m`, `longer than 370 m`},
		{strings.Repeat("9", 41), `a figure of more than 40 digits`},
		{`1e3`, `"e3" is left over after the length`},
	} {
		t.Run(c.text, func(t *testing.T) {
			_, err := Parse(c.text, Inches)
			require.EqualError(t, err, c.want)
		})
	}
}

func TestParseRoundsHalvesAwayFromZero(t *testing.T) {
	for text, want := range map[string]Length{
		"0.0000625 mm":  1, // half of 1/8 micrometre
		"0.0000624 mm":  0,
		"-0.0000625 mm": -1,
		"-0.0000624 mm": 0,
		"1/3 in":        67733, // 67 733.33
		"2/3 in":        135467,
		"1/128 in":      1588, // 1587.5
		"-1/128 in":     -1588,
	} {
		got, err := Parse(text, Millimetres)
		require.NoError(t, err)
		assert.Equal(t, want, got, text)
	}
}

// The same length in inches and in millimetres is the same number: 1/64 in is 0.396875 mm.
func TestInchesAndMillimetresAgree(t *testing.T) {
	for n := int64(-700); n <= 700; n += 7 {
		a, err := Parse(fmt.Sprintf("%d/64 in", n), Inches)
		require.NoError(t, err)
		b, err := Parse(new(big.Rat).Mul(big.NewRat(n, 64), big.NewRat(254, 10)).FloatString(6)+" mm", Inches)
		require.NoError(t, err)
		assert.Equal(t, a, b, n)
		c, ok := FromRat(new(big.Rat).SetFloat64(float64(n)/64), Inch)
		require.True(t, ok)
		assert.Equal(t, a, c, n)
	}
}

func TestFromNumbers(t *testing.T) {
	for _, bad := range []float64{1e300, -1e300, 370.1, -370.1} {
		_, ok := FromRat(new(big.Rat).SetFloat64(bad), Metre)
		assert.False(t, ok, bad)
	}
	_, ok := FromRat(big.NewRat(1<<62, 1), Inch)
	assert.False(t, ok)
	_, ok = FromRat(big.NewRat(-15_000, 1), Inch)
	assert.False(t, ok)
	l, ok := FromRat(big.NewRat(-14_000, 1), Inch)
	assert.True(t, ok)
	assert.Equal(t, -14_000*Inch, l)
	l, ok = FromRat(new(big.Rat).SetFloat64(0.1), Inch)
	assert.True(t, ok)
	assert.Equal(t, Length(20_320), l)
}

// FuzzParse holds that what is read prints in every style so that it reads back as what was printed.
func FuzzParse(f *testing.F) {
	for _, text := range []string{`12'-6 3/8"`, `3.81 m`, `-½`, `12,5`, `6¹⁵⁄₁₆`, `0'-0 1/64"`, `369 m`, `1/3`} {
		f.Add(text, true)
		f.Add(text, false)
	}
	f.Fuzz(func(t *testing.T, text string, metric bool) {
		unit := Inches
		if metric {
			unit = Millimetres
		}
		l, err := Parse(text, unit)
		if err != nil {
			require.NotEmpty(t, err.Error())
			return
		}
		require.LessOrEqual(t, l.Abs(), Limit)
		for _, d := range []int64{1, 2, 4, 8, 16, 32, 64} {
			s := Style{Inches, d}
			for _, printed := range []string{s.Format(l), s.Words(l), s.Inches(l)} {
				back, err := Parse(printed, Inches)
				if s.Round(l).Abs() > Limit {
					continue // rounded up past what is read
				}
				require.NoError(t, err, printed)
				require.Equal(t, s.Round(l), back, printed)
			}
			require.LessOrEqual(t, 2*(s.Round(l)-l).Abs(), Inch/Length(d))
		}
		for _, d := range []int64{1, 2, 5, 10} {
			s := Style{Millimetres, d}
			back, err := Parse(s.Words(l), Inches)
			if s.Round(l).Abs() > Limit {
				continue
			}
			require.NoError(t, err, s.Words(l))
			require.Equal(t, s.Round(l), back, s.Words(l))
		}
		back, err := Parse(l.Decimal(), Millimetres)
		require.NoError(t, err)
		require.Equal(t, l, back, "JSON is exact")
	})
}

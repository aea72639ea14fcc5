package length

import (
	"math/big"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// decimals reads inches as a decimal.
func decimals(t *testing.T, text string) Length {
	r, ok := new(big.Rat).SetString(text)
	require.True(t, ok)
	l, ok := FromRat(r, Inch)
	require.True(t, ok)
	return l
}

// Source: 12'-6 3/8" with its hyphen, zero inches kept, under a foot inches alone: common practice of building drawings
// in the United States. Rounding: no standard rule was found; halves go away from zero, so 7 1/32 tells that apart from
// halves to even.
func TestFormatFeetAndInches(t *testing.T) {
	for _, c := range []struct{ inches, want, why string }{
		{"150.375", `12'-6 3/8"`, "reduced to lowest terms"},
		{"144", `12'-0"`, "zero inches kept"},
		{"143.99", `12'-0"`, "rounding carries into the feet, not 11'-12\""},
		{"11.99", `1'-0"`, "rounding carries into the first foot"},
		{"6", `6"`, "under a foot no feet"},
		{"0.5", `1/2"`, "under an inch no whole inches"},
		{"0", `0"`, "nothing is still printed"},
		{"7.03125", `7 1/16"`, "half of 1/16 goes up"},
		{"7.09375", `7 1/8"`, "half of 1/16 goes up to an even one too"},
		{"-7.03125", `-7 1/16"`, "and away from zero under it"},
		{"7.031", `7"`, "less than half goes down"},
		{"144.5", `12'-0 1/2"`, "zero inches kept before a fraction"},
		{"-150.375", `-12'-6 3/8"`, "one sign for the whole"},
		{"0.03", `0"`, "no sign and no fraction of nought"},
		{"-0.03", `0"`, "never -0"},
	} {
		t.Run(c.why, func(t *testing.T) {
			assert.Equal(t, c.want, Style{}.Format(decimals(t, c.inches)))
		})
	}
	assert.Equal(t, `7 1/32"`, Style{Denominator: 32}.Format(decimals(t, "7.03125")))
	assert.Equal(t, `7 1/64"`, Style{Denominator: 64}.Format(decimals(t, "7.015625")))
	assert.Equal(t, `7"`, Style{Denominator: 1}.Format(decimals(t, "7.49")))
}

// Source: decimal comma, ISO 129-1:2018.
func TestFormatMillimetres(t *testing.T) {
	s := StyleOf(Millimetres)
	for _, c := range []struct {
		l    Length
		want string
	}{
		{3810 * Millimetre, "3810"}, {12*Millimetre + 500*Micrometre, "12,5"}, {12*Millimetre + 250*Micrometre, "12,5"},
		{12*Millimetre + 249*Micrometre, "12"}, {-12*Millimetre - 250*Micrometre, "-12,5"}, {-200 * Micrometre, "0"}, {0, "0"}, {Inch, "25,5"},
	} {
		assert.Equal(t, c.want, s.Format(c.l))
	}
	assert.Equal(t, "25,4", Style{Millimetres, 10}.Format(Inch))
	assert.Equal(t, "0,397", Style{Millimetres, 1000}.Format(Inch/64))
	assert.Equal(t, "25,4 mm", Style{Millimetres, 10}.Words(Inch))
	assert.Equal(t, "25,4", Style{Millimetres, 10}.Inches(Inch))
}

func TestWords(t *testing.T) {
	s := Style{}
	for inches, want := range map[string]string{
		"3.25": "3 1/4 in", "0": "0 in", "35.9375": "35 15/16 in", "36": `3'-0"`, "-3.25": "-3 1/4 in", "-36": `-3'-0"`, "150.375": `12'-6 3/8"`, "35.99": `3'-0"`,
	} {
		assert.Equal(t, want, s.Words(decimals(t, inches)))
	}
	assert.Equal(t, "150 3/8", s.Inches(decimals(t, "150.375")))
	assert.Equal(t, "-150 3/8", s.Inches(decimals(t, "-150.375")))
}

// What is no length on a wall is printed as it is, whatever the step of the style.
func TestMeasuredIsNotRounded(t *testing.T) {
	inch, mm := StyleOf(Inches), StyleOf(Millimetres)
	for _, c := range []struct {
		style Style
		l     Length
		want  string
		words string
	}{
		{mm, 7 * Millimetre / 10, "0,7", "0,7 mm"}, {mm, 8 * Millimetre / 10, "0,8", "0,8 mm"}, {mm, 914*Millimetre + Millimetre/2, "914,5", "914,5 mm"},
		{inch, 30 * Inch / 1000, "0.030 in", "0.030 in"}, {inch, Inch / 32, `1/32"`, "1/32 in"}, {inch, 24*Inch + Inch/64, `2'-0 1/64"`, "24 1/64 in"}, {inch, 24*Inch + Inch/2, `2'-0 1/2"`, "24 1/2 in"},
	} {
		assert.Equal(t, c.want, c.style.Measured(c.l))
		assert.Equal(t, c.words, c.style.MeasuredWords(c.l))
	}
}

func TestApartNeverPrintsTwoLengthsAlike(t *testing.T) {
	for _, c := range []struct{ a, b, first, second string }{
		{"3.5", "4", "3 1/2 in", "4 in"},
		{"3.984375", "4", "3 63/64 in", "4 in"},
		{"3.97", "4", "3 31/32 in", "4 in"},
		{"3.999", "4", "just under 4 in", "4 in"},
		{"4.001", "4", "just over 4 in", "4 in"},
		{"4", "4", "4 in", "4 in"},
	} {
		a, b := Style{}.Apart(decimals(t, c.a), decimals(t, c.b))
		assert.Equal(t, [2]string{c.first, c.second}, [2]string{a, b}, c.a)
	}
	a, b := StyleOf(Millimetres).Apart(100*Millimetre-8, 100*Millimetre)
	assert.Equal(t, [2]string{"99,999 mm", "100 mm"}, [2]string{a, b})
	a, b = StyleOf(Millimetres).Apart(100*Millimetre-1, 100*Millimetre)
	assert.Equal(t, [2]string{"just under 100 mm", "100 mm"}, [2]string{a, b})
}

// A chain of nine sheets of 23 15/32 in would be off by 9/32 in, were each rounded for itself.
func TestChainAddsUp(t *testing.T) {
	var at []Length
	for k := range 10 {
		at = append(at, Length(k)*decimals(t, "23.46875"))
	}
	assert.Equal(t, []string{`1'-11 1/2"`, `1'-11 7/16"`, `1'-11 1/2"`, `1'-11 7/16"`, `1'-11 1/2"`, `1'-11 7/16"`, `1'-11 1/2"`, `1'-11 7/16"`, `1'-11 1/2"`},
		Style{}.Chain(at))
	assert.Empty(t, Style{}.Chain(at[:1]))

	random := rand.New(rand.NewPCG(1, 2))
	for _, s := range []Style{{}, {Inches, 32}, {Millimetres, 0}, {Millimetres, 1}} {
		for range 200 {
			positions := []Length{Length(random.Int64N(int64(Foot)))}
			for range 2 + random.IntN(12) {
				positions = append(positions, positions[len(positions)-1]+Length(random.Int64N(int64(3*Foot))))
			}
			sum := Length(0)
			for _, text := range s.Chain(positions) {
				part, err := Parse(text, s.Unit)
				require.NoError(t, err)
				sum += part
			}
			whole, err := Parse(s.Format(positions[len(positions)-1]-positions[0]), s.Unit)
			require.NoError(t, err)
			require.Equal(t, whole, sum, "%v %v", s, positions)
		}
	}
}

func TestDecimal(t *testing.T) {
	for l, want := range map[Length]string{0: "0", 1: "0.000125", -1: "-0.000125", 8: "0.001", Millimetre: "1", Inch: "25.4", -Inch: "-25.4", 3175: "0.396875", 7999: "0.999875", 10*Millimetre + 4: "10.0005"} {
		assert.Equal(t, want, l.Decimal())
	}
}

func TestAreas(t *testing.T) {
	// Source: 1 ft2 = 9.290 304 E-02 m2 exactly, NIST SP 811 (2008), appendix B.8.
	assert.Equal(t, "0.09290304", Foot.Times(Foot).Decimal())
	assert.Equal(t, 0.09290304, Foot.Times(Foot).SquareMetres())
	assert.Equal(t, 1.0, Foot.Times(Foot).SquareFeet())
	assert.Equal(t, "-1", (-Metre).Times(Metre).Decimal())
	assert.Equal(t, "0.000000001", Area(32_000).Decimal(), "half of the last place goes up")
	assert.Equal(t, "0", Area(31_999).Decimal())
	assert.Equal(t, "0", Area(-31_999).Decimal())
	assert.Equal(t, "0.5", HalfDecimal(big.NewInt(squareMetre), 2))

	assert.Equal(t, "150.5 sq ft", Style{}.FormatArea(150*Foot.Times(Foot)+Foot.Times(6*Inch)))
	assert.Equal(t, "0.3 sq ft", Style{}.FormatArea(Foot.Times(3*Inch)), "0.25: halves away from zero")
	assert.Equal(t, "-0.3 sq ft", Style{}.FormatArea(Foot.Times(-3*Inch)))
	third := Foot.Times(4 * Inch)
	assert.Equal(t, []string{"0.3 sq ft", "0.4 sq ft", "0.3 sq ft"}, Style{}.FormatAreas([]Area{third, third, third}), "they add up to 1.0")
	assert.Equal(t, "0.0 sq ft", Style{}.FormatArea(-1))
	assert.Equal(t, "13,9 m²", StyleOf(Millimetres).FormatArea(Metre.Times(13*Metre+850*Millimetre)), "13.85")
	assert.Equal(t, "136900,0 m²", StyleOf(Millimetres).FormatArea(Limit.Times(Limit)))

	// A right triangle with legs 3 and 4 has an area of 6.
	assert.Equal(t, Area(12), Cross(3, 0, 0, 4))
	assert.Equal(t, Area(-12), Cross(0, 4, 3, 0))
	assert.Equal(t, Area(Limit)*Area(Limit), Cross(Limit, 0, 0, Limit))
}

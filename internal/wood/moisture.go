package wood

import "math"

// fit is the equation's coefficients for one scale of temperature: each a constant, a linear and a square part.
type fit struct{ w, k, k1, k2 [3]float64 }

// Source: Wood Handbook, FPL-GTR-282 (2021), chapter 4, equation 4-5 and the coefficients under it; as restated
// elsewhere, and held by the tests against Table 4-2 and against the handbook's other set, for degrees C.
var fahrenheitFit = fit{
	w:  [3]float64{330, 0.452, 0.00415},
	k:  [3]float64{0.791, 0.000463, -0.000000844},
	k1: [3]float64{6.34, 0.000775, -0.0000935},
	k2: [3]float64{1.09, 0.0284, -0.0000904},
}

// moisture is equation 4-5 at a temperature in the fit's scale and a relative humidity from 0 to 1.
func (f fit) moisture(temperature, h float64) float64 {
	at := func(c [3]float64) float64 { return c[0] + temperature*(c[1]+temperature*c[2]) }
	w, kh, k1, k2 := at(f.w), at(f.k)*h, at(f.k1), at(f.k2)
	first := k1 * kh
	second := k1 * k2 * kh * kh
	return 1800 / w * (kh/(1-kh) + (first+2*second)/(1+first+second))
}

// The range of Table 4-2 as the tests hold it; outside it the equation is a guess.
const (
	LeastTemperature, MostTemperature = 30, 120 // degrees F
	LeastHumidity, MostHumidity       = 5, 95   // per cent
)

// Charted tells whether the climate lies in the range that the equation is held against.
func (c Climate) Charted() bool {
	return LeastTemperature <= c.Temperature && c.Temperature <= MostTemperature &&
		LeastHumidity <= c.Humidity && c.Humidity <= MostHumidity
}

// Moisture is the moisture content that wood comes to in this climate, its equilibrium. Species, age and whether it
// comes from the wet or the dry side are left out of account, as in the handbook.
//
// Units: humidity is taken as 0 to 100; what is outside counts as the nearer end.
//
// Source: Wood Handbook, FPL-GTR-282 (2021), equation 4-5.
func (c Climate) Moisture() float64 {
	return fahrenheitFit.moisture(c.Temperature, clamp(c.Humidity, 0, 100)/100)
}

func clamp(x, low, high float64) float64 { return math.Max(low, math.Min(high, x)) }

package wood

import "math"

// fit is the equation's coefficients for one scale of temperature: each a constant, a linear and a square part.
type fit struct{ w, k, k1, k2 [3]float64 }

// Source: Wood Handbook, FPL-GTR-282 (2021), chapter 4, equation 4-5 and the coefficients under it; as restated
// elsewhere, and held against Table 4-2 by the tests. The two sets are rounded on their own and differ by up to 0.01
// per cent moisture: the first is the engine, the second its check.
var (
	fahrenheitFit = fit{
		w:  [3]float64{330, 0.452, 0.00415},
		k:  [3]float64{0.791, 0.000463, -0.000000844},
		k1: [3]float64{6.34, 0.000775, -0.0000935},
		k2: [3]float64{1.09, 0.0284, -0.0000904},
	}
	celsiusFit = fit{
		w:  [3]float64{349, 1.29, 0.0135},
		k:  [3]float64{0.805, 0.000736, -0.00000273},
		k1: [3]float64{6.27, -0.00938, -0.000303},
		k2: [3]float64{1.91, 0.0407, -0.000293},
	}
)

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

// MoistureCelsius is Moisture by the handbook's other set of coefficients. Only tests ask it: they hold the two sets to each
// other and both to the published table.
func (c Climate) MoistureCelsius() float64 {
	return celsiusFit.moisture(Celsius(c.Temperature), clamp(c.Humidity, 0, 100)/100)
}

// HumidityFor is the relative humidity at which wood comes to a moisture content at a temperature: the inverse of
// Moisture. Only tests ask it: they hold Moisture to humidities that were published or computed elsewhere.
//
// Errors: false where no humidity gives it.
func HumidityFor(temperature, moisture float64) (humidity float64, ok bool) {
	low, high := 0.0, 100.0
	// Not >=, so that what is no number fails too.
	if !(moisture >= 0 && moisture <= Climate{temperature, high}.Moisture()) {
		return 0, false
	}
	// Moisture grows with humidity, so halving always closes in; it ends when no number lies between.
	for {
		middle := (low + high) / 2
		if middle <= low || middle >= high {
			return middle, true
		}
		if (Climate{temperature, middle}).Moisture() < moisture {
			low = middle
		} else {
			high = middle
		}
	}
}

func clamp(x, low, high float64) float64 { return math.Max(low, math.Min(high, x)) }

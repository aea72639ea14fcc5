package wood

import "math"

// Coefficients of the Magnus form for saturation over water, from -40 to 50 degrees C, right to 0.4 per cent.
//
// Source: O. A. Alduchov and R. E. Eskridge, Improved Magnus form approximation of saturation vapor pressure, Journal
// of Applied Meteorology 35 (1996) 601-609: 6.1094 hPa, 17.625, 243.04 degrees C; from memory.
const (
	magnusPressure = 6.1094
	magnusSlope    = 17.625
	magnusBase     = 243.04
)

// SaturationPressure is the pressure of water vapour over water in hectopascals at a temperature in degrees F.
func SaturationPressure(temperature float64) float64 {
	t := Celsius(temperature)
	return magnusPressure * math.Exp(magnusSlope*t/(magnusBase+t))
}

// DewPoint is the temperature of a surface in degrees F at which this air leaves water on it.
//
// Errors: false where the air holds no water at all.
func (c Climate) DewPoint() (temperature float64, ok bool) {
	if !(c.Humidity > 0) {
		return 0, false
	}
	t := Celsius(c.Temperature)
	x := math.Log(math.Min(c.Humidity, 100)/100) + magnusSlope*t/(magnusBase+t)
	return Fahrenheit(magnusBase * x / (magnusSlope - x)), true
}

// HumidityAtWall is the humidity of this air at a wall with a temperature of its own: 100 where it would be wet.
func (c Climate) HumidityAtWall(wall float64) float64 {
	return math.Min(100, c.Humidity*SaturationPressure(c.Temperature)/SaturationPressure(wall))
}

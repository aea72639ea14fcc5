package climate

import (
	"math"

	"flitchlay/internal/length"
	"flitchlay/internal/room"
	"flitchlay/internal/wood"
)

// Quantity is what is read on the site before and while sheets hang.
type Quantity int

// The quantities.
const (
	Air Quantity = iota
	Humidity
	WallFace
	Board
)

// Limit is what a reading has to be within for the work to go on, as the room's drawings print figures.
type Limit struct {
	What   Quantity
	Low    string    // the least; empty where there is none
	High   string    // the most; empty where there is none
	Unit   string    // F, C, %, or the scale of the meter
	Over   bool      // Low is how far over the dew point of the air it has to be
	Source string    // who says so; empty where nothing is published
	At     [2]string // of the wall: temperature and humidity of the air from which Low was worked out; empty where it was not
	Dew    string    // how far over the dew point Low is then
}

// Limits are the limits of all quantities that are read on the site, the same for every page that has a blank for one. Those of air,
// humidity and wall are what Findings judges a site by; that of the board is the one of [site.board], and empty without.
func Limits(r *room.Room) []Limit {
	w := WordsOf(length.StyleOf(r.Project.Units))
	unit, degrees, spread := "F", func(f float64) string { return w.Decimal(f, 1) }, 1.0
	if w.Metric {
		unit, degrees, spread = "C", func(f float64) string { return w.Decimal(wood.Celsius(f), 1) }, 5.0/9
	}
	air, damp, over := wood.RoomTemperature, wood.RoomHumidity, wood.WallOverDewPoint
	list := []Limit{
		{What: Air, Low: degrees(air.Low), High: degrees(air.High), Unit: unit, Source: air.Source},
		{What: Humidity, Low: w.Decimal(damp.Low, 1), High: w.Decimal(damp.High, 1), Unit: "%", Source: damp.Source},
		{What: WallFace, Low: w.Decimal(over.Low*spread, 1), Unit: unit, Over: true, Source: over.Source},
		{What: Board},
	}
	if r.Site.Given {
		site := wood.Climate{Temperature: r.Site.Temperature, Humidity: r.Site.Humidity}
		if dew, ok := site.DewPoint(); ok {
			list[WallFace].Over, list[WallFace].Dew = false, list[WallFace].Low
			list[WallFace].At = [2]string{w.Decimal(own(w, site.Temperature), 1), w.Decimal(site.Humidity, 1)}
			list[WallFace].Low = w.Decimal(math.Ceil(10*own(w, dew+over.Low))/10, 1) // rounded up: never less than the least
		}
	}
	if b := r.Site.Board; b != nil {
		list[Board].Unit = b.Meter
		if b.Limit != nil {
			list[Board].High = w.Decimal(*b.Limit, 3)
		}
	}
	return list
}

// own is a temperature in the room's own degrees.
func own(w Words, f float64) float64 {
	if w.Metric {
		return wood.Celsius(f)
	}
	return f
}

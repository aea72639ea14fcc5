package room

import (
	"math"
	"regexp"
	"strconv"
	"strings"

	"flitchlay/internal/source"
)

// site reads the climate of the site and of the shop.
func (d *decoder) site(v source.Value) {
	s := &d.room.Site
	t, h := v.Get("temperature"), v.Get("humidity")
	if t.Given() || h.Given() {
		s.Given = true
		c := d.climate(v, "the site")
		s.Temperature, s.Humidity = c.Temperature, c.Humidity
	}
	if shop := v.Get("shop").Section(); shop.Given() {
		s.ShopGiven = true
		s.Shop = d.climate(shop, "the shop")
	}
	if wall := v.Get("wall"); wall.Given() {
		t := d.temperature(wall)
		s.Wall = &t
		if !s.Given {
			missing(v.Get("temperature"), "the site")
			missing(v.Get("humidity"), "the site")
		}
	}
	d.year(v.Get("year").Section())
	d.board(v.Get("board").Section())
}

// year reads the band that the room's humidity stays in through the year.
func (d *decoder) year(v source.Value) {
	if !v.Given() {
		return
	}
	low, high := v.Get("low"), v.Get("high")
	for _, k := range []source.Value{low, high} {
		if !k.Given() {
			missing(k, "the year")
		}
	}
	if !low.Given() || !high.Given() {
		return
	}
	b := &Band{Low: humidity(low), High: humidity(high)}
	if b.Low > b.High {
		high.Mistake("low is the driest, high the dampest that the room gets", "the year's high of %s is under its low of %s", high.Raw(), low.Raw())
	}
	d.room.Site.Year = b
}

// board reads what a moisture meter says of the wall.
func (d *decoder) board(v source.Value) {
	if !v.Given() {
		return
	}
	meter := v.Get("meter")
	if !meter.Given() {
		missing(meter, "the board")
	}
	b := &Board{Meter: meter.Text("")}
	for _, part := range []struct {
		name string
		at   **float64
	}{{"reading", &b.Reading}, {"limit", &b.Limit}} {
		k := v.Get(part.name)
		if !k.Given() {
			continue
		}
		n := k.Number(0)
		if n < 0 || n > 1000 {
			k.Mistake("write what the meter shows", "%s %s is on no meter's scale", part.name, k.Raw())
		}
		*part.at = &n
	}
	d.room.Site.Board = b
}

// humidity reads a relative humidity in per cent.
func humidity(v source.Value) float64 {
	h := v.Number(0)
	if h < 0 || h > 100 {
		v.Mistake("write relative humidity in per cent: 45", "a relative humidity of %s is not between 0 and 100 per cent", v.Raw())
	}
	return h
}

// climate reads a temperature and a relative humidity, which need each other.
func (d *decoder) climate(v source.Value, of string) Climate {
	var c Climate
	if t := v.Get("temperature"); t.Given() {
		c.Temperature = d.temperature(t)
	} else {
		missing(t, of)
	}
	h := v.Get("humidity")
	if !h.Given() {
		missing(h, of)
		return c
	}
	c.Humidity = humidity(h)
	return c
}

// degrees is a temperature with its scale.
var degrees = regexp.MustCompile(`^\s*([-+−]?\d+(?:[.,]\d+)?)\s*(?:°|º|deg|degrees)?\s*([FfCc])\s*$`)

// temperature reads degrees F, or "20 C".
func (d *decoder) temperature(v source.Value) float64 {
	var t float64
	if v.Kind() == source.String {
		m := degrees.FindStringSubmatch(v.Text(""))
		if m == nil {
			v.Mistake(`write degrees F as a number, or "20 C", or "68 F"`, "%q is no temperature", v.Text(""))
			return 0
		}
		t, _ = strconv.ParseFloat(strings.NewReplacer(",", ".", "−", "-").Replace(m[1]), 64)
		if strings.EqualFold(m[2], "c") {
			t = t*9/5 + 32
		}
	} else {
		if t = v.Number(math.NaN()); math.IsNaN(t) {
			return 0 // noted by Number
		}
	}
	if t < -40 || t > 200 {
		v.Mistake("a bare number is in degrees F", "%s is no temperature of a room", v.Raw())
	}
	return t
}

// pail is what stands on a pail's label.
var pail = regexp.MustCompile(`^\s*(\d+(?:[.,]\d+)?)\s*(sq\.?\s*ft\.?|ft2|ft²|ft\^2|sf|m2|m²|m\^2|sq\.?\s*m)\s*(?:/|per|a)\s*(gal\.?|gallon|l|litre|liter)\s*$`)

// coverage reads what a pail's label says.
func (d *decoder) coverage(table source.Value) Coverage {
	if !table.Given() {
		return Coverage{}
	}
	v := table.Get("coverage")
	if !v.Given() {
		if !table.Get("name").Given() {
			missing(v, "the "+table.Name())
		}
		return Coverage{}
	}
	if v.Kind() != source.String {
		v.Mistake(`write "150 sq ft/gal" or "3.7 m2/L"`, "coverage %s does not say how much a pail covers", v.Raw())
		return Coverage{}
	}
	text := v.Text("")
	m := pail.FindStringSubmatch(strings.ToLower(text))
	var amount float64
	if m != nil {
		amount, _ = strconv.ParseFloat(strings.Replace(m[1], ",", ".", 1), 64)
	}
	if m == nil || amount <= 0 || math.IsInf(amount, 0) {
		v.Mistake(`write "150 sq ft/gal" or "3.7 m2/L"`, "coverage %q does not say how much a pail covers", text)
		return Coverage{}
	}
	c := Coverage{Given: true, Amount: amount, Area: "sq ft", Volume: "gal"}
	if strings.Contains(m[2], "m") {
		c.Area = "m2"
	}
	if m[3][0] == 'l' {
		c.Volume = "L"
	}
	return c
}

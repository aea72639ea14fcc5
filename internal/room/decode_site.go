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
	c.Humidity = h.Number(0)
	if c.Humidity < 0 || c.Humidity > 100 {
		h.Mistake("write relative humidity in per cent: 45", "a relative humidity of %s is not between 0 and 100 per cent", h.Raw())
	}
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
		missing(v, "the "+table.Name())
		return Coverage{}
	}
	text := v.Text("")
	if v.Kind() != source.String {
		return Coverage{}
	}
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

package room

import (
	"strings"

	"flitchlay/internal/finding"
	"flitchlay/internal/length"
	"flitchlay/internal/source"
)

// limit is between what a figure of its kind usually lies. Past it stands what is rare, or what was typed in another unit.
type limit struct {
	code        finding.Code
	key         string // where figures of several keys are asked about by one code
	least, most L      // 0: none
}

// limits past which a figure is asked about.
//
// Source: common practice, each of them; no source.
var limits = []limit{
	{code: finding.WallOdd, least: 24 * length.Inch, most: 150 * length.Foot},
	{code: finding.CeilingOdd, least: 6 * length.Foot, most: 40 * length.Foot},
	{code: finding.OpeningNarrow, least: 12 * length.Inch, most: 30 * length.Foot},
	{code: finding.DoorLow, least: 6 * length.Foot, most: 12 * length.Foot},
	{code: finding.SillHigh, most: 5 * length.Foot},
	{code: finding.SheetOdd, key: "gross_width", least: 12 * length.Inch, most: 60 * length.Inch},
	{code: finding.SheetOdd, key: "overlap", least: length.Inch / 4, most: 4 * length.Inch},
	{code: finding.SheetOdd, key: "length", least: 4 * length.Foot, most: 20 * length.Foot},
	{code: finding.TrimOdd, key: "base", most: 24 * length.Inch},
	{code: finding.TrimOdd, key: "crown", most: 24 * length.Inch},
	{code: finding.LevelOdd, least: 2 * length.Foot, most: 6 * length.Foot},
	{code: finding.PlateOdd, least: length.Inch, most: 24 * length.Inch},
}

// limitOf finds the limit of a kind of figure.
func limitOf(code finding.Code, key string) limit {
	for _, l := range limits {
		if l.code == code && l.key == key {
			return l
		}
	}
	panic("room: no limit of " + string(code) + " " + key)
}

// odd asks about a figure that lies past the limit of its kind, and says what it would be in another unit. It reports whether the
// figure is past it.
func (a *asker) odd(code finding.Code, at source.Value, name string, measured L, f finding.Finding, slots finding.Slots) bool {
	of := limitOf(code, slots["key"])
	switch {
	case measured < of.least:
		slots["usual"] = "less than the usual " + a.words(of.least)
	case of.most > 0 && measured > of.most:
		slots["usual"] = "more than the usual " + a.words(of.most)
	default:
		return false
	}
	f.Measured = &measured
	a.ask(code, at, name, a.meant(at, measured, of), f, slots)
	return true
}

// meant is what to write where a figure was typed in another unit and lies between the limits in it; else only its key.
func (a *asker) meant(at source.Value, l L, of limit) string {
	typed := at.Raw()
	if at.Kind() == source.String {
		typed = at.Text("")
	}
	if of.least == 0 || strings.ContainsAny(strings.ToLower(typed), "'abcdefghijklmnopqrstuvwxyz′’") {
		return at.Name() // its unit was typed with it, or anything could be meant
	}
	type other struct {
		unit, units string
		l           L
	}
	others := []other{{"ft", "feet", 12 * l}, {"mm", "millimetres", length.MulDiv(l, 10, 254)}, {"cm", "centimetres", length.MulDiv(l, 100, 254)}}
	if a.unit() == length.Millimetres {
		others = []other{{"m", "metres", 1000 * l}, {"cm", "centimetres", 10 * l}, {"in", "inches", length.MulDiv(l, 254, 10)}}
	}
	for _, o := range others {
		if o.l >= of.least && o.l <= of.most {
			return at.Name() + " = " + quote(typed+" "+o.unit) + " if " + o.units + " are meant"
		}
	}
	return at.Name()
}

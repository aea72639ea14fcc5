package source

import (
	"regexp"
	"slices"
	"strings"
	"time"
)

// Day is a date as YYYY-MM-DD, written as a TOML date or as a text; "" where there is none.
func (v Value) Day() string {
	var day string
	switch v.Kind() {
	case Absent:
		return ""
	case Date:
		when := v.node.data.(time.Time)
		if day = when.Format(time.DateOnly); strings.HasPrefix(v.Raw(), day) {
			return day
		}
	case String:
		day = strings.TrimSpace(v.node.data.(string))
		if when, err := time.Parse(time.DateOnly, day); err == nil && when.Year() > 0 {
			return day
		}
		v.Mistake(dateMend(v.name, day), "%s is no date", quoteText(day))
		return ""
	}
	if raw := v.Raw(); v.Kind() == Integer && len(raw) == 8 {
		v.Mistake(dateMend(v.name, raw[:4]+"-"+raw[4:6]+"-"+raw[6:]), "%s is no date", raw)
		return ""
	}
	v.wrong("a date", v.name+" = 2026-04-14")
	return ""
}

// otherDate is a date as many write it: two figures and a year, or a year and two figures, with any mark between.
var otherDate = regexp.MustCompile(`^(\d{1,4})[/. -](\d{1,2})[/. -](\d{1,4})$`)

// dateMend says how to write a date: with the same figures where their order can be told, or may be either.
func dateMend(name, typed string) string {
	const form = "write year, month and day: "
	m := otherDate.FindStringSubmatch(typed)
	if m == nil {
		return form + name + " = 2026-04-14"
	}
	day := func(y, mo, d string) string {
		text := y + "-" + ("0" + mo)[len(mo)-1:] + "-" + ("0" + d)[len(d)-1:]
		if _, err := time.Parse(time.DateOnly, text); err != nil {
			return ""
		}
		return name + " = " + text
	}
	var ways []string
	if len(m[1]) == 4 {
		ways = append(ways, day(m[1], m[2], m[3]))
	} else if len(m[3]) == 4 {
		ways = append(ways, day(m[3], m[1], m[2]))
		if m[1] != m[2] {
			ways = append(ways, day(m[3], m[2], m[1]))
		}
	}
	ways = slices.DeleteFunc(ways, func(s string) bool { return s == "" })
	if len(ways) == 0 {
		return form + name + " = 2026-04-14"
	}
	return form + strings.Join(ways, " or ")
}

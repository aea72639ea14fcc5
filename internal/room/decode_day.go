package room

import (
	"regexp"
	"strconv"
	"strings"

	"flitchlay/internal/source"
)

// day reads [day]; without it every figure is a default.
func (d *decoder) day(v source.Value) {
	day := &d.room.Day
	for _, m := range durations {
		*m.of(day) = d.whole(v.Get(m.name), m.other, 0, m.most, "minutes")
	}
	if day.Plain == 0 {
		v.Get("plain").Mistake("say how many minutes a plain sheet takes", "plain is 0: no sheet hangs by itself")
	}
	for _, m := range slower {
		other := (day.Plain*m.times + m.over - 1) / m.over
		if *m.of(day) = d.whole(v.Get(m.name), other, 0, 720, "minutes"); *m.of(day) < day.Plain {
			v.Get(m.name).Mistake("give at least what a plain sheet takes", "%s takes %d minutes, less than a plain sheet (%d)", m.name, *m.of(day), day.Plain)
		}
	}
	day.Group = d.whole(v.Get("group"), usualGroup, 1, mostGroup, "sheets")
	day.Crew = d.whole(v.Get("crew"), usualCrew, 1, mostCrew, "people")
	day.Start = d.clock(v.Get("start"), usualStart)
	day.End = d.clock(v.Get("end"), usualEnd)
	if day.End-day.Start < leastDay {
		at := v.Get("end")
		if !at.Given() {
			at = v.Get("start")
		}
		at.Mistake("give times of one day, at least an hour apart", "the day from %s to %s is shorter than an hour", Clock(day.Start), Clock(day.End))
	}
	d.breaks(v.Get("break"))
}

// whole reads a whole number between two.
func (d *decoder) whole(v source.Value, other, least, most int, of string) int {
	n := v.Whole(int64(other))
	if n < int64(least) || n > int64(most) {
		v.Mistake("give a whole number from "+strconv.Itoa(least)+" to "+strconv.Itoa(most), "%s = %s is no count of %s to plan with", v.Name(), v.Raw(), of)
		return other
	}
	return int(n)
}

// breaks reads the pauses of the day, which follow each other inside it.
func (d *decoder) breaks(v source.Value) {
	day := &d.room.Day
	var list []source.Value
	switch {
	case !v.Given():
		if day.Start < lunchFrom && lunchTo < day.End {
			day.Breaks = []Break{{lunchFrom, lunchTo}}
		}
		return
	case v.Kind() == source.Array:
		list = v.Items()
	default:
		list = []source.Value{v}
	}
	last := day.Start
	for _, item := range list {
		if item.Kind() != source.String {
			item.Mistake(`write break = "12:00-12:30"`, "a break takes its two times, not %s", item.Kind())
			continue
		}
		text := item.Text("")
		from, to, found := strings.Cut(strings.NewReplacer("–", "-", " to ", "-").Replace(text), "-")
		b := Break{}
		okFrom, okTo := false, false
		b.From, okFrom = clock(from)
		b.To, okTo = clock(to)
		switch {
		case !found || !okFrom || !okTo:
			item.Mistake(`write break = "12:00-12:30"`, "%q is no stretch of the day", text)
		case b.To <= b.From:
			item.Mistake("give the earlier time first", "the break %s ends before it begins", text)
		case b.From < last || b.To > day.End:
			item.Mistake("give breaks in their order, inside the working day", "the break %s is outside the day from %s to %s, or begins before the one before it ends", text, Clock(day.Start), Clock(day.End))
		default:
			last = b.To
			day.Breaks = append(day.Breaks, b)
		}
	}
}

// timeOfDay is a time of day: 7:30, 07:30:00, 4 pm, 4:15 PM.
var timeOfDay = regexp.MustCompile(`^\s*(\d{1,2})(?::(\d{2}))?(?::\d{2}(?:\.0+)?)?\s*([AaPp])?\.?\s*(?:[Mm]\.?)?\s*$`)

// clock reads a time of day in minutes after midnight.
func clock(text string) (int, bool) {
	m := timeOfDay.FindStringSubmatch(text)
	if m == nil || m[2] == "" && m[3] == "" {
		return 0, false
	}
	h, _ := strconv.Atoi(m[1])
	min, _ := strconv.Atoi("0" + m[2])
	switch noon := strings.ToLower(m[3]); {
	case noon != "" && (h < 1 || h > 12):
		return 0, false
	case noon == "a":
		h %= 12
	case noon == "p":
		h = h%12 + 12
	}
	if h > 24 || min > 59 || h == 24 && min > 0 {
		return 0, false
	}
	return h*hour + min, true
}

// clock reads a time of day as a text, or as TOML writes it without quotes.
func (d *decoder) clock(v source.Value, other int) int {
	var text string
	switch v.Kind() {
	case source.Absent:
		return other
	case source.String:
		text = v.Text("")
	case source.Date:
		text = v.Raw()
	}
	t, ok := clock(text)
	if !ok {
		v.Mistake("write "+v.Name()+` = "7:30", or "4:30 pm"`, "%s is no time of day", v.Raw())
		return other
	}
	return t
}

// Clock prints minutes after midnight: 7:30.
func Clock(minutes int) string {
	m := strconv.Itoa(minutes % hour)
	if len(m) == 1 {
		m = "0" + m
	}
	return strconv.Itoa(minutes/hour) + ":" + m
}

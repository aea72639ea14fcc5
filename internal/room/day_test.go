package room

import (
	"strings"
	"testing"

	"flitchlay/internal/source"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The defaults are common practice, no source; a wrap is a third of a plain sheet slower, rounded up: 20 4/3 = 26 2/3.
func TestDayDefaults(t *testing.T) {
	r, err := Decode("r.toml", []byte(least))
	require.NoError(t, err)
	assert.Equal(t, Day{Plain: 20, Wrap: 27, Opening: 30, Narrow: 25, Box: 4, Cut: 8, Rest: 10, Open: 60, Group: 3, LayOut: 2, Look: 15,
		Start: 450, End: 960, Breaks: []Break{{720, 750}}, Crew: 2}, r.Day)

	r, err = Decode("r.toml", file("[day]\nplain = 15\nend = '11:30'"))
	require.NoError(t, err)
	assert.Equal(t, []int{20, 23, 19}, []int{r.Day.Wrap, r.Day.Opening, r.Day.Narrow}, "15 4/3 = 20, 22 1/2 and 18 3/4 rounded up")
	assert.Empty(t, r.Day.Breaks, "a day that ends before noon has no break at noon")
}

func TestTimesOfDay(t *testing.T) {
	for text, want := range map[string]string{
		`"7:30"`: "7:30", `"07:30"`: "7:30", `07:30:00`: "7:30", `"7 am"`: "7:00", `"7:05 a.m."`: "7:05", `"12 am"`: "0:00",
		`"12:00 AM"`: "0:00", `" 6:45 "`: "6:45", `"12:15 pm"`: "12:15", `"12:15"`: "12:15", `"1 PM"`: "13:00",
	} {
		r, err := Decode("r", file("[day]\nend = '23:00'\nbreak = []\nstart = "+text))
		if assert.NoError(t, err, text) {
			assert.Equal(t, want, Clock(r.Day.Start), text)
		}
	}
	for _, text := range []string{`"7"`, `"25:00"`, `"24:01"`, `"7:60"`, `"13 pm"`, `"0 am"`, `""`, `"noon"`, `7`, `2026-04-14`, `true`, `"-1:00"`, `"7:3"`} {
		_, err := Decode("r", file("[day]\nstart = "+text))
		assert.ErrorContains(t, err, "is no time of day", text)
	}
}

func TestBreaks(t *testing.T) {
	for text, want := range map[string][]Break{
		`"9:30-9:45"`:                   {{570, 585}},
		`"9:30 – 9:45"`:                 {{570, 585}},
		`"9:30 to 9:45"`:                {{570, 585}},
		`["9:00-9:10", "12 pm - 1 pm"]`: {{540, 550}, {720, 780}},
		`["9:00-9:10", "9:10-9:20"]`:    {{540, 550}, {550, 560}},
		`[]`:                            nil,
	} {
		r, err := Decode("r", file("[day]\nbreak = "+text))
		if assert.NoError(t, err, text) {
			assert.Equal(t, want, r.Day.Breaks, text)
		}
	}
}

// Each case is what stands in [site] or [day], and the mistakes that it gives: the line counted from the table, the
// offending text, the message.
func TestMistakesOfSiteAndDay(t *testing.T) {
	const first = 13 // the line of the table's header
	for name, c := range map[string]struct {
		text string
		want []string
	}{
		"a wall without the air": {"[site]\nwall = 60", []string{"13 site: the site has no temperature", "13 site: the site has no humidity"}},
		"a wall hotter than hot": {"[site]\ntemperature = 70\nhumidity = 40\nwall = '200 C'", []string{"16 '200 C': '200 C' is no temperature of a room"}},
		"half a year":            {"[site]\nyear = { low = 20 }", []string{"14 year: the year has no high"}},
		"a year the wrong way":   {"[site]\nyear = { low = 50, high = 20 }", []string{"14 20: the year's high of 20 is under its low of 50"}},
		"a year past all":        {"[site]\nyear = { low = -1, high = 101 }", []string{"14 -1: a relative humidity of -1 is not between 0 and 100 per cent", "14 101: a relative humidity of 101 is not between 0 and 100 per cent"}},
		"a board without meter":  {"[site]\nboard = { reading = 4 }", []string{"14 board: the board has no meter"}},
		"a board off the scale":  {"[site]\nboard = { meter = 'm', reading = -4, limit = 'x' }", []string{"14 -4: reading -4 is on no meter's scale", "14 'x': limit takes a number, not a text"}},
		"unknown key":            {"[day]\nplane = 3", []string{"14 plane: unknown key plane in [day]"}},
		"no count": {"[day]\nplain = -3\ncut = 'x'\ngroup = 0\ncrew = 99\nrest = 1.5", []string{
			"14 -3: plain = -3 is no count of minutes to plan with", "15 'x': cut takes a whole number, not a text", "16 0: group = 0 is no count of sheets to plan with",
			"17 99: crew = 99 is no count of people to plan with", "18 1.5: rest takes a whole number, not a decimal number"}},
		"a sheet that hangs by itself":    {"[day]\nplain = 0", []string{"14 0: plain is 0: no sheet hangs by itself"}},
		"a wrap quicker than a sheet":     {"[day]\nplain = 30\nwrap = 20", []string{"15 20: wrap takes 20 minutes, less than a plain sheet (30)"}},
		"a day that ends before it began": {"[day]\nstart = '16:00'\nend = '7:00'", []string{"15 '7:00': the day from 16:00 to 7:00 is shorter than an hour"}},
		"a start past the usual end":      {"[day]\nstart = '17:00'", []string{"14 '17:00': the day from 17:00 to 16:00 is shorter than an hour"}},
		"breaks": {"[day]\nbreak = ['noon', 4, '13:00-12:00', '6:00-6:30', '9:00-10:00', '9:30-9:45', '15:00-17:00']", []string{
			`14 'noon': "noon" is no stretch of the day`, "14 4: a break takes its two times, not a whole number", "14 '13:00-12:00': the break 13:00-12:00 ends before it begins",
			"14 '6:00-6:30': the break 6:00-6:30 is outside the day from 7:30 to 16:00, or begins before the one before it ends",
			"14 '9:30-9:45': the break 9:30-9:45 is outside the day from 7:30 to 16:00, or begins before the one before it ends",
			"14 '15:00-17:00': the break 15:00-17:00 is outside the day from 7:30 to 16:00, or begins before the one before it ends"}},
	} {
		t.Run(name, func(t *testing.T) {
			text := string(file(c.text))
			require.Equal(t, first-1, strings.Count(string(file("")), "\n"))
			_, err := Decode("r", []byte(text))
			require.Error(t, err)
			var all *source.Mistakes
			require.ErrorAs(t, err, &all)
			var got []string
			for _, m := range all.List() {
				line, _ := all.Text.Place(m.Span.Start)
				got = append(got, itoa(int64(line))+" "+text[m.Span.Start:m.Span.End]+": "+m.Message)
				assert.NotEmpty(t, m.Mend)
			}
			assert.Equal(t, c.want, got)
		})
	}
}

package room

import "flitchlay/internal/source"

// Day is how long a crew takes, as [day] gives it. All durations are whole minutes of the crew, not of one person.
type Day struct {
	Plain, Wrap, Opening, Narrow int // of one sheet: pasted, hung, smoothed and trimmed, its seam not cut
	Box                          int // more, for each box that a sheet is cut out for
	Cut                          int // to cut and close one seam
	Rest                         int // from damping a group of sheets until its first can hang
	Open                         int // from when a sheet is up until its right seam has to be cut
	Group                        int // sheets that are damped together
	LayOut                       int // dry lay-out before the first cut, for each sheet
	Look                         int // at a hold point
	Start, End                   int // of the working day, in minutes after midnight
	Breaks                       []Break
	Crew                         int
}

// Break is a pause of the working day, in minutes after midnight.
type Break struct{ From, To int }

// Minutes is how long the break is.
func (b Break) Minutes() int { return b.To - b.From }

// minutes is a key of [day] that is a duration, with its default and the most that it may be.
type minutes struct {
	name, doc   string
	other, most int
	of          func(*Day) *int
}

// durations are the keys of [day] that count minutes; what a wrap, an opening and a narrow sheet take follows plain.
//
// Source: common practice, no source: every crew has figures of its own.
var durations = []minutes{
	{"plain", "minutes for a plain sheet, without cutting its seam", 20, 480, func(d *Day) *int { return &d.Plain }},
	{"box", "minutes that each box adds to a sheet", 4, 120, func(d *Day) *int { return &d.Box }},
	{"cut", "minutes to cut and close one seam", 8, 240, func(d *Day) *int { return &d.Cut }},
	{"rest", "minutes that a group of sheets lies damp before it hangs", 10, 240, func(d *Day) *int { return &d.Rest }},
	{"open", "minutes from when a sheet is up until its right seam has to be cut", 60, 480, func(d *Day) *int { return &d.Open }},
	{"lay_out", "minutes of the dry lay-out for each sheet", 2, 120, func(d *Day) *int { return &d.LayOut }},
	{"look", "minutes of the look at a hold point", 15, 480, func(d *Day) *int { return &d.Look }},
}

// slower are the kinds of sheet that take longer than a plain one, with the share of a plain sheet that they take when
// the file does not say.
//
// Source: common practice, no source: a wrap is one third of a sheet slower, a sheet round an opening one half, a ripped
// one a quarter.
var slower = []struct {
	name, doc, other string
	times, over      int
	of               func(*Day) *int
}{
	{"wrap", "minutes for a sheet that goes round a corner", "plain and a third", 4, 3, func(d *Day) *int { return &d.Wrap }},
	{"opening", "minutes for a sheet cut round an opening", "plain and a half", 3, 2, func(d *Day) *int { return &d.Opening }},
	{"narrow", "minutes for a sheet that is ripped", "plain and a quarter", 5, 4, func(d *Day) *int { return &d.Narrow }},
}

// The rest of [day] where the file does not say (common practice, no source).
const (
	hour                  = 60
	usualStart, usualEnd  = 7*hour + 30, 16 * hour
	lunchFrom, lunchTo    = 12 * hour, 12*hour + 30
	leastDay              = hour
	usualGroup, usualCrew = 3, 2
	mostGroup, mostCrew   = 12, 12
)

func dayKeys() []source.Key {
	var keys []source.Key
	for _, m := range durations {
		keys = append(keys, may(m.name, "whole number", itoa(int64(m.other)), m.doc))
	}
	for _, m := range slower {
		key := may(m.name, "whole number", m.other, m.doc)
		key.Like = itoa(int64(durations[0].other*m.times/m.over + 1))
		keys = append(keys, key)
	}
	return append(keys,
		may("group", "whole number", "3", "sheets that are damped together"),
		may("start", "time of day", "7:30", "when work begins"),
		may("end", "time of day", "16:00", "when work ends"),
		may("break", "\"12:00-12:30\", or a list", "12:00-12:30", "pauses; [] for none"),
		may("crew", "whole number", "2", "how many hang together; the minutes are those of the crew"),
	)
}

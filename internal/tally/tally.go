// Package tally adds up a job: what becomes of each flitch and which room lays what of it, what each room takes, the crew's hours,
// and what it all costs. Every sheet, every room and every hour is told once.
//
// Units: sheets by number, areas as twice the area, minutes of the whole crew, money to the hundredth.
//
// Order: flitches of the job in file order, then those of rooms as they come; rooms in the order of hanging.
//
// Not here: what a room takes (package count), how long it takes (package days), how tables are set (package report).
package tally

import (
	"slices"

	"flitchlay/internal/count"
	"flitchlay/internal/days"
	"flitchlay/internal/job"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/room"
)

// Job is a job while it is added up.
type Job struct {
	job      *job.Job
	style    length.Style
	all      count.Job
	flitches []*flitch
	rooms    []roomLine
	minutes  int
}

// flitch is what becomes of a flitch in all rooms.
type flitch struct {
	number                    string
	delivered, damaged, spare []int
	laid, gaps                []int
	rooms                     []roomSheets
	short                     int
	by                        *room.Room // the room that wants the most spares for its sheets
}

// roomSheets is what a room lays of a flitch.
type roomSheets struct {
	room    string
	numbers []int
}

// roomLine is one room.
type roomLine struct {
	name, title   string
	sheets, short int
	net           length.Area // twice
	minutes, days int
	flitches      string
	broken        bool
}

// New begins with no room.
func New(j *job.Job) *Job {
	t := &Job{job: j}
	for _, f := range j.Flitches {
		t.flitches = append(t.flitches, &flitch{number: f.Number, delivered: f.Sheets, damaged: f.Damaged, spare: f.Spare})
	}
	return t
}

// Add adds a room.
func (t *Job) Add(r *job.Room, c *count.Count, s *days.Schedule) {
	if len(t.rooms) == 0 {
		t.style = c.Style
	}
	p := c.Plan.Room.Project
	line := roomLine{name: r.Name(), title: p.Title, sheets: c.Sheets, short: c.All.Short, net: c.Areas.Of[count.Net], minutes: s.Minutes(), days: s.Days,
		flitches: job.RowWords(job.LaidRows(c.Plan)), broken: c.Broken}
	t.rooms = append(t.rooms, line)
	t.minutes += s.Minutes()
	t.all.Add(c)
	for i := range c.Flitches {
		t.flitch(r, c, &c.Flitches[i])
	}
}

// flitch adds what a room does with a flitch.
func (t *Job) flitch(r *job.Room, c *count.Count, f *count.Flitch) {
	i := slices.IndexFunc(t.flitches, func(x *flitch) bool { return x.number == f.Number })
	if i < 0 {
		i = len(t.flitches)
		t.flitches = append(t.flitches, &flitch{number: f.Number})
	}
	x := t.flitches[i]
	x.delivered, x.damaged, x.spare = union(x.delivered, f.Delivered), union(x.damaged, f.Damaged), union(x.spare, f.Spare)
	x.laid, x.gaps = union(x.laid, f.Laid), union(x.gaps, f.Gaps)
	x.short += f.Short
	if x.by == nil || x.by.Rules.SpareShareParts < c.Plan.Room.Rules.SpareShareParts {
		x.by = c.Plan.Room
	}
	if len(f.Laid) > 0 {
		x.rooms = append(x.rooms, roomSheets{r.Name(), f.Laid})
	}
}

// union are the numbers of both, ascending, each once.
func union(a, b []int) []int {
	out := append(slices.Clone(a), b...)
	slices.Sort(out)
	return slices.Compact(out)
}

// less are numbers that are in none of the others.
func less(a []int, others ...[]int) (out []int) {
	for _, n := range a {
		if !slices.ContainsFunc(others, func(list []int) bool { _, found := slices.BinarySearch(list, n); return found }) {
			out = append(out, n)
		}
	}
	return out
}

// stock is what is told of a flitch: every number delivered in one list.
type stock struct {
	*flitch
	damaged, spare, left []int
	want, order          int
}

// stocks are all flitches.
func (t *Job) stocks() (list []stock) {
	for _, f := range t.flitches {
		s := stock{flitch: f, damaged: less(f.damaged, f.laid, f.gaps), spare: less(f.spare, f.laid, f.gaps, f.damaged)}
		s.left = less(f.delivered, f.laid, f.gaps, f.damaged, f.spare)
		if n := len(f.laid) + len(f.gaps) + f.short; n > 0 {
			s.want = layout.Spares(f.by, n)
			s.order = max(0, n+s.want-(len(f.delivered)-len(s.damaged)))
		}
		list = append(list, s)
	}
	return list
}

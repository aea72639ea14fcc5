// Package days plans the hanging days: when what hangs, where the crew holds until somebody has looked, and where it may
// stop in the evening.
//
// Coordinates and units: minutes of the crew; times of day in minutes after midnight; seen heights are exact lengths.
//
// Order: sheets in hanging order, run by run; steps by the clock.
//
// Not here: what a sheet takes to hang, which the room file says (package room), and how the days look on paper.
package days

import (
	"slices"

	"flitchlay/internal/count"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/room"
	"flitchlay/internal/run"
)

// L is short for the exact length that every field here uses.
type L = length.Length

// Schedule is the plan of the hanging days: when what hangs, where the crew holds, where it may stop in the evening.
//
// Units: minutes of the crew; times of day in minutes after midnight.
type Schedule struct {
	Day   room.Day
	Tasks []Task // all sheets still to hang, in hanging order
	Steps []Step
	Days  int
	Stops []Stop // every place where a day may end, in hanging order
	Walls []WallTime
	// Minutes of all days by what they go into.
	LayOut, Wait, Hang, Cut, Look int
}

// Minutes is all work of the crew, breaks and evenings left out.
func (s *Schedule) Minutes() int { return s.LayOut + s.Wait + s.Hang + s.Cut + s.Look }

// Task is one sheet to hang.
type Task struct {
	Run           string
	Place, Course int
	Flitch        string
	Number        int // 0: no sheet left
	Wall          int // in Room.Walls, where its left edge is
	Bends         int // that it goes round
	Boxes         int
	Opening       bool // cut round, or over and under an opening
	Ripped        bool
	Closes        bool // ripped to the gap that the sheets before it leave: it is damped when they hang
	Hang          int  // minutes to hang it
	Cuts          int  // seams that are cut as soon as it is up: at its left, its end match, the closing seam
	First         bool // of its span: nothing hangs at its left
	Whole         bool // the last course of its column: all of the column hangs
	Hold          Hold // what is looked at when it hangs
	HoldNo        int  // which hold that is, from 1 in hanging order; 0 where the work goes on
	Late          bool // the paste at its left is not open any more when its seam is cut
	Day, Up       int  // the day and the time at which it hangs, its seams cut
	DryEdge       bool // its right edge stays unpasted over the overlap, since the next sheet comes after a pause
	after         Stop // what is at its right
	joined        bool // a sheet still to hang overlaps its right edge
}

// Hold is a point at which the crew stops until somebody has looked.
type Hold int

// Hold points.
const (
	NoHold      Hold = iota
	DryLayOut        // hold point 0: all sheets on the floor in their order
	FirstSheets      // the first group of those still to hang
	NewFlitch        // the first group of another flitch
	Finished         // the whole room
)

// Stop is a place where a day may end.
type Stop struct {
	Task    int             // index of the last sheet hung, in Tasks
	Kind    StopKind        //
	End     *run.End        // what the covering ends at, where it does; nil where the room closes
	Opening *layout.Opening // over or under which the seam is
	Corner  string          // that the sheet goes past
	Wall    int             // in Room.Walls, where the seam is
	Seen    L               // of the seam that is left for the morning; 0 where none is
}

// StopKind is what makes a place good to stop at, the best first.
type StopKind int

// Kinds of stop.
const (
	AtEnd     StopKind = iota // the covering ends there: no seam is left
	AtOpening                 // a short seam, over or under an opening
	AtCorner                  // the sheet goes round a corner
	InField                   // only where nothing better is in reach
)

// StepKind is what the crew does.
type StepKind int

// Kinds of step.
const (
	LayOutStep StepKind = iota
	GroupStep
	BreakStep
	LookStep
	EveningStep
)

// Step is one row of the timetable.
type Step struct {
	Kind     StepKind
	Day      int // from 1
	From, To int
	Hang     int   // of a group: when its first sheet goes up; From is when it is damped
	Tasks    []int // of a group: in Tasks
	Cut      int   // of a group: how many seams are cut
	Hold     Hold  // of a look and of the lay-out
	After    int   // of a look: in Tasks, after which it comes
	Stop     *Stop // of an evening
	Done     bool  // of an evening: nothing is left to hang
}

// WallTime is what a wall takes; every sheet counts where its left edge is.
type WallTime struct {
	Wall      int
	Sheets    int
	Hang, Cut int // minutes
	Day, Done int // when the last of them hangs
}

// Minutes is hanging and cutting together.
func (w WallTime) Minutes() int { return w.Hang + w.Cut }

// Of plans the hanging days of what is still to hang.
func Of(p *layout.Plan) *Schedule {
	c := count.Of(p)
	s := &Schedule{Day: c.Plan.Room.Day}
	laid := 0 // sheets that hang already
	for i := range c.Plan.Runs {
		laid += s.tasks(c, &c.Plan.Runs[i])
	}
	s.holds()
	s.plan(laid == 0)
	return s
}

// tasks adds the sheets of a run and counts those that hang.
func (s *Schedule) tasks(c *count.Count, run *layout.Run) (hung int) {
	for k := range run.Sheets {
		sheet := &run.Sheets[k]
		if sheet.CutLength == 0 {
			continue
		}
		i := slices.IndexFunc(c.Cuts, func(x count.Cut) bool { return x.Place == sheet.Place && x.Course == sheet.Course && x.Run == run.Name })
		cut := &c.Cuts[i]
		if cut.Hung {
			hung++
			continue
		}
		t := Task{Run: run.Name, Place: sheet.Place, Course: sheet.Course, Flitch: sheet.Flitch, Number: sheet.Number,
			Wall: run.Line.Find(sheet.Left).Wall, Bends: len(cut.Bends), Ripped: cut.Rip != "", Closes: cut.Closes, Whole: true}
		for _, h := range cut.Holes {
			if h.Kind.Traits().Box {
				t.Boxes++
			} else {
				t.Opening = true
			}
		}
		for j := k + 1; j < len(run.Sheets); j++ {
			if o := &run.Sheets[j]; o.Place == sheet.Place && o.CutLength > 0 {
				t.Whole = false
			}
		}
		t.Hang = s.minutes(&t)
		s.seams(run, sheet, &t)
		t.after = s.stop(c, run, sheet)
		s.Tasks = append(s.Tasks, t)
	}
	return hung
}

// minutes is what a sheet takes to hang: a plain sheet's time and what each kind that it is takes over that.
func (s *Schedule) minutes(t *Task) int {
	d := &s.Day
	n := d.Plain + t.Bends*(d.Wrap-d.Plain) + t.Boxes*d.Box
	if t.Opening {
		n += d.Opening - d.Plain
	}
	if t.Ripped {
		n += d.Narrow - d.Plain
	}
	return n
}

// seams counts what is cut when a sheet is up. The seam of a column is cut when all of it hangs.
func (s *Schedule) seams(run *layout.Run, sheet *layout.Sheet, t *Task) {
	t.First = true
	for i := range run.Seams {
		x := &run.Seams[i]
		if x.RightSheet == sheet.Place && !x.Closing {
			t.First = false
			if t.Whole && !count.InGap(run, x.At) {
				t.Cuts++
			}
		}
		if x.LeftSheet == sheet.Place {
			t.joined = !x.Closing
			if x.Closing && t.Whole {
				t.Cuts++
			}
		}
	}
	if !sheet.Lowest {
		t.Cuts++
	}
}

// stop says what is at the right of a sheet.
func (s *Schedule) stop(c *count.Count, line *layout.Run, sheet *layout.Sheet) Stop {
	stop := Stop{Task: len(s.Tasks), Kind: InField}
	i := slices.IndexFunc(line.Seams, func(x layout.Seam) bool { return x.LeftSheet == sheet.Place && !x.Closing })
	if i < 0 {
		stop.Kind = AtEnd
		if span := &line.Spans[sheet.Span]; !span.Closed && !span.RightSeam {
			stop.End = span.Ends[1]
		}
		return stop
	}
	seam := &line.Seams[i]
	stop.Seen, stop.Wall = seam.Seen, seam.Wall
	for k := range line.Openings {
		o := &line.Openings[k]
		count.Turns(line, func(turn L) {
			if o.Left+turn < seam.At && seam.At < o.Right+turn {
				stop.Kind, stop.Opening = AtOpening, o
				if o.Gap {
					stop.Seen = 0
				}
			}
		})
	}
	if stop.Kind == InField && len(sheet.Corners) > 0 {
		stop.Kind, stop.Corner = AtCorner, sheet.Corners[len(sheet.Corners)-1]
	}
	return stop
}

// Column are the tasks of the place of one of them, from its first course on.
func (s *Schedule) Column(t *Task) (list []*Task) {
	for i := range s.Tasks {
		if k := &s.Tasks[i]; k.Run == t.Run && k.Place == t.Place {
			list = append(list, k)
		}
	}
	return list
}

// holds sets and counts the hold points: after the first group that is still to hang, and of every other flitch. After a pause in
// which the room was planned again the first sheets are looked at as on the first day.
//
// Source: hang three, stop and look: general notes for wall coverings, an association's recommended practice.
func (s *Schedule) holds() {
	since, pending := 0, FirstSheets
	for i := range s.Tasks {
		t := &s.Tasks[i]
		if i > 0 && t.Flitch != s.Tasks[i-1].Flitch && t.Flitch != "" {
			since, pending = 0, NewFlitch
		}
		if since++; since >= s.Day.Group && t.Whole {
			t.Hold, pending = pending, NoHold
		}
	}
	if n := len(s.Tasks); n > 0 {
		s.Tasks[n-1].Hold = Finished
	}
	no := 0
	for i := range s.Tasks {
		if t := &s.Tasks[i]; t.Hold != NoHold {
			no++
			t.HoldNo = no
		}
	}
}

package days

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/count"
	"flitchlay/internal/layout"
	"flitchlay/internal/room"
	"flitchlay/internal/roomtest"
)

// scheduled lays out a room of walls with sheets of 24 1/2 in that overlap by 1 in, and plans its days.
func scheduled(t *testing.T, text string) *Schedule {
	t.Helper()
	return Of(roomtest.PlanOf(t, "r.toml", []byte("[project]\ntitle = 't'\n[veneer]\ngross_width = '24 1/2'\noverlap = 1\nlength = \"10'\"\n"+text)))
}

// word names a sheet as the crew does: by the number on its back.
func word(t *Task) string {
	return layout.SheetWords(&layout.Sheet{Number: t.Number, Place: t.Place})
}

// timetable writes a schedule as one line for each step.
func timetable(s *Schedule) string {
	var b strings.Builder
	for _, x := range s.Steps {
		fmt.Fprintf(&b, "%d %s-%s ", x.Day, room.Clock(x.From), room.Clock(x.To))
		switch x.Kind {
		case LayOutStep:
			b.WriteString("lay out")
		case BreakStep:
			b.WriteString("break")
		case LookStep:
			fmt.Fprintf(&b, "look %d", x.Hold)
		case GroupStep:
			fmt.Fprintf(&b, "hang %s:", room.Clock(x.Hang))
			for _, i := range x.Tasks {
				k := &s.Tasks[i]
				fmt.Fprintf(&b, " %s", word(k))
				if k.Late {
					b.WriteString("late")
				}
				if k.DryEdge {
					b.WriteString("dry")
				}
			}
			fmt.Fprintf(&b, " cut %d", x.Cut)
		case EveningStep:
			b.WriteString("evening")
			if x.Stop != nil {
				fmt.Fprintf(&b, " %s", s.where(x.Stop))
			}
			if x.Done {
				b.WriteString(", done")
			}
		}
		b.WriteByte('\n')
	}
	return b.String()
}

// One plain wall of 6 sheets, worked by hand with figures that are easy to add: a sheet 20 minutes, a seam 10, damp and
// rest 15, lay-out 5 a sheet, look 10. The first sheet is ripped: 20 + 5 = 25, and so is the last; inner ones are plain.
//
//	lay-out  6 x 5 = 30                                    8:00 - 8:30
//	damp     15, then 1: 25; 2: 20 + 10; 3: 20 + 10 = 85   8:30 - 10:10
//	look     10                                           10:10 - 10:20
//	damp     15, then 4: 30; 5: 30; 6: 25 + 10 = 95       10:20 - 12:10
//	look     10                                           12:10 - 12:20
//
// Noon passes while sheet 6 hangs; no sheet comes after it, so nobody goes on break before the look.
func TestDayOfOneWallByHand(t *testing.T) {
	s := scheduled(t, `
[day]
plain = 20
narrow = 25
cut = 10
rest = 15
lay_out = 5
look = 10
start = "8:00"
[[wall]]
length = "11' 4"
height = "8'"
`)
	require.Len(t, s.Tasks, 6)
	var ripped []bool
	for _, k := range s.Tasks {
		ripped = append(ripped, k.Ripped)
	}
	require.Equal(t, []bool{true, false, false, false, false, true}, ripped)
	assert.Equal(t, `1 8:00-8:30 lay out
1 8:30-10:10 hang 8:45: 1 2 3dry cut 2
1 10:10-10:20 look 2
1 10:20-12:10 hang 10:35: 4 5 6 cut 3
1 12:10-12:20 look 4
1 12:20-16:00 evening where the covering ends, at the end of the run, done
`, timetable(s))
	assert.Equal(t, []int{30, 30, 130, 50, 20}, []int{s.LayOut, s.Wait, s.Hang, s.Cut, s.Look})
	assert.Equal(t, 260, s.Minutes(), "8:00 to 12:20")
	assert.Equal(t, []WallTime{{Wall: 0, Sheets: 6, Hang: 130, Cut: 50, Day: 1, Done: 12*60 + 10}}, s.Walls)
}

// A day in which the break falls between sheets and which ends before the wall does: 30 minutes a sheet with its seam.
//
//	lay-out  20 x 1 = 20                                  8:00 - 8:20
//	damp 10; 1: 20; 2, 3: 30 each                         8:20 - 9:50, look 9:50 - 10:00
//	damp 10; 4, 5, 6: 30 each                            10:00 - 11:40
//	7 damped while 6 hung (30 > 10): 7                   11:40 - 12:10; noon is past: break 12:10 - 12:40
//	damp 10; 8: 12:50 - 13:20; 9 would end at 13:50      the day ends at 13:40
//
// No corner and no opening is in reach, so the day ends in the field with the edge of 8 dry.
func TestEveningInTheFieldByHand(t *testing.T) {
	s := scheduled(t, `
[day]
plain = 20
narrow = 20
cut = 10
rest = 10
lay_out = 1
look = 10
start = "8:00"
end = "13:40"
break = "12:00-12:30"
[[wall]]
length = "39'"
height = "8'"
`)
	require.Len(t, s.Tasks, 20)
	lines := strings.Split(timetable(s), "\n")
	assert.Equal(t, []string{
		"1 8:00-8:20 lay out",
		"1 8:20-9:50 hang 8:30: 1 2 3dry cut 2",
		"1 9:50-10:00 look 2",
		"1 10:00-11:40 hang 10:10: 4 5 6 cut 3",
		"1 11:40-12:10 hang 11:40: 7dry cut 1",
		"1 12:10-12:40 break",
		"1 12:40-13:20 hang 12:50: 8dry cut 1",
		"1 13:20-13:40 evening in the field of wall Wall 1",
		"2 8:00-9:40 hang 8:10: 9 10 11 cut 3",
	}, lines[:9])
	assert.Empty(t, s.Stops[:len(s.Stops)-1], "only its end is a place to stop at")
}

// A door over which a seam falls is a better place to end the day than two sheets further on in the field; a wrapped
// corner as well. The opening's sheets take 10 more, a wrap 7 (20 4/3 = 27).
func TestEveningAtTheDoorAndPastTheCorner(t *testing.T) {
	s := scheduled(t, `
[day]
plain = 20
narrow = 20
opening = 30
cut = 10
rest = 10
lay_out = 0
look = 0
start = "8:00"
end = "14:10"
break = []
[[wall]]
length = "30'"
height = "8'"
[[wall.opening]]
kind = "door"
from_left = "18' 8"
width = "3' 4"
height = "7'"
[[wall]]
length = "12'"
height = "8'"
`)
	var kinds []StopKind
	for _, x := range s.Stops {
		kinds = append(kinds, x.Kind)
		assert.Contains(t, map[StopKind]string{AtOpening: "at door D1", AtCorner: "past corner C1", AtEnd: "where the covering ends, at the end of the run"}[x.Kind], s.where(&x))
	}
	assert.Contains(t, kinds, AtOpening)
	assert.Contains(t, kinds, AtCorner)
	var evenings []string
	for _, x := range s.Steps {
		if x.Kind == EveningStep {
			evenings = append(evenings, s.where(x.Stop))
		}
	}
	assert.Equal(t, []string{"at door D1", "where the covering ends, at the end of the run"}, evenings)
	for _, k := range s.Tasks {
		want := 20
		if k.Opening {
			want += 10
		}
		want += 7 * k.Bends
		assert.Equal(t, want, k.Hang, "sheet %s", word(&k))
	}
}

// A sheet with much to cut out takes longer than the paste before it stays open: 20 + 10 (opening) + 3 x 4 (boxes) + 8
// to cut is 50, and the cut at the left of the sheet before it 8 more: 58 minutes from when that sheet was up, over 50.
func TestEdgeStaysDryBeforeASheetThatTakesLong(t *testing.T) {
	text := `
[day]
open = 50
lay_out = 0
break = []
[[wall]]
length = "16'"
height = "8'"
[[wall.opening]]
kind = "window"
from_left = "7' 2"
width = "1' 0"
sill = "3'"
height = "2'"
[[wall.box]]
x = "7' 3"
z = "1' 6"
[[wall.box]]
x = "7' 9"
z = "1' 6"
[[wall.box]]
x = "7' 9"
z = "1' 0"
[[wall.pin]]
at = "7' 8"
put = "middle"
`
	s := scheduled(t, text)
	late := 0
	for i, k := range s.Tasks {
		if k.Late {
			late++
			assert.True(t, k.Opening)
			assert.Equal(t, 3, k.Boxes)
			assert.Equal(t, 20+10+12, k.Hang)
			assert.True(t, s.Tasks[i-1].DryEdge)
		}
	}
	assert.Equal(t, 1, late, timetable(s))
	s = scheduled(t, strings.Replace(text, "open = 50", "open = 58", 1))
	for _, k := range s.Tasks {
		assert.False(t, k.Late, "58 minutes are open long enough")
	}
}

// Sheets that hang are not planned again: no lay-out, and the first one left has a seam to cut. Of those still to hang the
// first three are looked at, whatever hangs.
func TestDayOfTheRest(t *testing.T) {
	s := scheduled(t, `
[[wall]]
length = "14'"
height = "8'"
[[hung]]
wall = "Wall 1"
sheet = 1
seam = "1' 10"
[[hung]]
wall = "Wall 1"
sheet = 2
seam = "3' 9 1/2"
[[hung]]
wall = "Wall 1"
sheet = 3
seam = "5' 9"
`)
	require.NotEmpty(t, s.Tasks)
	assert.Equal(t, 4, s.Tasks[0].Number)
	assert.Equal(t, 1, s.Tasks[0].Cuts)
	var looks []Hold
	for _, x := range s.Steps {
		assert.NotEqual(t, LayOutStep, x.Kind)
		if x.Kind == LookStep {
			looks = append(looks, x.Hold)
		}
	}
	assert.Equal(t, []Hold{FirstSheets, Finished}, looks)
	assert.Equal(t, FirstSheets, s.Tasks[2].Hold, "after the third of them")
}

// Of another flitch the first three are looked at again.
func TestLookAtEveryFlitch(t *testing.T) {
	s := scheduled(t, `
[[flitch]]
number = "A"
sheets = "1-6"
[[flitch]]
number = "B"
sheets = "1-20"
[[wall]]
length = "24'"
height = "8'"
`)
	holds := map[Hold]string{}
	for _, k := range s.Tasks {
		if k.Hold != NoHold {
			holds[k.Hold] = k.Flitch + word(&k)
		}
	}
	last := s.Tasks[len(s.Tasks)-1]
	assert.Equal(t, map[Hold]string{FirstSheets: "A3", NewFlitch: "B3", Finished: "B" + word(&last)}, holds)
}

// A wall of two courses: a column is never left half hung, its seam is cut once, its end match once.
func TestCoursesHangByColumns(t *testing.T) {
	s := scheduled(t, `
[day]
end = "9:30"
break = []
[[wall]]
length = "12'"
height = "16'"
`)
	require.Zero(t, len(s.Tasks)%2)
	cuts := 0
	for i, k := range s.Tasks {
		assert.Equal(t, i%2 == 1, k.Whole)
		cuts += k.Cuts
		if i%2 == 0 {
			assert.Zero(t, k.Cuts, "the lower sheet waits for the upper one")
		}
	}
	columns := len(s.Tasks) / 2
	assert.Equal(t, columns+columns-1, cuts)
	for _, x := range s.Steps {
		if x.Kind == EveningStep && x.Stop != nil {
			assert.True(t, s.Tasks[x.Stop.Task].Whole)
		}
	}
}

// What every schedule keeps, on all samples and under odd working days: every sheet hangs once, in order; steps follow
// each other without overlap; nothing but a first column and a look passes the evening; minutes add up; the same each
// time.
func TestEverySchedule(t *testing.T) {
	for file, text := range roomtest.Samples(t) {
		for name, day := range map[string]string{
			"usual": "", "short": "[day]\nstart = '8:00'\nend = '9:00'\nbreak = []", "busy": "[day]\nplain = 400\nrest = 240\nlook = 480\nbreak = ['8:00-8:05', '9:00-11:00']",
			"one by one": "[day]\ngroup = 1\ncrew = 1\nbreak = ['7:30-7:40', '7:40-7:50']", "at once": "[day]\ngroup = 12\nplain = 1\ncut = 0\nrest = 0\nlook = 0\nlay_out = 120",
		} {
			t.Run(file+", "+name, func(t *testing.T) {
				own, rest, found := strings.Cut(text, "\n[day]")
				if _, after, more := strings.Cut(rest, "\n["); found && more && day != "" {
					own += "\n[" + after // the case's own day stands in for the room's
				} else if day == "" {
					own = text
				}
				p := roomtest.PlanOf(t, file, []byte(own+"\n"+day))
				s := Of(p)
				left := 0
				for _, c := range count.Of(p).Cuts {
					if !c.Hung {
						left++
					}
				}
				holdsSchedule(t, s, left)
				assert.Equal(t, timetable(s), timetable(Of(p)))
			})
		}
	}
}

func holdsSchedule(t *testing.T, s *Schedule, sheets int) {
	for _, x := range s.Steps { // what closes is damped by itself, when its gap can be measured
		for k, i := range x.Tasks {
			assert.Equal(t, s.Tasks[x.Tasks[0]].Closes, s.Tasks[i].Closes, "task %d, the %d. of its group", i, k+1)
		}
	}
	require.Len(t, s.Tasks, sheets)
	var order []int
	day, now, sum := 1, s.Day.Start, 0
	for _, x := range s.Steps {
		if x.Day != day {
			require.Equal(t, day+1, x.Day)
			day, now = x.Day, s.Day.Start
		}
		require.Equal(t, now, x.From, "steps follow each other")
		require.GreaterOrEqual(t, x.To, x.From)
		now = x.To
		if x.Kind != BreakStep && x.Kind != EveningStep {
			sum += x.To - x.From
		}
		order = append(order, x.Tasks...)
		if x.Kind == EveningStep && x.Stop != nil && !x.Done {
			require.Equal(t, order[len(order)-1], x.Stop.Task, "the place is that of the last sheet hung")
		}
	}
	require.Equal(t, s.Days, day)
	require.Len(t, order, sheets)
	for i, k := range order {
		require.Equal(t, i, k)
	}
	require.Equal(t, s.Minutes(), sum)
	hang, cut := 0, 0
	for _, w := range s.Walls {
		hang, cut = hang+w.Hang, cut+w.Cut
	}
	require.Equal(t, []int{s.Hang, s.Cut}, []int{hang, cut})
	require.True(t, s.Steps[len(s.Steps)-1].Done)
	for i, k := range s.Tasks {
		require.False(t, k.Late && !s.Tasks[i-1].DryEdge && s.Tasks[i-1].Place != k.Place, "an edge that is not open stays dry")
	}
}

// where says what is at the right of a sheet after which a day may stop, as the pages do in English.
func (s *Schedule) where(x *Stop) string {
	switch {
	case x.Kind == AtEnd && x.End != nil:
		return "where the covering ends, at " + x.End.Words()
	case x.Kind == AtEnd:
		return "where the room closes"
	case x.Kind == AtOpening:
		return "at " + x.Opening.Kind.Named(x.Opening.Name)
	case x.Kind == AtCorner:
		return "past corner " + x.Corner
	}
	return fmt.Sprintf("in the field of wall Wall %d", x.Wall+1)
}

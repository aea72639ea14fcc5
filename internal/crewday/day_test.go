package crewday

import (
	"maps"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/days"
	"flitchlay/internal/effort"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/paper"
	"flitchlay/internal/room"
	"flitchlay/internal/roomtest"
	"flitchlay/internal/scene"
)

// oddDays are rooms and working days that try the pages of the hanging days.
var oddDays = map[string]string{
	"a day of one hour":   roomtest.Head("in") + roomtest.Wall("Long", `40'`, `9'`) + "[day]\nstart = '8:00'\nend = '9:00'\nbreak = []\n",
	"a very quick crew":   roomtest.Head("in") + roomtest.Wall("Long", `90'`, `9'`) + "[day]\nplain = 1\ncut = 0\nrest = 0\ngroup = 12\nlay_out = 0\nlook = 0\ncrew = 12\n",
	"many breaks":         roomtest.Head("in") + roomtest.Wall("Long", `30'`, `9'`) + "[day]\ncrew = 1\nbreak = ['8:00-8:05', '9:00-9:05', '10:00-10:05', '11:00-11:05', '13:00-13:05']\n",
	"sheets that hang":    roomtest.Head("in") + roomtest.Wall("Long", `30'`, `9'`) + "[[hung]]\nwall = 'Long'\nsheet = 1\nseam = \"1' 11\"\n",
	"two courses":         roomtest.Head("in") + roomtest.Wall("High", `16'`, `18'`),
	"level grain":         strings.Replace(roomtest.Head("in"), "cut = ", "grain = 'horizontal'\ncut = ", 1) + roomtest.Wall("Low", `16'`, `9'`),
	"no sheet left":       strings.Replace(roomtest.Head("in"), `"1-60"`, `"1-8"`, 1) + roomtest.Wall("Long", `30'`, `9'`),
	"walls of long names": roomtest.Head("in") + roomtest.Wall("North wall of the reading room behind the long reference desk", `20'`, `9'`) + roomtest.Wall("East wall beside the stairs that go down to the stacks", `20'`, `9'`),
	"a flitch after the other": roomtest.Head("in") + "[[flitch]]\nnumber = 'A-LONG-FLITCH-NUMBER'\nsheets = '1-6'\n[[flitch]]\nnumber = 'B'\nsheets = '1-20'\n" +
		roomtest.Wall("Long", `30'`, `9'`),
}

// Nothing touches on the pages of any room's days, and all of it is read from a ladder: 3.5 mm and more.
func TestNothingOverlapsOnTheHangingDays(t *testing.T) {
	rooms := roomtest.AllRooms(t)
	maps.Copy(rooms, oddDays)
	roomtest.OnPapers(t, rooms, []string{"ansi-a", "a4", "ansi-b"}, func(t *testing.T, text, name string) {
		c := NewSet(roomtest.Laid(t, "room.toml", text), roomtest.Template(t, name), "Install")
		pages := c.DayPages(1)
		require.NotEmpty(t, pages)
		require.NoError(t, (&scene.Document{Title: "t", Pages: pages}).Validate())
		for _, p := range pages {
			for _, o := range scene.Overlaps(p, 0.5) {
				t.Errorf("%s: %v", p.Name, o)
			}
			p.Texts(func(x *scene.Text) {
				assert.GreaterOrEqual(t, x.Height, 3.5-1e-9, "%q", x.String)
				assert.False(t, strings.HasSuffix(x.String, "…") && x.At.Y > 30, "%q is cut off", x.String)
			})
		}
		plan, h := days.Of(c.Plan), &hanging{Set: &c.Set}
		all := strings.Join(strings.Fields(roomtest.Texts(pages)), " ")
		evenings := map[int]bool{}
		for _, x := range plan.Steps {
			if x.Kind == days.EveningStep && x.Stop != nil {
				evenings[x.Stop.Task] = true
				assert.True(t, x.Done || strings.Contains(all, "STOP "+h.stopAt(x.Stop)), "%v", x.Stop)
			}
		}
		for _, x := range plan.Stops {
			if task := &plan.Tasks[x.Task]; !evenings[x.Task] {
				row, line := room.Clock(task.Up)+" "+sheetWord(task)+" "+h.stopAt(&x), room.Clock(task.Up)+", after "+sheetWord(task)+": "+h.stopAt(&x)
				assert.True(t, strings.Contains(all, row) || strings.Contains(all, line), "%s, in a table or in a list beside the readings", row)
			}
		}
		for i := range plan.Tasks {
			assert.Contains(t, all, sheetWord(&plan.Tasks[i]))
		}
		assert.Contains(t, all, "all hangs")
	})
}

// The same of rooms with much that is odd.
func TestNothingOverlapsOnTheDaysOfRandomRooms(t *testing.T) {
	count, wanted := 0, effort.Of(10, 40)
	for seed := uint64(1000); count < wanted && seed < 2000; seed++ {
		r, err := room.Decode("random.toml", []byte(roomtest.CrewRoom(seed)))
		if err != nil {
			continue
		}
		p, err := layout.Lay(r)
		if err != nil {
			continue
		}
		count++
		for _, page := range NewSet(p, roomtest.Template(t, []string{"ansi-a", "a4"}[seed%2]), "Install").DayPages(1) {
			for _, o := range scene.Overlaps(page, 0.5) {
				t.Errorf("seed %d, %s: %v", seed, page.Name, o)
			}
		}
	}
	assert.Equal(t, wanted, count, "so many rooms have to be readable")
}

// A day worked by hand in package count, as the crew reads it.
func TestHangingDayAsTheCrewReadsIt(t *testing.T) {
	text := `[project]
title = "t"
[veneer]
gross_width = "24 1/2"
overlap = 1
length = "10'"
[day]
plain = 20
narrow = 25
cut = 10
rest = 15
lay_out = 5
look = 10
start = "8:00"
[[wall]]
name = "North"
length = "11' 4"
height = "8'"
`
	template, err := paper.Named("ansi-a")
	require.NoError(t, err)
	pages := NewSet(roomtest.Laid(t, "room.toml", text), template, "Install").DayPages(1)
	require.Len(t, pages, 3)
	day := strings.Join(strings.Fields(roomtest.Texts(pages[2:])), " ")
	for _, row := range [][]string{{"8:00", "8:30", "dry lay-out of all sheets: HOLD 0"}, {"8:30", "8:45", "10:10", "1, 2, 3", "2", "North; right edge of 3 unpasted"}, {"10:10", "10:20", "HOLD 1 after 3: look at the first sheets"},
		{"10:20", "10:35", "12:10", "4, 5, 6", "3", "North"}, {"12:10", "12:20", "HOLD 2 after 6: look at all of it"}, {"12:20", "all hangs"}} {
		assert.Contains(t, day, strings.Join(row, " "))
	}
	// 2 x 25 + 4 x 20 = 130 minutes to hang, 5 x 10 to cut
	assert.Contains(t, roomtest.Texts(pages[:1]), "North\n6\n2:10\n0:50\n3:00\nday 1, 12:10\n")
}

// A wall is done when the last sheet that begins on it is up, not when the group does of which that is one: the first wall here ends
// with the first sheet of a group that goes on round the corner.
func TestWallsAreDoneWithTheirOwnLastSheet(t *testing.T) {
	text := roomtest.Head("in") + "[day]\nplain = 20\nnarrow = 20\nwrap = 20\ncut = 10\nrest = 15\nlay_out = 0\nlook = 10\nstart = \"8:00\"\n" + roomtest.Wall("North", `7' 6`, `8'`) + roomtest.Wall("East", `7' 6`, `8'`)
	c := NewSet(roomtest.Laid(t, "room.toml", text), roomtest.Template(t, "ansi-a"), "Install")
	last := map[string]string{}
	for _, k := range c.Days.Tasks {
		last[c.Room.Walls[k.Wall].Name] = "day 1, " + clock(k.Up)
	}
	groups := map[string]bool{}
	for _, x := range c.Days.Steps {
		groups["day 1, "+clock(x.To)] = true
	}
	require.False(t, groups[last["North"]], "the group goes on")
	words := strings.Join(strings.Fields(roomtest.Texts(c.DayPages(1)[:1])), " ")
	assert.Contains(t, words, "TOTAL LAST UP")
	for wall, when := range last {
		assert.Regexp(t, wall+` \d+ \d+:\d\d \d+:\d\d \d+:\d\d `+when+` `, words)
	}
	end := c.Days.Steps[len(c.Days.Steps)-1]
	assert.Contains(t, words, "over day 1, "+clock(end.From), "with the looks")
}

// A timetable of more than one page goes on with a step, never with more sheets of the step before, and with rows enough
// to be read as one.
func TestATimetableGoesOnWithAStep(t *testing.T) {
	parted, time := 0, regexp.MustCompile(`^\d+:\d\d$`)
	rooms := roomtest.Samples(t)
	for why, text := range oddDays {
		rooms[why] = text
	}
	for _, group := range []int{5, 9, 12} {
		rooms["groups of "+strconv.Itoa(group)] = roomtest.Head("in") + roomtest.Wall("Long", `110'`, `9'`) + "[day]\nplain = 4\nnarrow = 6\ncut = 1\nrest = 2\nlay_out = 0\nlook = 3\ngroup = " + strconv.Itoa(group) + "\n"
	}
	for why, text := range rooms {
		for _, name := range []string{"ansi-a", "a4", "ansi-b"} {
			c := NewSet(roomtest.Laid(t, "room.toml", text), roomtest.Template(t, name), "Install")
			pages := c.DayPages(1)
			list := roomtest.ListedOver(c.readable(), pages[0].Frame.Y1+1, pages)
			for i, l := range list {
				if l.Title != "TIMETABLE" || !l.Goes {
					continue
				}
				parted++
				before := i - 1
				for list[before].Title != l.Title {
					before--
				}
				assert.GreaterOrEqual(t, min(l.Rows, list[before].Rows), folio.LeastRows, "%s, %s", why, pages[l.Page].Name)
				from := false // a time stands in the first row
				pages[l.Page].Texts(func(x *scene.Text) {
					from = from || x.At.Y > l.Lines[1] && x.At.Y < l.Lines[2] && time.MatchString(x.String)
				})
				assert.True(t, from, "%s, %s", why, pages[l.Page].Name)
			}
		}
	}
	assert.Greater(t, parted, 10)
}

// Sheets that take longer to hang than their paste stays open are named in their rows, and no others; the rule of the groups says how long it
// does.
func TestSheetsThatOutlastTheirPasteAreNamed(t *testing.T) {
	template, err := paper.Named("ansi-a")
	require.NoError(t, err)
	for open, want := range map[string]int{"22": 2, "25": 0, "15": 6} {
		text := "[project]\ntitle = \"t\"\n[veneer]\ngross_width = \"24 1/2\"\noverlap = 1\nlength = \"10'\"\n[day]\nplain = 20\nnarrow = 25\nopen = " + open +
			"\n[[wall]]\nname = \"North\"\nlength = \"11' 4\"\nheight = \"8'\"\n"
		words := strings.Join(strings.Fields(roomtest.Texts(NewSet(roomtest.Laid(t, "room.toml", text), template, "Install").DayPages(1))), " ")
		assert.Equal(t, want, strings.Count(words, "takes longer than its paste stays open: paste it in parts"), "open for %s min: %s", open, words)
		assert.Contains(t, words, "its paste stays open "+open+" min", "the rule of the groups")
	}
}

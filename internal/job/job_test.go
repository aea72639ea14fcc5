package job

import (
	"errors"
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/finding"
	"flitchlay/internal/source"
)

// wall is a room of one wall that takes n sheets of 24 in: each shows 23 in.
func wall(n int) string {
	return fmt.Sprintf(`[project]
title = "A room"
[veneer]
gross_width = 24
overlap = 1
length = 120
[[wall]]
name = "North"
length = %d
height = 96
left_end = "trim"
right_end = "trim"
`, 23*n-1)
}

// files opens what a test gives.
func files(list map[string]string) Open {
	return func(file string) (string, []byte, error) {
		text, ok := list[file]
		if !ok {
			return "", nil, errors.New(file + " cannot be read: no such file or directory")
		}
		return file, []byte(text), nil
	}
}

// run reads a job and goes through it.
func run(t *testing.T, text string, rooms map[string]string) *Job {
	t.Helper()
	j, err := Read("job.toml", []byte(text), files(rooms))
	require.NoError(t, err)
	j.Run(2)
	return j
}

// sheets lays a job out and tells what each room lays.
func sheets(t *testing.T, j *Job) (list []string, b *Book) {
	t.Helper()
	b = NewBook(j)
	require.NoError(t, j.Each(2, nil, func(l *Laid) error {
		require.NoError(t, l.Err)
		b.Add(l)
		list = append(list, l.Room.Name()+": "+RowWords(LaidRows(l.Plan)))
		return nil
	}))
	return list, b
}

// Numbers run on through the rooms of a flitch, past what is damaged, and what is kept back is kept back once.
func TestNumbersRunOn(t *testing.T) {
	rooms := map[string]string{"a.toml": wall(3), "b.toml": wall(4)}
	flitch := "[[flitch]]\nnumber = 'F1'\nsheets = '1-20'\ndamaged = [5]\nspare = 2\n[[flitch]]\nnumber = 'F2'\nsheets = '1-20'\n"
	for _, c := range []struct {
		why, job string
		want     []string
	}{
		{"one after the other", flitch + "[[room]]\nfile='a.toml'\n[[room]]\nfile='b.toml'\n[[room]]\nfile='a.toml'\nas='7'",
			[]string{"a.toml: F1 1-3", "b.toml: F1 4, 6-8", "a.toml as 7: F1 9-11"}},
		{"the same room for several", flitch + "[[room]]\nfile='b.toml'\nas='301-303, B1'",
			[]string{"b.toml as 301: F1 1-4", "b.toml as 302: F1 6-9", "b.toml as 303: F1 10-13", "b.toml as B1: F1 14-17"}},
		{"a room is hung whole from the next where the rest is too short", flitch + "[[room]]\nfile='b.toml'\nas='1-5'",
			[]string{"b.toml as 1: F1 1-4", "b.toml as 2: F1 6-9", "b.toml as 3: F1 10-13", "b.toml as 4: F1 14-17", "b.toml as 5: F2 1-4"}},
		{"a flitch that is named", flitch + "[[room]]\nfile='a.toml'\nflitch='F2'\n[[room]]\nfile='b.toml'\n[[room]]\nfile='a.toml'\nas='9'\nflitch='F1'",
			[]string{"a.toml: F2 1-3", "b.toml: F2 4-7", "a.toml as 9: F1 1-3"}},
		{"what hangs stays, the rest goes round it", flitch + "[[room]]\nfile='a.toml'\nas='1-2'\nhung='1'\nlaid='F1 2-4'\n[[room]]\nfile='b.toml'",
			[]string{"a.toml as 1: F1 2-4", "a.toml as 2: F1 6-8", "b.toml: F1 9-12"}},
		{"what hangs stays though it is said to be damaged", strings.Replace(flitch, "[5]", "[2, 5]", 1) + "[[room]]\nfile='a.toml'\nhung=true\nlaid='F1 1-3'\n[[room]]\nfile='b.toml'",
			[]string{"a.toml: F1 1-3", "b.toml: F1 4, 6-8"}},
		{"a later room that hangs keeps its sheets", flitch + "[[room]]\nfile='a.toml'\nas='1'\n[[room]]\nfile='a.toml'\nas='2'\nhung=true\nlaid='F1 2-4'",
			[]string{"a.toml as 1: F1 1, 6, 7", "a.toml as 2: F1 2-4"}},
		{"none: on to the next flitch", "[job]\nwhole = 'none'\n[[flitch]]\nnumber='A'\nsheets='1-5'\n[[flitch]]\nnumber='B'\nsheets='1-9'\n[[room]]\nfile='a.toml'\n[[room]]\nfile='b.toml'",
			[]string{"a.toml: A 1-3", "b.toml: A 4, 5; B 1, 2"}},
	} {
		got, b := sheets(t, run(t, c.job, rooms))
		assert.Equal(t, c.want, got, c.why)
		assert.Empty(t, b.Findings, c.why)
	}
}

// two is a room of two walls round an inside corner.
func two(a, b int) string {
	return strings.Replace(wall(a), "right_end = \"trim\"\n", "corner = \"none\"\nright_end = \"trim\"\n", 1) +
		fmt.Sprintf("[[wall]]\nname = \"East\"\nlength = %d\nheight = 96\nleft_end = \"trim\"\nright_end = \"trim\"\n", 23*b-1)
}

// A wall is hung from one flitch; only one that is longer than any is parted.
func TestWallsStayWhole(t *testing.T) {
	flitches := func(a, b int) string {
		return fmt.Sprintf("[job]\nwhole='wall'\n[[flitch]]\nnumber='A'\nsheets='1-%d'\n[[flitch]]\nnumber='B'\nsheets='1-%d'\n[[room]]\nfile='r.toml'\n", a, b)
	}
	for _, c := range []struct{ why, job, room, want string }{
		{"parted where the second wall begins", flitches(5, 9), two(3, 4), "A 1-3; B 1-4"},
		{"all of the first", flitches(3, 9), two(3, 4), "A 1-3; B 1-4"},
		{"a first wall that does not fit", flitches(2, 9), two(3, 4), "B 1-7"},
		{"a wall that is longer than any", flitches(3, 4), two(6, 1), "A 1-3; B 1-4"},
	} {
		got, b := sheets(t, run(t, c.job, map[string]string{"r.toml": c.room}))
		assert.Equal(t, []string{"r.toml: " + c.want}, got, c.why)
		assert.Empty(t, b.Findings, c.why)
	}
}

// What must not be is found, with both places.
func TestFindingsOfTheJob(t *testing.T) {
	flitch := "[[flitch]]\nnumber = 'F'\nsheets = '1-6'\n"
	own := wall(3) + "[[flitch]]\nnumber = 'F'\nsheets = '%s'\n"
	for _, c := range []struct {
		why, job string
		rooms    map[string]string
		want     string
	}{
		{"two rooms of one flitch of their own", "[[room]]\nfile='a.toml'\n[[room]]\nfile='b.toml'",
			map[string]string{"a.toml": fmt.Sprintf(own, "1-6"), "b.toml": fmt.Sprintf(own, "3-8")},
			"must sheet-twice b.toml sheet 3 of flitch F: laid on wall North and, in a.toml, on wall North"},
		{"one sheet in two rooms that hang", flitch + "[[room]]\nfile='a.toml'\nas='1-2'\nhung=true\nlaid=['F 1-3', 'F 2-4']", map[string]string{"a.toml": wall(3)},
			"must sheet-twice a.toml as 2 sheets 2, 3 of flitch F: laid on wall North and, in a.toml as 1, on wall North"},
		{"a room that nothing holds whole", "[[flitch]]\nnumber='G'\nsheets='1-4'\n" + flitch + "[[room]]\nfile='a.toml'\nas='1-3'", map[string]string{"a.toml": wall(3)}, ""},
		{"a room that no rest holds whole", "[[flitch]]\nnumber='G'\nsheets='1-5'\n" + flitch + "[[room]]\nfile='a.toml'\n[[room]]\nfile='b.toml'\n[[room]]\nfile='a.toml'\nas='3'\nflitch='G'",
			map[string]string{"a.toml": wall(3), "b.toml": wall(4)}, "must flitch-parted a.toml as 3 no flitch has enough sheets left for the room: it is hung from G and F"},
		{"a room that is short is not parted", flitch + "[[room]]\nfile='b.toml'\n[[room]]\nfile='a.toml'", map[string]string{"a.toml": wall(3), "b.toml": wall(4)}, ""},
		{"a room that hangs without its sheets", flitch + "[[room]]\nfile='a.toml'\nhung=true", map[string]string{"a.toml": wall(3)},
			"should hangs-unsaid a.toml it hangs, but the job does not say with which sheets: they change when something before them does"},
	} {
		_, b := sheets(t, run(t, c.job, c.rooms))
		got := ""
		for _, f := range b.Findings {
			got += fmt.Sprintln(f.Level, f.Code, f.Place, f.Message)
		}
		assert.Equal(t, c.want, strings.TrimSpace(got), c.why)
	}
}

// What rooms share stands below what they say themselves, however they write it; and a mistake in it is told where it stands.
func TestSharedStandsBelow(t *testing.T) {
	job := "[project]\ntitle = 'Row'\nfor = 'Alder'\n[veneer]\ngross_width = 24\noverlap = 1\nlength = 120\nspecies = 'oak'\n[site]\ntemperature = 70\nhumidity = 40\n[site.year]\nlow = 20\nhigh = 50\n[[room]]\nfile='a.toml'\n"
	walls := "[[wall]]\nlength = 100\nheight = 96\n"
	for _, c := range []struct{ why, room string }{
		{"nothing of its own", walls},
		{"tables with heads", "[project]\nby = 'Us'\n[veneer]\nspecies = 'ash' # ours\n[site]\nhumidity = 30\n" + walls},
		{"inside one line", "project = { by = 'Us' }\nveneer = {species='ash'}\nsite = {humidity = 30, year = {low = 10, high=20}}\n" + walls},
		{"dotted", "project.by = 'Us'\nveneer.species = 'ash'\nsite.humidity = 30\nsite.year.low = 10\nsite.year.high = 20\n" + walls},
		{"an inner table alone", walls + "[site.year]\nlow = 10\nhigh = 20"},
		{"without an end of its last line", strings.TrimSpace(walls)},
	} {
		for _, as := range []string{"", "as = '12'\n"} {
			j, err := Read("job.toml", []byte(job+as), files(map[string]string{"a.toml": c.room}))
			require.NoError(t, err, c.why)
			l := j.Lay(0, nil)
			require.NoError(t, l.Err, c.why+"\n"+string(l.Text))
			r := l.Plan.Room
			assert.Equal(t, "Row", r.Project.Title, c.why)
			assert.Equal(t, strings.Contains(c.room, "Us"), r.Project.By == "Us", c.why)
			assert.Equal(t, strings.Contains(c.room, "ash"), r.Veneer.Species == "ash", c.why)
			assert.Equal(t, strings.Contains(c.room, "30"), r.Site.Humidity == 30, c.why)
			assert.InDelta(t, 70, r.Site.Temperature, 0, c.why)
			assert.Equal(t, strings.Contains(c.room, "low"), r.Site.Year.Low == 10, c.why)
			assert.Equal(t, as != "", r.Project.Room == "12", c.why)
		}
	}
}

func parsed(t *testing.T, text string) source.Value {
	t.Helper()
	root, err := source.Parse("job.toml", []byte(text))
	require.NoError(t, err)
	return root
}

// A room that cannot be read does not stop the rest: only those after it that would go on where it stops.
func TestABadRoomStopsOnlyWhatFollowsIt(t *testing.T) {
	j := run(t, "[[flitch]]\nnumber='A'\nsheets='1-9'\n[[flitch]]\nnumber='B'\nsheets='1-9'\n[[room]]\nfile='a.toml'\nas='1'\n[[room]]\nfile='bad.toml'\nflitch='B'\n"+
		"[[room]]\nfile='a.toml'\nas='2'\n[[room]]\nfile='a.toml'\nas='3'\nflitch='A'\n[[room]]\nfile='own.toml'\n",
		map[string]string{"a.toml": wall(3), "bad.toml": strings.Replace(wall(3), "length = 120", "length = 'x'", 1), "own.toml": wall(2) + "[[flitch]]\nnumber='C'\nsheets='1-9'\n"})
	var got []string
	require.NoError(t, j.Each(2, nil, func(l *Laid) error {
		if l.Err != nil {
			got = append(got, strings.SplitN(l.Err.Error(), "\n", 2)[0])
		} else {
			got = append(got, RowWords(LaidRows(l.Plan)))
		}
		return nil
	}))
	assert.Equal(t, []string{"A 1-3", `bad.toml:6:10: length "x" is no length: no figure at "x"`,
		"a.toml as 2: its sheets follow those of bad.toml, which cannot be laid out", "A 4-6", "C 1, 2"}, got)
}

// Where the job leaves it open the flitches are chosen, and the lines that say so give the same sheets when they are pasted.
func TestFlitchesAreAssigned(t *testing.T) {
	rooms := map[string]string{"a.toml": wall(4), "b.toml": wall(6)}
	flitches := "[[flitch]]\nnumber='A'\nsheets='1-6'\n[[flitch]]\nnumber='B'\nsheets='1-8'\n[[flitch]]\nnumber='C'\nsheets='1-12'\n"
	list := "[[room]]\nfile='a.toml'\nas='2-4, 7'\n[[room]]\nfile='b.toml'\n[[room]]\nfile='a.toml'\nas=['1-1']\nhung=true\nlaid='C 1-4'\n"
	j := run(t, "[job]\nassign='auto'\n"+flitches+list, rooms)
	got, b := sheets(t, j)
	assert.Equal(t, []string{"a.toml as 2: B 1-4", "a.toml as 3: B 5-8", "a.toml as 4: C 5-8", "a.toml as 7: C 9-12", "b.toml: A 1-6", "a.toml as 1-1: C 1-4"}, got)
	assert.Empty(t, b.Findings)
	assert.Equal(t, "best: 0 rooms with a change of the flitch, 0 left-over ends too short for any room", j.ChoiceWords())
	assert.Equal(t, "[[room]]\nfile = \"a.toml\"\nas = \"2, 3\"\nflitch = \"B\"\n[[room]]\nfile = \"a.toml\"\nas = \"4, 7\"\nflitch = \"C\"\n[[room]]\nfile = \"b.toml\"\nflitch = \"A\"\n"+
		"[[room]]\nfile = \"a.toml\"\nas = [\"1-1\"]\nhung = true\nlaid = [\"C 1-4\"]\n", j.Lines())
	again, _ := sheets(t, run(t, flitches+j.Lines(), rooms))
	assert.Equal(t, got, again)
	given, _ := sheets(t, run(t, flitches+list, rooms))
	assert.NotEqual(t, given, got)
}

// What laid says of a room comes back as it was printed, whatever a flitch is called.
func TestLaidReadsBack(t *testing.T) {
	for _, rows := range [][]Row{{{"F1", []int{1, 2, 3, 5, 9, 10, 11}}}, {{"F 204", []int{7}}, {"No. 3, second cut", []int{1, 3}}}} {
		back, err := laidRows(RowWords(rows))
		require.NoError(t, err)
		assert.Equal(t, rows, back)
	}
}

// The sample job leaves nothing open: no finding of the job, no must and no ask of a room, and its flitches are those of no other room.
func TestSampleJobIsQuiet(t *testing.T) {
	const dir = "../../samples/job/"
	text, err := os.ReadFile(dir + "ferry-terminal.toml")
	require.NoError(t, err)
	j, err := Read("ferry-terminal.toml", text, func(file string) (string, []byte, error) {
		text, err := os.ReadFile(dir + file)
		return file, text, err
	})
	require.NoError(t, err)
	j.Run(2)
	b := NewBook(j)
	n := 0
	require.NoError(t, j.Each(2, nil, func(l *Laid) error {
		require.NoError(t, l.Err)
		b.Add(l)
		n++
		assert.Empty(t, l.Plan.Room.Asks, l.Room.Name())
		assert.False(t, finding.Any(l.Plan.Findings, finding.Must), l.Room.Name())
		return nil
	}))
	assert.Equal(t, 5, n)
	assert.Empty(t, b.Findings)
	assert.Len(t, j.Flitches, 2)
}

package job

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// quiet is a job without a mistake.
const quiet = `[project]
title = "Row"
[veneer]
overlap = 1
[job]
whole = "room"
[[flitch]]
number = "SR-F2"
sheets = "1-30"
[[room]]
file = "a.toml"
as = "301-303"
hung = "301"
laid = "SR-F2 1-3"
`

// One mistake each, and the whole of what a person sees: the file in which it stands, its line, and how to mend it.
func TestOneMistakeOfAJob(t *testing.T) {
	rooms := map[string]string{
		"a.toml":    strings.Replace(wall(3), "overlap = 1\n", "", 1),
		"b.toml":    strings.Replace(wall(3), "length = 120", "length = 'long'", 1),
		"c.toml":    strings.Replace(wall(3), "[veneer]", "[veneer", 1),
		"jobs.toml": quiet,
	}
	for _, c := range []struct{ why, old, new, want string }{
		{"an unknown key", `whole = "room"`, `hole = "room"`, "job.toml:6:1: unknown key hole in [job]\n  hole = \"room\"\n  ^^^^\n  mend: the nearest known key is whole"},
		{"an unknown word", `"room"`, `"rom"`, "job.toml:6:9: whole \"rom\" is not known\n  whole = \"rom\"\n          ^^^^^\n  mend: write \"room\"; whole takes room, wall, none"},
		{"a key of a room that is not shared", "[job]", "[[wall]]\nlength = 3\n[job]", ""},
		{"a file that is not there", `"a.toml"`, `"x.toml"`, "job.toml:11:8: x.toml cannot be read: no such file or directory\n  file = \"x.toml\"\n         ^^^^^^^^\n  mend: name a room file, from the job file's folder"},
		{"no file", `file = "a.toml"`, ``, "job.toml:10:3: a room of the job has no file\n  [[room]]\n    ^^^^\n  mend: add file = \"reception.toml\": its room file, from the job file's folder"},
		{"a job in a job", `"a.toml"`, `"jobs.toml"`, "job.toml:11:8: jobs.toml is a job file itself\n  file = \"jobs.toml\"\n         ^^^^^^^^^^^\n  mend: name a room file: its walls stand in [[wall]]"},
		{"rows backwards", `"301-303"`, `"301-299"`, "job.toml:12:6: as \"301-299\": 301-299 runs backwards\n  as = \"301-299\"\n       ^^^^^^^^^\n  mend: write \"301-318, 320\", or a list of texts"},
		{"one number twice", `"301-303"`, `"301-303, 302"`, "job.toml:12:6: room 302 stands twice in the job\n  as = \"301-303, 302\"\n       ^^^^^^^^^^^^^^\n  mend: give every room of the job a number of its own"},
		{"numbers that hang of a single room", `as = "301-303"`, "", "job.toml:13:8: hung names room 301, which is none of these\n"},
		{"a file twice", "[[room]]", "[[room]]\nfile = \"a.toml\"\n[[room]]\nfile = \"a.toml\"\n[[room]]", "job.toml:13:8: a.toml stands twice in the job\n"},
		{"a room that hangs and is none", `hung = "301"`, `hung = "304"`, "job.toml:13:8: hung names room 304, which is none of these\n  hung = \"304\"\n         ^^^^^\n  mend: name rooms that stand in as; hung = true says that all hang\n"},
		{"sheets of no flitch", `"SR-F2 1-3"`, `"1-3"`, "job.toml:14:8: laid \"1-3\": \"1-3\" names no flitch with sheets\n"},
		{"sheets of another flitch", `"SR-F2 1-3"`, `"SR-F3 1-3"`, "job.toml:14:8: the job has no flitch \"SR-F3\"\n  laid = \"SR-F3 1-3\"\n         ^^^^^^^^^^^\n  mend: name a flitch of the job; the nearest is SR-F2"},
		{"sheets that did not come", `"SR-F2 1-3"`, `"SR-F2 29-31"`, "job.toml:14:8: sheet 31 is not one of the sheets of flitch SR-F2\n"},
		{"sheets of two rooms", `"SR-F2 1-3"`, `["SR-F2 1-3", "SR-F2 4-6"]`, "job.toml:14:8: laid has the sheets of 2, and of these rooms 1 hang\n"},
		{"a flitch that is none", `hung = "301"`, "hung = \"301\"\nflitch = \"SR-F\"", "job.toml:14:10: the job has no flitch \"SR-F\"\n"},
		{"a mistake of what is shared stands in the job, and is said once", "overlap = 1", "overlap = 0.25", "job.toml:4:11: an overlap of 1/4 in is under least_overlap (1/2 in)\n"},
		{"a mistake of a room stands in the room", `"a.toml"`, `"b.toml"`, "b.toml:6:10: length \"long\" is no length"},
		{"what cannot be parsed", `"a.toml"`, `"c.toml"`, "c.toml:3:1: a bracket is missing"},
		{"damaged sheets that did not come", `sheets = "1-30"`, "sheets = \"1-30\"\ndamaged = [31]", "job.toml:10:12: damaged sheet 31 is not one of the sheets of flitch \"SR-F2\"\n"},
		{"a width that is none", `sheets = "1-30"`, "sheets = \"1-30\"\nwidths = [[3, 'x']]", "job.toml:10:15: an item of widths \"x\" is no length"},
		{"flitches assigned to walls", `whole = "room"`, "whole = \"wall\"\nassign = \"auto\"", "job.toml:7:10: flitches are not assigned to walls\n"},
		{"a price with its sign", "[job]", "[price]\nhour = \"$62\"\n[job]", "job.toml:6:8: hour takes a number, not a text\n"},
		{"job in double brackets", "[job]", "[[job]]", "job.toml:5:3: job is one table, not a list\n  [[job]]\n    ^^^\n  mend: write [job] once, in single brackets\n"},
		{"room in single brackets", "[[room]]", "[room]", "job.toml:10:2: room is a list of tables, not a table\n  [room]\n   ^^^^\n  mend: write [[room]], in double brackets, before each"},
		{"a path with strokes that lean back", `"a.toml"`, `"rooms\a.toml"`, "job.toml:11:8: the stroke \\ has no place in a text\n  file = \"rooms\\a.toml\"\n         ^^^^^^^^^^^^^^\n  mend: write \"rooms/a.toml\"\n"},
		{"room numbers without quotes", `"301-303"`, `301-303`, "job.toml:12:6: numbers from one to another stand in quotes\n  as = 301-303\n       ^^^^^^^\n  mend: write \"301-303\"\n"},
		{"a price under nothing", "[job]", "[price]\nhour = -2\n[job]", "job.toml:6:8: a price is less than 0\n"},
		{"no room", quiet[strings.Index(quiet, "[[room]]"):], "", "job.toml:1:1: the job has no room\n"},
	} {
		text := strings.Replace(quiet, c.old, c.new, 1)
		require.NotEqual(t, quiet, text, c.why)
		j, err := Read("job.toml", []byte(text), files(rooms))
		if err == nil {
			j.Run(2)
			var all Problems
			for _, r := range j.Rooms {
				if r.Err != nil {
					all.Add(r.Err)
				}
			}
			err = all.Err()
		}
		if !assert.Error(t, err, c.why) {
			continue
		}
		if strings.HasSuffix(c.want, "\n") { // one mistake, and how it begins
			assert.Equal(t, 1, strings.Count(err.Error(), "  mend: "), c.why+"\n"+err.Error())
			c.want = strings.TrimSuffix(c.want, "\n")
		}
		assert.Contains(t, err.Error(), c.want, c.why)
		assert.Contains(t, err.Error(), "  mend: ", c.why)
	}
	j, err := Read("job.toml", []byte(quiet), files(rooms))
	require.NoError(t, err)
	j.Run(2)
	require.NoError(t, j.Rooms[0].Err)
}

// A job file is told from a room file, also from one whose author wrote [[room]].
func TestIs(t *testing.T) {
	for text, is := range map[string]bool{quiet: true, "[job]\nwhole='wall'": true, wall(2): false, "[[room]]\nbase=4\n[[wall]]\nlength=3": false, "[room]\nbase=3": false} {
		root := parsed(t, text)
		assert.Equal(t, is, Is(root), text)
	}
}

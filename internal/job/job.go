// Package job reads a job file: the rooms of a building in the order of hanging, what they share, and the flitches that go through
// them. It gives each room a text of its own, a room file as any, in which what is shared stands below what the room says itself and
// the flitches hold the sheets that the rooms before have left.
//
// Coordinates and units: none of its own; a sheet is told by the number of its flitch and its own.
//
// Order: rooms in the order of hanging, those of one file in the order of their numbers; flitches in file order.
//
// Not here: what a room's keys mean (package room), where seams go and which number a sheet gets inside a room (package layout),
// files and folders (package cli).
package job

import (
	"fmt"
	"path/filepath"
	"strings"

	"flitchlay/internal/assign"
	"flitchlay/internal/room"
	"flitchlay/internal/source"
)

// Job is a job file and the rooms that it names.
type Job struct {
	Title, Number string // of its [project]
	Whole         string // what may not be hung from two flitches: room, wall, none
	Auto          bool   // flitches are assigned to rooms, not run on
	Flitches      []room.Flitch
	Rooms         []*Room
	Currency      string
	Prices        []Price        // every key of [price], given or not
	Choice        *assign.Choice // of flitches, where the job leaves it open and Run has found one

	root  source.Value
	plain bool // no job file: rooms as they stand
}

// Of is a job without a file: rooms one after the other, each with its own flitches.
func Of(names []string, open Open) *Job {
	j := &Job{Whole: "room", plain: true}
	j.root, _ = source.Parse("", nil)
	folders := map[string]bool{}
	for i, name := range names {
		f := &roomFile{name: name, kind: i}
		base := filepath.Base(name)
		r := &Room{File: name, Own: true, file: f, Folder: strings.TrimSuffix(base, filepath.Ext(base))}
		for n := 2; folders[strings.ToLower(r.Folder)]; n++ {
			r.Folder = fmt.Sprintf("%s-%d", strings.TrimSuffix(base, filepath.Ext(base)), n)
		}
		folders[strings.ToLower(r.Folder)] = true
		called, text, err := open(name)
		if f.err = err; err == nil {
			f.name = called
			f.root, f.err = source.Parse(called, text)
		}
		r.Err = f.err
		j.Rooms = append(j.Rooms, r)
	}
	return j
}

// Plain reports whether there is no job file: rooms stand one after the other.
func (j *Job) Plain() bool { return j.plain }

// Text is the job file.
func (j *Job) Text() *source.Text { return j.root.Mistakes().Text }

// Room is one room of a job.
type Room struct {
	File   string // as the job file has it
	As     string // the number that it has in the job, where its file stands for several rooms; else empty
	Folder string // for its drawings, once in a job
	Hung   bool   // it hangs: its numbers stay
	Flitch string // it begins with this one; empty: it goes on where the room before stopped
	Laid   []Row  // the sheets that hang in it, where the job says so
	Own    bool   // it keeps the flitches of its own file: the job has none of them

	Takes []room.Flitch // what it may take its sheets from, once Run has gone through the job
	Split bool          // it takes from two flitches, and no flitch is too short for it

	Err error // what is wrong with it, or why its sheets cannot be told

	file *roomFile
	at   source.Value // its [[room]]
	as   source.Value // where its number stands
}

// Row is sheets of one flitch.
type Row struct {
	Flitch  string
	Numbers []int // ascending
}

// Name tells a room of a job from the others: its file, and its number where the file stands for several.
func (r *Room) Name() string {
	if r.As != "" {
		return r.File + " as " + r.As
	}
	return r.File
}

// RoomNumber is the number of a room: the one that it has in the job, or the one of its file.
func (j *Job) RoomNumber(r *Room) string {
	if r.As != "" || r.Err != nil {
		return r.As
	}
	v := table(r.file.root, "project.room")
	if v.Kind() != source.String {
		return ""
	}
	return v.Text("")
}

// roomFile is a file that [[room]] names, read once.
type roomFile struct {
	name string // as messages print it
	root source.Value
	err  error // in place of root
	kind int   // files are counted
}

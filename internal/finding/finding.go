// Package finding is the list of things a check can say: codes, levels, and one wording for each.
//
// Coordinates and units: measured and required figures are lengths.
//
// Order: findings stay in the order they are made; Sort brings musts first, then shoulds, then what is asked, then notes.
//
// Not here: when a finding is due (package layout).
package finding

import (
	"sort"

	"flitchlay/internal/length"
)

// Level is how much a finding weighs.
type Level int

// The four levels. What is asked is a figure or a lack in the room file that may be meant, and is answered there.
const (
	Must Level = iota
	Should
	Ask
	Note
)

// String gives the word for the level.
func (l Level) String() string { return [...]string{"must", "should", "ask", "note"}[l] }

// Finding is one thing that the check says.
type Finding struct {
	Code               Code
	Level              Level
	Place              string         // "corner C2", "seam 11 | 12, West", "wall North", "room"
	Wall               int            // index of the wall to show it on, -1 where it belongs to none
	At                 length.Length  // x on that wall, where it belongs to one
	Measured, Required *length.Length // nil where there is nothing to measure
	Message            string
	Line               int    // of the room file, where a finding asks of it; else 0
	File               string // where that line is of another file: of a job, which its rooms share
	Mend               string // how the file answers what is asked, by a key
	Answer             string // what [room] answered takes to let it stand as it is
}

// Any reports whether a finding of that level is among them.
func Any(list []Finding, level Level) bool {
	for _, f := range list {
		if f.Level == level {
			return true
		}
	}
	return false
}

// Sort brings musts first, then shoulds, then what is asked, then notes, and keeps the order inside a level.
func Sort(list []Finding) {
	sort.SliceStable(list, func(i, j int) bool { return list[i].Level < list[j].Level })
}

package crewday

import "flitchlay/internal/layout"

// The words of how far a line may be off.

const (
	offTitle = "How far off"
	offAbout = "measured at the raw edge, from its line"
	offHead  = "HOW FAR A LINE MAY BE OFF"
	offRules = "WHAT THIS IS FOR"
	noLimit  = "any" // nothing breaks within the width of a sheet
)

// offHeads are the heads of the table; left is down where the grain runs level, and right is up.
func offHeads(level bool) []string {
	if level {
		return []string{"WALL", "LINE", "DOWN", "BREAKS", "UP", "BREAKS"}
	}
	return []string{"WALL", "LINE", "LEFT", "BREAKS", "RIGHT", "BREAKS"}
}

// offTexts say how the table is read and what is done beyond it. Lap is what must be left of an overlap.
func offTexts(level bool, lap string) []string {
	left, right := "left", "right"
	if level {
		left, right = "down", "up"
	}
	return []string{
		"A line is off when the raw edge, as it hangs, is not where the tape list has it. What hangs after it goes along.",
		"Beside each line stands how far it may be off, " + left + " or " + right + ". A hair more, and what stands under BREAKS comes out too small.",
		"Further off: STOP. Type the edge as read into the room file, under [[hung]], and plan again. Hang on by the new pages.",
		"Every seam: " + lap + " of overlap at least. Less is a stop too.",
	}
}

// startLine names the left edge of the first sheet of a closed room, which is struck as a line.
func startLine(number string) string { return "left edge of " + number }

// breaks says what must breaks when a line is further off. Sheet is the number of the sheet of which it is asked.
func breaks(l layout.Limit, sheet string) string {
	switch l.Must {
	case layout.MustReturn:
		return "return at " + l.Name
	case layout.MustReveal:
		return "jamb of " + l.Name
	case layout.MustClear:
		return "edge of " + l.Name
	case layout.MustLeg:
		return "leg at " + l.Name
	case layout.MustKept:
		return "kept clear"
	case layout.MustWidth:
		return "width of " + sheet
	case layout.MustOverlap:
		return "lap of " + sheet
	case layout.MustReach:
		return "end of " + sheet
	}
	return ""
}

// lines names lines one after the other that may be off by the same.
func lines(first, last string) string {
	if first == last {
		return first
	}
	return first + " to " + last
}

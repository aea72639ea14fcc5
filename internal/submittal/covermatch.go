package submittal

import (
	"fmt"
	"slices"
	"strings"

	"flitchlay/internal/draft"
	"flitchlay/internal/elevation"
	"flitchlay/internal/face"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
)

// matchItems state the match at the four levels that woodwork standards ask for.
//
// Source: Architectural Woodwork Standards, 1st edition, section 8, 4.2.11.4.1: between leaves, within a panel face,
// between panels, within a project area.
func matchItems(s *folio.Set) []draft.Item {
	v := s.Room.Veneer
	match := "as spliced by the maker of the sheets"
	if v.Match != "" {
		match = v.Match + " match"
	}
	breaks := breaks(s)
	area, order := "the grain goes on from sheet to sheet", "from left to right"
	if s.Room.Veneer.Horizontal {
		order = "from the foot up"
	} else if wraps(s) {
		area += " and round every wrapped corner"
	}
	if len(breaks) > 0 {
		area += "; it breaks " + strings.Join(breaks, "; ")
	}
	of := "one flitch"
	if len(s.Room.Flitches) > 1 {
		of = "each flitch, one after the other"
	}
	return []draft.Item{
		{Mark: "1", Text: "Between leaves: " + match + "."},
		{Mark: "2", Text: "Within a sheet: leaves in the order in which they were sliced, as delivered; a sheet is ripped narrower only where it is drawn so."},
		{Mark: "3", Text: "Between sheets: numbered sequence of " + of + ", hung in " + s.Room.Order() + " " + order + ", every seam overlapped and double cut."},
		{Mark: "4", Text: elevation.Walled(s, "Within the room: "+area+".")},
	}
}

// wraps reports whether a sheet goes on round a corner somewhere.
func wraps(s *folio.Set) bool {
	return slices.ContainsFunc(s.Plan.Runs, func(r layout.Run) bool { return len(r.Corners) > 0 })
}

// mostNarrow is how many narrow sheets are named among the places at which the grain breaks.
const mostNarrow = 4

// breaks are the places at which the grain does not go on.
func breaks(s *folio.Set) []string {
	var list, narrow, skips []string
	for i := range s.Plan.Runs {
		for _, m := range s.Plan.Runs[i].Seams {
			if m.Closing {
				list = append(list, fmt.Sprintf("at the closing seam %s | %s on wall %s", elevation.NumberOf(elevation.SheetAt(s, m.LeftSheet)), elevation.NumberOf(elevation.SheetAt(s, m.RightSheet)), s.Room.Walls[m.Wall].Name))
			}
			if m.FlitchChange {
				list = append(list, fmt.Sprintf("where flitch %s begins on wall %s", elevation.SheetAt(s, m.RightSheet).Flitch, s.Room.Walls[m.Wall].Name))
			}
		}
		for _, k := range elevation.Skips(s, &s.Plan.Runs[i]) {
			skips = append(skips, k.Where(s.Room.Walls[k.Seam.Wall].Name))
		}
		for _, sh := range s.Plan.Runs[i].Sheets {
			if sh.Narrow && sh.Lowest {
				narrow = append(narrow, fmt.Sprintf("by %s right of narrow sheet %s%s", s.Style.Words(sh.Lost), elevation.NumberOf(&sh), wallOfSeam(s, &s.Plan.Runs[i], sh.Place)))
			}
		}
		if n := len(s.Plan.Runs[i].Spans); n > 1 {
			list = append(list, "between the "+fmt.Sprint(n)+" stretches of run "+s.Plan.Runs[i].Name)
		}
	}
	if len(narrow) > mostNarrow { // they are deviations, one by one
		narrow = []string{fmt.Sprintf("right of %d narrow sheets", len(narrow))}
	}
	if len(skips) > mostNarrow { // each is noted on its elevation
		skips = []string{fmt.Sprintf("at %d seams where the sequence leaves out sheets", len(skips))}
	}
	list = append(append(list, skips...), narrow...)
	if walls := coursed(s); len(walls) > 0 {
		list = append(list, "at the level joint of the courses, in each of which neighbours are every other sheet, on wall "+strings.Join(walls, " and wall "))
	}
	for i := range s.Plan.Runs {
		if r := &s.Plan.Runs[i]; r.Up && len(r.Joints) > 0 {
			words := "at the upright joint"
			if len(r.Joints) > 1 {
				words += "s"
			}
			list = append(list, words+" of bands that meet end to end, where neighbours are every other sheet, on wall "+s.Room.Walls[r.Walls[0].Wall].Name)
		}
	}
	if len(s.Plan.Runs) > 1 {
		list = append(list, "between the runs")
	}
	return list
}

// coursed are the walls on which one sheet hangs over another.
func coursed(s *folio.Set) (walls []string) {
	for _, f := range s.Faces {
		if !f.Run.Up && slices.ContainsFunc(f.Parts, func(p face.Part) bool { return len(p.Sheets) > 1 }) {
			walls = append(walls, f.W.Name)
		}
	}
	return walls
}

// wallOfSeam names the wall of the seam at the right of a place.
func wallOfSeam(s *folio.Set, r *layout.Run, place int) string {
	if m := r.SeamAfter(place); m != nil {
		return " on wall " + s.Room.Walls[m.Wall].Name
	}
	return ""
}

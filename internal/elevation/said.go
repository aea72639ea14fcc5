package elevation

import (
	"regexp"
	"strings"

	"flitchlay/internal/finding"
	"flitchlay/internal/folio"
)

// seamSaid is the seam that a finding speaks of: by the numbers of its sheets.
var seamSaid = regexp.MustCompile(`seam \S+ \| [\d+?]+`)

// Walled leaves out the word wall before the name of a wall that has it in itself: of "wall Window wall" the first.
func Walled(s *folio.Set, text string) string {
	for i := range s.Room.Walls {
		name := s.Room.Walls[i].Name
		if !wallWord.MatchString(name) {
			continue
		}
		text = strings.ReplaceAll(text, "wall "+name, name)
		text = strings.ReplaceAll(text, "Wall "+name, name)
	}
	return text
}

// wallWord is the word that says that something is a wall.
var wallWord = regexp.MustCompile(`(?i)\bwall\b`)

// Said is a finding as a list of the set says it: with the page that shows its place, after the wall of the seam that it
// speaks of, which the reader would have to look for otherwise; else at its end.
//
// What a rule would rather have it states; what is to be done about it is for who reads it to say.
func Said(s *folio.Set, f finding.Finding) string {
	return strings.Replace(Walled(s, wording(s, f)), "; better ", "; preferred ", 1)
}

// wording is the same with the word wall before every name.
func wording(s *folio.Set, f finding.Finding) string {
	if f.Wall < 0 {
		return Capital(f.Message) + "."
	}
	if at := seamSaid.FindStringIndex(f.Message); at != nil {
		rest, place := f.Message[at[1]:], Place(s, f.Wall, f.At)
		if wall := ", wall " + s.Room.Walls[f.Wall].Name; strings.HasPrefix(rest, wall) { // it says itself which
			rest = rest[len(wall):]
		}
		if !strings.HasPrefix(rest, ",") && rest != "" {
			rest = "," + rest
		}
		return Capital(f.Message[:at[1]]+place+rest) + "."
	}
	if page := PageAt(s, f.Wall, f.At); page != "" {
		return Capital(f.Message) + " (" + page + ")."
	}
	return Capital(f.Message) + "."
}

// Place says after the numbers of a seam where it is: ", wall West, Z-204".
func Place(s *folio.Set, wall int, x L) string {
	text := ", wall " + s.Room.Walls[wall].Name
	if page := PageAt(s, wall, x); page != "" {
		text += ", " + page
	}
	return text
}

// PageAt is the page that shows a place; while pages are planned, one as long.
func PageAt(s *folio.Set, wall int, x L) string {
	if len(s.List) == 0 && s.Room.Walls[wall].Cover {
		return s.Paper.PageNumber(int(folio.Elevations), 1)
	}
	return s.PageAt(wall, x)
}

// NetOf says what a full sheet covers less of than it is wide: the overlap, and what the grid of the seams takes.
func NetOf(s *folio.Set) string {
	v, f := s.Room.Veneer, s.Style.Measured
	text := f(v.GrossWidth) + " less " + f(v.Overlap) + " overlap"
	if grid := v.GrossWidth - v.Overlap - s.Room.NetWidth(); grid > 0 {
		text += " and " + f(grid) + " to the grid of " + f(s.Room.Rules.Snap)
	}
	return text
}

package elevation

import (
	"fmt"
	"strings"

	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
)

// Skip is a seam at which the sequence of a flitch leaves out sheets, so that the figure steps there.
type Skip struct {
	Seam  *layout.Seam
	words string // "sheet 7", "sheets 9 to 11"
	at    string // "6 | 8"
}

// Skips are those of a run, from left to right. Where two courses hang, neighbours are every other sheet by plan, and none is counted;
// nor is the closing seam, at which nothing joins by number, or a change of flitch.
func Skips(s *folio.Set, r *layout.Run) (list []Skip) {
	for i := range r.Seams {
		if k, ok := SkipAt(s, r, &r.Seams[i]); ok {
			list = append(list, k)
		}
	}
	return list
}

// SkipAt is what the sequence leaves out at a seam, by the rule of Skips.
func SkipAt(s *folio.Set, r *layout.Run, m *layout.Seam) (k Skip, ok bool) {
	if m.Closing || m.FlitchChange || coursesAt(r, m.LeftSheet) > 1 || coursesAt(r, m.RightSheet) > 1 {
		return k, false
	}
	a, b := SheetAt(s, m.LeftSheet), SheetAt(s, m.RightSheet)
	if a == nil || b == nil || a.Number == 0 || b.Number == 0 || a.Flitch != b.Flitch {
		return k, false
	}
	from, to := min(a.Number, b.Number)+1, max(a.Number, b.Number)-1
	if from > to {
		return k, false
	}
	words := "sheet " + Span(from, to)
	if from < to {
		words = "sheets " + Span(from, to)
	}
	return Skip{m, words, NumberOf(a) + " | " + NumberOf(b)}, true
}

// LeftOut says what is left out: "sheet 7 left out".
func (k Skip) LeftOut() string { return k.words + " left out" }

// coursesAt is how many courses hang at a place.
func coursesAt(r *layout.Run, place int) (n int) {
	for i := range r.Sheets {
		if r.Sheets[i].Place == place {
			n++
		}
	}
	return n
}

// Where says at which seam of a wall what is left out: "at 6 | 8 on wall West, where sheet 7 is left out".
func (k Skip) Where(wall string) string {
	verb := "is"
	if strings.HasPrefix(k.words, "sheets") {
		verb = "are"
	}
	return fmt.Sprintf("at %s on wall %s, where %s %s left out", k.at, wall, k.words, verb)
}

// skipNote says at which seams of the view sheets are left out; nothing where none are.
func (e *View) skipNote() string {
	var list []string
	for _, k := range Skips(e.Board.Set, e.F.Run) {
		if k.Seam.Wall == e.F.Wall && k.Seam.X >= e.From && k.Seam.X <= e.To && !e.F.Run.Up {
			list = append(list, k.at)
		}
	}
	if len(list) == 0 {
		return ""
	}
	return "The sequence leaves out sheets, and the figure steps, at " + strings.Join(list, ", ") + "."
}

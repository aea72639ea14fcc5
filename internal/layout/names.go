package layout

import (
	"strconv"
	"strings"
)

// SeamName is what a seam is called: the numbers of the sheets at its left and right as they hang on it, and its wall:
// "11 | 12, West".
func (p *Plan) SeamName(r *Run, s *Seam) string {
	return p.SeamNumbers(r, s) + ", " + p.Room.Walls[s.Wall].Name
}

// SeamNumbers are the numbers of a seam's name: "11 | 12".
func (p *Plan) SeamNumbers(r *Run, s *Seam) string {
	return p.PlaceName(r, s.LeftSheet) + " | " + p.PlaceName(r, s.RightSheet)
}

// PlaceName is what a place is called: by the number of its sheet, of several courses by those that have pieces, from the lowest
// up; "?" where no sheet is left for it.
func (p *Plan) PlaceName(r *Run, place int) string {
	var with, all []string
	for i := range r.Sheets {
		sheet := &r.Sheets[i]
		if sheet.Place != place {
			continue
		}
		number := "?"
		if sheet.Number > 0 {
			number = strconv.Itoa(sheet.Number)
		}
		all = append(all, number)
		if len(sheet.Pieces) > 0 {
			with = append(with, number)
		}
	}
	switch {
	case with != nil:
	case all != nil:
		with = all
	default:
		return "?"
	}
	return strings.Join(with, "+")
}

// Hangs reports whether a number of a flitch hangs: one that is laid and falls wholly into a gap does not.
func (p *Plan) Hangs(flitch string, number int) bool {
	for i := range p.Runs {
		for k := range p.Runs[i].Sheets {
			if x := &p.Runs[i].Sheets[k]; x.Number == number && x.Flitch == flitch && len(x.Pieces) > 0 {
				return true
			}
		}
	}
	return false
}

package submittal

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
)

// wallLine is a line of the table of walls: one wall, or several in a row that are alike.
type wallLine struct{ from, to int }

// wallLines are the lines of the table of walls. Walls share one that follow each other by the numbers at the end of their names and
// are as long as each other, without a mark of the architect's own, and drawn on one page: the facets of a curve.
func (r *roomKey) wallLines() (list []wallLine) {
	for i := range r.Room.Walls {
		if n := len(list); n > 0 && r.alike(list[n-1].to, i) {
			list[n-1].to = i
			continue
		}
		list = append(list, wallLine{i, i})
	}
	return list
}

// numbered is a name that ends in a number.
var numbered = regexp.MustCompile(`^(.*\D|)(\d+)$`)

// alike reports whether a wall only counts on from the one before it.
func (r *roomKey) alike(before, wall int) bool {
	a, b := &r.Room.Walls[before], &r.Room.Walls[wall]
	x, y := numbered.FindStringSubmatch(a.Name), numbered.FindStringSubmatch(b.Name)
	if x == nil || y == nil || x[1] != y[1] || a.Length != b.Length || a.Cover != b.Cover || a.Ref != "" || b.Ref != "" {
		return false
	}
	n, err := strconv.Atoi(x[2])
	m, wrong := strconv.Atoi(y[2])
	return err == nil && wrong == nil && m == n+1 && r.PageOf(folio.WallKey(before)) == r.PageOf(folio.WallKey(wall))
}

// area is what is covered of a line's walls.
func (l wallLine) area(r *roomKey) (sum length.Area) {
	for i := l.from; i <= l.to; i++ {
		sum += areaOn(r.Board.Set, i)
	}
	return sum
}

// cells are what the line says: mark, wall, length, what is covered of it, sheets, page.
func (l wallLine) cells(r *roomKey, covered string) []string {
	w := &r.Room.Walls[l.from]
	mark, name, long := r.Marks[l.from], w.Name, r.Style.Format(w.Length)
	if l.to > l.from {
		last := numbered.FindStringSubmatch(r.Room.Walls[l.to].Name)
		name += " to " + last[2]
		long = fmt.Sprintf("%d x %s", l.to-l.from+1, long)
		if mark != "" {
			mark += " to " + r.Marks[l.to]
		}
	}
	covers, sheets := "bare", ""
	var list []*layout.Sheet
	for i := l.from; i <= l.to; i++ {
		if f := r.Face(i); f != nil {
			for _, p := range f.Parts {
				list = append(list, p.Sheets...)
			}
		}
	}
	if w.Cover {
		covers, sheets = covered, strings.Join(r.short(list), ", ")
	}
	return []string{mark, name, long, covers, sheets, r.pages(l)}
}

// pages are those of the views of a line's walls.
func (r *roomKey) pages(l wallLine) string {
	var list []string
	for i := l.from; i <= l.to; i++ {
		for _, v := range r.shown(i) {
			if !slices.Contains(list, v.page) {
				list = append(list, v.page)
			}
		}
	}
	if len(list) > 2 {
		return list[0] + " to " + list[len(list)-1]
	}
	return strings.Join(list, ", ")
}

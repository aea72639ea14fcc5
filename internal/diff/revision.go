package diff

import (
	"cmp"
	"fmt"
	"io"
	"slices"
	"strconv"

	"flitchlay/internal/layout"
)

// Revision is a block for the room file that marks a change where it is.
type Revision struct {
	Mark, Date, Wall, Note string
	At                     L // from the wall's left end, where a wall is named
}

// Revisions are the blocks of one issue: the whole note on the wall that changed most, and one more for each other wall, under the mark
// with a number, so that a triangle and a cloud stand on every elevation that changed.
func (d *Changes) Revisions(mark, date string) []Revision {
	whole := Revision{Mark: mark, Date: date, Note: d.Note()}
	type wall struct {
		name     string
		at       []L
		numbered []int
	}
	var walls []*wall
	for _, s := range d.Seams {
		seam := s.New
		if seam == nil {
			seam = s.Old
		}
		if !slices.ContainsFunc(d.New.Walls, func(w Wall) bool { return w.Name == seam.Wall }) {
			continue // the wall is gone, and no page shows it
		}
		i := slices.IndexFunc(walls, func(w *wall) bool { return w.name == seam.Wall })
		if i < 0 {
			i, walls = len(walls), append(walls, &wall{name: seam.Wall})
		}
		walls[i].at = append(walls[i].at, seam.X)
		walls[i].numbered = append(walls[i].numbered, seam.Number)
	}
	slices.SortStableFunc(walls, func(a, b *wall) int { return cmp.Compare(len(b.at), len(a.at)) })
	list := []Revision{whole}
	for i, w := range walls {
		slices.Sort(w.numbered)
		at := max(0, d.Style.Round((slices.Min(w.at) + slices.Max(w.at)).HalfDown()))
		if i == 0 {
			list[0].Wall, list[0].At = w.name, at
			continue
		}
		list = append(list, Revision{mark + strconv.Itoa(i+1), date, w.name, "Seams moved, new or gone: " + layout.Numbers(w.numbered), at})
	}
	return list
}

// WriteRevisions prints blocks as they stand in a room file.
func (d *Changes) WriteRevisions(w io.Writer, list []Revision) error {
	for i, r := range list {
		if i > 0 {
			fmt.Fprintln(w)
		}
		fmt.Fprintf(w, "[[project.revision]]\nmark = %s\n", strconv.Quote(r.Mark))
		if r.Date != "" {
			fmt.Fprintf(w, "date = %s\n", r.Date)
		}
		if r.Wall != "" {
			fmt.Fprintf(w, "wall = %s\nat   = %s\n", strconv.Quote(r.Wall), strconv.Quote(d.Style.Words(r.At)))
		}
		if _, err := fmt.Fprintf(w, "note = %s\n", strconv.Quote(r.Note)); err != nil {
			return err
		}
	}
	return nil
}

package elevation

import (
	"fmt"
	"slices"

	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
)

// leastEqual is from how many equal neighbours on a chain gives one figure for all: two are read as fast one by one.
const leastEqual = 3

// equal joins neighbours of a chain that are printed alike: one figure says how many there are, how wide each is and what they
// come to, "9 x 1'-11 1/2" = 17'-7 1/2"", with a stroke where two of them meet. list are the places of the chain along the wall.
//
// Printed parts add up to the printed whole, so that nine times what is printed is what is printed.
func (e *View) equal(t draft.Tier, list []L) draft.Tier {
	type stretch struct{ from, to int }
	var joined []stretch
	for i := 0; i < len(t.Figures); {
		j := i + 1
		for j < len(t.Figures) && t.Figures[j] == t.Figures[i] {
			j++
		}
		if j-i < leastEqual {
			j = i + 1
		}
		joined = append(joined, stretch{i, j})
		i = j
	}
	out := t
	out.Marks, out.Figures = []float64{t.Marks[0]}, nil
	out.Inner = slices.Clone(t.Inner)
	for _, s := range joined {
		text := t.Figures[s.from]
		if n := s.to - s.from; n > 1 {
			whole := e.Style.Chain(ascending([]L{list[0], list[s.from], list[s.to]}))
			text = fmt.Sprintf("%d x %s = %s", n, text, whole[len(whole)-1])
			out.Inner = append(out.Inner, t.Marks[s.from+1:s.to]...)
		}
		out.Figures = append(out.Figures, text)
		out.Marks = append(out.Marks, t.Marks[s.to])
	}
	out.Data = func(i int) []scene.Datum {
		s := joined[i]
		d := []scene.Datum{folio.Datum("tier", "seams"), folio.Datum("from", folio.Mm(list[s.from])), folio.Datum("to", folio.Mm(list[s.to]))}
		if n := s.to - s.from; n > 1 {
			d = append(d, folio.Datum("equal", fmt.Sprint(n)))
		}
		return d
	}
	return out
}

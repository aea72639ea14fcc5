package draft

import (
	"math"
	"slices"
	"strings"

	"flitchlay/internal/scene"
)

// natural makes each column as wide as what stands in it and gives the least that it can be with its text wrapped.
func (t *Table) natural(k Look) (least []float64) {
	const leastWrap = 16 // of a column that wraps, on the office page
	least = make([]float64, len(t.Columns))
	for i := range t.Columns {
		c := &t.Columns[i]
		w := 0.0
		for _, word := range strings.Fields(c.Head) {
			w = math.Max(w, scene.Width(word, t.head(k), true))
		}
		word := w
		for _, r := range t.Rows {
			if i < len(r.Cells) {
				w = math.Max(w, scene.Width(r.Cells[i], t.size(k, *c), c.Bold || r.Strong))
			}
		}
		c.Width = w + 2*k.Of(cellPad) + k.Of(0.6)
		least[i] = c.Width
		if c.Wrap {
			least[i] = math.Min(c.Width, math.Max(k.Of(leastWrap), word+2*k.Of(cellPad)+k.Of(0.6)))
		}
	}
	return least
}

// Least is the least width at which Fit neither squeezes the table nor leaves out a column that says something.
func (t *Table) Least(k Look) float64 {
	sum := 0.0
	for i, w := range t.natural(k) {
		if t.Columns[i].Spare < 2 {
			sum += w
		}
	}
	return sum
}

// Fit makes each column as wide as what stands in it, no narrower than the longest word of its head, and spreads the
// rest of width over those that wrap, or over all where none does or there are many. What is too wide loses its spare
// columns, then is squeezed. With a width of 0 every column is as wide as it needs.
func (t *Table) Fit(k Look, width float64) {
	sum, least, wraps := 0.0, 0.0, 0
	for i, w := range t.natural(k) {
		sum += t.Columns[i].Width
		least += w
		if t.Columns[i].Wrap {
			wraps++
		}
	}
	if width <= 0 {
		return
	}
	if sum > width+1e-6 && t.dropSpare(2) || least > width+1e-6 && t.dropSpare(1) {
		t.Fit(k, width)
		return
	}
	if least > width+1e-6 {
		t.Squeeze(k, width)
		return
	}
	switch rest := width - sum; {
	case rest < 0:
		t.narrow(-rest, func(c Column) bool { return c.Wrap })
	case wraps > 0 && len(t.Columns) < manyColumns:
		for i := range t.Columns {
			if c := &t.Columns[i]; c.Wrap {
				c.Width += rest / float64(wraps)
			}
		}
	default:
		for i := range t.Columns {
			t.Columns[i].Width += rest / float64(len(t.Columns))
		}
	}
}

// manyColumns is from how many columns on what is left of a width goes to all of them: a wide gap beside one would lead
// the eye into the wrong row.
const manyColumns = 5

// dropSpare leaves out the column that can best be spared, if one can be spared so well.
func (t *Table) dropSpare(spare int) bool {
	most := -1
	for i, c := range t.Columns {
		if c.Spare >= spare && (most < 0 || c.Spare > t.Columns[most].Spare) {
			most = i
		}
	}
	if most < 0 {
		return false
	}
	t.Columns = slices.Delete(slices.Clone(t.Columns), most, most+1)
	for i := range t.Rows {
		if r := &t.Rows[i]; most < len(r.Cells) {
			r.Cells = slices.Delete(slices.Clone(r.Cells), most, most+1)
		}
	}
	return true
}

// Squeeze brings a table whose columns have their widths to a width: what is too much comes off the widest, what is left
// goes to all.
func (t *Table) Squeeze(k Look, width float64) {
	t.narrow(t.Width()-width, func(Column) bool { return true })
	if rest := (width - t.Width()) / float64(len(t.Columns)); rest > 0 {
		for i := range t.Columns {
			t.Columns[i].Width += rest
		}
	}
}

// slice is what comes off a column at a time, in mm: little enough that two columns as wide as one another stay so.
const slice = 1

// narrow takes a width off the columns that may lose some, slice by slice off the one that is then the widest.
func (t *Table) narrow(over float64, may func(Column) bool) {
	for over > 1e-6 {
		widest := -1
		for i, c := range t.Columns {
			if may(c) && (widest < 0 || c.Width > t.Columns[widest].Width) {
				widest = i
			}
		}
		d := math.Min(over, slice)
		t.Columns[widest].Width -= d
		over -= d
	}
}

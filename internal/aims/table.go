package aims

import (
	"fmt"
	"strconv"
	"strings"

	"flitchlay/internal/draft"
	"flitchlay/internal/layout"
)

// row is one line of a comparison: what it is about, then what each aim makes of it.
type row struct {
	Name  string
	Cells []string
}

// Rows are the figures of the three aims, the aims' names first.
func Rows(c *layout.Comparison) []row {
	head := row{}
	var all []*layout.AimPlan
	for i := range c.Aims {
		a := &c.Aims[i]
		head.Cells = append(head.Cells, strings.ToUpper(layout.AimWord(a.Plan.Aim)))
		all = append(all, a)
	}
	return append([]row{head}, figures(all)...)
}

// figures are the figures of some layouts.
func figures(all []*layout.AimPlan) []row {
	style := all[0].Plan.Style
	var rows []row
	row := func(name string, of func(*layout.AimPlan) string) {
		r := row{Name: name}
		for _, a := range all {
			r.Cells = append(r.Cells, of(a))
		}
		rows = append(rows, r)
	}
	row("sheets", func(a *layout.AimPlan) string { return strconv.Itoa(a.Plan.Totals.Sheets) })
	row("short of the flitch", func(a *layout.AimPlan) string { return strconv.Itoa(a.Plan.Totals.Short) })
	row("must findings", func(a *layout.AimPlan) string { return strconv.Itoa(a.Musts) })
	row("narrow sheets", func(a *layout.AimPlan) string { return strconv.Itoa(len(a.Narrow)) })
	row("grain lost", func(a *layout.AimPlan) string { return style.Words(a.Lost) })
	row("closing seam seen", func(a *layout.AimPlan) string {
		var out []string
		for _, s := range a.Close {
			out = append(out, style.Words(s.Seen))
		}
		return dashed(out)
	})
	row("end widths", func(a *layout.AimPlan) string {
		var out []string
		for _, e := range a.Ends {
			out = append(out, style.Words(e.First)+" / "+style.Words(e.Last))
		}
		return dashed(out)
	})
	row("waste", func(a *layout.AimPlan) string { return style.FormatArea(a.Waste) })
	row("of", func(a *layout.AimPlan) string { return style.FormatArea(a.Plan.Totals.GrossArea) })
	return rows
}

func dashed(list []string) string {
	if len(list) == 0 {
		return "-"
	}
	return strings.Join(list, ", ")
}

// few is how many narrow sheets are told one by one.
const few = 5

// GrainLost says of each narrow sheet of an aim how much grain is lost and where that shows; of many, wall by wall. name
// is what a wall is called.
func GrainLost(a *layout.AimPlan, name func(wall int) string) []string {
	style := a.Plan.Style
	if len(a.Narrow) > few {
		return lostByWall(a, name)
	}
	var out []string
	for _, j := range a.Narrow {
		text := fmt.Sprintf("sheet %s loses %s of grain", layout.SheetWords(j.Sheet), style.Words(j.Sheet.Lost))
		if j.Seam != nil {
			text += fmt.Sprintf(" on wall %s, seen for %s", name(j.Seam.Wall), style.Words(j.Seam.Seen))
		}
		if j.Over != "" {
			text += " over or under " + j.Over
		}
		out = append(out, text)
	}
	return out
}

// lostByWall sums the narrow sheets of each wall up, in room order.
func lostByWall(a *layout.AimPlan, name func(wall int) string) []string {
	style := a.Plan.Style
	var out []string
	for wall := range a.Plan.Room.Walls {
		var sheets []string
		var least, most, seen layout.L
		for _, j := range a.Narrow {
			if j.Seam == nil || j.Seam.Wall != wall {
				continue
			}
			if len(sheets) == 0 || j.Sheet.Lost < least {
				least = j.Sheet.Lost
			}
			most = max(most, j.Sheet.Lost)
			seen += j.Seam.Seen
			sheets = append(sheets, layout.SheetWords(j.Sheet))
		}
		if len(sheets) == 0 {
			continue
		}
		each := style.Words(most)
		if least != most {
			least, most := style.Apart(least, most)
			each = least + " to " + most
		}
		verb := "sheets %s lose %s of grain each"
		if len(sheets) == 1 {
			verb = "sheet %s loses %s of grain"
		}
		out = append(out, fmt.Sprintf("wall %s: "+verb+", seen for %s in all", name(wall), counted(sheets), each, style.Words(seen)))
	}
	return out
}

// counted joins names: three and more whole numbers that count up become "4 to 9".
func counted(names []string) string {
	var out []string
	for i := 0; i < len(names); {
		k := i + 1
		for k < len(names) && follows(names[k-1], names[k]) {
			k++
		}
		if k-i < 3 {
			k = i + 1
			out = append(out, names[i])
		} else {
			out = append(out, names[i]+" to "+names[k-1])
		}
		i = k
	}
	return strings.Join(out, ", ")
}

func follows(a, b string) bool {
	m, err := strconv.Atoi(a)
	n, other := strconv.Atoi(b)
	return err == nil && other == nil && n == m+1
}

// tableOf sets layouts side by side.
func tableOf(title string, rows []row) *draft.Table {
	t := &draft.Table{Title: title}
	t.Columns = append(t.Columns, draft.Column{Head: "", Bold: true})
	for _, head := range rows[0].Cells {
		t.Columns = append(t.Columns, draft.Column{Head: head, Wrap: true})
	}
	for _, r := range rows[1:] {
		t.Rows = append(t.Rows, draft.Row{Cells: append([]string{r.Name}, r.Cells...)})
	}
	return t
}

// aimsTable sets the aims side by side, with what is lost in words at its foot.
func (c *comparing) aimsTable() *draft.Table {
	t := tableOf("THE THREE AIMS", Rows(c.all))
	where := draft.Row{Cells: []string{"where it shows"}}
	same := draft.Row{Cells: []string{"layout"}}
	repeats := false
	for i := range c.all.Aims {
		a := &c.all.Aims[i]
		words := strings.Join(GrainLost(a, func(wall int) string { return c.Marks[wall] }), "; ")
		if words == "" {
			words = "no narrow sheet"
		}
		own := "its own"
		if a.Same != "" {
			words, own, repeats = "as "+a.Same, "the same as "+a.Same, true
		}
		where.Cells = append(where.Cells, words)
		same.Cells = append(same.Cells, own)
	}
	t.Rows = append(t.Rows, where)
	if repeats {
		t.Rows = append(t.Rows, same)
	}
	return t
}

package crewday

import (
	"slices"

	"flitchlay/internal/layout"
)

// dry names the edges that stay unpasted while the work rests after each of some tasks: of every course, at the side to which the work
// goes on, and where the next sheet of the same place laps the last.
func (h *hanging) dry(tasks ...int) string {
	last := tasks[len(tasks)-1]
	var edges []int
	for _, task := range tasks {
		for _, x := range h.plan.OpenEdges(task) {
			if !slices.Contains(edges, x) {
				edges = append(edges, x)
			}
		}
	}
	if len(edges) == 0 {
		edges = tasks
	}
	return h.unpasted(edges, last)
}

// dryKey is the key of what is said of an edge that stays unpasted: the right one, or the upper one.
func (h *hanging) dryKey(task int) string {
	if slices.ContainsFunc(h.Plan.Runs, func(r layout.Run) bool { return r.Name == h.plan.Tasks[task].Run && r.Up }) {
		return "day.dry_up"
	}
	return "day.dry"
}

// unpasted names edges that stay unpasted while the work rests after a sheet, and its end that the next of its place laps.
func (h *hanging) unpasted(edges []int, last int) string {
	t, text := &h.plan.Tasks[last], h.Words.Say(h.dryKey(last), h.sheets(edges))
	if !t.Whole && last+1 < len(h.plan.Tasks) {
		text += h.Words.Say("day.dry_end", sheetWord(t), sheetWord(&h.plan.Tasks[last+1]))
	}
	return text
}

// dryIn names the edges of the sheets of a row that stay unpasted, whether the work rests right after them or when more hang: who hangs a
// sheet reads it in its own row. "" where none does.
func (h *hanging) dryIn(tasks []int) string {
	dry := map[int]bool{}
	for i := range h.plan.Tasks {
		if !h.plan.Tasks[i].DryEdge {
			continue
		}
		edges := h.plan.OpenEdges(i)
		if len(edges) == 0 {
			edges = []int{i}
		}
		for _, j := range edges {
			dry[j] = true
		}
	}
	edges := slices.DeleteFunc(slices.Clone(tasks), func(i int) bool { return !dry[i] })
	last := tasks[len(tasks)-1]
	switch t := &h.plan.Tasks[last]; {
	case t.DryEdge && !t.Whole:
		return "; " + h.unpasted(edges, last)
	case len(edges) > 0:
		return "; " + h.Words.Say(h.dryKey(last), h.sheets(edges))
	}
	return ""
}

// untilClosed names the left edge that the last sheet of a run that closes on itself laps: it stays unpasted for days. "" where the
// task does not begin one.
func (h *hanging) untilClosed(task int) string {
	t := &h.plan.Tasks[task]
	if !t.First {
		return ""
	}
	for i := range h.Plan.Runs {
		r := &h.Plan.Runs[i]
		if r.Name != t.Run || !slices.ContainsFunc(r.Seams, func(x layout.Seam) bool { return x.Closing && x.RightSheet == t.Place }) {
			continue
		}
		var first, last []int
		for k := range h.plan.Tasks {
			if x := &h.plan.Tasks[k]; x.Run == t.Run {
				if x.Place == t.Place {
					first = append(first, k)
				}
				if len(last) > 0 && h.plan.Tasks[last[0]].Place != x.Place {
					last = nil
				}
				last = append(last, k)
			}
		}
		return "; " + h.Words.Say("day.dry_first", h.sheets(first), h.sheets(last))
	}
	return ""
}

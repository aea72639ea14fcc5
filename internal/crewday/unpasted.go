package crewday

import (
	"slices"

	"flitchlay/internal/layout"
)

// dry names the edges that stay unpasted while the work rests after each of some tasks: of every course, at the side to which the work
// goes on, and where the next sheet of the same place laps the last.
func (h *hanging) dry(tasks ...int) string {
	last := tasks[len(tasks)-1]
	t := &h.plan.Tasks[last]
	key := "day.dry"
	if slices.ContainsFunc(h.Plan.Runs, func(r layout.Run) bool { return r.Name == t.Run && r.Up }) {
		key = "day.dry_up"
	}
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
	text := h.Words.Say(key, h.sheets(edges))
	if !t.Whole && last+1 < len(h.plan.Tasks) {
		text += h.Words.Say("day.dry_end", sheetWord(t), sheetWord(&h.plan.Tasks[last+1]))
	}
	return text
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

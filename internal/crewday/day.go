package crewday

import (
	"slices"
	"strconv"
	"strings"

	"flitchlay/internal/days"
	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/paper"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
	"flitchlay/internal/submittal"
)

// hanging is the plan of the hanging days on its way onto pages of the install set.
type hanging struct {
	*folio.Set
	set    *Set
	look   draft.Look
	plan   *days.Schedule
	box    scene.Box   // that the pages leave to it
	page   int         // that is drawn
	limits [][2]string // what is read in the log, and its limit
	under  string      // what stands under the log
}

// DayPages draws the pages of the hanging days: what each wall takes, then a timetable for every day with its hold
// points, its stop places and a log to fill in. There are none where nothing is left to hang.
func (c *Set) DayPages(n int) []*scene.Page {
	var out []*scene.Page
	h := &hanging{Set: &c.Set, set: c, look: c.readable(), plan: c.Days, limits: c.logLimits(), under: c.Words.Say("limits.outside") + c.wallWords()}
	fresh := func(title string) *Board {
		lines := [2]string{c.Place(), h.Words.Say("day.crew", h.plan.Day.Crew, clock(h.plan.Day.Start), clock(h.plan.Day.End))}
		b := c.Open(n+len(out), folio.Sheet{Title: title, Lines: lines})
		b.Page.Title = title
		h.box, h.page = b.Area, n+len(out)
		return b
	}
	fresh("")
	for _, l := range h.pages() {
		b := fresh(l.Title)
		l.Draw(&folio.Board{Set: &c.Set, Leaf: l, Page: b.Page, Space: b.Space, Field: h.box})
		out = append(out, b.Page)
	}
	return out
}

// readable is the look of pages without drawings: no text under what is read from a ladder.
func (c *Set) readable() draft.Look {
	k := c.Look
	k.Small, k.Medium, k.Large = folio.TapedText*c.Unit, folio.TapedLarge*c.Unit, folio.TapedName*c.Unit
	k.Unit, k.On = k.Small/paper.Least, [2]string{" " + c.Words.Say("day.continued"), ", " + c.Words.Say("day.continued_short")}
	return k
}

// pages are all pages of the days.
func (h *hanging) pages() []*folio.Leaf {
	if len(h.plan.Tasks) == 0 {
		return nil
	}
	list := h.leaves(h.Words.Both("day.days"), h.hoursBlocks(), h.hoursSide)
	for day := 1; day <= h.plan.Days; day++ {
		title := h.Words.Both("day.day", day)
		if h.plan.Days > 1 {
			title = h.Words.Both("day.day_of", day, h.plan.Days)
		}
		list = append(list, h.dayLeaves(title, day)...)
	}
	return list
}

// clock prints minutes as hours and minutes.
func clock(minutes int) string { return room.Clock(minutes) }

// hoursBlocks are what each wall takes and what the figures are made of.
func (h *hanging) hoursBlocks() []folio.Block {
	p := h.plan
	say := h.Words
	t := &draft.Table{Title: say.Both("day.hours"), Columns: []draft.Column{{Head: say.Say("day.wall"), Wrap: true, Bold: true}, {Head: say.Say("day.sheets"), Align: scene.End},
		{Head: say.Say("day.hang"), Align: scene.End}, {Head: say.Say("day.cut"), Align: scene.End}, {Head: say.Say("day.total"), Align: scene.End, Bold: true},
		{Head: say.Say("day.done"), Align: scene.End}}, Row: h.look.Of(6)}
	row := func(strong bool, cells ...string) { t.Rows = append(t.Rows, draft.Row{Cells: cells, Strong: strong}) }
	for _, w := range p.Walls {
		row(false, h.Room.Walls[w.Wall].Name, strconv.Itoa(w.Sheets), clock(w.Hang), clock(w.Cut), clock(w.Minutes()), say.Say("day.when", w.Day, clock(w.Done)))
	}
	row(false, say.Say("day.lay_out"), strconv.Itoa(len(p.Tasks)), "", "", clock(p.LayOut), "")
	row(false, say.Say("day.rest"), "", "", "", clock(p.Wait), "")
	row(false, say.Say("day.looks"), "", "", "", clock(p.Look), "")
	end := p.Steps[len(p.Steps)-1]
	row(true, say.Say("day.all"), strconv.Itoa(len(p.Tasks)), clock(p.Hang), clock(p.Cut), clock(p.Minutes()), say.Say("day.over", end.Day, clock(end.From)))
	return []folio.Block{{Table: t}, h.pasteBlock(), {Title: say.Both("day.how"), Items: h.rules()}}
}

// rules are how a hanging day goes.
//
// Source: three sheets, then stop and look: general notes for wall coverings, an association's recommended practice; the
// rest common practice, no source.
func (h *hanging) rules() []draft.Item {
	texts := []string{h.Words.Both("rule.zero"), h.Words.Both("rule.groups", h.plan.Day.Group, h.plan.Day.Open)}
	if slices.ContainsFunc(h.plan.Tasks, func(t days.Task) bool { return t.Closes }) {
		texts = append(texts, h.Words.Both("rule.closes"))
	}
	texts = append(texts, h.Words.Both("rule.look", h.far()), h.Words.Both(h.banded("rule.wraps", "rule.wraps_level")), h.Words.Both(h.banded("rule.night", "rule.night_level")))
	var list []draft.Item
	for i, t := range texts {
		list = append(list, draft.Item{Mark: submittal.Ordinal(i + 1), Text: t})
	}
	return list
}

// dayLeaves are the pages of a day: its timetable and the other places where it may stop. These stand at the side where they would
// take a page of their own.
func (h *hanging) dayLeaves(title string, day int) []*folio.Leaf {
	table := h.timetable(day)
	list := h.dayStops(day)
	stops := &draft.Table{Title: h.Words.Say("day.stops"), Columns: []draft.Column{{Head: h.Words.Say("day.at"), Align: scene.End}, {Head: h.Words.Say("day.after"), Bold: true},
		{Head: h.Words.Say("day.where"), Wrap: true}, {Head: h.Words.Say("day.to_cut"), Align: scene.End}}, Row: h.look.Of(5.6)}
	var lines []string
	for _, x := range list {
		stops.Rows = append(stops.Rows, draft.Row{Cells: x[:]})
		lines = append(lines, h.Words.Say("day.stop_line", x[0], x[1], x[2], x[3]))
	}
	sides, free := h.daySides(day, nil)
	alone := h.leaves(title, []folio.Block{{Table: table}}, sides...)
	if len(list) == 0 {
		return alone
	}
	both := h.leaves(title, []folio.Block{{Table: table}, {Table: stops}}, sides...)
	_, box := h.halves()
	if len(both) == len(alone) || h.stopsHigh(lines, box.W()) > free {
		return both
	}
	sides, _ = h.daySides(day, lines)
	return h.leaves(title, []folio.Block{{Table: table}}, sides...)
}

// timetable is what happens on a day, by the clock.
func (h *hanging) timetable(day int) *draft.Table {
	k := h.look
	say := h.Words
	t := &draft.Table{Title: say.Both("day.timetable"), Columns: []draft.Column{{Head: say.Say("day.from"), Align: scene.End}, {Head: say.Say("day.hang"), Align: scene.End},
		{Head: say.Say("day.to"), Align: scene.End}, {Head: say.Say("day.sheets"), Bold: true, Size: k.Medium}, {Head: say.Say("day.cut"), Align: scene.End},
		{Head: say.Say("day.what"), Wrap: true}}, Row: k.Of(6.8)}
	for _, x := range h.plan.Steps {
		if x.Day == day {
			t.Rows = append(t.Rows, h.rows(x)...)
		}
	}
	return t
}

// dayStops are the places where a day may stop besides its own evening: when, after which sheet, where, and what stays uncut.
func (h *hanging) dayStops(day int) (list [][4]string) {
	evening := -1
	for _, x := range h.plan.Steps {
		if x.Day == day && x.Kind == days.EveningStep && x.Stop != nil {
			evening = x.Stop.Task
		}
	}
	for i := range h.plan.Stops {
		x := &h.plan.Stops[i]
		if task := &h.plan.Tasks[x.Task]; task.Day == day && x.Task != evening {
			left := h.Words.Say("day.nothing")
			if x.Seen > 0 {
				left = h.Style.Format(x.Seen)
			}
			list = append(list, [4]string{clock(task.Up), sheetWord(task), h.stopAt(x), left})
		}
	}
	return list
}

// rowSheets is how many sheet numbers stand in one row of the timetable.
const rowSheets = 4

// rows are the rows of a step: a large group takes several.
func (h *hanging) rows(x days.Step) []draft.Row {
	list := []draft.Row{h.row(x)}
	for from := rowSheets; from < len(x.Tasks); from += rowSheets {
		list = append(list, draft.Row{Cells: []string{"", "", "", h.sheets(x.Tasks[from:min(from+rowSheets, len(x.Tasks))]), "", ""}, On: true})
	}
	return list
}

// row is the first row of a step.
func (h *hanging) row(x days.Step) draft.Row {
	cells := []string{clock(x.From), "", clock(x.To), "", "", ""}
	r := draft.Row{}
	switch x.Kind {
	case days.LayOutStep:
		cells[5] = h.Words.Say("day.zero")
		r.Strong, r.Rule = true, true
	case days.BreakStep:
		cells[5] = h.Words.Say("day.break")
	case days.LookStep:
		t := &h.plan.Tasks[x.After]
		cells[3], cells[5] = h.Words.Say("wall.hold", t.HoldNo), h.Words.Say("day.hold", h.set.holdSheets(t), h.set.lookWords(x.Hold, "look"))
		r.Strong, r.Rule = true, true
	case days.EveningStep:
		cells[2], cells[5] = "", h.Words.Say("day.stop")
		switch {
		case x.Done:
			cells[5] = h.Words.Say("day.all_hangs")
		case x.Stop != nil:
			cells[5] = h.Words.Say("day.stop_at", h.stopAt(x.Stop)) + h.leftOver(x.Stop)
		}
		r.Strong = true
	case days.GroupStep:
		cells[1], cells[3] = clock(x.Hang), h.sheets(x.Tasks[:min(rowSheets, len(x.Tasks))])
		if x.Cut > 0 {
			cells[4] = strconv.Itoa(x.Cut)
		}
		cells[5] = h.where(x.Tasks)
	}
	r.Cells = cells
	return r
}

// leftOver says what is kept for the morning.
func (h *hanging) leftOver(x *days.Stop) string {
	t := &h.plan.Tasks[x.Task]
	if !t.DryEdge {
		return ""
	}
	return "; " + h.dry(x.Task)
}

// sheetWord is a sheet's number; its place in parentheses where no sheet is left for it.
func sheetWord(t *days.Task) string {
	if t.Number == 0 {
		return "(" + strconv.Itoa(t.Place) + ")"
	}
	return strconv.Itoa(t.Number)
}

// sheets lists a group's sheets in hanging order.
func (h *hanging) sheets(tasks []int) string {
	var words []string
	for _, i := range tasks {
		words = append(words, sheetWord(&h.plan.Tasks[i]))
	}
	return strings.Join(words, ", ")
}

// where names the walls of a group and what to mind on it.
func (h *hanging) where(tasks []int) string {
	var parts []string
	wall := -1
	for _, i := range tasks {
		if t := &h.plan.Tasks[i]; t.Wall != wall {
			wall = t.Wall
			parts = append(parts, h.Room.Walls[wall].Name)
		}
	}
	text := strings.Join(parts, ", ")
	if h.plan.Tasks[tasks[0]].Closes {
		text += "; " + h.Words.Say("day.gap")
	}
	for _, i := range tasks {
		t := &h.plan.Tasks[i]
		text += h.untilClosed(i)
		if t.Flitch != "" && i > 0 && t.Flitch != h.plan.Tasks[i-1].Flitch {
			text += "; " + h.Words.Say("day.flitch", t.Flitch, sheetWord(t))
		}
		if t.Hang > h.plan.Day.Open {
			text += "; " + h.Words.Say("day.longer", sheetWord(t))
		}
	}
	return text + h.dryIn(tasks)
}

// stopAt says what is at the right of the sheet after which a day may stop.
func (h *hanging) stopAt(x *days.Stop) string {
	switch {
	case x.Kind == days.AtEnd && x.End != nil:
		return h.Words.Say("stop.end", h.EndWords(*x.End))
	case x.Kind == days.AtEnd:
		return h.Words.Say("stop.closes")
	case x.Kind == days.AtOpening:
		return h.Words.Say("stop.opening", h.KindWord(x.Opening.Kind)+" "+x.Opening.Name)
	case x.Kind == days.AtCorner:
		return h.Words.Say("stop.corner", x.Corner)
	}
	return h.Words.Say("stop.field", h.Room.Walls[x.Wall].Name)
}

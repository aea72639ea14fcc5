package crew

import (
	"fmt"
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

// Hanging is the plan of the hanging days on its way onto pages of the install set.
type Hanging struct {
	*folio.Set
	Look draft.Look
	Plan *days.Schedule
	Box  scene.Box // that the pages leave to it
}

// DayPages draws the pages of the hanging days: what each wall takes, then a timetable for every day with its hold
// points, its stop places and a log to fill in. There are none where nothing is left to hang.
func (c *Set) DayPages(n int) []*scene.Page {
	var out []*scene.Page
	h := &Hanging{Set: &c.Set, Look: c.Readable(), Plan: days.Of(c.Plan)}
	fresh := func(title string) *Board {
		lines := [2]string{c.Place(), fmt.Sprintf("crew of %d, %s to %s", h.Plan.Day.Crew, Clock(h.Plan.Day.Start), Clock(h.Plan.Day.End))}
		b := c.Open(n+len(out), folio.Sheet{Title: title, Lines: lines})
		b.Page.Title = title
		h.Box = b.Area
		return b
	}
	fresh("")
	for _, l := range h.Pages() {
		b := fresh(l.Title)
		l.Draw(&folio.Board{Set: &c.Set, Leaf: l, Page: b.Page, Space: b.Space, Field: h.Box})
		out = append(out, b.Page)
	}
	return out
}

// Readable is the look of pages without drawings: no text under what is read from a ladder.
func (c *Set) Readable() draft.Look {
	k := c.Look
	k.Small, k.Medium, k.Large = CrewText*c.U, CrewLarge*c.U, CrewName*c.U
	k.Unit = k.Small / paper.Least
	return k
}

// Pages are all pages of the days.
func (h *Hanging) Pages() []*folio.Leaf {
	if len(h.Plan.Tasks) == 0 {
		return nil
	}
	list := h.Leaves("Hanging days", h.HoursBlocks(), h.HoursSide)
	for day := 1; day <= h.Plan.Days; day++ {
		title := "Hanging day " + strconv.Itoa(day)
		if h.Plan.Days > 1 {
			title += " of " + strconv.Itoa(h.Plan.Days)
		}
		list = append(list, h.Leaves(title, h.DayBlocks(day), func(b *folio.Board, box scene.Box) { h.DaySide(b, box, day) })...)
	}
	return list
}

// Leaves flow blocks into the left part of as many pages as they take; the right part of the first is drawn by side, that of
// the others is for notes.
func (h *Hanging) Leaves(title string, blocks []folio.Block, side func(*folio.Board, scene.Box)) []*folio.Leaf {
	k := h.Look
	pad, right := k.Of(3), min(k.Of(64), h.Box.W()*0.37)
	left := scene.Box{X0: h.Box.X0 + pad, Y0: h.Box.Y0 + pad, X1: h.Box.X1 - right - 2*pad, Y1: h.Box.Y1 - pad}
	c := folio.Columns{Box: left, Count: 1, Gap: 0}
	var list []*folio.Leaf
	for i, parts := range folio.Flow(k, blocks, c) {
		l := &folio.Leaf{Title: title, Wall: -1, Scale: "none"}
		if i > 0 {
			l.Title += ", on"
		}
		l.Draw = func(b *folio.Board) {
			set := *b.Set
			set.Look = k
			mine := *b
			mine.Set = &set
			mine.Put(blocks, parts, c)
			x := h.Box.X1 - right - pad
			b.Page.VLine(x, h.Box.Y0, h.Box.Y1, scene.Pen(scene.Frame, k.Seam))
			beside := scene.Box{X0: x + pad, Y0: left.Y0, X1: h.Box.X1 - pad, Y1: left.Y1}
			if i == 0 {
				side(&mine, beside)
			} else {
				h.Notes(&mine, beside, beside.Y0)
			}
		}
		list = append(list, l)
	}
	return list
}

// Clock prints minutes as hours and minutes.
func Clock(minutes int) string { return room.Clock(minutes) }

// HoursBlocks are what each wall takes and what the figures are made of.
func (h *Hanging) HoursBlocks() []folio.Block {
	p := h.Plan
	t := &draft.Table{Title: "HOURS PER WALL", Columns: []draft.Column{{Head: "WALL", Wrap: true, Bold: true}, {Head: "SHEETS", Align: scene.End}, {Head: "HANG", Align: scene.End},
		{Head: "CUT", Align: scene.End}, {Head: "TOTAL", Align: scene.End, Bold: true}, {Head: "DONE", Align: scene.End}}, Row: h.Look.Of(6)}
	row := func(strong bool, cells ...string) { t.Rows = append(t.Rows, draft.Row{Cells: cells, Strong: strong}) }
	for _, w := range p.Walls {
		row(false, h.Room.Walls[w.Wall].Name, strconv.Itoa(w.Sheets), Clock(w.Hang), Clock(w.Cut), Clock(w.Minutes()), fmt.Sprintf("day %d, %s", w.Day, Clock(w.Done)))
	}
	row(false, "dry lay-out", strconv.Itoa(len(p.Tasks)), "", "", Clock(p.LayOut), "")
	row(false, "damp and rest", "", "", "", Clock(p.Wait), "")
	row(false, "looks", "", "", "", Clock(p.Look), "")
	end := p.Steps[len(p.Steps)-1]
	row(true, "all", strconv.Itoa(len(p.Tasks)), Clock(p.Hang), Clock(p.Cut), Clock(p.Minutes()), fmt.Sprintf("day %d, %s", end.Day, Clock(end.From)))
	return []folio.Block{{Table: t}, {Title: "HOW THE DAY GOES", Items: h.Rules()}}
}

// Rules are how a hanging day goes.
//
// Source: three sheets, then stop and look: general notes for wall coverings, an association's recommended practice; the
// rest common practice, no source.
func (h *Hanging) Rules() []draft.Item {
	d := h.Plan.Day
	texts := []string{
		"Hold 0, the dry lay-out, is signed on the room start page.",
		fmt.Sprintf("Sheets go up in groups of %d, damped together. No sheet is begun that is not up, its seam cut, before the evening.", d.Group),
		"After the first group of every flitch: stop, look from 6 ft and along the wall, by the light that the room will have.",
		"Dry fit every wrap before paste. Cut a seam when both sheets are up and rested: wet wood is wide.",
		"No overlap stays uncut over a break or a night: stop at a corner or a door, the edge of the last sheet dry, a strip behind it.",
	}
	if h.Metric() {
		texts[2] = strings.Replace(texts[2], "6 ft", "2 m", 1)
	}
	var list []draft.Item
	for i, t := range texts {
		list = append(list, draft.Item{Mark: submittal.Ordinal(i + 1), Text: t})
	}
	return list
}

// DayBlocks are the timetable of a day and the other places where it may stop.
func (h *Hanging) DayBlocks(day int) []folio.Block {
	k := h.Look
	t := &draft.Table{Title: "TIMETABLE", Columns: []draft.Column{{Head: "FROM", Align: scene.End}, {Head: "HANG", Align: scene.End}, {Head: "TO", Align: scene.End},
		{Head: "SHEETS", Bold: true, Size: k.Medium}, {Head: "CUT", Align: scene.End}, {Head: "WALL; WHAT", Wrap: true}}, Row: k.Of(6.8)}
	evening := -1
	for _, x := range h.Plan.Steps {
		if x.Day == day {
			t.Rows = append(t.Rows, h.Rows(x)...)
			if x.Kind == days.EveningStep && x.Stop != nil {
				evening = x.Stop.Task
			}
		}
	}
	stops := &draft.Table{Title: "OTHER GOOD PLACES TO STOP", Columns: []draft.Column{{Head: "AT", Align: scene.End}, {Head: "AFTER", Bold: true}, {Head: "WHERE", Wrap: true}, {Head: "TO CUT", Align: scene.End}}, Row: k.Of(5.6)}
	for _, x := range h.Plan.Stops {
		if task := &h.Plan.Tasks[x.Task]; task.Day == day && x.Task != evening {
			left := "nothing"
			if x.Seen > 0 {
				left = h.Style.Format(x.Seen)
			}
			stops.Rows = append(stops.Rows, draft.Row{Cells: []string{Clock(task.Up), SheetWord(task), x.Where, left}})
		}
	}
	blocks := []folio.Block{{Table: t}}
	if len(stops.Rows) > 0 {
		blocks = append(blocks, folio.Block{Table: stops})
	}
	return blocks
}

// RowSheets is how many sheet numbers stand in one row of the timetable.
const RowSheets = 4

// Rows are the rows of a step: a large group takes several.
func (h *Hanging) Rows(x days.Step) []draft.Row {
	list := []draft.Row{h.Row(x)}
	for from := RowSheets; from < len(x.Tasks); from += RowSheets {
		list = append(list, draft.Row{Cells: []string{"", "", "", h.Sheets(x.Tasks[from:min(from+RowSheets, len(x.Tasks))]), "", ""}, On: true})
	}
	return list
}

// Row is the first row of a step.
func (h *Hanging) Row(x days.Step) draft.Row {
	cells := []string{Clock(x.From), "", Clock(x.To), "", "", ""}
	r := draft.Row{}
	switch x.Kind {
	case days.LayOutStep:
		cells[5] = "dry lay-out of all sheets: HOLD 0"
		r.Strong, r.Rule = true, true
	case days.BreakStep:
		cells[5] = "break"
	case days.LookStep:
		cells[5] = "HOLD: " + HoldWords(x.Hold)
		r.Strong, r.Rule = true, true
	case days.EveningStep:
		cells[2], cells[5] = "", "STOP"
		switch {
		case x.Done:
			cells[5] = "all hangs"
		case x.Stop != nil:
			cells[5] = "STOP " + x.Stop.Where + h.LeftOver(x.Stop)
		}
		r.Strong = true
	case days.GroupStep:
		cells[1], cells[3] = Clock(x.Hang), h.Sheets(x.Tasks[:min(RowSheets, len(x.Tasks))])
		if x.Cut > 0 {
			cells[4] = strconv.Itoa(x.Cut)
		}
		cells[5] = h.Where(x.Tasks)
	}
	r.Cells = cells
	return r
}

// LeftOver says what is kept for the morning.
func (h *Hanging) LeftOver(x *days.Stop) string {
	t := &h.Plan.Tasks[x.Task]
	if !t.DryEdge {
		return ""
	}
	return "; edge " + SheetWord(t) + " dry"
}

// SheetWord is a sheet's number; its place in parentheses where no sheet is left for it.
func SheetWord(t *days.Task) string {
	if t.Number == 0 {
		return "(" + strconv.Itoa(t.Place) + ")"
	}
	return strconv.Itoa(t.Number)
}

// Sheets lists a group's sheets in hanging order.
func (h *Hanging) Sheets(tasks []int) string {
	var words []string
	for _, i := range tasks {
		words = append(words, SheetWord(&h.Plan.Tasks[i]))
	}
	return strings.Join(words, ", ")
}

// Where names the walls of a group and what to mind on it.
func (h *Hanging) Where(tasks []int) string {
	var parts []string
	wall := -1
	for _, i := range tasks {
		if t := &h.Plan.Tasks[i]; t.Wall != wall {
			wall = t.Wall
			parts = append(parts, h.Room.Walls[wall].Name)
		}
	}
	text := strings.Join(parts, ", ")
	for k, i := range tasks {
		t := &h.Plan.Tasks[i]
		if t.Flitch != "" && i > 0 && t.Flitch != h.Plan.Tasks[i-1].Flitch {
			text += "; flitch " + t.Flitch + " from " + SheetWord(t)
		}
		if t.DryEdge && k < len(tasks)-1 {
			text += "; edge " + SheetWord(t) + " dry: the next takes long"
		}
	}
	if last := &h.Plan.Tasks[tasks[len(tasks)-1]]; last.DryEdge {
		text += "; edge " + SheetWord(last) + " dry"
	}
	return text
}

// HoldWords says what a hold point is.
func HoldWords(x days.Hold) string {
	switch x {
	case days.FirstSheets:
		return "look at the first sheets"
	case days.NewFlitch:
		return "look at the new flitch"
	case days.DryLayOut:
		return "dry lay-out"
	}
	return "look at all of it"
}

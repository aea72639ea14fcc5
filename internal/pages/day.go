package pages

import (
	"fmt"
	"strconv"
	"strings"

	"flitchlay/internal/days"
	"flitchlay/internal/draft"
	"flitchlay/internal/paper"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// hanging is the plan of the hanging days on its way onto pages of the install set.
type hanging struct {
	*set
	look draft.Look
	plan *days.Schedule
	box  scene.Box // that the pages leave to it
}

// dayPages draws the pages of the hanging days: what each wall takes, then a timetable for every day with its hold
// points, its stop places and a log to fill in. There are none where nothing is left to hang.
func (c *crewSet) dayPages(n int) []*scene.Page {
	var out []*scene.Page
	h := &hanging{set: &c.set, look: c.readable(), plan: days.Of(c.plan)}
	fresh := func(title string) *crewBoard {
		lines := [2]string{c.place(), fmt.Sprintf("crew of %d, %s to %s", h.plan.Day.Crew, clock(h.plan.Day.Start), clock(h.plan.Day.End))}
		b := c.open(n+len(out), "install-"+pad(n+len(out)), title, false, lines)
		b.page.Title = title
		f := b.page.Frame
		h.box = b.bar(scene.Box{X0: f.X0, Y0: b.head.Y1, X1: f.X1, Y1: f.Y1})
		return b
	}
	fresh("")
	for _, l := range h.pages() {
		b := fresh(l.title)
		l.draw(&board{set: &c.set, leaf: l, page: b.page, space: b.space, field: h.box})
		out = append(out, b.page)
	}
	return out
}

// readable is the look of pages without drawings: no text under what is read from a ladder.
func (c *crewSet) readable() draft.Look {
	k := c.look
	k.Small, k.Medium, k.Large = crewText*c.u, crewLarge*c.u, crewName*c.u
	k.Unit = k.Small / paper.Least
	return k
}

// pages are all pages of the days.
func (h *hanging) pages() []*leaf {
	if len(h.plan.Tasks) == 0 {
		return nil
	}
	list := h.leaves("Hanging days", h.hoursBlocks(), h.hoursSide)
	for day := 1; day <= h.plan.Days; day++ {
		title := "Hanging day " + strconv.Itoa(day)
		if h.plan.Days > 1 {
			title += " of " + strconv.Itoa(h.plan.Days)
		}
		list = append(list, h.leaves(title, h.dayBlocks(day), func(b *board, box scene.Box) { h.daySide(b, box, day) })...)
	}
	return list
}

// leaves flow blocks into the left part of as many pages as they take; the right part of the first is drawn by side, that of
// the others is for notes.
func (h *hanging) leaves(title string, blocks []block, side func(*board, scene.Box)) []*leaf {
	k := h.look
	pad, right := k.Of(3), min(k.Of(64), h.box.W()*0.37)
	left := scene.Box{X0: h.box.X0 + pad, Y0: h.box.Y0 + pad, X1: h.box.X1 - right - 2*pad, Y1: h.box.Y1 - pad}
	c := columns{box: left, count: 1, gap: 0}
	var list []*leaf
	for i, parts := range flow(k, blocks, c) {
		l := &leaf{title: title, wall: -1, scale: "none"}
		if i > 0 {
			l.title += ", on"
		}
		l.draw = func(b *board) {
			set := *b.set
			set.look = k
			mine := *b
			mine.set = &set
			mine.put(blocks, parts, c)
			x := h.box.X1 - right - pad
			b.page.VLine(x, h.box.Y0, h.box.Y1, scene.Pen(scene.Frame, k.Seam))
			beside := scene.Box{X0: x + pad, Y0: left.Y0, X1: h.box.X1 - pad, Y1: left.Y1}
			if i == 0 {
				side(&mine, beside)
			} else {
				h.notes(&mine, beside, beside.Y0)
			}
		}
		list = append(list, l)
	}
	return list
}

// clock prints minutes as hours and minutes.
func clock(minutes int) string { return room.Clock(minutes) }

// hoursBlocks are what each wall takes and what the figures are made of.
func (h *hanging) hoursBlocks() []block {
	p := h.plan
	t := &draft.Table{Title: "HOURS PER WALL", Columns: []draft.Column{{Head: "WALL", Wrap: true, Bold: true}, {Head: "SHEETS", Align: scene.End}, {Head: "HANG", Align: scene.End},
		{Head: "CUT", Align: scene.End}, {Head: "TOTAL", Align: scene.End, Bold: true}, {Head: "DONE", Align: scene.End}}, Row: h.look.Of(6)}
	row := func(strong bool, cells ...string) { t.Rows = append(t.Rows, draft.Row{Cells: cells, Strong: strong}) }
	for _, w := range p.Walls {
		row(false, h.room.Walls[w.Wall].Name, strconv.Itoa(w.Sheets), clock(w.Hang), clock(w.Cut), clock(w.Minutes()), fmt.Sprintf("day %d, %s", w.Day, clock(w.Done)))
	}
	row(false, "dry lay-out", strconv.Itoa(len(p.Tasks)), "", "", clock(p.LayOut), "")
	row(false, "damp and rest", "", "", "", clock(p.Wait), "")
	row(false, "looks", "", "", "", clock(p.Look), "")
	end := p.Steps[len(p.Steps)-1]
	row(true, "all", strconv.Itoa(len(p.Tasks)), clock(p.Hang), clock(p.Cut), clock(p.Minutes()), fmt.Sprintf("day %d, %s", end.Day, clock(end.From)))
	return []block{{table: t}, {title: "HOW THE DAY GOES", items: h.rules()}}
}

// rules are how a hanging day goes.
//
// Source: three sheets, then stop and look: general notes for wall coverings, an association's recommended practice; the
// rest common practice, no source.
func (h *hanging) rules() []draft.Item {
	d := h.plan.Day
	texts := []string{
		"Hold 0, the dry lay-out, is signed on the room start page.",
		fmt.Sprintf("Sheets go up in groups of %d, damped together. No sheet is begun that is not up, its seam cut, before the evening.", d.Group),
		"After the first group of every flitch: stop, look from 6 ft and along the wall, by the light that the room will have.",
		"Dry fit every wrap before paste. Cut a seam when both sheets are up and rested: wet wood is wide.",
		"No overlap stays uncut over a break or a night: stop at a corner or a door, the edge of the last sheet dry, a strip behind it.",
	}
	if h.metric() {
		texts[2] = strings.Replace(texts[2], "6 ft", "2 m", 1)
	}
	var list []draft.Item
	for i, t := range texts {
		list = append(list, draft.Item{Mark: ordinal(i + 1), Text: t})
	}
	return list
}

// hoursSide is the crew and the minutes that are reckoned with.
func (h *hanging) hoursSide(b *board, box scene.Box) {
	d := h.plan.Day
	t := pairs("MINUTES")
	t.Columns[1].Align, t.Row = scene.End, h.look.Of(5.2)
	row := func(what string, n int) { t.Rows = append(t.Rows, draft.Row{Cells: []string{what, strconv.Itoa(n)}}) }
	row("plain sheet", d.Plain)
	row("round a corner", d.Wrap)
	row("at an opening", d.Opening)
	row("ripped", d.Narrow)
	row("each box, more", d.Box)
	row("cut and close a seam", d.Cut)
	row("damp and rest", d.Rest)
	row("paste stays open", d.Open)
	row("lay-out, a sheet", d.LayOut)
	row("look", d.Look)
	t.Columns[0].Bold, t.Columns[1].Bold, t.Columns[1].Wrap, t.Columns[0].Wrap = false, true, false, true
	y := h.side(b, box, box.Y0, t)
	k := h.look
	say := func(text string, bold bool) {
		y = draft.Paragraph(&b.page.Group, scene.Notes, scene.Pt(box.X0, y), text, k.Small, bold, box.W()) + k.Of(1)
	}
	say("Common practice, no source, where [day] of the room file does not say.", false)
	y += k.Of(3)
	say(fmt.Sprintf("CREW OF %d: %s PERSON-HOURS", d.Crew, clock(h.plan.Minutes()*d.Crew)), true)
	for _, text := range crew(d.Crew) {
		say(text, false)
	}
}

// crew says who does what (common practice, no source).
func crew(n int) []string {
	switch n {
	case 1:
		return []string{"One, up and down: call somebody for every wrap."}
	case 2:
		return []string{"Up: top, ceiling cut, smoothing.", "Down: mark, plumb line, base; damps the next group."}
	}
	return []string{"Up: top, ceiling cut, smoothing.", "Down: mark, plumb line, base.", "Others: cut, paste, damp, keep the log."}
}

// side draws a table as wide as the side and gives the y under it.
func (h *hanging) side(b *board, box scene.Box, y float64, t *draft.Table) float64 {
	t.Fit(h.look, box.W())
	_, taken := t.Draw(&b.page.Group, h.look, scene.Pt(box.X0, y), 0, box.Y1-y)
	return taken.Y1 + h.look.Of(3)
}

// dayBlocks are the timetable of a day and the other places where it may stop.
func (h *hanging) dayBlocks(day int) []block {
	k := h.look
	t := &draft.Table{Title: "TIMETABLE", Columns: []draft.Column{{Head: "FROM", Align: scene.End}, {Head: "HANG", Align: scene.End}, {Head: "TO", Align: scene.End},
		{Head: "SHEETS", Bold: true, Size: k.Medium}, {Head: "CUT", Align: scene.End}, {Head: "WALL; WHAT", Wrap: true}}, Row: k.Of(6.8)}
	evening := -1
	for _, x := range h.plan.Steps {
		if x.Day == day {
			t.Rows = append(t.Rows, h.rows(x)...)
			if x.Kind == days.EveningStep && x.Stop != nil {
				evening = x.Stop.Task
			}
		}
	}
	stops := &draft.Table{Title: "OTHER GOOD PLACES TO STOP", Columns: []draft.Column{{Head: "AT", Align: scene.End}, {Head: "AFTER", Bold: true}, {Head: "WHERE", Wrap: true}, {Head: "TO CUT", Align: scene.End}}, Row: k.Of(5.6)}
	for _, x := range h.plan.Stops {
		if task := &h.plan.Tasks[x.Task]; task.Day == day && x.Task != evening {
			left := "nothing"
			if x.Seen > 0 {
				left = h.style.Format(x.Seen)
			}
			stops.Rows = append(stops.Rows, draft.Row{Cells: []string{clock(task.Up), sheetWord(task), x.Where, left}})
		}
	}
	blocks := []block{{table: t}}
	if len(stops.Rows) > 0 {
		blocks = append(blocks, block{table: stops})
	}
	return blocks
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
		cells[5] = "dry lay-out of all sheets: HOLD 0"
		r.Strong, r.Rule = true, true
	case days.BreakStep:
		cells[5] = "break"
	case days.LookStep:
		cells[5] = "HOLD: " + holdWords(x.Hold)
		r.Strong, r.Rule = true, true
	case days.EveningStep:
		cells[2], cells[5] = "", "STOP"
		switch {
		case x.Done:
			cells[5] = "all hangs"
		case x.Stop != nil:
			cells[5] = "STOP " + x.Stop.Where + h.leftOver(x.Stop)
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
	return "; edge " + sheetWord(t) + " dry"
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
			parts = append(parts, h.room.Walls[wall].Name)
		}
	}
	text := strings.Join(parts, ", ")
	for k, i := range tasks {
		t := &h.plan.Tasks[i]
		if t.Flitch != "" && i > 0 && t.Flitch != h.plan.Tasks[i-1].Flitch {
			text += "; flitch " + t.Flitch + " from " + sheetWord(t)
		}
		if t.DryEdge && k < len(tasks)-1 {
			text += "; edge " + sheetWord(t) + " dry: the next takes long"
		}
	}
	if last := &h.plan.Tasks[tasks[len(tasks)-1]]; last.DryEdge {
		text += "; edge " + sheetWord(last) + " dry"
	}
	return text
}

// holdWords says what a hold point is.
func holdWords(x days.Hold) string {
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

// daySide is what is filled in through a day: readings and signed hold points.
func (h *hanging) daySide(b *board, box scene.Box, day int) {
	k := h.look
	unit := " F"
	if h.metric() {
		unit = " C"
	}
	log := &draft.Table{Title: "READINGS", Lines: true, Row: k.Of(6.4), Columns: []draft.Column{{Head: "TIME"}, {Head: "AIR" + unit}, {Head: "RH"}, {Head: "WALL" + unit}, {Head: "BY"}}}
	for range 5 {
		log.Rows = append(log.Rows, draft.Row{Cells: []string{"", "", "", "", ""}})
	}
	y := h.side(b, box, box.Y0, log) + k.Of(2)
	for _, x := range h.plan.Steps {
		if x.Day != day || x.Kind != days.LookStep {
			continue // hold 0 is signed on the room start page
		}
		words := "HOLD, " + strings.TrimPrefix(holdWords(x.Hold), "look at ")
		if y+k.Of(17) > box.Y1 {
			break
		}
		y = h.sign(b, box, y, words)
	}
	h.notes(b, box, y)
}

// notes are lines to write on what did not go as planned, down to the foot of a side.
func (h *hanging) notes(b *board, box scene.Box, y float64) {
	k := h.look
	if y+k.Of(16) > box.Y1 {
		return
	}
	y = draft.Paragraph(&b.page.Group, scene.Notes, scene.Pt(box.X0, y), "Any sheet not as planned: number, and where its seam stands:", k.Small, false, box.W())
	for ; y+k.Of(6) <= box.Y1; y += k.Of(6.4) {
		b.page.HLine(box.X0, box.X1, y+k.Of(5), scene.Pen(scene.Frame, k.Thin))
	}
}

// sign draws a line for a name and one for a time under a hold point.
func (h *hanging) sign(b *board, box scene.Box, y float64, words string) float64 {
	k := h.look
	b.page.Text(scene.Text{At: scene.Pt(box.X0, y), String: scene.Shorten(words, k.Small, true, box.W()), Height: k.Small, Bold: true, Seat: scene.Hanging, Layer: scene.Notes})
	y += k.Small + k.Of(7)
	middle := box.X0 + box.W()*0.66
	pen := scene.Pen(scene.Frame, k.Thin)
	b.page.HLine(box.X0, middle-k.Of(3), y, pen)
	b.page.HLine(middle, box.X1, y, pen)
	for _, t := range []scene.Text{{At: scene.Pt(box.X0, y+k.Of(1.4)), String: "name"}, {At: scene.Pt(middle, y+k.Of(1.4)), String: "time"}} {
		t.Height, t.Seat, t.Layer = k.Small, scene.Hanging, scene.Notes
		b.page.Text(t)
	}
	return y + k.Of(8)
}

package crewday

import (
	"strconv"

	"flitchlay/internal/days"
	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
	"flitchlay/internal/submittal"
)

// hoursSide is the crew and the minutes that are reckoned with.
func (h *hanging) hoursSide(b *folio.Board, box scene.Box) {
	d := h.plan.Day
	t := submittal.Pairs(h.Words.Both("day.minutes"))
	t.Columns[1].Align, t.Row = scene.End, h.look.Of(5.2)
	row := func(what string, n int) { t.Rows = append(t.Rows, draft.Row{Cells: []string{what, strconv.Itoa(n)}}) }
	row(h.Words.Say("minutes.plain"), d.Plain)
	row(h.Words.Say("minutes.wrap"), d.Wrap)
	row(h.Words.Say("minutes.opening"), d.Opening)
	row(h.Words.Say("minutes.narrow"), d.Narrow)
	row(h.Words.Say("minutes.box"), d.Box)
	row(h.Words.Say("minutes.cut"), d.Cut)
	row(h.Words.Say("minutes.rest"), d.Rest)
	row(h.Words.Say("minutes.open"), d.Open)
	row(h.Words.Say("minutes.lay_out"), d.LayOut)
	row(h.Words.Say("minutes.look"), d.Look)
	t.Columns[0].Bold, t.Columns[1].Bold, t.Columns[1].Wrap, t.Columns[0].Wrap = false, true, false, true
	y := h.side(b, box, box.Y0, t)
	k := h.look
	say := func(text string, bold bool) {
		y = draft.Paragraph(&b.Page.Group, scene.Notes, scene.Pt(box.X0, y), text, k.Small, bold, box.W()) + k.Of(1)
	}
	say(h.Words.Say("minutes.source"), false)
	y += k.Of(3)
	say(h.Words.Say("day.person_hours", d.Crew, clock(h.plan.Minutes()*d.Crew)), true)
	for _, text := range h.crew(d.Crew) {
		say(text, false)
	}
}

// banded is the key of words for sheets that stand, or of those for bands where the grain runs level.
func (h *hanging) banded(upright, level string) string {
	if h.Room.Veneer.Horizontal {
		return level
	}
	return upright
}

// crew says who does what (common practice, no source).
func (h *hanging) crew(n int) []string {
	switch n {
	case 1:
		return []string{h.Words.Say(h.banded("crew.one", "crew.one_level"))}
	case 2:
		return []string{h.Words.Say(h.banded("crew.up", "crew.up_level")), h.Words.Say(h.banded("crew.down_damps", "crew.down_damps_level"))}
	}
	return []string{h.Words.Say(h.banded("crew.up", "crew.up_level")), h.Words.Say(h.banded("crew.down", "crew.down_level")), h.Words.Say("crew.others")}
}

// side draws a table as wide as the side and gives the y under it.
func (h *hanging) side(b *folio.Board, box scene.Box, y float64, t *draft.Table) float64 {
	t.Fit(h.look, box.W())
	_, taken := t.Draw(&b.Page.Group, h.look, scene.Pt(box.X0, y), 0, box.Y1-y)
	return taken.Y1 + h.look.Of(3)
}

// logBlanks is how many readings the log of a day has room for: in the morning, after the breaks.
const logBlanks = 3

// dayLog is the table of a day's readings: what is read from above to below, with its limit, and a column for each time.
func (h *hanging) dayLog(width float64) *draft.Table {
	k := h.look
	t := &draft.Table{Title: h.Words.Both("day.readings"), Lines: true, Row: k.Of(6.4), Columns: make([]draft.Column, 2+logBlanks)}
	t.Columns[1].Bold = true
	rest := width
	for i := range 2 {
		for _, r := range h.limits {
			t.Columns[i].Width = max(t.Columns[i].Width, scene.Width(r[i], k.Small, i == 1)+k.Of(logPad))
		}
		rest -= t.Columns[i].Width
	}
	for i := range logBlanks {
		t.Columns[2+i].Width = rest / logBlanks
	}
	for _, r := range h.limits {
		t.Rows = append(t.Rows, draft.Row{Cells: append(r[:], make([]string, logBlanks)...)})
	}
	return t
}

// logPad is what a cell keeps clear at both sides of its words, on the office's page.
const logPad = 3.8

// signHigh is what a hold point takes to be signed under its name, on the office's page.
const signHigh = 14

// daySides are what is filled in through a day: readings and signed hold points, on as many sides as these take; then the other places to
// stop that are given. Free is what the last of them has left without these.
func (h *hanging) daySides(day int, stops []string) (sides []side, free float64) {
	k := h.look
	var looks []*days.Task
	for _, x := range h.plan.Steps {
		if x.Day == day && x.Kind == days.LookStep { // hold 0 is signed on the room start page
			looks = append(looks, &h.plan.Tasks[x.After])
		}
	}
	_, box := h.halves()
	log := h.dayLog(box.W())
	used := log.High(k) + k.Of(3) + draft.ParagraphHigh(h.under, k.Small, false, box.W()) + k.Of(3)
	for len(looks) > 0 || len(sides) == 0 {
		n := 0
		for n < len(looks) {
			high := k.Of(signHigh) + draft.ParagraphHigh(h.signWords(looks[n]), k.Small, true, box.W())
			if used+high > box.H() && (n > 0 || len(sides) == 0) {
				break
			}
			used += high
			n++
		}
		part, first := looks[:n], len(sides) == 0
		looks = looks[n:]
		last := len(looks) == 0
		if free = box.H() - used; !last {
			used = 0
		}
		sides = append(sides, func(b *folio.Board, box scene.Box) {
			y := box.Y0
			if first {
				_, taken := log.Draw(&b.Page.Group, k, scene.Pt(box.X0, y), 0, box.Y1-y)
				y = taken.Y1 + k.Of(2)
				y = draft.Paragraph(&b.Page.Group, scene.Notes, scene.Pt(box.X0, y), h.under, k.Small, false, box.W()) + k.Of(3)
			}
			for _, t := range part {
				y = h.sign(b, box, y, h.signWords(t))
				h.set.First(holdKey(t), h.page)
			}
			if last {
				y = h.listStops(b, box, y, stops)
			}
			h.notes(b, box, y)
		})
	}
	return sides, free
}

// stopsHigh is how high places to stop come out at the side.
func (h *hanging) stopsHigh(stops []string, wide float64) float64 {
	if len(stops) == 0 {
		return 0
	}
	k := h.look
	high := draft.ParagraphHigh(h.Words.Say("day.stops"), k.Small, true, wide) + k.Of(3)
	for _, line := range stops {
		high += draft.ParagraphHigh(line, k.Small, false, wide) + k.Of(1)
	}
	return high
}

// listStops letters places to stop, and gives the y under them.
func (h *hanging) listStops(b *folio.Board, box scene.Box, y float64, stops []string) float64 {
	if len(stops) == 0 {
		return y
	}
	k := h.look
	y = draft.Paragraph(&b.Page.Group, scene.Notes, scene.Pt(box.X0, y), h.Words.Say("day.stops"), k.Small, true, box.W()) + k.Of(1)
	for _, line := range stops {
		y = draft.Paragraph(&b.Page.Group, scene.Notes, scene.Pt(box.X0, y), line, k.Small, false, box.W()) + k.Of(1)
	}
	return y + k.Of(2)
}

// signWords stand over the lines on which a hold point is signed.
func (h *hanging) signWords(t *days.Task) string {
	return h.Words.Say("day.sign", h.set.HoldWords(t), h.set.lookWords(t.Hold, "signed"))
}

// notes are lines to write on what did not go as planned, down to the foot of a side.
func (h *hanging) notes(b *folio.Board, box scene.Box, y float64) {
	k := h.look
	if y+k.Of(16) > box.Y1 {
		return
	}
	y = draft.Paragraph(&b.Page.Group, scene.Notes, scene.Pt(box.X0, y), h.Words.Say(h.banded("day.notes", "day.notes_level")), k.Small, false, box.W())
	for ; y+k.Of(6) <= box.Y1; y += k.Of(6.4) {
		b.Page.HLine(box.X0, box.X1, y+k.Of(5), scene.Pen(scene.Frame, k.Thin))
	}
}

// sign draws a line for a name and a signature and one for date and time under the name of a hold point.
func (h *hanging) sign(b *folio.Board, box scene.Box, y float64, words string) float64 {
	k := h.look
	y = draft.Paragraph(&b.Page.Group, scene.Notes, scene.Pt(box.X0, y), words, k.Small, true, box.W()) + k.Of(6)
	middle := box.X0 + box.W()*0.62
	pen := scene.Pen(scene.Frame, k.Thin)
	b.Page.HLine(box.X0, middle-k.Of(3), y, pen)
	b.Page.HLine(middle, box.X1, y, pen)
	for _, t := range []scene.Text{{At: scene.Pt(box.X0, y+k.Of(1.4)), String: h.Words.Say("sign.name")}, {At: scene.Pt(middle, y+k.Of(1.4)), String: h.Words.Say("sign.date")}} {
		t.Height, t.Seat, t.Layer = k.Small, scene.Hanging, scene.Notes
		b.Page.Text(t)
	}
	return y + k.Of(8)
}

// far is how far off a wall is looked at, as the unit of the room has it.
func (h *hanging) far() string {
	if h.Metric() {
		return h.Words.Say("unit.far_metric")
	}
	return h.Words.Say("unit.far")
}

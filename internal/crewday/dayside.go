package crewday

import (
	"fmt"
	"strconv"
	"strings"

	"flitchlay/internal/days"
	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
	"flitchlay/internal/submittal"
)

// hoursSide is the crew and the minutes that are reckoned with.
func (h *hanging) hoursSide(b *folio.Board, box scene.Box) {
	d := h.plan.Day
	t := submittal.Pairs("MINUTES")
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
		y = draft.Paragraph(&b.Page.Group, scene.Notes, scene.Pt(box.X0, y), text, k.Small, bold, box.W()) + k.Of(1)
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
func (h *hanging) side(b *folio.Board, box scene.Box, y float64, t *draft.Table) float64 {
	t.Fit(h.look, box.W())
	_, taken := t.Draw(&b.Page.Group, h.look, scene.Pt(box.X0, y), 0, box.Y1-y)
	return taken.Y1 + h.look.Of(3)
}

// daySide is what is filled in through a day: readings and signed hold points.
func (h *hanging) daySide(b *folio.Board, box scene.Box, day int) {
	k := h.look
	unit := " F"
	if h.Metric() {
		unit = " C"
	}
	log := &draft.Table{Title: "READINGS", Lines: true, Row: k.Of(6.4), Columns: []draft.Column{{Head: "TIME"}, {Head: "AIR" + unit, Wrap: true}, {Head: "RH", Wrap: true}, {Head: "WALL", Wrap: true}, {Head: "GO"}}}
	log.Rows = append(log.Rows, draft.Row{Cells: h.limits, Strong: true})
	for range 5 {
		log.Rows = append(log.Rows, draft.Row{Cells: []string{"", "", "", "", ""}})
	}
	y := h.side(b, box, box.Y0, log) - k.Of(1)
	y = draft.Paragraph(&b.Page.Group, scene.Notes, scene.Pt(box.X0, y), outsideWords, k.Small, false, box.W()) + k.Of(3)
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
func (h *hanging) notes(b *folio.Board, box scene.Box, y float64) {
	k := h.look
	if y+k.Of(16) > box.Y1 {
		return
	}
	y = draft.Paragraph(&b.Page.Group, scene.Notes, scene.Pt(box.X0, y), "Any sheet not as planned: number, and its edge at head and foot:", k.Small, false, box.W())
	for ; y+k.Of(6) <= box.Y1; y += k.Of(6.4) {
		b.Page.HLine(box.X0, box.X1, y+k.Of(5), scene.Pen(scene.Frame, k.Thin))
	}
}

// sign draws a line for a name and one for a time under a hold point.
func (h *hanging) sign(b *folio.Board, box scene.Box, y float64, words string) float64 {
	k := h.look
	b.Page.Text(scene.Text{At: scene.Pt(box.X0, y), String: scene.Shorten(words, k.Small, true, box.W()), Height: k.Small, Bold: true, Seat: scene.Hanging, Layer: scene.Notes})
	y += k.Small + k.Of(7)
	middle := box.X0 + box.W()*0.66
	pen := scene.Pen(scene.Frame, k.Thin)
	b.Page.HLine(box.X0, middle-k.Of(3), y, pen)
	b.Page.HLine(middle, box.X1, y, pen)
	for _, t := range []scene.Text{{At: scene.Pt(box.X0, y+k.Of(1.4)), String: "name"}, {At: scene.Pt(middle, y+k.Of(1.4)), String: "time"}} {
		t.Height, t.Seat, t.Layer = k.Small, scene.Hanging, scene.Notes
		b.Page.Text(t)
	}
	return y + k.Of(8)
}

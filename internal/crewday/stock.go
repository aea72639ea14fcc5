package crewday

import (
	"strings"

	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/room"
)

// StartKey is where other pages find where the first sheet hangs.
const StartKey = "first sheet"

// stockWords say what is delivered, what of it hangs, in which order it goes up and where that begins; short leaves the figures of its
// start to the page of its wall.
func (c *Set) stockWords(short bool) []string {
	var lines []string
	wide, long := c.Inches(c.Room.Veneer.GrossWidth), c.Say(c.Room.Veneer.Length)
	for _, s := range c.Plan.Left {
		if c.Room.LaidFrom(s.Flitch) == room.FromLast {
			lines = append(lines, c.Words.Say("start.delivered_last", s.Flitch, layout.Numbers(s.Delivered), wide, long))
		} else {
			lines = append(lines, c.Words.Say("start.delivered", s.Flitch, layout.Numbers(s.Delivered), wide, long))
		}
		lines = append(lines, c.notCutWords(&s)...)
	}
	if len(c.Plan.Left) == 0 {
		lines = append(lines, c.Words.Say("start.numbered", c.Plan.Totals.Sheets, wide, long))
	}
	switch {
	case c.Room.Veneer.Horizontal:
		lines = append(lines, c.Words.Say("start.order_up"))
	case c.courses():
		lines = append(lines, c.Words.Say("start.order_courses"))
	default:
		lines = append(lines, c.Words.Say("start.order"))
	}
	if words := c.startWords(short); words != "" {
		lines = append(lines, words)
	}
	return lines
}

// notCutWords say which sheets of a flitch hang and are to hang, in a line each, and which are not cut, in one.
func (c *Set) notCutWords(s *layout.Stock) []string {
	var refused []int
	for _, w := range c.Refused(s.Flitch) {
		refused = append(refused, w.Number)
	}
	var lines, over []string
	for _, k := range []struct {
		word string
		list []int
	}{{"hangs", c.hungOf(s.Flitch)}, {"to_hang", without(without(s.Laid, c.hungOf(s.Flitch)), c.gapsOf(s.Flitch))}, {"in_a_gap", c.gapsOf(s.Flitch)},
		{"spare", s.Spare}, {"damaged", without(s.Damaged, refused)}, {"refused", refused}, {"not_used", s.Left}} {
		if len(k.list) == 0 {
			continue
		}
		words := c.Words.Of("stock", k.word) + ": " + layout.Numbers(k.list)
		if k.word == "hangs" || k.word == "to_hang" {
			lines = append(lines, words)
		} else {
			over = append(over, words)
		}
	}
	if len(over) > 0 {
		lines = append(lines, strings.Join(over, "; "))
	}
	return lines
}

// courses reports whether sheets stand one over the other at any place.
func (c *Set) courses() bool {
	for i := range c.Plan.Runs {
		for k := range c.Plan.Runs[i].Sheets {
			if !c.Plan.Runs[i].Up && c.Plan.Runs[i].Sheets[k].Course > 1 {
				return true
			}
		}
	}
	return false
}

// startWords say which sheet is the first to hang, on which wall and page, and, where it begins inside the wall, at which figure, with its
// witness line where its own cannot be struck; nothing where none is left to hang.
func (c *Set) startWords(short bool) string {
	marks := folio.WallMarks(c.Plan)
	for _, w := range c.Faces {
		for _, h := range w.Hangs {
			if !c.StartsWith(w, h) {
				continue
			}
			wall := strings.TrimSpace(marks[w.Wall] + " " + w.W.Name)
			numbers, page := c.SheetNumbers(h), c.PageWord(StartKey)
			if short || w.Run.Up || !h.Opens {
				return c.Words.Say("start.first", numbers, wall, page)
			}
			if x := w.Witness(h); x != nil {
				return c.Words.Say("start.first_witness", numbers, wall, c.Along(w, h.Start), c.Along(w, x.X), page)
			}
			return c.Words.Say("start.first_at", numbers, wall, c.Along(w, h.Start), page)
		}
	}
	return ""
}

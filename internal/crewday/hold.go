package crewday

import (
	"strconv"
	"strings"

	"flitchlay/internal/days"
)

// HoldAt is the task after whose place the work stops for a look, nil where it goes on.
func (c *Set) HoldAt(run string, place int) *days.Task {
	for i := range c.Days.Tasks {
		if t := &c.Days.Tasks[i]; t.Run == run && t.Place == place && t.Hold != days.NoHold {
			return t
		}
	}
	return nil
}

// HoldWords name a hold point, the same on all pages: its number, and after which sheets it comes.
func (c *Set) HoldWords(t *days.Task) string {
	return c.Words.Say("wall.hold_after", t.HoldNo, c.holdSheets(t))
}

// holdSheets are the sheets after which a hold point comes: those of one place.
func (c *Set) holdSheets(t *days.Task) string {
	var list []string
	for _, k := range c.Days.Column(t) {
		list = append(list, sheetWord(k))
	}
	return strings.Join(list, "+")
}

// lookWords say what a hold point is for: what is looked at there, or what is signed, by the section.
func (c *Set) lookWords(x days.Hold, section string) string {
	what := "all"
	switch x {
	case days.FirstSheets:
		what = "first"
	case days.NewFlitch:
		what = "flitch"
	case days.DryLayOut:
		what = "lay_out"
	}
	return c.Words.Of(section, what)
}

// holdKey is where other pages find the lines on which a hold point is signed among the hanging days.
func holdKey(t *days.Task) string { return "hold " + strconv.Itoa(t.HoldNo) }

// HoldsPage names the pages of the hanging days on which hold points are signed.
func (c *Set) HoldsPage(list []*days.Task) string {
	var keys []string
	for _, t := range list {
		keys = append(keys, holdKey(t))
	}
	return c.PagesWord(keys)
}

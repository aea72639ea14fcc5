package paper

import (
	"fmt"
	"strconv"
	"strings"

	"flitchlay/internal/source"
)

// numberStyle is an office's own form of page numbers. Pages give files their names, so that it takes only what a file name
// may hold everywhere.
func numberStyle(v source.Value) string {
	style := v.Text("")
	if style == "" {
		return ""
	}
	const mend = `write it like "{discipline}{kind}.{count}"`
	rest := style
	for _, field := range []string{"{room}", "{discipline}", "{kind}", "{count}"} {
		switch n := strings.Count(style, field); {
		case n > 1:
			v.Mistake(mend, "%s stands twice", field)
			return ""
		case n == 0 && field != "{discipline}" && field != "{room}":
			v.Mistake(mend, "without %s two pages would have one number", field)
			return ""
		}
		rest = strings.ReplaceAll(rest, field, "")
	}
	for _, r := range rest {
		if !strings.ContainsRune("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-._", r) {
			v.Mistake(mend, "%q cannot stand in a page number: letters, figures, hyphen, point, underline", string(r))
			return ""
		}
	}
	if len(rest) > 12 {
		v.Mistake(mend, "a page number with %d characters of its own is too long for a title block", len(rest))
		return ""
	}
	return style
}

// PageNumber is the number of a page such as Z-201, from its kind, one figure, and its count from 1.
//
// Source: discipline, sheet type and two-figure sequence from 01 of the US National CAD Standard; a discipline of one letter
// takes a hyphen as place-holder.
//
// In a set of several rooms the room stands before it, or where an office's own form has {room}.
func (t *Template) PageNumber(kind, count int) string {
	if t.NumberStyle == "" {
		discipline := t.Discipline
		if len(discipline) == 1 {
			discipline += "-"
		}
		return t.ofRoom() + fmt.Sprintf("%s%d%02d", discipline, kind, count)
	}
	before := ""
	if !strings.Contains(t.NumberStyle, "{room}") {
		before = t.ofRoom()
	}
	return before + strings.NewReplacer("{room}", t.Room, "{discipline}", t.Discipline, "{kind}", strconv.Itoa(kind), "{count}", fmt.Sprintf("%02d", count)).Replace(t.NumberStyle)
}

// ofRoom is the room before a number.
func (t *Template) ofRoom() string {
	if t.Room == "" {
		return ""
	}
	return t.Room + "."
}

// OfRoom is the template with the room of a set of several in the numbers of its pages.
func (t *Template) OfRoom(room string) *Template {
	out := *t
	out.Room = room
	return &out
}

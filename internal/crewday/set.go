package crewday

import (
	"strings"
	"unicode/utf8"

	"flitchlay/internal/count"
	"flitchlay/internal/days"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/paper"
)

// Set is the install set while it is made: what every page of it needs to know.
type Set struct {
	*folio.TapedSet
	Count *count.Count
	Days  *days.Schedule
	plays map[*layout.Run]map[int]layout.Play
}

// NewSet prepares a set for the crew.
func NewSet(p *layout.Plan, t *paper.Template, name string) *Set {
	return &Set{TapedSet: folio.NewTapedSet(p, t, name), Count: count.Of(p), Days: days.Of(p),
		plays: map[*layout.Run]map[int]layout.Play{}}
}

// mostPlace is how many letters of a place have room in the head of a page with what else stands there.
const mostPlace = 44

// Place names the room, the finish and the job; with its number, which the cards have too, as far as the head of a page has room.
func (c *Set) Place() string {
	p := c.Room.Project
	number := p.Number
	join := func() string {
		var parts []string
		if p.Room != "" {
			parts = append(parts, c.Words.Say("start.room", p.Room))
		}
		for _, part := range []string{p.Tag, number, p.Title} {
			if part != "" {
				parts = append(parts, part)
			}
		}
		return strings.Join(parts, ", ")
	}
	if utf8.RuneCountInString(join()) > mostPlace {
		number = ""
	}
	return join()
}

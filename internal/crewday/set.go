package crewday

import (
	"strings"

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

// Place names the room and the finish.
func (c *Set) Place() string {
	p := c.Room.Project
	var parts []string
	if p.Room != "" {
		parts = append(parts, c.Words.Say("start.room", p.Room))
	}
	for _, part := range []string{p.Tag, p.Title} {
		if part != "" {
			parts = append(parts, part)
		}
	}
	return strings.Join(parts, ", ")
}

package crewday

import (
	"flitchlay/internal/count"
	"flitchlay/internal/days"
	"flitchlay/internal/face"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/paper"
)

// Set is the install set while it is made: what every page of it needs to know.
type Set struct {
	*folio.TapedSet
	Faces []*face.Face // the covered walls in the order of the room
	Count *count.Count
	Days  *days.Schedule
	plays map[*layout.Run]map[int]layout.Play
}

// NewSet prepares a set for the crew.
func NewSet(p *layout.Plan, t *paper.Template, name string) *Set {
	return &Set{TapedSet: folio.NewTapedSet(p, t, name), Faces: face.All(p), Count: count.Of(p), Days: days.Of(p),
		plays: map[*layout.Run]map[int]layout.Play{}}
}

// Place names the room and the finish.
func (c *Set) Place() string {
	p := c.Room.Project
	s := ""
	for _, part := range []struct{ word, text string }{{"room ", p.Room}, {"", p.Tag}, {"", p.Title}} {
		switch {
		case part.text == "":
		case s == "":
			s = part.word + part.text
		default:
			s += ", " + part.word + part.text
		}
	}
	return s
}

package elevation

import (
	"fmt"

	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
)

// said is something that a drawing has to say: what it is called in the file, and its words where it stands in the list of
// what has no place on the drawing; and places of the page, from the origin of the
// view, at which it belongs.
type said struct {
	key, words, wall string
	at               []scene.Point
}

// elsewhere reports whether something stands in the list at the head of the page, so that the drawing leaves it out.
func (e *View) elsewhere(key string) bool {
	for _, s := range e.listed {
		if s.key == key {
			return true
		}
	}
	return false
}

// drop notes that something finds no place on the drawing: the page is drawn once more, with it in the list.
func (e *View) drop(key, format string, args ...any) {
	e.dropped = append(e.dropped, said{key: key, words: fmt.Sprintf(format, args...), wall: e.F.W.Name})
}

// dropAt notes the same of what belongs to a place of the page, which more than one point may stand for: its letter in the list stands
// there too.
func (e *View) dropAt(key string, at []scene.Point, format string, args ...any) {
	e.drop(key, format, args...)
	last := &e.dropped[len(e.dropped)-1]
	for _, p := range at { // a view may yet be moved
		last.at = append(last.at, p.Add(-e.V.Origin.X, -e.V.Origin.Y))
	}
}

// item is the datum by which a drawn group is known to say something.
func item(key string) scene.Datum { return folio.Datum("item", key) }

// crossesLeader reports whether a line crosses the leader of a number or of a mark.
func (e *View) crossesLeader(a, b scene.Point) bool {
	turn := func(p, q, r scene.Point) float64 { return (q.X-p.X)*(r.Y-p.Y) - (q.Y-p.Y)*(r.X-p.X) }
	for _, l := range e.leaders {
		m, n := turn(a, b, l[0])*turn(a, b, l[1]), turn(l[0], l[1], a)*turn(l[0], l[1], b)
		if m <= 0 && n <= 0 && (m < 0 || n < 0) {
			return true
		}
	}
	return false
}

// leader draws a leader and remembers it, so that no other crosses it.
func (e *View) leader(g *scene.Group, from, to scene.Point) {
	draft.Leader(g, e.Look, e.Space, from, to)
	e.leaders = append(e.leaders, [2]scene.Point{from, to})
}

package room

import (
	"math"

	"flitchlay/internal/source"
)

// onPlan reads what only a plan of the room shows, once the walls are known.
func (d *decoder) onPlan(v source.Value) {
	s := &d.room.Space
	s.Name = v.Get("name").Text("")
	d.across(v.Get("across"))
	north := v.Get("north")
	if !north.Given() {
		return
	}
	switch n := north.Number(math.NaN()); {
	case math.IsNaN(n): // noted by Number
	case n <= -360 || n >= 360:
		north.Mistake("write 0 where the first wall stands in the north, 90 where it stands in the west", "north = %s is no direction in degrees", north.Raw())
	default:
		n = math.Mod(n+360, 360)
		s.North = &n
	}
}

// across reads how far the walls at an open end are apart: one length for all open ends, or one for each.
func (d *decoder) across(v source.Value) {
	if !v.Given() {
		return
	}
	var open []*Wall
	for i := range d.room.Walls[:max(len(d.room.Walls)-1, 0)] {
		if w := &d.room.Walls[i]; w.Corner == None {
			open = append(open, w)
		}
	}
	switch {
	case d.room.Space.Closed:
		v.Mistake("leave across out: walls that close have their places", "across is asked of a room that closes")
		return
	case len(open) == 0:
		v.Mistake(`write corner = "none" at the wall after which the room is open`, "across is asked of a room without an open end between two walls")
		return
	}
	if v.Kind() != source.Array {
		l, _ := d.positive(v, 0, false)
		for _, w := range open {
			w.Across = l
		}
		return
	}
	items := v.Items()
	if len(items) != len(open) {
		v.Mistake("give one length for all, or one for each in the order of the walls, 0 where the next wall goes straight on",
			"across has %d lengths for %d open ends", len(items), len(open))
		return
	}
	for i, item := range items {
		open[i].Across, _ = d.positive(item, 0, true)
	}
}

package crew

import (
	"slices"

	"flitchlay/internal/face"
)

// What of a room hangs already, and where the work goes on.

// someHang reports whether a sheet hangs already.
func (c *Set) someHang() bool {
	for i := range c.count.Cuts {
		if c.count.Cuts[i].Hung {
			return true
		}
	}
	return false
}

// hungOf are the numbers of the sheets of a flitch that hang.
func (c *Set) hungOf(flitch string) []int {
	var list []int
	for i := range c.count.Cuts {
		if x := &c.count.Cuts[i]; x.Hung && x.Flitch == flitch {
			list = append(list, x.Number)
		}
	}
	slices.Sort(list)
	return list
}

// without are numbers less some of them.
func without(list, less []int) []int {
	return slices.DeleteFunc(slices.Clone(list), func(n int) bool { return slices.Contains(less, n) })
}

// startsWith reports whether a place of a wall is where the work begins: the first of the room, or the first still to hang.
func (c *Set) startsWith(w *Wall, h *face.Hang) bool {
	if len(c.days.Tasks) == 0 {
		return false
	}
	t := &c.days.Tasks[0]
	return t.Run == w.Run.Name && t.Place == h.Place && !h.Before
}
